/* gw-sureness.h - how sure a number is: a small button and what opens from it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-form-site.h"

G_BEGIN_DECLS

#define GW_TYPE_SURENESS (gw_sureness_get_type ())

/* Spread or range, origin and source. They are tried as they are set; closing takes them,
 * Escape leaves them. */
G_DECLARE_FINAL_TYPE (GwSureness, gw_sureness, GW, SURENESS, GtkWidget)

GtkWidget *gw_sureness_new (GwFormSite    *site,
                            const char    *path,
                            const GwField *field) G_GNUC_WARN_UNUSED_RESULT;

void gw_sureness_update (GwSureness     *self,
                         const GwNumber *number);

G_END_DECLS
