/* gw-plot.c - axes, curves and bands
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "figures/gw-plot.h"

#include <glib.h>
#include <math.h>

#define GAP          4.0 /* between numbers and plot [pt] */
#define BAND_OPACITY 0.12
#define MOST_STEPS   12
#define MOST_TICKS   (MOST_STEPS + 3)

void
gw_axis_widen (GwAxis *axis,
               double  value)
{
  if (!isfinite (value) || (axis->is_log && value <= 0))
    return;
  axis->low = fmin (axis->low, value);
  axis->high = fmax (axis->high, value);
}

/* Whole steps of its ticks. */
static void
round_axis (GwAxis *axis,
            int     most)
{
  const double low = axis->low * axis->factor, high = axis->high * axis->factor;
  const double step = gw_ticks (low, high, most).step;
  const double first = floor (low / step + 1e-6), last = ceil (high / step - 1e-6);

  axis->low = first * step / axis->factor;
  axis->high = last * step / axis->factor;
  axis->ticks = gw_ticks (first * step, last * step, (int) lrint (last - first) + 1);
}

/* One, two and five times the powers of ten. */
static int
log_ticks (const GwAxis *axis,
           double       *values)
{
  static const double digits[] = { 1, 2, 5 };
  const double        low = axis->low * axis->factor, high = axis->high * axis->factor;
  int                 n = 0;

  for (double power = pow (10, floor (log10 (low))); power <= high; power *= 10)
    for (size_t i = 0; i < G_N_ELEMENTS (digits); i++)
      if (digits[i] * power >= low * (1 - 1e-9) && digits[i] * power <= high * (1 + 1e-9) &&
          n < MOST_TICKS)
        values[n++] = digits[i] * power;

  return n;
}

static int
axis_values (const GwAxis *axis,
             double       *values)
{
  const int n = MIN (axis->ticks.n, MOST_TICKS);

  if (axis->is_log)
    return log_ticks (axis, values);

  for (int i = 0; i < n; i++)
    values[i] = axis->ticks.first + i * axis->ticks.step;
  return n;
}

static void
value_text (const GwAxis *axis,
            double        value,
            char         *text,
            size_t        size)
{
  gw_signed_number (value, axis->is_log ? 0 : axis->ticks.decimals, text, size);
}

static double
widest_number (GwDrawing    *drawing,
               const GwAxis *axis)
{
  double    values[MOST_TICKS], widest = 0;
  const int n = axis_values (axis, values);

  for (int i = 0; i < n; i++)
    {
      char   text[32];
      double width;

      value_text (axis, values[i], text, sizeof text);
      gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, NULL);
      widest = fmax (widest, width);
    }

  return widest;
}

bool
gw_plot_place (GwDrawing *drawing,
               GwPlot    *plot,
               GwBox      box)
{
  const double line = gw_text_line (drawing, GW_FONT_SMALL);

  if (!(plot->x.high > plot->x.low) || !(plot->y.high > plot->y.low))
    return false;

  gw_box_take_top (&box, line + 2);
  gw_box_take_bottom (&box, 2 * line + 3);
  round_axis (&plot->y, CLAMP ((int) (box.height / (2.2 * line)), 2, MOST_STEPS));
  if (!plot->has_no_numbers)
    gw_box_take_left (&box, widest_number (drawing, &plot->y) + GAP + 1);
  gw_box_take_right (&box, line);
  if (!plot->x.is_log)
    plot->x.ticks = gw_ticks (plot->x.low * plot->x.factor, plot->x.high * plot->x.factor,
                              CLAMP ((int) (box.width / (3.4 * line)), 2, 10));
  plot->box = box;

  return box.width > 25 && box.height > 20;
}

static double
along (const GwAxis *axis,
       double        value)
{
  return axis->is_log ? log (value / axis->low) / log (axis->high / axis->low)
                      : (value - axis->low) / (axis->high - axis->low);
}

double
gw_plot_x (const GwPlot *plot,
           double        value)
{
  return plot->box.x + along (&plot->x, value) * plot->box.width;
}

double
gw_plot_y (const GwPlot *plot,
           double        value)
{
  const double t = along (&plot->y, value);

  return plot->box.y + (plot->is_down ? t : 1 - t) * plot->box.height;
}

bool
gw_plot_holds (const GwPlot *plot,
               double        x,
               double        y)
{
  const double px = gw_plot_x (plot, x), py = gw_plot_y (plot, y);

  return isfinite (px) && isfinite (py) && px >= plot->box.x - 0.01 &&
         px <= plot->box.x + plot->box.width + 0.01 && py >= plot->box.y - 0.01 &&
         py <= plot->box.y + plot->box.height + 0.01;
}

static void
draw_y_axis (GwDrawing    *drawing,
             const GwPlot *plot)
{
  double    values[MOST_TICKS];
  const int n = axis_values (&plot->y, values);

  for (int i = 0; i < n; i++)
    {
      const double y = gw_plot_y (plot, values[i] / plot->y.factor);
      char         text[32];

      gw_line_from_to (drawing, plot->box.x, y, plot->box.x + plot->box.width, y, GW_LINE_HAIR,
                       GW_TONE_FAINT);
      value_text (&plot->y, values[i], text, sizeof text);
      if (!plot->has_no_numbers)
        gw_text_at (drawing, plot->box.x - GAP, y, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END,
                    GW_ALIGN_MIDDLE);
    }
}

/* Numbers that would touch the one before stay away. */
static void
draw_x_axis (GwDrawing    *drawing,
             const GwPlot *plot)
{
  const double bottom = plot->box.y + plot->box.height;
  double       values[MOST_TICKS], taken = -INFINITY;
  const int    n = axis_values (&plot->x, values);

  for (int i = 0; i < n; i++)
    {
      const double x = gw_plot_x (plot, values[i] / plot->x.factor);
      char         text[32];
      double       width;

      gw_line_from_to (drawing, x, plot->box.y, x, bottom, GW_LINE_HAIR, GW_TONE_FAINT);
      value_text (&plot->x, values[i], text, sizeof text);
      gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, NULL);
      if (x - width / 2 < taken + GAP)
        continue;
      gw_text_at (drawing, x, bottom + 2, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_MIDDLE,
                  GW_ALIGN_START);
      taken = x + width / 2;
    }
}

void
gw_plot_axes (GwDrawing    *drawing,
              const GwPlot *plot)
{
  const double line = gw_text_line (drawing, GW_FONT_SMALL);
  const double right = plot->box.x + plot->box.width, bottom = plot->box.y + plot->box.height;
  char        *text;

  draw_y_axis (drawing, plot);
  draw_x_axis (drawing, plot);
  gw_rectangle (drawing, plot->box, GW_LINE_NARROW, GW_TONE_MID);

  text = gw_text_fit (drawing, plot->x.title, GW_FONT_SMALL, GW_STYLE_UPRIGHT, plot->box.width);
  if (text != NULL)
    gw_text_at (drawing, right, bottom + line + 2, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END,
                GW_ALIGN_START);
  g_free (text);
  text = plot->has_no_numbers ? NULL
                              : gw_text_fit (drawing, plot->y.title, GW_FONT_SMALL,
                                             GW_STYLE_UPRIGHT, plot->box.width);
  if (text != NULL)
    gw_text_at (drawing, plot->box.x, plot->box.y - line / 2 - 0.5, text, GW_FONT_SMALL,
                GW_TONE_MID, GW_ALIGN_START, GW_ALIGN_END);
  g_free (text);
}

/* Liang-Barsky: the part of a segment within the box; false if there is none. */
static bool
clip (const GwBox *box,
      double       segment[4],
      bool        *is_cut)
{
  const double from[] = { segment[0], segment[1] };
  const double by[] = { segment[2] - segment[0], segment[3] - segment[1] };
  const double low[] = { box->x, box->y };
  const double high[] = { box->x + box->width, box->y + box->height };
  double       t0 = 0, t1 = 1;

  for (int k = 0; k < 2; k++)
    {
      if (by[k] == 0 && (from[k] < low[k] || from[k] > high[k]))
        return false;
      if (by[k] == 0)
        continue;
      t0 = fmax (t0, fmin ((low[k] - from[k]) / by[k], (high[k] - from[k]) / by[k]));
      t1 = fmin (t1, fmax ((low[k] - from[k]) / by[k], (high[k] - from[k]) / by[k]));
    }
  if (!(t0 < t1))
    return false;

  *is_cut = t1 < 1;
  for (int k = 0; k < 2; k++)
    {
      segment[k] = from[k] + t0 * by[k];
      segment[2 + k] = from[k] + t1 * by[k];
    }
  return true;
}

static void
flush (GwDrawing        *drawing,
       const GwPlotLine *line,
       const double     *xy,
       size_t           *n,
       bool              is_broken)
{
  if (*n >= 2)
    gw_drawing_path (drawing, *n, xy, is_broken ? GW_LINE_HIDDEN : line->line, line->tone);
  *n = 0;
}

void
gw_plot_line (GwDrawing        *drawing,
              const GwPlot     *plot,
              const GwPlotLine *line)
{
  double *xy = g_new (double, 2 * MAX (line->n, 2));
  size_t  n = 0;
  bool    was_broken = false;

  for (size_t i = 0; i + 1 < line->n; i++)
    {
      const bool is_broken =
        line->is_bridged != NULL && (line->is_bridged[i] || line->is_bridged[i + 1]);
      double segment[] = { gw_plot_x (plot, line->x[i]), gw_plot_y (plot, line->y[i]),
                           gw_plot_x (plot, line->x[i + 1]), gw_plot_y (plot, line->y[i + 1]) };
      bool   is_cut = false;
      bool   is_there = isfinite (segment[0] + segment[1] + segment[2] + segment[3]) &&
                      clip (&plot->box, segment, &is_cut);

      if (!is_there || is_broken != was_broken)
        flush (drawing, line, xy, &n, was_broken);
      was_broken = is_broken;
      if (!is_there)
        continue;
      if (n == 0)
        {
          xy[0] = segment[0];
          xy[1] = segment[1];
          n = 1;
        }
      xy[2 * n] = segment[2];
      xy[2 * n + 1] = segment[3];
      n++;
      if (is_cut)
        flush (drawing, line, xy, &n, was_broken);
    }
  flush (drawing, line, xy, &n, was_broken);
  g_free (xy);
}

void
gw_plot_band (GwDrawing    *drawing,
              const GwPlot *plot,
              size_t        n,
              const double *x,
              const double *low,
              const double *high,
              GwTone        tone)
{
  double *xy = g_new (double, 4 * MAX (n, 1));
  size_t  count = 0;
  GwMark *mark;

  for (size_t k = 0; k < 2 * n; k++)
    {
      const size_t i = k < n ? k : 2 * n - 1 - k;
      const double value = k < n ? high[i] : low[i];

      if (!gw_plot_holds (plot, x[i], value))
        continue;
      xy[2 * count] = gw_plot_x (plot, x[i]);
      xy[2 * count++ + 1] = gw_plot_y (plot, value);
    }
  if (count >= 3)
    {
      mark = gw_drawing_path (drawing, count, xy, GW_LINE_NONE, tone);
      mark->is_closed = true;
      mark->is_filled = true;
      mark->fill = tone;
      mark->opacity = BAND_OPACITY;
    }
  g_free (xy);
}
