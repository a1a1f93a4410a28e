/* gw-form-number.h - a number: entry, unit, how sure it is
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-form-field.h"

G_BEGIN_DECLS

#define GW_TYPE_FORM_NUMBER (gw_form_number_get_type ())

/* What is typed is tried while it makes sense; Enter or leaving the field takes it, Escape
 * restores. The arrow keys step. */
G_DECLARE_FINAL_TYPE (GwFormNumber, gw_form_number, GW, FORM_NUMBER, GwFormField)

G_END_DECLS
