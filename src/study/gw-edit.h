/* gw-edit.h - edits of a study beyond one field: its lists
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

/* Every edit, here and in gw-edit-whole.h, gw-edit-option.h and gw-fresh.h, gives a new study
 * that is in order as a whole, every option of it, and comes back from its file the same; or
 * NULL with the reason, and then nothing is given out. The study it starts from stays as it is
 * in any case, so a refused edit leaves all as it was. (gw_edit_set() alone checks less.) A path
 * names a field or, in a list, a record: "equipment/battery", "surfaces/wing/stations/2".
 *
 * Edits of a list of the airframe are of the common one; gw-edit-option.h makes them of one
 * option. What options change of a record follows it: records without an id are told by their
 * number, so when one comes, goes or moves the paths of the changes behind it are counted anew,
 * and what was changed of one that goes is dropped. An option that has the list as its own is
 * not touched. */

/* What an option changed of a record that has gone. */
typedef struct
{
  char *option; /* id */
  char *path;   /* as it was */
} GwDroppedChange;

void gw_dropped_change_free (GwDroppedChange *dropped);

/**
 * gw_edit_insert:
 * @list: path of a list: "equipment"
 * @index: place in the list, -1: at the end
 * @record: (nullable): the record as JSON; NULL: a fresh one, refused if there are fields it
 *   cannot be without. An id that it has not, or that is taken, is made.
 * @path: (out) (optional): of the new record
 */
GwStudy *gw_edit_insert (const GwStudy *study,
                         const char    *list,
                         int            index,
                         JsonNode      *record,
                         char         **path,
                         GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_duplicate: puts a copy behind the record at @path, under a new id and name; options
 * change of it what they change of the record. */
GwStudy *gw_edit_duplicate (const GwStudy *study,
                            const char    *path,
                            char         **copy,
                            GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_edit_remove: refused, with the place, while something refers to the record.
 * @dropped: (nullable): what options changed of it is added, GwDroppedChange each
 */
GwStudy *gw_edit_remove (const GwStudy *study,
                         const char    *path,
                         GPtrArray     *dropped,
                         GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_edit_move:
 * @index: in its list, after it has been taken out; beyond the end: the end
 * @moved: (out) (optional): its path there
 */
GwStudy *gw_edit_move (const GwStudy *study,
                       const char    *path,
                       guint          index,
                       char         **moved,
                       GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_edit_name: "Change Chord of Wing", of the field at @path. (transfer full) */
char *gw_edit_name (const GwStudy *study,
                    const char    *path);

/** gw_edit_record_name: "Battery", or what kind of thing it is. (transfer full) */
char *gw_edit_record_name (const GwRecord *record);

/** gw_edit_record: (nullable) (transfer none): of a list, a part, or "" for the study. */
GwRecord *gw_edit_record (const GwStudy *study,
                          const char    *path);

G_END_DECLS
