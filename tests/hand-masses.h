/* hand-masses.h - the masses of the hand calculation, in g and mm
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>
#include <math.h>

#define DEGREE (G_PI / 180.0)

#define SHEET  314e-6  /* the board at hand [g/mm2] */
#define TAPE   48e-6   /* packing tape [g/mm2] */
#define POD    305e-6  /* light board [g/mm2] */
#define GLUE   2.5e-3  /* along folds and strips [g/mm] */
#define JOINT  5e-3    /* adhesive around a joint [g/mm] */
#define HINGE  3e-3    /* [g/mm] */
#define LEAD   9e-3    /* of a servo [g/mm] */
#define PLATE  40e-6   /* extruded foam sheet, by volume [g/mm3] */
#define CARBON 1510e-6 /* pultruded [g/mm3] */
#define SPRUCE 420e-6  /* [g/mm3] */

/* The sum of masses, and of masses times arm aft of the datum. */
typedef struct
{
  double mass, moment;
} Sum;

static inline void
put (Sum   *sum,
     double mass,
     double x)
{
  sum->mass += mass;
  sum->moment += mass * x;
}

/* ---- What is simply put somewhere ---- */

static const struct
{
  const char *what;
  int         number;
  double      mass, x;
} carried[] = {
  { "motor", 1, 104.0, 40.0 },
  { "propeller", 1, 24.6, 14.0 },
  { "controller", 1, 36.8, 92.0 },
  { "battery, where this option has it", 1, 178.0, 155.0 },
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
  { "main legs, from 285 to 268", 2, 19.5, 276.5 },
  { "main wheels", 2, 13.2, 268.0 },
  { "tail leg, from 1140 to 1158", 1, 3.1, 1149.0 },
  { "tail wheel", 1, 2.4, 1158.0 },
  { "boom, from 470 to 1172", 1, 37.5, 821.0 },
};

static inline double
distance (const double a[3],
          const double b[3])
{
  return sqrt (pow (a[0] - b[0], 2.0) + pow (a[1] - b[1], 2.0) + pow (a[2] - b[2], 2.0));
}

/* The lead of a wing servo, on both sides: the straight way and 60 mm of slack. */
static inline void
put_leads (Sum         *sum,
           const double servo[3])
{
  static const double to[3] = { 400.0, 12.0, 50.0 };

  put (sum, 2.0 * LEAD * (distance (servo, to) + 60.0), (servo[0] + to[0]) / 2.0);
}

/* ---- Section outlines, of unit chord ---- */

typedef struct
{
  double x, y; /* behind and above the nose */
} Place;

typedef struct
{
  double perimeter, area;
  Place  rim, middle; /* centres of the perimeter and of the area */
} Shape;

/* Side by side; area by the triangles between the nose and each side. */
static inline Shape
polygon (guint        n,
         const Place *corner)
{
  Shape s = { 0 };

  for (guint i = 0; i < n; i++)
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
static inline Shape
folded_section (void)
{
  static const Place corner[] = { { 0.0, 0.0 }, { 1.0, 0.0 }, { 0.3, 0.10 }, { 0.0, 0.03 } };

  return polygon (G_N_ELEMENTS (corner), corner);
}

static inline double
folded_height (double x)
{
  return x < 0.3 ? 0.03 + (0.10 - 0.03) * x / 0.3 : 0.10 * (1.0 - x) / (1.0 - 0.3);
}

/* Half its height at @x of the chord. */
static inline Place
folded_inside (double x)
{
  return (Place){ x, folded_height (x) / 2.0 };
}

/* Plate of 4 %: rounded nose, tapered from 70 % to a tail 1.334 % thick. Straight lines
 * between its points: 0.1 % of the area less than the rounded nose has. */
static inline Shape
plate_section (void)
{
  static const double half[][2] = {
    { 0.0, 0.0 },
    { 0.002, 0.00475 },
    { 0.006, 0.0081 },
    { 0.015, 0.01237 },
    { 0.03, 0.01641 },
    { 0.06, 0.01979 },
    { 0.1, 0.02 },
    { 0.7, 0.02 },
    { 1.0, 0.00667 },
  };
  const guint n = G_N_ELEMENTS (half);
  Place       corner[2 * G_N_ELEMENTS (half)];

  for (guint i = 0; i < n; i++)
    {
      corner[i] = (Place){ half[i][0], -half[i][1] };
      corner[2 * n - 1 - i] = (Place){ half[i][0], half[i][1] };
    }
  return polygon (2 * n, corner);
}

/* ---- Wing and tails, panel by panel ---- */

typedef struct
{
  double sides;
  double root_x;            /* leading edge of the root of the surface */
  double length;            /* along the span, dihedral included */
  double edge[2], chord[2]; /* at both ends; leading edge aft of the root's */
  double twist;             /* mean, nose up [rad] */
} Panel;

/* Root to 500 mm, which rises by 13, and on to 900 mm, which rises by another 28. */
static const Panel inner = { 2.0, 262.0, 500.169, { 0.0, 0.0 }, { 245.0, 245.0 }, 2.0 * DEGREE };
static const Panel outer = { 2.0, 262.0, 400.979, { 0.0, 12.0 }, { 245.0, 215.0 }, 1.25 * DEGREE };
static const Panel stabiliser = { 2.0, 1012.0, 265.0, { 0.0, 20.0 }, { 145.0, 120.0 }, 0.0 };
static const Panel fin = { 1.0, 985.0, 215.0, { 0.0, 62.0 }, { 185.0, 115.0 }, 0.0 };

static inline double
panel_chord (const Panel *panel,
             double       s)
{
  return panel->chord[0] + (panel->chord[1] - panel->chord[0]) * s / panel->length;
}

/* Where @at of the section @s along the panel lies, turned by the twist. */
static inline double
panel_x (const Panel *panel,
         double       s,
         Place        at)
{
  const double edge = panel->edge[0] + (panel->edge[1] - panel->edge[0]) * s / panel->length;
  const double behind = at.x * cos (panel->twist) + at.y * sin (panel->twist);

  return panel->root_x + edge + panel_chord (panel, s) * behind;
}

/* What weighs @rate times chord^@power on each mm from @from to @to, on all sides.
 * Simpson's rule: exact here, where mass times arm is a cubic at most. */
static inline void
put_along (Sum         *sum,
           const Panel *panel,
           double       from,
           double       to,
           double       rate,
           int          power,
           Place        at)
{
  static const double simpson[3] = { 1.0 / 6.0, 4.0 / 6.0, 1.0 / 6.0 };

  for (int i = 0; i <= 2; i++)
    {
      const double s = from + (to - from) * i / 2.0;
      const double length = panel->sides * (to - from) * simpson[i];

      put (sum, length * rate * pow (panel_chord (panel, s), power), panel_x (panel, s, at));
    }
}

static inline void
put_folded_panel (Sum         *sum,
                  const Panel *panel)
{
  static const double strips[] = { 0.2, 0.6 };
  const Shape         s = folded_section ();
  const double        length = panel->length;
  const double        chord = panel_chord (panel, length / 2.0);

  put_along (sum, panel, 0.0, length, (SHEET + TAPE) * s.perimeter, 1, s.rim);
  put_along (sum, panel, 0.0, length, GLUE, 0, folded_inside (0.0));
  put_along (sum, panel, 0.0, length, GLUE, 0, folded_inside (1.0));
  for (int i = 0; i < 2; i++)
    {
      const Place at = folded_inside (strips[i]);

      put_along (sum, panel, 0.0, length, SHEET * folded_height (strips[i]), 1, at);
      put_along (sum, panel, 0.0, length, 2.0 * GLUE, 0, at);
    }
  /* Formers at most 300 mm apart, none at the ends: one, halfway. */
  put (sum, panel->sides * SHEET * s.area * chord * chord, panel_x (panel, length / 2.0, s.middle));
}

/* A hinge, and on each side one linkage amidst it. */
static inline void
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

static inline Sum
wing_masses (void)
{
  const double tube = CARBON * G_PI / 4.0 * (8.0 * 8.0 - 6.0 * 6.0);
  const double seam = inner.length;
  const Shape  s = folded_section ();
  Sum          sum = { 0 };

  put_folded_panel (&sum, &inner);
  put_folded_panel (&sum, &outer);
  put_along (&sum, &inner, 0.0, seam, tube, 0, folded_inside (0.28));
  put_along (&sum, &outer, 0.0, 600.0 - seam, tube, 0, folded_inside (0.28));
  /* Three joints, each around a section of 245 mm: amidships and where the panels meet. */
  put (&sum, 3.0 * JOINT * s.perimeter * 245.0, panel_x (&inner, 0.0, s.rim));
  put_control (&sum, &inner, 50.0, 495.0, folded_inside (0.75), 3.0);
  put_control (&sum, &outer, 505.0 - seam, 880.0 - seam, folded_inside (0.78), 3.0);
  return sum;
}

/* Foam, tape all over, and a strip of wood or carbon in a slot of its own size. */
static inline void
put_plate (Sum         *sum,
           const Panel *panel,
           double       strip,
           double       strip_place)
{
  const Shape  s = plate_section ();
  const double length = panel->length;

  put_along (sum, panel, 0.0, length, PLATE * s.area, 2, s.middle);
  put_along (sum, panel, 0.0, length, TAPE * s.perimeter, 1, s.rim);
  put_along (sum, panel, 0.0, length, strip, 0, (Place){ strip_place, 0.0 });
}

static inline void
put_tails (Sum *sum)
{
  put_plate (sum, &stabiliser, (CARBON - PLATE) * 0.8 * 5.0, 0.35);
  put_control (sum, &stabiliser, 8.0, 260.0, (Place){ 0.60, 0.0 }, 4.5);
  put_plate (sum, &fin, (SPRUCE - PLATE) * 5.0 * 4.0, 0.40);
  put_control (sum, &fin, 5.0, 210.0, (Place){ 0.58, 0.0 }, 8.0);
}

/* ---- The pod, a skin over four cross-sections ---- */

/* Place, height of the centre, width, height. */
static const double pod[4][4] = {
  { 58.0, 0.0, 54.0, 58.0 },
  { 140.0, 3.0, 74.0, 92.0 },
  { 430.0, 8.0, 74.0, 96.0 },
  { 600.0, 26.0, 34.0, 44.0 },
};

#define POD_CORNERS 720

/* A corner of the cross-section |2 y / width|^10 + |2 z / height|^10 = 1. */
static inline void
pod_corner (const double section[4],
            int          i,
            double       at[3])
{
  const double angle = 2.0 * G_PI * i / POD_CORNERS;
  const double r = pow (pow (cos (angle), 10.0) + pow (sin (angle), 10.0), -0.1);

  at[0] = section[0];
  at[1] = section[2] / 2.0 * r * cos (angle);
  at[2] = section[1] + section[3] / 2.0 * r * sin (angle);
}

/* Its area by its three sides (Heron). */
static inline void
put_triangle (Sum         *sum,
              double       areal,
              const double a[3],
              const double b[3],
              const double c[3])
{
  const double p = distance (a, b), q = distance (b, c), r = distance (c, a);
  const double h = (p + q + r) / 2.0;

  put (sum, areal * sqrt (h * (h - p) * (h - q) * (h - r)), (a[0] + b[0] + c[0]) / 3.0);
}

/* 65 % more for formers and glue; both ends are closed by flat faces. */
static inline void
put_pod (Sum *sum)
{
  const double areal = POD * 1.65;
  const double front[3] = { pod[0][0], 0.0, pod[0][1] };
  const double back[3] = { pod[3][0], 0.0, pod[3][1] };

  for (int i = 0; i < POD_CORNERS; i++)
    {
      double a[4][3], b[4][3];

      for (int k = 0; k < 4; k++)
        {
          pod_corner (pod[k], i, a[k]);
          pod_corner (pod[k], i + 1, b[k]);
        }
      put_triangle (sum, areal, front, a[0], b[0]);
      put_triangle (sum, areal, back, a[3], b[3]);
      for (int k = 0; k < 3; k++)
        {
          put_triangle (sum, areal, a[k], b[k], a[k + 1]);
          put_triangle (sum, areal, b[k], b[k + 1], a[k + 1]);
        }
    }
}

/* ---- All of it ---- */

static inline Sum
all_masses (void)
{
  Sum sum = wing_masses ();

  put_tails (&sum);
  put_pod (&sum);
  put_leads (&sum, (const double[3]){ 372.0, 640.0, 82.0 });
  put_leads (&sum, (const double[3]){ 368.0, 220.0, 66.0 });
  for (guint i = 0; i < G_N_ELEMENTS (carried); i++)
    put (&sum, carried[i].number * carried[i].mass, carried[i].x);
  return sum;
}
