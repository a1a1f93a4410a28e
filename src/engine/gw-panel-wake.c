/* gw-panel-wake.c - the wake, and what displacement does to the speed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-panel-private.h"

#include <math.h>

#define PER_TURN (0.5 / M_PI)
#define REACH    1.0 /* length of the wake [chords] */

/* Velocity at a point as sums over the unknowns: one weight a node and one a source panel. */
typedef struct
{
  double node[GW_PANEL_MAX][2];
  double panel[GW_PANEL_MAX][2];
} Weights;

static void
weigh (const GwPanels *panels,
       double          x,
       double          y,
       Weights        *out)
{
  const size_t n = panels->n;

  for (size_t i = 0; i < n; i++)
    out->node[i][0] = out->node[i][1] = 0.0;

  for (size_t k = 0; k < n; k++)
    {
      double vortex[2][2], source[2];

      if (k == n - 1 && panels->base_source <= 0.0)
        break;
      gw_panels_velocity (panels, x, y, k, vortex, source);
      for (int c = 0; c < 2; c++)
        {
          if (k < n - 1)
            {
              out->node[k][c] += vortex[0][c];
              out->node[k + 1][c] += vortex[1][c];
              out->panel[k][c] = source[c];
            }
          else
            {
              const double base = panels->base_source * source[c] +
                                  panels->base_vortex * (vortex[0][c] + vortex[1][c]);

              out->node[0][c] += 0.5 * base;
              out->node[n - 1][c] -= 0.5 * base;
            }
        }
    }
}

static void
velocity_at (const GwPanels *panels,
             const GwFlow   *flow,
             const Weights  *weights,
             double          v[2])
{
  v[0] = cos (flow->alpha);
  v[1] = sin (flow->alpha);
  for (size_t i = 0; i < panels->n; i++)
    for (int c = 0; c < 2; c++)
      v[c] += weights->node[i][c] * flow->speed[i];
}

/* Ratio of steps whose sum is the reach of the wake. */
static double
step_ratio (double first)
{
  double low = 1.0, high = 3.0;

  for (int i = 0; i < 50; i++)
    {
      const double ratio = 0.5 * (low + high);
      const double sum = first * (pow (ratio, GW_WAKE_N - 1) - 1.0) / (ratio - 1.0);

      if (sum < REACH)
        low = ratio;
      else
        high = ratio;
    }

  return 0.5 * (low + high);
}

static void
trace_wake (GwFlow         *flow,
            const GwPanels *panels,
            Weights         weights[GW_WAKE_N])
{
  const size_t n = panels->n;
  const double first = 0.5 * (panels->length[0] + panels->length[n - 2]);
  const double ratio = step_ratio (first);
  double       step = first, along[] = { panels->bisector[0], panels->bisector[1] };

  flow->wake_x[0] = 0.5 * (panels->x[0] + panels->x[n - 1]);
  flow->wake_y[0] = 0.5 * (panels->y[0] + panels->y[n - 1]);
  flow->wake_s[0] = 0.0;

  for (int i = 1; i < GW_WAKE_N; i++)
    {
      double v[2], size;

      flow->wake_x[i] = flow->wake_x[i - 1] + step * along[0];
      flow->wake_y[i] = flow->wake_y[i - 1] + step * along[1];
      flow->wake_s[i] = flow->wake_s[i - 1] + step;
      weigh (panels, flow->wake_x[i], flow->wake_y[i], &weights[i]);
      velocity_at (panels, flow, &weights[i], v);
      size = hypot (v[0], v[1]);
      flow->speed[n + (size_t) i] = v[0] * along[0] + v[1] * along[1];
      if (size > 0.1)
        {
          along[0] = v[0] / size;
          along[1] = v[1] / size;
        }
      step *= ratio;
    }
  flow->speed[n] = 0.5 * (flow->speed[0] - flow->speed[n - 1]);
}

/* Velocity of sources that vary linearly along half a panel, strengths one at the start,
 * or one at the end. */
static void
half_panel (const double a[2],
            const double b[2],
            const double p[2],
            double       falling[2],
            double       rising[2])
{
  const double length = hypot (b[0] - a[0], b[1] - a[1]);
  const double tx = (b[0] - a[0]) / length, ty = (b[1] - a[1]) / length;
  const double t1 = (p[0] - a[0]) * tx + (p[1] - a[1]) * ty, t2 = t1 - length;
  const double m = (p[1] - a[1]) * tx - (p[0] - a[0]) * ty;
  const double logs = 0.5 * log (fmax (t1 * t1 + m * m, 1e-24) / fmax (t2 * t2 + m * m, 1e-24));
  const double angle = fabs (m) < 1e-14 ? 0.0 : atan (t1 / m) - atan (t2 / m);
  const double up[] = { (t1 * logs - length + m * angle) / length,
                        (t1 * angle - m * logs) / length };
  const double down[] = { logs - up[0], angle - up[1] };

  rising[0] = PER_TURN * (up[0] * tx - up[1] * ty);
  rising[1] = PER_TURN * (up[0] * ty + up[1] * tx);
  falling[0] = PER_TURN * (down[0] * tx - down[1] * ty);
  falling[1] = PER_TURN * (down[0] * ty + down[1] * tx);
}

/* Speed along the wake at its own nodes, per unit source on each of its panels. Between the
 * middles of panels the source runs linearly, or the speed at a node would be infinite. */
static void
wake_on_wake (const GwFlow *flow,
              double        speed[GW_WAKE_N][GW_WAKE_N])
{
  for (int i = 1; i < GW_WAKE_N; i++)
    {
      const double p[] = { flow->wake_x[i], flow->wake_y[i] };
      const int    next = i + 1 < GW_WAKE_N ? i + 1 : i;
      const double dx = flow->wake_x[next] - flow->wake_x[i - 1];
      const double dy = flow->wake_y[next] - flow->wake_y[i - 1];
      const double size = hypot (dx, dy);

      for (int k = 0; k < GW_WAKE_N; k++)
        speed[i][k] = 0.0;

      for (int k = 0; k + 1 < GW_WAKE_N; k++)
        {
          const double a[] = { flow->wake_x[k], flow->wake_y[k] };
          const double b[] = { flow->wake_x[k + 1], flow->wake_y[k + 1] };
          const double mid[] = { 0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1]) };
          double       fall[2], rise[2];

          half_panel (a, mid, p, fall, rise);
          speed[i][k] += (rise[0] * dx + rise[1] * dy) / size;
          speed[i][k] += (k > 0 ? 0.5 : 1.0) * (fall[0] * dx + fall[1] * dy) / size;
          if (k > 0)
            speed[i][k - 1] += 0.5 * (fall[0] * dx + fall[1] * dy) / size;

          half_panel (mid, b, p, fall, rise);
          speed[i][k] += (fall[0] * dx + fall[1] * dy) / size;
          if (k + 2 < GW_WAKE_N) /* beyond the last there is none: the source ends at zero */
            {
              speed[i][k] += 0.5 * (rise[0] * dx + rise[1] * dy) / size;
              speed[i][k + 1] += 0.5 * (rise[0] * dx + rise[1] * dy) / size;
            }
        }
    }
}

/* Vortices on the outline that answer a unit source on each panel of the wake. The jump of
 * the source's stream function lies downstream, where no node is. */
static void
wake_on_outline (const GwPanels *panels,
                 const GwFlow   *flow,
                 double          answer[GW_WAKE_N][GW_PANEL_MAX + 1])
{
  for (int k = 0; k + 1 < GW_WAKE_N; k++)
    {
      const double length = flow->wake_s[k + 1] - flow->wake_s[k];
      const double tx = (flow->wake_x[k + 1] - flow->wake_x[k]) / length;
      const double ty = (flow->wake_y[k + 1] - flow->wake_y[k]) / length;

      for (size_t i = 0; i < panels->n; i++)
        {
          const double dx = panels->x[i] - flow->wake_x[k], dy = panels->y[i] - flow->wake_y[k];
          const double a1 = -(dx * tx + dy * ty), a2 = a1 + length;
          const double b = dx * ty - dy * tx;
          const double log1 = 0.5 * log (fmax (a1 * a1 + b * b, 1e-24));
          const double log2 = 0.5 * log (fmax (a2 * a2 + b * b, 1e-24));

          answer[k][i] = -PER_TURN * (a2 * atan2 (b, a2) + b * log2 - a1 * atan2 (b, a1) -
                                      b * log1);
        }
      gw_panels_solve (panels, answer[k]);
    }
}

/* From sources on panels to mass defects at stations: a panel emits the difference of the
 * defects at its ends over its length. */
static void
spread (const double   *source,
        const GwFlow   *flow,
        const GwPanels *panels,
        double         *mass)
{
  const size_t n = panels->n;

  for (size_t j = 0; j < n + GW_WAKE_N; j++)
    mass[j] = 0.0;
  for (size_t k = 0; k + 1 < n; k++)
    {
      mass[k] -= source[k] / panels->length[k];
      mass[k + 1] += source[k] / panels->length[k];
    }
  for (size_t k = 0; k + 1 < GW_WAKE_N; k++)
    {
      const double length = flow->wake_s[k + 1] - flow->wake_s[k];

      mass[n + k] -= source[n + k] / length;
      mass[n + k + 1] += source[n + k] / length;
    }
}

void
gw_flow_init (GwFlow         *flow,
              const GwPanels *panels,
              double          alpha)
{
  const size_t n = panels->n;
  Weights      weights[GW_WAKE_N];
  double       answer[GW_WAKE_N][GW_PANEL_MAX + 1];
  double       own[GW_WAKE_N][GW_WAKE_N];
  double       source[GW_FLOW_MAX] = { 0.0 };

  flow->alpha = alpha;
  for (size_t i = 0; i < n; i++)
    flow->speed[i] = cos (alpha) * panels->basic[0][i] + sin (alpha) * panels->basic[1][i];
  trace_wake (flow, panels, weights);
  wake_on_outline (panels, flow, answer);
  wake_on_wake (flow, own);

  for (size_t i = 0; i < n; i++)
    {
      for (size_t k = 0; k + 1 < n; k++)
        source[k] = panels->response[i][k];
      for (size_t k = 0; k + 1 < GW_WAKE_N; k++)
        source[n + k] = answer[k][i];
      spread (source, flow, panels, flow->mass[i]);
    }

  for (size_t i = 1; i < GW_WAKE_N; i++)
    {
      const size_t next = i + 1 < GW_WAKE_N ? i + 1 : i;
      const double dx = flow->wake_x[next] - flow->wake_x[i - 1];
      const double dy = flow->wake_y[next] - flow->wake_y[i - 1];
      const double along[] = { dx / hypot (dx, dy), dy / hypot (dx, dy) };
      double       node[GW_PANEL_MAX];

      for (size_t k = 0; k < n; k++)
        {
          node[k] = weights[i].node[k][0] * along[0] + weights[i].node[k][1] * along[1];
          source[k] = k + 1 < n ? weights[i].panel[k][0] * along[0] +
                                    weights[i].panel[k][1] * along[1]
                                : 0.0;
        }
      for (size_t k = 0; k + 1 < GW_WAKE_N; k++)
        {
          source[n + k] = own[i][k];
          for (size_t j = 0; j < n; j++)
            source[n + k] += node[j] * answer[k][j];
        }
      for (size_t j = 0; j < n; j++)
        for (size_t k = 0; k + 1 < n; k++)
          source[k] += node[j] * panels->response[j][k];
      spread (source, flow, panels, flow->mass[n + i]);
    }

  for (size_t j = 0; j < n + GW_WAKE_N; j++)
    flow->mass[n][j] = 0.5 * (flow->mass[0][j] - flow->mass[n - 1][j]);
}
