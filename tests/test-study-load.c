/* test-study-load.c - good files come back to the letter, bad ones say where and why
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gstdio.h>
#include <string.h>

#include "sample-study.h"
#include "study/gw-json.h"
#include "study/gw-study.h"

static GwStudy *
parse (const char *text)
{
  g_autoptr (GError) error = NULL;
  GwStudy *study = gw_study_parse (text, strlen (text), NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (study);
  return study;
}

/* The sample is written as the program writes, so it must come out as it went in. */
static void
test_round_trip (void)
{
  g_autoptr (GwStudy) study = parse (SAMPLE_STUDY);
  g_autofree char *first = gw_study_text (study);
  g_autoptr (GwStudy) again = parse (first);
  g_autofree char *second = gw_study_text (again);

  g_assert_cmpstr (first, ==, SAMPLE_STUDY);
  g_assert_cmpstr (second, ==, first);
  g_assert_true (gw_record_equal (&study->record, &again->record));
}

#define FORTY "a name of forty characters, all counted."

typedef struct
{
  const char *name;
  const char *from, *to; /* in the sample; from NULL: the whole text */
  int         code;
  const char *says; /* stands in the message: the place and the reason */
} Bad;

#define SYNTAX  GW_STUDY_ERROR_SYNTAX
#define VERSION GW_STUDY_ERROR_VERSION
#define CONTENT GW_STUDY_ERROR_CONTENT

static const Bad bad_files[] = {
  { "empty", NULL, "", SYNTAX, "" },
  { "blank", NULL, " \n\t ", SYNTAX, "" },
  { "not-json", NULL, "mass = 12", SYNTAX, "begins with {" },
  { "array", NULL, "[1, 2]", SYNTAX, "begins with {" },
  { "number", NULL, "42", SYNTAX, "begins with {" },
  { "null", NULL, "null", SYNTAX, "begins with {" },
  { "two-documents", NULL, "{}[]", SYNTAX, "after the end" },
  { "two-objects", NULL, "{\"format\": 1} {\"format\": 1}", SYNTAX, "after the end" },
  { "cut-off", NULL, "{\"format\": 1, \"options\": [", SYNTAX, "column 27: the file ends" },
  { "stray-close", NULL, "{\"format\": 1]", SYNTAX, "] cannot close" },
  { "trailing-comma", "\"format\": 1,", "\"format\": 1,,", SYNTAX, "a key in double quotes" },
  { "no-quotes", "\"movable\"", "movable", SYNTAX, "“movable: " },
  { "single-quotes", "\"Plank\"", "'Plank'", SYNTAX, "double quotes" },
  { "comment", "\"format\": 1,", "\"format\": 1, /* \" */", SYNTAX, "comment" },
  { "half-pair", "\"Plank\"", "\"P\\ud800ank\"", SYNTAX, "line 3, column 13: an escape" },
  { "other-half", "\"Plank\"", "\"P\\udc00ank\"", SYNTAX, "line 3, column 13: an escape" },
  { "no-character", "\"Plank\"", "\"P\\u0000ank\"", SYNTAX, "line 3, column 13: an escape" },
  { "short-escape", "\"Plank\"", "\"P\\u12ank\"", SYNTAX, "line 3, column 13: an escape" },
  { "key-twice", "\"format\": 1,", "\"format\": 1, \"format\": 1,", SYNTAX, "twice" },
  { "no-format", NULL, "{\"name\": \"x\"}", VERSION, "format" },
  { "newer-format", "\"format\": 1", "\"format\": 2", VERSION, "newer" },
  { "format-text", "\"format\": 1", "\"format\": \"1\"", CONTENT, "format" },
  { "format-half", "\"format\": 1", "\"format\": 0.5", CONTENT, "format" },
  { "large-exponent", "\"x_mm\": 40", "\"x_mm\": 1e999", CONTENT, "equipment/battery/x_mm" },
  { "huge-length", "\"x_mm\": 40", "\"x_mm\": 1e83", CONTENT, "equipment/battery/x_mm" },
  { "negative-chord", "{ \"y_mm\": 600, \"chord_mm\": 200 }",
    "{ \"y_mm\": 600, \"chord_mm\": -200 }", CONTENT, "surfaces/wing/stations/2/chord_mm" },
  { "zero-chord", "{ \"y_mm\": 600, \"chord_mm\": 200 }", "{ \"y_mm\": 600, \"chord_mm\": 0 }",
    CONTENT, "from 2 to 5000 mm" },
  { "chord-text", "{ \"y_mm\": 600, \"chord_mm\": 200 }",
    "{ \"y_mm\": 600, \"chord_mm\": \"200\" }", CONTENT, "a number is wanted" },
  { "chord-null", "{ \"y_mm\": 600, \"chord_mm\": 200 }", "{ \"y_mm\": 600, \"chord_mm\": null }",
    CONTENT, "a number is wanted" },
  { "chord-missing", "{ \"y_mm\": 600, \"chord_mm\": 200 }", "{ \"y_mm\": 600 }", CONTENT,
    "chord_mm" },
  { "chord-list", "{ \"y_mm\": 600, \"chord_mm\": 200 }", "{ \"y_mm\": 600, \"chord_mm\": [200] }",
    CONTENT, "stations/2/chord_mm" },
  { "negative-mass", "\"value\": 180", "\"value\": -180", CONTENT, "equipment/battery/mass_g" },
  { "negative-spread", "\"spread\": 6", "\"spread\": -6", CONTENT, "spread" },
  { "spread-text", "\"spread\": 6", "\"spread\": \"6\"", CONTENT, "spread" },
  { "spread-alone", "\"value\": 180, ", "", CONTENT, "value and spread" },
  { "number-key", "\"spread\": 6", "\"sd\": 6", CONTENT, "“sd”" },
  { "origin-word", "\"catalogue\"", "\"advert\"", CONTENT, "origin" },
  { "range-order", "\"low\": 280", "\"low\": 310", CONTENT, "must rise" },
  { "range-part", "\"low\": 280, ", "", CONTENT, "low, typical and high" },
  { "unknown-word", "\"kind\": \"battery\"", "\"kind\": \"cell\"", CONTENT, "battery, servo" },
  { "flag-number", "\"role\": \"wing\",", "\"role\": \"wing\", \"mirrored\": 1,", CONTENT,
    "true or false" },
  { "name-number", "\"name\": \"Plank\"", "\"name\": 7", CONTENT, "text in quotes" },
  { "name-long", "\"Plank\"", "\"" FORTY FORTY FORTY FORTY FORTY "!\"", CONTENT,
    "longer than 200" },
  { "list-object", "\"equipment\": [", "\"legs\": {}, \"equipment\": [", CONTENT, "legs" },
  { "list-of-numbers", "\"equipment\": [", "\"legs\": [1], \"equipment\": [", CONTENT, "legs/1" },
  { "part-list", "\"targets\": {", "\"day\": [], \"targets\": {", CONTENT, "day" },
  { "duplicate-id", "\"id\": \"thick\"", "\"id\": \"thin\"", CONTENT, "used twice" },
  { "id-missing", "\"id\": \"battery\",", "", CONTENT, "“id”" },
  { "id-capital", "\"id\": \"battery\"", "\"id\": \"Battery\"", CONTENT, "small letters" },
  { "id-empty", "\"id\": \"battery\"", "\"id\": \"\"", CONTENT, "small letters" },
  { "id-slash", "\"id\": \"battery\"", "\"id\": \"a/b\"", CONTENT, "small letters" },
  { "dangling-section", "\"section\": \"flat\"", "\"section\": \"flut\"", CONTENT,
    "surfaces/wing/stations/1/section" },
  { "dangling-material", "\"material\": \"sheet\"", "\"material\": \"sheat\"", CONTENT,
    "builds/1/folded_sheet/material" },
  { "dangling-movable", "\"movable\": \"battery\"", "\"movable\": \"motor\"", CONTENT, "movable" },
  { "dangling-surface", "\"surface\": \"wing\"", "\"surface\": \"tail\"", CONTENT,
    "builds/1/surface" },
  { "no-section", ", \"section\": \"flat\"", "", CONTENT, "no section" },
  { "no-material", "\"material\": \"sheet\", ", "", CONTENT, "builds/1" },
  { "no-areal", "\"areal_g_m2\": { \"low\": 280, \"typical\": 300, \"high\": 340 }",
    "\"density_kg_m3\": 40", CONTENT, "areal_g_m2" },
  { "no-options", NULL, "{\"format\": 1}", CONTENT, "options" },
  { "no-wing", "\"role\": \"wing\"", "\"role\": \"canard\"", CONTENT, "role" },
  { "same-place", "{ \"y_mm\": 600, \"chord_mm\": 200 }", "{ \"y_mm\": 0, \"chord_mm\": 200 }",
    CONTENT, "surfaces/wing" },
  { "bay-turned", "\"bay_to_mm\": 160", "\"bay_to_mm\": -160", CONTENT, "equipment/battery" },
  { "bay-half", ",\n      \"bay_to_mm\": 160", "", CONTENT, "both ends" },
  { "re-falls", "\"re\": 300000", "\"re\": 30000", CONTENT, "must rise" },
  { "naca-digits", "\"code\": \"2412\"", "\"code\": \"24x2\"", CONTENT, "sections/flat" },
  { "change-nowhere", "\"equipment/battery/x_mm\": 10", "\"equipment/battery/mass\": 10", CONTENT,
    "options/thick/changes/equipment/battery/mass" },
  { "change-range", "\"equipment/battery/x_mm\": 10", "\"equipment/battery/mass_g\": -1", CONTENT,
    "options/thick/changes/equipment/battery/mass_g" },
  { "minus-sign", "\"equipment/battery/x_mm\": 10", "\"equipment/battery/mass_g\": -1", CONTENT,
    "\342\210\2221 is out of range" },
  { "change-option", "\"equipment/battery/x_mm\": 10", "\"options/thin/name\": \"x\"", CONTENT,
    "not this" },
  { "changes-list",
    "\"changes\": {\n        \"materials/sheet/areal_g_m2\": 400,\n        "
    "\"equipment/battery/x_mm\": 10\n      }",
    "\"changes\": [1]", CONTENT, "options/thick/changes" },
};

static void
test_bad (gconstpointer data)
{
  const Bad       *bad = data;
  g_autofree char *text =
    bad->from != NULL ? sample_replace (SAMPLE_STUDY, bad->from, bad->to) : g_strdup (bad->to);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_parse (text, strlen (text), NULL, &error);

  g_assert_null (study);
  g_assert_error (error, GW_STUDY_ERROR, bad->code);
  if (strstr (error->message, bad->says) == NULL)
    g_error ("“%s” does not say “%s”", error->message, bad->says);
}

/* json-glib 1.6 overflows its stack on this; it must be told before it is parsed. */
static void
test_deep_nesting (void)
{
  g_autoptr (GString) text = g_string_new ("{\"format\": 1, \"note\": ");
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < 200000; i++)
    g_string_append_c (text, '[');
  g_assert_null (gw_study_parse (text->str, text->len, NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX);
  g_assert_nonnull (strstr (error->message, "nested"));
}

/* Quotes that json-glib reads otherwise than the count of brackets must not hide any. */
static void
test_hidden_nesting (void)
{
  static const char *const starts[] = {
    "{\"format\": 1, \"name\": '\"', \"note\": ",
    "{\"format\": 1, /* \" */ \"note\": ",
    "{\"format\": 1, // \"\n \"note\": ",
    "{\"format\": 1, # \"\n \"note\": ",
    "{\"format\": 1, \"name\": \"\\\"\", \"note\": ",
    "{\"format\": 1, \"name\": \"\\\\\", \"note\": ",
  };

  for (guint s = 0; s < G_N_ELEMENTS (starts); s++)
    {
      g_autoptr (GString) text = g_string_new (starts[s]);
      g_autoptr (GError) error = NULL;

      for (int i = 0; i < 200000; i++)
        g_string_append_c (text, '[');
      g_assert_null (gw_study_parse (text->str, text->len, NULL, &error));
      g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX);
    }
}

/* Characters beyond the first 65536 come as two escapes; a mark of byte order may lead. */
static void
test_escapes_and_mark (void)
{
  g_autofree char *named = sample_replace (SAMPLE_STUDY, "\"Plank\"",
                                           "\"\\ud83d\\uDEE9 \\u00b1\\n\"");
  g_autofree char *text = g_strconcat ("\357\273\277", named, NULL);
  g_autoptr (GwStudy) study = parse (text);

  g_assert_cmpstr (study->name, ==, "\360\237\233\251 \302\261\n");
}

static void
test_not_utf8 (void)
{
  const char text[] = "{\"format\": 1, \"name\": \"\xff\xfe\"}";
  g_autoptr (GError) error = NULL;

  g_assert_null (gw_study_parse (text, sizeof text - 1, NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX);
}

static void
test_too_large (void)
{
  const gsize      n = GW_JSON_MAX_SIZE + 1;
  g_autofree char *text = g_strnfill (n, ' ');
  g_autoptr (GError) error = NULL;

  g_assert_null (gw_study_parse (text, n, NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX);
  g_assert_nonnull (strstr (error->message, "MB"));
}

static void
test_all_problems_are_listed (void)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autofree char *one = sample_replace (SAMPLE_STUDY, "\"value\": 180", "\"value\": -180");
  g_autofree char *two = sample_replace (one, "\"x_mm\": 40", "\"x_mm\": true");
  g_autoptr (GError) error = NULL;

  g_assert_null (gw_study_parse (two, strlen (two), problems, &error));
  g_assert_cmpuint (gw_problems_count (problems), ==, 2);
  g_assert_nonnull (strstr (error->message, "1 more"));
}

/* A key of a newer program is told and kept, in every copy and on every save. */
static void
test_unknown_keys_are_kept (void)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autofree char *text = sample_replace (
    SAMPLE_STUDY, "\"format\": 1,", "\"format\": 1, \"mood\": [1.5, {\"a\": null}], \"x\": 1e-7,");
  g_autoptr (GwStudy) study = gw_study_parse (text, strlen (text), problems, NULL);
  g_autoptr (GwStudy) copy = NULL;
  g_autofree char *saved = NULL, *copied = NULL;

  g_assert_nonnull (study);
  g_assert_cmpuint (problems->len, ==, 2);
  g_assert_cmpuint (gw_problems_count (problems), ==, 0);
  copy = gw_study_copy (study);
  saved = gw_study_text (study);
  copied = gw_study_text (copy);
  g_assert_nonnull (strstr (saved, "\"mood\": [\n    1.5,\n    {\n      \"a\": null\n    }\n  ]"));
  g_assert_nonnull (strstr (saved, "\"x\": 1e-07"));
  g_assert_cmpstr (saved, ==, copied);
}

/* Of a number too large for this program as well. */
static void
test_unknown_infinity_is_kept (void)
{
  g_autofree char *text = sample_replace (SAMPLE_STUDY, "\"format\": 1,",
                                          "\"format\": 1, \"x\": [1e999, -1e999],");
  g_autoptr (GwStudy) study = parse (text);
  g_autofree char *saved = gw_study_text (study);
  g_autoptr (GwStudy) back = parse (saved);

  g_assert_true (gw_record_equal (&study->record, &back->record));
}

static void
test_save_and_load (void)
{
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "gw-save-XXXXXX", NULL);
  const int        fd = g_mkstemp (path);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GwStudy) study = parse (SAMPLE_STUDY);
  g_autoptr (GwStudy) back = NULL;
  g_autoptr (GError) error = NULL;

  g_close (fd, NULL);
  g_assert_true (gw_study_save (study, file, &error));
  g_assert_no_error (error);
  back = gw_study_load (file, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (gw_record_equal (&study->record, &back->record));
  g_assert_true (g_file_delete (file, NULL, NULL));
}

/* What cannot be read back is not written: a value that slipped past an edit. */
static void
test_save_refuses_what_does_not_read_back (void)
{
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "gw-save-XXXXXX", NULL);
  const int        fd = g_mkstemp (path);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GwStudy) study = parse (SAMPLE_STUDY);
  g_autofree char *contents = NULL;
  g_autoptr (GError) error = NULL;
  GwStudyItem *battery = g_ptr_array_index (study->equipment, 0);

  g_close (fd, NULL);
  g_assert_true (g_file_set_contents (path, "as it was", -1, NULL));
  gw_number_set (&battery->x_mm, 1e83);
  g_assert_false (gw_study_save (study, file, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
  g_assert_true (g_file_get_contents (path, &contents, NULL, NULL));
  g_assert_cmpstr (contents, ==, "as it was");
  g_assert_true (g_file_delete (file, NULL, NULL));
}

static void
test_missing_file (void)
{
  g_autoptr (GFile) file = g_file_new_for_path ("no-such-folder/no-such-study.gramwright");
  g_autoptr (GError) error = NULL;

  g_assert_null (gw_study_load (file, NULL, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE);
  g_assert_nonnull (strstr (error->message, "no-such-study"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/load/round-trip", test_round_trip);
  for (guint i = 0; i < G_N_ELEMENTS (bad_files); i++)
    {
      g_autofree char *path = g_strdup_printf ("/study/load/bad/%s", bad_files[i].name);

      g_test_add_data_func (path, &bad_files[i], test_bad);
    }
  g_test_add_func ("/study/load/deep-nesting", test_deep_nesting);
  g_test_add_func ("/study/load/hidden-nesting", test_hidden_nesting);
  g_test_add_func ("/study/load/escapes-and-mark", test_escapes_and_mark);
  g_test_add_func ("/study/load/not-utf8", test_not_utf8);
  g_test_add_func ("/study/load/too-large", test_too_large);
  g_test_add_func ("/study/load/all-problems-are-listed", test_all_problems_are_listed);
  g_test_add_func ("/study/load/unknown-keys-are-kept", test_unknown_keys_are_kept);
  g_test_add_func ("/study/load/unknown-infinity-is-kept", test_unknown_infinity_is_kept);
  g_test_add_func ("/study/load/save-and-load", test_save_and_load);
  g_test_add_func ("/study/load/save-refuses-what-does-not-read-back",
                   test_save_refuses_what_does_not_read_back);
  g_test_add_func ("/study/load/missing-file", test_missing_file);

  return g_test_run ();
}
