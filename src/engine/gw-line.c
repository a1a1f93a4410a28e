/* gw-line.c - the lifting line itself
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-lift.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

#define N    GW_LINE_N
#define HALF (N / 2)
#define STEP (M_PI / (2 * N)) /* between stations, as an angle */

double
gw_line_eta (int i)
{
  return i == N - 1 ? 0.0 : cos (STEP * (i + 1));
}

double
gw_line_weight (int i)
{
  return STEP * (i == N - 1 ? 0.5 : sin (STEP * (i + 1)));
}

static GwStatus
check_line (const GwLine *line)
{
  if (!(line->span > 0.0 && isfinite (line->span) && line->area > 0.0 && isfinite (line->area)))
    return GW_EINVAL;

  for (int i = 0; i < N; i++)
    if (!(line->chord[i] > 0.0) || !isfinite (line->chord[i]) || !isfinite (line->slope[i]) ||
        !isfinite (line->zero[i]))
      return GW_EINVAL;

  for (int i = 0; i < N; i++)
    if (!(line->slope[i] > 0.0))
      return GW_EDOM;

  return GW_OK;
}

/* What the circulation at station 2 i does at station 2 k + 1; it does nothing two off. */
static void
couple (const double weight[N],
        const double square[N],
        double       b[HALF][HALF])
{
  for (int i = 0; i < HALF; i++)
    for (int k = 0; k < HALF; k++)
      {
        const double own = square[2 * i], other = square[2 * k + 1];

        b[i][k] = weight[2 * i] * weight[2 * k + 1] * (own + other) /
                  (N * (own - other) * (own - other));
      }
}

/* Solves for g = circulation / (span x speed) at the stations: Multhopp's equation
 * with the two halves folded together and each row times its weight, which makes it
 * symmetric,
 *
 *   alpha - zero = g [2 b / (a0 c) + N / (2 sin)] - sum of b_in g_n,
 *
 * where b_in vanishes for even i - n: stations 0, 2, ... follow from those between, and
 * half as many equations, symmetric likewise, are left. g[0] becomes the loading per
 * radian, g[1] that at no angle. */
static bool
solve_circulation (const GwLine *line,
                   const double  weight[N],
                   double        g[2][N])
{
  double          square[N], own[N]; /* of the place; what a station does to itself */
  double          b[HALF][HALF], m[HALF][HALF] = { { 0.0 } }, x[2][HALF];
  gsl_matrix_view matrix = gsl_matrix_view_array (&m[0][0], HALF, HALF);

  for (int i = 0; i < N; i++)
    {
      const double sine = i == N - 1 ? 1.0 : weight[i];

      square[i] = 1.0 - sine * sine;
      own[i] = weight[i] * (2.0 * line->span / (line->slope[i] * line->chord[i]) +
                            N / (2.0 * sine));
      g[0][i] = weight[i];
      g[1][i] = -weight[i] * line->zero[i];
    }
  couple (weight, square, b);

  for (int k = 0; k < HALF; k++)
    {
      m[k][k] = own[2 * k + 1];
      x[0][k] = g[0][2 * k + 1];
      x[1][k] = g[1][2 * k + 1];
    }
  for (int i = 0; i < HALF; i++)
    for (int k = 0; k < HALF; k++)
      {
        const double share = b[i][k] / own[2 * i];

        for (int n = 0; n < HALF; n++)
          m[k][n] -= share * b[i][n];
        x[0][k] += share * g[0][2 * i];
        x[1][k] += share * g[1][2 * i];
      }

  /* Evaluations run in several threads at once, which not every LAPACK bears; GSL does, once it
   * is told to return errors instead of ending the program. */
  gsl_set_error_handler_off ();
  if (gsl_linalg_cholesky_decomp1 (&matrix.matrix) != GSL_SUCCESS)
    return false;

  for (int v = 0; v < 2; v++)
    {
      gsl_vector_view vector = gsl_vector_view_array (x[v], HALF);

      gsl_linalg_cholesky_svx (&matrix.matrix, &vector.vector);
      for (int i = 0; i < HALF; i++)
        {
          for (int k = 0; k < HALF; k++)
            g[v][2 * i] += b[i][k] * x[v][k];
          g[v][2 * i] /= own[2 * i];
          g[v][2 * i + 1] = x[v][i];
        }
    }

  return true;
}

GwStatus
gw_line_solve (GwLine *line)
{
  const GwStatus status = check_line (line);
  const double   ratio = line->span * line->span / line->area;
  double         weight[N], g[2][N];
  double         slope = 0.0, lift_zero = 0.0, drag = 0.0;

  for (int i = 0; i < N; i++)
    weight[i] = gw_line_weight (i) / STEP;
  if (status != GW_OK)
    return status;
  if (!solve_circulation (line, weight, g))
    return GW_EDOM;

  for (int i = 0; i < N; i++)
    {
      const double share = 2.0 * ratio * STEP * weight[i];
      const double induced = 1.0 - 2.0 * line->span * g[0][i] / (line->slope[i] * line->chord[i]);

      slope += share * g[0][i];
      lift_zero += share * g[1][i];
      drag += share * g[0][i] * induced; /* at one radian */
    }

  for (int i = 0; i < N; i++)
    {
      const double per_chord = 2.0 * line->span / line->chord[i];

      line->additional[i] = per_chord * g[0][i] / slope;
      line->basic[i] = per_chord * g[1][i] - lift_zero * line->additional[i];
    }

  line->lift_slope = slope;
  line->alpha_zero = -lift_zero / slope;
  line->delta = M_PI * ratio * drag / (slope * slope) - 1.0;
  return GW_OK;
}
