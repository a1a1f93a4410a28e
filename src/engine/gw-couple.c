/* gw-couple.c - rounds of marching and Newton's method at one incidence
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-couple-private.h"

#include <math.h>

#define CONVERGED 1e-4 /* change of a round, root of the mean square */
#define DECIDED   5    /* rounds after which a step no longer changes its mind */
#define PATIENT   6    /* rounds after which a march that does not help is left out */
#define HELD      10   /* rounds after which transition stays between two stations ... */
#define NEAR      0.02 /* ... if the change is smaller than this */
#define LATE      14   /* rounds after which it is given up ... */
#define FAR       0.3  /* ... if the change is still greater than this */
#define SOFT      10.0 /* answer of the speed in the first march of all */
#define DEAD      2.5  /* length of the still air behind a blunt edge, in its heights */
#define CRITICAL  120.0

GwStatus
gw_coupled_init (GwCoupled      *coupled,
                 const GwPanels *panels,
                 double          re,
                 double          n_crit,
                 const GwTrip    trips[2])
{
  if (!(re >= 1e4 && re <= 3e7 && n_crit >= 0.5 && n_crit <= 15.0))
    return GW_EINVAL;

  coupled->panels = panels;
  coupled->re = re;
  coupled->n_crit = n_crit;
  for (int side = 0; side < 2; side++)
    {
      const GwTrip none = { .x = 1.0 };

      coupled->trips[side] = trips != NULL ? trips[side] : none;
      if (!(coupled->trips[side].x >= 0.0 && coupled->trips[side].height >= 0.0))
        return GW_EINVAL;
    }
  coupled->is_ready = false;
  coupled->rounds = 0;
  return GW_OK;
}

size_t
gw_coupled_node (const GwCoupled *coupled,
                 int              side,
                 size_t           station)
{
  return side == 0 ? coupled->count[0] - 1 - station : coupled->count[0] + station;
}

/* Panel on which the speed along the outline changes its sign, the one nearest @guess. */
static size_t
find_stagnation (const GwPanels *panels,
                 const double   *speed,
                 size_t          guess)
{
  size_t best = panels->n / 2, least = panels->n;

  for (size_t i = 2; i + 3 < panels->n; i++)
    if (speed[i] > 0.0 && speed[i + 1] <= 0.0)
      {
        const size_t apart = i > guess ? i - guess : guess - i;

        if (apart < least)
          {
            least = apart;
            best = i;
          }
      }

  return best;
}

static double
still_air (const GwPanels *panels,
           double          s)
{
  const double t = panels->gap > 1e-4 ? s / (DEAD * panels->gap) : 1.0;

  return t < 1.0 ? panels->gap * (1.0 - t) * (1.0 - t) * (1.0 + 2.0 * t) : 0.0;
}

/* Arc lengths from the stagnation point, and the layer at the first station. */
static void
measure_side (GwCoupled *coupled,
              int        side,
              double     first)
{
  const GwPanels *panels = coupled->panels;
  double          s = first, h, part;
  GwLayerStation *start = &coupled->side[side][0];

  for (size_t i = 0; i < coupled->count[side]; i++)
    {
      const size_t node = gw_coupled_node (coupled, side, i);

      coupled->side[side][i].s = s;
      coupled->side[side][i].gap = 0.0;
      if (i + 1 < coupled->count[side])
        s += panels->length[side == 0 ? node - 1 : node];
    }

  part = gw_layer_similar (1.0, &h);
  start->a = 0.0;
  start->theta = sqrt (part * start->s / (start->u * coupled->re));
  start->dstar = h * start->theta;
}

/* Splits the nodes between the sides by the speed along the outline, @speed; layers known at
 * a node of the same side stay there. */
static void
set_sides (GwCoupled    *coupled,
           const double *speed)
{
  const GwPanels *panels = coupled->panels;
  const size_t    guess = coupled->is_ready ? coupled->count[0] - 1 : panels->n / 2;
  const size_t    split = find_stagnation (panels, speed, guess);
  const size_t    count[] = { split + 1, panels->n - split - 1 };
  const double    rise = speed[split] - speed[split + 1];
  const double    part = rise > 0.0 ? speed[split] / rise : 0.5;

  for (int side = 0; side < 2; side++)
    {
      GwLayerStation kept[GW_PANEL_MAX] = { { 0.0 } };
      const long     shift = coupled->is_ready
                               ? (long) count[side] - (long) coupled->count[side]
                               : 0;

      for (size_t i = 0; i < count[side]; i++)
        {
          const long from = (long) i - shift;

          if (coupled->is_ready && from >= 0)
            kept[i] = coupled->side[side][from];
        }
      for (size_t i = 0; i < count[side]; i++)
        coupled->side[side][i] = kept[i];
      if (coupled->is_ready)
        coupled->turned[side] = (size_t) fmax ((double) coupled->turned[side] +
                                                 (double) shift,
                                               1.0);
      else
        coupled->turned[side] = count[side];
    }

  coupled->count[0] = count[0];
  coupled->count[1] = count[1];
  for (int side = 0; side < 2; side++)
    {
      for (size_t i = 0; i < count[side]; i++)
        coupled->side[side][i].u = fmax (fabs (speed[gw_coupled_node (coupled, side, i)]), 1e-5);
      measure_side (coupled, side,
                    fmax (side == 0 ? part : 1.0 - part, 1e-3) * panels->length[split]);
    }
}

/* Arc length of the place of a trip. */
static double
trip_place (const GwCoupled *coupled,
            int              side)
{
  const GwLayerStation *stations = coupled->side[side];
  const double          x = coupled->trips[side].x;

  if (x >= 1.0)
    return HUGE_VAL;

  for (size_t i = coupled->count[side] - 1; i > 0; i--)
    {
      const double fore = coupled->panels->x[gw_coupled_node (coupled, side, i - 1)];
      const double aft = coupled->panels->x[gw_coupled_node (coupled, side, i)];

      if (fore < x)
        {
          const double t = fmin (fmax ((x - fore) / (aft - fore), 0.0), 1.0);

          return stations[i - 1].s + t * (stations[i].s - stations[i - 1].s);
        }
    }

  return stations[0].s;
}

/* Where transition is forced; a step only if the layer that reaches it is thin enough. */
static void
set_trips (GwCoupled *coupled,
           int        round)
{
  for (int side = 0; side < 2; side++)
    {
      const GwTrip *trip = &coupled->trips[side];
      const double  place = trip_place (coupled, side);
      const double  critical = trip->critical > 0.0 ? trip->critical : CRITICAL;

      if (trip->height <= 0.0)
        coupled->is_tripped[side] = true;
      else if (!coupled->is_ready && round == 0)
        coupled->is_tripped[side] = false;
      else if (round < DECIDED && isfinite (place))
        {
          size_t i = 1;

          while (i + 1 < coupled->count[side] && coupled->side[side][i].s < place)
            i++;
          if (i - 1 < coupled->turned[side])
            coupled->is_tripped[side] = gw_layer_step_reynolds (coupled->re,
                                                                &coupled->side[side][i - 1],
                                                                trip->height) > critical;
        }

      coupled->s_forced[side] = coupled->is_tripped[side] ? place : HUGE_VAL;
    }
}

static double
edge_root (const GwCoupled *coupled,
           int              side)
{
  const size_t          last = coupled->count[side] - 1;
  const GwLayerStation *edge = &coupled->side[side][last];

  return coupled->turned[side] <= last ? edge->a : gw_layer_fresh_root (coupled->re, edge);
}

static void
start_wake (GwCoupled *coupled)
{
  const GwLayerStation *edges[] = { &coupled->side[0][coupled->count[0] - 1],
                                    &coupled->side[1][coupled->count[1] - 1] };
  GwLayerStation       *start = &coupled->wake[0];

  start->theta = edges[0]->theta + edges[1]->theta;
  start->gap = still_air (coupled->panels, 0.0);
  start->dstar = edges[0]->dstar + edges[1]->dstar + start->gap;
  start->u = 0.5 * (edges[0]->u + edges[1]->u);
  start->s = 0.0;
  start->a = (edges[0]->theta * edge_root (coupled, 0) +
              edges[1]->theta * edge_root (coupled, 1)) /
             start->theta;
}

static GwLayerLaw
law_at (const GwCoupled      *coupled,
        size_t                node,
        const GwLayerStation *station)
{
  if (!coupled->is_ready)
    return (GwLayerLaw){ station->u, 0.0, SOFT };
  return (GwLayerLaw){ station->u, station->u * station->dstar,
                       fabs (coupled->flow.mass[node][node]) };
}

static size_t
march_all (GwCoupled *coupled)
{
  const size_t n = coupled->panels->n;
  GwLayerLaw   laws[GW_PANEL_MAX];
  size_t       failed = 0;

  for (int side = 0; side < 2; side++)
    {
      const GwLayerRule rule = { coupled->re, coupled->n_crit, coupled->s_forced[side],
                                 coupled->part < 1.0 ? coupled->turned[side] : 0 };

      for (size_t i = 0; i < coupled->count[side]; i++)
        {
          laws[i] = law_at (coupled, gw_coupled_node (coupled, side, i),
                            &coupled->side[side][i]);
          /* A node that has changed sides has no displacement to refer to. */
          if (coupled->is_ready && !(coupled->side[side][i].theta > 0.0))
            laws[i] = (GwLayerLaw){ coupled->side[side][i].u, 0.0, 0.0 };
        }
      failed += gw_layer_march (&rule, coupled->count[side], coupled->side[side], laws,
                                &coupled->turned[side], &coupled->s_turn[side]);
    }

  start_wake (coupled);
  for (size_t i = 1; i < GW_WAKE_N; i++)
    {
      const GwLayerRule rule = { coupled->re, coupled->n_crit, HUGE_VAL, 0 };
      GwLayerStation   *to = &coupled->wake[i], guess;
      GwLayerLaw        law;

      to->s = coupled->flow.wake_s[i];
      to->gap = still_air (coupled->panels, to->s);
      if (!coupled->is_ready)
        {
          *to = coupled->wake[i - 1];
          to->s = coupled->flow.wake_s[i];
          to->gap = still_air (coupled->panels, to->s);
          to->dstar += to->gap - coupled->wake[i - 1].gap;
          to->u = coupled->flow.speed[n + i];
        }
      law = law_at (coupled, n + i, to);
      guess = *to;
      if (gw_layer_step (GW_LAYER_WAKE, &rule, &coupled->wake[i - 1], &law, to) != GW_OK)
        {
          *to = guess;
          failed++;
        }
    }

  return failed;
}

/* Speeds along the outline from the layers, with the sign of the vortices. */
static void
signed_speeds (const GwCoupled *coupled,
               double          *speed)
{
  for (int side = 0; side < 2; side++)
    for (size_t i = 0; i < coupled->count[side]; i++)
      speed[gw_coupled_node (coupled, side, i)] = (side == 0 ? 1.0 : -1.0) *
                                                  coupled->side[side][i].u;
}

static void
set_incidence (GwCoupled *coupled,
               double     alpha)
{
  const size_t n = coupled->panels->n;
  double       old[GW_FLOW_MAX], speed[GW_FLOW_MAX];

  for (size_t i = 0; coupled->is_ready && i < n + GW_WAKE_N; i++)
    old[i] = coupled->flow.speed[i];
  gw_flow_init (&coupled->flow, coupled->panels, alpha);

  if (!coupled->is_ready)
    {
      set_sides (coupled, coupled->flow.speed);
      return;
    }

  signed_speeds (coupled, speed);
  for (size_t i = 0; i < n; i++)
    speed[i] += coupled->flow.speed[i] - old[i];
  for (size_t i = 1; i < GW_WAKE_N; i++)
    coupled->wake[i].u = fmax (coupled->wake[i].u + coupled->flow.speed[n + i] - old[n + i], 0.1);
  set_sides (coupled, speed);
}

GwStatus
gw_coupled_solve (GwCoupled *coupled,
                  double     alpha,
                  int        rounds_most)
{
  bool is_stuck = false;

  set_incidence (coupled, alpha);
  for (coupled->rounds = 0; coupled->rounds < rounds_most; coupled->rounds++)
    {
      const double before = coupled->change;
      const size_t split = coupled->count[0];
      double       speed[GW_PANEL_MAX];

      /* Near the end whole steps may jump to and fro over a kink of a relation, and transition
       * over a station. */
      coupled->part = coupled->rounds < HELD || coupled->change > NEAR ? 1.0 : 0.5;
      set_trips (coupled, coupled->rounds);
      /* Where a layer has two answers the march may go back each time to the one that Newton's
       * method leaves. */
      if (is_stuck)
        start_wake (coupled);
      else
        march_all (coupled);
      coupled->is_ready = true;
      coupled->change = gw_coupled_newton (coupled);
      if (coupled->change < 0.0 || (coupled->rounds >= LATE && coupled->change > FAR))
        return GW_ENOCONV;

      signed_speeds (coupled, speed);
      set_sides (coupled, speed);
      if (coupled->change < CONVERGED)
        {
          start_wake (coupled);
          return GW_OK;
        }
      is_stuck = coupled->rounds >= PATIENT && split == coupled->count[0] &&
                 (is_stuck || coupled->change > 0.8 * before);
    }

  return GW_ENOCONV;
}
