/* test-body.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-body.h"

#define assert_near(value, wanted, relative) \
 g_assert_cmpfloat_with_epsilon ((value), (wanted), fabs (wanted) * (relative))

/* 144 corners around: an inscribed polygon has 0.03 % less area, 0.01 % less perimeter. */
#define AREA   2e-4
#define VOLUME 5e-4

static GwBody
body_of (size_t               n,
         const GwBodyStation *stations)
{
  return (GwBody){ .name = "body", .n_stations = n, .stations = stations, .known_mass = NAN };
}

/* Closed forms: skin and volume of a closed round cylinder, its moments of inertia. */
static void
test_cylinder (void)
{
  const double        r = 0.04, l = 0.5;
  const GwBodyStation s[] = { { 0.1, 0.02, 2.0 * r, 2.0 * r, 2.0 },
                              { 0.6, 0.02, 2.0 * r, 2.0 * r, 2.0 } };
  const GwBody        body = body_of (2, s);
  const double        side = 2.0 * G_PI * r * l, end = G_PI * r * r;
  GwBodyShape         shape;
  GwMoments           skin;
  GwInertia           inertia;
  double              at[3];

  g_assert_cmpint (gw_body_shape (&body, &shape, &skin), ==, GW_OK);
  assert_near (shape.length, l, 1e-12);
  assert_near (shape.wetted_area, side + 2.0 * end, AREA);
  assert_near (shape.volume, G_PI * r * r * l, VOLUME);
  assert_near (shape.width_squared_length, 4.0 * r * r * l, 1e-12);

  gw_moments_centre (&skin, at);
  g_assert_cmpfloat_with_epsilon (at[0], 0.35, 1e-9); /* m */
  g_assert_cmpfloat_with_epsilon (at[1], 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (at[2], 0.02, 1e-9);
  gw_moments_inertia (&skin, &inertia);
  assert_near (inertia.m[0], side * r * r + 2.0 * end * r * r / 2.0, VOLUME);
  assert_near (inertia.m[1],
               side * (r * r / 2.0 + l * l / 12.0) + 2.0 * end * (r * r / 4.0 + l * l / 4.0),
               VOLUME);
}

/* A cone: pi r slant of skin and its base, a third of the cylinder; centre of the skin's
 * side at two thirds from the tip. */
static void
test_cone (void)
{
  const double        r = 0.05, l = 0.3;
  const GwBodyStation s[] = { { 0.0, 0.0, 0.0, 0.0, 2.0 }, { l, 0.0, 2.0 * r, 2.0 * r, 2.0 } };
  const GwBody        body = body_of (2, s);
  const double        side = G_PI * r * hypot (r, l), base = G_PI * r * r;
  GwBodyShape         shape;
  GwMoments           skin;

  g_assert_cmpint (gw_body_shape (&body, &shape, &skin), ==, GW_OK);
  assert_near (shape.wetted_area, side + base, VOLUME);
  assert_near (shape.volume, G_PI * r * r * l / 3.0, VOLUME);
  assert_near (skin.first[0], side * 2.0 / 3.0 * l + base * l, VOLUME);
  assert_near (shape.width_squared_length, 4.0 * r * r * l / 3.0, 1e-12);
}

/* Area of a superellipse: w h Gamma (1 + 1/n)^2 / Gamma (1 + 2/n) (from memory, closed
 * form); n = 1 is a diamond, exact, and a great n nearly the box. */
static void
test_superellipse (void)
{
  static const double exponents[] = { 1.0, 1.5, 2.0, 2.5, 4.0, 8.0, 40.0 };

  for (size_t i = 0; i < G_N_ELEMENTS (exponents); i++)
    {
      const double        n = exponents[i];
      const GwBodyStation s[] = { { 0.0, 0.0, 0.1, 0.06, n }, { 0.4, 0.0, 0.1, 0.06, n } };
      const GwBody        body = body_of (2, s);
      const double        ratio = exp (2.0 * lgamma (1.0 + 1.0 / n) - lgamma (1.0 + 2.0 / n));
      const double        area = 0.1 * 0.06 * ratio;
      GwBodyShape         shape;

      g_assert_cmpint (gw_body_shape (&body, &shape, NULL), ==, GW_OK);
      assert_near (shape.volume, area * 0.4, 2e-3); /* corners of a great n are cut */
      g_assert_cmpfloat (shape.wetted_area, >, 2.0 * hypot (0.1, 0.06) * 0.4);
      g_assert_cmpfloat (shape.wetted_area, <, 0.32 * 0.4 + 2.0 * 0.006);
    }
}

/* Properties: scaling; moving it moves the skin; a station that changes nothing. */
static void
test_properties (void)
{
  for (int trial = 0; trial < 100; trial++)
    {
      const double k = g_test_rand_double_range (0.2, 4.0),
                   dx = g_test_rand_double_range (-1.0, 1.0);
      GwBodyStation s[4], big[4], more[5];
      GwBody        body = body_of (4, s), large = body_of (4, big), cut = body_of (5, more);
      GwBodyShape   a, b;
      GwMoments     skin, moved;
      double        at[3], there[3];

      for (int i = 0; i < 4; i++)
        {
          s[i] = (GwBodyStation){ 0.2 * i + g_test_rand_double_range (0.0, 0.1),
                                  g_test_rand_double_range (-0.05, 0.05),
                                  g_test_rand_double_range (0.0, 0.2),
                                  g_test_rand_double_range (0.0, 0.2),
                                  g_test_rand_double_range (1.0, 6.0) };
          big[i] = (GwBodyStation){ k * s[i].x + dx, k * s[i].z, k * s[i].width, k * s[i].height,
                                    s[i].exponent };
        }
      large.y = 0.3;
      s[2].exponent = big[2].exponent = s[1].exponent;
      g_assert_cmpint (gw_body_shape (&body, &a, &skin), ==, GW_OK);
      g_assert_cmpint (gw_body_shape (&large, &b, &moved), ==, GW_OK);
      assert_near (b.wetted_area, k * k * a.wetted_area, 1e-9);
      assert_near (b.volume, k * k * k * a.volume, 1e-9);
      gw_moments_centre (&skin, at);
      gw_moments_centre (&moved, there);
      g_assert_cmpfloat_with_epsilon (there[0], k * at[0] + dx, 1e-9);
      g_assert_cmpfloat_with_epsilon (there[1], 0.3, 1e-9);
      g_assert_cmpfloat_with_epsilon (there[2], k * at[2], 1e-9);

      more[0] = s[0];
      more[1] = s[1];
      more[2] = (GwBodyStation){ 0.5 * (s[1].x + s[2].x), 0.5 * (s[1].z + s[2].z),
                                 0.5 * (s[1].width + s[2].width), 0.5 * (s[1].height + s[2].height),
                                 s[1].exponent };
      more[3] = s[2];
      more[4] = s[3];
      g_assert_cmpint (gw_body_shape (&cut, &b, NULL), ==, GW_OK);
      /* A bay that turns from upright to flat is warped; its strips leave up to 0.4 %. */
      assert_near (b.wetted_area, a.wetted_area, 5e-3);
      assert_near (b.volume, a.volume, 5e-3);
      assert_near (b.width_squared_length, a.width_squared_length, 1e-12);
    }
}

static void
test_edges (void)
{
  const GwBodyStation s[] = { { 0.0, 0.0, 0.0, 0.0, 2.0 },
                              { 0.2, 0.01, 0.1, 0.08, 2.0 },
                              { 0.6, 0.03, 0.04, 0.02, 2.0 } };
  const GwBody        body = body_of (3, s);

  g_assert_cmpfloat_with_epsilon (gw_body_edge (&body, 0.2, true), 0.05, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_body_edge (&body, 0.2, false), -0.03, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_body_edge (&body, 0.4, true), 0.045, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_body_half_width (&body, 0.4), 0.035, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_body_half_width (&body, 0.6), 0.02, 1e-12);
  g_assert_true (isnan (gw_body_edge (&body, -0.01, true)));
  g_assert_true (isnan (gw_body_edge (&body, 0.61, true)));
  g_assert_cmpfloat (gw_body_half_width (&body, 0.61), ==, 0.0);
}

static void
test_refuses (void)
{
  const GwBodyStation good[] = { { 0.0, 0.0, 0.1, 0.1, 2.0 }, { 0.4, 0.0, 0.1, 0.1, 2.0 } };
  const GwBodyStation bad[] = {
    { 0.0, 0.0, 0.1, 0.1, 2.0 }, /* x does not rise */
    { NAN, 0.0, 0.1, 0.1, 2.0 },
    { 0.4, INFINITY, 0.1, 0.1, 2.0 },
    { 0.4, 0.0, -0.1, 0.1, 2.0 },
    { 0.4, 0.0, 0.1, NAN, 2.0 },
    { 0.4, 0.0, 0.1, 0.1, 0.0 },
  };
  GwBody      body = body_of (1, good);
  GwBodyShape shape;

  g_assert_cmpint (gw_body_shape (&body, &shape, NULL), ==, GW_EINVAL);
  body.n_stations = 0;
  g_assert_cmpint (gw_body_shape (&body, &shape, NULL), ==, GW_EINVAL);
  body.n_stations = 2;
  g_assert_cmpint (gw_body_shape (&body, &shape, NULL), ==, GW_OK);

  for (size_t i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      const GwBodyStation s[] = { good[0], bad[i] };

      body.stations = s;
      g_assert_cmpint (gw_body_shape (&body, &shape, NULL), ==, GW_EINVAL);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/body/cylinder", test_cylinder);
  g_test_add_func ("/engine/body/cone", test_cone);
  g_test_add_func ("/engine/body/superellipse", test_superellipse);
  g_test_add_func ("/engine/body/properties", test_properties);
  g_test_add_func ("/engine/body/edges", test_edges);
  g_test_add_func ("/engine/body/refuses", test_refuses);

  return g_test_run ();
}
