/* gw-summary-fit.c - how the summary table makes do with its room
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-summary-private.h"

#define PAD         4.0
#define CROSS       5.0  /* size of the sign of a broken limit */
#define UNIT_GAP    6.0  /* between label and unit */
#define BESIDE_GAP  4.0  /* between a number and what stands beside it */
#define COLUMN_MOST 96.0 /* [pt] */
#define STRETCH     5.0  /* [pt] a row may grow where there is room */

double
gw_summary_text_width (GwDrawing  *drawing,
                       const char *text,
                       GwFont      font,
                       GwTextStyle style)
{
  double width = 0;

  if (text != NULL)
    gw_drawing_measure (drawing, text, font, style, &width, NULL);
  return width;
}

/* Where the decimals of @value begin: at the decimal sign, else after the number. */
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
double
gw_summary_tail (GwDrawing           *drawing,
                 const GwSummaryCell *cell,
                 GwFont               font)
{
  return gw_summary_text_width (drawing, cell->value + decimals_at (cell->value), font,
                                cell->style);
}

double
gw_summary_row_tail (GwDrawing             *drawing,
                     const GwSummaryFigure *figure,
                     size_t                 row,
                     GwFont                 font)
{
  double widest = 0;

  for (size_t i = 0; i < figure->n_columns; i++)
    if (figure->rows[row].cells[i].value != NULL)
      widest = fmax (widest, gw_summary_tail (drawing, &figure->rows[row].cells[i], font));

  return widest;
}

static double
small_width (GwDrawing  *drawing,
             const char *text)
{
  const double width = gw_summary_text_width (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT);

  return width > 0 ? width + BESIDE_GAP : 0;
}

static void
need_of_cell (GwDrawing           *drawing,
              const GwSummaryCell *cell,
              GwFont               font,
              double               row_tail_width,
              GwSummaryMeasure    *need)
{
  double number;

  if (cell->value == NULL)
    return;
  number = gw_summary_text_width (drawing, cell->value, font, cell->style) -
           gw_summary_tail (drawing, cell, font) + row_tail_width;
  need->plain = fmax (need->plain, number);
  need->band = fmax (need->band, small_width (drawing, cell->band));
  need->change = fmax (need->change, small_width (drawing, cell->change));
  need->both = fmax (need->both, small_width (drawing, cell->short_band) +
                                   small_width (drawing, cell->change));
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
      double tail = gw_summary_row_tail (drawing, figure, row, font);

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
  measure->plain += gutter;
}

/* Line 1 of @label ends before word @n; tries the unit in both lines. */
static void
try_fold (GwDrawing          *drawing,
          const GwSummaryRow *row,
          GwFont              font,
          char              **words,
          guint               n,
          GwSummaryLabel     *best)
{
  g_autofree char *rest = words[n] != NULL ? g_strjoinv (" ", words + n) : NULL;
  g_autofree char *first = NULL, *kept = words[n];
  double           unit, width[2];

  words[n] = NULL;
  first = g_strjoinv (" ", words);
  words[n] = g_steal_pointer (&kept);
  width[0] = gw_summary_text_width (drawing, first, font, GW_STYLE_UPRIGHT);
  width[1] = gw_summary_text_width (drawing, rest, font, GW_STYLE_UPRIGHT);
  unit = gw_summary_text_width (drawing, row->unit, GW_FONT_SMALL, GW_STYLE_UPRIGHT);
  for (int line = 0; line < 2; line++)
    {
      const double gap = unit > 0 && width[line] > 0 ? UNIT_GAP : 0;
      const double whole = fmax (width[line] + gap + unit, width[1 - line]);

      if (whole >= best->width)
        continue;
      gw_summary_label_clear (best);
      best->lines[0] = g_strdup (first);
      best->lines[1] = g_strdup (rest);
      best->unit_line = line;
      best->width = whole;
    }
}

void
gw_summary_label_fold (GwDrawing          *drawing,
                       const GwSummaryRow *row,
                       GwFont              font,
                       GwSummaryLabel     *out)
{
  g_auto (GStrv) words = g_strsplit (row->label, " ", -1);
  const guint n = g_strv_length (words);

  *out = (GwSummaryLabel){ .width = INFINITY };
  for (guint i = 1; i <= n; i++)
    try_fold (drawing, row, font, words, i, out);
}

void
gw_summary_label_clear (GwSummaryLabel *label)
{
  for (int i = 0; i < 2; i++)
    g_clear_pointer (&label->lines[i], g_free);
}

static void
measure_labels (GwDrawing             *drawing,
                const GwSummaryFigure *figure,
                GwFont                 font,
                GwSummaryMeasure      *measure)
{
  for (size_t row = 0; row < figure->n_rows; row++)
    {
      double label =
        gw_summary_text_width (drawing, figure->rows[row].label, font, GW_STYLE_UPRIGHT);
      double unit =
        gw_summary_text_width (drawing, figure->rows[row].unit, GW_FONT_SMALL, GW_STYLE_UPRIGHT);

      GwSummaryLabel folded;

      measure->label = fmax (measure->label, label + (unit > 0 ? unit + UNIT_GAP : 0) + PAD);
      gw_summary_label_fold (drawing, &figure->rows[row], font, &folded);
      measure->folded = fmax (measure->folded, folded.width + PAD);
      gw_summary_label_clear (&folded);
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
      measures[i].name = gw_summary_names_width (drawing, figure);
    }
}

/* Widths at @font; false if the columns do not all find room beside the labels, which are never
 * shortened: they fold. */
static bool
fit_width (GwSummaryTable *table,
           GwFont          font,
           bool            is_folded)
{
  const GwSummaryMeasure *need = &table->measures[font == GW_FONT_TEXT];
  double                  n = (double) table->figure->n_columns;
  double                  room, share;

  table->font = font;
  table->is_folded = is_folded;
  table->label_width = is_folded ? need->folded : need->label;
  table->cross_width = need->has_cross ? CROSS + 3 : 0;
  table->n_columns = table->figure->n_columns;
  share = (table->box.width - table->label_width) / n;
  /* The change stands before its number and the band below it, or behind it where all
   * three find room; else both stand below it, the band in its short form. */
  table->is_change_beside = need->has_change && share >= need->plain + need->change;
  table->is_band_beside = need->has_band && share >= need->plain + need->change + need->band;
  table->band_width = table->is_band_beside ? need->band : 0;
  table->number_width = need->plain - table->cross_width - PAD;
  table->has_second = is_folded || (need->has_change && !table->is_change_beside) ||
                      (need->has_band && !table->is_band_beside);
  table->takes_both = need->has_change && !table->is_change_beside && share >= need->both;
  table->takes_band = share >= need->band;
  /* Few columns on a wide sheet keep close to their labels. */
  table->column_width =
    fmin (share, fmax (1.3 * (need->plain + need->change + need->band), COLUMN_MOST));
  if (share >= need->plain)
    return true;

  /* Columns at the end give way. */
  room = table->box.width - table->label_width - 8;
  table->n_columns = (size_t) CLAMP (floor (room / need->plain), 0, n);
  table->column_width = table->n_columns > 0 ? room / (double) table->n_columns : 0;
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

  if (table->has_second && !table->is_folded && n * two > height)
    table->has_second = false;
  if (!table->has_second && n * one > height && table->font == GW_FONT_TEXT)
    {
      fit_width (table, GW_FONT_SMALL, false);
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

void
gw_summary_table_init (GwDrawing             *drawing,
                       const GwSummaryFigure *figure,
                       const GwSummaryMeasure measures[2],
                       GwBox                  box,
                       GwSummaryTable        *table)
{
  double legend = 0;

  *table = (GwSummaryTable){ .figure = figure, .measures = measures, .box = box };
  if (!fit_width (table, GW_FONT_TEXT, false) && !fit_width (table, GW_FONT_SMALL, false))
    fit_width (table, GW_FONT_SMALL, true);
  table->shown = figure->shown;
  for (size_t i = 0; i < table->n_columns; i++)
    table->column[i % GW_SUMMARY_COLUMNS] = i;
  /* The shown option is never the one left out. */
  if (table->n_columns > 0 && figure->shown >= (int) table->n_columns &&
      (size_t) figure->shown < figure->n_columns)
    table->column[table->n_columns - 1] = (size_t) figure->shown;

  gw_summary_header_fit (drawing, table);
  if (figure->legend != NULL && box.height > 90)
    legend = gw_text_line (drawing, GW_FONT_SMALL) *
               gw_text_lines (drawing, figure->legend, GW_FONT_SMALL, GW_STYLE_UPRIGHT, box.width) +
             PAD;
  table->legend_height = legend;
  fit_height (drawing, table, box.height - table->header_height - legend - 2);
  if (table->n_rows == figure->n_rows || legend == 0)
    return;

  /* A row says more than the legend. */
  table->legend_height = 0;
  fit_height (drawing, table, box.height - table->header_height - 2);
}

double
gw_summary_width (const GwSummaryFigure *figure,
                  const GwSummaryMeasure measures[2],
                  bool                   with_second)
{
  const GwSummaryMeasure *need = &measures[1];
  const double            least = fmax (need->name, need->plain);
  /* Change before the number and band below it, or both below it. */
  const double full = fmin (fmax (need->plain + need->change, need->band), need->both);

  return need->label +
         (double) figure->n_columns * (with_second ? fmax (least, full) : least);
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

  gw_summary_table_init (drawing, figure, measures, (GwBox){ 0, 0, width, 1e4 }, &table);
  row = table.line + 2;
  if (table.has_second && (with_second || table.is_folded))
    row = table.line + gw_text_line (drawing, GW_FONT_SMALL) + 1.5;

  return table.header_height + row * (double) figure->n_rows + table.legend_height + 3;
}

GwSummaryShare
gw_summary_share (GwDrawing             *drawing,
                  const GwSummaryFigure *figure,
                  const GwSummaryMeasure measures[2],
                  double                 width,
                  double                 height)
{
  GwSummaryTable table;

  gw_summary_table_init (drawing, figure, measures, (GwBox){ 0, 0, width, height }, &table);
  return (GwSummaryShare){
    .columns = (double) table.n_columns / fmax ((double) figure->n_columns, 1),
    .rows = (double) table.n_rows / fmax ((double) figure->n_rows, 1),
    .is_folded = table.is_folded,
    .has_bands = table.has_second || table.is_band_beside || !measures[1].has_band,
  };
}
