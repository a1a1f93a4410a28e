/* gw-table-item.h - a row of a table as an object of a list model
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>

#include "report/gw-object-table.h"

G_BEGIN_DECLS

#define GW_TYPE_TABLE_ITEM (gw_table_item_get_type ())

/* Holds the place of a row whose values change; signal "changed" when they do. */
G_DECLARE_FINAL_TYPE (GwTableItem, gw_table_item, GW, TABLE_ITEM, GObject)

/** gw_table_item_new: @row: borrowed, until another one is set */
GwTableItem *gw_table_item_new (const GwTableRow *row) G_GNUC_WARN_UNUSED_RESULT;

const GwTableRow *gw_table_item_get_row (GwTableItem *self);
void              gw_table_item_set_row (GwTableItem      *self,
                                         const GwTableRow *row);

/** gw_table_item_compare: by one column, by value or as words; what has no answer comes last. */
int gw_table_item_compare (GwTableItem *self,
                           GwTableItem *other,
                           guint        column,
                           gboolean     is_number);

G_END_DECLS
