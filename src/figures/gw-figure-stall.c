/* gw-figure-stall.c - stall speed against mass, all options in one plot
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdio.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-figures-i18n.h"
#include "figures/gw-figures-private.h"

#define PAD 4.0
#define KEY_LINE 22.0 /* length of the sample of a curve */
#define BAND_STEPS 3  /* nested fills that let a band fade towards its edges */

typedef struct
{
  const GwStallFigure *figure;
  GwBox                plot;
  double               mass[2], speed[2]; /* range, shown units */
  GwTicks              mass_ticks, speed_ticks;
} Stall;

static GwTone
tone_of (const GwStallCurve *option)
{
  return GW_TONE_OPTION + (GwTone) (option->option % GW_OPTION_STYLES);
}

static void
widen (double range[2],
       double value)
{
  if (!isfinite (value))
    return;
  range[0] = fmin (range[0], value);
  range[1] = fmax (range[1], value);
}

/* Ranges of both axes; false if there is nothing to show. */
static bool
find_ranges (Stall *stall)
{
  const GwStallFigure *figure = stall->figure;

  stall->mass[0] = figure->mass[0] * figure->mass_scale;
  stall->mass[1] = figure->mass[GW_CURVE_N - 1] * figure->mass_scale;
  stall->speed[0] = INFINITY;
  stall->speed[1] = -INFINITY;
  for (size_t i = 0; i < figure->n_options; i++)
    for (size_t k = 0; k < GW_CURVE_N; k++)
      {
        widen (stall->speed, figure->options[i].curve[k] * figure->speed_scale);
        if (figure->options[i].low != NULL)
          widen (stall->speed, figure->options[i].low[k] * figure->speed_scale);
        if (figure->options[i].high != NULL)
          widen (stall->speed, figure->options[i].high[k] * figure->speed_scale);
      }
  if (stall->speed[0] > stall->speed[1])
    return false;
  widen (stall->speed, figure->wanted * figure->speed_scale);
  if (stall->speed[1] - stall->speed[0] < 1e-3 * stall->speed[1])
    {
      stall->speed[0] *= 0.95;
      stall->speed[1] *= 1.05;
    }

  return stall->mass[1] > stall->mass[0] && isfinite (stall->mass[1] - stall->mass[0]);
}

static double
place_x (const Stall *stall,
         double       mass)
{
  return stall->plot.x + (mass * stall->figure->mass_scale - stall->mass[0]) /
                           (stall->mass[1] - stall->mass[0]) * stall->plot.width;
}

static double
place_y (const Stall *stall,
         double       speed)
{
  return stall->plot.y + (stall->speed[1] - speed * stall->figure->speed_scale) /
                           (stall->speed[1] - stall->speed[0]) * stall->plot.height;
}

static void
tick_text (const GwTicks *ticks,
           int            i,
           char          *text,
           size_t         size)
{
  snprintf (text, size, "%.*f", ticks->decimals, ticks->first + i * ticks->step);
}

/* Cuts the plot out of @box: room for numbers at the left and below. */
static bool
find_plot (Stall     *stall,
           GwDrawing *drawing,
           GwBox      box)
{
  double line = gw_text_line (drawing, GW_FONT_SMALL);
  double number = 0;

  gw_box_take_bottom (&box, 2 * line + 3);
  stall->speed_ticks = gw_ticks (stall->speed[0], stall->speed[1], MIN (7, (int) (box.height / (2.2 * line))));
  stall->speed[0] = floor (stall->speed[0] / stall->speed_ticks.step + 1e-6) * stall->speed_ticks.step;
  stall->speed[1] = ceil (stall->speed[1] / stall->speed_ticks.step - 1e-6) * stall->speed_ticks.step;
  stall->speed_ticks = gw_ticks (stall->speed[0], stall->speed[1],
                                 MAX (2, (int) lround ((stall->speed[1] - stall->speed[0]) /
                                                       stall->speed_ticks.step) +
                                           1));
  for (int i = 0; i < stall->speed_ticks.n; i++)
    {
      char   text[32];
      double width;

      tick_text (&stall->speed_ticks, i, text, sizeof text);
      gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, NULL);
      number = fmax (number, width);
    }
  gw_box_take_left (&box, number + 5);
  gw_box_take_right (&box, 10);
  stall->mass_ticks = gw_ticks (stall->mass[0], stall->mass[1], MIN (10, (int) (box.width / (3.4 * line))));
  stall->plot = box;

  return box.width > 50 && box.height > 30;
}

static void
draw_axes (GwDrawing   *drawing,
           const Stall *stall)
{
  const GwBox *plot = &stall->plot;
  double       right = plot->x + plot->width, bottom = plot->y + plot->height;
  char         text[32];

  for (int i = 0; i < stall->speed_ticks.n; i++)
    {
      double y = plot->y + (stall->speed[1] - stall->speed_ticks.first - i * stall->speed_ticks.step) /
                             (stall->speed[1] - stall->speed[0]) * plot->height;

      gw_line_from_to (drawing, plot->x, y, right, y, GW_LINE_HAIR, GW_TONE_FAINT);
      tick_text (&stall->speed_ticks, i, text, sizeof text);
      gw_text_at (drawing, plot->x - 4, y, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END,
                  GW_ALIGN_MIDDLE);
    }
  for (int i = 0; i < stall->mass_ticks.n; i++)
    {
      double x = plot->x + (stall->mass_ticks.first + i * stall->mass_ticks.step - stall->mass[0]) /
                             (stall->mass[1] - stall->mass[0]) * plot->width;

      gw_line_from_to (drawing, x, plot->y, x, bottom, GW_LINE_HAIR, GW_TONE_FAINT);
      tick_text (&stall->mass_ticks, i, text, sizeof text);
      gw_text_at (drawing, x, bottom + 2, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_MIDDLE,
                  GW_ALIGN_START);
    }
  gw_rectangle (drawing, *plot, GW_LINE_NARROW, GW_TONE_MID);
}

/* Title; under it the speed's unit and the conditions. */
static void
draw_head (GwDrawing           *drawing,
           const GwStallFigure *figure,
           GwBox                head)
{
  char   unit[64];
  double used;
  char  *text = gw_text_fit (drawing, figure->title, GW_FONT_HEAD, GW_STYLE_UPRIGHT, head.width);

  if (text != NULL)
    gw_drawing_text (drawing, head.x, head.y, text, GW_FONT_HEAD, GW_TONE_INK);
  g_free (text);

  snprintf (unit, sizeof unit, "%s", figure->speed_unit);
  gw_drawing_measure (drawing, unit, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &used, NULL);
  gw_text_at (drawing, head.x, head.y + head.height - 4.5, unit, GW_FONT_SMALL, GW_TONE_MID,
              GW_ALIGN_START, GW_ALIGN_END);
  text = figure->conditions == NULL ? NULL
                                    : gw_text_fit (drawing, figure->conditions, GW_FONT_SMALL,
                                                   GW_STYLE_UPRIGHT, head.width - used - 20);
  if (text != NULL)
    gw_text_at (drawing, head.x + head.width - 10, head.y + head.height - 4.5, text, GW_FONT_SMALL,
                GW_TONE_MID, GW_ALIGN_END, GW_ALIGN_END);
  g_free (text);
}

/* Under the plot: a remark on the method at the left, the mass axis at the right. */
static void
draw_foot (GwDrawing           *drawing,
           const GwStallFigure *figure,
           GwBox                box,
           double               right)
{
  char   text[128];
  char  *method;
  double used;

  snprintf (text, sizeof text, _ ("all-up mass, %s"), figure->mass_unit);
  gw_text_at (drawing, right, box.y + box.height, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END,
              GW_ALIGN_END);
  gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &used, NULL);
  if (figure->method == NULL)
    return;
  method = gw_text_fit (drawing, figure->method, GW_FONT_SMALL, GW_STYLE_UPRIGHT,
                        right - used - 12 - box.x);
  if (method != NULL)
    gw_text_at (drawing, box.x, box.y + box.height, method, GW_FONT_SMALL, GW_TONE_MID,
                GW_ALIGN_START, GW_ALIGN_END);
  g_free (method);
}

static void
draw_band (GwDrawing          *drawing,
           const Stall        *stall,
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
          double middle = option->curve[i];
          double edge = k < GW_CURVE_N ? option->high[i] : option->low[i];

          if (!isfinite (middle) || !isfinite (edge))
            continue;
          xy[n++] = place_x (stall, stall->figure->mass[i]);
          xy[n++] = place_y (stall, middle + part * (edge - middle));
        }
      if (n < 6)
        return;
      mark = gw_drawing_path (drawing, n / 2, xy, GW_LINE_NONE, tone_of (option));
      mark->is_closed = true;
      mark->is_filled = true;
      mark->fill = tone_of (option);
      mark->opacity = 0.10 / (1 + 0.5 * (double) stall->figure->n_options);
    }
}

/* A curve may have gaps where there is no answer. */
static void
draw_curve (GwDrawing          *drawing,
            const Stall        *stall,
            const GwStallCurve *option)
{
  double xy[2 * GW_CURVE_N];
  size_t n = 0;

  for (size_t i = 0; i <= GW_CURVE_N; i++)
    {
      if (i < GW_CURVE_N && isfinite (option->curve[i]))
        {
          xy[n++] = place_x (stall, stall->figure->mass[i]);
          xy[n++] = place_y (stall, option->curve[i]);
          continue;
        }
      if (n >= 4)
        gw_drawing_path (drawing, n / 2, xy,
                         GW_LINE_OPTION + (GwLineType) (option->option % GW_OPTION_STYLES),
                         tone_of (option));
      n = 0;
    }
}

static void
draw_whisker (GwDrawing          *drawing,
              const Stall        *stall,
              const GwStallCurve *option)
{
  const GwBox *plot = &stall->plot;
  double       y = place_y (stall, option->speed);
  double       x0 = fmax (place_x (stall, option->mass_low), plot->x);
  double       x1 = fmin (place_x (stall, option->mass_high), plot->x + plot->width);
  double       xy[] = { x0, y - 3, x0, y + 3, x0, y, x1, y, x1, y - 3, x1, y + 3 };

  if (!isfinite (option->mass_low) || !isfinite (option->mass_high) || !isfinite (y) || x1 <= x0 ||
      y < plot->y || y > plot->y + plot->height)
    return;
  gw_drawing_path (drawing, 6, xy, GW_LINE_NARROW, tone_of (option));
}

static void
draw_marker (GwDrawing          *drawing,
             const Stall        *stall,
             const GwStallCurve *option,
             double              size)
{
  const GwBox *plot = &stall->plot;
  double       x = place_x (stall, option->mass), y = place_y (stall, option->speed);

  if (isfinite (x) && isfinite (y) && x >= plot->x && x <= plot->x + plot->width && y >= plot->y &&
      y <= plot->y + plot->height)
    gw_drawing_symbol (drawing, GW_MARK_OPTION + (GwMarkKind) (option->option % GW_OPTION_STYLES), x,
                       y, size, tone_of (option));
}

static void
draw_wanted (GwDrawing   *drawing,
             const Stall *stall)
{
  const GwStallFigure *figure = stall->figure;
  const GwBox         *plot = &stall->plot;
  double               y = place_y (stall, figure->wanted);

  if (isfinite (y))
    gw_line_from_to (drawing, plot->x, y, plot->x + plot->width, y, GW_LINE_HIDDEN, GW_TONE_INK);
}

/* Where the shown option reaches the wanted speed: a tick across the line, over the curves. */
static void
draw_wanted_mass (GwDrawing   *drawing,
                  const Stall *stall)
{
  const GwStallFigure *figure = stall->figure;
  const GwBox         *plot = &stall->plot;
  double               y = place_y (stall, figure->wanted);
  double               x = place_x (stall, figure->wanted_mass);

  if (isfinite (y) && isfinite (x) && x >= plot->x && x <= plot->x + plot->width)
    gw_line_from_to (drawing, x, fmax (y - 5, plot->y), x, fmin (y + 5, plot->y + plot->height),
                     GW_LINE_WIDE, GW_TONE_INK);
}

static void
draw_options (GwDrawing   *drawing,
              const Stall *stall)
{
  const GwStallFigure *figure = stall->figure;
  size_t               n = figure->n_options;

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

/* The text of the wanted speed, on its line where no curve or marker is in the way. */
static void
label_wanted (GwDrawing   *drawing,
              const Stall *stall,
              size_t       since,
              double       y)
{
  const GwBox *plot = &stall->plot;
  double       width, height;

  gw_drawing_measure (drawing, stall->figure->wanted_text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, &height);
  for (int below = 0; below < 2; below++)
    for (double x = plot->x + 6; x + width < plot->x + plot->width - 4; x += 6)
      {
        GwBox box = { x, below ? y + 1.5 : y - height - 1, width, height };

        if (gw_box_holds (plot, &box) && gw_is_free (drawing, since, box, 0.9, true))
          {
            gw_drawing_text (drawing, box.x, box.y, stall->figure->wanted_text, GW_FONT_SMALL, GW_TONE_INK);
            return;
          }
      }
}

static GwBox
key_size (GwDrawing           *drawing,
          const GwStallFigure *figure)
{
  GwBox box = { 0, 0, 0, gw_text_line (drawing, GW_FONT_SMALL) * (double) figure->n_options };

  for (size_t i = 0; i < figure->n_options; i++)
    {
      double width;

      gw_drawing_measure (drawing, figure->options[i].name, GW_FONT_SMALL, GW_STYLE_BOLD, &width, NULL);
      box.width = fmax (box.width, KEY_LINE + 5 + width);
    }

  return box;
}

static void
draw_key (GwDrawing           *drawing,
          const GwStallFigure *figure,
          GwBox                box,
          size_t               n_columns)
{
  size_t n_rows = (figure->n_options + n_columns - 1) / n_columns;
  double line = gw_text_line (drawing, GW_FONT_SMALL);
  double width = box.width / (double) n_columns;

  for (size_t i = 0; i < figure->n_options; i++)
    {
      const GwStallCurve *option = &figure->options[i];
      int                 style = option->option % GW_OPTION_STYLES;
      double              x = box.x + width * (double) (i / n_rows);
      double              y = box.y + line * ((double) (i % n_rows) + 0.5);
      char               *name;
      GwMark             *mark;

      gw_line_from_to (drawing, x, y, x + KEY_LINE, y, GW_LINE_OPTION + (GwLineType) style, tone_of (option));
      gw_drawing_symbol (drawing, GW_MARK_OPTION + (GwMarkKind) style, x + KEY_LINE / 2, y, 6.5, tone_of (option));
      name = gw_text_fit (drawing, option->name, GW_FONT_SMALL, GW_STYLE_BOLD, width - KEY_LINE - 5);
      if (name == NULL)
        continue;
      mark = gw_drawing_text (drawing, x + KEY_LINE + 5, y, name, GW_FONT_SMALL, GW_TONE_INK);
      mark->style = (int) i == figure->shown ? GW_STYLE_BOLD : GW_STYLE_UPRIGHT;
      gw_drawing_align (drawing, mark, GW_ALIGN_START, GW_ALIGN_MIDDLE);
      g_free (name);
    }
}

/* The key stands in a corner of the plot if one is free. */
static bool
place_key (GwDrawing   *drawing,
           const Stall *stall,
           size_t       since)
{
  static const int corners[][2] = { { 1, 1 }, { 0, 0 }, { 1, 0 }, { 0, 1 } };
  GwBox            size = key_size (drawing, stall->figure);

  for (size_t i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      GwBox box = gw_box_inset (stall->plot, 7);

      if (box.width < size.width || box.height < size.height)
        return false;
      box.x += corners[i][0] * (box.width - size.width);
      box.y += corners[i][1] * (box.height - size.height);
      box.width = size.width;
      box.height = size.height;
      if (gw_is_free (drawing, since, box, 4, false))
        {
          draw_key (drawing, stall->figure, box, 1);
          return true;
        }
    }

  return false;
}

/* Plot and all in it; false if the key finds no corner and @needs_key. */
static bool
draw_plot (GwDrawing *drawing,
           Stall     *stall,
           GwBox      box,
           bool       needs_key)
{
  double y;
  size_t since;

  if (!find_ranges (stall) || !find_plot (stall, drawing, box))
    return true;
  draw_axes (drawing, stall);
  since = gw_drawing_n (drawing);
  draw_wanted (drawing, stall);
  draw_options (drawing, stall);
  if (needs_key && !place_key (drawing, stall, since))
    return false;
  y = place_y (stall, stall->figure->wanted);
  if (isfinite (y) && stall->figure->wanted_text != NULL)
    label_wanted (drawing, stall, since, y);
  draw_foot (drawing, stall->figure, box, stall->plot.x + stall->plot.width);

  return true;
}

void
gw_figure_stall (GwDrawing           *drawing,
                 GwBox                box,
                 const GwStallFigure *figure)
{
  double line = gw_text_line (drawing, GW_FONT_SMALL);
  GwBox  rest = box, key, size;
  GwBox  head = gw_box_take_top (&rest, gw_text_line (drawing, GW_FONT_HEAD) + line + 6);
  Stall  stall = { .figure = figure };
  size_t before, n_columns;

  draw_head (drawing, figure, head);
  if (figure->n_options == 0 || !find_ranges (&stall))
    {
      gw_text_at (drawing, rest.x, rest.y, _ ("no stall speed found"), GW_FONT_TEXT, GW_TONE_MID,
                  GW_ALIGN_START, GW_ALIGN_START);
      return;
    }
  before = gw_drawing_n (drawing);
  if (draw_plot (drawing, &stall, rest, true))
    return;

  /* No corner is free: the key goes above the plot, or is left out where all is tight. */
  gw_drawing_cut (drawing, before);
  size = key_size (drawing, figure);
  n_columns = CLAMP ((size_t) (rest.width / (size.width + 10)), 1, figure->n_options);
  size.height = line * (double) ((figure->n_options + n_columns - 1) / n_columns);
  if (size.height < rest.height * 0.35)
    {
      key = gw_box_take_top (&rest, size.height + PAD);
      draw_key (drawing, figure, key, n_columns);
    }
  draw_plot (drawing, &stall, rest, false);
}
