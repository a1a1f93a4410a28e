/* gw-figure-summary.c - the options side by side
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-summary-private.h"

#define PAD   4.0
#define CROSS 5.0 /* size of the sign of a broken limit */

/* What stands under the number; NULL: nothing. Free it with g_free(). */
static char *
second_line (const GwSummaryTable *table,
             const GwSummaryCell  *cell)
{
  const char *band = table->takes_both || !table->takes_band ? cell->short_band : cell->band;

  if (!table->has_second || table->is_band_beside)
    return NULL;
  if (!table->takes_both || cell->change == NULL)
    return g_strdup (band);

  return band != NULL ? g_strconcat (band, "  ", cell->change, NULL) : g_strdup (cell->change);
}

static void
draw_cell (GwDrawing            *drawing,
           const GwSummaryTable *table,
           const GwSummaryCell  *cell,
           double                right,
           double                y,
           double                tail)
{
  double number_right =
    right - PAD - table->cross_width - (table->is_band_beside ? table->band_width : 0);
  double  middle = y + (table->has_second ? table->line / 2 + 1 : table->row_height / 2);
  double  x = number_right - tail + gw_summary_tail (drawing, cell, table->font);
  GwTone  tone = cell->style == GW_STYLE_ITALIC ? GW_TONE_MID : GW_TONE_INK;
  GwMark *mark = gw_drawing_text (drawing, x, middle, cell->value, table->font, tone);
  char   *second = second_line (table, cell);

  mark->style = cell->style;
  gw_drawing_align (drawing, mark, GW_ALIGN_END, GW_ALIGN_MIDDLE);
  if (table->is_change_beside && cell->change != NULL)
    gw_text_at (drawing, number_right - table->number_width - 2, middle, cell->change,
                GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END, GW_ALIGN_MIDDLE);
  if (table->is_band_beside && cell->band != NULL)
    gw_text_at (drawing, number_right + 4, middle, cell->band, GW_FONT_SMALL, GW_TONE_MID,
                GW_ALIGN_START, GW_ALIGN_MIDDLE);
  if (cell->limit == GW_LIMIT_BROKEN)
    gw_drawing_symbol (drawing, GW_MARK_CROSS, right - PAD - CROSS / 2, middle, CROSS, GW_TONE_INK);
  if (second != NULL)
    gw_text_at (drawing, right - PAD, y + table->line + 1, second, GW_FONT_SMALL, GW_TONE_MID,
                GW_ALIGN_END, GW_ALIGN_START);
  g_free (second);
}

static void
draw_unit (GwDrawing            *drawing,
           const GwSummaryTable *table,
           const GwSummaryRow   *row,
           double                y)
{
  if (row->unit != NULL)
    gw_text_at (drawing, table->box.x + table->label_width - PAD, y, row->unit, GW_FONT_SMALL,
                GW_TONE_MID, GW_ALIGN_END, GW_ALIGN_MIDDLE);
}

/* In two lines where the columns leave no more room. */
static void
draw_folded (GwDrawing            *drawing,
             const GwSummaryTable *table,
             const GwSummaryRow   *row,
             double                y)
{
  GwSummaryLabel label;

  gw_summary_label_fold (drawing, row, table->font, &label);
  for (int i = 0; i < 2; i++)
    {
      const double middle = y + table->line / 2 + 1 + i * table->line;

      if (label.lines[i] != NULL)
        gw_text_at (drawing, table->box.x, middle, label.lines[i], table->font, GW_TONE_INK,
                    GW_ALIGN_START, GW_ALIGN_MIDDLE);
      if (i == label.unit_line)
        draw_unit (drawing, table, row, middle);
    }
  gw_summary_label_clear (&label);
}

static void
draw_label (GwDrawing            *drawing,
            const GwSummaryTable *table,
            const GwSummaryRow   *row,
            double                y)
{
  double middle = y + (table->has_second ? table->line / 2 + 1 : table->row_height / 2);

  if (table->is_folded)
    {
      draw_folded (drawing, table, row, y);
      return;
    }
  gw_text_at (drawing, table->box.x, middle, row->label, table->font, GW_TONE_INK, GW_ALIGN_START,
              GW_ALIGN_MIDDLE);
  draw_unit (drawing, table, row, middle);
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
      double tail = gw_summary_row_tail (drawing, table->figure, row, table->font);

      if (row > 0)
        gw_line_from_to (drawing, table->box.x, y, table->box.x + width, y, GW_LINE_HAIR,
                         GW_TONE_FAINT);
      draw_label (drawing, table, &table->figure->rows[row], y);
      for (size_t i = 0; i < table->n_columns; i++)
        {
          const GwSummaryRow  *source = &table->figure->rows[row];
          const GwSummaryCell *cell = &source->cells[table->column[i]];
          const size_t         since = gw_drawing_n (drawing);
          const GwBox          whole = { column_right (table, i) - table->column_width, y,
                                         table->column_width, table->row_height };

          gw_rectangle (drawing, whole, GW_LINE_NONE, GW_TONE_INK);
          if (cell->value != NULL)
            draw_cell (drawing, table, cell, column_right (table, i), y, tail);
          gw_drawing_point_at (
            drawing, since,
            (GwTarget){ GW_TARGET_RESULT, (int) table->column[i], source->result });
        }
    }
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
  gw_summary_table_init (drawing, figure, measures, box, &table);
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
      gw_text_at (drawing, box.x, bottom, "…", table.font, GW_TONE_MID, GW_ALIGN_START,
                  GW_ALIGN_START);
      bottom += table.line;
    }
  if (table.legend_height > 0)
    gw_text_paragraph (drawing,
                       (GwBox){ box.x, bottom + PAD, box.width,
                                box.y + box.height - bottom - PAD },
                       figure->legend, GW_FONT_SMALL, GW_TONE_MID, GW_STYLE_UPRIGHT,
                       GW_ALIGN_START);
}
