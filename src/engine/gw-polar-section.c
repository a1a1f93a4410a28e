/* gw-polar-section.c - a polar as a row of section data
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <gsl/gsl_fit.h>
#include <math.h>

#include "engine/gw-polar.h"

/* Of the greatest lift: between these it is straight. */
#define LOW  0.1
#define HIGH 0.7

GwStatus
gw_polar_section_row (const GwPolar *polar,
                      double         re,
                      GwSectionRow  *out)
{
  double alpha[GW_POLAR_MAX], cl[GW_POLAR_MAX], cm = 0.0;
  double zero, slope, cov[3], rest;
  size_t n = 0;

  for (size_t i = 0; i < polar->n && polar->rows[i].alpha <= polar->alpha_max; i++)
    {
      const GwPolarRow *row = &polar->rows[i];

      if (row->sums.cl < LOW * polar->cl_max || row->sums.cl > HIGH * polar->cl_max)
        continue;
      alpha[n] = row->alpha;
      cl[n] = row->sums.cl;
      cm += row->sums.cm;
      n++;
    }

  if (n < 3)
    return GW_EDOM;

  gsl_fit_linear (alpha, 1, cl, 1, n, &zero, &slope, &cov[0], &cov[1], &cov[2], &rest);
  if (!(slope > 0.0))
    return GW_EDOM;

  *out = (GwSectionRow){
    .re = re,
    .cl_max = polar->cl_max,
    .slope = slope,
    .alpha_zero = -zero / slope,
    .cm_zero = cm / (double) n,
  };
  return GW_OK;
}
