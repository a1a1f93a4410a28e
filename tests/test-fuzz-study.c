/* test-fuzz-study.c - damaged files and wild edits: refused with a reason or sound
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "demos.h"
#include "random-edit.h"
#include "sample-study.h"
#include "study/gw-evaluation.h"

#define SAMPLE_TRIALS 4000 /* damaged texts of the sample */
#define DEMO_TRIALS   400  /* and of each demo */
#define EDIT_TRIALS   8    /* chains of edits of each demo, all evaluated with bands */
#define SAMPLE_EDITS  300  /* and of the sample */
#define CHAIN         5    /* edits one upon the other */

/* What has a meaning in JSON, or nearly. */
static const char *const tokens[] = {
  "{",
  "}",
  "[",
  "]",
  "\"",
  "'",
  ",",
  ":",
  "/*",
  "*/",
  "//",
  "#",
  "\\",
  "\\u0000",
  "\\ud800",
  "\\udc00",
  "\\ud83d\\ude00",
  "null",
  "true",
  "NaN",
  "Infinity",
  "-",
  "-0.0",
  "2.0",
  "1e999",
  "-1e999",
  "1e-999",
  "0x20",
  "01",
  "+1",
  "99999999999999999999",
  "\357\273\277",
  "\302",
  "\n",
  "{}",
  "[]",
  "\"x\": 1,",
  "\"id\": \"a\",",
  "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[",
};

/* Another digit at the first digit after @at: mostly still a study, often an odd one. */
static void
damage_number (GString *text,
               gsize    at)
{
  while (at < text->len && !g_ascii_isdigit (text->str[at]))
    at++;
  if (at < text->len)
    text->str[at] = (char) g_test_rand_int_range ('0', '9' + 1);
}

static void
damage (GString *text)
{
  const gsize      at = (gsize) g_test_rand_int_range (0, (int) text->len);
  const gsize      length = (gsize) g_test_rand_int_range (1, 80);
  const gsize      n = MIN (length, text->len - at);
  const char      *token = tokens[g_test_rand_int_range (0, G_N_ELEMENTS (tokens))];
  g_autofree char *piece = g_strndup (text->str + at, n);

  switch (g_test_rand_int_range (0, 10))
    {
    case 0: /* one bit */
      text->str[at] = (char) (text->str[at] ^ (1 << g_test_rand_int_range (0, 8)));
      break;
    case 1:
      g_string_erase (text, (gssize) at, (gssize) n);
      break;
    case 2: /* twice */
      g_string_insert_len (text, (gssize) at, piece, (gssize) n);
      break;
    case 3: /* somewhere else */
      g_string_insert_len (text, g_test_rand_int_range (0, (int) text->len), piece, (gssize) n);
      break;
    case 4:
      g_string_insert (text, (gssize) at, token);
      break;
    case 5:
      g_string_overwrite (text, at, token);
      break;
    case 6: /* cut off, seldom: little of it is left to be read */
      if (g_test_rand_int_range (0, 4) == 0)
        g_string_truncate (text, at);
      break;
    default:
      damage_number (text, at);
    }
}

/* Reads a damaged text: an error with a reason, or a study that can be saved. */
static gboolean
read_damaged (const char *original)
{
  g_autoptr (GString) text = g_string_new (original);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = NULL;

  for (int i = g_test_rand_int_range (1, 4); i > 0 && text->len > 0; i--)
    damage (text);

  study = gw_study_parse (text->str, text->len, problems, &error);
  if (study == NULL)
    {
      g_assert_true (error != NULL && error->domain == GW_STUDY_ERROR);
      g_assert_cmpstr (error->message, !=, "");
      return FALSE;
    }

  g_assert_no_error (error);
  g_assert_cmpuint (gw_problems_count (problems), ==, 0);
  edit_check_round_trip (study, "damage");
  return TRUE;
}

static void
test_damaged_sample (void)
{
  guint n = 0;

  for (guint i = 0; i < SAMPLE_TRIALS; i++)
    n += read_damaged (SAMPLE_STUDY);

  /* Both ends of the road are taken: some texts are read, most are not. */
  g_test_message ("%u of %d damaged texts were read", n, SAMPLE_TRIALS);
  g_assert_cmpuint (n, >, SAMPLE_TRIALS / 50);
  g_assert_cmpuint (n, <, SAMPLE_TRIALS / 2);
}

static void
test_damaged_demo (gconstpointer name)
{
  g_autofree char *path = demo_path (name);
  g_autofree char *text = NULL;
  guint            n = 0;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  for (guint i = 0; i < DEMO_TRIALS; i++)
    n += read_damaged (text);
  g_test_message ("%u of %d damaged texts were read", n, DEMO_TRIALS);
  g_assert_cmpuint (n, >, 0);
}

static void
check_outcome (const GwOutcome *outcome)
{
  edit_check_results (&outcome->results);
  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      g_assert_true (isfinite (outcome->band[i].low) && outcome->band[i].low <= 0.0);
      g_assert_true (isfinite (outcome->band[i].high) && outcome->band[i].high >= 0.0);
      g_assert_true (isfinite (outcome->change_band[i].low));
      g_assert_true (isfinite (outcome->change_band[i].high));
      g_assert_false (isinf (outcome->change[i]));
    }
}

static gboolean
evaluate (GwStudy *study)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwEvaluation) evaluation = gw_evaluation_new (study, NULL, &error);

  if (evaluation == NULL)
    {
      g_test_message ("%s", error->message);
      g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CALCULATION);
      g_assert_cmpstr (error->message, !=, "");
      return FALSE;
    }

  g_assert_no_error (error);
  g_assert_cmpuint (evaluation->outcomes->len, ==, study->options->len);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    check_outcome (gw_evaluation_outcome (evaluation, i));
  return TRUE;
}

/* A chain of edits; all that are not refused must save, and the last must evaluate. */
static gboolean
edit_in_a_chain (const GwStudy *original)
{
  g_autoptr (GwStudy) study = gw_study_copy (original);
  g_autoptr (GString) done = g_string_new (NULL);
  gboolean is_good;

  for (int i = 0; i < CHAIN; i++)
    {
      g_autofree char *path = NULL;
      GwStudy         *edited = edit_randomly (study, &path);

      if (edited == NULL)
        continue;
      edit_check_round_trip (edited, path);
      gw_study_unref (study);
      study = edited;
      g_string_append_printf (done, " %s", path);
    }

  g_test_timer_start ();
  is_good = evaluate (study);
  if (!is_good || g_test_timer_elapsed () > 10.0)
    g_test_message ("%s, %.1f s:%s", is_good ? "evaluated" : "not computed", g_test_timer_last (),
                    done->str);
  return is_good;
}

static void
edit_often (const GwStudy *study,
            guint          n)
{
  guint n_good = 0;

  for (guint i = 0; i < n; i++)
    n_good += edit_in_a_chain (study);
  /* What the check of a study lets through the engine can compute: see gw_assemble(). */
  g_assert_cmpuint (n_good, ==, n);
}

static void
test_edited_demo (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);

  edit_often (study, EDIT_TRIALS);
}

static void
test_edited_sample (void)
{
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);

  edit_often (study, SAMPLE_EDITS);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/fuzz/sample/damaged", test_damaged_sample);
  g_test_add_func ("/study/fuzz/sample/edited", test_edited_sample);
  demo_add_tests ("/study/fuzz", "damaged", test_damaged_demo);
  demo_add_tests ("/study/fuzz", "edited", test_edited_demo);

  return g_test_run ();
}
