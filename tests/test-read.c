/* test-read.c - what is no file, or too large for one, is refused before it is read
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "study/gw-read.h"
#include "study/gw-section-file.h"
#include "study/gw-study.h"

#define MOST 200000 /* several pieces */

typedef struct
{
  char  *folder, *path;
  GFile *file;
} Place;

static void
place_init (Place        *place,
            gconstpointer data)
{
  place->folder = g_dir_make_tmp ("gw-read-XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "study.gramwright", NULL);
  place->file = g_file_new_for_path (place->path);
}

static void
place_clear (Place        *place,
             gconstpointer data)
{
  g_remove (place->path);
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_object_unref (place->file);
  g_free (place->path);
  g_free (place->folder);
}

static void
assert_says (const GError *error,
             const char   *words)
{
  if (strstr (error->message, words) == NULL)
    g_error ("“%s” does not say “%s”", error->message, words);
}

/* By the reader, as a study and as a file of coordinates. */
static void
assert_refused (GFile      *file,
                const char *words)
{
  g_autoptr (GError) plain = NULL, as_study = NULL, as_section = NULL;
  char *text = NULL;
  gsize length = 0;

  g_assert_false (gw_read_file (file, MOST, &text, &length, &plain));
  g_assert_error (plain, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
  g_assert_null (text);
  assert_says (plain, words);

  g_assert_null (gw_study_load (file, NULL, &as_study));
  g_assert_error (as_study, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
  assert_says (as_study, words);

  g_assert_null (gw_section_file_open (file, &as_section));
  g_assert_error (as_section, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
  assert_says (as_section, words);
}

static void
test_whole (Place        *place,
            gconstpointer data)
{
  static const gsize lengths[] = { 0, 1, 65535, 65536, 65537, MOST };

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      g_autofree char *wanted = g_malloc (lengths[i] + 1), *text = NULL;
      g_autoptr (GError) error = NULL;
      gsize length = 1;

      for (gsize at = 0; at < lengths[i]; at++)
        wanted[at] = (char) (at * 7 % 251);
      g_assert_true (g_file_set_contents (place->path, wanted, (gssize) lengths[i], NULL));
      g_assert_true (gw_read_file (place->file, MOST, &text, &length, &error));
      g_assert_no_error (error);
      g_assert_cmpmem (text, length, wanted, lengths[i]);
      g_assert_cmpint (text[length], ==, '\0');
    }
}

static void
test_one_more (Place        *place,
               gconstpointer data)
{
  g_autofree char *full = g_strnfill (MOST + 1, 'x');
  g_autoptr (GError) error = NULL;
  char *text = NULL;
  gsize length = 0;

  g_assert_true (g_file_set_contents (place->path, full, -1, NULL));
  g_assert_false (gw_read_file (place->file, MOST, &text, &length, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
  assert_says (error, "too large");
}

/* Nothing but a length on the disk: the message has it, so it was not found out by reading. */
static void
test_oversize (Place        *place,
               gconstpointer data)
{
  const int file = g_open (place->path, O_CREAT | O_WRONLY, 0600);

  g_assert_cmpint (file, >=, 0);
  g_assert_cmpint (ftruncate (file, (off_t) 5000 * 1000 * 1000), ==, 0);
  g_assert_cmpint (close (file), ==, 0);
  assert_refused (place->file, "5.0\302\240GB");
}

/* Nobody writes into it: a reader that opened it would wait for ever. */
static void
test_pipe (Place        *place,
           gconstpointer data)
{
  g_assert_cmpint (mkfifo (place->path, 0600), ==, 0);
  assert_refused (place->file, "a device or a pipe");
}

static void
test_device (void)
{
  static const char *const paths[] = { "/dev/zero", "/dev/null" };

  for (guint i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GFile) file = g_file_new_for_path (paths[i]);

      assert_refused (file, "a device or a pipe");
    }
}

static void
test_folder (Place        *place,
             gconstpointer data)
{
  g_autoptr (GFile) folder = g_file_new_for_path (place->folder);

  assert_refused (folder, "it is a folder");
}

static void
test_links (Place        *place,
            gconstpointer data)
{
  g_autofree char *path = g_build_filename (place->folder, "link", NULL);
  g_autoptr (GFile) link = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  gsize            length = 0;

  g_assert_true (g_file_set_contents (place->path, "as it is", -1, NULL));
  g_assert_cmpint (symlink (place->path, path), ==, 0);
  g_assert_true (gw_read_file (link, MOST, &text, &length, &error));
  g_assert_cmpstr (text, ==, "as it is");

  g_assert_cmpint (g_remove (place->path), ==, 0);
  assert_refused (link, "is not there");
  g_assert_cmpint (g_remove (path), ==, 0);
}

static void
test_missing (Place        *place,
              gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  char *text = NULL;
  gsize length = 0;

  g_assert_false (gw_read_file (place->file, MOST, &text, &length, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_assert_null (text);
}

#define ADD(name, test) g_test_add ("/study/read/" name, Place, NULL, place_init, test, place_clear)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("whole", test_whole);
  ADD ("one-more", test_one_more);
  ADD ("oversize", test_oversize);
  ADD ("pipe", test_pipe);
  ADD ("folder", test_folder);
  ADD ("links", test_links);
  ADD ("missing", test_missing);
  g_test_add_func ("/study/read/device", test_device);
  return g_test_run ();
}
