/* gw-drawer.h - beside the sheet: everything in the study, and what can be done with it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_DRAWER (gw_drawer_get_type ())

/* An outline of the document's study: options, airframe, equipment, day
 * and limits. It follows
 * the document by itself; its selection is the document's, both ways, and an option that is
 * selected is shown.
 *
 * Actions, of what is selected: "outline.duplicate", "outline.remove", "outline.up",
 * "outline.down", "outline.baseline", "outline.rename"; "outline.add" with a kind of
 * gw-fresh.h; "outline.select" and "outline.menu" with the path of a row.
 *
 * Signal "message" (text): why something was not done. Signal "rename": what is selected
 * wants a new name. */
G_DECLARE_FINAL_TYPE (GwDrawer, gw_drawer, GW, DRAWER, GtkWidget)

/** gw_drawer_set_document: (nullable) */
void gw_drawer_set_document (GwDrawer   *self,
                             GwDocument *document);

/** gw_drawer_set_units: of masses, lengths and speeds in the rows; copied. */
void gw_drawer_set_units (GwDrawer      *self,
                          const GwUnits *units);

void gw_drawer_set_dark (GwDrawer *self,
                         gboolean  is_dark);

G_END_DECLS
