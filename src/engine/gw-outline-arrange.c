/* gw-outline-arrange.c - the points of an outline put in order, and what is wrong with them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <stdlib.h>

#include "engine/gw-outline-check.h"

#define FEWEST  9
#define DOUBLES 1e-7  /* of the extent: nearer points are one */
#define GAP     0.15  /* widest trailing edge, in chords */
#define BACK    0.01  /* how far a side may turn back, in chords */
#define TAIL    0.02  /* within which tables may cross, and a blunt edge stands, in chords */
#define NEAR    0.05  /* from either end, where they are told apart, in chords */
#define ROUNDER 3.0   /* times as deep there: the nose */
#define THIN    0.002 /* mean depths, in chords */
#define THICK   0.4

typedef struct
{
  size_t  n;
  double *xy;
  size_t *from; /* which point as given */
} Loop;

/* The line from the middle of the ends to the point farthest from it. */
typedef struct
{
  double x, y; /* middle of the ends */
  double cosine, sine;
  double length;
  size_t far;
} Axis;

static double
distance (const Loop *loop,
          size_t      a,
          size_t      b)
{
  return hypot (loop->xy[2 * a] - loop->xy[2 * b], loop->xy[2 * a + 1] - loop->xy[2 * b + 1]);
}

static void
swap (Loop  *loop,
      size_t a,
      size_t b)
{
  const double x = loop->xy[2 * a], y = loop->xy[2 * a + 1];
  const size_t from = loop->from[a];

  loop->xy[2 * a] = loop->xy[2 * b];
  loop->xy[2 * a + 1] = loop->xy[2 * b + 1];
  loop->from[a] = loop->from[b];
  loop->xy[2 * b] = x;
  loop->xy[2 * b + 1] = y;
  loop->from[b] = from;
}

/* Points @first to before @end. */
static void
reverse (Loop  *loop,
         size_t first,
         size_t end)
{
  while (first + 1 < end)
    swap (loop, first++, --end);
}

static void
remove_point (Loop  *loop,
              size_t at)
{
  for (size_t i = at; i + 1 < loop->n; i++)
    swap (loop, i, i + 1);
  loop->n--;
}

static double
extent_of (const Loop *loop)
{
  double extent = 0.0;

  for (size_t i = 1; i < loop->n; i++)
    extent = fmax (extent, distance (loop, 0, i));

  return extent;
}

static void
drop_doubles (Loop            *loop,
              double           extent,
              GwOutlineReport *report)
{
  size_t kept = 1;

  for (size_t i = 1; i < loop->n; i++)
    if (distance (loop, i, kept - 1) > DOUBLES * extent)
      swap (loop, i, kept++);
    else if (report->n_doubles++ == 0)
      report->first_double = loop->from[i];

  loop->n = kept;
}

/* Two sides begin at one end and end at the other; between them is a step of the length of
 * the chord. The first is turned round. */
static GwOutlineFault
join_sides (Loop            *loop,
            double           extent,
            GwOutlineReport *report)
{
  const double ends = distance (loop, 0, loop->n - 1);
  double       longest = 0.0;
  size_t       part = 0;

  if (ends < 0.5 * extent)
    return GW_OUTLINE_SOUND;

  for (size_t i = 1; i < loop->n; i++)
    if (distance (loop, i - 1, i) > longest)
      {
        longest = distance (loop, i - 1, i);
        part = i;
      }
  if (longest < 0.5 * ends || distance (loop, part, 0) > 0.5 * ends)
    return GW_OUTLINE_ONE_SIDE;

  report->is_two_sides = true;
  reverse (loop, 0, part);
  if (distance (loop, part - 1, part) < DOUBLES * extent)
    remove_point (loop, part);
  return GW_OUTLINE_SOUND;
}

static void
find_axis (const Loop *loop,
           Axis       *axis)
{
  const double *first = loop->xy, *last = &loop->xy[2 * (loop->n - 1)];

  *axis = (Axis){ .x = 0.5 * (first[0] + last[0]), .y = 0.5 * (first[1] + last[1]) };
  for (size_t i = 1; i + 1 < loop->n; i++)
    {
      const double dx = loop->xy[2 * i] - axis->x, dy = loop->xy[2 * i + 1] - axis->y;

      if (hypot (dx, dy) > axis->length)
        {
          axis->far = i;
          axis->length = hypot (dx, dy);
          axis->cosine = dx / axis->length;
          axis->sine = dy / axis->length;
        }
    }
}

/* Along the axis from the ends, and beside it, in its length. */
static void
on_axis (const Loop *loop,
         const Axis *axis,
         size_t      i,
         double     *along,
         double     *beside)
{
  const double dx = loop->xy[2 * i] - axis->x, dy = loop->xy[2 * i + 1] - axis->y;

  *along = (dx * axis->cosine + dy * axis->sine) / axis->length;
  *beside = (dy * axis->cosine - dx * axis->sine) / axis->length;
}

/* How far apart the two sides are at @wanted of the axis. */
static double
depth_at (const Loop *loop,
          const Axis *axis,
          double      wanted)
{
  double low = INFINITY, high = -INFINITY;

  for (size_t i = 1; i < loop->n; i++)
    {
      double a, b, y_a, y_b;

      on_axis (loop, axis, i - 1, &a, &y_a);
      on_axis (loop, axis, i, &b, &y_b);
      if ((a - wanted) * (b - wanted) <= 0.0 && a != b)
        {
          const double y = y_a + (y_b - y_a) * (wanted - a) / (b - a);

          low = fmin (low, y);
          high = fmax (high, y);
        }
    }

  return high > low ? high - low : 0.0;
}

/* Whether the piece from point @i to the next stands across the axis at its far end. */
static bool
is_edge (const Loop *loop,
         const Axis *axis,
         size_t      i)
{
  double a, b, y_a, y_b;

  on_axis (loop, axis, i, &a, &y_a);
  on_axis (loop, axis, i + 1, &b, &y_b);
  return fmin (a, b) > 1.0 - TAIL && fabs (y_b - y_a) > fabs (b - a);
}

/* The loop begins and ends at the nose and shall at the tail: at a blunt edge, or at the
 * farthest point, which is then its first and last. */
static void
start_at_tail (Loop       *loop,
               const Axis *axis)
{
  const size_t far = axis->far;
  size_t       first = far;
  bool         is_blunt = true;

  if (is_edge (loop, axis, far - 1))
    first = far;
  else if (is_edge (loop, axis, far))
    first = far + 1;
  else
    is_blunt = false;

  if (distance (loop, 0, loop->n - 1) < DOUBLES * axis->length)
    loop->n--;
  /* Three turns make a rotation. */
  reverse (loop, 0, first);
  reverse (loop, first, loop->n);
  reverse (loop, 0, loop->n);
  if (!is_blunt)
    {
      loop->xy[2 * loop->n] = loop->xy[0];
      loop->xy[2 * loop->n + 1] = loop->xy[1];
      loop->from[loop->n++] = loop->from[0];
    }
}

static double
area_of (const Loop *loop)
{
  double sum = 0.0;

  for (size_t i = 0; i < loop->n; i++)
    {
      const double *a = &loop->xy[2 * i], *b = &loop->xy[2 * ((i + 1) % loop->n)];

      sum += 0.5 * (a[0] * b[1] - b[0] * a[1]);
    }

  return sum;
}

static void
mirror (Loop *loop)
{
  double low = INFINITY, high = -INFINITY;

  for (size_t i = 0; i < loop->n; i++)
    {
      low = fmin (low, loop->xy[2 * i]);
      high = fmax (high, loop->xy[2 * i]);
    }
  for (size_t i = 0; i < loop->n; i++)
    loop->xy[2 * i] = low + high - loop->xy[2 * i];
}

/* Tail first, nose to the left, the upper side first. */
static void
orient (Loop            *loop,
        Axis            *axis,
        GwOutlineReport *report)
{
  find_axis (loop, axis);
  if (axis->cosine > 0.0)
    {
      report->is_mirrored =
        ROUNDER * depth_at (loop, axis, NEAR) < depth_at (loop, axis, 1.0 - NEAR);
      report->is_from_nose = !report->is_mirrored;
    }

  if (report->is_from_nose)
    start_at_tail (loop, axis);
  if (report->is_mirrored)
    mirror (loop);
  report->is_bottom_first = (area_of (loop) < 0.0) != report->is_from_nose;
  if (area_of (loop) < 0.0)
    reverse (loop, 0, loop->n);
  if (report->is_two_sides) /* which were joined at the end that they were given from */
    report->is_from_nose = !report->is_from_nose;

  find_axis (loop, axis);
  report->chord = axis->length;
  report->turn = atan2 (axis->sine, -axis->cosine);
}

static void
fault (GwOutlineReport *report,
       GwOutlineFault   kind,
       const Loop      *loop,
       size_t           a,
       size_t           b,
       double           amount)
{
  report->fault = kind;
  report->at[0] = loop->from[a] < loop->from[b] ? loop->from[a] : loop->from[b];
  report->at[1] = loop->from[a] < loop->from[b] ? loop->from[b] : loop->from[a];
  report->amount = amount;
}

static void
check_way (const Loop      *loop,
           const Axis      *axis,
           GwOutlineReport *report)
{
  double reached = -INFINITY;
  size_t at = 0;

  for (size_t i = 0; i < loop->n; i++)
    {
      double along, beside;

      on_axis (loop, axis, i, &along, &beside);
      if (i > axis->far)
        along = 2.0 - along;
      if (along < reached - BACK)
        {
          fault (report, GW_OUTLINE_BACK, loop, at, i, reached - along);
          return;
        }
      if (along > reached)
        {
          reached = along;
          at = i;
        }
    }
}

/* Twice the area of the triangle, signed. */
static double
side_of (const double *a,
         const double *b,
         const double *c)
{
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

static bool
do_cross (const double *a,
          const double *b)
{
  if (fmax (a[0], a[2]) < fmin (b[0], b[2]) || fmax (b[0], b[2]) < fmin (a[0], a[2]))
    return false;

  return side_of (a, a + 2, b) * side_of (a, a + 2, b + 2) < 0.0 &&
         side_of (b, b + 2, a) * side_of (b, b + 2, a + 2) < 0.0;
}

static void
check_crossing (const Loop      *loop,
                const Axis      *axis,
                GwOutlineReport *report)
{
  for (size_t i = 0; i + 1 < loop->n; i++)
    for (size_t k = i + 2; k + 1 < loop->n; k++)
      if (do_cross (&loop->xy[2 * i], &loop->xy[2 * k]))
        {
          double along[4], beside;

          on_axis (loop, axis, i, &along[0], &beside);
          on_axis (loop, axis, i + 1, &along[1], &beside);
          on_axis (loop, axis, k, &along[2], &beside);
          on_axis (loop, axis, k + 1, &along[3], &beside);
          if (fmin (fmax (along[0], along[1]), fmax (along[2], along[3])) > TAIL)
            {
              fault (report, GW_OUTLINE_CROSSED, loop, i, k, along[0]);
              return;
            }
        }
}

static void
check (const Loop      *loop,
       const Axis      *axis,
       GwOutlineReport *report)
{
  const double gap = distance (loop, 0, loop->n - 1) / axis->length;
  const double depth = area_of (loop) / (axis->length * axis->length);

  if (gap > GAP)
    fault (report, GW_OUTLINE_OPEN, loop, 0, loop->n - 1, gap);
  if (report->fault == GW_OUTLINE_SOUND)
    check_way (loop, axis, report);
  if (report->fault == GW_OUTLINE_SOUND)
    check_crossing (loop, axis, report);
  if (report->fault == GW_OUTLINE_SOUND && depth < THIN)
    fault (report, GW_OUTLINE_THIN, loop, 0, 0, depth);
  if (report->fault == GW_OUTLINE_SOUND && depth > THICK)
    fault (report, GW_OUTLINE_THICK, loop, 0, 0, depth);
}

static void
arrange (Loop            *loop,
         GwOutlineReport *report)
{
  const double extent = extent_of (loop);
  Axis         axis;

  if (!(extent > 0.0) || !isfinite (extent))
    {
      report->fault = loop->n < FEWEST ? GW_OUTLINE_FEW : GW_OUTLINE_SHORT;
      return;
    }

  drop_doubles (loop, extent, report);
  report->fault = loop->n < FEWEST ? GW_OUTLINE_FEW : join_sides (loop, extent, report);
  if (report->fault != GW_OUTLINE_SOUND)
    return;

  orient (loop, &axis, report);
  check (loop, &axis, report);
}

GwStatus
gw_outline_arrange (size_t           n,
                    const double    *xy,
                    double          *out,
                    size_t          *n_out,
                    GwOutlineReport *report)
{
  Loop loop = { .n = n, .xy = out };

  *report = (GwOutlineReport){ .fault = GW_OUTLINE_FEW };
  if (n == 0)
    return GW_EINVAL;

  loop.from = malloc ((n + 2) * sizeof (size_t));
  if (loop.from == NULL)
    return GW_ENOMEM;

  report->fault = GW_OUTLINE_SOUND;
  for (size_t i = 0; i < n; i++)
    {
      out[2 * i] = xy[2 * i];
      out[2 * i + 1] = xy[2 * i + 1];
      loop.from[i] = i;
    }
  arrange (&loop, report);
  *n_out = loop.n;

  free (loop.from);
  return report->fault == GW_OUTLINE_SOUND ? GW_OK : GW_EINVAL;
}
