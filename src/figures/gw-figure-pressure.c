/* gw-figure-pressure.c - pressure along the chord, and what the layers do there
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-figures-i18n.h"
#include "figures/gw-pressure-private.h"

#define STRIP_SHARE 0.36 /* of the height that the outline takes at most */
#define MIN_CHORD   80.0 /* of an outline worth drawing [pt] */

static void
label_curves (GwDrawing              *drawing,
              const GwPressureFigure *figure,
              const GwPlot           *plot,
              GwCallouts             *callouts)
{
  GwPressureStation stations[GW_PRESSURE_STATIONS_MAX];
  const size_t      n = gw_pressure_stations (figure, stations);

  for (size_t i = 0; i < n; i++)
    {
      const GwPressureStation *at = &stations[i];
      const double             pressure =
        gw_pressure_at (figure, at->is_upper, at->x, figure->pressure);

      gw_pressure_label (drawing, callouts, at, gw_plot_x (plot, at->x), gw_plot_y (plot, pressure),
                         true);
    }
}

static void
label_side (GwDrawing              *drawing,
            const GwPressureFigure *figure,
            const GwPlot           *plot,
            bool                    is_upper,
            size_t                  since)
{
  static const double places[] = { 0.55, 0.45, 0.65, 0.35, 0.75, 0.25, 0.85 };
  const char         *word = is_upper ? _ ("upper side") : _ ("lower side");
  const size_t        before = gw_drawing_n (drawing);

  for (size_t i = 0; i < G_N_ELEMENTS (places) && gw_drawing_n (drawing) == before; i++)
    {
      const double     y = gw_pressure_at (figure, is_upper, places[i], figure->pressure);
      const GwPlotLine point = { .n = 1, .x = &places[i], .y = &y };

      gw_plot_label (drawing, plot, &point, 1, &word, since);
    }
}

/* Where the flow runs backwards within a bubble. */
static void
draw_bubbles (GwDrawing              *drawing,
              const GwPressureFigure *figure,
              const GwPlot           *plot)
{
  for (size_t i = 0; i < figure->n_events; i++)
    if (figure->events[i].kind == GW_FLOW_BUBBLE)
      {
        const GwFlowEvent *event = &figure->events[i];
        const double       x = gw_plot_x (plot, event->from);
        GwMark            *mark = gw_rectangle (
                     drawing,
                     (GwBox){ x, plot->box.y, gw_plot_x (plot, event->to) - x, plot->box.height },
                     GW_LINE_NONE, GW_TONE_FAINT);

        mark->is_filled = true;
        mark->fill = GW_TONE_FAINT;
        mark->opacity = 0.3;
      }
}

static void
draw_curves (GwDrawing              *drawing,
             const GwPressureFigure *figure,
             const GwPlot           *plot)
{
  GwCallouts callouts = {
    .bounds = gw_box_inset (plot->box, 2),
    .gap = 1.5,
    .longest = 150,
    .middle = -INFINITY,
    .may_cover = true,
  };

  gw_plot_axes (drawing, plot);
  callouts.since = gw_drawing_n (drawing);
  draw_bubbles (drawing, figure, plot);
  for (int is_upper = 0; is_upper < 2; is_upper++)
    {
      const GwPressureSide side = gw_pressure_side (figure, is_upper);
      const GwPlotLine     line = { .n = side.n,
                                    .x = figure->x + side.first,
                                    .y = figure->pressure + side.first,
                                    .line = is_upper ? GW_LINE_WIDE : GW_LINE_NARROW,
                                    .tone = GW_TONE_INK };

      gw_plot_line (drawing, plot, &line);
    }
  label_curves (drawing, figure, plot, &callouts);
  for (int is_upper = 1; is_upper >= 0; is_upper--)
    label_side (drawing, figure, plot, is_upper, callouts.since);
}

/* Room above or below the outline for the words of its events. */
static double
margin_of (GwDrawing              *drawing,
           const GwPressureFigure *figure,
           bool                    is_upper)
{
  const double line = gw_text_line (drawing, GW_FONT_SMALL);

  for (size_t i = 0; i < figure->n_events; i++)
    if (figure->events[i].is_upper == is_upper)
      return 2 * GW_PRESSURE_OFFSET + 2.5 * line;
  return GW_PRESSURE_OFFSET;
}

/* The chord of both to one scale: a low box is not used in all its width. */
static void
draw_both (GwDrawing              *drawing,
           GwBox                   box,
           const GwPressureFigure *figure)
{
  const double top = margin_of (drawing, figure, true);
  const double margin = top + margin_of (drawing, figure, false);
  GwPlot       plot = { .x = GW_AXIS_NEW (100, _ ("of the chord, %")),
                        .y = GW_AXIS_NEW (1, _ ("pressure coefficient, suction upwards")),
                        .is_down = true };
  double       highest, extent = gw_pressure_extent (figure, &highest), widest;
  GwBox        strip = { 0 };

  for (size_t i = 0; i < figure->n; i++)
    {
      gw_axis_widen (&plot.x, figure->x[i]);
      gw_axis_widen (&plot.y, figure->pressure[i]);
    }
  gw_axis_widen (&plot.x, 0);
  gw_axis_widen (&plot.x, 1);
  gw_axis_widen (&plot.y, 1);
  widest = (STRIP_SHARE * box.height - margin) / extent;
  if (widest > MIN_CHORD)
    {
      box.width = fmin (box.width, widest);
      strip = gw_box_take_bottom (&box, box.width * extent + margin);
    }
  if (!gw_plot_place (drawing, &plot, box))
    return;
  draw_curves (drawing, figure, &plot);
  if (strip.height > 0)
    gw_pressure_outline (drawing, strip, figure, &plot,
                         strip.y + top + highest * gw_pressure_chord (&plot));
}

static void
draw_outline_alone (GwDrawing              *drawing,
                    GwBox                   box,
                    const GwPressureFigure *figure)
{
  double       highest;
  const double extent = gw_pressure_extent (figure, &highest);
  GwPlot       plot = { .x = GW_AXIS_NEW (1, NULL) };

  gw_axis_widen (&plot.x, 0);
  gw_axis_widen (&plot.x, 1);
  box = gw_box_inset (box, 2 * GW_PRESSURE_OFFSET);
  box.width = fmin (box.width, box.height / extent);
  plot.box = box;
  if (box.width > MIN_CHORD)
    gw_pressure_outline (drawing, box, figure, &plot, box.y + highest * box.width);
}

void
gw_figure_pressure (GwDrawing              *drawing,
                    GwBox                   box,
                    const GwPressureFigure *figure)
{
  if (figure->n >= 3 && figure->pressure != NULL)
    {
      draw_both (drawing, gw_plot_frame (drawing, box, &figure->words, 0, NULL), figure);
      return;
    }

  box = gw_plot_without (drawing, box, &figure->words);
  if (figure->n >= 3)
    draw_outline_alone (drawing, box, figure);
}
