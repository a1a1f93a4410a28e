/* gw-layer-march.c - a layer from station to station
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-layer.h"

#include <math.h>

#define ROUNDS 30

/* Gauss with row pivoting; false if singular. */
static bool
solve4 (double m[4][5],
        double x[4])
{
  for (int k = 0; k < 4; k++)
    {
      int best = k;

      for (int i = k + 1; i < 4; i++)
        if (fabs (m[i][k]) > fabs (m[best][k]))
          best = i;
      if (!(fabs (m[best][k]) > 1e-300))
        return false;
      for (int j = k; j < 5; j++)
        {
          const double kept = m[k][j];

          m[k][j] = m[best][j];
          m[best][j] = kept;
        }
      for (int i = k + 1; i < 4; i++)
        {
          const double factor = m[i][k] / m[k][k];

          for (int j = k; j < 5; j++)
            m[i][j] -= factor * m[k][j];
        }
    }

  for (int k = 4; k-- > 0;)
    {
      x[k] = m[k][4];
      for (int j = k + 1; j < 4; j++)
        x[k] -= m[k][j] * x[j];
      x[k] /= m[k][k];
    }

  return isfinite (x[0]) && isfinite (x[1]) && isfinite (x[2]) && isfinite (x[3]);
}

/* One step of Newton with relative changes held to a third; the largest of them, or -1. */
static double
improve (GwLayerKind           kind,
         const GwLayerRule    *rule,
         const GwLayerStation *from,
         const GwLayerLaw     *law,
         GwLayerStation       *to)
{
  const double scale_a = kind == GW_LAYER_LAMINAR ? 10.0 : to->a;
  /* No layer is fuller than this; a levelled wake, or a flow that speeds up fast, would be. */
  const double least = (kind == GW_LAYER_WAKE ? 1.001 : 1.02) * to->theta + to->gap;
  double       rest[3], by[3][4], m[4][5], x[4], size, part;

  gw_layer_linearise (kind, rule, from, to, rest, NULL, by);
  for (int i = 0; i < 3; i++)
    {
      for (int j = 0; j < 4; j++)
        m[i][j] = by[i][j];
      m[i][4] = -rest[i];
    }
  m[3][0] = m[3][1] = 0.0;
  m[3][2] = -law->answer * to->u;
  m[3][3] = 1.0 - law->answer * to->dstar;
  m[3][4] = law->u_ref + law->answer * (to->u * to->dstar - law->m_ref) - to->u;
  if (!solve4 (m, x))
    return -1.0;

  if (x[2] < 0.0 && to->dstar <= least * (1.0 + 1e-9))
    x[2] = 0.0;
  size = fmax (fmax (fabs (x[0]) / scale_a, fabs (x[1]) / to->theta),
               fmax (fabs (x[2]) / to->dstar, fabs (x[3]) / to->u));
  part = size > 0.3 ? 0.3 / size : 1.0;
  to->a += part * x[0];
  to->theta += part * x[1];
  to->dstar += part * x[2];
  to->u += part * x[3];
  to->dstar = fmax (to->dstar, (kind == GW_LAYER_WAKE ? 1.001 : 1.02) * to->theta + to->gap);
  return size;
}

GwStatus
gw_layer_step (GwLayerKind           kind,
               const GwLayerRule    *rule,
               const GwLayerStation *from,
               const GwLayerLaw     *law,
               GwLayerStation       *to)
{
  for (int i = 0; i < ROUNDS; i++)
    {
      const double size = improve (kind, rule, from, law, to);

      if (size < 0.0 || !(to->u > 0.0 && to->theta > 0.0))
        break;
      if (size < 1e-7)
        return GW_OK;
    }

  /* Carry on with the shape as it was. */
  to->u = law->u_ref > 0.0 ? law->u_ref : from->u;
  to->theta = from->theta * pow (from->u / to->u, 3.0);
  to->theta = fmin (fmax (to->theta, from->theta), 1.5 * from->theta);
  to->dstar = to->theta * fmin (from->dstar / from->theta, 3.5) + to->gap;
  return GW_ENOCONV;
}

static void
guess_from (const GwLayerStation *from,
            const GwLayerLaw     *law,
            double                a,
            GwLayerStation       *to)
{
  to->a = a;
  to->theta = from->theta;
  to->dstar = from->dstar - from->gap + to->gap;
  to->u = fmax (law->u_ref, 1e-6);
}

/* First from the guess there is, if any, then from the station before. */
static bool
step_from_guesses (GwLayerKind           kind,
                   const GwLayerRule    *rule,
                   const GwLayerStation *from,
                   const GwLayerLaw     *law,
                   bool                  has_guess,
                   GwLayerStation       *to)
{
  const GwLayerStation guess = *to;

  if (has_guess && gw_layer_step (kind, rule, from, law, to) == GW_OK)
    return true;

  guess_from (from, law, kind == GW_LAYER_TRANSITION ? 0.05 : from->a, to);
  if (kind == GW_LAYER_TRANSITION)
    to->dstar = to->theta * fmin (to->dstar / to->theta, 2.0);
  if (gw_layer_step (kind, rule, from, law, to) == GW_OK)
    return true;

  if (has_guess)
    *to = guess;
  else
    to->a = kind == GW_LAYER_TRANSITION ? 0.05 : from->a;
  return false;
}

/* A step that may be the one with the transition in it. If the layer, once turbulent at the
 * end, would not have turned before it, it stays laminar there and turns at the start of the
 * next: of the two answers that the equations then have, always the same one. */
static bool
step_or_turn (const GwLayerRule    *rule,
              const GwLayerStation *from,
              const GwLayerLaw     *law,
              const GwLayerStation *guess,
              bool                  is_guess_turbulent,
              bool                  is_held,
              GwLayerStation       *to,
              double               *s_turn)
{
  const bool     has_guess = guess->theta > 0.0;
  bool           is_done = true, is_laminar_done = true;
  GwLayerStation laminar;
  double         rest[3];

  *s_turn = HUGE_VAL;
  if (!is_held && rule->s_forced > to->s)
    {
      if (is_guess_turbulent)
        to->a = from->a;
      is_laminar_done = step_from_guesses (GW_LAYER_LAMINAR, rule, from, law,
                                           has_guess && !is_guess_turbulent, to);
      if (to->a < rule->n_crit)
        return is_laminar_done;
    }

  laminar = *to;
  if (is_guess_turbulent)
    *to = *guess;
  is_done = step_from_guesses (GW_LAYER_TRANSITION, rule, from, law,
                               has_guess && is_guess_turbulent, to);
  gw_layer_interval (GW_LAYER_TRANSITION, rule, from, to, rest, s_turn);
  if (!is_held && is_laminar_done && rule->s_forced > to->s && from->a < rule->n_crit &&
      (!is_done || *s_turn >= to->s))
    {
      *to = laminar;
      *s_turn = HUGE_VAL;
      return true;
    }

  return is_done;
}

size_t
gw_layer_march (const GwLayerRule *rule,
                size_t             n,
                GwLayerStation    *stations,
                const GwLayerLaw  *laws,
                size_t            *turned,
                double            *s_turn)
{
  const size_t guessed = *turned;
  size_t       failed = 0;

  *turned = n;
  for (size_t i = 1; i < n; i++)
    {
      const GwLayerStation *from = &stations[i - 1];
      const GwLayerStation  guess = stations[i];
      bool                  is_done;

      if (*turned < i)
        is_done = step_from_guesses (GW_LAYER_TURBULENT, rule, from, &laws[i],
                                     guess.theta > 0.0 && guessed <= i, &stations[i]);
      else if (rule->held > i)
        is_done = step_from_guesses (GW_LAYER_LAMINAR, rule, from, &laws[i],
                                     guess.theta > 0.0 && guessed > i, &stations[i]);
      else
        {
          is_done = step_or_turn (rule, from, &laws[i], &guess, guessed <= i, rule->held == i,
                                  &stations[i], s_turn);
          if (isfinite (*s_turn))
            *turned = i;
        }

      failed += !is_done;
    }

  if (*turned == n)
    *s_turn = stations[n - 1].s;
  return failed;
}
