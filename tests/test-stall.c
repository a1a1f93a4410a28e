/* test-stall.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "aircraft.h"

#include "engine/gw-stall.h"

/* A balance point for the invented aircraft that its tail trims with little load. */
#define BALANCE 0.33

static GwStatus
try_stall (Craft   *craft,
           double   mass,
           double   balance_x,
           GwStall *out)
{
  const GwAir air = standard_air ();
  GwGeometry  geometry;
  GwStatus    status;

  g_assert_cmpint (gw_geometry_init (&craft->aircraft, &geometry), ==, GW_OK);
  status = gw_stall_of (&craft->aircraft, &geometry, &air, mass, balance_x, out);
  gw_geometry_clear (&geometry);
  return status;
}

static GwStall
stall_of (Craft *craft,
          double mass,
          double balance_x)
{
  GwStall stall;

  g_assert_cmpint (try_stall (craft, mass, balance_x, &stall), ==, GW_OK);
  return stall;
}

static GwStatus
try_limit (Craft  *craft,
           double  mass,
           double *out)
{
  const GwAir air = standard_air ();
  GwGeometry  geometry;
  GwStatus    status;

  g_assert_cmpint (gw_geometry_init (&craft->aircraft, &geometry), ==, GW_OK);
  status = gw_stall_forward_limit (&craft->aircraft, &geometry, &air, mass, out);
  gw_geometry_clear (&geometry);
  return status;
}

static double
forward_limit (Craft *craft,
               double mass)
{
  double limit;

  g_assert_cmpint (try_limit (craft, mass, &limit), ==, GW_OK);
  return limit;
}

static GwLift
lift_of (const GwSurface *surface)
{
  const GwAir    air = standard_air ();
  GwSurfaceShape shape;
  GwLift         lift;

  g_assert_cmpint (gw_surface_shape (surface, &shape), ==, GW_OK);
  g_assert_cmpint (gw_lift_of_surface (surface, &shape, &air, 10.0, &lift), ==, GW_OK);
  return lift;
}

/* Glauert, Theoretical relationships for an aerofoil with hinged flap, ARC R&M 1095 (1927);
 * from memory, closed forms. */
static void
test_flap (void)
{
  static const struct
  {
    double fraction, tau, moment;
  } rows[] = {
    { 0.15, 0.480502, -0.6070214 },
    { 0.20, 0.5498151, -0.64 },
    { 0.25, 0.6089978, -0.6495191 },
    { 0.30, 0.6607459, -0.6415606 },
    { 0.40, 0.7477845, -0.5878775 },
    { 0.50, 0.8183099, -0.5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      assert_close (gw_flap_effectiveness (rows[i].fraction), rows[i].tau, 1e-6);
      assert_close (gw_flap_moment (rows[i].fraction), rows[i].moment, 1e-6);
    }

  /* No flap does nothing; all of the section is the section turned. */
  g_assert_cmpfloat_with_epsilon (gw_flap_effectiveness (0.0), 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_flap_moment (0.0), 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_flap_effectiveness (1.0), 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_flap_moment (1.0), 0.0, 1e-12);
}

/* Anderson J. D., Introduction to Flight, example 5.20 (inputs seen in print): 100528.4 N on
 * 18.21 m2, C_Lmax 1.15, air of 1.23 kg/m3: 88.349 m/s. Here by a wing whose planform is an
 * ellipse, so that every station has the lift coefficient of the whole, and whose section
 * lets go at 1.15; its chord is told at the line's own stations. */
static void
test_anderson_5_20 (void)
{
  const GwSection section = plain_section (1.15, 6.0, 0.0, 0.0);
  const double    span = 8.0, root = 4.0 * 18.21 / (M_PI * 8.0);
  const GwAir     air = { .density = 1.23, .viscosity = 1.8e-5 };
  GwStation       stations[GW_LINE_N + 1];
  GwSurface       surface = {
          .role = GW_ROLE_WING,
          .is_mirrored = TRUE,
          .n_stations = GW_LINE_N + 1,
          .stations = stations,
          .known_mass = NAN,
  };
  const GwAircraft aircraft = { .n_surfaces = 1, .surfaces = &surface };
  GwGeometry       geometry;
  GwStall          stall;

  for (int i = 0; i <= GW_LINE_N; i++)
    {
      const double eta = i < GW_LINE_N ? gw_line_eta (GW_LINE_N - 1 - i) : 1.0;
      const double chord = i < GW_LINE_N ? root * sqrt (1.0 - eta * eta) : 0.001;

      stations[i] = (GwStation){ { -0.5 * chord, 0.5 * span * eta, 0.0 }, chord, 0.0, &section };
    }

  g_assert_cmpint (gw_geometry_init (&aircraft, &geometry), ==, GW_OK);
  g_assert_cmpint (gw_stall_of (&aircraft, &geometry, &air, 100528.4 / GW_GRAVITY, -0.25 * root,
                                &stall),
                   ==, GW_OK);
  /* 0.1 %: Helmbold's factor for the polygon's slightly smaller area. Asked: 0.2 %. */
  assert_close (stall.speed, 88.34926, 1e-3);
  g_assert_false (stall.is_tail_limit);
  gw_geometry_clear (&geometry);
}

/* The aircraft of Anderson's chapter 7: wing of 0.1 m2 and 0.1 m mean chord, tail of 0.02 m2;
 * section slopes and tail height are found so that the surfaces have the book's slopes. */
static double
find_slope (Craft *craft,
            int    surface,
            double wanted)
{
  GwSection *section = surface == MAIN_WING ? &craft->wing_section : &craft->tail_section;
  double     low = 1.0, high = 60.0;

  for (int i = 0; i < 60; i++)
    {
      for (int k = 0; k < 2; k++)
        section->rows[k].slope = 0.5 * (low + high);
      if (lift_of (&craft->surfaces[surface]).lift_slope < wanted)
        low = section->rows[0].slope;
      else
        high = section->rows[0].slope;
    }

  return lift_of (&craft->surfaces[surface]).lift_slope;
}

static void
anderson_init (Craft *craft,
               double cl_max,
               double cm,
               double arm)
{
  GwLift lift;

  craft_init (craft);
  craft->aircraft.n_bodies = 0;
  craft->aircraft.n_surfaces = 2;
  craft->wing_section = plain_section (1.0, 5.0, 0.0, cm);
  craft->tail_section = plain_section (3.0, 5.0, 0.0, 0.0);
  /* Taper 0.5: mean chord 28 / 27 of the mean, straight along the quarter chord. */
  set_panel (craft, MAIN_WING, -0.25 * 0.9 / 7.0, 0.0, 0.9 / 7.0, 0.45 / 7.0, 1.4 / 2.7,
             0.25 * 0.45 / 7.0, 0.0);
  set_panel (craft, TAIL, arm - 0.0125, 0.0, 0.05, 0.05, 0.2, 0.0, 0.0);
  find_slope (craft, MAIN_WING, 0.08 / DEGREE);
  find_slope (craft, TAIL, 0.1 / GW_TAIL_EFFICIENCY / DEGREE);

  lift = lift_of (&craft->surfaces[MAIN_WING]);
  for (int k = 0; k < 2; k++)
    craft->wing_section.rows[k].cl_max = cl_max / lift.cl_max;
}

/* Example 7.2: C_L 0.45, C_Mac -0.016, balance point 0.05 chords behind the centre:
 * C_M = 0.0065. Here the tail has to carry that moment when the wing is at 0.45. */
static void
test_anderson_7_2 (void)
{
  static Craft craft;
  GwStall      stall;
  double       pressure;

  anderson_init (&craft, 0.45, -0.016, 0.3);
  stall = stall_of (&craft, 0.5, 0.005);
  pressure = 0.5 * 1.225 * stall.speed * stall.speed;
  assert_close (stall.wing_cl_max, 0.45, 1e-9);
  /* Four decimals given. */
  g_assert_cmpfloat_with_epsilon (stall.trim_load * (0.3 - 0.005) / (pressure * 0.1 * 0.1), 0.0065,
                                  5e-5);
  assert_close (stall.cl_max, 0.45 + stall.trim_load / (pressure * 0.1), 1e-4);
}

/* Examples 7.4 to 7.6: tail set at -2.7 degrees trims at 4.496 degrees from zero lift, the
 * balance point being at 0.35, that is 0.11 chords behind the centre: C_M at 9.38 degrees is
 * 0.0598 - 0.0133 x 9.38 = -0.065 with the same numbers. Here the whole tail turns up by
 * 2.7 degrees, the wing lets go at 4.496 degrees, and the forward limit is the book's
 * balance point. Tail efficiency is in its slope, the height gives the book's downwash. */
static void
test_anderson_7_5 (void)
{
  static Craft craft;
  double       low = 0.0, high = 0.5;
  GwGeometry   geometry;

  anderson_init (&craft, 0.08 * 4.496241, -0.032, 0.011 + 0.17);
  craft.controls[TAIL].chord_fraction = 1.0;
  craft.controls[TAIL].to = 0.2;
  craft.controls[TAIL].up = 2.7 * DEGREE;
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_OK);
  assert_close (geometry.mac, 0.1, 1e-9);
  assert_close (geometry.area, 0.1, 1e-9);
  for (int i = 0; i < 60; i++)
    if (gw_downwash_gradient (&geometry.shapes[MAIN_WING], 0.181, 0.5 * (low + high)) > 0.35)
      low = 0.5 * (low + high);
    else
      high = 0.5 * (low + high);
  gw_geometry_clear (&geometry);
  craft.stations[TAIL][0].at[2] = craft.stations[TAIL][1].at[2] = low;

  /* 0.1 % of the chord: the book's figures have three digits. */
  g_assert_cmpfloat_with_epsilon (forward_limit (&craft, 0.5) / 0.1, 0.11, 1e-3);
}

/* Hand calculation of the balance of moments about the balance point, with a body and a tail
 * of cambered section: wing and tail at their centres, the own moments of both, the body's. */
static void
test_moments (void)
{
  static Craft craft;
  const double x = 0.31;
  GwLift       lifts[N_SURFACES] = { { 0 } };
  GwGeometry   geometry;
  GwBodyMoment body;
  GwStall      stall;
  double       pressure, moment, wing;

  craft_init (&craft);
  craft.wing_section = plain_section (1.2, 5.8, -0.05, -0.06);
  craft.tail_section = plain_section (0.9, 5.6, -0.03, -0.05);
  stall = stall_of (&craft, 1.0, x);
  pressure = 0.5 * 1.225 * stall.speed * stall.speed;
  lifts[MAIN_WING] = lift_of (&craft.surfaces[MAIN_WING]);
  lifts[TAIL] = lift_of (&craft.surfaces[TAIL]);
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_OK);
  gw_body_moment (&craft.aircraft, &geometry, lifts, &body);

  wing = lifts[MAIN_WING].cl_max * 0.28;
  moment = wing * (x - lifts[MAIN_WING].centre_x) + 0.28 * geometry.mac * -0.06 +
           GW_TAIL_EFFICIENCY * 0.06 * geometry.shapes[TAIL].mac * -0.05 +
           body.still * lifts[MAIN_WING].alpha_zero +
           body.turned * (stall.alpha - lifts[MAIN_WING].alpha_zero);
  assert_close (stall.trim_load * (lifts[TAIL].centre_x - x), pressure * moment, 1e-6);
  assert_close (stall.trim_load + pressure * wing, GW_GRAVITY, 1e-6);
  assert_close (stall.alpha,
                lifts[MAIN_WING].alpha_zero + lifts[MAIN_WING].cl_max / lifts[MAIN_WING].lift_slope,
                1e-9);
  gw_geometry_clear (&geometry);
}

/* With c_lmax the same at every Reynolds number the speed goes with the root of mass and of
 * thin air. */
static void
test_root_of_mass (void)
{
  static Craft craft;

  craft_init (&craft);
  craft.wing_section = plain_section (1.2, 5.8, -0.05, -0.06);
  craft.tail_section = plain_section (0.9, 5.6, 0.0, 0.0);
  for (double mass = 0.1; mass < 10.0; mass *= 1.3)
    assert_close (stall_of (&craft, mass, BALANCE).speed,
                  stall_of (&craft, 1.0, BALANCE).speed * sqrt (mass), 1e-7);
}

/* What flies at the stall carries its weight; more mass never stalls slower, whatever the
 * planform and the tables; the inverse comes back. */
static void
test_more_mass_is_faster (void)
{
  static Craft craft;
  const GwAir  air = standard_air ();

  for (int trial = 0; trial < 200; trial++)
    {
      const double root = g_test_rand_double_range (0.15, 0.35);
      const double tip = root * g_test_rand_double_range (0.3, 1.0);
      const double semispan = g_test_rand_double_range (0.5, 1.0);
      const double balance = 0.25 + root * g_test_rand_double_range (0.2, 0.4);
      const double tail = 0.25 * (root + tip) * semispan / 0.6; /* a quarter of the wing */
      double       mass[12], speed[12], curve[12], back;
      GwGeometry   geometry;

      craft_init (&craft);
      craft.wing_section = small_section (g_test_rand_double_range (0.9, 1.6),
                                          g_test_rand_double_range (-0.08, 0.0),
                                          g_test_rand_double_range (-0.1, 0.0));
      set_panel (&craft, MAIN_WING, 0.25, 0.05, root, tip, semispan, 0.25 * (root - tip),
                 g_test_rand_double_range (0.0, 0.08));
      craft.stations[MAIN_WING][1].twist -= g_test_rand_double_range (0.0, 0.05);
      set_panel (&craft, TAIL, 0.92, 0.03, tail, tail, 0.3, 0.0, 0.0);
      g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_OK);

      for (int i = 0; i < 12; i++)
        {
          GwStall stall;

          mass[i] = 0.3 * pow (1.25, i);
          g_assert_cmpint (gw_stall_of (&craft.aircraft, &geometry, &air, mass[i], balance, &stall),
                           ==, GW_OK);
          speed[i] = stall.speed;
          g_assert_cmpfloat (speed[i], >, i > 0 ? speed[i - 1] : 0.0);
          assert_close (0.5 * air.density * speed[i] * speed[i] * geometry.area * stall.cl_max,
                        mass[i] * GW_GRAVITY, 1e-6);
          g_assert_cmpint (gw_stall_mass_at (&craft.aircraft, &geometry, &air, balance, speed[i],
                                             &back),
                           ==, GW_OK);
          assert_close (back, mass[i], 1e-6);
        }

      /* The curve is the same, to 1e-4 where a row of the tables puts a kink. */
      g_assert_cmpint (gw_stall_curve (&craft.aircraft, &geometry, &air, balance, 12, mass, curve),
                       ==, GW_OK);
      for (int i = 0; i < 12; i++)
        assert_close (curve[i], speed[i], 1e-4);
      gw_geometry_clear (&geometry);
    }
}

/* c_lmax that doubles within a narrow range of Reynolds numbers makes plain iteration from
 * speed to lift to speed run away. */
static void
test_steep_table (void)
{
  static Craft craft;
  double       before = 0.0;

  craft_init (&craft);
  craft.wing_section = plain_section (0.5, 5.8, 0.0, 0.0);
  craft.wing_section.rows[0] = (GwSectionRow){ 1.0e5, 0.5, 5.8, 0.0, 0.0 };
  craft.wing_section.rows[1] = (GwSectionRow){ 1.1e5, 1.2, 5.8, 0.0, 0.0 };
  set_panel (&craft, MAIN_WING, 0.25, 0.05, 0.2, 0.2, 0.7, 0.0, 0.0);
  for (double mass = 0.2; mass < 3.0; mass *= 1.01)
    {
      const double speed = stall_of (&craft, mass, BALANCE - 0.02).speed;

      g_assert_cmpfloat (speed, >, before);
      before = speed;
    }
}

/* A balance point further forward asks for more load down, which the wing carries as well. */
static void
test_forward_is_faster (void)
{
  static Craft craft;
  GwStall      aft, fore;

  craft_init (&craft);
  fore = stall_of (&craft, 1.0, 0.26);
  for (double x = 0.265; x < 0.36; x += 0.005)
    {
      aft = stall_of (&craft, 1.0, x);
      g_assert_cmpfloat (aft.speed, <, fore.speed);
      g_assert_cmpfloat (aft.trim_load, >, fore.trim_load);
      fore = aft;
    }
}

/* The tail at its limit: beyond it the wing no longer gets to its own, at a lower angle; the
 * step from one to the other has no jump. */
static void
test_tail_limit (void)
{
  static Craft craft;
  double       limit, before = 0.0;
  GwStall      inside, outside;

  craft_init (&craft);
  craft.controls[TAIL].up = 80.0 * DEGREE; /* so that the tail's own stall is the limit */
  limit = forward_limit (&craft, 1.0);
  inside = stall_of (&craft, 1.0, limit + 1e-4);
  outside = stall_of (&craft, 1.0, limit - 1e-4);
  g_assert_false (inside.is_tail_limit);
  g_assert_true (outside.is_tail_limit);
  g_assert_cmpfloat (outside.alpha, <, inside.alpha);
  g_assert_cmpfloat (outside.speed, >, inside.speed);
  assert_close (outside.speed, inside.speed, 1e-3);

  for (double x = limit; x > limit - 0.1; x -= 0.005)
    {
      const double speed = stall_of (&craft, 1.0, x).speed;

      g_assert_cmpfloat (speed, >, before);
      before = speed;
    }
}

/* More throw and a larger elevator let the balance point go further forward, until the tail
 * itself lets go. */
static void
test_forward_limit (void)
{
  static Craft craft;
  double       before = INFINITY, last;

  craft_init (&craft);
  for (double up = 2.0; up <= 10.0; up += 2.0)
    {
      double limit;

      craft.controls[TAIL].up = up * DEGREE;
      limit = forward_limit (&craft, 1.0);
      g_assert_cmpfloat (limit, <, before);
      before = limit;
    }
  craft.controls[TAIL].chord_fraction = 0.4;
  last = forward_limit (&craft, 1.0);
  g_assert_cmpfloat (last, <, before);
  craft.controls[TAIL].to = 0.12;
  g_assert_cmpfloat (forward_limit (&craft, 1.0), >, last);

  /* At the limit the stall's own trim load is what the full elevator gives. */
  g_assert_cmpfloat (stall_of (&craft, 1.0, last).trim_load, <, 0.0);

  craft.controls[TAIL].up = 0.0;
  g_assert_cmpint (try_limit (&craft, 1.0, &last), ==, GW_EDOM);
  craft.controls[TAIL].up = 0.3;
  craft.controls[TAIL].kind = GW_CONTROL_FLAP;
  g_assert_cmpint (try_limit (&craft, 1.0, &last), ==, GW_EDOM);
}

/* A V-tail of the same projected area at the same place trims as a flat tail does, but for
 * the slope: its ruddervators count by their turn in their own plane. */
static void
test_v_tail (void)
{
  static Craft craft;
  double       flat, vee;

  craft_init (&craft);
  craft.aircraft.n_surfaces = 2;
  flat = stall_of (&craft, 1.0, BALANCE).speed;
  craft.surfaces[TAIL].role = GW_ROLE_V_TAIL;
  craft.controls[TAIL].kind = GW_CONTROL_RUDDERVATOR;
  craft.stations[TAIL][1].at[2] += 0.24 * tan (35.0 * DEGREE);
  craft.controls[TAIL].to = 0.24 / cos (35.0 * DEGREE);
  vee = stall_of (&craft, 1.0, BALANCE).speed;
  assert_close (vee, flat, 0.01);
  g_assert_cmpfloat (forward_limit (&craft, 1.0), <, BALANCE);
}

/* A canard carries load up, and if it lets go first it holds the wing below its own limit. */
static void
test_canard (void)
{
  static Craft craft;
  GwStall      stall, heavy;
  double       limit;

  craft_init (&craft);
  craft.aircraft.n_surfaces = 2;
  set_panel (&craft, TAIL, -0.35, 0.0, 0.12, 0.10, 0.22, 0.01, 3.0 * DEGREE);
  craft.surfaces[TAIL].role = GW_ROLE_CANARD;
  stall = stall_of (&craft, 1.0, 0.28);
  g_assert_cmpfloat (stall.trim_load, >, 0.0);
  g_assert_false (stall.is_tail_limit);
  assert_close (0.5 * 1.225 * stall.speed * stall.speed * 0.28 * stall.cl_max, GW_GRAVITY, 1e-6);

  heavy = stall_of (&craft, 1.0, 0.2);
  g_assert_true (heavy.is_tail_limit);
  g_assert_cmpfloat (heavy.speed, >, stall.speed);
  g_assert_cmpfloat (heavy.alpha, <, stall.alpha);

  /* Its elevator goes down for that. */
  craft.controls[TAIL].down = 80.0 * DEGREE;
  limit = forward_limit (&craft, 1.0);
  g_assert_false (stall_of (&craft, 1.0, limit + 1e-4).is_tail_limit);
  g_assert_true (stall_of (&craft, 1.0, limit - 1e-4).is_tail_limit);
}

/* A plank with elevons from root to tip. Hand calculation: about a balance point d ahead of
 * the centre, (C_L + a tau delta) d / c = c_m0 + delta d cm / d delta; the lift lost is
 * a tau delta. */
static void
test_elevons (void)
{
  static Craft craft;
  const double tau = gw_flap_effectiveness (0.25), own = gw_flap_moment (0.25);
  const double ahead = 0.08;
  GwLift       lift;
  GwStall      stall;
  double       delta;

  craft_init (&craft);
  craft.aircraft.n_bodies = 0;
  craft.aircraft.n_surfaces = 1;
  craft.wing_section = plain_section (1.1, 5.8, -0.01, 0.01);
  set_panel (&craft, MAIN_WING, 0.25, 0.05, 0.25, 0.25, 0.7, 0.0, 0.0);
  craft.controls[MAIN_WING] = (GwControl){
    .kind = GW_CONTROL_ELEVON,
    .from = 0.0,
    .to = 0.7,
    .chord_fraction = 0.25,
    .up = 20.0 * DEGREE,
    .down = 20.0 * DEGREE,
  };
  lift = lift_of (&craft.surfaces[MAIN_WING]);
  stall = stall_of (&craft, 0.8, 0.25 + (0.25 - ahead) * 0.25);
  delta = (lift.cl_max * ahead - 0.01) / (own - lift.lift_slope * tau * ahead);
  g_assert_cmpfloat (delta, <, 0.0);
  assert_close (stall.cl_max, lift.cl_max + lift.lift_slope * tau * delta, 1e-9);
  g_assert_cmpfloat (stall.trim_load, ==, 0.0);
  g_assert_false (stall.is_tail_limit);

  /* From the limit forward the throw no longer does. */
  delta = forward_limit (&craft, 0.8);
  g_assert_false (stall_of (&craft, 0.8, delta + 1e-5).is_tail_limit);
  g_assert_true (stall_of (&craft, 0.8, delta - 1e-5).is_tail_limit);

  /* Without a stated throw there is no limit; without elevons the trim costs nothing. */
  craft.controls[MAIN_WING].up = craft.controls[MAIN_WING].down = 0.0;
  g_assert_false (stall_of (&craft, 0.8, delta - 1e-3).is_tail_limit);
  g_assert_cmpint (try_limit (&craft, 0.8, &delta), ==, GW_EDOM);
  craft.controls[MAIN_WING].kind = GW_CONTROL_AILERON;
  assert_close (stall_of (&craft, 0.8, 0.3).cl_max, lift.cl_max, 1e-12);
}

/* Of two wings the one set at the greater angle lets go first, and both lift. */
static void
test_second_wing (void)
{
  static Craft craft;
  GwStall      one, two;

  craft_init (&craft);
  one = stall_of (&craft, 1.0, BALANCE);
  craft.surfaces[FIN].role = GW_ROLE_SECOND_WING;
  craft.surfaces[FIN].is_mirrored = TRUE;
  set_panel (&craft, FIN, 0.25, 0.25, 0.24, 0.16, 0.7, 0.03, 5.0 * DEGREE);
  craft.stations[FIN][1].at[1] = 0.7;
  craft.stations[FIN][1].at[2] = 0.25;
  for (int k = 0; k < 2; k++)
    craft.stations[FIN][k].section = &craft.wing_section;
  two = stall_of (&craft, 1.0, BALANCE);
  g_assert_cmpint (one.surface, ==, MAIN_WING);
  g_assert_cmpint (two.surface, ==, FIN);
  /* Twice the area, less three degrees of the other wing's lift: 0.71 to 0.85 of the speed. */
  g_assert_cmpfloat (two.speed, >, one.speed * sqrt (0.5));
  g_assert_cmpfloat (two.speed, <, one.speed * 0.85);
  g_assert_cmpfloat (two.alpha, <, one.alpha);
}

/* Twice the size in air half as dense has the same Reynolds numbers at the same speed, and
 * carries twice the mass there. */
static void
test_scale (void)
{
  static Craft craft;
  GwAir        air = standard_air ();
  GwGeometry   geometry;
  GwStall      small, large;

  craft_init (&craft);
  small = stall_of (&craft, 1.0, BALANCE);
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
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_OK);
  g_assert_cmpint (gw_stall_of (&craft.aircraft, &geometry, &air, 2.0, 2.0 * BALANCE, &large), ==,
                   GW_OK);
  assert_close (large.speed, small.speed, 1e-9);
  assert_close (large.cl_max, small.cl_max, 1e-9);
  assert_close (large.trim_load, 2.0 * small.trim_load, 1e-6);
  gw_geometry_clear (&geometry);
}

/* Inputs that change by 1 % must give usable differences: half a per cent is as good as half
 * of one per cent to a fifth. */
static void
test_differences (void)
{
  static Craft craft;
  const double twist = 2.0 * DEGREE;

  for (int input = 0; input < 4; input++)
    {
      double speed[3];

      for (int k = 0; k < 3; k++)
        {
          const double grown = 1.0 + 0.005 * k;

          craft_init (&craft);
          set_panel (&craft, MAIN_WING, 0.25, 0.05, 0.24 * (input == 0 ? grown : 1.0),
                     0.16 * (input == 1 ? grown : 1.0), 0.7 * (input == 2 ? grown : 1.0), 0.03,
                     twist);
          for (int r = 0; r < 4; r++)
            craft.wing_section.rows[r].cl_max *= input == 3 ? grown : 1.0;
          speed[k] = stall_of (&craft, 1.0, BALANCE).speed;
        }

      g_assert_cmpfloat (speed[1], <, speed[0]);
      assert_close (speed[2] - speed[1], speed[1] - speed[0], 0.2);
    }
}

static void
test_rejects (void)
{
  static Craft craft;
  const GwAir  air = standard_air ();
  GwGeometry   geometry;
  GwStall      stall = { .speed = -1.0 };
  double       value = -1.0, curve[3];
  const double bad[] = { 0.0, -1.0, NAN, INFINITY };
  const double masses[] = { NAN, 1.0, -2.0 };

  craft_init (&craft);
  g_assert_cmpint (gw_geometry_init (&craft.aircraft, &geometry), ==, GW_OK);
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_assert_cmpint (gw_stall_of (&craft.aircraft, &geometry, &air, bad[i], BALANCE, &stall), ==,
                       GW_EINVAL);
      g_assert_cmpint (gw_stall_mass_at (&craft.aircraft, &geometry, &air, BALANCE, bad[i], &value),
                       ==, GW_EINVAL);
      g_assert_cmpint (gw_stall_forward_limit (&craft.aircraft, &geometry, &air, bad[i], &value),
                       ==, GW_EINVAL);
    }
  g_assert_cmpint (gw_stall_of (&craft.aircraft, &geometry, &air, 1.0, NAN, &stall), ==, GW_EINVAL);

  g_assert_cmpfloat (stall.speed, ==, -1.0);
  g_assert_cmpfloat (value, ==, -1.0);

  g_assert_cmpint (gw_stall_curve (&craft.aircraft, &geometry, &air, BALANCE, 3, masses, curve), ==,
                   GW_OK);
  g_assert_true (isnan (curve[0]) && isnan (curve[2]));
  assert_close (curve[1], stall_of (&craft, 1.0, BALANCE).speed, 1e-5);
  gw_geometry_clear (&geometry);

  /* A plank of a cambered section whose elevons hardly move is trimmed upside down only. */
  craft.aircraft.n_surfaces = 1;
  craft.controls[MAIN_WING].kind = GW_CONTROL_ELEVON;
  craft.controls[MAIN_WING].up = 0.5 * DEGREE;
  g_assert_cmpint (try_stall (&craft, 1.0, 0.25, &stall), ==, GW_EDOM);
  g_assert_cmpfloat (stall.speed, ==, -1.0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/stall/flap", test_flap);
  g_test_add_func ("/engine/stall/anderson-5.20", test_anderson_5_20);
  g_test_add_func ("/engine/stall/anderson-7.2", test_anderson_7_2);
  g_test_add_func ("/engine/stall/anderson-7.5", test_anderson_7_5);
  g_test_add_func ("/engine/stall/moments", test_moments);
  g_test_add_func ("/engine/stall/root-of-mass", test_root_of_mass);
  g_test_add_func ("/engine/stall/more-mass-is-faster", test_more_mass_is_faster);
  g_test_add_func ("/engine/stall/steep-table", test_steep_table);
  g_test_add_func ("/engine/stall/forward-is-faster", test_forward_is_faster);
  g_test_add_func ("/engine/stall/tail-limit", test_tail_limit);
  g_test_add_func ("/engine/stall/forward-limit", test_forward_limit);
  g_test_add_func ("/engine/stall/v-tail", test_v_tail);
  g_test_add_func ("/engine/stall/canard", test_canard);
  g_test_add_func ("/engine/stall/elevons", test_elevons);
  g_test_add_func ("/engine/stall/second-wing", test_second_wing);
  g_test_add_func ("/engine/stall/scale", test_scale);
  g_test_add_func ("/engine/stall/differences", test_differences);
  g_test_add_func ("/engine/stall/rejects", test_rejects);

  return g_test_run ();
}
