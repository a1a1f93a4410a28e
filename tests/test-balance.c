/* test-balance.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-balance.h"

#define assert_near(value, wanted, relative) \
 g_assert_cmpfloat_with_epsilon ((value), (wanted), fabs (wanted) * (relative))

static void
add_point (GwPieces *pieces,
           double    mass,
           double    x,
           double    y,
           double    z,
           bool      is_mirrored,
           bool      is_weighed)
{
  const double at[] = { x, y, z };
  GwPiece      piece = { .kind = GW_PIECE_EQUIPMENT,
                         .group = GW_GROUP_ITEM,
                         .panel = -1,
                         .side = 1,
                         .count = 1,
                         .is_weighed = is_weighed };

  gw_moments_point (mass, at, &piece.mass);
  g_assert_cmpint (gw_pieces_add_both (pieces, &piece, is_mirrored), ==, GW_OK);
}

/* Four point masses on the axis, from memory, closed form: 1.1 kg, balance at 0.2727273 m,
 * 0.06178182 kg m2 about it. */
static void
test_assembly_reference (void)
{
  GwPieces  pieces;
  GwBalance balance;

  gw_pieces_init (&pieces);
  add_point (&pieces, 0.3, 0.05, 0.0, 0.0, false, true);
  add_point (&pieces, 0.25, 0.22, 0.0, 0.0, false, false);
  add_point (&pieces, 0.45, 0.3, 0.0, 0.0, false, true);
  add_point (&pieces, 0.1, 0.95, 0.0, 0.0, false, false);
  g_assert_cmpint (gw_balance_of (&pieces, &balance), ==, GW_OK);
  assert_near (balance.mass, 1.1, 1e-6);
  assert_near (balance.centre[0], 0.2727273, 1e-6);
  assert_near (balance.inertia.m[1], 0.06178182, 1e-6);
  assert_near (balance.inertia.m[2], 0.06178182, 1e-6);
  g_assert_cmpfloat_with_epsilon (balance.inertia.m[0], 0.0, 1e-15);
  assert_near (balance.weighed_mass, 0.75, 1e-12);
  gw_pieces_clear (&pieces);
}

static void
test_nothing (void)
{
  GwPieces  pieces;
  GwBalance balance = { .mass = -1.0 };

  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_balance_of (&pieces, &balance), ==, GW_EDOM);
  add_point (&pieces, 0.0, 0.1, 0.0, 0.0, false, false);
  g_assert_cmpint (gw_balance_of (&pieces, &balance), ==, GW_EDOM);
  g_assert_cmpfloat (balance.mass, ==, -1.0);
  gw_pieces_clear (&pieces);
}

/* Properties: mirrored equipment keeps to the centre line; the centre lies among the
 * pieces; moving all of them moves it along and leaves the inertia. */
static void
test_properties (void)
{
  for (int trial = 0; trial < 200; trial++)
    {
      const double d[] = { g_test_rand_double_range (-2.0, 2.0), 0.0,
                           g_test_rand_double_range (-2.0, 2.0) };
      GwPieces     pieces;
      GwBalance    here, there;
      double       low = INFINITY, high = -INFINITY;

      gw_pieces_init (&pieces);
      for (int i = 0; i < 12; i++)
        {
          const double x = g_test_rand_double_range (-1.0, 1.0);

          add_point (&pieces, g_test_rand_double_range (0.001, 0.5), x,
                     g_test_rand_double_range (0.0, 1.0), g_test_rand_double_range (-0.2, 0.2),
                     true, false);
          low = MIN (low, x);
          high = MAX (high, x);
        }

      g_assert_cmpint (gw_balance_of (&pieces, &here), ==, GW_OK);
      g_assert_cmpfloat_with_epsilon (here.centre[1], 0.0, 1e-15); /* m */
      g_assert_cmpfloat_with_epsilon (here.inertia.m[3], 0.0, 1e-12);
      g_assert_cmpfloat_with_epsilon (here.inertia.m[5], 0.0, 1e-12);
      g_assert_cmpfloat (here.centre[0], >=, low);
      g_assert_cmpfloat (here.centre[0], <=, high);

      for (size_t i = 0; i < pieces.n; i++)
        gw_moments_shift (&pieces.v[i].mass, d);
      g_assert_cmpint (gw_balance_of (&pieces, &there), ==, GW_OK);
      for (int i = 0; i < 3; i++)
        g_assert_cmpfloat_with_epsilon (there.centre[i], here.centre[i] + d[i], 1e-12);
      for (int i = 0; i < 6; i++)
        g_assert_cmpfloat_with_epsilon (there.inertia.m[i], here.inertia.m[i], 1e-10);
      gw_pieces_clear (&pieces);
    }
}

/* The three solvers against the balance itself: put the item where it is said to go, add the
 * ballast that is said to be needed, and weigh again. */
static void
test_solvers (void)
{
  for (int trial = 0; trial < 200; trial++)
    {
      const double mass = g_test_rand_double_range (0.2, 3.0),
                   x = g_test_rand_double_range (-0.5, 0.5);
      const double item = g_test_rand_double_range (0.02, 0.4),
                   item_at = g_test_rand_double_range (-0.3, 0.3);
      const double wanted = g_test_rand_double_range (-0.2, 0.2);
      const double whole = mass + item, centre = (mass * x + item * item_at) / whole;
      double       place, ballast, fore, aft;

      g_assert_cmpint (gw_balance_place (whole, centre, item, item_at, wanted, &place), ==, GW_OK);
      g_assert_cmpfloat_with_epsilon ((mass * x + item * place) / whole, wanted, 1e-12);

      gw_balance_travel (whole, centre, item, item_at, -0.1, place, &fore, &aft);
      g_assert_cmpfloat_with_epsilon (fore, (mass * x - item * 0.1) / whole, 1e-12);
      g_assert_cmpfloat_with_epsilon (aft, wanted, 1e-12);

      /* Ballast helps on the far side of the wanted point, and only there. */
      g_assert_cmpint (gw_balance_ballast (whole, centre, wanted + (wanted > centre ? 0.4 : -0.4),
                                           wanted, &ballast),
                       ==, GW_OK);
      g_assert_cmpfloat (ballast, >, 0.0);
      g_assert_cmpfloat_with_epsilon (
        (whole * centre + ballast * (wanted + (wanted > centre ? 0.4 : -0.4))) / (whole + ballast),
        wanted, 1e-12);
      g_assert_cmpint (gw_balance_ballast (whole, centre, wanted + (wanted > centre ? -0.4 : 0.4),
                                           wanted, &ballast),
                       ==, GW_EDOM);
    }
}

static void
test_solver_ends (void)
{
  double out = -1.0;

  g_assert_cmpint (gw_balance_place (1.0, 0.2, 0.0, 0.1, 0.3, &out), ==, GW_EDOM);
  g_assert_cmpint (gw_balance_ballast (1.0, 0.2, 0.3, 0.3, &out), ==, GW_EDOM); /* no lever */
  g_assert_cmpfloat (out, ==, -1.0);
  g_assert_cmpint (gw_balance_ballast (1.0, 0.2, 0.2, 0.2, &out), ==, GW_OK); /* none needed */
  g_assert_cmpfloat (out, ==, 0.0);

  /* By hand: 1 kg at 0.30 m is to balance at 0.25 m; 0.2 kg goes 0.25 m forward, or
   * 0.05 / 0.25 = 0.2 kg of lead at 0. */
  g_assert_cmpint (gw_balance_place (1.0, 0.30, 0.2, 0.10, 0.25, &out), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (out, -0.15, 1e-12);
  g_assert_cmpint (gw_balance_ballast (1.0, 0.30, 0.0, 0.25, &out), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (out, 0.2, 1e-12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/balance/of/assembly-reference", test_assembly_reference);
  g_test_add_func ("/engine/balance/of/nothing", test_nothing);
  g_test_add_func ("/engine/balance/of/properties", test_properties);
  g_test_add_func ("/engine/balance/solvers", test_solvers);
  g_test_add_func ("/engine/balance/solver-ends", test_solver_ends);

  return g_test_run ();
}
