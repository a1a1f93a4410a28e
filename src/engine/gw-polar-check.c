/* gw-polar-check.c - outlines about which no flow is to be computed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-polar.h"

#include <math.h>

#define LEAST_POINTS 17
#define OPEN         0.1  /* of the chord */
#define CROSSED      5e-4 /* how deep sides may cross [chords] */
#define THIN         0.03 /* [chords] */
#define SHARP        5e-4 /* radius of the nose [chords] */
#define FOLD         0.12 /* turn [rad] */

static double
side_of (const double *a,
         const double *b,
         const double *p)
{
  return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
}

GwPolarFault
gw_polar_check_points (size_t        n,
                       const double *xy)
{
  double reach = 0.0;

  if (n < LEAST_POINTS)
    return GW_POLAR_FEW_POINTS;
  for (size_t i = 0; i < 2 * n; i++)
    if (!isfinite (xy[i]))
      return GW_POLAR_NOT_FINITE;

  for (size_t i = 1; i < n; i++)
    reach = fmax (reach, hypot (xy[2 * i] - xy[0], xy[2 * i + 1] - xy[1]));
  if (hypot (xy[2 * n - 2] - xy[0], xy[2 * n - 1] - xy[1]) > OPEN * reach)
    return GW_POLAR_OPEN;

  for (size_t i = 0; i + 1 < n; i++)
    for (size_t k = i + 2; k + 1 < n; k++)
      {
        const double *a = &xy[2 * i], *b = a + 2, *c = &xy[2 * k], *d = c + 2;

        if (side_of (a, b, c) * side_of (a, b, d) < 0.0 &&
            side_of (c, d, a) * side_of (c, d, b) < 0.0)
          return GW_POLAR_CROSSED;
      }

  return GW_POLAR_FINE;
}

GwPolarFault
gw_polar_check (const GwOutline *outline)
{
  double thickness = 0.0, radius = 0.0;

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double depth = outline->upper[i] - outline->lower[i];
      const double x = gw_outline_x (i);

      if (!isfinite (outline->upper[i]) || !isfinite (outline->lower[i]))
        return GW_POLAR_NOT_FINITE;
      if (depth < -CROSSED)
        return GW_POLAR_CROSSED;
      thickness = fmax (thickness, depth);
      /* A parabola has depth^2 = 8 r x; a blunt nose more. */
      if (i > 0 && x < 0.005)
        radius = fmax (radius, depth * depth / (8.0 * x));
    }

  if (outline->upper[GW_OUTLINE_N - 1] - outline->lower[GW_OUTLINE_N - 1] > OPEN)
    return GW_POLAR_OPEN;
  if (thickness < THIN)
    return GW_POLAR_THIN;
  return radius < SHARP ? GW_POLAR_SHARP_NOSE : GW_POLAR_FINE;
}

double
gw_polar_fold (const GwOutline *outline,
               bool             is_upper)
{
  const double *side = is_upper ? outline->upper : outline->lower;
  double        sharpest = FOLD, place = 1.0;

  for (size_t i = 1; i + 1 < GW_OUTLINE_N; i++)
    {
      const double x = gw_outline_x (i);
      const double fore = x - gw_outline_x (i - 1), aft = gw_outline_x (i + 1) - x;
      /* Across two segments: the score may lie between two places of the grid. */
      const double turn = fabs (atan ((side[i + 1] - side[i]) / aft) -
                                atan ((side[i] - side[i - 1]) / fore));

      if (x > 0.03 && x < 0.95 && turn > sharpest)
        {
          sharpest = turn;
          place = x;
        }
    }

  return place;
}
