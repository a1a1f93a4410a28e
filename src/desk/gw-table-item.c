/* gw-table-item.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-table-item.h"

#include <math.h>

struct _GwTableItem
{
  GObject parent_instance;

  const GwTableRow *row;
};

G_DEFINE_FINAL_TYPE (GwTableItem, gw_table_item, G_TYPE_OBJECT)

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
gw_table_item_class_init (GwTableItemClass *klass)
{
  signals[CHANGED] = g_signal_new ("changed", GW_TYPE_TABLE_ITEM, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
gw_table_item_init (GwTableItem *self)
{
}

GwTableItem *
gw_table_item_new (const GwTableRow *row)
{
  GwTableItem *self = g_object_new (GW_TYPE_TABLE_ITEM, NULL);

  self->row = row;
  return self;
}

const GwTableRow *
gw_table_item_get_row (GwTableItem *self)
{
  return self->row;
}

void
gw_table_item_set_row (GwTableItem      *self,
                       const GwTableRow *row)
{
  self->row = row;
  g_signal_emit (self, signals[CHANGED], 0);
}

int
gw_table_item_compare (GwTableItem *self,
                       GwTableItem *other,
                       guint        column,
                       gboolean     is_number)
{
  const double a = self->row->keys[column], b = other->row->keys[column];

  if (!is_number)
    return g_utf8_collate (self->row->cells[column], other->row->cells[column]);
  if (isnan (a) || isnan (b))
    return (isnan (a) != 0) - (isnan (b) != 0);

  return (a > b) - (a < b);
}
