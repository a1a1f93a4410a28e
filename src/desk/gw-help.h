/* gw-help.h - the window with the help pages
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define GW_TYPE_HELP (gw_help_get_type ())

G_DECLARE_FINAL_TYPE (GwHelp, gw_help, GW, HELP, GtkWindow)

/** gw_help_new: a window of @application, so that it does not outlast it. */
GwHelp *gw_help_new (GtkApplication *application) G_GNUC_WARN_UNUSED_RESULT;

/** gw_help_show_page: FALSE if there is no page of that name. */
gboolean gw_help_show_page (GwHelp     *self,
                            const char *id);

G_END_DECLS
