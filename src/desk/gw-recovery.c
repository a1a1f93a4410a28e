/* gw-recovery.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-recovery.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "study/gw-json.h"

#define DELAY 700 /* from an edit to its writing [ms] */

/* What the document and a thread that writes for it share. */
typedef struct
{
  gatomicrefcount count;
  GMutex          mutex;
  gboolean        is_over; /* nothing may be written any more */
  char           *path;
} Place;

typedef struct
{
  Place   *place;
  GwStudy *study;
  char    *uri;
} Job;

struct _GwRecovery
{
  GwRecoveryFailed failed;
  gpointer         data;

  Place        *place;   /* NULL: nothing is kept */
  GwStudy      *study;   /* newest, to be kept */
  GwStudy      *written; /* what the file holds or soon will */
  GFile        *file;
  GCancellable *writing; /* NULL at rest */
  guint         source;
};

/* Of this process; from the first need to the end. */
static struct
{
  int   lock;
  char *name;
  guint n_files;
} session = { .lock = -1 };

static gboolean
fail (GError    **error,
      const char *path)
{
  const int number = errno;

  g_set_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (number), "%s: %s", path,
               g_strerror (number));
  return FALSE;
}

char *
gw_recovery_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "gramwright", "recovery", NULL);
}

static char *
lock_path (const char *name)
{
  g_autofree char *folder = gw_recovery_folder ();
  g_autofree char *file = g_strconcat (name, ".lock", NULL);

  return g_build_filename (folder, file, NULL);
}

/* Another program that looks for leftovers may take the file away before it is locked. */
static gboolean
is_same_file (int         fd,
              const char *path)
{
  struct stat of_fd, of_path;

  return fstat (fd, &of_fd) == 0 && stat (path, &of_path) == 0 && of_fd.st_dev == of_path.st_dev &&
         of_fd.st_ino == of_path.st_ino;
}

static gboolean
lock_session (const char *path,
              GError    **error)
{
  do
    {
      if (session.lock >= 0)
        close (session.lock);
      session.lock = g_open (path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
      if (session.lock < 0)
        return fail (error, path);
      /* Where nothing can be locked, the number of the process must do. */
      while (flock (session.lock, LOCK_EX) != 0 && errno == EINTR)
        ;
    }
  while (!is_same_file (session.lock, path));

  return TRUE;
}

static gboolean
begin_session (GError **error)
{
  g_autofree char *folder = gw_recovery_folder ();
  g_autofree char *path = NULL;

  if (session.name != NULL)
    return TRUE;
  if (g_mkdir_with_parents (folder, 0700) != 0)
    return fail (error, folder);

  session.name = g_strdup_printf ("%ld-%08x", (long) getpid (), g_random_int ());
  path = lock_path (session.name);
  if (!lock_session (path, error))
    g_clear_pointer (&session.name, g_free);
  return session.name != NULL;
}

void
gw_recovery_end (void)
{
  g_autofree char *path = NULL;

  if (session.name == NULL)
    return;

  path = lock_path (session.name);
  g_unlink (path);
  close (session.lock);
  session.lock = -1;
  g_clear_pointer (&session.name, g_free);
}

char *
gw_recovery_new_path (GError **error)
{
  g_autofree char *folder = gw_recovery_folder ();
  g_autofree char *name = NULL;

  if (!begin_session (error))
    return NULL;

  name = g_strdup_printf ("%s.%u" GW_RECOVERY_ENDING, session.name, ++session.n_files);
  return g_build_filename (folder, name, NULL);
}

char *
gw_recovery_session_of (const char *name)
{
  g_autoptr (GRegex) form = g_regex_new ("^([0-9]+-[0-9a-f]{8})\\.", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;

  return g_regex_match (form, name, 0, &match) ? g_match_info_fetch (match, 1) : NULL;
}

gboolean
gw_recovery_is_running (const char *name)
{
  g_autofree char *path = lock_path (name);
  const int        lock = g_open (path, O_RDWR | O_CLOEXEC, 0);
  gboolean         is_running = FALSE;

  if (lock < 0)
    return FALSE;

  if (flock (lock, LOCK_EX | LOCK_NB) != 0)
    is_running = errno == EWOULDBLOCK || kill ((pid_t) atol (name), 0) == 0 || errno == EPERM;
  close (lock);
  return is_running;
}

static Place *
place_new (const char *path)
{
  Place *place = g_new0 (Place, 1);

  g_atomic_ref_count_init (&place->count);
  g_mutex_init (&place->mutex);
  place->path = g_strdup (path);
  return place;
}

static void
place_unref (Place *place)
{
  if (!g_atomic_ref_count_dec (&place->count))
    return;

  g_mutex_clear (&place->mutex);
  g_free (place->path);
  g_free (place);
}

static void
job_free (Job *job)
{
  place_unref (job->place);
  gw_study_unref (job->study);
  g_free (job->uri);
  g_free (job);
}

/* A study in a wrapping that says what it is of. */
static char *
job_text (const Job *job)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();
  g_autofree char *time = g_date_time_format_iso8601 (now);
  g_autofree char *study = gw_study_text (job->study);
  GString         *out = g_string_new (NULL);

  g_string_append_printf (out, "{\n  \"%s\": %d,\n  \"file\": ", GW_RECOVERY_FORMAT,
                          GW_RECOVERY_VERSION);
  if (job->uri != NULL)
    gw_json_print_string (out, job->uri);
  else
    g_string_append (out, "null");
  g_string_append (out, ",\n  \"time\": ");
  gw_json_print_string (out, time);
  g_string_append_printf (out, ",\n  \"process\": %ld,\n  \"study\": %s}\n", (long) getpid (),
                          study);
  return g_string_free (out, FALSE);
}

static void
write_worker (GTask        *task,
              gpointer      source,
              gpointer      data,
              GCancellable *cancellable)
{
  const Job       *job = data;
  Place           *place = job->place;
  g_autofree char *text = job_text (job);
  GError          *error = NULL;

  g_mutex_lock (&place->mutex);
  if (!place->is_over)
    g_file_set_contents_full (place->path, text, -1,
                              G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0600,
                              &error);
  g_mutex_unlock (&place->mutex);

  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_boolean (task, TRUE);
}

static void schedule (GwRecovery *self);

static void
written_cb (GObject      *source,
            GAsyncResult *result,
            gpointer      data)
{
  GwRecovery *self = data;
  g_autoptr (GError) error = NULL;

  g_task_propagate_boolean (G_TASK (result), &error);
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return; /* and gone, perhaps */

  g_clear_object (&self->writing);
  self->failed (error, self->data);
  schedule (self);
}

static gboolean
write_cb (gpointer data)
{
  GwRecovery *self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *path = self->place == NULL ? gw_recovery_new_path (&error) : NULL;
  g_autoptr (GTask) task = NULL;
  Job *job;

  self->source = 0;
  g_clear_pointer (&self->written, gw_study_unref);
  self->written = gw_study_ref (self->study);
  if (error != NULL)
    {
      self->failed (error, self->data);
      return G_SOURCE_REMOVE;
    }
  if (self->place == NULL)
    self->place = place_new (path);

  job = g_new (Job, 1);
  g_atomic_ref_count_inc (&self->place->count);
  *job = (Job){ self->place, gw_study_ref (self->study),
                self->file != NULL ? g_file_get_uri (self->file) : NULL };
  self->writing = g_cancellable_new ();
  task = g_task_new (NULL, self->writing, written_cb, self);
  g_task_set_task_data (task, job, (GDestroyNotify) job_free);
  g_task_run_in_thread (task, write_worker);
  return G_SOURCE_REMOVE;
}

/* The first edit sets the time, so that no chain of edits puts it off. */
static void
schedule (GwRecovery *self)
{
  if (self->study != NULL && self->study != self->written && self->writing == NULL &&
      self->source == 0)
    self->source = g_timeout_add (DELAY, write_cb, self);
}

GwRecovery *
gw_recovery_new (GwRecoveryFailed failed,
                 gpointer         data)
{
  GwRecovery *self = g_new0 (GwRecovery, 1);

  self->failed = failed;
  self->data = data;
  return self;
}

void
gw_recovery_free (GwRecovery *self)
{
  gw_recovery_forget (self);
  g_free (self);
}

void
gw_recovery_keep (GwRecovery *self,
                  GwStudy    *study,
                  GFile      *file)
{
  if (self->study == study && self->file == file)
    return;

  gw_study_ref (study);
  g_clear_pointer (&self->study, gw_study_unref);
  self->study = study;
  if (g_set_object (&self->file, file))
    g_clear_pointer (&self->written, gw_study_unref);
  schedule (self);
}

void
gw_recovery_adopt (GwRecovery *self,
                   const char *path,
                   GwStudy    *study)
{
  gw_recovery_forget (self);
  self->place = place_new (path);
  self->study = gw_study_ref (study);
  self->written = gw_study_ref (study);
}

/* A thread that is writing is waited for, some milliseconds; one that is not yet writing
 * finds that it is over. */
void
gw_recovery_forget (GwRecovery *self)
{
  g_clear_handle_id (&self->source, g_source_remove);
  g_cancellable_cancel (self->writing);
  g_clear_object (&self->writing);
  g_clear_pointer (&self->study, gw_study_unref);
  g_clear_pointer (&self->written, gw_study_unref);
  g_clear_object (&self->file);
  if (self->place == NULL)
    return;

  g_mutex_lock (&self->place->mutex);
  self->place->is_over = TRUE;
  g_unlink (self->place->path);
  g_mutex_unlock (&self->place->mutex);
  g_clear_pointer (&self->place, place_unref);
}
