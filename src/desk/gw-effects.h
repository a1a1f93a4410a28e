/* gw-effects.h - what the shown option, or a change as it is tried, does: in words and numbers
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_EFFECTS (gw_effects_get_type ())

/* Follows the document. A press on a number activates "desk.why" with its result. */
G_DECLARE_FINAL_TYPE (GwEffects, gw_effects, GW, EFFECTS, GtkWidget)

GtkWidget *gw_effects_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_effects_set_document: @document: (nullable) */
void gw_effects_set_document (GwEffects  *self,
                              GwDocument *document);

void gw_effects_set_units (GwEffects     *self,
                           const GwUnits *units);

G_END_DECLS
