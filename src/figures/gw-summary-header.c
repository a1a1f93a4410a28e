/* gw-summary-header.c - names of the options above their columns
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <string.h>

#include "figures/gw-figures-i18n.h"
#include "figures/gw-summary-private.h"

#define PAD            4.0
#define MARKER         7.5
#define MARKER_ROOM    12.0
#define UPRIGHT_MAX    72.0 /* longest turned name */
#define LINES_TOO_MANY 9
#define NARROW_PAD     2.0 /* of stacked names */

static double
width_of (GwDrawing  *drawing,
          const char *text,
          GwFont      font)
{
  double width;

  gw_drawing_measure (drawing, text, font, GW_STYLE_BOLD, &width, NULL);
  return width;
}

/* Lines that @text takes at @width, broken after spaces and hyphens; too many if a word would have
 * to be broken. By the widths of its words: a hundred of these are asked for while the sheet looks
 * for its arrangement. */
static int
lines_of (GwDrawing  *drawing,
          const char *text,
          GwFont      font,
          double      width)
{
  double space = width_of (drawing, " ", font), used = 0;
  int    lines = 1;

  while (*text != '\0')
    {
      size_t length = strcspn (text, " -");
      bool   is_hyphen = text[length] == '-';
      char  *word = g_strndup (text, length + (is_hyphen ? 1 : 0));
      double word_width = width_of (drawing, word, font);

      g_free (word);
      if (word_width > width)
        return LINES_TOO_MANY;
      if (used + word_width > width)
        {
          lines++;
          used = 0;
        }
      used += word_width + (is_hyphen ? 0 : space);
      text += length + (text[length] != '\0' ? 1 : 0);
    }

  return lines;
}

double
gw_summary_names_width (GwDrawing             *drawing,
                        const GwSummaryFigure *figure)
{
  double widest = 0;

  for (size_t i = 0; i < figure->n_columns; i++)
    {
      char **words = g_strsplit_set (figure->names[i], " -", -1);

      for (char **word = words; *word != NULL; word++)
        widest = fmax (widest, width_of (drawing, *word, GW_FONT_SMALL));
      g_strfreev (words);
    }

  return widest + 2 * NARROW_PAD + 1;
}

/* Lines that the longest name takes. */
static int
lines_at (GwDrawing            *drawing,
          const GwSummaryTable *table,
          GwFont                font,
          double                width)
{
  int lines = 1;

  for (size_t i = 0; i < table->n_columns; i++)
    lines =
      MAX (lines, lines_of (drawing, table->figure->names[table->column[i]], font, width - 0.5));

  return lines;
}

static bool
baseline_fits (GwDrawing            *drawing,
               const GwSummaryTable *table,
               double                width)
{
  double word;

  for (size_t i = 0; i < table->n_columns; i++)
    if ((int) table->column[i] == table->figure->baseline)
      {
        gw_drawing_measure (drawing, _ ("baseline"), GW_FONT_SMALL, GW_STYLE_UPRIGHT, &word, NULL);
        return word <= width;
      }

  return false;
}

/* The first form that takes all names in at most so many lines; names keep together if they can. */
static int
choose_form (GwDrawing      *drawing,
             GwSummaryTable *table)
{
  static const struct
  {
    GwSummaryHeader header;
    GwFont          font;
    int             most;
  } forms[] = {
    { GW_HEADER_INLINE, GW_FONT_TEXT, 2 },
    { GW_HEADER_STACKED, GW_FONT_TEXT, 3 },
    { GW_HEADER_INLINE, GW_FONT_SMALL, 3 },
    { GW_HEADER_STACKED, GW_FONT_SMALL, 4 },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      double width = table->column_width -
                     (forms[i].header == GW_HEADER_INLINE ? PAD + MARKER_ROOM : 2 * NARROW_PAD);
      int lines = lines_at (drawing, table, forms[i].font, width);

      table->header = forms[i].header;
      table->header_font = forms[i].font;
      table->has_baseline = baseline_fits (drawing, table, width);
      if (lines <= forms[i].most)
        return lines;
    }
  table->header = GW_HEADER_UPRIGHT;
  table->header_font = GW_FONT_TEXT;
  table->has_baseline = false;

  return 1;
}

void
gw_summary_header_fit (GwDrawing      *drawing,
                       GwSummaryTable *table)
{
  int    lines = choose_form (drawing, table);
  double height = lines * gw_text_line (drawing, table->header_font) + PAD + 1;

  if (table->header == GW_HEADER_STACKED)
    height += MARKER + 3;
  if (table->header == GW_HEADER_UPRIGHT)
    {
      double longest = 0;

      for (size_t i = 0; i < table->n_columns; i++)
        longest =
          fmax (longest, width_of (drawing, table->figure->names[table->column[i]], GW_FONT_TEXT));
      height = fmin (longest, fmin (UPRIGHT_MAX, table->box.height * 0.3)) + MARKER + PAD + 6;
    }
  if (table->has_baseline)
    height += gw_text_line (drawing, GW_FONT_SMALL);
  table->header_height = height;
}

static void
draw_baseline (GwDrawing            *drawing,
               const GwSummaryTable *table,
               double                x,
               GwAlign               align)
{
  gw_text_at (drawing, x, table->box.y + table->header_height - 2, _ ("baseline"), GW_FONT_SMALL,
              GW_TONE_MID, align, GW_ALIGN_END);
}

static void
draw_name (GwDrawing            *drawing,
           const GwSummaryTable *table,
           const char           *name,
           double                x, /* left edge of the column */
           double               *marker_x,
           double               *marker_y)
{
  GwBox box = { x, table->box.y + PAD - 1, table->column_width, table->header_height - PAD };
  char *fit;

  *marker_x = x + MARKER_ROOM / 2 + 0.5;
  *marker_y = box.y + gw_text_line (drawing, table->header_font) / 2;
  if (table->header == GW_HEADER_INLINE)
    {
      gw_box_take_left (&box, MARKER_ROOM);
      gw_box_take_right (&box, PAD);
      gw_text_paragraph (drawing, box, name, table->header_font, GW_TONE_INK, GW_STYLE_BOLD,
                         GW_ALIGN_START);
      return;
    }
  *marker_x = x + table->column_width / 2;
  if (table->header == GW_HEADER_STACKED)
    {
      *marker_y = box.y + MARKER / 2 + 1;
      gw_box_take_top (&box, MARKER + 3);
      box = gw_box_inset (box, NARROW_PAD);
      box.y -= NARROW_PAD;
      box.height += 2 * NARROW_PAD;
      gw_text_paragraph (drawing, box, name, table->header_font, GW_TONE_INK, GW_STYLE_BOLD,
                         GW_ALIGN_MIDDLE);
      return;
    }
  *marker_y = table->box.y + table->header_height - MARKER / 2 - 3;
  fit = gw_text_fit (drawing, name, GW_FONT_TEXT, GW_STYLE_BOLD,
                     table->header_height - MARKER - PAD - 5.9);
  if (fit != NULL)
    {
      GwMark *mark = gw_drawing_text (drawing, *marker_x, *marker_y - MARKER / 2 - 2.5, fit,
                                      GW_FONT_TEXT, GW_TONE_INK);

      mark->style = GW_STYLE_BOLD;
      mark->turn = G_PI / 2;
      gw_drawing_align (drawing, mark, GW_ALIGN_START, GW_ALIGN_MIDDLE);
    }
  g_free (fit);
}

void
gw_summary_header_draw (GwDrawing            *drawing,
                        const GwSummaryTable *table)
{
  for (size_t i = 0; i < table->n_columns; i++)
    {
      size_t option = table->column[i];
      int    style = table->figure->options[option] % GW_OPTION_STYLES;
      double x = table->box.x + table->label_width + table->column_width * (double) i;
      double marker_x, marker_y;

      draw_name (drawing, table, table->figure->names[option], x, &marker_x, &marker_y);
      gw_drawing_symbol (drawing, GW_MARK_OPTION + (GwMarkKind) style, marker_x, marker_y, MARKER,
                         GW_TONE_OPTION + (GwTone) style);
      if (table->has_baseline && (int) option == table->figure->baseline)
        draw_baseline (drawing, table,
                       table->header == GW_HEADER_INLINE ? x + MARKER_ROOM : marker_x,
                       table->header == GW_HEADER_INLINE ? GW_ALIGN_START : GW_ALIGN_MIDDLE);
    }
}
