/* gw-chooser-row.h - one of the things to choose from: name, detail, what it would change
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-chooser.h"

G_BEGIN_DECLS

#define GW_TYPE_CHOOSER_ROW (gw_chooser_row_get_type ())

G_DECLARE_FINAL_TYPE (GwChooserRow, gw_chooser_row, GW, CHOOSER_ROW, GtkListBoxRow)

/** gw_chooser_row_new: (transfer full) @item; @place: among all that can be chosen. */
GtkWidget *gw_chooser_row_new (GwChooserItem *item,
                               guint          place) G_GNUC_WARN_UNUSED_RESULT;

const char *gw_chooser_row_get_id (GwChooserRow *self);
const char *gw_chooser_row_get_group (GwChooserRow *self);

/** gw_chooser_row_matches: whether all words of @typed stand in its name, detail or group. */
gboolean gw_chooser_row_matches (GwChooserRow *self,
                                 const char   *typed);

/** gw_chooser_row_compare: those with all words of @typed in their names first, else by place. */
int gw_chooser_row_compare (GwChooserRow *self,
                            GwChooserRow *other,
                            const char   *typed);

/** gw_chooser_row_set_brief: a second quiet line. */
void gw_chooser_row_set_brief (GwChooserRow *self,
                               const char   *brief);

void gw_chooser_row_set_effect (GwChooserRow *self,
                                const char   *effect);

G_END_DECLS
