/* test-loft.c - skin, volume, faces and rims of a lofted panel
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "surfaces.h"

/* What the engine promises of area and volume. */
#define LOFT 5e-4

static void
loft_of (const GwStation *stations,
         GwLoft          *loft)
{
  const GwSurface wing = wing_of (2, stations, NULL);

  g_assert_cmpint (gw_surface_loft (&wing, 0, loft), ==, GW_OK);
}

/* Perimeter of an ellipse with semi-axes a > b: 4 a E (e), the integral by the rectangle
 * rule, which converges at once on a periodic function. */
static double
ellipse_perimeter (double a,
                   double b)
{
  const int n = 2000;
  double    sum = 0.0;

  for (int i = 0; i < n; i++)
    {
      const double angle = 2.0 * G_PI * i / n;

      sum += hypot (a * sin (angle), b * cos (angle)) * 2.0 * G_PI / n;
    }

  return sum;
}

/* Closed forms of an elliptic cylinder, chord c, depth t c, length l along y: skin and
 * volume, and the inertia of both the solid and the shell about their centre. */
static void
test_elliptic_cylinder (void)
{
  const double    c = 0.25, t = 0.2, l = 0.6;
  const double    a = c / 2.0, b = t * c / 2.0;
  const double    rim = ellipse_perimeter (a, b);
  const GwSection section = ellipse (t);
  GwStation       s[2];
  GwLoft          loft;
  GwInertia       inertia;
  double          centre[3];
  double          rim_zz = 0.0, rim_xx = 0.0;

  panel_stations (s, &section, c, c, l, 0.0, 0.0);
  loft_of (s, &loft);
  assert_near (loft.length, l, 1e-12);
  assert_near (loft.skin.total, rim * l, LOFT);
  assert_near (loft.volume.total, G_PI * a * b * l, LOFT);
  assert_near (loft.chordwise.total, c * l, 1e-12);

  gw_moments_centre (&loft.volume, centre);
  g_assert_cmpfloat_with_epsilon (centre[0], a, 1e-9); /* m */
  g_assert_cmpfloat_with_epsilon (centre[1], l / 2.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (centre[2], 0.0, 1e-9);

  /* Solid: m (b^2 / 4 + l^2 / 12), m (a^2 + b^2) / 4, m (a^2 / 4 + l^2 / 12). Twice the
   * bound, since a second moment falls short by twice as much as an area. */
  gw_moments_inertia (&loft.volume, &inertia);
  assert_near (inertia.m[0], loft.volume.total * (b * b / 4.0 + l * l / 12.0), 2.0 * LOFT);
  assert_near (inertia.m[1], loft.volume.total * (a * a + b * b) / 4.0, 2.0 * LOFT);
  assert_near (inertia.m[2], loft.volume.total * (a * a / 4.0 + l * l / 12.0), 2.0 * LOFT);

  /* Shell: the line integrals of x^2 and z^2 around the ellipse take the place of those. */
  for (int i = 0; i < 2000; i++)
    {
      const double angle = 2.0 * G_PI * i / 2000.0;
      const double ds = hypot (a * sin (angle), b * cos (angle)) * 2.0 * G_PI / 2000.0;

      rim_xx += a * a * cos (angle) * cos (angle) * ds;
      rim_zz += b * b * sin (angle) * sin (angle) * ds;
    }
  gw_moments_inertia (&loft.skin, &inertia);
  assert_near (inertia.m[0], l * rim_zz + rim * l * l * l / 12.0, 2.0 * LOFT);
  assert_near (inertia.m[1], l * (rim_xx + rim_zz), 2.0 * LOFT);
  assert_near (inertia.m[2], l * rim_xx + rim * l * l * l / 12.0, 2.0 * LOFT);
}

/* A cone frustum with a straight axis: lateral area pi (r + R) slant, volume
 * pi l (R^2 + R r + r^2) / 3, centre at l (R^2 + 2 R r + 3 r^2) / (4 (R^2 + R r + r^2)). */
static void
test_frustum (void)
{
  const double    big = 0.15, small = 0.05, l = 0.4;
  const double    sum = big * big + big * small + small * small;
  const GwSection section = ellipse (1.0);
  GwStation       s[2];
  GwLoft          loft;

  panel_stations (s, &section, 2.0 * big, 2.0 * small, l, big - small, 0.0);
  loft_of (s, &loft);
  assert_near (loft.skin.total, G_PI * (big + small) * hypot (l, big - small), LOFT);
  assert_near (loft.volume.total, G_PI * l * sum / 3.0, LOFT);
  assert_near (loft.volume.first[1] / loft.volume.total,
               l * (big * big + 2.0 * big * small + 3.0 * small * small) / (4.0 * sum), 1e-6);
  g_assert_cmpfloat_with_epsilon (loft.volume.first[0] / loft.volume.total, big, 1e-6);
}

/* Property: a panel cut in n is the sum of its parts, in area, volume and all moments, for
 * any taper, sweep, dihedral and twist. */
static void
test_cut_in_parts (void)
{
  const GwSection section = naca ("4412");

  for (int trial = 0; trial < 40; trial++)
    {
      GwStation s[2], part[2];
      GwSurface whole = wing_of (2, s, NULL);
      GwLoft    loft, sum = { 0 };

      panel_stations (s, &section, g_test_rand_double_range (0.1, 0.4),
                      g_test_rand_double_range (0.1, 0.4), g_test_rand_double_range (0.2, 1.0),
                      g_test_rand_double_range (-0.2, 0.2), g_test_rand_double_range (-0.1, 0.3));
      s[0].twist = g_test_rand_double_range (-0.1, 0.1);
      s[1].twist = g_test_rand_double_range (-0.1, 0.1);
      loft_of (s, &loft);

      for (int i = 0; i < 8; i++)
        {
          GwLoft piece;

          for (int j = 0; j < 2; j++)
            {
              GwSlice slice;

              gw_panel_slice (&whole, 0, (i + j) / 8.0, &slice);
              part[j] = (GwStation){
                { slice.at[0], slice.at[1], slice.at[2] }, slice.chord, slice.twist, &section
              };
            }
          loft_of (part, &piece);
          gw_moments_add (&sum.skin, &piece.skin, 1.0);
          gw_moments_add (&sum.volume, &piece.volume, 1.0);
        }

      assert_near (loft.skin.total, sum.skin.total, LOFT);
      assert_near (loft.volume.total, sum.volume.total, LOFT);
      for (int i = 0; i < 3; i++) /* centres to 0.1 mm */
        {
          g_assert_cmpfloat_with_epsilon (loft.skin.first[i] / loft.skin.total,
                                          sum.skin.first[i] / sum.skin.total, 1e-4);
          g_assert_cmpfloat_with_epsilon (loft.volume.first[i] / loft.volume.total,
                                          sum.volume.first[i] / sum.volume.total, 1e-4);
        }
    }
}

/* The same with two sections, against 64 parts that have the blended outlines. */
static void
test_two_sections (void)
{
  const GwSection inner = naca ("4412"), outer = naca ("0009");
  GwStation       s[2], part[2];
  const GwSurface whole = wing_of (2, s, NULL);
  GwSection       blend[2];
  GwLoft          loft;
  double          skin = 0.0, volume = 0.0;

  panel_stations (s, &inner, 0.25, 0.12, 0.7, 0.05, 0.05);
  s[1].section = &outer;
  loft_of (s, &loft);

  for (int i = 0; i < 64; i++)
    {
      GwLoft piece;

      for (int j = 0; j < 2; j++)
        {
          GwSlice slice;

          gw_panel_slice (&whole, 0, (i + j) / 64.0, &slice);
          gw_slice_outline (&slice, &blend[j].outline);
          part[j] = (GwStation){
            { slice.at[0], slice.at[1], slice.at[2] }, slice.chord, slice.twist, &blend[j]
          };
        }
      loft_of (part, &piece);
      skin += piece.skin.total;
      volume += piece.volume.total;
    }

  assert_near (loft.skin.total, skin, LOFT);
  assert_near (loft.volume.total, volume, LOFT);
}

/* The volume is the integral of the face along the span, the skin of an untapered panel
 * that of the rim; and a fin is the wing stood on its root. */
static void
test_faces_and_rims (void)
{
  const GwSection section = naca ("2412");
  const int       n = 200;
  GwStation       s[2];
  GwSurface       wing = wing_of (2, s, NULL);
  GwLoft          loft, fin;
  GwMoments       sum = { 0 }, face;
  GwSlice         slice;

  panel_stations (s, &section, 0.3, 0.15, 0.5, 0.1, 0.1);
  loft_of (s, &loft);
  for (int i = 0; i < n; i++)
    {
      gw_panel_slice (&wing, 0, (i + 0.5) / n, &slice);
      gw_slice_face (&slice, &face);
      gw_moments_add (&sum, &face, loft.length / n);
    }
  assert_near (sum.total, loft.volume.total, 1e-5);
  for (int i = 0; i < 3; i++)
    assert_near (sum.first[i], loft.volume.first[i], 1e-4);
  for (int i = 0; i < 6; i++)
    assert_near (sum.second[i], loft.volume.second[i], 1e-4);

  panel_stations (s, &section, 0.3, 0.3, 0.5, 0.0, 0.0);
  loft_of (s, &loft);
  gw_surface_slice (&wing, 0.25, &slice);
  gw_slice_rim (&slice, &face);
  assert_near (0.5 * face.total, loft.skin.total, 1e-10);
  assert_near (face.first[0] / face.total, loft.skin.first[0] / loft.skin.total, 1e-10);
  assert_near (face.first[1] / face.total, 0.25, 1e-10);

  panel_stations (s, &section, 0.3, 0.3, 0.0, 0.0, 0.5);
  loft_of (s, &fin);
  assert_near (fin.skin.total, loft.skin.total, 1e-12);
  assert_near (fin.volume.total, loft.volume.total, 1e-12);
  assert_near (fin.volume.first[2], loft.volume.first[1], 1e-12);  /* span up */
  assert_near (fin.volume.first[1], -loft.volume.first[2], 1e-12); /* height to port */
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/surface/loft/elliptic-cylinder", test_elliptic_cylinder);
  g_test_add_func ("/engine/surface/loft/frustum", test_frustum);
  g_test_add_func ("/engine/surface/loft/cut-in-parts", test_cut_in_parts);
  g_test_add_func ("/engine/surface/loft/two-sections", test_two_sections);
  g_test_add_func ("/engine/surface/faces-and-rims", test_faces_and_rims);

  return g_test_run ();
}
