/* gw-document.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define G_LOG_DOMAIN "gw-document"

#include "desk/gw-document-private.h"

#include <glib/gi18n-lib.h>

#include "study/gw-edit-option.h"
#include "study/gw-edit.h"


G_DEFINE_FINAL_TYPE (GwDocument, gw_document, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_BUSY,
  PROP_SHOWN,
  PROP_SELECTION,
  PROP_ONLY_HERE,
  N_PROPS
};

enum
{
  CHANGED,
  N_SIGNALS
};

static GParamSpec *properties[N_PROPS];
static guint       signals[N_SIGNALS];

void
_gw_document_cancel (GCancellable **cancellable)
{
  g_cancellable_cancel (*cancellable);
  g_clear_object (cancellable);
}

/* It has no source object: that would keep the document until the thread is through. */
GTask *
_gw_document_task (GwDocument         *self,
                   GCancellable      **cancellable,
                   gpointer            data,
                   GDestroyNotify      destroy,
                   GAsyncReadyCallback done)
{
  const gboolean was_busy = gw_document_is_busy (self);
  GTask         *task;

  _gw_document_cancel (cancellable);
  *cancellable = g_cancellable_new ();
  task = g_task_new (NULL, *cancellable, done, self);
  g_task_set_task_data (task, data, destroy);

  if (!was_busy)
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_BUSY]);
  return task;
}

void
_gw_document_run (GwDocument         *self,
                  GCancellable      **cancellable,
                  GTaskThreadFunc     worker,
                  gpointer            data,
                  GDestroyNotify      destroy,
                  GAsyncReadyCallback done)
{
  g_autoptr (GTask) task = _gw_document_task (self, cancellable, data, destroy, done);

  g_task_run_in_thread (task, worker);
}

static const char *
option_id (const GwStudy *study,
           guint          option)
{
  return gw_record_id (g_ptr_array_index (study->options, option));
}

/* Index of the option that was @was in @before: found by its id, or its nearest neighbour,
 * before rather than behind it, that is still there. */
static guint
follow_option (const GwStudy *before,
               guint          was,
               const GwStudy *study)
{
  const guint n = before->options->len;

  for (guint away = 0; away < n; away++)
    for (int side = -1; side <= 1; side += 2)
      {
        const gint64 at = (gint64) was + side * (gint64) away;
        GwRecord    *found;
        guint        is;

        if (at < 0 || at >= (gint64) n)
          continue;
        found = gw_list_find (study->options, option_id (before, (guint) at));
        if (found != NULL && g_ptr_array_find (study->options, found, &is))
          return is;
      }

  return gw_study_baseline (study);
}

static void
show (GwDocument *self,
      guint       shown)
{
  if (self->shown == shown)
    return;

  self->shown = shown;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SHOWN]);
}

/* As the shown option has it; the options themselves, and the study, where they lie. */
static gboolean
has_record (GwDocument *self,
            GwStudy    *study,
            const char *path)
{
  const GwOutcome *outcome;

  if (!gw_edit_can_differ (path))
    return gw_edit_record (study, path) != NULL;
  if (self->evaluation == NULL || self->evaluation->study != study ||
      self->shown >= self->evaluation->outcomes->len)
    return gw_edit_record (study, path) != NULL;

  outcome = gw_evaluation_outcome (self->evaluation, self->shown);
  return gw_edit_record (outcome->assembly->study, path) != NULL;
}

/* A record that is looked at may be gone, or not be in the option that is shown now. */
static void
keep_in_view (GwDocument *self)
{
  GwStudy *study = gw_document_get_study (self);

  if (study != NULL && !has_record (self, study, self->selection))
    gw_document_set_selection (self, "");
}

void
_gw_document_changed (GwDocument *self)
{
  g_signal_emit (self, signals[CHANGED], 0);
}

void
_gw_document_finish (GwDocument *self)
{
  if (!gw_document_is_busy (self))
    g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_BUSY]);
  _gw_document_changed (self);
}

void
_gw_document_set_evaluation (GwEvaluation **place,
                             GwEvaluation  *evaluation)
{
  g_clear_pointer (place, gw_evaluation_unref);
  *place = evaluation;
}

static void
history_changed_cb (GwDocument *self)
{
  GwStudy *study = gw_history_get_study (self->history);
  g_autoptr (GwStudy) before = gw_study_ref (self->computed);

  g_clear_pointer (&self->trial, gw_evaluation_unref);
  if (study != self->computed)
    _gw_document_compute (self, study);
  show (self, follow_option (before, self->shown, study));
  keep_in_view (self);
  _gw_document_keep (self);
  _gw_document_changed (self);
}

/* What was read becomes a step, so that edits made before it can be brought back. */
void
_gw_document_take_study (GwDocument *self,
                         GwStudy    *study)
{
  if (self->history == NULL)
    {
      self->history = gw_history_new (study);
      self->shown = gw_study_baseline (study);
      g_signal_connect_swapped (self->history, "changed", G_CALLBACK (history_changed_cb), self);
      _gw_document_compute (self, study);
    }
  else
    {
      gw_history_push (self->history, _ ("Read the file anew"), study, NULL);
      gw_history_mark_saved (self->history);
    }
}

static void
gw_document_get_property (GObject    *object,
                          guint       id,
                          GValue     *value,
                          GParamSpec *pspec)
{
  GwDocument *self = GW_DOCUMENT (object);

  switch (id)
    {
    case PROP_BUSY:
      g_value_set_boolean (value, gw_document_is_busy (self));
      break;
    case PROP_SHOWN:
      g_value_set_uint (value, self->shown);
      break;
    case PROP_SELECTION:
      g_value_set_string (value, self->selection);
      break;
    case PROP_ONLY_HERE:
      g_value_set_boolean (value, self->is_only_here);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_document_set_property (GObject      *object,
                          guint         id,
                          const GValue *value,
                          GParamSpec   *pspec)
{
  GwDocument *self = GW_DOCUMENT (object);

  switch (id)
    {
    case PROP_SHOWN:
      gw_document_set_shown (self, g_value_get_uint (value));
      break;
    case PROP_SELECTION:
      gw_document_set_selection (self, g_value_get_string (value));
      break;
    case PROP_ONLY_HERE:
      gw_document_set_only_here (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_document_dispose (GObject *object)
{
  GwDocument *self = GW_DOCUMENT (object);

  _gw_document_cancel (&self->reading);
  _gw_document_cancel (&self->computing);
  _gw_document_forget_computing (self);
  _gw_document_unwatch (self);
  g_clear_pointer (&self->recovery, gw_recovery_free);
  if (self->history != NULL)
    g_signal_handlers_disconnect_by_data (self->history, self);

  G_OBJECT_CLASS (gw_document_parent_class)->dispose (object);
}

static void
gw_document_finalize (GObject *object)
{
  GwDocument *self = GW_DOCUMENT (object);

  _gw_document_forget_file (self);
  g_clear_object (&self->history);
  g_clear_pointer (&self->computed, gw_study_unref);
  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  g_clear_pointer (&self->trial, gw_evaluation_unref);
  g_clear_pointer (&self->selection, g_free);
  g_clear_error (&self->computing_error);

  G_OBJECT_CLASS (gw_document_parent_class)->finalize (object);
}

static void
gw_document_class_init (GwDocumentClass *klass)
{
  GObjectClass     *object_class = G_OBJECT_CLASS (klass);
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  object_class->get_property = gw_document_get_property;
  object_class->set_property = gw_document_set_property;
  object_class->dispose = gw_document_dispose;
  object_class->finalize = gw_document_finalize;

  properties[PROP_BUSY] =
    g_param_spec_boolean ("busy", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  properties[PROP_SHOWN] = g_param_spec_uint ("shown", NULL, NULL, 0, G_MAXUINT, 0, flags);
  properties[PROP_SELECTION] = g_param_spec_string ("selection", NULL, NULL, "", flags);
  properties[PROP_ONLY_HERE] = g_param_spec_boolean ("only-here", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);

  signals[CHANGED] = g_signal_new ("changed", GW_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
gw_document_init (GwDocument *self)
{
  self->problems = gw_problems_new ();
  self->selection = g_strdup ("");
}

GwDocument *
gw_document_new (GFile *file)
{
  GwDocument *self = g_object_new (GW_TYPE_DOCUMENT, NULL);

  _gw_document_watch (self, file);
  gw_document_reload (self);
  return self;
}

GwDocument *
gw_document_new_study (GwStudy *study)
{
  GwDocument *self = g_object_new (GW_TYPE_DOCUMENT, NULL);

  _gw_document_take_study (self, study);
  return self;
}

GFile *
gw_document_get_file (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->file;
}

char *
gw_document_get_name (GwDocument *self)
{
  GwStudy *study;

  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  if (self->file != NULL)
    return g_file_get_basename (self->file);

  study = gw_document_get_study (self);
  return g_strdup (study != NULL && study->name != NULL ? study->name : _ ("New study"));
}

GwHistory *
gw_document_get_history (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->history;
}

GwEvaluation *
gw_document_get_evaluation (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->trial != NULL ? self->trial : self->evaluation;
}

const GError *
gw_document_get_error (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->reading_error != NULL ? self->reading_error : self->computing_error;
}

const GPtrArray *
gw_document_get_problems (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->problems;
}

gboolean
gw_document_is_busy (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);

  return self->reading != NULL || self->computing != NULL;
}

GwStudy *
gw_document_get_study (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->history != NULL ? gw_history_get_study (self->history) : NULL;
}

guint
gw_document_get_shown (GwDocument *self)
{
  const GwEvaluation *evaluation;

  g_return_val_if_fail (GW_IS_DOCUMENT (self), 0);

  /* While the study cannot be computed, the evaluation is of one before it. */
  evaluation = gw_document_get_evaluation (self);
  if (evaluation != NULL && self->shown >= evaluation->outcomes->len)
    return evaluation->baseline;

  return self->shown;
}

void
gw_document_set_shown (GwDocument *self,
                       guint       shown)
{
  GwStudy *study;

  g_return_if_fail (GW_IS_DOCUMENT (self));

  study = gw_document_get_study (self);
  if (self->shown == shown || study == NULL || shown >= study->options->len)
    return;

  show (self, shown);
  keep_in_view (self);
}

const char *
gw_document_get_selection (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->selection;
}

void
gw_document_set_selection (GwDocument *self,
                           const char *path)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  if (g_strcmp0 (self->selection, path) == 0)
    return;

  g_free (self->selection);
  self->selection = g_strdup (path != NULL ? path : "");
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SELECTION]);
}

gboolean
gw_document_get_only_here (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);

  return self->is_only_here;
}

void
gw_document_set_only_here (GwDocument *self,
                           gboolean    is_only_here)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  if (self->is_only_here == is_only_here)
    return;

  self->is_only_here = is_only_here;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_ONLY_HERE]);
}
