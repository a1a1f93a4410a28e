/* gw-document-file.c - the file a document lies in: read, watched
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-document-private.h"

/* Programs write a file in several steps; it is read when this has passed since the last [ms]. */
#define SETTLE_TIME 150

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
    _gw_document_take_study (self, reading->study);

  g_clear_object (&self->reading);
  reading_free (reading);
  _gw_document_finish (self);
}

void
gw_document_reload (GwDocument *self)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  if (self->file != NULL)
    _gw_document_run (self, &self->reading, read_worker, g_object_ref (self->file), g_object_unref,
                      read_cb);
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

void
_gw_document_unwatch (GwDocument *self)
{
  g_clear_handle_id (&self->settle_source, g_source_remove);
  if (self->monitor == NULL)
    return;

  g_signal_handlers_disconnect_by_data (self->monitor, self);
  g_file_monitor_cancel (self->monitor);
  g_clear_object (&self->monitor);
}

void
_gw_document_watch (GwDocument *self,
                    GFile      *file)
{
  _gw_document_unwatch (self);
  g_set_object (&self->file, file);
  /* Some places cannot be watched; there is Reload. */
  self->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect_swapped (self->monitor, "changed", G_CALLBACK (file_changed_cb), self);
}
