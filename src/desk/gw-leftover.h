/* gw-leftover.h - unsaved work of a program that is gone
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

#define GW_TYPE_LEFTOVER (gw_leftover_get_type ())

G_DECLARE_FINAL_TYPE (GwLeftover, gw_leftover, GW, LEFTOVER, GObject)

/** gw_leftovers_scan: adds to @store those that it has not yet; clears away what is of no use. */
void gw_leftovers_scan (GListStore *store);

/** gw_leftover_text: "Unsaved work from 25 November, 14:32: Reed-bed". (transfer full) */
char *gw_leftover_text (GwLeftover *self);

/** gw_leftover_get_path: of its file; it is known by that. */
const char *gw_leftover_get_path (GwLeftover *self);

/** gw_leftover_find: (nullable) (transfer full): in a list of them, by its path. */
GwLeftover *gw_leftover_find (GListModel *leftovers,
                              const char *path);

/** gw_leftover_get_problem: (nullable): why it cannot be read. */
const char *gw_leftover_get_problem (GwLeftover *self);

/** gw_leftover_get_study: (nullable): NULL if it cannot be read. */
GwStudy *gw_leftover_get_study (GwLeftover *self);

/** gw_leftover_get_file: (nullable): where the study was read from. */
GFile *gw_leftover_get_file (GwLeftover *self);

/**
 * gw_leftover_claim:
 *
 * Makes it this program's own, before another does.
 *
 * Returns: (transfer full): its path from now on, for gw_recovery_adopt(); or NULL.
 */
char *gw_leftover_claim (GwLeftover *self,
                         GError    **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_leftover_let_go: deletes it. */
void gw_leftover_let_go (GwLeftover *self);

G_END_DECLS
