/* gw-sheet-text.c - what the sheet says, in words
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-sheet.h"
#include "study/gw-result.h"

static void
append_result (GString         *out,
               const GwOutcome *outcome,
               GwResultId       id,
               const GwUnits   *units)
{
  const GwResultInfo *info = gw_result_info (id);
  g_autofree char    *value = NULL;

  if (!info->is_on_sheet || !isfinite (outcome->results.value[id]))
    return;

  value = gw_value_text (id, outcome->results.value[id], units);
  g_string_append_printf (out, "; %s %s %s", g_dgettext (GETTEXT_PACKAGE, info->label), value,
                          gw_result_unit (id, units));
  if (gw_limit_of (outcome, id) == GW_LIMIT_BROKEN)
    g_string_append_printf (out, " (%s)", _ ("limit not kept"));
}

char *
_gw_sheet_describe (const GwEvaluation *evaluation,
                    guint               shown,
                    const GwUnits      *units)
{
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, _ ("Planform and side view of %s, and all options side by side."),
                          gw_evaluation_outcome (evaluation, shown)->name);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);

      g_string_append_printf (out, "\n%s", outcome->name);
      if (i == evaluation->baseline)
        g_string_append_printf (out, " (%s)", _ ("baseline"));
      for (guint id = 0; id < GW_N_RESULTS; id++)
        append_result (out, outcome, (GwResultId) id, units);
      g_string_append_c (out, '.');
    }

  return g_string_free (out, FALSE);
}
