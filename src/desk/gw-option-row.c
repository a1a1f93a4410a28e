/* gw-option-row.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-option-row.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-outline-text.h"
#include "report/gw-sheet.h"
#include "study/gw-result.h"

#define MARKER_SIZE 10.0
#define MARK_WIDTH  28
#define MARK_HEIGHT 20

struct _GwOptionRow
{
  GwOutlineRow parent_instance;

  GtkDrawingArea *mark;
  guint           option;
  gboolean        is_dark;
};

G_DEFINE_FINAL_TYPE (GwOptionRow, gw_option_row, GW_TYPE_OUTLINE_ROW)

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
gw_option_row_class_init (GwOptionRowClass *klass)
{
}

static void
gw_option_row_init (GwOptionRow *self)
{
  self->mark =
    g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION,
                  "content-width", MARK_WIDTH, "content-height", MARK_HEIGHT, NULL);
  gtk_drawing_area_set_draw_func (self->mark, draw_mark, self, NULL);
  gw_outline_row_set_mark (GW_OUTLINE_ROW (self), GTK_WIDGET (self->mark));
  gw_outline_row_wrap_name (GW_OUTLINE_ROW (self));
}

GtkWidget *
gw_option_row_new (void)
{
  return g_object_new (GW_TYPE_OPTION_ROW, NULL);
}

static void
set_mark (GwOptionRow *self,
          guint        option,
          gboolean     is_dark)
{
  if (self->option == option && self->is_dark == is_dark)
    return;

  self->option = option;
  self->is_dark = is_dark;
  gtk_widget_queue_draw (GTK_WIDGET (self->mark));
}

void
gw_option_row_update (GwOptionRow        *self,
                      const GwEvaluation *evaluation,
                      guint               option,
                      const GwUnits      *units,
                      gboolean            is_dark)
{
  const GwOutcome *outcome = gw_evaluation_outcome (evaluation, option);
  g_autofree char *path = NULL, *name = NULL, *detail = NULL, *mass = NULL, *speed = NULL;

  g_return_if_fail (GW_IS_OPTION_ROW (self));

  mass = gw_outline_result_text (&outcome->results, GW_RESULT_MASS, units);
  speed = gw_outline_result_text (&outcome->results, GW_RESULT_STALL_SPEED, units);
  /* Translators: mass, then stall speed: "1365 g, stalls at 7.78 m/s" */
  detail = g_strdup_printf (_ ("%s, stalls at %s"), mass, speed);
  name = option == evaluation->baseline ? g_strdup_printf (_ ("%s (baseline)"), outcome->name)
                                        : g_strdup (outcome->name);
  path = g_strconcat ("options/", outcome->id, NULL);

  gw_outline_row_set (GW_OUTLINE_ROW (self), path, name, detail);
  set_mark (self, option, is_dark);
}
