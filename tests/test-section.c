/* test-section.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-section.h"

/* Invented rows, a decade and a half decade apart so that hand values are simple. */
static const GwSection section = {
  .name = "three rows",
  .n_rows = 3,
  .rows = {
    { 1e5, 0.8, 5.0, -0.03, -0.05 },
    { 1e6, 1.4, 6.0, -0.04, -0.06 },
    { 1e7, 1.6, 6.2, -0.05, -0.04 },
  },
  .cl_max_factor = 1.0,
};

static void
test_at_rows (void)
{
  for (gsize i = 0; i < section.n_rows; i++)
    {
      GwSectionPoint point;

      g_assert_cmpint (gw_section_at (&section, section.rows[i].re, 0.2, NULL, &point), ==, GW_OK);
      /* A row must come back as it stands but for rounding. */
      g_assert_cmpfloat_with_epsilon (point.cl_max, section.rows[i].cl_max, 1e-15);
      g_assert_cmpfloat_with_epsilon (point.slope, section.rows[i].slope, 1e-15);
      g_assert_cmpfloat_with_epsilon (point.alpha_zero, section.rows[i].alpha_zero, 1e-15);
      g_assert_cmpfloat_with_epsilon (point.cm_zero, section.rows[i].cm_zero, 1e-15);
      g_assert_false (point.is_outside);
    }
}

/* Hand calculation: the square root of ten is half way in the logarithm. */
static void
test_at_half_decade (void)
{
  GwSectionPoint point;

  g_assert_cmpint (gw_section_at (&section, 1e5 * sqrt (10.0), 0.2, NULL, &point), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (point.cl_max, 1.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (point.slope, 5.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (point.alpha_zero, -0.035, 1e-12);
  g_assert_cmpfloat_with_epsilon (point.cm_zero, -0.055, 1e-12);
  g_assert_false (point.is_outside);
}

/* Beyond its ends a table is not extrapolated. */
static void
test_at_outside (void)
{
  const double   re[] = { 1.0, 0.99e5, 1.01e7, 1e9 };
  GwSection      single = section;
  GwSectionPoint point;

  for (gsize i = 0; i < G_N_ELEMENTS (re); i++)
    {
      const GwSectionRow *end = &section.rows[re[i] < 1e6 ? 0 : 2];

      g_assert_cmpint (gw_section_at (&section, re[i], 0.2, NULL, &point), ==, GW_OK);
      g_assert_cmpfloat (point.cl_max, ==, end->cl_max);
      g_assert_cmpfloat (point.slope, ==, end->slope);
      g_assert_true (point.is_outside);
    }

  single.n_rows = 1;
  g_assert_cmpint (gw_section_at (&single, 3e5, 0.2, NULL, &point), ==, GW_OK);
  g_assert_cmpfloat (point.cl_max, ==, 0.8);
  g_assert_true (point.is_outside);
}

static void
test_at_factor (void)
{
  GwSection      weak = section;
  GwSectionPoint point, scaled;

  weak.cl_max_factor = 0.9;
  g_assert_cmpint (gw_section_at (&section, 4e5, 0.2, NULL, &point), ==, GW_OK);
  g_assert_cmpint (gw_section_at (&weak, 4e5, 0.2, NULL, &scaled), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (scaled.cl_max, 0.9 * point.cl_max, 1e-15);
  g_assert_cmpfloat (scaled.slope, ==, point.slope);
}

/* Between two rows the answer lies between theirs, and nothing jumps anywhere. */
static void
test_at_continuous (void)
{
  for (int trial = 0; trial < 2000; trial++)
    {
      const double   re = pow (10.0, g_test_rand_double_range (4.5, 7.5));
      GwSectionPoint a, b;

      g_assert_cmpint (gw_section_at (&section, re, 0.2, NULL, &a), ==, GW_OK);
      g_assert_cmpint (gw_section_at (&section, re * (1.0 + 1e-6), 0.2, NULL, &b), ==, GW_OK);
      g_assert_cmpfloat (a.cl_max, >=, 0.8);
      g_assert_cmpfloat (a.cl_max, <=, 1.6);
      /* The steepest rise is 0.6 a decade: 2.6e-7 for a millionth more. */
      g_assert_cmpfloat (b.cl_max - a.cl_max, >=, 0.0);
      g_assert_cmpfloat (b.cl_max - a.cl_max, <, 2.7e-7);
    }
}

static void
test_at_rejects (void)
{
  const double   bad[] = { 0.0, -1.0, NAN, INFINITY };
  GwSection      empty = section;
  GwSectionPoint point = { .cl_max = -1.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_cmpint (gw_section_at (&section, bad[i], 0.2, NULL, &point), ==, GW_EINVAL);

  empty.n_rows = 0;
  g_assert_cmpint (gw_section_at (&empty, 1e5, 0.2, NULL, &point), ==, GW_EINVAL);
  empty.n_rows = GW_SECTION_ROWS + 1;
  g_assert_cmpint (gw_section_at (&empty, 1e5, 0.2, NULL, &point), ==, GW_EINVAL);
  g_assert_cmpfloat (point.cl_max, ==, -1.0);
}

/* A step of two heights, 1 and 4 mm on a chord of a metre: half way in the logarithm at 2 mm, as
 * the higher one above it, smooth below the lower one and where another step is meant. */
static void
test_stepped (void)
{
  const GwSteppedRows stepped[] = {
    { 0.25, 120.0, 1e-3, 1, { { 1e5, 0.7, 5.0, -0.03, -0.05 } } },
    { 0.25, 120.0, 4e-3, 1, { { 1e5, 0.9, 5.0, -0.03, -0.05 } } },
  };
  static const struct
  {
    double height, place, cl_max;
  } rows[] = {
    { 0.0, 0.25, 0.8 },  { 0.9e-3, 0.25, 0.8 }, { 1e-3, 0.25, 0.7 }, { 2e-3, 0.25, 0.8 },
    { 4e-3, 0.25, 0.9 }, { 9e-3, 0.25, 0.9 },   { 2e-3, 0.3, 0.8 },
  };
  GwSection      stepping = section;
  GwSectionPoint point;

  stepping.n_stepped = G_N_ELEMENTS (stepped);
  stepping.stepped = stepped;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    for (int chord = 1; chord <= 2; chord++)
      {
        const GwFinish finish = { rows[i].height * chord, rows[i].place, 120.0 };

        g_assert_cmpint (gw_section_at (&stepping, 1e5, chord, &finish, &point), ==, GW_OK);
        g_assert_cmpfloat_with_epsilon (point.cl_max, rows[i].cl_max, 1e-12);
      }

  g_assert_cmpint (gw_section_at (&stepping, 1e5, 1.0, NULL, &point), ==, GW_OK);
  g_assert_cmpfloat (point.cl_max, ==, 0.8);
}

static void
test_mix (void)
{
  const GwSectionPoint a = { 1.0, 5.0, -0.02, -0.10, false };
  const GwSectionPoint b = { 2.0, 6.0, -0.06, 0.00, true };
  GwSectionPoint       out;

  gw_section_mix (&a, &b, 0.25, &out);
  g_assert_cmpfloat_with_epsilon (out.cl_max, 1.25, 1e-15);
  g_assert_cmpfloat_with_epsilon (out.slope, 5.25, 1e-15);
  g_assert_cmpfloat_with_epsilon (out.alpha_zero, -0.03, 1e-15);
  g_assert_cmpfloat_with_epsilon (out.cm_zero, -0.075, 1e-15);
  g_assert_true (out.is_outside);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/section/at/rows", test_at_rows);
  g_test_add_func ("/engine/section/at/half-decade", test_at_half_decade);
  g_test_add_func ("/engine/section/at/outside", test_at_outside);
  g_test_add_func ("/engine/section/at/factor", test_at_factor);
  g_test_add_func ("/engine/section/at/continuous", test_at_continuous);
  g_test_add_func ("/engine/section/at/rejects", test_at_rejects);
  g_test_add_func ("/engine/section/stepped", test_stepped);
  g_test_add_func ("/engine/section/mix", test_mix);

  return g_test_run ();
}
