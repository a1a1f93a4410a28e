/* gw-outline-naca.c - outlines from the defining equations of NACA sections
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-outline.h"

#include <math.h>
#include <string.h>

/* The sides are followed from a little behind the tail (a cambered lower side
 * reaches x = 1 only there) in steps of the square root of the abscissa. */
#define ROOT_END  1.01
#define ROOT_STEP (ROOT_END / 600.0)

typedef struct
{
  double thickness;
  double camber, place; /* four digits */
  double r, k;          /* five digits, k > 0: end of the cubic part, its factor */
} Naca;

/* NACA Report 460, p. 4 (two parabolas); Report 537, p. 3 (cubic, then straight). */
static double
mean_line (const Naca *naca,
           double      x,
           double     *slope)
{
  const double r = naca->r;
  const double p = naca->place;

  if (naca->k > 0.0)
    {
      if (x >= r)
        {
          *slope = -naca->k * r * r * r / 6.0;
          return -*slope * (1.0 - x);
        }
      *slope = naca->k / 6.0 * (3.0 * x * x - 6.0 * r * x + r * r * (3.0 - r));
      return naca->k / 6.0 * x * (x * x - 3.0 * r * x + r * r * (3.0 - r));
    }

  if (!(naca->camber > 0.0))
    {
      *slope = 0.0;
      return 0.0;
    }

  if (x < p)
    {
      *slope = 2.0 * naca->camber / (p * p) * (p - x);
      return naca->camber / (p * p) * x * (2.0 * p - x);
    }

  *slope = 2.0 * naca->camber / ((1.0 - p) * (1.0 - p)) * (p - x);
  return naca->camber / ((1.0 - p) * (1.0 - p)) * (1.0 - 2.0 * p + x * (2.0 * p - x));
}

/* The point of one side whose foot on the mean line is at @root squared; @sign +1: upper. */
static double
side_point (const Naca *naca,
            double      root,
            double      sign,
            double     *y)
{
  const double x = root * root;
  const double half = 5.0 * naca->thickness *
                      (0.2969 * root +
                       x * (-0.1260 + x * (-0.3516 + x * (0.2843 - 0.1015 * x))));
  double       slope;
  const double mean = mean_line (naca, x, &slope);
  const double scale = sign * half / sqrt (1.0 + slope * slope);

  *y = mean + scale;
  return x - scale * slope;
}

/* Reads the side off on the grid, tail to nose, so that the little piece of a cambered
 * upper side that lies ahead of the nose point is left out. */
static void
read_side (const Naca *naca,
           double      sign,
           double      side[GW_OUTLINE_N])
{
  double aft = ROOT_END;
  double y;

  for (size_t i = GW_OUTLINE_N - 1; i > 0; i--)
    {
      const double x = gw_outline_x (i);
      double       fore = aft;

      while (fore > 0.0 && side_point (naca, fore, sign, &y) > x)
        {
          aft = fore;
          fore = fmax (fore - ROOT_STEP, 0.0);
        }

      for (int k = 0; k < 40; k++)
        {
          const double middle = 0.5 * (fore + aft);

          if (side_point (naca, middle, sign, &y) > x)
            aft = middle;
          else
            fore = middle;
        }

      side[i] = y;
    }

  side[0] = 0.0;
}

static void
read_sides (const Naca *naca,
            GwOutline  *out)
{
  read_side (naca, 1.0, out->upper);
  read_side (naca, -1.0, out->lower);
}

GwStatus
gw_outline_naca4 (double     camber,
                  double     place,
                  double     thickness,
                  GwOutline *out)
{
  const Naca naca = { .thickness = thickness, .camber = camber, .place = place };

  if (!(camber >= 0.0 && camber <= 0.095 && thickness >= 0.01 && thickness <= 0.4))
    return GW_EINVAL;
  if (camber > 0.0 && !(place >= 0.1 && place <= 0.9))
    return GW_EINVAL;

  read_sides (&naca, out);
  return GW_OK;
}

/* r and k1 for a design lift coefficient of 0.3, NACA Report 537, table of p. 3 (as
 * recalled); the first digit scales it, 2 being 0.3. */
static GwStatus
naca5 (int        lift,
       int        place,
       double     thickness,
       GwOutline *out)
{
  static const double r[] = { 0.0580, 0.1260, 0.2025, 0.2900, 0.3910 };
  static const double k[] = { 361.400, 51.640, 15.957, 6.643, 3.230 };
  Naca                naca = { .thickness = thickness };

  if (lift < 1 || place < 1 || place > 5 || !(thickness >= 0.01 && thickness <= 0.4))
    return GW_EINVAL;

  naca.r = r[place - 1];
  naca.k = k[place - 1] * lift / 2.0;
  read_sides (&naca, out);
  return GW_OK;
}

GwStatus
gw_outline_naca (const char *code,
                 GwOutline  *out)
{
  const size_t n = strlen (code);
  int          digit[5];
  double       thickness;

  if (n != 4 && n != 5)
    return GW_EINVAL;
  for (size_t i = 0; i < n; i++)
    {
      if (code[i] < '0' || code[i] > '9')
        return GW_EINVAL;
      digit[i] = code[i] - '0';
    }

  thickness = (10 * digit[n - 2] + digit[n - 1]) / 100.0;
  if (n == 4)
    return gw_outline_naca4 (digit[0] / 100.0, digit[1] / 10.0, thickness, out);
  if (digit[2] != 0)
    return GW_EINVAL;
  return naca5 (digit[0], digit[1], thickness, out);
}
