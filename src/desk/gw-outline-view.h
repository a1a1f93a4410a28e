/* gw-outline-view.h - the outline of a wing section, drawn
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "engine/gw-outline.h"

G_BEGIN_DECLS

#define GW_TYPE_OUTLINE_VIEW (gw_outline_view_get_type ())

/* As large as it is given room. Dark where GTK is told that the program is. */
G_DECLARE_FINAL_TYPE (GwOutlineView, gw_outline_view, GW, OUTLINE_VIEW, GtkWidget)

/** gw_outline_view_show: @other (nullable): laid over it. Both are copied. */
void gw_outline_view_show (GwOutlineView   *self,
                           const GwOutline *outline,
                           const GwOutline *other);

G_END_DECLS
