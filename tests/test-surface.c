/* test-surface.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "surfaces.h"

/* Trapezoid geometry, from memory, closed form: two rows of area, aspect ratio, mean
 * aerodynamic chord and its place. */
static void
test_mac_reference (void)
{
  static const struct
  {
    double root, tip, span, sweep_deg, area, aspect, mac, y, x;
  } rows[] = {
    { 0.25, 0.15, 1.4, 5.0, 0.28, 7.0, 0.2041667, 0.3208333, 0.02806928 },
    { 0.22, 0.22, 1.2, 0.0, 0.264, 5.454545, 0.22, 0.3, 0.0 },
  };
  const GwSection section = naca ("2412");

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      const double   half = rows[r].span / 2.0;
      GwStation      stations[2];
      GwSurface      wing;
      GwSurfaceShape shape;

      panel_stations (stations, &section, rows[r].root, rows[r].tip, half,
                      half * tan (rows[r].sweep_deg * G_PI / 180.0), 0.0);
      wing = wing_of (2, stations, NULL);
      g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_OK);
      assert_near (shape.area, rows[r].area, 1e-5);
      assert_near (shape.projected_area, rows[r].area, 1e-5);
      assert_near (shape.aspect_ratio, rows[r].aspect, 1e-5);
      assert_near (shape.mac, rows[r].mac, 1e-5);
      assert_near (shape.mac_at[1], rows[r].y, 1e-5);
      g_assert_cmpfloat_with_epsilon (shape.mac_at[0], rows[r].x, 1e-7); /* m */
      assert_near (shape.span, rows[r].span, 1e-12);
      assert_near (shape.taper, rows[r].tip / rows[r].root, 1e-12);
      g_assert_cmpfloat_with_epsilon (
        tan (shape.sweep_quarter),
        tan (rows[r].sweep_deg * G_PI / 180.0) + 0.25 * (rows[r].tip - rows[r].root) / half, 1e-9);
    }
}

/* A shape with dihedral, a V-tail and a fin: who is projected where. */
static void
test_projections (void)
{
  const double    angle = 40.0 * G_PI / 180.0;
  const GwSection section = naca ("0009");
  GwStation       stations[2];
  GwSurface       surface;
  GwSurfaceShape  shape;

  panel_stations (stations, &section, 0.2, 0.2, 0.4 * cos (angle), 0.0, 0.4 * sin (angle));
  surface = wing_of (2, stations, NULL);
  surface.role = GW_ROLE_V_TAIL;
  g_assert_cmpint (gw_surface_shape (&surface, &shape), ==, GW_OK);
  assert_near (shape.area, 0.16, 1e-12);
  assert_near (shape.projected_area, 0.16 * cos (angle), 1e-12);
  assert_near (shape.span, 0.8 * cos (angle), 1e-12);
  assert_near (shape.arc, 0.4, 1e-12);
  assert_near (shape.dihedral, angle, 1e-12);
  assert_near (shape.mac_at[2], 0.2 * sin (angle), 1e-12);

  panel_stations (stations, &section, 0.2, 0.1, 0.0, 0.05, 0.25);
  surface = wing_of (2, stations, NULL);
  surface.role = GW_ROLE_FIN;
  surface.is_mirrored = false;
  g_assert_cmpint (gw_surface_shape (&surface, &shape), ==, GW_OK);
  assert_near (shape.area, 0.0375, 1e-12);
  assert_near (shape.projected_area, 0.0375, 1e-12);
  assert_near (shape.span, 0.25, 1e-12);
  assert_near (shape.aspect_ratio, 0.25 * 0.25 / 0.0375, 1e-12);
  g_assert_cmpfloat (shape.dihedral, ==, 0.0);

  /* Two fins: twice the area, the aspect ratio of one. */
  surface.is_mirrored = true;
  stations[0].at[1] = stations[1].at[1] = 0.3;
  g_assert_cmpint (gw_surface_shape (&surface, &shape), ==, GW_OK);
  assert_near (shape.area, 0.075, 1e-12);
  assert_near (shape.aspect_ratio, 0.25 * 0.25 / 0.0375, 1e-12);
}

/* A two-panel wing against sums over many thin strips of the chord, random planforms. */
static void
test_random_planforms (void)
{
  const GwSection section = naca ("4412");

  for (int trial = 0; trial < 100; trial++)
    {
      const int      n = 4000;
      GwStation      s[4];
      GwSurface      wing;
      GwSurfaceShape shape;
      double         area = 0.0, square = 0.0, edge = 0.0;
      double         y = 0.0;

      for (int i = 0; i < 4; i++)
        {
          s[i] = (GwStation){ { g_test_rand_double_range (-0.1, 0.3), y, 0.0 },
                              g_test_rand_double_range (0.05, 0.4),
                              g_test_rand_double_range (-0.1, 0.1),
                              &section };
          y += g_test_rand_double_range (0.05, 0.8);
        }
      wing = wing_of (4, s, NULL);
      g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_OK);

      for (int p = 0; p < 3; p++)
        for (int i = 0; i < n; i++)
          {
            const double t = (i + 0.5) / n;
            const double dy = (s[p + 1].at[1] - s[p].at[1]) / n;
            const double c = (1.0 - t) * s[p].chord + t * s[p + 1].chord;

            area += 2.0 * c * dy;
            square += 2.0 * c * c * dy;
            edge += 2.0 * c * ((1.0 - t) * s[p].at[0] + t * s[p + 1].at[0]) * dy;
          }

      assert_near (shape.area, area, 1e-6);
      assert_near (shape.mac, square / area, 1e-6);
      g_assert_cmpfloat_with_epsilon (shape.mac_at[0], edge / area, 1e-6); /* m */
      g_assert_cmpfloat (shape.mac, >=, shape.area / shape.span - 1e-12);
      g_assert_cmpfloat (shape.wetted_area, >,
                         2.0 * shape.area); /* a skin is longer than its chord */
      g_assert_cmpfloat (shape.wetted_area, <, 2.6 * shape.area);
    }
}

/* Property: twice the size is 4 times the area and 8 times the volume; a wing moved aft
 * or up keeps both. */
static void
test_scaling (void)
{
  const GwSection section = naca ("2412");

  for (int trial = 0; trial < 50; trial++)
    {
      const double   k = g_test_rand_double_range (0.2, 5.0);
      GwStation      s[2], big[2];
      GwSurface      wing, large;
      GwSurfaceShape a, b;

      panel_stations (s, &section, g_test_rand_double_range (0.1, 0.4),
                      g_test_rand_double_range (0.1, 0.4), 0.7,
                      g_test_rand_double_range (-0.2, 0.2), g_test_rand_double_range (0.0, 0.2));
      s[1].twist = g_test_rand_double_range (-0.15, 0.15);
      for (int i = 0; i < 2; i++)
        {
          big[i] = s[i];
          big[i].chord *= k;
          for (int j = 0; j < 3; j++)
            big[i].at[j] *= k;
          big[i].at[0] += 1.5;
          big[i].at[2] -= 0.5;
        }

      wing = wing_of (2, s, NULL);
      large = wing_of (2, big, NULL);
      g_assert_cmpint (gw_surface_shape (&wing, &a), ==, GW_OK);
      g_assert_cmpint (gw_surface_shape (&large, &b), ==, GW_OK);
      assert_near (b.area, k * k * a.area, 1e-10);
      assert_near (b.wetted_area, k * k * a.wetted_area, 1e-10);
      assert_near (b.volume, k * k * k * a.volume, 1e-10);
      assert_near (b.mac, k * a.mac, 1e-10);
      assert_near (b.aspect_ratio, a.aspect_ratio, 1e-10);
    }
}

static void
test_refuses (void)
{
  const GwSection section = naca ("2412");
  GwStation       s[2];
  GwSurface       wing = wing_of (2, s, NULL);
  GwSurfaceShape  shape;
  GwLoft          loft;

  panel_stations (s, &section, 0.2, 0.1, 0.5, 0.0, 0.0);
  wing.n_stations = 1;
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_EINVAL);
  wing.n_stations = 2;
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_OK);
  g_assert_cmpint (gw_surface_loft (&wing, 1, &loft), ==, GW_EINVAL);

  s[1].chord = 0.0;
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_EINVAL);
  s[1].chord = NAN;
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_EINVAL);
  s[1].chord = 0.1;
  s[1].twist = INFINITY;
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_EINVAL);
  s[1].twist = 0.0;
  s[1].section = NULL;
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_EINVAL);
  s[1].section = &section;
  s[1].at[1] = 0.0; /* only swept: in one place seen along the chord */
  s[1].at[0] = 0.3;
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_EINVAL);
  s[1].at[2] = 0.3; /* upright, but said to be a wing: no area from above */
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_EINVAL);
  wing.role = GW_ROLE_FIN;
  g_assert_cmpint (gw_surface_shape (&wing, &shape), ==, GW_OK);
}

/* Cuts lie where they should: ends clamped, up square to the local span, the section
 * turned about its nose, points of both skins. */
static void
test_slices (void)
{
  const GwSection inner = naca ("4412"), outer = naca ("0009");
  const double    rise = 0.3, out = 0.4; /* a panel of 0.5 m */
  GwStation       s[3] = {
          { { 0.0, 0.0, 0.0 }, 0.3, 0.05, &inner },
          { { 0.1, 0.5, 0.0 }, 0.2, 0.0, &inner },
          { { 0.2, 0.5 + out, rise }, 0.1, 0.0, &outer },
  };
  const GwSurface wing = wing_of (3, s, NULL);
  GwSlice         slice;
  GwOutline       outline;
  double          p[3];

  assert_near (gw_surface_arc (&wing, 2), 1.0, 1e-12);
  gw_surface_slice (&wing, -1.0, &slice);
  assert_near (slice.chord, 0.3, 1e-12);
  g_assert_cmpfloat (slice.up[2], ==, 1.0);
  gw_slice_place (&slice, 1.0, 0.0, p); /* the tail of the root, nose up */
  g_assert_cmpfloat_with_epsilon (p[0], 0.3 * cos (0.05), 1e-12);
  g_assert_cmpfloat_with_epsilon (p[2], -0.3 * sin (0.05), 1e-12);
  gw_slice_place (&slice, 0.0, 1.0, p); /* one chord above the nose leans aft */
  g_assert_cmpfloat_with_epsilon (p[0], 0.3 * sin (0.05), 1e-12);
  g_assert_cmpfloat_with_epsilon (p[2], 0.3 * cos (0.05), 1e-12);

  gw_surface_slice (&wing, 5.0, &slice);
  assert_near (slice.chord, 0.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (slice.up[1], -0.6, 1e-12);
  g_assert_cmpfloat_with_epsilon (slice.up[2], 0.8, 1e-12);
  g_assert_cmpfloat (slice.mix, ==, 1.0);

  /* Half way out on the outer panel, straight lines: the mean of both ends' points. */
  gw_surface_slice (&wing, 0.75, &slice);
  gw_slice_outline (&slice, &outline);
  for (size_t i = 0; i < GW_OUTLINE_N; i += 10)
    {
      const double x = gw_outline_x (i);
      const double height = 0.5 * (0.2 * inner.outline.upper[i] + 0.1 * outer.outline.upper[i]);

      gw_slice_place (&slice, x, outline.upper[i], p);
      g_assert_cmpfloat_with_epsilon (p[0], 0.15 + 0.15 * x, 1e-12);
      g_assert_cmpfloat_with_epsilon (p[1], 0.7 - 0.6 * height, 1e-12);
      g_assert_cmpfloat_with_epsilon (p[2], 0.15 + 0.8 * height, 1e-12);
      g_assert_cmpfloat_with_epsilon (gw_slice_height (&slice, x, true), outline.upper[i], 1e-9);
      g_assert_cmpfloat_with_epsilon (gw_slice_height (&slice, x, false), outline.lower[i], 1e-9);
    }

  /* A fin's section height is sideways. */
  panel_stations (s, &inner, 0.2, 0.1, 0.0, 0.0, 0.3);
  gw_surface_slice (&wing, 0.1, &slice);
  g_assert_cmpfloat (slice.up[1], ==, -1.0);
  g_assert_cmpfloat (slice.up[2], ==, 0.0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/surface/shape/mac-reference", test_mac_reference);
  g_test_add_func ("/engine/surface/shape/projections", test_projections);
  g_test_add_func ("/engine/surface/shape/random-planforms", test_random_planforms);
  g_test_add_func ("/engine/surface/shape/scaling", test_scaling);
  g_test_add_func ("/engine/surface/shape/refuses", test_refuses);
  g_test_add_func ("/engine/surface/slices", test_slices);

  return g_test_run ();
}
