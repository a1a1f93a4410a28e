/* gw-layer.c - the equations of a layer over one interval
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-layer.h"

#include <math.h>

#define LAG   4.2 /* of the shear stress behind its equilibrium */
#define FRESH 0.7 /* root of the shear stress just after transition, of its equilibrium */

/* One interval, the terms at both ends known: momentum and shape as they stand divided by
 * the mean of what they grow from, so that each counts relative changes.
 *
 *   d theta / theta + (2 + H) du / u              = friction ds / theta
 *   d H* / H* + (1 - H) du / u                    = (loss - friction) ds / theta
 *   2 depth d S / S                               = LAG (S_eq - S) ds
 *
 * Friction and loss are averaged times the speed, which keeps them finite towards the
 * stagnation point; where the shape changes fast the average leans downstream. */
static void
interval (GwLayerKind           kind,
          const GwLayerStation *from,
          const GwLayerTerms   *start,
          const GwLayerStation *to,
          const GwLayerTerms   *end,
          double                rest[3])
{
  const double ds = to->s - from->s;
  const double u = 0.5 * (from->u + to->u);
  const double theta = 0.5 * (from->theta + to->theta);
  const double shape = 0.5 * (from->dstar / from->theta + to->dstar / to->theta);
  const double rise = (to->u - from->u) / u;
  const double jump = log ((end->h - 1.0) / (start->h - 1.0));
  const double lean = 1.0 - 0.5 * exp (-jump * jump);
  const double friction = (0.5 * (from->u * start->friction + to->u * end->friction)) / u;
  const double net = ((1.0 - lean) * from->u * (start->loss - start->friction) +
                      lean * to->u * (end->loss - end->friction)) /
                     u;

  rest[1] = (to->theta - from->theta) / theta + (2.0 + shape) * rise - friction * ds / theta;
  rest[2] = 2.0 * (end->h_star - start->h_star) / (end->h_star + start->h_star) +
            (1.0 - shape) * rise - net * ds / theta;

  if (kind == GW_LAYER_LAMINAR)
    rest[0] = to->a - from->a - 0.5 * (start->growth + end->growth) * ds;
  else
    {
      const double depth = 0.5 * (start->depth + end->depth);
      const double root = (1.0 - lean) * from->a + lean * to->a;
      const double equal = (1.0 - lean) * start->equal + lean * end->equal;

      rest[0] = log (to->a / from->a) - 0.5 * LAG / depth * (equal - root) * ds;
    }
}

double
gw_layer_fresh_root (double                re,
                     const GwLayerStation *station)
{
  GwLayerTerms terms;

  gw_layer_terms (GW_LAYER_TURBULENT, re, station, &terms);
  return FRESH * terms.equal;
}

static GwLayerStation
between (const GwLayerStation *from,
         const GwLayerStation *to,
         double                t)
{
  const GwLayerStation at = {
    .s = from->s + t * (to->s - from->s),
    .theta = from->theta + t * (to->theta - from->theta),
    .dstar = from->dstar + t * (to->dstar - from->dstar),
    .u = from->u + t * (to->u - from->u),
  };

  return at;
}

/* The waves grow in the layer as it comes, with the shape at the start: that at the end is
 * of a turbulent layer, and no wave would grow in the mean of both. */
static double
excess_at (const GwLayerRule    *rule,
           const GwLayerStation *from,
           const GwLayerTerms   *start,
           const GwLayerStation *to,
           double                t)
{
  const GwLayerStation at = between (from, to, t);
  const double         re_theta = fmax (rule->re * at.u * at.theta, 1e-3);
  const double         rate = gw_layer_growth (start->h, re_theta, at.theta);

  return from->a + 0.5 * (start->growth + rate) * (at.s - from->s) - rule->n_crit;
}

/* The part of the interval that is laminar: false position, a few rounds of which bring it
 * to rounding since the excess is smooth and nearly straight. */
static double
find_turn (const GwLayerRule    *rule,
           const GwLayerStation *from,
           const GwLayerTerms   *start,
           const GwLayerStation *to)
{
  const double forced = (rule->s_forced - from->s) / (to->s - from->s);
  double       low = 0.0, high = 1.0;
  double       at_low = from->a - rule->n_crit, at_high;

  at_high = excess_at (rule, from, start, to, 1.0);
  if (at_low >= 0.0)
    return 0.0;
  for (int i = 0, stuck = 0; i < 40 && at_high > 0.0; i++)
    {
      const double t = (low * at_high - high * at_low) / (at_high - at_low);
      const double excess = excess_at (rule, from, start, to, t);

      if (fabs (excess) < 1e-12)
        {
          high = t;
          break;
        }
      if (excess < 0.0)
        {
          low = t;
          at_low = excess;
          at_high *= stuck > 0 ? 0.5 : 1.0;
          stuck = 1;
        }
      else
        {
          high = t;
          at_high = excess;
          at_low *= stuck < 0 ? 0.5 : 1.0;
          stuck = -1;
        }
    }

  return fmin (fmax (fmin (high, forced), 0.0), 1.0);
}

/* Laminar to the place of transition, turbulent from there; the layer there lies on the
 * straight line between the ends. */
static void
turning (const GwLayerRule    *rule,
         const GwLayerStation *from,
         const GwLayerTerms   *start,
         const GwLayerStation *to,
         const GwLayerTerms   *end,
         double                rest[3],
         double               *s_turn)
{
  GwLayerStation at = between (from, to, find_turn (rule, from, start, to));
  GwLayerTerms   before, after;
  double         laminar[3];

  if (s_turn != NULL)
    *s_turn = at.s;
  gw_layer_terms (GW_LAYER_LAMINAR, rule->re, &at, &before);
  at.a = from->a;
  interval (GW_LAYER_LAMINAR, from, start, &at, &before, laminar);
  at.a = gw_layer_fresh_root (rule->re, &at);
  gw_layer_terms (GW_LAYER_TURBULENT, rule->re, &at, &after);
  interval (GW_LAYER_TURBULENT, &at, &after, to, end, rest);
  rest[1] += laminar[1];
  rest[2] += laminar[2];
}

static void
any_interval (GwLayerKind           kind,
              const GwLayerRule    *rule,
              const GwLayerStation *from,
              const GwLayerTerms   *start,
              const GwLayerStation *to,
              const GwLayerTerms   *end,
              double                rest[3])
{
  if (kind == GW_LAYER_TRANSITION)
    turning (rule, from, start, to, end, rest, NULL);
  else
    interval (kind, from, start, to, end, rest);
}

static GwLayerKind
kind_at_start (GwLayerKind kind)
{
  return kind == GW_LAYER_TRANSITION ? GW_LAYER_LAMINAR : kind;
}

static GwLayerKind
kind_at_end (GwLayerKind kind)
{
  return kind == GW_LAYER_TRANSITION ? GW_LAYER_TURBULENT : kind;
}

void
gw_layer_interval (GwLayerKind           kind,
                   const GwLayerRule    *rule,
                   const GwLayerStation *from,
                   const GwLayerStation *to,
                   double                rest[3],
                   double               *s_turn)
{
  GwLayerTerms start, end;

  gw_layer_terms (kind_at_start (kind), rule->re, from, &start);
  gw_layer_terms (kind_at_end (kind), rule->re, to, &end);
  if (kind == GW_LAYER_TRANSITION)
    turning (rule, from, &start, to, &end, rest, s_turn);
  else
    interval (kind, from, &start, to, &end, rest);
}

static double *
unknown (GwLayerStation *station,
         int             i)
{
  double *all[] = { &station->a, &station->theta, &station->dstar, &station->u };

  return all[i];
}

void
gw_layer_linearise (GwLayerKind           kind,
                    const GwLayerRule    *rule,
                    const GwLayerStation *from,
                    const GwLayerStation *to,
                    double                rest[3],
                    double                by_from[3][4],
                    double                by_to[3][4])
{
  GwLayerTerms start, end;

  gw_layer_terms (kind_at_start (kind), rule->re, from, &start);
  gw_layer_terms (kind_at_end (kind), rule->re, to, &end);
  any_interval (kind, rule, from, &start, to, &end, rest);

  for (int side = by_from != NULL ? 0 : 1; side < 2; side++)
    for (int i = 0; i < 4; i++)
      {
        GwLayerStation moved = side == 0 ? *from : *to;
        GwLayerTerms   terms;
        double         changed[3];
        double        *value = unknown (&moved, i);
        const double   step = 1e-6 * fmax (fabs (*value), i == 0 ? 1e-3 : 0.0);

        *value += step;
        gw_layer_terms (side == 0 ? kind_at_start (kind) : kind_at_end (kind), rule->re, &moved,
                        &terms);
        any_interval (kind, rule, side == 0 ? &moved : from, side == 0 ? &terms : &start,
                      side == 0 ? to : &moved, side == 0 ? &end : &terms, changed);
        for (int k = 0; k < 3; k++)
          (side == 0 ? by_from : by_to)[k][i] = (changed[k] - rest[k]) / step;
      }
}
