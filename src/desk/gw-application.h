/* gw-application.h - the program with windows
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-appearance.h"
#include "desk/gw-leftover.h"
#include "report/gw-export.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

#define GW_TYPE_APPLICATION (gw_application_get_type ())

G_DECLARE_FINAL_TYPE (GwApplication, gw_application, GW, APPLICATION, GtkApplication)

GwApplication *gw_application_new (GApplicationFlags flags) G_GNUC_WARN_UNUSED_RESULT;

GSettings     *gw_application_get_settings (GwApplication *self);
GwAppearance  *gw_application_get_appearance (GwApplication *self);
const GwPaper *gw_application_get_paper (GwApplication *self);

/** gw_application_icon_new: of the program. */
GdkTexture *gw_application_icon_new (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_application_get_units: those the user has chosen to see. They stay where they are, and
 * "notify::units" is emitted when they have changed. */
const GwUnits *gw_application_get_units (GwApplication *self);

/** gw_application_open: in @window if it is empty, else in a window of its own.
 * @window: (nullable) */
void gw_application_open (GwApplication *self,
                          GFile         *file,
                          GtkWindow     *window);

/**
 * gw_application_apply_language:
 *
 * Makes the language chosen in the preferences that of the program. It has to come before
 * setlocale() and textdomain(): GLib makes up its mind at the first text of its own, and
 * reading settings is enough for that.
 */
void gw_application_apply_language (void);

/** gw_application_get_leftovers: unsaved work of programs that are gone; of GwLeftover. */
GListModel *gw_application_get_leftovers (GwApplication *self);

/** gw_application_tell_leftovers: a person has seen that there are some. */
void     gw_application_tell_leftovers (GwApplication *self);
gboolean gw_application_are_leftovers_told (GwApplication *self);

/** gw_application_bring_back: in @window if it is empty, else in a window of its own. */
gboolean gw_application_bring_back (GwApplication *self,
                                    GwLeftover    *leftover,
                                    GtkWindow     *window,
                                    GError       **error);
void     gw_application_let_go (GwApplication *self,
                                GwLeftover    *leftover);

/** gw_application_stop_quitting: no window is asked any longer whether it may close. */
void gw_application_stop_quitting (GwApplication *self);

/** gw_application_run: the whole program; 1 if it cannot open a window. */
int gw_application_run (int   argc,
                        char *argv[]);

G_END_DECLS
