/* gw-stall-key.c - which curve is which
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-stall-private.h"

#define KEY_LINE 22.0 /* length of the sample of a curve */

GwBox
gw_stall_key_size (GwDrawing           *drawing,
                   const GwStallFigure *figure)
{
  GwBox box = { 0, 0, 0, gw_text_line (drawing, GW_FONT_SMALL) * (double) figure->n_options };

  for (size_t i = 0; i < figure->n_options; i++)
    {
      double width;

      gw_drawing_measure (drawing, figure->options[i].name, GW_FONT_SMALL, GW_STYLE_BOLD, &width,
                          NULL);
      box.width = fmax (box.width, KEY_LINE + 5 + width);
    }

  return box;
}

void
gw_stall_key_draw (GwDrawing           *drawing,
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
      GwTone              tone = GW_TONE_OPTION + (GwTone) style;
      double              x = box.x + width * (double) (i / n_rows);
      double              y = box.y + line * ((double) (i % n_rows) + 0.5);
      char               *name;
      GwMark             *mark;

      gw_line_from_to (drawing, x, y, x + KEY_LINE, y, GW_LINE_OPTION + (GwLineType) style, tone);
      gw_drawing_symbol (drawing, GW_MARK_OPTION + (GwMarkKind) style, x + KEY_LINE / 2, y, 6.5,
                         tone);
      name =
        gw_text_fit (drawing, option->name, GW_FONT_SMALL, GW_STYLE_BOLD, width - KEY_LINE - 5);
      if (name == NULL)
        continue;
      mark = gw_drawing_text (drawing, x + KEY_LINE + 5, y, name, GW_FONT_SMALL, GW_TONE_INK);
      mark->style = (int) i == figure->shown ? GW_STYLE_BOLD : GW_STYLE_UPRIGHT;
      gw_drawing_align (drawing, mark, GW_ALIGN_START, GW_ALIGN_MIDDLE);
      g_free (name);
    }
}

bool
gw_stall_key_place (GwDrawing           *drawing,
                    const GwStallFigure *figure,
                    GwBox                plot,
                    size_t               since)
{
  static const int corners[][2] = { { 1, 1 }, { 0, 0 }, { 1, 0 }, { 0, 1 } };
  GwBox            size = gw_stall_key_size (drawing, figure);
  double           known;
  const bool       is_known = gw_drawing_recall (drawing, 1, &known);

  for (size_t i = 0; i < G_N_ELEMENTS (corners); i++)
    {
      GwBox box = gw_box_inset (plot, 7);

      if (box.width < size.width || box.height < size.height)
        break;
      box.x += corners[i][0] * (box.width - size.width);
      box.y += corners[i][1] * (box.height - size.height);
      box.width = size.width;
      box.height = size.height;
      if (is_known ? known == (double) i : gw_is_free (drawing, since, box, 4, false))
        {
          if (!is_known)
            gw_drawing_remember (drawing, 1, (double[]){ (double) i });
          gw_stall_key_draw (drawing, figure, box, 1);
          return true;
        }
    }

  if (!is_known)
    gw_drawing_remember (drawing, 1, (double[]){ -1 });
  return false;
}
