/* test-entry.c - what a person types into a number field
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "study/gw-entry.h"
#include "study/gw-error.h"

typedef struct
{
  const char *text;
  GwQuantity  quantity;
  const char *shown; /* NULL: the document's own unit */
  double      value;
} Good;

static void
test_good (void)
{
  static const Good cases[] = {
    { "245", GW_MM, NULL, 245.0 },
    { "245/2", GW_MM, NULL, 122.5 },
    { " 12,5 ", GW_MM, NULL, 12.5 },
    { "9 in", GW_MM, NULL, 228.6 },
    { "9in", GW_MM, NULL, 228.6 },
    { "9\"", GW_MM, NULL, 228.6 },
    { "1 m + 20 mm", GW_MM, NULL, 1020.0 },
    { "1 m + 20", GW_MM, NULL, 1020.0 },
    { "2 * 9 in", GW_MM, NULL, 457.2 },
    { "9 in / 2", GW_MM, NULL, 114.3 },
    { "(9 + 1) in", GW_MM, NULL, 254.0 },
    { "-(3 - 5) × 2", GW_MM, NULL, 4.0 },
    { "−4", GW_MM, NULL, -4.0 },
    { "-4", GW_MM, NULL, -4.0 },
    { "3−-4", GW_MM, NULL, 7.0 },
    { "2e−2 m", GW_MM, NULL, 20.0 },
    { "1e3", GW_MM, NULL, 1000.0 },
    { "1.5e-2 m", GW_MM, NULL, 15.0 },
    { "9", GW_MM, "in", 228.6 },
    { "9 mm", GW_MM, "in", 9.0 },
    { "9 / 2", GW_MM, "in", 114.3 },
    { "1 + 25.4 mm", GW_MM, "in", 50.8 },
    { "1.5 oz", GW_G, NULL, 42.5242846875 },
    { "1 lb", GW_G, NULL, 453.59237 },
    { "1 oz/ft2", GW_G_M2, NULL, 305.1517 },
    { "1 lb/ft3", GW_KG_M3, NULL, 16.018463374 },
    { "59 °F", GW_C, NULL, 15.0 },
    { "288.15 K", GW_C, NULL, 15.0 },
    { "15 mph", GW_M_S, NULL, 6.7056 },
    { "10 kt", GW_M_S, NULL, 5.14444444 },
    { "36 km/h", GW_M_S, NULL, 10.0 },
    { "29.92 inHg", GW_HPA, NULL, 1013.2076 },
    { "33 %", GW_PERCENT, NULL, 33.0 },
    { "1/3", GW_RATIO, NULL, 1.0 / 3.0 },
    { "2 ft", GW_M, NULL, 0.6096 },
  };

  /* Factors: reference l-inch, l-foot, l-pound-avdp, l-ounce-avdp, l-lbperft3 (US Navy facilities
   * handbook MIL-HDBK-1004/6, SI conversion table), l-mile-per-hour, l-knot, l-ozperft2-mass
   * (Thompson & Taylor, NIST SP 811, 2008, table B.8; from memory). */
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const GwEntryUnit *shown =
        cases[i].shown != NULL ? gw_entry_unit (cases[i].quantity, cases[i].shown) : NULL;
      g_autoptr (GError) error = NULL;
      double value = NAN;

      g_test_message ("%s", cases[i].text);
      g_assert_true (gw_entry_parse (cases[i].text, cases[i].quantity, shown, &value, &error));
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (value, cases[i].value,
                                      1e-6 * fmax (fabs (cases[i].value), 1.0));
    }
}

static void
test_bad (void)
{
  static const struct
  {
    const char *text;
    GwQuantity  quantity;
    const char *says;
  } cases[] = {
    { "", GW_MM, "missing" },
    { "  ", GW_MM, "missing" },
    { "abc", GW_MM, "character 1" },
    { "12 oz", GW_MM, "no such unit" },
    { "12 mmm", GW_MM, "no such unit" },
    { "9 in * 2 in", GW_MM, "one unit" },
    { "2 / 9 in", GW_MM, "division" },
    { "1 / 0", GW_MM, "zero" },
    { "(1 + 2", GW_MM, "closing" },
    { "1 + ", GW_MM, "missing" },
    { "1.2.3", GW_MM, "two decimal" },
    { "1,234.5", GW_MM, "two decimal" },
    { "1 2", GW_MM, "does not belong" },
    { "1e999", GW_MM, "cannot be read" },
    { "9 in in", GW_MM, "does not belong" },
    { "(9 in) in", GW_MM, "one unit" },
    { "5 ; 6", GW_MM, "does not belong" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = 7.0;

      g_test_message ("%s", cases[i].text);
      g_assert_false (gw_entry_parse (cases[i].text, cases[i].quantity, NULL, &value, &error));
      g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
      if (strstr (error->message, cases[i].says) == NULL)
        g_error ("“%s”: “%s” does not say “%s”", cases[i].text, error->message, cases[i].says);
      g_assert_cmpfloat (value, ==, 7.0);
    }
}

/* Whatever is typed, it is read or refused; nothing else. */
static void
test_random (void)
{
  static const char *const words[] = { "1", "25", ".", ",", "e", "+", "-", "*",
                                       "/", "(", ")", " ", "in", "mm", "oz", "°" };

  for (int trial = 0; trial < 20000; trial++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GError) error = NULL;
      double value;

      for (int i = g_test_rand_int_range (0, 12); i > 0; i--)
        g_string_append (text, words[g_test_rand_int_range (0, G_N_ELEMENTS (words))]);
      if (gw_entry_parse (text->str, GW_MM, NULL, &value, &error))
        g_assert_true (isfinite (value));
      else
        g_assert_nonnull (error);
    }
}

/* Shown in any unit and typed back, a value stays what it was. */
static void
test_round_trip (void)
{
  for (guint q = 0; q < GW_N_QUANTITIES; q++)
    {
      g_autofree const char **names = gw_entry_units ((GwQuantity) q);

      for (guint i = 0; names[i] != NULL; i++)
        {
          const GwEntryUnit *unit = gw_entry_unit ((GwQuantity) q, names[i]);
          const double       value = g_test_rand_double_range (-500.0, 500.0);
          g_autofree char   *text = gw_entry_text (value, unit, 12);
          double             back = NAN;

          g_assert_true (gw_entry_parse (text, (GwQuantity) q, unit, &back, NULL));
          g_assert_cmpfloat_with_epsilon (back, value, 1e-6 * fabs (value));
        }
    }
}

static void
test_minus (void)
{
  static const struct
  {
    double      value;
    const char *unit, *text;
  } cases[] = { { -14.0, "mm", "−14" },
                { -14.25, "mm", "−14.25" },
                { -0.0, "mm", "0" },
                { -0.001, "mm", "0" },
                { -25.4, "in", "−1" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text =
        gw_entry_text (cases[i].value, gw_entry_unit (GW_MM, cases[i].unit), 2);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/entry/good", test_good);
  g_test_add_func ("/study/entry/bad", test_bad);
  g_test_add_func ("/study/entry/random", test_random);
  g_test_add_func ("/study/entry/minus", test_minus);
  g_test_add_func ("/study/entry/round-trip", test_round_trip);

  return g_test_run ();
}
