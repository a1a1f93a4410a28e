/* gw-planform-view.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-planform-view.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>

#include "report/gw-sheet.h"

#define SMALL_POINT  0.75 /* [pixel] at the usual size of text */
#define LEAST_WIDTH  120  /* [pixel] */
#define LEAST_HEIGHT 90

struct _GwPlanformView
{
  GtkWidget parent_instance;

  GwEvaluation *evaluation;
  gboolean      is_small, is_dark;
};

G_DEFINE_FINAL_TYPE (GwPlanformView, gw_planform_view, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_SMALL,
  PROP_DARK,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

static void
gw_planform_view_snapshot (GtkWidget   *widget,
                           GtkSnapshot *snapshot)
{
  GwPlanformView *self = GW_PLANFORM_VIEW (widget);
  const int       width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  int             resolution = 96 * 1024;
  double          point;
  GwDrawing      *drawing;
  cairo_t        *cr;
  g_autoptr (GwSheet) sheet = NULL;

  if (self->evaluation == NULL || width < LEAST_WIDTH || height < LEAST_HEIGHT)
    return;

  g_object_get (gtk_widget_get_settings (widget), "gtk-xft-dpi", &resolution, NULL);
  point = MAX (resolution / (96.0 * 1024.0), 1.0) * (self->is_small ? SMALL_POINT : 1.0);
  sheet = gw_sheet_new (self->evaluation, self->evaluation->baseline, FALSE, NULL);
  drawing = gw_drawing_new (gw_theme_get (self->is_dark));
  gw_sheet_layout (sheet, GW_FIGURE_PLANFORM, width / point, height / point, drawing);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float) width, (float) height));
  cairo_scale (cr, point, point);
  gw_drawing_ink (drawing, cr);
  cairo_destroy (cr);
  gw_drawing_free (drawing);
}

static void
gw_planform_view_measure (GtkWidget     *widget,
                          GtkOrientation orientation,
                          int            for_size,
                          int           *minimum,
                          int           *natural,
                          int           *minimum_baseline,
                          int           *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : LEAST_HEIGHT;
  *natural = *minimum * 5 / 4;
}

static void
gw_planform_view_get_property (GObject    *object,
                               guint       id,
                               GValue     *value,
                               GParamSpec *pspec)
{
  GwPlanformView *self = GW_PLANFORM_VIEW (object);

  switch (id)
    {
    case PROP_SMALL:
      g_value_set_boolean (value, self->is_small);
      break;
    case PROP_DARK:
      g_value_set_boolean (value, self->is_dark);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_planform_view_set_property (GObject      *object,
                               guint         id,
                               const GValue *value,
                               GParamSpec   *pspec)
{
  GwPlanformView *self = GW_PLANFORM_VIEW (object);

  switch (id)
    {
    case PROP_SMALL:
      self->is_small = g_value_get_boolean (value);
      break;
    case PROP_DARK:
      self->is_dark = g_value_get_boolean (value);
      gtk_widget_queue_draw (GTK_WIDGET (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_planform_view_finalize (GObject *object)
{
  g_clear_pointer (&GW_PLANFORM_VIEW (object)->evaluation, gw_evaluation_unref);

  G_OBJECT_CLASS (gw_planform_view_parent_class)->finalize (object);
}

static void
gw_planform_view_class_init (GwPlanformViewClass *klass)
{
  GObjectClass     *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass   *widget_class = GTK_WIDGET_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;

  object_class->get_property = gw_planform_view_get_property;
  object_class->set_property = gw_planform_view_set_property;
  object_class->finalize = gw_planform_view_finalize;
  widget_class->snapshot = gw_planform_view_snapshot;
  widget_class->measure = gw_planform_view_measure;
  properties[PROP_SMALL] = g_param_spec_boolean ("is-small", NULL, NULL, FALSE,
                                                 flags | G_PARAM_CONSTRUCT_ONLY);
  properties[PROP_DARK] = g_param_spec_boolean ("dark", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_set_css_name (widget_class, "planform");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
gw_planform_view_init (GwPlanformView *self)
{
  gw_access_name (GTK_WIDGET (self), _ ("Planform"));
}

GtkWidget *
gw_planform_view_new (gboolean is_small)
{
  return g_object_new (GW_TYPE_PLANFORM_VIEW, "is-small", is_small, NULL);
}

void
gw_planform_view_show (GwPlanformView *self,
                       GwEvaluation   *evaluation)
{
  g_return_if_fail (GW_IS_PLANFORM_VIEW (self));

  gw_evaluation_ref (evaluation);
  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  self->evaluation = evaluation;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
