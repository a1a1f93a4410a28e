/* test-stability.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "aircraft.h"

#include "engine/gw-stability.h"

/* Everything a neutral point needs, at 10 m/s. */
typedef struct
{
  GwGeometry  geometry;
  GwLift      lifts[N_SURFACES];
  GwStability stability;
} Flight;

static void
fly (Craft  *craft,
     Flight *flight)
{
  const GwAir air = standard_air ();

  g_assert_cmpint (gw_geometry_init (&craft->aircraft, &flight->geometry), ==, GW_OK);
  for (size_t i = 0; i < craft->aircraft.n_surfaces; i++)
    g_assert_cmpint (gw_lift_of_surface (&craft->surfaces[i], &flight->geometry.shapes[i], &air,
                                         10.0, &flight->lifts[i]),
                     ==, GW_OK);
  g_assert_cmpint (gw_stability_of (&craft->aircraft, &flight->geometry, flight->lifts,
                                    &flight->stability),
                   ==, GW_OK);
}

static double
neutral_point (Craft *craft)
{
  Flight flight;

  fly (craft, &flight);
  gw_geometry_clear (&flight.geometry);
  return flight.stability.neutral_point;
}

/* Prandtl (1921), downwash far behind an elliptic load, 2 CLa / (pi A): 0.4668545 for
 * 4.4 a radian and A = 6; from memory, closed form. It bounds Datcom's value: 0.7 to 0.95
 * of it are usual at 1 to 1.5 semispans (from memory). Below A = 6 Datcom goes beyond it by
 * up to 9 % close behind strongly tapered wings, whose load is not elliptic. */
static void
test_downwash_bound (void)
{
  GwSurfaceShape wing = { .span = 1.2, .aspect_ratio = 6.0, .taper = 0.6 };

  g_assert_cmpfloat_with_epsilon (2.0 * 4.4 / (M_PI * 6.0), 0.4668545, 1e-7);
  for (double arm = 0.6; arm <= 0.9; arm += 0.1)
    {
      const double share = gw_downwash_gradient (&wing, arm, 0.0) / 0.4668545;

      g_assert_cmpfloat (share, >, 0.7);
      g_assert_cmpfloat (share, <, 0.95);
    }

  for (wing.aspect_ratio = 6.0; wing.aspect_ratio <= 14.0; wing.aspect_ratio += 1.0)
    for (wing.taper = 0.4; wing.taper <= 1.0; wing.taper += 0.2)
      {
        const double slope = gw_lift_slope_closed (wing.aspect_ratio, 1.0, 0.0);

        for (double arm = 0.6; arm <= 1.5; arm += 0.1)
          g_assert_cmpfloat (gw_downwash_gradient (&wing, arm, 0.0), <,
                             2.0 * slope / (M_PI * wing.aspect_ratio));
      }
}

/* Hand calculation of the formula: A = 6, taper 0.6, tail one semispan behind:
 * 4.44 ((1/6 - 1/22.03) 8.2/7)^1.19 = 0.4354; a fifth of the span higher, x 0.8^1.19. */
static void
test_downwash_formula (void)
{
  const GwSurfaceShape wing = { .span = 1.2, .aspect_ratio = 6.0, .taper = 0.6 };
  const double         level = gw_downwash_gradient (&wing, 0.6, 0.0);

  g_assert_cmpfloat_with_epsilon (level, 0.4354, 1e-4);
  assert_close (gw_downwash_gradient (&wing, 0.6, 0.24), level * pow (0.8, 1.19), 1e-12);
  assert_close (gw_downwash_gradient (&wing, 0.6, -0.24), level * pow (0.8, 1.19), 1e-12);
  assert_close (gw_downwash_gradient (&wing, 1.2, 0.0), level * pow (0.5, 1.19 / 3.0), 1e-12);
  g_assert_cmpfloat (gw_downwash_gradient (&wing, 1e-9, 0.0), ==, 1.0);
  g_assert_cmpfloat (gw_downwash_gradient (&wing, 0.6, 1.5), ==, 0.0);
}

/* Anderson J. D., Introduction to Flight, examples 7.4 to 7.7 (inputs seen in print): a wing
 * of 0.1 m2 and 0.1 m chord, tail 0.17 m behind the balance point. The tail is set so high
 * that efficiency x (1 - downwash) is the book's 0.65. Tail volume by its arm from the wing
 * (0.17 m as well in a second case, since the book counts it from the balance point). */
static void
test_anderson (void)
{
  const double     chord = 0.1, x = 0.035, centre = 0.024;
  const GwSurface  surfaces[] = { { .role = GW_ROLE_WING }, { .role = GW_ROLE_TAILPLANE } };
  const GwAircraft aircraft = { .n_surfaces = 2, .surfaces = surfaces };
  GwSurfaceShape   shapes[] = {
      { .projected_area = 0.1, .span = 1.0, .aspect_ratio = 10.0, .taper = 0.5, .mac = 0.1 },
      { .projected_area = 0.02, .span = 0.4, .aspect_ratio = 8.0, .taper = 1.0, .mac = 0.05 },
  };
  GwLift lifts[] = {
    { .lift_slope = 0.08 / DEGREE, .centre_x = centre },
    { .lift_slope = 0.1 / DEGREE, .centre_x = x + 0.17 },
  };
  const GwGeometry geometry = {
    .wing = 0, .trim = 1, .shapes = shapes, .n_surfaces = 2, .area = 0.1, .mac = chord
  };
  double      low = 0.0, high = 1.0;
  GwStability out;

  for (int i = 0; i < 60; i++)
    {
      GwWake wake;

      lifts[1].centre_z = 0.5 * (low + high);
      wake = gw_wake_at (&aircraft, &geometry, lifts, 1);
      if (wake.efficiency * (1.0 - wake.downwash) < 0.65)
        low = lifts[1].centre_z;
      else
        high = lifts[1].centre_z;
    }

  g_assert_cmpint (gw_stability_of (&aircraft, &geometry, lifts, &out), ==, GW_OK);
  /* 7.5: -0.0133 per degree; the book's h_n keeps the arm from the balance point, this is
   * the slope itself, the same in both: four digits given. */
  g_assert_cmpfloat_with_epsilon (-out.lift_slope * DEGREE * (out.neutral_point - x) / chord,
                                  -0.0133, 5e-5);
  /* 7.6: h_n = 0.516. Its arm is that from the balance point at 0.35; from the neutral
   * point, where the tail's lever is shorter by 0.017 m, the tail weighs 10 % less. */
  g_assert_cmpfloat (out.neutral_point / chord, <, 0.516);
  g_assert_cmpfloat_with_epsilon (centre / chord + 0.34 * 0.1 / 0.08 * 0.65, 0.51625, 1e-5);
  g_assert_cmpfloat_with_epsilon (out.neutral_point / chord,
                                  centre / chord + 0.51625 - 0.24 -
                                    0.02 * 0.1 * 0.65 * (out.neutral_point - x) /
                                      (0.1 * chord * 0.08),
                                  1e-6);

  /* 7.4: V_H = 0.34 with an arm of 0.17 m. */
  lifts[1].centre_x = centre + 0.17;
  g_assert_cmpint (gw_stability_of (&aircraft, &geometry, lifts, &out), ==, GW_OK);
  assert_close (out.tail_volume, 0.34, 1e-9);
}

/* Raymer, Aircraft Design: A Conceptual Approach (1989), table 6.4, from memory, within its
 * 25 %: 0.7 and 0.04 for a single-engined aircraft, which the invented one resembles. */
static void
test_volumes (void)
{
  static Craft craft;
  Flight       flight;
  double       arm;

  craft_init (&craft);
  fly (&craft, &flight);
  assert_close (flight.stability.tail_volume, 0.7, 0.25);
  assert_close (flight.stability.fin_volume, 0.04, 0.25);

  /* Hand calculation: fin of 0.13 m mean chord, 0.0234 m2. */
  arm = flight.geometry.shapes[FIN].mac_at[0] + 0.25 * flight.geometry.shapes[FIN].mac -
        flight.lifts[MAIN_WING].centre_x;
  assert_close (flight.stability.fin_volume, 0.0234 * arm / (0.28 * 1.4), 1e-9);
  gw_geometry_clear (&flight.geometry);

  /* A V-tail of 40 degrees is both, by the squares of cosine and sine. */
  craft.surfaces[TAIL].role = GW_ROLE_V_TAIL;
  craft.stations[TAIL][1].at[1] = 0.24 * cos (40.0 * DEGREE);
  craft.stations[TAIL][1].at[2] += 0.24 * sin (40.0 * DEGREE);
  craft.aircraft.n_surfaces = 2;
  fly (&craft, &flight);
  arm = flight.lifts[TAIL].centre_x - flight.lifts[MAIN_WING].centre_x;
  assert_close (flight.stability.tail_volume,
                0.06 * pow (cos (40.0 * DEGREE), 2.0) * arm / (0.28 * flight.geometry.mac), 1e-9);
  arm = flight.geometry.shapes[TAIL].mac_at[0] + 0.25 * flight.geometry.shapes[TAIL].mac -
        flight.lifts[MAIN_WING].centre_x;
  assert_close (flight.stability.fin_volume,
                0.06 * pow (sin (40.0 * DEGREE), 2.0) * arm / (0.28 * 1.4), 1e-9);
  gw_geometry_clear (&flight.geometry);
}

/* Closed forms for a body of constant width w: ahead of the wing
 * w^2 (length + k ln (far / near)) with k = CLa c / (4 pi), nothing alongside, behind it
 * w^2 (1 - downwash) length^2 / (2 x distance of the tail). */
static void
test_body_moment (void)
{
  static Craft  craft;
  GwBodyStation stations[] = { { 0.05, 0.0, 0.1, 0.1, 2.0 }, { 0.25, 0.0, 0.1, 0.1, 2.0 } };
  GwBodyMoment  moment, twice;
  Flight        flight;
  double        k, tail;
  GwWake        wake;

  craft_init (&craft);
  craft.body.n_stations = 2;
  craft.body.stations = stations;
  fly (&craft, &flight);
  k = flight.lifts[MAIN_WING].lift_slope * 0.24 / (4.0 * M_PI);
  wake = gw_wake_at (&craft.aircraft, &flight.geometry, flight.lifts, TAIL);
  tail = flight.lifts[TAIL].centre_x - 0.49;

  gw_body_moment (&craft.aircraft, &flight.geometry, flight.lifts, &moment);
  assert_close (moment.still, M_PI_2 * 0.01 * 0.2, 1e-12);
  /* Gauss in one stretch of 0.06 to 0.26 m ahead: 0.3 %. */
  assert_close (moment.turned, M_PI_2 * 0.01 * (0.2 + k * log (0.26 / 0.06)), 3e-3);

  craft.body.is_mirrored = TRUE;
  gw_body_moment (&craft.aircraft, &flight.geometry, flight.lifts, &twice);
  assert_close (twice.turned, 2.0 * moment.turned, 1e-12);
  craft.body.is_mirrored = FALSE;

  stations[0].x = 0.25;
  stations[1].x = 0.49;
  gw_body_moment (&craft.aircraft, &flight.geometry, flight.lifts, &moment);
  g_assert_cmpfloat (moment.turned, ==, 0.0);
  assert_close (moment.still, M_PI_2 * 0.01 * 0.24, 1e-12);

  stations[0].x = 0.49;
  stations[1].x = 0.79;
  gw_body_moment (&craft.aircraft, &flight.geometry, flight.lifts, &moment);
  assert_close (moment.turned, M_PI_2 * 0.01 * (1.0 - wake.downwash) * 0.09 / (2.0 * tail), 1e-9);
  gw_geometry_clear (&flight.geometry);
}

/* A body moves the neutral point forward, by some per cent of the chord. */
static void
test_body_share (void)
{
  static Craft craft;
  Flight       flight;
  double       without;

  craft_init (&craft);
  fly (&craft, &flight);
  craft.aircraft.n_bodies = 0;
  without = neutral_point (&craft);
  g_assert_cmpfloat_with_epsilon (flight.stability.neutral_point,
                                  without + flight.stability.body_share,
                                  1e-12);
  g_assert_cmpfloat (flight.stability.body_share / flight.geometry.mac, <, -0.01);
  g_assert_cmpfloat (flight.stability.body_share / flight.geometry.mac, >, -0.10);
  gw_geometry_clear (&flight.geometry);
}

/* Hand calculation from the pieces: slopes times arms. */
static void
test_sum (void)
{
  static Craft craft;
  Flight       flight;
  double       wing, tail;

  craft_init (&craft);
  craft.aircraft.n_bodies = 0;
  fly (&craft, &flight);
  wing = flight.lifts[MAIN_WING].lift_slope * flight.geometry.shapes[MAIN_WING].projected_area;
  tail = flight.lifts[TAIL].lift_slope * flight.geometry.shapes[TAIL].projected_area *
         GW_TAIL_EFFICIENCY * (1.0 - flight.stability.downwash);
  assert_close (flight.stability.neutral_point,
                (wing * flight.lifts[MAIN_WING].centre_x + tail * flight.lifts[TAIL].centre_x) /
                  (wing + tail),
                1e-12);
  assert_close (flight.stability.lift_slope, (wing + tail) / 0.28, 1e-12);
  g_assert_cmpfloat (flight.stability.downwash, >, 0.2);
  g_assert_cmpfloat (flight.stability.downwash, <, 0.6);
  gw_geometry_clear (&flight.geometry);

  /* A wing alone: its own centre; a shift comes on top in mean chords. */
  craft.aircraft.n_surfaces = 1;
  craft.aircraft.neutral_point_shift = -0.03;
  fly (&craft, &flight);
  assert_close (flight.stability.neutral_point,
                flight.lifts[MAIN_WING].centre_x - 0.03 * flight.geometry.mac, 1e-12);
  g_assert_cmpfloat (flight.stability.tail_volume, ==, 0.0);
  g_assert_cmpfloat (flight.stability.downwash, ==, 0.0);
  gw_geometry_clear (&flight.geometry);
}

/* More tail, further back or higher, moves the neutral point aft; a canard and a second
 * wing ahead move it forward. */
static void
test_tail_moves_aft (void)
{
  static Craft craft;

  for (int trial = 0; trial < 100; trial++)
    {
      const double chord = g_test_rand_double_range (0.08, 0.16);
      const double x = g_test_rand_double_range (0.75, 1.2);
      const double span = g_test_rand_double_range (0.15, 0.3);
      double       small, large, far, high;

      craft_init (&craft);
      set_panel (&craft, TAIL, x, 0.03, chord, chord, span, 0.0, 0.0);
      small = neutral_point (&craft);
      set_panel (&craft, TAIL, x, 0.03, 1.1 * chord, 1.1 * chord, span, 0.0, 0.0);
      large = neutral_point (&craft);
      set_panel (&craft, TAIL, x + 0.05, 0.03, chord, chord, span, 0.0, 0.0);
      far = neutral_point (&craft);
      set_panel (&craft, TAIL, x, 0.13, chord, chord, span, 0.0, 0.0);
      high = neutral_point (&craft);
      g_assert_cmpfloat (large, >, small);
      g_assert_cmpfloat (far, >, small);
      g_assert_cmpfloat (high, >, small);
    }
}

static void
test_canard (void)
{
  static Craft craft;
  double       alone, second;
  Flight       flight;

  craft_init (&craft);
  craft.aircraft.n_bodies = 0;
  craft.aircraft.n_surfaces = 1;
  alone = neutral_point (&craft);

  craft.aircraft.n_surfaces = 2;
  set_panel (&craft, TAIL, -0.35, 0.03, 0.12, 0.10, 0.2, 0.01, 0.0);
  craft.surfaces[TAIL].role = GW_ROLE_CANARD;
  fly (&craft, &flight);
  g_assert_cmpint (flight.geometry.trim, ==, TAIL);
  g_assert_cmpfloat (flight.stability.neutral_point, <, alone - 0.02);
  g_assert_cmpfloat (flight.stability.downwash, ==, 0.0);
  g_assert_cmpfloat (flight.stability.tail_volume, >, 0.3);
  g_assert_cmpfloat (flight.geometry.area, ==, flight.geometry.shapes[MAIN_WING].projected_area);
  second = flight.stability.neutral_point;
  gw_geometry_clear (&flight.geometry);

  /* The same surface as a second wing: the same sum, but on a larger wing area. */
  craft.surfaces[TAIL].role = GW_ROLE_SECOND_WING;
  fly (&craft, &flight);
  g_assert_cmpint (flight.geometry.trim, ==, -1);
  assert_close (flight.stability.neutral_point, second, 1e-12);
  assert_close (flight.geometry.area,
                flight.geometry.shapes[0].projected_area + flight.geometry.shapes[1].projected_area,
                1e-12);
  gw_geometry_clear (&flight.geometry);
}

/* Twice the size in air half as dense: the same Reynolds numbers, so twice the lengths. */
static void
test_scale (void)
{
  static Craft craft;
  GwAir        air = standard_air ();
  Flight       flight;
  GwStability  large;
  double       small;

  craft_init (&craft);
  small = neutral_point (&craft);

  for (int s = 0; s < N_SURFACES; s++)
    for (int k = 0; k < 2; k++)
      {
        craft.stations[s][k].chord *= 2.0;
        for (int j = 0; j < 3; j++)
          craft.stations[s][k].at[j] *= 2.0;
      }
  for (int k = 0; k < 4; k++)
    {
      craft.body_stations[k].x *= 2.0;
      craft.body_stations[k].width *= 2.0;
    }
  air.density *= 0.5;
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &flight.geometry), ==, GW_OK);
  for (int i = 0; i < N_SURFACES; i++)
    g_assert_cmpint (gw_lift_of_surface (&craft.surfaces[i], &flight.geometry.shapes[i], &air, 10.0,
                                         &flight.lifts[i]),
                     ==, GW_OK);
  g_assert_cmpint (gw_stability_of (&craft.aircraft, &flight.geometry, flight.lifts, &large), ==,
                   GW_OK);
  assert_close (large.neutral_point, 2.0 * small, 1e-9);
  gw_geometry_clear (&flight.geometry);
}

static void
test_rejects (void)
{
  static Craft craft;
  GwGeometry   geometry;
  GwLift       lifts[N_SURFACES] = { { 0 } };
  GwStability  out = { .neutral_point = -1.0 };

  craft_init (&craft);
  craft.surfaces[MAIN_WING].role = GW_ROLE_SECOND_WING;
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_EDOM);
  g_assert_null (geometry.shapes);
  gw_geometry_clear (&geometry);

  craft_init (&craft);
  craft.aircraft.n_surfaces = 0;
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_EDOM);

  craft_init (&craft);
  craft.stations[TAIL][1].chord = 0.0;
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_EINVAL);
  g_assert_null (geometry.shapes);
  g_assert_cmpint (geometry.wing, ==, -1);

  craft_init (&craft);
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_OK);
  g_assert_cmpint (geometry.wing, ==, MAIN_WING);
  g_assert_cmpint (geometry.trim, ==, TAIL);
  g_assert_cmpint (gw_stability_of (&craft.aircraft, &geometry, lifts, &out), ==, GW_EDOM);
  g_assert_cmpfloat (out.neutral_point, ==, -1.0);
  gw_geometry_clear (&geometry);
  gw_geometry_clear (&geometry);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/stability/downwash/bound", test_downwash_bound);
  g_test_add_func ("/engine/stability/downwash/formula", test_downwash_formula);
  g_test_add_func ("/engine/stability/anderson", test_anderson);
  g_test_add_func ("/engine/stability/volumes", test_volumes);
  g_test_add_func ("/engine/stability/body/moment", test_body_moment);
  g_test_add_func ("/engine/stability/body/share", test_body_share);
  g_test_add_func ("/engine/stability/sum", test_sum);
  g_test_add_func ("/engine/stability/tail-moves-aft", test_tail_moves_aft);
  g_test_add_func ("/engine/stability/canard", test_canard);
  g_test_add_func ("/engine/stability/scale", test_scale);
  g_test_add_func ("/engine/stability/rejects", test_rejects);

  return g_test_run ();
}
