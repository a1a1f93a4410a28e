/* gw-figure-pressure.c - pressure along the chord, and what the layers do there
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-figures-i18n.h"
#include "figures/gw-plot.h"

#define STRIP_SHARE 0.36 /* of the height that the outline takes at most */
#define OFFSET      3.2  /* of a mark along the outline from it [pt] */
#define MIN_CHORD   80.0 /* of an outline worth drawing [pt] */
#define MOST_TEXTS  24

/* Nodes of a side, from the edge (upper) or from the nose (lower). */
typedef struct
{
  size_t first, n;
} Side;

static Side
side_of (const GwPressureFigure *figure,
         bool                    is_upper)
{
  size_t nose = 0;

  for (size_t i = 1; i < figure->n; i++)
    if (figure->x[i] < figure->x[nose])
      nose = i;

  return is_upper ? (Side){ 0, nose + 1 } : (Side){ nose, figure->n - nose };
}

/* @values of that side at @x, straight between the nodes. */
static double
value_at (const GwPressureFigure *figure,
          bool                    is_upper,
          double                  x,
          const double           *values)
{
  const Side side = side_of (figure, is_upper);

  for (size_t i = side.first; i + 1 < side.first + side.n; i++)
    {
      const double a = figure->x[i], b = figure->x[i + 1];

      if (a != b && (x - a) * (x - b) <= 0)
        return values[i] + (x - a) / (b - a) * (values[i + 1] - values[i]);
    }

  return x < 0.5 ? values[is_upper ? side.n - 1 : side.first]
                 : values[is_upper ? 0 : side.first + side.n - 1];
}

static double
extent_of (const GwPressureFigure *figure,
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

/* [pt] */
static double
chord_of (const GwPlot *plot)
{
  return plot->box.width / (plot->x.high - plot->x.low);
}

/* Where each event begins and ends, with a word for it. */
typedef struct
{
  const char *word;
  bool        is_upper;
  double      x;
  bool        is_tick;
} Station;

static size_t
find_stations (const GwPressureFigure *figure,
               Station                *stations)
{
  size_t n = 0;

  for (size_t i = 0; i < figure->n_events && n + 2 <= MOST_TEXTS; i++)
    {
      const GwFlowEvent *event = &figure->events[i];

      switch (event->kind)
        {
        case GW_FLOW_TRANSITION:
          stations[n++] = (Station){ _ ("transition"), event->is_upper, event->from, true };
          break;
        case GW_FLOW_BUBBLE:
          stations[n++] = (Station){ _ ("laminar separation"), event->is_upper, event->from };
          stations[n++] = (Station){ _ ("reattachment"), event->is_upper, event->to };
          break;
        case GW_FLOW_SEPARATION:
          stations[n++] = (Station){ _ ("turbulent separation"), event->is_upper, event->from };
          break;
        case GW_FLOW_LAMINAR_SEPARATION:
          stations[n++] =
            (Station){ _ ("laminar separation, stays off"), event->is_upper, event->from };
          break;
        default:
          break;
        }
    }

  return n;
}

/* A leader to its word, or a dot alone where that has no room. @is_placed: with its place on the
 * chord */
static void
label_station (GwDrawing     *drawing,
               GwCallouts    *callouts,
               const Station *station,
               double         x,
               double         y,
               bool           is_placed)
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

static void
label_curves (GwDrawing              *drawing,
              const GwPressureFigure *figure,
              const GwPlot           *plot,
              GwCallouts             *callouts)
{
  Station      stations[MOST_TEXTS];
  const size_t n = find_stations (figure, stations);

  for (size_t i = 0; i < n; i++)
    {
      const Station *at = &stations[i];
      const double   pressure = value_at (figure, at->is_upper, at->x, figure->pressure);

      label_station (drawing, callouts, at, gw_plot_x (plot, at->x), gw_plot_y (plot, pressure),
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
      const double     y = value_at (figure, is_upper, places[i], figure->pressure);
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
      const Side       side = side_of (figure, is_upper);
      const GwPlotLine line = { .n = side.n,
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

/* A line off the outline along what is separated: wide and whole over a bubble, dashed where the
 * flow stays off. */
static void
draw_separated (GwDrawing              *drawing,
                const GwPressureFigure *figure,
                const GwPlot           *plot,
                const GwFlowEvent      *event,
                double                  middle)
{
  const Side side = side_of (figure, event->is_upper);
  double    *xy = g_new (double, 2 * (side.n + 2));
  size_t     n = 0;

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
      xy[2 * n++ + 1] = middle -
                        value_at (figure, event->is_upper, x, figure->y) * chord_of (plot) +
                        (event->is_upper ? -OFFSET : OFFSET);
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
  GwCallouts   callouts = { .since = since, .gap = 1.5, .longest = 70, .middle = -INFINITY };
  Station      stations[MOST_TEXTS];
  const size_t n = find_stations (figure, stations);

  for (size_t i = 0; i < n; i++)
    {
      const Station *at = &stations[i];
      const double   x = gw_plot_x (plot, at->x);
      const double   skin =
        middle - value_at (figure, at->is_upper, at->x, figure->y) * chord_of (plot);
      const double y = skin + (at->is_upper ? -1 : 1) * (at->is_tick ? 2 : 1) * OFFSET;

      if (at->is_tick)
        gw_line_from_to (drawing, x, skin, x, y, GW_LINE_NARROW, GW_TONE_INK);

      callouts.bounds = box;
      if (at->is_upper)
        callouts.bounds.height = fmax (y - box.y, 0);
      else
        gw_box_take_top (&callouts.bounds, fmax (y - box.y, 0));
      label_station (drawing, &callouts, at, x, y, false);
    }
}

static void
draw_outline (GwDrawing              *drawing,
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
      xy[2 * i + 1] = middle - figure->y[i] * chord_of (plot);
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

/* Room above or below the outline for the words of its events. */
static double
margin_of (GwDrawing              *drawing,
           const GwPressureFigure *figure,
           bool                    is_upper)
{
  const double line = gw_text_line (drawing, GW_FONT_SMALL);

  for (size_t i = 0; i < figure->n_events; i++)
    if (figure->events[i].is_upper == is_upper)
      return 2 * OFFSET + 2.5 * line;
  return OFFSET;
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
  double       highest, extent = extent_of (figure, &highest), widest;
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
    draw_outline (drawing, strip, figure, &plot, strip.y + top + highest * chord_of (&plot));
}

void
gw_figure_pressure (GwDrawing              *drawing,
                    GwBox                   box,
                    const GwPressureFigure *figure)
{
  GwBox rest = gw_plot_frame (drawing, box, &figure->words, 0, NULL);

  if (figure->n >= 3)
    draw_both (drawing, rest, figure);
}
