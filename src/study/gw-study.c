/* gw-study.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define G_LOG_DOMAIN "gw-study"

#include "study/gw-study.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

#include "study/gw-check.h"
#include "study/gw-json.h"
#include "study/gw-read.h"
#include "study/gw-record-json.h"

#define FORMAT 1 /* of the file; a newer one is refused, never half read */

GwStudy *
gw_study_new (void)
{
  GwStudy *study = g_atomic_rc_box_alloc (sizeof (GwStudy));

  gw_record_init (&study->record, gw_study_root_type ());
  return study;
}

GwStudy *
gw_study_ref (GwStudy *study)
{
  return g_atomic_rc_box_acquire (study);
}

static void
clear (gpointer study)
{
  gw_record_clear (study);
}

void
gw_study_unref (GwStudy *study)
{
  g_atomic_rc_box_release_full (study, clear);
}

GwStudy *
gw_study_copy (const GwStudy *study)
{
  GwStudy *copy = gw_study_new ();

  gw_record_assign (&copy->record, &study->record);
  return copy;
}

GPtrArray *
gw_study_list (const GwStudy *study,
               const char    *key)
{
  const GwField *field = gw_record_type_field (study->record.type, key);

  return field != NULL ? *(GPtrArray **) gw_record_at (&study->record, field) : NULL;
}

/* Tells a file of another kind or a newer program before a hundred unknown keys do. */
static gboolean
check_format (JsonObject *object,
              GError    **error)
{
  JsonNode *format = json_object_get_member (object, "format");

  if (format == NULL)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_VERSION,
                   _ ("format: the file does not say \"format\": %d, so it is no study"), FORMAT);
      return FALSE;
    }

  if (JSON_NODE_HOLDS_VALUE (format) && json_node_get_value_type (format) == G_TYPE_INT64 &&
      json_node_get_int (format) > FORMAT)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_VERSION,
                   _ ("format: the file has format %" G_GINT64_FORMAT
                      ", this program reads up to %d; use a newer one"),
                   json_node_get_int (format), FORMAT);
      return FALSE;
    }

  return TRUE;
}

GwStudy *
gw_study_parse (const char *text,
                gsize       length,
                GPtrArray  *problems,
                GError    **error)
{
  g_autoptr (JsonObject) object = gw_json_parse (text, length, error);
  g_autoptr (GPtrArray) own = problems != NULL ? g_ptr_array_ref (problems) : gw_problems_new ();
  g_autoptr (GwStudy) study = NULL;

  if (object == NULL || !check_format (object, error))
    return NULL;

  study = gw_study_new ();
  gw_record_read (&study->record, object, "", own);
  if (gw_problems_count (own) == 0)
    gw_study_check (study, own);

  return gw_problems_to_error (own, error) ? g_steal_pointer (&study) : NULL;
}

GwStudy *
gw_study_load (GFile     *file,
               GPtrArray *problems,
               GError   **error)
{
  g_autoptr (GError) reason = NULL;
  g_autofree char *text = NULL;
  gsize            length = 0;
  GwStudy         *study;

  if (!gw_read_file (file, GW_JSON_MAX_SIZE, &text, &length, &reason))
    {
      g_autofree char *name = g_file_get_parse_name (file);

      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE, _ ("%s cannot be read: %s"), name,
                   reason->message);
      return NULL;
    }

  study = gw_study_parse (text, length, problems, &reason);
  if (study == NULL)
    {
      g_autofree char *name = g_file_get_basename (file);

      g_set_error (error, reason->domain, reason->code, "%s: %s", name, reason->message);
    }

  return study;
}

char *
gw_study_text (const GwStudy *study)
{
  GString *out = g_string_new (NULL);

  gw_record_write (&study->record, out, 0);
  g_string_append_c (out, '\n');
  return g_string_free (out, FALSE);
}

/* What was written must read back as the same study before it replaces anything. */
static gboolean
reads_back (const GwStudy *study,
            const char    *text,
            GError       **error)
{
  g_autoptr (GwStudy) back = gw_study_parse (text, strlen (text), NULL, error);

  if (back == NULL)
    return FALSE;

  if (!gw_record_equal (&back->record, &study->record))
    {
      g_set_error (
        error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE,
        _ ("the text to be saved does not read back as the same study; nothing was written"));
      return FALSE;
    }

  return TRUE;
}

/* Through a link the file itself would be written into, and a failure would leave half of it. */
static GFile *
behind_links (GFile *file)
{
  const char      *path = g_file_peek_path (file);
  g_autofree char *real = path != NULL ? realpath (path, NULL) : NULL;

  return real != NULL ? g_file_new_for_path (real) : g_object_ref (file);
}

/* Not g_file_replace_contents(): after a failed write (a full disk) that closes what it has, and
 * the half takes the place of the whole. A close that is cancelled throws the half away. */
static gboolean
replace_contents (GFile      *file,
                  const char *text,
                  GError    **error)
{
  g_autoptr (GFile) real = behind_links (file);
  g_autoptr (GCancellable) cancelled = g_cancellable_new ();
  g_autoptr (GFileOutputStream) out =
    g_file_replace (real, NULL, FALSE, G_FILE_CREATE_NONE, NULL, error);

  if (out == NULL)
    return FALSE;
  if (g_output_stream_write_all (G_OUTPUT_STREAM (out), text, strlen (text), NULL, NULL, error))
    return g_output_stream_close (G_OUTPUT_STREAM (out), NULL, error);

  g_cancellable_cancel (cancelled);
  g_output_stream_close (G_OUTPUT_STREAM (out), cancelled, NULL);
  return FALSE;
}

gboolean
gw_study_save (const GwStudy *study,
               GFile         *file,
               GError       **error)
{
  g_autoptr (GError) reason = NULL;
  g_autofree char *text = gw_study_text (study);

  if (!reads_back (study, text, error))
    return FALSE;

  if (!replace_contents (file, text, &reason))
    {
      g_autofree char *name = g_file_get_parse_name (file);

      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE, _ ("%s cannot be saved: %s"), name,
                   reason->message);
      return FALSE;
    }

  return TRUE;
}

/* A part that the file leaves out is written once something in it is stated. */
static void
mark_parts (GwStudy    *study,
            const char *path)
{
  for (const char *end = strchr (path, '/'); end != NULL; end = strchr (end + 1, '/'))
    {
      g_autofree char *part = g_strndup (path, (gsize) (end - path));
      const GwField   *field = NULL;
      GwRecord        *record = gw_record_find (&study->record, part, &field);

      if (record != NULL && field->kind == GW_FIELD_PART)
        gw_record_set_present (record, field, TRUE);
    }
}

void
gw_study_put (GwStudy    *study,
              const char *path,
              JsonNode   *value,
              GPtrArray  *problems)
{
  const GwField *field = NULL;
  GwRecord      *record = gw_record_find (&study->record, path, &field);

  if (record == NULL)
    gw_problems_error (problems, path, _ ("there is no such place in the study"));
  else if (value != NULL)
    {
      mark_parts (study, path);
      gw_record_read_field (record, field, value, path, problems);
    }
  else if (field->is_needed)
    gw_problems_error (problems, path, _ ("“%s” cannot be left out"),
                       g_dgettext (GETTEXT_PACKAGE, field->label));
  else
    gw_record_reset_field (record, field);
}

GwStudy *
gw_study_edit (const GwStudy *study,
               const char    *path,
               JsonNode      *value,
               GError       **error)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwStudy) edited = gw_study_copy (study);

  gw_study_put (edited, path, value, problems);
  if (gw_problems_count (problems) == 0)
    gw_study_check (edited, problems);

  return gw_problems_to_error (problems, error) ? g_steal_pointer (&edited) : NULL;
}

guint
gw_study_baseline (const GwStudy *study)
{
  for (guint i = 0; i < study->options->len; i++)
    if (g_strcmp0 (((GwStudyOption *) g_ptr_array_index (study->options, i))->id,
                   study->baseline) == 0)
      return i;

  return 0;
}
