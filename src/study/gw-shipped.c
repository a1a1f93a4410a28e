/* gw-shipped.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define G_LOG_DOMAIN "gw-shipped"

#include "study/gw-shipped.h"

#define PREFIX "/org/gramwright"

GBytes *
gw_shipped_data (const char *folder,
                 const char *name)
{
  const char *const *languages = g_get_language_names ();
  g_autofree char   *english = g_strdup_printf (PREFIX "/%s/%s", folder, name);
  g_autoptr (GError) error = NULL;
  GBytes *bytes = NULL;

  for (guint i = 0; languages[i] != NULL && bytes == NULL; i++)
    {
      g_autofree char *path = g_strdup_printf (PREFIX "/%s/%s/%s", folder, languages[i], name);

      bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
    }
  if (bytes == NULL)
    bytes = g_resources_lookup_data (english, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  if (bytes == NULL)
    g_error ("%s", error->message);

  return bytes;
}
