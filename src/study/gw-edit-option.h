/* gw-edit-option.h - edits meant for one option alone, against the common airframe
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/* As gw-edit.h: a new study or NULL with the reason. An option changes fields, members of a
 * part, or lists as a whole (gw_study_apply_changes() says how they are read). Edits keep its
 * changes from overlapping: what is changed within a list of its own becomes part of that list,
 * and a list that becomes its own takes in what the option had changed in it. */

/** gw_edit_can_differ: whether an option may have a value of its own at @path, or a list. The
 * options themselves and the baseline are the study's; its own materials, sections and methods
 * lie on one shelf for all options, though a record there may differ. */
gboolean gw_edit_can_differ (const char *path);

/**
 * gw_edit_for_option:
 * @option: index
 * @value: (nullable): NULL: left out, in the common airframe
 *
 * Changes the field for that option alone. What cannot differ is changed where it lies. The
 * study is checked as a whole.
 */
GwStudy *gw_edit_for_option (const GwStudy *study,
                             guint          option,
                             const char    *path,
                             JsonNode      *value,
                             GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_edit_set:
 * @option: index
 * @is_only_here: whether the change is meant for that option alone
 * @value: (nullable): NULL: left out; refused where one option alone cannot leave it out
 *
 * What a field shown for that option does when it is changed: a field that the option
 * has changed already is changed there, whatever @is_only_here says. Made for drags, so
 * only names are checked: that the study can be computed is found by evaluating it.
 */
GwStudy *gw_edit_set (const GwStudy *study,
                      guint          option,
                      gboolean       is_only_here,
                      const char    *path,
                      JsonNode      *value,
                      GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_change_of: (nullable) (transfer none): what the option sets that very path to. */
JsonNode *gw_edit_change_of (const GwStudy *study,
                             guint          option,
                             const char    *path);

/** gw_edit_changed_at: (nullable) (transfer none): path of the option's change that sets @path:
 * its own, or that of a list or part around it. */
const char *gw_edit_changed_at (const GwStudy *study,
                                guint          option,
                                const char    *path);

/**
 * gw_edit_take_back:
 * @path: of a change
 *
 * The option has the common value again. Its own surfaces, builds and spars go back together
 * where one without the others would name what is not there.
 */
GwStudy *gw_edit_take_back (const GwStudy *study,
                            guint          option,
                            const char    *path,
                            GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* Lists. The edits of gw-edit.h, gw-edit-whole.h and gw-fresh.h work on the common airframe.
 * Meant for one option alone they are made on a view of it, and what they did is kept:
 *
 *   opened = gw_edit_open (study, option, is_only_here, "equipment");
 *   edited = gw_edit_remove (opened, "equipment/battery", NULL, &error);
 *   kept = gw_edit_close (study, option, opened, edited, &error);
 */

/**
 * gw_edit_is_here:
 * @list: path of a list
 *
 * Whether an edit of that list is one of the option alone: it is meant so, or the list is the
 * option's own already. Never of what cannot differ.
 */
gboolean gw_edit_is_here (const GwStudy *study,
                          guint          option,
                          gboolean       is_only_here,
                          const char    *list);

/**
 * gw_edit_open:
 * @list: path of a list
 *
 * What an edit of that list begins with: @study itself, or, gw_edit_is_here(), a view of it,
 * where the option is the only one.
 */
GwStudy *gw_edit_open (GwStudy    *study,
                       guint       option,
                       gboolean    is_only_here,
                       const char *list) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_close: @edited itself, or as gw_edit_keep() has it; NULL if it is NULL, with @error
 * as it is. (transfer full) (nullable) @edited */
GwStudy *gw_edit_close (const GwStudy *study,
                        guint          option,
                        const GwStudy *opened,
                        GwStudy       *edited,
                        GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_view: a study with that option alone, at index 0, and all that it changes common. */
GwStudy *gw_edit_view (const GwStudy *study,
                       guint          option) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_edit_keep:
 * @view: by gw_edit_view() of @study and @option
 * @edited: an edit of it
 *
 * What differs between the two becomes what the option changes: a list with other records
 * in it, or in another order, is from then on the option's own as a whole. What lies in the
 * option itself is kept there.
 */
GwStudy *gw_edit_keep (const GwStudy *study,
                       guint          option,
                       const GwStudy *view,
                       const GwStudy *edited,
                       GError       **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
