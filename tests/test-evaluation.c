/* test-evaluation.c - options compared, and bands that leave out what is shared
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "sample-study.h"
#include "study/gw-evaluation.h"
#include "study/gw-result.h"

static GwEvaluation *
evaluate (const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_parse (text, strlen (text), NULL, &error);
  GwEvaluation *evaluation;

  g_assert_no_error (error);
  evaluation = gw_evaluation_new (study, NULL, &error);
  g_assert_no_error (error);
  return evaluation;
}

static double
value (const GwEvaluation *evaluation,
       guint               option,
       GwResultId          id)
{
  return gw_evaluation_outcome (evaluation, option)->results.value[id];
}

/* Skin of the sample's wing, both halves. The sides of a NACA 2412 of unit chord are
 * 2.0413 long (computed closed form, from memory) and the gap of its trailing edge is
 * 0.0025 high: at 200 mm chord and 1.2 m span 0.4905 m2. */
#define PERIMETER (2.0413 + 0.0025)
#define SKIN      (PERIMETER * 0.2 * 1.2)

static void
test_mass_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate (SAMPLE_STUDY);
  /* Glue of 2.5 g/m along nose and tail; 6 g/m of adhesive round the joint at the root. */
  const double glue = 0.0025 * 2.0 * 1.2 + 0.006 * PERIMETER * 0.2;

  /* 0.05 %: the perimeter above is that of thickness laid on vertically. */
  g_assert_cmpfloat_with_epsilon (value (evaluation, 0, GW_RESULT_MASS), 0.180 + 0.3 * SKIN + glue,
                                  5e-4 * 0.33);
  g_assert_cmpfloat_with_epsilon (value (evaluation, 1, GW_RESULT_MASS), 0.180 + 0.4 * SKIN + glue,
                                  5e-4 * 0.38);
}

/* The battery's spread of 6 g and the sheet's 280 to 340 g/m2 are independent, so the
 * band is the root of the sum of their squares; the second option gives the sheet a
 * certain 400 g/m2, so there the battery is left alone. */
static void
test_bands_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate (SAMPLE_STUDY);
  const GwBand *thin = &gw_evaluation_outcome (evaluation, 0)->band[GW_RESULT_MASS];
  const GwBand *thick = &gw_evaluation_outcome (evaluation, 1)->band[GW_RESULT_MASS];
  const double  battery = GW_Z90 * 0.006;

  g_assert_cmpfloat_with_epsilon (thin->high, hypot (battery, 0.04 * SKIN), 2e-5); /* [kg] */
  g_assert_cmpfloat_with_epsilon (thin->low, -hypot (battery, 0.02 * SKIN), 2e-5);
  g_assert_cmpfloat_with_epsilon (thick->high, battery, 1e-9);
  g_assert_cmpfloat_with_epsilon (thick->low, -battery, 1e-9);
}

/* Both options carry the same battery: it is in both bands and not in that of the difference. */
static void
test_shared_inputs_cancel (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate (SAMPLE_STUDY);
  const GwOutcome *thick = gw_evaluation_outcome (evaluation, 1);

  g_assert_cmpfloat_with_epsilon (thick->change[GW_RESULT_MASS], 0.1 * SKIN, 1e-4);
  g_assert_cmpfloat_with_epsilon (thick->change_band[GW_RESULT_MASS].high, 0.02 * SKIN, 2e-5);
  g_assert_cmpfloat_with_epsilon (thick->change_band[GW_RESULT_MASS].low, -0.04 * SKIN, 2e-5);

  /* The baseline differs from itself by nothing, for certain. */
  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      const GwOutcome *thin = gw_evaluation_outcome (evaluation, 0);

      if (!isfinite (thin->results.value[i]))
        continue;
      g_assert_cmpfloat (thin->change[i], ==, 0.0);
      g_assert_cmpfloat (thin->change_band[i].high, ==, 0.0);
      g_assert_cmpfloat (thin->change_band[i].low, ==, 0.0);
    }
}

/* A heavier sheet is heavier everywhere it should be and nowhere else. */
static void
test_material_change_is_consistent (void)
{
  g_autofree char *heavy =
    sample_replace (SAMPLE_STUDY, "\"low\": 280, \"typical\": 300, \"high\": 340",
                    "\"low\": 380, \"typical\": 400, \"high\": 440");
  g_autoptr (GwEvaluation) before = evaluate (SAMPLE_STUDY);
  g_autoptr (GwEvaluation) after = evaluate (heavy);

  g_assert_cmpfloat (value (after, 0, GW_RESULT_MASS), >, value (before, 0, GW_RESULT_MASS));
  g_assert_cmpfloat (value (after, 0, GW_RESULT_WING_MASS), >,
                     value (before, 0, GW_RESULT_WING_MASS));
  g_assert_cmpfloat (value (after, 0, GW_RESULT_WING_LOADING), >,
                     value (before, 0, GW_RESULT_WING_LOADING));
  g_assert_cmpfloat (value (after, 0, GW_RESULT_STALL_SPEED), >,
                     value (before, 0, GW_RESULT_STALL_SPEED));
  g_assert_cmpfloat (value (after, 0, GW_RESULT_IXX), >, value (before, 0, GW_RESULT_IXX));
  /* The wing lies behind the battery, so the balance point goes aft. */
  g_assert_cmpfloat (value (after, 0, GW_RESULT_BALANCE_X), >,
                     value (before, 0, GW_RESULT_BALANCE_X));
  g_assert_cmpfloat (value (after, 0, GW_RESULT_NEUTRAL_POINT), ==,
                     value (before, 0, GW_RESULT_NEUTRAL_POINT));
  g_assert_cmpfloat (value (after, 0, GW_RESULT_WING_AREA), ==,
                     value (before, 0, GW_RESULT_WING_AREA));
  /* The option that sets the sheet itself does not care. */
  g_assert_cmpfloat (value (after, 1, GW_RESULT_MASS), ==, value (before, 1, GW_RESULT_MASS));
}

/* A reading replaces the estimate, is certain, and counts as weighed. */
static void
test_weighed_wing (void)
{
  g_autofree char *text = sample_replace (SAMPLE_STUDY, "\"role\": \"wing\",\n      \"x_mm\": 100,",
                                          "\"role\": \"wing\", \"x_mm\": 100, \"mass_g\": "
                                          "{\"value\": 170, \"origin\": \"weighed\"},");
  g_autoptr (GwEvaluation) evaluation = evaluate (text);

  g_assert_cmpfloat_with_epsilon (value (evaluation, 0, GW_RESULT_MASS), 0.350, 1e-9);
  g_assert_cmpfloat_with_epsilon (value (evaluation, 0, GW_RESULT_WEIGHED_SHARE), 170.0 / 350.0,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (gw_evaluation_outcome (evaluation, 0)->band[GW_RESULT_MASS].high,
                                  GW_Z90 * 0.006, 1e-9);
}

/* A battery of 180 g that may be 200 g off weighs nothing at worst, not less. */
static void
test_band_ends_at_the_bounds (void)
{
  g_autofree char *text = sample_replace (SAMPLE_STUDY, "\"spread\": 6", "\"spread\": 200");
  g_autoptr (GwEvaluation) evaluation = evaluate (text);
  const GwBand *thin = &gw_evaluation_outcome (evaluation, 0)->band[GW_RESULT_MASS];

  g_assert_cmpfloat_with_epsilon (thin->low, -hypot (0.180, 0.02 * SKIN), 2e-5); /* [kg] */
  g_assert_cmpfloat_with_epsilon (thin->high, hypot (GW_Z90 * 0.2, 0.04 * SKIN), 2e-5);
}

/* What the fields allow is computed: formers closer than any are cut, and a share of the spread
 * that would leave no lift. */
static void
test_odd_values (void)
{
  g_autofree char *close = sample_replace (SAMPLE_STUDY, "\"strips\": 0",
                                           "\"strips\": 0, \"former_pitch_mm\": 0.6");
  g_autofree char *wide = sample_replace (
    SAMPLE_STUDY, "\"cl_max\": 1.2 }",
    "\"cl_max\": 1.2, \"spread_share\": 10 }");
  g_autofree char *low = sample_replace (wide, "\"code\": \"2412\"",
                                         "\"code\": \"2412\", \"cl_max_factor\": 0.5");
  g_autoptr (GwEvaluation) formers = evaluate (close), lift = evaluate (low);

  g_assert_cmpfloat (value (formers, 0, GW_RESULT_MASS), >, 0.2);
  g_assert_cmpfloat (value (lift, 0, GW_RESULT_STALL_SPEED), >, 0.0);
}

static void
test_curve (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate (SAMPLE_STUDY);

  for (guint o = 0; o < 2; o++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, o);

      g_assert_cmpfloat (evaluation->curve_mass[0], <, outcome->results.value[GW_RESULT_MASS]);
      g_assert_cmpfloat (evaluation->curve_mass[GW_CURVE_N - 1], >,
                         outcome->results.value[GW_RESULT_MASS]);
      for (guint i = 1; i < GW_CURVE_N; i++)
        g_assert_cmpfloat (outcome->results.curve[i], >, outcome->results.curve[i - 1]);
    }
}

/* The quick way gives the same values, and keeps the bands it was given. */
static void
test_quick (void)
{
  g_autoptr (GwEvaluation) full = evaluate (SAMPLE_STUDY);
  g_autoptr (GwEvaluation) quick = gw_evaluation_quick (full->study, full, NULL);
  g_autoptr (GwEvaluation) bare = gw_evaluation_quick (full->study, NULL, NULL);

  g_assert_true (quick->is_quick);
  for (guint o = 0; o < 2; o++)
    for (guint i = 0; i < GW_N_RESULTS; i++)
      {
        const GwOutcome *a = gw_evaluation_outcome (full, o);
        const GwOutcome *b = gw_evaluation_outcome (quick, o);

        if (isfinite (a->results.value[i]))
          {
            g_assert_cmpfloat (a->results.value[i], ==, b->results.value[i]);
            g_assert_cmpfloat (a->change[i], ==, b->change[i]);
          }
        g_assert_cmpfloat (a->band[i].high, ==, b->band[i].high);
        g_assert_cmpfloat (gw_evaluation_outcome (bare, o)->band[i].high, ==, 0.0);
      }
}

static void
test_cancel (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (gw_evaluation_new (study, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* Every result and every kind of piece has its row, and no key stands twice. */
static void
test_result_table (void)
{
  g_autoptr (GHashTable) keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      g_assert_nonnull (gw_result_info ((GwResultId) i)->key);
      g_assert_nonnull (gw_result_info ((GwResultId) i)->label);
      g_assert_true (g_hash_table_add (keys, gw_result_key ((GwResultId) i)));
    }
  for (guint i = 0; i < GW_N_PIECE_KINDS; i++)
    g_assert_nonnull (gw_piece_kind_label ((GwPieceKind) i));
  for (unsigned note = GW_NOTE_TIP_FIRST; note <= GW_NOTE_OUTSIDE_BAY; note <<= 1)
    {
      g_assert_nonnull (gw_note_text ((GwNote) note));
      g_assert_nonnull (gw_note_key ((GwNote) note));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/evaluation/mass-of-sample", test_mass_of_sample);
  g_test_add_func ("/study/evaluation/bands-of-sample", test_bands_of_sample);
  g_test_add_func ("/study/evaluation/shared-inputs-cancel", test_shared_inputs_cancel);
  g_test_add_func ("/study/evaluation/material-change", test_material_change_is_consistent);
  g_test_add_func ("/study/evaluation/weighed-wing", test_weighed_wing);
  g_test_add_func ("/study/evaluation/band-ends-at-the-bounds", test_band_ends_at_the_bounds);
  g_test_add_func ("/study/evaluation/odd-values", test_odd_values);
  g_test_add_func ("/study/evaluation/curve", test_curve);
  g_test_add_func ("/study/evaluation/quick", test_quick);
  g_test_add_func ("/study/evaluation/cancel", test_cancel);
  g_test_add_func ("/study/result/table", test_result_table);

  return g_test_run ();
}
