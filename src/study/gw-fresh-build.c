/* gw-fresh-build.c - another construction or filament, with what it cannot be without
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "study/gw-catalogue.h"
#include "study/gw-edit-number.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-fresh-private.h"
#include "study/gw-json.h"
#include "study/gw-record-json.h"
#include "study/gw-resolve.h"

/* Part of a build and the material, from the catalogue, that it begins with; common practice, no
 * source. */
static const struct
{
  const char *part, *material;
} needs[] = {
  [GW_CONSTRUCTION_PRINTED_SHELL] = { "printed_shell", "pla-foaming" },
  [GW_CONSTRUCTION_FOLDED_SHEET] = { "folded_sheet", "foam-board-light" },
  [GW_CONSTRUCTION_HOT_WIRED_CORE] = { "hot_wired_core", "eps-19" },
};

static GwRecord *
part_of (const GwStudyBuild *build,
         const char         *part)
{
  const GwField *field = gw_record_type_field (build->record.type, part);

  return *(GwRecord **) gw_record_at (&build->record, field);
}

static const char *
material_of (const GwRecord *part)
{
  const GwField *field = gw_record_type_field (part->type, "material");

  return *(char **) gw_record_at (part, field);
}

/* The first that is made so, rather of the same surface than of another. */
static void
look_through (const GPtrArray     *builds,
              const GwStudyBuild  *present,
              int                  construction,
              const char          *material, /* NULL: any */
              const GwStudyBuild **best)
{
  for (guint i = 0; i < builds->len; i++)
    {
      const GwStudyBuild *build = g_ptr_array_index (builds, i);
      const gboolean      is_same = g_strcmp0 (build->surface, present->surface) == 0;
      const char         *made_of = material_of (part_of (build, needs[construction].part));

      if ((int) build->construction != construction || made_of == NULL ||
          (material != NULL && !g_str_equal (made_of, material)))
        continue;
      if (*best == NULL || (is_same && g_strcmp0 ((*best)->surface, present->surface) != 0))
        *best = build;
    }
}

static const GwStudyBuild *
find_model (const GwStudy      *study,
            const GwStudyBuild *present,
            int                 construction,
            const char         *material)
{
  const GwStudyBuild *model = NULL;

  for (guint i = 0; i < study->options->len; i++)
    look_through (((GwStudyOption *) g_ptr_array_index (study->options, i))->builds, present,
                  construction, material, &model);
  look_through (study->builds, present, construction, material, &model);
  return model;
}

/* Common practice, no source; how well the mass of solid plastic is met is told by the material. */
static JsonNode *
usual_flow (const GwStudy *study,
            const char    *material)
{
  const GwStudyMaterial *found = (GwStudyMaterial *) gw_list_find (study->materials, material);
  GwNumber               flow = { 0 };
  JsonNode              *node;

  if (found == NULL)
    found = (GwStudyMaterial *) gw_list_find (gw_catalogue_list ("materials"), material);
  if (found != NULL && found->kind == GW_MATERIAL_FOAMING_PLASTIC)
    gw_number_set_spread (&flow, 50.0, 3.0);
  else
    gw_number_set (&flow, 100.0);
  flow.origin = GW_ORIGIN_GUESSED;
  node = gw_edit_number_node (&flow);
  gw_number_clear (&flow);
  return node;
}

/* The part as that build has it, or with what it cannot be without. (transfer full) */
static JsonObject *
model_of (const GwStudy      *study,
          const GwStudyBuild *present,
          int                 construction)
{
  const GwStudyBuild *model = find_model (study, present, construction, NULL);
  const char         *material = needs[construction].material;
  JsonObject         *object;

  if (model != NULL)
    {
      g_autoptr (GString) text = g_string_new (NULL);

      gw_record_write (part_of (model, needs[construction].part), text, 0);
      return gw_json_parse (text->str, text->len, NULL);
    }

  object = json_object_new ();
  json_object_set_string_member (object, "material", material);
  if (construction == GW_CONSTRUCTION_PRINTED_SHELL)
    json_object_set_member (object, "flow_percent", usual_flow (study, material));
  return object;
}

GwRecord *
_gw_fresh_present (const GwStudy *study,
                   guint          option,
                   const char    *path,
                   GwStudy      **resolved)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();

  if (g_str_has_prefix (path, "options/"))
    return gw_edit_record (study, path);

  *resolved = gw_study_resolve (study, option, problems);
  return gw_edit_record (*resolved, path);
}

static int
parse (const GwRecord *build,
       const char     *key)
{
  const GwField *field = gw_record_type_field (build->type, "construction");

  for (int i = 0; field->choices[i].key != NULL; i++)
    if (g_strcmp0 (field->choices[i].key, key) == 0)
      return i;

  return -1;
}

gboolean
gw_fresh_is_construction (const GwStudy *study,
                          const char    *path)
{
  const GwField  *field = NULL;
  const GwRecord *record = gw_record_find ((GwRecord *) &study->record, path, &field);

  return record != NULL && record->type == gw_study_build_type () &&
         g_str_equal (field->key, "construction");
}

GwStudy *
gw_fresh_construction (const GwStudy *study,
                       guint          option,
                       gboolean       is_only_here,
                       const char    *path,
                       JsonNode      *value,
                       GError       **error)
{
  g_autofree char *build = g_path_get_dirname (path);
  g_autoptr (GwStudy) resolved = NULL;
  const GwRecord *present = _gw_fresh_present (study, option, build, &resolved);
  const int       construction =
    present != NULL ? parse (present, json_node_get_string (value)) : -1;
  g_autoptr (JsonObject) model = NULL;
  g_autoptr (GList) keys = NULL;
  GwStudy *edited = gw_edit_set (study, option, is_only_here, path, value, error);

  if (construction < 0 ||
      material_of (part_of ((const GwStudyBuild *) present, needs[construction].part)) != NULL)
    return edited;

  model = model_of (study, (const GwStudyBuild *) present, construction);
  keys = json_object_get_members (model);
  for (GList *l = keys; l != NULL && edited != NULL; l = l->next)
    {
      g_autoptr (GwStudy) before = edited;
      g_autofree char *here = g_strdup_printf ("%s/%s/%s", build, needs[construction].part,
                                               (const char *) l->data);

      edited = gw_edit_set (before, option, is_only_here, here,
                            json_object_get_member (model, l->data), error);
    }

  return edited;
}

gboolean
gw_fresh_is_filament (const GwStudy *study,
                      const char    *path)
{
  const GwField  *field = NULL;
  const GwRecord *record = gw_record_find ((GwRecord *) &study->record, path, &field);

  return record != NULL && record->type == gw_study_printed_shell_type () &&
         g_str_equal (field->key, "material");
}

/* Of the shell as the study has it with that filament elsewhere; NULL: it says nothing. */
static JsonNode *
setting_of (const GwStudyBuild *model,
            const char         *key)
{
  const GwField *field = gw_record_type_field (gw_study_printed_shell_type (), key);

  return model != NULL && gw_record_has (&model->printed_shell->record, field)
           ? gw_record_field_node (&model->printed_shell->record, field)
           : NULL;
}

/* One option alone cannot leave out a common temperature. It is the printer's business, no result
 * rests on it: then it stays. */
static GwStudy *
set_temperature (GwStudy    *edited,
                 guint       option,
                 gboolean    is_only_here,
                 const char *path,
                 JsonNode   *value)
{
  GwStudy *heated = gw_edit_set (edited, option, is_only_here, path, value, NULL);

  if (heated == NULL)
    return edited;

  gw_study_unref (edited);
  return heated;
}

GwStudy *
gw_fresh_filament (const GwStudy *study,
                   guint          option,
                   gboolean       is_only_here,
                   const char    *path,
                   JsonNode      *value,
                   GError       **error)
{
  g_autofree char *shell = g_path_get_dirname (path);
  g_autofree char *build = g_path_get_dirname (shell);
  g_autofree char *flow_path = g_strconcat (shell, "/flow_percent", NULL);
  g_autofree char *temperature_path = g_strconcat (shell, "/temperature_c", NULL);
  const char      *material = json_node_get_string (value);
  g_autoptr (GwStudy) resolved = NULL;
  g_autoptr (GwStudy) edited = gw_edit_set (study, option, is_only_here, path, value, error);
  const GwStudyBuild *present =
    (GwStudyBuild *) _gw_fresh_present (study, option, build, &resolved);
  const GwStudyBuild *model;
  g_autoptr (JsonNode) flow = NULL, temperature = NULL;
  GwStudy *fed;

  if (edited == NULL || present == NULL ||
      g_strcmp0 (present->printed_shell->material, material) == 0)
    return g_steal_pointer (&edited);

  model = find_model (study, present, GW_CONSTRUCTION_PRINTED_SHELL, material);
  flow = setting_of (model, "flow_percent");
  temperature = setting_of (model, "temperature_c");
  if (flow == NULL)
    flow = usual_flow (study, material);

  fed = gw_edit_set (edited, option, is_only_here, flow_path, flow, error);
  if (fed == NULL || (temperature == NULL && isnan (present->printed_shell->temperature_c.value)))
    return fed;

  return set_temperature (fed, option, is_only_here, temperature_path, temperature);
}
