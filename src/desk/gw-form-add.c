/* gw-form-add.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-add.h"

#include <math.h>
#include <string.h>

#include "study/gw-catalogue.h"
#include "study/gw-edit.h"
#include "study/gw-record-json.h"

#define SHORTEST_STEP 10.0 /* [mm] */

static JsonNode *
node_of (const GwRecord *record)
{
  g_autoptr (GString) text = g_string_new (NULL);

  gw_record_write (record, text, 0);
  return json_from_string (text->str, NULL);
}

static double
value_of (const GwRecord *record,
          const char     *key)
{
  const GwNumber *number = gw_record_at (record, gw_record_type_field (record->type, key));

  return number->value;
}

static void
set_value (JsonNode   *node,
           const char *key,
           double      value)
{
  json_object_set_double_member (json_node_get_object (node), key, value);
}

/* As far again as half of the last step, in whole units of the document. */
static void
go_on (JsonNode       *node,
       const GwRecord *before,
       const GwRecord *last,
       const char     *key)
{
  const double step = value_of (last, key) - value_of (before, key);

  if (step != 0.0)
    set_value (node, key,
               value_of (last, key) +
                 copysign (MAX (round (0.5 * fabs (step)), SHORTEST_STEP), step));
}

/* Between two points, so that an outline keeps its shape. */
static void
go_between (JsonNode       *node,
            const GwRecord *before,
            const GwRecord *last,
            const char     *key)
{
  set_value (node, key, 0.5 * (value_of (before, key) + value_of (last, key)));
}

static JsonNode *
next_of (const GPtrArray *list)
{
  const GwRecord *last = g_ptr_array_index (list, list->len - 1);
  const GwRecord *before = list->len > 1 ? g_ptr_array_index (list, list->len - 2) : last;
  JsonNode       *node = node_of (last);

  if (last->type == gw_study_station_type ())
    {
      go_on (node, before, last, "x_mm");
      go_on (node, before, last, "y_mm");
      go_on (node, before, last, "z_mm");
    }
  else if (last->type == gw_study_body_station_type ())
    go_on (node, before, last, "x_mm");
  else if (last->type == gw_study_section_row_type ())
    set_value (node, "re", round (1.5 * value_of (last, "re")));
  else if (last->type == gw_study_point_type ())
    {
      go_between (node, before, last, "x");
      go_between (node, before, last, "y");
    }

  return node;
}

static const char *
first_of_kind (GwMaterialKind kind)
{
  const GPtrArray *materials = gw_catalogue_list ("materials");

  for (guint i = 0; i < materials->len; i++)
    {
      const GwStudyMaterial *material = g_ptr_array_index (materials, i);

      if (material->kind == (int) kind)
        return material->id;
    }

  return NULL;
}

/* Over the outer half of the first panel, of the kind that such a surface usually has. */
static void
begin_control (JsonNode             *node,
               const GwStudySurface *surface)
{
  const GwRecord *root = g_ptr_array_index (surface->stations, 0);
  const GwRecord *next = g_ptr_array_index (surface->stations, 1);
  const double    length = hypot (value_of (next, "y_mm") - value_of (root, "y_mm"),
                                  value_of (next, "z_mm") - value_of (root, "z_mm"));
  const char     *kind = surface->role == GW_ROLE_FIN         ? "rudder"
                         : surface->role == GW_ROLE_TAILPLANE ? "elevator"
                         : surface->role == GW_ROLE_V_TAIL    ? "ruddervator"
                                                              : "aileron";

  json_object_set_string_member (json_node_get_object (node), "id", kind);
  json_object_set_string_member (json_node_get_object (node), "kind", kind);
  set_value (node, "from_mm", round (0.5 * length));
  set_value (node, "to_mm", floor (length));
  set_value (node, "chord_percent", 25.0);
}

static JsonNode *
first_one (const GwStudy      *study,
           const GwRecord     *owner,
           const GwRecordType *type)
{
  JsonObject           *object = json_object_new ();
  JsonNode             *node = json_node_init_object (json_node_alloc (), object);
  const GwStudySurface *surface =
    study->surfaces->len > 0 ? g_ptr_array_index (study->surfaces, 0) : NULL;

  json_object_unref (object); /* the node has it */
  if (type == gw_study_control_type ())
    begin_control (node, (const GwStudySurface *) owner);
  else if (surface != NULL && type == gw_study_spar_type ())
    {
      json_object_set_string_member (object, "id", "spar");
      json_object_set_string_member (object, "surface", surface->id);
      json_object_set_string_member (object, "material", first_of_kind (GW_MATERIAL_TUBE));
    }
  else if (surface != NULL && type == gw_study_build_type ())
    {
      JsonObject *sheet = json_object_new ();

      json_object_set_string_member (sheet, "material", first_of_kind (GW_MATERIAL_SHEET));
      json_object_set_string_member (object, "surface", surface->id);
      json_object_set_object_member (object, "folded_sheet", sheet);
    }
  else if (type == gw_study_section_row_type ())
    {
      set_value (node, "re", 100000.0);
      set_value (node, "cl_max", 1.1);
    }

  return node;
}

GwStudy *
gw_form_add (const GwStudy  *study,
             const GwRecord *owner,
             const char     *list,
             char          **path,
             GError        **error)
{
  const GwField   *field = gw_record_type_field (owner->type, strrchr (list, '/') + 1);
  const GPtrArray *records = *(GPtrArray **) gw_record_at (owner, field);
  const gboolean   is_between = field->item () == gw_study_point_type () && records->len > 1;
  g_autoptr (JsonNode) node =
    records->len > 0 ? next_of (records) : first_one (study, owner, field->item ());

  return gw_edit_insert (study, list, is_between ? (int) records->len - 1 : -1, node, path, error);
}
