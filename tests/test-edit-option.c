/* test-edit-option.c - what is changed in one option alone: fields, parts, lists
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "demos.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit-whole.h"
#include "study/gw-evaluation.h"
#include "study/gw-fresh.h"
#include "study/gw-resolve.h"

#define CORE 1 /* index of an option of the demo */

static void
assert_saves (const GwStudy *study)
{
  g_autofree char *text = gw_study_text (study);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) back = gw_study_parse (text, strlen (text), NULL, &error);

  g_assert_no_error (error);
  g_assert_true (gw_record_equal (&back->record, &study->record));
}

static const GwStudyOption *
option (const GwStudy *study,
        guint          i)
{
  return g_ptr_array_index (study->options, i);
}

static guint
n_changes (const GwStudy *study,
           guint          i)
{
  return option (study, i)->changes->len;
}

static GwStudy *
closed (GwStudy *study,
        GwStudy *opened,
        GwStudy *edited,
        GError  *error)
{
  g_autoptr (GError) reason = error;
  GwStudy *kept;

  g_assert_no_error (reason);
  kept = gw_edit_close (study, CORE, opened, edited, &reason);
  g_assert_no_error (reason);
  assert_saves (kept);
  return kept;
}

/* Without the record in that option alone. */
static GwStudy *
without (GwStudy    *study,
         const char *list,
         const char *path)
{
  g_autoptr (GwStudy) opened = gw_edit_open (study, CORE, TRUE, list);
  GError *error = NULL;

  g_assert_true (opened != study);
  return closed (study, opened, gw_edit_remove_whole (opened, path, NULL, &error), error);
}

static double
number_at (const GwStudy *study,
           guint          i,
           const char    *path)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwStudy) resolved = gw_study_resolve (study, i, problems);
  const GwField  *field = NULL;
  const GwRecord *record = gw_record_find (&resolved->record, path, &field);

  g_assert_cmpuint (problems->len, ==, 0);
  return record != NULL ? ((GwNumber *) gw_record_at (record, field))->value : (double) NAN;
}

static GwStudy *
set (GwStudy    *study,
     gboolean    is_only_here,
     const char *path,
     double      value)
{
  g_autoptr (JsonNode) node = json_node_init_double (json_node_alloc (), value);
  g_autoptr (GError) error = NULL;
  GwStudy *edited = gw_edit_set (study, CORE, is_only_here, path, node, &error);

  g_assert_no_error (error);
  assert_saves (edited);
  return edited;
}

/* The list as the option has it is one change of that option, what it had changed in it
 * included; the others have what they had. Taken back, all is common again. */
static void
test_list (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwStudy) edited = without (study, "equipment", "equipment/receiver");
  g_autoptr (GwStudy) back = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpuint (edited->equipment->len, ==, study->equipment->len);
  g_assert_true (isnan (number_at (edited, CORE, "equipment/receiver/mass_g")));
  g_assert_false (isnan (number_at (edited, 0, "equipment/receiver/mass_g")));
  g_assert_cmpfloat (number_at (study, CORE, "equipment/battery/x_mm"), ==, 178.0);
  g_assert_cmpfloat (number_at (edited, CORE, "equipment/battery/x_mm"), ==, 178.0);
  g_assert_cmpuint (n_changes (edited, CORE), ==, 1);
  g_assert_nonnull (gw_edit_change_of (edited, CORE, "equipment"));
  g_assert_cmpstr (gw_edit_changed_at (edited, CORE, "equipment/battery/x_mm"), ==, "equipment");

  back = gw_edit_take_back (edited, CORE, "equipment", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (n_changes (back, CORE), ==, 0);
  g_assert_false (isnan (number_at (back, CORE, "equipment/receiver/mass_g")));
}

/* In a list of its own whatever is set is set there, as a part of it. */
static void
test_within (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwStudy) own = without (study, "equipment", "equipment/receiver");
  g_autoptr (GwStudy) edited = set (own, FALSE, "equipment/battery/x_mm", 160.0);
  g_autoptr (GwStudy) cleared = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_cmpfloat (number_at (edited, CORE, "equipment/battery/x_mm"), ==, 160.0);
  g_assert_cmpfloat (number_at (edited, 0, "equipment/battery/x_mm"), ==,
                     number_at (study, 0, "equipment/battery/x_mm"));
  g_assert_cmpuint (n_changes (edited, CORE), ==, 1);

  cleared = gw_edit_set (edited, CORE, FALSE, "equipment/battery/x_mm", NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (number_at (cleared, CORE, "equipment/battery/x_mm"), ==, 0.0);

  /* Alone against the common airframe it can set a field, but not leave it out. */
  g_assert_null (gw_edit_set (study, CORE, TRUE, "equipment/receiver/x_mm", NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
}

/* Stations are counted: those of the option's own list are not those of the common one. */
static void
test_counted (void)
{
  const char *const list = "surfaces/wing/stations";
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwStudy) changed = set (study, TRUE, "surfaces/wing/stations/2/chord_mm", 201.0);
  g_autoptr (GwStudy) opened = gw_edit_open (changed, CORE, TRUE, list);
  g_autoptr (JsonNode) station = json_from_string ("{ \"y_mm\": 20, \"chord_mm\": 230 }", NULL);
  GError          *error = NULL;
  g_autofree char *path = NULL;
  GwStudy         *inserted = gw_edit_insert (opened, list, 1, station, &path, &error);
  g_autoptr (GwStudy) edited = closed (changed, opened, inserted, error);
  g_autoptr (GwStudy) common = NULL;

  g_assert_cmpstr (path, ==, "surfaces/wing/stations/2");
  g_assert_cmpfloat (number_at (edited, CORE, "surfaces/wing/stations/2/chord_mm"), ==, 230.0);
  g_assert_cmpfloat (number_at (edited, CORE, "surfaces/wing/stations/3/chord_mm"), ==, 201.0);
  g_assert_nonnull (gw_edit_change_of (edited, CORE, list));
  g_assert_null (gw_edit_change_of (edited, CORE, "surfaces/wing/stations/2/chord_mm"));

  /* One more in the common list is none in its own. */
  g_clear_pointer (&path, g_free);
  common = gw_edit_insert (edited, list, 1, station, &path, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (number_at (common, 0, "surfaces/wing/stations/2/chord_mm"), ==, 230.0);
  g_assert_cmpfloat (number_at (common, CORE, "surfaces/wing/stations/3/chord_mm"), ==, 201.0);
}

/* The builds and spars of a surface go with it where it goes; what names each other comes back
 * together. */
static void
test_surface (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwStudy) edited = without (study, "surfaces", "surfaces/tailplane");
  g_autoptr (GwStudy) common = NULL, added = NULL, back = NULL;
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (gw_edit_change_of (edited, CORE, "surfaces"));
  g_assert_nonnull (gw_edit_change_of (edited, CORE, "builds"));
  g_assert_cmpuint (edited->surfaces->len, ==, 3);
  g_assert_cmpuint (edited->builds->len, ==, study->builds->len);

  /* The common fin goes, and that option alone keeps it. */
  common = gw_edit_remove_whole (edited, "surfaces/fin", NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (common->surfaces->len, ==, 2);
  g_assert_false (isnan (number_at (common, CORE, "surfaces/fin/x_mm")));
  assert_saves (common);

  /* A common surface more is none of that option's, nor is its build. */
  added = gw_fresh_add (common, 0, "canard", &path, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (added->surfaces->len, ==, 3);
  assert_saves (added);

  back = gw_edit_take_back (added, CORE, "surfaces", &error);
  g_assert_no_error (error);
  g_assert_null (gw_edit_change_of (back, CORE, "builds"));
  g_assert_false (isnan (number_at (back, CORE, "surfaces/tailplane/x_mm")));
}

/* An option with builds of its own, but no surfaces, takes part in what becomes of those. */
static void
test_own_builds (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwStudy) opened = gw_edit_open (study, CORE, TRUE, "builds");
  g_autofree char *path = NULL, *copy = NULL;
  GError          *error = NULL;
  GwStudy         *moved = gw_edit_move (opened, "builds/2", 0, NULL, &error);
  g_autoptr (GwStudy) own = closed (study, opened, moved, error);
  g_autoptr (GwStudy) added = gw_fresh_add (own, 0, "canard", &path, NULL);
  g_autoptr (GwStudy) twice = gw_edit_duplicate_whole (own, "surfaces/fin", &copy, NULL);
  g_autoptr (GwStudy) gone = gw_edit_remove_whole (own, "surfaces/fin", NULL, NULL);

  g_assert_cmpuint (n_changes (own, CORE), ==, 2);
  g_assert_nonnull (added);
  g_assert_nonnull (twice);
  g_assert_nonnull (gone);
  assert_saves (added);
  assert_saves (twice);
  assert_saves (gone);
  g_assert_cmpuint (
    json_array_get_length (json_node_get_array (gw_edit_change_of (added, CORE, "builds"))), ==,
    3);
  g_assert_cmpuint (
    json_array_get_length (json_node_get_array (gw_edit_change_of (twice, CORE, "builds"))), ==,
    3);
  g_assert_cmpuint (
    json_array_get_length (json_node_get_array (gw_edit_change_of (gone, CORE, "builds"))), ==, 1);
}

/* The shelf of own materials, and the options, are the study's; so they are opened as they are. */
static void
test_common (void)
{
  static const char *const lists[] = { "options", "options/core/builds", "materials", "sections",
                                       "methods" };
  g_autoptr (GwStudy) study = demo_load ("reed-bed");

  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    {
      g_autoptr (GwStudy) opened = gw_edit_open (study, CORE, TRUE, lists[i]);

      g_assert_false (gw_edit_is_here (study, CORE, TRUE, lists[i]));
      g_assert_true (opened == study);
    }
  g_assert_true (gw_edit_is_here (study, CORE, TRUE, "equipment"));
  g_assert_false (gw_edit_is_here (study, CORE, FALSE, "equipment"));
}

/* Of a part an option states some, and the rest stays common. */
static void
test_part (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (JsonNode) wind = json_from_string ("{ \"wind_m_s\": 5 }", NULL);
  g_autoptr (GwStudy) windy = gw_edit_for_option (study, CORE, "day", wind, NULL);
  g_autoptr (GwStudy) common = NULL;
  g_autoptr (JsonNode) hot = json_node_init_double (json_node_alloc (), 35.0);

  g_assert_nonnull (windy);
  common = gw_study_edit (windy, "day/temperature_c", hot, NULL);
  g_assert_cmpfloat (number_at (common, CORE, "day/wind_m_s"), ==, 5.0);
  g_assert_cmpfloat (number_at (common, CORE, "day/temperature_c"), ==, 35.0);
  g_assert_cmpfloat (number_at (common, 0, "day/wind_m_s"), ==, 3.0);
}

/* A file may change a part and a field in it, or a list and a field in it: the later counts, and
 * an edit puts both into one. */
static void
test_overlapping (void)
{
  static const char changes[] =
    "{ \"day\": { \"wind_m_s\": 5 }, \"day/wind_m_s\": 6, "
    "\"surfaces/wing/stations\": [ { \"chord_mm\": 220, \"section\": \"clark-y\" }, "
    "{ \"y_mm\": 900, \"chord_mm\": 150 } ], \"surfaces/wing/stations/02/chord_mm\": 160 }";
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (JsonNode) node = json_from_string (changes, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) read = gw_study_edit (study, "options/core/changes", node, &error);
  g_autoptr (GwStudy) calm = NULL, station = NULL;

  g_assert_no_error (error);
  g_assert_cmpfloat (number_at (read, CORE, "day/wind_m_s"), ==, 6.0);
  g_assert_cmpfloat (number_at (read, CORE, "surfaces/wing/stations/2/chord_mm"), ==, 160.0);

  calm = set (read, TRUE, "day/wind_m_s", 1.0);
  g_assert_cmpfloat (number_at (calm, CORE, "day/wind_m_s"), ==, 1.0);
  g_assert_cmpuint (n_changes (calm, CORE), ==, 3);

  station = set (calm, FALSE, "surfaces/wing/stations/1/chord_mm", 210.0);
  g_assert_cmpfloat (number_at (station, CORE, "surfaces/wing/stations/1/chord_mm"), ==, 210.0);
  g_assert_cmpfloat (number_at (station, CORE, "surfaces/wing/stations/2/chord_mm"), ==, 160.0);
  g_assert_cmpuint (n_changes (station, CORE), ==, 2);
}

static const GwEffect *
effect_of (const GwEvaluation *evaluation,
           const char         *key)
{
  const GPtrArray *effects = gw_evaluation_outcome (evaluation, CORE)->effects;

  for (guint i = 0; i < effects->len; i++)
    if (g_str_equal (((GwEffect *) g_ptr_array_index (effects, i))->key, key))
      return g_ptr_array_index (effects, i);

  return NULL;
}

/* A list of its own holds much that is the same thing as in the common one: how little is known
 * of that drops out of the difference as before. */
static void
test_bands (void)
{
  const char *const mass = "equipment/camera/mass_g";
  g_autoptr (GwStudy) plain = demo_load ("reed-bed");
  g_autoptr (JsonNode) unsure = json_from_string ("{ \"value\": 90, \"spread\": 20 }", NULL);
  g_autoptr (JsonNode) other = json_from_string ("{ \"value\": 80, \"spread\": 20 }", NULL);
  g_autoptr (GwStudy) study = gw_study_edit (plain, mass, unsure, NULL);
  g_autoptr (GwStudy) own = without (study, "equipment", "equipment/receiver");
  g_autoptr (GwStudy) lighter = gw_edit_set (own, CORE, FALSE, mass, other, NULL);
  g_autoptr (GwEvaluation) as_common = gw_evaluation_new (own, NULL, NULL);
  g_autoptr (GwEvaluation) as_own = gw_evaluation_new (lighter, NULL, NULL);
  const GwBand common = gw_evaluation_outcome (as_common, CORE)->change_band[GW_RESULT_MASS];
  const GwBand differs = gw_evaluation_outcome (as_own, CORE)->change_band[GW_RESULT_MASS];

  g_assert_nonnull (effect_of (as_common, mass));
  g_assert_null (effect_of (as_own, mass));
  g_assert_nonnull (effect_of (as_own, "options/core/changes/equipment/camera/mass_g"));
  /* Two cameras known to 20 g each are far less alike than one camera twice. */
  g_assert_cmpfloat (differs.high, >, common.high + 5e-3);
}

static void
assert_change (const GwStudy *study,
               const char    *path,
               double         value)
{
  JsonNode *node = gw_edit_change_of (study, CORE, path);

  g_assert_nonnull (node);
  g_assert_cmpfloat (json_node_get_double (node), ==, value);
}

/* What an option changes of a station follows the station, and undo has nothing to mend. */
static void
test_renumber (void)
{
  const char *const list = "surfaces/wing/stations", *const two = "surfaces/wing/stations/2";
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwStudy) changed = set (study, TRUE, "surfaces/wing/stations/2/chord_mm", 201.0);
  g_autoptr (JsonNode) station = json_from_string ("{ \"y_mm\": 20, \"chord_mm\": 230 }", NULL);
  g_autofree char *path = NULL;
  g_autoptr (GPtrArray) dropped =
    g_ptr_array_new_with_free_func ((GDestroyNotify) gw_dropped_change_free);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) more = gw_edit_insert (changed, list, 1, station, &path, &error);
  g_autoptr (GwStudy) less = NULL, gone = NULL;
  const GwDroppedChange *change;

  g_assert_no_error (error);
  assert_change (more, "surfaces/wing/stations/3/chord_mm", 201.0);
  g_assert_null (gw_edit_change_of (more, CORE, "surfaces/wing/stations/2/chord_mm"));

  less = gw_edit_remove (more, two, dropped, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (dropped->len, ==, 0);
  g_assert_true (gw_record_equal (&less->record, &changed->record));

  gone = gw_edit_remove (more, "surfaces/wing/stations/3", dropped, &error);
  g_assert_no_error (error);
  assert_saves (gone);
  g_assert_cmpuint (dropped->len, ==, 1);
  change = g_ptr_array_index (dropped, 0);
  g_assert_cmpstr (change->option, ==, "core");
  g_assert_cmpstr (change->path, ==, "surfaces/wing/stations/3/chord_mm");
  g_assert_cmpuint (n_changes (gone, CORE), ==, n_changes (study, CORE));
}

/* Builds have no id and may stand in any order. */
static void
test_renumber_move (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (JsonNode) finish = json_from_string ("\"film-light\"", NULL);
  g_autoptr (GwStudy) changed = gw_edit_for_option (study, CORE, "builds/2/finish", finish, NULL);
  g_autofree char *moved = NULL, *back_path = NULL;
  g_autoptr (GwStudy) up = gw_edit_move (changed, "builds/2", 0, &moved, NULL);
  g_autoptr (GwStudy) back = gw_edit_move (up, "builds/1", 1, &back_path, NULL);

  g_assert_cmpstr (moved, ==, "builds/1");
  g_assert_nonnull (gw_edit_change_of (up, CORE, "builds/1/finish"));
  g_assert_null (gw_edit_change_of (up, CORE, "builds/2/finish"));
  g_assert_true (gw_record_equal (&back->record, &changed->record));
}

/* A refused removal tells of nothing that was dropped. */
static void
test_refused (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GPtrArray) dropped =
    g_ptr_array_new_with_free_func ((GDestroyNotify) gw_dropped_change_free);
  g_autoptr (GwStudy) opened = gw_edit_open (study, CORE, TRUE, "equipment");
  g_autofree char *before = gw_study_text (study);
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;

  /* The battery is what is moved to balance. */
  g_assert_null (gw_edit_remove_whole (study, "equipment/battery", dropped, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_assert_cmpuint (dropped->len, ==, 0);
  g_clear_error (&error);
  g_assert_null (gw_edit_remove_whole (opened, "equipment/battery", NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_assert_null (gw_edit_close (study, CORE, opened, NULL, NULL));
  after = gw_study_text (study);
  g_assert_cmpstr (after, ==, before);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/edit-option/list", test_list);
  g_test_add_func ("/study/edit-option/within", test_within);
  g_test_add_func ("/study/edit-option/counted", test_counted);
  g_test_add_func ("/study/edit-option/surface", test_surface);
  g_test_add_func ("/study/edit-option/own-builds", test_own_builds);
  g_test_add_func ("/study/edit-option/common", test_common);
  g_test_add_func ("/study/edit-option/part", test_part);
  g_test_add_func ("/study/edit-option/overlapping", test_overlapping);
  g_test_add_func ("/study/edit-option/bands", test_bands);
  g_test_add_func ("/study/edit-option/renumber", test_renumber);
  g_test_add_func ("/study/edit-option/renumber-move", test_renumber_move);
  g_test_add_func ("/study/edit-option/refused", test_refused);
  return g_test_run ();
}
