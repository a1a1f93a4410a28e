/* gw-start-page.h - what the program is for, and where to begin
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define GW_TYPE_START_PAGE (gw_start_page_get_type ())

G_DECLARE_FINAL_TYPE (GwStartPage, gw_start_page, GW, START_PAGE, GtkWidget)

/** gw_start_page_set_leftovers: @leftovers: of GwLeftover, to be brought back or let go. */
void gw_start_page_set_leftovers (GwStartPage *self,
                                  GListModel  *leftovers);

G_END_DECLS
