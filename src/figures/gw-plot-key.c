/* gw-plot-key.c - what is written at and around a plot
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-plot.h"

#define SAMPLE     22.0 /* length of a line in the key */
#define PAD        5.0
#define KEY_SHARE  0.3 /* of the height that key and notes may take at most, each */
#define NOTE_SHARE 0.22
#define LOW        130.0 /* under that height notes stay away [pt] */
#define TRIES      8     /* places for a label back along its line */

GwTone
gw_section_tone (const GwSectionLabel *label)
{
  return label->option < 0 ? GW_TONE_INK
                           : GW_TONE_OPTION + (GwTone) (label->option % GW_OPTION_STYLES);
}

GwLineType
gw_section_line (const GwSectionLabel *label)
{
  return GW_LINE_OPTION + (GwLineType) (label->pattern % GW_OPTION_STYLES);
}

GwKeyRow
gw_section_key (const GwSectionLabel *label)
{
  return (GwKeyRow){
    .line = gw_section_line (label),
    .tone = gw_section_tone (label),
    .text = label->words != NULL
              ? g_strdup_printf ("%s  %s · %s", label->letter, label->name, label->words)
              : g_strdup_printf ("%s  %s", label->letter, label->name),
  };
}

void
gw_keys_free (size_t    n,
              GwKeyRow *rows)
{
  for (size_t i = 0; i < n; i++)
    g_free (rows[i].text);
  g_free (rows);
}

/* Beside, above or below a point of the line. */
static bool
write_at (GwDrawing    *drawing,
          const GwPlot *plot,
          const double  at[2],
          const char   *text,
          size_t        since)
{
  static const double shifts[][2] = {
    { 0, -0.5 },
    { -0.5, -1 },
    { -0.5, 0 },
    { 0, -1 },
    { 0, 0 },
    { -1, -1 },
    { -1, 0 },
    { -1, -0.5 },
  };
  const GwBox inner = gw_box_inset (plot->box, 1.5);
  double      width, height;

  gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, &height);
  for (size_t i = 0; i < G_N_ELEMENTS (shifts); i++)
    {
      const double gap_x = (shifts[i][0] * 2 + 1) * 4, gap_y = (shifts[i][1] * 2 + 1) * 2.5;
      const GwBox  box = { at[0] + gap_x + shifts[i][0] * width,
                           at[1] + gap_y + shifts[i][1] * height, width, height };

      if (!gw_box_holds (&inner, &box) || !gw_is_free (drawing, since, box, 1.2, true))
        continue;
      gw_drawing_text (drawing, box.x, box.y, text, GW_FONT_SMALL, GW_TONE_INK);
      return true;
    }

  return false;
}

/* The last point within the plot, counting back from @from; its index, or n: none. */
static size_t
last_inside (const GwPlot     *plot,
             const GwPlotLine *line,
             size_t            from)
{
  for (size_t i = from; i-- > 0;)
    if (gw_plot_holds (plot, line->x[i], line->y[i]))
      return i;

  return line->n;
}

void
gw_plot_label (GwDrawing         *drawing,
               const GwPlot      *plot,
               const GwPlotLine  *line,
               size_t             n,
               const char *const *texts,
               size_t             since)
{
  const size_t end = last_inside (plot, line, line->n);
  const size_t step = MAX (1, line->n / (3 * TRIES));

  for (size_t t = 0; t < n; t++)
    for (size_t k = 0, i = end; k < TRIES && i < line->n;
         k++, i = i >= step ? last_inside (plot, line, i - step + 1) : line->n)
      if (write_at (drawing, plot,
                    (double[]){ gw_plot_x (plot, line->x[i]), gw_plot_y (plot, line->y[i]) },
                    texts[t], since))
        return;
}

void
gw_section_end_label (GwDrawing            *drawing,
                      const GwPlot         *plot,
                      const GwPlotLine     *line,
                      const GwSectionLabel *label,
                      size_t                since)
{
  char *full = g_strdup_printf ("%s  %s", label->letter, label->name);

  gw_plot_label (drawing, plot, line, 2, (const char *[]){ full, label->letter }, since);
  g_free (full);
}

static void
draw_row (GwDrawing      *drawing,
          const GwKeyRow *row,
          double          x,
          double          y,
          double          width)
{
  char *text;

  if (row->line != GW_LINE_NONE)
    gw_line_from_to (drawing, x, y, x + SAMPLE, y, row->line, row->tone);
  if (row->symbol != GW_MARK_PATH)
    gw_drawing_symbol (drawing, row->symbol, x + SAMPLE / 2, y, 6.5, row->tone);
  text = gw_text_fit (drawing, row->text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, width - SAMPLE - PAD);
  if (text != NULL)
    gw_text_at (drawing, x + SAMPLE + PAD, y, text, GW_FONT_SMALL, GW_TONE_INK, GW_ALIGN_START,
                GW_ALIGN_MIDDLE);
  g_free (text);
}

/* As many columns as the widest row lets there be; rows without room are left out. */
static void
draw_key (GwDrawing      *drawing,
          GwBox          *box,
          size_t          n,
          const GwKeyRow *rows)
{
  const double line = gw_text_line (drawing, GW_FONT_SMALL);
  const size_t most = (size_t) (box->height * KEY_SHARE / line);
  double       widest = 1;
  size_t       n_columns, n_rows;
  GwBox        key;

  for (size_t i = 0; i < n; i++)
    {
      double width;

      gw_drawing_measure (drawing, rows[i].text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, NULL);
      widest = fmax (widest, width + SAMPLE + 3 * PAD);
    }
  n_columns = CLAMP ((size_t) (box->width / widest), 1, MAX (n, 1));
  n_rows = MIN ((n + n_columns - 1) / n_columns, most);
  if (n_rows == 0)
    return;

  key = gw_box_take_bottom (box, line * (double) n_rows);
  gw_box_take_bottom (box, 2);
  for (size_t i = 0; i < MIN (n, n_rows * n_columns); i++)
    draw_row (drawing, &rows[i],
              key.x + key.width / (double) n_columns * (double) (i / n_rows),
              key.y + line * ((double) (i % n_rows) + 0.5), key.width / (double) n_columns);
}

static void
draw_notes (GwDrawing            *drawing,
            GwBox                *box,
            const GwSectionWords *words)
{
  const double line = gw_text_line (drawing, GW_FONT_SMALL);
  const int    most = (int) (box->height * NOTE_SHARE / line);
  int          n_lines;
  GwBox        notes;

  if (words->notes == NULL || most == 0 || box->height < LOW)
    return;
  n_lines = gw_text_lines (drawing, words->notes, GW_FONT_SMALL, GW_STYLE_UPRIGHT, box->width);
  notes = gw_box_take_bottom (box, line * MIN (n_lines, most));
  gw_text_paragraph (drawing, notes, words->notes, GW_FONT_SMALL, GW_TONE_MID, GW_STYLE_UPRIGHT,
                     GW_ALIGN_START);
  gw_box_take_bottom (box, 2);
}

static void
draw_head (GwDrawing            *drawing,
           GwBox                *box,
           const GwSectionWords *words)
{
  const double line = gw_text_line (drawing, GW_FONT_SMALL);
  GwBox        head = gw_box_take_top (box, gw_text_line (drawing, GW_FONT_HEAD) + 1);
  char        *text;

  text = gw_text_fit (drawing, words->title, GW_FONT_HEAD, GW_STYLE_UPRIGHT, head.width);
  if (text != NULL)
    gw_drawing_text (drawing, head.x, head.y, text, GW_FONT_HEAD, GW_TONE_INK);
  g_free (text);
  if (words->conditions != NULL)
    {
      head = *box;
      head.height = fmin (head.height, line * (head.height < LOW ? 1 : 2));
      gw_box_take_top (box, gw_text_paragraph (drawing, head, words->conditions, GW_FONT_SMALL,
                                               GW_TONE_MID, GW_STYLE_UPRIGHT, GW_ALIGN_START));
    }
  gw_box_take_top (box, 2);
}

GwBox
gw_plot_frame (GwDrawing            *drawing,
               GwBox                 box,
               const GwSectionWords *words,
               size_t                n_rows,
               const GwKeyRow       *rows)
{
  draw_head (drawing, &box, words);
  draw_notes (drawing, &box, words);
  draw_key (drawing, &box, n_rows, rows);

  return box;
}

GwBox
gw_plot_without (GwDrawing            *drawing,
                 GwBox                 box,
                 const GwSectionWords *words)
{
  draw_head (drawing, &box, words);
  if (words->notes != NULL)
    gw_box_take_top (&box, gw_text_paragraph (drawing, box, words->notes, GW_FONT_TEXT,
                                              GW_TONE_INK, GW_STYLE_UPRIGHT, GW_ALIGN_START));

  return box;
}
