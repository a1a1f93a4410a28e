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
#include "figures/gw-stall-private.h"

#define PAD 4.0

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
find_ranges (GwStallPlot *stall)
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
tick_value (const GwTicks *ticks,
            int            i)
{
  return ticks->first + i * ticks->step;
}

static void
tick_text (const GwTicks *ticks,
           int            i,
           char          *text,
           size_t         size)
{
  gw_signed_number (tick_value (ticks, i), ticks->decimals, text, size);
}

/* Widens the range of speeds to whole steps of its ticks. */
static void
round_speeds (GwStallPlot *stall,
              int          most)
{
  double step = gw_ticks (stall->speed[0], stall->speed[1], most).step;
  double low = floor (stall->speed[0] / step + 1e-6);
  double high = ceil (stall->speed[1] / step - 1e-6);

  stall->speed[0] = low * step;
  stall->speed[1] = high * step;
  stall->speed_ticks = gw_ticks (stall->speed[0], stall->speed[1], MAX (2, (int) (high - low) + 1));
}

/* Cuts the plot out of @box: room for numbers at the left and below. */
static bool
find_plot (GwStallPlot *stall,
           GwDrawing   *drawing,
           GwBox        box,
           int          remark)
{
  double line = gw_text_line (drawing, GW_FONT_SMALL);
  double number = 0;

  gw_box_take_bottom (&box, (1 + MAX (remark, 1)) * line + 3);
  round_speeds (stall, MIN (7, (int) (box.height / (2.2 * line))));
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
  stall->mass_ticks =
    gw_ticks (stall->mass[0], stall->mass[1], MIN (10, (int) (box.width / (3.4 * line))));
  stall->plot = box;

  return box.width > 50 && box.height > 30;
}

static void
draw_axes (GwDrawing         *drawing,
           const GwStallPlot *stall)
{
  const GwStallFigure *figure = stall->figure;
  const GwBox         *plot = &stall->plot;
  double               right = plot->x + plot->width, bottom = plot->y + plot->height;
  char                 text[32];

  for (int i = 0; i < stall->speed_ticks.n; i++)
    {
      double y = gw_stall_y (stall, tick_value (&stall->speed_ticks, i) / figure->speed_scale);

      gw_line_from_to (drawing, plot->x, y, right, y, GW_LINE_HAIR, GW_TONE_FAINT);
      tick_text (&stall->speed_ticks, i, text, sizeof text);
      gw_text_at (drawing, plot->x - 4, y, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END,
                  GW_ALIGN_MIDDLE);
    }
  for (int i = 0; i < stall->mass_ticks.n; i++)
    {
      double x = gw_stall_x (stall, tick_value (&stall->mass_ticks, i) / figure->mass_scale);

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
  double bottom = head.y + head.height - gw_text_line (drawing, GW_FONT_SMALL) / 2 - 0.5;
  char   unit[64];
  double used;
  char  *text = gw_text_fit (drawing, figure->title, GW_FONT_HEAD, GW_STYLE_UPRIGHT, head.width);

  if (text != NULL)
    gw_drawing_text (drawing, head.x, head.y, text, GW_FONT_HEAD, GW_TONE_INK);
  g_free (text);

  snprintf (unit, sizeof unit, "%s", figure->speed_unit);
  gw_drawing_measure (drawing, unit, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &used, NULL);
  gw_text_at (drawing, head.x, bottom, unit, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_START,
              GW_ALIGN_END);
  text = figure->conditions == NULL ? NULL
                                    : gw_text_fit (drawing, figure->conditions, GW_FONT_SMALL,
                                                   GW_STYLE_UPRIGHT, head.width - used - 20);
  if (text != NULL)
    gw_text_at (drawing, head.x + head.width - 10, bottom, text, GW_FONT_SMALL, GW_TONE_MID,
                GW_ALIGN_END, GW_ALIGN_END);
  g_free (text);
}

static char *
mass_axis_text (const GwStallFigure *figure)
{
  return g_strdup_printf (_ ("all-up mass, %s"), figure->mass_unit);
}

/* Lines of the foot that the remark on the method takes: 1 beside the name of the axis, more below
 * it, 0: there is none. */
static int
remark_lines (GwDrawing           *drawing,
              const GwStallFigure *figure,
              double               width)
{
  char  *text;
  double used, wanted;

  if (figure->method == NULL)
    return 0;
  text = mass_axis_text (figure);
  gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &used, NULL);
  gw_drawing_measure (drawing, figure->method, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &wanted, NULL);
  g_free (text);
  if (wanted + 12 + used + 10 <= width)
    return 1;

  return 1 +
         MIN (2, gw_text_lines (drawing, figure->method, GW_FONT_SMALL, GW_STYLE_UPRIGHT, width));
}

/* Under the plot: a remark on the method at the left or below, the mass axis at the right. */
static void
draw_foot (GwDrawing           *drawing,
           const GwStallFigure *figure,
           GwBox                box,
           double               right,
           int                  remark)
{
  char  *text = mass_axis_text (figure);
  double line = gw_text_line (drawing, GW_FONT_SMALL);

  gw_box_take_bottom (&box, remark > 1 ? (remark - 1) * line : 0);
  gw_text_at (drawing, right, box.y + box.height, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END,
              GW_ALIGN_END);
  g_free (text);
  if (remark == 1)
    gw_text_at (drawing, box.x, box.y + box.height, figure->method, GW_FONT_SMALL, GW_TONE_MID,
                GW_ALIGN_START, GW_ALIGN_END);
  else if (remark > 1)
    gw_text_paragraph (drawing,
                       (GwBox){ box.x, box.y + box.height, box.width, (remark - 1) * line },
                       figure->method, GW_FONT_SMALL, GW_TONE_MID, GW_STYLE_UPRIGHT,
                       GW_ALIGN_START);
}

/* A place for @text above or below the line at @y where no curve or marker is in the way. */
static bool
find_beside_line (GwDrawing         *drawing,
                  const GwStallPlot *stall,
                  size_t             since,
                  double             y,
                  const char        *text,
                  GwBox             *box)
{
  const GwBox *plot = &stall->plot;

  gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &box->width, &box->height);
  for (int below = 0; below < 2; below++)
    for (box->x = plot->x + 6; box->x + box->width < plot->x + plot->width - 4; box->x += 6)
      {
        box->y = below ? y + 1.5 : y - box->height - 1;
        if (gw_box_holds (plot, box) && gw_is_free (drawing, since, *box, 0.9, true))
          return true;
      }

  return false;
}

/* The text of the wanted speed, on its line; a shorter one where that finds no place. */
static void
label_wanted (GwDrawing         *drawing,
              const GwStallPlot *stall,
              size_t             since,
              double             y)
{
  const char *const texts[] = { stall->figure->wanted_text, stall->figure->wanted_short };
  double            place[3]; /* which text, -1: none, and where, from the plot and the line */
  GwBox             box;

  if (!gw_drawing_recall (drawing, 3, place))
    {
      place[0] = -1.0;
      for (int k = 0; k < 2 && place[0] < 0.0; k++)
        if (texts[k] != NULL && find_beside_line (drawing, stall, since, y, texts[k], &box))
          {
            place[0] = k;
            place[1] = box.x - stall->plot.x;
            place[2] = box.y - y;
          }
      gw_drawing_remember (drawing, 3, place);
    }
  if (place[0] >= 0.0 && texts[(int) place[0]] != NULL)
    gw_drawing_text (drawing, stall->plot.x + place[1], y + place[2], texts[(int) place[0]],
                     GW_FONT_SMALL, GW_TONE_INK);
}

/* Plot and all in it; false if the key finds no corner and @needs_key. */
static bool
draw_plot (GwDrawing   *drawing,
           GwStallPlot *stall,
           GwBox        box,
           bool         needs_key)
{
  int    remark = box.height > 130 ? remark_lines (drawing, stall->figure, box.width) : 0;
  double y;
  size_t since;

  if (!find_ranges (stall) || !find_plot (stall, drawing, box, remark))
    return true;
  draw_axes (drawing, stall);
  since = gw_drawing_n (drawing);
  gw_stall_curves_draw (drawing, stall);
  if (needs_key && !gw_stall_key_place (drawing, stall->figure, stall->plot, since))
    return false;
  y = gw_stall_y (stall, stall->figure->wanted);
  if (isfinite (y))
    label_wanted (drawing, stall, since, y);
  draw_foot (drawing, stall->figure, box, stall->plot.x + stall->plot.width, remark);

  return true;
}

void
gw_figure_stall (GwDrawing           *drawing,
                 GwBox                box,
                 const GwStallFigure *figure)
{
  double      line = gw_text_line (drawing, GW_FONT_SMALL);
  GwBox       rest = box, key, size;
  GwBox       head = gw_box_take_top (&rest, gw_text_line (drawing, GW_FONT_HEAD) + 1.5 * line + 2);
  GwStallPlot stall = { .figure = figure };
  size_t      before, n_columns;

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
  size = gw_stall_key_size (drawing, figure);
  n_columns = CLAMP ((size_t) (rest.width / (size.width + 10)), 1, figure->n_options);
  size.height = line * (double) ((figure->n_options + n_columns - 1) / n_columns);
  if (size.height < rest.height * 0.35)
    {
      key = gw_box_take_top (&rest, size.height + PAD);
      gw_stall_key_draw (drawing, figure, key, n_columns);
    }
  draw_plot (drawing, &stall, rest, false);
}
