/* gw-resolve.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-resolve.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "study/gw-catalogue.h"
#include "study/gw-finish.h"
#include "study/gw-section-known.h"

static gboolean
starts_with_step (const char *path,
                  const char *step)
{
  const gsize n = strlen (step);

  return strncmp (path, step, n) == 0 && (path[n] == '/' || path[n] == '\0');
}

void
gw_study_apply_changes (GwStudy             *study,
                        const GwStudyOption *option,
                        GPtrArray           *problems)
{
  for (guint i = 0; i < option->changes->len; i++)
    {
      const GwChange *change = g_ptr_array_index (option->changes, i);
      g_autoptr (GPtrArray) own = gw_problems_new ();
      g_autofree char *here = g_strdup_printf ("options/%s/changes/%s", option->id, change->path);

      if (starts_with_step (change->path, "options") || starts_with_step (change->path, "format") ||
          starts_with_step (change->path, "baseline"))
        {
          gw_problems_error (problems, here, _ ("an option can change the airframe, not this"));
          continue;
        }

      gw_study_put (study, change->path, change->value, own);
      for (guint p = 0; p < own->len; p++)
        gw_problems_error (problems, here, "%s",
                           ((GwProblem *) g_ptr_array_index (own, p))->message);
    }
}

static void
keep_option (GwStudy *study,
             guint    option)
{
  for (guint i = study->options->len; i-- > 0;)
    if (i != option)
      g_ptr_array_remove_index (study->options, i);

  gw_record_reset_field (&study->record, gw_record_type_field (study->record.type, "baseline"));
}

/* Takes what is referred to from the catalogue, once. */
static void
fetch (const char    *path,
       GwRecord      *record,
       const GwField *field,
       gpointer       data)
{
  GwStudy         *study = data;
  const GPtrArray *shelf;
  const char      *id;
  GPtrArray       *list;
  GwRecord        *found;

  if (field->kind != GW_FIELD_REF || (id = *(char **) gw_record_at (record, field)) == NULL)
    return;

  shelf = gw_catalogue_list (field->collection);
  list = gw_study_list (study, field->collection);
  if (shelf == NULL || list == NULL)
    return;

  found = gw_list_find (shelf, id);
  if (found != NULL && gw_list_find (list, id) == NULL)
    g_ptr_array_add (list, gw_record_copy (found));
}

static void
fetch_methods (GwStudy *study)
{
  const GPtrArray *methods = gw_catalogue_get ()->methods;

  for (guint i = 0; i < methods->len; i++)
    {
      GwRecord *method = g_ptr_array_index (methods, i);

      if (gw_list_find (study->methods, gw_record_id (method)) == NULL)
        g_ptr_array_add (study->methods, gw_record_copy (method));
    }
}

static void
fetch_sections (GwStudy *study,
                GArray  *wanted)
{
  for (guint i = 0; i < study->sections->len; i++)
    {
      GwStudySection *section = g_ptr_array_index (study->sections, i);
      g_autoptr (GArray) trips = gw_finish_trips (study, section->id);

      if (trips != NULL)
        gw_section_fill (section, trips, wanted);
    }
}

GwStudy *
gw_study_resolve_wanting (const GwStudy *study,
                          guint          option,
                          GArray        *wanted,
                          GPtrArray     *problems)
{
  GwStudy *resolved = gw_study_copy (study);

  keep_option (resolved, option);
  gw_study_apply_changes (resolved, g_ptr_array_index (resolved->options, 0), problems);
  gw_record_each (&resolved->record, "", fetch, resolved);
  fetch_methods (resolved);
  fetch_sections (resolved, wanted);
  return resolved;
}

GwStudy *
gw_study_resolve (const GwStudy *study,
                  guint          option,
                  GPtrArray     *problems)
{
  return gw_study_resolve_wanting (study, option, NULL, problems);
}

/* A list or part of the option's own holds much that it has in common with the others. */
static gboolean
is_common (const GwStudy *resolved,
           const GwStudy *study,
           const char    *path)
{
  const GwField  *field = NULL, *common_field = NULL;
  const GwRecord *record = gw_record_find ((GwRecord *) &resolved->record, path, &field);
  const GwRecord *common = gw_record_find ((GwRecord *) &study->record, path, &common_field);

  return record != NULL && common != NULL && gw_record_field_equal (record, common, field);
}

gboolean
gw_resolved_is_own (const GwStudy *resolved,
                    const GwStudy *study,
                    const char    *path)
{
  const GwStudyOption *option = g_ptr_array_index (resolved->options, 0);
  gboolean             is_within = FALSE;

  for (guint i = 0; i < option->changes->len; i++)
    {
      const GwChange *change = g_ptr_array_index (option->changes, i);

      if (g_str_equal (path, change->path))
        return TRUE;
      is_within = is_within || starts_with_step (path, change->path);
    }

  return is_within && !is_common (resolved, study, path);
}

char *
gw_resolved_key (const GwStudy *resolved,
                 const GwStudy *study,
                 const char    *path)
{
  const GwStudyOption *option = g_ptr_array_index (resolved->options, 0);

  return gw_resolved_is_own (resolved, study, path)
           ? g_strdup_printf ("options/%s/changes/%s", option->id, path)
           : g_strdup (path);
}
