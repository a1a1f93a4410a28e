/* gw-derivation-fold.h - one heading of a derivation with its paragraph and rows
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "report/gw-derivation.h"

G_BEGIN_DECLS

#define GW_TYPE_DERIVATION_FOLD (gw_derivation_fold_get_type ())

/* Folded, it makes no rows; a long one begins folded. Signal "select" (path): a row of a
 * record was pressed. */
G_DECLARE_FINAL_TYPE (GwDerivationFold, gw_derivation_fold, GW, DERIVATION_FOLD, GtkWidget)

GtkWidget *gw_derivation_fold_new (void) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_derivation_fold_update:
 * @section: borrowed until the next update
 * @is_other: of another result than before: it folds or unfolds as suits its length
 */
void gw_derivation_fold_update (GwDerivationFold          *self,
                                const GwDerivationSection *section,
                                gboolean                   is_other);

G_END_DECLS
