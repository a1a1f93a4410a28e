/* gw-document-private.h - what the files of the document share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-document.h"
#include "desk/gw-recovery.h"

G_BEGIN_DECLS

typedef struct _GwComputing GwComputing;

struct _GwDocument
{
  GObject parent_instance;

  GFile        *file;
  GFileMonitor *monitor;
  guint         settle_source;
  GError       *reading_error;
  GPtrArray    *problems;
  GwStudy      *on_disk;  /* what the file held when it was last read or written */
  char         *etag;     /* of that */
  GwStudy      *newer;    /* the file holds this, and there are unsaved edits */
  gboolean      is_gone;  /* the file */
  gboolean      is_apart; /* the file does not hold what the history takes for saved */
  gboolean      is_asked; /* a person wants the file read, edits or not */
  GwRecovery   *recovery; /* NULL until there are unsaved edits */
  GError       *keeping_error;

  GwHistory    *history;
  GwStudy      *computed;   /* what was last given to a thread */
  GwEvaluation *evaluation; /* of the history's study */
  GwEvaluation *trial;      /* of what is only tried; NULL: nothing is */
  GError       *computing_error;

  guint    shown;
  char    *selection;
  gboolean is_only_here;

  /* Of the newest run of its kind, NULL at rest. To cancel one also drops its result, even
   * if that is on its way already: g_task_propagate_pointer() then gives the error alone. */
  GCancellable *reading, *computing;
  GwComputing  *progress; /* of the run that @computing can cancel */
};

/** _gw_document_task: for what does not begin at once; else as _gw_document_run(). */
GTask *_gw_document_task (GwDocument         *self,
                          GCancellable      **cancellable,
                          gpointer            data,
                          GDestroyNotify      destroy,
                          GAsyncReadyCallback done);

/** _gw_document_run: works in a thread; the callback must not touch the document once cancelled. */
void _gw_document_run (GwDocument         *self,
                       GCancellable      **cancellable,
                       GTaskThreadFunc     worker,
                       gpointer            data,
                       GDestroyNotify      destroy,
                       GAsyncReadyCallback done);

/** _gw_document_finish: after such a run: says what has changed. */
void _gw_document_finish (GwDocument *self);

/** _gw_document_compute: @study: values now, sections and bands in a thread; the newest wins. */
void _gw_document_compute (GwDocument *self,
                           GwStudy    *study);
void _gw_document_forget_computing (GwDocument *self);

/** _gw_document_changed: says that what is seen of it is something else. */
void _gw_document_changed (GwDocument *self);

/** _gw_document_set_evaluation: takes @evaluation, in place of the one there. */
void _gw_document_set_evaluation (GwEvaluation **place,
                                  GwEvaluation  *evaluation);

void _gw_document_cancel (GCancellable **cancellable);

/** _gw_document_take_study: what was read becomes the first step, or one more. */
void _gw_document_take_study (GwDocument *self,
                              GwStudy    *study);

/** _gw_document_watch: @file is where the study lies from now on. */
void _gw_document_watch (GwDocument *self,
                         GFile      *file);
void _gw_document_unwatch (GwDocument *self);

/** _gw_document_keep: unsaved edits for recovery, if there are any. */
void _gw_document_keep (GwDocument *self);

/** _gw_document_forget_file: frees all that gw-document-file.c has in @self. */
void _gw_document_forget_file (GwDocument *self);

G_END_DECLS
