/* gw-recent.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-recent.h"

#define NAME "Gramwright"

static void
recent_free (GwRecent *recent)
{
  g_free (recent->uri);
  g_free (recent->name);
  g_free (recent->folder);
  g_free (recent);
}

static int
last_first (gconstpointer a,
            gconstpointer b)
{
  GtkRecentInfo *one = (GtkRecentInfo *) a, *other = (GtkRecentInfo *) b;

  return g_date_time_compare (gtk_recent_info_get_modified (other),
                              gtk_recent_info_get_modified (one));
}

/* "~/studies" */
static char *
folder_text (GFile *file)
{
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autoptr (GFile) home = g_file_new_for_path (g_get_home_dir ());
  g_autofree char *below = folder != NULL ? g_file_get_relative_path (home, folder) : NULL;

  if (below != NULL)
    return g_build_filename ("~", below, NULL);

  return folder != NULL ? g_file_get_parse_name (folder) : g_strdup ("");
}

static GwRecent *
recent_new (GtkRecentInfo *info)
{
  GwRecent *recent = g_new (GwRecent, 1);
  g_autoptr (GFile) file = g_file_new_for_uri (gtk_recent_info_get_uri (info));

  recent->uri = g_strdup (gtk_recent_info_get_uri (info));
  recent->name = g_file_get_basename (file);
  recent->folder = folder_text (file);
  return recent;
}

GPtrArray *
gw_recent_list (guint most)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) recent_free);
  GList     *all = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());

  all = g_list_sort (all, last_first);
  for (GList *l = all; l != NULL && list->len < most; l = l->next)
    if (gtk_recent_info_has_application (l->data, NAME) &&
        (!gtk_recent_info_is_local (l->data) || gtk_recent_info_exists (l->data)))
      g_ptr_array_add (list, recent_new (l->data));

  g_list_free_full (all, (GDestroyNotify) gtk_recent_info_unref);
  return list;
}

void
gw_recent_add (GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData    data = {
       .mime_type = (char *) "application/x-gramwright+json",
       .app_name = (char *) NAME,
       .app_exec = (char *) "gramwright %f",
  };

  if (!g_file_has_uri_scheme (file, "resource"))
    gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}
