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
 * rows does is filled in (gw_section_fill()).
 *
 * Returns: (transfer full)
 */
GwStudy *gw_study_resolve (const GwStudy *study,
                           guint          option,
                           GPtrArray     *problems) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_study_resolve_wanting:
 * @wanted: (nullable): of GwPolarSubject; what has yet to be computed, for which a guess stands
 *   in, is added to it
 */
GwStudy *gw_study_resolve_wanting (const GwStudy *study,
                                   guint          option,
                                   GArray        *wanted,
                                   GPtrArray     *problems) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_study_apply_changes:
 * @study: that nobody else sees yet
 * @problems: what cannot be changed, or not to that, under "options/ID/changes/PATH"
 *
 * Makes what @option changes common, change by change in the order of the file, each read by
 * the code that reads the file:
 *
 * - a plain field takes the value;
 * - a list is replaced: the option has the records that the change holds and no others,
 *   whatever becomes of the common list;
 * - a part is merged: it takes what the change states, the rest stays as it was.
 *
 * So the later of two changes of the same thing counts. A record without an id is told by its
 * number in the list as it is at that moment.
 */
void gw_study_apply_changes (GwStudy             *study,
                             const GwStudyOption *option,
                             GPtrArray           *problems);

/**
 * gw_resolved_is_own:
 * @study: with all options, that was resolved
 * @path: of a field in @resolved
 *
 * Whether the option changes it. What stands in a list or part of its own as it does in the
 * common one, under the same path, is not changed.
 */
gboolean gw_resolved_is_own (const GwStudy *resolved,
                             const GwStudy *study,
                             const char    *path);

/**
 * gw_resolved_key:
 * @study: with all options, that was resolved
 * @path: of a number in @resolved
 *
 * Name of the input behind that number: its path, or, where the option changes it,
 * a name of the option's own. Options that share an input have the same key for
 * it, so that a band of a difference leaves out what they share.
 *
 * Returns: (transfer full)
 */
char *gw_resolved_key (const GwStudy *resolved,
                       const GwStudy *study,
                       const char    *path) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
