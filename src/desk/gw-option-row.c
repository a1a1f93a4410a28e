/* gw-option-row.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-option-row.h"

#include <glib/gi18n-lib.h>

#include "report/gw-sheet.h"
#include "study/gw-result.h"

#define MARKER_SIZE 10.0

struct _GwOptionRow
{
  GtkListBoxRow parent_instance;

  GtkDrawingArea *mark;
  GtkLabel       *name, *detail;
  guint           option;
  gboolean        is_dark;
};

G_DEFINE_FINAL_TYPE (GwOptionRow, gw_option_row, GTK_TYPE_LIST_BOX_ROW)

/* Line and marker as they stand on the sheet. */
static void
draw_mark (GtkDrawingArea *area,
           cairo_t        *cr,
           int             width,
           int             height,
           gpointer        data)
{
  const GwOptionRow *self = data;
  const int          style = (int) self->option % GW_OPTION_STYLES;
  const double       line[] = { 0.0, height / 2.0, width, height / 2.0 };
  GwDrawing         *drawing = gw_drawing_new (gw_theme_get (self->is_dark));

  gw_drawing_path (drawing, 2, line, (GwLineType) (GW_LINE_OPTION + style),
                   (GwTone) (GW_TONE_OPTION + style));
  gw_drawing_symbol (drawing, (GwMarkKind) (GW_MARK_OPTION + style), width / 2.0, height / 2.0,
                     MARKER_SIZE, (GwTone) (GW_TONE_OPTION + style));
  gw_drawing_ink (drawing, cr);
  gw_drawing_free (drawing);
}

static void
gw_option_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_OPTION_ROW);

  G_OBJECT_CLASS (gw_option_row_parent_class)->dispose (object);
}

static void
gw_option_row_class_init (GwOptionRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_option_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-option-row.ui");
  gtk_widget_class_bind_template_child (widget_class, GwOptionRow, mark);
  gtk_widget_class_bind_template_child (widget_class, GwOptionRow, name);
  gtk_widget_class_bind_template_child (widget_class, GwOptionRow, detail);
}

static void
gw_option_row_init (GwOptionRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (self->mark, draw_mark, self, NULL);
}

GtkWidget *
gw_option_row_new (void)
{
  return g_object_new (GW_TYPE_OPTION_ROW, NULL);
}

static char *
result_text (const GwOutcome *outcome,
             GwResultId       id)
{
  g_autofree char *value = gw_value_text (id, outcome->results.value[id], NULL);

  return g_strdup_printf ("%s %s", value, gw_quantity_unit (gw_result_info (id)->quantity)->unit);
}

void
gw_option_row_update (GwOptionRow        *self,
                      const GwEvaluation *evaluation,
                      guint               option,
                      gboolean            is_dark)
{
  const GwOutcome *outcome = gw_evaluation_outcome (evaluation, option);
  g_autofree char *mass = result_text (outcome, GW_RESULT_MASS);
  g_autofree char *speed = result_text (outcome, GW_RESULT_STALL_SPEED);
  /* Translators: mass, then stall speed: "1365 g, stalls at 7.78 m/s" */
  g_autofree char *detail = g_strdup_printf (_ ("%s, stalls at %s"), mass, speed);
  g_autofree char *name = option == evaluation->baseline
                            ? g_strdup_printf (_ ("%s (baseline)"), outcome->name)
                            : g_strdup (outcome->name);

  self->option = option;
  self->is_dark = is_dark;
  gtk_label_set_text (self->name, name);
  gtk_label_set_text (self->detail, detail);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, detail, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self->mark));
}
