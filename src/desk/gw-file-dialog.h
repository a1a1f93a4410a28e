/* gw-file-dialog.h - asking for a file, on old and new GTK alike
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct
{
  const char *title;
  gboolean    is_save;
  GListModel *filters; /* of GtkFileFilter */
  GFile      *folder;  /* nullable: where to begin */
  const char *name;    /* to save as */
} GwFileDialog;

typedef void (*GwFileChosen) (GtkWindow *parent,
                              GFile     *file);

/** gw_file_filters_new: from pairs of name and ending ("PDF", "pdf"), ended by a name of NULL; an
 * ending of NULL takes every file. (transfer full) */
GListModel *gw_file_filters_new (const char *name,
                                 ...) G_GNUC_NULL_TERMINATED G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_file_dialog_show:
 *
 * Asks, and calls @chosen with the answer; not at all if there is none or @parent is
 * closed before.
 */
void gw_file_dialog_show (GtkWindow          *parent,
                          const GwFileDialog *dialog,
                          GwFileChosen        chosen);

G_END_DECLS
