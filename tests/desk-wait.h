/* desk-wait.h - waiting for what threads, files and frames bring
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>
#include <glib/gstdio.h>

#include "sample-study.h"

/* A loaded machine may be slow; a test that hangs must end. */
#ifdef __SANITIZE_ADDRESS__
# define WAIT_LIMIT 120000 /* [ms] */
#else
# define WAIT_LIMIT 20000
#endif

static inline gboolean
wait_flag_cb (gpointer flag)
{
  *(gboolean *) flag = TRUE;
  return G_SOURCE_REMOVE;
}

/* Lets the main loop run for a while. */
static inline void
wait_for_ms (guint ms)
{
  gboolean is_over = FALSE;

  g_timeout_add (ms, wait_flag_cb, &is_over);
  while (!is_over)
    g_main_context_iteration (NULL, TRUE);
}

/* Lets the main loop run until @condition holds. */
#define wait_until(condition)                                                \
 G_STMT_START                                                                \
 {                                                                           \
  gboolean    is_over_ = FALSE;                                              \
  const guint source_ = g_timeout_add (WAIT_LIMIT, wait_flag_cb, &is_over_); \
                                                                             \
  while (!(condition) && !is_over_)                                          \
   g_main_context_iteration (NULL, TRUE);                                    \
  if (is_over_)                                                              \
   g_error ("%s:%d: waited in vain for " #condition, __FILE__, __LINE__);    \
  g_source_remove (source_);                                                 \
 }                                                                           \
 G_STMT_END

/* A folder with one study in it. */
typedef struct
{
  char  *folder, *path;
  GFile *file;
} Place;

static inline void
place_init (Place      *place,
            const char *text)
{
  place->folder = g_dir_make_tmp ("gw-desk-XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "plank.gramwright", NULL);
  place->file = g_file_new_for_path (place->path);
  g_assert_true (g_file_set_contents (place->path, text, -1, NULL));
}

static inline void
place_clear (Place *place)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (place->folder, name, NULL);

      g_assert_cmpint (g_remove (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_clear_object (&place->file);
  g_free (place->path);
  g_free (place->folder);
}

/* As an editor saves: a new file takes the place of the old one. */
static inline void
place_replace (Place      *place,
               const char *text)
{
  g_assert_true (g_file_set_contents (place->path, text, -1, NULL));
}

/* Into the same file, in two steps. */
static inline void
place_write (Place      *place,
             const char *text)
{
  const gsize length = strlen (text), half = length / 2;
  FILE       *out = g_fopen (place->path, "w");

  g_assert_nonnull (out);
  g_assert_cmpuint (fwrite (text, 1, half, out), ==, half);
  g_assert_cmpint (fflush (out), ==, 0);
  g_assert_cmpuint (fwrite (text + half, 1, length - half, out), ==, length - half);
  g_assert_cmpint (fclose (out), ==, 0);
}
