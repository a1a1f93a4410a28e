/* gw-sheet.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

#include "figures/gw-layout.h"
#include "study/gw-result.h"

/* What the mass of an aircraft is told as. */
typedef enum
{
  PART_WING_SKIN,
  PART_WING_INSIDE,
  PART_WING_SPAR,
  PART_WING_REST,
  PART_TAIL,
  PART_BODY,
  PART_GEAR,
  PART_POWER,
  PART_EQUIPMENT,
  N_PARTS
} Part;

static const char *const part_labels[N_PARTS] = {
  N_ ("wing skin, core"),
  N_ ("wing ribs, webs"),
  N_ ("wing spars"),
  N_ ("wing glue, hinges, finish"),
  N_ ("tail"),
  N_ ("bodies"),
  N_ ("undercarriage"),
  N_ ("power"),
  N_ ("equipment, leads"),
};

/* Of a value in SI to what is shown. */
static double
factor_of (const GwUnits *units,
           GwQuantity     quantity)
{
  return gw_units_shown_change (units, quantity, 1.0 / gw_quantity_unit (quantity)->factor);
}

static GwLengthUnit
make_length_unit (const GwUnits *units)
{
  return (GwLengthUnit){
    .name = gw_units_name (units, GW_MM),
    .factor = factor_of (units, GW_MM),
    .decimals = gw_units_decimals (units, GW_MM, 0),
  };
}

static GwAirframeFigure
make_airframe (const GwSheet *sheet,
               guint          shown)
{
  const GwOutcome *outcome = gw_evaluation_outcome (sheet->evaluation, shown);
  const double     x = outcome->results.value[GW_RESULT_BALANCE_X];

  return (GwAirframeFigure){
    .aircraft = &outcome->assembly->aircraft,
    .results = &outcome->results,
    .option = (int) shown,
    .low_x = x + outcome->band[GW_RESULT_BALANCE_X].low,
    .high_x = x + outcome->band[GW_RESULT_BALANCE_X].high,
    .length = make_length_unit (&sheet->units),
  };
}

static Part
wing_part (GwPieceKind kind)
{
  if (kind == GW_PIECE_SKIN || kind == GW_PIECE_CORE)
    return PART_WING_SKIN;
  if (kind == GW_PIECE_RIB || kind == GW_PIECE_CLOSING || kind == GW_PIECE_WEB)
    return PART_WING_INSIDE;

  return kind == GW_PIECE_SPAR ? PART_WING_SPAR : PART_WING_REST;
}

static Part
part_of (const GwAircraft *aircraft,
         const GwPiece    *piece)
{
  GwRole role;

  switch (piece->group)
    {
    case GW_GROUP_SURFACE:
      role = aircraft->surfaces[piece->owner].role;
      return role == GW_ROLE_WING || role == GW_ROLE_SECOND_WING ? wing_part (piece->kind)
                                                                 : PART_TAIL;
    case GW_GROUP_BODY:
    case GW_GROUP_STRUT:
      return PART_BODY;
    case GW_GROUP_LEG:
      return PART_GEAR;
    case GW_GROUP_POWER:
      return PART_POWER;
    case GW_GROUP_ITEM:
    case GW_N_GROUPS:
    default:
      return PART_EQUIPMENT;
    }
}

static GwMassBar
make_bar (GwSheet *sheet,
          guint    option)
{
  const GwOutcome *outcome = gw_evaluation_outcome (sheet->evaluation, option);
  const GwPieces  *pieces = &outcome->results.pieces;
  double          *parts = gw_sheet_keep_new (sheet, double, N_PARTS);

  for (size_t i = 0; i < pieces->n; i++)
    parts[part_of (&outcome->assembly->aircraft, &pieces->v[i])] += pieces->v[i].mass.total;

  return (GwMassBar){
    .name = outcome->short_name,
    .option = (int) option,
    .parts = parts,
    .total = outcome->results.value[GW_RESULT_MASS],
    .low = outcome->results.value[GW_RESULT_MASS] + outcome->band[GW_RESULT_MASS].low,
    .high = outcome->results.value[GW_RESULT_MASS] + outcome->band[GW_RESULT_MASS].high,
  };
}

static GwMassFigure
make_masses (GwSheet *sheet,
             guint    shown)
{
  const guint  n = sheet->evaluation->outcomes->len;
  GwMassBar   *bars = gw_sheet_keep_new (sheet, GwMassBar, n);
  const char **names = gw_sheet_keep_new (sheet, const char *, N_PARTS);

  for (guint i = 0; i < n; i++)
    bars[i] = make_bar (sheet, i);
  for (guint i = 0; i < N_PARTS; i++)
    names[i] = _ (part_labels[i]);

  return (GwMassFigure){
    .title = _ ("What the mass is made of"),
    .unit = gw_units_name (&sheet->units, GW_G),
    .scale = factor_of (&sheet->units, GW_G),
    .decimals = gw_units_decimals (&sheet->units, GW_G, 0),
    .n_parts = N_PARTS,
    .parts = names,
    .n_bars = n,
    .bars = bars,
    .shown = (int) shown,
    .baseline = (int) sheet->evaluation->baseline,
  };
}

static GwSummaryCell
make_cell (GwSheet   *sheet,
           guint      option,
           GwResultId id)
{
  const GwOutcome *outcome = gw_evaluation_outcome (sheet->evaluation, option);
  const GwUnits   *units = &sheet->units;
  char            *band = gw_band_text (id, outcome->results.value[id], &outcome->band[id], units);
  char            *change =
    option != sheet->evaluation->baseline ? gw_change_text (id, outcome->change[id], units) : NULL;

  return (GwSummaryCell){
    .value = gw_sheet_keep (sheet, gw_value_text (id, outcome->results.value[id], units)),
    .band = gw_sheet_keep (sheet, band),
    .short_band = gw_sheet_keep (sheet, gw_short_band_text (id, &outcome->band[id], units)),
    .change = gw_sheet_keep (sheet, change),
    .limit = gw_limit_of (outcome, id),
    .style = GW_STYLE_UPRIGHT,
  };
}

static gboolean
has_answer (const GwEvaluation *evaluation,
            GwResultId          id)
{
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    if (isfinite (gw_evaluation_outcome (evaluation, i)->results.value[id]))
      return TRUE;

  return FALSE;
}

static GwSummaryFigure
make_summary (GwSheet *sheet,
              guint    shown)
{
  const GwEvaluation *evaluation = sheet->evaluation;
  const guint         n = evaluation->outcomes->len;
  const char        **names = gw_sheet_keep_new (sheet, const char *, n);
  int                *options = gw_sheet_keep_new (sheet, int, n);
  GwSummaryRow       *rows = gw_sheet_keep_new (sheet, GwSummaryRow, GW_N_RESULTS);
  gsize               n_rows = 0;

  for (guint i = 0; i < n; i++)
    {
      names[i] = gw_evaluation_outcome (evaluation, i)->short_name;
      options[i] = (int) i;
    }

  for (guint id = 0; id < GW_N_RESULTS; id++)
    {
      const GwResultInfo *info = gw_result_info ((GwResultId) id);
      GwSummaryCell      *cells;

      if (!info->is_on_sheet || !has_answer (evaluation, (GwResultId) id))
        continue;
      cells = gw_sheet_keep_new (sheet, GwSummaryCell, n);
      for (guint i = 0; i < n; i++)
        cells[i] = make_cell (sheet, i, (GwResultId) id);
      rows[n_rows++] =
        (GwSummaryRow){ _ (info->label), gw_result_unit ((GwResultId) id, &sheet->units), (int) id,
                        cells };
    }

  return (GwSummaryFigure){
    .n_columns = n,
    .names = names,
    .options = options,
    .n_rows = n_rows,
    .rows = rows,
    .shown = (int) shown,
    .baseline = (int) evaluation->baseline,
    .legend =
      _ ("× limit not kept   ± or range: 10th–90th percentile   + − against baseline"),
  };
}

/* Date of issue; SOURCE_DATE_EPOCH makes a sheet that can be made again bit by bit. */
static char *
date_text (void)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  g_autoptr (GDateTime) now = epoch != NULL
                                ? g_date_time_new_from_unix_utc (g_ascii_strtoll (epoch, NULL, 10))
                                : g_date_time_new_now_local ();

  return now != NULL ? g_date_time_format (now, "%Y-%m-%d") : NULL; /* an epoch beyond all dates */
}

static GwTitleBlock
make_title (GwSheet *sheet,
            guint    shown)
{
  const GwEvaluation *evaluation = sheet->evaluation;
  const GwOutcome    *outcome = gw_evaluation_outcome (evaluation, shown);
  GwTitleBlock        title = {
    .title_label = _ ("Title"),
    .title = evaluation->study->name != NULL ? evaluation->study->name : _ ("Study without a name"),
    .option_label = _ ("Option shown"),
    .option = outcome->name,
    .sheet_label = _ ("Sheet, scale"),
    .sheet = _ ("1 of 1"),
    .date_label = _ ("Date"),
    .date = gw_sheet_keep (sheet, date_text ()),
    .standing = _ ("estimate, not a test"),
  };
  guint n = 0;

  for (guint bit = 0; bit < 32 && n + 1 < G_N_ELEMENTS (title.notes); bit++)
    if (outcome->results.notes & (1u << bit))
      title.notes[n++] = gw_note_text ((GwNote) (1u << bit));

  return title;
}

GwSheet *
gw_sheet_new (GwEvaluation  *evaluation,
              guint          shown,
              gboolean       is_paper,
              const GwUnits *units)
{
  GwSheet *sheet = g_new0 (GwSheet, 1);

  sheet->evaluation = gw_evaluation_ref (evaluation);
  sheet->units = units != NULL ? *units : *gw_units_standard ();
  sheet->blocks = g_ptr_array_new_with_free_func (g_free);
  sheet->figure = (GwSheetFigure){
    .planform = make_airframe (sheet, shown),
    .stall = gw_sheet_stall (sheet, shown),
    .masses = make_masses (sheet, shown),
    .summary = make_summary (sheet, shown),
    .title = make_title (sheet, shown),
    .is_paper = is_paper,
  };
  return sheet;
}

void
gw_sheet_free (GwSheet *sheet)
{
  g_ptr_array_unref (sheet->blocks);
  gw_evaluation_unref (sheet->evaluation);
  g_free (sheet);
}

const GwSheetFigure *
gw_sheet_get_figure (const GwSheet *sheet)
{
  return &sheet->figure;
}

static const char *const figure_names[GW_N_FIGURES] = {
  [GW_FIGURE_SHEET] = "sheet",
  [GW_FIGURE_PLANFORM] = "planform",
  [GW_FIGURE_SIDE] = "side",
  [GW_FIGURE_STALL] = "stall",
  [GW_FIGURE_MASSES] = "masses",
  [GW_FIGURE_SUMMARY] = "summary",
};

const char *
gw_figure_kind_name (GwFigureKind kind)
{
  g_return_val_if_fail (kind < GW_N_FIGURES, NULL);

  return figure_names[kind];
}

gboolean
gw_figure_kind_parse (const char   *name,
                      GwFigureKind *kind)
{
  for (guint i = 0; i < GW_N_FIGURES; i++)
    if (g_strcmp0 (name, figure_names[i]) == 0)
      {
        *kind = (GwFigureKind) i;
        return TRUE;
      }

  return FALSE;
}

static void
layout (const GwSheet *sheet,
        GwFigureKind   kind,
        GwBox          box,
        GwDrawing     *drawing)
{
  gw_drawing_clear (drawing);
  switch (kind)
    {
    case GW_FIGURE_SHEET:
      gw_figure_sheet (drawing, box, &sheet->figure);
      break;
    case GW_FIGURE_PLANFORM:
      gw_figure_planform (drawing, box, &sheet->figure.planform);
      break;
    case GW_FIGURE_SIDE:
      gw_figure_side (drawing, box, &sheet->figure.planform);
      break;
    case GW_FIGURE_STALL:
      gw_figure_stall (drawing, box, &sheet->figure.stall);
      break;
    case GW_FIGURE_MASSES:
      gw_figure_masses (drawing, box, &sheet->figure.masses);
      break;
    case GW_FIGURE_SUMMARY:
      gw_figure_summary (drawing, box, &sheet->figure.summary);
      break;
    case GW_N_FIGURES:
    default:
      g_assert_not_reached ();
    }
}

void
gw_sheet_layout (const GwSheet *sheet,
                 GwFigureKind   kind,
                 double         width,
                 double         height,
                 GwDrawing     *drawing)
{
  layout (sheet, kind, (GwBox){ 0.0, 0.0, width, height }, drawing);
}

GwDrawing *
gw_sheet_draw (const GwSheet *sheet,
               GwFigureKind   kind,
               double         width,
               double         height,
               gboolean       is_dark)
{
  GwDrawing  *drawing = gw_drawing_new (gw_theme_get (is_dark));
  const GwBox whole = { 0.0, 0.0, width, height };

  /* The sheet has its frame. */
  layout (sheet, kind,
          kind == GW_FIGURE_SHEET ? whole : gw_box_inset (whole, GW_FIGURE_MARGIN), drawing);
  return drawing;
}
