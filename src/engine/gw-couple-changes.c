/* gw-couple-changes.c - what a step of Newton's method changes
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-couple-private.h"

#include <math.h>

GwPlace
gw_place_side (GwCoupled *coupled,
               int        side,
               size_t     i)
{
  return (GwPlace){ &coupled->side[side][i], gw_coupled_node (coupled, side, i),
                    side == 0 ? 1.0 : -1.0, side == 0 ? -1.0 : 1.0 };
}

GwPlace
gw_place_wake (GwCoupled *coupled,
               size_t     i)
{
  return (GwPlace){ &coupled->wake[i], coupled->panels->n + i, 1.0, 1.0 };
}

typedef struct
{
  double a, theta, mass, u, dstar;
} Change;

static double
speed_change (const GwNewton *newton,
              const GwPlace  *place)
{
  const double *mass = newton->coupled->flow.mass[place->node];
  double        sum = 0.0;

  for (size_t j = 0; j < newton->all; j++)
    sum += mass[j] * newton->right[j];
  return newton->lack[place->node] + place->speed_sign * sum;
}

static void
change_at (const GwNewton *newton,
           const GwPlace  *here,
           const Change   *before,
           Change         *out)
{
  const GwNewtonLocal *local = &newton->local[here->node];
  double               known[7];

  out->mass = here->mass_sign * newton->right[here->node];
  out->u = speed_change (newton, here);
  out->dstar = (out->mass - here->at->dstar * out->u) / here->at->u;
  known[0] = out->mass;
  known[1] = out->u;
  known[2] = before->a;
  known[3] = before->theta;
  known[4] = before->mass;
  known[5] = before->u;
  known[6] = 1.0;
  out->a = out->theta = 0.0;
  for (int j = 0; j < 7; j++)
    {
      out->a += local->a[j] * known[j];
      out->theta += local->theta[j] * known[j];
    }
}

/* No layer is fuller than this; where a flow speeds up very fast one would be. */
static double
least_dstar (const GwNewton *newton,
             const GwPlace  *place)
{
  return (place->node < newton->n ? 1.02 : 1.001) * place->at->theta + place->at->gap;
}

/* Changes in proportion to what is there; the greatest decides how much is taken. */
static void
judge (const GwNewton *newton,
       const GwPlace  *place,
       bool            is_laminar,
       const Change   *change,
       double         *squares,
       double         *part)
{
  const GwLayerStation *at = place->at;
  const bool            is_held = change->dstar < 0.0 &&
                       at->dstar <= least_dstar (newton, place) * (1.0 + 1e-9);
  const double by[] = {
    is_laminar ? change->a / 10.0 : change->a / fmax (at->a, 0.01),
    change->theta / at->theta,
    is_held ? 0.0 : change->dstar / at->dstar,
    change->u / fmax (at->u, 0.25),
  };

  for (int i = 0; i < 4; i++)
    {
      const double most = by[i] > 0.0 ? 1.0 : 0.5;

      *squares += by[i] * by[i];
      if (*part * fabs (by[i]) > most)
        *part = most / fabs (by[i]);
    }
}

static void
take (const GwNewton *newton,
      const GwPlace  *place,
      bool            is_laminar,
      const Change   *change,
      double          part)
{
  GwLayerStation *at = place->at;

  at->a += part * change->a;
  at->theta += part * change->theta;
  at->dstar += part * change->dstar;
  at->u += part * change->u; /* the stagnation point has moved if it becomes negative */
  at->a = is_laminar ? fmax (at->a, 0.0) : fmin (fmax (at->a, 1e-5), 0.4);
  at->dstar = fmax (at->dstar, least_dstar (newton, place));
}

double
gw_newton_apply (GwNewton *newton)
{
  GwCoupled   *coupled = newton->coupled;
  Change       changes[GW_FLOW_MAX];
  const Change none = { .a = 0.0 };
  double       squares = 0.0, part = coupled->part;

  for (int pass = 0; pass < 2; pass++)
    {
      for (int side = 0; side < 2; side++)
        for (size_t i = 0; i < coupled->count[side]; i++)
          {
            const GwPlace here = gw_place_side (coupled, side, i);
            const bool    is_laminar = i < coupled->turned[side];
            Change       *change = &changes[here.node];

            if (pass == 0)
              {
                change_at (newton, &here,
                           i > 0 ? &changes[gw_coupled_node (coupled, side, i - 1)] : &none,
                           change);
                judge (newton, &here, is_laminar, change, &squares, &part);
              }
            else
              take (newton, &here, is_laminar, change, part);
          }

      for (size_t i = 1; i < GW_WAKE_N; i++)
        {
          const GwPlace here = gw_place_wake (coupled, i);
          Change       *change = &changes[here.node];

          if (i == 1 && pass == 0)
            {
              Change       *start = &changes[here.node - 1];
              const GwPlace first = gw_place_wake (coupled, 0);

              *start = none;
              for (int side = 0; side < 2; side++)
                {
                  const size_t  last = coupled->count[side] - 1;
                  const Change *edge = &changes[gw_coupled_node (coupled, side, last)];
                  const double  share = coupled->side[side][last].theta / first.at->theta;

                  start->theta += edge->theta;
                  start->a += coupled->turned[side] <= last ? share * edge->a : 0.0;
                }
              start->mass = first.mass_sign * newton->right[first.node];
              start->u = speed_change (newton, &first);
            }
          if (pass == 0)
            {
              change_at (newton, &here, &changes[here.node - 1], change);
              judge (newton, &here, false, change, &squares, &part);
            }
          else
            take (newton, &here, false, change, part);
        }
    }

  return sqrt (squares / (4.0 * (double) newton->all));
}
