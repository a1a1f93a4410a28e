/* gw-fresh-build.c - another construction, with what it cannot be without
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-fresh.h"
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

static gboolean
has_material (const GwRecord *part)
{
  const GwField *field = gw_record_type_field (part->type, "material");

  return *(char **) gw_record_at (part, field) != NULL;
}

/* The first that is made so, rather of the same surface than of another. */
static void
look_through (const GPtrArray     *builds,
              const GwStudyBuild  *present,
              int                  construction,
              const GwStudyBuild **best)
{
  for (guint i = 0; i < builds->len; i++)
    {
      const GwStudyBuild *build = g_ptr_array_index (builds, i);
      const gboolean      is_same = g_strcmp0 (build->surface, present->surface) == 0;

      if ((int) build->construction != construction ||
          !has_material (part_of (build, needs[construction].part)))
        continue;
      if (*best == NULL || (is_same && g_strcmp0 ((*best)->surface, present->surface) != 0))
        *best = build;
    }
}

/* The part as that build has it, or with a material only. (transfer full) */
static JsonObject *
model_of (const GwStudy      *study,
          const GwStudyBuild *present,
          int                 construction)
{
  const GwStudyBuild *model = NULL;
  JsonObject         *object;

  for (guint i = 0; i < study->options->len; i++)
    look_through (((GwStudyOption *) g_ptr_array_index (study->options, i))->builds, present,
                  construction, &model);
  look_through (study->builds, present, construction, &model);
  if (model != NULL)
    {
      g_autoptr (GString) text = g_string_new (NULL);

      gw_record_write (part_of (model, needs[construction].part), text, 0);
      return gw_json_parse (text->str, text->len, NULL);
    }

  object = json_object_new ();
  json_object_set_string_member (object, "material", needs[construction].material);
  return object;
}

/* The build as that option has it. */
static GwRecord *
present_build (const GwStudy *study,
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
  const GwRecord *present = present_build (study, option, build, &resolved);
  const int       construction =
    present != NULL ? parse (present, json_node_get_string (value)) : -1;
  g_autoptr (JsonObject) model = NULL;
  g_autoptr (GList) keys = NULL;
  GwStudy *edited = gw_edit_set (study, option, is_only_here, path, value, error);

  if (construction < 0 ||
      has_material (part_of ((const GwStudyBuild *) present, needs[construction].part)))
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
