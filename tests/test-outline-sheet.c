/* test-outline-sheet.c - folded sheets, plates, flat-bottomed sections; edges and measures
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "surfaces.h"

#define DEG (G_PI / 180.0)

/* A triangle: area t / 2, centroid a third of the corners' sum, I = t^3 / 36. The score
 * is put on the grid, so that the outline is exact; then between two of its points. */
static void
test_folded_triangle (void)
{
  const double   t = 0.1;
  const double   fold = gw_outline_x (37);
  GwOutline      outline;
  GwOutlineShape shape;

  g_assert_cmpint (gw_outline_folded (t, fold, 0.0, &outline), ==, GW_OK);
  gw_outline_shape (&outline, &shape);
  assert_near (shape.area, t / 2.0, 1e-12);
  assert_near (shape.centroid_x, (1.0 + fold) / 3.0, 1e-12);
  assert_near (shape.centroid_y, t / 3.0, 1e-12);
  assert_near (shape.inertia, t * t * t / 36.0, 1e-12);
  assert_near (shape.perimeter, 1.0 + hypot (fold, t) + hypot (1.0 - fold, t), 1e-12);

  g_assert_cmpint (gw_outline_folded (t, 0.5 * (fold + gw_outline_x (38)), 0.0, &outline), ==,
                   GW_OK);
  gw_outline_shape (&outline, &shape);
  assert_near (shape.area, t / 2.0, 5e-4); /* as the header says */
  assert_near (shape.thickness, t, 0.02);
}

static void
test_folded_domain (void)
{
  GwOutline outline;

  g_assert_cmpint (gw_outline_folded (0.1, 0.3, 0.05, &outline), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (outline.upper[0], 0.05, 1e-15);
  g_assert_cmpint (gw_outline_folded (0.02, 0.3, 0.0, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_folded (0.26, 0.3, 0.0, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_folded (0.1, 0.05, 0.0, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_folded (0.1, 0.3, 0.11, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_folded (0.1, 0.3, -0.01, &outline), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_folded (NAN, 0.3, 0.0, &outline), ==, GW_EINVAL);
}

/* Level between two scores: a trapezium on the grid, its corners at 0, f, s, 1. */
static void
test_folded_twice (void)
{
  const double          t = 0.1, f = gw_outline_x (35), s = gw_outline_x (50);
  const GwFoldedOutline sheet = {
    .thickness = t, .fold = f, .second = s, .nose = 0.02, .edge = 0.03
  };
  GwFoldedOutline bad;
  GwOutline       outline;
  GwOutlineShape  shape;

  g_assert_cmpint (gw_outline_folded_sheet (&sheet, &outline), ==, GW_OK);
  gw_outline_shape (&outline, &shape);
  assert_near (shape.area,
               f * (t + 0.02) / 2.0 + (s - f) * t + (1.0 - s) * (t + 0.03) / 2.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (outline.upper[GW_OUTLINE_N - 1], 0.03, 1e-15);
  g_assert_cmpfloat_with_epsilon (gw_outline_height_at (&outline, 0.5 * (f + s), true), t, 1e-15);

  bad = sheet;
  bad.second = 0.2;
  g_assert_cmpint (gw_outline_folded_sheet (&bad, &outline), ==, GW_EINVAL);
  bad.second = 0.95;
  g_assert_cmpint (gw_outline_folded_sheet (&bad, &outline), ==, GW_EINVAL);
  bad = sheet;
  bad.edge = 0.11;
  g_assert_cmpint (gw_outline_folded_sheet (&bad, &outline), ==, GW_EINVAL);
}

static GwStatus
plate (double     thickness,
       double     camber,
       double     place,
       double     edge,
       GwOutline *out)
{
  const GwPlateOutline sheet = { thickness, camber, place, 0.0, edge };

  return gw_outline_plate (&sheet, out);
}

/* A quarter of the nose's ellipse is pi / 4 of its box, twice; the rest are rectangles. The
 * polygon is inscribed in the ellipse, whose ends the grid meets with some ten points. */
static void
test_plate_area (void)
{
  static const double edges[] = { 0.03, 0.01, 0.0 };
  const double        t = 0.03, nose = 2.0 * t;

  for (size_t r = 0; r < G_N_ELEMENTS (edges); r++)
    {
      const double   e = edges[r];
      GwOutline      outline;
      GwOutlineShape shape;

      g_assert_cmpint (plate (t, 0.0, 0.5, e, &outline), ==, GW_OK);
      gw_outline_shape (&outline, &shape);
      assert_near (shape.area,
                   nose * t * G_PI / 4.0 + (0.75 - nose) * t + 0.25 * (t + e) / 2.0, 1e-3);
      assert_near (shape.thickness, t, 1e-3);
      g_assert_cmpfloat_with_epsilon (outline.upper[GW_OUTLINE_N - 1], 0.5 * e, 1e-12);
      g_assert_cmpfloat_with_epsilon (shape.camber, 0.0, 1e-12);
    }
}

/* The parabola's closed forms, Glauert: alpha_0 = -2 f, c_m = -pi f. A sheet set off square
 * to it has the same line between its sides to a per cent; and it is as thick everywhere. */
static void
test_plate_camber (void)
{
  static const double cambers[] = { 0.02, 0.04, 0.07 };

  for (size_t r = 0; r < G_N_ELEMENTS (cambers); r++)
    {
      const double      f = cambers[r];
      GwOutline         outline;
      GwOutlineMeasures measures;
      double            alpha_zero, cm;

      g_assert_cmpint (plate (0.01, f, 0.5, 0.01, &outline), ==, GW_OK);
      gw_outline_thin_theory (&outline, &alpha_zero, &cm);
      gw_outline_measures (&outline, &measures);
      assert_near (alpha_zero, -2.0 * f, 0.02);
      assert_near (cm, -G_PI * f, 0.02);
      assert_near (measures.camber, f, 0.01);
      g_assert_cmpfloat_with_epsilon (measures.x_camber, 0.5, 0.01);
      g_assert_cmpfloat_with_epsilon (measures.thickness, 0.01, 5e-4);
    }
}

static void
test_plate_place (void)
{
  GwOutline         outline;
  GwOutlineMeasures measures;

  g_assert_cmpint (plate (0.02, 0.05, 0.35, 0.02, &outline), ==, GW_OK);
  gw_outline_measures (&outline, &measures);
  g_assert_cmpfloat_with_epsilon (measures.x_camber, 0.35, 0.01);
  assert_near (measures.camber, 0.05, 0.01);

  g_assert_cmpint (plate (0.002, 0.0, 0.5, 0.0, &outline), ==, GW_EINVAL);
  g_assert_cmpint (plate (0.03, 0.13, 0.5, 0.0, &outline), ==, GW_EINVAL);
  g_assert_cmpint (plate (0.03, 0.05, 0.1, 0.0, &outline), ==, GW_EINVAL);
  g_assert_cmpint (plate (0.03, 0.0, NAN, 0.0, &outline), ==, GW_OK);
  g_assert_cmpint (plate (0.03, 0.0, 0.5, 0.04, &outline), ==, GW_EINVAL);
  g_assert_cmpint (plate (NAN, 0.0, 0.5, 0.0, &outline), ==, GW_EINVAL);
}

/* Thickness, place, edge and nose come out as they were asked for, and the underside is
 * flat behind its quarter of an ellipse. The chord line is turned by the height of the nose
 * (1 to 2 degrees, whose cosine is nearly 1); splines between 161 points: 0.05 %. */
static void
test_flat_bottomed (void)
{
  static const GwFlatOutline rows[] = {
    { .thickness = 0.11, .place = 0.3, .nose = 0.03, .radius = 0.015, .edge = 0.005 },
    { .thickness = 0.09, .place = 0.35, .nose = 0.025, .radius = 0.01, .edge = 0.0 },
    { .thickness = 0.14, .place = 0.28, .nose = 0.04, .radius = 0.02, .edge = 0.01 },
  };

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      const GwFlatOutline *flat = &rows[r];
      const double         from = flat->nose * flat->nose / flat->radius;
      double               low, high;
      GwOutline            outline;
      GwOutlineMeasures    measures;

      g_assert_cmpint (gw_outline_flat_bottomed (flat, &outline), ==, GW_OK);
      gw_outline_measures (&outline, &measures);
      assert_near (measures.thickness, flat->thickness, 2e-3);
      g_assert_cmpfloat_with_epsilon (measures.x_thickness, flat->place, 0.015);
      g_assert_cmpfloat_with_epsilon (measures.edge, flat->edge, 1e-5);
      assert_near (measures.nose_radius, flat->radius, 0.1);

      low = gw_outline_height_at (&outline, from + 0.02, false);
      high = gw_outline_height_at (&outline, 0.98, false);
      for (double x = from + 0.02; x < 0.98; x += 0.05)
        g_assert_cmpfloat_with_epsilon (
          gw_outline_height_at (&outline, x, false),
          low + (high - low) * (x - from - 0.02) / (0.98 - from - 0.02), 5e-4);
    }
}

/* The area by the trapezium rule over the definition. */
static void
test_flat_bottomed_area (void)
{
  const GwFlatOutline flat = { .thickness = 0.11, .place = 0.3, .nose = 0.03, .radius = 0.015 };
  const double        t = flat.thickness, p = flat.place, h = flat.nose, q = 1.0 - p;
  const double        a = sqrt (2.0 * flat.radius * p), fall = 1.64 * t;
  const double        cubic = fall - 2.0 * t, square = t - cubic;
  const double        bend = -2.0 * square * p * p / (q * q);
  const double        d = bend / 2.0 - 0.375 * a + (t - h), c = 0.5 * a - (t - h) - 2.0 * d;
  const double        b = t - h - a - c - d;
  /* Integrals of the powers, closed form; the quarter ellipse leaves (1 - pi / 4) of its box. */
  const double upper = p * (h + 2.0 * a / 3.0 + b / 2.0 + c / 3.0 + d / 4.0) +
                       q * (t - square / 3.0 - cubic / 4.0);
  const double   lower = h * h * h / flat.radius * (1.0 - G_PI / 4.0);
  GwOutline      outline;
  GwOutlineShape shape;

  g_assert_cmpint (gw_outline_flat_bottomed (&flat, &outline), ==, GW_OK);
  gw_outline_shape (&outline, &shape);
  assert_near (shape.area, upper - lower, 2e-3); /* scaled to the line from nose to tail */
}

static void
test_flat_bottomed_domain (void)
{
  const GwFlatOutline good = { .thickness = 0.11, .place = 0.3, .nose = 0.03, .radius = 0.015 };
  GwFlatOutline       bad;
  GwOutline           outline;

  bad = good;
  bad.thickness = 0.03;
  g_assert_cmpint (gw_outline_flat_bottomed (&bad, &outline), ==, GW_EINVAL);
  bad = good;
  bad.radius = 0.001; /* the underside would never be flat */
  g_assert_cmpint (gw_outline_flat_bottomed (&bad, &outline), ==, GW_EINVAL);
  bad.radius = 0.3; /* a second crest behind the nose */
  g_assert_cmpint (gw_outline_flat_bottomed (&bad, &outline), ==, GW_EINVAL);
  bad = good;
  bad.nose = NAN;
  g_assert_cmpint (gw_outline_flat_bottomed (&bad, &outline), ==, GW_EINVAL);
}

/* The edge is as asked for; the fore part, the thickness and the mean line stay. */
static void
test_set_edge (void)
{
  static const double edges[] = { 0.0, 0.005, 0.02 };

  for (size_t r = 0; r < G_N_ELEMENTS (edges); r++)
    {
      const GwSection   plain = naca ("2412");
      GwOutline         outline = plain.outline;
      GwOutlineMeasures before, after;

      g_assert_cmpint (gw_outline_set_edge (&outline, edges[r]), ==, GW_OK);
      gw_outline_measures (&plain.outline, &before);
      gw_outline_measures (&outline, &after);
      g_assert_cmpfloat_with_epsilon (after.edge, edges[r], 1e-12);
      assert_near (after.thickness, before.thickness, 1e-3);
      g_assert_cmpfloat_with_epsilon (after.x_thickness, before.x_thickness, 0.015);
      g_assert_cmpfloat_with_epsilon (after.camber, before.camber, 1e-6);
      for (size_t i = 0; i < GW_OUTLINE_N; i++)
        {
          g_assert_cmpfloat_with_epsilon (outline.upper[i] + outline.lower[i],
                                          plain.outline.upper[i] + plain.outline.lower[i], 1e-12);
          g_assert_cmpfloat (outline.upper[i], >=, outline.lower[i] - 1e-12);
          if (gw_outline_x (i) < before.x_thickness)
            g_assert_cmpfloat (outline.upper[i], ==, plain.outline.upper[i]);
        }
    }
}

static void
test_set_edge_domain (void)
{
  GwSection section = naca ("0012");

  g_assert_cmpint (gw_outline_set_edge (&section.outline, -0.001), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_set_edge (&section.outline, 0.07), ==, GW_EINVAL);
  g_assert_cmpint (gw_outline_set_edge (&section.outline, NAN), ==, GW_EINVAL);
}

/* The digits come out: thickness, at three tenths, camber and its place, the gap of the
 * definition (0.0021 of the thickness times ten), a nose of 1.1019 t^2 (Report 460). */
static void
test_measures_naca (void)
{
  static const struct
  {
    const char *code;
    double      thickness, camber, place;
  } rows[] = {
    { "0006", 0.06, 0.0, 0.0 },
    { "0015", 0.15, 0.0, 0.0 },
    { "2412", 0.12, 0.02, 0.4 },
    { "4409", 0.09, 0.04, 0.4 },
    { "6412", 0.12, 0.06, 0.4 },
    { "2309", 0.09, 0.02, 0.3 },
    { "1408", 0.08, 0.01, 0.4 },
  };

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      const double      t = rows[r].thickness;
      const GwSection   section = naca (rows[r].code);
      GwOutlineMeasures measures;

      gw_outline_measures (&section.outline, &measures);
      assert_near (measures.thickness, t, 5e-3);
      g_assert_cmpfloat_with_epsilon (measures.x_thickness, 0.3, 0.02);
      g_assert_cmpfloat_with_epsilon (measures.camber, rows[r].camber, 6e-4);
      g_assert_cmpfloat_with_epsilon (measures.x_camber, rows[r].place, 0.03);
      assert_near (measures.edge, 0.021 * t, 0.03); /* square to the mean line's end */
      assert_near (measures.nose_radius, 1.1019 * t * t, 0.03);
      g_assert_cmpfloat (measures.nose_height, ==, 0.0);
    }
}

/* An ellipse's nose: b^2 / a = t^2 / 2. A wedge has none; a blunt nose has a height. The
 * camber of a sheet folded flat counts from its own ends. */
static void
test_measures_noses (void)
{
  const GwFoldedOutline sheet = { .thickness = 0.1, .fold = 0.3, .nose = 0.04, .edge = 0.02 };
  const GwSection       round = ellipse (0.12);
  GwOutline             outline;
  GwOutlineMeasures     measures;

  gw_outline_measures (&round.outline, &measures);
  assert_near (measures.nose_radius, 0.12 * 0.12 / 2.0, 0.02);

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double x = gw_outline_x (i);

      outline.upper[i] = 0.1 * fmin (x, 1.0 - x);
      outline.lower[i] = -outline.upper[i];
    }
  gw_outline_measures (&outline, &measures);
  g_assert_cmpfloat_with_epsilon (measures.nose_radius, 0.0, 1e-6);
  assert_near (measures.thickness, 0.1, 1e-9);

  g_assert_cmpint (gw_outline_folded_sheet (&sheet, &outline), ==, GW_OK);
  gw_outline_measures (&outline, &measures);
  g_assert_cmpfloat_with_epsilon (measures.nose_height, 0.04, 1e-12);
  g_assert_cmpfloat (measures.nose_radius, ==, 0.0);
  g_assert_cmpfloat_with_epsilon (measures.edge, 0.02, 1e-12);
  /* Half the height at the score, less the line from 2 % to 1 %. */
  g_assert_cmpfloat_with_epsilon (measures.camber, 0.05 - (0.7 * 0.02 + 0.3 * 0.01), 1e-3);
  g_assert_cmpfloat_with_epsilon (measures.x_camber, 0.3, 0.01);
}

/* Turned upside down the camber changes its sign and nothing else changes. */
static void
test_measures_upside_down (void)
{
  const GwSection   section = naca ("4412");
  GwOutline         turned;
  GwOutlineMeasures a, b;

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      turned.upper[i] = -section.outline.lower[i];
      turned.lower[i] = -section.outline.upper[i];
    }
  gw_outline_measures (&section.outline, &a);
  gw_outline_measures (&turned, &b);
  g_assert_cmpfloat_with_epsilon (b.camber, -a.camber, 1e-12);
  g_assert_cmpfloat_with_epsilon (b.x_camber, a.x_camber, 1e-12);
  g_assert_cmpfloat_with_epsilon (b.thickness, a.thickness, 1e-12);
  g_assert_cmpfloat_with_epsilon (b.nose_radius, a.nose_radius, 1e-12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/outline/folded/triangle", test_folded_triangle);
  g_test_add_func ("/engine/outline/folded/domain", test_folded_domain);
  g_test_add_func ("/engine/outline/folded/twice", test_folded_twice);
  g_test_add_func ("/engine/outline/plate/area", test_plate_area);
  g_test_add_func ("/engine/outline/plate/camber", test_plate_camber);
  g_test_add_func ("/engine/outline/plate/place", test_plate_place);
  g_test_add_func ("/engine/outline/flat-bottomed/as-asked", test_flat_bottomed);
  g_test_add_func ("/engine/outline/flat-bottomed/area", test_flat_bottomed_area);
  g_test_add_func ("/engine/outline/flat-bottomed/domain", test_flat_bottomed_domain);
  g_test_add_func ("/engine/outline/set-edge/stays", test_set_edge);
  g_test_add_func ("/engine/outline/set-edge/domain", test_set_edge_domain);
  g_test_add_func ("/engine/outline/measures/naca", test_measures_naca);
  g_test_add_func ("/engine/outline/measures/noses", test_measures_noses);
  g_test_add_func ("/engine/outline/measures/upside-down", test_measures_upside_down);

  return g_test_run ();
}
