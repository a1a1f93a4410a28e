/* gw-edit-surfaces.c - builds and spars, as their surface comes or goes
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-option.h"
#include "study/gw-edit-private.h"
#include "study/gw-record-json.h"

const char *const _gw_edit_parts_of_surface[2] = { "builds", "spars" };

gboolean
_gw_edit_is_of_surface (const GwRecord *part,
                        const char     *surface)
{
  const GwField *field = gw_record_type_field (part->type, "surface");

  return g_strcmp0 (*(char **) gw_record_at (part, field), surface) == 0;
}

static void
add_copy (GPtrArray      *list,
          const GwRecord *part,
          const char     *surface)
{
  GwRecord *copy = gw_record_copy (part);
  char    **at = gw_record_at (copy, gw_record_type_field (copy->type, "surface"));

  g_free (*at);
  *at = g_strdup (surface);
  _gw_edit_give_id (copy, list);
  g_ptr_array_add (list, copy);
}

void
_gw_edit_copy_parts (GwRecord   *owner,
                     const char *key,
                     const char *from,
                     const char *to)
{
  GPtrArray  *list = _gw_edit_list (owner, key);
  const guint n = list->len;

  for (guint i = 0; i < n; i++)
    if (_gw_edit_is_of_surface (g_ptr_array_index (list, i), from))
      add_copy (list, g_ptr_array_index (list, i), to);
}

static void
drop_parts (GPtrArray  *list,
            const char *surface)
{
  for (guint i = list->len; i-- > 0;)
    if (_gw_edit_is_of_surface (g_ptr_array_index (list, i), surface))
      g_ptr_array_remove_index (list, i);
}

static void
add_common_parts (GPtrArray       *list,
                  const GPtrArray *common,
                  const char      *surface)
{
  for (guint i = 0; i < common->len; i++)
    if (_gw_edit_is_of_surface (g_ptr_array_index (common, i), surface))
      add_copy (list, g_ptr_array_index (common, i), surface);
}

/* The option's own list, as it would be were it common, does what the common one did. */
static void
follow_own (GwStudy    *study,
            guint       option,
            const char *key,
            const char *from,
            const char *to)
{
  g_autoptr (GwStudy) view = gw_edit_view (study, option);
  GPtrArray *list = _gw_edit_list (&view->record, key);

  if (to == NULL)
    drop_parts (list, from);
  else if (from != NULL)
    _gw_edit_copy_parts (&view->record, key, from, to);
  else
    add_common_parts (list, _gw_edit_list (&study->record, key), to);

  _gw_edit_own (g_ptr_array_index (study->options, option), key, NULL, view);
}

static void
keep_former (const GwStudy *before,
             GwStudy       *study,
             guint          option,
             const char    *key)
{
  const GwField *field = gw_record_type_field (study->record.type, key);
  g_autoptr (GwStudy) view = NULL;

  if (gw_record_field_equal (&before->record, &study->record, field))
    return;

  view = gw_edit_view (before, option);
  _gw_edit_own (g_ptr_array_index (study->options, option), key, NULL, view);
}

void
_gw_edit_follow_surfaces (const GwStudy *before,
                          GwStudy       *study,
                          const char    *from,
                          const char    *to)
{
  for (guint i = 0; i < study->options->len; i++)
    for (guint k = 0; k < G_N_ELEMENTS (_gw_edit_parts_of_surface); k++)
      {
        const char          *key = _gw_edit_parts_of_surface[k];
        const GwStudyOption *option = g_ptr_array_index (study->options, i);
        const gboolean       has_surfaces = _gw_edit_has_own (option, "surfaces");
        const gboolean       has_parts = _gw_edit_has_own (option, key);

        if (has_surfaces && !has_parts)
          keep_former (before, study, i, key);
        else if (has_parts && !has_surfaces)
          follow_own (study, i, key, from, to);
      }
}
