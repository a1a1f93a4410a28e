/* gw-outline-measures.c - thickness, camber, edge and nose of an outline
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "engine/gw-outline.h"

#define LAST (GW_OUTLINE_N - 1)
#define NEAR 3 /* grid points behind the nose at which its radius is first taken */
#define FLAT 1e-9

static double
depth_at (const GwOutline *outline,
          size_t           i)
{
  return outline->upper[i] - outline->lower[i];
}

/* Over the straight line from its end at the nose to its end at the tail. */
static double
camber_at (const GwOutline *outline,
           size_t           i)
{
  const double x = gw_outline_x (i);
  const double fore = 0.5 * (outline->upper[0] + outline->lower[0]);
  const double aft = 0.5 * (outline->upper[LAST] + outline->lower[LAST]);

  return 0.5 * (outline->upper[i] + outline->lower[i]) - (1.0 - x) * fore - x * aft;
}

/* Top of the parabola through the farthest point and its neighbours. */
static void
find_peak (const GwOutline *outline,
           double (*at) (const GwOutline *, size_t),
           double *place,
           double *height)
{
  size_t peak = 0;
  double x[3], y[3], fore, aft, bend, sign;

  for (size_t i = 1; i < GW_OUTLINE_N; i++)
    if (fabs (at (outline, i)) > fabs (at (outline, peak)))
      peak = i;

  *place = gw_outline_x (peak);
  *height = at (outline, peak);
  if (peak == 0 || peak == LAST)
    return;

  sign = *height < 0.0 ? -1.0 : 1.0;
  for (size_t i = 0; i < 3; i++)
    {
      x[i] = gw_outline_x (peak - 1 + i);
      y[i] = sign * at (outline, peak - 1 + i);
    }
  fore = (y[1] - y[0]) / (x[1] - x[0]);
  aft = (y[2] - y[1]) / (x[2] - x[1]);
  bend = (aft - fore) / (x[2] - x[0]);
  if (!(bend < -FLAT))
    return;

  *place = 0.5 * (x[0] + x[1]) - 0.5 * fore / bend;
  *height = sign * (y[1] + (*place - x[1]) * (fore + bend * (*place - x[0])));
}

/* Where the thickness is one and the same over a stretch, its middle. */
static double
middle_of_thickest (const GwOutline *outline,
                    double           greatest,
                    double           peak)
{
  double from = INFINITY, to = -INFINITY;

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    if (depth_at (outline, i) > greatest - 1e-6)
      {
        from = fmin (from, gw_outline_x (i));
        to = fmax (to, gw_outline_x (i));
      }

  return to - from > 0.05 ? 0.5 * (from + to) : peak;
}

/* Of the circle through the nose and both sides at grid point @i: a b c / (4 area). */
static double
circle (const GwOutline *outline,
        size_t           i)
{
  const double x = gw_outline_x (i);
  const double up = outline->upper[i], low = outline->lower[i];
  const double area = 0.5 * x * (up - low);

  return area > 0.0 ? hypot (x, up) * hypot (x, low) * (up - low) / (4.0 * area) : 0.0;
}

void
gw_outline_measures (const GwOutline   *outline,
                     GwOutlineMeasures *out)
{
  find_peak (outline, depth_at, &out->x_thickness, &out->thickness);
  out->x_thickness = middle_of_thickest (outline, out->thickness, out->x_thickness);
  find_peak (outline, camber_at, &out->x_camber, &out->camber);
  if (fabs (out->camber) < FLAT)
    out->camber = out->x_camber = 0.0;
  out->edge = depth_at (outline, LAST);
  out->nose_height = depth_at (outline, 0);
  out->nose_radius = 0.0;
  /* The parabola through the radii taken at one, two and four times the root of x, at 0. A
   * sharp nose leaves nothing there. */
  if (!(out->nose_height > FLAT))
    out->nose_radius = fmax ((8.0 * circle (outline, NEAR) - 6.0 * circle (outline, 2 * NEAR) +
                              circle (outline, 4 * NEAR)) /
                               3.0,
                             0.0);
}
