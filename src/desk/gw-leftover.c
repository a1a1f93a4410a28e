/* gw-leftover.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-leftover.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>

#include "desk/gw-recovery.h"
#include "study/gw-json.h"
#include "study/gw-read.h"

struct _GwLeftover
{
  GObject parent_instance;

  char      *path;
  GwStudy   *study;
  GFile     *file;
  GDateTime *time; /* local */
  char      *problem;
};

G_DEFINE_FINAL_TYPE (GwLeftover, gw_leftover, G_TYPE_OBJECT)

static void
gw_leftover_finalize (GObject *object)
{
  GwLeftover *self = GW_LEFTOVER (object);

  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->study, gw_study_unref);
  g_clear_object (&self->file);
  g_clear_pointer (&self->time, g_date_time_unref);
  g_clear_pointer (&self->problem, g_free);

  G_OBJECT_CLASS (gw_leftover_parent_class)->finalize (object);
}

static void
gw_leftover_class_init (GwLeftoverClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = gw_leftover_finalize;
}

static void
gw_leftover_init (GwLeftover *self)
{
}

static const char *
get_string (JsonObject *object,
            const char *key)
{
  JsonNode *node = json_object_get_member (object, key);

  return node != NULL && JSON_NODE_HOLDS_VALUE (node) &&
             json_node_get_value_type (node) == G_TYPE_STRING
           ? json_node_get_string (node)
           : NULL;
}

/* A file that was cut short, is of a newer program or of something else altogether. */
static GwStudy *
read_study (JsonObject *object,
            GError    **error)
{
  JsonNode *version = json_object_get_member (object, GW_RECOVERY_FORMAT);
  JsonNode *study = json_object_get_member (object, "study");
  g_autoptr (GString) text = NULL;

  if (version == NULL || json_node_get_value_type (version) != G_TYPE_INT64 ||
      json_node_get_int (version) != GW_RECOVERY_VERSION || study == NULL)
    {
      g_set_error_literal (error, GW_STUDY_ERROR, GW_STUDY_ERROR_VERSION,
                           _ ("it was not written by this version of the program"));
      return NULL;
    }

  text = g_string_new (NULL);
  gw_json_print (text, study, 0);
  return gw_study_parse (text->str, text->len, NULL, error);
}

static gboolean
read_leftover (GwLeftover *self,
               GError    **error)
{
  g_autoptr (GFile) kept = g_file_new_for_path (self->path);
  g_autofree char *text = NULL;
  gsize            length = 0;
  g_autoptr (JsonObject) object = NULL;
  const char *uri, *time;

  if (!gw_read_file (kept, GW_JSON_MAX_SIZE, &text, &length, error))
    return FALSE;
  object = gw_json_parse (text, length, error);
  if (object == NULL)
    return FALSE;

  uri = get_string (object, "file");
  time = get_string (object, "time");
  if (uri != NULL)
    self->file = g_file_new_for_uri (uri);
  if (time != NULL)
    {
      g_autoptr (GDateTime) utc = g_date_time_new_from_iso8601 (time, NULL);

      self->time = utc != NULL ? g_date_time_to_local (utc) : NULL;
    }
  self->study = read_study (object, error);
  return self->study != NULL;
}

static GwLeftover *
leftover_new (const char *path)
{
  GwLeftover *self = g_object_new (GW_TYPE_LEFTOVER, NULL);
  g_autoptr (GError) error = NULL;
  GStatBuf status;

  self->path = g_strdup (path);
  if (!read_leftover (self, &error))
    self->problem = g_strdup_printf ("%s: %s", path, error->message); /* to look at by hand */
  if (self->time == NULL && g_stat (path, &status) == 0)
    self->time = g_date_time_new_from_unix_local (status.st_mtime);
  if (self->time == NULL)
    self->time = g_date_time_new_now_local ();
  return self;
}

GwLeftover *
gw_leftover_find (GListModel *leftovers,
                  const char *path)
{
  for (guint i = 0; i < g_list_model_get_n_items (leftovers); i++)
    {
      g_autoptr (GwLeftover) leftover = g_list_model_get_item (leftovers, i);

      if (g_str_equal (leftover->path, path))
        return g_steal_pointer (&leftover);
    }

  return NULL;
}

static gboolean
has (GListStore *store,
     const char *path)
{
  g_autoptr (GwLeftover) found = gw_leftover_find (G_LIST_MODEL (store), path);

  return found != NULL;
}

static int
newest_first (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  const GwLeftover *one = a, *other = b;

  return g_date_time_compare (other->time, one->time);
}

void
gw_leftovers_scan (GListStore *store)
{
  g_autofree char *folder = gw_recovery_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *session = gw_recovery_session_of (name);
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (session == NULL || gw_recovery_is_running (session))
        continue;

      if (!g_str_has_suffix (name, GW_RECOVERY_ENDING))
        g_unlink (path); /* its lock, or half a file that was being written */
      else if (!has (store, path))
        {
          g_autoptr (GwLeftover) leftover = leftover_new (path);

          g_list_store_insert_sorted (store, leftover, newest_first, NULL);
        }
    }
}

static char *
time_text (GDateTime *time)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  /* Translators: as strftime() has it: 25 November, 14:32 */
  if (g_date_time_get_year (now) == g_date_time_get_year (time))
    return g_date_time_format (time, _ ("%-e %B, %H:%M"));

  /* Translators: as strftime() has it: 25 November 2026, 14:32 */
  return g_date_time_format (time, _ ("%-e %B %Y, %H:%M"));
}

/* "Reed-bed survey aeroplane (reed-bed.gramwright)" */
static char *
subject_text (GwLeftover *self)
{
  g_autofree char *base = self->file != NULL ? g_file_get_basename (self->file) : NULL;
  g_autofree char *file = base != NULL ? g_filename_display_name (base) : NULL;

  if (self->study->name == NULL)
    return file != NULL ? g_steal_pointer (&file) : g_strdup (_ ("a study without a name"));
  if (file == NULL)
    return g_strdup_printf (_ ("%s (never saved)"), self->study->name);

  return g_strdup_printf ("%s (%s)", self->study->name, file);
}

char *
gw_leftover_text (GwLeftover *self)
{
  g_autofree char *time = NULL, *subject = NULL;

  g_return_val_if_fail (GW_IS_LEFTOVER (self), NULL);

  time = time_text (self->time);
  if (self->study == NULL)
    return g_strdup_printf (_ ("Unsaved work from %s: it cannot be read"), time);

  subject = subject_text (self);
  return g_strdup_printf (_ ("Unsaved work from %s: %s"), time, subject);
}

const char *
gw_leftover_get_path (GwLeftover *self)
{
  g_return_val_if_fail (GW_IS_LEFTOVER (self), NULL);

  return self->path;
}

const char *
gw_leftover_get_problem (GwLeftover *self)
{
  g_return_val_if_fail (GW_IS_LEFTOVER (self), NULL);

  return self->problem;
}

GwStudy *
gw_leftover_get_study (GwLeftover *self)
{
  g_return_val_if_fail (GW_IS_LEFTOVER (self), NULL);

  return self->study;
}

GFile *
gw_leftover_get_file (GwLeftover *self)
{
  g_return_val_if_fail (GW_IS_LEFTOVER (self), NULL);

  return self->file;
}

char *
gw_leftover_claim (GwLeftover *self,
                   GError    **error)
{
  g_autofree char *path = gw_recovery_new_path (error);

  g_return_val_if_fail (GW_IS_LEFTOVER (self), NULL);

  if (path == NULL)
    return NULL;
  if (g_rename (self->path, path) != 0)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE,
                   _ ("it is no longer there: %s. Another window may have brought it back."),
                   g_strerror (errno));
      return NULL;
    }

  return g_steal_pointer (&path);
}

void
gw_leftover_let_go (GwLeftover *self)
{
  g_return_if_fail (GW_IS_LEFTOVER (self));

  g_unlink (self->path);
}
