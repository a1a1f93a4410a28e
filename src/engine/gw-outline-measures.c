/* gw-outline-measures.c - thickness, camber, edge and nose of an outline
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "engine/gw-outline.h"

#define LAST  (GW_OUTLINE_N - 1)
#define NEAR  3   /* grid points behind the nose at which its radius is first taken */
#define SHEET 0.4 /* length over which a sheet has its full thickness, in chords */
#define FLAT  1e-9

static double
depth_at (const GwOutline *outline,
          size_t           i)
{
  return outline->upper[i] - outline->lower[i];
}

/* Half way between points of the two sides that face each other square to the line itself,
 * and how far these are apart; begun with points above each other, a few rounds settle it, of
 * a straight line one. */
static void
find_mean_line (const GwOutline *outline,
                double           mean[GW_OUTLINE_N],
                double           across[GW_OUTLINE_N])
{
  double former[GW_OUTLINE_N] = { NAN };

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      mean[i] = 0.5 * (outline->upper[i] + outline->lower[i]);
      across[i] = depth_at (outline, i);
    }

  for (int round = 0; round < 4 && memcmp (former, mean, sizeof former) != 0; round++)
    {
      memcpy (former, mean, sizeof former);
      for (size_t i = 1; i < LAST; i++)
        {
          const double x = gw_outline_x (i);
          const double rise = former[i + 1] - former[i - 1];
          const double run = gw_outline_x (i + 1) - gw_outline_x (i - 1);
          const double shift = 0.5 * depth_at (outline, i) * rise / hypot (rise, run);

          double up, low;

          /* Not where one of the two would lie beyond the nose or the tail. */
          if (x - fabs (shift) < 0.01 || x + fabs (shift) > 0.99)
            continue;
          up = gw_outline_height_at (outline, x - shift, true);
          low = gw_outline_height_at (outline, x + shift, false);
          mean[i] = 0.5 * (up + low);
          across[i] = hypot (up - low, 2.0 * shift);
        }
    }
}

/* Top of the parabola through the farthest value and its neighbours. */
static void
find_peak (const double values[GW_OUTLINE_N],
           double      *place,
           double      *height)
{
  size_t peak = 0;
  double x[3], y[3], fore, aft, bend, sign;

  for (size_t i = 1; i < GW_OUTLINE_N; i++)
    if (fabs (values[i]) > fabs (values[peak]))
      peak = i;

  *place = gw_outline_x (peak);
  *height = values[peak];
  if (peak == 0 || peak == LAST)
    return;

  sign = *height < 0.0 ? -1.0 : 1.0;
  for (size_t i = 0; i < 3; i++)
    {
      x[i] = gw_outline_x (peak - 1 + i);
      y[i] = sign * values[peak - 1 + i];
    }
  fore = (y[1] - y[0]) / (x[1] - x[0]);
  aft = (y[2] - y[1]) / (x[2] - x[1]);
  bend = (aft - fore) / (x[2] - x[0]);
  if (!(bend < -FLAT))
    return;

  *place = 0.5 * (x[0] + x[1]) - 0.5 * fore / bend;
  *height = sign * (y[1] + (*place - x[1]) * (fore + bend * (*place - x[0])));
}

/* Where the outline is a sheet, as thick over much of its length, the place is the middle of
 * that and the thickness square to the sheet. */
static void
find_sheet (const double       across[GW_OUTLINE_N],
            GwOutlineMeasures *out)
{
  double from = 1.0, to = 0.0, greatest, place;

  find_peak (across, &place, &greatest);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    if (across[i] > 0.99 * greatest)
      {
        from = fmin (from, gw_outline_x (i));
        to = fmax (to, gw_outline_x (i));
      }
  if (to - from < SHEET)
    return;

  out->x_thickness = 0.5 * (from + to);
  for (size_t i = 0; gw_outline_x (i) <= out->x_thickness; i++)
    out->thickness = across[i];
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
  double depth[GW_OUTLINE_N], camber[GW_OUTLINE_N], across[GW_OUTLINE_N];

  find_mean_line (outline, camber, across);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double x = gw_outline_x (i);

      depth[i] = depth_at (outline, i);
      camber[i] -= 0.5 * (1.0 - x) * (outline->upper[0] + outline->lower[0]) +
                   0.5 * x * (outline->upper[LAST] + outline->lower[LAST]);
    }

  find_peak (depth, &out->x_thickness, &out->thickness);
  find_sheet (across, out);
  find_peak (camber, &out->x_camber, &out->camber);
  if (fabs (out->camber) < FLAT)
    out->camber = out->x_camber = 0.0;
  out->edge = depth[LAST];
  out->nose_height = depth[0];
  out->nose_radius = 0.0;
  /* The parabola through the radii taken at one, two and four times the root of x, at 0. A
   * sharp nose leaves nothing there. */
  if (!(out->nose_height > FLAT))
    out->nose_radius = fmax ((8.0 * circle (outline, NEAR) - 6.0 * circle (outline, 2 * NEAR) +
                              circle (outline, 4 * NEAR)) /
                               3.0,
                             0.0);
}
