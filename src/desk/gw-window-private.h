/* gw-window-private.h - what the files of the main window share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-desk.h"
#include "desk/gw-new-study.h"
#include "desk/gw-notice.h"
#include "desk/gw-problem-page.h"
#include "desk/gw-start-page.h"
#include "desk/gw-window.h"

G_BEGIN_DECLS

/* What the notice asks or tells; what it says of the file follows from the document. */
typedef enum
{
  GW_ASK_NOTHING,
  GW_ASK_CLOSE,   /* with unsaved edits */
  GW_ASK_REPLACE, /* the file, which cannot be read now */
  GW_TELL,        /* that something could not be done */
  GW_TELL_SAVE,   /* that it could not be saved */
} GwAsk;

#define GW_SHEET_BUTTONS 7

struct _GwWindow
{
  GtkApplicationWindow parent_instance;

  GtkLabel      *title, *subtitle;
  GtkWidget     *sheet_buttons[GW_SHEET_BUTTONS]; /* of the header; seen beside a sheet alone */
  GtkWidget     *bar, *bar_close;
  GtkLabel      *bar_title, *bar_reason;
  GtkStack      *pages;
  GwDesk        *desk; /* (nullable): a page, once a study is to be shown */
  GwProblemPage *problem;   /* (nullable): like the next one made when it is wanted */
  GwNewStudy    *new_study; /* (nullable) */
  GtkWidget     *waiting, *spinner, *working;
  GwStartPage   *start;
  GwNotice      *notice;
  GtkMenuButton *menu_button;
  GMenu         *menu, *undo_menu, *recent_menu;

  GtkInscription *foot;

  GwDocument *document;  /* on the screen; it has an evaluation */
  GwDocument *candidate; /* to be opened; takes its place once it has one */
  gboolean    is_dark;
  gboolean    is_asking; /* for the shape of a new study */
  guint       wait_source, message_source;
  GwStudy    *step_study; /* (nullable): that the step which is told led to */

  GwAsk    ask;
  GwStudy *asked; /* before closing, of this; edited on, it is no longer asked */
  char    *told, *told_reason;
  char    *undo_label, *redo_label;
  gboolean is_keeping_told; /* that unsaved edits are not kept for recovery */
};

/** gw_window_install_actions: all that the user can do, as "win.…". */
void _gw_window_install_actions (GtkWidgetClass *widget_class);
void _gw_window_init_actions (GwWindow *self);
void _gw_window_remove_actions (GwWindow *self);

/** _gw_window_say_step: until the next edit, at most. */
void _gw_window_say_step (GwWindow   *self,
                          const char *text);

GwApplication *_gw_window_get_application (GwWindow *self);
GwEvaluation  *_gw_window_get_evaluation (GwWindow *self);

/** _gw_window_dismiss: gives up opening the candidate. */
void _gw_window_dismiss (GwWindow *self);

/** _gw_window_ask_shape: of a new study. */
void _gw_window_ask_shape (GwWindow *self);

/** _gw_window_say: in the foot, for a while. */
void _gw_window_say (GwWindow   *self,
                     const char *text);

/** _gw_window_update: all that is seen, after anything has changed. */
void _gw_window_update (GwWindow *self);

/** _gw_window_get_folder: (nullable) (transfer full): where the study lies, to begin there. */
GFile *_gw_window_get_folder (GwWindow *self);

/* Files: gw-window-files.c. */

void _gw_window_install_file_actions (GtkWidgetClass *widget_class);

/** _gw_window_update_files: what can be done to them now. */
void _gw_window_update_files (GwWindow *self);

/** _gw_window_is_edited: and not saved. */
gboolean _gw_window_is_edited (GwWindow *self);

/** _gw_window_goes_elsewhere: @file is shown in another window, since it is open there or this
 * one has unsaved edits. */
gboolean _gw_window_goes_elsewhere (GwWindow *self,
                                    GFile    *file);

/** _gw_window_was_opened: a document has come on the screen. */
void _gw_window_was_opened (GwWindow *self);

/** _gw_window_keeps_open: whether a person must be asked first; then it is. */
gboolean _gw_window_keeps_open (GwWindow *self);

/** _gw_window_drop: @files, of GFile, were let fall on the window or chosen for it. */
void _gw_window_drop (GwWindow *self,
                      GSList   *files);

/* Undo and the studies opened last: gw-window-menus.c. */

void _gw_window_install_menu_actions (GtkWidgetClass *widget_class);
void _gw_window_init_menus (GwWindow *self);
void _gw_window_dispose_menus (GwWindow *self);
void _gw_window_update_undo (GwWindow *self);

/* Sections from files: gw-window-sections.c. */

void _gw_window_install_section_actions (GtkWidgetClass *widget_class);

/** _gw_window_add_section: shows the outline of @file, to be added; or tells why it cannot be. */
void _gw_window_add_section (GwWindow *self,
                             GFile    *file);

/* The notice: gw-window-notice.c. */

void _gw_window_install_notice_actions (GtkWidgetClass *widget_class);

void _gw_window_update_notice (GwWindow *self);
void _gw_window_dispose_notice (GwWindow *self);

/** _gw_window_ask: and takes the focus there. */
void _gw_window_ask (GwWindow *self,
                     GwAsk     ask);

/** _gw_window_tell: until it is dismissed. */
void _gw_window_tell (GwWindow   *self,
                      GwAsk       ask,
                      const char *title,
                      const char *reason);

/** _gw_window_stop_asking: the question, if there is one, is answered with no. */
void _gw_window_stop_asking (GwWindow *self);

G_END_DECLS
