/* gw-object-table-all.c - the tables of all options: stall curve, masses, summary
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-object-table-private.h"
#include "report/gw-sheet.h"

#define SPEED_DECIMALS 2

void
_gw_table_fill_stall (GwTabling *tabling)
{
  const GwEvaluation *evaluation = tabling->evaluation;

  _gw_table_number_column (tabling, _ ("mass"), GW_G);
  for (guint k = 0; k < evaluation->outcomes->len; k++)
    {
      const char      *name = gw_evaluation_outcome (evaluation, k)->short_name;
      g_autofree char *band = g_strdup_printf (_ ("%s, band"), name);

      _gw_table_number_column (tabling, name, GW_M_S);
      _gw_table_number_column (tabling, band, GW_M_S);
    }

  for (guint i = 0; i < GW_CURVE_N; i++)
    {
      _gw_table_row (tabling, NULL);
      _gw_table_number (tabling, GW_G, evaluation->curve_mass[i], 0);
      for (guint k = 0; k < evaluation->outcomes->len; k++)
        {
          const GwOutcome *outcome = gw_evaluation_outcome (evaluation, k);

          _gw_table_number (tabling, GW_M_S, outcome->results.curve[i], SPEED_DECIMALS);
          _gw_table_band (tabling, GW_M_S, outcome->results.curve[i], &outcome->curve_band[i],
                          SPEED_DECIMALS);
        }
    }
}

/* The parts are those of the figure, so that bars and table cannot differ. */
void
_gw_table_fill_masses (GwTabling *tabling)
{
  g_autoptr (GwSheet) sheet =
    gw_sheet_new (tabling->evaluation, tabling->shown, FALSE, tabling->units);
  const GwMassFigure *figure = &gw_sheet_get_figure (sheet)->masses;

  _gw_table_text_column (tabling, _ ("part"));
  for (size_t k = 0; k < figure->n_bars; k++)
    _gw_table_number_column (tabling, figure->bars[k].name, GW_G);
  for (size_t i = 0; i < figure->n_parts; i++)
    {
      _gw_table_row (tabling, NULL);
      _gw_table_text (tabling, figure->parts[i]);
      for (size_t k = 0; k < figure->n_bars; k++)
        _gw_table_number (tabling, GW_G, figure->bars[k].parts[i], 0);
    }

  _gw_table_row (tabling, NULL);
  _gw_table_text (tabling, _ (gw_result_info (GW_RESULT_MASS)->label));
  for (size_t k = 0; k < figure->n_bars; k++)
    _gw_table_number (tabling, GW_G, figure->bars[k].total, 0);
}

static gboolean
has_answer (const GwEvaluation *evaluation,
            GwResultId          id)
{
  for (guint k = 0; k < evaluation->outcomes->len; k++)
    if (isfinite (gw_evaluation_outcome (evaluation, k)->results.value[id]))
      return TRUE;

  return FALSE;
}

static const char *
limit_text (GwLimit limit)
{
  if (limit == GW_LIMIT_NONE)
    return "";

  return limit == GW_LIMIT_KEPT ? _ ("kept") : _ ("not kept");
}

static void
add_summary_cells (GwTabling *tabling,
                   guint      option,
                   GwResultId id)
{
  const GwOutcome    *outcome = gw_evaluation_outcome (tabling->evaluation, option);
  const GwResultInfo *info = gw_result_info (id);
  g_autofree char    *change = NULL;

  _gw_table_number (tabling, info->quantity, outcome->results.value[id], info->decimals);
  _gw_table_band (tabling, info->quantity, outcome->results.value[id], &outcome->band[id],
                  info->decimals);
  if (option != tabling->evaluation->baseline)
    {
      change = gw_amount_change (tabling->units, info->quantity, outcome->change[id],
                                 info->decimals);
      _gw_table_text (tabling, change);
    }
  _gw_table_text (tabling, limit_text (gw_limit_of (outcome, id)));
}

void
_gw_table_fill_summary (GwTabling *tabling)
{
  const GwEvaluation *evaluation = tabling->evaluation;

  _gw_table_text_column (tabling, _ ("result"));
  _gw_table_text_column (tabling, _ ("unit"));
  for (guint k = 0; k < evaluation->outcomes->len; k++)
    {
      const char      *name = gw_evaluation_outcome (evaluation, k)->short_name;
      g_autofree char *band = g_strdup_printf (_ ("%s, band"), name);
      g_autofree char *change = g_strdup_printf (_ ("%s, against the baseline"), name);
      g_autofree char *limit = g_strdup_printf (_ ("%s, limit"), name);

      _gw_table_number_column (tabling, name, GW_RATIO);
      _gw_table_number_column (tabling, band, GW_RATIO);
      if (k != evaluation->baseline)
        _gw_table_number_column (tabling, change, GW_RATIO);
      _gw_table_text_column (tabling, limit);
    }

  for (guint id = 0; id < GW_N_RESULTS; id++)
    {
      if (!has_answer (evaluation, (GwResultId) id))
        continue;
      _gw_table_row (tabling, NULL);
      _gw_table_text (tabling, _ (gw_result_info ((GwResultId) id)->label));
      _gw_table_text (tabling,
                      gw_units_name (tabling->units, gw_result_info ((GwResultId) id)->quantity));
      for (guint k = 0; k < evaluation->outcomes->len; k++)
        add_summary_cells (tabling, k, (GwResultId) id);
    }
}
