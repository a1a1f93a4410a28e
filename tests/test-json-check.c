/* test-json-check.c - what is not well-formed is told in plain words, at the place it is
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "sample-study.h"
#include "study/gw-error.h"
#include "study/gw-json-check.h"
#include "study/gw-json.h"

typedef struct
{
  const char *text;
  const char *says; /* the whole message */
} Broken;

#define NO_VALUE " is no number and no true, false or null; texts stand in double quotes (\")"

static const Broken broken[] = {
  { "", "line 1, column 1: the file is empty; a study begins with {" },
  { "\357\273\277", "line 1, column 1: the file is empty; a study begins with {" },
  { " \n\t ", "line 2, column 3: the file is empty; a study begins with {" },
  { "hello", "line 1, column 1: the file holds no JSON object; a study begins with {, not with "
             "“hello”" },
  { "[1, 2]", "line 1, column 1: the file holds no JSON object; a study begins with {, not with "
              "“[1, 2]”" },
  /* Commas and colons. */
  { "{\n  \"a\": 1\n  \"b\": 2\n}",
    "line 2, column 9: a comma or the closing } is missing here, before “\"b\": 2”" },
  { "{\"a\": [1 2]}", "line 1, column 9: a comma or the closing ] is missing here, before “2]}”" },
  { "{\"a\": 1,\n}", "line 1, column 8: nothing follows this comma; remove it" },
  { "{\"a\": [1, ]}", "line 1, column 9: nothing follows this comma; remove it" },
  { "{\"a\": [1,, 2]}", "line 1, column 10: a value is missing here, before “, 2]}”" },
  { "{\"a\": [,]}", "line 1, column 8: a value is missing here, before “,]}”" },
  { "{\"a\": 1,, \"b\": 2}",
    "line 1, column 9: a key in double quotes (\") is wanted here, not “, \"b\": 2}”" },
  { "{\"a\" 1}", "line 1, column 5: a colon is missing here, before “1}”" },
  { "{\"a\" = 1}", "line 1, column 5: a colon is missing here, before “= 1}”" },
  { "{\"a\"}", "line 1, column 5: a colon is missing here, before “}”" },
  { "{\"a\": }", "line 1, column 6: a value is missing here, before “}”" },
  /* Quotes. */
  { "{\n  \"name\": \"Plank,\n  \"b\": 2}",
    "line 2, column 11: the closing quote (\") of “Plank,” is missing" },
  { "{\"name\": \"Plank", "line 1, column 10: the closing quote (\") of “Plank” is missing" },
  { "{\"name: \"Plank\"}", "line 1, column 10: a colon is missing here, before “Plank\"}”" },
  { "{name\": 1}",
    "line 1, column 2: a key in double quotes (\") is wanted here, not “name\": 1}”" },
  { "{\"name\": Plank\"}", "line 1, column 10: “Plank\"}”" NO_VALUE },
  { "{\"name\": 'Plank'}",
    "line 1, column 10: texts stand in straight double quotes (\"), unlike “'Plank'}”" },
  { "{“name”: 1}",
    "line 1, column 2: texts stand in straight double quotes (\"), unlike ““name”: 1}”" },
  { "{\"a\": \"\\q\"}", "line 1, column 8: an escape that stands for no character: “\\q\"}”" },
  { "{\"a\": \"\\", "line 1, column 8: an escape that stands for no character: “\\”" },
  /* Brackets. */
  { "{\"a\": [\n1",
    "line 2, column 2: the file ends while the [ of line 1 is still open; was it cut off?" },
  { "{\"a\": 1, ",
    "line 1, column 9: the file ends while the { of line 1 is still open; was it cut off?" },
  { "{\n\"a\": [1}", "line 2, column 8: } cannot close the [ of line 2; ] does" },
  { "{\"a\": 1]", "line 1, column 8: ] cannot close the { of line 1; } does" },
  { "{\"a\": 1}\n}", "line 2, column 1: text after the end of the document; remove “}”" },
  { "{} and more", "line 1, column 4: text after the end of the document; remove “and more”" },
  /* Numbers and words. */
  { "{\"a\": NaN}", "line 1, column 7: “NaN}”" NO_VALUE },
  { "{\"a\": True}", "line 1, column 7: “True}”" NO_VALUE },
  { "{\"a\": nullo}", "line 1, column 7: “nullo}”" NO_VALUE },
  { "{\"a\": 1.}", "line 1, column 7: “1.}”" NO_VALUE },
  { "{\"a\": .5}", "line 1, column 7: “.5}”" NO_VALUE },
  { "{\"a\": 012}", "line 1, column 7: “012}”" NO_VALUE },
  { "{\"a\": +1}", "line 1, column 7: “+1}”" NO_VALUE },
  { "{\"a\": 1e}", "line 1, column 7: “1e}”" NO_VALUE },
  { "{\"a\": 0x1f}", "line 1, column 7: “0x1f}”" NO_VALUE },
  { "{\"a\": 12mm}", "line 1, column 7: “12mm}”" NO_VALUE },
  { "{\"a\": 1,5}", "line 1, column 9: a key in double quotes (\") is wanted here, not “5}”" },
  /* Comments. */
  { "{ // mine\n\"a\": 1}", "line 1, column 3: JSON has no comments; remove “// mine”" },
  { "{\"a\": 1, /* 2 */}", "line 1, column 10: JSON has no comments; remove “/* 2 */}”" },
  { "{\"a\": 1}\n# end", "line 2, column 1: JSON has no comments; remove “# end”" },
  /* What is long is cut, and columns are counted in characters. */
  { "{\"größe\" 1234567890123456789012345}",
    "line 1, column 9: a colon is missing here, before “123456789012345678901234…”" },
  { "\357\273\277{\"ü\": é}", "line 1, column 7: “é}”" NO_VALUE },
  { "{\r\n\"a\": 1\r\n\"b\"}", "line 2, column 7: a comma or the closing } is missing here, before "
                               "“\"b\"}”" },
};

static void
assert_message (const char *text,
                gsize       length,
                const char *says)
{
  g_autoptr (GError) error = NULL, parsing = NULL;

  g_assert_false (gw_json_check (text, length, &error));
  g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX);
  g_assert_cmpstr (error->message, ==, says);
  g_assert_null (gw_json_parse (text, length, &parsing));
  g_assert_cmpstr (parsing->message, ==, says);
}

static void
test_broken (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (broken); i++)
    assert_message (broken[i].text, strlen (broken[i].text), broken[i].says);
}

static void
test_encoding (void)
{
  static const char cut[] = "{\"a\": \"gr\303";
  static const char latin[] = "{\n\"a\": \"gr\366\337e\"}";
  static const char binary[] = "\211PNG\r\n\032\n\0\0\0\rIHDR";
  static const char wide[] = "\377\376{\0}\0";
  static const char zeros[64] = { 0 };

  assert_message (cut, sizeof cut - 1,
                  "line 1, column 10: the file ends in the middle of a character; was it cut off?");
  assert_message (latin, sizeof latin - 1,
                  "line 2, column 9: not UTF-8 text; is it really a study?");
  assert_message (binary, sizeof binary - 1,
                  "line 1, column 1: not UTF-8 text; is it really a study?");
  assert_message (wide, sizeof wide - 1, "line 1, column 1: not UTF-8 text; is it really a study?");
  assert_message (zeros, sizeof zeros, "line 1, column 1: not UTF-8 text; is it really a study?");
}

/* Every piece of a study that was cut off is refused, with a place and without a fall. */
static void
test_cut_anywhere (void)
{
  const gsize length = strlen (SAMPLE_STUDY) - 1; /* without the last line's end */

  for (gsize n = 0; n < length; n++)
    {
      g_autofree char *part = g_strndup (SAMPLE_STUDY, n);
      g_autoptr (GError) error = NULL;

      g_assert_false (gw_json_check (part, n, &error));
      g_assert_true (g_str_has_prefix (error->message, "line "));
    }
}

static void
test_in_order (void)
{
  static const char *const texts[] = {
    "{}",
    " {} \r\n",
    "\357\273\277{\"a\": {}, \"b\": []}",
    "{\"a\": [0, -0, 1.5, -1.5e3, 1E+9, 2e-7, 10, true, false, null, \"\"]}",
    "{\"a\": \"{[,:'/*#\", \"b\": \"\\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e9\\ud83d\\ude00\"}",
    "{\"größe\":\"°\"}",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (JsonObject) object = NULL;

      g_assert_true (gw_json_check (texts[i], strlen (texts[i]), &error));
      g_assert_no_error (error);
      object = gw_json_parse (texts[i], strlen (texts[i]), &error);
      g_assert_no_error (error);
      g_assert_nonnull (object);
    }
}

/* As deep as may be, and one deeper. */
static void
test_depth (void)
{
  for (guint more = 0; more < 2; more++)
    {
      const guint      n = GW_JSON_MAX_DEPTH - 1 + more;
      g_autofree char *open = g_strnfill (n, '['), *close = g_strnfill (n, ']');
      g_autofree char *text = g_strdup_printf ("{\"a\": %s%s}", open, close);
      g_autoptr (GError) error = NULL;

      g_assert_cmpint (gw_json_check (text, strlen (text), &error), ==, more == 0);
      if (more > 0)
        g_assert_nonnull (strstr (error->message, "nested"));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/json-check/broken", test_broken);
  g_test_add_func ("/study/json-check/encoding", test_encoding);
  g_test_add_func ("/study/json-check/cut-anywhere", test_cut_anywhere);
  g_test_add_func ("/study/json-check/in-order", test_in_order);
  g_test_add_func ("/study/json-check/depth", test_depth);
  return g_test_run ();
}
