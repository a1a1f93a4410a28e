/* test-desk-export.c - what leaves the window: files, paper, the clipboard
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define _GNU_SOURCE /* memmem() */
#include <signal.h>
#include <string.h>
#include <sys/resource.h>

#include "desk-keys.h"
#include "desk-window.h"
#include "desk/gw-print.h"

static GwApplication *application;

typedef struct
{
  Place     place;
  GwWindow *window;
} Desk;

static void
desk_init (Desk *desk)
{
  place_init (&desk->place, SAMPLE_STUDY);
  desk->window = open_window (application, desk->place.file);
  wait_until (!gw_document_is_busy (gw_window_get_document (desk->window)));
}

static void
desk_clear (Desk *desk)
{
  destroy_window (desk->window);
  place_clear (&desk->place);
}

static void
set_paper (const char *name)
{
  g_settings_set_string (gw_application_get_settings (application), "paper", name);
}

#define MEDIA_BOX "/MediaBox"

static const char *
find_bytes (const char *text,
            gsize       length,
            const char *wanted)
{
  return memmem (text, length, wanted, strlen (wanted));
}

/* What the deflated @data holds, as far as it goes; nothing if it is not deflated. */
static GBytes *
inflate (const char *data,
         gsize       length)
{
  g_autoptr (GZlibDecompressor) zlib = g_zlib_decompressor_new (G_ZLIB_COMPRESSOR_FORMAT_ZLIB);
  g_autoptr (GInputStream) packed =
    g_memory_input_stream_new_from_data (data, (gssize) length, NULL);
  g_autoptr (GInputStream) plain = g_converter_input_stream_new (packed, G_CONVERTER (zlib));
  GBytes *bytes = g_input_stream_read_bytes (plain, 1 << 20, NULL, NULL);

  return bytes != NULL ? bytes : g_bytes_new (NULL, 0);
}

/* The page's box, in plain text from older versions of cairo, in a packed stream from newer. */
static char *
media_box (const char *pdf,
           gsize       length)
{
  const char *end = pdf + length;
  const char *box = find_bytes (pdf, length, MEDIA_BOX);

  if (box != NULL)
    return g_strndup (box, MIN (200, (gsize) (end - box)));

  for (const char *at = pdf; (at = find_bytes (at, (gsize) (end - at), "stream\n")) != NULL;)
    {
      g_autoptr (GBytes) bytes = NULL;
      gsize       size;
      const char *text;

      at += strlen ("stream\n");
      bytes = inflate (at, (gsize) (end - at));
      text = g_bytes_get_data (bytes, &size);
      box = size > 0 ? find_bytes (text, size, MEDIA_BOX) : NULL;
      if (box != NULL)
        return g_strndup (box, MIN (200, size - (gsize) (box - text)));
    }

  return NULL;
}

/* "/MediaBox [ 0 0 841.889764 595.275591 ]", with more or fewer blanks. */
static void
read_page_size (const char *path,
                double     *width,
                double     *height)
{
  g_autofree char *contents = NULL, *box = NULL;
  gsize            length;
  const char      *at;
  char            *end;

  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  box = media_box (contents, length);
  g_assert_nonnull (box);
  at = strchr (box, '[');
  g_assert_nonnull (at);
  g_assert_cmpfloat (g_ascii_strtod (at + 1, &end), ==, 0.0);
  g_assert_cmpfloat (g_ascii_strtod (end, &end), ==, 0.0);
  *width = g_ascii_strtod (end, &end);
  *height = g_ascii_strtod (end, NULL);
}

/* A point: the sizes of paper are rounded to a millimetre or an eighth of an inch. */
static void
expect_pdf_on (const char    *path,
               const GwPaper *paper)
{
  double width, height;

  read_page_size (path, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, paper->width, 1.0);
  g_assert_cmpfloat_with_epsilon (height, paper->height, 1.0);
}

/* Read as any program that shows pictures would. Of an SVG the size in pixels is up to that. */
static void
expect_picture (GBytes        *bytes,
                const GwPaper *paper,
                gboolean       is_svg)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkTexture) picture = gdk_texture_new_from_bytes (bytes, &error);
  const double width = is_svg ? gdk_texture_get_height (picture) * paper->width / paper->height
                              : 2.0 * paper->width;

  g_assert_no_error (error);
  /* Both sides are rounded to pixels. */
  g_assert_cmpfloat_with_epsilon (gdk_texture_get_width (picture), width, 2.0);
}

static void
test_file (gconstpointer data)
{
  const GwPaper   *paper = gw_paper_find (data);
  Desk             desk;
  g_autofree char *pdf = NULL, *png = NULL, *svg = NULL, *contents = NULL;
  GFile           *files[3];
  g_autoptr (GBytes) png_bytes = NULL, svg_bytes = NULL;

  desk_init (&desk);
  set_paper (data);
  pdf = g_strconcat (desk.place.path, ".pdf", NULL);
  png = g_strconcat (desk.place.path, ".PNG", NULL);
  svg = g_strconcat (desk.place.path, " \303\251\330\271.svg", NULL);
  files[0] = g_file_new_for_path (pdf);
  files[1] = g_file_new_for_path (png);
  files[2] = g_file_new_for_path (svg);
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *name = g_file_get_parse_name (files[i]);

      gw_window_export (desk.window, files[i]);
      g_assert_true (g_str_has_suffix (text_in (desk.window, "foot"), name));
      g_assert_false (is_mapped (desk.window, "notice"));
    }

  expect_pdf_on (pdf, paper);
  png_bytes = g_file_load_bytes (files[1], NULL, NULL, NULL);
  expect_picture (png_bytes, paper, FALSE);
  svg_bytes = g_file_load_bytes (files[2], NULL, NULL, NULL);
  contents = g_strndup (g_bytes_get_data (svg_bytes, NULL), 200);
  g_assert_true (g_str_has_prefix (contents, "<?xml"));
  expect_picture (svg_bytes, paper, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    g_object_unref (files[i]);
  set_paper ("A4");
  desk_clear (&desk);
}

static guint
n_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
expect_refused (Desk       *desk,
                const char *path,
                const char *says)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);

  gw_window_export (desk->window, file);
  g_assert_true (is_mapped (desk->window, "notice"));
  g_assert_cmpstr (text_in (desk->window, "notice_title"), ==, "The sheet was not exported.");
  g_test_message ("%s", text_in (desk->window, "notice_reason"));
  g_assert_nonnull (strstr (text_in (desk->window, "notice_reason"), says));
  g_assert_cmpuint (n_files (desk->place.folder), ==, 1); /* the study and nothing beside it */
  push_button (desk->window, "Dis_miss");
  g_assert_false (is_mapped (desk->window, "notice"));
}

static void
test_refused (void)
{
  Desk             desk;
  g_autofree char *plain = NULL, *other = NULL, *below = NULL;
  g_autoptr (GFile) elsewhere = g_file_new_for_uri ("resource:///sheet.pdf");

  desk_init (&desk);
  plain = g_build_filename (desk.place.folder, "sheet", NULL);
  other = g_strconcat (plain, ".doc", NULL);
  below = g_build_filename (desk.place.path, "sheet.pdf", NULL);
  expect_refused (&desk, plain, ".pdf, .svg or .png");
  expect_refused (&desk, other, "sheet.doc");
  expect_refused (&desk, "no-such-folder/sheet.svg", "no-such-folder");
  expect_refused (&desk, below, "Not a directory");
  expect_refused (&desk, desk.place.folder, ".pdf, .svg or .png");
  expect_refused (&desk, "/proc/sheet.png", "/proc"); /* where nobody may write, not even root */

  gw_window_export (desk.window, elsewhere);
  g_assert_nonnull (strstr (text_in (desk.window, "notice_reason"), "of this computer"));
  desk_clear (&desk);
}

/* The disk is full half way: the message says so, a sheet from before is as it was. */
static void
test_disk_full (gconstpointer ending)
{
  Desk                 desk;
  struct rlimit        limit, tight;
  g_autofree char     *path = NULL, *after = NULL;
  __sighandler_t const handler = signal (SIGXFSZ, SIG_IGN);

  desk_init (&desk);
  path = g_strconcat (desk.place.folder, "/sheet.", ending, NULL);
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  tight = limit;
  tight.rlim_cur = 4096;
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &tight), ==, 0);
  expect_refused (&desk, path, path);
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);

  g_assert_true (g_file_set_contents (path, "from before", -1, NULL));
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &tight), ==, 0);
  {
    g_autoptr (GFile) file = g_file_new_for_path (path);

    gw_window_export (desk.window, file);
  }
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  signal (SIGXFSZ, handler);
  g_assert_true (is_mapped (desk.window, "notice"));
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, "from before");
  g_assert_cmpuint (n_files (desk.place.folder), ==, 2);
  desk_clear (&desk);
}

static GtkWindow *
dialog_of (GwWindow *window)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) candidate = g_list_model_get_item (windows, i);

      if (gtk_window_get_transient_for (candidate) == GTK_WINDOW (window) &&
          gtk_widget_get_mapped (GTK_WIDGET (candidate)))
        return candidate;
    }

  return NULL;
}

/* By the dialog, into the file that it proposes: beside the study, named after it. */
static void
test_print_dialog (void)
{
  Desk             desk;
  g_autofree char *path = NULL;
  GtkWindow       *dialog;

  desk_init (&desk);
  set_paper ("A3");
  path = g_build_filename (desk.place.folder, "Plank, Thin sheet.pdf", NULL);
  keys_to (GTK_WINDOW (desk.window));
  keys_press ("ctrl+p");
  wait_until (dialog_of (desk.window) != NULL);
  dialog = dialog_of (desk.window);
  keys_to (dialog);
  keys_press ("Tab Down");
  wait_until (gtk_widget_is_sensitive (find_button (GTK_WIDGET (dialog), "_Print")));
  keys_press ("alt+p");
  wait_until (g_file_test (path, G_FILE_TEST_EXISTS) && dialog_of (desk.window) == NULL);
  wait_for_ms (200); /* until it is closed */
  expect_pdf_on (path, gw_paper_find ("A3"));
  g_assert_false (is_mapped (desk.window, "notice"));
  set_paper ("A4");
  desk_clear (&desk);
}

static void
test_print (gconstpointer data)
{
  const GwPaper   *paper = gw_paper_find (data);
  Desk             desk;
  g_autofree char *path = NULL;
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autoptr (GError) error = NULL;

  desk_init (&desk);
  operation = gw_print_new (gw_document_get_evaluation (gw_window_get_document (desk.window)), 1,
                            paper, NULL);
  path = g_strconcat (desk.place.path, ".pdf", NULL);
  gtk_print_operation_set_allow_async (operation, FALSE);
  gtk_print_operation_set_export_filename (operation, path);
  g_assert_cmpint (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT,
                                            GTK_WINDOW (desk.window), &error),
                   ==, GTK_PRINT_OPERATION_RESULT_APPLY);
  g_assert_no_error (error);
  expect_pdf_on (path, paper);
  desk_clear (&desk);
}

static void
spliced_cb (GObject      *stream,
            GAsyncResult *result,
            gpointer      is_over)
{
  g_assert_cmpint (g_output_stream_splice_finish (G_OUTPUT_STREAM (stream), result, NULL), >, 0);
  *(gboolean *) is_over = TRUE;
}

typedef struct
{
  GInputStream *stream;
  gboolean      is_over;
} Pasted;

static void
pasted_cb (GObject      *clipboard,
           GAsyncResult *result,
           gpointer      data)
{
  Pasted *pasted = data;
  g_autoptr (GError) error = NULL;

  pasted->stream = gdk_clipboard_read_finish (GDK_CLIPBOARD (clipboard), result, NULL, &error);
  g_assert_no_error (error);
  pasted->is_over = TRUE;
}

static GBytes *
paste (GwWindow   *window,
       const char *mime)
{
  const char *mimes[] = { mime, NULL };
  Pasted      pasted = { NULL, FALSE };
  gboolean    is_over = FALSE;
  g_autoptr (GOutputStream) memory = g_memory_output_stream_new_resizable ();

  gdk_clipboard_read_async (gtk_widget_get_clipboard (GTK_WIDGET (window)), mimes,
                            G_PRIORITY_DEFAULT, NULL, pasted_cb, &pasted);
  wait_until (pasted.is_over);
  g_output_stream_splice_async (memory, pasted.stream,
                                G_OUTPUT_STREAM_SPLICE_CLOSE_SOURCE |
                                  G_OUTPUT_STREAM_SPLICE_CLOSE_TARGET,
                                G_PRIORITY_DEFAULT, NULL, spliced_cb, &is_over);
  wait_until (is_over);
  g_object_unref (pasted.stream);
  return g_memory_output_stream_steal_as_bytes (G_MEMORY_OUTPUT_STREAM (memory));
}

/* As a picture and as SVG, of every figure. */
static void
test_copy (void)
{
  static const char *const figures[] = { "sheet", "planform", "side", "stall", "masses",
                                         "summary", "polar", "greatest-lift", "pressure" };
  Desk                     desk;
  GdkClipboard            *clipboard;
  g_autoptr (GBytes) before = NULL;

  desk_init (&desk);
  clipboard = gtk_widget_get_clipboard (GTK_WIDGET (desk.window));
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    {
      g_autoptr (GBytes) png = NULL, svg = NULL;

      gdk_clipboard_set_content (clipboard, NULL);
      gtk_widget_activate_action (GTK_WIDGET (desk.window), "win.copy-figure", "s", figures[i]);
      /* Those of sections are made in a thread. */
      wait_until (gdk_content_formats_contain_mime_type (gdk_clipboard_get_formats (clipboard),
                                                         "image/png"));
      png = paste (desk.window, "image/png");
      svg = paste (desk.window, "image/svg+xml");
      expect_picture (png, gw_paper_find ("A4"), FALSE);
      expect_picture (svg, gw_paper_find ("A4"), TRUE);
      g_assert_true (before == NULL || !g_bytes_equal (before, png));
      g_clear_pointer (&before, g_bytes_unref);
      before = g_bytes_ref (png);
    }
  gdk_clipboard_set_content (clipboard, NULL);
  desk_clear (&desk);
}

int
main (int   argc,
      char *argv[])
{
  static const char *const papers[] = { "A4", "A3", "Letter" };
  static const char *const endings[] = { "pdf", "svg", "png" };

  gtk_test_init (&argc, &argv, NULL);
  application = gw_application_new (G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autofree char *file = g_strconcat ("/desk/export/file/", papers[i], NULL);
      g_autofree char *print = g_strconcat ("/desk/export/print/", papers[i], NULL);

      g_test_add_data_func (file, papers[i], test_file);
      g_test_add_data_func (print, papers[i], test_print);
    }
  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *path = g_strconcat ("/desk/export/disk-full/", endings[i], NULL);

      g_test_add_data_func (path, endings[i], test_disk_full);
    }
  g_test_add_func ("/desk/export/refused", test_refused);
  g_test_add_func ("/desk/export/print-dialog", test_print_dialog);
  g_test_add_func ("/desk/export/copy", test_copy);

  return g_test_run ();
}
