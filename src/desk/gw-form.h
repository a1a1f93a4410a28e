/* gw-form.h - the right drawer: the fields of what is selected, and what they can be set to
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_FORM (gw_form_get_type ())

/* Made from the field tables. It follows the document: what is selected, which option is
 * shown, what is tried. A field in which somebody types is left alone. */
G_DECLARE_FINAL_TYPE (GwForm, gw_form, GW, FORM, GtkWidget)

GtkWidget *gw_form_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_form_set_document: @document: (nullable) */
void gw_form_set_document (GwForm     *self,
                           GwDocument *document);

/** gw_form_set_units: those of the file until others are set. */
void gw_form_set_units (GwForm        *self,
                        const GwUnits *units);

/** gw_form_focus_field: puts the focus into that field of what is selected, all of it selected; if
 * there is none, into the first one. */
void gw_form_focus_field (GwForm     *self,
                          const char *key);

/** gw_form_get_effects_box: an empty place below the fields. (transfer none) */
GtkBox *gw_form_get_effects_box (GwForm *self);

G_END_DECLS
