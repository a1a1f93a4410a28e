/* gw-check.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-check.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-assemble.h"
#include "study/gw-catalogue.h"
#include "study/gw-resolve.h"

typedef struct
{
  const GwStudy *study;
  GPtrArray     *problems;
} Checker;

static void
add_ids (GString         *words,
         const GPtrArray *list)
{
  for (guint i = 0; list != NULL && i < list->len; i++)
    g_string_append_printf (words, "%s%s", words->len > 0 ? ", " : "",
                            gw_record_id (g_ptr_array_index (list, i)));
}

static void
check_ref (const char    *path,
           GwRecord      *record,
           const GwField *field,
           gpointer       data)
{
  const Checker   *checker = data;
  const GPtrArray *own, *shelf;
  const char      *id;
  g_autoptr (GString) words = NULL;

  if (field->kind != GW_FIELD_REF || (id = *(char **) gw_record_at (record, field)) == NULL)
    return;

  own = gw_study_list (checker->study, field->collection);
  shelf = gw_catalogue_list (field->collection);
  if ((own != NULL && gw_list_find (own, id) != NULL) ||
      (shelf != NULL && gw_list_find (shelf, id) != NULL))
    return;

  words = g_string_new (NULL);
  add_ids (words, own);
  add_ids (words, shelf);
  gw_problems_error (checker->problems, path, _ ("there is no “%s” among the %s; there are: %s"),
                     id, field->collection, words->len > 0 ? words->str : _ ("none"));
}

/* A file with an id twice is refused; neither may an edit or an option's change make one. */
static void
check_unique (const char    *path,
              GwRecord      *record,
              const GwField *field,
              gpointer       data)
{
  const GPtrArray *list;

  if (field->kind != GW_FIELD_LIST)
    return;

  list = *(GPtrArray **) gw_record_at (record, field);
  for (guint i = 0; i < list->len; i++)
    {
      const GwRecord *item = g_ptr_array_index (list, i);
      const char     *id = gw_record_id (item);

      if (id != NULL && gw_list_find (list, id) != item)
        gw_problems_error (data, path, _ ("the id “%s” is used twice in this list; rename one"),
                           id);
    }
}

/* A build or spar that names no surface would be silently without effect. */
static void
check_named (const GPtrArray *builds,
             const GPtrArray *spars,
             const char      *path,
             GPtrArray       *problems)
{
  for (guint i = 0; i < builds->len; i++)
    if (((GwStudyBuild *) g_ptr_array_index (builds, i))->surface == NULL)
      {
        g_autofree char *here = g_strdup_printf ("%sbuilds/%u", path, i + 1);

        gw_problems_error (problems, here,
                           _ ("“surface” is missing; name the surface that is built so"));
      }

  for (guint i = 0; i < spars->len; i++)
    {
      const GwStudySpar *spar = g_ptr_array_index (spars, i);

      if (spar->surface == NULL)
        {
          g_autofree char *here = g_strdup_printf ("%sspars/%s", path, spar->id);

          gw_problems_error (problems, here,
                             _ ("“surface” is missing; name the surface it runs in"));
        }
    }
}

static void
check_lists (const GwStudy *study,
             GPtrArray     *problems)
{
  if (study->options->len == 0)
    gw_problems_error (problems, "options",
                       _ ("the study has no option; add at least one way to build it"));

  check_named (study->builds, study->spars, "", problems);
  for (guint i = 0; i < study->options->len; i++)
    {
      const GwStudyOption *option = g_ptr_array_index (study->options, i);
      g_autofree char     *path = g_strdup_printf ("options/%s/", option->id);

      check_named (option->builds, option->spars, path, problems);
    }
}

/* Everything an option changes is read once, as the evaluation will read it. What is
 * wrong with the common airframe is told once, not once an option. */
static void
check_options (const GwStudy *study,
               GPtrArray     *problems)
{
  for (guint i = 0; i < study->options->len && gw_problems_count (problems) == 0; i++)
    {
      g_autoptr (GwStudy) resolved = gw_study_resolve (study, i, problems);
      Checker checker = { resolved, problems };

      gw_record_each (&resolved->record, "", check_ref, &checker);
      gw_record_each (&resolved->record, "", check_unique, problems);
      if (gw_problems_count (problems) == 0)
        {
          g_autoptr (GwAssembly) assembly = gw_assemble (resolved, NULL, problems);

          (void) assembly;
        }
    }
}

void
gw_study_check_names (const GwStudy *study,
                      GPtrArray     *problems)
{
  Checker checker = { study, problems };

  gw_record_each ((GwRecord *) &study->record, "", check_ref, &checker);
  gw_record_each ((GwRecord *) &study->record, "", check_unique, problems);
  check_lists (study, problems);
}

void
gw_study_check (const GwStudy *study,
                GPtrArray     *problems)
{
  gw_study_check_names (study, problems);
  if (gw_problems_count (problems) == 0)
    check_options (study, problems);
}
