/* gw-figure-polar.c - lift over drag and over incidence
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-figures-i18n.h"
#include "figures/gw-plot.h"

#define DEG        (G_PI / 180.0)
#define DRAG_SHOWN 4.5 /* times the greatest of the least drags: beyond the stall it runs away */
#define PANE_GAP   8.0
#define NARROW     260.0 /* below that width the pane of drag takes all [pt] */

static double
least_of (const GwPolarLine *line)
{
  double least = INFINITY;

  for (size_t i = 0; i < line->n; i++)
    if (isfinite (line->cd[i]))
      least = fmin (least, line->cd[i]);
  return least;
}

static void
widen_by (GwPlot            *drag,
          GwPlot            *incidence,
          const GwPolarLine *line)
{
  for (size_t i = 0; i < line->n; i++)
    {
      gw_axis_widen (&incidence->x, line->alpha[i]);
      gw_axis_widen (&incidence->y, line->cl[i]);
      gw_axis_widen (&drag->x, line->cd[i]);
    }
}

/* Drag from nothing to some times the least, since what is used of a polar lies there. */
static void
find_ranges (const GwPolarFigure *figure,
             GwPlot              *drag,
             GwPlot              *incidence)
{
  double most = 0;

  for (size_t c = 0; c < figure->n_curves; c++)
    {
      const GwPolarCurve *curve = &figure->curves[c];
      const double        least = fmin (least_of (&curve->built), least_of (&curve->smooth));

      widen_by (drag, incidence, &curve->built);
      widen_by (drag, incidence, &curve->smooth);
      for (size_t i = 0; i < curve->n_points; i++)
        if (curve->points[i].alpha <= incidence->x.high)
          gw_axis_widen (&incidence->y, curve->points[i].cl);
      if (isfinite (least))
        most = fmax (most, least);
    }
  gw_axis_widen (&drag->x, 0);
  drag->x.high = fmin (drag->x.high, DRAG_SHOWN * most);
  gw_axis_widen (&incidence->y, 0);
  drag->y.low = incidence->y.low;
  drag->y.high = incidence->y.high;
}

static GwPlotLine
line_of (const GwPolarCurve *curve,
         bool                is_built,
         bool                is_over_drag)
{
  const GwPolarLine *line = is_built ? &curve->built : &curve->smooth;

  return (GwPlotLine){
    .n = line->n,
    .x = is_over_drag ? line->cd : line->alpha,
    .y = line->cl,
    .is_bridged = line->is_bridged,
    .line = is_built ? gw_section_line (&curve->label) : GW_LINE_NARROW,
    .tone = gw_section_tone (&curve->label),
  };
}

static void
draw_points (GwDrawing          *drawing,
             const GwPlot       *plot,
             const GwPolarCurve *curve,
             bool                is_over_drag)
{
  for (size_t i = 0; i < curve->n_points; i++)
    {
      const GwPolarPoint *point = &curve->points[i];
      const double        x = is_over_drag ? point->cd : point->alpha;

      if (gw_plot_holds (plot, x, point->cl))
        gw_drawing_symbol (drawing, GW_MARK_NEUTRAL, gw_plot_x (plot, x),
                           gw_plot_y (plot, point->cl), 5, gw_section_tone (&curve->label));
    }
}

static void
draw_plot (GwDrawing           *drawing,
           const GwPlot        *plot,
           const GwPolarFigure *figure,
           bool                 is_over_drag)
{
  const char *smooth = _ ("smooth");
  size_t      since;

  gw_plot_axes (drawing, plot);
  since = gw_drawing_n (drawing);
  for (size_t c = 0; c < figure->n_curves; c++)
    for (int is_built = 0; is_built < 2; is_built++)
      {
        const GwPlotLine line = line_of (&figure->curves[c], is_built, is_over_drag);

        gw_plot_line (drawing, plot, &line);
      }
  for (size_t c = 0; c < figure->n_curves; c++)
    draw_points (drawing, plot, &figure->curves[c], is_over_drag);
  for (size_t c = 0; c < figure->n_curves; c++)
    {
      const GwPlotLine line = line_of (&figure->curves[c], true, is_over_drag);

      gw_section_end_label (drawing, plot, &line, &figure->curves[c].label, since);
    }
  for (size_t c = 0; c < figure->n_curves; c++)
    {
      const GwPlotLine line = line_of (&figure->curves[c], false, is_over_drag);

      gw_plot_label (drawing, plot, &line, 1, &smooth, since);
    }
}

static GwKeyRow *
make_key (const GwPolarFigure *figure,
          size_t              *n)
{
  GwKeyRow *rows = g_new0 (GwKeyRow, figure->n_curves + 3);
  bool      has_smooth = false, has_bridge = false, has_points = false;

  for (size_t c = 0; c < figure->n_curves; c++)
    {
      const GwPolarLine *built = &figure->curves[c].built;

      rows[c] = gw_section_key (&figure->curves[c].label);
      has_points = has_points || figure->curves[c].n_points > 0;
      has_smooth = has_smooth || figure->curves[c].smooth.n > 0;
      for (size_t i = 0; i < built->n && !has_bridge; i++)
        has_bridge = built->is_bridged != NULL && built->is_bridged[i];
    }
  *n = figure->n_curves;
  if (has_smooth)
    rows[(*n)++] =
      (GwKeyRow){ .line = GW_LINE_NARROW, .tone = GW_TONE_INK, .text = g_strdup (_ ("smooth")) };
  if (has_bridge)
    rows[(*n)++] = (GwKeyRow){ .line = GW_LINE_HIDDEN,
                               .tone = GW_TONE_INK,
                               .text = g_strdup (_ ("not converged, bridged")) };
  if (has_points)
    rows[(*n)++] = (GwKeyRow){ .symbol = GW_MARK_NEUTRAL,
                               .tone = GW_TONE_INK,
                               .text = g_strdup (_ ("printed, see the sources")) };

  return rows;
}

static void
draw_panes (GwDrawing           *drawing,
            GwBox                box,
            const GwPolarFigure *figure)
{
  GwPlot drag = { .x = GW_AXIS_NEW (1, _ ("drag coefficient")),
                  .y = GW_AXIS_NEW (1, _ ("lift coefficient")) };
  GwPlot incidence = { .x = GW_AXIS_NEW (1 / DEG, _ ("incidence, °")), .y = drag.y };
  bool   has_drag;

  find_ranges (figure, &drag, &incidence);
  has_drag = drag.x.high > drag.x.low && box.width >= NARROW;
  if (has_drag && gw_plot_place (drawing, &drag, gw_box_take_left (&box, 0.5 * box.width)))
    {
      draw_plot (drawing, &drag, figure, true);
      gw_box_take_left (&box, PANE_GAP);
      incidence.has_no_numbers = true;
    }
  if (gw_plot_place (drawing, &incidence, box))
    draw_plot (drawing, &incidence, figure, false);
}

void
gw_figure_polar (GwDrawing           *drawing,
                 GwBox                box,
                 const GwPolarFigure *figure)
{
  size_t    n_rows;
  GwKeyRow *rows;

  if (figure->n_curves == 0)
    {
      gw_plot_without (drawing, box, &figure->words);
      return;
    }

  rows = make_key (figure, &n_rows);
  draw_panes (drawing, gw_plot_frame (drawing, box, &figure->words, n_rows, rows), figure);
  gw_keys_free (n_rows, rows);
}
