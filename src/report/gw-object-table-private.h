/* gw-object-table-private.h - how tables are filled
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "report/gw-amount.h"
#include "report/gw-object-table.h"

G_BEGIN_DECLS

typedef struct
{
  GwEvaluation    *evaluation;
  const GwOutcome *outcome; /* shown */
  guint            shown;
  const GwUnits   *units;
  GwObjectTable   *table;
  GwTableRow      *row; /* that cells are added to */
  guint            n_cells;
} GwTabling;

/** _gw_table_column: a column of text, or of numbers of that quantity (unit in the title). */
void _gw_table_text_column (GwTabling  *tabling,
                            const char *title);
void _gw_table_number_column (GwTabling  *tabling,
                              const char *title,
                              GwQuantity  quantity);

/** _gw_table_row: @path is taken; it is kept if the study has such a record. */
void _gw_table_row (GwTabling *tabling,
                    char      *path);

void _gw_table_text (GwTabling  *tabling,
                     const char *text);
void _gw_table_number (GwTabling *tabling,
                       GwQuantity quantity,
                       double     value,
                       int        decimals);

/** _gw_table_band: the ends of a band, sorted by its width. */
void _gw_table_band (GwTabling    *tabling,
                     GwQuantity    quantity,
                     double        value,
                     const GwBand *band,
                     int           decimals);

/* Of the shown option, and of all. */
void _gw_table_fill_things (GwTabling *tabling);
void _gw_table_fill_stations (GwTabling *tabling);
void _gw_table_fill_points (GwTabling *tabling);
void _gw_table_fill_stall (GwTabling *tabling);
void _gw_table_fill_masses (GwTabling *tabling);
void _gw_table_fill_summary (GwTabling *tabling);
void _gw_table_fill_sections (GwTabling *tabling);

G_END_DECLS
