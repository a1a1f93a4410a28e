/* gw-sheet-view.h - the live drawing sheet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "report/gw-sheet.h"

G_BEGIN_DECLS

#define GW_TYPE_SHEET_VIEW (gw_sheet_view_get_type ())

/* Lays the sheet out for its own size, and keeps it as a picture until something changes.
 * What the sheet says can also be heard: it is the accessible description. */
G_DECLARE_FINAL_TYPE (GwSheetView, gw_sheet_view, GW, SHEET_VIEW, GtkWidget)

/**
 * gw_sheet_view_show:
 * @evaluation: (nullable): NULL leaves the paper blank
 * @shown: the option whose planform is drawn
 */
void gw_sheet_view_show (GwSheetView  *self,
                         GwEvaluation *evaluation,
                         guint         shown,
                         gboolean      is_dark);

/** gw_sheet_view_get_drawing: (nullable): as it was last put on the screen. */
const GwDrawing *gw_sheet_view_get_drawing (GwSheetView *self);

/** gw_sheet_view_get_text: (nullable): what the sheet says, in words. */
const char *gw_sheet_view_get_text (GwSheetView *self);

G_END_DECLS
