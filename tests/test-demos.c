/* test-demos.c - the demo studies: in order, saved to the letter, computed in sound numbers
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gstdio.h>

#include "demos.h"
#include "engine/gw-evaluate.h"
#include "random-edit.h"
#include "study/gw-assemble.h"
#include "study/gw-resolve.h"
#include "study/gw-result.h"

/* One option computed without its bands, which take most of the time of an evaluation. */
typedef struct
{
  GwAssembly *assembly;
  GwResults   results;
} Computed;

static void
computed_clear (Computed *computed)
{
  gw_results_clear (&computed->results);
  g_clear_pointer (&computed->assembly, gw_assembly_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Computed, computed_clear)

static void
compute (GwStudy      *resolved,
         const double *curve_mass,
         Computed     *out)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();

  out->assembly = gw_assemble (resolved, NULL, problems);
  g_assert_nonnull (out->assembly);
  g_assert_cmpint (gw_evaluate (&out->assembly->aircraft, curve_mass, &out->results), ==, GW_OK);
}

static GwStudy *
resolve (const GwStudy *study,
         guint          option)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  GwStudy *resolved = gw_study_resolve (study, option, problems);

  g_assert_cmpuint (problems->len, ==, 0);
  return resolved;
}

static void
compute_option (const GwStudy *study,
                guint          option,
                const double  *curve_mass,
                Computed      *out)
{
  g_autoptr (GwStudy) resolved = resolve (study, option);

  compute (resolved, curve_mass, out);
}

/* Equal to within @relative of the larger. */
static void
assert_same (double a,
             double b,
             double relative)
{
  g_assert_cmpfloat_with_epsilon (a, b, relative * MAX (fabs (a), fabs (b)) + 1e-15);
}

static void
test_load (gconstpointer name)
{
  g_autofree char *path = demo_path (name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_load (file, problems, &error);

  g_assert_no_error (error);
  if (problems->len > 0)
    {
      const GwProblem *problem = g_ptr_array_index (problems, 0);

      g_error ("%s: %s", problem->path, problem->message);
    }
  g_assert_nonnull (study->name);
  /* A demo says that it is one: an invented scenario. */
  g_assert_nonnull (strstr (study->note, "nvented"));
  g_assert_cmpuint (study->options->len, >=, 2);
}

static void
test_save (gconstpointer name)
{
  g_autofree char *from = demo_path (name);
  g_autofree char *to = g_build_filename (g_get_tmp_dir (), "gw-demo-XXXXXX", NULL);
  const int        fd = g_mkstemp (to);
  g_autoptr (GFile) file = g_file_new_for_path (to);
  g_autoptr (GwStudy) study = demo_load (name);
  g_autofree char *before = NULL, *after = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_true (g_close (fd, NULL));
  gw_study_save (study, file, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (from, &before, NULL, NULL));
  g_assert_true (g_file_get_contents (to, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpint (g_unlink (to), ==, 0);
}

/* A demo asks for everything, so everything has an answer. */
static void
check_answers (const GwResults *results)
{
  for (guint i = 0; i < GW_N_RESULTS; i++)
    if (!isfinite (results->value[i]))
      g_error ("%s is %g", gw_result_info ((GwResultId) i)->key, results->value[i]);

  g_assert_cmpfloat (results->value[GW_RESULT_STALL_PLACE], >=, 0.0);
  g_assert_cmpfloat (results->value[GW_RESULT_STALL_PLACE], <=, 1.0);
  g_assert_cmpfloat (results->value[GW_RESULT_WEIGHED_SHARE], >, 0.0);
  g_assert_cmpfloat (results->value[GW_RESULT_WEIGHED_SHARE], <, 1.0);
  g_assert_cmpfloat (results->value[GW_RESULT_BALLAST], >=, 0.0);
}

/* Results that follow from others by their definition. 1e-12: rounding; 5e-6: the stall
 * speed is solved to 1e-6 and enters as its square. */
static void
check_identities (const GwAircraft *aircraft,
                  const GwResults  *results)
{
  const double *v = results->value;
  const double  weight = v[GW_RESULT_MASS] * 9.80665;
  const double  pressure = 0.5 * v[GW_RESULT_DENSITY] * v[GW_RESULT_STALL_SPEED] *
                          v[GW_RESULT_STALL_SPEED];
  double pieces = 0.0, kinds = 0.0;

  for (size_t i = 0; i < results->pieces.n; i++)
    pieces += results->pieces.v[i].mass.total;
  for (guint i = 0; i < GW_N_PIECE_KINDS; i++)
    kinds += results->piece_mass[i];
  assert_same (v[GW_RESULT_MASS], pieces, 1e-12);
  assert_same (v[GW_RESULT_MASS], kinds, 1e-12);
  assert_same (v[GW_RESULT_WING_LOADING], v[GW_RESULT_MASS] / v[GW_RESULT_WING_AREA], 1e-12);
  assert_same (pressure * v[GW_RESULT_WING_AREA] * v[GW_RESULT_CL_MAX], weight, 5e-6);
  assert_same (v[GW_RESULT_STATIC_MARGIN] * v[GW_RESULT_MEAN_CHORD],
               v[GW_RESULT_NEUTRAL_POINT] - v[GW_RESULT_BALANCE_X], 1e-9);
  assert_same (v[GW_RESULT_AFT_LIMIT] + aircraft->targets.static_margin * v[GW_RESULT_MEAN_CHORD],
               v[GW_RESULT_NEUTRAL_POINT], 1e-12);
}

/* A body that exists: its moments of inertia keep the triangle's rule. */
static void
check_inertia (const double *v)
{
  g_assert_cmpfloat (v[GW_RESULT_IXX], >, 0.0);
  g_assert_cmpfloat (v[GW_RESULT_IYY], >, 0.0);
  g_assert_cmpfloat (v[GW_RESULT_IZZ], >, 0.0);
  g_assert_cmpfloat (v[GW_RESULT_IXX] + v[GW_RESULT_IYY], >=, v[GW_RESULT_IZZ]);
  g_assert_cmpfloat (v[GW_RESULT_IYY] + v[GW_RESULT_IZZ], >=, v[GW_RESULT_IXX]);
  g_assert_cmpfloat (v[GW_RESULT_IZZ] + v[GW_RESULT_IXX], >=, v[GW_RESULT_IYY]);
}

/* Sliding the item by what is said brings the balance point where it is wanted; what the
 * bay does not allow, the ballast does or there is none. */
static void
check_slide (const GwAircraft *aircraft,
             const double     *v)
{
  const GwItem *item = &aircraft->items[aircraft->movable];
  const double  moved = item->mass / v[GW_RESULT_MASS] * v[GW_RESULT_SLIDE];

  assert_same (v[GW_RESULT_BALANCE_X] + moved, aircraft->targets.balance_x, 1e-9);
  g_assert_cmpfloat (fabs (v[GW_RESULT_SLIDE_LEFT]), <=, fabs (v[GW_RESULT_SLIDE]));
  g_assert_true ((v[GW_RESULT_SLIDE_LEFT] != 0.0) == (v[GW_RESULT_BALLAST] > 1e-12));
  g_assert_cmpfloat (v[GW_RESULT_TRAVEL_FORE], <=, v[GW_RESULT_BALANCE_X]);
  g_assert_cmpfloat (v[GW_RESULT_TRAVEL_AFT], >=, v[GW_RESULT_BALANCE_X]);
}

static void
test_results (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);

  for (guint i = 0; i < study->options->len; i++)
    {
      g_auto (Computed) computed = { 0 };
      const GwAircraft *aircraft;

      compute_option (study, i, NULL, &computed);
      aircraft = &computed.assembly->aircraft;
      check_answers (&computed.results);
      check_identities (aircraft, &computed.results);
      check_inertia (computed.results.value);
      check_slide (aircraft, computed.results.value);
    }
}

/* Sets what is built once, not left and right, on the centre line. */
static void
centre (const char    *path,
        GwRecord      *record,
        const GwField *field,
        gpointer       data)
{
  const GwField *flag = gw_record_type_field (record->type, "mirrored");

  if (flag != NULL && !*(gboolean *) gw_record_at (record, flag) &&
      field->kind == GW_FIELD_NUMBER && g_str_has_suffix (field->key, "y_mm"))
    gw_number_set (gw_record_at (record, field), 0.0);
}

/* [m], [kg m2]: a piece and its mirror image cancel up to rounding, but a fin on the centre
 * line whose symmetrical section is given by points has sides that a spline reads off apart
 * and may bend some 1e-4 chords unlike at a corner; it has a hundredth of the mass. */
#define ASIDE 5e-8

static void
test_mirrored_is_balanced (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);

  for (guint i = 0; i < study->options->len; i++)
    {
      g_autoptr (GwStudy) resolved = resolve (study, i);
      g_auto (Computed) computed = { 0 };

      gw_record_each (&resolved->record, "", centre, NULL);
      compute (resolved, NULL, &computed);
      g_assert_cmpfloat_with_epsilon (computed.results.value[GW_RESULT_BALANCE_Y], 0.0, ASIDE);
      g_assert_cmpfloat_with_epsilon (computed.results.balance.inertia.m[3], 0.0, ASIDE);
      g_assert_cmpfloat_with_epsilon (computed.results.balance.inertia.m[5], 0.0, ASIDE);
      g_assert_cmpuint (computed.results.notes & GW_NOTE_LATERAL, ==, 0);
    }
}

static GwStudyItem *
single_item (const GwStudy *study)
{
  for (guint i = 0; i < study->equipment->len; i++)
    {
      GwStudyItem *item = g_ptr_array_index (study->equipment, i);

      if (!item->mirrored && item->lead_g_m.value == 0.0)
        return item;
    }

  g_assert_not_reached ();
}

/* One thing to starboard of a centred aircraft moves it by its share of the mass. */
static void
test_one_thing_aside (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);
  g_autoptr (GwStudy) resolved = resolve (study, 0);
  g_auto (Computed) computed = { 0 };
  GwStudyItem *item = single_item (resolved);

  gw_record_each (&resolved->record, "", centre, NULL);
  gw_number_set (&item->y_mm, 40.0);
  compute (resolved, NULL, &computed);
  g_assert_cmpfloat_with_epsilon (computed.results.value[GW_RESULT_BALANCE_Y],
                                  0.040 * item->mass_g.value * 1e-3 /
                                    computed.results.value[GW_RESULT_MASS],
                                  ASIDE);
}

static double
steepest_fall (size_t              n,
               const GwSectionRow *rows,
               double              so_far)
{
  for (size_t i = 1; i < n; i++)
    {
      const double fall = (rows[i - 1].cl_max - rows[i].cl_max) / log (rows[i].re / rows[i - 1].re);

      so_far = fmax (so_far, fall / fmin (rows[i - 1].cl_max, rows[i].cl_max));
    }

  return so_far;
}

/* The greatest n with which the greatest lift of a section falls as Re^-n anywhere. */
static double
most_fall (const GwAssembly *assembly)
{
  double most = 0.0;

  for (guint i = 0; i < assembly->study->sections->len; i++)
    {
      const GwSection *section = &assembly->sections[i];

      most = steepest_fall (section->n_rows, section->rows, most);
      for (size_t k = 0; k < section->n_stepped; k++)
        most = steepest_fall (section->stepped[k].n_rows, section->stepped[k].rows, most);
    }

  return most;
}

/* The stall speed rises with the mass, passes through the option's own, and falls behind the square
 * root of the mass where greatest lift does not fall with the Reynolds number. Where that falls as
 * V^-n, V^(2 - n) rises as the mass at the most. */
static void
test_curve (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);

  for (guint o = 0; o < study->options->len; o++)
    {
      g_auto (Computed) plain = { 0 };
      g_auto (Computed) computed = { 0 };
      double mass[GW_CURVE_N];
      double own, power;

      compute_option (study, o, NULL, &plain);
      power = 1.0 / (2.0 - most_fall (plain.assembly));
      own = plain.results.value[GW_RESULT_MASS];
      for (guint i = 0; i < GW_CURVE_N; i++)
        mass[i] = own * (0.8 + 0.4 * i / (GW_CURVE_N - 1));
      compute_option (study, o, mass, &computed);
      for (guint i = 1; i < GW_CURVE_N; i++)
        {
          const double ratio = computed.results.curve[i] / computed.results.curve[i - 1];

          g_assert_cmpfloat (ratio, >, 1.0);
          /* Two speeds solved to 1e-6 each. */
          g_assert_cmpfloat (ratio, <=, pow (mass[i] / mass[i - 1], power) * (1.0 + 3e-6));
        }
      assert_same (computed.results.curve[GW_CURVE_N / 2],
                   plain.results.value[GW_RESULT_STALL_SPEED], 3e-6);
    }
}

/* A load of a tenth of the mass at the balance point is the curve's point at that mass. */
static void
test_load_at_balance_point (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);
  g_autoptr (GwStudy) resolved = resolve (study, 0);
  g_auto (Computed) before = { 0 };
  g_auto (Computed) curve = { 0 };
  g_auto (Computed) after = { 0 };
  GwStudyItem *load = (GwStudyItem *) gw_record_new (gw_study_item_type ());
  double       mass[GW_CURVE_N];

  compute (resolved, NULL, &before);
  for (guint i = 0; i < GW_CURVE_N; i++)
    mass[i] = 1.1 * before.results.value[GW_RESULT_MASS];
  compute (resolved, mass, &curve);

  load->id = g_strdup ("load");
  gw_number_set (&load->mass_g, 0.1 * before.results.value[GW_RESULT_MASS] * 1e3);
  gw_number_set (&load->x_mm, before.results.value[GW_RESULT_BALANCE_X] * 1e3);
  gw_number_set (&load->y_mm, before.results.value[GW_RESULT_BALANCE_Y] * 1e3);
  gw_number_set (&load->z_mm, before.results.value[GW_RESULT_BALANCE_Z] * 1e3);
  g_ptr_array_add (resolved->equipment, load);
  compute (resolved, NULL, &after);

  assert_same (after.results.value[GW_RESULT_MASS], mass[0], 1e-12);
  assert_same (after.results.value[GW_RESULT_BALANCE_X], before.results.value[GW_RESULT_BALANCE_X],
               1e-12);
  assert_same (after.results.value[GW_RESULT_STALL_SPEED], curve.results.curve[0], 3e-6);
  g_assert_cmpfloat (after.results.value[GW_RESULT_STALL_SPEED], >,
                     before.results.value[GW_RESULT_STALL_SPEED]);
}

static gboolean
same_shape (const GwStudy *a,
            const GwStudy *b)
{
  if (a->surfaces->len != b->surfaces->len)
    return FALSE;

  for (guint i = 0; i < a->surfaces->len; i++)
    if (!gw_record_equal (g_ptr_array_index (a->surfaces, i), g_ptr_array_index (b->surfaces, i)))
      return FALSE;

  return TRUE;
}

/* Of two options with the same outlines the heavier never stalls slower. (returns how
 * many pairs there were) */
static guint
compare_options (const GwStudy *study,
                 guint          option)
{
  g_autoptr (GwStudy) own = resolve (study, option);
  g_auto (Computed) computed = { 0 };
  guint n = 0;

  compute (own, NULL, &computed);
  for (guint i = 0; i < option; i++)
    {
      g_autoptr (GwStudy) other = resolve (study, i);
      g_auto (Computed) second = { 0 };
      double mass, speed;

      if (!same_shape (own, other))
        continue;
      n++;
      compute (other, NULL, &second);
      mass = second.results.value[GW_RESULT_MASS] - computed.results.value[GW_RESULT_MASS];
      speed = second.results.value[GW_RESULT_STALL_SPEED] -
              computed.results.value[GW_RESULT_STALL_SPEED];
      g_assert_cmpfloat (mass * speed, >=, 0.0);
    }

  return n;
}

static void
test_heavier_is_not_slower (void)
{
  g_auto (GStrv) names = demo_names ();
  guint n = 0;

  for (guint d = 0; names[d] != NULL; d++)
    {
      g_autoptr (GwStudy) study = demo_load (names[d]);

      for (guint i = 1; i < study->options->len; i++)
        n += compare_options (study, i);
    }
  g_assert_cmpuint (n, >=, 3);
}

/* Edits one upon the other: each is refused with a reason, or the study can be saved and
 * computed. All with bands and many more of them: see test-fuzz-study.c. */
static void
test_edited (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);

  for (guint i = 0; i < 10; i++)
    {
      g_autofree char *path = NULL;
      GwStudy         *edited = edit_randomly (study, &path);

      if (edited == NULL)
        continue;
      gw_study_unref (study);
      study = edited;
      edit_check_round_trip (study, path);
      for (guint o = 0; o < study->options->len; o++)
        {
          g_auto (Computed) computed = { 0 };

          compute_option (study, o, NULL, &computed);
          edit_check_results (&computed.results);
        }
    }
}

static void
test_there_are_some (void)
{
  g_auto (GStrv) names = demo_names ();

  g_assert_cmpuint (g_strv_length (names), >=, 4);
  g_assert_true (g_strv_contains ((const char *const *) names, "reed-bed"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/demos/there-are-some", test_there_are_some);
  demo_add_tests ("/study/demos", "load", test_load);
  demo_add_tests ("/study/demos", "save", test_save);
  demo_add_tests ("/study/demos", "results", test_results);
  demo_add_tests ("/study/demos", "mirrored-is-balanced", test_mirrored_is_balanced);
  demo_add_tests ("/study/demos", "one-thing-aside", test_one_thing_aside);
  demo_add_tests ("/study/demos", "curve", test_curve);
  demo_add_tests ("/study/demos", "load-at-balance-point", test_load_at_balance_point);
  demo_add_tests ("/study/demos", "edited", test_edited);
  g_test_add_func ("/study/demos/heavier-is-not-slower", test_heavier_is_not_slower);

  return g_test_run ();
}
