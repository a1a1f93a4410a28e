/* own-cache.h - a cache folder for one test program alone, made and removed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   g_autofree char *cache = own_cache_make ();
 *   g_test_init (…) … status = g_test_run ();
 *   own_cache_remove (cache);
 */

#pragma once

#include <glib/gstdio.h>

/* Before g_test_init(): GLib asks for the folder once. */
static inline char *
own_cache_make (void)
{
  char *cache = g_dir_make_tmp ("gw-cache-XXXXXX", NULL);

  g_assert_nonnull (cache);
  g_assert_true (g_setenv ("XDG_CACHE_HOME", cache, TRUE));
  return cache;
}

/* With all that is in it. */
static inline void
own_cache_remove (const char *path)
{
  const gboolean is_link = g_file_test (path, G_FILE_TEST_IS_SYMLINK);
  g_autoptr (GDir) dir = is_link ? NULL : g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *below = g_build_filename (path, name, NULL);

      own_cache_remove (below);
    }
  g_assert_cmpint (g_remove (path), ==, 0);
}
