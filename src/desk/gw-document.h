/* gw-document.h - a study on the desk: edit by edit, what came out of it, what is looked at
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"
#include "study/gw-history.h"

G_BEGIN_DECLS

#define GW_TYPE_DOCUMENT (gw_document_get_type ())

/* Reads its file and computes bands in threads; the newest wins. Values alone are computed
 * at once with every edit, so that the next frame has them. Watches the file and reads it
 * anew when it changes. While the file is broken, the last good evaluation stays and the
 * error says why.
 *
 * All that is seen of a study in one window follows the document: signal "changed" comes
 * when evaluation, error or problems have changed; "shown" and "selection" are properties
 * and notify. Property "busy": a thread is at work. */
G_DECLARE_FINAL_TYPE (GwDocument, gw_document, GW, DOCUMENT, GObject)

/** gw_document_new: begins to read @file at once. */
GwDocument *gw_document_new (GFile *file) G_GNUC_WARN_UNUSED_RESULT;

/** gw_document_new_study: of a study that lies in no file yet. */
GwDocument *gw_document_new_study (GwStudy *study) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_document_new_recovered:
 * @study: with the unsaved edits
 * @file: (nullable): that it was read from
 * @path: of gw_leftover_claim()
 *
 * The edits are a step after what the file holds now, and not saved.
 */
GwDocument *gw_document_new_recovered (GwStudy    *study,
                                       GFile      *file,
                                       const char *path) G_GNUC_WARN_UNUSED_RESULT;

/** gw_document_get_file: (nullable): NULL until it is saved for the first time. */
GFile *gw_document_get_file (GwDocument *self);

/** gw_document_get_name: of the file, or of the study while there is none. (transfer full) */
char *gw_document_get_name (GwDocument *self);

/** gw_document_get_history: (nullable): NULL until the file has been read once. */
GwHistory *gw_document_get_history (GwDocument *self);

/** gw_document_get_evaluation: (nullable): of what is on the screen, the newest there is. */
GwEvaluation *gw_document_get_evaluation (GwDocument *self);

/** gw_document_get_error: (nullable): why the file or the study as it is now cannot be used. */
const GError *gw_document_get_error (GwDocument *self);

/** gw_document_get_problems: what the last reading found, errors and hints; of GwProblem. */
const GPtrArray *gw_document_get_problems (GwDocument *self);

gboolean gw_document_is_busy (GwDocument *self);

/** gw_document_get_progress: TRUE while sections are computed: @done of @all of their polars. */
gboolean gw_document_get_progress (GwDocument *self,
                                   guint      *done,
                                   guint      *all);

/* The file. */

typedef enum
{
  GW_ON_DISK_SAME,
  GW_ON_DISK_NEWER,  /* another program changed it, and there are unsaved edits */
  GW_ON_DISK_BROKEN, /* another program changed it, and it cannot be read */
  GW_ON_DISK_GONE,
} GwOnDisk;

GwOnDisk gw_document_get_on_disk (GwDocument *self);

/** gw_document_reload: as a step; edits stay behind it. */
void gw_document_reload (GwDocument *self);

/** gw_document_keep_mine: what another program wrote may be saved over. */
void gw_document_keep_mine (GwDocument *self);

/** gw_document_is_modified: the file, if any, holds something else. */
gboolean gw_document_is_modified (GwDocument *self);

/** gw_document_needs_name: it lies nowhere, or where nothing can be written. */
gboolean gw_document_needs_name (GwDocument *self);

/**
 * gw_document_save:
 *
 * Refused while the file is newer or broken: that is asked first. After an error file and
 * edits are as they were.
 */
gboolean gw_document_save (GwDocument *self,
                           GError    **error);

/** gw_document_save_as: @file is the document's from now on. */
gboolean gw_document_save_as (GwDocument *self,
                              GFile      *file,
                              GError    **error);
gboolean gw_document_save_copy (GwDocument *self,
                                GFile      *file,
                                GError    **error);

/** gw_document_get_keeping_error: (nullable): why unsaved edits would not outlive a crash. */
const GError *gw_document_get_keeping_error (GwDocument *self);

/* Edits. Each is made with gw-edit.h from gw_document_get_study() and comes as a whole
 * study, so nothing is half done. One that cannot be computed is refused with the reason. */

/** gw_document_get_study: (nullable): as it is worked on, without what is only tried. */
GwStudy *gw_document_get_study (GwDocument *self);

/**
 * gw_document_edit:
 * @name: as undo has it: "Move the battery"
 * @merge: (nullable): as gw_history_push() has it
 */
gboolean gw_document_edit (GwDocument *self,
                           const char *name,
                           GwStudy    *study,
                           const char *merge,
                           GError    **error);

/**
 * gw_document_try:
 *
 * Shows @study without making it a step: a drag as it goes, an alternative looked at.
 * The last one tried is taken or left; any other edit leaves it.
 */
gboolean gw_document_try (GwDocument *self,
                          GwStudy    *study,
                          GError    **error);

/** gw_document_take: what is tried becomes a step; nothing happens if nothing is, or if it is the
 * same. */
void gw_document_take (GwDocument *self,
                       const char *name);
void gw_document_leave (GwDocument *self);

/** gw_document_get_former: (nullable): of the study without what is tried; NULL: nothing is. */
GwEvaluation *gw_document_get_former (GwDocument *self);

void gw_document_undo (GwDocument *self);
void gw_document_redo (GwDocument *self);

/* What is looked at. */

/** gw_document_get_shown: index of the option on the sheet. That stays the same option wherever it
 * moves, by an edit or by undo; if it goes, its neighbour is shown. */
guint gw_document_get_shown (GwDocument *self);
void  gw_document_set_shown (GwDocument *self,
                             guint       shown);

/** gw_document_get_selection: path of a record as gw_edit_record() takes it; "": the study. */
const char *gw_document_get_selection (GwDocument *self);
void        gw_document_set_selection (GwDocument *self,
                                       const char *path);

/** gw_document_get_only_here: whether a change is meant for the option shown alone; property
 * "only-here". */
gboolean gw_document_get_only_here (GwDocument *self);
void     gw_document_set_only_here (GwDocument *self,
                                    gboolean    is_only_here);

/**
 * gw_document_follow:
 * @held: (inout): the document that @follower follows and holds; NULL: none
 * @document: (nullable): to follow from now on
 * @changed: (nullable): called with @follower at "changed", as are @shown at "notify::shown"
 *   and @selection at "notify::selection"
 *
 * Returns: FALSE if it is followed already
 */
gboolean gw_document_follow (GwDocument **held,
                             GwDocument  *document,
                             gpointer     follower,
                             GCallback    changed,
                             GCallback    shown,
                             GCallback    selection);

/** gw_document_unfollow: lets go of @held; for dispose. */
void gw_document_unfollow (GwDocument **held,
                           gpointer     follower);

G_END_DECLS
