/* test-aircraft.c - pieces that are not of a surface, and whole lists of them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "builds.h"
#include "surfaces.h"
#include "engine/gw-aircraft.h"
#include "engine/gw-balance.h"

#define EXACT 1e-9

static const GwBodyStation body_stations[] = { { -0.2, 0.0, 0.06, 0.06, 2.0 },
                                               { 0.6, 0.0, 0.04, 0.04, 2.0 } };

static GwBody
body_of (void)
{
  return (GwBody){ .name = "pod",
                   .y = 0.2,
                   .is_mirrored = true,
                   .n_stations = 2,
                   .stations = body_stations,
                   .skin_areal = 0.5,
                   .mass_factor = 1.1,
                   .known_mass = NAN };
}

static void
test_body (void)
{
  GwBody     body = body_of ();
  GwAircraft aircraft = { .n_bodies = 1, .bodies = &body };
  GwPieces   pieces;
  GwBalance  balance;
  /* Frustum and both ends, closed form; 0.02 % for the polygon. */
  const double area = G_PI * (0.03 + 0.02) * hypot (0.8, 0.01) + G_PI * (9e-4 + 4e-4);

  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  g_assert_cmpuint (pieces.n, ==, 2);
  assert_near (pieces.v[0].mass.total, area * 0.5 * 1.1, 3e-4);
  g_assert_cmpfloat_with_epsilon (pieces.v[0].mass.first[1], 0.2 * pieces.v[0].mass.total, 1e-12);
  g_assert_cmpint (gw_balance_of (&pieces, &balance), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (balance.centre[1], 0.0, 1e-15);

  pieces.n = 0;
  body.known_mass = 0.08; /* of one */
  body.is_weighed = true;
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  assert_near (total_mass (&pieces), 0.16, EXACT);
  g_assert_true (pieces.v[1].is_weighed);

  body.known_mass = -0.1;
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_EINVAL);
  g_assert_cmpuint (pieces.n, ==, 2); /* as before the call */
  gw_pieces_clear (&pieces);
}

/* A strut is a rod, a leg a line, a wheel a disc on its axle: masses, centres, inertia. */
static void
test_strut_and_leg (void)
{
  const GwStrut strut = { .from = { 0.1, 0.05, -0.1 },
                          .to = { 0.1, 0.45, 0.2 },
                          .radius = 0.004,
                          .mass = 0.02,
                          .is_mirrored = true };
  const GwLeg   leg = { .top = { 0.2, 0.05, -0.05 },
                        .axle = { 0.22, 0.15, -0.2 },
                        .leg_mass = 0.03,
                        .wheel_mass = 0.02,
                        .wheel_radius = 0.03,
                        .wheel_width = 0.015,
                        .is_wheel_weighed = true };
  GwAircraft    aircraft = { .n_struts = 1, .struts = &strut, .n_legs = 1, .legs = &leg };
  GwPieces      pieces;
  GwInertia     inertia;
  double        at[3];

  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  g_assert_cmpuint (pieces.n, ==, 4);

  gw_moments_inertia (&piece_of (&pieces, GW_PIECE_STRUT)->mass, &inertia);
  assert_near (inertia.m[0], 0.02 * (0.25 / 12.0 + 16e-6 / 4.0), EXACT); /* 0.5 m long */

  gw_moments_centre (&piece_of (&pieces, GW_PIECE_LEG)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[0], 0.21, 1e-12);
  g_assert_cmpfloat_with_epsilon (at[2], -0.125, 1e-12);
  assert_near (mass_of (&pieces, GW_PIECE_LEG), 0.03, EXACT);
  g_assert_false (piece_of (&pieces, GW_PIECE_LEG)->is_weighed);

  g_assert_true (piece_of (&pieces, GW_PIECE_WHEEL)->is_weighed);
  g_assert_cmpint (piece_of (&pieces, GW_PIECE_WHEEL)->group, ==, GW_GROUP_LEG);
  gw_moments_centre (&piece_of (&pieces, GW_PIECE_WHEEL)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[1], 0.15, 1e-12);
  gw_moments_inertia (&piece_of (&pieces, GW_PIECE_WHEEL)->mass, &inertia);
  assert_near (inertia.m[1], 0.02 * 9e-4 / 2.0, EXACT); /* about the axle */
  gw_pieces_clear (&pieces);
}

/* A turning blade: m D^2 / 12 about the shaft, half of that across it on the mean. */
static void
test_power (void)
{
  const GwPower power = { .motor_at = { -0.1, 0.2, 0.05 },
                          .motor_mass = 0.08,
                          .motor_radius = 0.015,
                          .motor_length = 0.03,
                          .propeller_x = -0.14,
                          .propeller_mass = 0.012,
                          .propeller_diameter = 0.25,
                          .controller_at = { 0.0, 0.2, 0.0 },
                          .controller_mass = 0.03,
                          .is_mirrored = true,
                          .is_motor_weighed = true };
  GwAircraft    aircraft = { .n_powers = 1, .powers = &power };
  GwPieces      pieces;
  GwInertia     inertia;
  double        at[3];

  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  g_assert_cmpuint (pieces.n, ==, 6);
  assert_near (total_mass (&pieces), 2.0 * 0.122, EXACT);

  gw_moments_centre (&piece_of (&pieces, GW_PIECE_PROPELLER)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[0], -0.14, 1e-12);
  g_assert_cmpfloat_with_epsilon (at[1], 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (at[2], 0.05, 1e-12);
  gw_moments_inertia (&piece_of (&pieces, GW_PIECE_PROPELLER)->mass, &inertia);
  assert_near (inertia.m[0], 0.012 * 0.0625 / 12.0, EXACT);
  assert_near (inertia.m[1], 0.012 * 0.0625 / 24.0, EXACT);
  assert_near (inertia.m[2], 0.012 * 0.0625 / 24.0, EXACT);

  gw_moments_inertia (&piece_of (&pieces, GW_PIECE_MOTOR)->mass, &inertia);
  assert_near (inertia.m[0], 0.08 * 225e-6 / 2.0, EXACT);
  g_assert_true (piece_of (&pieces, GW_PIECE_MOTOR)->is_weighed);
  g_assert_false (piece_of (&pieces, GW_PIECE_CONTROLLER)->is_weighed);
  gw_pieces_clear (&pieces);
}

static void
test_items_and_leads (void)
{
  GwItem     item = { .kind = GW_ITEM_SERVO,
                      .mass = 0.009,
                      .at = { 0.1, 0.4, 0.0 },
                      .size = { 0.023, 0.012, 0.022 },
                      .is_mirrored = true,
                      .is_weighed = true,
                      .lead_linear = 0.01,
                      .lead_to = { 0.1, 0.0, 0.3 },
                      .lead_slack = 0.1 };
  GwAircraft aircraft = { .n_items = 1, .items = &item };
  GwPieces   pieces;
  GwInertia  inertia;
  double     at[3];

  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  g_assert_cmpuint (pieces.n, ==, 4);
  gw_moments_inertia (&pieces.v[0].mass, &inertia);
  assert_near (inertia.m[0], 0.009 * (0.012 * 0.012 + 0.022 * 0.022) / 12.0, EXACT);
  assert_near (mass_of (&pieces, GW_PIECE_LEAD), 2.0 * 0.6 * 0.01, EXACT); /* 0.5 m and slack */
  gw_moments_centre (&piece_of (&pieces, GW_PIECE_LEAD)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[1], 0.2, 1e-12);
  g_assert_false (piece_of (&pieces, GW_PIECE_LEAD)->is_weighed);

  /* A lead that is all slack lies where the item is; without one there is none. */
  pieces.n = 0;
  for (int i = 0; i < 3; i++)
    item.lead_to[i] = item.at[i];
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  assert_near (mass_of (&pieces, GW_PIECE_LEAD), 2.0 * 0.1 * 0.01, EXACT);
  pieces.n = 0;
  item.lead_linear = 0.0;
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  g_assert_cmpuint (pieces.n, ==, 2);

  item.mass = NAN;
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_EINVAL);
  item.mass = 0.009;
  item.at[0] = INFINITY;
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_EINVAL);
  g_assert_cmpuint (pieces.n, ==, 2);
  gw_pieces_clear (&pieces);
}

/* The whole is the sum of its groups, each of which has its own list. */
static void
test_groups (void)
{
  const GwSection section = naca ("2412");
  const GwBuild   build = printed_build ();
  const GwBody    body = body_of ();
  const GwStrut   strut = { .from = { 0.1, 0.1, 0.0 }, .to = { 0.1, 0.3, 0.1 }, .mass = 0.01 };
  const GwItem    items[] = { { .mass = 0.2 }, { .mass = 0.05 } };
  GwStation       stations[2];
  GwSurface       wing = wing_of (2, stations, &build);
  GwAircraft      aircraft = { .n_surfaces = 1,
                               .surfaces = &wing,
                               .n_bodies = 1,
                               .bodies = &body,
                               .n_struts = 1,
                               .struts = &strut,
                               .n_items = 2,
                               .items = items };
  GwPieces        pieces;
  double          sum = 0.0;

  panel_stations (stations, &section, 0.2, 0.15, 0.6, 0.0, 0.0);
  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  for (int group = 0; group < GW_N_GROUPS; group++)
    sum += gw_pieces_mass (&pieces, (GwGroup) group, -1);
  assert_near (sum, total_mass (&pieces), 1e-12);
  assert_near (gw_pieces_mass (&pieces, GW_GROUP_ITEM, 1), 0.05, 1e-12);
  assert_near (gw_pieces_mass (&pieces, GW_GROUP_STRUT, 0), 0.01, 1e-12);
  g_assert_cmpfloat (gw_pieces_mass (&pieces, GW_GROUP_SURFACE, 0), >, 0.05);
  gw_pieces_clear (&pieces);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/aircraft/body", test_body);
  g_test_add_func ("/engine/aircraft/strut-and-leg", test_strut_and_leg);
  g_test_add_func ("/engine/aircraft/power", test_power);
  g_test_add_func ("/engine/aircraft/items-and-leads", test_items_and_leads);
  g_test_add_func ("/engine/aircraft/groups", test_groups);

  return g_test_run ();
}
