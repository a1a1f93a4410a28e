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
#include "study/gw-section-file.h"

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

/* Behaviour is a guess and says so; what follows from the mean line is left out. */
static void
test_behaviour (void)
{
  const GwOutline outline = naca ("2412");
  g_autoptr (GString) text = around (&outline, "Mine\n");
  g_autoptr (JsonNode) record = parse (text->str, NULL);
  g_autofree char *path = NULL;
  g_autoptr (GwStudy) study = use (record, &path);
  const GwStudySection    *section = (const GwStudySection *) gw_edit_record (study, path);
  const GwStudySectionRow *row = g_ptr_array_index (section->rows, 0);

  g_assert_cmpstr (section->id, ==, "mine");
  g_assert_nonnull (strstr (section->source, "NACA 2412"));
  g_assert_cmpint (section->cl_max_factor.origin, ==, GW_ORIGIN_GUESSED);
  g_assert_cmpfloat (section->cl_max_factor.low, <, 0.8);
  g_assert_true (isnan (row->slope_per_deg.value));
  g_assert_true (isnan (row->alpha_zero_deg.value));
  g_assert_true (isnan (row->cm_zero.value));
}

/* The nearest is found by shape, not taken as the first of the list. */
static void
test_nearest (void)
{
  static const char *const codes[] = { "0009", "0012", "2412", "4412" };

  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    {
      const GwOutline outline = naca (codes[i]);
      g_autoptr (GString) text = around (&outline, "Mine\n");
      g_autoptr (JsonNode) record = parse (text->str, NULL);
      const char *source =
        json_object_get_string_member (json_node_get_object (record), "source");

      g_assert_nonnull (strstr (source, codes[i]));
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
                  "not cross");
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
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX);
  g_clear_error (&error);

  g_assert_cmpint (g_remove (path), ==, 0);
  g_assert_null (gw_section_file_load (file, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
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
  g_test_add_func ("/study/section-file/nearest", test_nearest);
  g_test_add_func ("/study/section-file/bad", test_bad);
  g_test_add_func ("/study/section-file/random", test_random);
  g_test_add_func ("/study/section-file/load", test_load);

  return g_test_run ();
}
