/* gw-sheet-stall.c - stall speed against mass
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MOST_OUNCES 4.5 /* [kg]; an axis in ounces above ten pounds is hard to read */

static GwStallCurve
make_curve (GwSheet *sheet,
            guint    option)
{
  const GwOutcome *outcome = gw_evaluation_outcome (sheet->evaluation, option);
  double          *low = gw_sheet_keep_new (sheet, double, GW_CURVE_N);
  double          *high = gw_sheet_keep_new (sheet, double, GW_CURVE_N);

  for (guint i = 0; i < GW_CURVE_N; i++)
    {
      low[i] = outcome->band_curve[i] + outcome->curve_band[i].low;
      high[i] = outcome->band_curve[i] + outcome->curve_band[i].high;
    }

  return (GwStallCurve){
    .name = outcome->short_name,
    .option = (int) option,
    .mass = outcome->results.value[GW_RESULT_MASS],
    .speed = outcome->results.value[GW_RESULT_STALL_SPEED],
    .mass_low = outcome->results.value[GW_RESULT_MASS] + outcome->band[GW_RESULT_MASS].low,
    .mass_high = outcome->results.value[GW_RESULT_MASS] + outcome->band[GW_RESULT_MASS].high,
    .curve = outcome->results.curve,
    .low = low,
    .high = high,
    .middle = outcome->band_curve,
  };
}

static double
shown_speed (const GwSheet *sheet,
             double         speed)
{
  return gw_units_shown (&sheet->units, GW_M_S, speed);
}

/* What the mass of a whole aircraft is told in beside a speed, and how close. */
typedef struct
{
  const char *name;
  double      factor; /* shown = kg x factor */
  int         decimals;
} CurveMass;

static CurveMass
curve_mass_of (const GwSheet *sheet)
{
  const double   heaviest = sheet->evaluation->curve_mass[GW_CURVE_N - 1];
  const gboolean is_oz = g_str_equal (gw_units_name (&sheet->units, GW_G), "oz");
  const char    *name = !is_oz ? "kg" : heaviest < MOST_OUNCES ? "oz"
                                                               : "lb";

  return (CurveMass){ name, 1000.0 / gw_entry_unit (GW_G, name)->factor,
                      g_str_equal (name, "oz") ? 1 : 2 };
}

/* The speed that is wanted and, unless @is_short, up to what mass it is kept. (transfer full)
 * (nullable) */
static char *
wanted_text (const GwSheet   *sheet,
             const GwOutcome *outcome,
             gboolean         is_short)
{
  const double     speed = outcome->assembly->aircraft.targets.stall_speed;
  const double     mass = outcome->results.value[GW_RESULT_TARGET_MASS];
  const CurveMass  curve_mass = curve_mass_of (sheet);
  const int        decimals = MAX (gw_units_decimals (&sheet->units, GW_M_S, 1), 1);
  g_autofree char *speed_text = NULL, *mass_text = NULL;

  if (!isfinite (speed))
    return NULL;

  speed_text = g_strdup_printf ("%.*f %s", decimals, shown_speed (sheet, speed),
                                gw_units_name (&sheet->units, GW_M_S));
  if (is_short || !isfinite (mass))
    return g_strdup_printf (_ ("wanted: %s"), speed_text);

  mass_text = g_strdup_printf ("%.*f %s", curve_mass.decimals, mass * curve_mass.factor,
                               curve_mass.name);
  /* Translators: a speed and a mass: "wanted: 7.0 m/s, up to 1.53 kg" */
  return g_strdup_printf (_ ("wanted: %s, up to %s"), speed_text, mass_text);
}

/* "flaps up · trimmed · power off · air 1.149 kg/m³" */
static char *
conditions_text (const GwSheet   *sheet,
                 const GwOutcome *outcome)
{
  const double     density = outcome->results.value[GW_RESULT_DENSITY];
  g_autofree char *text = gw_value_text (GW_RESULT_DENSITY, density, &sheet->units);

  return g_strdup_printf (_ ("flaps up · trimmed · power off · air %s %s"), text,
                          gw_result_unit (GW_RESULT_DENSITY, &sheet->units));
}

GwStallFigure
gw_sheet_stall (GwSheet *sheet,
                guint    shown)
{
  const GwEvaluation *evaluation = sheet->evaluation;
  const GwOutcome    *outcome = gw_evaluation_outcome (evaluation, shown);
  const CurveMass     curve_mass = curve_mass_of (sheet);
  GwStallCurve       *curves = gw_sheet_keep_new (sheet, GwStallCurve, evaluation->outcomes->len);
  gboolean            is_swept = FALSE;

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      curves[i] = make_curve (sheet, i);
      is_swept |= (gw_evaluation_outcome (evaluation, i)->results.notes & GW_NOTE_SWEPT) != 0;
    }

  return (GwStallFigure){
    .title = _ ("Stall speed against mass"),
    .conditions = gw_sheet_keep (sheet, conditions_text (sheet, outcome)),
    .method =
      is_swept ? _ ("lifting line, corrected for sweep and crank by the cosine rule") : NULL,
    .mass_unit = curve_mass.name,
    .speed_unit = gw_units_name (&sheet->units, GW_M_S),
    .mass_scale = curve_mass.factor,
    .speed_scale = shown_speed (sheet, 1.0),
    .mass = evaluation->curve_mass,
    .n_options = evaluation->outcomes->len,
    .options = curves,
    .wanted = outcome->assembly->aircraft.targets.stall_speed,
    .wanted_mass = outcome->results.value[GW_RESULT_TARGET_MASS],
    .wanted_text = gw_sheet_keep (sheet, wanted_text (sheet, outcome, FALSE)),
    .wanted_short = gw_sheet_keep (sheet, wanted_text (sheet, outcome, TRUE)),
    .shown = (int) shown,
  };
}
