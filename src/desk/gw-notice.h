/* gw-notice.h - a bar that says something about the study and asks what to do
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define GW_TYPE_NOTICE (gw_notice_get_type ())

G_DECLARE_FINAL_TYPE (GwNotice, gw_notice, GW, NOTICE, GtkWidget)

typedef struct
{
  const char *label;  /* with a mnemonic */
  const char *action; /* "win.save" */
  const char *target; /* nullable: a string that goes with it */
} GwNoticeAnswer;

/**
 * gw_notice_show:
 * @reason: (nullable)
 * @n: of @answers; Escape is the last one
 */
void gw_notice_show (GwNotice             *self,
                     const char           *title,
                     const char           *reason,
                     guint                 n,
                     const GwNoticeAnswer *answers);

/** gw_notice_hide: the focus goes back to where gw_notice_ask() took it from. */
void gw_notice_hide (GwNotice *self);

/** gw_notice_ask: the first answer gets the focus. */
void gw_notice_ask (GwNotice *self);

G_END_DECLS
