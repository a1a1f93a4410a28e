/* demos.h - the demo studies that ship with the program
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <string.h>

#include "study/gw-study.h"

#define DEMO_ENDING ".gramwright"

static inline char *
demo_path (const char *name)
{
  g_autofree char *file = g_strconcat (name, DEMO_ENDING, NULL);

  return g_test_build_filename (G_TEST_DIST, "..", "data", "demo", file, NULL);
}

static inline int
demo_compare (gconstpointer a,
              gconstpointer b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

/* Names of all demos without their ending, in order. (transfer full) */
static inline char **
demo_names (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "..", "data", "demo", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  const char *file;

  g_assert_nonnull (dir);
  while ((file = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (file, DEMO_ENDING))
      g_ptr_array_add (names, g_strndup (file, strlen (file) - strlen (DEMO_ENDING)));

  g_ptr_array_sort (names, demo_compare);
  g_ptr_array_add (names, NULL);
  return (char **) g_ptr_array_free (g_steal_pointer (&names), FALSE);
}

static inline GwStudy *
demo_load (const char *name)
{
  g_autofree char *path = demo_path (name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  GwStudy *study = gw_study_load (file, NULL, &error);

  g_assert_no_error (error);
  return study;
}

/* Adds @test for each demo, under /PREFIX/name/WHAT. The names live as long as the program. */
static inline void
demo_add_tests (const char   *prefix,
                const char   *what,
                GTestDataFunc test)
{
  static char **names;

  if (names == NULL)
    names = demo_names ();
  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s/%s/%s", prefix, names[i], what);

      g_test_add_data_func (path, names[i], test);
    }
}
