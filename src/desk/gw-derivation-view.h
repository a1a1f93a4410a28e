/* gw-derivation-view.h - a page that says where a result comes from
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_DERIVATION_VIEW (gw_derivation_view_get_type ())

/* Of the option that the document shows, or of another one until that changes. Follows the
 * document once nothing else is to be done, and not at all while it is not on the screen. A row
 * of a record selects it in the document. Signal "close": the person is through with it (Escape
 * or the button). Actions: "derivation.copy" puts it all on the clipboard as text, also Ctrl+C
 * within. */
G_DECLARE_FINAL_TYPE (GwDerivationView, gw_derivation_view, GW, DERIVATION_VIEW, GtkWidget)

GtkWidget *gw_derivation_view_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_derivation_view_set_document: @document: (nullable) */
void gw_derivation_view_set_document (GwDerivationView *self,
                                      GwDocument       *document);

/** gw_derivation_view_set_units: they are copied; those of the file until it is called. */
void gw_derivation_view_set_units (GwDerivationView *self,
                                   const GwUnits    *units);

GwResultId gw_derivation_view_get_result (GwDerivationView *self);
void       gw_derivation_view_set_result (GwDerivationView *self,
                                          GwResultId        id);

void       gw_derivation_view_set_option (GwDerivationView *self,
                                          guint             option);

/** gw_derivation_view_get_text: what would be copied now. (transfer full) (nullable) */
char *gw_derivation_view_get_text (GwDerivationView *self);

G_END_DECLS
