/* gw-drawer.h - beside the sheet: the options, what is said of them, hints
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "study/gw-evaluation.h"

G_BEGIN_DECLS

#define GW_TYPE_DRAWER (gw_drawer_get_type ())

/* Choosing an option activates "win.shown" with its index. */
G_DECLARE_FINAL_TYPE (GwDrawer, gw_drawer, GW, DRAWER, GtkWidget)

/**
 * gw_drawer_update:
 * @problems: of the last reading of the file; its hints are shown
 */
void gw_drawer_update (GwDrawer           *self,
                       const GwEvaluation *evaluation,
                       guint               shown,
                       gboolean            is_dark,
                       const GPtrArray    *problems);

G_END_DECLS
