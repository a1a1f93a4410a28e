/* gw-form-list-row.h - a row of the form: what it is in a few words, and what can be done to it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define GW_TYPE_FORM_LIST_ROW (gw_form_list_row_get_type ())

/* Signal "asked" (int): the menu wants it moved up (-1) or down (+1), or removed (0). */
G_DECLARE_FINAL_TYPE (GwFormListRow, gw_form_list_row, GW, FORM_LIST_ROW, GtkListBoxRow)

GtkWidget *gw_form_list_row_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_form_list_row_update: row @i, counted from 0, of @n. */
void gw_form_list_row_update (GwFormListRow *self,
                              guint          i,
                              guint          n,
                              const char    *summary);

G_END_DECLS
