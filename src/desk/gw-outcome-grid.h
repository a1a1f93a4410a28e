/* gw-outcome-grid.h - what each option comes to, in a few numbers
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "study/gw-evaluation.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/** gw_outcome_grid_show: a row an option; @goal: of the mass [g]. What was in @grid goes. */
void gw_outcome_grid_show (GtkGrid            *grid,
                           const GwEvaluation *evaluation,
                           const GwUnits      *units,
                           double              goal);

G_END_DECLS
