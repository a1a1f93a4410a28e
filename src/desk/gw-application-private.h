/* gw-application-private.h - what the files of the application share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-application.h"
#include "desk/gw-window.h"

G_BEGIN_DECLS

struct _GwApplication
{
  GtkApplication parent_instance;

  GSettings    *settings;
  GwAppearance *appearance;
  GtkWindow    *preferences, *help; /* weak */
  GwUnits       units;
  GThread      *reader; /* of the catalogue */
  GListStore   *leftovers;
  gboolean      are_leftovers_told;
  gboolean      is_quitting; /* as soon as the windows that were asked are closed */
};

/** _gw_application_need_empty: @window if it is empty, else a new one. @window: (nullable) */
GwWindow *_gw_application_need_empty (GwApplication *self,
                                      GtkWindow     *window);

G_END_DECLS
