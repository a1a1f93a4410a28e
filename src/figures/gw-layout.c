/* gw-layout.c - boxes, ticks, fitted text
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-layout.h"

GwBox
gw_box_inset (GwBox  box,
              double by)
{
  return (GwBox){ box.x + by, box.y + by, fmax (box.width - 2 * by, 0),
                  fmax (box.height - 2 * by, 0) };
}

GwBox
gw_box_take_top (GwBox *box,
                 double height)
{
  GwBox taken = *box;

  taken.height = CLAMP (height, 0, box->height);
  box->y += taken.height;
  box->height -= taken.height;

  return taken;
}

GwBox
gw_box_take_bottom (GwBox *box,
                    double height)
{
  GwBox taken = *box;

  taken.height = CLAMP (height, 0, box->height);
  taken.y = box->y + box->height - taken.height;
  box->height -= taken.height;

  return taken;
}

GwBox
gw_box_take_left (GwBox *box,
                  double width)
{
  GwBox taken = *box;

  taken.width = CLAMP (width, 0, box->width);
  box->x += taken.width;
  box->width -= taken.width;

  return taken;
}

GwBox
gw_box_take_right (GwBox *box,
                   double width)
{
  GwBox taken = *box;

  taken.width = CLAMP (width, 0, box->width);
  taken.x = box->x + box->width - taken.width;
  box->width -= taken.width;

  return taken;
}

bool
gw_box_holds (const GwBox *outer,
              const GwBox *inner)
{
  return inner->x >= outer->x && inner->x + inner->width <= outer->x + outer->width &&
         inner->y >= outer->y && inner->y + inner->height <= outer->y + outer->height;
}

double
gw_round_below (double value)
{
  double power, digit;

  if (!(value > 0) || !isfinite (value))
    return 0;
  power = pow (10, floor (log10 (value) + 1e-9));
  digit = value / power * (1 + 1e-9);

  return (digit >= 5 ? 5 : digit >= 2 ? 2
                                      : 1) *
         power;
}

GwTicks
gw_ticks (double low,
          double high,
          int    most)
{
  GwTicks ticks = { low, 0, 0, 0 };
  double  span = high - low;

  if (!(span > 0) || !isfinite (span))
    return ticks;

  ticks.step = gw_round_below (span / MAX (most, 2));
  for (;;)
    {
      /* A hair of slack, so that a limit that is itself a tick is one. */
      double first = ceil (low / ticks.step - 1e-6);
      double last = floor (high / ticks.step + 1e-6);

      ticks.first = first * ticks.step;
      ticks.n = (int) (last - first) + 1;
      if (ticks.n <= MAX (most, 2))
        break;
      ticks.step = gw_round_below (ticks.step * 2.5);
    }
  ticks.decimals = MAX (0, (int) -floor (log10 (ticks.step) + 1e-9));

  return ticks;
}

char *
gw_text_fit (GwDrawing  *drawing,
             const char *text,
             GwFont      font,
             GwTextStyle style,
             double      width)
{
  double full;
  long   low = 0, high = g_utf8_strlen (text, -1);
  char  *best = NULL;

  gw_drawing_measure (drawing, text, font, style, &full, NULL);
  if (full <= width)
    return g_strdup (text);

  while (low + 1 < high)
    {
      long   n = (low + high) / 2;
      char  *head = g_utf8_substring (text, 0, n);
      char  *cut = g_strconcat (g_strchomp (head), "…", NULL);
      double cut_width;

      gw_drawing_measure (drawing, cut, font, style, &cut_width, NULL);
      if (cut_width <= width)
        {
          g_free (best);
          best = g_steal_pointer (&cut);
          low = n;
        }
      else
        high = n;
      g_free (cut);
      g_free (head);
    }
  if (low < 2)
    g_clear_pointer (&best, g_free);

  return best;
}

double
gw_text_line (GwDrawing *drawing,
              GwFont     font)
{
  double height;

  gw_drawing_measure (drawing, "0", font, GW_STYLE_UPRIGHT, NULL, &height);
  return height;
}

int
gw_text_lines (GwDrawing  *drawing,
               const char *text,
               GwFont      font,
               GwTextStyle style,
               double      width)
{
  double full;

  gw_drawing_measure (drawing, text, font, style, &full, NULL);
  if (full <= width)
    return 1;

  return pango_layout_get_line_count (gw_drawing_wrapped (drawing, text, font, style, width));
}

double
gw_text_paragraph (GwDrawing  *drawing,
                   GwBox       box,
                   const char *text,
                   GwFont      font,
                   GwTone      tone,
                   GwTextStyle style,
                   GwAlign     align)
{
  double       line = gw_text_line (drawing, font);
  PangoLayout *layout = gw_drawing_wrapped (drawing, text, font, style, box.width);
  int          n = pango_layout_get_line_count (layout);
  char       **lines = g_new0 (char *, n + 1);
  double       used = 0;

  for (int i = 0; i < n; i++)
    {
      const PangoLayoutLine *part = pango_layout_get_line_readonly (layout, i);

      lines[i] = g_strchomp (g_strndup (text + part->start_index, (gsize) part->length));
    }

  for (int i = 0; i < n && used + line <= box.height + 0.01; i++)
    {
      double  x = box.x + 0.5 * align * box.width;
      bool    is_last = i + 1 < n && used + 2 * line > box.height + 0.01;
      char   *more = is_last ? g_strconcat (lines[i], " …", NULL) : NULL;
      char   *fit = gw_text_fit (drawing, more ? more : lines[i], font, style, box.width);
      GwMark *mark = gw_drawing_text (drawing, x, box.y + used, fit ? fit : "…", font, tone);

      mark->style = style;
      gw_drawing_align (drawing, mark, align, GW_ALIGN_START);
      used += line;
      g_free (fit);
      g_free (more);
    }
  g_strfreev (lines);

  return used;
}

GwMark *
gw_text_at (GwDrawing  *drawing,
            double      x,
            double      y,
            const char *text,
            GwFont      font,
            GwTone      tone,
            GwAlign     align_x,
            GwAlign     align_y)
{
  GwMark *mark = gw_drawing_text (drawing, x, y, text, font, tone);

  gw_drawing_align (drawing, mark, align_x, align_y);
  return mark;
}

GwMark *
gw_line_from_to (GwDrawing *drawing,
                 double     x0,
                 double     y0,
                 double     x1,
                 double     y1,
                 GwLineType line,
                 GwTone     tone)
{
  return gw_drawing_path (drawing, 2, (double[]){ x0, y0, x1, y1 }, line, tone);
}

GwMark *
gw_rectangle (GwDrawing *drawing,
              GwBox      box,
              GwLineType line,
              GwTone     tone)
{
  double  right = box.x + box.width, bottom = box.y + box.height;
  double  xy[] = { box.x, box.y, right, box.y, right, bottom, box.x, bottom };
  GwMark *mark = gw_drawing_path (drawing, 4, xy, line, tone);

  mark->is_closed = true;
  return mark;
}

void
gw_view_settle (GwDrawing *drawing,
                GwView     view,
                GwBox      box,
                double     origin[2],
                double    *scale)
{
  double place[3] = { origin[0], origin[1], *scale };

  if (!gw_drawing_recall (drawing, 3, place))
    gw_drawing_remember (drawing, 3, place);

  origin[0] = place[0];
  origin[1] = place[1];
  *scale = place[2];
  gw_drawing_set_view (drawing, view, &(GwViewFrame){ box, { place[0], place[1] }, place[2] });
}
