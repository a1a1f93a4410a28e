/* gw-panel.c - flow without friction about an outline
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-panel-private.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

#define PER_TURN (0.5 / M_PI)
#define CLOSED   1e-4 /* an edge thinner than this is sharp [chords] */

/* A point seen from a panel: t along it from either end, m to the left of it. */
typedef struct
{
  double t1, t2, m;
  double log1, log2; /* of the distances from its ends */
  double length;
} Seen;

static Seen
look (const GwPanels *panels,
      size_t          panel,
      double          x,
      double          y)
{
  const size_t next = panel + 1 < panels->n ? panel + 1 : 0;
  const double length = panels->length[panel];
  const double tx = (panels->x[next] - panels->x[panel]) / length;
  const double ty = (panels->y[next] - panels->y[panel]) / length;
  const double dx = x - panels->x[panel], dy = y - panels->y[panel];
  Seen         seen;

  seen.length = length;
  seen.t1 = dx * tx + dy * ty;
  seen.m = dy * tx - dx * ty;
  seen.t2 = seen.t1 - length;
  /* The floor matters only on a node, where every logarithm is multiplied by zero. */
  seen.log1 = 0.5 * log (fmax (seen.t1 * seen.t1 + seen.m * seen.m, 1e-24));
  seen.log2 = 0.5 * log (fmax (seen.t2 * seen.t2 + seen.m * seen.m, 1e-24));
  return seen;
}

/* The angle under which a panel is seen. */
static double
angle_of (const Seen *seen)
{
  if (fabs (seen->m) < 1e-14)
    return 0.0;
  return atan (seen->t1 / seen->m) - atan (seen->t2 / seen->m);
}

/* Stream function of vortices (clockwise) whose strength falls from one to nothing along
 * the panel, and of those that rise to one: (1 / 2 pi) times the integral of ln r. */
static void
psi_vortex (const Seen *seen,
            double      psi[2])
{
  const double t1 = seen->t1, t2 = seen->t2, m = seen->m;
  const double whole = t1 * seen->log1 - t2 * seen->log2 - seen->length + m * angle_of (seen);
  const double first = 0.5 * (t1 * t1 + m * m) * (seen->log1 - 0.5) -
                       0.5 * (t2 * t2 + m * m) * (seen->log2 - 0.5);
  const double rising = (t1 * whole - first) / seen->length;

  psi[0] = PER_TURN * (whole - rising);
  psi[1] = PER_TURN * rising;
}

/* Stream function of unit sources. Its jump lies along the normal that leaves the outline
 * from the panel, so that no node of the outline meets it. */
static double
psi_source (const Seen *seen)
{
  const double upto1 = seen->t1 * atan2 (seen->t1, seen->m) - seen->m * seen->log1;
  const double upto2 = seen->t2 * atan2 (seen->t2, seen->m) - seen->m * seen->log2;

  return -PER_TURN * (upto1 - upto2);
}

/* Row of the equation "stream function at this node as everywhere": vortices at the nodes. */
static void
fill_row (const GwPanels *panels,
          size_t          node,
          double         *row)
{
  const size_t n = panels->n;

  for (size_t i = 0; i < n; i++)
    row[i] = 0.0;
  for (size_t k = 0; k + 1 < n; k++)
    {
      const Seen seen = look (panels, k, panels->x[node], panels->y[node]);
      double     psi[2];

      psi_vortex (&seen, psi);
      row[k] += psi[0];
      row[k + 1] += psi[1];
    }

  if (panels->gap > CLOSED)
    {
      const Seen seen = look (panels, n - 1, panels->x[node], panels->y[node]);
      double     psi[2], base;

      psi_vortex (&seen, psi);
      base = panels->base_vortex * (psi[0] + psi[1]) + panels->base_source * psi_source (&seen);
      row[0] += 0.5 * base;
      row[n - 1] -= 0.5 * base;
    }
  row[n] = -1.0;
}

static void
fill_equations (GwPanels *panels)
{
  const size_t n = panels->n, wide = n + 1;
  double      *last = &panels->factors[n * wide];

  for (size_t i = 0; i < n; i++)
    fill_row (panels, i, &panels->factors[i * wide]);

  for (size_t i = 0; i <= n; i++)
    last[i] = i == 0 || i == n - 1 ? 1.0 : 0.0;

  /* The two nodes of a sharp edge say the same; the second has the mean speed run out
   * smoothly towards the edge instead. */
  if (panels->gap <= CLOSED)
    {
      double *row = &panels->factors[(n - 1) * wide];

      for (size_t i = 0; i <= n; i++)
        row[i] = 0.0;
      row[0] = row[2] = 1.0;
      row[1] = -2.0;
      row[n - 1] = row[n - 3] = -1.0;
      row[n - 2] = 2.0;
    }
}

bool
gw_panels_solve (const GwPanels *panels,
                 double         *side)
{
  const size_t          wide = panels->n + 1;
  gsl_matrix_const_view matrix = gsl_matrix_const_view_array (panels->factors, wide, wide);
  gsl_vector_view       vector = gsl_vector_view_array (side, wide);
  const gsl_permutation order = { wide, (size_t *) panels->order };

  if (panels->gap <= CLOSED)
    side[panels->n - 1] = 0.0;
  side[panels->n] = 0.0;
  return gsl_linalg_LU_svx (&matrix.matrix, &order, &vector.vector) == GSL_SUCCESS;
}

static bool
solve_basic (GwPanels *panels)
{
  const size_t n = panels->n;
  double       side[GW_PANEL_MAX + 1];

  for (int k = 0; k < 2; k++)
    {
      for (size_t i = 0; i < n; i++)
        side[i] = k == 0 ? -panels->y[i] : panels->x[i];
      if (!gw_panels_solve (panels, side))
        return false;
      for (size_t i = 0; i < n; i++)
        panels->basic[k][i] = side[i];
    }

  for (size_t k = 0; k + 1 < n; k++)
    {
      for (size_t i = 0; i < n; i++)
        {
          const Seen seen = look (panels, k, panels->x[i], panels->y[i]);

          side[i] = -psi_source (&seen);
        }
      if (!gw_panels_solve (panels, side))
        return false;
      for (size_t i = 0; i < n; i++)
        panels->response[i][k] = side[i];
    }

  return true;
}

static bool
measure_edge (GwPanels *panels)
{
  const size_t n = panels->n;
  const double base[] = { panels->x[0] - panels->x[n - 1], panels->y[0] - panels->y[n - 1] };
  const double length = hypot (base[0], base[1]);
  double       sum[] = { 0.0, 0.0 }, size;

  for (int side = 0; side < 2; side++)
    {
      const size_t edge = side == 0 ? 0 : n - 1, before = side == 0 ? 1 : n - 2;

      sum[0] += (panels->x[edge] - panels->x[before]) / panels->length[side == 0 ? 0 : n - 2];
      sum[1] += (panels->y[edge] - panels->y[before]) / panels->length[side == 0 ? 0 : n - 2];
    }
  size = hypot (sum[0], sum[1]);
  if (!(size > 0.0))
    return false;

  panels->bisector[0] = sum[0] / size;
  panels->bisector[1] = sum[1] / size;
  panels->length[n - 1] = length;
  panels->gap = panels->bisector[0] * base[1] - panels->bisector[1] * base[0];
  panels->base_source = panels->base_vortex = 0.0;
  if (panels->gap > CLOSED)
    {
      panels->base_source = panels->gap / length;
      panels->base_vortex = -(panels->bisector[0] * base[0] + panels->bisector[1] * base[1]) /
                            length;
    }

  return panels->gap > -CLOSED;
}

GwStatus
gw_panels_init (GwPanels     *panels,
                size_t        n,
                const double *xy)
{
  double          area = 0.0;
  int             sign;
  gsl_matrix_view matrix;
  gsl_permutation order = { n + 1, panels->order };

  if (n < 20 || n > GW_PANEL_MAX)
    return GW_EINVAL;

  panels->n = n;
  for (size_t i = 0; i < n; i++)
    {
      const size_t next = i + 1 < n ? i + 1 : 0;

      panels->x[i] = xy[2 * i];
      panels->y[i] = xy[2 * i + 1];
      panels->length[i] = hypot (xy[2 * next] - xy[2 * i], xy[2 * next + 1] - xy[2 * i + 1]);
      area += 0.5 * (xy[2 * i] * xy[2 * next + 1] - xy[2 * next] * xy[2 * i + 1]);
      if (!isfinite (panels->length[i]) || (next > 0 && panels->length[i] < 1e-9))
        return GW_EINVAL;
    }
  if (!(area > 1e-6) || !measure_edge (panels))
    return GW_EINVAL;

  gsl_set_error_handler_off ();
  fill_equations (panels);
  matrix = gsl_matrix_view_array (panels->factors, n + 1, n + 1);
  if (gsl_linalg_LU_decomp (&matrix.matrix, &order, &sign) != GSL_SUCCESS ||
      !solve_basic (panels))
    return GW_EDOM;

  for (size_t i = 0; i < n; i++)
    if (!isfinite (panels->basic[0][i]) || !isfinite (panels->basic[1][i]))
      return GW_EDOM;

  return GW_OK;
}

void
gw_panels_velocity (const GwPanels *panels,
                    double          x,
                    double          y,
                    size_t          panel,
                    double          vortex[2][2],
                    double          source[2])
{
  const Seen   seen = look (panels, panel, x, y);
  const size_t next = panel + 1 < panels->n ? panel + 1 : 0;
  const double tx = (panels->x[next] - panels->x[panel]) / seen.length;
  const double ty = (panels->y[next] - panels->y[panel]) / seen.length;
  const double angle = angle_of (&seen), logs = seen.log1 - seen.log2;
  const double whole = seen.t1 * seen.log1 - seen.t2 * seen.log2 - seen.length + seen.m * angle;
  /* Along and to the left of the panel: derivatives of its stream function. */
  const double rising[] = { (seen.t1 * angle - seen.m * logs) / seen.length,
                            -(whole - seen.length * seen.log2) / seen.length };
  const double falling[] = { angle - rising[0], -logs - rising[1] };

  vortex[0][0] = PER_TURN * (falling[0] * tx - falling[1] * ty);
  vortex[0][1] = PER_TURN * (falling[0] * ty + falling[1] * tx);
  vortex[1][0] = PER_TURN * (rising[0] * tx - rising[1] * ty);
  vortex[1][1] = PER_TURN * (rising[0] * ty + rising[1] * tx);
  source[0] = PER_TURN * (logs * tx - angle * ty);
  source[1] = PER_TURN * (logs * ty + angle * tx);
}
