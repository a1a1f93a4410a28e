/* gw-document-follow.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-document.h"

static void
connect (GwDocument *document,
         const char *signal,
         GCallback   callback,
         gpointer    follower)
{
  if (callback != NULL)
    g_signal_connect_swapped (document, signal, callback, follower);
}

gboolean
gw_document_follow (GwDocument **held,
                    GwDocument  *document,
                    gpointer     follower,
                    GCallback    changed,
                    GCallback    shown,
                    GCallback    selection)
{
  g_return_val_if_fail (document == NULL || GW_IS_DOCUMENT (document), FALSE);

  if (*held == document)
    return FALSE;

  if (*held != NULL)
    g_signal_handlers_disconnect_by_data (*held, follower);
  g_set_object (held, document);
  if (document != NULL)
    {
      connect (document, "changed", changed, follower);
      connect (document, "notify::shown", shown, follower);
      connect (document, "notify::selection", selection, follower);
    }
  return TRUE;
}

void
gw_document_unfollow (GwDocument **held,
                      gpointer     follower)
{
  gw_document_follow (held, NULL, follower, NULL, NULL, NULL);
}
