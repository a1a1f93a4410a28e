/* test-moments.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-moments.h"
#include "engine/gw-piece.h"

#define assert_near(value, wanted, relative) \
 g_assert_cmpfloat_with_epsilon ((value), (wanted), fabs (wanted) * (relative))

/* Rounding of sums of some ten products of lengths of order 1 m. */
#define ROUNDING 1e-12

static void
assert_same (const GwMoments *a,
             const GwMoments *b,
             double           epsilon)
{
  g_assert_cmpfloat_with_epsilon (a->total, b->total, epsilon);
  for (int i = 0; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (a->first[i], b->first[i], epsilon);
  for (int i = 0; i < 6; i++)
    g_assert_cmpfloat_with_epsilon (a->second[i], b->second[i], epsilon);
}

static void
random_point (double p[3])
{
  for (int i = 0; i < 3; i++)
    p[i] = g_test_rand_double_range (-1.0, 1.0);
}

/* Closed forms of any dynamics text, evaluated; from memory. */
static void
test_box_reference (void)
{
  static const struct
  {
    double mass, size[3], inertia[3];
  } rows[] = {
    { 0.25, { 0.12, 0.05, 0.03 }, { 7.083333e-05, 0.00031875, 0.0003520833 } },
    { 0.06, { 0.04, 0.02, 0.036 }, { 8.48e-06, 1.448e-05, 1e-05 } },
  };

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      const double centre[] = { 0.3, -0.1, 0.05 };
      GwMoments    box;
      GwInertia    inertia;

      gw_moments_box (rows[r].mass, centre, rows[r].size, &box);
      gw_moments_inertia (&box, &inertia);
      for (int i = 0; i < 3; i++)
        {
          assert_near (inertia.m[i], rows[r].inertia[i], 1e-6);
          g_assert_cmpfloat_with_epsilon (inertia.m[3 + i], 0.0, 1e-15); /* kg m2 */
        }
    }
}

/* Cylinder of 0.1 kg, radius 20 mm, length 50 mm, solid and thin-walled; from memory,
 * closed form. The axis is turned to each of the three directions. */
static void
test_tube_reference (void)
{
  for (int axis = 0; axis < 3; axis++)
    {
      double    a[] = { 0.4, 0.1, -0.2 }, b[] = { 0.4, 0.1, -0.2 };
      GwMoments tube;
      GwInertia inertia;

      b[axis] += 0.05;
      gw_moments_tube (0.1, a, b, 0.02, 0.0, &tube);
      gw_moments_inertia (&tube, &inertia);
      assert_near (inertia.m[axis], 2e-05, 1e-6);
      assert_near (inertia.m[(axis + 1) % 3], 3.083333e-05, 1e-6);

      gw_moments_tube (0.1, a, b, 0.02, 0.02, &tube);
      gw_moments_inertia (&tube, &inertia);
      assert_near (inertia.m[axis], 4e-05, 1e-6);
      assert_near (inertia.m[(axis + 2) % 3], 4.083333e-05, 1e-6);
    }
}

/* Rod of 0.08 kg, 1.2 m: 0.0096 about the centre, 0.0384 about the end; from memory. */
static void
test_rod_reference (void)
{
  const double a[] = { 0.0, 0.0, 0.0 }, b[] = { 0.0, 1.2, 0.0 };
  GwMoments    line, rod = { 0 };
  GwInertia    inertia;

  gw_moments_segment (a, b, &line);
  g_assert_cmpfloat_with_epsilon (line.total, 1.2, ROUNDING);
  gw_moments_add (&rod, &line, 0.08 / 1.2);
  gw_moments_inertia (&rod, &inertia);
  assert_near (inertia.m[0], 0.0096, 1e-6);
  g_assert_cmpfloat_with_epsilon (inertia.m[1], 0.0, ROUNDING);
  assert_near (rod.second[1], 0.0384, 1e-6);
}

/* A disc of no length has its axis along x: I = m r^2 / 2 about it, m r^2 / 4 across. */
static void
test_tube_disc (void)
{
  const double a[] = { 0.1, 0.2, 0.3 };
  GwMoments    disc;
  GwInertia    inertia;

  gw_moments_tube (2.0, a, a, 0.5, 0.0, &disc);
  gw_moments_inertia (&disc, &inertia);
  assert_near (inertia.m[0], 0.25, 1e-12);
  assert_near (inertia.m[1], 0.125, 1e-12);
  assert_near (inertia.m[2], 0.125, 1e-12);
}

/* A box cut into five tetrahedra, and a plate into two triangles, add up to the closed form. */
static void
test_simplices_fill_box (void)
{
  static const int cut[5][4] = {
    { 0, 1, 2, 4 }, { 3, 2, 1, 7 }, { 5, 4, 7, 1 }, { 6, 7, 4, 2 }, { 1, 2, 4, 7 }
  };
  const double size[] = { 0.7, 0.4, 0.3 };
  const double corner[] = { 0.2, -0.5, 0.1 };
  const double centre[] = { 0.55, -0.3, 0.25 };
  const double flat[] = { 0.7, 0.4, 0.0 }, middle[] = { 0.55, -0.3, 0.1 };
  double       v[8][3];
  GwMoments    sum = { 0 }, plate = { 0 }, part, box;

  for (int i = 0; i < 8; i++)
    for (int k = 0; k < 3; k++)
      v[i][k] = corner[k] + ((i >> k) & 1 ? size[k] : 0.0);

  for (int i = 0; i < 5; i++)
    {
      gw_moments_tetrahedron (v[cut[i][0]], v[cut[i][1]], v[cut[i][2]], v[cut[i][3]], &part);
      gw_moments_add (&sum, &part, part.total > 0.0 ? 1.0 : -1.0);
    }
  gw_moments_box (0.7 * 0.4 * 0.3, centre, size, &box);
  assert_same (&sum, &box, ROUNDING);

  gw_moments_triangle (v[0], v[1], v[3], &plate);
  gw_moments_triangle (v[0], v[3], v[2], &part);
  gw_moments_add (&plate, &part, 1.0);
  gw_moments_box (0.7 * 0.4, middle, flat, &box);
  assert_same (&plate, &box, ROUNDING);
}

static void
test_tetrahedron_sign (void)
{
  const double o[] = { 0, 0, 0 }, x[] = { 1, 0, 0 }, y[] = { 0, 1, 0 }, z[] = { 0, 0, 1 };
  GwMoments    right, left;

  gw_moments_tetrahedron (o, x, y, z, &right);
  gw_moments_tetrahedron (o, y, x, z, &left);
  g_assert_cmpfloat_with_epsilon (right.total, 1.0 / 6.0, ROUNDING);
  g_assert_cmpfloat_with_epsilon (left.total, -1.0 / 6.0, ROUNDING);
  g_assert_cmpfloat_with_epsilon (right.second[0], 1.0 / 60.0, ROUNDING);  /* integral of x^2 */
  g_assert_cmpfloat_with_epsilon (right.second[3], 1.0 / 120.0, ROUNDING); /* of x y */
}

/* Properties, on random triangles: moving the corners is moving the moments; inertia about
 * the centre stays; mirroring twice, and mirroring the corners, is the same. */
static void
test_shift_and_mirror (void)
{
  for (int trial = 0; trial < 500; trial++)
    {
      double    p[3][3], moved[3][3], mirrored[3][3], by[3];
      GwMoments here, there, image;
      GwInertia a, b;

      random_point (by);
      for (int i = 0; i < 3; i++)
        {
          random_point (p[i]);
          for (int k = 0; k < 3; k++)
            {
              moved[i][k] = p[i][k] + by[k];
              mirrored[i][k] = k == 1 ? -p[i][k] : p[i][k];
            }
        }

      gw_moments_triangle (p[0], p[1], p[2], &here);
      gw_moments_inertia (&here, &a);
      gw_moments_triangle (mirrored[0], mirrored[1], mirrored[2], &image);
      gw_moments_triangle (moved[0], moved[1], moved[2], &there);
      gw_moments_inertia (&there, &b);
      for (int i = 0; i < 6; i++)
        g_assert_cmpfloat_with_epsilon (a.m[i], b.m[i], 10 * ROUNDING);
      g_assert_cmpfloat (a.m[0], >=, 0.0);
      g_assert_cmpfloat (a.m[0] + a.m[1], >=, a.m[2] - ROUNDING); /* of any body */

      gw_moments_mirror (&image);
      assert_same (&image, &here, ROUNDING);
      gw_moments_shift (&here, by);
      assert_same (&here, &there, 10 * ROUNDING);
    }
}

/* A triangle cut in two at a point of one side is the sum of both parts. */
static void
test_additive (void)
{
  for (int trial = 0; trial < 200; trial++)
    {
      const double t = g_test_rand_double_range (0.05, 0.95);
      double       a[3], b[3], c[3], d[3];
      GwMoments    whole, sum = { 0 }, part;

      random_point (a);
      random_point (b);
      random_point (c);
      for (int i = 0; i < 3; i++)
        d[i] = (1.0 - t) * b[i] + t * c[i];

      gw_moments_triangle (a, b, c, &whole);
      gw_moments_triangle (a, b, d, &part);
      gw_moments_add (&sum, &part, 1.0);
      gw_moments_triangle (a, d, c, &part);
      gw_moments_add (&sum, &part, 1.0);
      assert_same (&sum, &whole, ROUNDING);
    }
}

static void
test_nothing (void)
{
  const GwMoments none = { 0 };
  double          centre[] = { 1.0, 1.0, 1.0 };
  GwInertia       inertia;

  gw_moments_centre (&none, centre);
  gw_moments_inertia (&none, &inertia);
  for (int i = 0; i < 3; i++)
    {
      g_assert_cmpfloat (centre[i], ==, 0.0);
      g_assert_cmpfloat (inertia.m[i], ==, 0.0);
    }
}

/* The list grows past its first allocation, keeps order, mirrors and sums by owner. */
static void
test_pieces_list (void)
{
  GwPieces pieces;
  GwPiece  piece = { .kind = GW_PIECE_EQUIPMENT, .group = GW_GROUP_ITEM, .side = 1, .count = 1 };

  gw_pieces_init (&pieces);
  for (size_t i = 0; i < 100; i++)
    {
      const double at[] = { 0.1, 0.2 + 0.01 * (double) i, 0.3 };

      piece.owner = i % 2;
      gw_moments_point (0.01, at, &piece.mass);
      g_assert_cmpint (gw_pieces_add_both (&pieces, &piece, i % 2 == 1), ==, GW_OK);
    }

  g_assert_cmpuint (pieces.n, ==, 150);
  g_assert_cmpint (pieces.v[2].side, ==, -1);
  g_assert_cmpfloat_with_epsilon (pieces.v[2].mass.first[1], -0.01 * 0.21, ROUNDING);
  g_assert_cmpfloat_with_epsilon (gw_pieces_mass (&pieces, GW_GROUP_ITEM, 0), 0.5, ROUNDING);
  g_assert_cmpfloat_with_epsilon (gw_pieces_mass (&pieces, GW_GROUP_ITEM, 1), 1.0, ROUNDING);
  g_assert_cmpfloat_with_epsilon (gw_pieces_mass (&pieces, GW_GROUP_ITEM, -1), 1.5, ROUNDING);
  g_assert_cmpfloat (gw_pieces_mass (&pieces, GW_GROUP_BODY, -1), ==, 0.0);

  gw_pieces_clear (&pieces);
  g_assert_cmpuint (pieces.n, ==, 0);
  g_assert_null (pieces.v);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/moments/box/reference", test_box_reference);
  g_test_add_func ("/engine/moments/tube/reference", test_tube_reference);
  g_test_add_func ("/engine/moments/tube/disc", test_tube_disc);
  g_test_add_func ("/engine/moments/segment/reference", test_rod_reference);
  g_test_add_func ("/engine/moments/simplices/fill-box", test_simplices_fill_box);
  g_test_add_func ("/engine/moments/tetrahedron/sign", test_tetrahedron_sign);
  g_test_add_func ("/engine/moments/shift-and-mirror", test_shift_and_mirror);
  g_test_add_func ("/engine/moments/additive", test_additive);
  g_test_add_func ("/engine/moments/nothing", test_nothing);
  g_test_add_func ("/engine/pieces/list", test_pieces_list);

  return g_test_run ();
}
