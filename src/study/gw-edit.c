/* gw-edit.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "study/gw-edit-private.h"
#include "study/gw-record-json.h"

void
gw_dropped_change_free (GwDroppedChange *dropped)
{
  g_free (dropped->option);
  g_free (dropped->path);
  g_free (dropped);
}

static GwRecord *
record_in_list (const GwStudy *study,
                const char    *path)
{
  const char      *slash = strrchr (path, '/');
  g_autofree char *key = slash != NULL ? g_strndup (path, (gsize) (slash - path)) : NULL;
  const GwField   *field = NULL;
  const GwRecord  *owner =
    key != NULL ? gw_record_find ((GwRecord *) &study->record, key, &field) : NULL;
  const GPtrArray *list;

  if (owner == NULL || field->kind != GW_FIELD_LIST)
    return NULL;

  list = *(GPtrArray **) gw_record_at (owner, field);
  for (guint i = 0; i < list->len; i++)
    {
      g_autofree char *step = gw_record_step ("", "", g_ptr_array_index (list, i), i);

      if (g_str_equal (step, slash))
        return g_ptr_array_index (list, i);
    }

  return NULL;
}

GwRecord *
gw_edit_record (const GwStudy *study,
                const char    *path)
{
  const GwField *field = NULL;
  GwRecord      *record;

  if (*path == '\0')
    return (GwRecord *) &study->record;

  record = record_in_list (study, path);
  if (record != NULL)
    return record;

  record = gw_record_find ((GwRecord *) &study->record, path, &field);
  if (record == NULL || field->kind != GW_FIELD_PART)
    return NULL;

  return *(GwRecord **) gw_record_at (record, field);
}

static char **
id_of (GwRecord *record)
{
  const GwField *first = &record->type->fields[0];

  return first->kind == GW_FIELD_ID ? gw_record_at (record, first) : NULL;
}

/* "battery" becomes "battery-2", that "battery-3". */
static char *
free_id (const GPtrArray *list,
         const char      *wanted)
{
  g_autoptr (GRegex) number = g_regex_new ("-[0-9]+$", 0, 0, NULL);
  g_autofree char *stem = g_regex_replace (number, wanted, -1, 0, "", 0, NULL);
  g_autofree char *id = g_strdup (wanted);

  for (guint i = 2; gw_list_find (list, id) != NULL; i++)
    {
      g_free (id);
      id = g_strdup_printf ("%s-%u", stem, i);
    }

  return g_steal_pointer (&id);
}

void
_gw_edit_give_id (GwRecord        *record,
                  const GPtrArray *list)
{
  char **id = id_of (record);
  char  *fresh;

  if (id == NULL)
    return;

  g_strdelimit (fresh = free_id (list, *id != NULL ? *id : record->type->name), "_", '-');
  g_free (*id);
  *id = fresh;
  gw_record_set_present (record, &record->type->fields[0], TRUE);
}

/* The path of what stands there now, once the study is known to be good. */
static GwStudy *
end_with_path (GwEditPlace *place,
               char       **path,
               GError     **error)
{
  g_autofree char *here = _gw_edit_place_path (place);
  GwStudy         *edited = _gw_edit_end (place, error);

  if (edited != NULL && path != NULL)
    *path = g_steal_pointer (&here);
  return edited;
}

GwStudy *
gw_edit_insert (const GwStudy *study,
                const char    *list,
                int            index,
                JsonNode      *record,
                char         **path,
                GError       **error)
{
  g_auto (GwEditPlace) place = { 0 };
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  const GwField *field = NULL;
  GwRecord      *fresh;
  g_autoptr (JsonObject) object = record != NULL && JSON_NODE_HOLDS_OBJECT (record)
                                    ? json_node_dup_object (record)
                                    : json_object_new ();

  if (!_gw_edit_begin_list (&place, study, list, error))
    return NULL;

  gw_record_find (&place.study->record, list, &field);
  fresh = gw_record_new (field->item ());
  _gw_edit_give_id (fresh, place.list);
  gw_record_read (fresh, object, list, problems);
  _gw_edit_give_id (fresh, place.list);
  _gw_edit_put_in (&place, index < 0 ? place.list->len : (guint) index, fresh);
  if (!gw_problems_to_error (problems, error))
    return NULL;

  return end_with_path (&place, path, error);
}

void
_gw_edit_rename_copy (GwRecord *copy)
{
  const GwField *field = gw_record_type_field (copy->type, "name");
  char         **name = field != NULL ? gw_record_at (copy, field) : NULL;

  if (name != NULL && *name != NULL)
    {
      g_autofree char *renamed = g_strdup_printf (_ ("%s, copy"), *name);

      /* What is longer could not be read again. */
      if (g_utf8_strlen (renamed, -1) <= GW_LONGEST_NAME)
        {
          g_free (*name);
          *name = g_steal_pointer (&renamed);
        }
    }
}

GwStudy *
gw_edit_duplicate (const GwStudy *study,
                   const char    *path,
                   char         **copy,
                   GError       **error)
{
  g_auto (GwEditPlace) place = { 0 };
  g_autofree char *here = NULL;
  GwRecord        *record;

  if (!_gw_edit_begin (&place, study, path, error))
    return NULL;

  record = gw_record_copy (_gw_edit_place_record (&place));
  _gw_edit_give_id (record, place.list);
  _gw_edit_rename_copy (record);
  _gw_edit_put_in (&place, place.index + 1, record);
  here = _gw_edit_place_path (&place);
  _gw_edit_copy_changes (place.study, path, here);
  return end_with_path (&place, copy, error);
}

GwStudy *
gw_edit_remove (const GwStudy *study,
                const char    *path,
                GPtrArray     *dropped,
                GError       **error)
{
  g_auto (GwEditPlace) place = { 0 };
  const guint n = dropped != NULL ? dropped->len : 0;
  GwStudy    *edited;

  if (!_gw_edit_begin (&place, study, path, error))
    return NULL;

  _gw_edit_take_out (&place, dropped);
  edited = _gw_edit_end (&place, error);
  if (edited == NULL && dropped != NULL)
    g_ptr_array_set_size (dropped, (int) n);
  return edited;
}

GwStudy *
gw_edit_move (const GwStudy *study,
              const char    *path,
              guint          index,
              char         **moved,
              GError       **error)
{
  g_auto (GwEditPlace) place = { 0 };

  if (!_gw_edit_begin (&place, study, path, error))
    return NULL;

  _gw_edit_shift (&place, index);
  return end_with_path (&place, moved, error);
}

char *
gw_edit_record_name (const GwRecord *record)
{
  const GwField *field = gw_record_type_field (record->type, "name");
  const char    *name = field != NULL ? *(char **) gw_record_at (record, field) : NULL;

  return g_strdup (name != NULL && *name != '\0'
                     ? name
                     : g_dgettext (GETTEXT_PACKAGE, record->type->label));
}

char *
gw_edit_name (const GwStudy *study,
              const char    *path)
{
  const GwField   *field = NULL;
  GwRecord        *record = gw_record_find ((GwRecord *) &study->record, path, &field);
  g_autofree char *name = NULL;

  if (record == NULL)
    return g_strdup (_ ("Change the study"));

  name = gw_edit_record_name (record);
  return g_strdup_printf (_ ("Change %s of %s"), g_dgettext (GETTEXT_PACKAGE, field->label), name);
}
