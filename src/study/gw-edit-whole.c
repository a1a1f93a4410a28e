/* gw-edit-whole.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-whole.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "study/gw-edit-private.h"

/* As _gw_edit_begin(), in the lists of the study itself alone. */
static gboolean
begin (GwEditPlace   *place,
       const GwStudy *study,
       const char    *path,
       GError       **error)
{
  const char *slash = strchr (path, '/');

  if (slash != NULL && strchr (slash + 1, '/') == NULL)
    return _gw_edit_begin (place, study, path, error);

  return _gw_edit_refuse (path, error);
}

static gboolean
is_surface (const GwEditPlace *place)
{
  return g_str_equal (place->path, "surfaces");
}

static void
drop_parts (GwStudy    *study,
            const char *key,
            const char *surface,
            GPtrArray  *dropped)
{
  for (guint i = _gw_edit_list (&study->record, key)->len; i-- > 0;)
    {
      GPtrArray  *list = _gw_edit_list (&study->record, key);
      GwEditPlace part = { study, (char *) key, &study->record, list, i };

      if (_gw_edit_is_of_surface (g_ptr_array_index (list, i), surface))
        _gw_edit_take_out (&part, dropped);
    }

  for (guint k = 0; k < study->options->len; k++)
    {
      GwStudyOption *option = g_ptr_array_index (study->options, k);
      GPtrArray     *list = _gw_edit_list (&option->record, key);
      const guint    n = list->len;

      if (_gw_edit_has_own (option, "surfaces"))
        continue;
      for (guint i = n; i-- > 0;)
        if (_gw_edit_is_of_surface (g_ptr_array_index (list, i), surface))
          g_ptr_array_remove_index (list, i);
      if (list->len < n)
        _gw_edit_tidy (&option->record, key);
    }
}

GwStudy *
gw_edit_remove_whole (const GwStudy *study,
                      const char    *path,
                      GPtrArray     *dropped,
                      GError       **error)
{
  g_auto (GwEditPlace) place = { 0 };
  g_autofree char *id = NULL;
  const guint      n = dropped != NULL ? dropped->len : 0;
  GwStudy         *edited;

  if (!begin (&place, study, path, error))
    return NULL;

  id = g_strdup (gw_record_id (_gw_edit_place_record (&place)));
  if (is_surface (&place))
    for (guint i = 0; i < G_N_ELEMENTS (_gw_edit_parts_of_surface); i++)
      {
        _gw_edit_fold (place.study, _gw_edit_parts_of_surface[i]);
        drop_parts (place.study, _gw_edit_parts_of_surface[i], id, dropped);
      }
  _gw_edit_take_out (&place, dropped);
  if (is_surface (&place))
    _gw_edit_follow_surfaces (study, place.study, id, NULL);

  edited = _gw_edit_end (&place, error);
  if (edited == NULL && dropped != NULL)
    g_ptr_array_set_size (dropped, (int) n);
  return edited;
}

static void
copy_common_parts (GwStudy    *study,
                   const char *key,
                   const char *from,
                   const char *to)
{
  const GPtrArray *list = _gw_edit_list (&study->record, key);
  const guint      n = list->len;
  guint            fresh = n;

  _gw_edit_copy_parts (&study->record, key, from, to);
  for (guint i = 0; i < n; i++)
    if (_gw_edit_is_of_surface (g_ptr_array_index (list, i), from))
      {
        g_autofree char *old = gw_record_step ("", key, g_ptr_array_index (list, i), i);
        g_autofree char *copy = gw_record_step ("", key, g_ptr_array_index (list, fresh), fresh);

        _gw_edit_copy_changes (study, old, copy);
        fresh++;
      }
}

static void
copy_parts (GwStudy    *study,
            const char *key,
            const char *from,
            const char *to)
{
  _gw_edit_fold (study, key);
  copy_common_parts (study, key, from, to);
  for (guint k = 0; k < study->options->len; k++)
    if (!_gw_edit_has_own (g_ptr_array_index (study->options, k), "surfaces"))
      _gw_edit_copy_parts (g_ptr_array_index (study->options, k), key, from, to);
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
  g_auto (GwEditPlace) place = { 0 };
  g_autofree char *here = NULL;
  GwRecord        *record;
  GwStudy         *edited;
  const char      *id;

  if (!begin (&place, study, path, error))
    return NULL;

  id = gw_record_id (_gw_edit_place_record (&place));
  record = gw_record_copy (_gw_edit_place_record (&place));
  _gw_edit_give_id (record, place.list);
  _gw_edit_rename_copy (record);
  if (g_str_equal (place.path, "options"))
    renumber_short_name ((GwStudyOption *) record, place.list);
  _gw_edit_put_in (&place, place.index + 1, record);
  here = _gw_edit_place_path (&place);
  _gw_edit_copy_changes (place.study, path, here);

  if (is_surface (&place))
    {
      for (guint i = 0; i < G_N_ELEMENTS (_gw_edit_parts_of_surface); i++)
        copy_parts (place.study, _gw_edit_parts_of_surface[i], id, gw_record_id (record));
      _gw_edit_follow_surfaces (study, place.study, id, gw_record_id (record));
    }

  edited = _gw_edit_end (&place, error);
  if (edited != NULL)
    *copy = g_steal_pointer (&here);
  return edited;
}
