/* test-outline.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "surfaces.h"

#define DEG (G_PI / 180.0)

/* Half thickness and mean line of NACA four-digit sections, Report 460. */
static double
naca_half (double thickness,
           double x)
{
  return 5.0 * thickness *
         (0.2969 * sqrt (x) - 0.1260 * x - 0.3516 * x * x + 0.2843 * x * x * x -
          0.1015 * x * x * x * x);
}

static double
naca_mean (double  camber,
           double  place,
           double  x,
           double *slope)
{
  const double q = x < place ? place * place : (1.0 - place) * (1.0 - place);

  *slope = 2.0 * camber / q * (place - x);
  return x < place ? camber / q * x * (2.0 * place - x)
                   : camber / q * (1.0 - 2.0 * place + 2.0 * place * x - x * x);
}

/* Quadrature of the thickness polynomial set off square to the chord; from memory, closed
 * form, tolerances as given with the values. Our own sections have it square to the mean
 * line, as defined, so here the outlines are made by the rule of the reference. */
static void
test_shape_reference (void)
{
  static const struct
  {
    double camber, place, thickness, area, x, y, inertia, perimeter;
  } rows[] = {
    { 0.0, 0.4, 0.12, 0.08221, 0.4204355, 0.0, 6.809608e-05, 2.039272 },
    { 0.02, 0.4, 0.12, 0.08221, 0.4204355, 0.01542966, 6.996977e-05, 2.041279 },
    { 0.04, 0.4, 0.15, 0.1027625, 0.4204355, 0.03085932, 0.0001423685, 2.064321 },
    { 0.0, 0.4, 0.15, 0.1027625, 0.4204355, 0.0, 0.0001330002, 2.056572 },
    { 0.06, 0.4, 0.12, 0.08221, 0.4204355, 0.04628898, 8.495916e-05, 2.057241 },
  };

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      GwOutline      outline;
      GwOutlineShape shape;

      for (size_t i = 0; i < GW_OUTLINE_N; i++)
        {
          const double x = gw_outline_x (i);
          double       slope;
          const double mean = naca_mean (rows[r].camber, rows[r].place, x, &slope);

          outline.upper[i] = mean + naca_half (rows[r].thickness, x);
          outline.lower[i] = mean - naca_half (rows[r].thickness, x);
        }

      gw_outline_shape (&outline, &shape);
      assert_near (shape.area, rows[r].area, 0.004);
      assert_near (shape.perimeter, rows[r].perimeter, 0.004);
      assert_near (shape.inertia, rows[r].inertia, 0.02);
      g_assert_cmpfloat_with_epsilon (shape.centroid_x, rows[r].x, 0.004);
      g_assert_cmpfloat_with_epsilon (shape.centroid_y, rows[r].y, 0.0005);
    }
}

/* Set off square to its mean line, the area is the integral of the thickness along that
 * line (exactly: what its bend adds above it takes away below). 0.05 % for the polygon. */
static void
test_naca4_area (void)
{
  static const double rows[][3] = { { 0.02, 0.4, 0.12 }, { 0.04, 0.4, 0.15 }, { 0.06, 0.4, 0.12 } };

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      const int      n = 20000;
      double         area = 0.0;
      GwOutline      outline;
      GwOutlineShape shape;

      for (int i = 0; i < n; i++)
        {
          const double x = (i + 0.5) / n;
          double       slope;

          naca_mean (rows[r][0], rows[r][1], x, &slope);
          area += 2.0 * naca_half (rows[r][2], x) * hypot (1.0, slope) / n;
        }

      g_assert_cmpint (gw_outline_naca4 (rows[r][0], rows[r][1], rows[r][2], &outline), ==, GW_OK);
      gw_outline_shape (&outline, &shape);
      assert_near (shape.area, area, 5e-4);
    }
}

/* pi t / 4, pi t^3 / 64 (semi-axes 1/2 and t/2); the polygon of 200 corners inscribed at even
 * angles d has sin (d) / d of the area, exactly, d = pi / 100: 0.016 % less. */
static void
test_shape_ellipse (void)
{
  const double    t = 0.24;
  const double    d = G_PI / (GW_OUTLINE_N - 1);
  GwOutlineShape  shape;
  const GwSection section = ellipse (t);

  gw_outline_shape (&section.outline, &shape);
  assert_near (shape.area, G_PI * t / 4.0 * sin (d) / d, 1e-12);
  assert_near (shape.inertia, G_PI * t * t * t / 64.0, 5e-4);
  g_assert_cmpfloat_with_epsilon (shape.centroid_x, 0.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (shape.centroid_y, 0.0, 1e-12);
  assert_near (shape.thickness, t, 1e-12);
  g_assert_cmpfloat_with_epsilon (shape.x_thickness, 0.5, 1e-9);
}

/* The thickest place is found between grid points: exactly, where the depth is a parabola. */
static void
test_shape_peak (void)
{
  GwOutline      outline;
  GwOutlineShape shape;

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      outline.upper[i] = 0.12 - 0.2 * pow (gw_outline_x (i) - 0.35, 2.0);
      outline.lower[i] = 0.0;
    }

  gw_outline_shape (&outline, &shape);
  g_assert_cmpfloat_with_epsilon (shape.x_thickness, 0.35, 1e-9);
  g_assert_cmpfloat_with_epsilon (shape.thickness, 0.12, 1e-12);
}

typedef struct
{
  const char *name;
  double      camber, place; /* four digits; a kink or a parabola if @name says so */
  double      alpha_zero, cm, cl_at_zero;
} Theory;

/* Glauert's integrals evaluated for these mean lines (from memory, closed form). A
 * four-digit line is taken with the least thickness, 1 %, since the mean of two thick
 * sides is not the line they were made from. */
static const Theory theory[] = {
  { "2412", 0.02, 0.4, -2.07724, -0.05311951, 0.2277949 },
  { "4412", 0.04, 0.4, -4.154481, -0.106239, 0.4555898 },
  { "6412", 0.06, 0.4, -6.231721, -0.1593585, 0.6833847 },
  { "1410", 0.01, 0.4, -1.03862, -0.02655976, 0.1138975 },
  { "4309", 0.04, 0.3, -3.835852, -0.0894588, 0.4206483 },
  { "3512", 0.03, 0.5, -3.437747, -0.09424778, 0.3769911 },
  { "5410", 0.05, 0.4, -5.193101, -0.1327988, 0.5694873 },
  { "2309", 0.02, 0.3, -1.917926, -0.0447294, 0.2103241 },
  { "23001", 0.0, 0.0, -1.093587, -0.01283566, 0.1199252 },
  { "parabola", 0.02, 0.0, -2.291831, -0.06283185, 0.2513274 },
  { "parabola", 0.04, 0.0, -4.583662, -0.1256637, 0.5026548 },
  { "parabola", 0.07, 0.0, -8.021409, -0.2199115, 0.8796459 },
  { "kink", 0.06, 0.4, -3.953021, -0.09797959, 0.4334973 },
};

static void
theory_outline (const Theory *row,
                GwOutline    *out)
{
  if (g_str_equal (row->name, "23001"))
    g_assert_cmpint (gw_outline_naca (row->name, out), ==, GW_OK);
  else if (g_ascii_isdigit (row->name[0]))
    g_assert_cmpint (gw_outline_naca4 (row->camber, row->place, 0.01, out), ==, GW_OK);
  else
    for (size_t i = 0; i < GW_OUTLINE_N; i++)
      {
        const double x = gw_outline_x (i);

        if (g_str_equal (row->name, "parabola"))
          out->upper[i] = 4.0 * row->camber * x * (1.0 - x);
        else
          out->upper[i] = row->camber * fmin (x / row->place, (1.0 - x) / (1.0 - row->place));
        out->lower[i] = out->upper[i];
      }
}

static void
test_thin_theory_reference (void)
{
  for (size_t r = 0; r < G_N_ELEMENTS (theory); r++)
    {
      const bool is_kink = g_str_equal (theory[r].name, "kink");
      GwOutline  outline;
      double     alpha_zero, cm;

      theory_outline (&theory[r], &outline);
      gw_outline_thin_theory (&outline, &alpha_zero, &cm);
      g_assert_cmpfloat_with_epsilon (alpha_zero / DEG, theory[r].alpha_zero,
                                      is_kink ? 0.01 : 0.005);
      g_assert_cmpfloat_with_epsilon (cm, theory[r].cm, is_kink ? 5e-4 : 2e-4);
      g_assert_cmpfloat_with_epsilon (-2.0 * G_PI * alpha_zero, theory[r].cl_at_zero, 1e-3);
    }
}

/* A flat plate at no camber; and a full-thickness section stays near its mean line. */
static void
test_thin_theory_thick (void)
{
  const GwSection plain = naca ("0012"), cambered = naca ("2412");
  double          alpha_zero, cm;

  gw_outline_thin_theory (&plain.outline, &alpha_zero, &cm);
  g_assert_cmpfloat_with_epsilon (alpha_zero, 0.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (cm, 0.0, 1e-12);

  gw_outline_thin_theory (&cambered.outline, &alpha_zero, &cm);
  g_assert_cmpfloat_with_epsilon (alpha_zero / DEG, -2.07724, 0.05); /* deg: thickness square */
  g_assert_cmpfloat_with_epsilon (cm, -0.05311951, 0.002);
}

/* The definition itself, NACA Report 460: points set off square to the mean line of 4415
 * lie on the outline. Between grid points the sides are straight in the angle d = pi / 100,
 * which leaves d^2 / 8 of their bend in it (at most 0.25 chords): 3e-5. */
static void
test_naca4_definition (void)
{
  const GwSection section = naca ("4415");

  for (int trial = 0; trial < 500; trial++)
    {
      const double s = g_test_rand_double_range (0.01, 0.99);
      const double half = naca_half (0.15, s);
      double       slope;
      const double mean = naca_mean (0.04, 0.4, s, &slope);
      const double angle = atan (slope);
      const double x_upper = s - half * sin (angle), x_lower = s + half * sin (angle);

      g_assert_cmpfloat_with_epsilon (gw_outline_height_at (&section.outline, x_upper, true),
                                      mean + half * cos (angle), 3e-5);
      g_assert_cmpfloat_with_epsilon (gw_outline_height_at (&section.outline, x_lower, false),
                                      mean - half * cos (angle), 3e-5);
    }
}

/* Camber and thickness of the digits come out again, the thickest place near 30 %. */
static void
test_naca_digits (void)
{
  GwOutlineShape  shape;
  const GwSection a = naca ("0012"), b = naca ("2412"), c = naca ("23012");

  gw_outline_shape (&a.outline, &shape);
  assert_near (shape.thickness, 0.12, 1e-3);
  g_assert_cmpfloat_with_epsilon (shape.x_thickness, 0.30, 0.005);
  g_assert_cmpfloat_with_epsilon (shape.camber, 0.0, 1e-12);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    g_assert_cmpfloat_with_epsilon (a.outline.upper[i], -a.outline.lower[i], 1e-12);

  /* The polynomial's tail: half gap 5 t (0.2969 - 0.1260 - 0.3516 + 0.2843 - 0.1015). */
  g_assert_cmpfloat_with_epsilon (a.outline.upper[GW_OUTLINE_N - 1], 0.6 * 0.0021, 1e-12);

  gw_outline_shape (&b.outline, &shape);
  g_assert_cmpfloat_with_epsilon (shape.camber, 0.02, 2e-4);
  assert_near (shape.thickness, 0.12, 2e-3);

  /* 23012: camber 1.84 % at 15 % chord (from memory). */
  gw_outline_shape (&c.outline, &shape);
  g_assert_cmpfloat_with_epsilon (shape.camber, 0.0184, 5e-4);
}

/* What the constants of the five-digit mean lines were chosen for, NACA Report 537: the place
 * of the camber by the second digit (in twentieths), a design lift of 0.3 for a first digit
 * of 2, and no moment of the reflexed ones. They are printed with three or four digits, which
 * leaves 0.0014 of moment and 0.008 of lift; the line within a sheet of 1 % on the grid adds
 * to the lift where the nose is steep. */
static void
test_naca5_constants (void)
{
  static const char *const codes[] = { "21001", "22001", "23001", "24001", "25001",
                                       "22101", "23101", "24101", "25101" };

  for (size_t r = 0; r < G_N_ELEMENTS (codes); r++)
    {
      const bool        is_reflexed = codes[r][2] == '1';
      GwOutline         outline;
      GwOutlineMeasures measures;
      double            alpha_zero, cm, lift;

      g_assert_cmpint (gw_outline_naca (codes[r], &outline), ==, GW_OK);
      gw_outline_measures (&outline, &measures);
      gw_outline_thin_theory (&outline, &alpha_zero, &cm);
      /* Chords; half a step of the grid, and the constants. */
      g_assert_cmpfloat_with_epsilon (measures.x_camber, (codes[r][1] - '0') / 20.0, 0.005);
      if (is_reflexed)
        g_assert_cmpfloat_with_epsilon (cm, 0.0, 2e-3);

      /* Glauert: at the ideal angle lift is pi A1. */
      lift = 0.0;
      for (size_t i = 0; i + 1 < GW_OUTLINE_N; i++)
        {
          const double a = G_PI * (double) i / (GW_OUTLINE_N - 1);
          const double b = G_PI * (double) (i + 1) / (GW_OUTLINE_N - 1);
          const double rise = 0.5 * (outline.upper[i + 1] + outline.lower[i + 1] -
                                     outline.upper[i] - outline.lower[i]);

          lift += 2.0 * (sin (b) - sin (a)) * rise / (gw_outline_x (i + 1) - gw_outline_x (i));
        }
      g_assert_cmpfloat_with_epsilon (lift, 0.3, codes[r][1] < '3' ? 0.03 : 0.015);
    }
}

/* Modified thickness, NACA Report 492: the greatest is where the digit says, as thick as the
 * digits say, with a nose of 1.1019 t^2 (I / 6)^2. */
static void
test_naca_modified (void)
{
  static const struct
  {
    const char *code;
    double      thickness, place, radius;
  } rows[] = {
    { "0012-63", 0.12, 0.3, 1.1019 * 0.0144 },
    { "0010-35", 0.10, 0.5, 1.1019 * 0.01 / 4.0 },
    { "0012-34", 0.12, 0.4, 1.1019 * 0.0144 / 4.0 },
    { "0009-64", 0.09, 0.4, 1.1019 * 0.0081 },
    { "0012-62", 0.12, 0.2, 1.1019 * 0.0144 },
    { "0012-66", 0.12, 0.6, 1.1019 * 0.0144 },
  };
  GwOutline modified;

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      GwOutlineMeasures measures;

      g_assert_cmpint (gw_outline_naca (rows[r].code, &modified), ==, GW_OK);
      gw_outline_measures (&modified, &measures);
      assert_near (measures.thickness, rows[r].thickness, 1e-3);
      g_assert_cmpfloat_with_epsilon (measures.x_thickness, rows[r].place, 0.005);
      assert_near (measures.nose_radius, rows[r].radius, 0.04);
      assert_near (measures.edge, 0.02 * rows[r].thickness, 1e-3);
    }

  /* Coefficients of the fore part for the plain nose and 0.3, a thickness of 0.2; from memory. */
  g_assert_cmpint (gw_outline_naca ("0020-63", &modified), ==, GW_OK);
  for (size_t i = 0; gw_outline_x (i) < 0.3; i++)
    {
      const double x = gw_outline_x (i);

      g_assert_cmpfloat_with_epsilon (
        modified.upper[i], 0.2969 * sqrt (x) + x * (-0.096082 + x * (-0.54331 + x * 0.559395)),
        1e-5); /* chords: six decimals, the radius four */
    }
}

static void
test_naca_refuses (void)
{
  static const char *const codes[] = {
    "", "12", "241", "2412a", "24a2", "232012", "2400",
    "2012", "21112", "20012", "26012", "03012", "23000", "-412", "23212",
    "0012-", "0012-3", "0012-94", "0012-31", "0012-37", "0012-345", "0012-3a"
  };
  GwOutline outline;

  for (size_t i = 0; i < G_N_ELEMENTS (codes); i++)
    g_assert_cmpint (gw_outline_naca (codes[i], &outline), ==, GW_EINVAL);

  g_assert_cmpint (gw_outline_naca4 (0.1, 0.4, 0.12, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_naca4 (0.02, 0.05, 0.12, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_naca4 (0.02, NAN, 0.12, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_naca4 (0.02, 0.4, 0.41, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_naca4 (0.0, NAN, 0.12, &outline), ==, GW_OK);
}

/* Whatever the digits: finite, of some area, the upper side on top. */
static void
test_naca4_any (void)
{
  for (int trial = 0; trial < 200; trial++)
    {
      const double   camber = g_test_rand_double_range (0.0, 0.095);
      const double   place = g_test_rand_double_range (0.2, 0.8);
      const double   thickness = g_test_rand_double_range (0.01, 0.4);
      GwOutline      outline;
      GwOutlineShape shape;

      g_assert_cmpint (gw_outline_naca4 (camber, place, thickness, &outline), ==, GW_OK);
      gw_outline_shape (&outline, &shape);
      assert_near (shape.area, 0.6851 * thickness, 0.05); /* as thick as symmetric, nearly */
      g_assert_cmpfloat (shape.perimeter, >, 2.0);
      for (size_t i = 0; i < GW_OUTLINE_N; i++)
        g_assert_cmpfloat (outline.upper[i], >=, outline.lower[i] - 1e-12);
    }
}

static void
test_mix (void)
{
  const GwSection a = naca ("0012"), b = naca ("4415");
  GwOutline       mix;

  gw_outline_mix (&a.outline, &b.outline, 0.25, &mix);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      g_assert_cmpfloat_with_epsilon (mix.upper[i],
                                      0.75 * a.outline.upper[i] + 0.25 * b.outline.upper[i], 1e-15);
      g_assert_cmpfloat_with_epsilon (mix.lower[i],
                                      0.75 * a.outline.lower[i] + 0.25 * b.outline.lower[i], 1e-15);
    }
}

static void
test_height_at (void)
{
  const GwSection a = naca ("2412");

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double x = gw_outline_x (i);

      g_assert_cmpfloat_with_epsilon (gw_outline_height_at (&a.outline, x, true),
                                      a.outline.upper[i], 1e-9);
      g_assert_cmpfloat_with_epsilon (gw_outline_thickness_at (&a.outline, x),
                                      a.outline.upper[i] - a.outline.lower[i], 1e-9);
    }
  g_assert_cmpfloat (gw_outline_height_at (&a.outline, -0.5, true), ==, a.outline.upper[0]);
  g_assert_cmpfloat (gw_outline_height_at (&a.outline, 1.5, true), ==,
                     a.outline.upper[GW_OUTLINE_N - 1]);
}

/* The rim's and the area's moments agree with closed forms of a slab 1 x t. */
static void
test_moments_slab (void)
{
  const double    t = 0.2;
  const GwSection section = slab (t);
  double          m[6];

  gw_outline_area_moments (&section.outline, m);
  assert_near (m[0], t, 1e-12);
  assert_near (m[1], t / 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (m[2], 0.0, 1e-15);
  assert_near (m[3], t / 3.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (m[4], 0.0, 1e-15);
  assert_near (m[5], t * t * t / 12.0, 1e-12);

  gw_outline_rim_moments (&section.outline, m);
  assert_near (m[0], 2.0 + 2.0 * t, 1e-12);
  assert_near (m[1], 1.0 + t, 1e-12);
  assert_near (m[3], 2.0 / 3.0 + t, 1e-12);
  assert_near (m[5], t * t / 2.0 + t * t * t / 6.0, 1e-12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/outline/shape/reference", test_shape_reference);
  g_test_add_func ("/engine/outline/shape/ellipse", test_shape_ellipse);
  g_test_add_func ("/engine/outline/shape/peak", test_shape_peak);
  g_test_add_func ("/engine/outline/thin-theory/reference", test_thin_theory_reference);
  g_test_add_func ("/engine/outline/thin-theory/thick", test_thin_theory_thick);
  g_test_add_func ("/engine/outline/naca4/definition", test_naca4_definition);
  g_test_add_func ("/engine/outline/naca4/area", test_naca4_area);
  g_test_add_func ("/engine/outline/naca4/any", test_naca4_any);
  g_test_add_func ("/engine/outline/naca/digits", test_naca_digits);
  g_test_add_func ("/engine/outline/naca/five-digit-constants", test_naca5_constants);
  g_test_add_func ("/engine/outline/naca/modified", test_naca_modified);
  g_test_add_func ("/engine/outline/naca/refuses", test_naca_refuses);
  g_test_add_func ("/engine/outline/mix", test_mix);
  g_test_add_func ("/engine/outline/height-at", test_height_at);
  g_test_add_func ("/engine/outline/moments/slab", test_moments_slab);

  return g_test_run ();
}
