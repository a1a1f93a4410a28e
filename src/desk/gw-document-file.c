/* gw-document-file.c - the file a document lies in: read, watched, saved
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "desk/gw-document-private.h"

/* Programs write a file in several steps; it is read when this has passed since the last [ms]. */
#define SETTLE_TIME 150

typedef struct
{
  GwStudy      *study; /* or NULL and */
  GError       *error;
  GwEvaluation *quick; /* (nullable) */
  gboolean      is_gone;
  GPtrArray    *problems;
  char         *etag; /* from before the reading: a change during it is seen afterwards */
} Reading;

static void
reading_free (Reading *reading)
{
  g_clear_pointer (&reading->study, gw_study_unref);
  g_clear_error (&reading->error);
  g_clear_pointer (&reading->quick, gw_evaluation_unref);
  g_clear_pointer (&reading->problems, g_ptr_array_unref);
  g_free (reading->etag);
  g_free (reading);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Reading, reading_free)

static char *
query_etag (GFile *file)
{
  g_autoptr (GFileInfo) info =
    g_file_query_info (file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE, NULL, NULL);

  /* What lies within the program has none. */
  return info != NULL && g_file_info_has_attribute (info, G_FILE_ATTRIBUTE_ETAG_VALUE)
           ? g_strdup (g_file_info_get_etag (info))
           : NULL;
}

static Reading *
reading_new (GFile *file)
{
  Reading *reading = g_new0 (Reading, 1);

  reading->etag = query_etag (file);
  reading->problems = gw_problems_new ();
  reading->study = gw_study_load (file, reading->problems, &reading->error);
  reading->is_gone = reading->study == NULL && !g_file_query_exists (file, NULL);
  return reading;
}

static void
set_study (GwStudy **place,
           GwStudy  *study)
{
  if (study != NULL)
    gw_study_ref (study);
  g_clear_pointer (place, gw_study_unref);
  *place = study;
}

static gboolean
is_same (const GwStudy *a,
         const GwStudy *b)
{
  return a != NULL && b != NULL && gw_record_equal (&a->record, &b->record);
}

/* The file holds @study: all that was at odds is settled. */
static void
settle (GwDocument *self,
        GwStudy    *study)
{
  set_study (&self->on_disk, study);
  set_study (&self->newer, NULL);
  self->is_gone = self->is_apart = FALSE;
  g_clear_error (&self->reading_error);
}

/* Our own writing is read as well, and known by what it holds. */
static void
take_reading (GwDocument *self,
              Reading    *reading,
              gboolean    is_asked)
{
  g_ptr_array_unref (self->problems);
  self->problems = g_steal_pointer (&reading->problems);
  g_clear_error (&self->reading_error);
  self->reading_error = g_steal_pointer (&reading->error);
  self->is_gone = reading->is_gone;
  set_study (&self->newer, NULL);
  g_free (self->etag);
  self->etag = g_steal_pointer (&reading->etag);

  if (reading->study == NULL ||
      (!is_asked && self->history != NULL && is_same (reading->study, self->on_disk)))
    ; /* nothing new */
  else if (is_asked || !gw_document_is_modified (self) ||
           is_same (reading->study, gw_document_get_study (self)))
    {
      settle (self, reading->study);
      if (self->evaluation == NULL)
        self->evaluation = g_steal_pointer (&reading->quick);
      _gw_document_take_study (self, reading->study);
    }
  else
    set_study (&self->newer, reading->study);

  _gw_document_keep (self);
}

static void
read_worker (GTask        *task,
             gpointer      source,
             gpointer      data,
             GCancellable *cancellable)
{
  g_task_return_pointer (task, reading_new (data), (GDestroyNotify) reading_free);
}

/* While there is nothing on the screen, the values are the thread's work as well. */
static void
read_first_worker (GTask        *task,
                   gpointer      source,
                   gpointer      data,
                   GCancellable *cancellable)
{
  Reading *reading = reading_new (data);

  if (reading->study != NULL)
    reading->quick = gw_evaluation_quick (reading->study, NULL, NULL);
  g_task_return_pointer (task, reading, (GDestroyNotify) reading_free);
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  GwDocument *self = data;
  g_autoptr (Reading) reading = g_task_propagate_pointer (G_TASK (result), NULL);
  gboolean is_asked;

  if (reading == NULL)
    return; /* cancelled */

  is_asked = self->is_asked;
  self->is_asked = FALSE;
  g_clear_object (&self->reading);
  take_reading (self, reading, is_asked);
  _gw_document_finish (self);
}

static void
read_file (GwDocument *self)
{
  _gw_document_run (self, &self->reading,
                    self->evaluation == NULL ? read_first_worker : read_worker,
                    g_object_ref (self->file), g_object_unref, read_cb);
}

void
gw_document_reload (GwDocument *self)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  if (self->file == NULL)
    return;

  self->is_asked = TRUE;
  read_file (self);
}

static gboolean
settle_cb (gpointer data)
{
  GwDocument *self = data;

  self->settle_source = 0;
  read_file (self);
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

void
_gw_document_forget_file (GwDocument *self)
{
  g_clear_object (&self->file);
  g_clear_pointer (&self->problems, g_ptr_array_unref);
  g_clear_pointer (&self->on_disk, gw_study_unref);
  g_clear_pointer (&self->newer, gw_study_unref);
  g_clear_pointer (&self->etag, g_free);
  g_clear_error (&self->reading_error);
  g_clear_error (&self->keeping_error);
}

GwOnDisk
gw_document_get_on_disk (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), GW_ON_DISK_SAME);

  if (self->is_gone)
    return GW_ON_DISK_GONE;
  if (self->reading_error != NULL)
    return GW_ON_DISK_BROKEN;

  return self->newer != NULL ? GW_ON_DISK_NEWER : GW_ON_DISK_SAME;
}

gboolean
gw_document_is_modified (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);

  return self->history != NULL &&
         (self->is_gone || self->is_apart || gw_history_is_modified (self->history));
}

void
gw_document_keep_mine (GwDocument *self)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  if (self->newer != NULL)
    {
      g_autoptr (GwStudy) newer = g_steal_pointer (&self->newer);

      settle (self, newer);
    }
  g_clear_error (&self->reading_error);
  self->is_apart = TRUE;
  _gw_document_keep (self);
  _gw_document_finish (self);
}

gboolean
gw_document_needs_name (GwDocument *self)
{
  g_autoptr (GFileInfo) info = NULL;

  g_return_val_if_fail (GW_IS_DOCUMENT (self), TRUE);

  if (self->file == NULL || g_file_has_uri_scheme (self->file, "resource"))
    return TRUE;

  info = g_file_query_info (self->file, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE, G_FILE_QUERY_INFO_NONE,
                            NULL, NULL);
  return info != NULL && g_file_info_has_attribute (info, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE) &&
         !g_file_info_get_attribute_boolean (info, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE);
}

static gboolean
write_study (GwDocument *self,
             GFile      *file,
             GError    **error)
{
  GwStudy *study = gw_document_get_study (self);

  g_return_val_if_fail (study != NULL, FALSE);

  if (!gw_study_save (study, file, error))
    return FALSE;

  /* What is on its way was read before. */
  _gw_document_cancel (&self->reading);
  g_clear_handle_id (&self->settle_source, g_source_remove);
  g_free (self->etag);
  self->etag = query_etag (file);
  settle (self, study);
  if (self->file == NULL || !g_file_equal (file, self->file))
    _gw_document_watch (self, file);
  gw_history_mark_saved (self->history);
  _gw_document_finish (self);
  return TRUE;
}

/* The monitor may be late, or there may be none. */
static void
look_at_file (GwDocument *self)
{
  g_autofree char *etag = query_etag (self->file);

  if (etag != NULL && g_strcmp0 (etag, self->etag) != 0 && self->newer == NULL)
    {
      g_autoptr (Reading) reading = reading_new (self->file);

      _gw_document_cancel (&self->reading);
      take_reading (self, reading, FALSE);
      _gw_document_finish (self);
    }
}

gboolean
gw_document_save (GwDocument *self,
                  GError    **error)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (self->file != NULL, FALSE);

  look_at_file (self);
  if (self->newer != NULL || gw_document_get_on_disk (self) == GW_ON_DISK_BROKEN)
    {
      g_autofree char *name = gw_document_get_name (self);

      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE,
                   _ ("%s was changed by another program"), name);
      return FALSE;
    }

  return write_study (self, self->file, error);
}

gboolean
gw_document_save_as (GwDocument *self,
                     GFile      *file,
                     GError    **error)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);

  return write_study (self, file, error);
}

gboolean
gw_document_save_copy (GwDocument *self,
                       GFile      *file,
                       GError    **error)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);

  return gw_study_save (gw_document_get_study (self), file, error);
}

static void
keeping_failed_cb (const GError *error,
                   gpointer      data)
{
  GwDocument    *self = data;
  const gboolean is_news = (error != NULL) != (self->keeping_error != NULL);

  g_clear_error (&self->keeping_error);
  if (error != NULL)
    self->keeping_error = g_error_copy (error);
  if (is_news)
    _gw_document_finish (self);
}

void
_gw_document_keep (GwDocument *self)
{
  if (!gw_document_is_modified (self))
    {
      if (self->recovery != NULL)
        gw_recovery_forget (self->recovery);
      return;
    }

  if (self->recovery == NULL)
    self->recovery = gw_recovery_new (keeping_failed_cb, self);
  gw_recovery_keep (self->recovery, gw_document_get_study (self), self->file);
}

const GError *
gw_document_get_keeping_error (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->keeping_error;
}

/* A file somewhere in the network is not waited for. */
static Reading *
read_original (GFile *file)
{
  return file != NULL && (g_file_is_native (file) || g_file_has_uri_scheme (file, "resource"))
           ? reading_new (file)
           : NULL;
}

GwDocument *
gw_document_new_recovered (GwStudy    *study,
                           GFile      *file,
                           const char *path)
{
  GwDocument *self = g_object_new (GW_TYPE_DOCUMENT, NULL);
  g_autoptr (Reading) reading = read_original (file);

  if (file != NULL)
    _gw_document_watch (self, file);

  if (reading != NULL && reading->study != NULL)
    {
      take_reading (self, reading, FALSE);
      gw_history_push (self->history, _ ("Bring unsaved work back"), study, NULL);
    }
  else
    {
      _gw_document_take_study (self, study);
      self->is_apart = TRUE;
      if (reading != NULL)
        take_reading (self, reading, FALSE);
    }

  /* Not before: while the document is as the file is, what is kept is dropped. */
  if (self->recovery == NULL)
    self->recovery = gw_recovery_new (keeping_failed_cb, self);
  gw_recovery_adopt (self->recovery, path, study);
  _gw_document_keep (self);
  return self;
}
