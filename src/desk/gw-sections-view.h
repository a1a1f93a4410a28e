/* gw-sections-view.h - what the wing sections in use do, drawn in place of the sheet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"
#include "report/gw-section-figures.h"

G_BEGIN_DECLS

#define GW_TYPE_SECTIONS_VIEW (gw_sections_view_get_type ())

/* Follows the document while it is on the screen. A figure is made in a thread, since a pressure
 * has to be computed; until then the one before it stays. */
G_DECLARE_FINAL_TYPE (GwSectionsView, gw_sections_view, GW, SECTIONS_VIEW, GtkWidget)

GtkWidget *gw_sections_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_sections_view_set_document: @document: (nullable) */
void gw_sections_view_set_document (GwSectionsView *self,
                                    GwDocument     *document);

void gw_sections_view_set_units (GwSectionsView *self,
                                 const GwUnits  *units);
void gw_sections_view_set_dark (GwSectionsView *self,
                                gboolean        is_dark);

void gw_sections_view_set_kind (GwSectionsView     *self,
                                GwSectionFigureKind kind);

/** gw_sections_view_get_sheet: (transfer none) (nullable): what is drawn; NULL: that is made. */
const GwSectionSheet *gw_sections_view_get_sheet (GwSectionsView *self);

G_END_DECLS
