/* gw-sheet-hand.c - pointer and fingers on the sheet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "desk/gw-sheet-private.h"
#include "report/gw-owner.h"

#define REACH 6.0 /* how near is on it [pixel] */
#define SLACK 3.0 /* a hand is not quite still in a click [pixel] */
#define CATCH 6.0 /* [pixel] */
#define FINE  4.0 /* pixels a millimetre from which tenths can be aimed at */

static double
pixels_per_metre (const GwSheetView *self,
                  GwView             view)
{
  return gw_drawing_view (self->front, view)->scale * self->point * self->zoom;
}

/* A tenth of the common step where it can be seen. */
static double
step_of (const GwSheetView *self,
         GwView             view)
{
  const double step = _gw_sheet_step (self);

  return pixels_per_metre (self, view) * 1e-3 > FINE ? step / 10.0 : step;
}

static GwGrip *
grip_at (GwSheetView *self,
         double       widget_x,
         double       widget_y)
{
  GwGrip *best = NULL;
  double  nearest = REACH + 2.0;

  for (guint i = 0; i < self->grips->len; i++)
    {
      GwGrip *grip = &g_array_index (self->grips, GwGrip, i);
      double  x, y;

      if (_gw_sheet_grip_place (self, grip, &x, &y) &&
          hypot (x - widget_x, y - widget_y) < nearest)
        {
          nearest = hypot (x - widget_x, y - widget_y);
          best = grip;
        }
    }

  return best;
}

char *
_gw_sheet_path_of (GwSheetView *self,
                   GwTarget     target)
{
  const GwOutcome *outcome = gw_evaluation_outcome (self->evaluation, self->shown);

  if (target.group < 0 || target.group >= GW_N_GROUPS || target.owner < 0 ||
      (guint) target.owner >= gw_group_list (outcome->assembly->study, (GwGroup) target.group)->len)
    return NULL;

  return gw_owner_path (outcome, (GwGroup) target.group, (guint) target.owner);
}

static GwTarget
target_at (GwSheetView *self,
           double       widget_x,
           double       widget_y)
{
  double x, y;

  if (self->front == NULL)
    return GW_TARGET_NONE;

  _gw_sheet_place (self, widget_x, widget_y, &x, &y);
  return gw_drawing_hit (self->front, x, y, 3.0 / (self->point * self->zoom));
}

/* A handle, or equipment wherever it is touched. */
static void
find_held (GwSheetView *self,
           double       widget_x,
           double       widget_y,
           GwGrip      *out)
{
  const GwGrip    *grip = grip_at (self, widget_x, widget_y);
  g_autofree char *path = NULL;
  double           x, y, u, v;
  GwView           view;

  gw_grip_clear (out);
  if (grip != NULL)
    {
      gw_grip_copy (out, grip);
      return;
    }

  _gw_sheet_place (self, widget_x, widget_y, &x, &y);
  view = _gw_sheet_view_at (self, x, y, &u, &v);
  path = _gw_sheet_path_of (self, target_at (self, widget_x, widget_y));
  if (path == NULL || view == GW_N_VIEWS)
    return;

  gw_grip_of_item (self->document, path, view, FALSE, out);
  if (out->kind != GW_GRIP_NONE && view == GW_VIEW_TOP && out->u * u < 0.0 && fabs (u) > 1e-3)
    {
      gw_grip_clear (out);
      gw_grip_of_item (self->document, path, view, TRUE, out);
    }
}

void
_gw_sheet_say_move (GwSheetView *self)
{
  g_autofree char *text =
    gw_grip_text (&self->held, self->document, &self->move, &self->units);

  _gw_sheet_say (self, text);
}

static void
try_move (GwSheetView *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_grip_move (&self->held, self->document, &self->move, &error);

  if (study != NULL && gw_document_try (self->document, study, &error))
    _gw_sheet_say_move (self);
  else
    _gw_sheet_say (self, error->message);
}

static void
forget_move (GwSheetView *self)
{
  g_clear_signal_handler (&self->due, self->clock);
  g_clear_object (&self->clock);
}

static void
due_cb (GwSheetView *self)
{
  forget_move (self);
  try_move (self);
}

/* Once a frame, whatever number of motions came in. At its start, for later the window has been
 * measured already and asks for another frame, which the next motion would wait for; as it would
 * for the next beat of a clock that runs on. */
static void
queue_move (GwSheetView *self)
{
  if (self->due != 0)
    return;

  g_set_object (&self->clock, gtk_widget_get_frame_clock (GTK_WIDGET (self)));
  self->due = g_signal_connect_swapped (self->clock, "before-paint", G_CALLBACK (due_cb), self);
  gdk_frame_clock_request_phase (self->clock, GDK_FRAME_CLOCK_PHASE_BEFORE_PAINT);
}

void
_gw_sheet_let_go (GwSheetView *self)
{
  forget_move (self);
  self->has_moved = FALSE;
  gw_grip_clear (&self->held);
}

static void
drag_begin_cb (GtkGestureDrag *gesture,
               double          x,
               double          y,
               GwSheetView    *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (self->evaluation == NULL || self->front == NULL)
    return;

  _gw_sheet_let_go (self);
  find_held (self, x, y, &self->held);
  self->start_x = x;
  self->start_y = y;
  self->pan_x = self->x;
  self->pan_y = self->y;
  if (self->held.kind == GW_GRIP_ITEM)
    gw_document_set_selection (self->document, self->held.path);
}

static void
drag_update_cb (GtkGestureDrag *gesture,
                double          dx,
                double          dy,
                GwSheetView    *self)
{
  double scale;

  if (self->evaluation == NULL || self->front == NULL ||
      (!self->has_moved && hypot (dx, dy) < SLACK))
    return;
  if (!self->has_moved)
    gw_document_leave (self->document);
  self->has_moved = TRUE;
  if (self->held.kind == GW_GRIP_NONE)
    {
      _gw_sheet_move_to (self, self->pan_x - dx, self->pan_y - dy);
      return;
    }

  scale = pixels_per_metre (self, self->held.view);
  self->move.u = self->held.u + dx / scale;
  self->move.v = self->held.v + dy / scale;
  self->move.step = step_of (self, self->held.view);
  self->move.catch = CATCH / scale;
  queue_move (self);
}

static void
click (GwSheetView *self)
{
  const GwTarget   target = target_at (self, self->start_x, self->start_y);
  g_autofree char *path = NULL;

  if (self->held.kind != GW_GRIP_NONE && self->held.kind != GW_GRIP_ITEM)
    {
      _gw_sheet_type (self, &self->held);
      return;
    }
  if (target.group == GW_TARGET_SPAN)
    {
      gtk_widget_activate_action (GTK_WIDGET (self), "sheet.type-span", NULL);
      return;
    }
  if (target.group == GW_TARGET_RESULT)
    {
      g_signal_emit_by_name (self, "why", (guint) target.owner, (guint) target.part);
      return;
    }

  path = _gw_sheet_path_of (self, target);
  gw_document_set_selection (self->document, path != NULL ? path : "");
}

static void
drag_end_cb (GtkGestureDrag *gesture,
             double          dx,
             double          dy,
             GwSheetView    *self)
{
  if (self->evaluation == NULL || self->front == NULL)
    return;

  if (!self->has_moved)
    click (self);
  else if (self->held.kind != GW_GRIP_NONE)
    {
      g_autofree char *name = gw_grip_name (&self->held, self->document);

      if (self->due != 0)
        try_move (self);
      gw_document_take (self->document, name);
    }
  _gw_sheet_let_go (self);
}

static void
drag_cancel_cb (GtkGesture       *gesture,
                GdkEventSequence *sequence,
                GwSheetView      *self)
{
  if (self->document != NULL && self->has_moved && self->held.kind != GW_GRIP_NONE)
    gw_document_leave (self->document);
  _gw_sheet_let_go (self);
}

static void
pan_update_cb (GtkGestureDrag *gesture,
               double          dx,
               double          dy,
               GwSheetView    *self)
{
  _gw_sheet_move_to (self, self->pan_x - dx, self->pan_y - dy);
}

static void
pan_begin_cb (GtkGestureDrag *gesture,
              double          x,
              double          y,
              GwSheetView    *self)
{
  self->pan_x = self->x;
  self->pan_y = self->y;
}

static void
motion_cb (GtkEventControllerMotion *controller,
           double                    x,
           double                    y,
           GwSheetView              *self)
{
  const char *cursor = NULL;
  GwGrip      grip = { .kind = GW_GRIP_NONE };
  GwTarget    target;

  if (self->evaluation == NULL || self->front == NULL)
    return;
  if (self->held.kind != GW_GRIP_NONE && self->has_moved)
    return;

  find_held (self, x, y, &grip);
  target = target_at (self, x, y);
  if (grip.kind != GW_GRIP_NONE)
    cursor = "grab";
  else if (target.group >= 0)
    cursor = "pointer";
  gw_grip_clear (&grip);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursor);
}

static gboolean
scroll_cb (GtkEventControllerScroll *controller,
           double                    dx,
           double                    dy,
           GwSheetView              *self)
{
  const GdkModifierType state =
    gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (controller));
  GdkEvent *event = gtk_event_controller_get_current_event (GTK_EVENT_CONTROLLER (controller));
  double    x, y;

  if (self->front == NULL)
    return FALSE;
  if (state & GDK_CONTROL_MASK)
    {
      graphene_point_t at = GRAPHENE_POINT_INIT (0.0f, 0.0f);
      GtkWidget       *root = GTK_WIDGET (gtk_widget_get_root (GTK_WIDGET (self)));

      if (gdk_event_get_position (event, &x, &y))
        {
          double shift_x, shift_y;

          gtk_native_get_surface_transform (GTK_NATIVE (root), &shift_x, &shift_y);
          if (!gtk_widget_compute_point (
                root, GTK_WIDGET (self),
                &GRAPHENE_POINT_INIT ((float) (x - shift_x), (float) (y - shift_y)), &at))
            at = GRAPHENE_POINT_INIT (0.0f, 0.0f);
        }
      _gw_sheet_set_zoom (self, self->zoom * pow (GW_SHEET_ZOOM_STEP, -dy), at.x, at.y);
      return TRUE;
    }
  if (self->zoom == 1.0)
    return FALSE;

  _gw_sheet_move_to (self, self->x + 40.0 * dx, self->y + 40.0 * dy);
  return TRUE;
}

static void
pinch_begin_cb (GtkGesture       *gesture,
                GdkEventSequence *sequence,
                GwSheetView      *self)
{
  self->pinch = self->zoom;
}

static void
pinch_cb (GtkGestureZoom *gesture,
          double          scale,
          GwSheetView    *self)
{
  double x, y;

  if (gtk_gesture_get_bounding_box_center (GTK_GESTURE (gesture), &x, &y))
    _gw_sheet_set_zoom (self, self->pinch * scale, x, y);
}

static void
add (GwSheetView        *self,
     GtkEventController *controller)
{
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}

void
_gw_sheet_add_hands (GwSheetView *self)
{
  GtkGesture         *drag = gtk_gesture_drag_new (), *pan = gtk_gesture_drag_new ();
  GtkGesture         *pinch = gtk_gesture_zoom_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *scroll =
    gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (drag), GDK_BUTTON_PRIMARY);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (drag_cancel_cb), self);
  add (self, GTK_EVENT_CONTROLLER (drag));

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (pan), GDK_BUTTON_MIDDLE);
  g_signal_connect (pan, "drag-begin", G_CALLBACK (pan_begin_cb), self);
  g_signal_connect (pan, "drag-update", G_CALLBACK (pan_update_cb), self);
  add (self, GTK_EVENT_CONTROLLER (pan));

  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  add (self, GTK_EVENT_CONTROLLER (pinch));

  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  add (self, motion);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  add (self, scroll);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (_gw_sheet_key_cb), self);
  add (self, keys);
}
