/* test-hand-calculation.c - one option of the demo, worked out as on paper
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

/* The reed-bed aeroplane with its folded wing. All numbers of the study and of the
 * catalogue that count are written out again here, and all steps are done anew by plain
 * means: sums over a table of masses, Simpson's rule along a panel, lifting line by
 * Glauert's series and elimination, stall by trial. Nothing of the engine is called but
 * for the results it is compared with. Masses in [g] and [mm], air and lift in SI. */

#include <gio/gio.h>
#include <math.h>

#include "study/gw-evaluation.h"

#define DEGREE (G_PI / 180.0)

/* ---- 1. Section outlines, of unit chord ---- */

typedef struct
{
  double x, y; /* behind and above the nose */
} Place;

typedef struct
{
  double perimeter, area;
  Place  rim, middle; /* centres of the perimeter and of the area */
} Shape;

/* Sides one by one; area by the triangles between the nose and each side. */
static Shape
polygon (int          n,
         const Place *corner)
{
  Shape s = { 0 };

  for (int i = 0; i < n; i++)
    {
      const Place  a = corner[i], b = corner[(i + 1) % n];
      const double side = hypot (b.x - a.x, b.y - a.y);
      const double triangle = (a.x * b.y - b.x * a.y) / 2.0;

      s.perimeter += side;
      s.rim.x += side * (a.x + b.x) / 2.0;
      s.rim.y += side * (a.y + b.y) / 2.0;
      s.area += triangle;
      s.middle.x += triangle * (a.x + b.x) / 3.0;
      s.middle.y += triangle * (a.y + b.y) / 3.0;
    }
  s.rim = (Place){ s.rim.x / s.perimeter, s.rim.y / s.perimeter };
  s.middle = (Place){ s.middle.x / s.area, s.middle.y / s.area };
  return s;
}

/* Folded sheet: nose 3 % high, fold at 30 % and 10 % high, flat underside. */
static const Place folded[] = { { 0.0, 0.0 }, { 1.0, 0.0 }, { 0.3, 0.10 }, { 0.0, 0.03 } };

/* Plate of 4 %: rounded nose, tapered from 70 % to a tail 1.334 % thick. */
static const Place plate[] = {
  { 0.0, 0.0 },
  { 0.002, -0.00475 },
  { 0.006, -0.0081 },
  { 0.015, -0.01237 },
  { 0.03, -0.01641 },
  { 0.06, -0.01979 },
  { 0.1, -0.02 },
  { 0.7, -0.02 },
  { 1.0, -0.00667 },
  { 1.0, 0.00667 },
  { 0.7, 0.02 },
  { 0.1, 0.02 },
  { 0.06, 0.01979 },
  { 0.03, 0.01641 },
  { 0.015, 0.01237 },
  { 0.006, 0.0081 },
  { 0.002, 0.00475 },
};

/* Height of the folded section at the fraction @x of the chord. */
static double
folded_height (double x)
{
  return x < 0.3 ? 0.03 + (0.10 - 0.03) * x / 0.3 : 0.10 * (1.0 - x) / 0.7;
}

/* ---- 2. Masses [g] and their places aft of the datum [mm] ---- */

typedef struct
{
  double mass, moment;
} Sum;

static void
put (Sum   *sum,
     double mass,
     double x)
{
  sum->mass += mass;
  sum->moment += mass * x;
}

/* All that is simply put somewhere. */
static const struct
{
  const char *what;
  int         number;
  double      mass, x;
} carried[] = {
  { "motor", 1, 104.0, 40.0 },
  { "propeller", 1, 24.6, 14.0 },
  { "controller", 1, 36.8, 92.0 },
  { "battery, moved by this option", 1, 178.0, 155.0 },
  { "camera", 1, 96.0, 345.0 },
  { "receiver", 1, 11.5, 420.0 },
  { "aileron servos", 2, 10.4, 372.0 },
  { "flap servos", 2, 10.4, 368.0 },
  { "elevator servo", 1, 10.6, 520.0 },
  { "rudder servo", 1, 10.3, 520.0 },
  { "position logger", 1, 16.0, 460.0 },
  { "stabiliser", 1, 13.8, 300.0 },
  { "video sender", 1, 32.0, 270.0 },
  { "pushrods", 1, 11.0, 800.0 },
  { "sundries", 1, 28.0, 330.0 },
  { "saddle", 1, 24.0, 375.0 },
  { "deck", 1, 36.0, 180.0 },
  { "main legs, held at 285, axle at 268", 2, 19.5, (285.0 + 268.0) / 2.0 },
  { "main wheels", 2, 13.2, 268.0 },
  { "tail leg, held at 1140, axle at 1158", 1, 3.1, (1140.0 + 1158.0) / 2.0 },
  { "tail wheel", 1, 2.4, 1158.0 },
  { "boom from 470 to 1172", 1, 37.5, (470.0 + 1172.0) / 2.0 },
};

/* A servo's lead of 9 g/m: the straight way to (400, 12, 50) and 60 mm of slack. */
static void
put_leads (Sum   *sum,
           double x,
           double y,
           double z)
{
  const double way = sqrt ((400.0 - x) * (400.0 - x) + (12.0 - y) * (12.0 - y) + (50.0 - z) * (50.0 - z));

  put (sum, 2.0 * 0.009 * (way + 60.0), (x + 400.0) / 2.0);
}

/* One panel of a surface [mm]. */
typedef struct
{
  int    sides;
  double root_x;            /* leading edge of the surface's root */
  double length;            /* along the span, dihedral included */
  double edge[2], chord[2]; /* leading edge aft of the root's; inner and outer end */
  double twist;             /* mean, nose up [rad] */
} Panel;

static double
panel_chord (const Panel *panel,
             double       s)
{
  return panel->chord[0] + (panel->chord[1] - panel->chord[0]) * s / panel->length;
}

/* Where @at of the section lies, @s along the panel: turned by the twist. */
static double
panel_x (const Panel *panel,
         double       s,
         Place        at)
{
  const double edge = panel->edge[0] + (panel->edge[1] - panel->edge[0]) * s / panel->length;

  return panel->root_x + edge + panel_chord (panel, s) * (at.x * cos (panel->twist) + at.y * sin (panel->twist));
}

/* What weighs @rate times chord^@power on each mm from @from to @to, on all sides.
 * Simpson's rule: exact for the straight panel, where mass times arm is a cubic at most. */
static void
put_along (Sum         *sum,
           const Panel *panel,
           double       from,
           double       to,
           double       rate,
           int          power,
           Place        at)
{
  for (int i = 0; i <= 2; i++)
    {
      const double s = from + (to - from) * i / 2.0;
      const double share = (i == 1 ? 4.0 : 1.0) / 6.0 * (to - from);

      put (sum, panel->sides * share * rate * pow (panel_chord (panel, s), power), panel_x (panel, s, at));
    }
}

#define SHEET  314e-6  /* the board at hand [g/mm2] */
#define TAPE   48e-6   /* packing tape [g/mm2] */
#define GLUE   2.5e-3  /* along the folds and strips [g/mm] */
#define JOINT  5e-3    /* adhesive around a joint [g/mm] */
#define HINGE  3e-3    /* [g/mm] */
#define CARBON 1510e-6 /* pultruded [g/mm3] */
#define SPRUCE 420e-6
#define PLATE  40e-6 /* extruded foam sheet of 6 mm, taken as a core [g/mm3] */

static const Panel wing_inner = { 2, 262.0, 500.1690, { 0.0, 0.0 }, { 245.0, 245.0 }, 2.0 * DEGREE };
static const Panel wing_outer = { 2, 262.0, 400.9788, { 0.0, 12.0 }, { 245.0, 215.0 }, 1.25 * DEGREE };

/* Two full-depth strips, spread from 20 to 60 %. */
static const double strip_places[] = { 0.2, 0.6 };

static void
put_folded_panel (Sum         *sum,
                  const Panel *panel)
{
  const Shape  s = polygon (G_N_ELEMENTS (folded), folded);
  const double length = panel->length;
  const double middle = panel_chord (panel, length / 2.0);

  put_along (sum, panel, 0.0, length, (SHEET + TAPE) * s.perimeter, 1, s.rim);
  put_along (sum, panel, 0.0, length, GLUE, 0, (Place){ 0.0, 0.015 });
  put_along (sum, panel, 0.0, length, GLUE, 0, (Place){ 1.0, 0.0 });
  for (guint i = 0; i < G_N_ELEMENTS (strip_places); i++)
    {
      const double height = folded_height (strip_places[i]);
      const Place  at = { strip_places[i], height / 2.0 };

      put_along (sum, panel, 0.0, length, SHEET * height, 1, at);
      put_along (sum, panel, 0.0, length, 2.0 * GLUE, 0, at);
    }
  /* Formers every 300 mm at most, ends left out: one in the middle of 500 or 400 mm. */
  put (sum, panel->sides * SHEET * s.area * middle * middle, panel_x (panel, length / 2.0, s.middle));
}

/* A hinge, and on each side one linkage amidst it. */
static void
put_control (Sum         *sum,
             const Panel *panel,
             double       from,
             double       to,
             Place        hinge,
             double       linkage)
{
  put_along (sum, panel, from, to, HINGE, 0, hinge);
  put (sum, panel->sides * linkage, panel_x (panel, (from + to) / 2.0, hinge));
}

static Sum
wing_masses (void)
{
  const Shape  s = polygon (G_N_ELEMENTS (folded), folded);
  const double tube = CARBON * G_PI / 4.0 * (8.0 * 8.0 - 6.0 * 6.0);
  const Place  tube_at = { 0.28, folded_height (0.28) / 2.0 };
  const double inner = wing_inner.length;
  Sum          sum = { 0 };

  put_folded_panel (&sum, &wing_inner);
  put_folded_panel (&sum, &wing_outer);
  put_along (&sum, &wing_inner, 0.0, inner, tube, 0, tube_at);
  put_along (&sum, &wing_outer, 0.0, 600.0 - inner, tube, 0, tube_at);
  /* Three joints, all at a chord of 245 mm: amidships and where the panels meet. */
  put (&sum, 3.0 * JOINT * s.perimeter * 245.0, panel_x (&wing_inner, inner, s.rim));
  put_control (&sum, &wing_inner, 50.0, 495.0, (Place){ 0.75, folded_height (0.75) / 2.0 }, 3.0);
  put_control (&sum, &wing_outer, 505.0 - inner, 880.0 - inner, (Place){ 0.78, folded_height (0.78) / 2.0 }, 3.0);
  return sum;
}

static void
put_plate (Sum         *sum,
           const Panel *panel)
{
  const Shape s = polygon (G_N_ELEMENTS (plate), plate);

  put_along (sum, panel, 0.0, panel->length, PLATE * s.area, 2, s.middle);
  put_along (sum, panel, 0.0, panel->length, TAPE * s.perimeter, 1, s.rim);
}

/* The strips fill their slots, so the foam of the slots is taken off. */
static void
put_tails (Sum *sum)
{
  const Panel tailplane = { 2, 1012.0, 265.0, { 0.0, 20.0 }, { 145.0, 120.0 }, 0.0 };
  const Panel fin = { 1, 985.0, 215.0, { 0.0, 62.0 }, { 185.0, 115.0 }, 0.0 };

  put_plate (sum, &tailplane);
  put_along (sum, &tailplane, 0.0, 265.0, (CARBON - PLATE) * 0.8 * 5.0, 0, (Place){ 0.35, 0.0 });
  put_control (sum, &tailplane, 8.0, 260.0, (Place){ 0.60, 0.0 }, 4.5);
  put_plate (sum, &fin);
  put_along (sum, &fin, 0.0, 215.0, (SPRUCE - PLATE) * 5.0 * 4.0, 0, (Place){ 0.40, 0.0 });
  put_control (sum, &fin, 5.0, 210.0, (Place){ 0.58, 0.0 }, 8.0);
}

/* Cross-sections of the pod: place, height of the centre, width, height [mm]. */
static const double pod[][4] = {
  { 58.0, 0.0, 54.0, 58.0 },
  { 140.0, 3.0, 74.0, 92.0 },
  { 430.0, 8.0, 74.0, 96.0 },
  { 600.0, 26.0, 34.0, 44.0 },
};

#define POD_SIDES 720

/* Corner @i of the superellipse (2y/w)^10 + (2z/h)^10 = 1 of a cross-section. */
static void
pod_corner (const double *section,
            int           i,
            double        at[3])
{
  const double angle = 2.0 * G_PI * i / POD_SIDES;
  const double r = pow (pow (cos (angle), 10.0) + pow (sin (angle), 10.0), -0.1);

  at[0] = section[0];
  at[1] = section[2] / 2.0 * r * cos (angle);
  at[2] = section[1] + section[3] / 2.0 * r * sin (angle);
}

static void
put_triangle (Sum         *sum,
              double       areal,
              const double a[3],
              const double b[3],
              const double c[3])
{
  const double p[3] = { b[0] - a[0], b[1] - a[1], b[2] - a[2] };
  const double q[3] = { c[0] - a[0], c[1] - a[1], c[2] - a[2] };
  const double n[3] = { p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0] };

  put (sum, areal * sqrt (n[0] * n[0] + n[1] * n[1] + n[2] * n[2]) / 2.0, (a[0] + b[0] + c[0]) / 3.0);
}

/* Light board of 305 g/m2 and 65 % more for formers and glue, flat faces at both ends. */
static void
put_pod (Sum *sum)
{
  const double areal = 305e-6 * 1.65;
  const double front[3] = { pod[0][0], 0.0, pod[0][1] };
  const double back[3] = { pod[3][0], 0.0, pod[3][1] };

  for (int i = 0; i < POD_SIDES; i++)
    {
      double a[3], b[3], c[3], d[3];

      for (int k = 0; k < 3; k++)
        {
          pod_corner (pod[k], i, a);
          pod_corner (pod[k], i + 1, b);
          pod_corner (pod[k + 1], i, c);
          pod_corner (pod[k + 1], i + 1, d);
          put_triangle (sum, areal, a, b, c);
          put_triangle (sum, areal, b, d, c);
          if (k == 0)
            put_triangle (sum, areal, front, a, b);
        }
      put_triangle (sum, areal, back, c, d);
    }
}

static Sum
all_masses (void)
{
  Sum sum = wing_masses ();

  put_tails (&sum);
  put_pod (&sum);
  put_leads (&sum, 372.0, 640.0, 82.0);
  put_leads (&sum, 368.0, 220.0, 66.0);
  for (guint i = 0; i < G_N_ELEMENTS (carried); i++)
    put (&sum, carried[i].number * carried[i].mass, carried[i].x);
  return sum;
}

/* ---- 3. Air: 31 C, 120 m up, 1012 hPa at sea level, 45 % humidity ---- */

#define KELVIN (31.0 + 273.15)

/* Ideal gases, dry air of 28.9655 g/mol and water of 18.0153; saturation pressure after
 * Magnus with the constants of the WMO Guide (No. 8): 0.1 % at the temperatures of a field. */
static double
air_density (void)
{
  const double pressure = 101200.0 * pow (1.0 - 0.0065 * 120.0 / 288.15, 5.2559);
  const double vapour = 0.45 * 611.2 * exp (17.62 * 31.0 / (243.12 + 31.0));

  return ((pressure - vapour) * 0.0289655 + vapour * 0.0180153) / (8.314463 * KELVIN);
}

/* Sutherland's law with the constants of ISO 2533. */
static double
air_viscosity (void)
{
  return 1.458e-6 * pow (KELVIN, 1.5) / (KELVIN + 110.4);
}

/* ---- 4. Lift ---- */

/* Half of a surface by its stations [m], [rad]. */
typedef struct
{
  int    n;
  double root_x, root_z;
  double y[3], edge[3], z[3], chord[3], twist[3];
} Plan;

static const Plan wing = {
  .n = 3,
  .root_x = 0.262,
  .root_z = 0.058,
  .y = { 0.0, 0.5, 0.9 },
  .edge = { 0.0, 0.0, 0.012 },
  .z = { 0.0, 0.013, 0.041 },
  .chord = { 0.245, 0.245, 0.215 },
  .twist = { 2.0 * DEGREE, 2.0 * DEGREE, 0.5 * DEGREE },
};
static const Plan tailplane = {
  .n = 2,
  .root_x = 1.012,
  .root_z = 0.034,
  .y = { 0.0, 0.265 },
  .edge = { 0.0, 0.020 },
  .chord = { 0.145, 0.120 },
};

/* Which panel @y is in. */
static int
plan_panel (const Plan *plan,
            double      y)
{
  return plan->n == 3 && y > plan->y[1] ? 1 : 0;
}

static double
plan_at (const Plan   *plan,
         const double *value,
         double        y)
{
  const int    k = plan_panel (plan, y);
  const double t = (y - plan->y[k]) / (plan->y[k + 1] - plan->y[k]);

  return (1.0 - t) * value[k] + t * value[k + 1];
}

/* The edges of a panel are straight, so it is the rise from tail to nose that changes evenly. */
static double
plan_twist (const Plan *plan,
            double      y)
{
  double rise[3];

  for (int i = 0; i < plan->n; i++)
    rise[i] = plan->chord[i] * sin (plan->twist[i]);
  return asin (plan_at (plan, rise, y) / plan_at (plan, plan->chord, y));
}

static double
plan_quarter (const Plan *plan,
              double      y)
{
  return plan->root_x + plan_at (plan, plan->edge, y) + plan_at (plan, plan->chord, y) / 4.0;
}

static double
plan_cos_dihedral (const Plan *plan,
                   double      y)
{
  const int k = plan_panel (plan, y);

  return cos (atan ((plan->z[k + 1] - plan->z[k]) / (plan->y[k + 1] - plan->y[k])));
}

/* 2 pi, times the cosines of half-chord sweep and dihedral, less for a small aspect ratio. */
static double
plan_section_slope (const Plan *plan,
                    double      y,
                    double      aspect)
{
  const int    k = plan_panel (plan, y);
  const double dy = plan->y[k + 1] - plan->y[k];
  const double dx = plan->edge[k + 1] - plan->edge[k] + (plan->chord[k + 1] - plan->chord[k]) / 2.0;
  const double slope = 2.0 * G_PI * cos (atan (dx / dy)) * plan_cos_dihedral (plan, y);

  return slope / sqrt (1.0 + slope / (G_PI * aspect) * slope / (G_PI * aspect));
}

#define TERMS  24
#define STRIPS 1800 /* midpoints of the angle, for sums along the half span */

/* Glauert's series, circulation 2 b V sum A_n sin (n theta), n = 1, 3, 5 ... */
typedef struct
{
  const Plan *plan;
  double      span, area, mean_chord, aspect;
  double      unit[TERMS];  /* A_n per radian of angle of attack */
  double      still[TERMS]; /* A_n with the body level: incidence, twist, camber */
  double      slope, level; /* C_L = level + slope x alpha */
  double      centre;       /* aerodynamic centre, aft of the datum */
  double      height;       /* of it above the datum */
  double      cm_zero;      /* about it at zero lift, on the mean chord */
} Line;

static void
eliminate (double matrix[TERMS][TERMS + 2])
{
  for (int k = 0; k < TERMS; k++)
    {
      int best = k;

      for (int i = k + 1; i < TERMS; i++)
        if (fabs (matrix[i][k]) > fabs (matrix[best][k]))
          best = i;
      for (int j = 0; j < TERMS + 2; j++)
        {
          const double held = matrix[k][j];

          matrix[k][j] = matrix[best][j];
          matrix[best][j] = held;
        }
      for (int i = 0; i < TERMS; i++)
        {
          const double factor = matrix[i][k] / matrix[k][k];

          for (int j = k; i != k && j < TERMS + 2; j++)
            matrix[i][j] -= factor * matrix[k][j];
        }
    }
}

/* At each of the places theta = pi i / 2N:
 * sum A_n sin (n theta) (n mu + sin theta) = mu angle sin theta, mu = slope c / (4 b).
 * With dihedral a section feels alpha cos (dihedral) + twist - alpha_zero; that cosine is
 * in the slope already, so it is taken out of twist and alpha_zero. */
static void
line_solve (Line  *line,
            double alpha_zero)
{
  double matrix[TERMS][TERMS + 2];

  for (int i = 0; i < TERMS; i++)
    {
      const double theta = G_PI * (i + 1) / (2.0 * TERMS);
      const double y = line->span / 2.0 * cos (theta);
      const double mu = plan_section_slope (line->plan, y, line->aspect) *
                        plan_at (line->plan, line->plan->chord, y) / (4.0 * line->span);

      for (int j = 0; j < TERMS; j++)
        matrix[i][j] = sin ((2 * j + 1) * theta) * ((2 * j + 1) * mu + sin (theta));
      matrix[i][TERMS] = mu * sin (theta);
      matrix[i][TERMS + 1] = mu * sin (theta) * (plan_twist (line->plan, y) - alpha_zero) /
                             plan_cos_dihedral (line->plan, y);
    }
  eliminate (matrix);
  for (int i = 0; i < TERMS; i++)
    {
      line->unit[i] = matrix[i][TERMS] / matrix[i][i];
      line->still[i] = matrix[i][TERMS + 1] / matrix[i][i];
    }
  line->slope = G_PI * line->aspect * line->unit[0];
  line->level = G_PI * line->aspect * line->still[0];
}

/* Local lift coefficient times chord. */
static double
line_load (const Line   *line,
           const double *terms,
           double        theta)
{
  double sum = 0.0;

  for (int i = 0; i < TERMS; i++)
    sum += terms[i] * sin ((2 * i + 1) * theta);
  return 4.0 * line->span * sum;
}

/* Middle of strip @i as an angle, the strip's width, and its place. */
static double
strip (const Line *line,
       int         i,
       double     *width,
       double     *y)
{
  const double theta = G_PI / 2.0 * (i + 0.5) / STRIPS;

  *y = line->span / 2.0 * cos (theta);
  *width = line->span / 2.0 * sin (theta) * G_PI / 2.0 / STRIPS;
  return theta;
}

/* The aerodynamic centre is that of the load that comes with angle of attack. What turns
 * the surface at zero lift is each section's own moment and the load of the twist. */
static void
line_moments (Line  *line,
              double cm_section)
{
  const Plan  *plan = line->plan;
  const double zero = -line->level / line->slope;
  double       moment = 0.0, width, y;

  for (int i = 0; i < STRIPS; i++)
    {
      const double theta = strip (line, i, &width, &y);
      const double share = 2.0 * width * line_load (line, line->unit, theta) / (line->area * line->slope);
      const double drop = plan_at (plan, plan->chord, y) / 4.0 * sin (plan_twist (plan, y));

      line->centre += share * plan_quarter (plan, y);
      line->height += share * (plan->root_z + plan_at (plan, plan->z, y) - drop);
    }
  for (int i = 0; i < STRIPS; i++)
    {
      const double theta = strip (line, i, &width, &y);
      const double chord = plan_at (plan, plan->chord, y);
      const double basic = line_load (line, line->still, theta) + zero * line_load (line, line->unit, theta);

      moment += 2.0 * width * (cm_section * chord * chord - basic * (plan_quarter (plan, y) - line->centre));
    }
  line->cm_zero = moment / (line->area * line->mean_chord);
}

static Line
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

/* Thin-aerofoil theory for a mean line of two straight parts: half the height of the
 * folded section, so from 1.5 % at the nose up to 5 % at the fold and down to the tail. */
static Line
wing_line (void)
{
  const double fore = (0.05 - 0.015) / 0.3, aft = -0.05 / 0.7;
  const double fold = acos (1.0 - 2.0 * 0.3);
  const double alpha_zero = (fore * (fold - sin (fold)) + aft * (G_PI - fold + sin (fold))) / G_PI;
  const double a1 = 2.0 / G_PI * (fore - aft) * sin (fold);
  const double a2 = 2.0 / G_PI * (fore - aft) * sin (2.0 * fold) / 2.0;

  return line_of (&wing, alpha_zero, -G_PI / 4.0 * (a1 - a2));
}

/* ---- 5. Bodies and tail ---- */

typedef struct
{
  double still, turned; /* moment over dynamic pressure: still a0 + turned (a - a0) [m3] */
} BodyMoment;

static double
body_width (double x)
{
  double width = x > 0.470 && x < 1.172 ? 0.012 * 0.012 : 0.0;

  for (int k = 0; k < 3; k++)
    if (x * 1e3 > pod[k][0] && x * 1e3 <= pod[k + 1][0])
      {
        const double t = (x * 1e3 - pod[k][0]) / (pod[k + 1][0] - pod[k][0]);
        const double w = (pod[k][2] + t * (pod[k + 1][2] - pod[k][2])) * 1e-3;

        width += w * w;
      }
  return width;
}

/* How much the flow at @x turns with the angle of attack. */
static double
flow_turn (const Line *line,
           double      downwash,
           double      tail,
           double      x)
{
  const double chord = wing.chord[0];
  const double ahead = wing.root_x + chord / 4.0 - x;
  const double behind = x - wing.root_x - chord;

  if (ahead > chord / 4.0)
    return 1.0 + line->slope * chord / (4.0 * G_PI * ahead);
  if (behind > 0.0)
    return (1.0 - downwash) * behind / (tail - wing.root_x - chord);
  return 0.0;
}

static BodyMoment
body_moment (const Line *line,
             double      downwash,
             double      tail)
{
  const double step = 2e-4;
  BodyMoment   moment = { 0 };

  for (double x = 0.058 + step / 2.0; x < 1.172; x += step)
    {
      moment.still += G_PI / 2.0 * body_width (x) * step;
      moment.turned += G_PI / 2.0 * body_width (x) * flow_turn (line, downwash, tail, x) * step;
    }
  return moment;
}

/* Datcom 4.4.1 without sweep: 4.44 (K_A K_lambda K_H)^1.19. */
static double
downwash_at (const Line *line,
             double      arm,
             double      height)
{
  const double a = line->aspect, b = line->span;
  const double taper = wing.chord[2] / wing.chord[0];
  const double ka = 1.0 / a - 1.0 / (1.0 + pow (a, 1.7));
  const double kl = (10.0 - 3.0 * taper) / 7.0;
  const double kh = (1.0 - fabs (height) / b) / cbrt (2.0 * arm / b);

  return 4.44 * pow (ka * kl * kh, 1.19);
}

/* ---- 6. The aircraft ---- */

typedef struct
{
  Line       wing, tail;
  double     downwash;
  BodyMoment bodies;
  double     density;
} Aircraft;

static Aircraft
aircraft (void)
{
  Aircraft a = { .wing = wing_line (), .tail = line_of (&tailplane, 0.0, 0.0), .density = air_density () };

  a.downwash = downwash_at (&a.wing, a.tail.centre - a.wing.centre, a.tail.height - a.wing.height);
  a.bodies = body_moment (&a.wing, a.downwash, a.tail.centre);
  return a;
}

/* Greatest lift of the folded section. */
static double
greatest_lift (double re)
{
  static const double row[][2] = { { 25e3, 0.84 }, { 40e3, 0.90 }, { 60e3, 0.95 }, { 80e3, 0.99 }, { 120e3, 1.03 }, { 200e3, 1.07 }, { 400e3, 1.11 }, { 1e6, 1.15 } };

  for (guint i = 1; i < G_N_ELEMENTS (row); i++)
    if (re < row[i][0])
      return row[i - 1][1] +
             (row[i][1] - row[i - 1][1]) * log (re / row[i - 1][0]) / log (row[i][0] / row[i - 1][0]);
  g_assert_not_reached ();
}

/* Body angle at which the first section lets go. */
static double
stall_angle (const Aircraft *a,
             double          speed)
{
  double least = G_PI, width, y;

  for (int i = 0; i < STRIPS; i++)
    {
      const double theta = strip (&a->wing, i, &width, &y);
      const double chord = plan_at (&wing, wing.chord, y);
      const double limit = greatest_lift (a->density * speed * chord / air_viscosity ());

      least = fmin (least, (limit * chord - line_load (&a->wing, a->wing.still, theta)) /
                             line_load (&a->wing, a->wing.unit, theta));
    }
  return least;
}

/* What wing and tail carry together at the stall over dynamic pressure [m2], with the tail's load
 * such that nothing turns about the balance point. */
static double
carried_at (const Aircraft *a,
            double          speed,
            double          balance)
{
  const Line  *line = &a->wing;
  const double alpha = stall_angle (a, speed);
  const double lift = line->area * (line->level + line->slope * alpha);
  const double zero = -line->level / line->slope;
  const double moment = lift * (balance - line->centre) + line->area * line->mean_chord * line->cm_zero +
                        a->bodies.still * zero + a->bodies.turned * (alpha - zero);
  const double tail = moment / (a->tail.centre - balance);

  return lift + tail;
}

static double
stall_speed (const Aircraft *a,
             double          mass,
             double          balance)
{
  double speed = 8.0;

  for (int i = 0; i < 30; i++)
    speed = sqrt (2.0 * mass * 9.80665 / (a->density * carried_at (a, speed, balance)));
  return speed;
}

static double
neutral_point (const Aircraft *a)
{
  const double of_wing = a->wing.area * a->wing.slope;
  const double of_tail = 0.9 * a->tail.area * a->tail.slope * (1.0 - a->downwash);

  return (of_wing * a->wing.centre + of_tail * a->tail.centre - a->bodies.turned) / (of_wing + of_tail);
}

/* ---- 7. The comparison ---- */

static void
compare (const GwResults *results,
         const char      *what,
         GwResultId       id,
         double           by_hand)
{
  g_test_message ("%s: by hand %.6f, engine %.6f, %+.4f %%", what, by_hand, results->value[id],
                  100.0 * (results->value[id] / by_hand - 1.0));
  g_assert_cmpfloat_with_epsilon (results->value[id], by_hand, 1e-3 * fabs (by_hand));
}

static void
test_reed_bed_folded (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "demo", "reed-bed.gramwright", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_load (file, NULL, &error);
  g_autoptr (GwEvaluation) evaluation = NULL;
  const GwResults *results;
  const Aircraft   a = aircraft ();
  const Sum        all = all_masses ();
  const double     mass = all.mass / 1e3, balance = all.moment / all.mass / 1e3;

  g_assert_no_error (error);
  evaluation = gw_evaluation_new (study, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (gw_evaluation_outcome (evaluation, 0)->id, ==, "folded");
  results = &gw_evaluation_outcome (evaluation, 0)->results;

  compare (results, "mass of the wing [kg]", GW_RESULT_WING_MASS, wing_masses ().mass / 1e3);
  compare (results, "mass [kg]", GW_RESULT_MASS, mass);
  compare (results, "balance point [m]", GW_RESULT_BALANCE_X, balance);
  compare (results, "air density [kg/m3]", GW_RESULT_DENSITY, a.density);
  compare (results, "stall speed [m/s]", GW_RESULT_STALL_SPEED, stall_speed (&a, mass, balance));
  compare (results, "mean chord [m]", GW_RESULT_MEAN_CHORD, a.wing.mean_chord);
  compare (results, "neutral point [m]", GW_RESULT_NEUTRAL_POINT, neutral_point (&a));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/hand-calculation/reed-bed-folded", test_reed_bed_folded);

  return g_test_run ();
}
