/* gw-edit-option.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-option.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "study/gw-catalogue.h"
#include "study/gw-check.h"
#include "study/gw-edit-private.h"
#include "study/gw-record-json.h"
#include "study/gw-resolve.h"

static gboolean
starts_with_step (const char *path,
                  const char *step)
{
  const gsize n = strlen (step);

  return strncmp (path, step, n) == 0 && (path[n] == '/' || path[n] == '\0');
}

gboolean
gw_edit_can_differ (const char *path)
{
  return *path != '\0' && !starts_with_step (path, "options") &&
         !starts_with_step (path, "format") && !starts_with_step (path, "baseline") &&
         gw_catalogue_list (path) == NULL;
}

static GwStudyOption *
option_at (const GwStudy *study,
           guint          option)
{
  return option < study->options->len ? g_ptr_array_index (study->options, option) : NULL;
}

JsonNode *
gw_edit_change_of (const GwStudy *study,
                   guint          option,
                   const char    *path)
{
  const GwStudyOption *found = option_at (study, option);

  for (guint i = 0; found != NULL && i < found->changes->len; i++)
    {
      const GwChange *change = g_ptr_array_index (found->changes, i);

      if (g_str_equal (change->path, path))
        return change->value;
    }

  return NULL;
}

/* Makes @value the option's own, and reads it to see whether it can be. */
static void
set_here (GwStudy    *study,
          guint       option,
          const char *path,
          JsonNode   *value,
          GPtrArray  *problems)
{
  const gboolean is_within = _gw_edit_is_within_own (study, option_at (study, option), path);
  const GwField *field = NULL;
  const gboolean is_whole =
    gw_record_find (&study->record, path, &field) == NULL || field->item != NULL;
  g_autoptr (GwStudy) view = NULL;

  /* Out of a list of its own an option can leave what it wants. */
  if (value == NULL && !is_within)
    {
      gw_problems_error (problems, path, _ ("one option alone cannot leave this out"));
      return;
    }

  /* A drag writes a plain field with every frame: no more is done for it than must be. */
  view = is_within || is_whole ? gw_edit_view (study, option) : gw_study_ref (study);
  if (is_within || is_whole)
    gw_study_put (view, path, value, problems);
  if (gw_problems_count (problems) == 0)
    _gw_edit_own (option_at (study, option), path, value, view);
}

GwStudy *
gw_edit_for_option (const GwStudy *study,
                    guint          option,
                    const char    *path,
                    JsonNode      *value,
                    GError       **error)
{
  g_autoptr (GwStudy) edited = NULL;
  g_autoptr (GPtrArray) problems = gw_problems_new ();

  if (value == NULL || !gw_edit_can_differ (path))
    return gw_study_edit (study, path, value, error);
  if (option_at (study, option) == NULL)
    {
      _gw_edit_refuse ("options", error);
      return NULL;
    }

  edited = gw_study_copy (study);
  set_here (edited, option, path, value, problems);
  if (!gw_problems_to_error (problems, error))
    return NULL;

  return _gw_edit_checked (g_steal_pointer (&edited), error);
}

GwStudy *
gw_edit_set (const GwStudy *study,
             guint          option,
             gboolean       is_only_here,
             const char    *path,
             JsonNode      *value,
             GError       **error)
{
  g_autoptr (GwStudy) edited = NULL;
  g_autoptr (GPtrArray) problems = gw_problems_new ();

  g_return_val_if_fail (option < study->options->len, NULL);

  edited = gw_study_copy (study);
  if (gw_edit_is_here (study, option, is_only_here, path))
    set_here (edited, option, path, value, problems);
  else
    gw_study_put (edited, path, value, problems);

  gw_study_check_names (edited, problems);
  return gw_problems_to_error (problems, error) ? g_steal_pointer (&edited) : NULL;
}

static void
drop_change (GwStudyOption *option,
             const char    *path)
{
  for (guint i = option->changes->len; i-- > 0;)
    if (g_str_equal (((GwChange *) g_ptr_array_index (option->changes, i))->path, path))
      g_ptr_array_remove_index (option->changes, i);

  _gw_edit_tidy (&option->record, "changes");
}

/* They name each other, so one may not be able to go back alone. */
static gboolean
goes_together (const char *path)
{
  return g_str_equal (path, "surfaces") || g_str_equal (path, "builds") ||
         g_str_equal (path, "spars");
}

static GwStudy *
take_back_together (const GwStudy *study,
                    guint          option)
{
  GwStudy *edited = gw_study_copy (study);

  drop_change (option_at (edited, option), "surfaces");
  drop_change (option_at (edited, option), "builds");
  drop_change (option_at (edited, option), "spars");
  return _gw_edit_checked (edited, NULL);
}

GwStudy *
gw_edit_take_back (const GwStudy *study,
                   guint          option,
                   const char    *path,
                   GError       **error)
{
  g_autoptr (GwStudy) edited = NULL;
  g_autoptr (GError) reason = NULL;
  GwStudy *result;

  if (gw_edit_change_of (study, option, path) == NULL)
    {
      _gw_edit_refuse (path, error);
      return NULL;
    }

  edited = gw_study_copy (study);
  drop_change (option_at (edited, option), path);
  result = _gw_edit_checked (g_steal_pointer (&edited), &reason);
  if (result == NULL && goes_together (path))
    result = take_back_together (study, option);
  if (result == NULL)
    g_propagate_error (error, g_steal_pointer (&reason));

  return result;
}

gboolean
gw_edit_is_here (const GwStudy *study,
                 guint          option,
                 gboolean       is_only_here,
                 const char    *list)
{
  return gw_edit_can_differ (list) &&
         (is_only_here || gw_edit_changed_at (study, option, list) != NULL);
}

GwStudy *
gw_edit_view (const GwStudy *study,
              guint          option)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  GwStudy       *view = gw_study_copy (study);
  GwStudyOption *only;

  g_return_val_if_fail (option < study->options->len, view);

  for (guint i = view->options->len; i-- > 0;)
    if (i != option)
      g_ptr_array_remove_index (view->options, i);
  only = option_at (view, 0);
  gw_record_reset_field (&view->record, gw_record_type_field (view->record.type, "baseline"));
  gw_study_apply_changes (view, only, problems);
  gw_record_reset_field (&only->record, gw_record_type_field (only->record.type, "changes"));
  return view;
}

static gboolean
same_ids (const GPtrArray *a,
          const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;

  for (guint i = 0; i < a->len; i++)
    {
      const char *id = gw_record_id (g_ptr_array_index (a, i));

      if (id == NULL || g_strcmp0 (id, gw_record_id (g_ptr_array_index (b, i))) != 0)
        return FALSE;
    }

  return TRUE;
}

/* Where an edit has changed what an option has. */
typedef struct
{
  GwStudyOption *option;
  const GwStudy *edited;
  GPtrArray     *problems;
} Keeping;

static void keep_record (Keeping        *keeping,
                         const GwRecord *was,
                         const GwRecord *is,
                         const char     *path);

static void
keep_list (Keeping         *keeping,
           const GPtrArray *was,
           const GPtrArray *is,
           const char      *path)
{
  for (guint i = 0; i < was->len; i++)
    {
      const GwRecord  *record = g_ptr_array_index (is, i);
      g_autofree char *here = g_strdup_printf ("%s/%s", path, gw_record_id (record));

      keep_record (keeping, g_ptr_array_index (was, i), record, here);
    }
}

static void
keep_field (Keeping        *keeping,
            const GwRecord *was,
            const GwRecord *is,
            const GwField  *field,
            const char     *path)
{
  gpointer a = gw_record_at (was, field), b = gw_record_at (is, field);

  if (gw_record_field_equal (was, is, field))
    return;

  if (field->kind == GW_FIELD_PART)
    keep_record (keeping, *(GwRecord **) a, *(GwRecord **) b, path);
  else if (field->kind == GW_FIELD_LIST && same_ids (*(GPtrArray **) a, *(GPtrArray **) b))
    keep_list (keeping, *(GPtrArray **) a, *(GPtrArray **) b, path);
  else if (field->kind != GW_FIELD_LIST && !gw_record_has (is, field))
    gw_problems_error (keeping->problems, path, _ ("one option alone cannot leave this out"));
  else
    {
      g_autoptr (JsonNode) value = gw_record_field_node (is, field);

      _gw_edit_own (keeping->option, path, value, keeping->edited);
    }
}

static void
keep_record (Keeping        *keeping,
             const GwRecord *was,
             const GwRecord *is,
             const char     *path)
{
  for (guint i = 0; i < is->type->n_fields; i++)
    {
      const GwField   *field = &is->type->fields[i];
      g_autofree char *here = g_strdup_printf ("%s%s%s", path, *path != '\0' ? "/" : "",
                                               field->key);

      if (gw_edit_can_differ (here) || gw_catalogue_list (here) != NULL)
        keep_field (keeping, was, is, field, here);
    }
}

/* All of @from but what it changes. */
static void
assign_option (GwStudyOption       *to,
               const GwStudyOption *from)
{
  GwStudyOption *copy = (GwStudyOption *) gw_record_copy (&from->record);
  const GwField *changes = gw_record_type_field (to->record.type, "changes");
  GPtrArray     *kept = copy->changes;

  gw_record_set_present (&copy->record, changes, gw_record_has (&to->record, changes));
  copy->changes = to->changes;
  to->changes = kept;
  gw_record_assign (&to->record, &copy->record);
  gw_record_free (&copy->record);
}

GwStudy *
gw_edit_keep (const GwStudy *study,
              guint          option,
              const GwStudy *view,
              const GwStudy *edited,
              GError       **error)
{
  g_autoptr (GwStudy) kept = gw_study_copy (study);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  Keeping keeping = { option_at (kept, option), edited, problems };

  g_return_val_if_fail (keeping.option != NULL, NULL);

  assign_option (keeping.option, option_at (edited, 0));
  keep_record (&keeping, &view->record, &edited->record, "");
  if (!gw_problems_to_error (problems, error))
    return NULL;

  return _gw_edit_checked (g_steal_pointer (&kept), error);
}

GwStudy *
gw_edit_open (GwStudy    *study,
              guint       option,
              gboolean    is_only_here,
              const char *list)
{
  return gw_edit_is_here (study, option, is_only_here, list) ? gw_edit_view (study, option)
                                                             : gw_study_ref (study);
}

GwStudy *
gw_edit_close (const GwStudy *study,
               guint          option,
               const GwStudy *opened,
               GwStudy       *edited,
               GError       **error)
{
  g_autoptr (GwStudy) owned = edited;

  if (owned == NULL || opened == study)
    return g_steal_pointer (&owned);

  return gw_edit_keep (study, option, opened, owned, error);
}
