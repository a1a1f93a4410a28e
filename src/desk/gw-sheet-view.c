/* gw-sheet-view.c - the sheet as a widget: places on it, zoom, what it follows
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sheet-private.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEAST_WIDTH  320 /* [pixel] */
#define LEAST_HEIGHT 240
#define MOST_ZOOM    12.0

G_DEFINE_FINAL_TYPE (GwSheetView, gw_sheet_view, GTK_TYPE_WIDGET)

enum
{
  SAYS,
  WHY,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

void
_gw_sheet_say (GwSheetView *self,
               const char  *text)
{
  g_signal_emit (self, signals[SAYS], 0, text);
}

gboolean
_gw_sheet_is_in_inches (const GwSheetView *self)
{
  return gw_units_shown (&self->units, GW_MM, 25.4) < 2.0;
}

double
_gw_sheet_step (const GwSheetView *self)
{
  return _gw_sheet_is_in_inches (self) ? 0.0254 / 50.0 : 1e-3;
}

void
gw_sheet_view_to_widget (GwSheetView *self,
                         double       x,
                         double       y,
                         double      *widget_x,
                         double      *widget_y)
{
  *widget_x = x * self->point * self->zoom - self->x;
  *widget_y = y * self->point * self->zoom - self->y;
}

void
_gw_sheet_place (const GwSheetView *self,
                 double             widget_x,
                 double             widget_y,
                 double            *x,
                 double            *y)
{
  *x = (widget_x + self->x) / (self->point * self->zoom);
  *y = (widget_y + self->y) / (self->point * self->zoom);
}

GwView
_gw_sheet_view_at (const GwSheetView *self,
                   double             x,
                   double             y,
                   double            *u,
                   double            *v)
{
  for (guint i = 0; self->front != NULL && i < GW_N_VIEWS; i++)
    {
      const GwViewFrame *frame = gw_drawing_view (self->front, (GwView) i);

      if (!(frame->scale > 0.0) || x < frame->box.x || x > frame->box.x + frame->box.width ||
          y < frame->box.y || y > frame->box.y + frame->box.height)
        continue;
      *u = (x - frame->origin[0]) / frame->scale;
      *v = (y - frame->origin[1]) / frame->scale;
      return (GwView) i;
    }

  return GW_N_VIEWS;
}

gboolean
_gw_sheet_grip_place (const GwSheetView *self,
                      const GwGrip      *grip,
                      double            *widget_x,
                      double            *widget_y)
{
  const GwViewFrame *frame =
    self->front != NULL ? gw_drawing_view (self->front, grip->view) : NULL;

  if (frame == NULL || !(frame->scale > 0.0))
    return FALSE;

  gw_sheet_view_to_widget ((GwSheetView *) self, frame->origin[0] + grip->u * frame->scale,
                           frame->origin[1] + grip->v * frame->scale, widget_x, widget_y);
  return TRUE;
}

static void
gw_sheet_view_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  GwSheetView *self = GW_SHEET_VIEW (widget);
  const int    width = gtk_widget_get_width (widget);
  const int    height = gtk_widget_get_height (widget);
  GwTilesView  view;

  if (self->evaluation == NULL || width < LEAST_WIDTH || height < LEAST_HEIGHT)
    return;

  _gw_sheet_prepare (self, width, height);
  view = (GwTilesView){
    .drawing = self->front,
    .ghost = self->rest,
    .ghost_marks = self->ghost,
    .point = self->point * self->zoom,
    .scale = gtk_widget_get_scale_factor (widget),
    .x = self->x,
    .y = self->y,
    .width = width,
    .height = height,
  };
  gtk_snapshot_push_clip (snapshot,
                          &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float) width, (float) height));
  gw_tiles_snapshot (self->tiles, &view, snapshot);
  _gw_sheet_snapshot_halo (self, snapshot);
  _gw_sheet_snapshot_grips (self, snapshot);
  gtk_snapshot_pop (snapshot);
}

static void
gw_sheet_view_measure (GtkWidget     *widget,
                       GtkOrientation orientation,
                       int            for_size,
                       int           *minimum,
                       int           *natural,
                       int           *minimum_baseline,
                       int           *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : LEAST_HEIGHT;
}

static void
gw_sheet_view_size_allocate (GtkWidget *widget,
                             int        width,
                             int        height,
                             int        baseline)
{
  GwSheetView *self = GW_SHEET_VIEW (widget);

  _gw_sheet_move_to (self, self->x, self->y);
  if (self->popover != NULL)
    gtk_popover_present (GTK_POPOVER (self->popover));
}

void
_gw_sheet_move_to (GwSheetView *self,
                   double       x,
                   double       y)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));

  /* Whole pixels, or what is kept as pictures would be blurred. */
  self->x = round (CLAMP (x, 0.0, MAX (width * (self->zoom - 1.0), 0.0)));
  self->y = round (CLAMP (y, 0.0, MAX (height * (self->zoom - 1.0), 0.0)));
  _gw_sheet_forget_halo (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
_gw_sheet_set_zoom (GwSheetView *self,
                    double       zoom,
                    double       widget_x,
                    double       widget_y)
{
  const double before = self->zoom;

  self->zoom = CLAMP (zoom, 1.0, MOST_ZOOM);
  if (fabs (self->zoom - 1.0) < 0.02)
    self->zoom = 1.0;
  _gw_sheet_move_to (self, (self->x + widget_x) * self->zoom / before - widget_x,
                     (self->y + widget_y) * self->zoom / before - widget_y);
}

double
gw_sheet_view_get_zoom (GwSheetView *self)
{
  g_return_val_if_fail (GW_IS_SHEET_VIEW (self), 1.0);

  return self->zoom;
}

/* Not while a hand moves something: nobody could listen that fast. */
static void
update_text (GwSheetView *self)
{
  if (self->document != NULL && gw_document_get_former (self->document) != NULL)
    return;

  g_free (self->text);
  self->text = self->evaluation != NULL
                 ? _gw_sheet_describe (self->evaluation, self->shown, &self->units)
                 : NULL;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  self->text != NULL ? self->text : "", -1);
}

static void
update (GwSheetView *self)
{
  GwEvaluation *evaluation =
    self->document != NULL ? gw_document_get_evaluation (self->document) : NULL;
  const guint shown = evaluation != NULL ? gw_document_get_shown (self->document) : 0;

  if (self->evaluation == evaluation && self->shown == shown)
    return;

  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  self->evaluation = evaluation != NULL ? gw_evaluation_ref (evaluation) : NULL;
  /* Another option is another drawing: nothing of it is to follow the one before. */
  if (self->shown != shown)
    _gw_sheet_forget_drawings (self);
  self->shown = shown;
  self->is_stale = TRUE;
  update_text (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
selection_cb (GwSheetView *self)
{
  if (self->evaluation != NULL)
    _gw_sheet_find_grips (self);
  _gw_sheet_forget_halo (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
gw_sheet_view_set_document (GwSheetView *self,
                            GwDocument  *document)
{
  g_return_if_fail (GW_IS_SHEET_VIEW (self));

  if (self->document == document)
    return;

  _gw_sheet_let_go (self);
  gw_document_follow (&self->document, document, self, G_CALLBACK (update), G_CALLBACK (update),
                      G_CALLBACK (selection_cb));
  _gw_sheet_forget_drawings (self);
  g_array_set_size (self->grips, 0);
  self->zoom = 1.0;
  _gw_sheet_move_to (self, 0.0, 0.0);
  update (self);
}

void
gw_sheet_view_set_dark (GwSheetView *self,
                        gboolean     is_dark)
{
  g_return_if_fail (GW_IS_SHEET_VIEW (self));

  if (self->is_dark == is_dark)
    return;

  self->is_dark = is_dark;
  _gw_sheet_forget_drawings (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
gw_sheet_view_set_units (GwSheetView   *self,
                         const GwUnits *units)
{
  g_return_if_fail (GW_IS_SHEET_VIEW (self));

  if (gw_units_equal (&self->units, units))
    return;

  self->units = *units;
  _gw_sheet_forget_drawings (self);
  update_text (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const GwDrawing *
gw_sheet_view_get_drawing (GwSheetView *self)
{
  g_return_val_if_fail (GW_IS_SHEET_VIEW (self), NULL);

  return self->is_stale ? NULL : self->front;
}

const char *
gw_sheet_view_get_text (GwSheetView *self)
{
  g_return_val_if_fail (GW_IS_SHEET_VIEW (self), NULL);

  return self->text;
}

static void
gw_sheet_view_dispose (GObject *object)
{
  GwSheetView *self = GW_SHEET_VIEW (object);

  gw_sheet_view_set_document (self, NULL);
  _gw_sheet_typing_clear (self);

  G_OBJECT_CLASS (gw_sheet_view_parent_class)->dispose (object);
}

static void
gw_sheet_view_finalize (GObject *object)
{
  GwSheetView *self = GW_SHEET_VIEW (object);

  _gw_sheet_forget_drawings (self);
  g_clear_pointer (&self->tiles, gw_tiles_free);
  g_clear_pointer (&self->grips, g_array_unref);
  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  g_clear_pointer (&self->text, g_free);
  gw_grip_clear (&self->held);
  gw_grip_clear (&self->typed);

  G_OBJECT_CLASS (gw_sheet_view_parent_class)->finalize (object);
}

static void
gw_sheet_view_class_init (GwSheetViewClass *klass)
{
  GObjectClass   *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gw_sheet_view_dispose;
  object_class->finalize = gw_sheet_view_finalize;
  widget_class->snapshot = gw_sheet_view_snapshot;
  widget_class->measure = gw_sheet_view_measure;
  widget_class->size_allocate = gw_sheet_view_size_allocate;
  gtk_widget_class_set_css_name (widget_class, "sheet");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  _gw_sheet_install_actions (widget_class);

  signals[SAYS] = g_signal_new ("says", GW_TYPE_SHEET_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[WHY] = g_signal_new ("why", GW_TYPE_SHEET_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_UINT);
}

static void
gw_sheet_view_init (GwSheetView *self)
{
  self->tiles = gw_tiles_new ();
  self->zoom = 1.0;
  self->is_stale = TRUE;
  self->units = *gw_units_standard ();
  self->grips = g_array_new (FALSE, FALSE, sizeof (GwGrip));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gw_access_name (GTK_WIDGET (self), _ ("Drawing sheet"));
  _gw_sheet_add_hands (self);
}
