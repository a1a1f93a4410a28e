/* gw-edit-whole.h - edits of a record together with all that hangs on it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/* As gw-edit.h, for records of the study's own lists ("equipment/battery", "builds/2"). What
 * options change of a record goes with it; so do the builds and spars of a surface, which
 * could neither stay without it nor go before it. */

/** gw_edit_remove_whole: refused, with the place, while something else refers to the record. */
GwStudy *gw_edit_remove_whole (const GwStudy *study,
                               const char    *path,
                               GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_edit_duplicate_whole:
 * @copy: (out): path of the copy, which stands behind the record under a new id and name
 *
 * The copy is in every option what the record is there.
 */
GwStudy *gw_edit_duplicate_whole (const GwStudy *study,
                                  const char    *path,
                                  char         **copy,
                                  GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_edit_move_whole:
 * @index: in its list
 * @moved: (out): its path there
 */
GwStudy *gw_edit_move_whole (const GwStudy *study,
                             const char    *path,
                             guint          index,
                             char         **moved,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
