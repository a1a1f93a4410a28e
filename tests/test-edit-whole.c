/* test-edit-whole.c - a record is removed, copied and moved with all that hangs on it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "demos.h"
#include "study/gw-edit-whole.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"

static void
assert_saves (const GwStudy *study)
{
  g_autofree char *text = gw_study_text (study);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) back = gw_study_parse (text, strlen (text), NULL, &error);

  g_assert_no_error (error);
  g_assert_true (gw_record_equal (&back->record, &study->record));
}

static GwStudy *
removed (const GwStudy *study,
         const char    *path)
{
  g_autoptr (GError) error = NULL;
  GwStudy *edited = gw_edit_remove_whole (study, path, NULL, &error);

  g_assert_no_error (error);
  assert_saves (edited);
  return edited;
}

static GwStudy *
duplicated (const GwStudy *study,
            const char    *path,
            const char    *copy_path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *copy = NULL;
  GwStudy         *edited = gw_edit_duplicate_whole (study, path, &copy, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (copy, ==, copy_path);
  assert_saves (edited);
  return edited;
}

static const GwStudyOption *
option (const GwStudy *study,
        guint          i)
{
  return g_ptr_array_index (study->options, i);
}

static const char *
surface_of (const GPtrArray *builds,
            guint            i)
{
  return ((GwStudyBuild *) g_ptr_array_index (builds, i))->surface;
}

/* Its common build and spar go with it; nothing else does. */
static void
test_remove_surface (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autofree char *text = gw_study_text (study);
  g_autoptr (GwStudy) edited = removed (study, "surfaces/tailplane");
  g_autofree char *after = gw_study_text (study);

  g_assert_cmpuint (edited->surfaces->len, ==, 2);
  g_assert_cmpuint (edited->builds->len, ==, 1);
  g_assert_cmpstr (surface_of (edited->builds, 0), ==, "fin");
  g_assert_cmpuint (edited->spars->len, ==, 1);
  g_assert_cmpuint (option (edited, 0)->builds->len, ==, 1);
  g_assert_cmpuint (option (edited, 0)->changes->len, ==, option (study, 0)->changes->len);
  g_assert_cmpstr (after, ==, text);
}

/* What an option changes of the battery goes with the battery. */
static void
test_remove_changed (void)
{
  g_autoptr (GwStudy) study = demo_load ("awkward");
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) bare = NULL;
  g_autoptr (GwStudy) edited = NULL;

  g_assert_null (gw_edit_remove_whole (study, "equipment/battery-front", NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_assert_nonnull (strstr (error->message, "movable"));
  g_clear_error (&error);

  bare = gw_study_edit (study, "movable", NULL, NULL);
  g_assert_null (gw_edit_remove_whole (bare, "equipment/battery-front", NULL, &error));
  g_assert_nonnull (strstr (error->message, "powers/front/battery"));

  edited = removed (bare, "powers/front");
  gw_study_unref (bare);
  bare = g_steal_pointer (&edited);
  edited = removed (bare, "equipment/battery-front");
  g_assert_cmpuint (option (study, 2)->changes->len, ==, 3);
  g_assert_cmpuint (option (edited, 2)->changes->len, ==, 2);
}

static void
test_remove_refused (void)
{
  const char *const paths[] = { "", "equipment", "equipment/none", "nothing/at-all",
                                "day", "builds/9", "surfaces/wing/stations/2" };
  g_autoptr (GwStudy) study = demo_load ("reed-bed");

  for (guint i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (gw_edit_remove_whole (study, paths[i], NULL, &error));
      g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
    }
}

/* The last of a list leaves no empty one behind. */
static void
test_remove_last (void)
{
  g_autoptr (GwStudy) study = demo_load ("small");
  g_autoptr (GwStudy) edited = removed (study, "spars/tail-strip");
  g_autofree char *text = gw_study_text (edited);
  g_autofree char *before = gw_study_text (study);

  g_assert_nonnull (strstr (before, "\n  \"spars\""));
  g_assert_null (strstr (text, "\n  \"spars\""));
}

/* A copied wing is built in every option as its original and changed as it is. */
static void
test_duplicate_surface (void)
{
  g_autoptr (GwStudy) study = demo_load ("awkward");
  g_autoptr (GwStudy) edited = duplicated (study, "surfaces/wing", "surfaces/wing-2");
  guint n = 0;

  for (guint i = 0; i < 3; i++)
    g_assert_cmpuint (option (edited, i)->builds->len, ==, 2 * option (study, i)->builds->len);
  g_assert_cmpuint (edited->builds->len, ==, study->builds->len);
  g_assert_cmpuint (edited->spars->len, ==, study->spars->len + 3);
  g_assert_cmpuint (option (edited, 1)->changes->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    n += g_str_has_prefix (
      ((GwChange *) g_ptr_array_index (option (edited, 1)->changes, i))->path, "surfaces/wing-2/");
  g_assert_cmpuint (n, ==, 2);
}

static void
test_duplicate_item (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwStudy) once = duplicated (study, "equipment/battery", "equipment/battery-2");
  g_autoptr (GwStudy) twice = duplicated (once, "equipment/battery-2", "equipment/battery-3");
  g_autoptr (JsonNode) x = NULL;

  g_assert_cmpstr (((GwStudyItem *) g_ptr_array_index (once->equipment, 1))->id, ==, "battery-2");
  x = json_node_copy (gw_edit_change_of (twice, 1, "equipment/battery-3/x_mm"));
  g_assert_cmpfloat (json_node_get_double (x), ==, 178.0);
}

/* Common builds have no id: what options change of them by number must stay with them. */
static GwStudy *
with_counted_change (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (JsonNode) finish = json_from_string ("\"film-light\"", NULL);

  return gw_edit_for_option (study, 0, "builds/2/finish", finish, NULL);
}

static void
assert_changed (const GwStudy *study,
                const char    *path)
{
  JsonNode *value = gw_edit_change_of (study, 0, path);

  g_assert_nonnull (value);
  g_assert_cmpstr (json_node_get_string (value), ==, "film-light");
}

static void
test_count (void)
{
  g_autoptr (GwStudy) study = with_counted_change ();
  g_autoptr (GwStudy) without = removed (study, "surfaces/tailplane");
  g_autoptr (GwStudy) gone = removed (study, "surfaces/fin");
  g_autoptr (GwStudy) copied = duplicated (study, "builds/1", "builds/2");
  g_autofree char *moved = NULL, *back = NULL;
  g_autoptr (GwStudy) up = gw_edit_move (study, "builds/2", 0, &moved, NULL);
  g_autoptr (GwStudy) down = gw_edit_move (up, "builds/1", 1, &back, NULL);

  assert_changed (study, "builds/2/finish");
  assert_changed (without, "builds/1/finish");
  g_assert_null (gw_edit_change_of (gone, 0, "builds/2/finish"));
  g_assert_null (gw_edit_change_of (gone, 0, "builds/1/finish"));
  assert_changed (copied, "builds/3/finish");
  g_assert_cmpstr (moved, ==, "builds/1");
  assert_changed (up, "builds/1/finish");
  g_assert_cmpstr (surface_of (up->builds, 0), ==, "fin");
  g_assert_cmpstr (back, ==, "builds/2");
  g_assert_true (gw_record_equal (&down->record, &study->record));
}

static void
test_move (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) edited = gw_edit_move (study, "options/core", 0, &path, &error);

  g_assert_no_error (error);
  g_assert_cmpstr (path, ==, "options/core");
  g_assert_cmpstr (option (edited, 0)->id, ==, "core");
  g_assert_cmpuint (option (edited, 0)->changes->len, ==, 1);
  g_assert_cmpuint (gw_study_baseline (edited), ==, 1);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/edit-whole/remove/surface", test_remove_surface);
  g_test_add_func ("/study/edit-whole/remove/changed", test_remove_changed);
  g_test_add_func ("/study/edit-whole/remove/refused", test_remove_refused);
  g_test_add_func ("/study/edit-whole/remove/last", test_remove_last);
  g_test_add_func ("/study/edit-whole/duplicate/surface", test_duplicate_surface);
  g_test_add_func ("/study/edit-whole/duplicate/item", test_duplicate_item);
  g_test_add_func ("/study/edit-whole/count", test_count);
  g_test_add_func ("/study/edit-whole/move", test_move);
  return g_test_run ();
}
