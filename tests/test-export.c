/* test-export.c - drawings as files
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "demos.h"
#include "report/gw-export.h"

typedef struct
{
  char      *folder, *path;
  GwDrawing *drawing;
} Export;

static void
export_init (Export *export,
             const char *file)
{
  g_autoptr (GwStudy) study = demo_load ("tailless");
  g_autoptr (GwEvaluation) evaluation = gw_evaluation_quick (study, NULL, NULL);
  g_autoptr (GwSheet) sheet = gw_sheet_new (evaluation, 0, FALSE, NULL);
  g_autoptr (GError) error = NULL;

  export->folder = g_dir_make_tmp ("gw-export-XXXXXX", &error);
  g_assert_no_error (error);
  export->path = g_build_filename (export->folder, file, NULL);
  export->drawing = gw_sheet_draw (sheet, GW_FIGURE_SUMMARY, 400.0, 300.0, FALSE);
}

static void
export_clear (Export *export)
{
  gw_drawing_free (export->drawing);
  g_unlink (export->path);
  /* An empty folder can be removed: nothing else was left in it. */
  g_assert_cmpint (g_rmdir (export->folder), ==, 0);
  g_free (export->path);
  g_free (export->folder);
}

static GBytes *
write_and_read (const Export *export,
                GwFileKind kind)
{
  g_autoptr (GError) error = NULL;
  char *contents = NULL;
  gsize length = 0;

  gw_export_drawing (export->drawing, 400.0, 300.0, "Title", kind, export->path, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (export->path, &contents, &length, NULL));
  return g_bytes_new_take (contents, length);
}

static void
assert_starts (GBytes     *bytes,
               const char *start,
               gsize       n)
{
  gsize         length = 0;
  gconstpointer data = g_bytes_get_data (bytes, &length);

  g_assert_cmpuint (length, >, n);
  g_assert_cmpmem (data, n, start, n);
}

static void
test_pdf (void)
{
  Export export;
  g_autofree char *old = g_strdup (g_getenv ("SOURCE_DATE_EPOCH"));
  g_autoptr (GBytes) first = NULL;
  g_autoptr (GBytes) second = NULL;
  g_autoptr (GBytes) later = NULL;

  export_init (&export, "figure.pdf");
  g_setenv ("SOURCE_DATE_EPOCH", "1700000000", TRUE);
  first = write_and_read (&export, GW_FILE_PDF);
  second = write_and_read (&export, GW_FILE_PDF);
  g_setenv ("SOURCE_DATE_EPOCH", "1800000000", TRUE);
  later = write_and_read (&export, GW_FILE_PDF);
  if (old != NULL)
    g_setenv ("SOURCE_DATE_EPOCH", old, TRUE);
  else
    g_unsetenv ("SOURCE_DATE_EPOCH");

  assert_starts (first, "%PDF-", 5);
  g_assert_true (g_bytes_equal (first, second));
  g_assert_false (g_bytes_equal (first, later));
  export_clear (&export);
}

/* An epoch that is no date is no reason to fail. */
static void
test_pdf_of_no_date (void)
{
  Export export;
  g_autofree char *old = g_strdup (g_getenv ("SOURCE_DATE_EPOCH"));
  g_autoptr (GBytes) bytes = NULL;

  g_setenv ("SOURCE_DATE_EPOCH", "99999999999999999999", TRUE);
  export_init (&export, "figure.pdf");
  bytes = write_and_read (&export, GW_FILE_PDF);
  if (old != NULL)
    g_setenv ("SOURCE_DATE_EPOCH", old, TRUE);
  else
    g_unsetenv ("SOURCE_DATE_EPOCH");

  assert_starts (bytes, "%PDF-", 5);
  export_clear (&export);
}

static void
on_start_element_cb (GMarkupParseContext *context,
                     const char          *name,
                     const char         **keys,
                     const char         **values,
                     gpointer             data,
                     GError             **error)
{
  GHashTable *seen = data;

  g_hash_table_add (seen, g_strdup (name));
}

static void
test_svg (void)
{
  const GMarkupParser parser = { .start_element = on_start_element_cb };
  Export export;
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (&parser, 0, seen, NULL);
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  const char *text;
  gsize       length = 0;

  export_init (&export, "figure.svg");
  bytes = write_and_read (&export, GW_FILE_SVG);
  text = g_bytes_get_data (bytes, &length);
  g_markup_parse_context_parse (context, text, (gssize) length, &error);
  g_assert_no_error (error);
  g_markup_parse_context_end_parse (context, &error);
  g_assert_no_error (error);
  g_assert_true (g_hash_table_contains (seen, "svg"));
  g_assert_true (g_hash_table_contains (seen, "path"));
  export_clear (&export);
}

static guint32
big_endian (const guint8 *bytes)
{
  return (guint32) bytes[0] << 24 | (guint32) bytes[1] << 16 | (guint32) bytes[2] << 8 | bytes[3];
}

/* Two pixels to the point; size and signature as in the PNG specification, 11.2.1. */
static void
test_png (void)
{
  Export export;
  g_autoptr (GBytes) bytes = NULL;
  const guint8 *data;

  export_init (&export, "figure.png");
  bytes = write_and_read (&export, GW_FILE_PNG);
  assert_starts (bytes, "\211PNG\r\n\032\n", 8);
  data = g_bytes_get_data (bytes, NULL);
  g_assert_cmpmem (data + 12, 4, "IHDR", 4);
  g_assert_cmpuint (big_endian (data + 16), ==, 800);
  g_assert_cmpuint (big_endian (data + 20), ==, 600);
  export_clear (&export);
}

static void
test_missing_folder (void)
{
  for (int kind = GW_FILE_PDF; kind <= GW_FILE_PNG; kind++)
    {
      Export export;
      g_autofree char *path = NULL;
      g_autoptr (GError) error = NULL;

      export_init (&export, "figure");
      path = g_build_filename (export.folder, "missing", "figure", NULL);
      g_assert_false (gw_export_drawing (export.drawing, 400.0, 300.0, "Title", (GwFileKind) kind,
                                         path, &error));
      g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
      g_assert_nonnull (strstr (error->message, path));
      export_clear (&export);
    }
}

/* A file that cannot be replaced stays as it was. */
static void
test_folder_in_the_way (void)
{
  Export export;
  g_autofree char *inside = NULL;
  g_autoptr (GError) error = NULL;

  export_init (&export, "figure.pdf");
  inside = g_build_filename (export.path, "kept", NULL);
  g_assert_cmpint (g_mkdir (export.path, 0700), ==, 0);
  g_assert_true (g_file_set_contents (inside, "as it was", -1, NULL));
  g_assert_false (gw_export_drawing (export.drawing, 400.0, 300.0, "Title", GW_FILE_PDF,
                                     export.path, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
  g_assert_true (g_file_test (inside, G_FILE_TEST_IS_REGULAR));
  g_assert_cmpint (g_unlink (inside), ==, 0);
  g_assert_cmpint (g_rmdir (export.path), ==, 0);
  export_clear (&export);
}

static void
test_file_kinds (void)
{
  const struct
  {
    const char *path;
    GwFileKind  kind;
  } good[] = {
    { "a.pdf", GW_FILE_PDF },
    { "a.svg", GW_FILE_SVG },
    { "a.png", GW_FILE_PNG },
    { "A.PDF", GW_FILE_PDF },
    { "x.png.svg", GW_FILE_SVG },
    { "dir.pdf/b.PnG", GW_FILE_PNG },
  };
  static const char *const bad[] = { "", "a", "pdf", "a.pdf ", "a.jpg", "a.pdf/b", "a.svgz" };
  GwFileKind               kind;

  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_assert_true (gw_file_kind_of (good[i].path, &kind, NULL));
      g_assert_cmpint (kind, ==, good[i].kind);
    }
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (gw_file_kind_of (bad[i], &kind, &error));
      g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
      g_assert_nonnull (strstr (error->message, ".svg"));
    }
}

/* Sizes of ISO 216 in millimetres and of ANSI letter in inches, landscape, in points. */
static void
test_papers (void)
{
  const struct
  {
    const char *name;
    double      width, height;
  } papers[] = {
    { "A4", 297.0 / 25.4 * 72.0, 210.0 / 25.4 * 72.0 },
    { "A3", 420.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0 },
    { "Letter", 11.0 * 72.0, 8.5 * 72.0 },
  };
  guint n = 0;

  while (gw_paper_get (n) != NULL)
    n++;
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (papers));
  for (guint i = 0; i < n; i++)
    {
      const GwPaper *paper = gw_paper_find (papers[i].name);

      g_assert_nonnull (paper);
      g_assert_cmpfloat_with_epsilon (paper->width, papers[i].width, 0.01); /* [pt], as written */
      g_assert_cmpfloat_with_epsilon (paper->height, papers[i].height, 0.01);
    }
  g_assert_true (gw_paper_find ("a4") == gw_paper_find ("A4"));
  g_assert_null (gw_paper_find ("A5"));
  g_assert_null (gw_paper_find (""));
}

static void
test_figure_names (void)
{
  GwFigureKind kind = GW_N_FIGURES;

  for (guint i = 0; i < GW_N_FIGURES; i++)
    {
      g_assert_true (gw_figure_kind_parse (gw_figure_kind_name ((GwFigureKind) i), &kind));
      g_assert_cmpuint (kind, ==, i);
    }
  g_assert_false (gw_figure_kind_parse ("", &kind));
  g_assert_false (gw_figure_kind_parse ("Sheet", &kind));
  g_assert_false (gw_figure_kind_parse (NULL, &kind));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/report/export/pdf", test_pdf);
  g_test_add_func ("/report/export/pdf-of-no-date", test_pdf_of_no_date);
  g_test_add_func ("/report/export/svg", test_svg);
  g_test_add_func ("/report/export/png", test_png);
  g_test_add_func ("/report/export/missing-folder", test_missing_folder);
  g_test_add_func ("/report/export/folder-in-the-way", test_folder_in_the_way);
  g_test_add_func ("/report/export/file-kinds", test_file_kinds);
  g_test_add_func ("/report/export/papers", test_papers);
  g_test_add_func ("/report/figure/names", test_figure_names);

  return g_test_run ();
}
