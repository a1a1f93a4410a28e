/* hand-lift.h - lifting line of the hand calculation, in m and rad
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>
#include <math.h>

#define TERMS  24   /* of the series, and places where it is made to fit */
#define STRIPS 1800 /* of the half span, equal steps of the angle */

/* Half of a surface by its stations; edge, z and y from its root. */
typedef struct
{
  int    n;
  double root_x, root_z;
  double y[3], edge[3], z[3], chord[3], twist[3];
} Plan;

/* Circulation 2 b V sum A_n sin (n theta), n = 1, 3, 5 ...; y = b / 2 cos theta. */
typedef struct
{
  const Plan *plan;
  double      span, area, mean_chord, aspect;
  double      unit[TERMS];     /* A_n for one radian of body angle */
  double      level[TERMS];    /* A_n with the body level: incidence, twist, camber */
  double      slope, cl_level; /* C_L = cl_level + slope alpha */
  double      x, z;            /* aerodynamic centre */
  double      cm_zero;         /* about it at zero lift, on the mean chord */
} Line;

static inline int
plan_panel (const Plan *plan,
            double      y)
{
  return plan->n > 2 && y > plan->y[1] ? 1 : 0;
}

static inline double
plan_at (const Plan  *plan,
         const double value[3],
         double       y)
{
  const int    k = plan_panel (plan, y);
  const double t = (y - plan->y[k]) / (plan->y[k + 1] - plan->y[k]);

  return (1.0 - t) * value[k] + t * value[k + 1];
}

static inline double
plan_chord (const Plan *plan,
            double      y)
{
  return plan_at (plan, plan->chord, y);
}

/* The edges of a panel are straight: it is the rise from tail to nose that changes evenly. */
static inline double
plan_twist (const Plan *plan,
            double      y)
{
  double rise[3] = { 0 };

  for (int i = 0; i < plan->n; i++)
    rise[i] = plan->chord[i] * sin (plan->twist[i]);
  return asin (plan_at (plan, rise, y) / plan_chord (plan, y));
}

static inline double
plan_quarter_x (const Plan *plan,
                double      y)
{
  const double back = plan_chord (plan, y) / 4.0 * cos (plan_twist (plan, y));

  return plan->root_x + plan_at (plan, plan->edge, y) + back;
}

static inline double
plan_quarter_z (const Plan *plan,
                double      y)
{
  const double drop = plan_chord (plan, y) / 4.0 * sin (plan_twist (plan, y));

  return plan->root_z + plan_at (plan, plan->z, y) - drop;
}

static inline double
plan_cos_dihedral (const Plan *plan,
                   double      y)
{
  const int k = plan_panel (plan, y);

  return cos (atan ((plan->z[k + 1] - plan->z[k]) / (plan->y[k + 1] - plan->y[k])));
}

/* 2 pi, times the cosines of half-chord sweep and dihedral, less for a small aspect ratio. */
static inline double
plan_section_slope (const Plan *plan,
                    double      y,
                    double      aspect)
{
  const int    k = plan_panel (plan, y);
  const double dy = plan->y[k + 1] - plan->y[k];
  const double dx = plan->edge[k + 1] - plan->edge[k] + (plan->chord[k + 1] - plan->chord[k]) / 2.0;
  const double slope = 2.0 * G_PI * cos (atan (dx / dy)) * plan_cos_dihedral (plan, y);
  const double bound = slope / (G_PI * aspect);

  return slope / sqrt (1.0 + bound * bound);
}

/* Gauss and Jordan, with two right sides: each column is cleared but for its greatest. */
static inline void
eliminate (double m[TERMS][TERMS + 2])
{
  for (int k = 0; k < TERMS; k++)
    {
      int best = k;

      for (int i = k + 1; i < TERMS; i++)
        if (fabs (m[i][k]) > fabs (m[best][k]))
          best = i;
      for (int j = 0; j < TERMS + 2; j++)
        {
          const double held = m[k][j];

          m[k][j] = m[best][j];
          m[best][j] = held;
        }
      for (int i = 0; i < TERMS; i++)
        {
          const double factor = m[i][k] / m[k][k];

          for (int j = k; i != k && j < TERMS + 2; j++)
            m[i][j] -= factor * m[k][j];
        }
    }
}

/* Glauert's equation at the angles pi i / (2 N):
 *   sum A_n sin (n theta) (n mu + sin theta) = mu x angle x sin theta, mu = slope c / (4 b).
 * With dihedral a section feels alpha cos (dihedral) + twist - alpha_zero. That cosine is in
 * the slope already, so twist and alpha_zero are divided by it. */
static inline void
line_solve (Line  *line,
            double alpha_zero)
{
  const Plan *plan = line->plan;
  double      m[TERMS][TERMS + 2];

  for (int i = 0; i < TERMS; i++)
    {
      const double theta = G_PI * (i + 1) / (2.0 * TERMS);
      const double y = line->span / 2.0 * cos (theta);
      const double slope = plan_section_slope (plan, y, line->aspect);
      const double mu = slope * plan_chord (plan, y) / (4.0 * line->span);
      const double fixed = (plan_twist (plan, y) - alpha_zero) / plan_cos_dihedral (plan, y);

      for (int j = 0; j < TERMS; j++)
        m[i][j] = sin ((2 * j + 1) * theta) * ((2 * j + 1) * mu + sin (theta));
      m[i][TERMS] = mu * sin (theta);
      m[i][TERMS + 1] = mu * sin (theta) * fixed;
    }
  eliminate (m);
  for (int i = 0; i < TERMS; i++)
    {
      line->unit[i] = m[i][TERMS] / m[i][i];
      line->level[i] = m[i][TERMS + 1] / m[i][i];
    }
  line->slope = G_PI * line->aspect * line->unit[0];
  line->cl_level = G_PI * line->aspect * line->level[0];
}

/* Local lift coefficient times chord. */
static inline double
line_load (const Line  *line,
           const double terms[TERMS],
           double       theta)
{
  double sum = 0.0;

  for (int i = 0; i < TERMS; i++)
    sum += terms[i] * sin ((2 * i + 1) * theta);
  return 4.0 * line->span * sum;
}

static inline double
strip_angle (int i)
{
  return G_PI / 2.0 * (i + 0.5) / STRIPS;
}

/* Width of a strip and its mirror image. */
static inline double
strip_width (const Line *line,
             int         i)
{
  return line->span * sin (strip_angle (i)) * G_PI / 2.0 / STRIPS;
}

static inline double
strip_y (const Line *line,
         int         i)
{
  return line->span / 2.0 * cos (strip_angle (i));
}

/* The load that comes with angle acts at the aerodynamic centre. What turns the surface at
 * zero lift is each section's own moment, and the load that twist leaves there. */
static inline void
line_moments (Line  *line,
              double cm_section)
{
  const Plan  *plan = line->plan;
  const double zero = -line->cl_level / line->slope;
  double       moment = 0.0;

  for (int i = 0; i < STRIPS; i++)
    {
      const double y = strip_y (line, i), c = plan_chord (plan, y), dy = strip_width (line, i);
      const double unit = line_load (line, line->unit, strip_angle (i));
      const double basic = line_load (line, line->level, strip_angle (i)) + zero * unit;

      line->x += unit * dy * plan_quarter_x (plan, y) / (line->area * line->slope);
      line->z += unit * dy * plan_quarter_z (plan, y) / (line->area * line->slope);
      /* The basic load sums to nothing, so any point will do for its arm. */
      moment += (cm_section * c * c - basic * (plan_quarter_x (plan, y) - plan->root_x)) * dy;
    }
  line->cm_zero = moment / (line->area * line->mean_chord);
}

/* @alpha_zero, @cm_section: of its section. */
static inline Line
line_of (const Plan *plan,
         double      alpha_zero,
         double      cm_section)
{
  Line line = { .plan = plan, .span = 2.0 * plan->y[plan->n - 1] };

  for (int k = 0; k + 1 < plan->n; k++)
    {
      const double a = plan->chord[k], b = plan->chord[k + 1];
      const double width = 2.0 * (plan->y[k + 1] - plan->y[k]);

      line.area += width * (a + b) / 2.0;
      line.mean_chord += width * (a * a + a * b + b * b) / 3.0;
    }
  line.mean_chord /= line.area;
  line.aspect = line.span * line.span / line.area;
  line_solve (&line, alpha_zero);
  line_moments (&line, cm_section);
  return line;
}
