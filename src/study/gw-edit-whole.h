/* gw-edit-whole.h - edits of a record together with all that hangs on it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-edit.h"

G_BEGIN_DECLS

/* As gw-edit.h, for records of the study's own lists ("equipment/battery", "builds/2"). The
 * builds and spars of a surface, which could neither stay without it nor go before it, go with
 * it, in the options as well. */

/** gw_edit_remove_whole: refused, with the place, while something else refers to the record.
 * @dropped: (nullable): as gw_edit_remove() has it */
GwStudy *gw_edit_remove_whole (const GwStudy *study,
                               const char    *path,
                               GPtrArray     *dropped,
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

G_END_DECLS
