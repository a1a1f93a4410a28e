/* gw-layer-closure.c - relations that close the integral equations of a layer
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-layer.h"

#include <math.h>

#define H_LEAST 1.0005 /* shapes below it do not occur; iterates may stray there */

#define LEVEL 0.02 /* shape above one of a wake that has all but levelled out */

/* Limits of the slip, which would reach the speed outside in a layer without shape. */
#define SLIP_WALL 0.98
#define SLIP_WAKE 0.99995

static double
laminar_h_star (double h)
{
  const double past = h - 4.0;

  return 1.515 + (h < 4.0 ? 0.076 : 0.040) * past * past / h;
}

/* Half the friction, times the Reynolds number of the momentum thickness. */
static double
laminar_friction (double h)
{
  const double past = h < 7.4 ? 7.4 - h : 1.0 - 1.4 / (h - 6.0);

  return h < 7.4 ? -0.067 + 0.01977 * past * past / (h - 1.0) : -0.067 + 0.022 * past * past;
}

static double
laminar_loss (double h)
{
  const double past = h - 4.0;

  if (h < 4.0)
    return -0.00205 * past * past * past * past * past * sqrt (-past) + 0.207;
  return -0.003 * past * past / (1.0 + 0.02 * past * past) + 0.207;
}

static double
turbulent_h_star (double h,
                  double re_theta)
{
  const double re = fmax (re_theta, 200.0);
  const double turn = re_theta > 400.0 ? 3.0 + 400.0 / re_theta : 4.0;
  const double past = h - turn, log_re = log (re);
  const double wide = past + 4.0 / log_re;

  if (past < 0.0)
    return 1.505 + 4.0 / re + (0.165 - 1.6 / sqrt (re)) * pow (-past, 1.6) / h;
  return 1.505 + 4.0 / re + past * past * (0.04 / h + 0.007 * log_re / (wide * wide));
}

/* Swafford, Analytical approximation of two-dimensional separated turbulent boundary-layer
 * velocity profiles, AIAA Journal 21(6) (1983). */
static double
turbulent_friction (double h,
                    double re_theta)
{
  const double log_re = log10 (fmax (re_theta, 20.0));

  return 0.5 * (0.3 * exp (-1.33 * h - (1.74 + 0.31 * h) * log (log_re)) +
                1.1e-4 * (tanh (4.0 - h / 0.875) - 1.0));
}

static void
add_turbulence (GwLayerKind           kind,
                const GwLayerStation *station,
                GwLayerTerms         *out)
{
  const bool   is_wake = kind == GW_LAYER_WAKE;
  const double h = out->h, past = (h - 1.0) / h;
  /* A wake that has levelled out loses no more; the relations, made for walls, would have
   * it go on below a shape of one. */
  const double left = is_wake ? 1.0 - exp (-(h - 1.0) / LEVEL) : 1.0;

  out->h_star = turbulent_h_star (h, out->re_theta);
  out->slip = fmin (0.5 * out->h_star * (1.0 - 4.0 / 3.0 * past),
                    is_wake ? SLIP_WAKE : SLIP_WALL);
  out->equal = sqrt (0.015 * out->h_star / (1.0 - out->slip) * past * past * past);
  out->depth = station->theta * (3.15 + 1.72 / (h - 1.0) + h);
  out->friction = is_wake ? 0.0 : turbulent_friction (h, out->re_theta);
  out->loss = (is_wake ? 4.0 : 2.0) / out->h_star *
              (out->friction * out->slip + station->a * station->a * (1.0 - out->slip) * left);
}

void
gw_layer_terms (GwLayerKind           kind,
                double                re,
                const GwLayerStation *station,
                GwLayerTerms         *out)
{
  out->h = fmax ((station->dstar - station->gap) / station->theta, H_LEAST);
  out->re_theta = fmax (re * station->u * station->theta, 1e-3);
  out->growth = out->slip = out->equal = 0.0;
  if (kind == GW_LAYER_LAMINAR)
    {
      out->h_star = laminar_h_star (out->h);
      out->friction = laminar_friction (out->h) / out->re_theta;
      out->loss = laminar_loss (out->h) / out->re_theta;
      out->depth = station->theta * (3.15 + 1.72 / (out->h - 1.0)) + station->dstar;
      out->growth = gw_layer_growth (out->h, out->re_theta, station->theta);
    }
  else
    add_turbulence (kind, station, out);
}

/* By the momentum equation, the excess of the shape equation over it. */
static double
similar_excess (double m,
                double h)
{
  return (1.0 - h) * m * laminar_friction (h) -
         (laminar_loss (h) - laminar_friction (h)) * (0.5 * (1.0 - m) + (2.0 + h) * m);
}

double
gw_layer_similar (double  m,
                  double *h)
{
  double low = 2.0, high = 4.0; /* past 4 lie the layers that flow backwards */

  for (int i = 0; i < 60; i++)
    {
      *h = 0.5 * (low + high);
      if (similar_excess (m, *h) > 0.0)
        low = *h;
      else
        high = *h;
    }

  return laminar_friction (*h) / (0.5 * (1.0 - m) + (2.0 + *h) * m);
}
