/* test-lattice.c - the vortex lattice against theory, a benchmark and a measurement
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-lattice.h"
#include "engine/gw-lift.h"

#define DEG  (G_PI / 180.0)
#define MOST 40 /* stations */

typedef struct
{
  GwSection section;
  GwStation stations[MOST];
  GwSurface surface;
} Wing;

/* What a lattice says of one surface at an incidence of one radian, and at none. */
typedef struct
{
  double slope;  /* [1/rad] */
  double place;  /* of the lift by incidence, aft of the datum */
  double factor; /* induced drag over that of an elliptic load */
  double zero;   /* incidence of no lift [rad] */
  double moment; /* there, about the place, on area and mean chord */
} Found;

static void
wing_init (Wing       *wing,
           const char *code,
           size_t      n_stations)
{
  *wing = (Wing){ .section = { .name = code } };
  g_assert_cmpint (gw_outline_naca (code, &wing->section.outline), ==, GW_OK);
  wing->surface = (GwSurface){
    .name = "wing",
    .role = GW_ROLE_WING,
    .is_mirrored = true,
    .n_stations = n_stations,
    .stations = wing->stations,
    .known_mass = (double) NAN,
  };
  for (size_t i = 0; i < n_stations; i++)
    wing->stations[i].section = &wing->section;
}

/* Straight from root to tip; @sweep of the leading edge. */
static void
wing_straight (Wing       *wing,
               const char *code,
               double      span,
               double      root,
               double      tip,
               double      sweep)
{
  wing_init (wing, code, 2);
  wing->stations[0].chord = root;
  wing->stations[1].chord = tip;
  wing->stations[1].at[0] = 0.5 * span * tan (sweep);
  wing->stations[1].at[1] = 0.5 * span;
}

static GwLattice *
lattice_of (const Wing *wing,
            size_t      chordwise,
            size_t      spanwise)
{
  const GwLatticePlan plan = { 1, &wing->surface, chordwise, spanwise };
  GwLattice          *lattice = NULL;

  g_assert_cmpint (gw_lattice_new (&plan, &lattice), ==, GW_OK);
  return lattice;
}

static Found
find (const Wing *wing,
      size_t      chordwise,
      size_t      spanwise)
{
  GwLattice         *lattice = lattice_of (wing, chordwise, spanwise);
  const size_t       n = gw_lattice_n (lattice);
  g_autofree double *wash = g_new (double, n), *gamma = g_new (double, n);
  const double       origin[3] = { 0.0, 0.0, 0.0 };
  const GwStation   *root = &wing->stations[0];
  const GwStation   *tip = &wing->stations[wing->surface.n_stations - 1];
  double             area = 0.0, span = 2.0 * (tip->at[1] - root->at[1]), place[3] = { 0.0 };
  GwLatticeLoads     loads;
  Found              found;

  for (size_t i = 0; i + 1 < wing->surface.n_stations; i++)
    area += (wing->stations[i].chord + wing->stations[i + 1].chord) *
            (wing->stations[i + 1].at[1] - wing->stations[i].at[1]);

  gw_lattice_incidence (lattice, wash);
  gw_lattice_solve (lattice, GW_LATTICE_ALIKE, wash, gamma);
  loads = gw_lattice_loads (lattice, GW_LATTICE_ALIKE, gamma, origin, -1);
  found.slope = loads.lift / area;
  found.place = place[0] = -loads.pitch / loads.lift;
  found.factor = loads.drag * G_PI * span * span / (loads.lift * loads.lift);

  gw_lattice_shape (lattice, wash);
  gw_lattice_solve (lattice, GW_LATTICE_ALIKE, wash, gamma);
  loads = gw_lattice_loads (lattice, GW_LATTICE_ALIKE, gamma, place, -1);
  found.zero = -loads.lift / area / found.slope;
  found.moment = loads.pitch / area / (area / span);
  gw_lattice_free (lattice);
  return found;
}

/* Long against its chord it is the section itself: 2 pi, the quarter chord, thin-section theory.
 * 0.5 %: 1000 chords of span take 0.2 % of the slope. The mean lines' slopes are read off 1 % of
 * the chord to both sides: 0.02 deg, 0.001. */
static void
test_two_dimensions (void)
{
  static const char *const codes[] = { "0012", "2412", "4412", "6409", "23012" };

  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    {
      Wing   wing;
      Found  found;
      double zero, moment;

      wing_straight (&wing, codes[i], 1000.0, 1.0, 1.0, 0.0);
      found = find (&wing, 12, 12);
      gw_outline_thin_theory (&wing.section.outline, &zero, &moment);
      g_test_message ("%-6s slope %.4f of 2 pi, place %.4f, zero %.3f deg (thin %.3f), moment %.4f "
                      "(%.4f)",
                      codes[i], found.slope / (2.0 * G_PI), found.place, found.zero / DEG,
                      zero / DEG, found.moment, moment);
      g_assert_cmpfloat_with_epsilon (found.slope / (2.0 * G_PI), 1.0, 0.005);
      g_assert_cmpfloat_with_epsilon (found.place, 0.25, 0.001);
      g_assert_cmpfloat_with_epsilon (found.zero, zero, 0.06 * DEG);
      g_assert_cmpfloat_with_epsilon (found.moment, moment, 0.002);
    }
}

/* In 38 trapezoids, the quarter chord straight; the tip keeps a chord. */
static void
wing_elliptic (Wing  *wing,
               double span,
               double root)
{
  wing_init (wing, "0012", MOST - 1);
  for (int i = 0; i < MOST - 1; i++)
    {
      const double angle = 0.5 * G_PI * i / (MOST - 1.5);

      wing->stations[i].at[1] = 0.5 * span * sin (angle);
      wing->stations[i].chord = root * cos (angle);
      wing->stations[i].at[0] = -0.25 * wing->stations[i].chord;
    }
}

/* Its induced drag is the least there is. */
static void
test_elliptic (void)
{
  Wing  wing;
  Found found;

  wing_elliptic (&wing, 6.0, 4.0 / G_PI); /* aspect ratio 6 */
  found = find (&wing, 4, 1);
  g_test_message ("slope %.4f, factor %.4f", found.slope, found.factor);
  g_assert_cmpfloat_with_epsilon (found.factor, 1.0, 0.003);
  /* Helmbold (1942), from memory: 4.5287. 4 %: it lies above lifting surfaces between its two
   * exact ends, the slender wing and the long one. */
  g_assert_cmpfloat_with_epsilon (found.slope / 4.528664, 1.0, 0.04);
}

/* Exact lifting surfaces: Jordan, Exact solutions for lifting surfaces, AIAA Journal 11(8) (1973):
 * the square 1.4602, twice as wide 2.4744, the circle 1.7900 (from memory). 0.05 %. */
static void
test_exact (void)
{
  Wing wing;

  wing_straight (&wing, "0012", 1.0, 1.0, 1.0, 0.0);
  g_assert_cmpfloat_with_epsilon (find (&wing, 0, 0).slope / 1.4602, 1.0, 5e-4);
  wing_straight (&wing, "0012", 2.0, 1.0, 1.0, 0.0);
  g_assert_cmpfloat_with_epsilon (find (&wing, 0, 0).slope / 2.4744, 1.0, 5e-4);

  wing_init (&wing, "0012", 24);
  for (int i = 0; i < 24; i++)
    {
      const double angle = 0.5 * G_PI * i / 23.5;

      wing.stations[i].at[1] = 0.5 * sin (angle);
      wing.stations[i].chord = cos (angle);
      wing.stations[i].at[0] = -0.5 * wing.stations[i].chord;
    }
  g_assert_cmpfloat_with_epsilon (find (&wing, 8, 1).slope / 1.7900, 1.0, 5e-4);
}

/* Warren-12: 2.743 per radian, moment about the apex -3.10 on a chord of 1 (benchmark quoted in
 * validation scripts; geometry from memory). 1 %: lattices come down on it from above. */
static void
test_warren_12 (void)
{
  const double span = 2.828427;
  Wing         wing;
  Found        found;

  wing_straight (&wing, "0012", span, 1.5, 0.5, 53.54 * DEG);
  found = find (&wing, 0, 0);
  g_test_message ("slope %.4f, moment %.4f", found.slope, -found.slope * found.place);
  g_assert_cmpfloat_with_epsilon (found.slope / 2.743, 1.0, 0.01);
  g_assert_cmpfloat_with_epsilon (found.slope * found.place / 3.10, 1.0, 0.01);
}

/* Weber & Brebner, Low-speed tests on 45-deg swept-back wings, ARC R&M 2882 (1958), tables 3 and
 * 4: lift 0.121, 0.350, 0.559 at 2.1, 6.3 and 10.5 deg. 6 %: no thickness, no layers here. */
static void
test_swept (void)
{
  static const double measured[][2] = { { 2.1, 0.121 }, { 6.3, 0.350 }, { 10.5, 0.559 } };
  Wing                wing;
  Found               found;

  wing_straight (&wing, "0012", 5.0, 1.0, 1.0, 45.0 * DEG);
  found = find (&wing, 0, 0);
  for (guint i = 0; i < G_N_ELEMENTS (measured); i++)
    {
      const double lift = found.slope * sin (measured[i][0] * DEG);

      g_test_message ("%.1f deg: measured %.3f, lattice %.3f", measured[i][0], measured[i][1],
                      lift);
      g_assert_cmpfloat_with_epsilon (lift / measured[i][1], 1.0, 0.06);
    }
}

/* Induced drag over the elliptic, less 1, by Glauert's lifting line. */
static double
delta_of_line (double aspect,
               double taper)
{
  GwLine line = { .span = aspect, .area = aspect };

  for (int i = 0; i < GW_LINE_N; i++)
    {
      line.chord[i] = 2.0 / (1.0 + taper) * (1.0 - (1.0 - taper) * gw_line_eta (i));
      line.slope[i] = 2.0 * G_PI;
    }
  g_assert_cmpint (gw_line_solve (&line), ==, GW_OK);
  return line.delta;
}

/* A lifting line is what a straight wing becomes as it grows long; until then its load is fuller
 * towards the tips than that of a surface with a chord, and costs more. */
static void
test_long (void)
{
  static const double tapers[] = { 1.0, 0.6, 0.4 };

  for (guint i = 0; i < G_N_ELEMENTS (tapers); i++)
    {
      const double root = 2.0 / (1.0 + tapers[i]), tip = root * tapers[i];
      double       last = 0.0;

      for (double aspect = 6.0; aspect < 100.0; aspect *= 2.0)
        {
          Wing   wing;
          double part;

          wing_straight (&wing, "0012", aspect, root, tip, atan (0.5 * (root - tip) / aspect));
          part = (find (&wing, 0, 40).factor - 1.0) / delta_of_line (aspect, tapers[i]);
          g_test_message ("A %.0f, taper %.1f: %.2f of the line's", aspect, tapers[i], part);
          g_assert_cmpfloat (part, >, last);
          g_assert_cmpfloat (part, <, 1.0);
          last = part;
        }
      g_assert_cmpfloat (last, >, 0.8);
    }
}

/* The standard number of vortices against four times as many along and across: 0.3 % of slope and
 * induced drag, 0.5 % of the mean chord for the neutral point; 1 % at 45 degrees. */
static void
test_convergence (void)
{
  static const double wings[][3] = { /* taper, sweep [deg], bound */
                                     { 1.0, 0.0, 0.003 },
                                     { 0.5, 5.0, 0.003 },
                                     { 1.0, 45.0, 0.01 }
  };

  for (guint i = 0; i < G_N_ELEMENTS (wings); i++)
    {
      const double root = 2.0 / (1.0 + wings[i][0]);
      Wing         wing;
      Found        standard, fine;

      wing_straight (&wing, "2412", 7.0, root, root * wings[i][0], wings[i][1] * DEG);
      standard = find (&wing, 0, 0);
      fine = find (&wing, 10, 60);
      g_test_message ("taper %.1f sweep %.0f: slope %+.2f %%, drag %+.2f %%, place %+.2f %%",
                      wings[i][0], wings[i][1], 100.0 * (standard.slope / fine.slope - 1.0),
                      100.0 * (standard.factor / fine.factor - 1.0),
                      100.0 * (standard.place - fine.place));
      g_assert_cmpfloat_with_epsilon (standard.slope / fine.slope, 1.0, wings[i][2]);
      g_assert_cmpfloat_with_epsilon (standard.factor / fine.factor, 1.0, wings[i][2]);
      g_assert_cmpfloat_with_epsilon (standard.place, fine.place, 0.005);
    }
}

/* A fin in the plane of symmetry is a wing of its height, once: side force and induced drag as
 * the lift of a wing that begins at its tip; none in flows alike on both sides. */
static void
test_fin (void)
{
  const double       origin[3] = { 0.0, 0.0, 0.0 };
  Wing               fin, wing;
  GwLattice         *lattice;
  g_autofree double *wash = NULL, *gamma = NULL;
  GwLatticeLoads     loads;
  size_t             n;
  Found              found;

  wing_straight (&fin, "0009", 0.0, 1.0, 1.0, 0.0);
  fin.stations[1].at[2] = 4.0;
  fin.surface.role = GW_ROLE_FIN;
  fin.surface.is_mirrored = false;
  lattice = lattice_of (&fin, 6, 24);
  n = gw_lattice_n (lattice);
  wash = g_new (double, n);
  gamma = g_new (double, n);
  for (size_t i = 0; i < n; i++)
    wash[i] = 1.0; /* from starboard to port, out of its upper side */
  gw_lattice_solve (lattice, GW_LATTICE_OPPOSED, wash, gamma);
  loads = gw_lattice_loads (lattice, GW_LATTICE_OPPOSED, gamma, origin, -1);

  wing_straight (&wing, "0009", 4.0, 1.0, 1.0, 0.0);
  found = find (&wing, 6, 24);
  g_assert_cmpfloat_with_epsilon (-loads.side / 4.0 / found.slope, 1.0, 0.003);
  g_assert_cmpfloat_with_epsilon (
    loads.drag * G_PI * 16.0 / (loads.side * loads.side) / found.factor, 1.0, 0.003);
  g_assert_cmpfloat (loads.lift, ==, 0.0);
  g_assert_cmpfloat_with_epsilon (loads.yaw / loads.side, -0.25, 0.05);

  gw_lattice_incidence (lattice, wash);
  gw_lattice_solve (lattice, GW_LATTICE_ALIKE, wash, gamma);
  for (size_t i = 0; i < n; i++)
    g_assert_cmpfloat (gamma[i], ==, 0.0);
  gw_lattice_free (lattice);
}

/* Rolling against the stream is resisted; dihedral rolls away from the side the stream comes
 * from. Wings shifted along and up are the same wings. */
static void
test_opposed (void)
{
  const double       origin[3] = { 0.0, 0.0, 0.0 };
  Wing               wing, shifted;
  Found              here, there;
  GwLattice         *lattice;
  g_autofree double *wash = NULL, *gamma = NULL;
  GwLatticeLoads     loads;
  size_t             n;

  wing_straight (&wing, "2412", 6.0, 1.0, 0.6, 3.0 * DEG);
  wing.stations[1].at[2] = 0.2;
  lattice = lattice_of (&wing, 0, 0);
  n = gw_lattice_n (lattice);
  wash = g_new (double, n);
  gamma = g_new (double, n);
  for (size_t i = 0; i < n; i++)
    {
      const GwLatticeVortex *vortex = &gw_lattice_vortices (lattice)[i];

      wash[i] = vortex->at[1]; /* starboard goes down */
    }
  gw_lattice_solve (lattice, GW_LATTICE_OPPOSED, wash, gamma);
  loads = gw_lattice_loads (lattice, GW_LATTICE_OPPOSED, gamma, origin, -1);
  g_assert_cmpfloat (loads.roll, <, 0.0);
  g_assert_cmpfloat (loads.drag, >, 0.0);

  for (size_t i = 0; i < n; i++)
    wash[i] = gw_lattice_strips (lattice)[gw_lattice_vortices (lattice)[i].strip].tilt[1];
  gw_lattice_solve (lattice, GW_LATTICE_OPPOSED, wash, gamma); /* the stream comes from starboard */
  loads = gw_lattice_loads (lattice, GW_LATTICE_OPPOSED, gamma, origin, -1);
  g_assert_cmpfloat (loads.roll, <, 0.0); /* port down */
  gw_lattice_free (lattice);

  shifted = wing;
  shifted.surface.stations = shifted.stations;
  for (int i = 0; i < 2; i++)
    {
      shifted.stations[i].at[0] += 0.7;
      shifted.stations[i].at[2] += 0.3;
      shifted.stations[i].section = &shifted.section;
    }
  here = find (&wing, 0, 0);
  there = find (&shifted, 0, 0);
  g_assert_cmpfloat_with_epsilon (there.slope, here.slope, 1e-9);
  g_assert_cmpfloat_with_epsilon (there.factor, here.factor, 1e-9);
  g_assert_cmpfloat_with_epsilon (there.place - 0.7, here.place, 1e-9);
}

/* Lift that a tail loses behind that wing, of what it would have alone; its neutral point. */
static double
downwash (const Wing *wing,
          const Wing *tail,
          size_t      chordwise,
          size_t      spanwise,
          double     *neutral)
{
  const double        origin[3] = { 0.0, 0.0, 0.0 };
  const GwSurface     both[2] = { wing->surface, tail->surface };
  const GwLatticePlan plan = { 2, both, chordwise, spanwise };
  const GwStation    *tip = &tail->stations[1];
  GwLattice          *lattice = NULL;
  g_autofree double  *wash = NULL, *gamma = NULL;
  GwLatticeLoads      of_tail, all;

  g_assert_cmpint (gw_lattice_new (&plan, &lattice), ==, GW_OK);
  wash = g_new (double, gw_lattice_n (lattice));
  gamma = g_new (double, gw_lattice_n (lattice));
  gw_lattice_incidence (lattice, wash);
  gw_lattice_solve (lattice, GW_LATTICE_ALIKE, wash, gamma);
  of_tail = gw_lattice_loads (lattice, GW_LATTICE_ALIKE, gamma, origin, 1);
  all = gw_lattice_loads (lattice, GW_LATTICE_ALIKE, gamma, origin, -1);
  gw_lattice_free (lattice);
  *neutral = -all.pitch / all.lift;
  return 1.0 -
         of_tail.lift / (2.0 * tip->at[1] * tip->chord) / find (tail, chordwise, spanwise).slope;
}

static void
place_tail (Wing  *tail,
            double x,
            double z)
{
  for (int i = 0; i < 2; i++)
    {
      tail->stations[i].at[0] = x;
      tail->stations[i].at[2] = z;
    }
}

/* Far behind an elliptic wing, in its wake, the downwash is 2 CL / (pi A) (Prandtl's lifting
 * line): 1.5 %, the ellipse being one of trapezoids. Close behind there is more, above it less. */
static void
test_downwash (void)
{
  Wing         wing, tail;
  double       neutral, far;
  const double aspect = 6.0;

  wing_elliptic (&wing, 6.0, 4.0 / G_PI);
  wing_straight (&tail, "0009", 1.5, 0.5, 0.5, 0.0);
  place_tail (&tail, 1000.0, 0.0);
  far = downwash (&wing, &tail, 4, 1, &neutral);
  g_test_message ("far behind %.4f, 2 CL / (pi A) %.4f", far,
                  2.0 * find (&wing, 4, 1).slope / (G_PI * aspect));
  g_assert_cmpfloat_with_epsilon (far / (2.0 * find (&wing, 4, 1).slope / (G_PI * aspect)), 1.0,
                                  0.015);
  place_tail (&tail, 3.0, 0.0);
  g_assert_cmpfloat (downwash (&wing, &tail, 4, 1, &neutral), >, far);
  place_tail (&tail, 1000.0, 0.6);
  g_assert_cmpfloat (downwash (&wing, &tail, 4, 1, &neutral), <, 0.9 * far);
}

/* A tail behind the wing moves the neutral point of the two aft of the wing's. */
static void
test_tail (void)
{
  Wing   wing, tail;
  double neutral, loss;

  wing_straight (&wing, "2412", 6.0, 1.0, 1.0, 0.0);
  wing_straight (&tail, "0009", 2.0, 0.6, 0.6, 0.0);
  place_tail (&tail, 3.0, 0.1);
  loss = downwash (&wing, &tail, 0, 0, &neutral);
  g_test_message ("downwash %.3f of the incidence, neutral point %.3f", loss, neutral);
  g_assert_cmpfloat (loss, >, 0.3);
  g_assert_cmpfloat (loss, <, 0.55);
  g_assert_cmpfloat (neutral, >, find (&wing, 0, 0).place + 0.1);
  g_assert_cmpfloat (neutral, <, 0.9);
}

static void
test_faults (void)
{
  Wing          wing;
  GwLatticePlan plan = { 1, &wing.surface, 0, 0 };
  GwLattice    *lattice = NULL;

  wing_straight (&wing, "2412", 6.0, 1.0, 1.0, 0.0);
  plan.chordwise = 41;
  g_assert_cmpint (gw_lattice_new (&plan, &lattice), ==, GW_EINVAL);
  plan.chordwise = 0;
  plan.n_surfaces = 0;
  g_assert_cmpint (gw_lattice_new (&plan, &lattice), ==, GW_EINVAL);
  plan.n_surfaces = 1;
  wing.stations[1].chord = (double) NAN;
  g_assert_cmpint (gw_lattice_new (&plan, &lattice), ==, GW_EINVAL);
  g_assert_null (lattice);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/lattice/two-dimensions", test_two_dimensions);
  g_test_add_func ("/engine/lattice/elliptic", test_elliptic);
  g_test_add_func ("/engine/lattice/exact", test_exact);
  g_test_add_func ("/engine/lattice/warren-12", test_warren_12);
  g_test_add_func ("/engine/lattice/swept", test_swept);
  g_test_add_func ("/engine/lattice/long", test_long);
  g_test_add_func ("/engine/lattice/convergence", test_convergence);
  g_test_add_func ("/engine/lattice/fin", test_fin);
  g_test_add_func ("/engine/lattice/opposed", test_opposed);
  g_test_add_func ("/engine/lattice/downwash", test_downwash);
  g_test_add_func ("/engine/lattice/tail", test_tail);
  g_test_add_func ("/engine/lattice/faults", test_faults);

  return g_test_run ();
}
