/* gw-words-rows.c - what changes, result by result
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"
#include "report/gw-sheet.h"
#include "report/gw-words-private.h"

void
gw_words_row_free (GwWordsRow *row)
{
  g_free (row->label);
  g_free (row->unit);
  g_free (row->before);
  g_free (row->after);
  g_free (row->change);
  g_free (row);
}

static GwVerdict
verdict_of (const GwPair *pair,
            GwResultId    id)
{
  const GwLimit before = gw_limit_of (pair->before, id), after = gw_limit_of (pair->after, id);
  const double  change = _gw_pair_change (pair, id);
  const GwSense sense = gw_words_sense (id);

  if (before == GW_LIMIT_KEPT && after == GW_LIMIT_BROKEN)
    return GW_VERDICT_WORSE;
  if (before == GW_LIMIT_BROKEN && after == GW_LIMIT_KEPT)
    return GW_VERDICT_BETTER;
  if (!isfinite (change) || _gw_pair_is_nothing (pair, id) || sense == GW_SENSE_NEITHER)
    return GW_VERDICT_NEUTRAL;

  return (change < 0.0) == (sense == GW_SENSE_LESS) ? GW_VERDICT_BETTER : GW_VERDICT_WORSE;
}

static void
add_row (const GwPair *pair,
         GwResultId    id,
         GPtrArray    *rows)
{
  const GwResultInfo *info = gw_result_info (id);
  const double        change = _gw_pair_change (pair, id);
  GwWordsRow         *row = g_new0 (GwWordsRow, 1);

  row->id = id;
  row->label = g_strdup (_ (info->label));
  row->unit = g_strdup (gw_units_name (pair->units, info->quantity));
  row->before = gw_amount_number (pair->units, info->quantity, _gw_pair_value (pair->before, id),
                                  info->decimals);
  row->after = gw_amount_number (pair->units, info->quantity, _gw_pair_value (pair->after, id),
                                 info->decimals);
  if (isfinite (change) && !_gw_pair_is_nothing (pair, id))
    row->change = gw_amount_change (pair->units, info->quantity, change, info->decimals);
  row->verdict = verdict_of (pair, id);
  row->sureness = _gw_pair_sureness (pair, id);
  g_ptr_array_add (rows, row);
}

static GPtrArray *
rows_new (const GwPair *pair,
          gboolean      is_change)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) gw_words_row_free);

  for (guint id = 0; id < GW_N_RESULTS; id++)
    if (gw_result_info ((GwResultId) id)->is_on_sheet &&
        (isfinite (_gw_pair_value (pair->before, (GwResultId) id)) ||
         isfinite (_gw_pair_value (pair->after, (GwResultId) id))) &&
        !(is_change && _gw_pair_is_shown_the_same (pair, (GwResultId) id)))
      add_row (pair, (GwResultId) id, rows);

  return rows;
}

GPtrArray *
gw_words_rows_against_baseline (const GwEvaluation *evaluation,
                                guint               option,
                                const GwUnits      *units)
{
  const GwPair pair = {
    .before = gw_evaluation_outcome (evaluation, evaluation->baseline),
    .after = gw_evaluation_outcome (evaluation, option),
    .units = units,
    .has_bands = !evaluation->is_quick && option != evaluation->baseline,
  };

  g_return_val_if_fail (pair.after != NULL, NULL);

  return rows_new (&pair, FALSE);
}

GPtrArray *
gw_words_rows_of_change (const GwEvaluation *before,
                         const GwEvaluation *after,
                         guint               option,
                         const GwUnits      *units)
{
  const GwPair pair = _gw_pair_of (before, after, option, units);

  g_return_val_if_fail (pair.after != NULL, NULL);

  if (pair.before == NULL)
    return g_ptr_array_new_with_free_func ((GDestroyNotify) gw_words_row_free);

  return rows_new (&pair, TRUE);
}
