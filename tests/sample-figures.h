/* sample-figures.h - a whole sheet of invented options, evaluated for real
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>
#include <math.h>
#include <stdio.h>

#include "figures/gw-figure.h"
#include "sample-aircraft.h"

#define SAMPLE_OPTIONS 8
#define SAMPLE_ROWS    14
#define SAMPLE_PARTS   7

typedef struct
{
  SampleKind    kind;
  Sample        sample;
  GwResults     results;
  double        mass[GW_CURVE_N];
  double        curves[SAMPLE_OPTIONS][3][GW_CURVE_N]; /* curve, low, high */
  GwStallCurve  stall[SAMPLE_OPTIONS];
  double        parts[SAMPLE_OPTIONS][SAMPLE_PARTS];
  GwMassBar     bars[SAMPLE_OPTIONS];
  char          texts[SAMPLE_ROWS][SAMPLE_OPTIONS][3][32];
  GwSummaryCell cells[SAMPLE_ROWS][SAMPLE_OPTIONS];
  GwSummaryRow  rows[SAMPLE_ROWS];
  GwSheetFigure sheet; /* with the inputs of all figures */
} SampleFigures;

static const char *const sample_names[SAMPLE_OPTIONS] = {
  "Folded foam sheet",
  "Hot-wired core, glass",
  "Printed, foaming",
  "Printed, solid",
  "Balsa and film",
  "Core with veneer",
  "Printed, ribs only",
  "Laminate",
};
static const int sample_styles[SAMPLE_OPTIONS] = { 0, 1, 2, 3, 4, 5, 6, 7 };

static const char *const sample_part_names[SAMPLE_PARTS] = {
  "wing skin",
  "ribs and webs",
  "spars and joints",
  "tail",
  "fuselage and gear",
  "drive",
  "equipment",
};

static const struct
{
  const char *label, *unit;
  GwResultId  result;
  double      scale;
  int         decimals;
} sample_rows[SAMPLE_ROWS] = {
  { "all-up mass", "g", GW_RESULT_MASS, 1e3, 0 },
  { "wing", "g", GW_RESULT_WING_MASS, 1e3, 0 },
  { "stall speed", "m/s", GW_RESULT_STALL_SPEED, 1, 2 },
  { "wing loading", "g/dm²", GW_RESULT_WING_LOADING, 10, 1 },
  { "balance point", "mm", GW_RESULT_BALANCE_ROOT, 1e3, 0 },
  { "neutral point", "mm", GW_RESULT_NEUTRAL_POINT, 1e3, 0 },
  { "static margin", "% chord", GW_RESULT_STATIC_MARGIN, 100, 1 },
  { "aft limit", "mm", GW_RESULT_AFT_LIMIT, 1e3, 0 },
  { "battery to go aft", "mm", GW_RESULT_SLIDE, 1e3, 1 },
  { "ballast", "g", GW_RESULT_BALLAST, 1e3, 0 },
  { "pitch inertia", "kg m²", GW_RESULT_IYY, 1, 4 },
  { "greatest lift coefficient", "", GW_RESULT_CL_MAX, 1, 2 },
  { "where it lets go", "% semispan", GW_RESULT_STALL_PLACE, 100, 0 },
  { "weighed share", "%", GW_RESULT_WEIGHED_SHARE, 100, 0 },
};

/* Option @i is heavier by 3 % a step: invented. */
static inline double
sample_factor (size_t i)
{
  return 1 + 0.03 * (double) i;
}

static inline void
sample_fill_stall (SampleFigures *figures,
                   size_t         n)
{
  const double *value = figures->results.value;

  for (size_t i = 0; i < n; i++)
    {
      double mass = value[GW_RESULT_MASS] * sample_factor (i);

      for (size_t k = 0; k < GW_CURVE_N; k++)
        {
          figures->curves[i][0][k] = figures->results.curve[k] * (1 + 0.002 * (double) i);
          figures->curves[i][1][k] = figures->curves[i][0][k] * 0.975;
          figures->curves[i][2][k] = figures->curves[i][0][k] * 1.025;
        }
      figures->stall[i] = (GwStallCurve){
        sample_names[i],
        sample_styles[i],
        mass,
        value[GW_RESULT_STALL_SPEED] * sqrt (sample_factor (i)),
        mass * 0.985,
        mass * 1.02,
        figures->curves[i][0],
        figures->curves[i][1],
        figures->curves[i][2],
      };
    }
  figures->sheet.stall = (GwStallFigure){
    "Stall speed against mass",
    "flaps up, trimmed, 1.137 kg/m³",
    "critical-section method",
    "kg",
    "m/s",
    1,
    1,
    figures->mass,
    n,
    figures->stall,
    value[GW_RESULT_STALL_SPEED] * 1.03,
    value[GW_RESULT_MASS] * 1.03 * 1.03,
    "wanted: as slow as this",
    0,
  };
}

static inline void
sample_fill_masses (SampleFigures *figures,
                    size_t         n)
{
  static const double shares[SAMPLE_PARTS] = { 0.22, 0.06, 0.04, 0.06, 0.30, 0.16, 0.16 };

  for (size_t i = 0; i < n; i++)
    {
      double total = figures->results.value[GW_RESULT_MASS] * sample_factor (i);

      for (size_t part = 0; part < SAMPLE_PARTS; part++)
        figures->parts[i][part] = shares[part] * total;
      figures->bars[i] = (GwMassBar){ sample_names[i], sample_styles[i], figures->parts[i],
                                      total, total * 0.985, total * 1.02 };
    }
  figures->sheet.masses =
    (GwMassFigure){ "All-up mass", "g", 1000, 0, SAMPLE_PARTS, sample_part_names, n,
                    figures->bars, 0, 0 };
}

static inline void
sample_fill_row (SampleFigures *figures,
                 size_t         row,
                 size_t         n,
                 double         scale,
                 int            decimals)
{
  double base = figures->results.value[sample_rows[row].result] * scale;

  for (size_t i = 0; i < n; i++)
    {
      char (*text)[32] = figures->texts[row][i];
      double         shown = base * sample_factor (i);
      GwSummaryCell *cell = &figures->cells[row][i];

      *cell = (GwSummaryCell){ .value = "–" };
      if (!isfinite (shown))
        continue;
      snprintf (text[0], sizeof text[0], "%.*f", decimals, shown);
      snprintf (text[1], sizeof text[1], "±%.*f", decimals, fabs (shown) * 0.02);
      snprintf (text[2], sizeof text[2], "%+.*f", decimals, shown - base);
      *cell = (GwSummaryCell){ text[0], row < 7 ? text[1] : NULL, row < 7 ? text[1] : NULL,
                               i > 0 ? text[2] : NULL,
                               row % 4 == 0 && i % 3 == 2 ? GW_LIMIT_BROKEN : GW_LIMIT_KEPT,
                               row == 9 ? GW_STYLE_ITALIC : GW_STYLE_UPRIGHT };
    }
}

static inline void
sample_fill_summary (SampleFigures *figures,
                     size_t         n)
{
  for (size_t row = 0; row < SAMPLE_ROWS; row++)
    {
      figures->rows[row] =
        (GwSummaryRow){ sample_rows[row].label, sample_rows[row].unit, (int) row,
                        figures->cells[row] };
      sample_fill_row (figures, row, n, sample_rows[row].scale, sample_rows[row].decimals);
    }
  figures->sheet.summary = (GwSummaryFigure){ n,
                                              sample_names,
                                              sample_styles,
                                              SAMPLE_ROWS,
                                              figures->rows,
                                              0,
                                              0,
                                              "× limit not kept   ± 10th to 90th percentile" };
}

/* The first option is the aircraft evaluated; the others are it, scaled. */
static inline void
sample_figures_init (SampleFigures *figures,
                     SampleKind     kind,
                     size_t         n_options,
                     bool           is_paper)
{
  const double *value = figures->results.value;
  double        mass;

  g_assert_cmpuint (n_options, <=, SAMPLE_OPTIONS);
  *figures = (SampleFigures){ 0 };
  figures->kind = kind;
  sample_init (&figures->sample, kind);
  g_assert_cmpint (gw_evaluate (&figures->sample.aircraft, NULL, &figures->results), ==, GW_OK);
  mass = value[GW_RESULT_MASS];
  gw_results_clear (&figures->results);
  for (size_t k = 0; k < GW_CURVE_N; k++)
    figures->mass[k] = mass * (0.8 + 0.5 * (double) k / (GW_CURVE_N - 1));
  g_assert_cmpint (gw_evaluate (&figures->sample.aircraft, figures->mass, &figures->results), ==,
                   GW_OK);

  figures->sheet.planform = (GwAirframeFigure){ &figures->sample.aircraft,
                                                &figures->results,
                                                0,
                                                false,
                                                value[GW_RESULT_BALANCE_X] - 0.006,
                                                value[GW_RESULT_BALANCE_X] + 0.007,
                                                0,
                                                { "mm", 1000, 0 } };
  sample_fill_stall (figures, n_options);
  sample_fill_masses (figures, n_options);
  sample_fill_summary (figures, n_options);
  figures->sheet.title = (GwTitleBlock){
    "Title",
    "Reed-bed bird count",
    "Option shown",
    sample_names[0],
    "Sheet",
    "1 of 1",
    "Date",
    "2026-11-25",
    "estimate, not a test",
    { "The wing lets go first in the outer part of the span; the ailerons may lose hold.",
      "Section data are asked beyond their tables at the tip." },
  };
  figures->sheet.is_paper = is_paper;
}

/* The same, told in inches, ounces and miles an hour. */
static inline void
sample_figures_inch (SampleFigures *figures)
{
  static const struct
  {
    const char *old, *name;
    double      factor;
    int         decimals;
  } units[] = {
    { "mm", "in", 1 / 25.4, 2 },
    { "g", "oz", 1 / 28.349523125, 1 },
    { "m/s", "mph", 1 / 0.44704, 1 },
    { "g/dm²", "oz/ft²", 0.32770, 1 },
  };
  GwSheetFigure *sheet = &figures->sheet;

  sheet->planform.length = (GwLengthUnit){ "in", 1 / 0.0254, 2 };
  sheet->masses.unit = sheet->stall.mass_unit = "oz";
  sheet->masses.scale = sheet->stall.mass_scale = 1000 / 28.349523125;
  sheet->masses.decimals = 1;
  sheet->stall.speed_unit = "mph";
  sheet->stall.speed_scale = 1 / 0.44704;
  for (size_t row = 0; row < SAMPLE_ROWS; row++)
    for (size_t k = 0; k < G_N_ELEMENTS (units); k++)
      if (g_strcmp0 (figures->rows[row].unit, units[k].old) == 0)
        {
          sample_fill_row (figures, row, sheet->summary.n_columns,
                           sample_rows[row].scale * units[k].factor, units[k].decimals);
          figures->rows[row].unit = units[k].name;
          break;
        }
}

static inline void
sample_figures_clear (SampleFigures *figures)
{
  gw_results_clear (&figures->results);
}
