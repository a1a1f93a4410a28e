/* gw-edit-place.c - a place in a list, and records put there and taken away
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <string.h>

#include "study/gw-check.h"
#include "study/gw-edit-private.h"

gboolean
_gw_edit_refuse (const char *path,
                 GError    **error)
{
  g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT,
               _ ("%s: there is no such place in the study"), path);
  return FALSE;
}

GwStudy *
_gw_edit_checked (GwStudy *study,
                  GError **error)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwStudy) edited = study;

  gw_study_check (edited, problems);
  return gw_problems_to_error (problems, error) ? g_steal_pointer (&edited) : NULL;
}

GPtrArray *
_gw_edit_list (GwRecord   *owner,
               const char *key)
{
  return *(GPtrArray **) gw_record_at (owner, gw_record_type_field (owner->type, key));
}

void
_gw_edit_tidy (GwRecord   *owner,
               const char *key)
{
  const GwField *field = gw_record_type_field (owner->type, key);

  if ((*(GPtrArray **) gw_record_at (owner, field))->len == 0)
    gw_record_reset_field (owner, field);
}

void
_gw_edit_place_clear (GwEditPlace *place)
{
  g_clear_pointer (&place->study, gw_study_unref);
  g_clear_pointer (&place->path, g_free);
}

static gboolean
find_list (GwEditPlace *place,
           const char  *path)
{
  const GwField *field = NULL;

  place->owner = gw_record_find (&place->study->record, path, &field);
  if (place->owner == NULL || field->kind != GW_FIELD_LIST)
    return FALSE;

  place->path = g_strdup (path);
  place->list = *(GPtrArray **) gw_record_at (place->owner, field);
  place->index = place->list->len;
  return TRUE;
}

gboolean
_gw_edit_begin_list (GwEditPlace   *place,
                     const GwStudy *study,
                     const char    *list,
                     GError       **error)
{
  *place = (GwEditPlace){ .study = gw_study_copy (study) };
  _gw_edit_fold (place->study, list);
  return find_list (place, list) || _gw_edit_refuse (list, error);
}

gboolean
_gw_edit_begin (GwEditPlace   *place,
                const GwStudy *study,
                const char    *path,
                GError       **error)
{
  const char      *slash = strrchr (path, '/');
  g_autofree char *list = slash != NULL ? g_strndup (path, (gsize) (slash - path)) : NULL;

  if (list == NULL)
    {
      *place = (GwEditPlace){ 0 };
      return _gw_edit_refuse (path, error);
    }
  if (!_gw_edit_begin_list (place, study, list, error))
    return FALSE;

  for (place->index = 0; place->index < place->list->len; place->index++)
    {
      g_autofree char *here = _gw_edit_place_path (place);

      if (g_str_equal (here, path))
        return TRUE;
    }

  return _gw_edit_refuse (path, error);
}

GwStudy *
_gw_edit_end (GwEditPlace *place,
              GError     **error)
{
  return _gw_edit_checked (g_steal_pointer (&place->study), error);
}

GwRecord *
_gw_edit_place_record (const GwEditPlace *place)
{
  return g_ptr_array_index (place->list, place->index);
}

char *
_gw_edit_place_path (const GwEditPlace *place)
{
  g_autofree char *step = gw_record_step ("", "", _gw_edit_place_record (place), place->index);

  return g_strconcat (place->path, step, NULL);
}

static const char *
key_of (const GwEditPlace *place)
{
  const char *slash = strrchr (place->path, '/');

  return slash != NULL ? slash + 1 : place->path;
}

/* The records as they stand, to see afterwards where they went; borrowed. */
static GPtrArray *
order_of (const GwEditPlace *place)
{
  GPtrArray *order = g_ptr_array_new ();

  g_ptr_array_extend (order, place->list, NULL, NULL);
  return order;
}

void
_gw_edit_put_in (GwEditPlace *place,
                 guint        index,
                 GwRecord    *record)
{
  g_autoptr (GPtrArray) before = order_of (place);

  place->index = MIN (index, place->list->len);
  g_ptr_array_insert (place->list, (int) place->index, record);
  gw_record_set_present (place->owner, gw_record_type_field (place->owner->type, key_of (place)),
                         TRUE);
  _gw_edit_follow (place->study, place->path, before, place->list, NULL);
}

void
_gw_edit_take_out (GwEditPlace *place,
                   GPtrArray   *dropped)
{
  g_autoptr (GPtrArray) before = order_of (place);
  GwRecord *record = g_ptr_array_steal_index (place->list, place->index);

  _gw_edit_follow (place->study, place->path, before, place->list, dropped);
  gw_record_free (record);
  _gw_edit_tidy (place->owner, key_of (place));
}

void
_gw_edit_shift (GwEditPlace *place,
                guint        index)
{
  g_autoptr (GPtrArray) before = order_of (place);
  GwRecord *record = g_ptr_array_steal_index (place->list, place->index);

  place->index = MIN (index, place->list->len);
  g_ptr_array_insert (place->list, (int) place->index, record);
  _gw_edit_follow (place->study, place->path, before, place->list, NULL);
}
