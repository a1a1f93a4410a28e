/* gw-table-view.h - what the drawings show, as tables to be read and copied
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"
#include "report/gw-object-table.h"

G_BEGIN_DECLS

#define GW_TYPE_TABLE_VIEW (gw_table_view_get_type ())

/* Stands in place of the sheet. A row that is activated selects its record in the document,
 * and the record that is selected there marks its row here. Follows the document only while
 * it is on the screen. Action "table.copy": the table as tab-separated text on the
 * clipboard, also Ctrl+C within. */
G_DECLARE_FINAL_TYPE (GwTableView, gw_table_view, GW, TABLE_VIEW, GtkWidget)

GtkWidget *gw_table_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_table_view_set_document: @document: (nullable) */
void gw_table_view_set_document (GwTableView *self,
                                 GwDocument  *document);

/** gw_table_view_set_units: they are copied; those of the file until it is called. */
void gw_table_view_set_units (GwTableView   *self,
                              const GwUnits *units);

GwTableKind gw_table_view_get_kind (GwTableView *self);
void        gw_table_view_set_kind (GwTableView *self,
                                    GwTableKind  kind);

/** gw_table_view_get_text: what would be copied now, in the order of the study. (transfer full)
 * (nullable) */
char *gw_table_view_get_text (GwTableView *self);

G_END_DECLS
