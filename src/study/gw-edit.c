/* gw-edit.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "study/gw-check.h"
#include "study/gw-json.h"
#include "study/gw-record-json.h"

/* A list of a study and one place in it. */
typedef struct
{
  const GwField *field;
  GPtrArray     *list;
  guint          index;
} Place;

static GPtrArray *
list_at (const GwStudy  *study,
         const char     *path,
         const GwField **field)
{
  GwRecord *record = gw_record_find ((GwRecord *) &study->record, path, field);

  if (record == NULL || (*field)->kind != GW_FIELD_LIST)
    return NULL;

  return *(GPtrArray **) gw_record_at (record, *field);
}

static gboolean
find_place (const GwStudy *study,
            const char    *path,
            Place         *place)
{
  const char      *slash = strrchr (path, '/');
  g_autofree char *list = slash != NULL ? g_strndup (path, (gsize) (slash - path)) : NULL;

  if (list == NULL || (place->list = list_at (study, list, &place->field)) == NULL)
    return FALSE;

  for (place->index = 0; place->index < place->list->len; place->index++)
    {
      g_autofree char *here =
        gw_record_step ("", "", g_ptr_array_index (place->list, place->index), place->index);

      if (g_str_equal (here + 1, slash + 1))
        return TRUE;
    }

  return FALSE;
}

GwRecord *
gw_edit_record (const GwStudy *study,
                const char    *path)
{
  const GwField *field = NULL;
  GwRecord      *record;
  Place          place;

  if (*path == '\0')
    return (GwRecord *) &study->record;
  if (find_place (study, path, &place))
    return g_ptr_array_index (place.list, place.index);

  record = gw_record_find ((GwRecord *) &study->record, path, &field);
  if (record == NULL || field->kind != GW_FIELD_PART)
    return NULL;

  return *(GwRecord **) gw_record_at (record, field);
}

static gboolean
refuse (const char *path,
        GError    **error)
{
  g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT,
               _ ("%s: there is no such place in the study"), path);
  return FALSE;
}

/* What begins with the place and must be a record of a list. */
static gboolean
begin (GwStudy    *study,
       const char *path,
       Place      *place,
       GError    **error)
{
  return find_place (study, path, place) || refuse (path, error);
}

static GwStudy *
checked (GwStudy *study,
         GError **error)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwStudy) edited = study;

  gw_study_check (edited, problems);
  return gw_problems_to_error (problems, error) ? g_steal_pointer (&edited) : NULL;
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

/* Puts @record into the list and says where it is. */
static void
put_in (GPtrArray  *list,
        const char *list_path,
        int         index,
        GwRecord   *record,
        char      **path)
{
  const guint at = index < 0 || (guint) index > list->len ? list->len : (guint) index;

  g_ptr_array_insert (list, (int) at, record);
  if (path != NULL)
    {
      g_autofree char *step = gw_record_step ("", "", record, at);

      *path = g_strconcat (list_path, step, NULL);
    }
}

static void
show_list (GwStudy    *study,
           const char *list)
{
  const GwField *field = NULL;
  GwRecord      *owner = gw_record_find (&study->record, list, &field);

  gw_record_set_present (owner, field, TRUE);
}

GwStudy *
gw_edit_insert (const GwStudy *study,
                const char    *list,
                int            index,
                JsonNode      *record,
                char         **path,
                GError       **error)
{
  g_autoptr (GwStudy) edited = gw_study_copy (study);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  const GwField *field = NULL;
  GPtrArray     *records = list_at (edited, list, &field);
  GwRecord      *fresh;

  if (records == NULL)
    {
      refuse (list, error);
      return NULL;
    }

  fresh = gw_record_new (field->item ());
  if (record != NULL && JSON_NODE_HOLDS_OBJECT (record))
    gw_record_read (fresh, json_node_get_object (record), list, problems);
  _gw_edit_give_id (fresh, records);
  put_in (records, list, index, fresh, path);
  show_list (edited, list);
  if (!gw_problems_to_error (problems, error))
    return NULL;

  return checked (g_steal_pointer (&edited), error);
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
  g_autoptr (GwStudy) edited = gw_study_copy (study);
  g_autofree char *list = NULL;
  Place            place;
  GwRecord        *record;

  if (!begin (edited, path, &place, error))
    return NULL;

  list = g_strndup (path, (gsize) (strrchr (path, '/') - path));
  record = gw_record_copy (g_ptr_array_index (place.list, place.index));
  _gw_edit_give_id (record, place.list);
  _gw_edit_rename_copy (record);
  put_in (place.list, list, (int) place.index + 1, record, copy);
  return checked (g_steal_pointer (&edited), error);
}

GwStudy *
gw_edit_remove (const GwStudy *study,
                const char    *path,
                GError       **error)
{
  g_autoptr (GwStudy) edited = gw_study_copy (study);
  Place place;

  if (!begin (edited, path, &place, error))
    return NULL;

  g_ptr_array_remove_index (place.list, place.index);
  return checked (g_steal_pointer (&edited), error);
}

GwStudy *
gw_edit_move (const GwStudy *study,
              const char    *path,
              guint          index,
              GError       **error)
{
  g_autoptr (GwStudy) edited = gw_study_copy (study);
  Place    place;
  gpointer record;

  if (!begin (edited, path, &place, error))
    return NULL;

  record = g_ptr_array_steal_index (place.list, place.index);
  g_ptr_array_insert (place.list, (int) MIN (index, place.list->len), record);
  return checked (g_steal_pointer (&edited), error);
}

static GwStudyOption *
option_at (const GwStudy *study,
           guint          option)
{
  return option < study->options->len ? g_ptr_array_index (study->options, option) : NULL;
}

static GwChange *
find_change (const GwStudyOption *option,
             const char          *path,
             guint               *index)
{
  for (*index = 0; *index < option->changes->len; (*index)++)
    {
      GwChange *change = g_ptr_array_index (option->changes, *index);

      if (g_str_equal (change->path, path))
        return change;
    }

  return NULL;
}

JsonNode *
gw_edit_change_of (const GwStudy *study,
                   guint          option,
                   const char    *path)
{
  GwStudyOption *found = option_at (study, option);
  guint          index;
  GwChange      *change = found != NULL ? find_change (found, path, &index) : NULL;

  return change != NULL ? change->value : NULL;
}

static void
set_change (GwStudyOption *option,
            const char    *path,
            JsonNode      *value)
{
  guint     index;
  GwChange *change = find_change (option, path, &index);

  if (change != NULL)
    json_node_unref (change->value);
  else
    {
      change = g_new (GwChange, 1);
      change->path = g_strdup (path);
      g_ptr_array_add (option->changes, change);
    }

  change->value = gw_json_copy (value);
  gw_record_set_present (&option->record, gw_record_type_field (option->record.type, "changes"),
                         TRUE);
}

GwStudy *
gw_edit_for_option (const GwStudy *study,
                    guint          option,
                    const char    *path,
                    JsonNode      *value,
                    GError       **error)
{
  g_autoptr (GwStudy) edited = NULL;

  if (value == NULL || g_str_has_prefix (path, "options/"))
    return gw_study_edit (study, path, value, error);

  edited = gw_study_copy (study);
  if (option_at (edited, option) == NULL)
    {
      refuse ("options", error);
      return NULL;
    }

  set_change (option_at (edited, option), path, value);
  return checked (g_steal_pointer (&edited), error);
}

GwStudy *
gw_edit_take_back (const GwStudy *study,
                   guint          option,
                   const char    *path,
                   GError       **error)
{
  g_autoptr (GwStudy) edited = gw_study_copy (study);
  GwStudyOption *found = option_at (edited, option);
  guint          index;

  if (found == NULL || find_change (found, path, &index) == NULL)
    {
      refuse (path, error);
      return NULL;
    }

  g_ptr_array_remove_index (found->changes, index);
  if (found->changes->len == 0)
    gw_record_reset_field (&found->record, gw_record_type_field (found->record.type, "changes"));
  return checked (g_steal_pointer (&edited), error);
}

GwStudy *
gw_edit_set (const GwStudy *study,
             guint          option,
             gboolean       is_only_here,
             const char    *path,
             JsonNode      *value,
             GError       **error)
{
  g_autoptr (GwStudy) edited = gw_study_copy (study);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  const gboolean is_here =
    is_only_here || gw_edit_change_of (study, option, path) != NULL;

  g_return_val_if_fail (option < study->options->len, NULL);

  if (is_here && value != NULL && !g_str_has_prefix (path, "options/"))
    set_change (option_at (edited, option), path, value);
  else
    gw_study_put (edited, path, value, problems);

  gw_study_check_names (edited, problems);
  return gw_problems_to_error (problems, error) ? g_steal_pointer (&edited) : NULL;
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

JsonNode *
gw_edit_number (const GwNumber *number,
                double          value)
{
  g_autoptr (JsonObject) object = NULL;

  if (number->form == GW_FORM_PLAIN && number->origin == GW_ORIGIN_GIVEN && number->source == NULL)
    return json_node_init_double (json_node_alloc (), value);

  object = json_object_new ();
  if (number->form == GW_FORM_RANGE)
    {
      json_object_set_double_member (object, "low", number->low + value - number->value);
      json_object_set_double_member (object, "typical", value);
      json_object_set_double_member (object, "high", number->high + value - number->value);
    }
  else
    json_object_set_double_member (object, "value", value);
  if (number->form == GW_FORM_SPREAD)
    json_object_set_double_member (object, "spread", number->spread);
  if (number->origin != GW_ORIGIN_GIVEN)
    json_object_set_string_member (object, "origin", gw_origin_key (number->origin));
  if (number->source != NULL)
    json_object_set_string_member (object, "source", number->source);

  return json_node_init_object (json_node_alloc (), object);
}
