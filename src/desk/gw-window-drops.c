/* gw-window-drops.c - what is dropped on the main window
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-window-private.h"

static gboolean
is_section (GFile *file)
{
  static const char *const endings[] = { ".dat", ".txt", ".csv", ".cor" };
  g_autofree char         *name = g_file_get_basename (file);
  g_autofree char         *low = g_ascii_strdown (name, -1);

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    if (g_str_has_suffix (low, endings[i]))
      return TRUE;

  return FALSE;
}

/* The first study here, the others in windows of their own. */
void
_gw_window_drop (GwWindow *self,
                 GSList   *files)
{
  GwApplication *application = _gw_window_get_application (self);
  GFile         *first = NULL;

  for (GSList *l = files; l != NULL; l = l->next)
    if (is_section (l->data))
      _gw_window_add_section (self, l->data);
    else if (first == NULL)
      first = l->data;
    else
      gw_application_open (application, l->data, NULL);

  if (first != NULL)
    gw_window_open (self, first);
}
