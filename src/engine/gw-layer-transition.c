/* gw-layer-transition.c - how waves grow in a laminar layer, and what a step does to it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-layer.h"

#include <math.h>

#define ONSET 0.08 /* half width of the smooth start, in powers of ten */

double
gw_layer_growth (double h,
                 double re_theta,
                 double theta)
{
  const double inverse = 1.0 / fmax (h - 1.0, 0.05);
  const double critical = 2.492 * pow (inverse, 0.43) + 0.7 * (1.0 + tanh (14.0 * inverse - 9.24));
  const double past = (log10 (re_theta) - (critical - ONSET)) / (2.0 * ONSET);
  const double bend = 3.87 * inverse - 2.52;
  double       by_re, along, ramp;

  if (past <= 0.0)
    return 0.0;

  ramp = past >= 1.0 ? 1.0 : past * past * (3.0 - 2.0 * past);
  by_re = 0.028 / inverse - 0.0345 * exp (-bend * bend);
  along = -0.05 + 2.7 * inverse - 5.5 * inverse * inverse + 3.0 * inverse * inverse * inverse +
          0.1 * exp (-20.0 * inverse);
  return fmax (ramp * by_re * along / theta, 0.0);
}

double
gw_layer_step_reynolds (double                re,
                        const GwLayerStation *station,
                        double                height)
{
  GwLayerTerms terms;
  double       eta, bend, speed;

  gw_layer_terms (GW_LAYER_LAMINAR, re, station, &terms);
  eta = fmin (height / terms.depth, 1.0);
  /* The slope at the wall is 2 + bend, a sixth of Pohlhausen's parameter. */
  bend = fmin (terms.friction * re * station->u * terms.depth - 2.0, 2.0);
  speed = 2.0 * eta - 2.0 * pow (eta, 3.0) + pow (eta, 4.0) + bend * eta * pow (1.0 - eta, 3.0);
  return fmax (speed, 0.0) * station->u * height * re;
}
