/* gw-fresh-size.c - what is sold in steps, with the numbers of a step
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "study/gw-catalogue.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-fresh-private.h"
#include "study/gw-record-json.h"

#define MOST 5

/* Fields of the size and those of the record that take them. */
static const struct
{
  const char *collection;
  struct
  {
    const char *from, *to;
  } fields[MOST];
} fills[] = {
  { "usual_items",
    { { "mass_g", "mass_g" },
      { "length_mm", "length_mm" },
      { "width_mm", "width_mm" },
      { "height_mm", "height_mm" } } },
  { "propellers",
    { { "mass_g", "propeller_mass_g" },
      { "diameter_mm", "propeller_diameter_mm" },
      { "pitch_mm", "propeller_pitch_mm" } } },
  { "usual_spars",
    { { "shape", "shape" },
      { "material", "material" },
      { "width_mm", "width_mm" },
      { "height_mm", "height_mm" },
      { "wall_mm", "wall_mm" } } },
};

/* -1: none of them. */
static int
fill_for (const GwField *field)
{
  for (guint i = 0; i < G_N_ELEMENTS (fills); i++)
    if (field->kind == GW_FIELD_REF && g_str_equal (field->collection, fills[i].collection))
      return (int) i;

  return -1;
}

gboolean
gw_fresh_is_size (const GwStudy *study,
                  const char    *path)
{
  const GwField *field = NULL;

  return gw_record_find ((GwRecord *) &study->record, path, &field) != NULL &&
         fill_for (field) >= 0;
}

/* Equipment is offered what is of its kind. */
static gboolean
suits (const GwRecord *record,
       const GwRecord *size)
{
  return size->type != gw_study_usual_item_type () ||
         ((const GwStudyItem *) record)->kind == ((const GwStudyUsualItem *) size)->kind;
}

GPtrArray *
gw_fresh_sizes (const GwRecord *record,
                const GwField  *field)
{
  GPtrArray       *found = g_ptr_array_new ();
  const GPtrArray *shelf = fill_for (field) >= 0 ? gw_catalogue_list (field->collection) : NULL;

  for (guint i = 0; shelf != NULL && i < shelf->len; i++)
    if (suits (record, g_ptr_array_index (shelf, i)))
      g_ptr_array_add (found, g_ptr_array_index (shelf, i));

  return found;
}

/* The field's new value; (transfer full) @value. */
static GwStudy *
set_beside (GwStudy    *edited,
            guint       option,
            gboolean    is_only_here,
            const char *record_path,
            const char *key,
            JsonNode   *value,
            GError    **error)
{
  g_autoptr (GwStudy) before = edited;
  g_autoptr (JsonNode) node = value;
  g_autofree char *path = g_strdup_printf ("%s/%s", record_path, key);

  return gw_edit_set (before, option, is_only_here, path, node, error);
}

/* The name with that of the new size in it; NULL: it holds none. */
static JsonNode *
name_of (const GwRecord  *present,
         const char      *old_id,
         const GPtrArray *shelf,
         const GwRecord  *size)
{
  const GwField   *field = gw_record_type_field (present->type, "name");
  const char      *name = field != NULL ? *(char **) gw_record_at (present, field) : NULL;
  const GwRecord  *old = old_id != NULL ? gw_list_find (shelf, old_id) : NULL;
  g_autofree char *old_name = old != NULL ? gw_edit_record_name (old) : NULL;
  g_autofree char *new_name = gw_edit_record_name (size);
  const char      *at = name != NULL && old_name != NULL ? strstr (name, old_name) : NULL;
  g_autofree char *text = NULL;

  if (at == NULL)
    return NULL;

  text = g_strdup_printf ("%.*s%s%s", (int) (at - name), name, new_name, at + strlen (old_name));
  return json_node_init_string (json_node_alloc (), text);
}

GwStudy *
gw_fresh_size (const GwStudy *study,
               guint          option,
               gboolean       is_only_here,
               const char    *path,
               JsonNode      *value,
               GError       **error)
{
  g_autofree char *record_path = g_path_get_dirname (path);
  g_autofree char *key = g_path_get_basename (path);
  g_autoptr (GwStudy) resolved = NULL;
  const GwRecord  *present = _gw_fresh_present (study, option, record_path, &resolved);
  GwStudy         *edited = gw_edit_set (study, option, is_only_here, path, value, error);
  const GwField   *field = present != NULL ? gw_record_type_field (present->type, key) : NULL;
  const int        fill = field != NULL ? fill_for (field) : -1;
  const GPtrArray *shelf = fill >= 0 ? gw_catalogue_list (field->collection) : NULL;
  const GwRecord  *size =
    shelf != NULL ? gw_list_find (shelf, json_node_get_string (value)) : NULL;
  JsonNode *name;

  if (size == NULL)
    return edited;

  name = edited != NULL
           ? name_of (present, *(char **) gw_record_at (present, field), shelf, size)
           : NULL;
  if (name != NULL)
    edited = set_beside (edited, option, is_only_here, record_path, "name", name, error);
  for (guint i = 0; i < MOST && edited != NULL && fills[fill].fields[i].from != NULL; i++)
    {
      const GwField *from = gw_record_type_field (size->type, fills[fill].fields[i].from);

      edited = set_beside (edited, option, is_only_here, record_path, fills[fill].fields[i].to,
                           gw_record_field_node (size, from), error);
    }

  return edited;
}
