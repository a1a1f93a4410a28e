/* gw-recent.h - the studies opened last, which all programs of the desktop share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct
{
  char *uri;
  char *name;   /* of the file */
  char *folder; /* as a person would say it */
} GwRecent;

/** gw_recent_list: those of our studies that are still there, last one first. (transfer full) */
GPtrArray *gw_recent_list (guint most) G_GNUC_WARN_UNUSED_RESULT;

/** gw_recent_add: @file was opened or saved; what lies in the program itself is passed over. */
void gw_recent_add (GFile *file);

G_END_DECLS
