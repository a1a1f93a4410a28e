/* gw-preferences.h - what the user chooses once for all studies
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define GW_TYPE_PREFERENCES (gw_preferences_get_type ())

/* Every choice is in the settings at once, and from there in all windows. */
G_DECLARE_FINAL_TYPE (GwPreferences, gw_preferences, GW, PREFERENCES, GtkWindow)

/** gw_preferences_new: beside @parent (nullable), and closed with it. */
GtkWindow *gw_preferences_new (GtkWindow *parent,
                               GSettings *settings) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
