/* test-outline-points.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "surfaces.h"

/* Clark Y in percent of the chord from its flat underside, NACA wind-tunnel reports of the
 * 1930s; from memory. Greatest thickness 11.7 % at 30 %. */
static const double clark_x[] = { 0, 1.25, 2.5, 5, 7.5, 10, 15, 20, 30,
                                  40, 50, 60, 70, 80, 90, 95, 100 };
static const double clark_upper[] = { 3.5, 5.45, 6.5, 7.9, 8.85, 9.6, 10.69, 11.36, 11.7,
                                      11.4, 10.52, 9.15, 7.35, 5.22, 2.8, 1.49, 0.12 };
static const double clark_lower[] = { 3.5, 1.93, 1.47, 0.93, 0.63, 0.42, 0.15, 0.03, 0,
                                      0, 0, 0, 0, 0, 0, 0, 0 };
#define CLARK G_N_ELEMENTS (clark_x)

/* Both sides nose to tail. */
static size_t
clark_sides (double *xy)
{
  for (size_t i = 0; i < CLARK; i++)
    {
      xy[2 * i] = xy[2 * (CLARK + i)] = clark_x[i];
      xy[2 * i + 1] = clark_upper[i];
      xy[2 * (CLARK + i) + 1] = clark_lower[i];
    }

  return 2 * CLARK;
}

/* Around from tail to tail, the nose once. */
static size_t
clark_around (double *xy)
{
  size_t n = 0;

  for (size_t i = CLARK; i > 0; i--, n++)
    {
      xy[2 * n] = clark_x[i - 1];
      xy[2 * n + 1] = clark_upper[i - 1];
    }
  for (size_t i = 1; i < CLARK; i++, n++)
    {
      xy[2 * n] = clark_x[i];
      xy[2 * n + 1] = clark_lower[i];
    }

  return n;
}

/* Around the outline of a section, as a file would give it. */
static size_t
outline_around (const GwOutline *outline,
                size_t           step,
                double          *xy)
{
  size_t n = 0;

  for (size_t i = GW_OUTLINE_N; i > 0; i -= MIN (step, i), n++)
    {
      xy[2 * n] = gw_outline_x (i - 1);
      xy[2 * n + 1] = outline->upper[i - 1];
    }
  for (size_t i = step; i < GW_OUTLINE_N; i += step, n++)
    {
      xy[2 * n] = gw_outline_x (i);
      xy[2 * n + 1] = outline->lower[i];
    }

  return n;
}

static void
turn (size_t  n,
      double *xy,
      double  angle,
      double  scale,
      double  dx,
      double  dy)
{
  for (size_t i = 0; i < n; i++)
    {
      const double x = xy[2 * i], y = xy[2 * i + 1];

      xy[2 * i] = dx + scale * (x * cos (angle) - y * sin (angle));
      xy[2 * i + 1] = dy + scale * (x * sin (angle) + y * cos (angle));
    }
}

static double
greatest_gap (const GwOutline *a,
              const GwOutline *b)
{
  double gap = 0.0;

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    gap = fmax (gap, fmax (fabs (a->upper[i] - b->upper[i]), fabs (a->lower[i] - b->lower[i])));

  return gap;
}

/* The chord from the nose at (0, 3.5) to the tail slopes by 2 degrees; thickness square to
 * it over its length is that of the table to 0.001 %. */
static void
test_clark_y (void)
{
  double         xy[4 * CLARK];
  GwOutline      outline;
  GwOutlineShape shape;

  g_assert_cmpint (gw_outline_points (clark_sides (xy), xy, &outline), ==, GW_OK);
  gw_outline_shape (&outline, &shape);
  g_assert_cmpfloat_with_epsilon (100.0 * shape.thickness, 11.7, 0.02); /* percent */
  g_assert_cmpfloat_with_epsilon (100.0 * gw_outline_thickness_at (&outline, 0.30), 11.7, 0.01);
  g_assert_cmpfloat_with_epsilon (shape.x_thickness, 0.30, 0.02);
  g_assert_cmpfloat (shape.camber, >, 0.03);

  /* At the table's other stations, turned by the slope of the chord (0.0344). */
  for (size_t i = 4; i < CLARK - 1; i++)
    {
      const double x =
        (clark_x[i] - 0.0338 * 0.5 * (clark_upper[i] + clark_lower[i] - 7.0)) / 100.06;

      g_assert_cmpfloat_with_epsilon (100.0 * gw_outline_thickness_at (&outline, x),
                                      clark_upper[i] - clark_lower[i], 0.1);
    }
}

static void
test_both_orders (void)
{
  double    sides[4 * CLARK], around[4 * CLARK];
  GwOutline a, b;

  g_assert_cmpint (gw_outline_points (clark_sides (sides), sides, &a), ==, GW_OK);
  g_assert_cmpint (gw_outline_points (clark_around (around), around, &b), ==, GW_OK);
  g_assert_cmpfloat (greatest_gap (&a, &b), <, 1e-12);
}

/* Property: the outline does not depend on where, how large and how turned it was drawn. */
static void
test_any_frame (void)
{
  double    xy[4 * CLARK];
  GwOutline plain, turned;

  g_assert_cmpint (gw_outline_points (clark_around (xy), xy, &plain), ==, GW_OK);
  for (int trial = 0; trial < 50; trial++)
    {
      const size_t n = trial % 2 ? clark_around (xy) : clark_sides (xy);

      turn (n, xy, g_test_rand_double_range (-G_PI, G_PI), g_test_rand_double_range (0.01, 10.0),
            g_test_rand_double_range (-5.0, 5.0), g_test_rand_double_range (-5.0, 5.0));
      g_assert_cmpint (gw_outline_points (n, xy, &turned), ==, GW_OK);
      g_assert_cmpfloat (greatest_gap (&plain, &turned), <,
                         1e-7); /* doubles are told apart by it */
    }
}

/* A NACA outline comes back from its own points but for the slope of its chord line: the
 * middle of its tail lies up to 4e-5 chords off it and is brought level. Every fourth point
 * is enough for 0.001 chords, at the steep nose, and for 0.05 % of the area. */
static void
test_round_trip (void)
{
  static const char *const codes[] = { "0009", "2412", "4415", "23012" };

  for (size_t c = 0; c < G_N_ELEMENTS (codes); c++)
    {
      const GwSection section = naca (codes[c]);
      double          xy[4 * GW_OUTLINE_N];
      GwOutline       back;
      GwOutlineShape  shape, back_shape;
      double          a[2], b[2];

      g_assert_cmpint (gw_outline_points (outline_around (&section.outline, 1, xy), xy, &back), ==,
                       GW_OK);
      g_assert_cmpfloat (greatest_gap (&section.outline, &back), <, 5e-5);
      gw_outline_thin_theory (&section.outline, &a[0], &a[1]);
      gw_outline_thin_theory (&back, &b[0], &b[1]);
      g_assert_cmpfloat_with_epsilon (a[0], b[0], 2e-4); /* rad */
      g_assert_cmpfloat_with_epsilon (a[1], b[1], 2e-4);

      g_assert_cmpint (gw_outline_points (outline_around (&section.outline, 4, xy), xy, &back), ==,
                       GW_OK);
      g_assert_cmpfloat (greatest_gap (&section.outline, &back), <, 1e-3);
      gw_outline_shape (&section.outline, &shape);
      gw_outline_shape (&back, &back_shape);
      assert_near (back_shape.area, shape.area, 5e-4);
    }
}

/* A nose that no point marks is found between its neighbours: drop it and shift, so that
 * the rule for a point at the origin does not help. */
static void
test_nose_between_points (void)
{
  const GwSection section = naca ("0012");
  double          xy[4 * GW_OUTLINE_N];
  size_t          n = outline_around (&section.outline, 4, xy);
  const size_t    nose = (GW_OUTLINE_N - 1) / 4;
  GwOutline       back;

  g_assert_cmpfloat (xy[2 * nose], ==, 0.0);
  for (size_t i = nose; i + 1 < n; i++)
    {
      xy[2 * i] = xy[2 * i + 2];
      xy[2 * i + 1] = xy[2 * i + 3];
    }
  n--;
  turn (n, xy, 0.1, 1.0, 3.0, 1.0);
  g_assert_cmpint (gw_outline_points (n, xy, &back), ==, GW_OK);
  g_assert_cmpfloat (greatest_gap (&section.outline, &back), <, 2e-3);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    /* The splines lie in a frame that starts at one of the neighbours, turned by half a
     * degree, and so are not quite symmetric: 10 um on a chord of 200 mm. */
    g_assert_cmpfloat_with_epsilon (back.upper[i], -back.lower[i], 5e-5);
}

static void
test_refuses (void)
{
  const GwSection section = naca ("2412");
  double          xy[4 * GW_OUTLINE_N];
  const size_t    n = outline_around (&section.outline, 4, xy);
  GwOutline       out;

  g_assert_cmpint (gw_outline_points (8, xy, &out), ==, GW_EINVAL);

  for (size_t i = 0; i < n; i++)
    xy[2 * i + 1] = -xy[2 * i + 1]; /* upper side below the lower */
  g_assert_cmpint (gw_outline_points (n, xy, &out), ==, GW_EINVAL);

  outline_around (&section.outline, 4, xy);
  xy[2 * 6 + 1] = -0.2; /* one point of the upper side below the lower */
  g_assert_cmpint (gw_outline_points (n, xy, &out), ==, GW_EINVAL);

  outline_around (&section.outline, 4, xy);
  xy[9] = NAN;
  g_assert_cmpint (gw_outline_points (n, xy, &out), ==, GW_EINVAL);
  xy[9] = INFINITY;
  g_assert_cmpint (gw_outline_points (n, xy, &out), ==, GW_EINVAL);

  for (size_t i = 0; i < 2 * n; i++)
    xy[i] = 0.3; /* all in one place */
  g_assert_cmpint (gw_outline_points (n, xy, &out), ==, GW_EINVAL);

  for (size_t i = 0; i < n; i++)
    {
      xy[2 * i] = i % 2 ? 1e308 : -1e308; /* lengths overflow */
      xy[2 * i + 1] = 0.0;
    }
  g_assert_cmpint (gw_outline_points (n, xy, &out), ==, GW_EINVAL);
}

/* Noise instead of a section is refused or read, but never crashes or gives NaN. */
static void
test_noise (void)
{
  int refused = 0;

  for (int trial = 0; trial < 2000; trial++)
    {
      double       xy[60];
      const size_t n = (size_t) g_test_rand_int_range (0, 31);
      GwOutline    out;

      for (size_t i = 0; i < 2 * n; i++)
        xy[i] = trial % 3 ? g_test_rand_double_range (-1.0, 1.0) : g_test_rand_int_range (0, 3);
      if (gw_outline_points (n, xy, &out) != GW_OK)
        {
          refused++;
          continue;
        }
      for (size_t i = 0; i < GW_OUTLINE_N; i++)
        {
          g_assert_true (isfinite (out.upper[i]) && isfinite (out.lower[i]));
          g_assert_cmpfloat (out.upper[i], >=, out.lower[i]);
        }
    }
  g_assert_cmpint (refused, >, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/outline/points/clark-y", test_clark_y);
  g_test_add_func ("/engine/outline/points/both-orders", test_both_orders);
  g_test_add_func ("/engine/outline/points/any-frame", test_any_frame);
  g_test_add_func ("/engine/outline/points/round-trip", test_round_trip);
  g_test_add_func ("/engine/outline/points/nose-between-points", test_nose_between_points);
  g_test_add_func ("/engine/outline/points/refuses", test_refuses);
  g_test_add_func ("/engine/outline/points/noise", test_noise);

  return g_test_run ();
}
