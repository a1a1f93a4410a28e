/* gw-history.h - the study as it was, edit by edit
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

#define GW_TYPE_HISTORY (gw_history_get_type ())

/* Holds the study being worked on and every study before and after it. A study is
 * never changed, so a step is a whole study: nothing to reverse, nothing to forget.
 * Signal "changed" follows every move. */
G_DECLARE_FINAL_TYPE (GwHistory, gw_history, GW, HISTORY, GObject)

GwHistory *gw_history_new (GwStudy *study) G_GNUC_WARN_UNUSED_RESULT;

GwStudy *gw_history_get_study (GwHistory *self);

/**
 * gw_history_push:
 * @name: what was done, as a person would say it: "Move the battery"
 * @study: the study after it
 * @merge: (nullable): while this stays the same from push to push (one drag, one
 *   spin of a number) the steps become one
 *
 * Returns: whether it is a step: FALSE if @study is the same as the present one
 */
gboolean gw_history_push (GwHistory  *self,
                          const char *name,
                          GwStudy    *study,
                          const char *merge);

/** gw_history_undo_name: name of the step that undo takes back, or NULL if there is none. */
const char *gw_history_undo_name (GwHistory *self);
const char *gw_history_redo_name (GwHistory *self);

void gw_history_undo (GwHistory *self);
void gw_history_redo (GwHistory *self);

/** gw_history_mark_saved: the present study is what the file holds. */
void     gw_history_mark_saved  (GwHistory *self);
gboolean gw_history_is_modified (GwHistory *self);

G_END_DECLS
