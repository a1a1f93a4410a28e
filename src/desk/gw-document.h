/* gw-document.h - an open file: its study, edit by edit, and what came out of it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"
#include "study/gw-history.h"

G_BEGIN_DECLS

#define GW_TYPE_DOCUMENT (gw_document_get_type ())

/* Reads its file and computes its study in threads; the newest wins. Watches the file
 * and reads it anew when it changes. While the file is broken or the study cannot be
 * computed, the last good evaluation stays and the error says why.
 *
 * Signal "changed": evaluation, error or problems have changed. Property "busy". */
G_DECLARE_FINAL_TYPE (GwDocument, gw_document, GW, DOCUMENT, GObject)

/** gw_document_new: begins to read @file at once. */
GwDocument *gw_document_new (GFile *file) G_GNUC_WARN_UNUSED_RESULT;

void gw_document_reload (GwDocument *self);

GFile *gw_document_get_file (GwDocument *self);

/** gw_document_get_history: (nullable): NULL until the file has been read once. */
GwHistory *gw_document_get_history (GwDocument *self);

/** gw_document_get_evaluation: (nullable): the newest there is. */
GwEvaluation *gw_document_get_evaluation (GwDocument *self);

/** gw_document_get_error: (nullable): why the file or the study as it is now cannot be used. */
const GError *gw_document_get_error (GwDocument *self);

/** gw_document_get_problems: what the last reading found, errors and hints; of GwProblem. */
const GPtrArray *gw_document_get_problems (GwDocument *self);

gboolean gw_document_is_busy (GwDocument *self);

G_END_DECLS
