/* gw-document.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define G_LOG_DOMAIN "gw-document"

#include "desk/gw-document.h"

#include <glib/gi18n-lib.h>

/* Programs write a file in several steps; it is read when this has passed since the last [ms]. */
#define SETTLE_TIME 150

struct _GwDocument
{
  GObject parent_instance;

  GFile        *file;
  GFileMonitor *monitor;
  guint         settle_source;

  GwHistory    *history;
  GwStudy      *computed; /* what was last given to a thread */
  GwEvaluation *evaluation;
  GPtrArray    *problems;
  GError       *reading_error, *computing_error;

  /* Of the newest run of its kind, NULL at rest. To cancel one also drops its result, even
   * if that is on its way already: g_task_propagate_pointer() then gives the error alone. */
  GCancellable *reading, *computing;
};

G_DEFINE_FINAL_TYPE (GwDocument, gw_document, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_BUSY,
  N_PROPS
};

enum
{
  CHANGED,
  N_SIGNALS
};

static GParamSpec *properties[N_PROPS];
static guint       signals[N_SIGNALS];

static void
cancel (GCancellable **cancellable)
{
  g_cancellable_cancel (*cancellable);
  g_clear_object (cancellable);
}

/* The task has no source object: that would keep the document until the thread is through.
 * Its callback must therefore not touch the document once it was cancelled. */
static void
run (GwDocument         *self,
     GCancellable      **cancellable,
     GTaskThreadFunc     worker,
     gpointer            data,
     GDestroyNotify      destroy,
     GAsyncReadyCallback done)
{
  const gboolean was_busy = gw_document_is_busy (self);
  g_autoptr (GTask) task = NULL;

  cancel (cancellable);
  *cancellable = g_cancellable_new ();
  task = g_task_new (NULL, *cancellable, done, self);
  g_task_set_task_data (task, data, destroy);
  g_task_run_in_thread (task, worker);

  if (!was_busy)
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_BUSY]);
}

static void
finish (GwDocument *self,
        gboolean    was_busy)
{
  if (was_busy != gw_document_is_busy (self))
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_BUSY]);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
compute_worker (GTask        *task,
                gpointer      source,
                gpointer      data,
                GCancellable *cancellable)
{
  GError       *error = NULL;
  GwEvaluation *evaluation = gw_evaluation_new (data, cancellable, &error);

  if (evaluation != NULL)
    g_task_return_pointer (task, evaluation, (GDestroyNotify) gw_evaluation_unref);
  else
    g_task_return_error (task, error);
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
  g_clear_error (&self->computing_error);
  self->computing_error = g_steal_pointer (&error);
  if (evaluation != NULL)
    {
      g_clear_pointer (&self->evaluation, gw_evaluation_unref);
      self->evaluation = evaluation;
    }

  finish (self, TRUE);
}

static void
history_changed_cb (GwDocument *self)
{
  GwStudy *study = gw_history_get_study (self->history);

  if (study == self->computed)
    return;

  g_clear_pointer (&self->computed, gw_study_unref);
  self->computed = gw_study_ref (study);
  run (self, &self->computing, compute_worker, gw_study_ref (study),
       (GDestroyNotify) gw_study_unref, computed_cb);
}

typedef struct
{
  GwStudy   *study; /* or NULL and */
  GError    *error;
  GPtrArray *problems;
} Reading;

static void
reading_free (Reading *reading)
{
  g_clear_pointer (&reading->study, gw_study_unref);
  g_clear_error (&reading->error);
  g_clear_pointer (&reading->problems, g_ptr_array_unref);
  g_free (reading);
}

static void
read_worker (GTask        *task,
             gpointer      source,
             gpointer      data,
             GCancellable *cancellable)
{
  Reading *reading = g_new0 (Reading, 1);

  reading->problems = gw_problems_new ();
  reading->study = gw_study_load (data, reading->problems, &reading->error);
  g_task_return_pointer (task, reading, (GDestroyNotify) reading_free);
}

/* What was read becomes a step, so that edits made before it can be brought back. */
static void
take_study (GwDocument *self,
            GwStudy    *study)
{
  if (self->history == NULL)
    {
      self->history = gw_history_new (study);
      g_signal_connect_swapped (self->history, "changed", G_CALLBACK (history_changed_cb), self);
      history_changed_cb (self);
    }
  else if (!gw_record_equal (&study->record, &gw_history_get_study (self->history)->record))
    {
      gw_history_push (self->history, _ ("Read the file anew"), study, NULL);
      gw_history_mark_saved (self->history);
    }
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  GwDocument *self = data;
  Reading    *reading = g_task_propagate_pointer (G_TASK (result), NULL);

  if (reading == NULL)
    return; /* cancelled */

  g_clear_error (&self->reading_error);
  self->reading_error = g_steal_pointer (&reading->error);
  g_ptr_array_unref (self->problems);
  self->problems = g_steal_pointer (&reading->problems);
  if (reading->study != NULL)
    take_study (self, reading->study);

  g_clear_object (&self->reading);
  reading_free (reading);
  finish (self, TRUE);
}

void
gw_document_reload (GwDocument *self)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  run (self, &self->reading, read_worker, g_object_ref (self->file), g_object_unref, read_cb);
}

static gboolean
settle_cb (gpointer data)
{
  GwDocument *self = data;

  self->settle_source = 0;
  gw_document_reload (self);
  return G_SOURCE_REMOVE;
}

static void
file_changed_cb (GwDocument       *self,
                 GFile            *file,
                 GFile            *other,
                 GFileMonitorEvent event)
{
  if (event == G_FILE_MONITOR_EVENT_ATTRIBUTE_CHANGED)
    return;

  g_clear_handle_id (&self->settle_source, g_source_remove);
  self->settle_source = g_timeout_add (SETTLE_TIME, settle_cb, self);
}

static void
gw_document_get_property (GObject    *object,
                          guint       id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_BUSY:
      g_value_set_boolean (value, gw_document_is_busy (GW_DOCUMENT (object)));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_document_dispose (GObject *object)
{
  GwDocument *self = GW_DOCUMENT (object);

  cancel (&self->reading);
  cancel (&self->computing);
  g_clear_handle_id (&self->settle_source, g_source_remove);
  if (self->monitor != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->monitor, self);
      g_file_monitor_cancel (self->monitor);
    }
  if (self->history != NULL)
    g_signal_handlers_disconnect_by_data (self->history, self);

  G_OBJECT_CLASS (gw_document_parent_class)->dispose (object);
}

static void
gw_document_finalize (GObject *object)
{
  GwDocument *self = GW_DOCUMENT (object);

  g_clear_object (&self->file);
  g_clear_object (&self->monitor);
  g_clear_object (&self->history);
  g_clear_pointer (&self->computed, gw_study_unref);
  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  g_clear_pointer (&self->problems, g_ptr_array_unref);
  g_clear_error (&self->reading_error);
  g_clear_error (&self->computing_error);

  G_OBJECT_CLASS (gw_document_parent_class)->finalize (object);
}

static void
gw_document_class_init (GwDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = gw_document_get_property;
  object_class->dispose = gw_document_dispose;
  object_class->finalize = gw_document_finalize;

  properties[PROP_BUSY] =
    g_param_spec_boolean ("busy", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);

  signals[CHANGED] = g_signal_new ("changed", GW_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
gw_document_init (GwDocument *self)
{
  self->problems = gw_problems_new ();
}

GwDocument *
gw_document_new (GFile *file)
{
  GwDocument *self = g_object_new (GW_TYPE_DOCUMENT, NULL);

  self->file = g_object_ref (file);
  /* Some places cannot be watched; there is Reload. */
  self->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect_swapped (self->monitor, "changed", G_CALLBACK (file_changed_cb), self);
  gw_document_reload (self);
  return self;
}

GFile *
gw_document_get_file (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->file;
}

GwHistory *
gw_document_get_history (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->history;
}

GwEvaluation *
gw_document_get_evaluation (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->evaluation;
}

const GError *
gw_document_get_error (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->reading_error != NULL ? self->reading_error : self->computing_error;
}

const GPtrArray *
gw_document_get_problems (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->problems;
}

gboolean
gw_document_is_busy (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);

  return self->reading != NULL || self->computing != NULL;
}
