/* test-desk-form.c - numbers, words and whose they are, as a person types them and takes them back
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "desk-form.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"

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

/* Types it, and gives the number that the study has then. */
static const GwNumber *
retype (Desk       *desk,
        const char *path,
        const char *text)
{
  type (desk, path, text);
  enter (desk, path);
  g_assert_false (tries (desk));
  return number_in (gw_document_get_study (desk->document), path);
}

/* What is typed is no longer what was read off a scale, or out of a catalogue. */
static void
test_origin (void)
{
  Desk            desk;
  const GwNumber *number;

  desk_init_sample (&desk, "equipment/battery");
  number = retype (&desk, BATTERY_MASS, "200"); /* was 180, spread 6, catalogue */
  g_assert_cmpfloat (number->value, ==, 200.0);
  g_assert_cmpint (number->origin, ==, GW_ORIGIN_GUESSED);
  g_assert_cmpfloat (number->spread, ==, 20.0); /* a guess: a tenth */
  g_assert_cmpstr (remark_of (&desk, BATTERY_MASS), ==, "guessed");

  /* Of a guess the spread is kept. */
  number = retype (&desk, BATTERY_MASS, "150");
  g_assert_cmpint (number->origin, ==, GW_ORIGIN_GUESSED);
  g_assert_cmpfloat (number->spread, ==, 20.0);

  /* The same number typed again is the same number. */
  gw_document_undo (desk.document);
  gw_document_undo (desk.document);
  number = retype (&desk, BATTERY_MASS, "90 * 2");
  g_assert_cmpint (number->origin, ==, GW_ORIGIN_CATALOGUE);
  g_assert_cmpfloat (number->spread, ==, 6.0);
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

/* A length that was measured is decided anew, and where it was measured is of no account. */
static void
test_origin_of_size (void)
{
  Desk            desk;
  GtkWidget      *popover;
  const GwNumber *chord;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  popover = open_sureness (&desk, CHORD);
  set (popover, "spread", NULL);
  set (popover, "spread_entry", "0.5");
  set (popover, "weighed", NULL);
  set (popover, "source_entry", "own rule");
  gtk_popover_popdown (GTK_POPOVER (popover));
  wait_until (!tries (&desk));
  g_assert_cmpstr (remark_of (&desk, CHORD), ==, "weighed");

  chord = retype (&desk, CHORD, "210");
  g_assert_cmpint (chord->origin, ==, GW_ORIGIN_GIVEN);
  g_assert_null (chord->source);
  g_assert_cmpfloat (chord->spread, ==, 0.5); /* as well as it can be made */
  g_assert_null (remark_of (&desk, CHORD));
  desk_clear (&desk);
}

/* A real minus sign is shown; either may be typed. */
static void
test_minus (void)
{
  Desk desk;

  desk_init_sample (&desk, "surfaces/wing/stations/2");
  for (guint i = 0; i < 2; i++)
    {
      retype (&desk, TWIST, i == 0 ? "-1.5" : "\342\210\2221.5");
      g_assert_cmpfloat (value_of (&desk, TWIST), ==, -1.5);
      g_assert_cmpstr (text_of (&desk, TWIST), ==, "\342\210\2221.5");
      gw_document_undo (desk.document);
    }
  desk_clear (&desk);
}

static const char *
except_of (Desk *desk)
{
  GtkWidget *label = find (desk->form, has_id, "except");

  return gtk_widget_get_visible (label) ? gtk_label_get_text (GTK_LABEL (label)) : NULL;
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
  g_assert_null (except_of (&desk));

  gw_document_set_shown (desk.document, 1);
  g_assert_cmpstr (text_of (&desk, PLACE), ==, "10");
  button = take_back_of (&desk, PLACE);
  gtk_test_widget_wait_for_draw (desk.window);
  g_assert_true (gtk_widget_get_mapped (button));
  g_assert_cmpstr (whose_of (&desk, PLACE), ==,
                   "Own value here; common 40\302\240mm. "
                   "A change is for this option alone.");
  gtk_test_accessible_assert_property (button, GTK_ACCESSIBLE_PROPERTY_LABEL, "Take back Aft");
  g_assert_cmpstr (except_of (&desk), ==, "Except what thick has of its own");
  gtk_toggle_button_set_active (
    GTK_TOGGLE_BUTTON (find (desk.form, has_word, "Only thick")), TRUE);
  g_assert_null (except_of (&desk));
  gtk_toggle_button_set_active (
    GTK_TOGGLE_BUTTON (find (desk.form, has_word, "All options")), TRUE);

  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpstr (text_of (&desk, PLACE), ==, "40");
  g_assert_null (whose_of (&desk, PLACE));
  g_assert_null (except_of (&desk));
  g_assert_null (gw_edit_change_of (gw_document_get_study (desk.document), 1, PLACE));
  gw_document_undo (desk.document);
  g_assert_cmpstr (text_of (&desk, PLACE), ==, "10");
  desk_clear (&desk);
}

/* The note follows what is typed, the scope, and the common value when that comes to be the same:
 * then it says that the change changes nothing. */
static void
test_whose (void)
{
  Desk       desk;
  GtkWidget *here;

  desk_init_sample (&desk, "equipment/battery");
  gw_document_set_shown (desk.document, 1);
  here = find (desk.form, has_word, "Only thick");
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (here), TRUE);
  g_assert_cmpstr (whose_of (&desk, PLACE), ==,
                   "Own value here; common 40\302\240mm");
  type (&desk, PLACE, "15");
  g_assert_cmpstr (whose_of (&desk, PLACE), ==,
                   "Own value here; common 40\302\240mm");
  retype (&desk, PLACE, "40");
  g_assert_cmpstr (whose_of (&desk, PLACE), ==, "Same as common: 40\302\240mm");
  gtk_test_accessible_assert_property (
    entry_of (&desk, PLACE), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
    "Same as common: 40\302\240mm. Its middle, aft of the datum; from "
    "\342\210\22220000 to 20000\302\240mm");
  g_signal_emit_by_name (take_back_of (&desk, PLACE), "clicked");
  g_assert_null (whose_of (&desk, PLACE));

  /* For all options a value of its own is changed where it lies. */
  gw_document_undo (desk.document);
  gw_document_undo (desk.document);
  gtk_toggle_button_set_active (
    GTK_TOGGLE_BUTTON (find (desk.form, has_word, "All options")), TRUE);
  retype (&desk, PLACE, "20");
  g_assert_cmpstr (whose_of (&desk, PLACE), ==,
                   "Own value here; common 40\302\240mm. "
                   "A change is for this option alone.");
  g_assert_cmpfloat (value_of (&desk, PLACE), ==, 40.0);
  desk_clear (&desk);
}

/* An option may differ in how sure it is, and in nothing else. */
static void
test_whose_spread (void)
{
  Desk       desk;
  GtkWidget *popover;

  desk_init_sample (&desk, "equipment/battery");
  gw_document_set_only_here (desk.document, TRUE);
  popover = open_sureness (&desk, BATTERY_MASS);
  set (popover, "exact", NULL);
  set (popover, "weighed", NULL);
  gtk_popover_popdown (GTK_POPOVER (popover));
  wait_until (!tries (&desk));
  g_assert_cmpstr (whose_of (&desk, BATTERY_MASS), ==,
                   "Own value here: 180\302\240g (exact, weighed); common 180\302\240g "
                   "(\302\2613.3\302\240%, catalogue)");
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
type_common_place (Desk  *desk,
                   double place)
{
  g_autoptr (JsonNode) node = json_node_init_double (json_node_alloc (), place);
  g_autoptr (GwStudy) study =
    gw_study_edit (gw_document_get_study (desk->document), PLACE, node, NULL);

  g_assert_true (gw_document_edit (desk->document, "Move", study, NULL, NULL));
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
  type_common_place (&desk, 10.0);
  row = GTK_WIDGET (
    gtk_list_box_get_row_at_index (GTK_LIST_BOX (find (field, has_type, "GtkListBox")), 1));
  gtk_test_accessible_assert_property (row, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       "10\302\240mm, same as common");
  g_signal_emit_by_name (find (row, has_word, "Take back"), "clicked");
  g_assert_null (gw_edit_change_of (gw_document_get_study (desk.document), 1, PLACE));
  g_assert_nonnull (gw_edit_change_of (gw_document_get_study (desk.document), 1,
                                       "materials/sheet/areal_g_m2"));
  g_assert_cmpstr (undo_name (&desk), ==, "Take back Aft of Equipment");
  gw_document_undo (desk.document);
  g_assert_nonnull (gw_edit_change_of (gw_document_get_study (desk.document), 1, PLACE));
  desk_clear (&desk);
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

/* Where one thing was left tells nothing of the next. */
static void
test_begins_at_heading (void)
{
  Desk           desk;
  GtkAdjustment *place;

  desk_init_sample (&desk, "surfaces/wing");
  gtk_window_set_default_size (GTK_WINDOW (desk.window), 300, 320);
  place = gtk_scrolled_window_get_vadjustment (
    GTK_SCROLLED_WINDOW (find (desk.form, has_id, "scroller")));
  wait_until (gtk_adjustment_get_upper (place) - gtk_adjustment_get_page_size (place) > 60.0);
  gtk_adjustment_set_value (place, 60.0);
  g_assert_cmpfloat (gtk_adjustment_get_value (place), ==, 60.0);
  gw_document_set_selection (desk.document, "equipment/battery");
  gtk_test_widget_wait_for_draw (desk.window);
  g_assert_cmpfloat (gtk_adjustment_get_value (place), ==, 0.0);

  /* What changes where one is leaves one there. */
  gw_document_set_selection (desk.document, "surfaces/wing");
  gtk_test_widget_wait_for_draw (desk.window);
  gtk_adjustment_set_value (place, 40.0);
  gw_document_set_shown (desk.document, 1);
  gtk_test_widget_wait_for_draw (desk.window);
  g_assert_cmpfloat (gtk_adjustment_get_value (place), ==, 40.0);
  desk_clear (&desk);
}

static void
rename_to (Desk       *desk,
           const char *name)
{
  const char      *path = gw_document_get_selection (desk->document);
  g_autofree char *field = g_strdup_printf ("%s/name", path);
  g_autoptr (JsonNode) node = json_node_alloc ();
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GError) error = NULL;

  json_node_init_string (node, name);
  study = gw_edit_set (gw_document_get_study (desk->document), 0, FALSE, field, node, &error);
  g_assert_no_error (error);
  gw_document_edit (desk->document, "Name", study, NULL, &error);
  g_assert_no_error (error);
}

static const char *
kind_of (Desk *desk)
{
  return gtk_label_get_text (GTK_LABEL (find (desk->form, has_id, "kind")));
}

/* Kind and id stand below the title, but for what the title says already. */
static void
test_heading_says_it_once (void)
{
  g_autofree char *like_kind =
    sample_replace (SAMPLE_STUDY, "\"id\": \"battery\"", "\"id\": \"equipment\"");
  g_autoptr (GString) text = g_string_new (like_kind);
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GError) error = NULL;
  Desk desk;

  desk_init_sample (&desk, "equipment/battery");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (find (desk.form, has_id, "title"))), ==,
                   "Equipment battery");
  g_assert_false (gtk_widget_get_visible (find (desk.form, has_id, "kind")));
  rename_to (&desk, "Pack");
  g_assert_cmpstr (kind_of (&desk), ==, "Equipment · battery");
  rename_to (&desk, "Battery");
  g_assert_cmpstr (kind_of (&desk), ==, "Equipment");
  desk_clear (&desk);

  g_string_replace (text, "equipment/battery", "equipment/equipment", 0);
  g_string_replace (text, "\"movable\": \"battery\"", "\"movable\": \"equipment\"", 0);
  study = gw_study_parse (text->str, text->len, NULL, &error);
  g_assert_no_error (error);
  desk_init (&desk, study, "equipment/equipment");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (find (desk.form, has_id, "title"))), ==,
                   "Equipment");
  g_assert_false (gtk_widget_get_visible (find (desk.form, has_id, "kind")));
  rename_to (&desk, "Receiver");
  g_assert_cmpstr (kind_of (&desk), ==, "Equipment");
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
  g_test_add_func ("/desk/form/number/origin", test_origin);
  g_test_add_func ("/desk/form/number/origin-of-size", test_origin_of_size);
  g_test_add_func ("/desk/form/number/minus", test_minus);
  g_test_add_func ("/desk/form/option/take-back", test_take_back);
  g_test_add_func ("/desk/form/option/whose", test_whose);
  g_test_add_func ("/desk/form/option/whose-spread", test_whose_spread);
  g_test_add_func ("/desk/form/option/only-here", test_only_here);
  g_test_add_func ("/desk/form/option/changes", test_changes);
  g_test_add_func ("/desk/form/sureness/spread", test_spread);
  g_test_add_func ("/desk/form/sureness/range", test_range);
  g_test_add_func ("/desk/form/text-and-flag", test_text_and_flag);
  g_test_add_func ("/desk/form/study", test_study);
  g_test_add_func ("/desk/form/begins-at-heading", test_begins_at_heading);
  g_test_add_func ("/desk/form/heading-says-it-once", test_heading_says_it_once);

  return g_test_run ();
}
