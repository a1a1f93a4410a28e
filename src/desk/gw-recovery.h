/* gw-recovery.h - unsaved work is kept in the user's state folder
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/* Folder gramwright/recovery of the state folder: one file a document with unsaved edits,
 * "SESSION.NUMBER.unsaved", and one locked file a running program, "SESSION.lock". The system
 * lets the lock go with the process, however it ends; so what has no locked file beside it is
 * left over (see gw-leftover.h), and two programs never meddle with each other's work. */

/* The place of one document. */
typedef struct _GwRecovery GwRecovery;

/** GwRecoveryFailed: @error: why unsaved work is not kept; NULL: it is again. */
typedef void (*GwRecoveryFailed) (const GError *error,
                                  gpointer      data);

GwRecovery *gw_recovery_new (GwRecoveryFailed failed,
                             gpointer         data) G_GNUC_WARN_UNUSED_RESULT;

/** gw_recovery_free: what was kept is no longer needed. */
void gw_recovery_free (GwRecovery *self);

/**
 * gw_recovery_keep:
 * @file: (nullable): that the study was read from
 *
 * Within a second @study is written, in a thread; of several the last.
 */
void gw_recovery_keep (GwRecovery *self,
                       GwStudy    *study,
                       GFile      *file);

/** gw_recovery_forget: all is saved. */
void gw_recovery_forget (GwRecovery *self);

/** gw_recovery_adopt: @path, of gw_recovery_new_path(), holds @study already. */
void gw_recovery_adopt (GwRecovery *self,
                        const char *path,
                        GwStudy    *study);

/** gw_recovery_end: the program ends as it should. */
void gw_recovery_end (void);

/* For the search for what is left over. */

/** gw_recovery_folder: (transfer full) */
char *gw_recovery_folder (void);

/** gw_recovery_new_path: (nullable) (transfer full): of a file of this program. */
char *gw_recovery_new_path (GError **error);

/** gw_recovery_session_of: (nullable) (transfer full): of a file in the folder; NULL: not ours. */
char *gw_recovery_session_of (const char *name);

/** gw_recovery_is_running: the program of that session. */
gboolean gw_recovery_is_running (const char *session);

#define GW_RECOVERY_ENDING  ".unsaved"
#define GW_RECOVERY_FORMAT  "gramwright-unsaved" /* key that every such file has, and its version */
#define GW_RECOVERY_VERSION 1

G_END_DECLS
