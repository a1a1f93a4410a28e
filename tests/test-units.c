/* test-units.c - what is shown in the units a person chooses
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "report/gw-sheet.h"
#include "study/gw-result.h"
#include "study/gw-units.h"

#define MINUS   "\342\210\222" /* U+2212 */
#define EN_DASH "\342\200\223" /* U+2013 */

/* All that can be chosen of what results are told in. */
static const char *const lengths[] = { "mm", "cm", "in" };
static const char *const masses[] = { "g", "oz" };
static const char *const speeds[] = { "m/s", "km/h", "mph", "kt" };
static const char *const distances[] = { "m", "ft" };

#define N_SYSTEMS 48

static GwUnits
get_system (guint i)
{
  GwUnits units = *gw_units_standard ();

  g_assert_true (gw_units_choose (&units, lengths[i % 3]));
  g_assert_true (gw_units_choose (&units, masses[i / 3 % 2]));
  g_assert_true (gw_units_choose (&units, speeds[i / 6 % 4]));
  g_assert_true (gw_units_choose (&units, distances[i / 24 % 2]));
  return units;
}

/* Factors of Thompson & Taylor, Guide for the use of the SI, NIST SP 811, 2008, table B.8, and
 * of their products where it has none; from memory. Relative: the digits given there. */
static const struct
{
  GwQuantity  quantity;
  const char *unit;
  double      value, shown;
} known[] = {
  { GW_MM, "in", 76.2, 3.0 },
  { GW_MM, "cm", 76.2, 7.62 },
  { GW_MM2, "in²", 645.16, 1.0 },
  { GW_M2, "ft²", 0.09290304, 1.0 },
  { GW_M2, "dm²", 0.441, 44.1 },
  { GW_G, "oz", 28.34952, 1.0 },
  { GW_G, "lb", 453.5924, 1.0 },
  { GW_G_M2, "oz/yd²", 33.90575, 1.0 },
  { GW_G_DM2, "oz/ft²", 3.051517, 1.0 },
  { GW_KG_M3, "lb/ft³", 16.01846, 1.0 },
  { GW_KG_M2, "oz in²", 2.926397e-4, 16.0 }, /* a pound-inch squared */
  { GW_M_S, "mph", 0.44704, 1.0 },
  { GW_M_S, "km/h", 1.0, 3.6 },
  { GW_M_S, "kt", 0.5144444, 1.0 },
  { GW_C, "°F", 37.0, 98.6 },
  { GW_HPA, "inHg", 33.86389, 1.0 },
  { GW_M, "ft", 0.3048, 1.0 },
};

static void
test_known (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (known); i++)
    {
      GwUnits units = *gw_units_standard ();
      double  shown;

      g_assert_true (gw_units_set (&units, known[i].quantity, known[i].unit));
      g_assert_cmpstr (gw_units_name (&units, known[i].quantity), ==, known[i].unit);
      shown = gw_units_shown (&units, known[i].quantity, known[i].value);
      g_assert_cmpfloat_with_epsilon (shown, known[i].shown, 1e-6 * known[i].shown);
    }
}

/* Shown in any unit there is and typed again, a value is what it was; so is a difference. */
static void
test_round_trip (void)
{
  guint n_units = 0;

  for (guint q = 0; q < GW_N_QUANTITIES; q++)
    {
      g_autofree const char **names = gw_entry_units ((GwQuantity) q);

      for (guint i = 0; names[i] != NULL; i++, n_units++)
        {
          const double value = g_test_rand_double_range (1.0, 500.0);
          const double change = g_test_rand_double_range (-50.0, 50.0);
          GwUnits      units = *gw_units_standard ();
          double       shown, moved, back = NAN;
          char         text[64];

          g_assert_true (gw_units_set (&units, (GwQuantity) q, names[i]));
          shown = gw_units_shown (&units, (GwQuantity) q, value);
          moved = gw_units_shown (&units, (GwQuantity) q, value + change);
          g_ascii_dtostr (text, sizeof text, shown);
          g_assert_true (gw_entry_parse (text, (GwQuantity) q, units.of[q], &back, NULL));
          /* Rounding of doubles alone. */
          g_assert_cmpfloat_with_epsilon (back, value, 1e-12 * 500.0);
          g_assert_cmpfloat_with_epsilon (
            gw_units_shown_change (&units, (GwQuantity) q, change), moved - shown,
            1e-12 * (fabs (shown) + fabs (moved)));
        }
    }
  g_assert_cmpuint (n_units, >, 50);
}

/* No units: those of the file, as with the standard ones. */
static void
test_file_units (void)
{
  for (guint q = 0; q < GW_N_QUANTITIES; q++)
    {
      const GwQuantity of = (GwQuantity) q;

      g_assert_cmpstr (gw_units_name (NULL, of), ==, gw_quantity_unit (of)->unit);
      g_assert_cmpstr (gw_units_name (gw_units_standard (), of), ==, gw_quantity_unit (of)->unit);
      g_assert_cmpfloat (gw_units_shown (NULL, of, 12.3), ==, 12.3);
      g_assert_cmpfloat (gw_units_shown (gw_units_standard (), of, 12.3), ==, 12.3);
      g_assert_cmpfloat (gw_units_shown_change (NULL, of, 12.3), ==, 12.3);
      g_assert_cmpint (gw_units_decimals (NULL, of, 2), ==, 2);
      g_assert_cmpint (gw_units_decimals (gw_units_standard (), of, 2), ==, 2);
    }
}

static void
test_choose (void)
{
  GwUnits units = *gw_units_standard ();

  g_assert_true (gw_units_choose (&units, "in"));
  g_assert_cmpstr (gw_units_name (&units, GW_MM), ==, "in");
  g_assert_cmpstr (gw_units_name (&units, GW_M2), ==, "ft²");
  g_assert_cmpstr (gw_units_name (&units, GW_G), ==, "g");
  g_assert_cmpstr (gw_units_name (&units, GW_G_DM2), ==, "g/dm²");
  g_assert_true (gw_units_choose (&units, "oz"));
  g_assert_cmpstr (gw_units_name (&units, GW_G_DM2), ==, "oz/ft²");
  g_assert_cmpstr (gw_units_name (&units, GW_KG_M3), ==, "lb/ft³");
  g_assert_cmpstr (gw_units_name (&units, GW_KG_M2), ==, "oz in²");
  g_assert_false (gw_units_equal (&units, gw_units_standard ()));
  g_assert_true (gw_units_choose (&units, "mm"));
  g_assert_true (gw_units_choose (&units, "g"));
  g_assert_true (gw_units_equal (&units, gw_units_standard ()));

  g_assert_false (gw_units_choose (&units, "furlong"));
  g_assert_false (gw_units_choose (&units, ""));
  g_assert_false (gw_units_choose (&units, "lb/ft³")); /* goes with ounces */
  g_assert_false (gw_units_set (&units, GW_MM, "oz"));
  g_assert_true (gw_units_equal (&units, gw_units_standard ()));
}

/* The rule of decimals: no coarser than it allows, and with one decimal less it would be. */
static void
test_decimals (void)
{
  for (guint q = 0; q < GW_N_QUANTITIES; q++)
    {
      g_autofree const char **names = gw_entry_units ((GwQuantity) q);
      const double            most = q == GW_MM ? 1.0 : 6.0;

      for (guint i = 0; names[i] != NULL; i++)
        for (int decimals = 0; decimals < 5; decimals++)
          {
            const GwEntryUnit *unit = gw_entry_unit ((GwQuantity) q, names[i]);
            GwUnits            units = *gw_units_standard ();
            double             steps;
            int                places;

            gw_units_set (&units, (GwQuantity) q, names[i]);
            places = gw_units_decimals (&units, (GwQuantity) q, decimals);
            steps = pow (10.0, decimals - places) * unit->factor;
            g_test_message ("%s, %d: %d", names[i], decimals, places);
            g_assert_cmpint (places, >=, 0);
            g_assert_cmpfloat (steps, <=, most * (1.0 + 1e-6));
            if (places > 0 && unit->factor != 1.0)
              g_assert_cmpfloat (10.0 * steps, >, most);
          }
    }
}

static const struct
{
  const char *units[3];
  GwResultId  id;
  double      value; /* SI */
  const char *text;
} examples[] = {
  { { "in", "oz", "mph" }, GW_RESULT_BALANCE_ROOT, 0.076, "2.99" },
  { { "in", "oz", "mph" }, GW_RESULT_BALANCE_ROOT, -0.076, MINUS "2.99" },
  { { "in", "oz", "mph" }, GW_RESULT_MASS, 1.365, "48.1" },
  { { "in", "oz", "mph" }, GW_RESULT_STALL_SPEED, 7.78, "17.4" },
  { { "in", "oz", "mph" }, GW_RESULT_WING_LOADING, 3.18, "10.4" },
  { { "in", "oz", "mph" }, GW_RESULT_WING_AREA, 0.441, "4.75" },
  { { "in", "oz", "mph" }, GW_RESULT_SPAN, 1.8, "70.87" },
  { { "in", "oz", "mph" }, GW_RESULT_DENSITY, 1.225, "0.0765" },
  { { "in", "oz", "mph" }, GW_RESULT_IXX, 0.0731, "3997" },
  { { "in", "oz", "mph" }, GW_RESULT_STATIC_MARGIN, 0.16, "16" },
  { { "in", "oz", "mph" }, GW_RESULT_MASS, 0.001, "0.04" }, /* 1 g in the file */
  { { "in", "oz", "mph" }, GW_RESULT_MASS, 0.0004, "0.0" }, /* none there either */
  { { "cm", "g", "km/h" }, GW_RESULT_BALANCE_ROOT, 0.076, "7.6" },
  { { "cm", "g", "km/h" }, GW_RESULT_MASS, 1.365, "1365" },
  { { "cm", "g", "km/h" }, GW_RESULT_STALL_SPEED, 7.78, "28.0" },
  { { "cm", "g", "km/h" }, GW_RESULT_WING_AREA, 0.441, "44.1" },
  { { "mm", "g", "kt" }, GW_RESULT_STALL_SPEED, 7.78, "15.1" },
};

static void
test_examples (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    {
      GwUnits          units = *gw_units_standard ();
      g_autofree char *text = NULL;

      for (guint k = 0; k < 3; k++)
        g_assert_true (gw_units_choose (&units, examples[i].units[k]));
      text = gw_value_text (examples[i].id, examples[i].value, &units);
      g_assert_cmpstr (text, ==, examples[i].text);
    }
}

/* "−2.99" as a number, and the step of its last digit. */
static double
read_text (const char *text,
           double     *step)
{
  const gboolean is_minus = g_str_has_prefix (text, MINUS);
  const char    *digits = is_minus ? text + strlen (MINUS) : *text == '+' ? text + 1
                                                                          : text;
  const char    *sign = strchr (digits, '.');
  char          *end;
  const double   value = g_ascii_strtod (digits, &end);

  g_assert_cmpstr (end, ==, "");
  *step = pow (10.0, sign != NULL ? -(double) strlen (sign + 1) : 0.0);
  return is_minus ? -value : value;
}

/* In SI again, by another way than it came: as if it were typed. */
static double
read_back (GwResultId     id,
           const GwUnits *units,
           double         shown)
{
  const GwQuantity quantity = gw_result_info (id)->quantity;
  double           value = shown;
  char             text[64];

  g_ascii_dtostr (text, sizeof text, shown);
  g_assert_true (gw_entry_parse (text, quantity, units->of[quantity], &value, NULL));
  return gw_quantity_to_si (quantity, value);
}

/* A value of a likely size: three to four digits in the unit of the file. */
static double
random_value (GwResultId id)
{
  const GwResultInfo *info = gw_result_info (id);
  const double        step = pow (10.0, -info->decimals);

  return gw_quantity_to_si (info->quantity, g_test_rand_double_range (-5000.0, 5000.0) * step);
}

/* Every result in every unit system: what is read there is the value, to half a step. */
static void
test_results (void)
{
  for (guint i = 0; i < N_SYSTEMS; i++)
    for (guint id = 0; id < GW_N_RESULTS; id++)
      {
        const GwUnits    units = get_system (i);
        const double     value = random_value ((GwResultId) id);
        g_autofree char *text = gw_value_text ((GwResultId) id, value, &units);
        g_autofree char *change = gw_change_text ((GwResultId) id, value, &units);
        double           step, back, half;

        back = read_text (text, &step);
        g_assert_cmpfloat (read_text (change, &step), ==, back);
        g_assert_true (g_str_has_suffix (change, text));
        half = 0.5 * fabs (read_back ((GwResultId) id, &units, back + step) -
                           read_back ((GwResultId) id, &units, back));
        /* A hair for doubles. */
        g_assert_cmpfloat_with_epsilon (read_back ((GwResultId) id, &units, back), value,
                                        half * (1.0 + 1e-6));
      }
}

/* What the unit of the file tells is told in all others: a value, a difference, a band. */
static void
test_told (void)
{
  for (guint trial = 0; trial < 4000; trial++)
    {
      const GwResultId id = (GwResultId) g_test_rand_int_range (0, GW_N_RESULTS);
      const GwUnits    units = get_system ((guint) g_test_rand_int_range (0, N_SYSTEMS));
      const double     value = random_value (id);
      const double     small = random_value (id) / 2000.0; /* some two steps */
      const GwBand     band = { -fabs (small), 0.3 * fabs (small) };
      g_autofree char *here = gw_change_text (id, small, NULL);
      g_autofree char *there = gw_change_text (id, small, &units);
      g_autofree char *band_here = gw_short_band_text (id, &band, NULL);
      g_autofree char *band_there = gw_short_band_text (id, &band, &units);
      g_autofree char *range_there = gw_band_text (id, value, &band, &units);
      double           step;

      g_test_message ("%s in %s: %g", gw_result_info (id)->key, gw_result_unit (id, &units), small);
      if (read_text (here, &step) != 0.0)
        g_assert_cmpfloat (read_text (there, &step), !=, 0.0);
      if (band_here != NULL)
        {
          g_assert_nonnull (band_there);
          g_assert_nonnull (range_there);
          g_assert_nonnull (strpbrk (band_there, "123456789"));
        }
    }
}

static void
test_band_texts (void)
{
  GwUnits          units = *gw_units_standard ();
  const GwBand     wide = { -0.026, 0.037 }, narrow = { -0.001, 0.001 };
  g_autofree char *range = NULL, *half = NULL, *narrow_range = NULL, *narrow_half = NULL;

  g_assert_true (gw_units_choose (&units, "oz"));
  range = gw_band_text (GW_RESULT_MASS, 1.365, &wide, &units);
  half = gw_short_band_text (GW_RESULT_MASS, &wide, &units);
  g_assert_cmpstr (range, ==, "47.2" EN_DASH "49.5"); /* 1339 and 1402 g */
  g_assert_cmpstr (half, ==, "\302\2611.1");

  /* 1364 to 1366 g would round away in tenths of an ounce. */
  narrow_range = gw_band_text (GW_RESULT_MASS, 1.365, &narrow, &units);
  narrow_half = gw_short_band_text (GW_RESULT_MASS, &narrow, &units);
  g_assert_cmpstr (narrow_range, ==, "48.11" EN_DASH "48.18");
  g_assert_cmpstr (narrow_half, ==, "\302\2610.04");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/units/known", test_known);
  g_test_add_func ("/study/units/round-trip", test_round_trip);
  g_test_add_func ("/study/units/file-units", test_file_units);
  g_test_add_func ("/study/units/choose", test_choose);
  g_test_add_func ("/study/units/decimals", test_decimals);
  g_test_add_func ("/report/units/examples", test_examples);
  g_test_add_func ("/report/units/results", test_results);
  g_test_add_func ("/report/units/told", test_told);
  g_test_add_func ("/report/units/band-texts", test_band_texts);

  return g_test_run ();
}
