/* test-desk-variants.c - one day's work, by pointer: light and dark, both ways of writing
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <signal.h>

#include "desk-keys.h"
#include "desk-widgets.h"
#include "desk-window.h"
#include "desk/gw-recovery.h"
#include "desk/gw-sheet-view.h"
#include "study/gw-edit.h"

/* The screen's scale comes with the display: the program runs once for each. */

#define WORK  "work" /* what the other instance is called with */
#define WING  "surfaces/wing/stations/2"
#define BUILD "options/foaming/builds/1"

static GwApplication *application;
static const char    *own_path;

typedef struct
{
  const char      *name;
  GtkTextDirection direction;
  gboolean         is_dark;
} Variant;

typedef struct
{
  Place       place;
  GwWindow   *window;
  GwDocument *document;
  char       *start; /* the study as it began */
} Desk;

static GwApplication *
start_application (void)
{
  GwApplication *started =
    gw_application_new (G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);

  g_assert_true (g_application_register (G_APPLICATION (started), NULL, NULL));
  return started;
}

static GwSheetView *
sheet_of (const Desk *desk)
{
  return GW_SHEET_VIEW (get_widget (desk->window, "sheet"));
}

static const GwOutcome *
outcome_of (const Desk *desk)
{
  return gw_evaluation_outcome (gw_document_get_evaluation (desk->document),
                                gw_document_get_shown (desk->document));
}

static const GwRecord *
record_of (const Desk *desk,
           const char *path)
{
  const gboolean is_own = g_str_has_prefix (path, "options/");

  return gw_edit_record (is_own ? gw_document_get_study (desk->document)
                                : outcome_of (desk)->assembly->study,
                         path);
}

static double
battery_x (const Desk *desk)
{
  return ((const GwStudyItem *) record_of (desk, "equipment/battery"))->x_mm.value;
}

static double
wing_chord (const Desk *desk)
{
  return ((const GwStudyStation *) record_of (desk, WING))->chord_mm.value;
}

static const char *
undo_name (const Desk *desk)
{
  return gw_history_undo_name (gw_document_get_history (desk->document));
}

static void
settle (const Desk *desk)
{
  wait_until (!gw_document_is_busy (desk->document) &&
              gw_sheet_view_get_drawing (sheet_of (desk)) != NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (desk->window));
}

static void
press (GtkWidget *widget)
{
  int x, y;

  wait_until (gtk_widget_get_mapped (widget) && gtk_widget_get_width (widget) > 0);
  place_on_screen (widget, gtk_widget_get_width (widget) / 2.0,
                   gtk_widget_get_height (widget) / 2.0, &x, &y);
  point ("mousemove %d %d click 1", x, y);
}

/* What can take the focus, below @top, and is called so. */
static GtkWidget *
find_named (GtkWidget  *top,
            const char *name)
{
  if (gtk_widget_get_mapped (top) && (gtk_widget_get_focusable (top) || GTK_IS_ENTRY (top)))
    {
      g_autofree char *own = keys_name (top);

      if (g_pattern_match_simple (name, own))
        return top;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_named (child, name);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static GtkWidget *
need_named (const Desk *desk,
            const char *name)
{
  GtkWidget *found = find_named (GTK_WIDGET (desk->window), name);

  if (found == NULL)
    g_error ("nothing is called “%s”", name);
  return found;
}

static void
begin_study (Desk *desk)
{
  press (find_button (GTK_WIDGET (desk->window), "_New study…"));
  wait_until (gtk_widget_get_mapped (get_widget (desk->window, "new_study")));
  press (need_named (desk, "Low-wing sport*"));
  press (need_named (desk, "High-wing trainer"));
  press (need_named (desk, "Begin"));
  wait_until (gw_window_get_document (desk->window) != NULL);
  desk->document = gw_window_get_document (desk->window);
  settle (desk);
  desk->start = gw_study_text (gw_document_get_study (desk->document));
}

/* Hovered over first, which shows it, then taken. */
static void
swap_material (Desk *desk)
{
  const GwStudyBuild *build;
  GtkWidget          *row;
  int                 x, y;

  press (need_named (desk, "Printed foaming plastic"));
  gw_document_set_selection (desk->document, BUILD);
  settle (desk);
  press (need_named (desk, "Filament: Foaming PLA"));
  keys_expect ("Foaming PLA*");
  row = gtk_widget_get_next_sibling (keys_focus ());
  place_on_screen (row, 30.0, 8.0, &x, &y);
  point ("mousemove %d %d mousemove_relative 2 1 sleep 0.1 mousemove_relative 2 1", x, y);
  wait_until (gw_document_get_former (desk->document) != NULL);
  point ("click 1");
  settle (desk);
  build = (const GwStudyBuild *) record_of (desk, BUILD);
  g_assert_cmpstr (build->printed_shell->material, !=, "pla-foaming");
  g_assert_cmpstr (undo_name (desk), ==, "Change Filament of Printed shell");
}

static gboolean
says_lift (GtkWidget *top)
{
  g_autoptr (GPtrArray) labels = widgets_find (top, GTK_TYPE_LABEL, "detail");

  for (guint i = 0; i < labels->len; i++)
    if (g_str_has_prefix (gtk_label_get_text (g_ptr_array_index (labels, i)), "lift to "))
      return TRUE;

  return FALSE;
}

/* The list says what each section does there, once that has been looked up. */
static void
look_at_sections (Desk *desk)
{
  gw_document_set_selection (desk->document, "surfaces/wing/stations/1");
  settle (desk);
  press (need_named (desk, "Section: *"));
  wait_until (says_lift (GTK_WIDGET (desk->window)));
  keys_press ("Escape");
  keys_expect ("Section: *");
  gw_document_set_selection (desk->document, BUILD); /* no handles in the way */
  settle (desk);
}

/* Where a place of the aircraft seen from above is on the screen. */
static void
find_place (const Desk *desk,
            double      out,
            double      aft,
            int         at[2])
{
  const GwViewFrame *frame;
  double             x, y;

  settle (desk);
  frame = gw_drawing_view (gw_sheet_view_get_drawing (sheet_of (desk)), GW_VIEW_TOP);
  gw_sheet_view_to_widget (sheet_of (desk), frame->origin[0] + out * frame->scale,
                           frame->origin[1] + aft * frame->scale, &x, &y);
  place_on_screen (GTK_WIDGET (sheet_of (desk)), x, y, &at[0], &at[1]);
}

static void
drag_down (const int at[2],
           int       by)
{
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative -- 0 %d sleep 0.05 "
         "mousemove_relative -- 0 %d sleep 0.1 mouseup 1",
         at[0], at[1], by, by);
}

static void
drag (Desk *desk)
{
  const int    scale = gtk_widget_get_scale_factor (GTK_WIDGET (desk->window));
  const double before = battery_x (desk);
  double       moved, balance;
  int          at[2];

  find_place (desk, 0.0, before * 1e-3, at);
  drag_down (at, 5 * scale);
  settle (desk);
  moved = battery_x (desk);
  g_assert_cmpfloat (moved, >, before + 2.0);
  g_assert_cmpstr (undo_name (desk), ==, "Move Battery");

  balance = outcome_of (desk)->results.value[GW_RESULT_BALANCE_X];
  find_place (desk, 0.0, balance, at);
  drag_down (at, -2 * scale);
  settle (desk);
  g_assert_cmpfloat (battery_x (desk), <, moved);
  g_assert_cmpfloat (outcome_of (desk)->results.value[GW_RESULT_BALANCE_X], <, balance);
  g_assert_cmpstr (undo_name (desk), ==, "Move the balance point");
}

/* Values that cannot be are refused where they were typed; then one that can. */
static void
edit_station (Desk *desk)
{
  static const char *const bad[] = { "wide", "-5", "1e9", "1/0", "9 kg", "((", "0x10", "1e400",
                                     "\331\243\331\240\331\240\331\240\331\240\331\240", "" };
  const double             before = wing_chord (desk);
  GtkWidget               *chord;

  gw_document_set_selection (desk->document, WING);
  settle (desk);
  chord = need_named (desk, "Chord, mm");
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      gtk_widget_grab_focus (chord);
      gtk_editable_set_text (GTK_EDITABLE (chord), bad[i]);
      keys_press ("Return");
      g_assert_true (gtk_widget_has_css_class (chord, "refused"));
      gtk_test_accessible_assert_state (GTK_ACCESSIBLE (chord), GTK_ACCESSIBLE_STATE_INVALID,
                                        GTK_ACCESSIBLE_INVALID_TRUE);
      keys_press ("Escape");
      settle (desk);
      g_assert_cmpfloat (wing_chord (desk), ==, before);
      g_assert_false (gtk_widget_has_css_class (chord, "refused"));
    }

  gtk_widget_grab_focus (chord);
  keys_press ("ctrl+a");
  keys_type ("9 in");
  keys_press ("Return");
  settle (desk);
  g_assert_cmpfloat (wing_chord (desk), ==, 9 * 25.4);
}

static void
undo_to_start (Desk *desk)
{
  g_autofree char *text = NULL;
  guint            n = 0;

  gtk_widget_grab_focus (GTK_WIDGET (sheet_of (desk)));
  for (; undo_name (desk) != NULL; n++)
    press (get_widget (desk->window, "undo_button"));
  g_assert_cmpuint (n, ==, 4);
  text = gw_study_text (gw_document_get_study (desk->document));
  g_assert_cmpstr (text, ==, desk->start);
  for (; n > 0; n--)
    press (get_widget (desk->window, "redo_button"));
  settle (desk);
  g_assert_cmpfloat (wing_chord (desk), ==, 9 * 25.4);
}

static void
save_and_reopen (Desk *desk)
{
  g_autofree char *last = NULL, *again = NULL;

  g_assert_true (gw_window_save_as (desk->window, desk->place.file));
  last = gw_study_text (gw_document_get_study (desk->document));
  destroy_window (desk->window);
  desk->window = open_window (application, desk->place.file);
  desk->document = gw_window_get_document (desk->window);
  settle (desk);
  again = gw_study_text (gw_document_get_study (desk->document));
  g_assert_cmpstr (again, ==, last);
  destroy_window (desk->window);
}

/* The other instance: opens, edits, is killed. */
static int
work (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GwWindow   *window;
  GwDocument *document;

  application = start_application ();
  window = open_window (application, file);
  document = gw_window_get_document (window);
  for (double chord = 201; chord < 4000; chord++)
    {
      g_autoptr (JsonNode) node = json_node_init_double (json_node_alloc (), chord);
      g_autoptr (GwStudy) edited =
        gw_study_edit (gw_document_get_study (document), WING "/chord_mm", node, NULL);

      gw_document_edit (document, "Change the chord", edited, NULL, NULL);
      wait_for_ms (20);
    }

  return 1; /* nobody has killed it */
}

static gboolean
is_kept (void)
{
  g_autofree char *folder = gw_recovery_folder ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, GW_RECOVERY_ENDING))
      return TRUE;

  return FALSE;
}

static void
recover (Desk *desk)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) other = g_subprocess_new (G_SUBPROCESS_FLAGS_NONE, &error, own_path,
                                                    WORK, desk->place.path, NULL);

  g_assert_no_error (error);
  for (guint i = 0; i < WAIT_LIMIT / 20 && !is_kept (); i++)
    wait_for_ms (20);
  g_assert_true (is_kept ());
  g_subprocess_send_signal (other, SIGKILL);
  g_assert_true (g_subprocess_wait (other, NULL, NULL));

  g_clear_object (&application);
  application = start_application ();
  desk->window = open_window (application, NULL);
  keys_to (GTK_WINDOW (desk->window));
  press (find_button (GTK_WIDGET (desk->window), "Bring it back"));
  wait_until (gw_window_get_document (desk->window) != NULL);
  desk->document = gw_window_get_document (desk->window);
  settle (desk);
  g_assert_true (gw_document_is_modified (desk->document));
  g_assert_cmpfloat (wing_chord (desk), ==, floor (wing_chord (desk)));
  g_assert_cmpfloat (wing_chord (desk), >, 200.0);
  press (get_widget (desk->window, "save_button"));
  g_assert_false (gw_document_is_modified (desk->document));
}

static void
test_variant (gconstpointer data)
{
  const Variant *variant = data;
  Desk           desk = { 0 };

  gtk_widget_set_default_direction (variant->direction);
  application = start_application ();
  g_settings_set_enum (gw_application_get_settings (application), "theme",
                       variant->is_dark ? 2 : 1);
  place_init (&desk.place, "");
  desk.window = open_window (application, NULL);
  keys_to (GTK_WINDOW (desk.window));
  begin_study (&desk);
  g_assert_cmpint (gw_drawing_theme (gw_sheet_view_get_drawing (sheet_of (&desk)))->is_dark, ==,
                   variant->is_dark);
  swap_material (&desk);
  look_at_sections (&desk);
  drag (&desk);
  edit_station (&desk);
  undo_to_start (&desk);
  save_and_reopen (&desk);
  recover (&desk);
  destroy_window (desk.window);
  g_clear_object (&application);
  gw_recovery_end ();
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
  g_free (desk.start);
  place_clear (&desk.place);
}

int
main (int   argc,
      char *argv[])
{
  static const Variant variants[] = {
    { "light", GTK_TEXT_DIR_LTR, FALSE },
    { "dark", GTK_TEXT_DIR_LTR, TRUE },
    { "light-right-to-left", GTK_TEXT_DIR_RTL, FALSE },
    { "dark-right-to-left", GTK_TEXT_DIR_RTL, TRUE },
  };

  own_path = argv[0];
  if (argc == 3 && g_str_equal (argv[1], WORK))
    {
      gtk_init ();
      return work (argv[2]);
    }

  gtk_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (variants); i++)
    {
      g_autofree char *path = g_strconcat ("/desk/variants/", variants[i].name, NULL);

      g_test_add_data_func (path, &variants[i], test_variant);
    }

  return g_test_run ();
}
