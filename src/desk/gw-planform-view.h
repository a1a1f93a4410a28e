/* gw-planform-view.h - the planform of one option, by itself
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "study/gw-evaluation.h"

G_BEGIN_DECLS

#define GW_TYPE_PLANFORM_VIEW (gw_planform_view_get_type ())

/* The figure of the sheet, laid out for its own size. Properties: "is-small", drawn finer, for
 * a card; "dark". */
G_DECLARE_FINAL_TYPE (GwPlanformView, gw_planform_view, GW, PLANFORM_VIEW, GtkWidget)

GtkWidget *gw_planform_view_new (gboolean is_small) G_GNUC_WARN_UNUSED_RESULT;

/** gw_planform_view_show: the baseline of @evaluation. */
void gw_planform_view_show (GwPlanformView *self,
                            GwEvaluation   *evaluation);

G_END_DECLS
