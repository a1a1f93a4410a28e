/* gw-sheet-view.h - the live drawing sheet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"
#include "figures/gw-drawing.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_SHEET_VIEW (gw_sheet_view_get_type ())

/* Lays the sheet out for its own size and shows what the document has come to. What is on it
 * can be selected, dragged, nudged by keys and typed; while something is tried, the former
 * state stays as a ghost. What the sheet says can also be heard: it is the accessible
 * description.
 *
 * Signal "says" (text): what happens under the hand, "" when nothing does.
 * Signal "why" (option, result): a number of the summary was pressed. */
G_DECLARE_FINAL_TYPE (GwSheetView, gw_sheet_view, GW, SHEET_VIEW, GtkWidget)

/** gw_sheet_view_set_document: @document: (nullable): NULL leaves the paper blank */
void gw_sheet_view_set_document (GwSheetView *self,
                                 GwDocument  *document);
void gw_sheet_view_set_dark (GwSheetView *self,
                             gboolean     is_dark);

/** gw_sheet_view_set_units: to show all in, from now on; those of the file until then. */
void gw_sheet_view_set_units (GwSheetView   *self,
                              const GwUnits *units);

/** gw_sheet_view_get_drawing: (nullable): as it is on the screen; NULL while it is to be drawn
 * anew. */
const GwDrawing *gw_sheet_view_get_drawing (GwSheetView *self);

/** gw_sheet_view_get_text: (nullable): what the sheet says, in words. */
const char *gw_sheet_view_get_text (GwSheetView *self);

/** gw_sheet_view_to_widget: a place of the drawing [pt] in the widget [pixel]. */
void gw_sheet_view_to_widget (GwSheetView *self,
                              double       x,
                              double       y,
                              double      *widget_x,
                              double      *widget_y);

double gw_sheet_view_get_zoom (GwSheetView *self);

G_END_DECLS
