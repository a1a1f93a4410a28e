/* gw-window.h - the main window
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-application.h"
#include "desk/gw-document.h"

G_BEGIN_DECLS

#define GW_TYPE_WINDOW (gw_window_get_type ())

/* Shows one document. Properties, each also an action "win.…": "shown", the option on the
 * sheet; "dark"; "drawer", whether the drawer is open. */
G_DECLARE_FINAL_TYPE (GwWindow, gw_window, GW, WINDOW, GtkApplicationWindow)

GwWindow *gw_window_new (GwApplication *application) G_GNUC_WARN_UNUSED_RESULT;

/** gw_window_open: the present document stays until the new one can be shown. */
void gw_window_open (GwWindow *self,
                     GFile    *file);

/** gw_window_show_document: the same with a document that is at hand. @document: (transfer full) */
void gw_window_show_document (GwWindow   *self,
                              GwDocument *document);

/** gw_window_is_empty: nothing is open and nothing about to be. */
gboolean gw_window_is_empty (GwWindow *self);

/** gw_window_get_document: (nullable): the one on the screen. */
GwDocument *gw_window_get_document (GwWindow *self);

/** gw_window_save_as: says in the window how it went. */
gboolean gw_window_save_as   (GwWindow *self,
                              GFile    *file);
gboolean gw_window_save_copy (GwWindow *self,
                              GFile    *file);

/** gw_window_export: writes the sheet to @file and says so in the window. */
void gw_window_export (GwWindow *self,
                       GFile    *file);

G_END_DECLS
