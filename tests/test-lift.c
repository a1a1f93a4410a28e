/* test-lift.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "aircraft.h"

#include "engine/gw-lift.h"

/* A wing of one panel, straight along its quarter chord but for @sweep of that line. */
typedef struct
{
  GwStation stations[2];
  GwSurface surface;
} Wing;

static void
make_wing (Wing            *wing,
           const GwSection *section,
           double           span,
           double           root,
           double           tip,
           double           sweep)
{
  const double aft = 0.5 * span * tan (sweep) + 0.25 * (root - tip);

  *wing = (Wing){
    .stations = { { { 0.0, 0.0, 0.0 }, root, 0.0, section },
                  { { aft, 0.5 * span, 0.0 }, tip, 0.0, section } },
  };
  wing->surface = (GwSurface){
    .name = "wing",
    .role = GW_ROLE_WING,
    .is_mirrored = TRUE,
    .n_stations = 2,
    .stations = wing->stations,
    .known_mass = NAN,
  };
}

static GwLift
lift_of (const GwSurface *surface,
         double           speed)
{
  const GwAir    air = standard_air ();
  GwSurfaceShape shape;
  GwLift         lift;

  g_assert_cmpint (gw_surface_shape (surface, &shape), ==, GW_OK);
  g_assert_cmpint (gw_lift_of_surface (surface, &shape, &air, speed, &lift), ==, GW_OK);
  return lift;
}

/* Helmbold (1942), Polhamus (1949); from memory, closed form. */
static void
test_slope_closed (void)
{
  static const struct
  {
    double aspect_ratio, kappa, sweep, slope;
  } rows[] = {
    { 6.0, 1.0, 0.0, 4.528664 },
    { 3.0, 0.95, 0.0, 3.285066 },
    { 5.0, 1.0, 45.0, 3.360542 },
    { 1.5, 1.0, 0.0, 2.094395 },
    { 6.0, 1.0, 0.0, 4.528664 },
    { 3.0, 1.0, 0.0, 3.362659 },
    { 5.0, 1.0, 0.0, 4.253924 },
  };

  for (gsize k = 0; k < G_N_ELEMENTS (rows); k++)
    assert_close (gw_lift_slope_closed (rows[k].aspect_ratio, rows[k].kappa,
                                        rows[k].sweep * DEGREE),
                  rows[k].slope, 1e-6); /* seven digits given */

  /* The slender limit, Jones (1946): pi A / 2 from above. */
  assert_close (gw_lift_slope_closed (0.01, 1.0, 0.0), M_PI * 0.01 / 2.0, 1e-4);
}

/* Anderson R. F., Determination of the Characteristics of Tapered Wings, NACA Report 572
 * (1936): c_lmax 1.2 everywhere, A = 6; from memory, computed. */
static void
test_surface_critical (void)
{
  static const struct
  {
    double taper, cl_max, eta;
  } rows[] = {
    { 1.0, 1.048811, 0.0 },
    { 0.5, 1.124619, 0.5238567 },
  };
  const GwSection section = plain_section (1.2, 2.0 * M_PI, 0.0, 0.0);

  for (gsize k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      const double root = 2.0 / (1.0 + rows[k].taper);
      Wing         wing;
      GwLift       lift;

      make_wing (&wing, &section, 6.0, root, root * rows[k].taper, 0.0);
      /* Straight along half chord: the sweep rule must not enter. */
      wing.stations[1].at[0] = 0.5 * (root - wing.stations[1].chord);
      lift = lift_of (&wing.surface, 10.0);
      /* Asked: 1 %. Reached: 0.3 %, because the rule for small aspect ratios lowers the
       * slope by 5 % and so evens the loading out a little. */
      assert_close (lift.cl_max, rows[k].cl_max, 4e-3);
      g_assert_cmpfloat_with_epsilon (lift.stall_eta, rows[k].eta, 0.01);
      assert_close (lift.cl_min, -lift.cl_max, 1e-12); /* no camber, no twist */
      g_assert_false (lift.is_outside);
    }
}

/* Swept wings. Weber & Brebner, Low-speed tests on 45-deg swept-back wings, part I, ARC R&M
 * 2882 (1958), tables 3 and 4: RAE 101, 12 % thick, A = 5, untapered; seen in print. The
 * line is 2 % below the first point; the measured curve then bends, which a straight
 * slope does not follow: 2 % above at 6.3, 6 % at 10.5 degrees. */
static void
test_surface_weber_brebner (void)
{
  const double    alpha[] = { 2.1, 6.3, 10.5 };
  const double    measured[] = { 0.121, 0.35, 0.559 };
  const double    bound[] = { 0.025, 0.025, 0.07 };
  const GwSection section = plain_section (1.2, 2.0 * M_PI, 0.0, 0.0);
  Wing            wing;
  GwLift          lift;

  make_wing (&wing, &section, 5.0, 1.0, 1.0, 45.0 * DEGREE);
  lift = lift_of (&wing.surface, 25.0);
  for (gsize k = 0; k < G_N_ELEMENTS (alpha); k++)
    assert_close (lift.lift_slope * alpha[k] * DEGREE, measured[k], bound[k]);

  /* The same planform by vortex lattice, converged to half a per cent on 8 x 32 panels:
   * 3.2176; Bertin & Smith, Aerodynamics for Engineers, is the origin of this case. */
  assert_close (lift.lift_slope, 3.2176, 0.01);
}

/* Warren-12 planform, benchmark of lattices (seen in a validation script): 2.743 a radian,
 * moment -3.10 about the apex, so the centre lies 1.130 reference chords behind it. */
static void
test_surface_warren (void)
{
  const GwSection section = plain_section (1.2, 2.0 * M_PI, 0.0, 0.0);
  Wing            wing;
  GwLift          lift;

  make_wing (&wing, &section, 2.828427, 1.5, 0.5, 0.0);
  wing.stations[1].at[0] = 1.4142135 * tan (53.54 * DEGREE);
  lift = lift_of (&wing.surface, 25.0);
  assert_close (lift.lift_slope, 2.743, 0.01);
  /* Sweep throws load outwards and aft, which a straight line does not know: 0.056. */
  g_assert_cmpfloat_with_epsilon (lift.centre_x, 3.10 / 2.743, 0.06);
}

/* An elliptic load gives Helmbold's slope and, with sweep, Diederich's; tapers from 0.4 to
 * 0.8 come within 3 % of it from below, their tau of up to 0.08. */
static void
test_surface_helmbold (void)
{
  const GwSection section = plain_section (1.2, 5.9, 0.0, 0.0);

  for (double ratio = 3.0; ratio <= 12.0; ratio += 1.0)
    for (double taper = 0.4; taper <= 0.8; taper += 0.1)
      {
        const double   root = 2.0 / (1.0 + taper);
        Wing           wing;
        GwSurfaceShape shape;
        double         closed, found;

        make_wing (&wing, &section, ratio, root, root * taper, 0.0);
        g_assert_cmpint (gw_surface_shape (&wing.surface, &shape), ==, GW_OK);
        closed = gw_lift_slope_closed (ratio, 5.9 / (2.0 * M_PI), shape.sweep_half);
        found = lift_of (&wing.surface, 12.0).lift_slope;
        g_assert_cmpfloat (found, <, closed);
        g_assert_cmpfloat (found, >, 0.97 * closed);
      }
}

/* The moment of one section everywhere is the wing's own, for any planform, because the
 * mean chord is made for that; a swept wing's comes from the twist as well. */
static void
test_surface_moment (void)
{
  const GwSection section = plain_section (1.2, 5.8, -0.04, -0.07);
  Wing            wing;

  for (int trial = 0; trial < 50; trial++)
    {
      GwLift lift;

      make_wing (&wing, &section, g_test_rand_double_range (0.8, 3.0),
                 g_test_rand_double_range (0.15, 0.4), g_test_rand_double_range (0.1, 0.3),
                 g_test_rand_double_range (-0.4, 0.6));
      lift = lift_of (&wing.surface, 12.0);
      assert_close (lift.cm_zero, -0.07, 1e-9);
      assert_close (lift.alpha_zero, -0.04, 1e-9);
    }

  /* Washout on a wing swept back unloads the tips behind the centre: nose up. */
  make_wing (&wing, &section, 1.6, 0.25, 0.15, 25.0 * DEGREE);
  wing.stations[1].twist = -4.0 * DEGREE;
  g_assert_cmpfloat (lift_of (&wing.surface, 12.0).cm_zero, >, -0.07 + 0.02);
  wing.stations[1].twist = 4.0 * DEGREE;
  g_assert_cmpfloat (lift_of (&wing.surface, 12.0).cm_zero, <, -0.07 - 0.02);
}

/* Hand calculation: a line straight along the quarter chord has its centre there; one
 * panel swept by 30 degrees has it where the load's centre is, between 0.40 and 0.45 of
 * the semispan for ordinary tapers (an elliptic load: 4 / (3 pi) = 0.424). */
static void
test_surface_centre (void)
{
  const GwSection section = plain_section (1.2, 5.8, 0.0, 0.0);
  Wing            wing;
  double          at;

  make_wing (&wing, &section, 2.0, 0.3, 0.15, 0.0);
  g_assert_cmpfloat_with_epsilon (lift_of (&wing.surface, 12.0).centre_x, 0.075, 1e-12);

  wing.stations[1].at[2] = 0.1;
  g_assert_cmpfloat (lift_of (&wing.surface, 12.0).centre_z, >, 0.04);

  make_wing (&wing, &section, 2.0, 0.3, 0.15, 30.0 * DEGREE);
  at = (lift_of (&wing.surface, 12.0).centre_x - 0.075) / tan (30.0 * DEGREE);
  g_assert_cmpfloat (at, >, 0.40);
  g_assert_cmpfloat (at, <, 0.45);
}

/* Purser & Campbell, NACA Report 823 (1945): a V-tail's slope on its own area is that of
 * the flat tail of its true span times the squared cosine of the dihedral. */
static void
test_surface_v_tail (void)
{
  const GwSection section = plain_section (0.9, 5.6, 0.0, 0.0);

  for (double dihedral = 0.0; dihedral < 60.0; dihedral += 10.0)
    {
      const double   cosine = cos (dihedral * DEGREE);
      Wing           flat, vee;
      GwSurfaceShape shape;
      GwLift         lift;

      make_wing (&flat, &section, 0.6, 0.15, 0.10, 0.0);
      make_wing (&vee, &section, 0.6, 0.15, 0.10, 0.0);
      vee.surface.role = GW_ROLE_V_TAIL;
      vee.stations[1].at[1] = 0.3 * cosine;
      vee.stations[1].at[2] = 0.3 * sin (dihedral * DEGREE);
      vee.stations[0].twist = vee.stations[1].twist = -1.0 * DEGREE;

      g_assert_cmpint (gw_surface_shape (&vee.surface, &shape), ==, GW_OK);
      lift = lift_of (&vee.surface, 12.0);
      assert_close (lift.lift_slope * shape.projected_area / shape.area,
                    lift_of (&flat.surface, 12.0).lift_slope * cosine * cosine, 1e-9);
      /* The normal force is limited, and is seen from above as its own area is. */
      assert_close (lift.cl_max, lift_of (&flat.surface, 12.0).cl_max, 1e-9);
      /* Incidence in the panels' own plane: more of the body's angle undoes it. */
      assert_close (lift.alpha_zero, 1.0 * DEGREE / cosine, 1e-9);
    }
}

/* Upside down a cambered section lets go earlier, by twice its camber share. Hand
 * calculation: 1.3 - 2 x 6 x 0.05 = 0.7; strong camber keeps 0.4 of 1.3. */
static void
test_surface_upside_down (void)
{
  const GwSection mild = plain_section (1.3, 6.0, -0.05, -0.05);
  const GwSection strong = plain_section (1.3, 6.0, -0.12, -0.15);
  Wing            wing;
  GwLift          lift;

  make_wing (&wing, &mild, 1.2, 0.2, 0.2, 0.0);
  lift = lift_of (&wing.surface, 12.0);
  assert_close (lift.cl_min / lift.cl_max, -0.7 / 1.3, 1e-9);

  make_wing (&wing, &strong, 1.2, 0.2, 0.2, 0.0);
  lift = lift_of (&wing.surface, 12.0);
  assert_close (lift.cl_min / lift.cl_max, -0.4, 1e-9);
}

/* c_lmax that falls with the Reynolds number lets a tapered wing go further out, washout
 * brings it back, and beyond the table the answer says so. */
static void
test_surface_reynolds (void)
{
  const GwSection plain = plain_section (1.2, 5.8, 0.0, 0.0);
  GwSection       small = plain;
  Wing            wing;
  GwLift          same, lift;

  small.rows[0] = (GwSectionRow){ 5e4, 0.8, 5.8, 0.0, 0.0 };
  small.rows[1] = (GwSectionRow){ 4e5, 1.2, 5.8, 0.0, 0.0 };

  make_wing (&wing, &plain, 1.5, 0.3, 0.12, 0.0);
  same = lift_of (&wing.surface, 10.0);
  make_wing (&wing, &small, 1.5, 0.3, 0.12, 0.0);
  lift = lift_of (&wing.surface, 10.0);
  g_assert_cmpfloat (lift.stall_eta, >, same.stall_eta + 0.05);
  g_assert_cmpfloat (lift.cl_max, <, same.cl_max);
  g_assert_false (lift.is_outside);
  assert_close (lift.re_mac, 1.225 * 10.0 * 0.22285714 / 1.78938e-5, 1e-6);
  assert_close (lift.re_stall, 1.225 * 10.0 * (0.3 - 0.18 * lift.stall_eta) / 1.78938e-5, 1e-3);

  wing.stations[1].twist = -4.0 * DEGREE;
  g_assert_cmpfloat (lift_of (&wing.surface, 10.0).stall_eta, <, lift.stall_eta - 0.05);
  g_assert_cmpfloat (lift_of (&wing.surface, 20.0).cl_max, >, lift_of (&wing.surface, 10.0).cl_max);
  g_assert_true (lift_of (&wing.surface, 40.0).is_outside);
  g_assert_true (lift_of (&wing.surface, 3.0).is_outside);
}

/* What is one wing may be told in one panel or in several, with its root rib at the side
 * of a body, or a fin as one half. */
static void
test_surface_same_wing (void)
{
  const GwSection section = plain_section (1.2, 5.8, -0.03, -0.05);
  Wing            wing;
  GwStation       split[4];
  GwSurface       other;
  GwLift          one, several;

  make_wing (&wing, &section, 1.4, 0.24, 0.24, 10.0 * DEGREE);
  wing.stations[0].twist = wing.stations[1].twist = 2.0 * DEGREE;
  one = lift_of (&wing.surface, 12.0);

  split[0] = split[1] = split[2] = wing.stations[0];
  split[3] = wing.stations[1];
  for (int k = 1; k < 3; k++)
    for (int j = 0; j < 2; j++)
      split[k].at[j] = (k == 1 ? 0.3 : 0.8) * wing.stations[1].at[j];
  other = wing.surface;
  other.n_stations = 4;
  other.stations = split;
  several = lift_of (&other, 12.0);
  assert_close (several.lift_slope, one.lift_slope, 1e-12);
  assert_close (several.cl_max, one.cl_max, 1e-12);
  assert_close (several.centre_x, one.centre_x, 1e-12);
  assert_close (several.alpha_zero, -5.0 * DEGREE + 3.0 * DEGREE - 0.03, 1e-9);
}

/* A crank with a change of sweep and dihedral that slides along the span must not make
 * the results jump where it passes a station: second differences stay small. */
static void
test_surface_smooth (void)
{
  const GwSection section = plain_section (1.2, 5.8, 0.0, 0.0);
  const int       n = 400;
  double          slope[400], cl_max[400];

  for (int k = 0; k < n; k++)
    {
      const double y = 0.3 + 0.0002 * k;
      GwStation    stations[3] = {
           { { 0.0, 0.0, 0.0 }, 0.25, 0.0, &section },
           { { 0.0, y, 0.0 }, 0.25, 0.0, &section },
           { { 0.5 * (0.7 - y), 0.7, 0.4 * (0.7 - y) }, 0.18, 0.0, &section },
      };
      const GwSurface surface = {
        .role = GW_ROLE_WING,
        .is_mirrored = TRUE,
        .n_stations = 3,
        .stations = stations,
        .known_mass = NAN,
      };
      const GwLift lift = lift_of (&surface, 12.0);

      slope[k] = lift.lift_slope;
      cl_max[k] = lift.cl_max;
    }

  for (int k = 1; k + 1 < n; k++)
    {
      /* The crank moves by 0.03 % of the semispan a step. Without the strip's mean the
       * slope jumps by 2e-3 and c_lmax by 1e-3. */
      g_assert_cmpfloat (fabs (slope[k - 1] - 2.0 * slope[k] + slope[k + 1]), <, 1e-4);
      g_assert_cmpfloat (fabs (cl_max[k - 1] - 2.0 * cl_max[k] + cl_max[k + 1]), <, 1e-4);
    }
}

static void
test_surface_rejects (void)
{
  const GwSection section = plain_section (1.2, 5.8, 0.0, 0.0);
  const GwAir     air = standard_air ();
  GwSection       dead = plain_section (1.2, -1.0, 0.0, 0.0);
  GwSection       weak = plain_section (0.0, 5.8, 0.0, 0.0);
  GwSection       empty = section;
  GwLift          lift = { .cl_max = -1.0 };
  GwSurfaceShape  shape;
  Wing            wing;

  make_wing (&wing, &section, 1.4, 0.24, 0.2, 0.0);
  g_assert_cmpint (gw_surface_shape (&wing.surface, &shape), ==, GW_OK);
  g_assert_cmpint (gw_lift_of_surface (&wing.surface, &shape, &air, 0.0, &lift), ==, GW_EINVAL);
  g_assert_cmpint (gw_lift_of_surface (&wing.surface, &shape, &air, NAN, &lift), ==, GW_EINVAL);

  empty.n_rows = 0;
  wing.stations[1].section = &empty;
  g_assert_cmpint (gw_lift_of_surface (&wing.surface, &shape, &air, 9.0, &lift), ==, GW_EINVAL);
  wing.stations[0].section = wing.stations[1].section = &weak;
  g_assert_cmpint (gw_lift_of_surface (&wing.surface, &shape, &air, 9.0, &lift), ==, GW_EINVAL);
  wing.stations[0].section = wing.stations[1].section = &dead;
  g_assert_cmpint (gw_lift_of_surface (&wing.surface, &shape, &air, 9.0, &lift), ==, GW_EDOM);
  wing.surface.n_stations = 1;
  g_assert_cmpint (gw_lift_of_surface (&wing.surface, &shape, &air, 9.0, &lift), ==, GW_EINVAL);
  g_assert_cmpfloat (lift.cl_max, ==, -1.0);
}

/* Hand calculation: 0.1 m from the centre line, then a panel of 0.5 m at 60 degrees. */
static void
test_spanwise_arc (void)
{
  const GwSection section = plain_section (1.2, 5.8, 0.0, 0.0);
  Wing            wing;

  make_wing (&wing, &section, 1.0, 0.2, 0.2, 0.0);
  wing.stations[0].at[1] = 0.1;
  wing.stations[1].at[1] = 0.1 + 0.5 * cos (60.0 * DEGREE);
  wing.stations[1].at[2] = 0.5 * sin (60.0 * DEGREE);

  g_assert_cmpfloat_with_epsilon (gw_spanwise_arc (&wing.surface, 0.0), 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_spanwise_arc (&wing.surface, 0.2), 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_spanwise_arc (&wing.surface, 0.225 / 0.35), 0.25, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_spanwise_arc (&wing.surface, 1.0), 0.5, 1e-12);

  wing.surface.role = GW_ROLE_FIN;
  g_assert_cmpfloat_with_epsilon (gw_spanwise_arc (&wing.surface, 0.3), 0.15, 1e-12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/lift/slope-closed", test_slope_closed);
  g_test_add_func ("/engine/lift/surface/critical", test_surface_critical);
  g_test_add_func ("/engine/lift/surface/weber-brebner", test_surface_weber_brebner);
  g_test_add_func ("/engine/lift/surface/warren", test_surface_warren);
  g_test_add_func ("/engine/lift/surface/helmbold", test_surface_helmbold);
  g_test_add_func ("/engine/lift/surface/moment", test_surface_moment);
  g_test_add_func ("/engine/lift/surface/centre", test_surface_centre);
  g_test_add_func ("/engine/lift/surface/v-tail", test_surface_v_tail);
  g_test_add_func ("/engine/lift/surface/upside-down", test_surface_upside_down);
  g_test_add_func ("/engine/lift/surface/reynolds", test_surface_reynolds);
  g_test_add_func ("/engine/lift/surface/same-wing", test_surface_same_wing);
  g_test_add_func ("/engine/lift/surface/smooth", test_surface_smooth);
  g_test_add_func ("/engine/lift/surface/rejects", test_surface_rejects);
  g_test_add_func ("/engine/lift/spanwise-arc", test_spanwise_arc);

  return g_test_run ();
}
