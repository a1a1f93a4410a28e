/* gw-outline-view.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-outline-view.h"

#include "figures/gw-figure.h"

struct _GwOutlineView
{
  GtkWidget parent_instance;

  GwOutline outline, other;
  gboolean  has_outline, has_other;
};

G_DEFINE_FINAL_TYPE (GwOutlineView, gw_outline_view, GTK_TYPE_WIDGET)

static void
gw_outline_view_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  GwOutlineView *self = GW_OUTLINE_VIEW (widget);
  const int      width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  int            resolution = 96 * 1024;
  gboolean       is_dark = FALSE;
  double         point;
  GwDrawing     *drawing;
  cairo_t       *cr;

  const GwOutlineFigure figure = { &self->outline, self->has_other ? &self->other : NULL };

  if (!self->has_outline || width < 8 || height < 4)
    return;

  g_object_get (gtk_widget_get_settings (widget), "gtk-xft-dpi", &resolution,
                "gtk-application-prefer-dark-theme", &is_dark, NULL);
  point = MAX (resolution / (96.0 * 1024.0), 1.0);
  drawing = gw_drawing_new (gw_theme_get (is_dark));
  gw_figure_outline (drawing, (GwBox){ 0.0, 0.0, width / point, height / point }, &figure);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float) width, (float) height));
  cairo_scale (cr, point, point);
  gw_drawing_ink (drawing, cr);
  cairo_destroy (cr);
  gw_drawing_free (drawing);
}

static void
gw_outline_view_root (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (gw_outline_view_parent_class)->root (widget);

  g_signal_connect_object (gtk_widget_get_settings (widget),
                           "notify::gtk-application-prefer-dark-theme",
                           G_CALLBACK (gtk_widget_queue_draw), widget, G_CONNECT_SWAPPED);
}

static void
gw_outline_view_unroot (GtkWidget *widget)
{
  g_signal_handlers_disconnect_by_data (gtk_widget_get_settings (widget), widget);

  GTK_WIDGET_CLASS (gw_outline_view_parent_class)->unroot (widget);
}

static void
gw_outline_view_class_init (GwOutlineViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = gw_outline_view_snapshot;
  widget_class->root = gw_outline_view_root;
  widget_class->unroot = gw_outline_view_unroot;
  gtk_widget_class_set_css_name (widget_class, "outline");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
gw_outline_view_init (GwOutlineView *self)
{
}

void
gw_outline_view_show (GwOutlineView   *self,
                      const GwOutline *outline,
                      const GwOutline *other)
{
  g_return_if_fail (GW_IS_OUTLINE_VIEW (self));

  self->outline = *outline;
  self->has_outline = TRUE;
  self->has_other = other != NULL;
  if (other != NULL)
    self->other = *other;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
