/* test-derivation.c - where a result comes from, and that it does come from there
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "demos.h"
#include "report/gw-amount.h"
#include "report/gw-derivation.h"
#include "sample-study.h"
#include "study/gw-edit.h"

#define MINUS "\342\210\222" /* U+2212 */

static GwEvaluation *
evaluate_study (GwStudy *study)
{
  g_autoptr (GError) error = NULL;
  GwEvaluation *evaluation = gw_evaluation_new (study, NULL, &error);

  g_assert_no_error (error);
  return evaluation;
}

static GwEvaluation *
evaluate_demo (const char *name)
{
  g_autoptr (GwStudy) study = demo_load (name);

  return evaluate_study (study);
}

static GwEvaluation *
evaluate_sample (void)
{
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);

  return evaluate_study (study);
}

static GwDerivation *
derive (const GwEvaluation *evaluation,
        guint               option,
        GwResultId          id)
{
  return gw_derivation_new (evaluation, option, id, gw_units_standard ());
}

/* The number a text begins with, as a person would read it. */
static double
read_number (const char *text)
{
  const gboolean is_negative = g_str_has_prefix (text, MINUS);
  char          *end = NULL;
  const char    *begin = text + (is_negative ? strlen (MINUS) : 0);
  const double   number = g_ascii_strtod (begin, &end);

  g_assert_true (end != begin);
  return is_negative ? -number : number;
}

static const GwDerivationRow *
find_step (const GwDerivation *derivation,
           const char         *key)
{
  const GPtrArray *rows = derivation->sections[GW_DERIVATION_STEPS].rows;

  for (guint i = 0; i < rows->len; i++)
    if (g_strcmp0 (((GwDerivationRow *) g_ptr_array_index (rows, i))->key, key) == 0)
      return g_ptr_array_index (rows, i);

  return NULL;
}

static double
step (const GwDerivation *derivation,
      const char         *key)
{
  const GwDerivationRow *row = find_step (derivation, key);

  g_assert_nonnull (row);
  return read_number (row->value);
}

/* What is computed from the shown steps agrees with the shown result: half of its last digit,
 * and the same again for the five digits of the steps. */
static void
assert_recomputes (const GwDerivation *derivation,
                   double              computed)
{
  const int    decimals = gw_result_info (derivation->id)->decimals;
  const double last = pow (10.0, -decimals);

  if (!(fabs (computed - read_number (derivation->value)) <= last))
    g_error ("%s of %s: %.6g comes out of the steps, %s is shown", derivation->label,
             derivation->option, computed, derivation->value);
}

static void
check_rows (const GwEvaluation        *evaluation,
            const GwDerivationSection *section)
{
  for (guint i = 0; i < section->rows->len; i++)
    {
      const GwDerivationRow *row = g_ptr_array_index (section->rows, i);

      g_assert_cmpstr (row->label, !=, "");
      g_assert_cmpstr (row->value, !=, "");
      g_assert_null (strstr (row->value, "nan"));
      g_assert_null (strstr (row->value, "inf"));
      if (row->path != NULL)
        g_assert_nonnull (gw_edit_record (evaluation->study, row->path));
    }
}

/* The shares are rounded to a tenth of a per cent, each by at most half of that. */
static void
check_band (const GwDerivation *derivation)
{
  const GwDerivationSection *section = &derivation->sections[GW_DERIVATION_BAND];
  double                     sum = 0.0, last = 100.0;

  g_assert_nonnull (section->text);
  if (derivation->band != NULL)
    g_assert_cmpuint (section->rows->len, >, 0);
  for (guint i = 0; i < section->rows->len; i++)
    {
      const GwDerivationRow *row = g_ptr_array_index (section->rows, i);
      const double           share = read_number (row->value);

      if (g_str_equal (row->key, "share"))
        {
          g_assert_cmpfloat (share, <=, last);
          last = share;
        }
      sum += share;
    }
  if (section->rows->len > 0)
    g_assert_cmpfloat_with_epsilon (sum, 100.0, 0.05 * section->rows->len + 1e-6);
}

static void
test_all (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo (name);

  for (guint option = 0; option < evaluation->outcomes->len; option++)
    for (guint id = 0; id < GW_N_RESULTS; id++)
      {
        g_autoptr (GwDerivation) derivation = derive (evaluation, option, (GwResultId) id);
        const GwDerivationSection *sections = derivation->sections;
        g_autofree char           *text = gw_derivation_text (derivation);

        g_assert_nonnull (sections[GW_DERIVATION_WHAT].text);
        g_assert_nonnull (sections[GW_DERIVATION_METHOD].text);
        g_assert_nonnull (sections[GW_DERIVATION_METHOD].source);
        g_assert_cmpuint (sections[GW_DERIVATION_STEPS].rows->len, >, 0);
        g_assert_cmpuint (sections[GW_DERIVATION_INPUTS].rows->len, >, 0);
        for (guint i = 0; i < GW_N_DERIVATION_PARTS; i++)
          {
            check_rows (evaluation, &sections[i]);
            g_assert_nonnull (strstr (text, sections[i].title));
          }
        check_band (derivation);
        g_assert_nonnull (strstr (text, derivation->value));
      }
}

static void
check_stall (const GwEvaluation *evaluation,
             guint               option)
{
  g_autoptr (GwDerivation) stall = derive (evaluation, option, GW_RESULT_STALL_SPEED);
  g_autoptr (GwDerivation) lift = derive (evaluation, option, GW_RESULT_CL_MAX);
  g_autoptr (GwDerivation) reynolds = derive (evaluation, option, GW_RESULT_STALL_RE);
  const double weight = step (stall, "mass") * 1e-3 * step (stall, "gravity");
  const double speed = step (lift, "speed");
  const double share = step (stall, "density") * step (stall, "area") * step (stall, "lift");

  assert_recomputes (stall, sqrt (2.0 * weight / share));
  assert_recomputes (lift, 2.0 * weight /
                             (step (lift, "density") * step (lift, "area") * speed * speed));

  /* A Reynolds number has six digits and its steps five. */
  g_assert_cmpfloat_with_epsilon (step (reynolds, "density") * step (reynolds, "speed") *
                                    step (reynolds, "chord") * 1e-3 /
                                    (step (reynolds, "viscosity") * 1e-6),
                                  read_number (reynolds->value),
                                  2e-4 * read_number (reynolds->value));
}

static void
check_mass (const GwEvaluation *evaluation,
            guint               option,
            GwResultId          id)
{
  g_autoptr (GwDerivation) mass = derive (evaluation, option, id);
  const GPtrArray *rows = mass->sections[GW_DERIVATION_STEPS].rows;
  double           things = 0.0, pieces = 0.0, thing = 0.0;

  for (guint i = 0; i < rows->len; i++)
    {
      const GwDerivationRow *row = g_ptr_array_index (rows, i);

      if (g_str_equal (row->key, "thing"))
        {
          if (pieces > 0.0)
            g_assert_cmpfloat_with_epsilon (pieces, thing, 1e-4 * thing);
          thing = read_number (row->value);
          things += thing;
          pieces = 0.0;
        }
      else if (g_str_equal (row->key, "piece"))
        pieces += read_number (row->value);
    }
  assert_recomputes (mass, things);
  g_assert_cmpfloat_with_epsilon (things, step (mass, "sum"), 2e-4 * things);
}

static void
check_balance (const GwEvaluation *evaluation,
               guint               option)
{
  const GwResultId along[] = { GW_RESULT_BALANCE_X, GW_RESULT_BALANCE_Y, GW_RESULT_BALANCE_Z };
  g_autoptr (GwDerivation) root = derive (evaluation, option, GW_RESULT_BALANCE_ROOT);
  g_autoptr (GwDerivation) chord = derive (evaluation, option, GW_RESULT_BALANCE_MAC);

  for (guint i = 0; i < G_N_ELEMENTS (along); i++)
    {
      g_autoptr (GwDerivation) balance = derive (evaluation, option, along[i]);

      assert_recomputes (balance, step (balance, "moment") / step (balance, "mass"));
    }
  assert_recomputes (root,
                     step (root, "moment") / step (root, "mass") - step (root, "root-edge"));
  assert_recomputes (chord, 100.0 * (step (chord, "balance") - step (chord, "chord-edge")) /
                              step (chord, "chord"));
}

static void
check_solvers (const GwEvaluation *evaluation,
               guint               option)
{
  g_autoptr (GwDerivation) slide = derive (evaluation, option, GW_RESULT_SLIDE);
  g_autoptr (GwDerivation) ballast = derive (evaluation, option, GW_RESULT_BALLAST);
  g_autoptr (GwDerivation) fore = derive (evaluation, option, GW_RESULT_TRAVEL_FORE);

  if (isfinite (gw_evaluation_outcome (evaluation, option)->results.value[GW_RESULT_SLIDE]))
    {
      /* The difference of two places of five digits, times how much heavier the whole is. */
      const double ratio = step (slide, "mass") / step (slide, "item-mass");

      g_assert_cmpfloat_with_epsilon (
        (step (slide, "wanted") - step (slide, "balance")) * ratio, read_number (slide->value),
        0.5 + 0.011 * ratio);
      g_assert_cmpfloat_with_epsilon (step (slide, "place") - step (slide, "item-place"),
                                      read_number (slide->value), 0.52);
      assert_recomputes (fore, step (fore, "balance") +
                                 step (fore, "item-mass") *
                                   (step (fore, "bay-fore") - step (fore, "item-place")) /
                                   step (fore, "mass"));
    }
  if (isfinite (gw_evaluation_outcome (evaluation, option)->results.value[GW_RESULT_BALLAST]))
    assert_recomputes (ballast, step (ballast, "mass") *
                                  (step (ballast, "wanted") - step (ballast, "reached")) /
                                  (step (ballast, "lead-place") - step (ballast, "wanted")));
}

static void
check_stability (const GwEvaluation *evaluation,
                 guint               option)
{
  g_autoptr (GwDerivation) margin = derive (evaluation, option, GW_RESULT_STATIC_MARGIN);
  g_autoptr (GwDerivation) aft = derive (evaluation, option, GW_RESULT_AFT_LIMIT);
  g_autoptr (GwDerivation) slope = derive (evaluation, option, GW_RESULT_LIFT_SLOPE);
  g_autoptr (GwDerivation) neutral = derive (evaluation, option, GW_RESULT_NEUTRAL_POINT);
  const GPtrArray *rows = neutral->sections[GW_DERIVATION_STEPS].rows;
  double           sum = 0.0, moment = 0.0, share = 0.0, centre = 0.0;

  assert_recomputes (margin, 100.0 * (step (margin, "neutral-point") - step (margin, "balance")) /
                               step (margin, "chord"));
  assert_recomputes (aft, step (aft, "neutral-point") -
                            0.01 * step (aft, "wanted") * step (aft, "chord"));

  /* Slope times area, less what the wake takes, surface by surface. */
  for (guint i = 0; i <= rows->len; i++)
    {
      const GwDerivationRow *row = i < rows->len ? g_ptr_array_index (rows, i) : NULL;
      const char            *key = row != NULL ? row->key : "surface";

      if (g_str_equal (key, "surface") || g_str_equal (key, "total-slope"))
        {
          sum += share;
          moment += share * centre;
          share = 0.0;
        }
      else if (g_str_equal (key, "slope"))
        share = read_number (row->value);
      else if (g_str_equal (key, "surface-area") || g_str_equal (key, "efficiency"))
        share *= read_number (row->value);
      else if (g_str_equal (key, "downwash"))
        share *= 1.0 - read_number (row->value);
      else if (g_str_equal (key, "centre"))
        centre = read_number (row->value);
    }
  assert_recomputes (slope, sum / step (slope, "area"));
  assert_recomputes (neutral, moment / sum + step (neutral, "bodies"));
}

static void
check_shape (const GwEvaluation *evaluation,
             guint               option)
{
  const GwResultId sums[] = { GW_RESULT_WING_AREA, GW_RESULT_WETTED_AREA, GW_RESULT_IYY,
                              GW_RESULT_IXZ };
  g_autoptr (GwDerivation) loading = derive (evaluation, option, GW_RESULT_WING_LOADING);
  g_autoptr (GwDerivation) ratio = derive (evaluation, option, GW_RESULT_ASPECT_RATIO);
  g_autoptr (GwDerivation) weighed = derive (evaluation, option, GW_RESULT_WEIGHED_SHARE);
  g_autoptr (GwDerivation) tail = derive (evaluation, option, GW_RESULT_TAIL_VOLUME);

  for (guint k = 0; k < G_N_ELEMENTS (sums); k++)
    {
      g_autoptr (GwDerivation) derivation = derive (evaluation, option, sums[k]);
      const GPtrArray *rows = derivation->sections[GW_DERIVATION_STEPS].rows;
      double           sum = 0.0;

      for (guint i = 0; i < rows->len; i++)
        if (g_str_equal (((GwDerivationRow *) g_ptr_array_index (rows, i))->key, "thing"))
          sum += read_number (((GwDerivationRow *) g_ptr_array_index (rows, i))->value);
      assert_recomputes (derivation, sum);
    }

  assert_recomputes (loading, step (loading, "mass") / (100.0 * step (loading, "area")));
  assert_recomputes (ratio, pow (step (ratio, "span") * 1e-3, 2.0) / step (ratio, "area"));
  assert_recomputes (weighed, 100.0 * step (weighed, "weighed") / step (weighed, "mass"));
  if (find_step (tail, "arm") != NULL && find_step (tail, "dihedral") == NULL)
    assert_recomputes (tail, step (tail, "surface-area") * step (tail, "arm") /
                               (step (tail, "area") * step (tail, "chord")));
}

static void
test_recompute (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo (name);

  for (guint option = 0; option < evaluation->outcomes->len; option++)
    {
      check_stall (evaluation, option);
      check_mass (evaluation, option, GW_RESULT_MASS);
      check_mass (evaluation, option, GW_RESULT_WING_MASS);
      check_balance (evaluation, option);
      check_solvers (evaluation, option);
      check_stability (evaluation, option);
      check_shape (evaluation, option);
    }
}

/* What every number of one option does when it is moved a little. */
typedef struct
{
  const GwEvaluation *evaluation;
  const GwOutcome    *outcome;
  GwStudy            *study; /* resolved, a copy to be moved */
  GHashTable         *listed[GW_N_RESULTS];
  guint               n_checked;
} Moving;

/* A number of no consequence may shift a sum by rounding; what counts moves the result by more
 * than a ten-thousandth of a ten-thousandth of its scale. */
static gboolean
is_moved (double before,
          double after,
          double scale)
{
  return fabs (after - before) > 1e-8 * MAX (fabs (scale), 1e-3);
}

static void
move_cb (const char    *path,
         GwRecord      *record,
         const GwField *field,
         gpointer       data)
{
  Moving   *moving = data;
  GwNumber *number = gw_record_at (record, field);
  GwResults moved = { 0 };
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwAssembly) assembly = NULL;
  double kept;

  if (field->kind != GW_FIELD_NUMBER || field->quantity == GW_COUNT || isnan (number->value) ||
      !gw_record_has (record, field) || gw_number_is_uncertain (number) ||
      record->type == gw_study_section_row_type () || record->type == gw_study_point_type ())
    return;

  kept = number->value;
  number->value = kept == 0.0 ? 1e-3 : kept * 1.001;
  if (number->value < field->least || number->value > field->most)
    number->value = kept * 0.999;
  assembly = gw_assemble (moving->study, NULL, problems);
  number->value = kept;
  if (assembly == NULL)
    return;

  if (gw_evaluate (&assembly->aircraft, NULL, &moved) == GW_OK)
    for (guint id = 0; id < GW_N_RESULTS; id++)
      {
        const double before = moving->outcome->results.value[id];

        if (isfinite (before) && isfinite (moved.value[id]) &&
            is_moved (before, moved.value[id], before) &&
            !g_hash_table_contains (moving->listed[id], path))
          {
            g_test_message ("%s moves %s from %.9g to %.9g and is not listed", path,
                            gw_result_info ((GwResultId) id)->key, before, moved.value[id]);
            g_test_fail ();
          }
        moving->n_checked++;
      }
  gw_results_clear (&moved);
}

/* Every number of the study that moves a result stands among its inputs. */
static void
test_inputs_complete (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo (name);

  for (guint option = 0; option < evaluation->outcomes->len; option++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, option);
      g_autoptr (GwStudy) study = gw_study_copy (outcome->assembly->study);
      Moving moving = { evaluation, outcome, study, { NULL }, 0 };

      for (guint id = 0; id < GW_N_RESULTS; id++)
        {
          g_autoptr (GwDerivation) derivation = derive (evaluation, option, (GwResultId) id);
          const GPtrArray *rows = derivation->sections[GW_DERIVATION_INPUTS].rows;

          moving.listed[id] = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
          for (guint i = 0; i < rows->len; i++)
            {
              const GwDerivationRow *row = g_ptr_array_index (rows, i);

              if (row->field != NULL)
                g_assert_true (g_hash_table_add (moving.listed[id], g_strdup (row->field)));
            }
        }
      gw_record_each (&study->record, "", move_cb, &moving);
      g_assert_cmpuint (moving.n_checked, >, 1000);
      for (guint id = 0; id < GW_N_RESULTS; id++)
        g_hash_table_unref (moving.listed[id]);
    }
}

static const GwDerivationRow *
find_input (const GwDerivation *derivation,
            const char         *field)
{
  const GPtrArray *rows = derivation->sections[GW_DERIVATION_INPUTS].rows;

  for (guint i = 0; i < rows->len; i++)
    if (g_strcmp0 (((GwDerivationRow *) g_ptr_array_index (rows, i))->field, field) == 0)
      return g_ptr_array_index (rows, i);

  return NULL;
}

static void
test_inputs_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwDerivation) thin = derive (evaluation, 0, GW_RESULT_MASS);
  g_autoptr (GwDerivation) thick = derive (evaluation, 1, GW_RESULT_MASS);
  g_autoptr (GwDerivation) air = derive (evaluation, 0, GW_RESULT_DENSITY);
  const GwDerivationRow *battery = find_input (thin, "equipment/battery/mass_g");
  const GwDerivationRow *sheet = find_input (thin, "materials/sheet/areal_g_m2");
  const GwDerivationRow *changed = find_input (thick, "materials/sheet/areal_g_m2");

  /* A spread of 6 g: the 10th percentile is 1.2816 times that below. */
  g_assert_nonnull (battery);
  g_assert_cmpstr (battery->value, ==, "180 (172.3 to 187.7) g");
  g_assert_cmpstr (battery->origin, ==, "catalogue");
  g_assert_cmpstr (battery->path, ==, "equipment/battery");
  g_assert_nonnull (sheet);
  g_assert_cmpstr (sheet->value, ==, "300 (280 to 340) g/m²");
  g_assert_cmpstr (changed->value, ==, "400 g/m²");
  g_assert_cmpstr (changed->origin, ==, "given, for this option");

  g_assert_null (find_input (thin, "day/temperature_c"));
  g_assert_nonnull (find_input (air, "day/temperature_c"));
  g_assert_cmpstr (find_input (air, "day/temperature_c")->origin, ==, "standard");
  g_assert_null (find_input (air, "day/wind_m_s"));
  g_assert_null (find_input (air, "equipment/battery/mass_g"));
}

/* A seam of half a millimetre across the wing of the demo's last option. */
static GwEvaluation *
evaluate_seam (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  const GwStudyOption *option = g_ptr_array_index (study->options, 3);
  GwStudyBuild        *build = g_ptr_array_index (option->builds, 0);

  gw_number_set (&build->step_mm, 0.5);
  gw_record_set_present (&build->record, gw_record_type_field (build->record.type, "step_mm"),
                         TRUE);
  return evaluate_study (study);
}

/* What disturbs the flow is among the steps, beside what the section would do without. Grain
 * counts of what lies outside, not of what is under it or of spars. */
static void
test_finish (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_seam ();
  g_autoptr (GwDerivation) core = derive (evaluation, 1, GW_RESULT_STALL_SPEED);
  g_autoptr (GwDerivation) seam = derive (evaluation, 3, GW_RESULT_STALL_SPEED);
  g_autoptr (GwDerivation) mass = derive (evaluation, 3, GW_RESULT_MASS);

  g_assert_cmpstr (find_step (core, "finish")->value, ==, "0.010 mm"); /* paint */
  g_assert_cmpfloat (step (core, "section-lift"), ==, step (core, "smooth-lift"));
  g_assert_nonnull (find_input (core, "materials/paint-coat/grain_mm"));
  g_assert_null (find_input (core, "materials/pla/grain_mm"));

  g_assert_cmpstr (find_step (seam, "finish")->label, ==, "step across the stream there");
  g_assert_cmpstr (find_step (seam, "finish")->value, ==, "0.500 mm");
  g_assert_cmpfloat (step (seam, "section-lift"), <, 0.99 * step (seam, "smooth-lift"));
  g_assert_nonnull (find_input (seam, "options/solid/builds/1/step_mm"));
  g_assert_nonnull (find_input (seam, "materials/pla/grain_mm"));
  g_assert_null (find_input (seam, "materials/spruce/grain_mm"));
  g_assert_null (find_input (mass, "options/solid/builds/1/step_mm"));
}

/* The battery's 6 g against the sheet's 280 to 340 g/m2 on 0.4905 m2 of skin (see
 * test-evaluation.c): 2 x 7.69^2 against 19.6^2 + 9.8^2, all in g. */
static void
test_band_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwDerivation) mass = derive (evaluation, 0, GW_RESULT_MASS);
  g_autoptr (GwDerivation) span = derive (evaluation, 0, GW_RESULT_SPAN);
  const GPtrArray *rows = mass->sections[GW_DERIVATION_BAND].rows;
  const double     battery = 2.0 * pow (GW_Z90 * 6.0, 2.0);
  const double     sheet = pow (0.4905 * 40.0, 2.0) + pow (0.4905 * 20.0, 2.0);

  g_assert_cmpuint (rows->len, ==, 2);
  /* A tenth of a per cent is shown. */
  g_assert_cmpfloat_with_epsilon (
    read_number (((GwDerivationRow *) g_ptr_array_index (rows, 0))->value),
    100.0 * sheet / (sheet + battery), 0.15);
  g_assert_cmpstr (((GwDerivationRow *) g_ptr_array_index (rows, 0))->path, ==, "materials/sheet");
  g_assert_cmpstr (((GwDerivationRow *) g_ptr_array_index (rows, 1))->path, ==,
                   "equipment/battery");

  g_assert_null (span->band);
  g_assert_cmpuint (span->sections[GW_DERIVATION_BAND].rows->len, ==, 0);
  g_assert_nonnull (strstr (span->sections[GW_DERIVATION_BAND].text, "no band"));
}

static void
test_quick (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwEvaluation) quick = gw_evaluation_quick (evaluation->study, evaluation, NULL);
  g_autoptr (GwDerivation) mass = derive (quick, 0, GW_RESULT_MASS);

  g_assert_null (mass->band);
  g_assert_cmpuint (mass->sections[GW_DERIVATION_BAND].rows->len, ==, 0);
  g_assert_cmpstr (mass->sections[GW_DERIVATION_BAND].text, ==, "The band is being computed.");
  g_assert_nonnull (find_input (mass, "equipment/battery/mass_g"));
  g_assert_nonnull (find_input (mass, "materials/sheet/areal_g_m2"));
}

static void
test_units (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  GwUnits units = *gw_units_standard ();
  g_autoptr (GwDerivation) mass = NULL;
  g_autoptr (GwDerivation) balance = NULL;

  g_assert_true (gw_units_set (&units, GW_G, "oz"));
  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  mass = gw_derivation_new (evaluation, 0, GW_RESULT_MASS, &units);
  balance = gw_derivation_new (evaluation, 0, GW_RESULT_BALANCE_X, &units);
  g_assert_true (g_str_has_suffix (mass->value, " oz"));
  g_assert_cmpfloat_with_epsilon (
    step (mass, "sum"),
    gw_evaluation_outcome (evaluation, 0)->results.value[GW_RESULT_MASS] / 0.028349523125, 1e-3);
  g_assert_true (g_str_has_suffix (find_step (balance, "moment")->value, " oz in"));
  g_assert_cmpfloat_with_epsilon (step (balance, "moment") / step (balance, "mass"),
                                  read_number (balance->value), 0.01);
}

static void
test_find (void)
{
  GwResultId id;

  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      g_autofree char *key = gw_result_key ((GwResultId) i);

      g_assert_true (gw_derivation_find (key, &id));
      g_assert_cmpuint (id, ==, i);
      g_assert_true (gw_derivation_find (gw_result_info ((GwResultId) i)->key, &id));
      g_assert_cmpuint (id, ==, i);
    }
  g_assert_false (gw_derivation_find ("cheese", &id));
  g_assert_false (gw_derivation_find ("", &id));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/report/derivation/find", test_find);
  g_test_add_func ("/report/derivation/inputs", test_inputs_of_sample);
  g_test_add_func ("/report/derivation/band", test_band_of_sample);
  g_test_add_func ("/report/derivation/finish", test_finish);
  g_test_add_func ("/report/derivation/quick", test_quick);
  g_test_add_func ("/report/derivation/units", test_units);
  demo_add_tests ("/report/derivation", "all", test_all);
  demo_add_tests ("/report/derivation", "recompute", test_recompute);
  demo_add_tests ("/report/derivation", "inputs-complete", test_inputs_complete);

  return g_test_run ();
}
