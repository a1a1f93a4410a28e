/* gw-desk.h - the desk itself: the outline, the sheet and what is selected
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"
#include "desk/gw-sheet-view.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_DESK (gw_desk_get_type ())

/* Left the outline of the study, right the fields of what is selected or where a result comes
 * from; both fold. In the middle the sheet, or the same as tables.
 *
 * Properties "outline", "form": whether they stand beside the sheet; "outline-width",
 * "form-width"; "table": tables in place of the sheet. Action "desk.why" (u): a result.
 * Signal "says" (text): what happened, to be shown. */
G_DECLARE_FINAL_TYPE (GwDesk, gw_desk, GW, DESK, GtkWidget)

/** gw_desk_set_document: @document: (nullable) */
void gw_desk_set_document (GwDesk     *self,
                           GwDocument *document);
void gw_desk_set_dark (GwDesk  *self,
                       gboolean is_dark);
void gw_desk_set_units (GwDesk        *self,
                        const GwUnits *units);

/** gw_desk_is_outline_chosen: whether "outline" was set; else the outline stands beside the sheet
 * where the window is wide. */
gboolean gw_desk_is_outline_chosen (GwDesk *self);

GwSheetView *gw_desk_get_sheet (GwDesk *self);

G_END_DECLS
