/* gw-document-compute.c - values at once; sections and bands in a thread
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-document-private.h"

#define REST 60 /* before bands are computed [ms] */

/* What the thread is given, and tells while it works: the document only looks at it. */
struct _GwComputing
{
  GwStudy *study;
  gint     done, all; /* polars of sections */
};

static void
computing_clear (GwComputing *computing)
{
  gw_study_unref (computing->study);
}

static void
computing_unref (gpointer computing)
{
  g_atomic_rc_box_release_full (computing, (GDestroyNotify) computing_clear);
}

static void
progress_cb (guint    done,
             guint    all,
             gpointer data)
{
  GwComputing *computing = data;

  g_atomic_int_set (&computing->done, (gint) done);
  g_atomic_int_set (&computing->all, (gint) all);
}

static void
compute_worker (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  GwComputing  *computing = data;
  GError       *error = NULL;
  GwEvaluation *evaluation = NULL;

  /* The next edit goes before. */
  for (guint i = 0; i < REST && !g_cancellable_is_cancelled (cancellable); i++)
    g_usleep (1000);

  if (gw_evaluation_prepare (computing->study, progress_cb, computing, cancellable, &error))
    evaluation = gw_evaluation_new (computing->study, cancellable, &error);
  if (evaluation != NULL)
    g_task_return_pointer (task, evaluation, (GDestroyNotify) gw_evaluation_unref);
  else
    g_task_return_error (task, error);
}

static gboolean
start_cb (gpointer task)
{
  if (!g_task_return_error_if_cancelled (task))
    g_task_run_in_thread (task, compute_worker);
  return G_SOURCE_REMOVE;
}

static void
computed_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  GwDocument *self = data;
  g_autoptr (GError) error = NULL;
  GwEvaluation *evaluation = g_task_propagate_pointer (G_TASK (result), &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;

  g_clear_object (&self->computing);
  _gw_document_forget_computing (self);
  g_clear_error (&self->computing_error);
  self->computing_error = g_steal_pointer (&error);
  if (evaluation != NULL)
    _gw_document_set_evaluation (&self->evaluation, evaluation);

  _gw_document_finish (self);
}

void
_gw_document_forget_computing (GwDocument *self)
{
  g_clear_pointer (&self->progress, computing_unref);
}

gboolean
gw_document_get_progress (GwDocument *self,
                          guint      *done,
                          guint      *all)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);

  *done = *all = 0;
  if (self->progress != NULL)
    {
      *done = (guint) g_atomic_int_get (&self->progress->done);
      *all = (guint) g_atomic_int_get (&self->progress->all);
    }

  return *all > *done;
}

/* Values now, from the bands there are; the bands follow. */
void
_gw_document_compute (GwDocument *self,
                      GwStudy    *study)
{
  if (self->evaluation == NULL || self->evaluation->study != study)
    {
      GwEvaluation *quick = gw_evaluation_quick (study, self->evaluation, NULL);

      if (quick != NULL)
        _gw_document_set_evaluation (&self->evaluation, quick);
    }

  g_clear_pointer (&self->computed, gw_study_unref);
  self->computed = gw_study_ref (study);
  _gw_document_forget_computing (self);
  self->progress = g_atomic_rc_box_new0 (GwComputing);
  self->progress->study = gw_study_ref (study);
  /* The values are there; the frame that shows them goes before, undisturbed. */
  g_idle_add_full (G_PRIORITY_LOW, start_cb,
                   _gw_document_task (self, &self->computing,
                                      g_atomic_rc_box_acquire (self->progress), computing_unref,
                                      computed_cb),
                   g_object_unref);
}
