/* test-words.c - in words: an option against the baseline, and what a change does
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "demos.h"
#include "report/gw-amount.h"
#include "report/gw-sheet.h"
#include "report/gw-words.h"
#include "sample-study.h"

#define MINUS   "\342\210\222" /* U+2212 */
#define EN_DASH "\342\200\223" /* U+2013 */

static GwEvaluation *
evaluate_study (GwStudy *study)
{
  g_autoptr (GError) error = NULL;
  GwEvaluation *evaluation = gw_evaluation_new (study, NULL, &error);

  g_assert_no_error (error);
  return evaluation;
}

static GwEvaluation *
evaluate (const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_parse (text, strlen (text), NULL, &error);

  g_assert_no_error (error);
  return evaluate_study (study);
}

/* Two options made alike by hand, so that only what a test sets is different. */
static GwEvaluation *
alike (void)
{
  GwEvaluation *evaluation = evaluate (SAMPLE_STUDY);

  for (guint i = 0; i < 2; i++)
    {
      GwOutcome *outcome = g_ptr_array_index (evaluation->outcomes, i);
      GwTargets *targets = &outcome->assembly->aircraft.targets;

      for (guint id = 0; id < GW_N_RESULTS; id++)
        {
          outcome->results.value[id] = 0.1;
          outcome->band[id] = outcome->change_band[id] = (GwBand){ 0.0, 0.0 };
        }
      outcome->results.value[GW_RESULT_MASS] = 1.0;
      outcome->results.value[GW_RESULT_STALL_SPEED] = 7.0;
      outcome->results.value[GW_RESULT_BALLAST] = 0.0;
      outcome->results.notes = 0;
      targets->mass = targets->stall_speed = (double) NAN;
    }

  return evaluation;
}

static void
set (GwEvaluation *evaluation,
     guint         option,
     GwResultId    id,
     double        value)
{
  ((GwOutcome *) g_ptr_array_index (evaluation->outcomes, option))->results.value[id] = value;
}

static void
set_band (GwEvaluation *evaluation,
          GwResultId    id,
          double        low,
          double        high)
{
  GwOutcome *outcome = g_ptr_array_index (evaluation->outcomes, 1);

  outcome->change_band[id] = (GwBand){ low, high };
}

static char *
against (const GwEvaluation *evaluation)
{
  return gw_words_against_baseline (evaluation, 1, gw_units_standard ());
}

#define assert_holds(text, part) g_assert_nonnull (strstr (text, part))
#define assert_lacks(text, part) g_assert_null (strstr (text, part))

static void
test_amounts (void)
{
  const GwUnits   *standard = gw_units_standard ();
  GwUnits          units = *standard;
  g_autofree char *metric = gw_amount_text (standard, GW_MM, 0.0762, 0);
  g_autofree char *speed = gw_amount_change (standard, GW_M_S, -0.984, 2);
  g_autofree char *none = gw_amount_text (standard, GW_G, (double) NAN, 0);
  g_autofree char *zero = gw_amount_change (standard, GW_G, -0.0004, 0);
  g_autofree char *warm = NULL, *inches = NULL, *digits = NULL, *angle = NULL;

  g_assert_cmpstr (metric, ==, "76 mm");
  g_assert_cmpstr (speed, ==, MINUS "0.98");
  g_assert_cmpstr (none, ==, EN_DASH);
  g_assert_cmpstr (zero, ==, "0");

  /* An inch is 25.4 mm, exactly; 15 degrees Celsius are 59 Fahrenheit. */
  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  g_assert_true (gw_units_set (&units, GW_C, "°F"));
  inches = gw_amount_text (&units, GW_MM, 0.0762, 0);
  warm = gw_amount_text (&units, GW_C, 288.15, 0);
  digits = gw_amount_digits (standard, GW_M2, 0.4591234);
  angle = gw_amount_digits (standard, GW_DEG, 1e-9 + G_PI / 36.0);
  g_assert_cmpstr (inches, ==, "3.00 in");
  g_assert_cmpstr (warm, ==, "59 °F");
  g_assert_cmpstr (digits, ==, "0.45912 m²");
  g_assert_cmpstr (angle, ==, "5.0000°");
}

/* The same number wherever it stands: in words, on the sheet, in a table. */
static void
test_amounts_results (void)
{
  const GwResultInfo *mass = gw_result_info (GW_RESULT_MASS);
  GwUnits             units = *gw_units_standard ();
  const GwBand        band = { -0.001, 0.001 };
  g_autofree char    *value = NULL, *result = NULL, *change = NULL, *here = NULL, *there = NULL;

  g_assert_true (gw_units_choose (&units, "oz"));
  value = gw_value_text (GW_RESULT_MASS, 1.365, &units);
  result = gw_amount_result (&units, GW_RESULT_MASS, 1.365);
  change = gw_amount_change (&units, GW_G, 0.001, mass->decimals);
  here = gw_amount_band (&units, GW_G, 1.364, 1.366, mass->decimals);
  there = gw_band_text (GW_RESULT_MASS, 1.365, &band, &units);
  g_assert_cmpstr (value, ==, "48.1"); /* 1365 / 28.3495 */
  g_assert_cmpstr (result, ==, "48.1 oz");
  g_assert_cmpstr (change, ==, "+0.04"); /* a gram, that tenths of an ounce would hide */
  g_assert_cmpstr (here, ==, there);
}

static void
test_amounts_nothing (void)
{
  const GwUnits *units = gw_units_standard ();

  g_assert_true (gw_amount_is_nothing (units, GW_G, 0.00049, 0));
  g_assert_false (gw_amount_is_nothing (units, GW_G, -0.00051, 0));
  g_assert_true (gw_amount_is_nothing (units, GW_G, (double) NAN, 0));
}

static void
test_sentence (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  g_autofree char *text = NULL;

  set (evaluation, 1, GW_RESULT_MASS, 0.864);
  set (evaluation, 1, GW_RESULT_STALL_SPEED, 6.02);
  set (evaluation, 1, GW_RESULT_BALANCE_ROOT, 0.098);
  set (evaluation, 1, GW_RESULT_BALLAST, 0.005);
  set (evaluation, 1, GW_RESULT_SLIDE_LEFT, -0.01);
  set_band (evaluation, GW_RESULT_MASS, -0.02, 0.135);
  set_band (evaluation, GW_RESULT_STALL_SPEED, -0.1, 0.99);
  set_band (evaluation, GW_RESULT_BALANCE_ROOT, -0.001, 0.001);
  text = against (evaluation);
  g_assert_cmpstr (text, ==,
                   "Against Thin sheet: 136 g lighter, balance point 2 mm further forward; needs "
                   "5 g of lead in the nose. Surely lighter, the balance point surely further "
                   "forward. No clear difference in stall speed: " MINUS "0.98 m/s, from " MINUS
                   "1.08 to +0.01.");
}

/* In the units of the person; a decimal or two more where the unit is large. */
static void
test_units (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  g_autofree char *text = NULL;
  GwUnits          units = *gw_units_standard ();

  g_assert_true (gw_units_set (&units, GW_G, "oz"));
  g_assert_true (gw_units_set (&units, GW_M_S, "km/h"));
  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  set (evaluation, 1, GW_RESULT_MASS, 1.0 + 0.028349523125);
  set (evaluation, 1, GW_RESULT_STALL_SPEED, 7.5);
  set (evaluation, 1, GW_RESULT_BALANCE_ROOT, 0.1254);
  text = gw_words_against_baseline (evaluation, 1, &units);
  assert_holds (text, "1.0 oz heavier, stalls 1.8 km/h faster, balance point 1.00 in further "
                      "aft.");
}

static void
test_sureness (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  const struct
  {
    double      change, low, high; /* [g] */
    const char *says;
  } cases[] = {
    { -50.0, -10.0, 49.0, "Surely lighter," },
    { -50.0, -10.0, 51.0, "No clear difference in mass: " MINUS "50 g, from " MINUS "60 to +1." },
    { 50.0, -49.0, 1.0, "Surely heavier," },
    { 50.0, -51.0, 1.0, "No clear difference in mass: +50 g, from " MINUS "1 to +51." },
    { 50.0, 0.0, 0.0, "Surely heavier," },
    /* Within 1 % of a kilogram on both sides. */
    { 2.0, -8.0, 7.0, "The mass is about the same," },
    { 2.0, -8.0, 9.0, "No clear difference in mass: +2 g, from " MINUS "6 to +11." },
    { 2.0, -13.0, 7.0, "No clear difference in mass: +2 g, from " MINUS "11 to +9." },
    /* Too little to show, however sure. */
    { 0.2, -0.1, 0.1, "The mass is about the same," },
    { 0.0, 0.0, 0.0, "The mass is about the same," },
    { 0.0, -60.0, 60.0, "No clear difference in mass: 0 g, from " MINUS "60 to +60." },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = NULL;

      set (evaluation, 1, GW_RESULT_MASS, 1.0 + cases[i].change * 1e-3);
      set_band (evaluation, GW_RESULT_MASS, cases[i].low * 1e-3, cases[i].high * 1e-3);
      text = against (evaluation);
      assert_holds (text, cases[i].says);
    }
}

/* Where no way can be told, none is told before it either. */
static void
test_unclear (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  g_autofree char *unclear = NULL, *same = NULL, *alone = NULL;

  set (evaluation, 1, GW_RESULT_STALL_SPEED, 7.1);
  set_band (evaluation, GW_RESULT_STALL_SPEED, -0.5, 0.5);
  unclear = against (evaluation);
  assert_holds (unclear, "No clear difference in stall speed: +0.10 m/s, from " MINUS
                         "0.40 to +0.60.");
  assert_lacks (unclear, "faster");
  assert_holds (unclear, "Against Thin sheet: no sure difference.");
  assert_lacks (unclear, "-");

  set_band (evaluation, GW_RESULT_STALL_SPEED, 0.0, 0.0);
  set (evaluation, 1, GW_RESULT_MASS, 1.002);
  set_band (evaluation, GW_RESULT_MASS, -0.003, 0.003);
  same = against (evaluation);
  assert_holds (same, "Against Thin sheet: stalls 0.10 m/s faster.");
  assert_holds (same, "The mass is about the same");
  assert_lacks (same, "heavier");

  set (evaluation, 1, GW_RESULT_STALL_SPEED, 7.0);
  set (evaluation, 1, GW_RESULT_BALLAST, 0.005);
  set (evaluation, 1, GW_RESULT_SLIDE_LEFT, -0.01);
  alone = against (evaluation);
  assert_holds (alone, "Against Thin sheet: no sure difference; needs 5 g of lead in the nose.");
}

/* Quick values carry bands of another evaluation: nothing is sure then. */
static void
test_quick (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  g_autofree char *text = NULL;
  g_autoptr (GPtrArray) rows = NULL;

  set (evaluation, 1, GW_RESULT_MASS, 0.9);
  evaluation->is_quick = TRUE;
  text = against (evaluation);
  g_assert_cmpstr (text, ==,
                   "Against Thin sheet: 100 g lighter. How sure that is comes in a moment.");
  rows = gw_words_rows_against_baseline (evaluation, 1, gw_units_standard ());
  for (guint i = 0; i < rows->len; i++)
    g_assert_cmpint (((GwWordsRow *) g_ptr_array_index (rows, i))->sureness, ==,
                     GW_SURENESS_UNKNOWN);
}

static void
test_no_answer (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();

  for (guint option = 0; option < 2; option++)
    {
      g_autofree char *text = NULL;

      set (evaluation, option, GW_RESULT_STALL_SPEED, (double) NAN);
      set (evaluation, option, GW_RESULT_BALLAST, (double) NAN);
      set (evaluation, option, GW_RESULT_BALANCE_ROOT, (double) NAN);
      text = against (evaluation);
      assert_lacks (text, "stall");
      assert_lacks (text, "balance point may");
      assert_lacks (text, "lead");
      assert_lacks (text, "nan");
      assert_lacks (text, EN_DASH);
    }
}

static void
test_limits (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  const struct
  {
    double      baseline, option; /* wanted at most [m/s], both stall at 7 */
    const char *says;
  } cases[] = {
    { 8.0, 6.0, "It does not keep the wanted stall speed; Thin sheet does." },
    { 6.0, 8.0, "It keeps the wanted stall speed; Thin sheet does not." },
    { 6.0, 6.0, "Neither keeps the wanted stall speed." },
    { 8.0, 8.0, NULL },
    { NAN, NAN, NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = NULL;

      ((GwOutcome *) g_ptr_array_index (evaluation->outcomes, 0))
        ->assembly->aircraft.targets.stall_speed = cases[i].baseline;
      ((GwOutcome *) g_ptr_array_index (evaluation->outcomes, 1))
        ->assembly->aircraft.targets.stall_speed = cases[i].option;
      text = against (evaluation);
      if (cases[i].says != NULL)
        assert_holds (text, cases[i].says);
      else
        assert_lacks (text, "wanted");
    }
}

static void
test_notes (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  GwOutcome       *baseline = g_ptr_array_index (evaluation->outcomes, 0);
  GwOutcome       *option = g_ptr_array_index (evaluation->outcomes, 1);
  g_autofree char *text = NULL, *here = NULL, *there = NULL;

  baseline->results.notes = GW_NOTE_SWEPT | GW_NOTE_LATERAL;
  option->results.notes = GW_NOTE_SWEPT | GW_NOTE_TIP_FIRST | GW_NOTE_HEAVY;
  text = against (evaluation);
  here = g_strdup_printf ("Of this option alone: %s", gw_note_text (GW_NOTE_TIP_FIRST));
  there = g_strdup_printf ("Of Thin sheet alone: %s", gw_note_text (GW_NOTE_LATERAL));
  assert_holds (text, here);
  assert_holds (text, there);
  assert_lacks (text, gw_note_text (GW_NOTE_SWEPT));
  assert_lacks (text, gw_note_text (GW_NOTE_HEAVY)); /* told as a limit */
}

static void
test_baseline_itself (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  g_autofree char *text = gw_words_against_baseline (evaluation, 0, gw_units_standard ());

  assert_holds (text, "This is the baseline");
  assert_lacks (text, "Against");
}

static void
test_lead (void)
{
  g_autoptr (GwEvaluation) evaluation = alike ();
  GwOutcome       *option = g_ptr_array_index (evaluation->outcomes, 1);
  g_autofree char *tail = NULL, *none = NULL, *ahead = NULL;

  set (evaluation, 1, GW_RESULT_BALLAST, 0.012);
  set (evaluation, 1, GW_RESULT_SLIDE_LEFT, 0.02);
  tail = against (evaluation);
  assert_holds (tail, "needs 12 g of lead in the tail");

  set (evaluation, 0, GW_RESULT_BALLAST, 0.012);
  set (evaluation, 1, GW_RESULT_BALLAST, 0.0);
  none = against (evaluation);
  assert_holds (none, "needs no lead");

  /* Nothing is moved: the balance point lies behind where it is wanted. */
  set (evaluation, 1, GW_RESULT_BALLAST, 0.003);
  set (evaluation, 1, GW_RESULT_SLIDE_LEFT, (double) NAN);
  option->assembly->aircraft.targets.balance_x = 0.09;
  ahead = against (evaluation);
  assert_holds (ahead, "needs 3 g of lead in the nose");
}

/* Turns what is said of B against A into what is said of A against B. */
static char *
turned (const char *text,
        const char *own,
        const char *other)
{
  static const char *const pairs[][2] = {
    { "lighter", "heavier" },
    { "slower", "faster" },
    { "further forward", "further aft" },
    { "It does not keep the wanted stall speed; % does.",
      "It keeps the wanted stall speed; % does not." },
    { "It does not keep the wanted mass; % does.", "It keeps the wanted mass; % does not." },
  };
  g_autoptr (GString) out = g_string_new (text);

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    {
      g_autofree char *from_a = NULL, *from_b = NULL, *to_a = NULL, *to_b = NULL;
      g_auto (GStrv) a = g_strsplit (pairs[i][0], "%", 2);
      g_auto (GStrv) b = g_strsplit (pairs[i][1], "%", 2);

      from_a = g_strjoinv (own, a);
      from_b = g_strjoinv (own, b);
      to_a = g_strjoinv (other, a);
      to_b = g_strjoinv (other, b);
      g_string_replace (out, from_a, "\1", 0);
      g_string_replace (out, from_b, to_a, 0);
      g_string_replace (out, "\1", to_b, 0);
    }

  return g_string_free (g_steal_pointer (&out), FALSE);
}

static void
append_opposite (GString    *out,
                 const char *number)
{
  if (g_str_has_prefix (number, MINUS))
    g_string_append_printf (out, "+%s", number + strlen (MINUS));
  else if (*number == '+')
    g_string_append_printf (out, MINUS "%s", number + 1);
  else
    g_string_append (out, number);
}

static gboolean
mirror_cb (const GMatchInfo *match,
           GString          *out,
           gpointer          data)
{
  g_autofree char *change = g_match_info_fetch (match, 1), *unit = g_match_info_fetch (match, 2);
  g_autofree char *low = g_match_info_fetch (match, 3), *high = g_match_info_fetch (match, 4);

  g_string_append (out, ": ");
  append_opposite (out, change);
  g_string_append_printf (out, " %s, from ", unit);
  append_opposite (out, high);
  g_string_append (out, " to ");
  append_opposite (out, low);
  return FALSE;
}

/* ": +1 g, from -2 to +3" is ": -1 g, from -3 to +2" from the other side. (transfer full) */
static char *
mirrored (const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GRegex) bands =
    g_regex_new (": ([^ ,]+) ([^ ,]+), from ([^ ]+) to ([^ ]*[0-9])", 0, 0, &error);
  char *around;

  g_assert_no_error (error);
  around = g_regex_replace_eval (bands, text, -1, 0, 0, mirror_cb, NULL, &error);
  g_assert_no_error (error);
  return around;
}

/* The first two sentences: what is lead and what is a note alone goes its own way. */
static char *
comparison (const char *text)
{
  const char      *from = g_str_has_prefix (text, "Against ") ? strstr (text, ": ") + 2 : text;
  g_autofree char *all = g_strdup (from);
  char            *lead, *alone;

  alone = strstr (all, " Of ");
  if (alone != NULL)
    *alone = '\0';
  lead = strstr (all, "; needs");
  if (lead != NULL)
    {
      const char *end = strchr (lead + 1, '.');

      memmove (lead, end, strlen (end) + 1);
    }

  return g_steal_pointer (&all);
}

/* With the baseline the other way round the words are those of the opposite. */
static void
test_symmetric (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);
  g_autoptr (GwEvaluation) there = evaluate_study (study);
  const guint a = there->baseline;

  for (guint b = 0; b < there->outcomes->len; b++)
    {
      g_autoptr (GwStudy) other = gw_study_copy (study);
      g_autoptr (GwEvaluation) back = NULL;
      g_autofree char *one = NULL, *two = NULL, *wanted = NULL, *got = NULL, *opposite = NULL;
      g_autofree char *around = NULL;
      g_autoptr (GPtrArray) rows = NULL, rows_back = NULL;

      if (b == a)
        continue;
      g_free (other->baseline);
      other->baseline = g_strdup (gw_evaluation_outcome (there, b)->id);
      back = evaluate_study (other);

      one = gw_words_against_baseline (there, b, gw_units_standard ());
      two = gw_words_against_baseline (back, a, gw_units_standard ());
      wanted = comparison (one);
      got = comparison (two);
      around = mirrored (wanted);
      opposite = turned (around, gw_evaluation_outcome (there, a)->name,
                         gw_evaluation_outcome (there, b)->name);
      g_assert_cmpstr (got, ==, opposite);

      rows = gw_words_rows_against_baseline (there, b, gw_units_standard ());
      rows_back = gw_words_rows_against_baseline (back, a, gw_units_standard ());
      g_assert_cmpuint (rows->len, ==, rows_back->len);
      for (guint i = 0; i < rows->len; i++)
        {
          const GwWordsRow *to = g_ptr_array_index (rows, i);
          const GwWordsRow *fro = g_ptr_array_index (rows_back, i);

          g_assert_cmpstr (to->before, ==, fro->after);
          g_assert_cmpstr (to->after, ==, fro->before);
          g_assert_cmpint (to->verdict == GW_VERDICT_BETTER, ==, fro->verdict == GW_VERDICT_WORSE);
          g_assert_cmpint (to->verdict == GW_VERDICT_NEUTRAL, ==,
                           fro->verdict == GW_VERDICT_NEUTRAL);
          g_assert_cmpint (to->sureness == GW_SURENESS_SURE, ==,
                           fro->sureness == GW_SURENESS_SURE);
        }
    }
}

/* All that is said of the demos: whole sentences, and no number that is none. */
static void
test_demo (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);
  g_autoptr (GwEvaluation) evaluation = evaluate_study (study);

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      g_autofree char *text = gw_words_against_baseline (evaluation, i, gw_units_standard ());

      g_test_message ("%s", text);
      g_assert_true (g_str_has_suffix (text, "."));
      assert_lacks (text, "nan");
      assert_lacks (text, "inf");
      assert_lacks (text, "%s");
      assert_lacks (text, "..");
      /* A way is told by words; only where there is none has a number its sign. */
      g_assert_true (strstr (text, MINUS) == NULL || strstr (text, "No clear difference in "));
      g_assert_cmpint (strstr (text, "Against ") != NULL, ==, i != evaluation->baseline);
      if (i != evaluation->baseline)
        {
          const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
          const double     change = outcome->change[GW_RESULT_MASS];
          const GwBand    *band = &outcome->change_band[GW_RESULT_MASS];

          g_assert_cmpint (strstr (text, " lighter") != NULL, ==,
                           change < -0.0005 && change + band->high < 0.0);
          g_assert_cmpint (strstr (text, " heavier") != NULL, ==,
                           change > 0.0005 && change + band->low > 0.0);
        }
    }
}

static void
test_nothing_changes (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);
  g_autoptr (GwEvaluation) evaluation = evaluate_study (study);
  g_autoptr (GwEvaluation) quick = gw_evaluation_quick (study, evaluation, NULL);

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      g_autofree char *text = gw_words_of_change (evaluation, quick, i, gw_units_standard ());
      g_autoptr (GPtrArray) rows = gw_words_rows_of_change (evaluation, quick, i,
                                                            gw_units_standard ());

      g_assert_cmpstr (text, ==, "Nothing on the sheet changes.");
      g_assert_cmpuint (rows->len, ==, 0);
    }
}

static void
test_change (void)
{
  g_autofree char *lighter = sample_replace (SAMPLE_STUDY, "\"value\": 180,", "\"value\": 150,");
  g_autoptr (GwEvaluation) before = evaluate (SAMPLE_STUDY);
  g_autoptr (GwEvaluation) after = evaluate (lighter);
  g_autofree char *down = gw_words_of_change (before, after, 0, gw_units_standard ());
  g_autofree char *up = gw_words_of_change (after, before, 0, gw_units_standard ());
  g_autoptr (GPtrArray) rows = gw_words_rows_of_change (before, after, 0, gw_units_standard ());

  /* The battery lies ahead of the balance point; less of it lets that go aft. */
  g_test_message ("%s", down);
  g_assert_true (g_str_has_prefix (down, "30 g lighter, stalls "));
  assert_holds (down, " m/s slower, balance point ");
  assert_holds (down, " further aft");
  assert_holds (down, "wing loading ");
  assert_lacks (down, "wing mass");
  assert_lacks (down, "span");
  g_assert_true (g_str_has_prefix (up, "30 g heavier, stalls "));
  assert_holds (up, " further forward");

  g_assert_cmpuint (rows->len, >, 3);
  for (guint i = 0; i < rows->len; i++)
    {
      const GwWordsRow *row = g_ptr_array_index (rows, i);

      g_assert_cmpstr (row->before, !=, row->after);
      if (row->id == GW_RESULT_MASS || row->id == GW_RESULT_STALL_SPEED)
        g_assert_cmpint (row->verdict, ==, GW_VERDICT_BETTER);
      if (row->id == GW_RESULT_SLIDE)
        g_assert_cmpint (row->verdict, ==, GW_VERDICT_NEUTRAL);
    }
}

/* What comes and goes is said; a result that is lost is no number. */
static void
test_change_of_limits (void)
{
  g_autoptr (GwEvaluation) before = alike ();
  g_autoptr (GwEvaluation) after = alike ();
  GwOutcome       *outcome = g_ptr_array_index (after->outcomes, 1);
  g_autofree char *to = NULL, *fro = NULL;

  ((GwOutcome *) g_ptr_array_index (before->outcomes, 1))->assembly->aircraft.targets.mass = 1.1;
  outcome->assembly->aircraft.targets.mass = 1.1;
  set (after, 1, GW_RESULT_MASS, 1.2);
  set (after, 1, GW_RESULT_STATIC_MARGIN, (double) NAN);
  outcome->results.notes = GW_NOTE_UNSTABLE;
  to = gw_words_of_change (before, after, 1, gw_units_standard ());
  fro = gw_words_of_change (after, before, 1, gw_units_standard ());

  assert_holds (to, "200 g heavier, static margin without an answer now. The wanted mass is not "
                    "kept now. New: Tail-heavy:");
  assert_holds (fro, "200 g lighter, static margin now 10 %. The wanted mass is kept now. No "
                     "longer: Tail-heavy:");
}

/* The option is the same by its id, wherever it stands. */
static void
test_change_of_order (void)
{
  g_autoptr (GwEvaluation) before = alike ();
  g_autoptr (GwEvaluation) after = alike ();
  GwOutcome       *outcome = g_ptr_array_index (after->outcomes, 1);
  g_autofree char *same = NULL, *unknown = NULL;

  set (before, 0, GW_RESULT_MASS, 3.0);
  set (after, 1, GW_RESULT_MASS, 3.0);
  g_free (outcome->id);
  outcome->id = g_strdup ("thin");
  same = gw_words_of_change (before, after, 1, gw_units_standard ());
  g_assert_cmpstr (same, ==, "Nothing on the sheet changes.");

  g_free (outcome->id);
  outcome->id = g_strdup ("third");
  unknown = gw_words_of_change (before, after, 1, gw_units_standard ());
  g_assert_cmpstr (unknown, ==, "This option was not there before.");
}

/* What is called better has a reason to be read, and places have none. */
static void
test_senses (void)
{
  for (guint id = 0; id < GW_N_RESULTS; id++)
    {
      const char *text = gw_words_sense_text ((GwResultId) id);

      switch (gw_words_sense ((GwResultId) id))
        {
        case GW_SENSE_LESS:
          g_assert_true (g_str_has_prefix (text, "Less is better"));
          break;
        case GW_SENSE_MORE:
          g_assert_true (g_str_has_prefix (text, "More is better"));
          break;
        case GW_SENSE_NEITHER:
        default:
          g_assert_true (g_str_has_prefix (text, "Neither"));
        }
    }

  g_assert_cmpint (gw_words_sense (GW_RESULT_MASS), ==, GW_SENSE_LESS);
  g_assert_cmpint (gw_words_sense (GW_RESULT_STALL_SPEED), ==, GW_SENSE_LESS);
  g_assert_cmpint (gw_words_sense (GW_RESULT_BALANCE_ROOT), ==, GW_SENSE_NEITHER);
  g_assert_cmpint (gw_words_sense (GW_RESULT_STATIC_MARGIN), ==, GW_SENSE_NEITHER);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/report/amount/texts", test_amounts);
  g_test_add_func ("/report/amount/nothing", test_amounts_nothing);
  g_test_add_func ("/report/amount/results", test_amounts_results);
  g_test_add_func ("/report/words/sentence", test_sentence);
  g_test_add_func ("/report/words/units", test_units);
  g_test_add_func ("/report/words/sureness", test_sureness);
  g_test_add_func ("/report/words/unclear", test_unclear);
  g_test_add_func ("/report/words/quick", test_quick);
  g_test_add_func ("/report/words/no-answer", test_no_answer);
  g_test_add_func ("/report/words/limits", test_limits);
  g_test_add_func ("/report/words/notes", test_notes);
  g_test_add_func ("/report/words/baseline", test_baseline_itself);
  g_test_add_func ("/report/words/lead", test_lead);
  g_test_add_func ("/report/words/change", test_change);
  g_test_add_func ("/report/words/change-of-limits", test_change_of_limits);
  g_test_add_func ("/report/words/change-of-order", test_change_of_order);
  g_test_add_func ("/report/words/senses", test_senses);
  demo_add_tests ("/report/words", "symmetric", test_symmetric);
  demo_add_tests ("/report/words", "demo", test_demo);
  demo_add_tests ("/report/words", "nothing-changes", test_nothing_changes);

  return g_test_run ();
}
