/* test-desk-recovery.c - unsaved work outlives the program, however that ends
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <signal.h>
#include <string.h>

#include "desk/gw-recovery.h"
#include "desk-window.h"

#define WORK "--work" /* the program is another instance that works on a file */

static GwApplication *application;
static char          *own_path;

static GwApplication *
start_application (void)
{
  const GApplicationFlags flags = G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN;
  GwApplication          *started = gw_application_new (flags);

  g_assert_true (g_application_register (G_APPLICATION (started), NULL, NULL));
  return started;
}

/* How many files of the recovery folder end so. */
static guint
count_files (const char *ending)
{
  g_autofree char *folder = gw_recovery_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint       n = 0;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    n += g_str_has_suffix (name, ending);

  return n;
}

static char *
path_in_folder (const char *name)
{
  g_autofree char *folder = gw_recovery_folder ();

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  return g_build_filename (folder, name, NULL);
}

/* The other instance: opens, edits without end, is killed. */
static int
work (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GwWindow *window;

  application = start_application ();
  window = open_window (application, file);
  for (double chord = 201; chord < 4000; chord++)
    {
      edit_chord (gw_window_get_document (window), chord);
      wait_for_ms (20);
    }

  return 1; /* nobody has killed it */
}

/* A thread or another program writes it: nothing wakes this one. */
static void
wait_for_file (void)
{
  for (guint i = 0; i < WAIT_LIMIT / 20 && count_files (GW_RECOVERY_ENDING) == 0; i++)
    wait_for_ms (20);
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 1);
}

/* A program at work on @place whose unsaved edits are kept by now. */
static GSubprocess *
start_work (Place *place)
{
  g_autoptr (GError) error = NULL;
  GSubprocess *other = g_subprocess_new (G_SUBPROCESS_FLAGS_NONE, &error, own_path, WORK,
                                         place->path, NULL);

  g_assert_no_error (error);
  wait_for_file ();
  return other;
}

static void
kill_work (GSubprocess *other)
{
  g_subprocess_send_signal (other, SIGKILL);
  g_assert_true (g_subprocess_wait (other, NULL, NULL));
  g_assert_true (g_subprocess_get_if_signaled (other));
}

/* A file of work left over in @place's study, without the trouble of a process. */
static void
leave_over (Place *place)
{
  g_autoptr (GSubprocess) other = start_work (place);

  kill_work (other);
}

static guint
n_offered (void)
{
  return g_list_model_get_n_items (gw_application_get_leftovers (application));
}

/* A program that starts now, with an empty window. */
static GwWindow *
start (void)
{
  application = start_application ();
  return open_window (application, NULL);
}

static void
end (GwWindow *window)
{
  destroy_window (window);
  g_clear_object (&application);
  gw_recovery_end ();
}

static GwDocument *
bring_back (GwWindow *window)
{
  push_button (window, "Bring it back");
  wait_until (gw_window_get_document (window) != NULL);
  return gw_window_get_document (window);
}

static void
test_killed (void)
{
  Place       place;
  GwWindow   *window;
  GwDocument *document;
  double      chord;
  GtkWidget  *part;

  place_init (&place, SAMPLE_STUDY);
  leave_over (&place);
  window = start ();
  g_assert_cmpuint (n_offered (), ==, 1);
  part = get_widget (window, "leftover_part");
  g_assert_true (gtk_widget_get_mapped (part));

  document = bring_back (window);
  g_assert_true (g_file_equal (gw_document_get_file (document), place.file));
  g_assert_true (gw_document_is_modified (document));
  chord = chord_in (gw_document_get_study (document));
  g_assert_cmpfloat (chord, >, 200.0);
  g_assert_cmpfloat (chord_on_disk (place.file), ==, 200.0);
  g_assert_cmpuint (n_offered (), ==, 0);

  /* One step back is what the file holds; saved, it is no longer kept. */
  gw_document_undo (document);
  g_assert_cmpfloat (chord_in (gw_document_get_study (document)), ==, 200.0);
  g_assert_false (gw_document_is_modified (document));
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 0);
  gw_document_redo (document);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL);
  g_assert_cmpfloat (chord_on_disk (place.file), ==, chord);
  end (window);
  g_assert_cmpuint (count_files (""), ==, 0);
  place_clear (&place);
}

/* A program that runs is not offered the work of another that runs. */
static void
test_two_run (void)
{
  Place     place;
  GwWindow *window;
  g_autoptr (GSubprocess) other = NULL;

  place_init (&place, SAMPLE_STUDY);
  other = start_work (&place);
  window = start ();
  g_assert_cmpuint (n_offered (), ==, 0);
  g_assert_false (is_mapped (window, "leftover_part"));
  kill_work (other);
  g_action_group_activate_action (G_ACTION_GROUP (application), "new-window", NULL);
  g_assert_cmpuint (n_offered (), ==, 1);
  wait_until (is_mapped (window, "leftover_part"));
  gtk_window_destroy (gtk_application_get_active_window (GTK_APPLICATION (application)));
  push_button (window, "Let it go");
  g_assert_cmpuint (n_offered (), ==, 0);
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 0);
  end (window);
  place_clear (&place);
}

/* Killed at any moment: what is there can be read. */
static void
test_killed_any_time (void)
{
  for (guint i = 0; i < 4; i++)
    {
      Place     place;
      GwWindow *window;
      g_autoptr (GSubprocess) other = NULL;

      place_init (&place, SAMPLE_STUDY);
      other = start_work (&place);
      wait_for_ms ((guint) g_test_rand_int_range (0, 1500));
      kill_work (other);
      window = start ();
      g_assert_cmpuint (n_offered (), ==, 1);
      bring_back (window);
      end (window);
      g_assert_cmpuint (count_files (""), ==, 0);
      place_clear (&place);
    }
}

/* Killed again before anything was edited on: it is offered again. */
static void
test_killed_twice (void)
{
  Place     place;
  GwWindow *window;

  place_init (&place, SAMPLE_STUDY);
  leave_over (&place);
  g_test_trap_subprocess ("/desk/recovery/killed-twice/subprocess", 0, 0);
  g_test_trap_assert_failed ();
  window = start ();
  g_assert_cmpuint (n_offered (), ==, 1);
  g_assert_true (g_file_equal (gw_document_get_file (bring_back (window)), place.file));
  end (window);
  place_clear (&place);
}

static void
test_killed_twice_subprocess (void)
{
  bring_back (start ());
  raise (SIGKILL);
}

static void
test_file_gone (void)
{
  Place       place;
  GwWindow   *window;
  GwDocument *document;

  place_init (&place, SAMPLE_STUDY);
  leave_over (&place);
  g_assert_cmpint (g_remove (place.path), ==, 0);
  window = start ();
  document = bring_back (window);
  g_assert_true (gw_document_is_modified (document));
  g_assert_cmpint (gw_document_get_on_disk (document), ==, GW_ON_DISK_GONE);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL);
  g_assert_cmpfloat (chord_on_disk (place.file), >, 200.0);
  end (window);
  place_clear (&place);
}

/* A file was asked for: the offer stands above its sheet. */
static void
test_beside_file (void)
{
  Place            place;
  GwWindow        *window, *other;
  GFile           *demo = g_file_new_for_uri ("resource:///org/gramwright/demo/small.gramwright");
  g_autofree char *subject = NULL, *base = NULL;

  place_init (&place, SAMPLE_STUDY);
  base = g_path_get_basename (place.path);
  subject = g_strdup_printf (": Plank (%s)", base);
  leave_over (&place);
  application = start_application ();
  g_application_open (G_APPLICATION (application), &demo, 1, "");
  window = GW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  wait_until (gw_window_get_document (window) != NULL && is_mapped (window, "notice"));
  g_assert_true (g_str_has_prefix (text_in (window, "notice_title"), "Unsaved work from "));
  g_assert_true (g_str_has_suffix (text_in (window, "notice_title"), subject));
  push_button (window, "_Bring it back");
  g_assert_false (is_mapped (window, "notice"));
  other = GW_WINDOW (gtk_application_get_windows (GTK_APPLICATION (application))->data);
  g_assert_true (other != window);
  wait_until (gw_window_get_document (other) != NULL);
  g_assert_true (gw_document_is_modified (gw_window_get_document (other)));
  destroy_window (other);
  end (window);
  g_object_unref (demo);
  place_clear (&place);
}

static void
test_later (void)
{
  Place     place;
  GwWindow *window;
  GFile    *demo = g_file_new_for_uri ("resource:///org/gramwright/demo/small.gramwright");

  place_init (&place, SAMPLE_STUDY);
  leave_over (&place);
  application = start_application ();
  g_application_open (G_APPLICATION (application), &demo, 1, "");
  window = GW_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  wait_until (gw_window_get_document (window) != NULL && is_mapped (window, "notice"));
  push_button (window, "La_ter");
  g_assert_false (is_mapped (window, "notice"));
  end (window);

  window = start (); /* it is still there */
  push_button (window, "Let it go");
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 0);
  end (window);
  g_object_unref (demo);
  place_clear (&place);
}

/* Whatever stands in such a file, the program starts. */
static void
test_corrupted (void)
{
  static const char *const texts[] = {
    "",
    "{",
    "[]",
    "{}",
    "\xff\xfe",
    "{ \"gramwright-unsaved\": 1, \"study\": 7 }",
    "{ \"gramwright-unsaved\": [], \"study\": {}, \"time\": 3, \"file\": {} }",
    "{ \"gramwright-unsaved\": 99, \"study\": {} }",
    "{ \"gramwright-unsaved\": 1, \"time\": \"yesterday\", \"file\": \"::\", \"study\": {} }",
  };
  GwWindow *window;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *name = g_strdup_printf ("4194305-0000000%u.1" GW_RECOVERY_ENDING, i);
      g_autofree char *path = path_in_folder (name);

      g_assert_true (g_file_set_contents (path, texts[i], -1, NULL));
    }

  window = start ();
  g_assert_cmpuint (n_offered (), ==, G_N_ELEMENTS (texts));
  g_assert_null (find_button (GTK_WIDGET (window), "Bring it back"));
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GwLeftover) leftover =
        g_list_model_get_item (gw_application_get_leftovers (application), 0);

      g_assert_nonnull (gw_leftover_get_problem (leftover));
      wait_until (find_button (GTK_WIDGET (window), "Let it go") != NULL);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
      push_button (window, "Let it go");
    }
  g_assert_cmpuint (n_offered (), ==, 0);
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 0);
  end (window);
}

/* Half a file of a program that is gone is cleared away, a stranger's is not. */
static void
test_rubbish (void)
{
  g_autofree char *half = path_in_folder ("4194305-00000001.1" GW_RECOVERY_ENDING ".X3FG7A");
  g_autofree char *lock = path_in_folder ("4194305-00000001.lock");
  g_autofree char *mine = path_in_folder ("notes.txt");
  GwWindow        *window;

  g_assert_true (g_file_set_contents (half, "{", -1, NULL));
  g_assert_true (g_file_set_contents (lock, "", -1, NULL));
  g_assert_true (g_file_set_contents (mine, "buy foam", -1, NULL));
  window = start ();
  g_assert_cmpuint (n_offered (), ==, 0);
  g_assert_false (g_file_test (half, G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test (lock, G_FILE_TEST_EXISTS));
  g_assert_cmpint (g_remove (mine), ==, 0);
  end (window);
}

/* Kept while there are unsaved edits, and no longer. */
static void
test_kept (void)
{
  Place       place;
  GwWindow   *window = start ();
  GwDocument *document;

  place_init (&place, SAMPLE_STUDY);
  gw_window_open (window, place.file);
  wait_until (gw_window_get_document (window) != NULL);
  document = gw_window_get_document (window);
  wait_for_ms (1200);
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 0);
  edit_chord (document, 210);
  wait_for_file ();
  gw_document_undo (document);
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 0);
  edit_chord (document, 220);
  wait_for_file ();
  gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL);
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 0);
  edit_chord (document, 230);
  wait_for_file ();
  gtk_widget_activate_action (GTK_WIDGET (window), "win.close-unsaved", NULL);
  wait_until (gtk_application_get_windows (GTK_APPLICATION (application)) == NULL);
  g_assert_cmpuint (count_files (GW_RECOVERY_ENDING), ==, 0);
  g_clear_object (&application);
  gw_recovery_end ();
  g_assert_cmpuint (count_files (""), ==, 0);
  place_clear (&place);
}

/* Where nothing can be kept a person is told, once, and can work on. */
static void
test_cannot_keep (void)
{
  Place            place;
  g_autofree char *folder = gw_recovery_folder ();
  GwWindow        *window;
  GwDocument      *document;

  g_rmdir (folder);
  g_assert_true (g_file_set_contents (folder, "", -1, NULL)); /* no folder can be here */
  place_init (&place, SAMPLE_STUDY);
  window = start ();
  gw_window_open (window, place.file);
  wait_until (gw_window_get_document (window) != NULL);
  document = gw_window_get_document (window);
  edit_chord (document, 210);
  wait_until (g_str_has_prefix (text_in (window, "foot"), "After a crash unsaved edits"));
  g_assert_nonnull (gw_document_get_keeping_error (document));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL);
  g_assert_cmpfloat (chord_on_disk (place.file), ==, 210.0);

  /* It is tried again with the next edit. */
  g_assert_cmpint (g_remove (folder), ==, 0);
  edit_chord (document, 220);
  wait_for_file ();
  wait_until (gw_document_get_keeping_error (document) == NULL);
  end (window);
  place_clear (&place);
}

int
main (int   argc,
      char *argv[])
{
  own_path = argv[0];
  if (argc == 3 && g_str_equal (argv[1], WORK))
    {
      gtk_init ();
      return work (argv[2]);
    }

  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/desk/recovery/killed", test_killed);
  g_test_add_func ("/desk/recovery/killed-any-time", test_killed_any_time);
  g_test_add_func ("/desk/recovery/killed-twice", test_killed_twice);
  g_test_add_func ("/desk/recovery/killed-twice/subprocess", test_killed_twice_subprocess);
  g_test_add_func ("/desk/recovery/two-run", test_two_run);
  g_test_add_func ("/desk/recovery/file-gone", test_file_gone);
  g_test_add_func ("/desk/recovery/beside-file", test_beside_file);
  g_test_add_func ("/desk/recovery/later", test_later);
  g_test_add_func ("/desk/recovery/corrupted", test_corrupted);
  g_test_add_func ("/desk/recovery/rubbish", test_rubbish);
  g_test_add_func ("/desk/recovery/kept", test_kept);
  g_test_add_func ("/desk/recovery/cannot-keep", test_cannot_keep);

  return g_test_run ();
}
