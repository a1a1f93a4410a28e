/* gw-outline-smooth.c - waves taken out of measured outlines
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <gsl/gsl_linalg.h>
#include <math.h>

#include "engine/gw-outline-check.h"

#define LAST (GW_OUTLINE_N - 1)
#define N    (2 * GW_OUTLINE_N - 1) /* tail over the upper side to the nose and back */
#define STEP (M_PI / LAST)          /* of the angle of the grid */
#define HELD 1e9                    /* weight of what may not move */

static double *
loop_at (GwOutline *outline,
         size_t     i)
{
  return i <= LAST ? &outline->upper[LAST - i] : &outline->lower[i - LAST];
}

/* On a cambered section the foremost place may lie a little ahead of the point called the
 * nose, y^2 / 2 r, by how high it stands and the radius, an eighth of what the square of the
 * depth grows by along the chord. */
static double
lead_of (const GwOutline *outline)
{
  const double height = 0.5 * (outline->upper[1] + outline->lower[1]);
  const double growth = (pow (outline->upper[2] - outline->lower[2], 2.0) -
                         pow (outline->upper[1] - outline->lower[1], 2.0)) /
                        (gw_outline_x (2) - gw_outline_x (1));

  return growth > 0.0 ? fmin (4.0 * height * height / growth, 0.01) : 0.0;
}

/* Angles around the outline, 0 at its foremost place, in which its heights are smooth there. */
static void
find_angles (const GwOutline *outline,
             double           angles[N])
{
  const double lead = lead_of (outline);
  const double nose = outline->upper[1] + outline->lower[1] > 0.0 ? 1.0 : -1.0;

  for (size_t i = 0; i < N; i++)
    {
      const double x = gw_outline_x (i <= LAST ? LAST - i : i - LAST);
      const double angle = 2.0 * asin (sqrt ((x + lead) / (1.0 + lead)));

      angles[i] = angle * (i < LAST ? -1.0 : i > LAST ? 1.0
                                                      : nose);
    }
}

/* Of the values at four angles, the third derivative times the cube of a step: the third
 * difference, if the angles are a step apart. */
static void
third_difference (const double angles[4],
                  double       weights[4])
{
  for (size_t i = 0; i < 4; i++)
    {
      weights[i] = 6.0 * STEP * STEP * STEP;
      for (size_t j = 0; j < 4; j++)
        if (j != i)
          weights[i] /= angles[i] - angles[j];
    }
}

/* Adds the products of the third differences, stiffness times, to the lower band. */
static void
add_stiffness (gsl_matrix  *band,
               const double angles[N],
               double       stiffness)
{
  for (size_t start = 0; start + 4 <= N; start++)
    {
      double difference[4];

      third_difference (&angles[start], difference);
      for (size_t i = 0; i < 4; i++)
        for (size_t j = 0; j <= i; j++)
          *gsl_matrix_ptr (band, start + j, i - j) +=
            stiffness * difference[i] * difference[j];
    }
}

static void
solve (gsl_matrix *band,
       gsl_vector *heights,
       GwOutline  *outline,
       double      stiffness)
{
  double angles[N];

  find_angles (outline, angles);
  gsl_matrix_set_zero (band);
  add_stiffness (band, angles, stiffness);
  for (size_t i = 0; i < N; i++)
    {
      const double weight = i == 0 || i == LAST || i == N - 1 ? HELD : 1.0;

      *gsl_matrix_ptr (band, i, 0) += weight;
      gsl_vector_set (heights, i, weight * *loop_at (outline, i));
    }

  gsl_linalg_cholesky_band_decomp (band);
  gsl_linalg_cholesky_band_svx (band, heights);
  for (size_t i = 0; i < N; i++)
    if (i != 0 && i != LAST && i != N - 1)
      *loop_at (outline, i) = gsl_vector_get (heights, i);
}

static void
find_change (const GwOutline *from,
             const GwOutline *to,
             GwOutlineChange *change)
{
  *change = (GwOutlineChange){ 0.0, 0.0, true };
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    for (int k = 0; k < 2; k++)
      {
        const double moved =
          k == 0 ? to->upper[i] - from->upper[i] : to->lower[i] - from->lower[i];

        if (fabs (moved) > fabs (change->greatest))
          *change = (GwOutlineChange){ moved, gw_outline_x (i), k == 0 };
      }
}

GwStatus
gw_outline_smooth (const GwOutline *outline,
                   double           waves,
                   GwOutline       *out,
                   GwOutlineChange *change)
{
  GwOutline   smooth = *outline;
  GwStatus    status = GW_ENOMEM;
  gsl_matrix *band;
  gsl_vector *heights;

  if (!(waves >= 4.0 && waves <= 60.0) || outline->upper[0] - outline->lower[0] != 0.0)
    return GW_EINVAL;
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    if (!isfinite (outline->upper[i]) || !isfinite (outline->lower[i]))
      return GW_EINVAL;

  band = gsl_matrix_alloc (N, 4);
  heights = gsl_vector_alloc (N);
  if (band != NULL && heights != NULL)
    {
      solve (band, heights, &smooth, pow (2.0 * sin (M_PI * waves / (N - 1)), -6.0));
      find_change (outline, &smooth, change);
      *out = smooth;
      status = GW_OK;
    }

  gsl_matrix_free (band);
  gsl_vector_free (heights);
  return status;
}
