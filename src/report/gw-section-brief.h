/* gw-section-brief.h - what a section would do at a place, in a few words
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/**
 * gw_section_brief:
 * @re: Reynolds number there
 *
 * "lift to 1.07, drag from 0.019 at Re 110000": greatest lift as wings are computed with it,
 * smooth, and least drag. Computes no polar, but may read one from a file: for a thread.
 *
 * Returns: (transfer full) (nullable): NULL if it is not known yet
 */
char *gw_section_brief (const GwStudySection *section,
                        double                re,
                        const GwUnits        *units) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_briefs: of the study's own and the catalogue's sections, by id, those that are known.
 * (transfer full) */
GHashTable *gw_section_briefs (const GwStudy *study,
                               double         re,
                               const GwUnits *units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
