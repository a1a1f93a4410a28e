/* gw-outline-heading.h - over a list of the outline: folds it away, adds to it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define GW_TYPE_OUTLINE_HEADING (gw_outline_heading_get_type ())

/* Properties: "title"; "list", the widget to fold; "add-label", the name of the button; and
 * either "add-what", with which it activates "outline.add", or a menu. */
G_DECLARE_FINAL_TYPE (GwOutlineHeading, gw_outline_heading, GW, OUTLINE_HEADING, GtkWidget)

void gw_outline_heading_set_menu (GwOutlineHeading *self,
                                  GMenuModel       *menu);

gboolean gw_outline_heading_get_folded (GwOutlineHeading *self);
void     gw_outline_heading_set_folded (GwOutlineHeading *self,
                                        gboolean          is_folded);

/** gw_outline_heading_focus_last: the button to add, or else the heading takes the focus. */
gboolean gw_outline_heading_focus_last (GwOutlineHeading *self);

G_END_DECLS
