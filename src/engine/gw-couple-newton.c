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

/* Adds @factor times the change of speed at a place. */
static void
add_speed (const GwNewton *newton,
           const GwPlace  *place,
           double          factor,
           double         *row)
{
  const double *mass = newton->coupled->flow.mass[place->node];
  const double  signed_factor = factor * place->speed_sign;

  for (size_t j = 0; j < newton->all; j++)
    row[j] += signed_factor * mass[j];
  row[newton->all] += factor * newton->lack[place->node];
}

static void
add_mass (const GwPlace *place,
          double         factor,
          double        *row)
{
  row[place->node] += factor * place->mass_sign;
}

static void
add_sums (const GwNewton *newton,
          const double   *sums,
          double          factor,
          double         *row)
{
  for (size_t j = 0; j <= newton->all; j++)
    row[j] += factor * sums[j];
}

/* A row of the small system spread over all mass defects; columns as in GwNewtonLocal. */
static void
spread_row (const GwNewton     *newton,
            const GwPlace      *here,
            const GwPlace      *before,
            const GwNewtonSums *sums,
            const double        local[7],
            double             *row)
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
put_row (GwNewton     *newton,
         size_t        node,
         const double *row)
{
  double *out = &newton->matrix[node * newton->all];

  for (size_t j = 0; j < newton->all; j++)
    out[j] = row[j];
  newton->right[node] = -row[newton->all];
}

static bool
add_interval (GwNewton           *newton,
              GwLayerKind         kind,
              const GwLayerRule  *rule,
              const GwPlace      *before,
              const GwNewtonSums *sums_before,
              const GwPlace      *here,
              GwNewtonSums       *sums)
{
  const double   u1 = before->at->u, u2 = here->at->u;
  double         rest[3], by1[3][4], by2[3][4], m[3][9], row[GW_NEWTON_WIDE];
  GwNewtonLocal *local = &newton->local[here->node];

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
add_first (GwNewton      *newton,
           const GwPlace *here,
           GwNewtonSums  *sums)
{
  double row[GW_NEWTON_WIDE] = { 0.0 };

  for (size_t j = 0; j <= newton->all; j++)
    sums->a[j] = sums->theta[j] = 0.0;
  newton->local[here->node] = (GwNewtonLocal){ { 0.0 }, { 0.0 } };
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
add_side (GwNewton    *newton,
          int          side,
          GwNewtonSums sums[2])
{
  GwCoupled        *coupled = newton->coupled;
  const GwLayerRule rule = rule_of (coupled, side);
  const size_t      count = coupled->count[side];
  GwPlace           before = gw_place_side (coupled, side, 0);
  GwNewtonSums     *last = &sums[0], *next = &sums[1];

  add_first (newton, &before, last);
  for (size_t i = 1; i < count; i++)
    {
      const GwPlace     here = gw_place_side (coupled, side, i);
      const GwLayerKind kind = i < coupled->turned[side]    ? GW_LAYER_LAMINAR
                               : i == coupled->turned[side] ? GW_LAYER_TRANSITION
                                                            : GW_LAYER_TURBULENT;
      GwNewtonSums     *kept = last;

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
add_wake_start (GwNewton     *newton,
                GwNewtonSums *sums)
{
  GwCoupled *coupled = newton->coupled;
  GwPlace    here = gw_place_wake (coupled, 0);
  double     row[GW_NEWTON_WIDE] = { 0.0 };

  for (size_t j = 0; j <= newton->all; j++)
    sums->a[j] = sums->theta[j] = 0.0;

  add_mass (&here, 1.0 / here.at->u, row);
  add_speed (newton, &here, -here.at->dstar / here.at->u, row);
  for (int side = 0; side < 2; side++)
    {
      const size_t  last = coupled->count[side] - 1;
      const GwPlace edge = gw_place_side (coupled, side, last);
      const double  share = edge.at->theta / here.at->theta;

      add_sums (newton, newton->sums[2 * side].theta, 1.0, sums->theta);
      if (coupled->turned[side] <= last)
        add_sums (newton, newton->sums[2 * side].a, share, sums->a);
      add_mass (&edge, -1.0 / edge.at->u, row);
      add_speed (newton, &edge, edge.at->dstar / edge.at->u, row);
    }
  put_row (newton, here.node, row);
}

static bool
add_wake (GwNewton *newton)
{
  GwCoupled        *coupled = newton->coupled;
  const GwLayerRule rule = { coupled->re, coupled->n_crit, HUGE_VAL, 0 };
  GwNewtonSums     *last = &newton->sums[1], *next = &newton->sums[3];
  GwPlace           before = gw_place_wake (coupled, 0);

  add_wake_start (newton, last);
  for (size_t i = 1; i < GW_WAKE_N; i++)
    {
      const GwPlace here = gw_place_wake (coupled, i);
      GwNewtonSums *kept = last;

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
find_lack (GwNewton *newton)
{
  GwCoupled    *coupled = newton->coupled;
  const GwFlow *flow = &coupled->flow;
  double        mass[GW_FLOW_MAX];
  GwPlace       places[GW_FLOW_MAX];
  size_t        count = 0;

  for (int side = 0; side < 2; side++)
    for (size_t i = 0; i < coupled->count[side]; i++)
      places[count++] = gw_place_side (coupled, side, i);
  for (size_t i = 0; i < GW_WAKE_N; i++)
    places[count++] = gw_place_wake (coupled, i);

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

double
gw_coupled_newton (GwCoupled *coupled)
{
  GwNewton       *newton = malloc (sizeof *newton);
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
            change = gw_newton_apply (newton);
        }
    }

  free (newton);
  return isfinite (change) ? change : -1.0;
}
