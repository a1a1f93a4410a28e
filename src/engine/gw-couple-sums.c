/* gw-couple-sums.c - lift, drag and moment of a solution
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-couple.h"

#include <math.h>

/* Forces per unit pressure coefficient times length, summed anticlockwise: the outline lies
 * to the left, the pressure pushes to the left. */
static void
sum_pressure (const GwCoupled *coupled,
              GwCoupledSums   *out)
{
  const GwPanels *panels = coupled->panels;
  const size_t    n = panels->n;
  double          pressure[GW_PANEL_MAX], fx = 0.0, fy = 0.0, moment = 0.0, least = HUGE_VAL;

  for (int side = 0; side < 2; side++)
    for (size_t i = 0; i < coupled->count[side]; i++)
      pressure[gw_coupled_node (coupled, side, i)] = 1.0 - coupled->side[side][i].u *
                                                             coupled->side[side][i].u;

  for (size_t k = 0; k < n; k++)
    {
      const size_t next = k + 1 < n ? k + 1 : 0;
      const double dx = panels->x[next] - panels->x[k], dy = panels->y[next] - panels->y[k];
      const double p = 0.5 * (pressure[k] + pressure[next]);
      /* The pressure varies along the panel; its middle of force lies off the panel's. */
      const double lean = (pressure[next] - pressure[k]) / 12.0;
      const double x = 0.5 * (panels->x[k] + panels->x[next]) - 0.25;
      const double y = 0.5 * (panels->y[k] + panels->y[next]);

      least = fmin (least, pressure[k]);
      fx -= p * dy;
      fy += p * dx;
      moment -= p * (x * dx + y * dy) + lean * (dx * dx + dy * dy);
    }

  out->cl = fy * cos (coupled->flow.alpha) - fx * sin (coupled->flow.alpha);
  out->cm = moment;
  out->pressure_rise = 0.5 * (pressure[0] + pressure[n - 1]) - least;
}

static double
x_at (const GwCoupled *coupled,
      int              side,
      double           s)
{
  const GwLayerStation *stations = coupled->side[side];

  for (size_t i = 1; i < coupled->count[side]; i++)
    if (stations[i].s >= s)
      {
        const double t = (s - stations[i - 1].s) / (stations[i].s - stations[i - 1].s);
        const double fore = coupled->panels->x[gw_coupled_node (coupled, side, i - 1)];
        const double aft = coupled->panels->x[gw_coupled_node (coupled, side, i)];

        return fmin (fmax (fore + fmax (t, 0.0) * (aft - fore), 0.0), 1.0);
      }

  return 1.0;
}

static void
find_separation (const GwCoupled *coupled,
                 int              side,
                 GwCoupledSums   *out)
{
  const GwLayerStation *stations = coupled->side[side];
  double                last = 1.0;

  out->x_turn[side] = coupled->turned[side] < coupled->count[side]
                        ? x_at (coupled, side, coupled->s_turn[side])
                        : 1.0;
  out->x_separation[side] = out->x_attachment[side] = 1.0;
  for (size_t i = 0; i < coupled->count[side]; i++)
    {
      GwLayerTerms terms;

      gw_layer_terms (i < coupled->turned[side] ? GW_LAYER_LAMINAR : GW_LAYER_TURBULENT,
                      coupled->re, &stations[i], &terms);
      if (i > 0 && (terms.friction < 0.0) != (last < 0.0))
        {
          const double t = last / (last - terms.friction);
          const double s = stations[i - 1].s + t * (stations[i].s - stations[i - 1].s);

          if (terms.friction < 0.0 && out->x_separation[side] >= 1.0)
            out->x_separation[side] = x_at (coupled, side, s);
          out->x_attachment[side] = terms.friction < 0.0 ? 1.0 : x_at (coupled, side, s);
        }
      last = terms.friction;
    }
}

void
gw_coupled_sums (const GwCoupled *coupled,
                 GwCoupledSums   *out)
{
  const GwLayerStation *end = &coupled->wake[GW_WAKE_N - 1];

  sum_pressure (coupled, out);
  out->cd = 2.0 * end->theta * pow (end->u, 0.5 * (5.0 + end->dstar / end->theta));
  for (int side = 0; side < 2; side++)
    find_separation (coupled, side, out);
}
