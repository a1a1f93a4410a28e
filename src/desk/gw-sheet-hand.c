/* gw-sheet-hand.c - pointer, fingers and keys on the sheet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-sheet-private.h"
#include "report/gw-owner.h"
#include "study/gw-edit.h"

#define REACH     6.0 /* how near is on it [pixel] */
#define SLACK     3.0 /* a hand is not quite still in a click [pixel] */
#define CATCH     6.0 /* [pixel] */
#define ZOOM_STEP 1.25
#define FINE      4.0 /* pixels a millimetre from which tenths can be aimed at */

static double
pixels_per_metre (const GwSheetView *self,
                  GwView             view)
{
  return gw_drawing_view (self->front, view)->scale * self->point * self->zoom;
}

/* Whole millimetres, or a fiftieth of an inch; a tenth of that where it can be seen. */
static double
step_of (const GwSheetView *self,
         GwView             view)
{
  const gboolean is_inch = gw_units_shown (&self->units, GW_MM, 25.4) < 2.0;
  const double   step = is_inch ? 0.0254 / 50.0 : 1e-3;

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

/* Path of the record that a target shows. (transfer full) (nullable) */
static char *
path_of (GwSheetView *self,
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
  path = path_of (self, target_at (self, widget_x, widget_y));
  if (path == NULL || view == GW_N_VIEWS)
    return;

  gw_grip_of_item (self->document, path, view, FALSE, out);
  if (out->kind != GW_GRIP_NONE && view == GW_VIEW_TOP && out->u * u < 0.0 && fabs (u) > 1e-3)
    {
      gw_grip_clear (out);
      gw_grip_of_item (self->document, path, view, TRUE, out);
    }
}

static void
say_move (GwSheetView *self)
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
    say_move (self);
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

  if (self->evaluation == NULL || (!self->has_moved && hypot (dx, dy) < SLACK))
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

  path = path_of (self, target);
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
      _gw_sheet_set_zoom (self, self->zoom * pow (ZOOM_STEP, -dy), at.x, at.y);
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

/* Keys move what is selected by a millimetre, with Shift by ten; one after the other they are
 * one step of undo. */
static gboolean
nudge (GwSheetView *self,
       double       du,
       double       dv,
       gboolean     is_far)
{
  const double     step = gw_units_shown (&self->units, GW_MM, 25.4) < 2.0 ? 0.0254 / 50.0 : 1e-3;
  g_autofree char *merge = NULL, *name = NULL;
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GError) error = NULL;
  GwGrip grip = { .kind = GW_GRIP_NONE };

  for (guint i = 0; i < self->grips->len && grip.kind == GW_GRIP_NONE; i++)
    {
      const GwGrip *handle = &g_array_index (self->grips, GwGrip, i);

      if (handle->kind == GW_GRIP_STATION && !handle->is_image &&
          g_strcmp0 (handle->path, gw_document_get_selection (self->document)) == 0)
        gw_grip_copy (&grip, handle);
    }
  if (grip.kind == GW_GRIP_NONE)
    gw_grip_of_item (self->document, gw_document_get_selection (self->document), GW_VIEW_TOP,
                     FALSE, &grip);
  if (grip.kind == GW_GRIP_NONE)
    return FALSE;

  gw_document_leave (self->document);
  self->move = (GwGripMove){ grip.u + du * step * (is_far ? 10.0 : 1.0),
                             grip.v + dv * step * (is_far ? 10.0 : 1.0), step / 10.0, 0.0 };
  study = gw_grip_move (&grip, self->document, &self->move, &error);
  name = gw_grip_name (&grip, self->document);
  merge = g_strdup_printf ("nudge %s", grip.path);
  gw_grip_clear (&self->held);
  gw_grip_copy (&self->held, &grip);
  if (study != NULL && gw_document_edit (self->document, name, study, merge, &error))
    say_move (self);
  else
    _gw_sheet_say (self, error->message);
  gw_grip_clear (&self->held);
  gw_grip_clear (&grip);
  return TRUE;
}

static gboolean
escape (GwSheetView *self)
{
  if (self->has_moved && self->held.kind != GW_GRIP_NONE)
    {
      gw_document_leave (self->document);
      _gw_sheet_let_go (self);
      _gw_sheet_say (self, "");
      return TRUE;
    }
  if (*gw_document_get_selection (self->document) == '\0')
    return FALSE;

  gw_document_set_selection (self->document, "");
  return TRUE;
}

/* Of the wing whose span is the dimension on the planform. (transfer full) (nullable) */
static char *
span_path (GwSheetView *self)
{
  const GwAircraft *aircraft =
    &gw_evaluation_outcome (self->evaluation, self->shown)->assembly->aircraft;

  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    if (aircraft->surfaces[i].role == GW_ROLE_WING && aircraft->surfaces[i].n_stations >= 2)
      return aircraft->surfaces[i].is_mirrored
               ? path_of (self, (GwTarget){ GW_GROUP_SURFACE, (int) i, 0 })
               : NULL;

  return NULL;
}

static void
type_span_cb (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  GwSheetView *self = GW_SHEET_VIEW (widget);
  GwGrip       grip = { .kind = GW_GRIP_SPAN, .view = GW_VIEW_TOP };

  if (self->evaluation == NULL || self->front == NULL)
    return;

  grip.path = span_path (self);
  if (grip.path != NULL)
    _gw_sheet_type (self, &grip);
  gw_grip_clear (&grip);
}

static void
type_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  GwSheetView     *self = GW_SHEET_VIEW (widget);
  GwGrip           grip = { .kind = GW_GRIP_NONE };
  g_autofree char *span = NULL;

  if (self->evaluation == NULL)
    return;

  span = span_path (self);
  if (g_strcmp0 (span, gw_document_get_selection (self->document)) == 0)
    {
      type_span_cb (widget, action, parameter);
      return;
    }

  gw_grip_of_item (self->document, gw_document_get_selection (self->document), GW_VIEW_TOP, FALSE,
                   &grip);
  if (grip.kind != GW_GRIP_NONE)
    _gw_sheet_type (self, &grip);
  gw_grip_clear (&grip);
}

static void
type_balance_cb (GtkWidget  *widget,
                 const char *action,
                 GVariant   *parameter)
{
  GwSheetView *self = GW_SHEET_VIEW (widget);

  for (guint i = 0; i < self->grips->len; i++)
    if (g_array_index (self->grips, GwGrip, i).kind == GW_GRIP_BALANCE)
      {
        _gw_sheet_type (self, &g_array_index (self->grips, GwGrip, i));
        return;
      }
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        GwSheetView           *self)
{
  const gboolean is_far = (state & GDK_SHIFT_MASK) != 0;

  if (self->evaluation == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;

  switch (key)
    {
    case GDK_KEY_Up:
      return nudge (self, 0.0, -1.0, is_far);
    case GDK_KEY_Down:
      return nudge (self, 0.0, 1.0, is_far);
    case GDK_KEY_Left:
      return nudge (self, -1.0, 0.0, is_far);
    case GDK_KEY_Right:
      return nudge (self, 1.0, 0.0, is_far);
    case GDK_KEY_Escape:
      return escape (self);
    default:
      return FALSE;
    }
}

static void
zoom_about_middle (GtkWidget *widget,
                   double     zoom)
{
  _gw_sheet_set_zoom (GW_SHEET_VIEW (widget), zoom, gtk_widget_get_width (widget) / 2.0,
                      gtk_widget_get_height (widget) / 2.0);
}

static void
zoom_in_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *parameter)
{
  zoom_about_middle (widget, GW_SHEET_VIEW (widget)->zoom * ZOOM_STEP);
}

static void
zoom_out_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  zoom_about_middle (widget, GW_SHEET_VIEW (widget)->zoom / ZOOM_STEP);
}

static void
zoom_fit_cb (GtkWidget  *widget,
             const char *action,
             GVariant   *parameter)
{
  zoom_about_middle (widget, 1.0);
}

void
_gw_sheet_install_actions (GtkWidgetClass *widget_class)
{
  static const struct
  {
    guint       key;
    const char *action;
  } keys[] = {
    { GDK_KEY_plus, "sheet.zoom-in" },
    { GDK_KEY_KP_Add, "sheet.zoom-in" },
    { GDK_KEY_equal, "sheet.zoom-in" },
    { GDK_KEY_minus, "sheet.zoom-out" },
    { GDK_KEY_KP_Subtract, "sheet.zoom-out" },
    { GDK_KEY_0, "sheet.zoom-fit" },
  };

  gtk_widget_class_install_action (widget_class, "sheet.zoom-in", NULL, zoom_in_cb);
  gtk_widget_class_install_action (widget_class, "sheet.zoom-out", NULL, zoom_out_cb);
  gtk_widget_class_install_action (widget_class, "sheet.zoom-fit", NULL, zoom_fit_cb);
  gtk_widget_class_install_action (widget_class, "sheet.type", NULL, type_cb);
  gtk_widget_class_install_action (widget_class, "sheet.type-balance", NULL, type_balance_cb);
  gtk_widget_class_install_action (widget_class, "sheet.type-span", NULL, type_span_cb);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding_action (widget_class, keys[i].key, GDK_CONTROL_MASK,
                                         keys[i].action, NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, 0, "sheet.type", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_KP_Enter, 0, "sheet.type", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_b, 0, "sheet.type-balance", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, 0, "sheet.type-span", NULL);
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
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  add (self, keys);
}
