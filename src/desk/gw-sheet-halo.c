/* gw-sheet-halo.c - what is selected, marked on the sheet: a halo about it, its handles
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sheet-private.h"

#include <math.h>

#include "report/gw-owner.h"

#define GRIP_SIZE  9.0 /* [pixel] */
#define HALO_WIDTH 4.0

void
_gw_sheet_forget_halo (GwSheetView *self)
{
  g_clear_pointer (&self->halo, gsk_render_node_unref);
}

static GdkRGBA
get_accent (GwSheetView *self)
{
  GdkRGBA accent = { 0 };

  gtk_style_context_lookup_color (gtk_widget_get_style_context (GTK_WIDGET (self)), "accent",
                                  &accent);
  return accent;
}

void
_gw_sheet_snapshot_grips (GwSheetView *self,
                          GtkSnapshot *snapshot)
{
  const double *paper = gw_theme_get (self->is_dark)->rgb[GW_TONE_PAPER];
  const GdkRGBA fill = { (float) paper[0], (float) paper[1], (float) paper[2], 1.0f };
  const GdkRGBA accent = get_accent (self);

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
  g_auto (GStrv) steps = g_strsplit (gw_document_get_selection (self->document), "/", 3);
  const GwStudy *study = gw_evaluation_outcome (self->evaluation, self->shown)->assembly->study;

  for (guint i = 0; steps[0] != NULL && steps[1] != NULL && i < GW_N_GROUPS; i++)
    if (g_str_equal (gw_group_key ((GwGroup) i), steps[0]))
      {
        GPtrArray *list = (GPtrArray *) gw_group_list (study, (GwGroup) i);
        guint      index;

        if (g_ptr_array_find (list, gw_list_find (list, steps[1]), &index))
          return (GwTarget){ (int) i, (int) index };
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
  GdkRGBA       accent = get_accent (self);

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
void
_gw_sheet_snapshot_halo (GwSheetView *self,
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
