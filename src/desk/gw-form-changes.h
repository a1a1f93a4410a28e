/* gw-form-changes.h - what an option has otherwise than the common airframe
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-form-field.h"

G_BEGIN_DECLS

#define GW_TYPE_FORM_CHANGES (gw_form_changes_get_type ())

/* A row a change: what, its value and the common one; it can be taken back, and activating
 * it goes to the thing that is changed. */
G_DECLARE_FINAL_TYPE (GwFormChanges, gw_form_changes, GW, FORM_CHANGES, GwFormField)

G_END_DECLS
