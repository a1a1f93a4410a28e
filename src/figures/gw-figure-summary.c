/* gw-figure-summary.c - the options side by side
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdio.h>

#include "figures/gw-summary-private.h"

#define PAD 4.0
#define CROSS 5.0          /* size of the sign of a broken limit */
#define UNIT_GAP 6.0       /* between label and unit */
#define COLUMN_MOST 96.0  /* [pt] */
#define STRETCH 5.0        /* [pt] a row may grow where there is room */
#define LABEL_SHARE 0.24   /* of the width, at most, once columns get narrow */

static double
text_width (GwDrawing  *drawing,
            const char *text,
            GwFont      font,
            GwTextStyle style)
{
  double width = 0;

  if (text != NULL)
    gw_drawing_measure (drawing, text, font, style, &width, NULL);
  return width;
}

/* Where the decimals of @value begin: at the decimal sign, else after the last digit of the number. */
static size_t
decimals_at (const char *value)
{
  size_t i = 0;

  while (value[i] != '\0' && !g_ascii_isdigit (value[i]))
    i++;
  if (value[i] == '\0')
    return i;
  while (g_ascii_isdigit (value[i]))
    i++;

  return i;
}

/* Width of what stands behind the place at which the row's numbers are aligned. */
static double
tail_width (GwDrawing           *drawing,
            const GwSummaryCell *cell,
            GwFont               font)
{
  return text_width (drawing, cell->value + decimals_at (cell->value), font, cell->style);
}

/* Band and change in one small text; NULL: neither. */
static char *
second_text (const GwSummaryCell *cell,
             bool                 with_band,
             bool                 with_change)
{
  const char *band = with_band ? cell->band : NULL;
  const char *change = with_change ? cell->change : NULL;

  if (band != NULL && change != NULL)
    return g_strconcat (band, "  ", change, NULL);

  return g_strdup (band != NULL ? band : change);
}

static double
row_tail (GwDrawing             *drawing,
          const GwSummaryFigure *figure,
          size_t                 row,
          GwFont                 font)
{
  double widest = 0;

  for (size_t i = 0; i < figure->n_columns; i++)
    if (figure->rows[row].cells[i].value != NULL)
      widest = fmax (widest, tail_width (drawing, &figure->rows[row].cells[i], font));

  return widest;
}

static void
need_of_cell (GwDrawing           *drawing,
              const GwSummaryCell *cell,
              GwFont               font,
              double               row_tail_width,
              GwSummaryMeasure    *need)
{
  double number, band;
  char  *second;

  if (cell->value == NULL)
    return;
  number = text_width (drawing, cell->value, font, cell->style) -
           tail_width (drawing, cell, font) + row_tail_width;
  band = fmax (text_width (drawing, cell->band, GW_FONT_SMALL, GW_STYLE_UPRIGHT),
               text_width (drawing, cell->change, GW_FONT_SMALL, GW_STYLE_UPRIGHT));
  band += band > 0 ? 3 : 0;
  second = second_text (cell, true, true);
  need->plain = fmax (need->plain, number);
  need->band = fmax (need->band, band);
  need->second = fmax (need->second, text_width (drawing, second, GW_FONT_SMALL, GW_STYLE_UPRIGHT));
  g_free (second);
}

static void
measure_columns (GwDrawing             *drawing,
                 const GwSummaryFigure *figure,
                 GwFont                 font,
                 GwSummaryMeasure      *measure)
{
  double gutter;

  for (size_t row = 0; row < figure->n_rows; row++)
    {
      double tail = row_tail (drawing, figure, row, font);

      for (size_t i = 0; i < figure->n_columns; i++)
        {
          const GwSummaryCell *cell = &figure->rows[row].cells[i];

          need_of_cell (drawing, cell, font, tail, measure);
          measure->has_cross = measure->has_cross || cell->limit == GW_LIMIT_BROKEN;
          measure->has_band = measure->has_band || cell->band != NULL;
          measure->has_change = measure->has_change || cell->change != NULL;
        }
    }
  gutter = PAD + 2 + (measure->has_cross ? CROSS + 3 : 0);
  measure->beside = measure->plain + measure->band + gutter;
  measure->plain += gutter;
  measure->second += gutter;
}

static void
measure_labels (GwDrawing             *drawing,
                const GwSummaryFigure *figure,
                GwFont                 font,
                GwSummaryMeasure      *measure)
{
  for (size_t row = 0; row < figure->n_rows; row++)
    {
      double label = text_width (drawing, figure->rows[row].label, font, GW_STYLE_UPRIGHT);
      double unit = text_width (drawing, figure->rows[row].unit, GW_FONT_SMALL, GW_STYLE_UPRIGHT);

      measure->label = fmax (measure->label, label + (unit > 0 ? unit + UNIT_GAP : 0) + PAD);
    }
}

void
gw_summary_measure (GwDrawing             *drawing,
                    const GwSummaryFigure *figure,
                    GwSummaryMeasure       measures[2])
{
  for (int i = 0; i < 2; i++)
    {
      GwFont font = i == 0 ? GW_FONT_SMALL : GW_FONT_TEXT;

      measures[i] = (GwSummaryMeasure){ 0 };
      measure_columns (drawing, figure, font, &measures[i]);
      measure_labels (drawing, figure, font, &measures[i]);
    }
}

/* Widths at @font; false if the columns do not all find room beside full labels. */
static bool
fit_width (GwSummaryTable *table,
           GwFont          font)
{
  const GwSummaryMeasure *need = &table->measures[font == GW_FONT_TEXT];
  double                  n = (double) table->figure->n_columns;
  double                  most, share;

  table->font = font;
  table->label_width = need->label;
  table->cross_width = need->has_cross ? CROSS + 3 : 0;
  table->band_width = need->band;
  table->n_columns = table->figure->n_columns;
  share = (table->box.width - table->label_width) / n;
  table->is_band_beside = need->has_band && share >= need->beside;
  table->has_second = need->has_change || (need->has_band && !table->is_band_beside);
  /* Few columns on a wide sheet keep close to their labels. */
  table->column_width = fmin (share, fmax (1.6 * need->beside, COLUMN_MOST));
  if (share >= need->plain)
    return true;

  /* Labels give way first, then columns at the end. */
  most = fmin (table->label_width, table->box.width * LABEL_SHARE);
  table->label_width = fmax (most, table->box.width - n * need->plain);
  table->label_width = fmin (table->label_width, most);
  table->column_width = (table->box.width - table->label_width) / n;
  if (table->column_width < need->plain)
    {
      double room = table->box.width - table->label_width;

      table->n_columns = (size_t) CLAMP (floor ((room - 8) / need->plain), 0, n);
      table->column_width = table->n_columns > 0 ? (room - 8) / (double) table->n_columns : 0;
    }

  return false;
}

/* Row height and number of rows at @height, the header and legend taken off. */
static void
fit_height (GwDrawing      *drawing,
            GwSummaryTable *table,
            double          height)
{
  double line = gw_text_line (drawing, table->font);
  double small = gw_text_line (drawing, GW_FONT_SMALL);
  double n = (double) table->figure->n_rows;
  double one = line + 2, two = line + small + 1.5;

  if (table->has_second && n * two > height)
    table->has_second = false;
  if (!table->has_second && n * one > height && table->font == GW_FONT_TEXT)
    {
      fit_width (table, GW_FONT_SMALL);
      table->has_second = false;
      line = small;
      one = line + 1;
    }
  table->line = line;
  table->row_height = table->has_second ? two : one;
  table->n_rows = table->figure->n_rows;
  if (n * table->row_height > height)
    table->n_rows = (size_t) fmax (floor ((height - line) / table->row_height), 0);
  else if (n > 0)
    table->row_height += fmin ((height - n * table->row_height) / n, STRETCH);
}

static void
table_init (GwDrawing             *drawing,
            const GwSummaryFigure *figure,
            const GwSummaryMeasure measures[2],
            GwBox                  box,
            GwSummaryTable        *table)
{
  double legend = 0;

  *table = (GwSummaryTable){ .figure = figure, .measures = measures, .box = box };
  if (!fit_width (table, GW_FONT_TEXT))
    fit_width (table, GW_FONT_SMALL);
  table->shown = figure->shown;
  for (size_t i = 0; i < table->n_columns; i++)
    table->column[i % GW_SUMMARY_COLUMNS] = i;
  /* The shown option is never the one left out. */
  if (table->n_columns > 0 && figure->shown >= (int) table->n_columns && (size_t) figure->shown < figure->n_columns)
    table->column[table->n_columns - 1] = (size_t) figure->shown;

  gw_summary_header_fit (drawing, table);
  if (figure->legend != NULL && box.height > 90)
    legend = gw_text_line (drawing, GW_FONT_SMALL) *
               gw_text_lines (drawing, figure->legend, GW_FONT_SMALL, GW_STYLE_UPRIGHT, box.width) +
             PAD;
  table->legend_height = legend;
  fit_height (drawing, table, box.height - table->header_height - legend - 2);
}

/* Whether band and change find room beside one another in every cell of the row. */
static bool
row_takes_both (GwDrawing            *drawing,
                const GwSummaryTable *table,
                const GwSummaryRow   *row)
{
  for (size_t i = 0; i < table->n_columns; i++)
    {
      char  *both = second_text (&row->cells[table->column[i]], true, true);
      double width = text_width (drawing, both, GW_FONT_SMALL, GW_STYLE_UPRIGHT);

      g_free (both);
      if (width + table->cross_width + PAD + 2 > table->column_width)
        return false;
    }

  return true;
}

static bool
row_has_band (const GwSummaryTable *table,
              const GwSummaryRow   *row)
{
  for (size_t i = 0; i < table->n_columns; i++)
    if (row->cells[table->column[i]].band != NULL)
      return true;

  return false;
}

/* The small line under the number; if only one fits, the band goes before the change. */
static void
draw_second (GwDrawing            *drawing,
             const GwSummaryTable *table,
             const GwSummaryRow   *row,
             const GwSummaryCell  *cell,
             double                number_right,
             double                y)
{
  bool  is_beside = table->is_band_beside;
  bool  with_change = is_beside || !row_has_band (table, row) || row_takes_both (drawing, table, row);
  char *text = second_text (cell, !is_beside, with_change);

  if (text != NULL)
    gw_text_at (drawing, number_right + (is_beside ? 3 : 0), y, text, GW_FONT_SMALL, GW_TONE_MID,
                is_beside ? GW_ALIGN_START : GW_ALIGN_END, GW_ALIGN_START);
  g_free (text);
}

static void
draw_cell (GwDrawing            *drawing,
           const GwSummaryTable *table,
           const GwSummaryRow   *row,
           const GwSummaryCell  *cell,
           double                right,
           double                y,
           double                tail)
{
  double  number_right = right - PAD - table->cross_width - (table->is_band_beside ? table->band_width : 0);
  double  middle = y + (table->has_second ? table->line / 2 + 1 : table->row_height / 2);
  double  x = number_right - tail + tail_width (drawing, cell, table->font);
  GwTone  tone = cell->style == GW_STYLE_ITALIC ? GW_TONE_MID : GW_TONE_INK;
  GwMark *mark = gw_drawing_text (drawing, x, middle, cell->value, table->font, tone);

  mark->style = cell->style;
  gw_drawing_align (drawing, mark, GW_ALIGN_END, GW_ALIGN_MIDDLE);
  if (table->is_band_beside && cell->band != NULL)
    gw_text_at (drawing, number_right + 3, middle, cell->band, GW_FONT_SMALL, GW_TONE_MID,
                GW_ALIGN_START, GW_ALIGN_MIDDLE);
  if (cell->limit == GW_LIMIT_BROKEN)
    gw_drawing_symbol (drawing, GW_MARK_CROSS, right - PAD - CROSS / 2, middle, CROSS, GW_TONE_INK);
  if (table->has_second)
    draw_second (drawing, table, row, cell, number_right, y + table->line + 1);
}

static void
draw_label (GwDrawing            *drawing,
            const GwSummaryTable *table,
            const GwSummaryRow   *row,
            double                y)
{
  double middle = y + (table->has_second ? table->line / 2 + 1 : table->row_height / 2);
  double unit = text_width (drawing, row->unit, GW_FONT_SMALL, GW_STYLE_UPRIGHT);
  char  *label = gw_text_fit (drawing, row->label, table->font, GW_STYLE_UPRIGHT,
                              table->label_width - (unit > 0 ? unit + UNIT_GAP : 0) - PAD + 0.1);

  if (label != NULL)
    gw_text_at (drawing, table->box.x, middle, label, table->font, GW_TONE_INK, GW_ALIGN_START,
                GW_ALIGN_MIDDLE);
  g_free (label);
  if (row->unit != NULL && *row->unit != '\0')
    gw_text_at (drawing, table->box.x + table->label_width - PAD, middle, row->unit, GW_FONT_SMALL,
                GW_TONE_MID, GW_ALIGN_END, GW_ALIGN_MIDDLE);
}

static double
column_right (const GwSummaryTable *table,
              size_t                i)
{
  return table->box.x + table->label_width + table->column_width * (double) (i + 1);
}

static void
draw_tint (GwDrawing            *drawing,
           const GwSummaryTable *table,
           double                height)
{
  for (size_t i = 0; i < table->n_columns; i++)
    if ((int) table->column[i] == table->shown)
      {
        GwBox   box = { column_right (table, i) - table->column_width, table->box.y,
                        table->column_width, height };
        GwMark *mark = gw_rectangle (drawing, box, GW_LINE_NONE, GW_TONE_SELECTED);

        mark->is_filled = true;
        mark->fill = GW_TONE_SELECTED;
      }
}

static void
draw_rows (GwDrawing            *drawing,
           const GwSummaryTable *table,
           double                width)
{
  double top = table->box.y + table->header_height;

  for (size_t row = 0; row < table->n_rows; row++)
    {
      double y = top + table->row_height * (double) row;
      double tail = row_tail (drawing, table->figure, row, table->font);

      if (row > 0)
        gw_line_from_to (drawing, table->box.x, y, table->box.x + width, y, GW_LINE_HAIR, GW_TONE_FAINT);
      draw_label (drawing, table, &table->figure->rows[row], y);
      for (size_t i = 0; i < table->n_columns; i++)
        {
          const GwSummaryCell *cell = &table->figure->rows[row].cells[table->column[i]];

          if (cell->value != NULL)
            draw_cell (drawing, table, &table->figure->rows[row], cell, column_right (table, i), y, tail);
        }
    }
}

double
gw_summary_width (const GwSummaryFigure *figure,
                  const GwSummaryMeasure measures[2],
                  bool                   with_second)
{
  const GwSummaryMeasure *need = &measures[1];

  return need->label + (double) figure->n_columns * (with_second ? fmax (need->plain, need->second) : need->plain);
}

double
gw_summary_height (GwDrawing             *drawing,
                   const GwSummaryFigure *figure,
                   const GwSummaryMeasure measures[2],
                   double                 width,
                   bool                   with_second)
{
  GwSummaryTable table;
  double         row;

  table_init (drawing, figure, measures, (GwBox){ 0, 0, width, 1e4 }, &table);
  row = table.line + 2;
  if (with_second && table.has_second)
    row = table.line + gw_text_line (drawing, GW_FONT_SMALL) + 1.5;

  return table.header_height + row * (double) figure->n_rows + table.legend_height + 3;
}

void
gw_figure_summary (GwDrawing             *drawing,
                   GwBox                  box,
                   const GwSummaryFigure *figure)
{
  GwSummaryMeasure measures[2];
  GwSummaryTable   table;
  double           width, bottom;

  if (figure->n_columns == 0 || figure->n_columns > GW_SUMMARY_COLUMNS)
    return;
  gw_summary_measure (drawing, figure, measures);
  table_init (drawing, figure, measures, box, &table);
  if (table.n_columns == 0)
    return;
  width = table.label_width + table.column_width * (double) table.n_columns;
  bottom = box.y + table.header_height + table.row_height * (double) table.n_rows;

  draw_tint (drawing, &table, bottom - box.y);
  gw_line_from_to (drawing, box.x, box.y, box.x + width, box.y, GW_LINE_NARROW, GW_TONE_INK);
  gw_summary_header_draw (drawing, &table);
  gw_line_from_to (drawing, box.x, box.y + table.header_height, box.x + width,
                   box.y + table.header_height, GW_LINE_NARROW, GW_TONE_INK);
  draw_rows (drawing, &table, width);
  gw_line_from_to (drawing, box.x, bottom, box.x + width, bottom, GW_LINE_NARROW, GW_TONE_INK);
  if (table.n_columns < figure->n_columns)
    gw_text_at (drawing, box.x + box.width, box.y + table.header_height, "…", GW_FONT_SMALL,
                GW_TONE_MID, GW_ALIGN_END, GW_ALIGN_END);
  if (table.n_rows < figure->n_rows)
    {
      gw_text_at (drawing, box.x, bottom, "…", table.font, GW_TONE_MID, GW_ALIGN_START, GW_ALIGN_START);
      bottom += table.line;
    }
  if (table.legend_height > 0)
    gw_text_paragraph (drawing, (GwBox){ box.x, bottom + PAD, box.width, box.y + box.height - bottom - PAD },
                       figure->legend, GW_FONT_SMALL, GW_TONE_MID, GW_STYLE_UPRIGHT, GW_ALIGN_START);
}
