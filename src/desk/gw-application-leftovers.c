/* gw-application-leftovers.c - unsaved work that was found again
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-application-private.h"
#include "desk/gw-window-private.h"

GListModel *
gw_application_get_leftovers (GwApplication *self)
{
  g_return_val_if_fail (GW_IS_APPLICATION (self), NULL);

  return G_LIST_MODEL (self->leftovers);
}

static void
update_notices (GwApplication *self)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (GW_IS_WINDOW (l->data))
      _gw_window_update_notice (l->data);
}

void
gw_application_tell_leftovers (GwApplication *self)
{
  g_return_if_fail (GW_IS_APPLICATION (self));

  if (self->are_leftovers_told)
    return;

  self->are_leftovers_told = TRUE;
  update_notices (self);
}

gboolean
gw_application_are_leftovers_told (GwApplication *self)
{
  g_return_val_if_fail (GW_IS_APPLICATION (self), TRUE);

  return self->are_leftovers_told;
}

static void
remove_leftover (GwApplication *self,
                 GwLeftover    *leftover)
{
  guint position;

  if (g_list_store_find (self->leftovers, leftover, &position))
    g_list_store_remove (self->leftovers, position);
  update_notices (self);
}

gboolean
gw_application_bring_back (GwApplication *self,
                           GwLeftover    *leftover,
                           GtkWindow     *window,
                           GError       **error)
{
  g_autofree char *path = NULL;
  GwWindow        *own;

  g_return_val_if_fail (GW_IS_APPLICATION (self), FALSE);
  g_return_val_if_fail (gw_leftover_get_study (leftover) != NULL, FALSE);

  path = gw_leftover_claim (leftover, error);
  remove_leftover (self, leftover);
  if (path == NULL)
    return FALSE;

  own = _gw_application_need_empty (self, window);
  gw_window_show_document (own,
                           gw_document_new_recovered (gw_leftover_get_study (leftover),
                                                      gw_leftover_get_file (leftover), path));
  gtk_window_present (GTK_WINDOW (own));
  return TRUE;
}

void
gw_application_let_go (GwApplication *self,
                       GwLeftover    *leftover)
{
  g_return_if_fail (GW_IS_APPLICATION (self));

  gw_leftover_let_go (leftover);
  remove_leftover (self, leftover);
}
