/* gw-polar-check.c - outlines about which no flow is to be computed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-polar.h"

#include <math.h>

#define OPEN    0.1  /* of the chord */
#define CROSSED 5e-4 /* how deep sides may cross [chords] */
#define THIN    0.03 /* [chords] */
#define SHARP   5e-4 /* radius of the nose [chords] */
#define FOLD    0.12 /* turn [rad] */

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
