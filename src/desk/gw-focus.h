/* gw-focus.h - where the keyboard is
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** gw_focus_is_within: on a part of @widget, not on itself. */
static inline gboolean
gw_focus_is_within (GtkWidget *widget)
{
  GtkRoot   *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && gtk_widget_is_ancestor (focus, widget);
}

G_END_DECLS
