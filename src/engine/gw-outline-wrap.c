/* gw-outline-wrap.c - mean lines, depth curves, and an outline from the two
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-outline-private.h"

#include <math.h>

/* The sides are followed from a little behind the tail (a cambered lower side
 * reaches x = 1 only there) in steps of the square root of the abscissa. */
#define ROOT_END  1.01
#define ROOT_STEP (ROOT_END / 600.0)

/* NACA Report 537, p. 3: a cubic, then straight, or (reflexed) a second cubic. */
static double
five_digits (const GwMeanLine *line,
             double            x,
             double           *slope)
{
  const double r = line->r;
  const double q = 1.0 - r;
  const double c = x < r ? 1.0 : line->aft;
  const double linear = line->aft * q * q * q + r * r * r;

  *slope = line->k / 6.0 * (3.0 * c * (x - r) * (x - r) - linear);
  return line->k / 6.0 * (c * (x - r) * (x - r) * (x - r) - linear * x + r * r * r);
}

/* NACA Report 460, p. 4: two parabolas. */
static double
mean_line (const GwMeanLine *line,
           double            x,
           double           *slope)
{
  const double p = line->place;
  double       q;

  if (line->k > 0.0)
    return five_digits (line, x, slope);

  *slope = 0.0;
  if (!(line->camber > 0.0))
    return 0.0;

  q = x < p ? p * p : (1.0 - p) * (1.0 - p);
  *slope = 2.0 * line->camber / q * (p - x);
  return line->camber / q * (x < p ? x * (2.0 * p - x) : 1.0 - 2.0 * p + x * (2.0 * p - x));
}

typedef struct
{
  const GwMeanLine *line;
  GwHalfDepth       half;
  const void       *data;
  double            sign; /* +1: upper side */
} Side;

/* The point of the side whose foot on the mean line is at @root squared. */
static double
side_point (const Side *side,
            double      root,
            double     *y)
{
  const double x = root * root;
  double       slope;
  const double mean = mean_line (side->line, x, &slope);
  const double scale = side->sign * side->half (side->data, root) / sqrt (1.0 + slope * slope);

  *y = mean + scale;
  return x - scale * slope;
}

/* Reads the side off on the grid, tail to nose, so that the little piece of a cambered
 * upper side that lies ahead of the nose point is left out. */
static void
read_side (const Side *side,
           double      out[GW_OUTLINE_N])
{
  double aft = ROOT_END;
  double y;

  for (size_t i = GW_OUTLINE_N - 1; i > 0; i--)
    {
      const double x = gw_outline_x (i);
      double       fore = aft;

      while (fore > 0.0 && side_point (side, fore, &y) > x)
        {
          aft = fore;
          fore = fmax (fore - ROOT_STEP, 0.0);
        }

      for (int k = 0; k < 40; k++)
        {
          const double middle = 0.5 * (fore + aft);

          if (side_point (side, middle, &y) > x)
            aft = middle;
          else
            fore = middle;
        }

      out[i] = y;
    }

  out[0] = 0.0;
}

void
_gw_outline_wrap (const GwMeanLine *line,
                  GwHalfDepth       half,
                  const void       *data,
                  GwOutline        *out)
{
  read_side (&(Side){ line, half, data, 1.0 }, out->upper);
  read_side (&(Side){ line, half, data, -1.0 }, out->lower);
}

/* Before the crest, with u = x / place: a sqrt (u) + b u + c u^2 + d u^3 has to be the crest
 * at u = 1, level there, and bend as the cubic behind the crest does. */
void
_gw_hump_init (GwHump *hump,
               double  place,
               double  crest,
               double  tail,
               double  fall,
               double  radius)
{
  const double length = 1.0 - place;
  const double drop = crest - tail;
  const double a = sqrt (2.0 * radius * place);
  double       bend, c, d;

  hump->place = place;
  hump->crest = crest;
  hump->aft[1] = fall * length - 2.0 * drop;
  hump->aft[0] = drop - hump->aft[1];

  bend = -2.0 * hump->aft[0] * (place / length) * (place / length);
  d = 0.5 * bend - 0.375 * a + crest;
  c = 0.5 * a - crest - 2.0 * d;
  hump->fore[0] = a;
  hump->fore[1] = crest - a - c - d;
  hump->fore[2] = c;
  hump->fore[3] = d;
}

double
_gw_hump_at (const GwHump *hump,
             double        root)
{
  const double x = root * root;
  const double u = x / hump->place;
  const double v = (x - hump->place) / (1.0 - hump->place);

  if (x < hump->place)
    return hump->fore[0] * sqrt (u) + u * (hump->fore[1] + u * (hump->fore[2] + u * hump->fore[3]));

  return hump->crest - v * v * (hump->aft[0] + v * hump->aft[1]);
}
