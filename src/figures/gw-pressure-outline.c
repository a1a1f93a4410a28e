/* gw-pressure-outline.c - the outline under a pressure, and what the layers do along it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-figures-i18n.h"
#include "figures/gw-pressure-private.h"

GwPressureSide
gw_pressure_side (const GwPressureFigure *figure,
                  bool                    is_upper)
{
  size_t nose = 0;

  for (size_t i = 1; i < figure->n; i++)
    if (figure->x[i] < figure->x[nose])
      nose = i;

  return is_upper ? (GwPressureSide){ 0, nose + 1 } : (GwPressureSide){ nose, figure->n - nose };
}

double
gw_pressure_at (const GwPressureFigure *figure,
                bool                    is_upper,
                double                  x,
                const double           *values)
{
  const GwPressureSide side = gw_pressure_side (figure, is_upper);

  for (size_t i = side.first; i + 1 < side.first + side.n; i++)
    {
      const double a = figure->x[i], b = figure->x[i + 1];

      if (a != b && (x - a) * (x - b) <= 0)
        return values[i] + (x - a) / (b - a) * (values[i + 1] - values[i]);
    }

  return x < 0.5 ? values[is_upper ? side.n - 1 : side.first]
                 : values[is_upper ? 0 : side.first + side.n - 1];
}

double
gw_pressure_extent (const GwPressureFigure *figure,
                    double                 *highest)
{
  double low = INFINITY;

  *highest = -INFINITY;
  for (size_t i = 0; i < figure->n; i++)
    {
      low = fmin (low, figure->y[i]);
      *highest = fmax (*highest, figure->y[i]);
    }

  return *highest - low;
}

double
gw_pressure_chord (const GwPlot *plot)
{
  return plot->box.width / (plot->x.high - plot->x.low);
}

size_t
gw_pressure_stations (const GwPressureFigure *figure,
                      GwPressureStation      *stations)
{
  const char *const starts[] = {
    [GW_FLOW_TRANSITION] = _ ("transition"),
    [GW_FLOW_BUBBLE] = _ ("laminar separation"),
    [GW_FLOW_SEPARATION] = _ ("turbulent separation"),
    [GW_FLOW_LAMINAR_SEPARATION] = _ ("laminar separation, stays off"),
  };
  size_t n = 0;

  for (size_t i = 0; i < figure->n_events && n + 2 <= GW_PRESSURE_STATIONS_MAX; i++)
    {
      const GwFlowEvent *event = &figure->events[i];

      stations[n++] = (GwPressureStation){ starts[event->kind], event->is_upper, event->from,
                                           event->kind == GW_FLOW_TRANSITION };
      if (event->kind == GW_FLOW_BUBBLE)
        stations[n++] =
          (GwPressureStation){ _ ("reattachment"), event->is_upper, event->to, false };
    }

  return n;
}

void
gw_pressure_label (GwDrawing               *drawing,
                   GwCallouts              *callouts,
                   const GwPressureStation *station,
                   double                   x,
                   double                   y,
                   bool                     is_placed)
{
  char           *placed = g_strdup_printf (_ ("%s %.0f %%"), station->word, 100 * station->x);
  const GwCallout callout = {
    .x = x,
    .y = y,
    .radius = 1.2,
    .has_dot = true,
    .text = is_placed ? placed : station->word,
    .font = GW_FONT_SMALL,
    .tone = GW_TONE_INK,
    .target = GW_TARGET_NONE,
  };

  if (!gw_callouts_place (drawing, callouts, 1, &callout))
    gw_drawing_symbol (drawing, GW_MARK_DOT, x, y, 2.4, GW_TONE_MID);
  g_free (placed);
}

/* Height of the outline on the drawing [pt]. */
static double
skin_at (const GwPressureFigure *figure,
         const GwPlot           *plot,
         bool                    is_upper,
         double                  x,
         double                  middle)
{
  return middle - gw_pressure_at (figure, is_upper, x, figure->y) * gw_pressure_chord (plot);
}

/* A line off the outline along what is separated: wide and whole over a bubble, dashed where the
 * flow stays off. */
static void
draw_separated (GwDrawing              *drawing,
                const GwPressureFigure *figure,
                const GwPlot           *plot,
                const GwFlowEvent      *event,
                double                  middle)
{
  const GwPressureSide side = gw_pressure_side (figure, event->is_upper);
  double              *xy = g_new (double, 2 * (side.n + 2));
  size_t               n = 0;

  for (size_t i = 0; i < side.n + 2; i++)
    {
      const double end = event->is_upper ? event->to : event->from;
      const double start = event->is_upper ? event->from : event->to;
      const double x = i == 0            ? end
                       : i == side.n + 1 ? start
                                         : figure->x[side.first + i - 1];

      if (x < event->from || x > event->to)
        continue;
      xy[2 * n] = gw_plot_x (plot, x);
      xy[2 * n++ + 1] = skin_at (figure, plot, event->is_upper, x, middle) +
                        (event->is_upper ? -GW_PRESSURE_OFFSET : GW_PRESSURE_OFFSET);
    }
  if (n >= 2)
    gw_drawing_path (drawing, n, xy,
                     event->kind == GW_FLOW_BUBBLE ? GW_LINE_WIDE : GW_LINE_HIDDEN, GW_TONE_INK);
  g_free (xy);
}

/* Words stand on the side they are of: no leader runs across the outline. Transition is a tick, the
 * others are ends of lines along the outline. */
static void
label_outline (GwDrawing              *drawing,
               GwBox                   box,
               const GwPressureFigure *figure,
               const GwPlot           *plot,
               size_t                  since,
               double                  middle)
{
  GwCallouts        callouts = { .since = since, .gap = 1.5, .longest = 70, .middle = -INFINITY };
  GwPressureStation stations[GW_PRESSURE_STATIONS_MAX];
  const size_t      n = gw_pressure_stations (figure, stations);

  for (size_t i = 0; i < n; i++)
    {
      const GwPressureStation *at = &stations[i];
      const double             x = gw_plot_x (plot, at->x);
      const double             skin = skin_at (figure, plot, at->is_upper, at->x, middle);
      const double             off = (at->is_tick ? 2 : 1) * GW_PRESSURE_OFFSET;
      const double             y = at->is_upper ? skin - off : skin + off;

      if (at->is_tick)
        gw_line_from_to (drawing, x, skin, x, y, GW_LINE_NARROW, GW_TONE_INK);

      callouts.bounds = box;
      if (at->is_upper)
        callouts.bounds.height = fmax (y - box.y, 0);
      else
        gw_box_take_top (&callouts.bounds, fmax (y - box.y, 0));
      gw_pressure_label (drawing, &callouts, at, x, y, false);
    }
}

void
gw_pressure_outline (GwDrawing              *drawing,
                     GwBox                   box,
                     const GwPressureFigure *figure,
                     const GwPlot           *plot,
                     double                  middle)
{
  const size_t since = gw_drawing_n (drawing);
  double      *xy = g_new (double, 2 * figure->n);
  GwMark      *mark;

  for (size_t i = 0; i < figure->n; i++)
    {
      xy[2 * i] = gw_plot_x (plot, figure->x[i]);
      xy[2 * i + 1] = middle - figure->y[i] * gw_pressure_chord (plot);
    }
  mark = gw_drawing_path (drawing, figure->n, xy, GW_LINE_WIDE, GW_TONE_INK);
  mark->is_closed = true;
  mark->is_filled = true;
  mark->fill = GW_TONE_BODY;
  g_free (xy);
  for (size_t i = 0; i < figure->n_events; i++)
    if (figure->events[i].kind != GW_FLOW_TRANSITION)
      draw_separated (drawing, figure, plot, &figure->events[i], middle);
  label_outline (drawing, box, figure, plot, since, middle);
}
