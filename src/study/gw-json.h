/* gw-json.h - JSON text in and out, with the traps closed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

#define GW_JSON_MAX_SIZE  (16 * 1024 * 1024) /* bytes of one document */
#define GW_JSON_MAX_DEPTH 32                 /* nested brackets */

/**
 * gw_json_parse:
 * @text: (array length=length): UTF-8, one JSON object and nothing after it
 *
 * Looks the text over before the parser sees it, see gw_json_check(); refuses a key given
 * twice in one object.
 *
 * Returns: (transfer full): the object, or NULL with %GW_STUDY_ERROR_SYNTAX.
 */
JsonObject *gw_json_parse (const char *text,
                           gsize       length,
                           GError    **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_json_copy: shares nothing with @node. JSON-GLib's own copies share what lies below and count
 * it without a lock, so that they may not be made or let go by two threads.
 */
JsonNode   *gw_json_copy (JsonNode *node) G_GNUC_WARN_UNUSED_RESULT;
JsonObject *gw_json_copy_object (JsonObject *object) G_GNUC_WARN_UNUSED_RESULT;

/** gw_json_print: adds @node to @out, two blanks a level, numbers in their shortest form. */
void gw_json_print (GString  *out,
                    JsonNode *node,
                    guint     level);

/** gw_json_print_string: adds @text quoted and escaped. */
void gw_json_print_string (GString    *out,
                           const char *text);

/** gw_json_print_number: adds @value, or null if it is not finite. */
void gw_json_print_number (GString *out,
                           double   value);

/** gw_json_print_break: starts a new line at @level. */
void gw_json_print_break (GString *out,
                          guint    level);

G_END_DECLS
