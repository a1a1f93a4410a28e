/* gw-window-private.h - what the files of the main window share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-drawer.h"
#include "desk/gw-new-study.h"
#include "desk/gw-problem-page.h"
#include "desk/gw-sheet-view.h"
#include "desk/gw-window.h"

G_BEGIN_DECLS

struct _GwWindow
{
  GtkApplicationWindow parent_instance;

  GtkLabel      *title, *subtitle;
  GtkWidget     *options_button, *print_button, *export_button;
  GtkWidget     *bar, *bar_close;
  GtkLabel      *bar_title, *bar_reason;
  GtkStack      *pages;
  GwDrawer      *drawer;
  GwSheetView   *sheet;
  GwProblemPage *problem;
  GwNewStudy    *new_study;
  GtkWidget     *waiting, *spinner;
  GtkLabel      *foot;

  GwDocument *document;  /* on the screen; it has an evaluation */
  GwDocument *candidate; /* to be opened; takes its place once it has one */
  gboolean    is_dark, is_drawer_open;
  gboolean    is_asking; /* for the shape of a new study */
  guint       wait_source, message_source;
};

/** gw_window_install_actions: all that the user can do, as "win.…". */
void _gw_window_install_actions (GtkWidgetClass *widget_class);

GwApplication *_gw_window_get_application (GwWindow *self);
GwEvaluation  *_gw_window_get_evaluation  (GwWindow *self);

/** _gw_window_dismiss: gives up opening the candidate. */
void _gw_window_dismiss (GwWindow *self);

/** _gw_window_ask: for the shape of a new study. */
void _gw_window_ask (GwWindow *self);

/** _gw_window_say: in the foot, for a while. */
void _gw_window_say (GwWindow   *self,
                     const char *text);

G_END_DECLS
