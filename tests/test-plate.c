/* test-plate.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-plate.h"

#define DEG (G_PI / 180.0)

/* A flat plate of 2.5 % at re 1.2e5: recalled bands (Selig et al., Mueller, 1989-2001): greatest
 * lift 0.62 to 0.82 at 6 to 10 degrees, drag at no lift 0.010 to 0.020. */
static void
test_flat (void)
{
  const GwPlate plate = { 0.025, 0.0, 1.2e5 };
  GwPlateValues values;
  double        cl, cd, cm;

  g_assert_cmpint (gw_plate_values (&plate, &values), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (values.cl_max[0], 0.62, 0.01);
  g_assert_cmpfloat_with_epsilon (values.cl_max[2], 0.82, 0.01);
  g_assert_cmpfloat (values.alpha_max, >, 6.0 * DEG);
  g_assert_cmpfloat (values.alpha_max, <, 10.0 * DEG);
  g_assert_cmpfloat (values.cd_zero[0], >, 0.009);
  g_assert_cmpfloat (values.cd_zero[2], <, 0.020);

  g_assert_cmpint (gw_plate_at (&plate, values.alpha_max, &cl, &cd, &cm), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (cl, values.cl_max[1], 1e-9);
  g_assert_cmpfloat (cd, >, 0.05);
  g_assert_cmpfloat (cm, ==, 0.0);
  g_assert_cmpint (gw_plate_at (&plate, -values.alpha_max, &cl, &cd, &cm), ==, GW_OK);
  g_assert_cmpfloat_with_epsilon (cl, -values.cl_max[1], 1e-9);
}

/* Camber helps a plate at 6e4 to 2e5 (Pelletier & Mueller, 2000, abstract): more lift, and less
 * drag at the lift of a glide. */
static void
test_cambered (void)
{
  for (int i = 0; i < 3; i++)
    {
      const GwPlate flat = { 0.025, 0.0, 6e4 * (1 + i) }, arched = { 0.025, 0.04, flat.re };
      GwPlateValues a, b;
      double        cl, drag[2] = { 0.0, 0.0 };

      g_assert_cmpint (gw_plate_values (&flat, &a), ==, GW_OK);
      g_assert_cmpint (gw_plate_values (&arched, &b), ==, GW_OK);
      g_assert_cmpfloat (b.cl_max[1], >, 1.3 * a.cl_max[1]);
      g_assert_cmpfloat (b.cm_zero, <, -0.08);
      for (int k = 0; k < 2; k++)
        for (double alpha = 0.0; alpha < 0.3; alpha += 1e-3)
          {
            double cd, cm;

            g_assert_cmpint (gw_plate_at (k == 0 ? &flat : &arched, alpha, &cl, &cd, &cm), ==,
                             GW_OK);
            if (cl >= 0.6)
              {
                drag[k] = cd;
                break;
              }
          }
      g_assert_cmpfloat (drag[1], >, 0.0);
      g_assert_cmpfloat (drag[1], <, drag[0]);
    }
}

/* No jump anywhere: half the straight slope over a thousandth of a radian. */
static void
test_smooth (void)
{
  const GwPlate plate = { 0.02, 0.06, 8e4 };
  double        before = 0.0;

  for (double alpha = -0.5; alpha <= 0.5; alpha += 1e-3)
    {
      double cl, cd, cm;

      g_assert_cmpint (gw_plate_at (&plate, alpha, &cl, &cd, &cm), ==, GW_OK);
      g_assert_cmpfloat (cd, >, 0.0);
      if (alpha > -0.4995)
        g_assert_cmpfloat (fabs (cl - before), <, 6.0e-3);
      before = cl;
    }
}

static void
test_refused (void)
{
  GwPlate       plate = { 0.1, 0.0, 1e5 };
  GwPlateValues values;
  double        cl, cd, cm;

  g_assert_cmpint (gw_plate_values (&plate, &values), ==, GW_EINVAL);
  plate.thickness = 0.02;
  g_assert_cmpint (gw_plate_at (&plate, (double) NAN, &cl, &cd, &cm), ==, GW_EINVAL);
  plate.re = 1e3;
  g_assert_cmpint (gw_plate_at (&plate, 0.0, &cl, &cd, &cm), ==, GW_EINVAL);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/plate/flat", test_flat);
  g_test_add_func ("/engine/plate/cambered", test_cambered);
  g_test_add_func ("/engine/plate/smooth", test_smooth);
  g_test_add_func ("/engine/plate/refused", test_refused);
  return g_test_run ();
}
