/* gw-outcome-grid.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-outcome-grid.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-direction.h"
#include "report/gw-amount.h"

static void
add_label (GtkGrid    *grid,
           int         column,
           int         row,
           const char *text,
           const char *css_class)
{
  /* Of the goal words are a part. */
  const gboolean   is_number = column > 0 && column != 2 && row > 0;
  g_autofree char *number = is_number ? gw_direction_number (text) : NULL;
  GtkWidget       *label = gtk_label_new (number != NULL ? number : text);

  /* Names and headings give way to numbers. */
  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0.0f : 1.0f);
  gtk_label_set_justify (GTK_LABEL (label),
                         column == 0 ? GTK_JUSTIFY_LEFT : GTK_JUSTIFY_RIGHT);
  gtk_label_set_wrap (GTK_LABEL (label), column == 0 || row == 0);
  gtk_widget_set_valign (label, row == 0 ? GTK_ALIGN_END : GTK_ALIGN_BASELINE);
  gtk_widget_set_hexpand (label, column == 0);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (grid, label, column, row, 1, 1);
}

/* How far it is from the goal, which is seldom met: how it is built sets the mass. */
static char *
against_goal_text (const GwUnits   *units,
                   const GwOutcome *outcome,
                   double           goal)
{
  const double     grams = 1000.0 * outcome->results.value[GW_RESULT_MASS];
  const double     over = grams - goal;
  g_autofree char *size = gw_amount_size (units, GW_G, over / 1000.0, 0);

  return g_strdup_printf (over > 0.0 ? _ ("%s over") : _ ("%s under"), size);
}

void
gw_outcome_grid_show (GtkGrid            *grid,
                      const GwEvaluation *evaluation,
                      const GwUnits      *units,
                      double              goal)
{
  static const GwResultId ids[] = { GW_RESULT_MASS, GW_RESULT_WING_LOADING, GW_RESULT_STALL_SPEED,
                                    GW_RESULT_STATIC_MARGIN };
  const char *const       heads[] = { _ ("It comes to"), _ ("mass"), _ ("against the goal"),
                                      _ ("wing loading"),
                                      _ ("stall speed"), _ ("static margin") };
  GtkWidget              *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (grid))) != NULL)
    gtk_grid_remove (grid, child);
  for (guint i = 0; i < G_N_ELEMENTS (heads); i++)
    add_label (grid, (int) i, 0, heads[i], "quiet");

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
      g_autofree char *distance = against_goal_text (units, outcome, goal);
      const int        row = (int) i + 1;

      add_label (grid, 0, row, outcome->name, NULL);
      add_label (grid, 2, row, distance, NULL);
      for (guint k = 0; k < G_N_ELEMENTS (ids); k++)
        {
          g_autofree char *text = gw_amount_result (units, ids[k], outcome->results.value[ids[k]]);

          add_label (grid, k == 0 ? 1 : (int) k + 2, row, text, NULL);
        }
    }
}
