/* gw-sheet-view.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sheet-view.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-result.h"

#define LEAST_WIDTH  320 /* [pixel] */
#define LEAST_HEIGHT 240
/* Below this the sheet has to leave labels out, so a point is made smaller first [pt]. */
#define EASY_WIDTH  800.0
#define EASY_HEIGHT 520.0

struct _GwSheetView
{
  GtkWidget parent_instance;

  GwEvaluation *evaluation;
  guint         shown;
  gboolean      is_dark;
  char         *text;

  GwDrawing  *drawing;
  GdkTexture *ink;           /* of the drawing */
  int         width, height; /* of both [pixel] */
  int         scale;
  double      point; /* [pixel] */
};

G_DEFINE_FINAL_TYPE (GwSheetView, gw_sheet_view, GTK_TYPE_WIDGET)

static void
forget_ink (GwSheetView *self)
{
  g_clear_object (&self->ink);
  g_clear_pointer (&self->drawing, gw_drawing_free);
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
lay_out (GwSheetView *self,
         int          width,
         int          height)
{
  g_autoptr (GwSheet) sheet = NULL;
  const double point = get_point (self, width, height);

  if (self->drawing != NULL && self->width == width && self->height == height &&
      self->point == point)
    return;

  forget_ink (self);
  sheet = gw_sheet_new (self->evaluation, self->shown, FALSE);
  self->drawing =
    gw_sheet_draw (sheet, GW_FIGURE_SHEET, width / point, height / point, self->is_dark);
  self->width = width;
  self->height = height;
  self->point = point;
}

static GdkTexture *
texture_new (cairo_surface_t *surface)
{
  const int   width = cairo_image_surface_get_width (surface);
  const int   height = cairo_image_surface_get_height (surface);
  const gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = NULL;

  cairo_surface_flush (surface);
  bytes =
    g_bytes_new_with_free_func (cairo_image_surface_get_data (surface), stride * (gsize) height,
                                (GDestroyNotify) cairo_surface_destroy, surface);
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}

static void
ink (GwSheetView *self,
     int          scale)
{
  const double    *paper = gw_drawing_theme (self->drawing)->rgb[GW_TONE_PAPER];
  cairo_surface_t *surface;
  cairo_t         *cr;

  if (self->ink != NULL && self->scale == scale)
    return;

  surface =
    cairo_image_surface_create (CAIRO_FORMAT_ARGB32, self->width * scale, self->height * scale);
  cairo_surface_set_device_scale (surface, scale * self->point, scale * self->point);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, paper[0], paper[1], paper[2]);
  cairo_paint (cr);
  gw_drawing_ink (self->drawing, cr);
  cairo_destroy (cr);

  g_clear_object (&self->ink);
  self->ink = texture_new (surface);
  self->scale = scale;
}

static void
gw_sheet_view_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  GwSheetView *self = GW_SHEET_VIEW (widget);
  const int    width = gtk_widget_get_width (widget);
  const int    height = gtk_widget_get_height (widget);

  if (self->evaluation == NULL || width < LEAST_WIDTH || height < LEAST_HEIGHT)
    return;

  lay_out (self, width, height);
  ink (self, gtk_widget_get_scale_factor (widget));
  gtk_snapshot_append_texture (snapshot, self->ink,
                               &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float) width, (float) height));
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
gw_sheet_view_finalize (GObject *object)
{
  GwSheetView *self = GW_SHEET_VIEW (object);

  forget_ink (self);
  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  g_clear_pointer (&self->text, g_free);

  G_OBJECT_CLASS (gw_sheet_view_parent_class)->finalize (object);
}

static void
gw_sheet_view_class_init (GwSheetViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gw_sheet_view_finalize;
  widget_class->snapshot = gw_sheet_view_snapshot;
  widget_class->measure = gw_sheet_view_measure;
  gtk_widget_class_set_css_name (widget_class, "sheet");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
gw_sheet_view_init (GwSheetView *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Drawing sheet"), -1);
}

static void
append_result (GString         *out,
               const GwOutcome *outcome,
               GwResultId       id)
{
  const GwResultInfo *info = gw_result_info (id);
  g_autofree char    *value = NULL;

  if (!info->is_on_sheet || !isfinite (outcome->results.value[id]))
    return;

  value = gw_value_text (id, outcome->results.value[id]);
  g_string_append_printf (out, "; %s %s %s", g_dgettext (GETTEXT_PACKAGE, info->label), value,
                          gw_quantity_unit (info->quantity)->unit);
  if (gw_limit_of (outcome, id) == GW_LIMIT_BROKEN)
    g_string_append_printf (out, " (%s)", _ ("limit not kept"));
}

static char *
describe (const GwEvaluation *evaluation,
          guint               shown)
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
        append_result (out, outcome, (GwResultId) id);
      g_string_append_c (out, '.');
    }

  return g_string_free (out, FALSE);
}

void
gw_sheet_view_show (GwSheetView  *self,
                    GwEvaluation *evaluation,
                    guint         shown,
                    gboolean      is_dark)
{
  g_return_if_fail (GW_IS_SHEET_VIEW (self));
  g_return_if_fail (evaluation == NULL || shown < evaluation->outcomes->len);

  if (self->evaluation == evaluation && self->shown == shown && self->is_dark == is_dark)
    return;

  if (evaluation != NULL)
    gw_evaluation_ref (evaluation);
  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  self->evaluation = evaluation;
  self->shown = shown;
  self->is_dark = is_dark;
  forget_ink (self);

  g_free (self->text);
  self->text = evaluation != NULL ? describe (evaluation, shown) : NULL;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  self->text != NULL ? self->text : "", -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const GwDrawing *
gw_sheet_view_get_drawing (GwSheetView *self)
{
  g_return_val_if_fail (GW_IS_SHEET_VIEW (self), NULL);

  return self->drawing;
}

const char *
gw_sheet_view_get_text (GwSheetView *self)
{
  g_return_val_if_fail (GW_IS_SHEET_VIEW (self), NULL);

  return self->text;
}
