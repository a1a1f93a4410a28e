/* gw-fields.h - the list of all fields, for people and programs
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** gw_fields_text: every record of a study with its fields and their help. (transfer full) */
char *gw_fields_text (void);

/** gw_fields_json: the same as JSON. (transfer full) */
char *gw_fields_json (void);

G_END_DECLS
