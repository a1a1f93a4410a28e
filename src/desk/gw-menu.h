/* gw-menu.h - menus that are made when they are opened
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** gw_menu_attach: @button opens a menu of @model. Its widgets are made the first time it does:
 * a window full of menus would take long to appear. */
void gw_menu_attach (GtkMenuButton *button,
                     GMenuModel    *model);

G_END_DECLS
