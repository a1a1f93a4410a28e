/* gw-outline.c - the common grid, shape and mean line of an outline
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-outline.h"

#include <math.h>

#define LAST (GW_OUTLINE_N - 1)

double
gw_outline_x (size_t i)
{
  return 0.5 * (1.0 - cos (M_PI * (double) i / LAST));
}

void
gw_outline_mix (const GwOutline *a,
                const GwOutline *b,
                double           t,
                GwOutline       *out)
{
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      out->upper[i] = (1.0 - t) * a->upper[i] + t * b->upper[i];
      out->lower[i] = (1.0 - t) * a->lower[i] + t * b->lower[i];
    }
}

/* The corners in order: tail over the upper side to the nose, back along the lower. */
static void
corners (const GwOutline *outline,
         double           xy[2 * GW_OUTLINE_N][2])
{
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double x = gw_outline_x (i);

      xy[LAST - i][0] = x;
      xy[LAST - i][1] = outline->upper[i];
      xy[GW_OUTLINE_N + i][0] = x;
      xy[GW_OUTLINE_N + i][1] = outline->lower[i];
    }
}

/* Sum over the edges of a polygon: triangles from the origin (signed), or the edges
 * themselves. Both are simplices with @n corners off the origin, see gw-moments.c. */
static void
add_simplex (double       total,
             int          d,
             const double a[2],
             const double b[2],
             double       m[6])
{
  const double sum[] = { a[0] + b[0], a[1] + b[1] };
  const double share = total / (d * (d + 1));

  m[0] += total;
  m[1] += total * sum[0] / d;
  m[2] += total * sum[1] / d;
  m[3] += share * (a[0] * a[0] + b[0] * b[0] + sum[0] * sum[0]);
  m[4] += share * (a[0] * a[1] + b[0] * b[1] + sum[0] * sum[1]);
  m[5] += share * (a[1] * a[1] + b[1] * b[1] + sum[1] * sum[1]);
}

void
gw_outline_area_moments (const GwOutline *outline,
                         double           m[6])
{
  double xy[2 * GW_OUTLINE_N][2];

  corners (outline, xy);
  for (int i = 0; i < 6; i++)
    m[i] = 0.0;

  for (size_t i = 0; i < 2 * GW_OUTLINE_N; i++)
    {
      const double *a = xy[i];
      const double *b = xy[(i + 1) % (2 * GW_OUTLINE_N)];

      add_simplex (0.5 * (a[0] * b[1] - a[1] * b[0]), 3, a, b, m);
    }
}

void
gw_outline_rim_moments (const GwOutline *outline,
                        double           m[6])
{
  double xy[2 * GW_OUTLINE_N][2];

  corners (outline, xy);
  for (int i = 0; i < 6; i++)
    m[i] = 0.0;

  for (size_t i = 0; i < 2 * GW_OUTLINE_N; i++)
    {
      const double *a = xy[i];
      const double *b = xy[(i + 1) % (2 * GW_OUTLINE_N)];
      const double  dx = b[0] - a[0];
      const double  dy = b[1] - a[1];

      add_simplex (sqrt (dx * dx + dy * dy), 2, a, b, m);
    }
}

/* Place and value of the top of the parabola through three neighbours. */
static void
refine_peak (const double x[3],
             const double y[3],
             double      *x_peak,
             double      *y_peak)
{
  const double fore = (y[1] - y[0]) / (x[1] - x[0]);
  const double aft = (y[2] - y[1]) / (x[2] - x[1]);
  const double bend = (aft - fore) / (x[2] - x[0]);

  if (!(bend < 0.0))
    return;

  *x_peak = 0.5 * (x[0] + x[1]) - 0.5 * fore / bend;
  *y_peak = y[1] + (*x_peak - x[1]) * (fore + bend * (*x_peak - x[0]));
}

static void
find_extremes (const GwOutline *outline,
               GwOutlineShape  *out)
{
  size_t peak = 0;

  out->camber = 0.0;
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double camber = 0.5 * (outline->upper[i] + outline->lower[i]);

      if (fabs (camber) > fabs (out->camber))
        out->camber = camber;
      if (outline->upper[i] - outline->lower[i] > outline->upper[peak] - outline->lower[peak])
        peak = i;
    }

  out->thickness = outline->upper[peak] - outline->lower[peak];
  out->x_thickness = gw_outline_x (peak);
  if (peak > 0 && peak < LAST)
    {
      double x[3], y[3];

      for (size_t i = 0; i < 3; i++)
        {
          x[i] = gw_outline_x (peak - 1 + i);
          y[i] = outline->upper[peak - 1 + i] - outline->lower[peak - 1 + i];
        }
      refine_peak (x, y, &out->x_thickness, &out->thickness);
    }
}

void
gw_outline_shape (const GwOutline *outline,
                  GwOutlineShape  *out)
{
  double m[6], rim[6];

  gw_outline_area_moments (outline, m);
  gw_outline_rim_moments (outline, rim);

  out->area = m[0];
  out->perimeter = rim[0];
  out->centroid_x = m[0] > 0.0 ? m[1] / m[0] : 0.5;
  out->centroid_y = m[0] > 0.0 ? m[2] / m[0] : 0.0;
  out->inertia = m[5] - m[0] * out->centroid_y * out->centroid_y;
  find_extremes (outline, out);
}

/* Linear in the angle of the grid, in which a round nose is nearly straight. */
double
gw_outline_height_at (const GwOutline *outline,
                      double           x,
                      bool             is_upper)
{
  const double *side = is_upper ? outline->upper : outline->lower;
  const double  place = acos (1.0 - 2.0 * fmin (fmax (x, 0.0), 1.0)) * LAST / M_PI;
  const int     i = (int) fmin (place, LAST - 1);
  const double  t = place - i;

  return (1.0 - t) * side[i] + t * side[i + 1];
}

double
gw_outline_thickness_at (const GwOutline *outline,
                         double           x)
{
  return gw_outline_height_at (outline, x, true) - gw_outline_height_at (outline, x, false);
}

void
gw_outline_thin_theory (const GwOutline *outline,
                        double          *alpha_zero,
                        double          *cm_quarter)
{
  double zero = 0.0, a1 = 0.0, a2 = 0.0;

  /* Between two grid points the slope is constant, so the weights cos (n theta)
   * are integrated as they stand: exact for a mean line of straight pieces. */
  for (size_t i = 0; i < LAST; i++)
    {
      const double a = M_PI * (double) i / LAST;
      const double b = M_PI * (double) (i + 1) / LAST;
      const double rise = 0.5 * (outline->upper[i + 1] + outline->lower[i + 1] -
                                 outline->upper[i] - outline->lower[i]);
      const double slope = rise / (0.5 * (cos (a) - cos (b)));

      zero += slope * (sin (b) - sin (a) - (b - a));
      a1 += slope * (sin (b) - sin (a));
      a2 += slope * 0.5 * (sin (2.0 * b) - sin (2.0 * a));
    }

  *alpha_zero = -zero / M_PI;
  *cm_quarter = -0.5 * (a1 - a2);
}

GwStatus
gw_outline_set_edge (GwOutline *outline,
                     double     edge)
{
  GwOutlineShape shape;
  double         change;

  find_extremes (outline, &shape);
  if (!(edge >= 0.0 && edge <= 0.5 * shape.thickness && shape.x_thickness < 0.95))
    return GW_EINVAL;

  change = edge - (outline->upper[LAST] - outline->lower[LAST]);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double way =
        fmax (gw_outline_x (i) - shape.x_thickness, 0.0) / (1.0 - shape.x_thickness);

      outline->upper[i] += 0.5 * change * way * way;
      outline->lower[i] -= 0.5 * change * way * way;
    }

  return GW_OK;
}
