/* gw-sheet-view.c - the sheet as a widget: laid out, kept as pictures, zoomed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sheet-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-sheet.h"
#include "study/gw-result.h"

#define LEAST_WIDTH  320 /* [pixel] */
#define LEAST_HEIGHT 240
/* Below this the sheet has to leave labels out, so a point is made smaller first [pt]. */
#define EASY_WIDTH  800.0
#define EASY_HEIGHT 520.0
#define MOST_ZOOM   12.0
#define GRIP_SIZE   9.0 /* [pixel] */
#define HALO_WIDTH  4.0

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

static void
forget_halo (GwSheetView *self)
{
  g_clear_pointer (&self->halo, gsk_render_node_unref);
}

static void
forget_drawings (GwSheetView *self)
{
  g_clear_pointer (&self->front, gw_drawing_free);
  g_clear_pointer (&self->back, gw_drawing_free);
  g_clear_pointer (&self->rest, gw_drawing_free);
  g_clear_pointer (&self->ghost, g_free);
  gw_tiles_clear (self->tiles);
  forget_halo (self);
  self->is_stale = TRUE;
}

/* A point is 1/72 inch of the screen's resolution, which grows with the size of text that the
 * user has set; in a small window it is less, down to a pixel. */
static double
get_point (GwSheetView *self,
           int          width,
           int          height)
{
  int          resolution = 0;
  const double room = MIN (width / EASY_WIDTH, height / EASY_HEIGHT);

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-xft-dpi", &resolution, NULL);
  return MAX (MIN (resolution / (1024.0 * 72.0), room), 1.0);
}

static void
soil_box (const GwBox *box,
          void        *tiles)
{
  gw_tiles_soil (tiles, box);
}

static void
soil (GwSheetView     *self,
      const GwDrawing *drawing,
      const bool      *marks)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    if (marks[i])
      gw_drawing_reach (drawing, i, soil_box, self->tiles);
}

/* What is different between the old picture and the new one. */
static void
soil_changes (GwSheetView     *self,
              const GwDrawing *old,
              const GwDrawing *new)
{
  g_autofree bool *gone = gw_drawing_missing (old, new);
  g_autofree bool *come = gw_drawing_missing (new, old);

  soil (self, old, gone);
  soil (self, new, come);
}

/* The ghost shows what the drawing at rest has and the one on the screen has not. */
static void
update_ghost (GwSheetView *self)
{
  g_autofree bool *before = g_steal_pointer (&self->ghost);

  if (self->rest == NULL)
    return;

  self->ghost = gw_drawing_missing (self->rest, self->front);
  for (size_t i = 0; i < gw_drawing_n (self->rest); i++)
    if (self->ghost[i] != (before != NULL && before[i]))
      gw_drawing_reach (self->rest, i, soil_box, self->tiles);
}

static void
end_ghost (GwSheetView *self)
{
  if (self->rest == NULL)
    return;

  if (self->ghost != NULL)
    soil (self, self->rest, self->ghost);
  g_clear_pointer (&self->ghost, g_free);
  if (self->back == NULL)
    self->back = g_steal_pointer (&self->rest);
  g_clear_pointer (&self->rest, gw_drawing_free);
}

/* While something moves, everything else stays where it is; once the bands are there, all may
 * find a better place. */
static void
lay_out (GwSheetView *self)
{
  const gboolean is_trying = gw_document_get_former (self->document) != NULL;
  g_autoptr (GwSheet) sheet = gw_sheet_new (self->evaluation, self->shown, FALSE, &self->units);
  GwDrawing *old;

  if (is_trying && self->rest == NULL && self->front != NULL)
    {
      self->rest = g_steal_pointer (&self->front);
      self->front = gw_drawing_new (gw_theme_get (self->is_dark));
      gw_drawing_follow (self->front, self->rest);
      gw_sheet_layout (sheet, GW_FIGURE_SHEET, self->width / self->point,
                       self->height / self->point, self->front);
      soil_changes (self, self->rest, self->front);
      update_ghost (self);
      return;
    }

  if (!is_trying)
    end_ghost (self);
  if (self->back == NULL)
    self->back = gw_drawing_new (gw_theme_get (self->is_dark));
  gw_drawing_follow (self->back, self->evaluation->is_quick ? self->front : NULL);
  gw_sheet_layout (sheet, GW_FIGURE_SHEET, self->width / self->point, self->height / self->point,
                   self->back);
  if (self->front != NULL)
    soil_changes (self, self->front, self->back);
  old = self->front;
  self->front = self->back;
  self->back = old;
  update_ghost (self);
}

static void
find_grips (GwSheetView *self)
{
  g_clear_pointer (&self->grips, g_array_unref);
  self->grips = gw_grips_of (self->document);
}

static void
prepare (GwSheetView *self,
         int          width,
         int          height)
{
  const double point = get_point (self, width, height);

  if (self->width != width || self->height != height || self->point != point)
    forget_drawings (self);
  self->width = width;
  self->height = height;
  self->point = point;
  if (!self->is_stale)
    return;

  self->is_stale = FALSE;
  lay_out (self);
  find_grips (self);
  forget_halo (self);
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
snapshot_grips (GwSheetView *self,
                GtkSnapshot *snapshot)
{
  const double *paper = gw_theme_get (self->is_dark)->rgb[GW_TONE_PAPER];
  const GdkRGBA fill = { (float) paper[0], (float) paper[1], (float) paper[2], 1.0f };
  GdkRGBA       accent;

  gtk_style_context_lookup_color (gtk_widget_get_style_context (GTK_WIDGET (self)), "accent",
                                  &accent);
  for (guint i = 0; i < self->grips->len; i++)
    {
      const GwGrip  *grip = &g_array_index (self->grips, GwGrip, i);
      GskRoundedRect outline;
      double         x, y;
      const GdkRGBA  colors[] = { accent, accent, accent, accent };
      const float    widths[] = { 1.5f, 1.5f, 1.5f, 1.5f };

      if (grip->kind == GW_GRIP_BALANCE || !_gw_sheet_grip_place (self, grip, &x, &y))
        continue;
      gsk_rounded_rect_init_from_rect (
        &outline,
        &GRAPHENE_RECT_INIT ((float) (x - GRIP_SIZE / 2), (float) (y - GRIP_SIZE / 2), GRIP_SIZE,
                             GRIP_SIZE),
        (float) (grip->kind == GW_GRIP_CHORD ? GRIP_SIZE / 2 : 0.0));
      gtk_snapshot_push_rounded_clip (snapshot, &outline);
      gtk_snapshot_append_color (snapshot, &fill, &outline.bounds);
      gtk_snapshot_pop (snapshot);
      gtk_snapshot_append_border (snapshot, &outline, widths, colors);
    }
}

/* Index of the selected record among the things of the aircraft. */
static GwTarget
selected_target (GwSheetView *self)
{
  static const struct
  {
    const char *list;
    GwGroup     group;
  } groups[] = {
    { "surfaces", GW_GROUP_SURFACE },
    { "bodies", GW_GROUP_BODY },
    { "struts", GW_GROUP_STRUT },
    { "legs", GW_GROUP_LEG },
    { "powers", GW_GROUP_POWER },
    { "equipment", GW_GROUP_ITEM },
  };
  g_auto (GStrv) steps = g_strsplit (gw_document_get_selection (self->document), "/", 3);
  const GwStudy *study = gw_evaluation_outcome (self->evaluation, self->shown)->assembly->study;

  for (guint i = 0; steps[0] != NULL && steps[1] != NULL && i < G_N_ELEMENTS (groups); i++)
    if (g_str_equal (groups[i].list, steps[0]))
      {
        const GwField *field = gw_record_type_field (study->record.type, steps[0]);
        GPtrArray     *list = *(GPtrArray **) gw_record_at (&study->record, field);
        guint          index;

        if (g_ptr_array_find (list, gw_list_find (list, steps[1]), &index))
          return (GwTarget){ (int) groups[i].group, (int) index };
      }

  return GW_TARGET_NONE;
}

static gboolean
is_of (const GwMark *mark,
       GwTarget      target)
{
  return mark->target.group == target.group && mark->target.owner == target.owner &&
         mark->kind == GW_MARK_PATH && mark->is_closed;
}

static gboolean
halo_bounds (const GwDrawing *drawing,
             GwTarget         target,
             GwBox           *out)
{
  double low[2] = { INFINITY, INFINITY }, high[2] = { -INFINITY, -INFINITY };

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    if (is_of (gw_drawing_mark (drawing, i), target))
      {
        const GwBox *box = &gw_drawing_mark (drawing, i)->box;

        low[0] = MIN (low[0], box->x);
        low[1] = MIN (low[1], box->y);
        high[0] = MAX (high[0], box->x + box->width);
        high[1] = MAX (high[1], box->y + box->height);
      }

  *out = (GwBox){ low[0] - HALO_WIDTH, low[1] - HALO_WIDTH, high[0] - low[0] + 2 * HALO_WIDTH,
                  high[1] - low[1] + 2 * HALO_WIDTH };
  return low[0] <= high[0];
}

static void
trace_halo (GwSheetView *self,
            cairo_t     *cr,
            GwTarget     target)
{
  const double *xy = gw_drawing_points (self->front);
  GdkRGBA       accent;

  gtk_style_context_lookup_color (gtk_widget_get_style_context (GTK_WIDGET (self)), "accent",
                                  &accent);
  accent.alpha = 0.45f;
  gdk_cairo_set_source_rgba (cr, &accent);
  cairo_set_line_width (cr, HALO_WIDTH);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  for (size_t i = 0; i < gw_drawing_n (self->front); i++)
    {
      const GwMark *mark = gw_drawing_mark (self->front, i);

      if (!is_of (mark, target))
        continue;
      cairo_new_sub_path (cr);
      for (size_t k = 0; k < mark->n; k++)
        cairo_line_to (cr, xy[2 * (mark->first + k)], xy[2 * (mark->first + k) + 1]);
      cairo_close_path (cr);
    }
  cairo_stroke (cr);
}

/* Kept as a node: as long as nothing under it moves, it is not painted again. */
static void
snapshot_halo (GwSheetView *self,
               GtkSnapshot *snapshot)
{
  const GwTarget target = selected_target (self);
  const double   zoom = self->point * self->zoom;
  GwBox          box;

  if (self->halo == NULL && target.group >= 0 && halo_bounds (self->front, target, &box))
    {
      graphene_rect_t bounds;
      double          x, y;
      cairo_t        *cr;

      gw_sheet_view_to_widget (self, box.x, box.y, &x, &y);
      graphene_rect_init (&bounds, (float) x, (float) y, (float) (box.width * zoom),
                          (float) (box.height * zoom));
      self->halo = gsk_cairo_node_new (&bounds);
      cr = gsk_cairo_node_get_draw_context (self->halo);
      cairo_translate (cr, -self->x, -self->y);
      cairo_scale (cr, zoom, zoom);
      trace_halo (self, cr, target);
      cairo_destroy (cr);
    }
  if (self->halo != NULL)
    gtk_snapshot_append_node (snapshot, self->halo);
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

  prepare (self, width, height);
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
  snapshot_halo (self, snapshot);
  snapshot_grips (self, snapshot);
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
  forget_halo (self);
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

static void
append_result (GString         *out,
               const GwOutcome *outcome,
               GwResultId       id,
               const GwUnits   *units)
{
  const GwResultInfo *info = gw_result_info (id);
  g_autofree char    *value = NULL;

  if (!info->is_on_sheet || !isfinite (outcome->results.value[id]))
    return;

  value = gw_value_text (id, outcome->results.value[id], units);
  g_string_append_printf (out, "; %s %s %s", g_dgettext (GETTEXT_PACKAGE, info->label), value,
                          gw_result_unit (id, units));
  if (gw_limit_of (outcome, id) == GW_LIMIT_BROKEN)
    g_string_append_printf (out, " (%s)", _ ("limit not kept"));
}

static char *
describe (const GwEvaluation *evaluation,
          guint               shown,
          const GwUnits      *units)
{
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, _ ("Planform and side view of %s, and all options side by side."),
                          gw_evaluation_outcome (evaluation, shown)->name);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);

      g_string_append_printf (out, "\n%s", outcome->name);
      if (i == evaluation->baseline)
        g_string_append_printf (out, " (%s)", _ ("baseline"));
      for (guint id = 0; id < GW_N_RESULTS; id++)
        append_result (out, outcome, (GwResultId) id, units);
      g_string_append_c (out, '.');
    }

  return g_string_free (out, FALSE);
}

/* Not while a hand moves something: nobody could listen that fast. */
static void
update_text (GwSheetView *self)
{
  if (self->document != NULL && gw_document_get_former (self->document) != NULL)
    return;

  g_free (self->text);
  self->text =
    self->evaluation != NULL ? describe (self->evaluation, self->shown, &self->units) : NULL;
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
    forget_drawings (self);
  self->shown = shown;
  self->is_stale = TRUE;
  update_text (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
selection_cb (GwSheetView *self)
{
  if (self->evaluation != NULL)
    find_grips (self);
  forget_halo (self);
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
  forget_drawings (self);
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
  forget_drawings (self);
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
  forget_drawings (self);
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

  forget_drawings (self);
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
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Drawing sheet"), -1);
  _gw_sheet_add_hands (self);
}
