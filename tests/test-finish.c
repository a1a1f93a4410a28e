/* test-finish.c - how smooth a panel is built, and what that does
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "demos.h"
#include "study/gw-evaluation.h"
#include "study/gw-finish.h"
#include "study/gw-resolve.h"

#define DEMO    "reed-bed"
#define SECTION "naca-6409" /* of its wing, in the options that follow */

/* Options of the demo. */
enum
{
  CORE = 1,
  FOAMING,
  SOLID
};

static GwStudy *
load_demo (void)
{
  g_autofree char *path = demo_path (DEMO);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GError) error = NULL;
  GwStudy *study = gw_study_load (file, problems, &error);

  g_assert_no_error (error);
  return study;
}

static GwStudy *
resolved_demo (guint option)
{
  g_autoptr (GwStudy) study = load_demo ();
  g_autoptr (GPtrArray) problems = gw_problems_new ();

  return gw_study_resolve (study, option, problems);
}

static GwStudyBuild *
wing_build (const GwStudy *resolved)
{
  const GwStudyBuild *build = gw_finish_build (resolved, "wing", 0);

  g_assert_nonnull (build);
  return (GwStudyBuild *) build;
}

/* What lies outside has the grain, the film or paint before what is under it; a step counts
 * where it turns the layer before the grain does. */
static void
test_of_build (void)
{
  static const struct
  {
    guint       option;
    const char *finish;
    double      step, height, critical; /* [mm], [mm], - */
  } rows[] = {
    { CORE, "paint-coat", 0.0, 0.01, GW_CRITICAL_GRAIN },
    { CORE, "paint-coat", 0.5, 0.5, GW_CRITICAL_STEP },
    { CORE, NULL, 0.0, 0.03, GW_CRITICAL_GRAIN }, /* its skin */
    { CORE, NULL, 0.005, 0.03, GW_CRITICAL_GRAIN },
    { CORE, NULL, 0.01, 0.01, GW_CRITICAL_STEP },
    { FOAMING, NULL, 0.0, 0.08, GW_CRITICAL_GRAIN }, /* lines of the print */
    { SOLID, NULL, 0.0, 0.05, GW_CRITICAL_GRAIN },
    { SOLID, "packing-tape", 0.0, 0.005, GW_CRITICAL_GRAIN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GwStudy) study = resolved_demo (rows[i].option);
      GwStudyBuild *build = wing_build (study);
      GwFinish      finish;

      g_free (build->finish);
      build->finish = g_strdup (rows[i].finish);
      gw_number_set (&build->step_mm, rows[i].step);
      finish = gw_finish_of_build (study, build);
      g_assert_cmpfloat_with_epsilon (finish.height, rows[i].height * 1e-3, 1e-12);
      g_assert_cmpfloat (finish.critical, ==, rows[i].critical);
    }
}

static void
set_step (GwStudy *resolved,
          double   mm,
          double   percent)
{
  gw_number_set (&wing_build (resolved)->step_mm, mm);
  gw_number_set (&wing_build (resolved)->step_percent, percent);
}

/* Heights that are computed lie about all heights over the chords of the panels, each twice the
 * one before, and none is computed that does nothing. */
static void
test_trips (void)
{
  static const double steps[] = { 0.05, 0.1, 0.2, 0.35, 0.5, 0.8, 1.0, 2.0 }; /* mm */
  const double        root = 245e-3, tip = 215e-3;
  g_autoptr (GwStudy) study = resolved_demo (SOLID);

  g_assert_null (gw_finish_trips (study, "naca-0009x"));
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      const double height = steps[i] * 1e-3;
      g_autoptr (GArray) trips = NULL;
      const GwTrip *trip = NULL;

      set_step (study, steps[i], 30.0);
      trips = gw_finish_trips (study, SECTION);
      g_assert_cmpuint (trips->len, >=, 2);
      for (guint k = 0; k < trips->len; k++)
        {
          trip = &g_array_index (trips, GwTrip, k);
          g_assert_cmpfloat_with_epsilon (trip->x, 0.3, 1e-12);
          g_assert_cmpfloat (trip->critical, ==, GW_CRITICAL_STEP);
          if (k > 0)
            g_assert_cmpfloat (trip->height, ==, 2.0 * trip[-1].height);
        }
      g_assert_cmpfloat (g_array_index (trips, GwTrip, 0).height, <=, height / root);
      g_assert_cmpfloat (trip->height, >=, height / tip);
    }

  /* Nor is tape over all of it anything to feel. */
  set_step (study, 0.0, 30.0);
  wing_build (study)->finish = g_strdup ("packing-tape");
  {
    g_autoptr (GArray) none = gw_finish_trips (study, SECTION);

    g_assert_nonnull (none);
    g_assert_cmpuint (none->len, ==, 0);
  }
}

static double
stall_speed (double mm)
{
  g_autoptr (GwStudy) study = load_demo ();
  g_autoptr (GwEvaluation) evaluation = NULL;
  g_autoptr (GError) error = NULL;
  const GwStudyOption *option = g_ptr_array_index (study->options, SOLID);
  GwStudyBuild        *build = g_ptr_array_index (option->builds, 0);

  gw_number_set (&build->step_mm, mm);
  gw_record_set_present (&build->record, gw_record_type_field (build->record.type, "step_mm"),
                         TRUE);
  g_assert_true (gw_evaluation_prepare (study, NULL, NULL, NULL, NULL));
  evaluation = gw_evaluation_quick (study, NULL, &error);
  g_assert_no_error (error);
  g_assert_false (evaluation->is_provisional);
  return gw_evaluation_outcome (evaluation, SOLID)->results.value[GW_RESULT_STALL_SPEED];
}

/* A seam below its critical Reynolds number changes nothing; half a millimetre trips the layer,
 * a whole one more so: on this section at 1.3e5 earlier turning takes lift from the top. */
static void
test_stall (void)
{
  const double smooth = stall_speed (0.0), low = stall_speed (0.1), high = stall_speed (0.5);

  g_test_message ("stall %.4f smooth, %.4f with 0.1 mm, %.4f with 0.5 mm", smooth, low, high);
  g_assert_cmpfloat (low, ==, smooth);
  g_assert_cmpfloat (fabs (high - smooth), >, 0.005 * smooth);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/finish/of-build", test_of_build);
  g_test_add_func ("/study/finish/trips", test_trips);
  g_test_add_func ("/study/finish/stall", test_stall);
  return g_test_run ();
}
