/* test-edit-random.c - whatever is edited, in order of any kind: the study stays in order
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "demos.h"
#include "random-edit.h"
#include "study/gw-check.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit-whole.h"
#include "study/gw-fresh.h"
#include "study/gw-history.h"
#include "study/gw-record-json.h"
#include "study/gw-resolve.h"

#define EDITS        200 /* of each demo */
#define MOST_OPTIONS 5   /* every edit checks them all */
#define MOST_RECORDS 400

/* What an edit is made of and what came of it. */
typedef struct
{
  GwStudy *study;
  guint    option;
  gboolean is_only_here;
  gboolean is_here; /* what came of it is the option's alone */
  gboolean is_drag; /* not yet checked as a whole */
  char    *what;    /* for the log */
  GError  *error;
} Trial;

static void
trial_clear (Trial *trial)
{
  g_clear_pointer (&trial->what, g_free);
  g_clear_error (&trial->error);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Trial, trial_clear)

static guint
any (guint n)
{
  return (guint) g_test_rand_int_range (0, (int) n);
}

static void
gather_lists (const char    *path,
              GwRecord      *record,
              const GwField *field,
              gpointer       data)
{
  if (field->kind == GW_FIELD_LIST)
    g_ptr_array_add (data, g_strdup (path));
}

/* A list of the study, or of the airframe as the option has it. */
static char *
any_list (const Trial *trial)
{
  g_autoptr (GPtrArray) paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GwStudy) view = gw_edit_view (trial->study, trial->option);
  GwStudy *from = any (4) == 0 ? trial->study : view;

  gw_record_each (&from->record, "", gather_lists, paths);
  return g_strdup (g_ptr_array_index (paths, any (paths->len)));
}

static const GPtrArray *
list_at (const GwStudy  *study,
         const char     *path,
         const GwField **field)
{
  GwRecord *owner = gw_record_find ((GwRecord *) &study->record, path, field);

  return owner != NULL ? *(GPtrArray **) gw_record_at (owner, *field) : NULL;
}

/* A record of it as it could come from elsewhere: with its id, or without one. */
static JsonNode *
any_record (const GPtrArray *list)
{
  g_autoptr (GString) text = g_string_new (NULL);
  JsonNode *node;

  if (list->len == 0 || any (8) == 0)
    return NULL;

  gw_record_write (g_ptr_array_index (list, any (list->len)), text, 0);
  node = json_from_string (text->str, NULL);
  if (any (2) == 0)
    json_object_remove_member (json_node_get_object (node), "id");
  return node;
}

static GwStudy *
edit_list (Trial         *trial,
           const GwStudy *opened,
           const char    *list_path)
{
  const GwField   *field = NULL;
  const GPtrArray *list = list_at (opened, list_path, &field);
  const guint      i = list != NULL && list->len > 0 ? any (list->len) : 0;
  const gboolean   is_top = strchr (list_path, '/') == NULL;
  g_autofree char *step = NULL, *path = NULL, *out = NULL;
  g_autoptr (JsonNode) record = NULL;
  GwStudy *edited = NULL;

  if (list == NULL)
    return NULL;
  if (list->len == 0 || any (5) == 0)
    {
      record = any_record (list);
      trial->what = g_strdup_printf ("insert %s", list_path);
      edited = gw_edit_insert (opened, list_path, (int) any (list->len + 2) - 1, record, &out,
                               &trial->error);
      g_assert_true ((edited != NULL) == (out != NULL));
      g_assert_true (edited == NULL || gw_edit_record (edited, out) != NULL);
      return edited;
    }

  step = gw_record_step ("", "", g_ptr_array_index (list, i), i);
  path = g_strconcat (list_path, step, NULL);
  switch (any (3))
    {
    case 0:
      trial->what = g_strdup_printf ("duplicate %s", path);
      edited = is_top && any (2) == 0
                 ? gw_edit_duplicate_whole (opened, path, &out, &trial->error)
                 : gw_edit_duplicate (opened, path, &out, &trial->error);
      break;
    case 1:
      trial->what = g_strdup_printf ("move %s", path);
      edited = gw_edit_move (opened, path, any (list->len + 1), &out, &trial->error);
      break;
    default:
      trial->what = g_strdup_printf ("remove %s", path);
      return is_top && any (4) > 0 ? gw_edit_remove_whole (opened, path, NULL, &trial->error)
                                   : gw_edit_remove (opened, path, NULL, &trial->error);
    }

  g_assert_true ((edited != NULL) == (out != NULL));
  g_assert_true (edited == NULL || gw_edit_record (edited, out) != NULL);
  return edited;
}

/* An option that has nothing in a list says so, where the common airframe leaves it out. */
static void
level (const char    *path,
       GwRecord      *record,
       const GwField *field,
       gpointer       data)
{
  if (field->kind == GW_FIELD_LIST && (*(GPtrArray **) gw_record_at (record, field))->len == 0)
    gw_record_set_present (record, field, FALSE);
}

/* What the edit did to the view is what the option has afterwards. */
static void
assert_kept (const Trial   *trial,
             const GwStudy *edited,
             const GwStudy *kept)
{
  g_autoptr (GwStudy) is = gw_edit_view (kept, trial->option);
  g_autoptr (GwStudy) wanted = gw_study_copy (edited);

  gw_record_each (&is->record, "", level, NULL);
  gw_record_each (&wanted->record, "", level, NULL);
  for (guint i = 0; i < is->record.type->n_fields; i++)
    if (!gw_record_field_equal (&is->record, &wanted->record, &is->record.type->fields[i]))
      {
        g_autofree char *a = gw_study_text (wanted);
        g_autofree char *b = gw_study_text (is);

        g_error ("after %s: option %u has other %s\n%s\n%s", trial->what, trial->option,
                 is->record.type->fields[i].key, a, b);
      }
}

static GwStudy *
close_list (Trial   *trial,
            GwStudy *opened,
            GwStudy *edited)
{
  g_autoptr (GwStudy) copy = edited != NULL ? gw_study_ref (edited) : NULL;
  GwStudy *kept;

  trial->is_here = opened != trial->study;
  kept = gw_edit_close (trial->study, trial->option, opened, edited, &trial->error);

  if (kept != NULL && trial->is_here)
    assert_kept (trial, copy, kept);
  return kept;
}

static GwStudy *
try_list (Trial *trial)
{
  g_autofree char *list = any_list (trial);
  g_autoptr (GwStudy) opened =
    gw_edit_open (trial->study, trial->option, trial->is_only_here, list);

  return close_list (trial, opened, edit_list (trial, opened, list));
}

static GwStudy *
try_fresh (Trial *trial)
{
  const GwFreshKind *kind;
  g_autoptr (GwStudy) opened = NULL;
  g_autofree char *path = NULL;
  guint            n = 0;

  while (gw_fresh_kind (n) != NULL)
    n++;
  kind = gw_fresh_kind (any (n));
  opened = gw_edit_open (trial->study, trial->option, trial->is_only_here, kind->list);
  trial->what = g_strdup_printf ("add %s", kind->what);
  return close_list (trial, opened,
                     gw_fresh_add (opened, opened == trial->study ? trial->option : 0, kind->what,
                                   &path, &trial->error));
}

/* A field as the option has it, by one of the three ways to set it. */
static GwStudy *
try_field (Trial *trial)
{
  g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (EditPlace));
  g_autoptr (GwStudy) view = gw_edit_view (trial->study, trial->option);
  GwStudy *from = any (4) == 0 ? trial->study : view;
  g_autoptr (JsonNode) node = NULL;
  const EditPlace *place;

  g_array_set_clear_func (places, (GDestroyNotify) edit_place_clear);
  gw_record_each (&from->record, "", edit_gather, places);
  place = &g_array_index (places, EditPlace, any (places->len));
  node = edit_node (from, place);
  trial->what = g_strdup_printf ("set %s", place->path);

  switch (any (4))
    {
    case 0:
      return gw_study_edit (trial->study, place->path, node, &trial->error);
    case 1:
      trial->is_here = node != NULL && gw_edit_can_differ (place->path);
      return gw_edit_for_option (trial->study, trial->option, place->path, node, &trial->error);
    default:
      trial->is_drag = TRUE;
      trial->is_here =
        gw_edit_is_here (trial->study, trial->option, trial->is_only_here, place->path);
      return gw_edit_set (trial->study, trial->option, trial->is_only_here, place->path, node,
                          &trial->error);
    }
}

static GwStudy *
try_take_back (Trial *trial)
{
  const GwStudyOption *option = g_ptr_array_index (trial->study->options, trial->option);
  const GwChange      *change;

  if (option->changes->len == 0)
    return NULL;

  change = g_ptr_array_index (option->changes, any (option->changes->len));
  trial->is_here = TRUE;
  trial->what = g_strdup_printf ("take back %s", change->path);
  return gw_edit_take_back (trial->study, trial->option, change->path, &trial->error);
}

static void
count_record (const char    *path,
              GwRecord      *record,
              const GwField *field,
              gpointer       data)
{
  if (field->kind == GW_FIELD_LIST)
    *(guint *) data += (*(GPtrArray **) gw_record_at (record, field))->len;
}

static gboolean
is_too_large (const GwStudy *study)
{
  guint n = 0;

  gw_record_each ((GwRecord *) &study->record, "", count_record, &n);
  return n > MOST_RECORDS || study->options->len > MOST_OPTIONS;
}

/* Meant for one option alone, it is none of the others' business. */
static void
assert_others (const Trial   *trial,
               const GwStudy *edited)
{
  for (guint i = 0; i < trial->study->options->len; i++)
    {
      g_autoptr (GPtrArray) problems = gw_problems_new ();
      g_autoptr (GwStudy) was = gw_study_resolve (trial->study, i, problems);
      g_autoptr (GwStudy) is = gw_study_resolve (edited, i, problems);

      if (i != trial->option && !gw_record_equal (&was->record, &is->record))
        g_error ("after %s in option %u option %u is another", trial->what, trial->option, i);
    }
}

static GwStudy *
try_any (Trial *trial)
{
  const guint kind = any (10);

  if (kind < 5)
    return try_list (trial);
  if (kind == 5)
    return try_fresh (trial);
  return kind == 6 ? try_take_back (trial) : try_field (trial);
}

/* One edit; what it gives is in order, what it began with is as it was. */
static void
step (GwHistory *history)
{
  GwStudy         *study = gw_history_get_study (history);
  g_autofree char *before = gw_study_text (study);
  g_autofree char *after = NULL;
  g_auto (Trial) trial = {
    .study = study, .option = any (study->options->len), .is_only_here = any (2) == 0
  };
  g_autoptr (GwStudy) edited = try_any (&trial);
  g_autoptr (GPtrArray) problems = gw_problems_new ();

  after = gw_study_text (study);
  g_assert_cmpstr (after, ==, before);
  g_assert_true (edited == NULL || trial.error == NULL);
  if (trial.error != NULL)
    {
      g_assert_true (trial.error->domain == GW_STUDY_ERROR);
      g_assert_cmpstr (trial.error->message, !=, "");
    }
  if (edited == NULL)
    return;

  /* What a drag gives is computed before it is shown; all else must be in order. */
  if (trial.is_drag)
    gw_study_check (edited, problems);
  if (gw_problems_count (problems) > 0)
    return;

  /* Reading back checks as a file is checked. */
  edit_check_round_trip (edited, trial.what);
  if (trial.is_here)
    assert_others (&trial, edited);
  if (!is_too_large (edited))
    gw_history_push (history, trial.what, edited, NULL);
}

static void
test_any (gconstpointer data)
{
  g_autoptr (GwStudy) demo = demo_load (data);
  GwHistory       *history = gw_history_new (demo);
  g_autofree char *first = gw_study_text (demo);
  g_autofree char *last = NULL, *start = NULL, *end = NULL;
  guint            n = 0;

  for (guint i = 0; i < EDITS; i++)
    step (history);

  last = gw_study_text (gw_history_get_study (history));
  for (; gw_history_undo_name (history) != NULL; n++)
    gw_history_undo (history);
  start = gw_study_text (gw_history_get_study (history));
  g_assert_cmpstr (start, ==, first);
  while (gw_history_redo_name (history) != NULL)
    gw_history_redo (history);
  end = gw_study_text (gw_history_get_study (history));
  g_assert_cmpstr (end, ==, last);

  /* If nearly all were refused, nothing was tested. */
  g_test_message ("%u of %d edits were steps", n, EDITS);
  g_assert_cmpuint (n, >, EDITS / 10);
  g_assert_finalize_object (history);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  demo_add_tests ("/study/edit-random", "any", test_any);
  return g_test_run ();
}
