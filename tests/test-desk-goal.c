/* test-desk-goal.c - the whole of the job, by keys alone
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "desk-keys.h"
#include "desk-widgets.h"
#include "desk-window.h"
#include "desk/gw-sheet-view.h"
#include "study/gw-edit.h"

/* "Find out whether a printed wing is worth it for this aeroplane, and where the battery goes":
 * nothing here is touched but by a key, and after every one the focus is where it can be seen. */

static GwApplication *application;

typedef struct
{
  char       *folder;
  GwWindow   *window;
  GwDocument *document;
} Desk;

static GwStudy *
study_of (const Desk *desk)
{
  return gw_document_get_study (desk->document);
}

static const GwOutcome *
outcome_of (const Desk *desk,
            guint       option)
{
  return gw_evaluation_outcome (gw_document_get_evaluation (desk->document), option);
}

static const GwStudyBuild *
printed_build (const Desk *desk)
{
  return (const GwStudyBuild *) gw_edit_record (study_of (desk), "options/foaming/builds/1");
}

/* As the option that is shown has it. */
static double
battery_x (const Desk *desk)
{
  const guint shown = gw_document_get_shown (desk->document);

  return ((const GwStudyItem *) gw_edit_record (outcome_of (desk, shown)->assembly->study,
                                                "equipment/battery"))
    ->x_mm.value;
}

static const char *
undo_name (const Desk *desk)
{
  return gw_history_undo_name (gw_document_get_history (desk->document));
}

/* Nothing is tried and everything is computed. */
static void
settle (const Desk *desk)
{
  wait_until (gw_document_get_former (desk->document) == NULL &&
              !gw_document_is_busy (desk->document));
  wait_until (keys_is_seen ());
}

/* In place of what stands in the field. */
static void
fill_in (Desk       *desk,
         const char *id,
         const char *text)
{
  GtkEditable *entry = GTK_EDITABLE (get_widget (desk->window, id));

  keys_type (text);
  wait_until (g_str_equal (gtk_editable_get_text (entry), text));
}

static void
begin_study (Desk *desk)
{
  GtkWidget *page;

  keys_go ("New study…");
  keys_press ("Return");
  keys_expect ("High-wing trainer");
  page = get_widget (desk->window, "new_study");
  keys_press ("Right Left"); /* to the next shape and back */
  keys_expect ("High-wing trainer");
  keys_go ("Span");
  fill_in (desk, "span", "1500");
  keys_press ("Tab");
  keys_expect ("Mean chord");
  fill_in (desk, "chord", "230");
  keys_press ("Tab");
  keys_expect ("Mass goal");
  fill_in (desk, "mass", "1,4 kg");
  keys_go ("Begin");
  keys_press ("Return");
  wait_until (gw_window_get_document (desk->window) != NULL && !gtk_widget_get_mapped (page));
  desk->document = gw_window_get_document (desk->window);
  settle (desk);
  keys_expect ("Drawing sheet");
  g_assert_cmpfloat (study_of (desk)->targets->mass_g.value, ==, 1400.0);
  g_assert_cmpfloat (outcome_of (desk, 0)->results.value[GW_RESULT_SPAN], ==, 1.5);
  /* The mean chord of the shape is rounded to a millimetre at each station. */
  g_assert_cmpfloat_with_epsilon (outcome_of (desk, 0)->results.value[GW_RESULT_WING_AREA],
                                  1.5 * 0.23, 1.5 * 0.5e-3);
  g_assert_cmpuint (study_of (desk)->options->len, ==, 2);
}

/* The second option: its build, looked at in another construction and left, then taken in another
 * filament. */
static void
swap_wing (Desk *desk)
{
  double printed, tried;

  keys_go ("Folded foam board*");
  keys_press ("Down");
  keys_expect ("Printed foaming plastic");
  g_assert_cmpuint (gw_document_get_shown (desk->document), ==, 1);
  keys_go ("1: Wing: printed shell");
  keys_press ("Return");
  g_assert_cmpstr (gw_document_get_selection (desk->document), ==, "options/foaming/builds/1");

  printed = outcome_of (desk, 1)->results.value[GW_RESULT_MASS];
  keys_go ("Construction: printed shell");
  keys_press ("Return Down");
  keys_expect ("folded sheet");
  wait_until (gw_document_get_former (desk->document) != NULL);
  tried = outcome_of (desk, 1)->results.value[GW_RESULT_MASS];
  g_assert_cmpfloat (tried, !=, printed);
  g_assert_cmpint (printed_build (desk)->construction, ==, GW_CONSTRUCTION_PRINTED_SHELL);
  keys_press ("Escape");
  settle (desk);
  keys_expect ("Construction: printed shell");
  g_assert_cmpfloat (outcome_of (desk, 1)->results.value[GW_RESULT_MASS], ==, printed);
  g_assert_null (undo_name (desk));

  keys_go ("Filament: Foaming PLA");
  keys_press ("Return Down");
  wait_until (gw_document_get_former (desk->document) != NULL);
  keys_press ("Return");
  settle (desk);
  g_assert_cmpstr (printed_build (desk)->printed_shell->material, !=, "pla-foaming");
  keys_expect ("Filament: *");
  g_assert_cmpstr (undo_name (desk), ==, "Change Filament of Printed shell");
}

/* And the construction taken: it brings its own foam. */
static void
swap_construction (Desk *desk)
{
  keys_go ("Construction: printed shell");
  keys_press ("Return Down Down");
  keys_expect ("hot-wired core");
  keys_press ("Return");
  settle (desk);
  g_assert_cmpint (printed_build (desk)->construction, ==, GW_CONSTRUCTION_HOT_WIRED_CORE);
  g_assert_nonnull (printed_build (desk)->hot_wired_core->material);
  keys_expect ("Construction: hot-wired core");
  keys_go ("Back to Printed foaming plastic");
  keys_press ("Return");
  wait_until (keys_is_seen ());
  g_assert_cmpstr (gw_document_get_selection (desk->document), ==, "options/foaming");
  keys_press ("ctrl+z");
  settle (desk);
  g_assert_cmpint (printed_build (desk)->construction, ==, GW_CONSTRUCTION_PRINTED_SHELL);
}

/* The cell of a table's row that begins with @title. (transfer full) */
static char *
read_cell (const char *text,
           const char *title,
           guint       column)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_auto (GStrv) cells = g_strsplit (lines[i], "\t", -1);

      if (g_strcmp0 (cells[0], title) == 0 && column < g_strv_length (cells))
        return g_strdup (cells[column]);
    }

  g_error ("no “%s” in:\n%s", title, text);
}

static char *
read_clipboard (const Desk *desk)
{
  char *text = NULL;

  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (GTK_WIDGET (desk->window)), NULL,
                                 widgets_read_cb, &text);
  wait_until (text != NULL);
  return text;
}

/* All results side by side, as the table says them and as it is copied. */
static void
compare (Desk *desk)
{
  g_autofree char *text = NULL, *mass = NULL, *wanted = NULL;

  keys_press ("F6");
  g_assert_true (is_mapped (desk->window, "table"));
  wait_until (keys_is_seen ());
  keys_go_by ("shift+Tab", "Table: *");
  keys_press ("Return End Return");
  keys_expect ("Table: Options side by side");
  keys_go ("Copy table");
  keys_press ("space");
  text = read_clipboard (desk);
  mass = read_cell (text, "all-up mass", 2);
  wanted = g_strdup_printf ("%.0f", outcome_of (desk, 0)->results.value[GW_RESULT_MASS] * 1e3);
  g_assert_cmpstr (mass, ==, wanted);
  keys_press ("F6");
  keys_expect ("Drawing sheet");
}

/* With the arrows on the sheet, typed into its field, and by the balance point. */
static void
move_battery (Desk *desk)
{
  double before, balance;

  keys_go ("Battery");
  keys_press ("Return");
  g_assert_cmpstr (gw_document_get_selection (desk->document), ==, "equipment/battery");
  before = battery_x (desk);
  keys_go ("Drawing sheet");
  keys_press ("Up Up shift+Up");
  settle (desk);
  g_assert_cmpfloat (battery_x (desk), ==, before - 12.0);
  g_assert_cmpstr (undo_name (desk), ==, "Move Battery");
  keys_expect ("Drawing sheet");

  keys_go ("Aft, mm");
  keys_type ("245/2 + 120");
  keys_press ("Return");
  settle (desk);
  g_assert_cmpfloat (battery_x (desk), ==, 242.5);
  keys_expect ("Aft, mm");

  balance = outcome_of (desk, 1)->results.value[GW_RESULT_BALANCE_ROOT];
  keys_go ("Drawing sheet");
  keys_press ("b");
  keys_expect ("Balance point, mm");
  keys_type ("92");
  keys_press ("Return");
  settle (desk);
  keys_expect ("Drawing sheet");
  g_assert_cmpstr (undo_name (desk), ==, "Move the balance point");
  g_assert_cmpfloat (battery_x (desk), !=, 242.5);
  g_assert_cmpfloat (outcome_of (desk, 1)->results.value[GW_RESULT_BALANCE_ROOT], !=, balance);
  /* The battery is moved by tenths of a millimetre, a sixth of the mass. */
  g_assert_cmpfloat_with_epsilon (outcome_of (desk, 1)->results.value[GW_RESULT_BALANCE_ROOT],
                                  0.092, 0.05e-3);
}

/* A number of the other option's column, pressed on the sheet: nothing else changes, and Escape
 * closes the answer before it lets go of what is selected. */
static void
ask_on_the_sheet (Desk *desk)
{
  const guint      shown = gw_document_get_shown (desk->document);
  g_autofree char *selected = g_strdup (gw_document_get_selection (desk->document));

  gw_document_set_selection (desk->document, "surfaces/wing");
  gtk_widget_grab_focus (get_widget (desk->window, "sheet"));
  g_signal_emit_by_name (get_widget (desk->window, "sheet"), "why", 1 - shown, GW_RESULT_MASS);
  g_assert_true (is_mapped (desk->window, "derivation"));
  g_assert_cmpuint (gw_document_get_shown (desk->document), ==, shown);
  keys_press ("Escape");
  g_assert_false (is_mapped (desk->window, "derivation"));
  g_assert_cmpstr (gw_document_get_selection (desk->document), ==, "surfaces/wing");
  keys_press ("Escape");
  g_assert_cmpstr (gw_document_get_selection (desk->document), ==, "");
  gw_document_set_selection (desk->document, selected);
}

static void
ask_why (Desk *desk)
{
  keys_go ("stall speed *");
  keys_press ("Return");
  g_assert_true (is_mapped (desk->window, "derivation"));
  wait_until (keys_is_seen ());
  g_assert_nonnull (widgets_find_label (get_widget (desk->window, "derivation"), "air density"));
  /* It leads on to what the sections do, and back. */
  keys_go ("Show what the sections do");
  keys_press ("Return");
  wait_until (is_mapped (desk->window, "sections"));
  keys_press ("F7");
  wait_until (!is_mapped (desk->window, "sections"));
  keys_go ("What it is");
  keys_press ("Escape");
  g_assert_false (is_mapped (desk->window, "derivation"));
  keys_expect ("stall speed *");
}

static void
edit_equipment (Desk *desk)
{
  const guint n = study_of (desk)->equipment->len;

  keys_go ("Add equipment");
  keys_press ("Return");
  settle (desk);
  keys_expect ("Name"); /* what is new wants one */
  g_assert_cmpuint (study_of (desk)->equipment->len, ==, n + 1);
  keys_type ("Night light");
  keys_press ("Return");
  settle (desk);
  g_assert_cmpstr (
    ((const GwStudyItem *) g_ptr_array_index (study_of (desk)->equipment, n))->name, ==,
    "Night light");
  keys_go ("Night light");
  keys_press ("Delete");
  settle (desk);
  g_assert_cmpuint (study_of (desk)->equipment->len, ==, n);
  g_assert_cmpstr (undo_name (desk), ==, "Remove Night light");
}

/* To the start and all the way back. */
static void
undo_and_redo (Desk *desk)
{
  g_autoptr (GwStudy) last = gw_study_ref (study_of (desk));
  guint n = 0, again = 0;

  for (; undo_name (desk) != NULL; n++)
    keys_press ("ctrl+z");
  settle (desk);
  g_assert_cmpuint (n, >=, 6);
  g_assert_cmpstr (printed_build (desk)->printed_shell->material, ==, "pla-foaming");
  for (; gw_history_redo_name (gw_document_get_history (desk->document)) != NULL; again++)
    keys_press ("ctrl+shift+z");
  settle (desk);
  g_assert_cmpuint (again, ==, n);
  g_assert_true (gw_record_equal (&study_of (desk)->record, &last->record));
}

/* The name typed into the dialog that @keys open. */
static void
name_file (Desk       *desk,
           const char *keys,
           const char *path)
{
  GListModel *windows = gtk_window_get_toplevels ();
  GtkWindow  *dialog = NULL;

  keys_press (keys);
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);

      if (gtk_window_get_transient_for (window) == GTK_WINDOW (desk->window) &&
          gtk_widget_get_visible (GTK_WIDGET (window)))
        dialog = window;
    }
  g_assert_nonnull (dialog);
  g_object_add_weak_pointer (G_OBJECT (dialog), (gpointer *) &dialog);
  keys_to (dialog);
  keys_press ("ctrl+a");
  keys_type (path);
  keys_press ("Return");
  wait_until (dialog == NULL);
  keys_to (GTK_WINDOW (desk->window));
  wait_until (keys_is_seen ());
}

static void
keep (Desk *desk)
{
  g_autofree char *study = g_build_filename (desk->folder, "trial.gramwright", NULL);
  g_autofree char *sheet = g_build_filename (desk->folder, "trial.pdf", NULL);
  g_autofree char *contents = NULL;
  gsize            length;

  name_file (desk, "ctrl+shift+s", study);
  g_assert_false (gw_document_is_modified (desk->document));
  g_assert_true (g_file_test (study, G_FILE_TEST_EXISTS));
  name_file (desk, "ctrl+e", sheet);
  g_assert_true (g_file_get_contents (sheet, &contents, &length, NULL));
  g_assert_cmpuint (length, >, 10000);
  g_assert_cmpmem (contents, 5, "%PDF-", 5);
  g_assert_true (g_str_has_suffix (text_in (desk->window, "foot"), sheet));
}

/* Closed and, from the start page, opened again. */
static void
reopen (Desk *desk)
{
  g_autoptr (GwStudy) last = gw_study_ref (study_of (desk));
  GwWindow    *gone = desk->window;
  GwSheetView *sheet;

  g_object_add_weak_pointer (G_OBJECT (gone), (gpointer *) &gone);
  keys_press ("ctrl+w");
  wait_until (gone == NULL);
  desk->window = open_window (application, NULL);
  keys_to (GTK_WINDOW (desk->window));
  keys_go ("trial*");
  keys_press ("Return");
  wait_until (gw_window_get_document (desk->window) != NULL);
  desk->document = gw_window_get_document (desk->window);
  settle (desk);
  keys_expect ("Drawing sheet");
  sheet = GW_SHEET_VIEW (get_widget (desk->window, "sheet"));
  g_assert_true (gw_record_equal (&study_of (desk)->record, &last->record));
  g_assert_nonnull (
    strstr (gw_sheet_view_get_text (sheet), "Printed foaming plastic; all-up mass "));
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_assert_cmpint (g_remove (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
test_goal (void)
{
  Desk desk = { .folder = g_dir_make_tmp ("gw-goal-XXXXXX", NULL) };

  desk.window = open_window (application, NULL);
  keys_to (GTK_WINDOW (desk.window));
  begin_study (&desk);
  swap_wing (&desk);
  swap_construction (&desk);
  compare (&desk);
  move_battery (&desk);
  ask_on_the_sheet (&desk);
  ask_why (&desk);
  edit_equipment (&desk);
  undo_and_redo (&desk);
  keep (&desk);
  reopen (&desk);
  destroy_window (desk.window);
  remove_folder (desk.folder);
  g_free (desk.folder);
}

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  application = gw_application_new (G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));

  g_test_add_func ("/desk/goal/keys", test_goal);

  return g_test_run ();
}
