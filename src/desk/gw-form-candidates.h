/* gw-form-candidates.h - what a field can be set to, what fits it best first
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/** gw_form_has_candidates: not if @field, a reference, is to usual sizes and none suits. */
gboolean gw_form_has_candidates (const GwRecord *record,
                                 const GwField  *field);

/**
 * gw_form_candidates:
 * @record: that holds @field, a choice or a reference
 * @can_clear: whether none may be chosen as well
 *
 * Returns: (transfer full): of GwChooserItem
 */
GPtrArray *gw_form_candidates (const GwStudy  *study,
                               const GwRecord *record,
                               const GwField  *field,
                               const GwUnits  *units,
                               gboolean        can_clear) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
