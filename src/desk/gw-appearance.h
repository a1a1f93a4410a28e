/* gw-appearance.h - light or dark, and the style sheets that go with it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define GW_TYPE_APPEARANCE (gw_appearance_get_type ())

/* Follows the setting "theme" and, where that says "system", the choice made for the whole
 * desktop. Property "dark": what it comes to; setting it makes a choice. */
G_DECLARE_FINAL_TYPE (GwAppearance, gw_appearance, GW, APPEARANCE, GObject)

/**
 * gw_appearance_new:
 * @bus: (nullable): where the desktop is asked for its choice; without it GTK's setting stands
 */
GwAppearance *gw_appearance_new (GSettings       *settings,
                                 GDBusConnection *bus) G_GNUC_WARN_UNUSED_RESULT;

gboolean gw_appearance_get_dark (GwAppearance *self);
void     gw_appearance_set_dark (GwAppearance *self,
                                 gboolean      is_dark);

G_END_DECLS
