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

/* Steeper than in thin-aerofoil theory is the lift only where a bubble gives way as the incidence
 * rises: real, but of a few degrees, and not to be counted on for stability. Measured sections
 * have 0.097 to 0.111 a degree, this is 0.110 (NACA Report 824, 1945, from memory). */
#define MOST (2.0 * M_PI)

GwStatus
gw_polar_section_row (const GwPolar *polar,
                      double         re,
                      GwSectionRow  *out)
{
  double alpha[GW_POLAR_MAX], cl[GW_POLAR_MAX], mean[2] = { 0 }, cm = 0.0;
  double zero, slope, cov[3], rest;
  size_t n = 0;

  for (size_t i = 0; i < polar->n && polar->rows[i].alpha <= polar->alpha_max; i++)
    {
      const GwPolarRow *row = &polar->rows[i];

      if (row->sums.cl < LOW * polar->cl_max || row->sums.cl > HIGH * polar->cl_max)
        continue;
      alpha[n] = row->alpha;
      cl[n] = row->sums.cl;
      mean[0] += row->alpha;
      mean[1] += row->sums.cl;
      cm += row->sums.cm;
      n++;
    }

  if (n < 3)
    return GW_EDOM;

  gsl_fit_linear (alpha, 1, cl, 1, n, &zero, &slope, &cov[0], &cov[1], &cov[2], &rest);
  if (!(slope > 0.0))
    return GW_EDOM;
  slope = fmin (slope, MOST);

  *out = (GwSectionRow){
    .re = re,
    .cl_max = polar->cl_max,
    .slope = slope,
    .alpha_zero = (mean[0] - mean[1] / slope) / (double) n,
    .cm_zero = cm / (double) n,
  };
  return GW_OK;
}
