/* gw-edit.h - edits of a study beyond one field: lists, and what an option changes
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/* Every edit gives a new study, checked as a whole, or NULL with the reason; the one
 * it starts from stays as it is. A path names a field or, in a list, a record:
 * "equipment/battery", "surfaces/wing/stations/2". */

/**
 * gw_edit_insert:
 * @list: path of a list: "equipment"
 * @index: place in the list, -1: at the end
 * @record: (nullable): the record as JSON; NULL: a fresh one. An id it needs and has
 *   not, or that is taken, is made.
 * @path: (out) (optional): of the new record
 */
GwStudy *gw_edit_insert (const GwStudy *study,
                         const char    *list,
                         int            index,
                         JsonNode      *record,
                         char         **path,
                         GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_duplicate: puts a copy behind the record at @path, under a new id and name. */
GwStudy *gw_edit_duplicate (const GwStudy *study,
                            const char    *path,
                            char         **copy,
                            GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_remove: refused, with the place, while something refers to the record. */
GwStudy *gw_edit_remove (const GwStudy *study,
                         const char    *path,
                         GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_move: puts the record at @path at @index of its list. */
GwStudy *gw_edit_move (const GwStudy *study,
                       const char    *path,
                       guint          index,
                       GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_edit_for_option:
 * @option: index
 *
 * Changes the field for that option alone, against the common airframe. What lies
 * in an option itself (its builds, its name) is changed where it lies.
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

/** gw_edit_number: @value as a field takes it, as sure and of the same origin as @number. */
JsonNode *gw_edit_number (const GwNumber *number,
                          double          value) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_name: "Change Chord of Wing", of the field at @path. (transfer full) */
char *gw_edit_name (const GwStudy *study,
                    const char    *path);

/** gw_edit_record_name: "Battery", or what kind of thing it is. (transfer full) */
char *gw_edit_record_name (const GwRecord *record);

/** gw_edit_take_back: the option has the common value again. */
GwStudy *gw_edit_take_back (const GwStudy *study,
                            guint          option,
                            const char    *path,
                            GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_change_of: (nullable) (transfer none): what the option sets that field to. */
JsonNode *gw_edit_change_of (const GwStudy *study,
                             guint          option,
                             const char    *path);

/** gw_edit_record: (nullable) (transfer none): of a list, a part, or "" for the study. */
GwRecord *gw_edit_record (const GwStudy *study,
                          const char    *path);

G_END_DECLS
