/* gw-option-row.h - one option in the outline: line, marker, name, what it comes to
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-outline-row.h"
#include "study/gw-evaluation.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_OPTION_ROW (gw_option_row_get_type ())

G_DECLARE_FINAL_TYPE (GwOptionRow, gw_option_row, GW, OPTION_ROW, GwOutlineRow)

GtkWidget *gw_option_row_new (void) G_GNUC_WARN_UNUSED_RESULT;

void gw_option_row_update (GwOptionRow        *self,
                           const GwEvaluation *evaluation,
                           guint               option,
                           const GwUnits      *units,
                           gboolean            is_dark);

G_END_DECLS
