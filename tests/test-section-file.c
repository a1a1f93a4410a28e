/* test-section-file.c - files of coordinates as people have them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "sample-study.h"
#include "study/gw-edit.h"
#include "study/gw-evaluation.h"
#include "study/gw-resolve.h"
#include "study/gw-section-file.h"
#include "study/gw-section-outline.h"

#define STEP 4 /* every fourth point of the outline is in the file */

static GwOutline
naca (const char *code)
{
  GwOutline outline;

  g_assert_cmpint (gw_outline_naca (code, &outline), ==, GW_OK);
  return outline;
}

/* What the engine makes of the same points, given to it by hand. */
static GwOutline
through_points (const GwOutline *outline)
{
  double    xy[4 * GW_OUTLINE_N];
  size_t    n = 0;
  GwOutline through;

  for (int i = GW_OUTLINE_N - 1; i >= 0; i -= STEP, n++)
    {
      xy[2 * n] = gw_outline_x ((gsize) i);
      xy[2 * n + 1] = outline->upper[i];
    }
  for (gsize i = STEP; i < GW_OUTLINE_N; i += STEP, n++)
    {
      xy[2 * n] = gw_outline_x (i);
      xy[2 * n + 1] = outline->lower[i];
    }
  g_assert_cmpint (gw_outline_points (n, xy, &through), ==, GW_OK);
  return through;
}

static void
add_point (GString *text,
           double   x,
           double   y)
{
  char x_text[G_ASCII_DTOSTR_BUF_SIZE], y_text[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_printf (text, "  %s   %s\n", g_ascii_formatd (x_text, sizeof x_text, "%.6f", x),
                          g_ascii_formatd (y_text, sizeof y_text, "%.6f", y));
}

/* Tail over the top to the nose and back. */
static GString *
around (const GwOutline *outline,
        const char      *name)
{
  GString *text = g_string_new (name);

  for (int i = GW_OUTLINE_N - 1; i >= 0; i -= STEP)
    add_point (text, gw_outline_x ((gsize) i), outline->upper[i]);
  for (int i = STEP; i < GW_OUTLINE_N; i += STEP)
    add_point (text, gw_outline_x ((gsize) i), outline->lower[i]);

  return text;
}

static GString *
sides (const GwOutline *outline,
       const char      *start)
{
  GString *text = g_string_new (start);

  for (gsize i = 0; i < GW_OUTLINE_N; i += STEP)
    add_point (text, gw_outline_x (i), outline->upper[i]);
  g_string_append_c (text, '\n');
  for (gsize i = 0; i < GW_OUTLINE_N; i += STEP)
    add_point (text, gw_outline_x (i), outline->lower[i]);

  return text;
}

static JsonNode *
parse (const char *text,
       GError    **error)
{
  return gw_section_file_parse (text, strlen (text), "file-name", error);
}

/* The sample study with the section in it, and its wing made of that. */
static GwStudy *
use (JsonNode *record,
     char    **path)
{
  g_autoptr (GwStudy) sample =
    gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) with = gw_edit_insert (sample, "sections", -1, record, path, &error);
  g_autoptr (JsonNode) id = NULL;
  GwStudy *wing;

  g_assert_no_error (error);
  id = json_node_init_string (json_node_alloc (), *path + strlen ("sections/"));
  wing = gw_study_edit (with, "surfaces/wing/stations/1/section", id, &error);
  g_assert_no_error (error);
  return wing;
}

/* Read, put into a study, computed with, and the outline is the one that was written. */
static void
expect_outline (const char      *text,
                const char      *name,
                const GwOutline *shape)
{
  const GwOutline wanted = through_points (shape);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) record = parse (text, &error);
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GwEvaluation) evaluation = NULL;
  g_autofree char      *path = NULL;
  const GwStudySection *section;
  g_autofree double    *xy = NULL;
  GwOutline             outline;

  g_assert_no_error (error);
  study = use (record, &path);
  section = (const GwStudySection *) gw_edit_record (study, path);
  g_assert_cmpstr (section->name, ==, name);
  g_assert_cmpint (section->shape, ==, GW_SHAPE_POINTS);

  xy = g_new (double, 2 * section->points->len);
  for (guint i = 0; i < section->points->len; i++)
    {
      const GwStudyPoint *point = g_ptr_array_index (section->points, i);

      xy[2 * i] = point->x.value;
      xy[2 * i + 1] = point->y.value;
    }
  g_assert_cmpint (gw_outline_points (section->points->len, xy, &outline), ==, GW_OK);
  /* Chords: the file has six decimals; a steep spline at the nose makes some more of them. */
  for (gsize i = 0; i < GW_OUTLINE_N; i++)
    {
      g_assert_cmpfloat_with_epsilon (outline.upper[i], wanted.upper[i], 5e-6);
      g_assert_cmpfloat_with_epsilon (outline.lower[i], wanted.lower[i], 5e-6);
    }

  evaluation = gw_evaluation_new (study, NULL, &error);
  g_assert_no_error (error);
  g_assert_nonnull (evaluation);
}

static void
test_around (void)
{
  const GwOutline outline = naca ("2412");
  g_autoptr (GString) text = around (&outline, "Wing of mine 12%\n");

  expect_outline (text->str, "Wing of mine 12%", &outline);
}

static void
test_no_name (void)
{
  const GwOutline outline = naca ("4415");
  g_autoptr (GString) text = around (&outline, "");

  expect_outline (text->str, "file-name", &outline);
}

static void
test_sides (void)
{
  const GwOutline outline = naca ("2412");
  g_autoptr (GString) counted = sides (&outline, "Tip\n  26.  26.\n\n");
  g_autoptr (GString) plain = sides (&outline, "Tip\n");

  expect_outline (counted->str, "Tip", &outline);
  expect_outline (plain->str, "Tip", &outline);
}

static GString *
replaced (const char *text,
          const char *from,
          const char *to)
{
  GString *copy = g_string_new (text);

  g_string_replace (copy, from, to, 0);
  return copy;
}

/* As they come from a spreadsheet, another system, another country. */
static void
test_forms (void)
{
  const GwOutline outline = naca ("0012");
  g_autoptr (GString) text = around (&outline, "Plain\n");
  g_autoptr (GString) ends = replaced (text->str, "\n", "\r\n");
  g_autoptr (GString) commas = replaced (text->str, "   ", ", ");
  g_autoptr (GString) tight = replaced (text->str, "   ", ",");
  g_autoptr (GString) decimals = replaced (text->str, ".", ",");
  g_autoptr (GString) semicolons = replaced (decimals->str, "   ", ";");
  g_autofree char *marked = g_strconcat ("\xef\xbb\xbf# measured\n\n", text->str, NULL);
  g_autofree char *encoded = NULL;

  expect_outline (ends->str, "Plain", &outline);
  expect_outline (commas->str, "Plain", &outline);
  expect_outline (tight->str, "Plain", &outline);
  expect_outline (decimals->str, "Plain", &outline);
  expect_outline (semicolons->str, "Plain", &outline);
  expect_outline (marked, "Plain", &outline);

  g_string_erase (text, 0, strlen ("Plain"));
  encoded = g_strconcat ("Fl\xfcgel", text->str, NULL); /* ISO 8859-1 */
  expect_outline (encoded, "Fl\xef\xbf\xbdgel", &outline);
}

static void
test_bottom_first (void)
{
  const GwOutline outline = naca ("2412");
  GString        *text = g_string_new ("Bottom\n");

  for (int i = GW_OUTLINE_N - 1; i >= 0; i -= STEP)
    add_point (text, gw_outline_x ((gsize) i), outline.lower[i]);
  for (int i = STEP; i < GW_OUTLINE_N; i += STEP)
    add_point (text, gw_outline_x ((gsize) i), outline.upper[i]);
  expect_outline (text->str, "Bottom", &outline);
  g_string_free (text, TRUE);
}

static GwOutline
thicker (GwOutline outline,
         double    factor)
{
  for (guint i = 0; i < GW_OUTLINE_N; i++)
    {
      outline.upper[i] *= factor;
      outline.lower[i] *= factor;
    }
  return outline;
}

/* The record says what is known; behaviour is guessed where it is needed and until it is
 * computed, from the nearest by shape, not the first of the list. Nobody else has outlines
 * thicker by 0.3 %, so no cache has their polars. */
static void
test_behaviour (void)
{
  static const char *const codes[] = { "0009", "0012", "2412", "4412" };

  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    {
      const GwOutline outline = thicker (naca (codes[i]), 1.003);
      g_autoptr (GString) text = around (&outline, "Mine\n");
      g_autoptr (JsonNode) record = parse (text->str, NULL);
      g_autofree char *path = NULL;
      g_autoptr (GwStudy) study = use (record, &path);
      g_autoptr (GPtrArray) problems = gw_problems_new ();
      g_autoptr (GwStudy) resolved = gw_study_resolve (study, 0, problems);
      const GwStudySection *section = (const GwStudySection *) gw_edit_record (study, path);

      g_assert_cmpstr (section->id, ==, "mine");
      g_assert_cmpstr (section->source, ==, "Outline: from a file.");
      g_assert_cmpuint (section->rows->len, ==, 0);

      section = (const GwStudySection *) gw_edit_record (resolved, path);
      g_assert_nonnull (strstr (section->source, codes[i]));
      g_assert_cmpuint (section->rows->len, >, 4);
      g_assert_cmpfloat (section->cl_max_factor.high - section->cl_max_factor.low, >, 0.3);
    }
}

static void
expect_refusal (const char *text,
                const char *wanted)
{
  g_autoptr (GError) error = NULL;
  JsonNode *record = parse (text, &error);

  g_assert_null (record);
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX);
  if (strstr (error->message, wanted) == NULL)
    g_error ("“%s” does not say “%s”", error->message, wanted);
}

static void
test_bad (void)
{
  const GwOutline outline = naca ("2412");
  g_autoptr (GString) text = around (&outline, "Mine\n");
  g_autoptr (GString) word = g_string_new (text->str);
  g_autoptr (GString) three = g_string_new (text->str);
  g_autoptr (GString) counted = sides (&outline, "Mine\n 26 25\n");
  const char *second = strchr (strchr (text->str, '\n') + 1, '\n') + 1;

  g_string_insert (word, second - text->str, "end of the top\n");
  g_string_insert (three, second - text->str, "0.9 0.1 0.2\n");
  expect_refusal ("", "0 points");
  expect_refusal ("Mine\n", "0 points");
  expect_refusal ("Mine\n1 0\n0 0\n1 0\n", "3 points");
  expect_refusal ("{ \"format\": 1,\n  \"name\": \"Plank\" }\n", "line 2");
  expect_refusal (word->str, "line 3");
  expect_refusal (word->str, "“end of the top”");
  expect_refusal (three->str, "line 3");
  expect_refusal (counted->str, "line 2: it says 26 and 25 points, but 52 follow");
  expect_refusal ("Mine\n1 nan\n", "line 2");
  expect_refusal ("Mine\n1 1e9\n", "line 2");
  expect_refusal ("Mine\n1 0x2\n", "line 2");
  expect_refusal ("a\n1 0\n.8 .1\n.6 -.1\n.4 .1\n.2 -.1\n0 0\n.2 .1\n.5 -.2\n.7 .3\n1 0\n",
                  "crosses itself");
  expect_refusal ("a\n1 0\n1 0\n1 0\n1 0\n1 0\n1 0\n1 0\n1 0\n1 0\n1 0\n", "in one place");
  expect_refusal ("1 0\n.9 .02\n.8 .04\n.6 .06\n.4 .08\n.2 .07\n.1 .05\n.05 .03\n.02 .02\n0 0\n",
                  "one side of the outline is missing");
  expect_refusal ("1 0\n.8 .05\n.6 .07\n.4 .08\n.2 .07\n.1 .05\n0 0\n.1 -.03\n.2 -.03\n.7 -.02\n",
                  "its ends, in lines 1 and 10, are 35 % of the chord apart");
  expect_refusal ("1 0\n.8 .05\n.4 .07\n.6 .08\n.2 .07\n.1 .05\n0 0\n.1 -.03\n.2 -.03\n.7 -.02\n"
                  "1 0\n",
                  "lines 3 and 4");
  expect_refusal ("100 0\n80 .05\n60 .07\n40 .08\n20 .07\n10 .05\n0 0\n10 -.03\n20 -.03\n70 -.02\n"
                  "100 0\n",
                  "the same unit");
}

static GwSectionFile *
read_file (const char *text)
{
  g_autoptr (GError) error = NULL;
  GwSectionFile *file = gw_section_file_read (text, strlen (text), "file-name", &error);

  g_assert_no_error (error);
  return file;
}

/* What was set right is told; a file in order has nothing to tell. */
static void
expect_remark (const char *text,
               const char *wanted)
{
  g_autoptr (GwSectionFile) file = read_file (text);
  g_autoptr (GPtrArray) remarks = gw_section_file_remarks (file);

  g_assert_cmpuint (remarks->len, ==, wanted != NULL);
  if (wanted != NULL && strstr (g_ptr_array_index (remarks, 0), wanted) == NULL)
    g_error ("“%s” does not say “%s”", (char *) g_ptr_array_index (remarks, 0), wanted);
}

static void
test_orders (void)
{
  const GwOutline outline = naca ("0010");
  g_autoptr (GString) text = around (&outline, "Mine\n");
  g_autoptr (GString) mirrored = g_string_new ("");
  g_autoptr (GString) turned = g_string_new ("");
  g_autofree char *doubled = NULL;
  const char      *second = strchr (strchr (text->str, '\n') + 1, '\n') + 1;
  g_autofree char *line = g_strndup (second, (gsize) (strchr (second, '\n') + 1 - second));

  for (int i = GW_OUTLINE_N - 1; i >= 0; i -= STEP)
    {
      const double x = gw_outline_x ((gsize) i), y = outline.upper[i];

      add_point (mirrored, 1.0 - x, y);
      add_point (turned, x - 0.05 * y, y + 0.05 * (1.0 - x));
    }
  for (int i = STEP; i < GW_OUTLINE_N; i += STEP)
    {
      const double x = gw_outline_x ((gsize) i), y = outline.lower[i];

      add_point (mirrored, 1.0 - x, y);
      add_point (turned, x - 0.05 * y, y + 0.05 * (1.0 - x));
    }
  doubled = g_strdup_printf ("%.*s%s%s", (int) (second - text->str), text->str, line, second);

  expect_remark (text->str, NULL);
  expect_remark (doubled, "1 point stood there twice running, in line 4");
  expect_remark (mirrored->str, "mirrored");
  expect_remark (turned->str, "2.9° nose up"); /* the angle whose tangent is 0.05 */
}

static void
test_comments (void)
{
  const GwOutline outline = naca ("2412");
  g_autoptr (GString) text = around (&outline, "! scanned\nMine\n% two\n// three\n*\n");

  g_string_append (text, "# the end\n");
  g_string_replace (text, "0.000000   0.000000\n", "0.000000   0.000000 # nose\n", 0);
  g_assert_nonnull (strstr (text->str, "# nose"));
  expect_outline (text->str, "Mine", &outline);
}

/* Smoothed as asked: the record makes the smooth outline again, to the 1e-6 of its numbers and
 * what splines between 201 points add; its source says how far it is from the file's. */
static void
test_smoothed (void)
{
  const GwOutline outline = naca ("2412");
  GwOutline       noisy = outline, made;
  g_autoptr (GString) text = NULL;
  g_autoptr (GwSectionFile) file = NULL;
  g_autoptr (JsonNode) record = NULL;
  g_autoptr (GwStudy) study = NULL;
  g_autofree char      *path = NULL, *change = NULL;
  const GwStudySection *section;
  double                after = 0.0, before = 0.0;

  for (gsize i = 2 * STEP; i + 2 * STEP < GW_OUTLINE_N; i++)
    noisy.upper[i] += i % (2 * STEP) == 0 ? 1.5e-3 : -1.5e-3;
  text = around (&noisy, "Scan\n");
  file = read_file (text->str);
  record = gw_section_file_record (file, TRUE);
  study = use (record, &path);
  section = (const GwStudySection *) gw_edit_record (study, path);
  change = gw_section_file_change (file);
  g_assert_nonnull (strstr (section->source, change));
  g_assert_nonnull (strstr (change, "on top"));

  g_assert_cmpint (gw_section_outline (section, &made), ==, GW_OK);
  for (gsize i = 0; i < GW_OUTLINE_N; i++)
    {
      g_assert_cmpfloat_with_epsilon (made.upper[i], file->smooth.upper[i], 1e-5);
      g_assert_cmpfloat_with_epsilon (made.lower[i], file->smooth.lower[i], 1e-5);
      before += fabs (file->outline.upper[i] - outline.upper[i]);
      after += fabs (file->smooth.upper[i] - outline.upper[i]);
    }
  g_assert_cmpfloat (after, <, 0.5 * before);
  g_assert_cmpfloat (fabs (file->change.greatest), <, 4e-3);
}

static void
test_random (void)
{
  static const char letters[] = "0123456789.,-+e \t\n\r;#xN\xff";

  for (int k = 0; k < 3000; k++)
    {
      char      text[200];
      JsonNode *record;

      for (gsize i = 0; i < sizeof text; i++)
        text[i] = letters[g_test_rand_int_range (0, sizeof letters)]; /* NUL as well */
      record = gw_section_file_parse (text, sizeof text, "noise", NULL);
      g_clear_pointer (&record, json_node_unref);
    }
}

static void
test_load (void)
{
  const GwOutline outline = naca ("2412");
  g_autoptr (GString) text = around (&outline, "");
  g_autofree char *folder = g_dir_make_tmp ("gw-section-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "my wing.v2.dat", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autofree char *large = g_strnfill (1024 * 1024 + 1, ' ');
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) record = NULL;

  g_assert_true (g_file_set_contents (path, text->str, -1, NULL));
  record = gw_section_file_load (file, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (json_object_get_string_member (json_node_get_object (record), "name"), ==,
                   "my wing.v2");

  g_assert_true (g_file_set_contents (path, large, -1, NULL));
  g_assert_null (gw_section_file_load (file, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
  g_clear_error (&error);

  g_assert_cmpint (g_remove (path), ==, 0);
  g_assert_null (gw_section_file_load (file, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

/* A thin double wedge can be flown, but not computed: its source says why, and whose lift it
 * has. */
static void
test_sharp (void)
{
  g_autoptr (GString) text = g_string_new ("Double wedge\n");
  g_autoptr (JsonNode) record = NULL;
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GwEvaluation) evaluation = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char      *path = NULL;
  const GwStudySection *section;

  for (int i = -20; i <= 20; i++)
    add_point (text, abs (i) * 0.05, (i < 0 ? 0.06 : -0.06) * (0.5 - fabs (abs (i) * 0.05 - 0.5)));
  record = parse (text->str, &error);
  g_assert_no_error (error);
  study = use (record, &path);
  evaluation = gw_evaluation_new (study, NULL, &error);
  g_assert_no_error (error);
  g_assert_false (evaluation->is_provisional);

  section = (const GwStudySection *) gw_edit_record (
    gw_evaluation_outcome (evaluation, 0)->assembly->study, path);
  g_assert_nonnull (strstr (section->source, "Not computed: its nose is sharp"));
  g_assert_nonnull (strstr (section->source, "guessed, that of"));
  g_assert_cmpint (section->cl_max_factor.origin, ==, GW_ORIGIN_GUESSED);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/section-file/around", test_around);
  g_test_add_func ("/study/section-file/no-name", test_no_name);
  g_test_add_func ("/study/section-file/sides", test_sides);
  g_test_add_func ("/study/section-file/forms", test_forms);
  g_test_add_func ("/study/section-file/bottom-first", test_bottom_first);
  g_test_add_func ("/study/section-file/behaviour", test_behaviour);
  g_test_add_func ("/study/section-file/orders", test_orders);
  g_test_add_func ("/study/section-file/comments", test_comments);
  g_test_add_func ("/study/section-file/smoothed", test_smoothed);
  g_test_add_func ("/study/section-file/bad", test_bad);
  g_test_add_func ("/study/section-file/random", test_random);
  g_test_add_func ("/study/section-file/load", test_load);
  g_test_add_func ("/study/section-file/sharp", test_sharp);

  return g_test_run ();
}
