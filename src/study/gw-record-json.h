/* gw-record-json.h - records from JSON and back, by their field tables
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-error.h"
#include "study/gw-record.h"

G_BEGIN_DECLS

/**
 * gw_record_read:
 * @path: of @record in its document, for messages
 * @problems: everything wrong is added to it; a wrong field keeps its standard value
 *
 * Reads what the field table knows, checks kinds and bounds, keeps the rest.
 */
void gw_record_read (GwRecord   *record,
                     JsonObject *object,
                     const char *path,
                     GPtrArray  *problems);

/** gw_record_read_field: reads one field, as gw_record_read() does. */
void gw_record_read_field (GwRecord      *record,
                           const GwField *field,
                           JsonNode      *node,
                           const char    *path,
                           GPtrArray     *problems);

/** gw_record_write: adds a JSON object: fields present in table order, then unknown keys. */
void gw_record_write (const GwRecord *record,
                      GString        *out,
                      guint           level);

/** gw_record_field_node: what the file would hold there, as JSON. (transfer full) */
JsonNode *gw_record_field_node (const GwRecord *record,
                                const GwField  *field) G_GNUC_WARN_UNUSED_RESULT;

/** gw_field_bounds: "from 1 to 5000 mm", for messages and lists. (transfer full) */
char *gw_field_bounds (const GwField *field);

G_END_DECLS
