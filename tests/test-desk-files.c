/* test-desk-files.c - saving, undoing, closing; files that others change
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <signal.h>
#include <string.h>
#include <sys/resource.h>

#include "desk/gw-recent.h"
#include "desk/gw-section-import.h"
#include "study/gw-edit.h"
#include "desk-window.h"

#define DEMO "resource:///org/gramwright/demo/small.gramwright"

static GwApplication *application;

typedef struct
{
  Place       place;
  GwWindow   *window;
  GwDocument *document;
} Desk;

static void
desk_init (Desk *desk)
{
  place_init (&desk->place, SAMPLE_STUDY);
  desk->window = open_window (application, desk->place.file);
  desk->document = gw_window_get_document (desk->window);
}

static void
desk_clear (Desk *desk)
{
  destroy_window (desk->window);
  place_clear (&desk->place);
}

static void
act (Desk       *desk,
     const char *action)
{
  if (!gtk_widget_activate_action (GTK_WIDGET (desk->window), action, NULL))
    g_error ("%s does nothing", action);
}

static double
chord_now (Desk *desk)
{
  return chord_in (gw_document_get_study (desk->document));
}

/* By another program. */
static void
change_on_disk (Desk       *desk,
                const char *chord)
{
  g_autofree char *station = g_strdup_printf ("{ \"y_mm\": 600, \"chord_mm\": %s }", chord);
  g_autofree char *text =
    sample_replace (SAMPLE_STUDY, "{ \"y_mm\": 600, \"chord_mm\": 200 }", station);

  place_replace (&desk->place, text);
}

static gboolean
is_asking (Desk       *desk,
           const char *text)
{
  return is_mapped (desk->window, "notice") &&
         strstr (text_in (desk->window, "notice_title"), text) != NULL;
}

static void
test_save (void)
{
  Desk desk;

  desk_init (&desk);
  g_assert_false (gw_document_is_modified (desk.document));
  edit_chord (desk.document, 210);
  g_assert_true (gw_document_is_modified (desk.document));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (desk.window)), ==, "Plank (edited)");
  g_assert_true (
    g_str_equal (text_in (desk.window, "subtitle"), "plank.gramwright, edited"));
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 200.0);

  act (&desk, "win.save");
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 210.0);
  g_assert_false (gw_document_is_modified (desk.document));
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (desk.window)), ==, "Plank");
  g_assert_true (g_str_has_suffix (text_in (desk.window, "foot"), desk.place.path));

  /* Undo goes on behind it, and differs from the file then. */
  gw_document_undo (desk.document);
  g_assert_true (gw_document_is_modified (desk.document));
  gw_document_redo (desk.document);
  g_assert_false (gw_document_is_modified (desk.document));
  desk_clear (&desk);
}

static void
test_reopen (void)
{
  Desk      desk;
  GwWindow *again;
  g_autoptr (GwStudy) saved = NULL;

  desk_init (&desk);
  edit_chord (desk.document, 212.5);
  act (&desk, "win.save");
  saved = gw_study_ref (gw_document_get_study (desk.document));
  destroy_window (desk.window);
  again = open_window (application, desk.place.file);
  g_assert_true (gw_record_equal (
    &saved->record, &gw_document_get_study (gw_window_get_document (again))->record));
  destroy_window (again);
  place_clear (&desk.place);
}

/* The monitor tells of our own writing too. */
static void
test_own_save (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  act (&desk, "win.save");
  edit_chord (desk.document, 220); /* before anybody has told */
  wait_for_ms (600);
  g_assert_cmpfloat (chord_now (&desk), ==, 220.0);
  g_assert_true (gw_document_is_modified (desk.document));
  g_assert_cmpint (gw_document_get_on_disk (desk.document), ==, GW_ON_DISK_SAME);
  g_assert_cmpstr (gw_history_undo_name (gw_document_get_history (desk.document)), ==,
                   "Change the chord");
  g_assert_false (is_mapped (desk.window, "notice"));
  desk_clear (&desk);
}

/* A write that fails half way, as on a full disk. */
static void
test_save_fails (void)
{
  Desk                 desk;
  struct rlimit        limit, tight;
  g_autofree char     *before = NULL, *after = NULL;
  __sighandler_t const handler = signal (SIGXFSZ, SIG_IGN);

  desk_init (&desk);
  g_assert_true (g_file_get_contents (desk.place.path, &before, NULL, NULL));
  edit_chord (desk.document, 210);
  wait_for_ms (1200); /* what is kept for recovery is written, and does not meet the limit */
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  tight = limit;
  tight.rlim_cur = 512;
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &tight), ==, 0);
  act (&desk, "win.save");
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  signal (SIGXFSZ, handler);

  g_assert_true (is_asking (&desk, "not saved"));
  g_assert_nonnull (strstr (text_in (desk.window, "notice_reason"), desk.place.path));
  g_assert_true (g_file_get_contents (desk.place.path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, before);
  g_assert_true (gw_document_is_modified (desk.document));
  g_assert_cmpfloat (chord_now (&desk), ==, 210.0);

  push_button (desk.window, "_Try again");
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 210.0);
  g_assert_false (is_mapped (desk.window, "notice"));
  desk_clear (&desk);
}

static void
test_folder_gone (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  g_assert_cmpint (g_remove (desk.place.path), ==, 0);
  g_assert_cmpint (g_rmdir (desk.place.folder), ==, 0);
  wait_until (gw_document_get_on_disk (desk.document) == GW_ON_DISK_GONE);
  act (&desk, "win.save");
  g_assert_true (is_asking (&desk, "not saved"));
  g_assert_cmpfloat (chord_now (&desk), ==, 210.0);

  g_assert_cmpint (g_mkdir (desk.place.folder, 0700), ==, 0);
  push_button (desk.window, "_Try again");
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 210.0);
  g_assert_false (gw_document_is_modified (desk.document));
  desk_clear (&desk);
}

static void
test_save_as (void)
{
  Desk             desk;
  g_autofree char *path = NULL, *changed = NULL;
  g_autoptr (GFile) plain = NULL, ended = NULL;

  desk_init (&desk);
  path = g_build_filename (desk.place.folder, "second", NULL);
  plain = g_file_new_for_path (path);
  ended = g_file_new_build_filename (desk.place.folder, "second.gramwright", NULL);
  edit_chord (desk.document, 210);
  g_assert_true (gw_window_save_as (desk.window, plain)); /* and it gets its ending */
  g_assert_true (g_file_equal (gw_document_get_file (desk.document), ended));
  g_assert_false (gw_document_is_modified (desk.document));
  g_assert_cmpfloat (chord_on_disk (ended), ==, 210.0);
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 200.0);
  g_assert_true (
    g_str_equal (text_in (desk.window, "subtitle"), "second.gramwright"));

  /* The new file is the one that is watched. */
  change_on_disk (&desk, "230");
  wait_for_ms (500);
  g_assert_cmpfloat (chord_now (&desk), ==, 210.0);
  changed = sample_replace (SAMPLE_STUDY, "{ \"y_mm\": 600, \"chord_mm\": 200 }",
                            "{ \"y_mm\": 600, \"chord_mm\": 240 }");
  g_assert_true (g_file_replace_contents (ended, changed, strlen (changed), NULL, FALSE, 0, NULL,
                                          NULL, NULL));
  wait_until (chord_now (&desk) == 240.0);
  desk_clear (&desk);
}

/* A name without its ending must not replace a file that nobody was asked about. */
static void
test_save_as_taken (void)
{
  Desk             desk;
  g_autofree char *path = NULL;
  g_autoptr (GFile) plain = NULL;

  desk_init (&desk);
  path = g_build_filename (desk.place.folder, "plank", NULL);
  plain = g_file_new_for_path (path);
  edit_chord (desk.document, 210);
  g_assert_false (gw_window_save_as (desk.window, plain));
  g_assert_true (is_asking (&desk, "not saved"));
  g_assert_nonnull (strstr (text_in (desk.window, "notice_reason"), "plank.gramwright"));
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 200.0);
  g_assert_false (g_file_query_exists (plain, NULL));
  push_button (desk.window, "Dis_miss");
  g_assert_false (is_mapped (desk.window, "notice"));
  desk_clear (&desk);
}

static void
test_save_copy (void)
{
  Desk desk;
  g_autoptr (GFile) copy = NULL;

  desk_init (&desk);
  copy = g_file_new_build_filename (desk.place.folder, "copy.gramwright", NULL);
  edit_chord (desk.document, 210);
  g_assert_true (gw_window_save_copy (desk.window, copy));
  g_assert_cmpfloat (chord_on_disk (copy), ==, 210.0);
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 200.0);
  g_assert_true (gw_document_is_modified (desk.document));
  g_assert_true (g_file_equal (gw_document_get_file (desk.document), desk.place.file));
  desk_clear (&desk);
}

static void
collect_labels (GMenuModel *menu,
                GString    *labels)
{
  static const char *const links[] = { G_MENU_LINK_SECTION, G_MENU_LINK_SUBMENU };

  for (int i = 0; i < g_menu_model_get_n_items (menu); i++)
    {
      g_autofree char *label = NULL;

      if (g_menu_model_get_item_attribute (menu, i, "label", "s", &label))
        g_string_append_printf (labels, "%s\n", label);
      for (guint j = 0; j < G_N_ELEMENTS (links); j++)
        {
          g_autoptr (GMenuModel) below = g_menu_model_get_item_link (menu, i, links[j]);

          if (below != NULL)
            collect_labels (below, labels);
        }
    }
}

static gboolean
has_in_menu (Desk       *desk,
             const char *label)
{
  GObject *menu =
    gtk_widget_get_template_child (GTK_WIDGET (desk->window), GW_TYPE_WINDOW, "menu");
  g_autoptr (GString) labels = g_string_new ("\n");
  g_autofree char *line = g_strconcat ("\n", label, "\n", NULL);

  collect_labels (G_MENU_MODEL (menu), labels);
  return strstr (labels->str, line) != NULL;
}

static const char *
foot_text (Desk *desk)
{
  return gtk_inscription_get_text (GTK_INSCRIPTION (get_widget (desk->window, "foot")));
}

static void
test_undo (void)
{
  Desk desk;
  g_auto (GStrv) accels = NULL;

  desk_init (&desk);
  g_assert_true (has_in_menu (&desk, "Undo"));
  g_assert_true (has_in_menu (&desk, "Redo"));
  edit_chord (desk.document, 210);
  g_assert_true (has_in_menu (&desk, "Undo Change the chord"));
  act (&desk, "win.undo");
  g_assert_cmpfloat (chord_now (&desk), ==, 200.0);
  g_assert_true (has_in_menu (&desk, "Undo"));
  g_assert_true (has_in_menu (&desk, "Redo Change the chord"));
  g_assert_cmpstr (foot_text (&desk), ==, "Undone: Change the chord");
  act (&desk, "win.redo");
  g_assert_cmpfloat (chord_now (&desk), ==, 210.0);
  g_assert_cmpstr (foot_text (&desk), ==, "Done again: Change the chord");

  /* The next edit is another matter. */
  edit_chord (desk.document, 220);
  g_assert_null (strstr (foot_text (&desk), "Done again"));

  /* As a key of the application it would be taken from the text that is typed in. */
  accels = gtk_application_get_accels_for_action (GTK_APPLICATION (application), "win.undo");
  g_assert_cmpuint (g_strv_length (accels), ==, 0);
  desk_clear (&desk);
}

static gboolean
is_gone (gpointer window)
{
  return g_list_find (gtk_application_get_windows (GTK_APPLICATION (application)), window) == NULL;
}

static void
test_close_asks (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  gtk_window_close (GTK_WINDOW (desk.window));
  wait_until (is_asking (&desk, "unsaved edits"));
  g_assert_cmpstr (text_in (desk.window, "notice_reason"), ==, "The last one: Change the chord.");
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (desk.window)) ==
                 find_button (GTK_WIDGET (desk.window), "_Save"));
  push_button (desk.window, "S_tay");
  g_assert_false (is_mapped (desk.window, "notice"));
  wait_for_ms (50);
  g_assert_false (is_gone (desk.window));
  g_assert_true (gtk_widget_has_focus (get_widget (desk.window, "sheet")));

  /* To edit on is to stay; so is to undo. */
  gtk_window_close (GTK_WINDOW (desk.window));
  wait_until (is_asking (&desk, "unsaved edits"));
  edit_chord (desk.document, 220);
  g_assert_false (is_mapped (desk.window, "notice"));
  gtk_window_close (GTK_WINDOW (desk.window));
  wait_until (is_asking (&desk, "unsaved edits"));
  gw_document_undo (desk.document);
  gw_document_undo (desk.document);
  g_assert_false (is_mapped (desk.window, "notice"));

  gtk_window_close (GTK_WINDOW (desk.window)); /* nothing to ask about */
  wait_until (is_gone (desk.window));
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 200.0);
  place_clear (&desk.place);
}

static void
test_close_saves (gconstpointer data)
{
  const gboolean is_saved = GPOINTER_TO_INT (data);
  Desk           desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  gtk_window_close (GTK_WINDOW (desk.window));
  wait_until (is_asking (&desk, "unsaved edits"));
  push_button (desk.window, is_saved ? "_Save" : "_Close without saving");
  wait_until (is_gone (desk.window));
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, is_saved ? 210.0 : 200.0);
  place_clear (&desk.place);
}

/* A save that fails keeps the window. */
static void
test_close_save_fails (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  g_assert_cmpint (g_remove (desk.place.path), ==, 0);
  g_assert_cmpint (g_rmdir (desk.place.folder), ==, 0);
  gtk_window_close (GTK_WINDOW (desk.window));
  wait_until (is_asking (&desk, "unsaved edits"));
  push_button (desk.window, "_Save");
  g_assert_true (is_asking (&desk, "not saved"));
  wait_for_ms (50);
  g_assert_false (is_gone (desk.window));
  g_assert_cmpfloat (chord_now (&desk), ==, 210.0);
  g_assert_cmpint (g_mkdir (desk.place.folder, 0700), ==, 0);
  desk_clear (&desk);
}

static void
test_quit (void)
{
  Desk      one, two;
  GwWindow *clean = open_window (application, NULL);

  desk_init (&one);
  desk_init (&two);
  edit_chord (one.document, 210);
  edit_chord (two.document, 220);
  g_action_group_activate_action (G_ACTION_GROUP (application), "quit", NULL);
  wait_until (is_asking (&one, "unsaved edits") && is_asking (&two, "unsaved edits"));
  push_button (one.window, "S_tay");
  g_assert_false (is_mapped (two.window, "notice")); /* nobody is asked any longer */
  wait_for_ms (50);
  g_assert_false (is_gone (clean) || is_gone (one.window) || is_gone (two.window));

  g_action_group_activate_action (G_ACTION_GROUP (application), "quit", NULL);
  wait_until (is_asking (&one, "unsaved edits") && is_asking (&two, "unsaved edits"));
  push_button (two.window, "_Save");
  wait_until (is_gone (two.window));
  wait_for_ms (50);
  g_assert_false (is_gone (clean));
  push_button (one.window, "_Close without saving");
  wait_until (is_gone (one.window) && is_gone (clean));
  g_assert_cmpfloat (chord_on_disk (one.place.file), ==, 200.0);
  g_assert_cmpfloat (chord_on_disk (two.place.file), ==, 220.0);
  place_clear (&one.place);
  place_clear (&two.place);
}

static guint
n_windows (void)
{
  return g_list_length (gtk_application_get_windows (GTK_APPLICATION (application)));
}

static GwWindow *
other_than (GwWindow *window)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (application)); l != NULL;
       l = l->next)
    if (l->data != window)
      return l->data;

  g_assert_not_reached ();
}

static void
test_open_elsewhere (void)
{
  Desk      desk;
  GwWindow *other;
  g_autoptr (GFile) demo = g_file_new_for_uri (DEMO);

  desk_init (&desk);
  edit_chord (desk.document, 210);
  gw_window_open (desk.window, demo);
  g_assert_cmpuint (n_windows (), ==, 2);
  other = other_than (desk.window);
  wait_until (gw_window_get_document (other) != NULL);
  g_assert_true (gw_window_get_document (desk.window) == desk.document);
  g_assert_cmpfloat (chord_now (&desk), ==, 210.0);

  /* What is open already is not opened twice. */
  gw_window_open (desk.window, demo);
  gw_window_open (other, desk.place.file);
  g_assert_cmpuint (n_windows (), ==, 2);
  g_assert_true (gw_window_get_document (desk.window) == desk.document);
  destroy_window (other);
  desk_clear (&desk);
}

/* Edited while the next study is on its way. */
static void
test_edited_while_opening (void)
{
  Desk      desk;
  GwWindow *other;
  g_autoptr (GFile) demo = g_file_new_for_uri (DEMO);

  desk_init (&desk);
  gw_window_open (desk.window, demo);
  edit_chord (desk.document, 210);
  wait_until (n_windows () == 2);
  other = other_than (desk.window);
  wait_until (gw_window_get_document (other) != NULL);
  g_assert_true (gw_window_get_document (desk.window) == desk.document);
  destroy_window (other);
  desk_clear (&desk);
}

static void
test_changed_unedited (void)
{
  Desk desk;

  desk_init (&desk);
  change_on_disk (&desk, "230");
  wait_until (chord_now (&desk) == 230.0);
  g_assert_false (gw_document_is_modified (desk.document));
  g_assert_false (is_mapped (desk.window, "notice"));
  g_assert_true (has_in_menu (&desk, "Undo Read the file anew"));
  desk_clear (&desk);
}

static void
test_changed_read (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  change_on_disk (&desk, "230");
  wait_until (is_asking (&desk, "another program"));
  g_assert_cmpfloat (chord_now (&desk), ==, 210.0);

  /* Nothing is replaced before a person has said so. */
  act (&desk, "win.save");
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 230.0);
  g_assert_true (gw_document_is_modified (desk.document));

  push_button (desk.window, "_Read the file anew");
  wait_until (chord_now (&desk) == 230.0);
  g_assert_false (gw_document_is_modified (desk.document));
  g_assert_false (is_mapped (desk.window, "notice"));
  gw_document_undo (desk.document);
  g_assert_cmpfloat (chord_now (&desk), ==, 210.0);
  g_assert_true (gw_document_is_modified (desk.document));
  desk_clear (&desk);
}

static void
test_changed_kept (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  change_on_disk (&desk, "230");
  wait_until (is_asking (&desk, "another program"));
  push_button (desk.window, "_Keep mine");
  g_assert_false (is_mapped (desk.window, "notice"));

  /* What was saved once is not what the file holds now. */
  gw_document_undo (desk.document);
  g_assert_true (gw_document_is_modified (desk.document));
  gw_document_redo (desk.document);
  act (&desk, "win.save");
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 210.0);
  g_assert_false (gw_document_is_modified (desk.document));
  desk_clear (&desk);
}

/* Changed a moment before the save: nobody has told yet. */
static void
test_changed_at_once (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  change_on_disk (&desk, "230");
  act (&desk, "win.save");
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 230.0);
  g_assert_true (is_asking (&desk, "another program"));
  desk_clear (&desk);
}

static void
test_broken_edited (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 210);
  change_on_disk (&desk, "-1");
  wait_until (is_mapped (desk.window, "bar"));
  act (&desk, "win.save");
  g_assert_true (is_asking (&desk, "cannot be read now"));
  push_button (desk.window, "_Replace the file");
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 210.0);
  g_assert_false (is_mapped (desk.window, "notice"));
  g_assert_false (is_mapped (desk.window, "bar"));
  desk_clear (&desk);
}

static void
test_deleted (void)
{
  Desk desk;

  desk_init (&desk);
  g_assert_cmpint (g_remove (desk.place.path), ==, 0);
  wait_until (is_asking (&desk, "no longer where it was"));
  g_assert_false (is_mapped (desk.window, "bar"));
  g_assert_true (gw_document_is_modified (desk.document)); /* it is nowhere else */
  push_button (desk.window, "_Save");
  g_assert_cmpfloat (chord_on_disk (desk.place.file), ==, 200.0);
  g_assert_false (is_mapped (desk.window, "notice"));
  g_assert_false (gw_document_is_modified (desk.document));
  wait_for_ms (400);
  g_assert_false (is_mapped (desk.window, "notice"));
  desk_clear (&desk);
}

static gboolean
is_recent (GFile *file)
{
  g_autoptr (GPtrArray) list = gw_recent_list (20);
  g_autofree char *uri = g_file_get_uri (file);

  for (guint i = 0; i < list->len; i++)
    if (g_str_equal (((GwRecent *) g_ptr_array_index (list, i))->uri, uri))
      return TRUE;

  return FALSE;
}

static void
test_recent (void)
{
  Desk             desk;
  GwWindow        *window;
  g_autofree char *uri = NULL, *label = NULL;
  g_autoptr (GFile) demo = g_file_new_for_uri (DEMO);

  desk_init (&desk);
  wait_until (is_recent (desk.place.file));
  g_assert_false (is_recent (demo));
  label = g_strdup_printf ("plank.gramwright (%s)", desk.place.folder);
  wait_until (has_in_menu (&desk, label));
  destroy_window (desk.window);

  window = open_window (application, NULL);
  g_assert_true (is_mapped (window, "recent_part"));
  uri = g_file_get_uri (desk.place.file);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.open-recent", "s", uri);
  wait_until (gw_window_get_document (window) != NULL);
  g_assert_true (
    g_file_equal (gw_document_get_file (gw_window_get_document (window)), desk.place.file));
  destroy_window (window);

  g_assert_cmpint (g_remove (desk.place.path), ==, 0);
  g_assert_false (is_recent (desk.place.file)); /* it is not there any more */
  g_assert_cmpint (g_rmdir (desk.place.folder), ==, 0);
  g_clear_object (&desk.place.file);
  g_free (desk.place.path);
  g_free (desk.place.folder);
}

static void
drop_file (GwWindow *window,
           GFile    *file)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (window));
  g_auto (GValue) value = G_VALUE_INIT;
  GSList   files = { file, NULL };
  gboolean is_taken = FALSE;

  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_set_boxed (&value, &files);
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_DROP_TARGET (controller))
        g_signal_emit_by_name (controller, "drop", &value, 10.0, 10.0, &is_taken);
    }
  g_assert_true (is_taken);
}

/* A symmetric section, coarse. */
#define COORDINATES                                                                         \
 "Thin one\n1 0\n0.9 .01\n0.7 .03\n0.5 .045\n0.3 .05\n0.1 .035\n0.03 .02\n0 0\n0.03 -.02\n" \
 "0.1 -.035\n0.3 -.05\n0.5 -.045\n0.7 -.03\n0.9 -.01\n1 0\n"

/* The window that shows an outline before it is added. */
static GtkWidget *
section_import (void)
{
  GListModel *windows = gtk_window_get_toplevels ();
  GtkWidget  *found = NULL;

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

      if (GW_IS_SECTION_IMPORT (window) && gtk_widget_get_mapped (window))
        found = window;
    }

  return found;
}

static const char *
import_text (const char *id)
{
  return gtk_label_get_text (GTK_LABEL (find (section_import (), id)));
}

static void
answer_import (const char *button)
{
  g_signal_emit_by_name (find (section_import (), button), "clicked");
  wait_until (section_import () == NULL);
}

static void
test_section (void)
{
  Desk desk;
  g_autoptr (GFile) file = NULL;
  GwStudy *study;
  guint    n;

  desk_init (&desk);
  file = g_file_new_build_filename (desk.place.folder, "thin.DAT", NULL);
  n = gw_document_get_study (desk.document)->sections->len;
  g_assert_true (g_file_set_contents (g_file_peek_path (file), COORDINATES, -1, NULL));
  drop_file (desk.window, file);
  wait_until (section_import () != NULL);
  g_assert_cmpstr (import_text ("name"), ==, "Thin one");
  g_assert_nonnull (strstr (import_text ("measures"), "no camber"));
  g_assert_false (gtk_widget_get_visible (find (section_import (), "remarks")));
  g_assert_cmpuint (gw_document_get_study (desk.document)->sections->len, ==, n);
  answer_import ("add");

  study = gw_document_get_study (desk.document);
  g_assert_cmpuint (study->sections->len, ==, n + 1);
  g_assert_true (has_in_menu (&desk, "Undo Add section Thin one"));
  g_assert_cmpstr (gw_document_get_selection (desk.document), ==, "sections/thin-one");
  g_assert_false (is_mapped (desk.window, "notice"));

  drop_file (desk.window, file); /* again: under an id of its own */
  wait_until (section_import () != NULL);
  answer_import ("add");
  g_assert_cmpuint (gw_document_get_study (desk.document)->sections->len, ==, n + 2);

  drop_file (desk.window, file); /* and not at all */
  wait_until (section_import () != NULL);
  answer_import ("cancel");
  g_assert_cmpuint (gw_document_get_study (desk.document)->sections->len, ==, n + 2);
  desk_clear (&desk);
}

/* Smoothed only if asked, the change told before and kept with the section. */
static void
test_section_smooth (void)
{
  Desk desk;
  g_autoptr (GFile) file = NULL;
  g_autofree char      *change = NULL;
  const GwStudySection *section;

  desk_init (&desk);
  file = g_file_new_build_filename (desk.place.folder, "thin.dat", NULL);
  g_assert_true (g_file_set_contents (g_file_peek_path (file), COORDINATES, -1, NULL));
  drop_file (desk.window, file);
  wait_until (section_import () != NULL);
  change = g_strdup (import_text ("change"));
  g_assert_true (g_str_has_prefix (change, "Greatest change: 0."));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (find (section_import (), "smooth")), TRUE);
  answer_import ("add");

  section = (const GwStudySection *) gw_edit_record (gw_document_get_study (desk.document),
                                                     "sections/thin-one");
  g_assert_cmpuint (section->points->len, ==, 2 * GW_OUTLINE_N - 1);
  g_assert_nonnull (strstr (section->source, change));
  desk_clear (&desk);
}

static void
test_section_bad (void)
{
  Desk      desk;
  GwWindow *empty;
  g_autoptr (GFile) file = NULL;

  desk_init (&desk);
  file = g_file_new_build_filename (desk.place.folder, "thin.dat", NULL);
  g_assert_true (g_file_set_contents (g_file_peek_path (file), "Thin\n1 0\n0.9 up\n", -1, NULL));
  drop_file (desk.window, file);
  g_assert_true (is_asking (&desk, "thin.dat was not added"));
  g_assert_nonnull (strstr (text_in (desk.window, "notice_reason"), "line 3"));
  g_assert_false (gw_document_is_modified (desk.document));
  push_button (desk.window, "Dis_miss");
  g_assert_false (is_mapped (desk.window, "notice"));

  empty = open_window (application, NULL);
  drop_file (empty, file);
  g_assert_nonnull (strstr (text_in (empty, "notice_reason"), "open the study first"));
  destroy_window (empty);
  desk_clear (&desk);
}

/* Ctrl+S on what lies nowhere or in the program. */
#if !GTK_CHECK_VERSION(4, 10, 0)
static GtkWidget *
wait_for_dialog (void)
{
  GListModel *windows = gtk_window_get_toplevels ();
  GtkWidget  *dialog = NULL;

  while (dialog == NULL)
    {
      for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
        {
          g_autoptr (GtkWidget) candidate = g_list_model_get_item (windows, i);

          if (GTK_IS_FILE_CHOOSER_DIALOG (candidate) && gtk_widget_get_mapped (candidate))
            dialog = candidate;
        }
      g_main_context_iteration (NULL, FALSE);
    }

  return dialog;
}

static void
test_asks_for_name (gconstpointer data)
{
  const gboolean is_new = GPOINTER_TO_INT (data);
  Place          place;
  GwWindow      *window = open_window (application, NULL);
  g_autoptr (GFile) demo = g_file_new_for_uri (DEMO);
  g_autoptr (GFile) folder = NULL, wanted = NULL;
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);
  GtkFileChooser  *chooser;
  g_autofree char *proposed = NULL;

  place_init (&place, SAMPLE_STUDY);
  folder = g_file_new_for_path (place.folder);
  if (is_new)
    gw_window_show_document (window, gw_document_new_study (study));
  else
    gw_window_open (window, demo);
  wait_until (gw_window_get_document (window) != NULL);

  gtk_widget_activate_action (GTK_WIDGET (window), "win.save", NULL);
  chooser = GTK_FILE_CHOOSER (wait_for_dialog ());
  proposed = gtk_file_chooser_get_current_name (chooser);
  g_assert_cmpstr (proposed, ==, is_new ? "Plank.gramwright" : "small.gramwright");
  gtk_dialog_response (GTK_DIALOG (chooser), GTK_RESPONSE_CANCEL);
  wait_for_ms (50);
  g_assert_true (gw_document_needs_name (gw_window_get_document (window)));

  wanted = g_file_get_child (folder, "mine.gramwright");
  g_assert_true (gw_window_save_as (window, wanted));
  g_assert_true (g_file_equal (gw_document_get_file (gw_window_get_document (window)), wanted));
  g_assert_false (gw_document_needs_name (gw_window_get_document (window)));
  destroy_window (window);
  place_clear (&place);
}
#endif

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  application = gw_application_new (G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));

  g_test_add_func ("/desk/files/save/saves", test_save);
  g_test_add_func ("/desk/files/save/reopen", test_reopen);
  g_test_add_func ("/desk/files/save/own", test_own_save);
  g_test_add_func ("/desk/files/save/fails", test_save_fails);
  g_test_add_func ("/desk/files/save/folder-gone", test_folder_gone);
  g_test_add_func ("/desk/files/save-as/moves", test_save_as);
  g_test_add_func ("/desk/files/save-as/taken", test_save_as_taken);
  g_test_add_func ("/desk/files/save-copy", test_save_copy);
#if !GTK_CHECK_VERSION(4, 10, 0)
  g_test_add_data_func ("/desk/files/save/new", GINT_TO_POINTER (TRUE), test_asks_for_name);
  g_test_add_data_func ("/desk/files/save/demo", GINT_TO_POINTER (FALSE), test_asks_for_name);
#endif
  g_test_add_func ("/desk/files/undo", test_undo);
  g_test_add_func ("/desk/files/close/asks", test_close_asks);
  g_test_add_data_func ("/desk/files/close/saves", GINT_TO_POINTER (TRUE), test_close_saves);
  g_test_add_data_func ("/desk/files/close/unsaved", GINT_TO_POINTER (FALSE), test_close_saves);
  g_test_add_func ("/desk/files/close/save-fails", test_close_save_fails);
  g_test_add_func ("/desk/files/quit", test_quit);
  g_test_add_func ("/desk/files/open/elsewhere", test_open_elsewhere);
  g_test_add_func ("/desk/files/open/edited-meanwhile", test_edited_while_opening);
  g_test_add_func ("/desk/files/changed/unedited", test_changed_unedited);
  g_test_add_func ("/desk/files/changed/read", test_changed_read);
  g_test_add_func ("/desk/files/changed/kept", test_changed_kept);
  g_test_add_func ("/desk/files/changed/at-once", test_changed_at_once);
  g_test_add_func ("/desk/files/changed/broken", test_broken_edited);
  g_test_add_func ("/desk/files/changed/deleted", test_deleted);
  g_test_add_func ("/desk/files/recent", test_recent);
  g_test_add_func ("/desk/files/section/dropped", test_section);
  g_test_add_func ("/desk/files/section/smooth", test_section_smooth);
  g_test_add_func ("/desk/files/section/bad", test_section_bad);

  return g_test_run ();
}
