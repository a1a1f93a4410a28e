/* gw-dimension.c - dimensions and scale bars
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <stdio.h>

#include "figures/gw-layout.h"

#define ARROW_LENGTH   6.5
#define ARROW_HALF     1.15
#define EXTENSION_GAP  2.0 /* between outline and extension line */
#define EXTENSION_PAST 2.5 /* beyond the dimension line */

/* (along, across) to (x, y): a dimension is laid out as if it were horizontal. */
static void
turn (const GwDimension *dimension,
      double             along,
      double             across,
      double             xy[2])
{
  xy[0] = dimension->is_vertical ? across : along;
  xy[1] = dimension->is_vertical ? along : across;
}

static void
dimension_line (GwDrawing         *drawing,
                const GwDimension *dimension,
                double             along0,
                double             across0,
                double             along1,
                double             across1)
{
  double xy[4];

  turn (dimension, along0, across0, xy);
  turn (dimension, along1, across1, xy + 2);
  gw_drawing_path (drawing, 2, xy, GW_LINE_NARROW, GW_TONE_MID);
}

/* Tip at @along, body towards @direction. */
static void
dimension_arrow (GwDrawing         *drawing,
                 const GwDimension *dimension,
                 double             along,
                 double             direction)
{
  double  xy[6];
  GwMark *mark;

  turn (dimension, along, dimension->place, xy);
  turn (dimension, along + direction * ARROW_LENGTH, dimension->place - ARROW_HALF, xy + 2);
  turn (dimension, along + direction * ARROW_LENGTH, dimension->place + ARROW_HALF, xy + 4);
  mark = gw_drawing_path (drawing, 3, xy, GW_LINE_NONE, GW_TONE_MID);
  mark->is_closed = true;
  mark->is_filled = true;
  mark->fill = GW_TONE_MID;
}

static void
dimension_extension (GwDrawing         *drawing,
                     const GwDimension *dimension,
                     const double       point[2])
{
  double along = dimension->is_vertical ? point[1] : point[0];
  double across = dimension->is_vertical ? point[0] : point[1];
  double sense = dimension->place < across ? -1 : 1;

  if (fabs (dimension->place - across) <= EXTENSION_GAP)
    return;
  dimension_line (drawing, dimension, along, across + sense * EXTENSION_GAP, along,
                  dimension->place + sense * EXTENSION_PAST);
}

void
gw_dimension (GwDrawing         *drawing,
              const GwDimension *dimension)
{
  double  a = dimension->is_vertical ? dimension->a[1] : dimension->a[0];
  double  b = dimension->is_vertical ? dimension->b[1] : dimension->b[0];
  double  sense = b > a ? 1 : -1;
  bool    is_tight = fabs (b - a) < 4 * ARROW_LENGTH;
  double  out = is_tight ? 1.8 * ARROW_LENGTH : 0;
  double  past = dimension->is_half ? 8 : out;
  double  at[2], width;
  GwMark *mark;

  gw_drawing_measure (drawing, dimension->text, GW_FONT_TEXT, GW_STYLE_UPRIGHT, &width, NULL);
  if (fabs (b - a) < width + 2)
    return;
  if (!dimension->is_half)
    dimension_extension (drawing, dimension, dimension->a);
  dimension_extension (drawing, dimension, dimension->b);
  dimension_line (drawing, dimension, a - sense * past, dimension->place, b + sense * out,
                  dimension->place);
  if (!dimension->is_half)
    dimension_arrow (drawing, dimension, a, is_tight ? -sense : sense);
  dimension_arrow (drawing, dimension, b, is_tight ? sense : -sense);

  turn (dimension, (a + b) / 2, dimension->place - 1.5, at);
  mark = gw_drawing_text (drawing, at[0], at[1], dimension->text, GW_FONT_TEXT, GW_TONE_INK);
  mark->turn = dimension->is_vertical ? M_PI / 2 : 0;
  gw_drawing_align (drawing, mark, GW_ALIGN_MIDDLE, GW_ALIGN_END);
}

double
gw_scale_bar (GwDrawing          *drawing,
              double              x,
              double              y,
              double              width,
              double              scale,
              const GwLengthUnit *unit)
{
  char   text[32];
  double length = gw_round_below (width / scale * unit->factor); /* as it is shown */
  double text_width;

  for (int i = 0; i < 3 && length > 0; i++)
    {
      double end = x + length / unit->factor * scale;

      snprintf (text, sizeof text, "%g %s", length, unit->name);
      gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &text_width, NULL);
      if (end + 4 + text_width <= x + width)
        {
          double xy[] = { x, y - 2.5, x, y + 2.5, x, y, end, y, end, y - 2.5, end, y + 2.5 };

          gw_drawing_path (drawing, 6, xy, GW_LINE_NARROW, GW_TONE_INK);
          gw_text_at (drawing, end + 4, y, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_START,
                      GW_ALIGN_MIDDLE);
          return end - x + 4 + text_width;
        }
      length = gw_round_below (length * 0.6);
    }

  return 0;
}
