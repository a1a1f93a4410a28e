/* gw-outline-sheet.c - outlines of what is made of sheet, and of flat-bottomed sections
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-outline-private.h"

#include <math.h>
#include <stdlib.h>

#define PLATE_NOSE  2.0  /* length of the rounded nose of a plate over its thickness */
#define PLATE_TAPER 0.75 /* where a plate begins to be thinned towards its edge */
#define TAIL_FALL   1.64 /* slope at the tail over the mean behind the crest, as four digits */
#define SIDE_POINTS 80

static double
straight (double x,
          double x0,
          double y0,
          double x1,
          double y1)
{
  return y0 + (y1 - y0) * (x - x0) / (x1 - x0);
}

GwStatus
gw_outline_folded_sheet (const GwFoldedOutline *sheet,
                         GwOutline             *out)
{
  const double t = sheet->thickness;
  const double second = sheet->second > 0.0 ? sheet->second : sheet->fold;

  if (!(t >= 0.03 && t <= 0.25 && sheet->fold >= 0.1 && sheet->fold <= 0.6 &&
        sheet->nose >= 0.0 && sheet->nose <= t && sheet->edge >= 0.0 && sheet->edge <= t &&
        second >= sheet->fold && second <= 0.9))
    return GW_EINVAL;

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double x = gw_outline_x (i);

      out->lower[i] = 0.0;
      if (x < sheet->fold)
        out->upper[i] = straight (x, 0.0, sheet->nose, sheet->fold, t);
      else if (x < second)
        out->upper[i] = t;
      else
        out->upper[i] = straight (x, second, t, 1.0, sheet->edge);
    }

  return GW_OK;
}

GwStatus
gw_outline_folded (double     thickness,
                   double     fold,
                   double     flat,
                   GwOutline *out)
{
  const GwFoldedOutline sheet = { .thickness = thickness, .fold = fold, .nose = flat };

  return gw_outline_folded_sheet (&sheet, out);
}

static double
plate_half (const void *data,
            double      root)
{
  const GwPlateOutline *plate = data;
  const double          nose = plate->nose > 0.0 ? plate->nose : PLATE_NOSE * plate->thickness;
  const double          x = root * root;
  const double          u = x / nose;

  if (u < 1.0)
    return 0.5 * plate->thickness * sqrt (u * (2.0 - u));
  if (x > PLATE_TAPER)
    return 0.5 * straight (x, PLATE_TAPER, plate->thickness, 1.0, plate->edge);

  return 0.5 * plate->thickness;
}

GwStatus
gw_outline_plate (const GwPlateOutline *plate,
                  GwOutline            *out)
{
  const GwMeanLine line = { .camber = plate->camber, .place = plate->place };

  if (!(plate->thickness >= 0.005 && plate->thickness <= 0.1 && plate->camber >= 0.0 &&
        plate->camber <= 0.12 && plate->nose >= 0.0 && plate->nose <= 0.3 && plate->edge >= 0.0 &&
        plate->edge <= plate->thickness))
    return GW_EINVAL;
  if (plate->camber > 0.0 && !(plate->place >= 0.2 && plate->place <= 0.8))
    return GW_EINVAL;

  _gw_outline_wrap (&line, plate_half, plate, out);
  return GW_OK;
}

/* From below the nose a quarter of an ellipse, whose length gives its tip that radius. */
static double
bottom (double nose,
        double radius,
        double x)
{
  const double u = x * radius / (nose * nose);

  return u < 1.0 ? nose * (1.0 - sqrt (u * (2.0 - u))) : 0.0;
}

/* The cubic may swing where nose and crest do not go together. */
static bool
is_single_crest (const GwHump *hump)
{
  double former = 0.0;

  for (int i = 1; i <= SIDE_POINTS; i++)
    {
      const double root = sqrt (hump->place) * i / SIDE_POINTS;
      const double height = _gw_hump_at (hump, root);

      if (height < former)
        return false;
      former = height;
    }

  return true;
}

GwStatus
gw_outline_flat_bottomed (const GwFlatOutline *flat,
                          GwOutline           *out)
{
  const double nose = flat->nose;
  double       xy[2 * (2 * SIDE_POINTS + 1)];
  size_t       n = 0;
  GwHump       hump;

  if (!(flat->thickness >= 0.04 && flat->thickness <= 0.25 && flat->place >= 0.15 &&
        flat->place <= 0.6 && nose > 0.0 && nose < 0.7 * flat->thickness && flat->radius > 0.0 &&
        flat->edge >= 0.0 && flat->edge <= 0.5 * flat->thickness &&
        nose * nose / flat->radius <= 0.5))
    return GW_EINVAL;

  _gw_hump_init (&hump, flat->place, flat->thickness - nose, flat->edge - nose,
                 TAIL_FALL * (flat->thickness - flat->edge) / (1.0 - flat->place), flat->radius);
  if (!is_single_crest (&hump))
    return GW_EINVAL;

  for (int i = SIDE_POINTS; i >= -SIDE_POINTS; i--, n++)
    {
      const double root = sin (0.5 * M_PI * abs (i) / SIDE_POINTS);
      const double x = root * root;

      xy[2 * n] = x;
      xy[2 * n + 1] = (i >= 0 ? nose + _gw_hump_at (&hump, root) : bottom (nose, flat->radius, x));
    }

  return gw_outline_points (n, xy, out);
}
