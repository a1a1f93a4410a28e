/* gw-resolve.h - one option of a study, with nothing left to look up
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/**
 * gw_study_resolve:
 * @option: index
 *
 * A private copy of @study as that option has it: its changes applied, its entry
 * the only one in the list of options, and every material, section and method that
 * is used copied from the catalogue into the study's own lists. So all numbers that
 * the results rest on stand in one record, to be read or varied; what a section without
 * rows does is guessed (gw_section_guess()).
 *
 * Returns: (transfer full)
 */
GwStudy *gw_study_resolve (const GwStudy *study,
                           guint          option,
                           GPtrArray     *problems) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_resolved_key:
 * @path: of a number in @resolved
 *
 * Name of the input behind that number: its path, or, where the option changes it,
 * a name of the option's own. Options that share an input have the same key for
 * it, so that a band of a difference leaves out what they share.
 *
 * Returns: (transfer full)
 */
char *gw_resolved_key (const GwStudy *resolved,
                       const char    *path);

G_END_DECLS
