/* gw-couple-newton.c - all layers and the flow outside at once
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-couple-private.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <stdlib.h>

#define WIDE (GW_FLOW_MAX + 1)

/* Changes of a and theta at a station as sums over the changes of all mass defects, the
 * last entry a constant. */
typedef struct
{
  double a[WIDE];
  double theta[WIDE];
} Sums;

/* The same change in terms of the station's own and the one before: changes of mass and
 * speed here, a, theta, mass and speed there, constant. */
typedef struct
{
  double a[7];
  double theta[7];
} Local;

typedef struct
{
  GwCoupled *coupled;
  size_t     n;                 /* nodes of the outline */
  size_t     all;               /* stations: unknown mass defects */
  double     lack[GW_FLOW_MAX]; /* speed the flow wants less the speed the layer has */
  double     matrix[GW_FLOW_MAX * GW_FLOW_MAX];
  double     right[GW_FLOW_MAX];
  Local      local[GW_FLOW_MAX]; /* by node */
  Sums       sums[4];            /* working space: here and before, of each side */
  size_t     order[GW_FLOW_MAX];
} Newton;

/* A station with what the elimination needs to know about it. */
typedef struct
{
  GwLayerStation *at;
  size_t          node;
  double          speed_sign; /* of its speed against the strength of the vortex there */
  double          mass_sign;  /* of its mass defect against that of the flow */
} Place;

static Place
side_place (GwCoupled *coupled,
            int        side,
            size_t     i)
{
  return (Place){ &coupled->side[side][i], gw_coupled_node (coupled, side, i),
                  side == 0 ? 1.0 : -1.0, side == 0 ? -1.0 : 1.0 };
}

static Place
wake_place (GwCoupled *coupled,
            size_t     i)
{
  return (Place){ &coupled->wake[i], coupled->panels->n + i, 1.0, 1.0 };
}

/* Adds @factor times the change of speed at a place. */
static void
add_speed (const Newton *newton,
           const Place  *place,
           double        factor,
           double       *row)
{
  const double *mass = newton->coupled->flow.mass[place->node];
  const double  signed_factor = factor * place->speed_sign;

  for (size_t j = 0; j < newton->all; j++)
    row[j] += signed_factor * mass[j];
  row[newton->all] += factor * newton->lack[place->node];
}

static void
add_mass (const Place *place,
          double       factor,
          double      *row)
{
  row[place->node] += factor * place->mass_sign;
}

static void
add_sums (const Newton *newton,
          const double *sums,
          double        factor,
          double       *row)
{
  for (size_t j = 0; j <= newton->all; j++)
    row[j] += factor * sums[j];
}

/* A row of the small system spread over all mass defects; columns as in Local. */
static void
spread_row (const Newton *newton,
            const Place  *here,
            const Place  *before,
            const Sums   *sums,
            const double  local[7],
            double       *row)
{
  for (size_t j = 0; j <= newton->all; j++)
    row[j] = 0.0;
  add_mass (here, local[0], row);
  add_speed (newton, here, local[1], row);
  add_sums (newton, sums->a, local[2], row);
  add_sums (newton, sums->theta, local[3], row);
  add_mass (before, local[4], row);
  add_speed (newton, before, local[5], row);
  row[newton->all] += local[6];
}

/* Clears columns 0 and 1 (changes of a and theta) of three equations in nine columns: rows 0
 * and 1 then give them alone, row 2 is free of them. */
static bool
eliminate (double m[3][9])
{
  for (int k = 0; k < 2; k++)
    {
      int best = k;

      for (int i = k + 1; i < 3; i++)
        if (fabs (m[i][k]) > fabs (m[best][k]))
          best = i;
      if (!(fabs (m[best][k]) > 1e-200))
        return false;

      for (int j = 0; j < 9; j++)
        {
          const double kept = m[k][j];

          m[k][j] = m[best][j];
          m[best][j] = kept;
        }
      for (int j = 8; j >= k; j--)
        m[k][j] /= m[k][k];
      for (int i = 0; i < 3; i++)
        {
          const double factor = m[i][k];

          if (i != k)
            for (int j = k; j < 9; j++)
              m[i][j] -= factor * m[k][j];
        }
    }

  return true;
}

/* Writes a row of the dense system: sum of changes = right side. */
static void
put_row (Newton       *newton,
         size_t        node,
         const double *row)
{
  double *out = &newton->matrix[node * newton->all];

  for (size_t j = 0; j < newton->all; j++)
    out[j] = row[j];
  newton->right[node] = -row[newton->all];
}

static bool
add_interval (Newton            *newton,
              GwLayerKind        kind,
              const GwLayerRule *rule,
              const Place       *before,
              const Sums        *sums_before,
              const Place       *here,
              Sums              *sums)
{
  const double u1 = before->at->u, u2 = here->at->u;
  double       rest[3], by1[3][4], by2[3][4], m[3][9], row[WIDE];
  Local       *local = &newton->local[here->node];

  gw_layer_linearise (kind, rule, before->at, here->at, rest, by1, by2);
  for (int i = 0; i < 3; i++)
    {
      m[i][0] = by2[i][0];
      m[i][1] = by2[i][1];
      m[i][2] = by2[i][2] / u2;
      m[i][3] = by2[i][3] - by2[i][2] * here->at->dstar / u2;
      m[i][4] = by1[i][0];
      m[i][5] = by1[i][1];
      m[i][6] = by1[i][2] / u1;
      m[i][7] = by1[i][3] - by1[i][2] * before->at->dstar / u1;
      m[i][8] = rest[i];
    }
  if (!eliminate (m))
    return false;

  for (int j = 0; j < 7; j++)
    {
      local->a[j] = -m[0][j + 2];
      local->theta[j] = -m[1][j + 2];
    }
  spread_row (newton, here, before, sums_before, local->a, sums->a);
  spread_row (newton, here, before, sums_before, local->theta, sums->theta);
  spread_row (newton, here, before, sums_before, &m[2][2], row);
  put_row (newton, here->node, row);
  return true;
}

/* The first station keeps shape and momentum thickness of the stagnation point. */
static void
add_first (Newton      *newton,
           const Place *here,
           Sums        *sums)
{
  double row[WIDE] = { 0.0 };

  for (size_t j = 0; j <= newton->all; j++)
    sums->a[j] = sums->theta[j] = 0.0;
  newton->local[here->node] = (Local){ { 0.0 }, { 0.0 } };
  add_mass (here, 1.0, row);
  add_speed (newton, here, -here->at->dstar, row);
  put_row (newton, here->node, row);
}

static GwLayerRule
rule_of (const GwCoupled *coupled,
         int              side)
{
  return (GwLayerRule){ coupled->re, coupled->n_crit, coupled->s_forced[side], 0 };
}

/* Leaves the last station's sums in @sums[0]. */
static bool
add_side (Newton *newton,
          int     side,
          Sums    sums[2])
{
  GwCoupled        *coupled = newton->coupled;
  const GwLayerRule rule = rule_of (coupled, side);
  const size_t      count = coupled->count[side];
  Place             before = side_place (coupled, side, 0);
  Sums             *last = &sums[0], *next = &sums[1];

  add_first (newton, &before, last);
  for (size_t i = 1; i < count; i++)
    {
      const Place       here = side_place (coupled, side, i);
      const GwLayerKind kind = i < coupled->turned[side]    ? GW_LAYER_LAMINAR
                               : i == coupled->turned[side] ? GW_LAYER_TRANSITION
                                                            : GW_LAYER_TURBULENT;
      Sums             *kept = last;

      if (!add_interval (newton, kind, &rule, &before, last, &here, next))
        return false;
      last = next;
      next = kept;
      before = here;
    }

  if (last != &sums[0])
    sums[0] = sums[1];
  return true;
}

/* Both layers flow together: thicknesses add, the shear stress is shared. */
static void
add_wake_start (Newton *newton,
                Sums   *sums)
{
  GwCoupled *coupled = newton->coupled;
  Place      here = wake_place (coupled, 0);
  double     row[WIDE] = { 0.0 };

  for (size_t j = 0; j <= newton->all; j++)
    sums->a[j] = sums->theta[j] = 0.0;

  add_mass (&here, 1.0 / here.at->u, row);
  add_speed (newton, &here, -here.at->dstar / here.at->u, row);
  for (int side = 0; side < 2; side++)
    {
      const size_t last = coupled->count[side] - 1;
      const Place  edge = side_place (coupled, side, last);
      const double share = edge.at->theta / here.at->theta;

      add_sums (newton, newton->sums[2 * side].theta, 1.0, sums->theta);
      if (coupled->turned[side] <= last)
        add_sums (newton, newton->sums[2 * side].a, share, sums->a);
      add_mass (&edge, -1.0 / edge.at->u, row);
      add_speed (newton, &edge, edge.at->dstar / edge.at->u, row);
    }
  put_row (newton, here.node, row);
}

static bool
add_wake (Newton *newton)
{
  GwCoupled        *coupled = newton->coupled;
  const GwLayerRule rule = { coupled->re, coupled->n_crit, HUGE_VAL, 0 };
  Sums             *last = &newton->sums[1], *next = &newton->sums[3];
  Place             before = wake_place (coupled, 0);

  add_wake_start (newton, last);
  for (size_t i = 1; i < GW_WAKE_N; i++)
    {
      const Place here = wake_place (coupled, i);
      Sums       *kept = last;

      if (!add_interval (newton, GW_LAYER_WAKE, &rule, &before, last, &here, next))
        return false;
      last = next;
      next = kept;
      before = here;
    }

  return true;
}

/* Speed the flow wants at each station, less what the layers have. */
static void
find_lack (Newton *newton)
{
  GwCoupled    *coupled = newton->coupled;
  const GwFlow *flow = &coupled->flow;
  double        mass[GW_FLOW_MAX];
  Place         places[GW_FLOW_MAX];
  size_t        count = 0;

  for (int side = 0; side < 2; side++)
    for (size_t i = 0; i < coupled->count[side]; i++)
      places[count++] = side_place (coupled, side, i);
  for (size_t i = 0; i < GW_WAKE_N; i++)
    places[count++] = wake_place (coupled, i);

  for (size_t i = 0; i < count; i++)
    mass[places[i].node] = places[i].mass_sign * places[i].at->u * places[i].at->dstar;
  for (size_t i = 0; i < count; i++)
    {
      double speed = flow->speed[places[i].node];

      for (size_t j = 0; j < newton->all; j++)
        speed += flow->mass[places[i].node][j] * mass[j];
      newton->lack[places[i].node] = places[i].speed_sign * speed - places[i].at->u;
    }
}

typedef struct
{
  double a, theta, mass, u, dstar;
} Change;

static double
speed_change (const Newton *newton,
              const Place  *place)
{
  const double *mass = newton->coupled->flow.mass[place->node];
  double        sum = 0.0;

  for (size_t j = 0; j < newton->all; j++)
    sum += mass[j] * newton->right[j];
  return newton->lack[place->node] + place->speed_sign * sum;
}

static void
change_at (const Newton *newton,
           const Place  *here,
           const Change *before,
           Change       *out)
{
  const Local *local = &newton->local[here->node];
  double       known[7];

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
least_dstar (const Newton *newton,
             const Place  *place)
{
  return (place->node < newton->n ? 1.02 : 1.001) * place->at->theta + place->at->gap;
}

/* Changes in proportion to what is there; the greatest decides how much is taken. */
static void
judge (const Newton *newton,
       const Place  *place,
       bool          is_laminar,
       const Change *change,
       double       *squares,
       double       *part)
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
take (const Newton *newton,
      const Place  *place,
      bool          is_laminar,
      const Change *change,
      double        part)
{
  GwLayerStation *at = place->at;

  at->a += part * change->a;
  at->theta += part * change->theta;
  at->dstar += part * change->dstar;
  at->u += part * change->u; /* the stagnation point has moved if it becomes negative */
  at->a = is_laminar ? fmax (at->a, 0.0) : fmin (fmax (at->a, 1e-5), 0.4);
  at->dstar = fmax (at->dstar, least_dstar (newton, place));
}

static double
apply (Newton *newton)
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
            const Place here = side_place (coupled, side, i);
            const bool  is_laminar = i < coupled->turned[side];
            Change     *change = &changes[here.node];

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
          const Place here = wake_place (coupled, i);
          Change     *change = &changes[here.node];

          if (i == 1 && pass == 0)
            {
              Change     *start = &changes[here.node - 1];
              const Place first = wake_place (coupled, 0);

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

double
gw_coupled_newton (GwCoupled *coupled)
{
  Newton         *newton = malloc (sizeof *newton);
  double          change = -1.0;
  gsl_matrix_view matrix;
  gsl_vector_view right;
  gsl_permutation order;
  int             sign;

  if (newton == NULL)
    return -1.0;

  newton->coupled = coupled;
  newton->n = coupled->panels->n;
  newton->all = newton->n + GW_WAKE_N;
  find_lack (newton);
  if (add_side (newton, 0, &newton->sums[0]) && add_side (newton, 1, &newton->sums[2]) &&
      add_wake (newton))
    {
      matrix = gsl_matrix_view_array (newton->matrix, newton->all, newton->all);
      right = gsl_vector_view_array (newton->right, newton->all);
      order.size = newton->all;
      order.data = newton->order;
      if (gsl_linalg_LU_decomp (&matrix.matrix, &order, &sign) == GSL_SUCCESS &&
          gsl_linalg_LU_svx (&matrix.matrix, &order, &right.vector) == GSL_SUCCESS)
        {
          bool is_finite = true;

          for (size_t i = 0; i < newton->all; i++)
            is_finite = is_finite && isfinite (newton->right[i]);
          if (is_finite)
            change = apply (newton);
        }
    }

  free (newton);
  return isfinite (change) ? change : -1.0;
}
