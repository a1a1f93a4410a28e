/* test-outline-check.c - outlines as people have them: order, faults, smoothing
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <string.h>

#include "engine/gw-outline-check.h"
#include "surfaces.h"

#define STEP 4
#define HALF (GW_OUTLINE_N / STEP + 1) /* points of a side */
#define MOST (2 * HALF + 4)

/* The points of a side, nose first. */
static size_t
side_points (const GwOutline *outline,
             bool             is_upper,
             double          *xy)
{
  size_t n = 0;

  for (size_t i = 0; i < GW_OUTLINE_N; i += STEP, n++)
    {
      xy[2 * n] = gw_outline_x (i);
      xy[2 * n + 1] = is_upper ? outline->upper[i] : outline->lower[i];
    }

  return n;
}

static void
turn (size_t  n,
      double *xy)
{
  for (size_t i = 0; i < n / 2; i++)
    for (int k = 0; k < 2; k++)
      {
        const double kept = xy[2 * i + k];

        xy[2 * i + k] = xy[2 * (n - 1 - i) + k];
        xy[2 * (n - 1 - i) + k] = kept;
      }
}

/* Tail over the upper side to the nose and back; the nose once. */
static size_t
around (const GwOutline *outline,
        double          *xy)
{
  const size_t n = side_points (outline, true, xy);

  turn (n, xy);
  return n + side_points (outline, false, &xy[2 * (n - 1)]) - 1;
}

static GwOutline
through (size_t        n,
         const double *xy)
{
  GwOutline outline;

  g_assert_cmpint (gw_outline_points (n, xy, &outline), ==, GW_OK);
  return outline;
}

/* The points in whatever order make the outline they make in the right one. */
static GwOutlineReport
expect_same (const GwOutline *wanted,
             size_t           n,
             const double    *xy)
{
  double          out[2 * MOST + 4];
  size_t          n_out = 0;
  GwOutlineReport report;
  GwOutline       made;

  g_assert_cmpint (gw_outline_arrange (n, xy, out, &n_out, &report), ==, GW_OK);
  g_assert_cmpint (report.fault, ==, GW_OUTLINE_SOUND);
  g_assert_cmpuint (n_out, <=, n + 2);
  made = through (n_out, out);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      g_assert_cmpfloat_with_epsilon (made.upper[i], wanted->upper[i], 1e-9);
      g_assert_cmpfloat_with_epsilon (made.lower[i], wanted->lower[i], 1e-9);
    }

  return report;
}

static const char *const codes[] = { "2412", "0009", "23112", "6409" };

static void
test_loops (void)
{
  for (size_t r = 0; r < G_N_ELEMENTS (codes); r++)
    {
      GwSection       section = naca (codes[r]);
      double          xy[2 * MOST], mirrored[2 * MOST];
      size_t          n;
      GwOutline       wanted;
      GwOutlineReport report;

      n = around (&section.outline, xy);
      wanted = through (n, xy);
      report = expect_same (&wanted, n, xy);
      g_assert_false (report.is_two_sides || report.is_from_nose || report.is_mirrored ||
                      report.is_bottom_first);
      g_assert_cmpuint (report.n_doubles, ==, 0);
      assert_near (report.chord, 1.0, 2e-3); /* the farthest point need not be at x = 0 */

      turn (n, xy);
      report = expect_same (&wanted, n, xy);
      g_assert_true (report.is_bottom_first);

      /* Away from the origin, where a point would be taken for the nose. */
      turn (n, xy);
      for (size_t i = 0; i < n; i++)
        {
          xy[2 * i] = 200.0 * xy[2 * i] - 300.0;
          mirrored[2 * i] = -xy[2 * i];
          mirrored[2 * i + 1] = xy[2 * i + 1] = 200.0 * xy[2 * i + 1];
        }
      wanted = through (n, xy);
      report = expect_same (&wanted, n, mirrored);
      g_assert_true (report.is_mirrored && !report.is_from_nose);
      assert_near (report.chord, 200.0, 2e-3);
    }
}

/* From the nose over the top to the tail and back, its point given twice, or not; with the
 * gap of the definition or closed to a point. */
static void
test_loops_from_nose (void)
{
  for (size_t r = 0; r < G_N_ELEMENTS (codes); r++)
    for (int is_closed = 0; is_closed < 2; is_closed++)
      {
        GwSection       section = naca (codes[r]);
        double          xy[2 * MOST], loop[2 * MOST];
        size_t          n, m;
        GwOutline       wanted;
        GwOutlineReport report;

        if (is_closed)
          g_assert_cmpint (gw_outline_set_edge (&section.outline, 0.0), ==, GW_OK);
        n = around (&section.outline, xy);
        wanted = through (n, xy);
        m = side_points (&section.outline, true, loop);
        n = side_points (&section.outline, false, &loop[2 * m]);
        turn (n, &loop[2 * m]);
        report = expect_same (&wanted, m + n, loop);
        g_assert_true (report.is_from_nose && !report.is_mirrored && !report.is_bottom_first);
        g_assert_cmpuint (report.n_doubles, ==, is_closed);

        turn (m + n, loop);
        report = expect_same (&wanted, m + n, loop);
        g_assert_true (report.is_from_nose && report.is_bottom_first);
      }
}

/* Two sides, either first, from the nose or from the tail. */
static void
test_two_sides (void)
{
  for (size_t r = 0; r < G_N_ELEMENTS (codes); r++)
    for (int form = 0; form < 4; form++)
      {
        const bool      is_upper_first = form % 2 == 0, is_from_tail = form >= 2;
        GwSection       section = naca (codes[r]);
        double          xy[2 * MOST], sides[2 * MOST];
        size_t          n = around (&section.outline, xy), m;
        const GwOutline wanted = through (n, xy);
        GwOutlineReport report;

        m = side_points (&section.outline, is_upper_first, sides);
        n = side_points (&section.outline, !is_upper_first, &sides[2 * m]);
        if (is_from_tail)
          {
            turn (m, sides);
            turn (n, &sides[2 * m]);
          }
        report = expect_same (&wanted, m + n, sides);
        g_assert_true (report.is_two_sides);
        g_assert_false (report.is_mirrored);
        g_assert_true (report.is_from_nose == !is_from_tail);
        g_assert_true (report.is_bottom_first == !is_upper_first);
      }
}

static GwOutlineReport
expect_fault (GwOutlineFault wanted,
              size_t         n,
              const double  *xy)
{
  double          out[2 * MOST + 4];
  size_t          n_out = 0;
  GwOutlineReport report;

  g_assert_cmpint (gw_outline_arrange (n, xy, out, &n_out, &report), ==, GW_EINVAL);
  g_assert_cmpint (report.fault, ==, wanted);
  return report;
}

static void
test_doubles (void)
{
  const GwSection section = naca ("2412");
  double          xy[2 * MOST], more[2 * MOST];
  const size_t    n = around (&section.outline, xy);
  const GwOutline wanted = through (n, xy);
  GwOutlineReport report;

  for (size_t i = 0; i < n + 2; i++)
    for (int k = 0; k < 2; k++)
      more[2 * i + k] = xy[2 * (i > 20 ? i - 2 : i > 7 ? i - 1
                                                       : i) +
                           k];
  report = expect_same (&wanted, n + 2, more);
  g_assert_cmpuint (report.n_doubles, ==, 2);
  g_assert_cmpuint (report.first_double, ==, 8);
}

static void
test_faults (void)
{
  const GwSection section = naca ("2412");
  double          xy[2 * MOST], bad[2 * MOST];
  const size_t    n = around (&section.outline, xy);
  GwOutlineReport report;
  size_t          n_out;

  g_assert_cmpint (gw_outline_arrange (0, NULL, bad, &n_out, &report), ==, GW_EINVAL);
  g_assert_cmpint (report.fault, ==, GW_OUTLINE_FEW);
  expect_fault (GW_OUTLINE_FEW, 8, xy);
  for (size_t i = 0; i < 2 * n; i++)
    bad[i] = 3.0;
  expect_fault (GW_OUTLINE_SHORT, n, bad);
  expect_fault (GW_OUTLINE_ONE_SIDE, side_points (&section.outline, true, bad), bad);

  /* The lower side ends at 0.7 of the chord. */
  report = expect_fault (GW_OUTLINE_OPEN, n - 9, xy);
  g_assert_cmpuint (report.at[0], ==, 0);
  g_assert_cmpuint (report.at[1], ==, n - 10);
  g_assert_cmpfloat (report.amount, >, 0.15);

  /* Two neighbours change places. */
  memcpy (bad, xy, sizeof xy);
  memcpy (&bad[2 * 12], &xy[2 * 13], 2 * sizeof (double));
  memcpy (&bad[2 * 13], &xy[2 * 12], 2 * sizeof (double));
  report = expect_fault (GW_OUTLINE_BACK, n, bad);
  g_assert_cmpuint (report.at[0], ==, 12);
  g_assert_cmpuint (report.at[1], ==, 13);

  /* A point of the lower side stands above the upper one, 8 points behind the nose of 25. */
  memcpy (bad, xy, sizeof xy);
  bad[2 * 33 + 1] = 0.2;
  report = expect_fault (GW_OUTLINE_CROSSED, n, bad);
  g_assert_cmpuint (report.at[0], >=, 15);
  g_assert_cmpuint (report.at[0], <=, 18);
  g_assert_cmpuint (report.at[1], >=, 32);
  g_assert_cmpuint (report.at[1], <=, 33);

  /* Per cent along the chord, unit heights; and the other way round. */
  for (size_t i = 0; i < n; i++)
    {
      bad[2 * i] = 100.0 * xy[2 * i];
      bad[2 * i + 1] = xy[2 * i + 1];
    }
  expect_fault (GW_OUTLINE_THIN, n, bad);
}

/* Whatever comes in, it ends, within its memory. */
static void
test_random (void)
{
  for (int trial = 0; trial < 3000; trial++)
    {
      double          xy[2 * 40], out[2 * 42];
      const size_t    n = (size_t) g_test_rand_int_range (1, 40);
      size_t          n_out = 0;
      GwOutlineReport report;

      for (size_t i = 0; i < 2 * n; i++)
        xy[i] = g_test_rand_int_range (0, 12) / 10.0;
      if (gw_outline_arrange (n, xy, out, &n_out, &report) == GW_OK)
        g_assert_cmpuint (n_out, <=, n + 2);
      else
        g_assert_cmpint (report.fault, !=, GW_OUTLINE_SOUND);
    }
}

/* What is smooth stays: 0.02 % of the chord on common sections. */
static void
test_smooth_leaves (void)
{
  static const char *const smooth[] = { "0009", "0015", "2412", "4412", "6409", "23012" };

  for (size_t r = 0; r < G_N_ELEMENTS (smooth); r++)
    {
      const GwSection section = naca (smooth[r]);
      GwOutline       out;
      GwOutlineChange change;

      g_assert_cmpint (gw_outline_smooth (&section.outline, GW_SMOOTH_WAVES, &out, &change), ==,
                       GW_OK);
      g_assert_cmpfloat (fabs (change.greatest), <, 2e-4);
    }
}

/* Waves of one number around the outline, the nose left out: as the header says, 1 / (1 +
 * (m / waves)^6) of them is left, to 2 % of the wave for the held points. */
static void
test_smooth_waves (void)
{
  static const struct
  {
    double m, left;
  } rows[] = { { 6.0, 0.985 }, { 12.0, 0.5 }, { 24.0, 0.015 }, { 40.0, 0.0007 } };
  const double high = 1e-3;

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      GwOutline       outline, out;
      GwOutlineChange change;
      double          greatest = 0.0;

      for (size_t i = 0; i < GW_OUTLINE_N; i++)
        {
          outline.upper[i] = high * sin (rows[r].m * G_PI * (double) i / (GW_OUTLINE_N - 1));
          outline.lower[i] = -outline.upper[i];
        }
      g_assert_cmpint (gw_outline_smooth (&outline, 12.0, &out, &change), ==, GW_OK);
      for (size_t i = 30; i < 70; i++)
        greatest = fmax (greatest, fabs (out.upper[i]));
      g_assert_cmpfloat_with_epsilon (greatest, rows[r].left * high, 0.02 * high);
      g_assert_cmpfloat (out.upper[0], ==, outline.upper[0]);
      g_assert_cmpfloat (out.lower[GW_OUTLINE_N - 1], ==, outline.lower[GW_OUTLINE_N - 1]);
    }
}

/* A section with the noise of a scan, 0.2 % of the chord. Of white noise at 101 places a side
 * about 2 x 12 of 200 parts pass, a third of its height; by chance more in one draw, so the
 * halving is asked of forty draws together. The change that is told is the greatest there is. */
static void
test_smooth_noise (void)
{
  const GwSection section = naca ("2412");
  double          before = 0.0, after = 0.0;

  for (int draw = 0; draw < 40; draw++)
    {
      GwOutline       noisy = section.outline, out;
      GwOutlineChange change;
      double          greatest = 0.0;

      for (size_t i = 3; i + 3 < GW_OUTLINE_N; i++)
        {
          noisy.upper[i] += g_test_rand_double_range (-2e-3, 2e-3);
          noisy.lower[i] += g_test_rand_double_range (-2e-3, 2e-3);
        }
      g_assert_cmpint (gw_outline_smooth (&noisy, GW_SMOOTH_WAVES, &out, &change), ==, GW_OK);
      for (size_t i = 0; i < GW_OUTLINE_N; i++)
        {
          before += pow (noisy.upper[i] - section.outline.upper[i], 2.0);
          after += pow (out.upper[i] - section.outline.upper[i], 2.0);
          greatest = fmax (greatest, fabs (out.upper[i] - noisy.upper[i]));
          greatest = fmax (greatest, fabs (out.lower[i] - noisy.lower[i]));
        }
      g_assert_cmpfloat (fabs (change.greatest), ==, greatest);
      g_assert_cmpfloat (greatest, <, 4e-3);
    }
  g_assert_cmpfloat (sqrt (after), <, 0.5 * sqrt (before));
}

static void
test_smooth_domain (void)
{
  GwSection       section = naca ("2412");
  GwOutline       out;
  GwOutlineChange change;

  g_assert_cmpint (gw_outline_smooth (&section.outline, 3.0, &out, &change), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_smooth (&section.outline, NAN, &out, &change), ==, GW_EINVAL);
  section.outline.upper[50] = NAN;
  g_assert_cmpint (gw_outline_smooth (&section.outline, 12.0, &out, &change), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_folded (0.1, 0.3, 0.03, &section.outline), ==, GW_OK);
  g_assert_cmpint (gw_outline_smooth (&section.outline, 12.0, &out, &change), ==, GW_EINVAL);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/outline/arrange/loops", test_loops);
  g_test_add_func ("/engine/outline/arrange/from-nose", test_loops_from_nose);
  g_test_add_func ("/engine/outline/arrange/two-sides", test_two_sides);
  g_test_add_func ("/engine/outline/arrange/doubles", test_doubles);
  g_test_add_func ("/engine/outline/arrange/faults", test_faults);
  g_test_add_func ("/engine/outline/arrange/random", test_random);
  g_test_add_func ("/engine/outline/smooth/leaves", test_smooth_leaves);
  g_test_add_func ("/engine/outline/smooth/waves", test_smooth_waves);
  g_test_add_func ("/engine/outline/smooth/noise", test_smooth_noise);
  g_test_add_func ("/engine/outline/smooth/domain", test_smooth_domain);

  return g_test_run ();
}
