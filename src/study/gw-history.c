/* gw-history.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define G_LOG_DOMAIN "gw-history"

#include "study/gw-history.h"


typedef struct
{
  char    *name; /* of the step that led here; NULL: the start */
  char    *merge;
  GwStudy *study;
} Step;

struct _GwHistory
{
  GObject parent_instance;

  GPtrArray *steps; /* never empty */
  guint      now;
  GwStudy   *saved;
};

G_DEFINE_FINAL_TYPE (GwHistory, gw_history, G_TYPE_OBJECT)

enum
{
  CHANGED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static Step *
step_new (const char *name,
          const char *merge,
          GwStudy    *study)
{
  Step *step = g_new (Step, 1);

  *step = (Step){ g_strdup (name), g_strdup (merge), gw_study_ref (study) };
  return step;
}

static void
step_free (Step *step)
{
  g_free (step->name);
  g_free (step->merge);
  gw_study_unref (step->study);
  g_free (step);
}

static Step *
step_at (GwHistory *self,
         guint      i)
{
  return g_ptr_array_index (self->steps, i);
}

static void
gw_history_finalize (GObject *object)
{
  GwHistory *self = GW_HISTORY (object);

  g_clear_pointer (&self->steps, g_ptr_array_unref);
  g_clear_pointer (&self->saved, gw_study_unref);

  G_OBJECT_CLASS (gw_history_parent_class)->finalize (object);
}

static void
gw_history_class_init (GwHistoryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = gw_history_finalize;

  signals[CHANGED] = g_signal_new ("changed", GW_TYPE_HISTORY, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
}

static void
gw_history_init (GwHistory *self)
{
  self->steps = g_ptr_array_new_with_free_func ((GDestroyNotify) step_free);
}

GwHistory *
gw_history_new (GwStudy *study)
{
  GwHistory *self = g_object_new (GW_TYPE_HISTORY, NULL);

  g_ptr_array_add (self->steps, step_new (NULL, NULL, study));
  self->saved = gw_study_ref (study);
  return self;
}

GwStudy *
gw_history_get_study (GwHistory *self)
{
  g_return_val_if_fail (GW_IS_HISTORY (self), NULL);

  return step_at (self, self->now)->study;
}

gboolean
gw_history_push (GwHistory  *self,
                 const char *name,
                 GwStudy    *study,
                 const char *merge)
{
  g_return_val_if_fail (GW_IS_HISTORY (self), FALSE);
  g_return_val_if_fail (name != NULL, FALSE);

  if (gw_record_equal (&study->record, &gw_history_get_study (self)->record))
    return FALSE;

  g_ptr_array_set_size (self->steps, (int) self->now + 1);
  if (merge != NULL && g_strcmp0 (step_at (self, self->now)->merge, merge) == 0)
    g_ptr_array_set_size (self->steps, (int) self->now);

  g_ptr_array_add (self->steps, step_new (name, merge, study));
  self->now = self->steps->len - 1;
  g_signal_emit (self, signals[CHANGED], 0);
  return TRUE;
}

const char *
gw_history_undo_name (GwHistory *self)
{
  g_return_val_if_fail (GW_IS_HISTORY (self), NULL);

  return step_at (self, self->now)->name;
}

const char *
gw_history_redo_name (GwHistory *self)
{
  g_return_val_if_fail (GW_IS_HISTORY (self), NULL);

  return self->now + 1 < self->steps->len ? step_at (self, self->now + 1)->name : NULL;
}

static void
go (GwHistory *self,
    guint      now)
{
  self->now = now;
  g_signal_emit (self, signals[CHANGED], 0);
}

void
gw_history_undo (GwHistory *self)
{
  g_return_if_fail (GW_IS_HISTORY (self));

  if (self->now > 0)
    go (self, self->now - 1);
}

void
gw_history_redo (GwHistory *self)
{
  g_return_if_fail (GW_IS_HISTORY (self));

  if (self->now + 1 < self->steps->len)
    go (self, self->now + 1);
}

void
gw_history_mark_saved (GwHistory *self)
{
  g_return_if_fail (GW_IS_HISTORY (self));

  g_clear_pointer (&self->saved, gw_study_unref);
  self->saved = gw_study_ref (gw_history_get_study (self));
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
gw_history_is_modified (GwHistory *self)
{
  g_return_val_if_fail (GW_IS_HISTORY (self), FALSE);

  return !gw_record_equal (&self->saved->record, &gw_history_get_study (self)->record);
}
