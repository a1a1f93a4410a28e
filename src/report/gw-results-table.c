/* gw-results-table.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-results-text.h"
#include "report/gw-sheet.h"
#include "study/gw-result.h"

#define VALUE_COLUMNS 25

/* Pads by characters, not bytes (minus and plus-minus are longer than one), with one blank
 * at least, so that columns never run into each other. */
static void
append_padded (GString    *out,
               const char *text,
               glong       columns,
               gboolean    is_right)
{
  const glong      blanks = MAX (1, columns - g_utf8_strlen (text, -1));
  g_autofree char *pad = g_strnfill ((gsize) blanks, ' ');

  g_string_append (out, is_right ? pad : text);
  g_string_append (out, is_right ? text : pad);
}

/* A name, cut to leave two blanks in its column. */
static void
append_name (GString    *out,
             const char *name,
             glong       columns,
             gboolean    is_right)
{
  g_autofree char *begin = g_utf8_substring (name, 0, MIN (columns - 3, g_utf8_strlen (name, -1)));
  g_autofree char *cut = g_strconcat (begin, "…", NULL);

  append_padded (out, g_utf8_strlen (name, -1) > columns - 2 ? cut : name, columns, is_right);
}

static char *
row_label (GwResultId id)
{
  const GwResultInfo *info = gw_result_info (id);

  return g_strdup_printf ("%s  %s", g_dgettext (GETTEXT_PACKAGE, info->label),
                          gw_result_unit (id, NULL));
}

/* Whatever the language, the longest label and two blanks. */
static glong
label_columns (void)
{
  glong most = 0;

  for (guint id = 0; id < GW_N_RESULTS; id++)
    {
      g_autofree char *label = row_label ((GwResultId) id);

      most = MAX (most, g_utf8_strlen (label, -1));
    }

  return most + 2;
}

static void
append_head (GString            *out,
             const GwEvaluation *evaluation,
             glong               labels)
{
  const char *title = evaluation->study->name;

  append_name (out, title != NULL ? title : "", labels, FALSE);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    append_name (out, gw_evaluation_outcome (evaluation, i)->short_name, VALUE_COLUMNS, TRUE);
  g_string_append_c (out, '\n');
}

static char *
cell_text (const GwOutcome *outcome,
           GwResultId       id)
{
  g_autofree char *value = gw_value_text (id, outcome->results.value[id], NULL);
  g_autofree char *band = gw_band_text (id, outcome->results.value[id], &outcome->band[id], NULL);

  return g_strdup_printf ("%s%s%s%s%s", value, band != NULL ? " (" : "", band != NULL ? band : "",
                          band != NULL ? ")" : "",
                          gw_limit_of (outcome, id) == GW_LIMIT_BROKEN ? " ×" : "  ");
}

static void
append_row (GString            *out,
            const GwEvaluation *evaluation,
            glong               labels,
            GwResultId          id)
{
  g_autofree char *label = row_label (id);
  gboolean         has_answer = FALSE;

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    has_answer |= isfinite (gw_evaluation_outcome (evaluation, i)->results.value[id]) != 0;
  if (!has_answer)
    return;

  append_padded (out, label, labels, FALSE);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      g_autofree char *cell = cell_text (gw_evaluation_outcome (evaluation, i), id);

      append_padded (out, cell, VALUE_COLUMNS, TRUE);
    }
  g_string_append_c (out, '\n');
}

static void
append_notes (GString         *out,
              const GwOutcome *outcome)
{
  for (guint bit = 0; bit < 32; bit++)
    if (outcome->results.notes & (1u << bit))
      g_string_append_printf (out, "%s: %s\n", outcome->name, gw_note_text ((GwNote) (1u << bit)));
}

char *
gw_results_table (const GwEvaluation *evaluation)
{
  const glong labels = label_columns ();
  GString    *out = g_string_new (NULL);

  append_head (out, evaluation, labels);
  for (guint id = 0; id < GW_N_RESULTS; id++)
    append_row (out, evaluation, labels, (GwResultId) id);
  g_string_append_printf (
    out, "\n%s\n",
    _ ("× limit not kept   in brackets: 10th to 90th percentile; estimates, not tests"));
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    append_notes (out, gw_evaluation_outcome (evaluation, i));

  return g_string_free (out, FALSE);
}
