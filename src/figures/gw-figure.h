/* gw-figure.h - the figures of an evaluation, one function each
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-evaluate.h"
#include "figures/gw-drawing.h"
#include "figures/gw-length.h"

/* Plain structs in; strings are already translated and borrowed for the call.
 * Every function lays out into @box and stays inside it, at any size from
 * 160 x 120 up; where there is no room for a label it is left out, not piled up. */

typedef struct
{
  const GwAircraft *aircraft;
  const GwResults  *results;       /* balance point, limits, neutral point, geometry */
  int               option;        /* its style */
  bool              is_half;       /* starboard half only */
  double            low_x, high_x; /* band of the balance point [m]; NAN: none */
  double            scale;         /* [pt per m]; 0: as large as fits */
  GwLengthUnit      length;
} GwAirframeFigure;

/* The planform to scale: surfaces with stations, printed seams, controls, spars;
 * bodies, equipment with bays, power units; span and root-chord dimensions; scale
 * bar; balance point, hatched range between its limits, neutral point, leaders.
 * Returns the scale used [pt per m]. */
double gw_figure_planform (GwDrawing              *drawing,
                           GwBox                   box,
                           const GwAirframeFigure *figure);

/* The side view, nose to the left: bodies, surfaces seen from the side, wheels,
 * ground line through the wheels, propeller disc, equipment, balance point; length
 * and scale bar. Returns the scale used [pt per m]. */
double gw_figure_side (GwDrawing              *drawing,
                       GwBox                   box,
                       const GwAirframeFigure *figure);

typedef struct
{
  const char   *name;
  int           option;      /* its style */
  double        mass, speed; /* present [kg], [m/s]; NAN: none */
  double        mass_low, mass_high;
  const double *curve;      /* (array length=GW_CURVE_N) [m/s] */
  const double *low, *high; /* (nullable): its band */
  const double *middle;     /* that the band fades from; NULL: the curve */
} GwStallCurve;

typedef struct
{
  const char         *title;      /* "Stall speed against mass" */
  const char         *conditions; /* "flaps up, trimmed, 1.149 kg/m3" */
  const char         *method;     /* nullable: a remark on the method */
  const char         *mass_unit, *speed_unit;
  double              mass_scale, speed_scale; /* shown = SI x scale */
  const double       *mass;                    /* (array length=GW_CURVE_N) [kg], rising */
  size_t              n_options;
  const GwStallCurve *options;
  double              wanted;       /* [m/s]; NAN: none */
  double              wanted_mass;  /* of the shown option [kg]; NAN: none */
  const char         *wanted_text;  /* (nullable): "wanted: 7.0 m/s, up to 1.53 kg" */
  const char         *wanted_short; /* (nullable): where that is too long: "wanted: 7.0 m/s" */
  int                 shown;
} GwStallFigure;

void gw_figure_stall (GwDrawing           *drawing,
                      GwBox                box,
                      const GwStallFigure *figure);

typedef struct
{
  const char   *name;
  int           option;
  const double *parts;     /* (array length=n_parts of the figure) [kg] */
  double        total;     /* [kg] */
  double        low, high; /* [kg]; NAN: none */
} GwMassBar;

typedef struct
{
  const char        *title;
  const char        *unit;
  double             scale;    /* shown = SI x scale */
  int                decimals; /* at least */
  size_t             n_parts;
  const char *const *parts; /* names: "wing skin", "equipment", ... */
  size_t             n_bars;
  const GwMassBar   *bars;
  int                shown, baseline; /* indices of bars; -1: none */
} GwMassFigure;

/* What each option's mass is made of: one horizontal bar an option, parts told
 * apart by grey, hatch and a number into the list below, not by hue. The total stands
 * at the end, its difference to the baseline beside it. */
void gw_figure_masses (GwDrawing          *drawing,
                       GwBox               box,
                       const GwMassFigure *figure);

typedef struct
{
  const GwOutline *outline;
  const GwOutline *other; /* nullable: laid over it, such as before a change */
} GwOutlineFigure;

/* The outline of a wing section to scale, nose to the left, in the middle of @box, which may be
 * as small as a line of text. With another to compare, in a box of some height, a strip below
 * shows how far each side differs, magnified. Returns the scale used [pt per chord]. */
double gw_figure_outline (GwDrawing             *drawing,
                          GwBox                  box,
                          const GwOutlineFigure *figure);

typedef enum
{
  GW_LIMIT_NONE,
  GW_LIMIT_KEPT,
  GW_LIMIT_BROKEN, /* a cross beside the number, explained under the table */
} GwLimit;

typedef struct
{
  const char *value;      /* "6.63" */
  const char *band;       /* nullable: "6.44–7.33" */
  const char *short_band; /* nullable: "±0.45", where there is no room for the other */
  const char *change;     /* nullable, against the baseline: "+0.16" */
  GwLimit     limit;
  GwTextStyle style;
} GwSummaryCell;

typedef struct
{
  const char          *label;  /* "all-up mass" */
  const char          *unit;   /* "g" */
  int                  result; /* which it is, for the maker of the figure: part of the target */
  const GwSummaryCell *cells;  /* (array length=n_columns) */
} GwSummaryRow;

typedef struct
{
  size_t              n_columns;
  const char *const  *names;   /* of the options, short */
  const int          *options; /* their styles */
  size_t              n_rows;
  const GwSummaryRow *rows;
  int                 shown, baseline;
  const char         *legend; /* "× limit not kept, ..." */
} GwSummaryFigure;

void gw_figure_summary (GwDrawing             *drawing,
                        GwBox                  box,
                        const GwSummaryFigure *figure);

/* Title block fields after ISO 7200, as far as they apply. */
typedef struct
{
  const char *title_label, *title;
  const char *option_label, *option;
  const char *sheet_label,
    *sheet;                      /* "Sheet": "1 of 1"; on paper the scale is added: "1 of 1, 1:5" */
  const char *date_label, *date; /* nullable */
  const char *standing;          /* "estimate, not a test" */
  const char *notes[8];          /* sentences under the drawing, NULL-ended */
} GwTitleBlock;

typedef struct
{
  GwAirframeFigure planform;
  GwStallFigure    stall;
  GwMassFigure     masses;
  GwSummaryFigure  summary;
  GwTitleBlock     title;
  bool             is_paper; /* margins and zones (ISO 5457), a scale of ISO 5455; else fill @box */
} GwSheetFigure;

/* The sheet: frame, planform, side view, stall curve, mass bars, summary, title
 * block. On paper the drawing takes the largest standard scale that fits
 * (1:1, 1:2, 1:5, 1:10, 1:20, 1:50) and says it; on screen the bar says it. */
void gw_figure_sheet (GwDrawing           *drawing,
                      GwBox                box,
                      const GwSheetFigure *figure);
