/* gw-stall-curves.c - curves, bands, whiskers and markers in the stall plot
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <string.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-stall-private.h"

#define BAND_STEPS 6         /* nested fills that let a band fade towards its edges */
#define UNSEEN     (1 / 4.0) /* while something moves [pt] */

GwTone
gw_stall_tone (const GwStallCurve *option)
{
  return GW_TONE_OPTION + (GwTone) (option->option % GW_OPTION_STYLES);
}

double
gw_stall_x (const GwStallPlot *stall,
            double             mass)
{
  return stall->plot.x + (mass * stall->figure->mass_scale - stall->mass[0]) /
                           (stall->mass[1] - stall->mass[0]) * stall->plot.width;
}

double
gw_stall_y (const GwStallPlot *stall,
            double             speed)
{
  return stall->plot.y + (stall->speed[1] - speed * stall->figure->speed_scale) /
                           (stall->speed[1] - stall->speed[0]) * stall->plot.height;
}

static void
draw_band (GwDrawing          *drawing,
           const GwStallPlot  *stall,
           const GwStallCurve *option)
{
  for (int step = 0; step < BAND_STEPS; step++)
    {
      double  part = 1 - (double) step / BAND_STEPS;
      double  xy[4 * GW_CURVE_N];
      size_t  n = 0;
      GwMark *mark;

      for (size_t k = 0; k < 2 * GW_CURVE_N; k++)
        {
          size_t i = k < GW_CURVE_N ? k : 2 * GW_CURVE_N - 1 - k;
          double middle = option->middle != NULL ? option->middle[i] : option->curve[i];
          double edge = k < GW_CURVE_N ? option->high[i] : option->low[i];

          if (!isfinite (middle) || !isfinite (edge))
            continue;
          xy[n++] = gw_stall_x (stall, stall->figure->mass[i]);
          xy[n++] = gw_stall_y (stall, middle + part * (edge - middle));
        }
      if (n < 6)
        return;
      mark = gw_drawing_path (drawing, n / 2, xy, GW_LINE_NONE, gw_stall_tone (option));
      mark->is_closed = true;
      mark->is_filled = true;
      mark->fill = gw_stall_tone (option);
      mark->opacity = 0.05 / (1 + 0.5 * (double) stall->figure->n_options);
    }
}

/* A curve that is nowhere further from where it stood than can be seen stays there: so does all
 * that it crosses. */
static void
keep_place (GwDrawing *drawing,
            double     y[GW_CURVE_N])
{
  const size_t places = gw_drawing_places (drawing);
  double       before[GW_CURVE_N];
  bool         stays = gw_drawing_recall (drawing, GW_CURVE_N, before);

  for (size_t i = 0; i < GW_CURVE_N && stays; i++)
    stays = fabs (y[i] - before[i]) <= UNSEEN || (isnan (y[i]) && isnan (before[i]));
  if (stays)
    {
      memcpy (y, before, sizeof before);
      return;
    }

  gw_drawing_forget (drawing, places);
  gw_drawing_remember (drawing, GW_CURVE_N, y);
}

/* A curve may have gaps where there is no answer. */
static void
draw_curve (GwDrawing          *drawing,
            const GwStallPlot  *stall,
            const GwStallCurve *option)
{
  double y[GW_CURVE_N], xy[2 * GW_CURVE_N];
  size_t n = 0;

  for (size_t i = 0; i < GW_CURVE_N; i++)
    y[i] = gw_stall_y (stall, option->curve[i]);
  keep_place (drawing, y);

  for (size_t i = 0; i <= GW_CURVE_N; i++)
    {
      if (i < GW_CURVE_N && isfinite (y[i]))
        {
          xy[n++] = gw_stall_x (stall, stall->figure->mass[i]);
          xy[n++] = y[i];
          continue;
        }
      if (n >= 4)
        gw_drawing_path (drawing, n / 2, xy,
                         GW_LINE_OPTION + (GwLineType) (option->option % GW_OPTION_STYLES),
                         gw_stall_tone (option));
      n = 0;
    }
}

static void
draw_whisker (GwDrawing          *drawing,
              const GwStallPlot  *stall,
              const GwStallCurve *option)
{
  const GwBox *plot = &stall->plot;
  double       y = gw_stall_y (stall, option->speed);
  double       x0 = fmax (gw_stall_x (stall, option->mass_low), plot->x);
  double       x1 = fmin (gw_stall_x (stall, option->mass_high), plot->x + plot->width);
  double       xy[] = { x0, y - 3, x0, y + 3, x0, y, x1, y, x1, y - 3, x1, y + 3 };

  if (!isfinite (option->mass_low) || !isfinite (option->mass_high) || !isfinite (y) || x1 <= x0 ||
      y < plot->y || y > plot->y + plot->height)
    return;
  gw_drawing_path (drawing, 6, xy, GW_LINE_NARROW, gw_stall_tone (option));
}

static void
draw_marker (GwDrawing          *drawing,
             const GwStallPlot  *stall,
             const GwStallCurve *option,
             double              size)
{
  const GwBox *plot = &stall->plot;
  double       x = gw_stall_x (stall, option->mass), y = gw_stall_y (stall, option->speed);

  if (isfinite (x) && isfinite (y) && x >= plot->x && x <= plot->x + plot->width && y >= plot->y &&
      y <= plot->y + plot->height)
    gw_drawing_symbol (drawing, GW_MARK_OPTION + (GwMarkKind) (option->option % GW_OPTION_STYLES),
                       x, y, size, gw_stall_tone (option));
}

static void
draw_wanted (GwDrawing         *drawing,
             const GwStallPlot *stall)
{
  const GwStallFigure *figure = stall->figure;
  const GwBox         *plot = &stall->plot;
  double               y = gw_stall_y (stall, figure->wanted);

  if (isfinite (y))
    gw_line_from_to (drawing, plot->x, y, plot->x + plot->width, y, GW_LINE_HIDDEN, GW_TONE_INK);
}

/* Where the shown option reaches the wanted speed: a tick across the line, over the curves. */
static void
draw_wanted_mass (GwDrawing         *drawing,
                  const GwStallPlot *stall)
{
  const GwStallFigure *figure = stall->figure;
  const GwBox         *plot = &stall->plot;
  double               y = gw_stall_y (stall, figure->wanted);
  double               x = gw_stall_x (stall, figure->wanted_mass);

  if (isfinite (y) && isfinite (x) && x >= plot->x && x <= plot->x + plot->width)
    gw_line_from_to (drawing, x, fmax (y - 5, plot->y), x, fmin (y + 5, plot->y + plot->height),
                     GW_LINE_WIDE, GW_TONE_INK);
}

void
gw_stall_curves_draw (GwDrawing         *drawing,
                      const GwStallPlot *stall)
{
  const GwStallFigure *figure = stall->figure;
  size_t               n = figure->n_options;

  draw_wanted (drawing, stall);
  for (size_t i = 0; i < n; i++)
    if (figure->options[i].low != NULL && figure->options[i].high != NULL)
      draw_band (drawing, stall, &figure->options[i]);
  for (size_t i = 0; i < n; i++)
    draw_curve (drawing, stall, &figure->options[i]);
  for (size_t i = 0; i < n; i++)
    draw_whisker (drawing, stall, &figure->options[i]);
  draw_wanted_mass (drawing, stall);
  for (size_t i = 0; i < n; i++)
    if ((int) i != figure->shown)
      draw_marker (drawing, stall, &figure->options[i], 7.5);
  if (figure->shown >= 0 && (size_t) figure->shown < n)
    draw_marker (drawing, stall, &figure->options[figure->shown], 9.5);
}
