/* gw-outline-points.c - an outline from measured or published coordinates
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-outline.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_spline.h>
#include <math.h>
#include <stdlib.h>

#define MIN_POINTS 8     /* left after doubles are dropped */
#define DOUBLES    1e-7  /* of the extent: nearer points are one */
#define AT_NOSE    0.005 /* a point at the origin is the nose if this near to being farthest */
#define CROSSED    5e-4  /* chords by which rounded tables may cross near the tail */

/* The points tail over the upper side to the nose and back, in a frame whose x runs from
 * a point at the nose to the middle of the tail, and splines through them in the length
 * along their chords. (The splines bend with the frame, so the frame is fixed first.) */
typedef struct
{
  size_t      n, nose;
  bool        is_nose_given; /* the table says that this point is the nose */
  double     *s, *x, *y;
  gsl_spline *spline_x, *spline_y;
} Curve;

/* Turns and scales: nose to (0, 0), middle of the tail to (1, 0). */
typedef struct
{
  double nose_x, nose_y;
  double cosine, sine; /* of the chord line, over the chord */
} Frame;

static void
curve_clear (Curve *curve)
{
  if (curve->spline_x != NULL)
    gsl_spline_free (curve->spline_x);
  if (curve->spline_y != NULL)
    gsl_spline_free (curve->spline_y);
  free (curve->s);
}

static void
curve_append (Curve *curve,
              double x,
              double y,
              double extent)
{
  const size_t n = curve->n;

  if (n > 0 && hypot (x - curve->x[n - 1], y - curve->y[n - 1]) < DOUBLES * extent)
    return;

  curve->x[n] = x;
  curve->y[n] = y;
  curve->n++;
}

/* If the last point is as far from the first as any, the two sides were given nose
 * to tail; they part at the longest step, which leads from the tail to the nose. */
static void
curve_collect (Curve        *curve,
               size_t        n,
               const double *xy)
{
  const double ends = hypot (xy[2 * n - 2] - xy[0], xy[2 * n - 1] - xy[1]);
  double       extent = 0.0, longest = 0.0;
  size_t       part = 0; /* index of the first point of the lower side */

  for (size_t i = 1; i < n; i++)
    {
      const double step = hypot (xy[2 * i] - xy[2 * i - 2], xy[2 * i + 1] - xy[2 * i - 1]);

      extent = fmax (extent, hypot (xy[2 * i] - xy[0], xy[2 * i + 1] - xy[1]));
      if (step > longest)
        {
          longest = step;
          part = i;
        }
    }

  if (ends < 0.5 * extent)
    part = 0;
  for (size_t i = part; i > 0; i--)
    curve_append (curve, xy[2 * i - 2], xy[2 * i - 1], extent);
  for (size_t i = part; i < n; i++)
    curve_append (curve, xy[2 * i], xy[2 * i + 1], extent);
}

static GwStatus
frame_init (Frame       *frame,
            const Curve *curve,
            double       nose_x,
            double       nose_y)
{
  const double dx = 0.5 * (curve->x[0] + curve->x[curve->n - 1]) - nose_x;
  const double dy = 0.5 * (curve->y[0] + curve->y[curve->n - 1]) - nose_y;
  const double square = dx * dx + dy * dy;

  if (!(square > 0.0) || !isfinite (square))
    return GW_EINVAL;

  *frame = (Frame){ nose_x, nose_y, dx / square, dy / square };
  return GW_OK;
}

static void
frame_apply (const Frame *frame,
             double      *x,
             double      *y)
{
  const double dx = *x - frame->nose_x;
  const double dy = *y - frame->nose_y;

  *x = dx * frame->cosine + dy * frame->sine;
  *y = dy * frame->cosine - dx * frame->sine;
}

/* The nose is the place farthest from the middle of the tail; a point given at the
 * very origin is taken instead if it is nearly that, since then the table says so:
 * on a cambered NACA section the two differ by a tenth of a degree. */
static GwStatus
curve_level (Curve *curve)
{
  const double tail[] = { 0.5 * (curve->x[0] + curve->x[curve->n - 1]),
                          0.5 * (curve->y[0] + curve->y[curve->n - 1]) };
  double       greatest = 0.0;
  GwStatus     status;
  Frame        frame;

  for (size_t i = 1; i + 1 < curve->n; i++)
    {
      const double distance = hypot (curve->x[i] - tail[0], curve->y[i] - tail[1]);

      if (distance > greatest)
        {
          curve->nose = i;
          greatest = distance;
        }
    }

  for (size_t i = 1; i + 1 < curve->n; i++)
    if (hypot (curve->x[i], curve->y[i]) < DOUBLES * greatest &&
        hypot (tail[0], tail[1]) > (1.0 - AT_NOSE) * greatest)
      {
        curve->nose = i;
        curve->is_nose_given = true;
      }

  status = frame_init (&frame, curve, curve->x[curve->nose], curve->y[curve->nose]);
  for (size_t i = 0; status == GW_OK && i < curve->n; i++)
    frame_apply (&frame, &curve->x[i], &curve->y[i]);

  return status;
}

static GwStatus
curve_init (Curve        *curve,
            size_t        n,
            const double *xy)
{
  GwStatus status;

  *curve = (Curve){ 0 };
  curve->s = malloc (3 * n * sizeof (double));
  if (curve->s == NULL)
    return GW_ENOMEM;

  curve->x = curve->s + n;
  curve->y = curve->x + n;
  curve_collect (curve, n, xy);
  if (curve->n < MIN_POINTS)
    return GW_EINVAL;

  status = curve_level (curve);
  if (status != GW_OK)
    return status;

  curve->s[0] = 0.0;
  for (size_t i = 1; i < curve->n; i++)
    curve->s[i] = curve->s[i - 1] + hypot (curve->x[i] - curve->x[i - 1],
                                           curve->y[i] - curve->y[i - 1]);

  curve->spline_x = gsl_spline_alloc (gsl_interp_akima, curve->n);
  curve->spline_y = gsl_spline_alloc (gsl_interp_akima, curve->n);
  if (curve->spline_x == NULL || curve->spline_y == NULL)
    return GW_ENOMEM;
  if (gsl_spline_init (curve->spline_x, curve->s, curve->x, curve->n) != GSL_SUCCESS ||
      gsl_spline_init (curve->spline_y, curve->s, curve->y, curve->n) != GSL_SUCCESS)
    return GW_EINVAL;

  return GW_OK;
}

static void
curve_at (const Curve *curve,
          double       s,
          double      *x,
          double      *y)
{
  *x = gsl_spline_eval (curve->spline_x, s, NULL);
  *y = gsl_spline_eval (curve->spline_y, s, NULL);
}

static double
tail_distance (const Curve *curve,
               double       s)
{
  double x, y;

  curve_at (curve, s, &x, &y);
  return hypot (x - 1.0, y);
}

/* Golden section between the neighbours of the farthest point. */
static double
find_nose (const Curve *curve)
{
  const double ratio = 0.5 * (sqrt (5.0) - 1.0);
  double       a = curve->s[curve->nose - 1];
  double       b = curve->s[curve->nose + 1];

  if (curve->is_nose_given)
    return curve->s[curve->nose];

  for (int k = 0; k < 60; k++)
    {
      const double left = b - ratio * (b - a);
      const double right = a + ratio * (b - a);

      if (tail_distance (curve, left) > tail_distance (curve, right))
        b = right;
      else
        a = left;
    }

  return 0.5 * (a + b);
}

/* Bisection from the tail; where the tail is slanted the side ends short of x = 1 and
 * its end is taken. */
static void
read_side (const Frame *frame,
           const Curve *curve,
           double       tail_s,
           double       nose_s,
           double       side[GW_OUTLINE_N])
{
  side[0] = 0.0;
  for (size_t i = 1; i < GW_OUTLINE_N; i++)
    {
      const double wanted = gw_outline_x (i);
      double       aft = tail_s;
      double       fore = nose_s;

      for (int k = 0; k < 44; k++)
        {
          const double middle = 0.5 * (aft + fore);
          double       x;

          curve_at (curve, middle, &x, &side[i]);
          frame_apply (frame, &x, &side[i]);
          if (x > wanted)
            aft = middle;
          else
            fore = middle;
        }
    }
}

static GwStatus
read_sides (const Curve *curve,
            GwOutline   *out)
{
  const double nose_s = find_nose (curve);
  double       x, y;
  GwStatus     status;
  Frame        frame;

  curve_at (curve, nose_s, &x, &y);
  status = frame_init (&frame, curve, x, y);
  if (status != GW_OK)
    return status;

  read_side (&frame, curve, 0.0, nose_s, out->upper);
  read_side (&frame, curve, curve->s[curve->n - 1], nose_s, out->lower);
  return GW_OK;
}

static GwStatus
uncross (GwOutline *outline)
{
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double depth = outline->upper[i] - outline->lower[i];

      if (!(depth > -CROSSED))
        return GW_EINVAL;
      if (depth < 0.0)
        {
          outline->upper[i] -= 0.5 * depth;
          outline->lower[i] = outline->upper[i];
        }
    }

  return GW_OK;
}

GwStatus
gw_outline_points (size_t        n,
                   const double *xy,
                   GwOutline    *out)
{
  Curve     curve;
  GwOutline outline;
  GwStatus  status;

  if (n < 9)
    return GW_EINVAL;
  for (size_t i = 0; i < 2 * n; i++)
    if (!isfinite (xy[i]))
      return GW_EINVAL;

  status = curve_init (&curve, n, xy);
  if (status == GW_OK)
    status = read_sides (&curve, &outline);
  if (status == GW_OK)
    status = uncross (&outline);
  if (status == GW_OK)
    *out = outline;

  curve_clear (&curve);
  return status;
}
