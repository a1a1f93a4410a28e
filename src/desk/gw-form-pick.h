/* gw-form-pick.h - a choice of words or a reference: a chooser with preview
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-form-field.h"

G_BEGIN_DECLS

#define GW_TYPE_FORM_PICK (gw_form_pick_get_type ())

G_DECLARE_FINAL_TYPE (GwFormPick, gw_form_pick, GW, FORM_PICK, GwFormField)

G_END_DECLS
