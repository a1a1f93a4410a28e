/* gw-document-edit.c - what is tried and what becomes a step
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-document-private.h"

gboolean
gw_document_try (GwDocument *self,
                 GwStudy    *study,
                 GError    **error)
{
  GwEvaluation *trial;

  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (self->evaluation != NULL, FALSE);

  trial = gw_evaluation_quick (study, self->evaluation, error);
  if (trial == NULL)
    return FALSE;

  _gw_document_set_evaluation (&self->trial, trial);
  _gw_document_changed (self);
  return TRUE;
}

/* Makes what was computed a step; if it is the same study nothing is changed, bands included. */
static void
push (GwDocument   *self,
      GwEvaluation *evaluation,
      const char   *name,
      const char   *merge)
{
  g_autoptr (GwEvaluation) before = self->evaluation;

  self->evaluation = gw_evaluation_ref (evaluation);
  if (gw_history_push (self->history, name, evaluation->study, merge))
    return;

  _gw_document_set_evaluation (&self->evaluation, g_steal_pointer (&before));
  g_clear_pointer (&self->trial, gw_evaluation_unref);
  _gw_document_changed (self);
}

void
gw_document_take (GwDocument *self,
                  const char *name)
{
  g_autoptr (GwEvaluation) taken = NULL;

  g_return_if_fail (GW_IS_DOCUMENT (self));

  taken = g_steal_pointer (&self->trial);
  if (taken != NULL)
    push (self, taken, name, NULL);
}

void
gw_document_leave (GwDocument *self)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  if (self->trial == NULL)
    return;

  g_clear_pointer (&self->trial, gw_evaluation_unref);
  _gw_document_changed (self);
}

gboolean
gw_document_edit (GwDocument *self,
                  const char *name,
                  GwStudy    *study,
                  const char *merge,
                  GError    **error)
{
  g_autoptr (GwEvaluation) evaluation = NULL;

  g_return_val_if_fail (GW_IS_DOCUMENT (self), FALSE);
  g_return_val_if_fail (self->evaluation != NULL, FALSE);

  evaluation = gw_evaluation_quick (study, self->evaluation, error);
  if (evaluation == NULL)
    return FALSE;

  push (self, evaluation, name, merge);
  return TRUE;
}

GwEvaluation *
gw_document_get_former (GwDocument *self)
{
  g_return_val_if_fail (GW_IS_DOCUMENT (self), NULL);

  return self->trial != NULL ? self->evaluation : NULL;
}

void
gw_document_undo (GwDocument *self)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  if (self->history != NULL)
    gw_history_undo (self->history);
}

void
gw_document_redo (GwDocument *self)
{
  g_return_if_fail (GW_IS_DOCUMENT (self));

  if (self->history != NULL)
    gw_history_redo (self->history);
}
