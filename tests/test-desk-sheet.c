/* test-desk-sheet.c - hands on the sheet: drag, nudge, type, zoom
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "desk-pointer.h"
#include "desk/gw-grip.h"
#include "desk/gw-sheet-view.h"
#include "study/gw-edit.h"

#define DEMO "data/demo/reed-bed.gramwright"

typedef struct
{
  GtkWidget   *window;
  GwSheetView *sheet;
  GwDocument  *document;
  char        *said, *text; /* the last thing it said; the study as it was */
  gint         asked;       /* the last result asked about, -1: none */
} Desk;

static void
says_cb (GwSheetView *sheet,
         const char  *text,
         Desk        *desk)
{
  g_free (desk->said);
  desk->said = g_strdup (text);
}

static void
why_cb (GwSheetView *sheet,
        guint        option,
        guint        result,
        Desk        *desk)
{
  desk->asked = (gint) result;
}

static void
set_up (Desk         *desk,
        gconstpointer data)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", DEMO, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  desk->asked = -1;
  desk->document = gw_document_new (file);
  wait_until (!gw_document_is_busy (desk->document));
  desk->text = gw_study_text (gw_document_get_study (desk->document));
  desk->sheet = g_object_new (GW_TYPE_SHEET_VIEW, NULL);
  desk->window = gtk_window_new ();
  gtk_window_set_decorated (GTK_WINDOW (desk->window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (desk->window), 1000, 740);
  gtk_window_set_child (GTK_WINDOW (desk->window), GTK_WIDGET (desk->sheet));
  gw_sheet_view_set_document (desk->sheet, desk->document);
  g_signal_connect (desk->sheet, "says", G_CALLBACK (says_cb), desk);
  g_signal_connect (desk->sheet, "why", G_CALLBACK (why_cb), desk);
  gtk_window_present (GTK_WINDOW (desk->window));
  wait_until (gw_sheet_view_get_drawing (desk->sheet) != NULL);
  wait_for_ms (200);
}

static void
tear_down (Desk         *desk,
           gconstpointer data)
{
  gtk_window_destroy (GTK_WINDOW (desk->window));
  wait_until (!gw_document_is_busy (desk->document));
  g_assert_finalize_object (desk->document);
  g_free (desk->said);
  g_free (desk->text);
}

static const GwOutcome *
outcome_of (Desk *desk)
{
  return gw_evaluation_outcome (gw_document_get_evaluation (desk->document),
                                gw_document_get_shown (desk->document));
}

static GwRecord *
record_of (Desk       *desk,
           const char *path)
{
  return gw_edit_record (outcome_of (desk)->assembly->study, path);
}

static const GwStudyItem *
battery_of (Desk *desk)
{
  g_autofree char *path =
    g_strdup_printf ("equipment/%s", gw_document_get_study (desk->document)->movable);

  return (const GwStudyItem *) record_of (desk, path);
}

/* Where a place of the aircraft is on the screen. */
static void
find_place (Desk  *desk,
            GwView view,
            double u,
            double v,
            int    at[2])
{
  const GwViewFrame *frame;
  double             x, y;

  wait_until (gw_sheet_view_get_drawing (desk->sheet) != NULL);
  frame = gw_drawing_view (gw_sheet_view_get_drawing (desk->sheet), view);
  g_assert_cmpfloat (frame->scale, >, 0.0);
  gw_sheet_view_to_widget (desk->sheet, frame->origin[0] + u * frame->scale,
                           frame->origin[1] + v * frame->scale, &x, &y);
  place_on_screen (GTK_WIDGET (desk->sheet), x, y, &at[0], &at[1]);
}

static double
millimetres_per_pixel (Desk  *desk,
                       GwView view)
{
  int from[2], to[2];

  find_place (desk, view, 0.0, 0.0, from);
  find_place (desk, view, 1.0, 0.0, to);
  return 1000.0 / abs (to[0] - from[0]);
}

static void
undo_all (Desk *desk)
{
  g_autofree char *text = NULL;

  while (gw_history_undo_name (gw_document_get_history (desk->document)) != NULL)
    gw_document_undo (desk->document);
  text = gw_study_text (gw_document_get_study (desk->document));
  g_assert_cmpstr (text, ==, desk->text);
}

static void
test_drag_item (Desk         *desk,
                gconstpointer data)
{
  const GwView     view = GPOINTER_TO_INT (data) ? GW_VIEW_SIDE : GW_VIEW_TOP;
  const double     before = battery_of (desk)->x_mm.value;
  const double     pixel = millimetres_per_pixel (desk, view);
  const double     balance = outcome_of (desk)->results.value[GW_RESULT_BALANCE_X];
  g_autofree char *name = gw_edit_record_name (&battery_of (desk)->record);
  g_autofree char *step = g_strdup_printf ("Move %s", name);
  int              at[2];

  if (view == GW_VIEW_TOP)
    find_place (desk, view, battery_of (desk)->y_mm.value * 1e-3, before * 1e-3, at);
  else
    find_place (desk, view, before * 1e-3, -battery_of (desk)->z_mm.value * 1e-3, at);
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative %s sleep 0.05 "
         "mousemove_relative %s sleep 0.1",
         at[0], at[1], view == GW_VIEW_TOP ? "0 5" : "5 0", view == GW_VIEW_TOP ? "0 5" : "5 0");

  /* Held: all is seen, nothing is a step yet. */
  g_assert_nonnull (gw_document_get_former (desk->document));
  g_assert_cmpfloat (fabs (battery_of (desk)->x_mm.value - before - 10.0 * pixel), <, 1.5 + pixel);
  g_assert_cmpfloat (outcome_of (desk)->results.value[GW_RESULT_BALANCE_X], >, balance);
  g_assert_null (gw_history_undo_name (gw_document_get_history (desk->document)));
  g_assert_nonnull (strstr (desk->said, name));

  point ("mouseup 1");
  g_assert_null (gw_document_get_former (desk->document));
  g_assert_cmpstr (gw_history_undo_name (gw_document_get_history (desk->document)), ==, step);
  g_assert_cmpfloat (battery_of (desk)->x_mm.value, ==, round (battery_of (desk)->x_mm.value));
  g_assert_true (g_str_has_prefix (gw_document_get_selection (desk->document), "equipment/"));
  undo_all (desk);
}

static void
test_drag_ends_at_bay (Desk         *desk,
                       gconstpointer data)
{
  const double end = battery_of (desk)->bay_to_mm.value;
  int          at[2];

  find_place (desk, GW_VIEW_TOP, 0.0, battery_of (desk)->x_mm.value * 1e-3, at);
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative 0 200 sleep 0.1 "
         "mousemove_relative 0 20 sleep 0.1 mouseup 1",
         at[0], at[1]);
  g_assert_cmpfloat (battery_of (desk)->x_mm.value, ==, end);
  undo_all (desk);
}

static void
test_key_leaves (Desk         *desk,
                 gconstpointer data)
{
  int at[2];

  find_place (desk, GW_VIEW_TOP, 0.0, battery_of (desk)->x_mm.value * 1e-3, at);
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative 0 8 sleep 0.1", at[0], at[1]);
  g_assert_nonnull (gw_document_get_former (desk->document));
  point ("key %s mouseup 1", (const char *) data);
  g_assert_null (gw_document_get_former (desk->document));
  undo_all (desk);
  g_assert_null (gw_history_redo_name (gw_document_get_history (desk->document)));
}

static void
test_drag_balance (Desk         *desk,
                   gconstpointer data)
{
  const double wanted = outcome_of (desk)->results.value[GW_RESULT_BALANCE_X];
  const double pixel = millimetres_per_pixel (desk, GW_VIEW_TOP);
  int          at[2];

  find_place (desk, GW_VIEW_TOP, 0.0, wanted, at);
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative -- 0 -1 sleep 0.05 "
         "mousemove_relative -- 0 -2 sleep 0.1 mousemove_relative 0 0 sleep 0.1",
         at[0], at[1]);
  /* The battery is moved by whole millimetres. */
  g_assert_cmpfloat (fabs (outcome_of (desk)->results.value[GW_RESULT_BALANCE_X] -
                           (wanted - 3e-3 * pixel)),
                     <, 1e-3 * pixel + 0.5e-3);
  point ("mousemove_relative -- 0 -60 sleep 0.1 mousemove_relative 0 1 sleep 0.1 mouseup 1");
  g_assert_cmpfloat (battery_of (desk)->x_mm.value, ==, battery_of (desk)->bay_from_mm.value);
  g_assert_nonnull (strstr (desk->said, "of lead in the nose besides"));
  g_assert_cmpstr (gw_history_undo_name (gw_document_get_history (desk->document)), ==,
                   "Move the balance point");
  undo_all (desk);
}

static void
test_select (Desk         *desk,
             gconstpointer data)
{
  const GwSurface *wing = &outcome_of (desk)->assembly->aircraft.surfaces[0];
  int              at[2];

  find_place (desk, GW_VIEW_TOP, 0.6 * wing->stations[1].at[1],
              wing->stations[0].at[0] + 0.35 * wing->stations[0].chord, at);
  point ("mousemove %d %d click 1", at[0], at[1]);
  g_assert_true (g_str_has_prefix (gw_document_get_selection (desk->document), "surfaces/"));
  place_on_screen (GTK_WIDGET (desk->sheet), 30.0, 30.0, &at[0], &at[1]);
  point ("mousemove %d %d click 1", at[0], at[1]);
  g_assert_cmpstr (gw_document_get_selection (desk->document), ==, "");
}

/* Pressing a number of the summary asks where it comes from. */
static void
test_why (Desk         *desk,
          gconstpointer data)
{
  const GwDrawing *drawing = gw_sheet_view_get_drawing (desk->sheet);

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);
      double        x, y;
      int           at[2];

      if (mark->target.group != GW_TARGET_RESULT || mark->target.part != GW_RESULT_STALL_SPEED)
        continue;
      gw_sheet_view_to_widget (desk->sheet, mark->box.x + mark->box.width / 2.0,
                               mark->box.y + mark->box.height / 2.0, &x, &y);
      place_on_screen (GTK_WIDGET (desk->sheet), x, y, &at[0], &at[1]);
      point ("mousemove %d %d click 1", at[0], at[1]);
      break;
    }
  g_assert_cmpint (desk->asked, ==, GW_RESULT_STALL_SPEED);
}

static void
test_nudge (Desk         *desk,
            gconstpointer data)
{
  g_autofree char *path =
    g_strdup_printf ("equipment/%s", gw_document_get_study (desk->document)->movable);
  const double before = battery_of (desk)->x_mm.value;

  gtk_widget_grab_focus (GTK_WIDGET (desk->sheet));
  gw_document_set_selection (desk->document, path);
  point ("key Down key Down key Down");
  g_assert_cmpfloat (battery_of (desk)->x_mm.value, ==, before + 3.0);
  /* Not across its bay. */
  point ("key Left");
  g_assert_cmpstr (desk->said, ==, "It moves fore and aft alone: Up and Down");
  point ("key shift+Up");
  g_assert_cmpfloat (battery_of (desk)->x_mm.value, ==, before - 7.0);
  gw_document_undo (desk->document); /* all of them are one step */
  g_assert_cmpfloat (battery_of (desk)->x_mm.value, ==, before);
  undo_all (desk);
}

static const GwStudyStation *
tip_of (Desk *desk)
{
  const GwStudySurface *wing =
    g_ptr_array_index (outcome_of (desk)->assembly->study->surfaces, 0);

  return g_ptr_array_index (wing->stations, wing->stations->len - 1);
}

static void
find_tip (Desk    *desk,
          gboolean is_tail,
          int      at[2])
{
  const GwSurface *wing = &outcome_of (desk)->assembly->aircraft.surfaces[0];
  const GwStation *tip = &wing->stations[wing->n_stations - 1];

  find_place (desk, GW_VIEW_TOP, tip->at[1],
              tip->at[0] + (is_tail ? tip->chord * cos (tip->twist) : 0.0), at);
}

static void
select_wing (Desk *desk)
{
  g_autofree char *path = g_strdup_printf (
    "surfaces/%s",
    gw_record_id (g_ptr_array_index (outcome_of (desk)->assembly->study->surfaces, 0)));

  gw_document_set_selection (desk->document, path);
  wait_for_ms (100);
}

static void
test_drag_station (Desk         *desk,
                   gconstpointer data)
{
  const double chord = tip_of (desk)->chord_mm.value, out = tip_of (desk)->y_mm.value;
  const double pixel = millimetres_per_pixel (desk, GW_VIEW_TOP);
  int          at[2];

  select_wing (desk);
  find_tip (desk, TRUE, at);
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative 0 6 sleep 0.1 "
         "mousemove_relative 0 6 sleep 0.1 mouseup 1",
         at[0], at[1]);
  g_assert_cmpfloat (fabs (tip_of (desk)->chord_mm.value - chord - 12.0 * pixel), <, 1.0 + pixel);
  g_assert_cmpfloat (tip_of (desk)->y_mm.value, ==, out);
  undo_all (desk);

  wait_until (!gw_document_is_busy (desk->document));
  wait_for_ms (200);
  find_tip (desk, FALSE, at);
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative -- -10 4 sleep 0.1 "
         "mousemove_relative -- -10 4 sleep 0.1 mouseup 1",
         at[0], at[1]);
  g_assert_cmpfloat (fabs (tip_of (desk)->y_mm.value - out + 20.0 * pixel), <, 1.0 + pixel);
  g_assert_cmpfloat (tip_of (desk)->chord_mm.value, ==, chord);
  undo_all (desk);
}

static void
test_type (Desk         *desk,
           gconstpointer data)
{
  int at[2];

  select_wing (desk);
  find_tip (desk, TRUE, at);
  point ("mousemove %d %d click 1 sleep 0.3 type '7 in'", at[0], at[1]);
  g_assert_cmpfloat (tip_of (desk)->chord_mm.value, ==, 7 * 25.4);
  g_assert_null (gw_history_undo_name (gw_document_get_history (desk->document)));
  point ("key Return");
  g_assert_cmpfloat (tip_of (desk)->chord_mm.value, ==, 7 * 25.4);
  g_assert_nonnull (gw_history_undo_name (gw_document_get_history (desk->document)));
  undo_all (desk);

  wait_until (!gw_document_is_busy (desk->document));
  wait_for_ms (200);
  find_tip (desk, TRUE, at);
  point ("mousemove %d %d click 1 sleep 0.3 type 99/3", at[0], at[1]);
  g_assert_cmpfloat (tip_of (desk)->chord_mm.value, ==, 33.0);
  point ("key Escape");
  g_assert_null (gw_document_get_former (desk->document));
  undo_all (desk);
}

static void
test_type_balance (Desk         *desk,
                   gconstpointer data)
{
  gtk_widget_grab_focus (GTK_WIDGET (desk->sheet));
  point ("key b sleep 0.3 type 80");
  point ("key Return");
  g_assert_cmpfloat (fabs (outcome_of (desk)->results.value[GW_RESULT_BALANCE_ROOT] - 0.08), <,
                     0.3e-3);
  undo_all (desk);
}

static double
span_of (Desk *desk)
{
  return outcome_of (desk)->results.value[GW_RESULT_SPAN] * 1e3;
}

static const GwMark *
span_mark (const GwDrawing *drawing)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      if (mark->target.group == GW_TARGET_SPAN && mark->kind == GW_MARK_TEXT)
        return mark;
    }

  return NULL;
}

/* Pressed, the dimension takes a number; all that it moves is one step of undo. */
static void
test_type_span (Desk         *desk,
                gconstpointer data)
{
  const double  before = span_of (desk), chord = tip_of (desk)->chord_mm.value;
  const GwMark *mark;
  double        x, y;
  int           at[2];

  wait_until (!gw_document_is_busy (desk->document));
  wait_for_ms (200);
  mark = span_mark (gw_sheet_view_get_drawing (desk->sheet));
  g_assert_nonnull (mark);
  gw_sheet_view_to_widget (desk->sheet, mark->box.x + mark->box.width / 2,
                           mark->box.y + mark->box.height / 2, &x, &y);
  place_on_screen (GTK_WIDGET (desk->sheet), x, y, &at[0], &at[1]);
  point ("mousemove %d %d click 1 sleep 0.3 type '%.0f mm + 10 in'", at[0], at[1], before);
  /* The span is stated to a nanometre; 10 in are 254 mm, exactly. */
  wait_until (fabs (span_of (desk) - (before + 254.0)) < 1e-6);
  g_assert_null (gw_history_undo_name (gw_document_get_history (desk->document)));
  point ("key Return");
  g_assert_cmpfloat_with_epsilon (span_of (desk), before + 254.0, 1e-6);
  g_assert_cmpfloat (tip_of (desk)->chord_mm.value, ==, chord);
  gw_document_undo (desk->document);
  wait_until (!gw_document_is_busy (desk->document));
  g_assert_cmpfloat_with_epsilon (span_of (desk), before, 1e-6);
  g_assert_null (gw_history_undo_name (gw_document_get_history (desk->document)));

  /* By the keyboard; what is too short for the stations is refused on the spot. */
  gtk_widget_grab_focus (GTK_WIDGET (desk->sheet));
  point ("key s sleep 0.3 type 3");
  g_assert_null (gw_document_get_former (desk->document));
  point ("type 00*4");
  wait_until (fabs (span_of (desk) - 1200.0) < 1e-6);
  point ("key Escape");
  g_assert_cmpfloat_with_epsilon (span_of (desk), before, 1e-6);
  undo_all (desk);
}

static GtkGesture *
drag_gesture (GtkWidget *widget)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (all, i);

      if (GTK_IS_GESTURE_DRAG (controller) &&
          gtk_gesture_is_recognized (GTK_GESTURE (controller)))
        return GTK_GESTURE (controller);
    }

  return NULL;
}

/* Between a change and the next frame nothing is drawn, so there is nothing to be led. */
static void
test_drag_before_the_frame (Desk         *desk,
                            gconstpointer data)
{
  GwUnits      units = *gw_units_standard ();
  const double before = battery_of (desk)->x_mm.value;
  GtkGesture  *gesture;
  int          at[2];

  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  find_place (desk, GW_VIEW_TOP, battery_of (desk)->y_mm.value * 1e-3, before * 1e-3, at);
  point ("mousemove %d %d mousedown 1 sleep 0.05 mousemove_relative 0 5", at[0], at[1]);
  g_assert_nonnull (gw_document_get_former (desk->document));
  gesture = drag_gesture (GTK_WIDGET (desk->sheet));
  g_assert_nonnull (gesture);

  gw_sheet_view_set_units (desk->sheet, &units);
  g_assert_null (gw_sheet_view_get_drawing (desk->sheet));
  g_signal_emit_by_name (gesture, "drag-update", 0.0, 12.0);
  point ("mousemove_relative 0 5 sleep 0.05 mouseup 1");
  g_assert_cmpfloat (battery_of (desk)->x_mm.value, >, before);
  undo_all (desk);
}

/* Stations and control surfaces keep their parts of the span, panels their dihedral. */
static void
test_span_in_proportion (Desk         *desk,
                         gconstpointer data)
{
  const GwStudySurface *wing;
  const double          before = span_of (desk), factor = 1.25;
  const GwGripMove      move = { 0.5e-3 * before * factor, 0.0, 1e-4, 0.0 };
  GwGrip                grip = { .kind = GW_GRIP_SPAN, .path = g_strdup ("surfaces/wing") };
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GError) error = NULL;

  wing = (const GwStudySurface *) gw_edit_record (outcome_of (desk)->assembly->study, grip.path);
  study = gw_grip_move (&grip, desk->document, &move, &error);
  g_assert_no_error (error);
  {
    const GwStudySurface *now = (const GwStudySurface *) gw_edit_record (study, grip.path);

    for (guint i = 0; i < wing->stations->len; i++)
      {
        const GwStudyStation *a = g_ptr_array_index (wing->stations, i);
        const GwStudyStation *b = g_ptr_array_index (now->stations, i);

        /* Places are rounded to a tenth of a millimetre. */
        g_assert_cmpfloat_with_epsilon (b->y_mm.value, a->y_mm.value * factor, 0.051);
        g_assert_cmpfloat_with_epsilon (b->z_mm.value, a->z_mm.value * factor, 0.051);
        g_assert_cmpfloat (b->x_mm.value, ==, a->x_mm.value);
        g_assert_cmpfloat (b->chord_mm.value, ==, a->chord_mm.value);
      }
    for (guint i = 0; i < wing->controls->len; i++)
      {
        const GwStudyControl *a = g_ptr_array_index (wing->controls, i);
        const GwStudyControl *b = g_ptr_array_index (now->controls, i);

        /* Cut, not rounded, to a tenth, upon stations that are rounded. */
        g_assert_cmpfloat_with_epsilon (b->from_mm.value, a->from_mm.value * factor, 0.2);
        g_assert_cmpfloat_with_epsilon (b->to_mm.value, a->to_mm.value * factor, 0.2);
      }
  }
  gw_grip_clear (&grip);
}

static void
test_zoom (Desk         *desk,
           gconstpointer data)
{
  const double before = battery_of (desk)->x_mm.value;
  int          at[2], middle[2];

  gtk_widget_grab_focus (GTK_WIDGET (desk->sheet));
  point ("key ctrl+plus key ctrl+plus key ctrl+plus key ctrl+plus");
  g_assert_cmpfloat (gw_sheet_view_get_zoom (desk->sheet), >, 2.0);
  place_on_screen (GTK_WIDGET (desk->sheet), 20.0, 20.0, &middle[0], &middle[1]);
  find_place (desk, GW_VIEW_TOP, 0.0, before * 1e-3, at);
  /* Empty paper drags the sheet. */
  point ("mousemove %d %d mousedown 2 sleep 0.05 mousemove_relative 20 40 sleep 0.1 mouseup 2",
         middle[0], middle[1]);
  find_place (desk, GW_VIEW_TOP, 0.0, before * 1e-3, middle);
  g_assert_cmpint (middle[0] - at[0], ==, 20);
  g_assert_cmpint (middle[1] - at[1], ==, 40);
  point ("key ctrl+0");
  g_assert_cmpfloat (gw_sheet_view_get_zoom (desk->sheet), ==, 1.0);
  point ("mousemove %d %d keydown ctrl click 4 click 4 keyup ctrl", at[0], at[1]);
  g_assert_cmpfloat (gw_sheet_view_get_zoom (desk->sheet), >, 1.4);
  undo_all (desk);
}

#define ADD(name, data, test) g_test_add (name, Desk, data, set_up, test, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  if (!gtk_init_check ())
    return 77;

  ADD ("/desk/sheet/drag-item/top", GINT_TO_POINTER (0), test_drag_item);
  ADD ("/desk/sheet/drag-item/side", GINT_TO_POINTER (1), test_drag_item);
  ADD ("/desk/sheet/drag-ends-at-bay", NULL, test_drag_ends_at_bay);
  ADD ("/desk/sheet/escape-leaves", "Escape", test_key_leaves);
  ADD ("/desk/sheet/undo-leaves", "ctrl+z", test_key_leaves);
  ADD ("/desk/sheet/drag-balance", NULL, test_drag_balance);
  ADD ("/desk/sheet/select", NULL, test_select);
  ADD ("/desk/sheet/why", NULL, test_why);
  ADD ("/desk/sheet/nudge", NULL, test_nudge);
  ADD ("/desk/sheet/drag-station", NULL, test_drag_station);
  ADD ("/desk/sheet/type", NULL, test_type);
  ADD ("/desk/sheet/type-balance", NULL, test_type_balance);
  ADD ("/desk/sheet/type-span", NULL, test_type_span);
  ADD ("/desk/sheet/drag-before-the-frame", NULL, test_drag_before_the_frame);
  ADD ("/desk/sheet/span-in-proportion", NULL, test_span_in_proportion);
  ADD ("/desk/sheet/zoom", NULL, test_zoom);

  return g_test_run ();
}
