/* gw-section-make.c - a figure of sections, made in a thread
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-section-figures.h"

/* All that a figure is made from. */
typedef struct
{
  GwEvaluation       *evaluation;
  GwSectionFigureKind kind;
  GwSectionChoice     choice;
  GwUnits             units;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  gw_evaluation_unref (order->evaluation);
  g_free (order);
}

static void
make_worker (GTask        *task,
             gpointer      source,
             gpointer      data,
             GCancellable *cancellable)
{
  const Order    *order = data;
  GError         *error = NULL;
  GwSectionSheet *sheet = gw_section_sheet_new (order->evaluation, order->kind, &order->choice,
                                                &order->units, cancellable, &error);

  if (sheet == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, sheet, (GDestroyNotify) gw_section_sheet_free);
}

void
gw_section_sheet_make (GwEvaluation          *evaluation,
                       GwSectionFigureKind    kind,
                       const GwSectionChoice *choice,
                       const GwUnits         *units,
                       GCancellable          *cancellable,
                       GAsyncReadyCallback    callback,
                       gpointer               data)
{
  /* Without a source object: the thread could be the last to let go of a widget. */
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  Order *order = g_new (Order, 1);

  *order = (Order){ gw_evaluation_ref (evaluation), kind, *choice, *units };
  g_task_set_task_data (task, order, order_free);
  g_task_run_in_thread (task, make_worker);
}

GwSectionSheet *
gw_section_sheet_made (GAsyncResult *result)
{
  return g_task_propagate_pointer (G_TASK (result), NULL);
}
