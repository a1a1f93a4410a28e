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

G_END_DECLS
