/* test-desk-document.c - an open file follows the file on disk and the edits, newest first
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "desk/gw-document.h"
#include "desk-wait.h"
#include "study/gw-edit.h"

static char *
named (const char *name)
{
  return sample_replace (SAMPLE_STUDY, "\"Plank\"", name);
}

static char *
broken (void)
{
  return sample_replace (SAMPLE_STUDY, "{ \"y_mm\": 600, \"chord_mm\": 200 }",
                         "{ \"y_mm\": 600, \"chord_mm\": -200 }");
}

static const char *
name_of (GwDocument *document)
{
  GwEvaluation *evaluation = gw_document_get_evaluation (document);

  return evaluation != NULL ? evaluation->study->name : NULL;
}

static GwDocument *
load (Place      *place,
      const char *text)
{
  GwDocument *document;

  place_init (place, text);
  document = gw_document_new (place->file);
  g_assert_true (gw_document_is_busy (document));
  wait_until (!gw_document_is_busy (document));
  return document;
}

/* The document must be gone, and with it all that could still touch it. */
static void
drop (GwDocument *document,
      Place      *place)
{
  g_assert_finalize_object (document);
  place_clear (place);
}

static void
count_cb (guint *n)
{
  (*n)++;
}

static void
test_load (void)
{
  Place       place;
  GwDocument *document = load (&place, SAMPLE_STUDY);

  g_assert_true (g_file_equal (gw_document_get_file (document), place.file));
  g_assert_cmpstr (name_of (document), ==, "Plank");
  g_assert_cmpuint (gw_document_get_evaluation (document)->outcomes->len, ==, 2);
  g_assert_true (gw_document_get_evaluation (document)->study ==
                 gw_history_get_study (gw_document_get_history (document)));
  g_assert_null (gw_document_get_error (document));
  g_assert_false (gw_history_is_modified (gw_document_get_history (document)));
  drop (document, &place);
}

static void
test_hints (void)
{
  Place            place;
  g_autofree char *text =
    sample_replace (SAMPLE_STUDY, "\"format\": 1,", "\"format\": 1, \"mood\": 1,");
  GwDocument      *document = load (&place, text);
  const GPtrArray *problems = gw_document_get_problems (document);

  g_assert_null (gw_document_get_error (document));
  g_assert_cmpuint (problems->len, ==, 1);
  g_assert_false (((GwProblem *) g_ptr_array_index (problems, 0))->is_error);
  drop (document, &place);
}

static void
test_bad (void)
{
  Place            place;
  g_autofree char *text = broken ();
  GwDocument      *document = load (&place, text);

  g_assert_null (gw_document_get_evaluation (document));
  g_assert_null (gw_document_get_history (document));
  g_assert_error (gw_document_get_error (document), GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_assert_nonnull (
    strstr (gw_document_get_error (document)->message, "surfaces/wing/stations/2/chord_mm"));
  g_assert_cmpuint (gw_problems_count (gw_document_get_problems (document)), ==, 1);
  drop (document, &place);
}

static void
test_missing (void)
{
  Place       place;
  GwDocument *document;

  place_init (&place, "");
  g_assert_cmpint (g_remove (place.path), ==, 0);
  document = gw_document_new (place.file);
  wait_until (!gw_document_is_busy (document));
  g_assert_error (gw_document_get_error (document), GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);

  /* It is watched although it is not there yet. */
  place_replace (&place, SAMPLE_STUDY);
  wait_until (name_of (document) != NULL);
  g_assert_null (gw_document_get_error (document));
  drop (document, &place);
}

typedef void (*Save) (Place      *place,
                      const char *text);

static void
test_change_on_disk (gconstpointer data)
{
  const Save       save = (Save) data;
  Place            place;
  g_autofree char *other = named ("\"Board\"");
  GwDocument      *document = load (&place, SAMPLE_STUDY);

  save (&place, other);
  wait_until (g_strcmp0 (name_of (document), "Board") == 0);
  g_assert_null (gw_document_get_error (document));

  /* What was there before the file changed can be brought back. */
  g_assert_false (gw_history_is_modified (gw_document_get_history (document)));
  gw_history_undo (gw_document_get_history (document));
  wait_until (g_strcmp0 (name_of (document), "Plank") == 0);
  drop (document, &place);
}

static void
test_broken_and_mended (gconstpointer data)
{
  const Save       save = (Save) data;
  Place            place;
  g_autofree char *bad = broken ();
  g_autofree char *mended = named ("\"Mended\"");
  GwDocument      *document = load (&place, SAMPLE_STUDY);
  GwEvaluation    *before = gw_document_get_evaluation (document);

  save (&place, bad);
  wait_until (gw_document_get_error (document) != NULL);
  wait_until (
    g_error_matches (gw_document_get_error (document), GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT));
  g_assert_true (gw_document_get_evaluation (document) == before);

  save (&place, mended);
  wait_until (g_strcmp0 (name_of (document), "Mended") == 0);
  g_assert_null (gw_document_get_error (document));
  drop (document, &place);
}

/* To what it was: nothing is computed anew, but the error goes. */
static void
test_mended_as_it_was (void)
{
  Place            place;
  g_autofree char *bad = broken ();
  GwDocument      *document = load (&place, SAMPLE_STUDY);
  GwEvaluation    *before = gw_document_get_evaluation (document);

  place_replace (&place, bad);
  wait_until (gw_document_get_error (document) != NULL);
  place_replace (&place, SAMPLE_STUDY);
  wait_until (gw_document_get_error (document) == NULL);
  wait_until (!gw_document_is_busy (document));
  g_assert_true (gw_document_get_evaluation (document) == before);
  g_assert_null (gw_history_undo_name (gw_document_get_history (document)));
  drop (document, &place);
}

static void
test_deleted (void)
{
  Place         place;
  GwDocument   *document = load (&place, SAMPLE_STUDY);
  GwEvaluation *before = gw_document_get_evaluation (document);

  g_assert_cmpint (g_remove (place.path), ==, 0);
  wait_until (gw_document_get_error (document) != NULL);
  g_assert_error (gw_document_get_error (document), GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
  g_assert_true (gw_document_get_evaluation (document) == before);
  drop (document, &place);
}

static void
edit (GwDocument *document,
      double      chord)
{
  g_autoptr (JsonNode) node = json_node_init_double (json_node_alloc (), chord);
  g_autoptr (GError) error = NULL;

  g_autoptr (GwStudy) edited = gw_study_edit (
    gw_document_get_study (document), "surfaces/wing/stations/2/chord_mm", node, &error);

  g_assert_no_error (error);
  gw_document_edit (document, "Change the chord", edited, NULL, &error);
  g_assert_no_error (error);
}

static void
expect_newest_cb (GwDocument *document,
                  guint      *n)
{
  g_assert_true (gw_document_get_evaluation (document)->study ==
                 gw_history_get_study (gw_document_get_history (document)));
  (*n)++;
}

/* Of many edits only the last is ever shown. */
static void
test_newest_wins (void)
{
  Place       place;
  GwDocument *document = load (&place, SAMPLE_STUDY);
  guint       n = 0;

  g_signal_connect (document, "changed", G_CALLBACK (expect_newest_cb), &n);
  for (int i = 0; i < 20; i++)
    {
      edit (document, 210 + i);
      /* Some runs are cancelled before they begin, some at work, some when they are through. */
      wait_for_ms ((guint) i % 4);
      g_assert_true (gw_document_is_busy (document) || n > 0);
    }
  wait_until (!gw_document_is_busy (document));
  expect_newest_cb (document, &n);
  wait_for_ms (200); /* a late one would come now */
  g_signal_handlers_disconnect_by_data (document, &n);
  drop (document, &place);
}

static const char *
shown_id (GwDocument *document)
{
  const GwStudy *study = gw_document_get_study (document);

  return gw_record_id (g_ptr_array_index (study->options, gw_document_get_shown (document)));
}

/* Takes @edited. */
static void
take_edit (GwDocument *document,
           GwStudy    *edited)
{
  g_autoptr (GwStudy) study = edited;
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (study);
  gw_document_edit (document, "Edit", study, NULL, &error);
  g_assert_no_error (error);
}

/* The option on the sheet is the same one wherever it stands; gone, it is its neighbour. */
static void
test_shown (void)
{
  Place       place;
  GwDocument *document = load (&place, SAMPLE_STUDY);
  GwStudy    *study = gw_document_get_study (document);
  guint       n = 0;
  g_autofree char *copy = NULL;

  g_signal_connect_swapped (document, "notify::shown", G_CALLBACK (count_cb), &n);
  g_assert_cmpstr (shown_id (document), ==, "thin");
  take_edit (document, gw_edit_move (study, "options/thin", 1, NULL, NULL));
  g_assert_cmpstr (shown_id (document), ==, "thin");
  g_assert_cmpuint (gw_document_get_shown (document), ==, 1);
  g_assert_cmpuint (n, ==, 1);
  gw_document_undo (document);
  g_assert_cmpstr (shown_id (document), ==, "thin");
  g_assert_cmpuint (n, ==, 2);

  /* The copy stands between the two; undo leaves its original. */
  take_edit (document, gw_edit_duplicate (study, "options/thin", &copy, NULL));
  gw_document_set_shown (document, 1);
  g_assert_cmpstr (shown_id (document), ==, "thin-2");
  gw_document_undo (document);
  g_assert_cmpstr (shown_id (document), ==, "thin");

  /* What went does not come back onto the sheet of itself. */
  take_edit (document, gw_edit_remove (study, "options/thin", NULL, NULL));
  g_assert_cmpstr (shown_id (document), ==, "thick");
  gw_document_undo (document);
  g_assert_cmpstr (shown_id (document), ==, "thick");
  g_assert_cmpuint (gw_document_get_shown (document), ==, 1);
  g_signal_handlers_disconnect_by_data (document, &n);
  drop (document, &place);
}

/* A result that is through, but not yet delivered, is stale after an edit as well. */
static void
test_stale_result_on_its_way (void)
{
  Place       place;
  GwDocument *document = load (&place, SAMPLE_STUDY);
  guint       n = 0;

  g_signal_connect (document, "changed", G_CALLBACK (expect_newest_cb), &n);
  edit (document, 210);
  g_usleep (500000); /* the thread is through; the main loop has not run */
  edit (document, 220);
  wait_until (!gw_document_is_busy (document));
  g_assert_cmpuint (n, ==, 3); /* the values of each edit at once, the bands of the last */
  g_signal_handlers_disconnect_by_data (document, &n);
  drop (document, &place);
}

static void
test_busy_is_told (void)
{
  Place       place;
  GwDocument *document = load (&place, SAMPLE_STUDY);
  guint       n = 0;

  g_signal_connect_swapped (document, "notify::busy", G_CALLBACK (count_cb), &n);
  gw_document_reload (document);
  g_assert_cmpuint (n, ==, 1);
  gw_document_reload (document);
  g_assert_cmpuint (n, ==, 1);
  wait_until (!gw_document_is_busy (document));
  g_assert_cmpuint (n, ==, 2);
  g_signal_handlers_disconnect_by_data (document, &n);
  drop (document, &place);
}

/* Dropped while its threads run: it goes at once, and nothing comes after. */
static void
test_dies_busy (void)
{
  Place       place;
  GwDocument *document = load (&place, SAMPLE_STUDY);

  edit (document, 230);
  gw_document_reload (document);
  g_assert_true (gw_document_is_busy (document));
  drop (document, &place);
  wait_for_ms (500);
}

int
main (int   argc,
      char *argv[])
{
  static const struct
  {
    const char *name;
    Save        save;
  } ways[] = { { "rename", place_replace }, { "write", place_write } };

  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/desk/document/load", test_load);
  g_test_add_func ("/desk/document/hints", test_hints);
  g_test_add_func ("/desk/document/bad", test_bad);
  g_test_add_func ("/desk/document/missing", test_missing);
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      g_autofree char *change = g_strdup_printf ("/desk/document/change-on-disk/%s", ways[i].name);
      g_autofree char *mend = g_strdup_printf ("/desk/document/broken-and-mended/%s", ways[i].name);

      g_test_add_data_func (change, (gconstpointer) ways[i].save, test_change_on_disk);
      g_test_add_data_func (mend, (gconstpointer) ways[i].save, test_broken_and_mended);
    }
  g_test_add_func ("/desk/document/mended-as-it-was", test_mended_as_it_was);
  g_test_add_func ("/desk/document/deleted", test_deleted);
  g_test_add_func ("/desk/document/shown", test_shown);
  g_test_add_func ("/desk/document/newest-wins", test_newest_wins);
  g_test_add_func ("/desk/document/stale-result-on-its-way", test_stale_result_on_its_way);
  g_test_add_func ("/desk/document/busy-is-told", test_busy_is_told);
  g_test_add_func ("/desk/document/dies-busy", test_dies_busy);

  return g_test_run ();
}
