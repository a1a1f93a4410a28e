/* gw-edit-private.h - what edits of one record and of all that hangs on it share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-edit.h"

G_BEGIN_DECLS

/** _gw_edit_give_id: one that nothing in @list has, made from its own or from its kind. */
void _gw_edit_give_id (GwRecord        *record,
                       const GPtrArray *list);

/** _gw_edit_rename_copy: "Battery, copy". */
void _gw_edit_rename_copy (GwRecord *copy);

/** _gw_edit_refuse: there is no such place; FALSE. */
gboolean _gw_edit_refuse (const char *path,
                          GError    **error);

/** _gw_edit_checked: @study, or NULL with what is wrong with it. (transfer full) @study */
GwStudy *_gw_edit_checked (GwStudy *study,
                           GError **error);

/** _gw_edit_tidy: an empty list is left out. */
void _gw_edit_tidy (GwRecord   *owner,
                    const char *key);

/** _gw_edit_redirect: what options change at @from they change at @to; NULL: no more. */
void _gw_edit_redirect (GwStudy    *study,
                        const char *from,
                        const char *to);

/** _gw_edit_copy_changes: what options change at @from they change at @to as well. */
void _gw_edit_copy_changes (GwStudy    *study,
                            const char *from,
                            const char *to);

G_END_DECLS
