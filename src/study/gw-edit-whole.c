/* gw-edit-whole.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-whole.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "study/gw-check.h"
#include "study/gw-edit-private.h"
#include "study/gw-json.h"

static const char *const parts_of_surface[] = { "builds", "spars" };

/* One place in a list of the study itself. */
typedef struct
{
  GwStudy   *study;
  char      *key;
  GPtrArray *list;
  guint      index;
} Place;

static GPtrArray *
list_of (GwRecord   *owner,
         const char *key)
{
  return *(GPtrArray **) gw_record_at (owner, gw_record_type_field (owner->type, key));
}

static char *
path_at (const char *key,
         GPtrArray  *list,
         guint       index)
{
  return gw_record_step ("", key, g_ptr_array_index (list, index), index);
}

static void
place_clear (Place *place)
{
  g_clear_pointer (&place->study, gw_study_unref);
  g_clear_pointer (&place->key, g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Place, place_clear)

/* @place in a copy of @study that nobody else sees yet. */
static gboolean
begin (const GwStudy *study,
       const char    *path,
       Place         *place,
       GError       **error)
{
  const char    *slash = strchr (path, '/');
  const GwField *field;

  *place = (Place){ .study = gw_study_copy (study) };
  if (slash != NULL)
    {
      place->key = g_strndup (path, (gsize) (slash - path));
      field = gw_record_type_field (study->record.type, place->key);
      if (field != NULL && field->kind == GW_FIELD_LIST)
        place->list = list_of (&place->study->record, place->key);
    }

  for (guint i = 0; place->list != NULL && i < place->list->len; i++)
    {
      g_autofree char *here = path_at (place->key, place->list, i);

      if (g_str_equal (here, path))
        {
          place->index = i;
          return TRUE;
        }
    }

  g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT,
               _ ("%s: there is no such place in the study"), path);
  return FALSE;
}

static GwStudy *
end (Place   *place,
     GError **error)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();

  gw_study_check (place->study, problems);
  return gw_problems_to_error (problems, error) ? g_steal_pointer (&place->study) : NULL;
}

/* What follows @step in @path, or NULL if it is not below it. */
static const char *
below (const char *path,
       const char *step)
{
  const gsize n = strlen (step);

  return strncmp (path, step, n) == 0 && (path[n] == '/' || path[n] == '\0') ? path + n : NULL;
}

static void
tidy (GwRecord   *owner,
      const char *key)
{
  const GwField *field = gw_record_type_field (owner->type, key);

  if ((*(GPtrArray **) gw_record_at (owner, field))->len == 0)
    gw_record_reset_field (owner, field);
}

/* What options change at @from they change at @to; NULL: no more. */
static void
redirect (GwStudy    *study,
          const char *from,
          const char *to)
{
  for (guint i = 0; i < study->options->len; i++)
    {
      GwStudyOption *option = g_ptr_array_index (study->options, i);

      for (guint k = option->changes->len; k-- > 0;)
        {
          GwChange   *change = g_ptr_array_index (option->changes, k);
          const char *rest = below (change->path, from);
          char       *path;

          if (rest != NULL && to == NULL)
            g_ptr_array_remove_index (option->changes, k);
          else if (rest != NULL)
            {
              path = g_strconcat (to, rest, NULL);
              g_free (change->path);
              change->path = path;
            }
        }
      if (to == NULL)
        tidy (&option->record, "changes");
    }
}

static void
copy_changes (GwStudy    *study,
              const char *from,
              const char *to)
{
  for (guint i = 0; i < study->options->len; i++)
    {
      GwStudyOption *option = g_ptr_array_index (study->options, i);
      const guint    n = option->changes->len;

      for (guint k = 0; k < n; k++)
        {
          const GwChange *change = g_ptr_array_index (option->changes, k);
          const char     *rest = below (change->path, from);
          GwChange       *copy;

          if (rest == NULL)
            continue;
          copy = g_new (GwChange, 1);
          copy->path = g_strconcat (to, rest, NULL);
          copy->value = gw_json_copy (change->value);
          g_ptr_array_add (option->changes, copy);
        }
    }
}

/* Records without an id are counted from 1: the changes of those behind @index move along. */
static void
count_down (Place *place,
            guint  index)
{
  for (guint i = index + 1; i <= place->list->len; i++)
    {
      g_autofree char *from = g_strdup_printf ("%s/%u", place->key, i + 1);
      g_autofree char *to = g_strdup_printf ("%s/%u", place->key, i);

      redirect (place->study, from, to);
    }
}

static void
count_up (Place *place,
          guint  index)
{
  for (guint i = place->list->len; i-- > index;)
    {
      g_autofree char *from = g_strdup_printf ("%s/%u", place->key, i + 1);
      g_autofree char *to = g_strdup_printf ("%s/%u", place->key, i + 2);

      redirect (place->study, from, to);
    }
}

static gboolean
is_counted (const Place *place)
{
  return gw_record_id (g_ptr_array_index (place->list, place->index)) == NULL;
}

static GwRecord *
take_out (Place *place)
{
  const gboolean counts = is_counted (place);
  GwRecord      *record = g_ptr_array_steal_index (place->list, place->index);

  if (counts)
    count_down (place, place->index);
  return record;
}

static void
put_in (Place    *place,
        guint     index,
        GwRecord *record)
{
  if (gw_record_id (record) == NULL)
    count_up (place, index);
  g_ptr_array_insert (place->list, (int) index, record);
  place->index = index;
}

static void
drop (Place *place)
{
  g_autofree char *path = path_at (place->key, place->list, place->index);

  redirect (place->study, path, NULL);
  gw_record_free (take_out (place));
  tidy (&place->study->record, place->key);
}

static gboolean
is_of_surface (const GwRecord *part,
               const char     *surface)
{
  const GwField *field = gw_record_type_field (part->type, "surface");

  return g_strcmp0 (*(char **) gw_record_at (part, field), surface) == 0;
}

static void
drop_parts (GwStudy    *study,
            const char *key,
            const char *surface)
{
  for (guint i = list_of (&study->record, key)->len; i-- > 0;)
    {
      Place part = { study, (char *) key, list_of (&study->record, key), i };

      if (is_of_surface (g_ptr_array_index (part.list, i), surface))
        drop (&part);
    }

  for (guint k = 0; k < study->options->len; k++)
    {
      GwRecord  *option = g_ptr_array_index (study->options, k);
      GPtrArray *list = list_of (option, key);

      for (guint i = list->len; i-- > 0;)
        if (is_of_surface (g_ptr_array_index (list, i), surface))
          g_ptr_array_remove_index (list, i);
      tidy (option, key);
    }
}

GwStudy *
gw_edit_remove_whole (const GwStudy *study,
                      const char    *path,
                      GError       **error)
{
  g_auto (Place) place = { 0 };

  if (!begin (study, path, &place, error))
    return NULL;

  for (guint i = 0; g_str_equal (place.key, "surfaces") && i < G_N_ELEMENTS (parts_of_surface); i++)
    drop_parts (place.study, parts_of_surface[i],
                gw_record_id (g_ptr_array_index (place.list, place.index)));
  drop (&place);
  return end (&place, error);
}

static void
set_surface (GwRecord   *part,
             const char *surface)
{
  char **at = gw_record_at (part, gw_record_type_field (part->type, "surface"));

  g_free (*at);
  *at = g_strdup (surface);
}

/* At the end, so that no number changes. */
static void
copy_parts (GwRecord   *owner,
            const char *key,
            const char *from,
            const char *to,
            GwStudy    *study)
{
  GPtrArray  *list = list_of (owner, key);
  const guint n = list->len;

  for (guint i = 0; i < n; i++)
    {
      GwRecord *copy;

      if (!is_of_surface (g_ptr_array_index (list, i), from))
        continue;

      copy = gw_record_copy (g_ptr_array_index (list, i));
      set_surface (copy, to);
      _gw_edit_give_id (copy, list);
      g_ptr_array_add (list, copy);
      if (owner == &study->record)
        {
          g_autofree char *old = path_at (key, list, i);
          g_autofree char *fresh = path_at (key, list, list->len - 1);

          copy_changes (study, old, fresh);
        }
    }
}

/* Narrow columns would show two of the same. */
static void
renumber_short_name (GwStudyOption   *option,
                     const GPtrArray *options)
{
  g_autoptr (GRegex) number = g_regex_new (" [0-9]+$", 0, 0, NULL);
  g_autofree char *stem = NULL;

  if (option->short_name == NULL)
    return;

  stem = g_regex_replace (number, option->short_name, -1, 0, "", 0, NULL);
  for (guint i = 0, n = 1; i < options->len; i++)
    if (g_strcmp0 (((GwStudyOption *) g_ptr_array_index (options, i))->short_name,
                   option->short_name) == 0)
      {
        g_free (option->short_name);
        option->short_name = g_strdup_printf ("%s %u", stem, ++n);
        i = G_MAXUINT; /* from the first again */
      }
}

GwStudy *
gw_edit_duplicate_whole (const GwStudy *study,
                         const char    *path,
                         char         **copy,
                         GError       **error)
{
  g_auto (Place) place = { 0 };
  GwRecord   *record;
  GwStudy    *edited;
  const char *id;

  if (!begin (study, path, &place, error))
    return NULL;

  record = gw_record_copy (g_ptr_array_index (place.list, place.index));
  id = gw_record_id (g_ptr_array_index (place.list, place.index));
  _gw_edit_give_id (record, place.list);
  _gw_edit_rename_copy (record);
  if (g_str_equal (place.key, "options"))
    renumber_short_name ((GwStudyOption *) record, place.list);
  put_in (&place, place.index + 1, record);
  *copy = path_at (place.key, place.list, place.index);
  copy_changes (place.study, path, *copy);

  for (guint i = 0; g_str_equal (place.key, "surfaces") && i < G_N_ELEMENTS (parts_of_surface); i++)
    {
      copy_parts (&place.study->record, parts_of_surface[i], id, gw_record_id (record),
                  place.study);
      for (guint k = 0; k < place.study->options->len; k++)
        copy_parts (g_ptr_array_index (place.study->options, k), parts_of_surface[i], id,
                    gw_record_id (record), place.study);
    }

  edited = end (&place, error);
  if (edited == NULL)
    g_clear_pointer (copy, g_free);
  return edited;
}

GwStudy *
gw_edit_move_whole (const GwStudy *study,
                    const char    *path,
                    guint          index,
                    char         **moved,
                    GError       **error)
{
  g_auto (Place) place = { 0 };
  GwRecord *record;
  GwStudy  *edited;

  if (!begin (study, path, &place, error))
    return NULL;

  /* Set aside under a name that no path has. */
  if (is_counted (&place))
    redirect (place.study, path, "moving");
  record = take_out (&place);
  put_in (&place, MIN (index, place.list->len), record);
  *moved = path_at (place.key, place.list, place.index);
  redirect (place.study, "moving", *moved);

  edited = end (&place, error);
  if (edited == NULL)
    g_clear_pointer (moved, g_free);
  return edited;
}
