/* gw-sureness-popover.h - spread or range, origin and source of a number
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-form-site.h"

G_BEGIN_DECLS

#define GW_TYPE_SURENESS_POPOVER (gw_sureness_popover_get_type ())

G_DECLARE_FINAL_TYPE (GwSurenessPopover, gw_sureness_popover, GW, SURENESS_POPOVER, GtkPopover)

GtkWidget *gw_sureness_popover_new (GwFormSite    *site,
                                    const char    *path,
                                    const GwField *field) G_GNUC_WARN_UNUSED_RESULT;

/** gw_sureness_popover_show: fills it in with what @number is now, before it opens. */
void gw_sureness_popover_show (GwSurenessPopover *self,
                               const GwNumber    *number);

G_END_DECLS
