/* test-polar.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <stdlib.h>

#include "polars.h"

static const char *const kind_names[MEASURED_N] = { "cl_max", "cd_min", "alpha_0 [deg]",
                                                    "slope [1/deg]", "cm_0" };

static double
computed (const GwPolar *polar,
          MeasuredKind   kind)
{
  const double zero = polar_at_cl (polar, 0.0, G_STRUCT_OFFSET (GwPolarRow, alpha)) / DEG;

  switch (kind)
    {
    case MEASURED_CL_MAX:
      return polar->cl_max;
    case MEASURED_CD_MIN:
      return polar->cd_min;
    case MEASURED_ALPHA_ZERO:
      return zero;
    case MEASURED_SLOPE: /* over eight degrees, as slopes were drawn through measured points */
      return (polar_cl_at (polar, zero + 6.0) - polar_cl_at (polar, zero - 2.0)) / 8.0;
    case MEASURED_CM_ZERO:
      return polar_at_cl (polar, 0.0, G_STRUCT_OFFSET (GwPolarRow, sums.cm));
    case MEASURED_N:
    default:
      g_assert_not_reached ();
    }
}

/* Polars of all rows, computed once. */
static GwPolar *
polar_of (GHashTable *polars,
          const char *section,
          double      re)
{
  g_autofree char *key = g_strdup_printf ("%s %g", section, re);
  GwPolar         *polar = g_hash_table_lookup (polars, key);

  if (polar == NULL)
    {
      const GwPolarCase made = polar_case (section, re, -8, 22);

      polar = g_new (GwPolar, 1);
      g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
      g_hash_table_insert (polars, g_steal_pointer (&key), polar);
    }

  return polar;
}

static int
compare (gconstpointer a,
         gconstpointer b)
{
  const double *x = a, *y = b;

  return (*x > *y) - (*x < *y);
}

/* Every row, as a table. What was reached, and is held:
 * - greatest lift against Report 824: median error 2.3 %, worst 6.4 % (bounds 8 % and 20 %).
 *   The 0009 stalls from the nose, where two-equation layers let a bubble of half a per cent of
 *   the chord live on (23 % high) but for the bound on the rise of pressure (5 %). The set of
 *   closures was chosen, among published ones, with these rows in sight (see DEVELOPERS.md), so
 *   they are no independent proof of it; the panels were made finer after;
 * - zero lift within 0.44 deg, moment within 0.009, slope 0 to 8 % high: displacement is taken
 *   along the straight wake, whose own curvature would cost some lift;
 * - recalled bands: all inside but for the 23012 at 1.1e5 and 4.5e5, where Report 586 gives an
 *   effective number for a turbulent tunnel (tested at 4e4 and 1.7e5): it stalls from the nose
 *   too. */
static void
test_measurements (void)
{
  g_autoptr (GHashTable) polars = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GArray) tops = g_array_new (FALSE, FALSE, sizeof (double));
  size_t         tried = 0, converged = 0;
  int            outside = 0, bands = 0;
  GHashTableIter iter;
  gpointer       value;

  for (size_t i = 0; i < G_N_ELEMENTS (measured_rows); i++)
    {
      const MeasuredRow *row = &measured_rows[i];
      const double       ours = computed (polar_of (polars, row->section, row->re), row->kind);
      const double       error = ours - row->typical;

      g_test_message ("%-8s re %-7.2g %-13s measured %8.4f computed %8.4f  %+7.4f %+6.1f %%  %s%s",
                      row->section, row->re, kind_names[row->kind], row->typical, ours, error,
                      fabs (row->typical) > 0.0 ? 100.0 * error / row->typical : 0.0, row->source,
                      row->status == MEMORY_HIGH              ? ""
                      : ours >= row->low && ours <= row->high ? ", inside its band"
                                                              : ", OUTSIDE its band");
      g_assert_true (isfinite (ours));
      if (row->status == MEMORY_BAND)
        {
          bands++;
          outside += !(ours >= row->low && ours <= row->high);
        }
      else if (row->kind == MEASURED_CL_MAX)
        {
          const double size = fabs (error / row->typical);

          g_array_append_val (tops, size);
        }
      else if (row->kind == MEASURED_ALPHA_ZERO)
        g_assert_cmpfloat (fabs (error), <, 0.5);
      else if (row->kind == MEASURED_CM_ZERO)
        g_assert_cmpfloat (fabs (error), <, 0.013);
      else if (row->kind == MEASURED_SLOPE)
        g_assert_cmpfloat (fabs (error / row->typical), <, 0.10);
    }

  g_hash_table_iter_init (&iter, polars);
  while (g_hash_table_iter_next (&iter, NULL, &value))
    {
      tried += ((GwPolar *) value)->tried;
      converged += ((GwPolar *) value)->converged;
    }
  g_array_sort (tops, compare);
  g_test_message ("cl_max: median error %.1f %%, worst %.1f %%; bands: %d of %d inside; "
                  "points: %zu of %zu converged",
                  100.0 * g_array_index (tops, double, tops->len / 2),
                  100.0 * g_array_index (tops, double, tops->len - 1), bands - outside, bands,
                  converged, tried);
  g_assert_cmpfloat (g_array_index (tops, double, tops->len / 2), <, 0.08);
  g_assert_cmpfloat (g_array_index (tops, double, tops->len - 1), <, 0.20);
  g_assert_cmpint (outside, <=, 2);
  g_assert_cmpfloat ((double) converged, >=, 0.97 * (double) tried);
}

/* The same upside down is the same: 1e-3 of lift, more than the last round changes. */
static void
test_symmetry (void)
{
  GwPolarCase         made = polar_case ("0012", 2e5, -6, 6);
  g_autofree GwPolar *polar = g_new (GwPolar, 1);

  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  for (int i = 0; i <= 6; i++)
    g_assert_cmpfloat_with_epsilon (polar_cl_at (polar, i), -polar_cl_at (polar, -i), 1e-3);
}

static double
drag_and_turn (const char *section,
               double      re,
               double      height,
               double     *x_turn)
{
  GwPolarCase   made = polar_case (section, re, 0, 4);
  GwPolarNode   nodes[GW_PANEL_MAX];
  GwCoupledSums sums;
  size_t        n;

  if (height > 0.0)
    made.trips[0] = (GwTrip){ .x = 0.15, .height = height };
  g_assert_cmpint (gw_polar_nodes (&made, 3.0 * DEG, &n, nodes, &sums), ==, GW_OK);
  *x_turn = sums.x_turn[0];
  return sums.cd;
}

/* A chord of 200 mm at 10 m/s (re 1.35e5): layer steps of 0.03 mm do nothing at all, a step of
 * 0.5 mm turns the layer where it stands. Which helps where a bubble would cost more: at 6e4 the
 * tripped section has less drag, at 1e6 more. Sign and order as in Mueller & Batill, AIAA
 * Journal 20(4) (1982), and the grit tests there. */
static void
test_step (void)
{
  double       turn_smooth, turn;
  const double smooth = drag_and_turn ("4412", 1.35e5, 0.0, &turn_smooth);

  g_assert_cmpfloat_with_epsilon (drag_and_turn ("4412", 1.35e5, 0.03 / 200.0, &turn), smooth,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (turn, turn_smooth, 1e-9);
  drag_and_turn ("4412", 1.35e5, 0.5 / 200.0, &turn);
  g_assert_cmpfloat_with_epsilon (turn, 0.15, 0.005);

  for (int k = 0; k < 2; k++)
    {
      const double re = k == 0 ? 6e4 : 1e6;
      const double bare = drag_and_turn ("4412", re, 0.0, &turn_smooth);
      const double tripped = drag_and_turn ("4412", re, k == 0 ? 0.01 : 0.0025, &turn);

      g_test_message ("re %g: drag %.4f smooth, %.4f tripped", re, bare, tripped);
      g_assert_cmpfloat_with_epsilon (turn, 0.15, 0.01);
      if (k == 0)
        g_assert_cmpfloat (tripped, <, bare);
      else
        g_assert_cmpfloat (tripped, >, 1.1 * bare);
    }
}

/* Transition forced at the nose costs lift and doubles drag at high Reynolds numbers; grit
 * wrapped about the nose took 18 to 20 % of the greatest lift of 6-series sections (Timmer, AIAA
 * 2009-268). Transition alone, with none of the grit's own thickening, must take some but less. */
static void
test_roughness (void)
{
  GwPolarCase         made = polar_case ("4412", 3e6, -4, 20);
  g_autofree GwPolar *smooth = g_new (GwPolar, 1), *rough = g_new (GwPolar, 1);

  g_assert_cmpint (gw_polar_run (&made, smooth), ==, GW_OK);
  made.trips[0] = made.trips[1] = (GwTrip){ .x = 0.01 };
  g_assert_cmpint (gw_polar_run (&made, rough), ==, GW_OK);
  g_test_message ("cl_max %.3f smooth, %.3f forced; cd_min %.5f, %.5f", smooth->cl_max,
                  rough->cl_max, smooth->cd_min, rough->cd_min);
  g_assert_cmpfloat (rough->cl_max, <, 0.99 * smooth->cl_max);
  g_assert_cmpfloat (rough->cl_max, >, 0.80 * smooth->cl_max);
  g_assert_cmpfloat (rough->cd_min, >, 1.5 * smooth->cd_min);
}

static double
lift_with_step (double re,
                double height)
{
  GwPolarCase         made = polar_case ("4415", re, 0, 18);
  g_autofree GwPolar *polar = g_new (GwPolar, 1);

  if (height > 0.0)
    made.trips[0] = made.trips[1] = (GwTrip){ .x = 0.15, .height = height };
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  return polar->cl_max;
}

/* Below its critical Reynolds number a thick section separates as it is and does not when it is
 * turned; above, turning it costs lift. As Schmitz found with wires and turbulent air in
 * Aerodynamik des Flugmodells, 1942 (from memory). */
static void
test_step_helps (void)
{
  g_assert_cmpfloat (lift_with_step (5e4, 0.006), >, 1.2 * lift_with_step (5e4, 0.0));
  g_assert_cmpfloat (lift_with_step (1.3e5, 0.006), <, 0.97 * lift_with_step (1.3e5, 0.0));
}

/* A flap of a quarter of the chord, 10 degrees down, sealed: Glauert's part is 0.61 (R&M 1095);
 * thick layers leave 60 to 100 % of it. An open gap leaves less; both lose lift upwards. */
static void
test_flap (void)
{
  GwPolarCase         made = polar_case ("0012", 5e5, -6, 8);
  g_autofree GwPolar *plain = g_new (GwPolar, 1), *sealed = g_new (GwPolar, 1);
  g_autofree GwPolar *open = g_new (GwPolar, 1), *up = g_new (GwPolar, 1);
  double              part;

  g_assert_cmpint (gw_polar_run (&made, plain), ==, GW_OK);
  made.flap = (GwPanelFlap){ 0.75, 0.5, 10.0 * DEG };
  g_assert_cmpint (gw_polar_run (&made, sealed), ==, GW_OK);
  made.is_open = true;
  g_assert_cmpint (gw_polar_run (&made, open), ==, GW_OK);
  made.is_open = false;
  made.flap.deflection = -10.0 * DEG;
  g_assert_cmpint (gw_polar_run (&made, up), ==, GW_OK);

  part = polar_cl_at (sealed, 0.0) / (polar_cl_at (plain, 4.0) - polar_cl_at (plain, -4.0)) *
         8.0 / 10.0;
  g_test_message ("a flap of 25 %% acts with %.3f of its deflection", part);
  g_assert_cmpfloat (part, >, 0.6 * 0.609);
  g_assert_cmpfloat (part, <, 1.0 * 0.609);
  g_assert_cmpfloat (polar_cl_at (open, 0.0), <, 0.95 * polar_cl_at (sealed, 0.0));
  g_assert_true (open->is_wide);
  g_assert_false (sealed->is_wide);
  g_assert_cmpfloat_with_epsilon (polar_cl_at (up, 0.0), -polar_cl_at (sealed, 0.0), 2e-3);
}

/* Past the top at low Reynolds numbers the lift is one on the way up, another on the way back
 * (Mueller, Journal of Aircraft 22(9), 1985); well below the top, or at 4e5, it is not. */
static void
test_return (void)
{
  GwPolarCase         made = polar_case ("clark-y", 8e4, -4, 20);
  g_autofree GwPolar *polar = g_new (GwPolar, 1);

  made.past = 6.0 * DEG;
  made.with_return = true;
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  g_assert_true (polar->is_two_valued);
  g_assert_cmpfloat (polar->two_valued_from, >, polar->alpha_max - 3.0 * DEG);
  g_assert_cmpfloat (polar->two_valued_to, >=, polar->two_valued_from);
  made.re = 4e5;
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  g_assert_false (polar->is_two_valued);
}

/* A thin nose at a high Reynolds number: the polar ends, up and down, where the pressure would
 * rise by more than 14; a thick one is past its greatest lift before. */
static void
test_nose_stall (void)
{
  GwPolarCase         made = polar_case ("0009", 6e6, -18, 20);
  g_autofree GwPolar *polar = g_new (GwPolar, 1);
  GwPolarNode         nodes[GW_PANEL_MAX];
  GwCoupledSums       sums;
  const GwPolarRow   *last;
  size_t              n;

  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  last = &polar->rows[polar->n - 1];
  g_assert_true (polar->has_top && polar->has_bottom);
  g_assert_cmpfloat (polar->cl_max, ==, last->sums.cl);
  g_assert_cmpfloat_with_epsilon (last->sums.pressure_rise, 14.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (polar->cl_min, -polar->cl_max, 0.01);
  g_assert_cmpfloat_with_epsilon (polar->alpha_min, -polar->alpha_max, 0.1 * DEG);
  g_assert_cmpint (gw_polar_nodes (&made, polar->alpha_max - 0.5 * DEG, &n, nodes, &sums), ==,
                   GW_OK);
  g_assert_cmpfloat (sums.pressure_rise, <, 14.0);
  g_assert_cmpint (gw_polar_nodes (&made, polar->alpha_max + 0.5 * DEG, &n, nodes, &sums), ==,
                   GW_ENOCONV);

  made = polar_case ("4412", 6e6, -4, 20);
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  g_assert_true (polar->has_top);
  g_assert_cmpfloat (polar->rows[polar->n - 1].alpha, >, polar->alpha_max + 2.0 * DEG);
}

/* At 5e4 the layer of a cambered section is open until it closes at a stroke; on the way back
 * from there it stays closed for a while. */
static void
test_jump (void)
{
  GwPolarCase         made = polar_case ("6409", 5e4, -4, 20);
  g_autofree GwPolar *polar = g_new (GwPolar, 1);

  made.with_return = true;
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  g_assert_true (polar->is_two_valued);
  g_assert_cmpfloat (polar->two_valued_from, >, 6.0 * DEG);
  g_assert_cmpfloat (polar->two_valued_to, <, polar->alpha_max);
}

/* A folded sheet, 10 % thick: computed, turned by its fold, marked as wide, and with a lift
 * between those of plates and of round sections. */
static void
test_folded (void)
{
  GwPolarCase         made = { .re = 1e5, .n = 19, .past = 3.0 * DEG };
  g_autofree GwPolar *polar = g_new (GwPolar, 1);

  made.alpha_first = -4.0 * DEG;
  made.alpha_last = 14.0 * DEG;
  g_assert_cmpint (gw_outline_folded (0.1, 0.3, 0.02, &made.outline), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (gw_polar_fold (&made.outline, true), 0.3, 0.02);
  g_assert_cmpfloat (gw_polar_fold (&made.outline, false), ==, 1.0);
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  g_assert_true (polar->is_wide);
  for (size_t i = 0; i < polar->n; i++)
    g_assert_cmpfloat (polar->rows[i].sums.x_turn[0], <, 0.33);
  g_assert_cmpfloat (polar->cl_max, >, 0.8);
  g_assert_cmpfloat (polar->cl_max, <, 1.4);

  g_assert_cmpint (gw_outline_folded (0.08, 0.3, 0.0, &made.outline), ==, GW_OK);
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_EINVAL);
  g_assert_cmpint (polar->fault, ==, GW_POLAR_SHARP_NOSE);
}

static void
test_faults (void)
{
  GwOutline outline;

  g_assert_cmpint (gw_outline_naca ("0012", &outline), ==, GW_OK);
  g_assert_cmpint (gw_polar_check (&outline), ==, GW_POLAR_FINE);
  outline.upper[60] = outline.lower[60] - 0.01;
  g_assert_cmpint (gw_polar_check (&outline), ==, GW_POLAR_CROSSED);
  outline.upper[60] = (double) NAN;
  g_assert_cmpint (gw_polar_check (&outline), ==, GW_POLAR_NOT_FINITE);
  g_assert_cmpint (gw_outline_naca ("0012", &outline), ==, GW_OK);
  outline.upper[GW_OUTLINE_N - 1] = outline.lower[GW_OUTLINE_N - 1] + 0.2;
  g_assert_cmpint (gw_polar_check (&outline), ==, GW_POLAR_OPEN);
  g_assert_cmpint (gw_outline_naca4 (0.04, 0.4, 0.02, &outline), ==, GW_OK);
  g_assert_cmpint (gw_polar_check (&outline), ==, GW_POLAR_THIN);
}

static void
test_refused (void)
{
  GwPolarCase         made = polar_case ("0012", 1e5, -4, 4);
  g_autofree GwPolar *polar = g_new (GwPolar, 1);
  const GwPolarCase   good = made;

  made.re = 1e4;
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_EINVAL);
  made = good;
  made.n = 2;
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_EINVAL);
  made = good;
  made.alpha_last = (double) NAN;
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_EINVAL);
  made = good;
  made.trips[0].x = (double) NAN;
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_EINVAL);
}

static bool
three_times (void *data)
{
  int *left = data;

  return (*left)-- > 0;
}

static void
test_cancel (void)
{
  int                 left = 3;
  GwPolarCase         made = polar_case ("2412", 2e5, -6, 14);
  g_autofree GwPolar *polar = g_new (GwPolar, 1);

  made.is_wanted = three_times;
  made.data = &left;
  g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
  g_assert_false (polar->is_complete);
  g_assert_cmpuint (polar->tried, ==, 3);
  g_assert_cmpint (left, ==, -1);
}

static void
assert_sound (const GwPolar *polar)
{
  g_assert_true (isfinite (polar->cl_max) && isfinite (polar->cl_min) &&
                 isfinite (polar->cd_min));
  for (size_t i = 0; i < polar->n; i++)
    {
      const GwPolarRow *row = &polar->rows[i];

      g_assert_true (isfinite (row->sums.cl) && isfinite (row->sums.cm));
      g_assert_cmpfloat (row->sums.cd, >, 0.0);
      g_assert_cmpfloat (row->sums.cd, <, 1.0);
      g_assert_cmpfloat (fabs (row->sums.cl), <, 5.0);
      g_assert_true (i == 0 || row->alpha > polar->rows[i - 1].alpha);
      for (int side = 0; side < 2; side++)
        g_assert_true (row->sums.x_turn[side] >= 0.0 && row->sums.x_turn[side] <= 1.0);
    }
}

/* Anything that passes the check comes back finite and in order: outlines of any camber and
 * thickness, lumps on them, flaps, trips, turbulence, Reynolds numbers. */
static void
test_random (void)
{
  g_autofree GwPolar *polar = g_new (GwPolar, 1);
  size_t              tried = 0, converged = 0;

  for (int k = 0; k < 24; k++)
    {
      GwPolarCase  made = { .n = 9, .with_return = true };
      const double lump = k % 3 == 0 ? g_test_rand_double_range (0.0, 0.01) : 0.0;
      const double place = g_test_rand_double_range (0.1, 0.9);
      GwStatus     status;

      made.alpha_first = -6.0 * DEG;
      made.alpha_last = 18.0 * DEG;
      made.re = exp (g_test_rand_double_range (log (3e4), log (9e6)));
      made.n_crit = g_test_rand_double_range (1.0, 12.0);
      g_assert_cmpint (gw_outline_naca4 (g_test_rand_double_range (0.0, 0.09),
                                         g_test_rand_double_range (0.2, 0.6),
                                         g_test_rand_double_range (0.05, 0.24), &made.outline),
                       ==, GW_OK);
      for (size_t i = 0; i < GW_OUTLINE_N; i++)
        made.outline.upper[i] += lump * exp (-pow ((gw_outline_x (i) - place) / 0.03, 2.0));
      if (k % 4 == 1)
        made.flap = (GwPanelFlap){ g_test_rand_double_range (0.6, 0.9), 0.5,
                                   g_test_rand_double_range (-0.5, 0.5) };
      if (k % 4 == 2)
        made.trips[0] = (GwTrip){ .x = place, .height = g_test_rand_double_range (0.0, 0.01) };

      status = gw_polar_run (&made, polar);
      g_assert_true (status == GW_OK || status == GW_ENOCONV || polar->fault != GW_POLAR_FINE);
      if (status == GW_OK)
        assert_sound (polar);
      tried += polar->tried;
      converged += polar->converged;
    }

  g_test_message ("%zu of %zu points converged", converged, tried);
  /* From far steps of three degrees, far past the stall, with flaps and lumps. */
  g_assert_cmpfloat ((double) converged, >, 0.8 * (double) tried);
}

/* The grid of a study: 4 sections, 8 Reynolds numbers. 97 % of the points must converge. */
static void
test_converges (void)
{
  static const char *const sections[] = { "0009", "2412", "4412", "clark-y" };
  g_autofree GwPolar      *polar = g_new (GwPolar, 1);
  size_t                   tried = 0, converged = 0;

  for (size_t k = 0; k < G_N_ELEMENTS (sections); k++)
    for (int i = 0; i < 8; i++)
      {
        const GwPolarCase made = polar_case (sections[k], 4e4 * pow (1.6, i), -6, 18);

        g_assert_cmpint (gw_polar_run (&made, polar), ==, GW_OK);
        assert_sound (polar);
        g_assert_true (polar->has_top);
        tried += polar->tried;
        converged += polar->converged;
        g_test_message ("%-8s re %8.0f: cl_max %.3f at %.1f deg, cd_min %.5f, %zu of %zu",
                        sections[k], made.re, polar->cl_max, polar->alpha_max / DEG,
                        polar->cd_min, polar->converged, polar->tried);
      }

  g_test_message ("%zu of %zu points converged", converged, tried);
  g_assert_cmpfloat ((double) converged, >=, 0.97 * (double) tried);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/polar/measurements", test_measurements);
  g_test_add_func ("/engine/polar/symmetry", test_symmetry);
  g_test_add_func ("/engine/polar/step", test_step);
  g_test_add_func ("/engine/polar/roughness", test_roughness);
  g_test_add_func ("/engine/polar/step-helps", test_step_helps);
  g_test_add_func ("/engine/polar/flap", test_flap);
  g_test_add_func ("/engine/polar/return", test_return);
  g_test_add_func ("/engine/polar/nose-stall", test_nose_stall);
  g_test_add_func ("/engine/polar/jump", test_jump);
  g_test_add_func ("/engine/polar/folded", test_folded);
  g_test_add_func ("/engine/polar/faults", test_faults);
  g_test_add_func ("/engine/polar/refused", test_refused);
  g_test_add_func ("/engine/polar/cancel", test_cancel);
  g_test_add_func ("/engine/polar/random", test_random);
  g_test_add_func ("/engine/polar/converges", test_converges);
  return g_test_run ();
}
