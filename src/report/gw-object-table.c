/* gw-object-table.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-object-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-object-table-private.h"
#include "study/gw-edit.h"

#define MINUS   "\342\210\222" /* U+2212 */
#define EN_DASH "\342\200\223" /* U+2013 */

static const struct
{
  const char *label;
  void (*fill) (GwTabling *tabling);
  gboolean is_sortable;
} kinds[GW_N_TABLES] = {
  [GW_TABLE_THINGS] = { N_ ("Things and masses"), _gw_table_fill_things, TRUE },
  [GW_TABLE_STATIONS] = { N_ ("Stations"), _gw_table_fill_stations, TRUE },
  [GW_TABLE_POINTS] = { N_ ("Points and limits"), _gw_table_fill_points, TRUE },
  [GW_TABLE_STALL] = { N_ ("Stall speed against mass"), _gw_table_fill_stall, TRUE },
  [GW_TABLE_MASSES] = { N_ ("What the mass is made of"), _gw_table_fill_masses, FALSE },
  [GW_TABLE_SECTIONS] = { N_ ("Wing sections"), _gw_table_fill_sections, TRUE },
  [GW_TABLE_SUMMARY] = { N_ ("Options side by side"), _gw_table_fill_summary, FALSE },
};

static void
column_free (GwTableColumn *column)
{
  g_free (column->title);
  g_free (column);
}

static void
row_free (GwTableRow *row)
{
  g_strfreev (row->cells);
  g_free (row->keys);
  g_free (row->path);
  g_free (row);
}

static void
add_column (GwTabling *tabling,
            char      *title,
            gboolean   is_number)
{
  GwTableColumn *column = g_new0 (GwTableColumn, 1);

  column->title = title;
  column->is_number = is_number;
  g_ptr_array_add (tabling->table->columns, column);
}

void
_gw_table_text_column (GwTabling  *tabling,
                       const char *title)
{
  add_column (tabling, g_strdup (title), FALSE);
}

void
_gw_table_number_column (GwTabling  *tabling,
                         const char *title,
                         GwQuantity  quantity)
{
  const char *unit = gw_units_name (tabling->units, quantity);

  add_column (tabling,
              *unit != '\0' ? g_strdup_printf ("%s, %s", title, unit) : g_strdup (title), TRUE);
}

void
_gw_table_row (GwTabling *tabling,
               char      *path)
{
  const guint      n = tabling->table->columns->len;
  g_autofree char *taken = path;
  GwTableRow      *row = g_new0 (GwTableRow, 1);

  row->cells = g_new0 (char *, n + 1);
  row->keys = g_new0 (double, n);
  if (taken != NULL && *taken != '\0' && gw_edit_record (tabling->evaluation->study, taken) != NULL)
    row->path = g_steal_pointer (&taken);
  g_ptr_array_add (tabling->table->rows, row);
  tabling->row = row;
  tabling->n_cells = 0;
}

static void
add_cell (GwTabling *tabling,
          char      *text,
          double     key)
{
  g_return_if_fail (tabling->n_cells < tabling->table->columns->len);

  tabling->row->cells[tabling->n_cells] = text;
  tabling->row->keys[tabling->n_cells++] = key;
}

void
_gw_table_text (GwTabling  *tabling,
                const char *text)
{
  add_cell (tabling, g_strdup (text), 0.0);
}

void
_gw_table_number (GwTabling *tabling,
                  GwQuantity quantity,
                  double     value,
                  int        decimals)
{
  add_cell (tabling, gw_amount_number (tabling->units, quantity, value, decimals), value);
}

void
_gw_table_band (GwTabling    *tabling,
                GwQuantity    quantity,
                double        value,
                const GwBand *band,
                int           decimals)
{
  char *text = gw_amount_band (tabling->units, quantity, value + band->low, value + band->high,
                               decimals);

  add_cell (tabling, text != NULL ? text : g_strdup (EN_DASH),
            text != NULL ? band->high - band->low : (double) NAN);
}

GwObjectTable *
gw_object_table_new (GwEvaluation  *evaluation,
                     guint          shown,
                     GwTableKind    kind,
                     const GwUnits *units)
{
  GwTabling tabling = { evaluation, gw_evaluation_outcome (evaluation, shown), shown, units, NULL,
                        NULL, 0 };

  g_return_val_if_fail (tabling.outcome != NULL && kind < GW_N_TABLES, NULL);

  tabling.table = g_new0 (GwObjectTable, 1);
  tabling.table->kind = kind;
  tabling.table->columns = g_ptr_array_new_with_free_func ((GDestroyNotify) column_free);
  tabling.table->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) row_free);
  tabling.table->is_sortable = kinds[kind].is_sortable;
  kinds[kind].fill (&tabling);
  return tabling.table;
}

void
gw_object_table_free (GwObjectTable *table)
{
  g_ptr_array_unref (table->columns);
  g_ptr_array_unref (table->rows);
  g_free (table);
}

const char *
gw_table_kind_label (GwTableKind kind)
{
  g_return_val_if_fail (kind < GW_N_TABLES, "");

  return _ (kinds[kind].label);
}

static void
append_cell (GString    *out,
             const char *text,
             gboolean    is_number)
{
  g_autoptr (GString) cell = g_string_new (text);

  g_string_replace (cell, "\t", " ", 0);
  g_string_replace (cell, "\n", " ", 0);
  if (is_number)
    g_string_replace (cell, MINUS, "-", 0);
  if (!is_number || !g_str_equal (cell->str, EN_DASH))
    g_string_append (out, cell->str);
}

char *
gw_object_table_text (const GwObjectTable *table)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < table->columns->len; i++)
    {
      g_string_append (out, i > 0 ? "\t" : "");
      append_cell (out, ((GwTableColumn *) g_ptr_array_index (table->columns, i))->title, FALSE);
    }
  g_string_append_c (out, '\n');

  for (guint k = 0; k < table->rows->len; k++)
    {
      const GwTableRow *row = g_ptr_array_index (table->rows, k);

      for (guint i = 0; i < table->columns->len; i++)
        {
          g_string_append (out, i > 0 ? "\t" : "");
          append_cell (out, row->cells[i],
                       ((GwTableColumn *) g_ptr_array_index (table->columns, i))->is_number);
        }
      g_string_append_c (out, '\n');
    }

  return g_string_free (out, FALSE);
}
