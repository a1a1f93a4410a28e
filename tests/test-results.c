/* test-results.c - results as text and as JSON
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "demos.h"
#include "report/gw-results-text.h"
#include "report/gw-sheet.h"
#include "sample-study.h"
#include "study/gw-json.h"
#include "study/gw-result.h"

#define MINUS    "\342\210\222" /* U+2212 */
#define EN_DASH  "\342\200\223" /* U+2013 */
#define TIMES    "\303\227"     /* U+00D7 */
#define ELLIPSIS "\342\200\246" /* U+2026 */

static GwEvaluation *
evaluate (GwStudy *study)
{
  g_autoptr (GError) error = NULL;
  GwEvaluation *evaluation = gw_evaluation_new (study, NULL, &error);

  g_assert_no_error (error);
  return evaluation;
}

static GwEvaluation *
evaluate_text (const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_parse (text, strlen (text), NULL, &error);

  g_assert_no_error (error);
  return evaluate (study);
}

/* The demo that is soonest done; evaluated once for all tests. */
static GwEvaluation *
demo (void)
{
  static GwEvaluation *evaluation;

  if (evaluation == NULL)
    {
      g_autoptr (GwStudy) study = demo_load ("tailless");

      evaluation = evaluate (study);
    }

  return evaluation;
}

/* Numbers as text. */

typedef struct
{
  GwResultId  id;
  double      value; /* SI */
  const char *value_text, *change_text;
} NumberCase;

static const NumberCase numbers[] = {
  { GW_RESULT_MASS, 1.2345, "1234", "+1234" }, /* a half goes to the even digit, as printf does */
  { GW_RESULT_MASS, 1.2346, "1235", "+1235" },
  { GW_RESULT_MASS, -0.012, MINUS "12", MINUS "12" },
  { GW_RESULT_MASS, 0.0, "0", "0" },
  { GW_RESULT_MASS, -0.0, "0", "0" },
  { GW_RESULT_MASS, 0.0004, "0", "0" },
  { GW_RESULT_MASS, -0.0004, "0", "0" },
  { GW_RESULT_MASS, 0.0005, "0", "0" },
  { GW_RESULT_MASS, -0.0005, "0", "0" },
  { GW_RESULT_MASS, 0.0006, "1", "+1" },
  { GW_RESULT_MASS, -0.0006, MINUS "1", MINUS "1" },
  { GW_RESULT_STALL_SPEED, 6.634, "6.63", "+6.63" },
  { GW_RESULT_STALL_SPEED, -0.004, "0.00", "0.00" },
  { GW_RESULT_STALL_SPEED, -0.006, MINUS "0.01", MINUS "0.01" },
  { GW_RESULT_STALL_SPEED, 0.16, "0.16", "+0.16" },
  { GW_RESULT_WING_LOADING, 3.15, "31.5", "+31.5" }, /* 1 kg/m2 = 10 g/dm2 */
  { GW_RESULT_STATIC_MARGIN, 0.146, "15", "+15" },
  { GW_RESULT_BALANCE_X, -0.0123, MINUS "12.3", MINUS "12.3" },
  { GW_RESULT_IXX, 0.12345, "0.1235", "+0.1235" },
  { GW_RESULT_DENSITY_ALTITUDE, 794.4, "794", "+794" },
};

static void
test_number_texts (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autofree char *value = gw_value_text (numbers[i].id, numbers[i].value, NULL);
      g_autofree char *change = gw_change_text (numbers[i].id, numbers[i].value, NULL);

      g_assert_cmpstr (value, ==, numbers[i].value_text);
      g_assert_cmpstr (change, ==, numbers[i].change_text);
    }
}

static void
test_no_answer (void)
{
  const double none[] = { (double) NAN, INFINITY, -INFINITY };

  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    {
      g_autofree char *value = gw_value_text (GW_RESULT_STALL_SPEED, none[i], NULL);
      g_autofree char *change = gw_change_text (GW_RESULT_STALL_SPEED, none[i], NULL);

      g_assert_cmpstr (value, ==, EN_DASH);
      g_assert_null (change);
    }
}

static const struct
{
  GwResultId  id;
  double      value; /* SI */
  GwBand      band;
  const char *text;
} band_cases[] = {
  { GW_RESULT_MASS, 1.365, { -0.026, 0.037 }, "1339" EN_DASH "1402" },
  { GW_RESULT_MASS, 1.365, { 0.0, 0.005 }, "1365" EN_DASH "1370" },
  { GW_RESULT_MASS, 1.365, { 0.0, 0.0 }, NULL },
  { GW_RESULT_MASS, 1.365, { -0.0004, 0.0004 }, NULL },
  { GW_RESULT_STALL_SPEED, 7.78, { -0.64, 0.94 }, "7.14" EN_DASH "8.72" },
  { GW_RESULT_STATIC_MARGIN, 0.16, { -0.03, 0.03 }, "13" EN_DASH "19" },
  { GW_RESULT_SLIDE, -0.003, { -0.028, 0.021 }, MINUS "31 to 18" },
  { GW_RESULT_SLIDE, -0.027, { -0.028, 0.021 }, MINUS "55 to " MINUS "6" },
  { GW_RESULT_BALLAST, 0.0, { 0.0, 0.018 }, "0" EN_DASH "18" },
  /* What rounds to zero has no sign, at either end. */
  { GW_RESULT_SLIDE, 0.010, { -0.0104, 0.010 }, "0" EN_DASH "20" },
  { GW_RESULT_SLIDE, -0.010, { -0.010, 0.0096 }, MINUS "20 to 0" },
  { GW_RESULT_SLIDE, 0.0, { -0.0004, 0.0004 }, NULL },
  { GW_RESULT_STALL_SPEED, (double) NAN, { -0.2, 0.3 }, NULL },
};

static void
test_band_texts (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (band_cases); i++)
    {
      g_autofree char *text =
        gw_band_text (band_cases[i].id, band_cases[i].value, &band_cases[i].band, NULL);

      g_assert_cmpstr (text, ==, band_cases[i].text);
    }
}

#define NONE ((double) NAN)

static const struct
{
  GwResultId id;
  double     value; /* SI */
  GwTargets  wanted;
  unsigned   notes;
  GwLimit    limit;
} limits[] = {
  { GW_RESULT_MASS, 1.4, { .mass = 1.5 }, 0, GW_LIMIT_KEPT },
  { GW_RESULT_MASS, 1.5, { .mass = 1.5 }, 0, GW_LIMIT_KEPT },
  { GW_RESULT_MASS, 1.6, { .mass = 1.5 }, 0, GW_LIMIT_BROKEN },
  { GW_RESULT_MASS, 1.6, { .mass = NONE }, 0, GW_LIMIT_NONE },
  { GW_RESULT_STALL_SPEED, 6.9, { .stall_speed = 7.0 }, 0, GW_LIMIT_KEPT },
  { GW_RESULT_STALL_SPEED, 7.1, { .stall_speed = 7.0 }, 0, GW_LIMIT_BROKEN },
  { GW_RESULT_STALL_SPEED, NONE, { .stall_speed = 7.0 }, 0, GW_LIMIT_NONE },
  { GW_RESULT_STALL_SPEED, 7.1, { .stall_speed = NONE }, 0, GW_LIMIT_NONE },
  { GW_RESULT_STATIC_MARGIN, 0.11, { .static_margin = 0.10 }, 0, GW_LIMIT_KEPT },
  { GW_RESULT_STATIC_MARGIN, 0.10, { .static_margin = 0.10 }, 0, GW_LIMIT_KEPT },
  { GW_RESULT_STATIC_MARGIN, 0.09, { .static_margin = 0.10 }, 0, GW_LIMIT_BROKEN },
  { GW_RESULT_STATIC_MARGIN, -0.02, { .static_margin = 0.0 }, 0, GW_LIMIT_BROKEN },
  { GW_RESULT_BALANCE_ROOT, 0.07, { 0 }, 0, GW_LIMIT_KEPT },
  { GW_RESULT_BALANCE_ROOT, 0.07, { 0 }, GW_NOTE_HEAVY, GW_LIMIT_KEPT },
  { GW_RESULT_BALANCE_ROOT, 0.07, { 0 }, GW_NOTE_BEHIND_AFT_LIMIT, GW_LIMIT_BROKEN },
  { GW_RESULT_BALANCE_ROOT, 0.07, { 0 }, GW_NOTE_AHEAD_OF_LIMIT, GW_LIMIT_BROKEN },
  { GW_RESULT_SPAN, 2.0, { .mass = 1.0, .stall_speed = 1.0 }, 0, GW_LIMIT_NONE },
};

static void
test_limits (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      GwAssembly assembly = { .aircraft.targets = limits[i].wanted };
      GwOutcome  outcome = { .assembly = &assembly, .results.notes = limits[i].notes };

      outcome.results.value[limits[i].id] = limits[i].value;
      g_assert_cmpint (gw_limit_of (&outcome, limits[i].id), ==, limits[i].limit);
    }
}

/* JSON. */

static JsonObject *
results_json (const GwEvaluation *evaluation)
{
  g_autofree char *text = gw_results_json (evaluation);
  g_autoptr (GError) error = NULL;
  JsonObject *object = gw_json_parse (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_false (g_regex_match_simple ("[\\s:\\[,][-+]?(nan|inf)", text, G_REGEX_CASELESS, 0));
  return object;
}

static JsonObject *
option_of (JsonObject *root,
           guint       i)
{
  return json_array_get_object_element (json_object_get_array_member (root, "options"), i);
}

/* What one of the shown unit is in SI, by the ending of the key; a plain number has none. */
static const struct
{
  const char *ending;
  double      factor;
} units[] = {
  { "_kg_m3", 1.0 },
  { "_kg_m2", 1.0 },
  { "_g_dm2", 0.1 },
  { "_per_rad", 1.0 },
  { "_percent", 0.01 },
  { "_m_s", 1.0 },
  { "_mm", 1e-3 },
  { "_m2", 1.0 },
  { "_m", 1.0 },
  { "_g", 1e-3 },
  { "", 1.0 },
};

/* Results that are numbers without a unit. */
static const char *const plain[] = {
  "cl_max",
  "stall_reynolds",
  "aspect_ratio",
  "tail_volume",
  "fin_volume",
  NULL,
};

static double
factor_of (const char *key)
{
  guint i = 0;

  while (!g_str_has_suffix (key, units[i].ending))
    i++;
  if (*units[i].ending == '\0' && !g_strv_contains (plain, key))
    g_error ("%s has no unit", key);

  return units[i].factor;
}

/* A value with its band, against what was evaluated; null where there is no answer. */
static void
check_banded (JsonObject   *object,
              double        value,
              const GwBand *band,
              double        factor)
{
  const double shown = value / factor;
  const double rounding = 1e-12 * (fabs (shown) + 1e-3);

  if (!isfinite (value))
    {
      g_assert_true (json_object_get_null_member (object, "value"));
      g_assert_false (json_object_has_member (object, "low"));
      return;
    }

  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, "value"), shown,
                                  rounding);
  g_assert_true (json_object_has_member (object, "low") == (band->high > band->low));
  g_assert_true (json_object_has_member (object, "high") == (band->high > band->low));
  if (band->high <= band->low)
    return;

  g_assert_cmpfloat (json_object_get_double_member (object, "low"), <=,
                     json_object_get_double_member (object, "value"));
  g_assert_cmpfloat (json_object_get_double_member (object, "high"), >=,
                     json_object_get_double_member (object, "value"));
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, "low"),
                                  (value + band->low) / factor, rounding);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, "high"),
                                  (value + band->high) / factor, rounding);
}

static void
check_json_results (JsonObject      *option,
                    const GwOutcome *outcome)
{
  JsonObject *results = json_object_get_object_member (option, "results");
  JsonObject *changes = json_object_get_object_member (option, "against_baseline");

  g_assert_cmpuint (json_object_get_size (results), ==, GW_N_RESULTS);
  g_assert_cmpuint (json_object_get_size (changes), ==, GW_N_RESULTS);
  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      g_autofree char *key = gw_result_key ((GwResultId) i);
      const double     factor = factor_of (key);

      check_banded (json_object_get_object_member (results, key), outcome->results.value[i],
                    &outcome->band[i], factor);
      check_banded (json_object_get_object_member (changes, key), outcome->change[i],
                    &outcome->change_band[i], factor);
    }
}

static void
check_json_pieces (JsonObject      *option,
                   const GwOutcome *outcome)
{
  JsonArray   *pieces = json_object_get_array_member (option, "pieces");
  JsonObject  *results = json_object_get_object_member (option, "results");
  const double mass = json_object_get_double_member (
    json_object_get_object_member (results, "mass_g"), "value");
  const double x = json_object_get_double_member (
    json_object_get_object_member (results, "balance_datum_mm"), "value");
  double sum = 0.0, moment = 0.0;

  g_assert_cmpuint (json_array_get_length (pieces), ==, outcome->results.pieces.n);
  for (guint i = 0; i < json_array_get_length (pieces); i++)
    {
      JsonObject  *piece = json_array_get_object_element (pieces, i);
      const double part = json_object_get_double_member (piece, "mass_g");

      g_assert_cmpfloat (part, >=, 0.0);
      g_assert_cmpstr (json_object_get_string_member (piece, "of"), !=, "");
      g_assert_cmpstr (json_object_get_string_member (piece, "kind"), !=, "");
      sum += part;
      if (!json_object_get_null_member (piece, "x_mm"))
        moment += part * json_object_get_double_member (piece, "x_mm");
    }
  g_assert_cmpfloat_with_epsilon (sum, mass, 1e-9 * mass); /* rounding of a hundred terms */
  g_assert_cmpfloat_with_epsilon (moment, mass * x, 1e-9 * mass * 1000.0);
}

static void
check_json_curve (JsonObject         *option,
                  const GwEvaluation *evaluation,
                  const GwOutcome    *outcome)
{
  JsonArray *curve = json_object_get_array_member (option, "stall_curve");

  g_assert_cmpuint (json_array_get_length (curve), ==, GW_CURVE_N);
  for (guint i = 0; i < GW_CURVE_N; i++)
    {
      JsonObject *point = json_array_get_object_element (curve, i);

      g_assert_cmpfloat_with_epsilon (json_object_get_double_member (point, "mass_g"),
                                      evaluation->curve_mass[i] * 1e3, 1e-9);
      check_banded (json_object_get_object_member (point, "stall_speed_m_s"),
                    outcome->results.curve[i], &outcome->curve_band[i], 1.0);
    }
}

static void
check_json (const GwEvaluation *evaluation)
{
  g_autoptr (JsonObject) root = results_json (evaluation);
  JsonArray *options = json_object_get_array_member (root, "options");

  g_assert_cmpuint (json_array_get_length (options), ==, evaluation->outcomes->len);
  g_assert_cmpstr (json_object_get_string_member (root, "baseline"), ==,
                   gw_evaluation_outcome (evaluation, evaluation->baseline)->id);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
      JsonObject      *option = option_of (root, i);

      g_assert_cmpstr (json_object_get_string_member (option, "id"), ==, outcome->id);
      g_assert_cmpstr (json_object_get_string_member (option, "name"), ==, outcome->name);
      check_json_results (option, outcome);
      check_json_pieces (option, outcome);
      check_json_curve (option, evaluation, outcome);
      g_assert_cmpuint (
        json_array_get_length (json_object_get_array_member (option, "uncertain_inputs")), ==,
        outcome->effects->len);
    }
}

static void
test_json_of_demo (void)
{
  check_json (demo ());
}

/* A glider without a movable item, a tail or a wanted speed: much has no answer and is null. */
static void
test_json_without_answers (void)
{
  g_autofree char *still = sample_replace (SAMPLE_STUDY, "  \"movable\": \"battery\",\n", "");
  g_autofree char *text = sample_replace (still, "\"stall_speed_m_s\": 8, ", "");
  g_autoptr (GwEvaluation) evaluation = evaluate_text (text);
  g_autoptr (JsonObject) root = results_json (evaluation);
  JsonObject *results = json_object_get_object_member (option_of (root, 0), "results");
  JsonObject *target = json_object_get_object_member (results, "target_mass_g");

  check_json (evaluation);
  g_assert_true (json_object_get_null_member (target, "value"));
}

static gboolean
array_holds (JsonArray  *array,
             const char *text)
{
  for (guint i = 0; i < json_array_get_length (array); i++)
    if (g_str_equal (json_array_get_string_element (array, i), text))
      return TRUE;

  return FALSE;
}

static void
test_json_notes (void)
{
  const GwEvaluation *evaluation = demo ();
  g_autoptr (JsonObject) root = results_json (evaluation);

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const unsigned notes = gw_evaluation_outcome (evaluation, i)->results.notes;
      JsonArray     *array = json_object_get_array_member (option_of (root, i), "notes");
      guint          n = 0;

      for (unsigned note = GW_NOTE_TIP_FIRST; note <= GW_NOTE_OUTSIDE_BAY; note <<= 1)
        if (notes & note)
          {
            g_assert_true (array_holds (array, gw_note_key ((GwNote) note)));
            n++;
          }
      g_assert_cmpuint (json_array_get_length (array), ==, n);
    }
}

/* The table. */

static char *
column (const char *line,
        glong       from,
        glong       to)
{
  const glong      n = g_utf8_strlen (line, -1);
  g_autofree char *text = g_utf8_substring (line, MIN (from, n), MIN (to, n));

  return g_strdup (g_strstrip (text));
}

#define VALUE_COLUMNS 25 /* of each option; the labels before them take what they need */

static glong
label_columns (const char *line,
               guint       n_options)
{
  const glong labels = g_utf8_strlen (line, -1) - (glong) n_options * VALUE_COLUMNS;

  g_assert_cmpint (labels, >, 30);
  return labels;
}

static char **
table_lines (const GwEvaluation *evaluation)
{
  g_autofree char *table = gw_results_table (evaluation);

  return g_strsplit (table, "\n", -1);
}

static void
test_table_head (void)
{
  const GwEvaluation *evaluation = demo ();
  g_auto (GStrv) lines = table_lines (evaluation);
  const glong      labels = label_columns (lines[0], evaluation->outcomes->len);
  g_autofree char *title = column (lines[0], 0, labels);

  g_assert_cmpstr (title, ==, evaluation->study->name);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const glong      from = labels + (glong) i * VALUE_COLUMNS;
      g_autofree char *name = column (lines[0], from, from + VALUE_COLUMNS);

      g_assert_cmpstr (name, ==, gw_evaluation_outcome (evaluation, i)->short_name);
    }
}

/* One cell: value, band if there is one, a cross if a limit is not kept. */
static void
check_cell (const char      *cell,
            const GwOutcome *outcome,
            GwResultId       id)
{
  g_autofree char *value = gw_value_text (id, outcome->results.value[id], NULL);
  g_autofree char *band = gw_band_text (id, outcome->results.value[id], &outcome->band[id], NULL);
  g_autofree char *wanted = g_strconcat (
    value, band != NULL ? " (" : "", band != NULL ? band : "", band != NULL ? ")" : "",
    gw_limit_of (outcome, id) == GW_LIMIT_BROKEN ? " " TIMES : "", NULL);

  g_assert_cmpstr (cell, ==, wanted);
}

/* Each result that any option has an answer for has its row, in order, with its unit. */
static void
test_table_rows (void)
{
  const GwEvaluation *evaluation = demo ();
  const guint         n = evaluation->outcomes->len;
  g_auto (GStrv) lines = table_lines (evaluation);
  const glong labels = label_columns (lines[0], n);
  guint       line = 0;

  for (guint id = 0; id < GW_N_RESULTS; id++)
    {
      const GwResultInfo *info = gw_result_info ((GwResultId) id);
      g_autofree char    *label = g_strdup_printf ("%s  %s", info->label,
                                                   gw_quantity_unit (info->quantity)->unit);
      gboolean            is_known = FALSE;

      for (guint i = 0; i < n; i++)
        is_known |= isfinite (gw_evaluation_outcome (evaluation, i)->results.value[id]) != 0;
      if (!is_known)
        continue;

      line++;
      g_assert_true (g_str_has_prefix (lines[line], g_strchomp (label)));
      g_assert_cmpint (label_columns (lines[line], n), ==, labels);
      for (guint i = 0; i < n; i++)
        {
          const glong      from = labels + (glong) i * VALUE_COLUMNS;
          g_autofree char *cell = column (lines[line], from, from + VALUE_COLUMNS);

          check_cell (cell, gw_evaluation_outcome (evaluation, i), (GwResultId) id);
        }
    }
  g_assert_cmpuint (line, >, 20);
  g_assert_cmpstr (lines[line + 1], ==, "");
}

/* Under the rows stands what must be said of each option, under its name. */
static void
test_table_notes (void)
{
  const GwEvaluation *evaluation = demo ();
  g_autofree char    *table = gw_results_table (evaluation);
  guint               n = 0;

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    for (unsigned note = GW_NOTE_TIP_FIRST; note <= GW_NOTE_OUTSIDE_BAY; note <<= 1)
      {
        const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
        g_autofree char *text = g_strdup_printf ("\n%s: %s\n", outcome->name,
                                                 gw_note_text ((GwNote) note));

        g_assert_true ((strstr (table, text) != NULL) == ((outcome->results.notes & note) != 0));
        n += (outcome->results.notes & note) != 0;
      }
  g_assert_cmpuint (n, >, 0);
}

/* Long names are cut, so that two columns stay two. */
static void
test_table_long_names (void)
{
  g_autofree char *one = sample_replace (
    SAMPLE_STUDY, "\"Plank\"", "\"A study whose name is longer than its column by far\"");
  g_autofree char *two = sample_replace (
    one, "\"Thin sheet\"", "\"Sheet so thin that the light falls through\"");
  g_autoptr (GwEvaluation) evaluation = evaluate_text (two);
  g_auto (GStrv) lines = table_lines (evaluation);
  const glong      labels = label_columns (lines[1], 2);
  g_autofree char *title = column (lines[0], 0, labels);
  g_autofree char *first = column (lines[0], labels, labels + VALUE_COLUMNS);
  g_autofree char *second = column (lines[0], labels + VALUE_COLUMNS, labels + 2 * VALUE_COLUMNS);

  g_assert_true (g_str_has_prefix (title, "A study whose name is longer"));
  g_assert_true (g_str_has_suffix (title, ELLIPSIS));
  g_assert_cmpstr (first, ==, "Sheet so thin that the" ELLIPSIS);
  g_assert_cmpstr (second, ==, "thick");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/report/values/numbers", test_number_texts);
  g_test_add_func ("/report/values/no-answer", test_no_answer);
  g_test_add_func ("/report/values/bands", test_band_texts);
  g_test_add_func ("/report/values/limits", test_limits);
  g_test_add_func ("/report/json/demo", test_json_of_demo);
  g_test_add_func ("/report/json/without-answers", test_json_without_answers);
  g_test_add_func ("/report/json/notes", test_json_notes);
  g_test_add_func ("/report/table/head", test_table_head);
  g_test_add_func ("/report/table/rows", test_table_rows);
  g_test_add_func ("/report/table/notes", test_table_notes);
  g_test_add_func ("/report/table/long-names", test_table_long_names);

  return g_test_run ();
}
