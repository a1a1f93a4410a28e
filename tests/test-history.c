/* test-history.c - undo and redo to the start and back
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "sample-study.h"
#include "study/gw-edit.h"
#include "study/gw-history.h"

static GwHistory *
history_of_sample (void)
{
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);

  return gw_history_new (study);
}

static void
edit (GwHistory  *history,
      const char *path,
      double      value,
      const char *merge)
{
  g_autoptr (JsonNode) node = json_node_init_double (json_node_alloc (), value);
  g_autoptr (GError) error = NULL;

  g_autofree char *name = gw_edit_name (gw_history_get_study (history), path);
  g_autoptr (GwStudy) edited =
    gw_study_edit (gw_history_get_study (history), path, node, &error);

  g_assert_no_error (error);
  gw_history_push (history, name, edited, merge);
}

static char *
text (GwHistory *history)
{
  return gw_study_text (gw_history_get_study (history));
}

typedef struct
{
  char        command; /* e: edit, u: undo, r: redo, s: saved */
  double      chord;   /* of the tip after the command */
  const char *undo, *redo;
  gboolean    is_modified;
} Step;

#define CHANGE "Change Chord of Station"

static void
test_table (void)
{
  static const Step steps[] = {
    { 'e', 210, CHANGE, NULL, TRUE },
    { 'e', 220, CHANGE, NULL, TRUE },
    { 'u', 210, CHANGE, CHANGE, TRUE },
    { 'u', 200, NULL, CHANGE, FALSE },
    { 'u', 200, NULL, CHANGE, FALSE },
    { 'r', 210, CHANGE, CHANGE, TRUE },
    { 's', 210, CHANGE, CHANGE, FALSE },
    { 'u', 200, NULL, CHANGE, TRUE },
    { 'e', 250, CHANGE, NULL, TRUE },
    { 'r', 250, CHANGE, NULL, TRUE },
    { 'u', 200, NULL, CHANGE, TRUE },
    { 'e', 210, CHANGE, NULL, FALSE },
  };
  GwHistory *history = history_of_sample ();

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      GwStudySurface *wing;
      GwStudyStation *tip;

      if (steps[i].command == 'e')
        edit (history, "surfaces/wing/stations/2/chord_mm", steps[i].chord, NULL);
      else if (steps[i].command == 'u')
        gw_history_undo (history);
      else if (steps[i].command == 'r')
        gw_history_redo (history);
      else
        gw_history_mark_saved (history);

      wing = g_ptr_array_index (gw_history_get_study (history)->surfaces, 0);
      tip = g_ptr_array_index (wing->stations, 1);
      g_assert_cmpfloat (tip->chord_mm.value, ==, steps[i].chord);
      g_assert_cmpstr (gw_history_undo_name (history), ==, steps[i].undo);
      g_assert_cmpstr (gw_history_redo_name (history), ==, steps[i].redo);
      g_assert_true (gw_history_is_modified (history) == steps[i].is_modified);
    }

  g_assert_finalize_object (history);
}

/* Any edits, then undo to the start: the very same file; redo to the end: the last one. */
static void
test_to_the_start (void)
{
  static const char *const paths[] = { "surfaces/wing/x_mm", "equipment/battery/x_mm",
                                       "targets/mass_g", "day/temperature_c",
                                       "materials/sheet/areal_g_m2" };
  GwHistory               *history = history_of_sample ();
  g_autofree char         *first = text (history);
  g_autofree char         *last = NULL, *start = NULL, *end = NULL;

  for (int i = 0; i < 60; i++)
    edit (history, paths[g_test_rand_int_range (0, G_N_ELEMENTS (paths))],
          g_test_rand_int_range (1, 40), NULL);
  last = text (history);

  while (gw_history_undo_name (history) != NULL)
    gw_history_undo (history);
  start = text (history);
  g_assert_cmpstr (start, ==, first);

  while (gw_history_redo_name (history) != NULL)
    gw_history_redo (history);
  end = text (history);
  g_assert_cmpstr (end, ==, last);
  g_assert_finalize_object (history);
}

/* One drag is one step. */
static void
test_merge (void)
{
  GwHistory       *history = history_of_sample ();
  g_autofree char *first = text (history);
  g_autofree char *start = NULL;

  for (int i = 0; i < 20; i++)
    edit (history, "equipment/battery/x_mm", 41 + i, "drag-1");
  edit (history, "equipment/battery/x_mm", 5, "drag-2");
  gw_history_undo (history);
  gw_history_undo (history);
  g_assert_null (gw_history_undo_name (history));
  start = text (history);
  g_assert_cmpstr (start, ==, first);
  g_assert_finalize_object (history);
}

static void
count_cb (guint *n)
{
  (*n)++;
}

static void
test_signals_and_refusals (void)
{
  GwHistory *history = history_of_sample ();
  guint n = 0;

  g_signal_connect_swapped (history, "changed", G_CALLBACK (count_cb), &n);
  edit (history, "surfaces/wing/x_mm", 100.0, NULL); /* the same value: no step */
  g_assert_cmpuint (n, ==, 0);
  edit (history, "surfaces/wing/x_mm", 120.0, NULL);
  g_assert_cmpuint (n, ==, 1);

  gw_history_undo (history);
  g_assert_cmpuint (n, ==, 2);
  gw_history_undo (history); /* nothing left */
  g_assert_cmpuint (n, ==, 2);
  g_assert_finalize_object (history);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/history/table", test_table);
  g_test_add_func ("/study/history/to-the-start", test_to_the_start);
  g_test_add_func ("/study/history/merge", test_merge);
  g_test_add_func ("/study/history/signals-and-refusals", test_signals_and_refusals);

  return g_test_run ();
}
