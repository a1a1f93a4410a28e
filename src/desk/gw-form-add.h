/* gw-form-add.h - one more record in a list within a record
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/**
 * gw_form_add:
 * @owner: the record that holds the list
 * @list: path of the list
 * @path: (out): of the new record
 *
 * After the pattern of what is there: a station goes on from the last two, a control or a
 * spar is like the last one; where there is none, like what is usual on the first surface.
 *
 * Returns: (transfer full): the study with it, or NULL with the reason
 */
GwStudy *gw_form_add (const GwStudy  *study,
                      const GwRecord *owner,
                      const char     *list,
                      char          **path,
                      GError        **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
