/* gw-edit-number.h - a number that is given another value by hand
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <json-glib/json-glib.h>

#include "study/gw-number.h"
#include "study/gw-quantity.h"

G_BEGIN_DECLS

/**
 * gw_edit_retype:
 *
 * What a person types or drags in place of a number. Spread or range go with it. What was
 * weighed, looked up or computed is that no longer, and its source is another's: a length, an
 * angle, a count is decided now, all else guessed, and then no surer than to a tenth. The same
 * value changes nothing.
 */
void gw_edit_retype (GwNumber  *number,
                     GwQuantity quantity,
                     double     value);

/** gw_edit_number_node: as the file has it: plain, with spread, or as a range. (transfer full) */
JsonNode *gw_edit_number_node (const GwNumber *number) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_number: what a field takes for @number retyped. (transfer full) */
JsonNode *gw_edit_number (const GwNumber *number,
                          GwQuantity      quantity,
                          double          value) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
