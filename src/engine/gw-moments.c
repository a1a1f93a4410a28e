/* gw-moments.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-moments.h"

#include <math.h>
#include <stddef.h>

/* Which two axes each entry of GwMoments.second multiplies. */
static const int row[6] = { 0, 1, 2, 0, 0, 1 };
static const int column[6] = { 0, 1, 2, 1, 2, 2 };

void
gw_moments_add (GwMoments       *sum,
                const GwMoments *part,
                double           factor)
{
  sum->total += factor * part->total;
  for (int i = 0; i < 3; i++)
    sum->first[i] += factor * part->first[i];
  for (int i = 0; i < 6; i++)
    sum->second[i] += factor * part->second[i];
}

void
gw_moments_mirror (GwMoments *moments)
{
  moments->first[1] = -moments->first[1];
  moments->second[3] = -moments->second[3];
  moments->second[5] = -moments->second[5];
}

void
gw_moments_shift (GwMoments   *moments,
                  const double by[3])
{
  for (int i = 0; i < 6; i++)
    {
      const int j = row[i];
      const int k = column[i];

      moments->second[i] += moments->first[j] * by[k] + by[j] * moments->first[k] +
                            moments->total * by[j] * by[k];
    }

  for (int i = 0; i < 3; i++)
    moments->first[i] += moments->total * by[i];
}

void
gw_moments_centre (const GwMoments *moments,
                   double           centre[3])
{
  for (int i = 0; i < 3; i++)
    centre[i] = moments->total != 0.0 ? moments->first[i] / moments->total : 0.0;
}

void
gw_moments_inertia (const GwMoments *moments,
                    GwInertia       *out)
{
  double centre[3], c[6];

  gw_moments_centre (moments, centre);
  for (int i = 0; i < 6; i++)
    c[i] = moments->second[i] - moments->total * centre[row[i]] * centre[column[i]];

  *out = (GwInertia){ { c[1] + c[2], c[0] + c[2], c[0] + c[1], c[3], c[4], c[5] } };
}

void
gw_moments_point (double       total,
                  const double at[3],
                  GwMoments   *out)
{
  out->total = total;
  for (int i = 0; i < 3; i++)
    out->first[i] = total * at[i];
  for (int i = 0; i < 6; i++)
    out->second[i] = total * at[row[i]] * at[column[i]];
}

/* Moments of a simplex of @n corners and measure @total: the mean of x is the sum
 * of the corners over n, the mean of x y is (sum of products of each corner plus
 * product of the sums) over n (n + 1). Exact; holds for line, triangle, tetrahedron. */
static void
simplex (double              total,
         int                 n,
         const double *const corner[],
         GwMoments          *out)
{
  double sum[3] = { 0.0, 0.0, 0.0 };

  for (int v = 0; v < n; v++)
    for (int i = 0; i < 3; i++)
      sum[i] += corner[v][i];

  out->total = total;
  for (int i = 0; i < 3; i++)
    out->first[i] = total * sum[i] / n;
  for (int i = 0; i < 6; i++)
    {
      double product = sum[row[i]] * sum[column[i]];

      for (int v = 0; v < n; v++)
        product += corner[v][row[i]] * corner[v][column[i]];
      out->second[i] = total * product / (n * (n + 1));
    }
}

void
gw_moments_segment (const double a[3],
                    const double b[3],
                    GwMoments   *out)
{
  const double *const corner[] = { a, b };

  simplex (hypot (hypot (b[0] - a[0], b[1] - a[1]), b[2] - a[2]), 2, corner, out);
}

static void
cross_of_edges (const double a[3],
                const double b[3],
                const double c[3],
                double       out[3])
{
  const double u[] = { b[0] - a[0], b[1] - a[1], b[2] - a[2] };
  const double v[] = { c[0] - a[0], c[1] - a[1], c[2] - a[2] };

  out[0] = u[1] * v[2] - u[2] * v[1];
  out[1] = u[2] * v[0] - u[0] * v[2];
  out[2] = u[0] * v[1] - u[1] * v[0];
}

void
gw_moments_triangle (const double a[3],
                     const double b[3],
                     const double c[3],
                     GwMoments   *out)
{
  const double *const corner[] = { a, b, c };
  double              n[3];

  cross_of_edges (a, b, c, n);
  simplex (0.5 * sqrt (n[0] * n[0] + n[1] * n[1] + n[2] * n[2]), 3, corner, out);
}

void
gw_moments_tetrahedron (const double a[3],
                        const double b[3],
                        const double c[3],
                        const double d[3],
                        GwMoments   *out)
{
  const double *const corner[] = { a, b, c, d };
  double              n[3];

  cross_of_edges (a, b, c, n);
  simplex ((n[0] * (d[0] - a[0]) + n[1] * (d[1] - a[1]) + n[2] * (d[2] - a[2])) / 6.0,
           4, corner, out);
}

/* As simplex(), written out, since lofts call it some thousand times. */
void
gw_moments_facet (const double a[3],
                  const double b[3],
                  const double c[3],
                  GwMoments   *skin,
                  GwMoments   *volume)
{
  const double u[] = { b[0] - a[0], b[1] - a[1], b[2] - a[2] };
  const double v[] = { c[0] - a[0], c[1] - a[1], c[2] - a[2] };
  const double n[] = { u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2],
                       u[0] * v[1] - u[1] * v[0] };
  const double s[] = { a[0] + b[0] + c[0], a[1] + b[1] + c[1], a[2] + b[2] + c[2] };
  const double area = 0.5 * sqrt (n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
  const double solid = (n[0] * a[0] + n[1] * a[1] + n[2] * a[2]) / 6.0;
  const double product[] = {
    a[0] * a[0] + b[0] * b[0] + c[0] * c[0] + s[0] * s[0],
    a[1] * a[1] + b[1] * b[1] + c[1] * c[1] + s[1] * s[1],
    a[2] * a[2] + b[2] * b[2] + c[2] * c[2] + s[2] * s[2],
    a[0] * a[1] + b[0] * b[1] + c[0] * c[1] + s[0] * s[1],
    a[0] * a[2] + b[0] * b[2] + c[0] * c[2] + s[0] * s[2],
    a[1] * a[2] + b[1] * b[2] + c[1] * c[2] + s[1] * s[2],
  };

  skin->total += area;
  volume->total += solid;
  for (int i = 0; i < 3; i++)
    {
      skin->first[i] += area / 3.0 * s[i];
      volume->first[i] += solid / 4.0 * s[i];
    }
  for (int i = 0; i < 6; i++)
    {
      skin->second[i] += area / 12.0 * product[i];
      volume->second[i] += solid / 20.0 * product[i];
    }
}

void
gw_moments_box (double       mass,
                const double centre[3],
                const double size[3],
                GwMoments   *out)
{
  gw_moments_point (mass, centre, out);
  for (int i = 0; i < 3; i++)
    out->second[i] += mass * size[i] * size[i] / 12.0;
}

void
gw_moments_tube (double       mass,
                 const double a[3],
                 const double b[3],
                 double       outer,
                 double       inner,
                 GwMoments   *out)
{
  const double across = (outer * outer + inner * inner) / 4.0;
  double       centre[3], axis[3];
  double       length;

  for (int i = 0; i < 3; i++)
    {
      centre[i] = 0.5 * (a[i] + b[i]);
      axis[i] = b[i] - a[i];
    }
  length = hypot (hypot (axis[0], axis[1]), axis[2]);

  /* A tube of no length is a disc; its axis is then taken along x. */
  for (int i = 0; i < 3; i++)
    axis[i] = length > 0.0 ? axis[i] / length : (i == 0);

  gw_moments_point (mass, centre, out);
  for (int i = 0; i < 6; i++)
    {
      out->second[i] += mass * (length * length / 12.0 - across) * axis[row[i]] * axis[column[i]];
      if (i < 3)
        out->second[i] += mass * across;
    }
}
