/* test-desk-form.c - the right drawer as a person uses it: typing, choosing, taking back
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <gtk/gtk.h>
#include <math.h>

#include "desk/gw-chooser.h"
#include "desk/gw-form-field.h"
#include "desk/gw-form.h"
#include "desk-wait.h"
#include "study/gw-edit.h"

#define CHORD        "surfaces/wing/stations/2/chord_mm"
#define PLACE        "equipment/battery/x_mm"
#define SHEET        "builds/1/folded_sheet/material"
#define BATTERY_MASS "equipment/battery/mass_g"

typedef struct
{
  GtkWidget  *window, *form;
  GwDocument *document;
} Desk;

static void
desk_init (Desk       *desk,
           GwStudy    *study,
           const char *selection)
{
  desk->document = gw_document_new_study (study);
  wait_until (!gw_document_is_busy (desk->document));
  desk->window = gtk_window_new ();
  desk->form = gw_form_new ();
  gtk_window_set_default_size (GTK_WINDOW (desk->window), 300, 700);
  gtk_window_set_child (GTK_WINDOW (desk->window), desk->form);
  gw_form_set_document (GW_FORM (desk->form), desk->document);
  gw_document_set_selection (desk->document, selection);
  gtk_window_present (GTK_WINDOW (desk->window));
  gtk_test_widget_wait_for_draw (desk->window);
}

static void
desk_init_sample (Desk       *desk,
                  const char *selection)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, &error);

  g_assert_no_error (error);
  desk_init (desk, study, selection);
}

/* Window, form and document must be gone, and with them all that could still touch them. */
static void
desk_clear (Desk *desk)
{
  g_object_add_weak_pointer (G_OBJECT (desk->window), (gpointer *) &desk->window);
  g_object_add_weak_pointer (G_OBJECT (desk->form), (gpointer *) &desk->form);
  gtk_window_destroy (GTK_WINDOW (desk->window));
  wait_until (desk->window == NULL && desk->form == NULL);
  g_assert_finalize_object (desk->document);
}

/* GTK 4.8 keeps a popover for ever that opens in the same turn in which one has closed. */
static void
close_popover (GtkWidget *popover)
{
  gtk_popover_popdown (GTK_POPOVER (popover));
  wait_for_ms (100);
}

typedef gboolean (*Wanted) (GtkWidget  *widget,
                            const char *what);

static GtkWidget *
find (GtkWidget  *widget,
      Wanted      is_wanted,
      const char *what)
{
  GtkWidget *found = NULL;

  if (is_wanted (widget, what))
    return widget;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, is_wanted, what);

  return found;
}

static gboolean
has_path (GtkWidget  *widget,
          const char *path)
{
  return GW_IS_FORM_FIELD (widget) &&
         g_str_equal (gw_form_field_get_path (GW_FORM_FIELD (widget)), path);
}

static gboolean
has_type (GtkWidget  *widget,
          const char *name)
{
  return g_type_is_a (G_OBJECT_TYPE (widget), g_type_from_name (name));
}

static gboolean
has_id (GtkWidget  *widget,
        const char *id)
{
  return g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), id) == 0;
}

static gboolean
has_word (GtkWidget  *widget,
          const char *label)
{
  return GTK_IS_BUTTON (widget) &&
         g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0;
}

static GtkWidget *
field_of (Desk       *desk,
          const char *path)
{
  GtkWidget *field = find (desk->form, has_path, path);

  if (field == NULL)
    g_error ("the form has no field “%s”", path);
  return field;
}

static GtkWidget *
entry_of (Desk       *desk,
          const char *path)
{
  return find (field_of (desk, path), has_type, "GtkEntry");
}

static const char *
text_of (Desk       *desk,
         const char *path)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry_of (desk, path)));
}

static void
type (Desk       *desk,
      const char *path,
      const char *text)
{
  gtk_widget_grab_focus (entry_of (desk, path));
  gtk_editable_set_text (GTK_EDITABLE (entry_of (desk, path)), text);
}

static void
enter (Desk       *desk,
       const char *path)
{
  g_signal_emit_by_name (entry_of (desk, path), "activate");
}

/* GTK 4 has no way to send a key; the controller that waits for it is asked. */
static gboolean
press (GtkWidget      *widget,
       guint           key,
       GdkModifierType state)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);
  gboolean is_handled = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !is_handled; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", key, 0u, state, &is_handled);
    }

  return is_handled;
}

static const char *
reason_of (Desk       *desk,
           const char *path)
{
  GtkWidget *reason = find (field_of (desk, path), has_id, "reason");

  return gtk_widget_get_visible (reason) ? gtk_label_get_text (GTK_LABEL (reason)) : NULL;
}

static const GwNumber *
number_in (GwStudy    *study,
           const char *path)
{
  const GwField *field = NULL;
  GwRecord      *record = gw_record_find (&study->record, path, &field);

  g_assert_nonnull (record);
  return gw_record_at (record, field);
}

static double
value_of (Desk       *desk,
          const char *path)
{
  return number_in (gw_document_get_study (desk->document), path)->value;
}

static const char *
undo_name (Desk *desk)
{
  return gw_history_undo_name (gw_document_get_history (desk->document));
}

static double
mass_of (GwEvaluation *evaluation,
         guint         option)
{
  return gw_evaluation_outcome (evaluation, option)->results.value[GW_RESULT_MASS];
}

static gboolean
tries (Desk *desk)
{
  return gw_document_get_former (desk->document) != NULL;
}

static void
test_expression (void)
{
  static const struct
  {
    const char *text;
    double      value;
  } cases[] = { { "245/2", 122.5 }, { "9 in", 228.6 }, { "150,5", 150.5 }, { "0.2 m + 5", 205 } };
  Desk desk;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_assert_cmpstr (text_of (&desk, CHORD), ==, "200");
      type (&desk, CHORD, cases[i].text);
      g_assert_true (tries (&desk));
      g_assert_cmpfloat (value_of (&desk, CHORD), ==, 200.0);
      g_assert_cmpstr (text_of (&desk, CHORD), ==, cases[i].text);

      enter (&desk, CHORD);
      g_assert_false (tries (&desk));
      g_assert_cmpfloat_with_epsilon (value_of (&desk, CHORD), cases[i].value, 1e-9); /* mm */
      g_assert_cmpstr (undo_name (&desk), ==, "Change Chord of Station");
      gw_document_undo (desk.document);
    }
  g_assert_cmpstr (text_of (&desk, CHORD), ==, "200");
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

static void
test_bad_number (void)
{
  static const char *const bad[] = { "abc", "", "1/0", "6000", "3 kg", "1.2.3" };
  Desk                     desk;
  GwStudy                 *study;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  study = gw_document_get_study (desk.document);
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      type (&desk, CHORD, "210");
      g_assert_true (tries (&desk));
      type (&desk, CHORD, bad[i]);
      g_assert_false (tries (&desk));
      g_assert_nonnull (reason_of (&desk, CHORD));
      gtk_test_accessible_assert_state (entry_of (&desk, CHORD), GTK_ACCESSIBLE_STATE_INVALID,
                                        GTK_ACCESSIBLE_INVALID_TRUE);
      enter (&desk, CHORD);
      g_assert_cmpstr (text_of (&desk, CHORD), ==, bad[i]);
      g_assert_true (gw_document_get_study (desk.document) == study);

      g_assert_true (press (entry_of (&desk, CHORD), GDK_KEY_Escape, 0));
      g_assert_null (reason_of (&desk, CHORD));
      g_assert_cmpstr (text_of (&desk, CHORD), ==, "200");
      gtk_test_accessible_assert_state (entry_of (&desk, CHORD), GTK_ACCESSIBLE_STATE_INVALID,
                                        GTK_ACCESSIBLE_INVALID_FALSE);
    }
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

/* In bounds, but the study as a whole will not have it: the bay ends before it begins. */
static void
test_refused (void)
{
  Desk desk;

  desk_init_sample (&desk, "equipment/battery");
  type (&desk, "equipment/battery/bay_to_mm", "-5");
  g_assert_false (tries (&desk));
  g_assert_nonnull (reason_of (&desk, "equipment/battery/bay_to_mm"));
  g_assert_cmpfloat (value_of (&desk, "equipment/battery/bay_to_mm"), ==, 160.0);
  desk_clear (&desk);
}

static void
test_units (void)
{
  Desk    desk;
  GwUnits units = *gw_units_standard ();

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  gw_form_set_units (GW_FORM (desk.form), &units);
  g_assert_cmpstr (text_of (&desk, CHORD), ==, "7.874"); /* 200 / 25.4, to a thousandth */
  enter (&desk, CHORD);
  g_assert_cmpfloat (value_of (&desk, CHORD), ==, 200.0); /* what is not typed is not rounded */

  type (&desk, CHORD, "8");
  enter (&desk, CHORD);
  g_assert_cmpfloat_with_epsilon (value_of (&desk, CHORD), 203.2, 1e-9); /* mm */
  type (&desk, CHORD, "0.01");
  g_assert_nonnull (strstr (reason_of (&desk, CHORD), "from 0.079 to 196.85\302\240in"));
  desk_clear (&desk);
}

static void
test_steps (void)
{
  Desk desk;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  g_assert_true (press (entry_of (&desk, CHORD), GDK_KEY_Up, 0));
  g_assert_true (press (entry_of (&desk, CHORD), GDK_KEY_Up, GDK_SHIFT_MASK));
  g_assert_true (press (entry_of (&desk, CHORD), GDK_KEY_Down, 0));
  g_assert_cmpstr (text_of (&desk, CHORD), ==, "210");
  g_assert_true (tries (&desk));
  g_assert_cmpfloat (value_of (&desk, CHORD), ==, 200.0);
  enter (&desk, CHORD);
  g_assert_cmpfloat (value_of (&desk, CHORD), ==, 210.0);
  gw_document_undo (desk.document); /* one step for all */
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

/* Leaving the field takes what stands in it, going elsewhere in the study as well. */
static void
test_leaving (void)
{
  Desk desk;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  type (&desk, CHORD, "190");
  gtk_widget_grab_focus (entry_of (&desk, "surfaces/wing/stations/2/y_mm"));
  wait_until (!tries (&desk));
  g_assert_cmpfloat (value_of (&desk, CHORD), ==, 190.0);

  type (&desk, CHORD, "180");
  gw_document_set_selection (desk.document, "equipment/battery");
  g_assert_false (tries (&desk));
  g_assert_cmpfloat (value_of (&desk, CHORD), ==, 180.0);
  g_assert_nonnull (find (desk.form, has_path, PLACE));
  g_assert_null (find (desk.form, has_path, CHORD));
  desk_clear (&desk);
}

/* A drag elsewhere goes on while somebody types: neither text nor widget is touched. */
static void
test_typing_is_left_alone (void)
{
  Desk       desk;
  GtkWidget *entry;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  entry = entry_of (&desk, CHORD);
  type (&desk, CHORD, "2");
  g_signal_emit_by_name (desk.document, "changed");
  type (&desk, CHORD, "20x");
  g_signal_emit_by_name (desk.document, "changed");
  g_assert_true (entry_of (&desk, CHORD) == entry);
  g_assert_cmpstr (text_of (&desk, CHORD), ==, "20x");

  /* An undo is for the whole study, and overtakes it. */
  type (&desk, CHORD, "150");
  enter (&desk, CHORD);
  type (&desk, CHORD, "160");
  gw_document_undo (desk.document);
  g_assert_true (entry_of (&desk, CHORD) == entry);
  g_assert_cmpstr (text_of (&desk, CHORD), ==, "200");
  g_assert_false (tries (&desk));
  desk_clear (&desk);
}

/* What may be left out may be emptied, and only that. */
static void
test_left_out (void)
{
  Desk desk;

  desk_init_sample (&desk, "targets");
  g_assert_cmpstr (text_of (&desk, "targets/balance_mm"), ==, "");
  g_assert_cmpstr (text_of (&desk, "targets/mass_g"), ==, "900");
  type (&desk, "targets/mass_g", "");
  enter (&desk, "targets/mass_g");
  g_assert_true (isnan (value_of (&desk, "targets/mass_g")));
  gw_document_undo (desk.document);
  g_assert_cmpstr (text_of (&desk, "targets/mass_g"), ==, "900");
  desk_clear (&desk);
}

static void
test_keeps_spread (void)
{
  Desk            desk;
  const GwNumber *mass;

  desk_init_sample (&desk, "equipment/battery");
  type (&desk, BATTERY_MASS, "200");
  enter (&desk, BATTERY_MASS);
  mass = number_in (gw_document_get_study (desk.document), BATTERY_MASS);
  g_assert_cmpfloat (mass->value, ==, 200.0);
  g_assert_cmpfloat (mass->spread, ==, 6.0);
  g_assert_cmpint (mass->origin, ==, GW_ORIGIN_CATALOGUE);
  desk_clear (&desk);
}

static GtkWidget *
take_back_of (Desk       *desk,
              const char *path)
{
  return find (field_of (desk, path), has_word, "Take back");
}

/* Option 1 has the battery at 10 mm, the common airframe at 40. */
static void
test_take_back (void)
{
  Desk       desk;
  GtkWidget *button;

  desk_init_sample (&desk, "equipment/battery");
  g_assert_cmpstr (text_of (&desk, PLACE), ==, "40");
  g_assert_false (gtk_widget_get_mapped (take_back_of (&desk, PLACE)));

  gw_document_set_shown (desk.document, 1);
  g_assert_cmpstr (text_of (&desk, PLACE), ==, "10");
  button = take_back_of (&desk, PLACE);
  gtk_test_widget_wait_for_draw (desk.window);
  g_assert_true (gtk_widget_get_mapped (button));
  g_assert_cmpstr (gtk_widget_get_tooltip_text (button), ==, "common: 40\302\240mm");
  gtk_test_accessible_assert_property (button, GTK_ACCESSIBLE_PROPERTY_LABEL, "Take back Aft");

  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpstr (text_of (&desk, PLACE), ==, "40");
  g_assert_null (gw_edit_change_of (gw_document_get_study (desk.document), 1, PLACE));
  gw_document_undo (desk.document);
  g_assert_cmpstr (text_of (&desk, PLACE), ==, "10");
  desk_clear (&desk);
}

static void
test_only_here (void)
{
  Desk       desk;
  GtkWidget *here;

  desk_init_sample (&desk, "equipment/battery");
  here = find (desk.form, has_word, "Only Thin sheet");
  g_assert_nonnull (here);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (here), TRUE);
  type (&desk, "equipment/battery/z_mm", "12");
  enter (&desk, "equipment/battery/z_mm");
  g_assert_cmpfloat (value_of (&desk, "equipment/battery/z_mm"), ==, 0.0);
  g_assert_nonnull (
    gw_edit_change_of (gw_document_get_study (desk.document), 0, "equipment/battery/z_mm"));
  g_assert_cmpstr (text_of (&desk, "equipment/battery/z_mm"), ==, "12");

  gw_document_set_shown (desk.document, 1);
  g_assert_nonnull (find (desk.form, has_word, "Only thick"));
  g_assert_cmpstr (text_of (&desk, "equipment/battery/z_mm"), ==, "0");

  gw_document_undo (desk.document);
  gw_document_set_shown (desk.document, 0);
  g_assert_cmpstr (text_of (&desk, "equipment/battery/z_mm"), ==, "0");

  /* What lies in an option belongs to it anyway. */
  gw_document_set_selection (desk.document, "options/thick");
  g_assert_false (gtk_widget_get_visible (find (desk.form, has_id, "scope")));
  desk_clear (&desk);
}

static void
test_changes (void)
{
  Desk       desk;
  GtkWidget *field, *row;

  desk_init_sample (&desk, "options/thick");
  field = field_of (&desk, "options/thick/changes");
  row = GTK_WIDGET (
    gtk_list_box_get_row_at_index (GTK_LIST_BOX (find (field, has_type, "GtkListBox")), 1));
  gtk_test_accessible_assert_property (row, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Equipment battery \302\267 Aft");
  gtk_test_accessible_assert_property (row, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       "10\302\240mm, common 40\302\240mm");
  g_signal_emit_by_name (find (row, has_word, "Take back"), "clicked");
  g_assert_null (gw_edit_change_of (gw_document_get_study (desk.document), 1, PLACE));
  g_assert_nonnull (gw_edit_change_of (gw_document_get_study (desk.document), 1,
                                       "materials/sheet/areal_g_m2"));
  g_assert_cmpstr (undo_name (&desk), ==, "Take back Aft of Equipment");
  gw_document_undo (desk.document);
  g_assert_nonnull (gw_edit_change_of (gw_document_get_study (desk.document), 1, PLACE));
  desk_clear (&desk);
}

static GtkWidget *
open_sureness (Desk       *desk,
               const char *path)
{
  GtkWidget *sureness = find (field_of (desk, path), has_type, "GwSureness");
  GtkWidget *button = find (sureness, has_type, "GtkMenuButton");
  GtkWidget *popover;

  gtk_menu_button_popup (GTK_MENU_BUTTON (button));
  popover = GTK_WIDGET (gtk_menu_button_get_popover (GTK_MENU_BUTTON (button)));
  wait_until (gtk_widget_get_mapped (popover));
  return popover;
}

static void
set (GtkWidget  *popover,
     const char *id,
     const char *text)
{
  GtkWidget *widget = find (popover, has_id, id);

  if (text != NULL)
    gtk_editable_set_text (GTK_EDITABLE (widget), text);
  else
    gtk_check_button_set_active (GTK_CHECK_BUTTON (widget), TRUE);
}

static void
test_spread (void)
{
  Desk            desk;
  GtkWidget      *popover;
  const GwNumber *chord;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  popover = open_sureness (&desk, CHORD);
  set (popover, "spread", NULL);
  set (popover, "spread_entry", "2 %");
  set (popover, "weighed", NULL);
  set (popover, "source_entry", "own rule");
  g_assert_true (tries (&desk));
  gtk_popover_popdown (GTK_POPOVER (popover));
  wait_until (!tries (&desk));

  chord = number_in (gw_document_get_study (desk.document), CHORD);
  g_assert_cmpint (chord->form, ==, GW_FORM_SPREAD);
  g_assert_cmpfloat (chord->value, ==, 200.0);
  g_assert_cmpfloat_with_epsilon (chord->spread, 4.0, 1e-9); /* mm: 2 % of 200 */
  g_assert_cmpint (chord->origin, ==, GW_ORIGIN_WEIGHED);
  g_assert_cmpstr (chord->source, ==, "own rule");

  gw_document_undo (desk.document);
  chord = number_in (gw_document_get_study (desk.document), CHORD);
  g_assert_cmpint (chord->form, ==, GW_FORM_PLAIN);
  desk_clear (&desk);
}

static void
test_range (void)
{
  Desk            desk;
  GtkWidget      *popover;
  const GwNumber *chord;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  popover = open_sureness (&desk, CHORD);
  set (popover, "range", NULL);
  set (popover, "low_entry", "210"); /* above the value */
  g_assert_false (tries (&desk));
  g_assert_true (gtk_widget_get_visible (find (popover, has_id, "reason")));
  set (popover, "low_entry", "190");
  set (popover, "high_entry", "215");
  g_assert_true (tries (&desk));
  g_assert_true (press (popover, GDK_KEY_Escape, 0));
  g_assert_false (tries (&desk));
  g_assert_null (undo_name (&desk));

  close_popover (popover);
  popover = open_sureness (&desk, CHORD);
  set (popover, "range", NULL);
  set (popover, "low_entry", "190");
  set (popover, "high_entry", "215");
  gtk_popover_popdown (GTK_POPOVER (popover));
  wait_until (!tries (&desk));
  chord = number_in (gw_document_get_study (desk.document), CHORD);
  g_assert_cmpint (chord->form, ==, GW_FORM_RANGE);
  g_assert_cmpfloat (chord->low, ==, 190.0);
  g_assert_cmpfloat (chord->high, ==, 215.0);
  desk_clear (&desk);
}

static GtkWidget *
open_chooser (Desk       *desk,
              const char *path)
{
  GtkWidget *chooser = find (field_of (desk, path), has_type, "GwChooser");
  GtkWidget *popover = find (chooser, has_id, "popover");

  gtk_menu_button_popup (GTK_MENU_BUTTON (find (chooser, has_id, "button")));
  wait_until (gtk_widget_get_mapped (popover));
  return popover;
}

static GtkListBox *
list_of (GtkWidget *popover)
{
  return GTK_LIST_BOX (find (popover, has_id, "list"));
}

/* The arrow keys move the selection of the list. */
static void
go_to_row (GtkWidget *popover,
           int        i)
{
  gtk_list_box_select_row (list_of (popover), gtk_list_box_get_row_at_index (list_of (popover), i));
}

static void
test_preview (void)
{
  Desk       desk;
  GtkWidget *popover;
  GwStudy   *study;
  double     before;

  desk_init_sample (&desk, "builds/1");
  study = gw_document_get_study (desk.document);
  before = mass_of (gw_document_get_evaluation (desk.document), 0);
  popover = open_chooser (&desk, SHEET);
  g_assert_true (gtk_widget_get_focus_child (GTK_WIDGET (list_of (popover))) ==
                 GTK_WIDGET (gtk_list_box_get_selected_row (list_of (popover))));

  /* Own sheets first, then those of the catalogue. */
  go_to_row (popover, 3);
  wait_until (tries (&desk));
  g_assert_cmpfloat (fabs (mass_of (gw_document_get_evaluation (desk.document), 0) - before), >,
                     1e-3); /* kg: a board of twice the mass */
  g_assert_nonnull (strstr (
    gtk_label_get_text (GTK_LABEL (find (
      GTK_WIDGET (gtk_list_box_get_selected_row (list_of (popover))), has_id, "effect"))),
    "g"));

  /* Escape closes the popover. */
  gtk_popover_popdown (GTK_POPOVER (popover));
  wait_until (!tries (&desk));
  g_assert_true (gw_document_get_study (desk.document) == study);
  g_assert_cmpfloat (mass_of (gw_document_get_evaluation (desk.document), 0), ==, before);
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

static void
test_choose (void)
{
  Desk                desk;
  GtkWidget          *popover;
  const GwStudyBuild *build;

  desk_init_sample (&desk, "builds/1");
  popover = open_chooser (&desk, SHEET);
  go_to_row (popover, 1);
  g_signal_emit_by_name (list_of (popover), "row-activated",
                         gtk_list_box_get_selected_row (list_of (popover)));
  build = g_ptr_array_index (gw_document_get_study (desk.document)->builds, 0);
  g_assert_cmpstr (build->folded_sheet->material, ==, "foam-board-light");
  g_assert_cmpstr (undo_name (&desk), ==, "Change Sheet of Folded sheet");
  g_assert_false (tries (&desk));
  gw_document_undo (desk.document);
  build = g_ptr_array_index (gw_document_get_study (desk.document)->builds, 0);
  g_assert_cmpstr (build->folded_sheet->material, ==, "sheet");
  desk_clear (&desk);
}

/* An outline of points that are not there cannot be computed: why stands in the list. */
static void
test_preview_refused (void)
{
  Desk       desk;
  GtkWidget *popover, *note;

  desk_init_sample (&desk, "sections/flat");
  popover = open_chooser (&desk, "sections/flat/shape");
  note = find (popover, has_id, "note");
  go_to_row (popover, GW_SHAPE_POINTS);
  wait_until (gtk_widget_get_visible (note));
  g_assert_false (tries (&desk));
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (note)), !=, "");
  desk_clear (&desk);
}

static void
test_text_and_flag (void)
{
  Desk               desk;
  GtkWidget         *button;
  const GwStudyItem *item;

  desk_init_sample (&desk, "equipment/battery");
  type (&desk, "equipment/battery/name", "Pack");
  enter (&desk, "equipment/battery/name");
  item = g_ptr_array_index (gw_document_get_study (desk.document)->equipment, 0);
  g_assert_cmpstr (item->name, ==, "Pack");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (find (desk.form, has_id, "title"))), ==, "Pack");

  button = find (field_of (&desk, "equipment/battery/mirrored"), has_type, "GtkCheckButton");
  gtk_check_button_set_active (GTK_CHECK_BUTTON (button), TRUE);
  item = g_ptr_array_index (gw_document_get_study (desk.document)->equipment, 0);
  g_assert_true (item->mirrored);
  gw_document_undo (desk.document);
  g_assert_false (gtk_check_button_get_active (GTK_CHECK_BUTTON (button)));
  gw_document_undo (desk.document);
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

static guint
n_stations (Desk *desk)
{
  const GwStudySurface *wing =
    g_ptr_array_index (gw_document_get_study (desk->document)->surfaces, 0);

  return wing->stations->len;
}

static void
ask (Desk       *desk,
     const char *path,
     int         row,
     const char *action)
{
  GtkWidget *list = find (field_of (desk, path), has_type, "GtkListBox");

  g_assert_true (gtk_widget_activate_action (
    GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), row)), action, NULL));
}

static void
test_stations (void)
{
  Desk desk;

  desk_init_sample (&desk, "surfaces/wing");
  g_signal_emit_by_name (find (field_of (&desk, "surfaces/wing/stations"), has_word, "Add"),
                         "clicked");
  g_assert_cmpuint (n_stations (&desk), ==, 3);
  g_assert_cmpstr (gw_document_get_selection (desk.document), ==, "surfaces/wing/stations/3");
  /* As far again as half of the last panel, 600 mm long. */
  g_assert_cmpstr (text_of (&desk, "surfaces/wing/stations/3/y_mm"), ==, "900");
  g_assert_cmpstr (undo_name (&desk), ==, "Add Station");

  g_signal_emit_by_name (find (desk.form, has_word, "Back to Lifting surface wing"), "clicked");
  g_assert_cmpstr (gw_document_get_selection (desk.document), ==, "surfaces/wing");
  ask (&desk, "surfaces/wing/stations", 2, "row.remove");
  g_assert_cmpuint (n_stations (&desk), ==, 2);
  gw_document_undo (desk.document);
  g_assert_cmpuint (n_stations (&desk), ==, 3);
  gw_document_undo (desk.document);
  g_assert_cmpuint (n_stations (&desk), ==, 2);

  /* Two are the least. */
  ask (&desk, "surfaces/wing/stations", 1, "row.remove");
  g_assert_cmpuint (n_stations (&desk), ==, 2);
  g_assert_nonnull (reason_of (&desk, "surfaces/wing/stations"));
  desk_clear (&desk);
}

static void
test_controls (void)
{
  Desk                  desk;
  const GwStudySurface *wing;
  const GwStudyControl *control;

  desk_init_sample (&desk, "surfaces/wing");
  for (guint i = 0; i < 2; i++)
    {
      g_signal_emit_by_name (find (field_of (&desk, "surfaces/wing/controls"), has_word, "Add"),
                             "clicked");
      gw_document_set_selection (desk.document, "surfaces/wing");
    }
  wing = g_ptr_array_index (gw_document_get_study (desk.document)->surfaces, 0);
  g_assert_cmpuint (wing->controls->len, ==, 2);
  ask (&desk, "surfaces/wing/controls", 1, "row.up");
  wing = g_ptr_array_index (gw_document_get_study (desk.document)->surfaces, 0);
  control = g_ptr_array_index (wing->controls, 0);
  g_assert_cmpstr (control->id, ==, "aileron-2");
  for (guint i = 0; i < 3; i++)
    gw_document_undo (desk.document);
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

static gboolean
is_named (GtkWidget *widget)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (widget);

  /* The text within an entry is read as the entry. */
  if (GTK_IS_TEXT (widget))
    return is_named (gtk_widget_get_parent (widget));

  return gtk_test_accessible_has_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL) ||
         gtk_test_accessible_has_relation (accessible, GTK_ACCESSIBLE_RELATION_LABELLED_BY) ||
         (GTK_IS_BUTTON (widget) && gtk_button_get_label (GTK_BUTTON (widget)) != NULL) ||
         (GTK_IS_CHECK_BUTTON (widget) &&
          gtk_check_button_get_label (GTK_CHECK_BUTTON (widget)) != NULL);
}

/* Of all that can be seen; menus of words name their rows by those words. */
static void
expect_names (GtkWidget  *widget,
              const char *selection,
              guint      *n)
{
  if (GTK_IS_POPOVER_MENU (widget))
    return;
  if (!gtk_widget_get_visible (widget) && !GTK_IS_POPOVER (widget))
    return;

  if (gtk_widget_get_focusable (widget) && !GTK_IS_POPOVER (widget))
    {
      if (!is_named (widget))
        g_error ("a %s has no name in the form of “%s”", G_OBJECT_TYPE_NAME (widget), selection);
      (*n)++;
    }

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    expect_names (child, selection, n);
}

typedef struct
{
  Desk       *desk;
  GHashTable *types;
} Visit;

static void
visit_record (Visit          *visit,
              const GwRecord *record,
              const char     *path)
{
  guint n = 0;

  gw_document_set_selection (visit->desk->document, path);
  g_assert_cmpstr (gw_document_get_selection (visit->desk->document), ==, path);
  expect_names (visit->desk->form, path, &n);
  g_assert_cmpuint (n, >, 1);
  g_hash_table_add (visit->types, (gpointer) record->type);
}

static void
visit_field (const char    *path,
             GwRecord      *record,
             const GwField *field,
             gpointer       data)
{
  if (field->kind == GW_FIELD_PART)
    visit_record (data, *(GwRecord **) gw_record_at (record, field), path);
  else if (field->kind == GW_FIELD_LIST)
    {
      const GPtrArray *list = *(GPtrArray **) gw_record_at (record, field);

      for (guint i = 0; i < list->len; i++)
        {
          g_autofree char *step = gw_record_step ("", "", g_ptr_array_index (list, i), i);
          g_autofree char *here = g_strconcat (path, step, NULL);

          visit_record (data, g_ptr_array_index (list, i), here);
        }
    }
}

static void
test_names (void)
{
  g_autoptr (GHashTable) types = g_hash_table_new (NULL, NULL);
  g_autofree char *file =
    g_test_build_filename (G_TEST_DIST, "..", "data", "demo", "reed-bed.gramwright", NULL);
  g_autoptr (GFile) demo = g_file_new_for_path (file);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_load (demo, NULL, &error);
  Desk  desk;
  Visit visit = { &desk, types };

  g_assert_no_error (error);
  desk_init (&desk, study, "");
  visit_record (&visit, &study->record, "");
  g_assert_cmpstr (
    gtk_label_get_text (GTK_LABEL (find (field_of (&desk, "baseline"), has_id, "value"))), ==,
    "Folded foam board");
  gw_record_each (&study->record, "", visit_field, &visit);
  /* Root, day, targets, option, build with its three, spar, surface, station, control, body,
   * cross-section, leg, power unit, equipment, material. */
  g_assert_cmpuint (g_hash_table_size (types), ==, 18);
  desk_clear (&desk);
}

static void
test_popover_names (void)
{
  Desk       desk;
  GtkWidget *popover;
  guint      n = 0;

  desk_init_sample (&desk, "builds/1");
  popover = open_sureness (&desk, "builds/1/joint_g_m");
  expect_names (popover, "sureness", &n);
  close_popover (popover);
  expect_names (open_chooser (&desk, SHEET), "chooser", &n);
  g_assert_cmpuint (n, >, 40); /* eight radios, four entries, a row for each material */
  desk_clear (&desk);
}

/* The study itself: its words, not its lists; no document: nothing. */
static void
test_study (void)
{
  Desk desk;

  desk_init_sample (&desk, "");
  g_assert_cmpstr (text_of (&desk, "name"), ==, "Plank");
  g_assert_nonnull (find (desk.form, has_path, "movable"));
  g_assert_null (find (desk.form, has_path, "equipment"));
  g_assert_null (find (desk.form, has_path, "format"));
  gw_form_set_document (GW_FORM (desk.form), NULL);
  g_assert_null (find (desk.form, has_path, "name"));
  g_assert_false (gtk_widget_get_visible (find (desk.form, has_id, "page")));
  desk_clear (&desk);
}

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/desk/form/number/expression", test_expression);
  g_test_add_func ("/desk/form/number/bad", test_bad_number);
  g_test_add_func ("/desk/form/number/refused", test_refused);
  g_test_add_func ("/desk/form/number/units", test_units);
  g_test_add_func ("/desk/form/number/steps", test_steps);
  g_test_add_func ("/desk/form/number/leaving", test_leaving);
  g_test_add_func ("/desk/form/number/typing-is-left-alone", test_typing_is_left_alone);
  g_test_add_func ("/desk/form/number/left-out", test_left_out);
  g_test_add_func ("/desk/form/number/keeps-spread", test_keeps_spread);
  g_test_add_func ("/desk/form/option/take-back", test_take_back);
  g_test_add_func ("/desk/form/option/only-here", test_only_here);
  g_test_add_func ("/desk/form/option/changes", test_changes);
  g_test_add_func ("/desk/form/sureness/spread", test_spread);
  g_test_add_func ("/desk/form/sureness/range", test_range);
  g_test_add_func ("/desk/form/chooser/preview", test_preview);
  g_test_add_func ("/desk/form/chooser/choose", test_choose);
  g_test_add_func ("/desk/form/chooser/refused", test_preview_refused);
  g_test_add_func ("/desk/form/text-and-flag", test_text_and_flag);
  g_test_add_func ("/desk/form/list/stations", test_stations);
  g_test_add_func ("/desk/form/list/controls", test_controls);
  g_test_add_func ("/desk/form/names/records", test_names);
  g_test_add_func ("/desk/form/names/popovers", test_popover_names);
  g_test_add_func ("/desk/form/study", test_study);

  return g_test_run ();
}
