/* gw-json-check.h - whether a text is well-formed JSON, and if not, where and why in plain words
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * gw_json_check:
 * @text: (array length=length): one JSON object, a mark of byte order before it or not
 *
 * Goes by the standard, which is stricter than JSON-GLib 1.6: that takes comments, 'texts' and
 * "{}[]", and overflows its stack on deep nesting.
 *
 * Returns: FALSE with %GW_STUDY_ERROR_SYNTAX; the message has line and column
 */
gboolean gw_json_check (const char *text,
                        gsize       length,
                        GError    **error);

G_END_DECLS
