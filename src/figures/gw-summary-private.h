/* gw-summary-private.h - the summary table while it is laid out
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-figures-private.h"

#define GW_SUMMARY_COLUMNS 64

typedef enum
{
  GW_HEADER_INLINE,  /* marker, name beside it */
  GW_HEADER_STACKED, /* marker above the name */
  GW_HEADER_UPRIGHT, /* name turned, marker below it */
} GwSummaryHeader;

typedef struct
{
  const GwSummaryFigure  *figure;
  const GwSummaryMeasure *measures; /* at the two sizes */
  GwBox                   box;
  GwFont                  font;
  size_t                  n_columns, n_rows;          /* that find room */
  size_t                  column[GW_SUMMARY_COLUMNS]; /* which option stands in each */
  int                     shown;
  double                  label_width, column_width;
  double                  cross_width, band_width, number_width;
  double                  line, row_height, header_height, legend_height;
  GwSummaryHeader         header;
  GwFont                  header_font;
  bool                    has_baseline; /* the word under its name */
  bool                    has_second, is_band_beside, is_change_beside;
  bool                    takes_both, takes_band; /* the second line */
  bool                    is_folded;              /* labels in two lines */
} GwSummaryTable;

/** gw_summary_table_init: widths, heights and what is left out, for @box. */
void gw_summary_table_init (GwDrawing             *drawing,
                            const GwSummaryFigure *figure,
                            const GwSummaryMeasure measures[2],
                            GwBox                  box,
                            GwSummaryTable        *table);

double gw_summary_text_width (GwDrawing  *drawing,
                              const char *text,
                              GwFont      font,
                              GwTextStyle style);

/** gw_summary_tail: width of what stands behind the place where a row's numbers are aligned. */
double gw_summary_tail (GwDrawing           *drawing,
                        const GwSummaryCell *cell,
                        GwFont               font);

/** gw_summary_row_tail: the widest of a row. */
double gw_summary_row_tail (GwDrawing             *drawing,
                            const GwSummaryFigure *figure,
                            size_t                 row,
                            GwFont                 font);

/* A label in two lines; the unit stands at the right of one of them. */
typedef struct
{
  char  *lines[2]; /* NULL: none */
  int    unit_line;
  double width;     /* that it takes */
} GwSummaryLabel;

/** gw_summary_label_fold: folds the label where it takes the least width. Free the lines with
 * gw_summary_label_clear(). */
void gw_summary_label_fold (GwDrawing          *drawing,
                            const GwSummaryRow *row,
                            GwFont              font,
                            GwSummaryLabel     *out);
void gw_summary_label_clear (GwSummaryLabel *label);

/** gw_summary_names_width: width of a column whose name need not be turned. */
double gw_summary_names_width (GwDrawing             *drawing,
                               const GwSummaryFigure *figure);

/** gw_summary_header_fit: chooses the form of the header; sets its height. */
void gw_summary_header_fit (GwDrawing      *drawing,
                            GwSummaryTable *table);
void gw_summary_header_draw (GwDrawing            *drawing,
                             const GwSummaryTable *table);
