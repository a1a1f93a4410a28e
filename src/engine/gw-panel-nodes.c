/* gw-panel-nodes.c - nodes of panels along an outline
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-panel.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_spline.h>
#include <math.h>

#define FINE    600 /* places at which the spacing is worked out */
#define CORNERS (FINE + 1)
#define ROUND   8     /* passes that round the corners of a folded section, to half a panel or so */
#define BEND    0.8   /* weight of curvature in the spacing [chords] */
#define SHARP   200.0 /* curvature beyond this makes panels no shorter [1 / chord] */
#define EDGE    0.03  /* stretch of finer panels at the trailing edge [chords] */
#define KINK    0.12  /* turn between two segments that is a corner, not a curve [rad] */

typedef struct
{
  size_t            n;
  double            s[CORNERS], x[CORNERS], y[CORNERS];
  gsl_interp       *splines[2];
  gsl_interp_accel *accel;
} Curve;

static double
turn (const Curve *curve,
      size_t       i)
{
  const double ax = curve->x[i] - curve->x[i - 1], ay = curve->y[i] - curve->y[i - 1];
  const double bx = curve->x[i + 1] - curve->x[i], by = curve->y[i + 1] - curve->y[i];

  return fabs (atan2 (ax * by - ay * bx, ax * bx + ay * by));
}

/* A fold; a spline through it would swing on both sides. */
static bool
is_kinked (const Curve *curve)
{
  for (size_t i = 1; i + 1 < curve->n; i++)
    if (curve->x[i] > 0.05 && turn (curve, i) > KINK)
      return true;

  return false;
}

static void
curve_clear (Curve *curve)
{
  for (int k = 0; k < 2; k++)
    gsl_interp_free (curve->splines[k]);
  gsl_interp_accel_free (curve->accel);
}

static void
curve_add (Curve *curve,
           double x,
           double y)
{
  const size_t n = curve->n;

  if (n > 0)
    {
      const double step = hypot (x - curve->x[n - 1], y - curve->y[n - 1]);

      if (step < 1e-7)
        return;
      curve->s[n] = curve->s[n - 1] + step;
    }
  else
    curve->s[n] = 0.0;

  curve->x[n] = x;
  curve->y[n] = y;
  curve->n++;
}

/* Draws a folded line again through many places, its corners rounded: no sheet folds to a
 * point, and no flow could be computed about one. */
static void
curve_round (Curve *curve)
{
  const double share = 0.25;
  const double step = curve->s[curve->n - 1] / FINE;
  double       xy[2][FINE + 1], other[FINE + 1];
  size_t       at = 0;

  for (int i = 0; i <= FINE; i++)
    {
      double t;

      while (at + 2 < curve->n && curve->s[at + 1] < i * step)
        at++;
      t = fmin ((i * step - curve->s[at]) / (curve->s[at + 1] - curve->s[at]), 1.0);
      xy[0][i] = curve->x[at] + t * (curve->x[at + 1] - curve->x[at]);
      xy[1][i] = curve->y[at] + t * (curve->y[at + 1] - curve->y[at]);
    }

  for (int pass = 0; pass < 2 * ROUND; pass++)
    {
      double *line = xy[pass % 2];

      for (int i = 1; i < FINE; i++)
        other[i] = (1.0 - 2.0 * share) * line[i] + share * (line[i - 1] + line[i + 1]);
      for (int i = 1; i < FINE; i++)
        line[i] = other[i];
    }

  curve->n = 0;
  for (int i = 0; i <= FINE; i++)
    curve_add (curve, xy[0][i], xy[1][i]);
}

static GwStatus
curve_init (Curve           *curve,
            const GwOutline *outline)
{
  GwStatus status = GW_OK;

  curve->n = 0;
  for (size_t i = GW_OUTLINE_N; i-- > 0;)
    curve_add (curve, gw_outline_x (i), outline->upper[i]);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    curve_add (curve, gw_outline_x (i), outline->lower[i]);
  if (is_kinked (curve))
    curve_round (curve);

  gsl_set_error_handler_off ();
  curve->accel = gsl_interp_accel_alloc ();
  for (int k = 0; k < 2; k++)
    {
      curve->splines[k] = gsl_interp_alloc (gsl_interp_cspline, curve->n);
      if (curve->splines[k] == NULL || curve->accel == NULL)
        status = GW_ENOMEM;
      else if (gsl_interp_init (curve->splines[k], curve->s, k == 0 ? curve->x : curve->y,
                                curve->n) != GSL_SUCCESS)
        status = GW_EINVAL;
    }

  return status;
}

static void
curve_at (const Curve *curve,
          double       s,
          double      *x,
          double      *y)
{
  s = fmin (fmax (s, 0.0), curve->s[curve->n - 1]);
  *x = gsl_interp_eval (curve->splines[0], curve->s, curve->x, s, curve->accel);
  *y = gsl_interp_eval (curve->splines[1], curve->s, curve->y, s, curve->accel);
}

/* Curvature at the fine places, blurred so that neighbouring panels differ little. */
static void
curve_bend (const Curve *curve,
            double       bend[FINE + 1])
{
  const double step = curve->s[curve->n - 1] / FINE;
  double       other[FINE + 1];

  for (int i = 0; i <= FINE; i++)
    {
      double x[3], y[3];

      for (int k = 0; k < 3; k++)
        curve_at (curve, step * fmin (fmax (i, 1), FINE - 1) + step * (k - 1), &x[k], &y[k]);
      bend[i] = fabs ((x[1] - x[0]) * (y[2] - y[1]) - (y[1] - y[0]) * (x[2] - x[1])) /
                pow (step, 3.0);
      bend[i] = fmin (bend[i], SHARP);
    }

  for (int pass = 0; pass < 30; pass++)
    {
      for (int i = 0; i <= FINE; i++)
        other[i] = 0.5 * bend[i] + 0.25 * (bend[i > 0 ? i - 1 : 1] +
                                           bend[i < FINE ? i + 1 : FINE - 1]);
      for (int i = 0; i <= FINE; i++)
        bend[i] = other[i];
    }
}

static void
space_nodes (const Curve *curve,
             size_t       n,
             double      *xy)
{
  const double total = curve->s[curve->n - 1];
  const double step = total / FINE;
  double       bend[FINE + 1], sum[FINE + 1];
  int          at = 0;

  curve_bend (curve, bend);
  sum[0] = 0.0;
  for (int i = 1; i <= FINE; i++)
    {
      const double s = (i - 0.5) * step;
      const double mean = 0.5 * (bend[i] + bend[i - 1]) * BEND;
      const double edge = exp (-fmin (s, total - s) / EDGE);

      sum[i] = sum[i - 1] + pow (1.0 + mean * mean, 0.25) + edge;
    }

  for (size_t i = 0; i < n; i++)
    {
      const double wanted = sum[FINE] * (double) i / (double) (n - 1);

      while (at < FINE - 1 && sum[at + 1] < wanted)
        at++;
      curve_at (curve, step * (at + (wanted - sum[at]) / (sum[at + 1] - sum[at])), &xy[2 * i],
                &xy[2 * i + 1]);
    }
}

static void
deflect (const GwOutline   *outline,
         const GwPanelFlap *flap,
         size_t             n,
         double            *xy)
{
  const double lower = gw_outline_height_at (outline, flap->hinge, false);
  const double depth = gw_outline_height_at (outline, flap->hinge, true) - lower;
  const double pivot = lower + flap->height * depth;
  const double arm = depth * fmax (flap->height, 1.0 - flap->height);
  const double half = fmax (0.015, arm * fabs (flap->deflection));

  for (size_t i = 0; i < n; i++)
    {
      const double dx = xy[2 * i] - flap->hinge;
      const double dy = xy[2 * i + 1] - pivot;
      const double t = fmin (fmax (0.5 + 0.5 * dx / half, 0.0), 1.0);
      const double angle = flap->deflection * t * t * (3.0 - 2.0 * t);

      xy[2 * i] = flap->hinge + dx * cos (angle) + dy * sin (angle);
      xy[2 * i + 1] = pivot - dx * sin (angle) + dy * cos (angle);
    }
}

static double
side_of (const double *a,
         const double *b,
         const double *p)
{
  return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
}

static bool
is_crossed (size_t        n,
            const double *xy)
{
  for (size_t i = 0; i + 1 < n; i++)
    for (size_t k = i + 2; k + 1 < n; k++)
      {
        const double *a = &xy[2 * i], *b = a + 2, *c = &xy[2 * k], *d = c + 2;

        if (side_of (a, b, c) * side_of (a, b, d) < 0.0 &&
            side_of (c, d, a) * side_of (c, d, b) < 0.0)
          return true;
      }

  return false;
}

GwStatus
gw_panel_nodes (const GwOutline   *outline,
                const GwPanelFlap *flap,
                size_t             n,
                double            *xy)
{
  const bool is_flapped = flap != NULL && flap->hinge < 1.0 && flap->deflection != 0.0;
  Curve      curve = { 0 };
  GwStatus   status;

  if (n < 40 || n > GW_PANEL_MAX)
    return GW_EINVAL;
  if (is_flapped && !(flap->hinge >= 0.3 && flap->hinge <= 0.97 && flap->height >= 0.0 &&
                      flap->height <= 1.0 && fabs (flap->deflection) <= M_PI / 3.0))
    return GW_EINVAL;
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    if (!isfinite (outline->upper[i]) || !isfinite (outline->lower[i]))
      return GW_EINVAL;

  status = curve_init (&curve, outline);
  if (status == GW_OK)
    {
      space_nodes (&curve, n, xy);
      if (is_flapped)
        deflect (outline, flap, n, xy);
      if (is_crossed (n, xy))
        status = GW_EINVAL;
    }

  curve_clear (&curve);
  return status;
}
