/* test-desk-hard.c - what the desk has to bear
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "demos.h"
#include "desk-keys.h"
#include "desk-window.h"
#include "desk/gw-sheet-view.h"
#include "study/gw-edit-whole.h"
#include "study/gw-edit.h"
#include "study/gw-fresh.h"

static GwApplication *application;

typedef struct
{
  GwWindow   *window;
  GwDocument *document;
} Desk;

static GtkWidget *
sheet_of (const Desk *desk)
{
  return get_widget (desk->window, "sheet");
}

/* Bands of many options may still be computed: nothing waits for them. */
static void
settle (const Desk *desk)
{
  wait_until (gw_sheet_view_get_drawing (GW_SHEET_VIEW (sheet_of (desk))) != NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (desk->window));
}

static void
desk_open (Desk  *desk,
           GFile *file)
{
  desk->window = open_window (application, file);
  desk->document = gw_window_get_document (desk->window);
  keys_to (GTK_WINDOW (desk->window));
  settle (desk);
}

static void
desk_init (Desk *desk)
{
  g_autofree char *path = demo_path ("reed-bed");
  g_autoptr (GFile) file = g_file_new_for_path (path);

  desk_open (desk, file);
}

static void
desk_init_study (Desk    *desk,
                 GwStudy *study)
{
  desk->window = gw_window_new (application);
  gtk_window_present (GTK_WINDOW (desk->window));
  desk->document = gw_document_new_study (study);
  gw_window_show_document (desk->window, desk->document);
  keys_to (GTK_WINDOW (desk->window));
  settle (desk);
}

static void
edit (Desk    *desk,
      GwStudy *edited)
{
  g_autoptr (GwStudy) study = edited;
  g_autoptr (GError) error = NULL;

  g_assert_nonnull (study);
  gw_document_edit (desk->document, "Edit", study, NULL, &error);
  g_assert_no_error (error);
}

/* Every page of the window is looked at, and the next option. */
static void
look_around (Desk *desk)
{
  static const struct
  {
    const char *key, *id;
    gboolean    is_seen;
  } pages[] = {
    { "F6", "table", TRUE },
    { "F6", "table", FALSE },
    { "F9", "outline", FALSE },
    { "F9", "outline", TRUE },
    { "F8", "side", FALSE },
    { "F8", "side", TRUE },
  };

  gtk_widget_grab_focus (sheet_of (desk));
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      keys_press (pages[i].key);
      wait_until (is_mapped (desk->window, pages[i].id) == pages[i].is_seen);
      gtk_test_widget_wait_for_draw (GTK_WIDGET (desk->window));
    }
  gtk_widget_grab_focus (sheet_of (desk));
  keys_press ("Next");
  wait_until (gw_document_get_shown (desk->document) == 1);
  keys_press ("Prior");
  wait_until (gw_document_get_shown (desk->document) == 0);
  gtk_widget_activate_action (sheet_of (desk), "desk.why", "u", GW_RESULT_STALL_SPEED);
  settle (desk);
}

static void
test_no_study (gconstpointer data)
{
  static const char binary[] = "\x89PNG\0\xff\xfe{\0\0\x01";
  const char       *kind = data;
  g_autofree char  *demo = demo_path ("reed-bed"), *whole = NULL;
  Place             place;
  GwWindow         *window = open_window (application, NULL);
  gsize             length;

  g_assert_true (g_file_get_contents (demo, &whole, &length, NULL));
  place_init (&place, "");
  if (g_str_equal (kind, "binary"))
    g_assert_true (g_file_set_contents (place.path, binary, sizeof binary, NULL));
  else if (g_str_equal (kind, "truncated"))
    g_assert_true (g_file_set_contents (place.path, whole, (gssize) (length / 2), NULL));
  else if (g_str_equal (kind, "large"))
    {
      g_autofree char *noise = g_strnfill (3000000, '[');

      g_assert_true (g_file_set_contents (place.path, noise, -1, NULL));
    }
  else if (g_str_equal (kind, "folder"))
    {
      g_assert_cmpint (g_remove (place.path), ==, 0);
      g_assert_cmpint (g_mkdir (place.path, 0700), ==, 0);
    }
  gw_window_open (window, place.file);
  wait_until (is_mapped (window, "problem"));
  g_test_message ("%s", text_in (window, "reason"));
  g_assert_cmpuint (strlen (text_in (window, "reason")), >, 10);
  g_assert_cmpuint (strlen (text_in (window, "reason")), <, 1000);
  destroy_window (window);
  place_clear (&place);
}

static GwStudy *
many_of (guint n_options,
         guint n_items)
{
  GwStudy *study = demo_load ("reed-bed");

  while (study->options->len < n_options)
    {
      g_autoptr (GwStudy) before = study;

      g_autofree char *copy = NULL;

      study = gw_edit_duplicate_whole (before, "options/folded", &copy, NULL);
      g_assert_nonnull (study);
    }
  while (study->equipment->len < n_items)
    {
      g_autoptr (GwStudy) before = study;

      study = gw_edit_duplicate (before, "equipment/receiver", NULL, NULL);
      g_assert_nonnull (study);
    }
  return study;
}

static void
test_many (gconstpointer data)
{
  const gboolean are_options = GPOINTER_TO_INT (data);
  g_autoptr (GwStudy) study = many_of (are_options ? 60 : 4, are_options ? 20 : 200);
  Desk desk;

  desk_init_study (&desk, study);
  look_around (&desk);
  gw_document_set_shown (desk.document, study->options->len - 1);
  gw_document_set_selection (desk.document, "equipment/battery");
  settle (&desk);
  gtk_widget_grab_focus (sheet_of (&desk));
  keys_press ("Down Down");
  wait_until (gw_history_undo_name (gw_document_get_history (desk.document)) != NULL);
  settle (&desk);
  gw_document_undo (desk.document);
  destroy_window (desk.window);
}

/* Three megabytes that this program does not know, and keeps. */
static void
test_large (void)
{
  g_autofree char *noise = g_strnfill (3000000, 'w');
  g_autofree char *format = g_strdup_printf ("\"format\": 1, \"mood\": \"%s\",", noise);
  g_autofree char *text = sample_replace (SAMPLE_STUDY, "\"format\": 1,", format);
  g_autofree char *saved = NULL;
  Place            place;
  Desk             desk;
  gsize            length;

  place_init (&place, text);
  desk_open (&desk, place.file);
  look_around (&desk);
  edit_chord (desk.document, 210);
  gtk_widget_activate_action (GTK_WIDGET (desk.window), "win.save", NULL);
  g_assert_true (g_file_get_contents (place.path, &saved, &length, NULL));
  g_assert_cmpuint (length, >, 3000000);
  destroy_window (desk.window);
  place_clear (&place);
}

static void
remove_whole (Desk       *desk,
              const char *path)
{
  g_autoptr (GError) error = NULL;
  GwStudy *edited =
    gw_edit_remove_whole (gw_document_get_study (desk->document), path, NULL, &error);

  g_assert_no_error (error);
  edit (desk, edited);
}

static void
rename_all (Desk       *desk,
            const char *name)
{
  static const char *const paths[] = { "name", "note", "options/folded/name",
                                       "options/folded/short_name", "options/folded/note",
                                       "equipment/battery/name", "surfaces/wing/name" };

  GwStudy *study = gw_study_ref (gw_document_get_study (desk->document));
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), name);
  GError *error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (paths) && study != NULL; i++)
    {
      g_autoptr (GwStudy) before = study;

      study = gw_study_edit (before, paths[i], node, &error);
    }
  g_assert_no_error (error);
  edit (desk, study);
}

/* No name makes a window wider than it was meant for; the first widget that would is told. */
static void
expect_narrow (GtkWidget *widget)
{
  int least;

  if (!gtk_widget_get_visible (widget) || GTK_IS_POPOVER (widget) || GTK_IS_COLUMN_VIEW (widget))
    return;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    expect_narrow (child);
  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  if (least > 1024)
    g_error ("%s “%s” wants %d pixels", G_OBJECT_TYPE_NAME (widget),
             gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), least);
}

static void
test_names (void)
{
  g_autofree char  *long_name = g_strnfill (200, 'w');
  const char *const names[] = { "\360\237\233\251\357\270\217\360\237\221\250\342\200\215"
                                "\360\237\221\251\342\200\215\360\237\221\247",
                                "\330\267\330\247\330\246\330\261\330\251 \330\247\331\204"
                                "\331\202\330\265\330\250",
                                "<b>&amp; %s %n</b> _a__b", "a/b\\c: \"d\"", " ", "", "\n\t",
                                "e\314\201\314\201\314\201\314\201\314\201\314\201", long_name };
  Desk              desk;

  desk_init (&desk);
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      rename_all (&desk, names[i]);
      gw_document_set_selection (desk.document, i % 2 == 0 ? "equipment/battery" : "");
      gtk_test_widget_wait_for_draw (GTK_WIDGET (desk.window));
      expect_narrow (GTK_WIDGET (desk.window));
      look_around (&desk);
      expect_narrow (GTK_WIDGET (desk.window));
    }
  destroy_window (desk.window);
}

/* Where equipment is on the screen, from above. */
static void
find_item (Desk       *desk,
           const char *path,
           int         at[2])
{
  GwSheetView     *sheet = GW_SHEET_VIEW (sheet_of (desk));
  const GwOutcome *outcome = gw_evaluation_outcome (
    gw_document_get_evaluation (desk->document), gw_document_get_shown (desk->document));
  const GwStudyItem *item =
    (const GwStudyItem *) gw_edit_record (outcome->assembly->study, path);
  const GwViewFrame *frame = gw_drawing_view (gw_sheet_view_get_drawing (sheet), GW_VIEW_TOP);
  double             x, y;

  gw_sheet_view_to_widget (sheet, frame->origin[0],
                           frame->origin[1] + item->x_mm.value * 1e-3 * frame->scale, &x, &y);
  place_on_screen (GTK_WIDGET (sheet), x, y, &at[0], &at[1]);
}

static void
hold (Desk       *desk,
      const char *path)
{
  int at[2];

  find_item (desk, path, at);
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative 0 5 sleep 0.05 "
         "mousemove_relative 0 5 sleep 0.1",
         at[0], at[1]);
  g_assert_nonnull (gw_document_get_former (desk->document));
}

static void
let_go (void)
{
  point ("mousemove_relative 0 3 sleep 0.05 mouseup 1");
}

static void
test_close_in_drag (void)
{
  Desk desk;

  desk_init (&desk);
  hold (&desk, "equipment/battery");
  destroy_window (desk.window);
  let_go ();
}

static void
test_edit_in_drag (void)
{
  Desk desk;

  desk_init (&desk);
  edit_chord (desk.document, 230);
  settle (&desk);
  hold (&desk, "equipment/battery");
  keys_press ("ctrl+z"); /* of what was before */
  let_go ();
  settle (&desk);
  g_assert_null (gw_document_get_former (desk.document));

  /* What is held goes. */
  hold (&desk, "equipment/camera");
  remove_whole (&desk, "equipment/camera");
  let_go ();
  settle (&desk);
  g_assert_null (gw_edit_record (gw_document_get_study (desk.document), "equipment/camera"));
  g_assert_null (gw_document_get_former (desk.document));
  gw_document_undo (desk.document);
  settle (&desk);

  /* Another option is shown, that is removed. */
  hold (&desk, "equipment/battery");
  keys_press ("Next");
  remove_whole (&desk, "options/solid");
  let_go ();
  settle (&desk);
  g_assert_null (gw_document_get_former (desk.document));
  destroy_window (desk.window);
}

/* What is typed belongs to a record that goes; so does the list that is open. */
static void
test_remove_in_typing (void)
{
  static const char *const fields[] = { "Name", "Mass, g", "Aft, mm", "Kind: *" };
  Desk                     desk;

  desk_init (&desk);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    {
      gw_document_set_selection (desk.document, "equipment/receiver");
      settle (&desk);
      gtk_widget_grab_focus (sheet_of (&desk));
      keys_go (fields[i]);
      if (i < 3)
        keys_type ("12");
      else
        keys_press ("Return Down");
      remove_whole (&desk, "equipment/receiver");
      keys_type ("34");
      keys_press ("Return");
      settle (&desk);
      g_assert_null (gw_document_get_former (desk.document));
      g_assert_null (
        gw_edit_record (gw_document_get_study (desk.document), "equipment/receiver"));
      while (gw_history_undo_name (gw_document_get_history (desk.document)) != NULL)
        gw_document_undo (desk.document);
    }
  destroy_window (desk.window);
}

/* Closed while something pops up from it: the keys of the other windows go on working. */
static void
test_close_in_popover (gconstpointer data)
{
  const char *const *way = data; /* what has the focus, the keys that open it */
  Desk               desk, other;

  desk_init (&other);
  desk_init_study (&desk, gw_document_get_study (other.document));
  gw_document_set_selection (desk.document, "equipment/receiver");
  settle (&desk);
  gtk_widget_grab_focus (sheet_of (&desk));
  keys_go (way[0]);
  keys_press (way[1]);
  wait_for_ms (200);
  destroy_window (desk.window);
  keys_to (GTK_WINDOW (other.window));
  look_around (&other);
  destroy_window (other.window);
}

int
main (int   argc,
      char *argv[])
{
  static const char *const popovers[][3] = {
    { "Kind: *", "Return Down", "list" },
    { "Drawing sheet", "b", "number" },
    { "Drawing sheet", "F10", "menu" },
    { "Receiver*", "shift+F10", "row-menu" },
    { "Mass: how sure*", "Return", "sureness" },
  };
  static const char *const kinds[] = { "folder", "binary", "truncated", "empty", "large" };

  gtk_test_init (&argc, &argv, NULL);
  application = gw_application_new (G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *path = g_strconcat ("/desk/hard/no-study/", kinds[i], NULL);

      g_test_add_data_func (path, kinds[i], test_no_study);
    }
  g_test_add_data_func ("/desk/hard/many/options", GINT_TO_POINTER (1), test_many);
  g_test_add_data_func ("/desk/hard/many/equipment", GINT_TO_POINTER (0), test_many);
  g_test_add_func ("/desk/hard/large", test_large);
  g_test_add_func ("/desk/hard/names", test_names);
  g_test_add_func ("/desk/hard/close-in-drag", test_close_in_drag);
  g_test_add_func ("/desk/hard/edit-in-drag", test_edit_in_drag);
  g_test_add_func ("/desk/hard/remove-in-typing", test_remove_in_typing);
  for (guint i = 0; i < G_N_ELEMENTS (popovers); i++)
    {
      g_autofree char *path = g_strconcat ("/desk/hard/close-in-popover/", popovers[i][2], NULL);

      g_test_add_data_func (path, popovers[i], test_close_in_popover);
    }

  return g_test_run ();
}
