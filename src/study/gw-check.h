/* gw-check.h - what the field tables cannot say: references, order, sense
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/**
 * gw_study_check_names:
 * @problems: errors and hints are added to it
 *
 * Every id that is referred to exists (in the study, or in the catalogue for
 * materials and sections), and none twice in a list; there is an option.
 */
void gw_study_check_names (const GwStudy *study,
                           GPtrArray     *problems);

/**
 * gw_study_check:
 *
 * That, and: surfaces, bodies, controls and bays have a shape; every option resolves
 * and every panel is built of something that is known well enough. To evaluate a study
 * finds the same.
 */
void gw_study_check (const GwStudy *study,
                     GPtrArray     *problems);

G_END_DECLS
