/* polars.h - polars that several tests run
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>
#include <math.h>

#include "engine/gw-polar.h"
#include "section-measurements.h"

#define DEG (G_PI / 180.0)

static inline void
clark_y_outline (GwOutline *outline)
{
  const size_t n = G_N_ELEMENTS (clark_y);
  double       xy[4 * G_N_ELEMENTS (clark_y)];
  size_t       count = 0;

  for (size_t i = n; i-- > 0;)
    {
      xy[count++] = clark_y[i][0] / 100.0;
      xy[count++] = clark_y[i][1] / 100.0;
    }
  for (size_t i = 1; i < n; i++)
    {
      xy[count++] = clark_y[i][0] / 100.0;
      xy[count++] = clark_y[i][2] / 100.0;
    }
  g_assert_cmpint (gw_outline_points (count / 2, xy, outline), ==, GW_OK);
}

/* @section: NACA digits, or "clark-y"; every degree from @first to @last and 3 deg past the top. */
static inline GwPolarCase
polar_case (const char *section,
            double      re,
            int         first,
            int         last)
{
  GwPolarCase made = {
    .re = re,
    .n = (size_t) (last - first + 1),
    .alpha_first = first * DEG,
    .alpha_last = last * DEG,
    .past = 3.0 * DEG,
  };

  if (g_str_equal (section, "clark-y"))
    clark_y_outline (&made.outline);
  else
    g_assert_cmpint (gw_outline_naca (section, &made.outline), ==, GW_OK);
  return made;
}

/* Value at @cl between the rows, rising lift only. */
static inline double
polar_at_cl (const GwPolar *polar,
             double         cl,
             size_t         offset)
{
  for (size_t i = 1; i < polar->n; i++)
    {
      const GwPolarRow *a = &polar->rows[i - 1], *b = &polar->rows[i];

      if (a->sums.cl <= cl && b->sums.cl > cl)
        {
          const double t = (cl - a->sums.cl) / (b->sums.cl - a->sums.cl);
          const double va = G_STRUCT_MEMBER (double, a, offset);
          const double vb = G_STRUCT_MEMBER (double, b, offset);

          return va + t * (vb - va);
        }
    }

  return (double) NAN;
}

/* Value at @alpha [deg] between the rows. */
static inline double
polar_cl_at (const GwPolar *polar,
             double         alpha)
{
  for (size_t i = 1; i < polar->n; i++)
    {
      const GwPolarRow *a = &polar->rows[i - 1], *b = &polar->rows[i];

      if (a->alpha <= alpha * DEG + 1e-9 && b->alpha >= alpha * DEG - 1e-9)
        return a->sums.cl +
               (alpha * DEG - a->alpha) / (b->alpha - a->alpha) * (b->sums.cl - a->sums.cl);
    }

  return (double) NAN;
}
