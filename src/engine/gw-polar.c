/* gw-polar.c - from incidence to incidence
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-polar-private.h"

#include <math.h>
#include <stdlib.h>

#define PANELS  130
#define N_CRIT  9.0
#define ROUNDS  20
#define HALVES  2     /* times a step is halved before a fresh start */
#define GIVE_UP 3     /* incidences in a row that do not converge, once one has */
#define EASY    0.06  /* above the incidence of no circulation [rad] */
#define FALLEN  0.025 /* past the top, where the first that does not converge is the end [rad] */
#define STRIDE  0.05  /* to the first incidence of a single one [rad] */
#define LEAKY   0.85  /* part of its deflection that a flap with an open gap acts with */
#define APART   0.05  /* lift coefficients that are two values */

typedef struct
{
  const GwPolarCase *polar_case;
  GwPanels           panels;
  GwCoupled          now;
  GwCoupled          good; /* the last that converged on this way */
  GwCoupled          top;
  GwCoupled          turn;     /* the farthest beyond the stall */
  GwCoupled          afresh;   /* the last on the way up that the one before did not lead to */
  bool               is_fresh; /* the layers now are such */
} Run;

static bool
is_case_valid (const GwPolarCase *polar_case)
{
  return polar_case->re >= 3e4 * (1.0 - 1e-9) && polar_case->re <= 9e6 * (1.0 + 1e-9) &&
         (polar_case->n_crit == 0.0 ||
          (polar_case->n_crit >= 0.5 && polar_case->n_crit <= 15.0)) &&
         polar_case->n >= 3 && polar_case->n <= GW_POLAR_MAX - 10 &&
         polar_case->alpha_last > polar_case->alpha_first &&
         fabs (polar_case->alpha_first) < 0.8 && fabs (polar_case->alpha_last) < 0.8;
}

static GwStatus
run_init (Run               *run,
          const GwPolarCase *polar_case,
          GwPolarFault      *fault,
          bool              *is_wide)
{
  const size_t n = polar_case->panels > 0 ? polar_case->panels : PANELS;
  GwPanelFlap  flap = polar_case->flap;
  GwTrip       trips[2];
  double       xy[2 * GW_PANEL_MAX];
  GwStatus     status;

  *fault = gw_polar_check (&polar_case->outline);
  *is_wide = false;
  if (*fault != GW_POLAR_FINE)
    return GW_EINVAL;

  if (flap.hinge <= 0.0)
    flap.hinge = 1.0;
  if (flap.hinge < 1.0 && polar_case->is_open)
    {
      flap.deflection *= LEAKY;
      *is_wide = true;
    }

  for (int side = 0; side < 2; side++)
    {
      const double fold = gw_polar_fold (&polar_case->outline, side == 0);

      trips[side] = polar_case->trips[side];
      if (trips[side].x <= 0.0 && trips[side].height <= 0.0)
        trips[side].x = 1.0;
      if (fold < 1.0)
        {
          *is_wide = true;
          if (fold < trips[side].x || trips[side].height > 0.0)
            trips[side] = (GwTrip){ .x = fold };
        }
    }

  run->polar_case = polar_case;
  status = gw_panel_nodes (&polar_case->outline, &flap, n, xy);
  if (status == GW_EINVAL)
    *fault = GW_POLAR_CROSSED;
  if (status == GW_OK)
    status = gw_panels_init (&run->panels, n, xy);
  if (status == GW_OK)
    status = gw_coupled_init (&run->now, &run->panels, polar_case->re,
                              polar_case->n_crit > 0.0 ? polar_case->n_crit : N_CRIT, trips);
  run->good.is_ready = false;
  return status;
}

/* Sums that could not have come from a flow mean that the layers have run away. */
static bool
is_sound (const GwCoupledSums *sums)
{
  return isfinite (sums->cl) && isfinite (sums->cd) && isfinite (sums->cm) &&
         fabs (sums->cl) < 5.0 && sums->cd > 0.0 && sums->cd < 1.0;
}

static bool
solve (Run           *run,
       double         alpha,
       GwCoupledSums *sums)
{
  if (gw_coupled_solve (&run->now, alpha, ROUNDS) != GW_OK)
    return false;

  gw_coupled_sums (&run->now, sums);
  return is_sound (sums);
}

/* From the last good layers, straight or in smaller steps, then afresh. Behind an incidence
 * that was lost smaller steps have been tried already. */
static bool
solve_from_good (Run           *run,
                 double         alpha,
                 int            halves_most,
                 GwCoupledSums *sums)
{
  run->is_fresh = false;
  for (int halves = 0; run->good.is_ready && halves <= halves_most; halves++)
    {
      const double from = run->good.flow.alpha;
      const int    steps = 1 << halves;
      bool         is_done = true;

      run->now = run->good;
      for (int i = 1; i <= steps && is_done; i++)
        is_done = solve (run, from + (alpha - from) * i / steps, sums);
      if (is_done)
        {
          run->good = run->now;
          return true;
        }
    }

  run->now.is_ready = false;
  if (!solve (run, alpha, sums))
    return false;

  run->is_fresh = run->good.is_ready;
  run->good = run->now;
  return true;
}

static bool
is_wanted (const Run *run)
{
  const GwPolarCase *polar_case = run->polar_case;

  return polar_case->is_wanted == NULL || polar_case->is_wanted (polar_case->data);
}

/* From @first in steps of one up or down until lift has fallen far enough, the nose stalls or
 * nothing converges any more. */
static void
sweep (Run          *run,
       size_t        first,
       bool          is_up,
       GwPolarTries *tries,
       GwPolar      *out)
{
  const GwPolarCase *polar_case = run->polar_case;
  const double       sign = is_up ? 1.0 : -1.0;
  double             best = -HUGE_VAL, best_alpha = 0.0, past = 0.0;
  int                lost = 0, lost_most = GIVE_UP;

  for (size_t i = first; i < polar_case->n && (lost < lost_most || !isfinite (best));
       i += is_up ? 1 : (size_t) -1)
    {
      const double alpha = gw_polar_alpha (polar_case, i);

      out->is_complete = is_wanted (run);
      if (!out->is_complete)
        return;

      if (!tries->is_done[i])
        {
          tries->is_done[i] = solve_from_good (run, alpha, lost > 0 ? 0 : HALVES, &tries->sums[i]);
          tries->is_tried[i] = true;
        }
      lost = tries->is_done[i] ? 0 : lost + 1;
      if (!tries->is_done[i])
        continue;

      if (tries->sums[i].pressure_rise > PRESSURE_RISE_MAX)
        return;

      if (is_up)
        run->turn = run->good;
      if (is_up && run->is_fresh)
        run->afresh = run->good;
      if (sign * tries->sums[i].cl > best)
        {
          best = sign * tries->sums[i].cl;
          best_alpha = alpha;
          if (is_up)
            run->top = run->good;
        }
      past = sign * (alpha - best_alpha);
      /* The way back is to start from as deep as can be. */
      lost_most = past > FALLEN && !polar_case->with_return ? 1 : GIVE_UP;
      if (polar_case->past > 0.0 && past >= polar_case->past - 1e-9)
        return;
    }
}

/* Two more incidences, half way to the neighbours of the top. */
static void
refine_top (Run     *run,
            GwPolar *out)
{
  const size_t top = gw_polar_extreme (out, 1.0);
  double       alphas[2];
  size_t       count = 0;

  if (top > 0)
    alphas[count++] = 0.5 * (out->rows[top - 1].alpha + out->rows[top].alpha);
  if (top + 1 < out->n)
    alphas[count++] = 0.5 * (out->rows[top + 1].alpha + out->rows[top].alpha);
  else if (top > 0 && out->rows[top].alpha < run->polar_case->alpha_last - 1e-9 &&
           !gw_polar_is_nose_stall (&out->rows[top]))
    alphas[count++] = 1.5 * out->rows[top].alpha - 0.5 * out->rows[top - 1].alpha;

  for (size_t i = 0; run->top.is_ready && i < count && is_wanted (run); i++)
    {
      GwPolarRow row = { .alpha = alphas[i] };

      run->now = run->top;
      out->tried++;
      if (solve (run, row.alpha, &row.sums))
        {
          out->converged++;
          gw_polar_insert (out, &row);
        }
    }
}

/* Back from @turn: while the lift is another than on the way up it is two-valued. */
static void
come_back (Run                *run,
           const GwCoupled    *turn,
           const GwPolarTries *tries,
           GwPolar            *out)
{
  const GwPolarCase *polar_case = run->polar_case;
  int                same = 0;

  if (!turn->is_ready)
    return;

  run->good = *turn;
  for (size_t i = polar_case->n; i-- > 0 && same < 2;)
    {
      const double  alpha = gw_polar_alpha (polar_case, i);
      GwCoupledSums sums;

      if (alpha >= turn->flow.alpha - 1e-9 || !tries->is_done[i])
        continue;
      if (!is_wanted (run))
        {
          out->is_complete = false;
          return;
        }
      run->now = run->good;
      if (!solve (run, alpha, &sums))
        return;

      run->good = run->now;
      if (fabs (sums.cl - tries->sums[i].cl) > APART)
        {
          out->two_valued_to = out->is_two_valued ? fmax (out->two_valued_to, alpha) : alpha;
          out->two_valued_from = out->is_two_valued ? fmin (out->two_valued_from, alpha) : alpha;
          out->is_two_valued = true;
          same = 0;
        }
      else
        same++;
    }
}

/* Incidence at which the layers have it easiest: a little above that of no circulation. */
static double
easy_alpha (const GwPanels *panels)
{
  double round[2] = { 0.0, 0.0 };

  for (int k = 0; k < 2; k++)
    for (size_t i = 0; i + 1 < panels->n; i++)
      round[k] += 0.5 * (panels->basic[k][i] + panels->basic[k][i + 1]) * panels->length[i];

  return EASY - atan2 (round[0], round[1]);
}

static size_t
first_index (const Run *run)
{
  const GwPolarCase *polar_case = run->polar_case;
  const double       step = (polar_case->alpha_last - polar_case->alpha_first) /
                      (double) (polar_case->n - 1);

  return (size_t) fmin (fmax (round ((easy_alpha (&run->panels) - polar_case->alpha_first) / step),
                              0.0),
                        (double) (polar_case->n - 1));
}

GwStatus
gw_polar_run (const GwPolarCase *polar_case,
              GwPolar           *out)
{
  const GwPolar empty = { .is_complete = true };
  GwPolarTries  tries = { .is_done = { false } };
  Run          *run;
  GwStatus      status;
  size_t        first;

  *out = empty;
  if (!is_case_valid (polar_case))
    return GW_EINVAL;

  run = malloc (sizeof *run);
  if (run == NULL)
    return GW_ENOMEM;

  status = run_init (run, polar_case, &out->fault, &out->is_wide);
  if (status == GW_OK)
    {
      run->turn.is_ready = run->top.is_ready = run->afresh.is_ready = false;
      first = first_index (run);
      sweep (run, first, true, &tries, out);
      if (out->is_complete && first > 0)
        {
          /* Down from the first again: one more solution, but no copy kept for it. */
          run->good.is_ready = false;
          tries.is_done[first] = false;
          sweep (run, first, false, &tries, out);
        }
      gw_polar_fill (polar_case, &tries, out);
      if (out->n == 0)
        status = out->is_complete ? GW_ENOCONV : GW_OK;
      else
        {
          if (out->is_complete)
            refine_top (run, out);
          if (out->is_complete && polar_case->with_return)
            {
              come_back (run, &run->turn, &tries, out);
              come_back (run, &run->afresh, &tries, out);
            }
          gw_polar_summarise (out);
        }
    }

  free (run);
  return status;
}

static void
write_nodes (const Run   *run,
             GwPolarNode *nodes)
{
  for (int side = 0; side < 2; side++)
    for (size_t i = 0; i < run->now.count[side]; i++)
      {
        const GwLayerStation *at = &run->now.side[side][i];
        const size_t          node = gw_coupled_node (&run->now, side, i);
        const bool            is_turbulent = i >= run->now.turned[side];
        GwLayerTerms          terms;

        gw_layer_terms (is_turbulent ? GW_LAYER_TURBULENT : GW_LAYER_LAMINAR, run->now.re, at,
                        &terms);
        nodes[node] = (GwPolarNode){
          .x = run->panels.x[node],
          .y = run->panels.y[node],
          .pressure = 1.0 - at->u * at->u,
          .theta = at->theta,
          .dstar = at->dstar,
          .shape = terms.h,
          .friction = 2.0 * terms.friction * at->u * at->u,
          .is_turbulent = is_turbulent,
        };
      }
}

GwStatus
gw_polar_nodes (const GwPolarCase *polar_case,
                double             alpha,
                size_t            *n,
                GwPolarNode       *nodes,
                GwCoupledSums     *sums)
{
  GwPolarFault fault;
  bool         is_wide, is_done = false;
  Run         *run;
  GwStatus     status;

  if (!(polar_case->re >= 3e4 && polar_case->re <= 9e6 && fabs (alpha) < 0.8))
    return GW_EINVAL;
  run = malloc (sizeof *run);
  if (run == NULL)
    return GW_ENOMEM;

  status = run_init (run, polar_case, &fault, &is_wide);
  if (status == GW_OK)
    {
      const double easy = easy_alpha (&run->panels);
      const int    steps = (int) ceil (fabs (alpha - easy) / STRIDE);

      for (int i = 0; i <= steps; i++)
        is_done = solve_from_good (run, steps > 0 ? easy + (alpha - easy) * i / steps : alpha,
                                   HALVES, sums);
      is_done = is_done && sums->pressure_rise <= PRESSURE_RISE_MAX;
      status = is_done ? GW_OK : GW_ENOCONV;
      if (is_done)
        {
          *n = run->panels.n;
          write_nodes (run, nodes);
        }
    }

  free (run);
  return status;
}
