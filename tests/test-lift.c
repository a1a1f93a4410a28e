/* test-lift.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-lift.h"

#define N      GW_LINE_N
#define DEGREE (M_PI / 180.0)

#define assert_close(value, expected, relative) \
 g_assert_cmpfloat_with_epsilon ((value), (expected), (relative) *fabs (expected))

static const GwAir air = {
  .temperature = 288.15,
  .pressure = 101325.0,
  .density = 1.225,
  .viscosity = 1.78938e-5,
};

/* A section without Reynolds number: one row for all. */
static GwSection
plain_section (double cl_max,
               double slope,
               double alpha_zero,
               double cm_zero)
{
  return (GwSection){
    .name = "plain",
    .n_rows = 2,
    .rows = { { 1e3, cl_max, slope, alpha_zero, cm_zero },
              { 1e8, cl_max, slope, alpha_zero, cm_zero } },
    .cl_max_factor = 1.0,
  };
}

static GwLine
tapered_line (double aspect_ratio,
              double taper,
              double slope)
{
  const double root = 2.0 / (aspect_ratio * (1.0 + taper));
  GwLine       line = { .span = 1.0, .area = 1.0 / aspect_ratio };

  for (int i = 0; i < N; i++)
    {
      line.chord[i] = root * (1.0 - (1.0 - taper) * gw_line_eta (i));
      line.slope[i] = slope;
    }

  return line;
}

static void
solve (GwLine *line)
{
  g_assert_cmpint (gw_line_solve (line), ==, GW_OK);
}

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
  GwSurfaceShape shape;
  GwLift         lift;

  g_assert_cmpint (gw_surface_shape (surface, &shape), ==, GW_OK);
  g_assert_cmpint (gw_lift_of_surface (surface, &shape, &air, speed, &lift), ==, GW_OK);
  return lift;
}

/* Glauert, The Elements of Aerofoil and Airscrew Theory, Cambridge 1926, ch. XI:
 * tapered wings, a0 = 2 pi; from memory, a Fourier solution of 400 terms. */
static const struct
{
  double aspect_ratio, taper, slope, tau, delta, eta, peak, root;
} tapered_rows[] = {
  { 4.0, 1.0, 4.028387, 0.1194549, 0.02847688, 0.0, 1.17014, 1.17014 },
  { 4.0, 0.6, 4.120003, 0.05008764, 0.009535876, 0.430177, 1.080293, 1.001882 },
  { 4.0, 0.4, 4.150465, 0.02770216, 0.004814015, 0.6070443, 1.082046, 0.9140455 },
  { 4.0, 0.2, 4.138948, 0.0361265, 0.01136757, 0.7921553, 1.164245, 0.8264079 },
  { 6.0, 1.0, 4.530425, 0.1606595, 0.04828971, 0.0, 1.144153, 1.144153 },
  { 6.0, 0.6, 4.632723, 0.06878584, 0.0169227, 0.4386707, 1.070887, 0.9986697 },
  { 6.0, 0.4, 4.667691, 0.03830395, 0.008781604, 0.6097922, 1.071998, 0.9216539 },
  { 6.0, 0.2, 4.657726, 0.04694373, 0.01850016, 0.791156, 1.137296, 0.844494 },
  { 10.0, 1.0, 5.046791, 0.2249313, 0.08590697, 0.0, 1.111463, 1.111463 },
  { 10.0, 0.6, 5.150872, 0.09914759, 0.03206723, 0.4499122, 1.057769, 0.9955216 },
  { 10.0, 0.4, 5.18786, 0.05566232, 0.01718259, 0.6147884, 1.057931, 0.9328746 },
  { 10.0, 0.2, 5.182155, 0.06232851, 0.03088213, 0.7914059, 1.103579, 0.8695183 },
};

static void
test_line_tapered (void)
{
  for (gsize k = 0; k < G_N_ELEMENTS (tapered_rows); k++)
    {
      const double ratio = tapered_rows[k].aspect_ratio;
      GwLine       line = tapered_line (ratio, tapered_rows[k].taper, 2.0 * M_PI);
      int          at = 0;
      double       tau;

      solve (&line);
      for (int i = 0; i < N; i++)
        if (line.additional[i] > line.additional[at])
          at = i;
      tau = M_PI * ratio * (1.0 / line.lift_slope - 1.0 / (2.0 * M_PI)) - 1.0;

      /* What 40 stations reach against 400 terms (asked: 0.3 %, 0.004, 0.0015, 0.006):
       * the kink of the chord at the root holds it up. Peak within half a station. */
      assert_close (line.lift_slope, tapered_rows[k].slope, 1.2e-4);
      g_assert_cmpfloat_with_epsilon (tau, tapered_rows[k].tau, 7e-4);
      g_assert_cmpfloat_with_epsilon (line.delta, tapered_rows[k].delta, 8e-5);
      g_assert_cmpfloat_with_epsilon (1.0 / (1.0 + line.delta), 1.0 / (1.0 + tapered_rows[k].delta), 8e-5);
      g_assert_cmpfloat_with_epsilon (line.additional[at], tapered_rows[k].peak, 2e-4);
      g_assert_cmpfloat_with_epsilon (line.additional[N - 1], tapered_rows[k].root, 5.5e-4);
      g_assert_cmpfloat_with_epsilon (gw_line_eta (at), tapered_rows[k].eta, 0.02);
    }
}

/* Same source: elliptic planform, from memory, closed form. CL = 0.6. */
static void
test_line_elliptic (void)
{
  static const struct
  {
    double aspect_ratio, slope, drag, downwash;
  } rows[] = {
    { 4.0, 4.18879, 0.02864789, 0.04774648 },
    { 6.0, 4.712389, 0.01909859, 0.03183099 },
  };

  for (gsize k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      const double ratio = rows[k].aspect_ratio;
      GwLine       line = { .span = 1.0, .area = 1.0 / ratio };

      for (int i = 0; i < N; i++)
        {
          const double eta = gw_line_eta (i);

          line.chord[i] = 4.0 / (M_PI * ratio) * sqrt (1.0 - eta * eta);
          line.slope[i] = 2.0 * M_PI;
        }
      solve (&line);

      /* Exact but for rounding: seven digits are given. */
      assert_close (line.lift_slope, rows[k].slope, 1e-6);
      assert_close (0.36 * (1.0 + line.delta) / (M_PI * ratio), rows[k].drag, 1e-6);
      for (int i = 0; i < N; i++)
        {
          const double downwash = 0.6 / line.lift_slope - 0.6 * line.additional[i] / (2.0 * M_PI);

          assert_close (downwash, rows[k].downwash, 1e-6);
          g_assert_cmpfloat_with_epsilon (line.additional[i], 1.0, 1e-10);
        }
    }
}

/* Glauert's own series with @terms odd terms by Gaussian elimination: another form and
 * another solver than the engine's. @cl at 1 rad and at no angle, at the engine's stations. */
static void
solve_series (int    terms,
              double span,
              double (*chord) (double eta),
              double (*slope) (double eta),
              double (*zero) (double eta),
              double cl[2][N])
{
  g_autofree double *m = g_new0 (double, terms *(terms + 2));
  const int          width = terms + 2;

  for (int i = 0; i < terms; i++)
    {
      const double angle = M_PI * (i + 1) / (2.0 * terms), eta = cos (angle);
      const double mu = 4.0 * span / (slope (eta) * chord (eta));

      for (int j = 0; j < terms; j++)
        m[i * width + j] = sin ((2 * j + 1) * angle) * (mu + (2 * j + 1) / sin (angle));
      m[i * width + terms] = 1.0;
      m[i * width + terms + 1] = -zero (eta);
    }

  for (int k = 0; k < terms; k++)
    {
      int pivot = k;

      for (int i = k + 1; i < terms; i++)
        if (fabs (m[i * width + k]) > fabs (m[pivot * width + k]))
          pivot = i;
      for (int j = k; j < width; j++)
        {
          const double swap = m[k * width + j];

          m[k * width + j] = m[pivot * width + j];
          m[pivot * width + j] = swap;
        }
      for (int i = 0; i < terms; i++)
        {
          const double factor = m[i * width + k] / m[k * width + k];

          for (int j = k; i != k && j < width; j++)
            m[i * width + j] -= factor * m[k * width + j];
        }
    }

  for (int i = 0; i < N; i++)
    for (int r = 0; r < 2; r++)
      {
        cl[r][i] = 0.0;
        for (int j = 0; j < terms; j++)
          cl[r][i] += m[j * width + terms + r] / m[j * width + j] *
                      sin ((2 * j + 1) * M_PI * (i + 1) / (2.0 * N));
        cl[r][i] *= 4.0 * span / chord (gw_line_eta (i));
      }
}

static double
smooth_chord (double eta)
{
  return 0.22 * (1.0 - 0.5 * eta * eta);
}

static double
smooth_slope (double eta)
{
  return 6.0 - 0.5 * eta * eta;
}

static double
smooth_zero (double eta)
{
  return -0.05 + 0.06 * eta * eta;
}

static double
cranked_chord (double eta)
{
  return eta < 0.55 ? 0.22 : 0.22 - 0.2 * (eta - 0.55);
}

static double
cranked_zero (double eta)
{
  return -0.04 + 0.05 * fmax (eta - 0.55, 0.0);
}

static void
check_series (double (*chord) (double),
              double (*zero) (double),
              int    terms,
              double tolerance)
{
  GwLine line = { .span = 1.5, .area = 0.3 };
  double cl[2][N];

  for (int i = 0; i < N; i++)
    {
      const double eta = gw_line_eta (i);

      line.chord[i] = chord (eta);
      line.slope[i] = smooth_slope (eta);
      line.zero[i] = zero (eta);
    }
  solve (&line);
  solve_series (terms, line.span, chord, smooth_slope, zero, cl);

  for (int i = 0; i < N; i++)
    {
      const double at_radian = line.additional[i] * line.lift_slope;
      const double at_none = line.basic[i] - line.alpha_zero * at_radian;

      g_assert_cmpfloat_with_epsilon (at_radian, cl[0][i], tolerance * line.lift_slope);
      g_assert_cmpfloat_with_epsilon (at_none, cl[1][i], tolerance);
    }
}

static void
test_line_series (void)
{
  /* The same terms: the same answer but for rounding. */
  check_series (smooth_chord, smooth_zero, N, 1e-11);
  check_series (cranked_chord, cranked_zero, N, 1e-11);
}

/* Convergence: five times the terms move nothing by more than 0.1 % of the greatest
 * load on a smooth planform, 1 % at the crank of a kinked one. */
static void
test_line_convergence (void)
{
  check_series (smooth_chord, smooth_zero, 5 * N, 1e-3);
  check_series (cranked_chord, cranked_zero, 5 * N, 1e-2);
}

/* The basic load lifts nothing, the additional load lifts 1; both follow twist and
 * coefficient linearly; no unit is preferred. */
static void
test_line_properties (void)
{
  for (int trial = 0; trial < 200; trial++)
    {
      const double scale = g_test_rand_double_range (0.1, 10.0);
      GwLine       line = tapered_line (g_test_rand_double_range (3.0, 16.0),
                                        g_test_rand_double_range (0.15, 1.2),
                                        g_test_rand_double_range (4.0, 6.5));
      const double washout = g_test_rand_double_range (-0.1, 0.1);
      GwLine       twice, grown;
      double       basic = 0.0, additional = 0.0;

      for (int i = 0; i < N; i++)
        line.zero[i] = washout * gw_line_eta (i) - 0.03;
      twice = grown = line;
      for (int i = 0; i < N; i++)
        {
          twice.zero[i] = 2.0 * line.zero[i];
          grown.chord[i] = scale * line.chord[i];
        }
      grown.span = scale * line.span;
      grown.area = scale * scale * line.area;
      solve (&line);
      solve (&twice);
      solve (&grown);

      for (int i = 0; i < N; i++)
        {
          const double sine = i == N - 1 ? 0.5 : sin (M_PI * (i + 1) / (2 * N));

          basic += sine * line.chord[i] * line.basic[i];
          additional += sine * line.chord[i] * line.additional[i];
          g_assert_cmpfloat (line.additional[i], >, 0.0);
          g_assert_cmpfloat_with_epsilon (twice.basic[i], 2.0 * line.basic[i], 1e-10);
          g_assert_cmpfloat_with_epsilon (grown.basic[i], line.basic[i], 1e-10);
          g_assert_cmpfloat_with_epsilon (grown.additional[i], line.additional[i], 1e-10);
        }
      g_assert_cmpfloat_with_epsilon (basic, 0.0, 1e-10);
      assert_close (additional * line.span * M_PI / (2 * N), line.area, 1e-10);
      assert_close (twice.alpha_zero, 2.0 * line.alpha_zero, 1e-10);
      g_assert_cmpfloat (line.delta, >, 0.0);
    }
}

static void
test_line_rejects (void)
{
  const GwLine good = tapered_line (6.0, 0.5, 6.0);
  GwLine       bad[7] = { good, good, good, good, good, good, good };

  bad[0].span = 0.0;
  bad[1].area = -1.0;
  bad[2].chord[7] = 0.0;
  bad[3].chord[7] = NAN;
  bad[4].zero[0] = INFINITY;
  bad[5].slope[39] = NAN;
  bad[6].slope[3] = 0.0;

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      bad[i].lift_slope = -1.0;
      g_assert_cmpint (gw_line_solve (&bad[i]), ==, i < 6 ? GW_EINVAL : GW_EDOM);
      g_assert_cmpfloat (bad[i].lift_slope, ==, -1.0);
    }
}

/* Anderson J. D., Introduction to Flight, examples 5.18 and 5.19 (inputs seen in print,
 * results evaluated from them). 5.18: one wing of a biplane, e = 0.93; a chord that
 * grows outwards until the line has this e, its drag then summed strip by strip. */
static void
test_line_anderson_5_18 (void)
{
  const double ratio = 6.375859, lift = 0.638897;
  double       low = 1.0, high = 3.0, drag = 0.0;
  GwLine       line;

  for (int i = 0; i < 60; i++)
    {
      line = tapered_line (ratio, 0.5 * (low + high), 2.0 * M_PI);
      solve (&line);
      if (1.0 / (1.0 + line.delta) > 0.93)
        low = 0.5 * (low + high);
      else
        high = 0.5 * (low + high);
    }

  for (int i = 0; i < N; i++)
    {
      const double sine = i == N - 1 ? 0.5 : sin (M_PI * (i + 1) / (2 * N));
      const double cl = lift * line.additional[i];
      const double induced = lift / line.lift_slope - cl / line.slope[i];

      drag += cl * induced * line.chord[i] * sine * line.span * M_PI / (2 * N);
    }
  assert_close (drag / line.area, 0.02191241, 1e-6); /* seven digits given */
}

/* 5.19: a = a0 / (1 + a0 / (pi e A)), A = 4, a0 = 0.106 a degree, e = 0.95. Taper 0.6 has
 * that e for the slope, 1 / (1 + tau) = 0.952. */
static void
test_line_anderson_5_19 (void)
{
  const double alpha[] = { 2.0, 2.5 };
  const double expected[] = { 0.2458946, 0.2810224 };
  GwLine       line = tapered_line (4.0, 0.6, 0.106 / DEGREE);

  for (int i = 0; i < N; i++)
    line.zero[i] = -1.5 * DEGREE;
  solve (&line);

  /* 0.1 %: the difference between e = 0.95 and the 0.952 of this planform. */
  assert_close (line.lift_slope * DEGREE, 0.0702556, 1e-3);
  for (gsize k = 0; k < G_N_ELEMENTS (alpha); k++)
    assert_close (line.lift_slope * (alpha[k] * DEGREE - line.alpha_zero), expected[k], 1e-3);
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
    assert_close (gw_lift_slope_closed (rows[k].aspect_ratio, rows[k].kappa, rows[k].sweep * DEGREE),
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
      /* 0.1 %: the trapezoidal rule across the kink of the chord at the root. */
      assert_close (lift.cm_zero, -0.07, 1e-3);
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

  g_test_add_func ("/engine/lift/line/tapered", test_line_tapered);
  g_test_add_func ("/engine/lift/line/elliptic", test_line_elliptic);
  g_test_add_func ("/engine/lift/line/series", test_line_series);
  g_test_add_func ("/engine/lift/line/convergence", test_line_convergence);
  g_test_add_func ("/engine/lift/line/properties", test_line_properties);
  g_test_add_func ("/engine/lift/line/rejects", test_line_rejects);
  g_test_add_func ("/engine/lift/line/anderson-5.18", test_line_anderson_5_18);
  g_test_add_func ("/engine/lift/line/anderson-5.19", test_line_anderson_5_19);
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
