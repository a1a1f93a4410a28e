/* gw-form-list.h - records within a record: rows to open, add, move and remove
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-form-field.h"

G_BEGIN_DECLS

#define GW_TYPE_FORM_LIST (gw_form_list_get_type ())

G_DECLARE_FINAL_TYPE (GwFormList, gw_form_list, GW, FORM_LIST, GwFormField)

G_END_DECLS
