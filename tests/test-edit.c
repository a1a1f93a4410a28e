/* test-edit.c - edits of lists, and of what one option changes
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "sample-study.h"
#include "study/gw-edit-number.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-resolve.h"

static GwStudy *
sample (void)
{
  GwStudy *study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);

  g_assert_nonnull (study);
  return study;
}

/* Every edit is a new study; this one must not have moved. */
static void
assert_untouched (const GwStudy *study)
{
  g_autofree char *text = gw_study_text (study);

  g_assert_cmpstr (text, ==, SAMPLE_STUDY);
}

/* What an edit leaves can be saved and read again. */
static void
assert_saves (const GwStudy *study)
{
  g_autofree char *text = gw_study_text (study);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) back = gw_study_parse (text, strlen (text), NULL, &error);

  g_assert_no_error (error);
  g_assert_true (gw_record_equal (&back->record, &study->record));
}

static JsonNode *
node_of (const char *json)
{
  JsonNode *node = json_from_string (json, NULL);

  g_assert_nonnull (node);
  return node;
}

static void
test_insert (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (JsonNode) item = node_of ("{\"id\": \"battery\", \"mass_g\": 9}");
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) edited = gw_edit_insert (study, "equipment", 0, item, &path, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (path, ==, "equipment/battery-2"); /* the id was taken */
  g_assert_cmpuint (edited->equipment->len, ==, 2);
  g_assert_true (gw_edit_record (edited, path) == g_ptr_array_index (edited->equipment, 0));
  assert_saves (edited);
  assert_untouched (study);
}

/* What comes without an id is named after its kind. */
static void
test_insert_fresh_id (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (JsonNode) item = node_of ("{\"name\": \"Horn\", \"mass_g\": 9}");
  g_autofree char *first = NULL, *second = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) once = gw_edit_insert (study, "equipment", -1, item, &first, &error);
  g_autoptr (GwStudy) twice = NULL;

  g_assert_no_error (error);
  twice = gw_edit_insert (once, "equipment", -1, item, &second, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (first, ==, "equipment/item");
  g_assert_cmpstr (second, ==, "equipment/item-2");
  assert_saves (twice);
  assert_untouched (study);
}

static void
test_insert_refused (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (JsonNode) bad = node_of ("{\"mass_g\": -9}");
  const char *const lists[] = { "nothing", "targets", "name", "equipment/battery" };
  g_autoptr (GError) error = NULL;

  g_assert_null (gw_edit_insert (study, "equipment", -1, bad, NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_clear_error (&error);
  /* An item needs a mass, and there is none to be made up. */
  g_assert_null (gw_edit_insert (study, "equipment", -1, NULL, NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    {
      g_clear_error (&error);
      g_assert_null (gw_edit_insert (study, lists[i], -1, NULL, NULL, &error));
      g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
    }
  assert_untouched (study);
}

static void
test_duplicate (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autofree char *first = NULL, *second = NULL;
  g_autoptr (GwStudy) once = gw_edit_duplicate (study, "options/thin", &first, NULL);
  g_autoptr (GwStudy) twice = gw_edit_duplicate (once, first, &second, NULL);
  GwStudyOption *copy = g_ptr_array_index (once->options, 1);

  g_assert_cmpstr (first, ==, "options/thin-2");
  g_assert_cmpstr (second, ==, "options/thin-3");
  g_assert_cmpstr (copy->name, ==, "Thin sheet, copy");
  assert_saves (twice);
  assert_untouched (study);
}

/* A station has no id: it is counted. */
static void
test_duplicate_station (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;

  /* The copy would stand in the place of its original, which is no surface. */
  g_assert_null (gw_edit_duplicate (study, "surfaces/wing/stations/2", &path, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  assert_untouched (study);
}

static void
test_remove (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) edited = gw_edit_remove (study, "options/thick", NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (edited->options->len, ==, 1);
  assert_saves (edited);

  /* The sheet is what the wing is built of. */
  g_assert_null (gw_edit_remove (study, "materials/sheet", NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_assert_nonnull (strstr (error->message, "builds/1/folded_sheet/material"));
  g_clear_error (&error);
  g_assert_null (gw_edit_remove (study, "options/none", NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  assert_untouched (study);
}

static void
test_move (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (GwStudy) edited = gw_edit_move (study, "options/thin", 1, NULL, NULL);
  g_autoptr (GwStudy) back = gw_edit_move (edited, "options/thin", 0, NULL, NULL);
  g_autoptr (GwStudy) beyond = gw_edit_move (study, "options/thin", 99, NULL, NULL);

  g_assert_cmpstr (gw_record_id (g_ptr_array_index (edited->options, 1)), ==, "thin");
  assert_untouched (back);
  g_assert_true (gw_record_equal (&beyond->record, &edited->record));
  assert_untouched (study);
}

static double
battery_place (const GwStudy *study,
               guint          option)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwStudy) resolved = gw_study_resolve (study, option, problems);
  const double place = ((GwStudyItem *) g_ptr_array_index (resolved->equipment, 0))->x_mm.value;

  g_assert_cmpuint (problems->len, ==, 0);
  return place;
}

/* Set for one option, it moves there alone; taken back, the common place counts again. */
static void
test_for_option (void)
{
  g_autoptr (GwStudy) study = sample ();
  g_autoptr (JsonNode) place = node_of ("75");
  g_autoptr (GwStudy) edited =
    gw_edit_for_option (study, 0, "equipment/battery/x_mm", place, NULL);
  g_autoptr (GwStudy) again = gw_edit_for_option (edited, 1, "equipment/battery/x_mm", place, NULL);
  g_autoptr (GwStudy) back = gw_edit_take_back (edited, 0, "equipment/battery/x_mm", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpfloat (battery_place (study, 0), ==, 40.0);
  g_assert_cmpfloat (battery_place (edited, 0), ==, 75.0);
  g_assert_cmpfloat (battery_place (edited, 1), ==, 10.0);
  g_assert_cmpfloat (battery_place (again, 1), ==, 75.0);
  g_assert_nonnull (gw_edit_change_of (edited, 0, "equipment/battery/x_mm"));
  g_assert_null (gw_edit_change_of (study, 0, "equipment/battery/x_mm"));
  assert_saves (edited);
  assert_untouched (back);

  g_assert_null (gw_edit_take_back (study, 0, "equipment/battery/x_mm", &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_clear_error (&error);
  g_assert_null (gw_edit_for_option (study, 7, "equipment/battery/x_mm", place, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_clear_error (&error);
  g_assert_null (gw_edit_for_option (study, 0, "equipment/none/x_mm", place, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  assert_untouched (study);
}

static void
test_record (void)
{
  g_autoptr (GwStudy) study = sample ();

  g_assert_true (gw_edit_record (study, "") == &study->record);
  g_assert_true (gw_edit_record (study, "targets") == &study->targets->record);
  g_assert_nonnull (gw_edit_record (study, "surfaces/wing/stations/2"));
  g_assert_null (gw_edit_record (study, "surfaces/wing/stations/3"));
  g_assert_null (gw_edit_record (study, "surfaces"));
  g_assert_null (gw_edit_record (study, "name"));
}

/* Copies of copies can be saved and read, whatever they are called in the end. */
static void
test_copies_of_copies (void)
{
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);
  g_autofree char *path = g_strdup ("equipment/battery");
  g_autofree char *text = NULL;
  g_autoptr (JsonNode) name = json_node_init_string (json_node_alloc (), "Akku f\303\274r vorn");
  g_autoptr (GwStudy) back = NULL;
  g_autoptr (GError) error = NULL;
  GwStudy *named = gw_study_edit (study, "equipment/battery/name", name, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < 60; i++)
    {
      g_autoptr (GwStudy) before = named;
      g_autofree char *from = g_steal_pointer (&path);

      named = gw_edit_duplicate (before, from, &path, &error);
      g_assert_no_error (error);
    }
  text = gw_study_text (named);
  back = gw_study_parse (text, strlen (text), NULL, &error);
  g_assert_no_error (error);
  g_assert_true (gw_record_equal (&back->record, &named->record));
  gw_study_unref (named);
}

/* What is typed or dragged was not weighed, and a range goes along. */
static void
test_retype (void)
{
  GwNumber number = { .origin = GW_ORIGIN_WEIGHED, .source = g_strdup ("own scale") };

  gw_number_set_spread (&number, 180.0, 1.0);
  gw_edit_retype (&number, GW_G, 180.0);
  g_assert_cmpint (number.origin, ==, GW_ORIGIN_WEIGHED);
  g_assert_cmpstr (number.source, ==, "own scale");
  gw_edit_retype (&number, GW_G, 200.0);
  g_assert_cmpint (number.origin, ==, GW_ORIGIN_GUESSED);
  g_assert_cmpfloat (number.spread, ==, 20.0); /* a guess is no surer than to a tenth */
  g_assert_null (number.source);

  gw_number_set_range (&number, 290.0, 300.0, 320.0);
  number.origin = GW_ORIGIN_WEIGHED;
  {
    g_autoptr (JsonNode) node = gw_edit_number (&number, GW_MM, 310.0);
    JsonObject *object = json_node_get_object (node);

    g_assert_cmpfloat (json_object_get_double_member (object, "low"), ==, 300.0);
    g_assert_cmpfloat (json_object_get_double_member (object, "typical"), ==, 310.0);
    g_assert_cmpfloat (json_object_get_double_member (object, "high"), ==, 330.0);
    g_assert_false (json_object_has_member (object, "origin")); /* a length is given */
  }
  gw_number_clear (&number);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/edit/insert", test_insert);
  g_test_add_func ("/study/edit/insert-fresh-id", test_insert_fresh_id);
  g_test_add_func ("/study/edit/insert-refused", test_insert_refused);
  g_test_add_func ("/study/edit/duplicate", test_duplicate);
  g_test_add_func ("/study/edit/duplicate-station", test_duplicate_station);
  g_test_add_func ("/study/edit/remove", test_remove);
  g_test_add_func ("/study/edit/move", test_move);
  g_test_add_func ("/study/edit/for-option", test_for_option);
  g_test_add_func ("/study/edit/record", test_record);
  g_test_add_func ("/study/edit/retype", test_retype);

  g_test_add_func ("/study/edit/copies-of-copies", test_copies_of_copies);

  return g_test_run ();
}
