/* gw-outline-naca.c - outlines from the defining equations of NACA sections
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-outline-private.h"

#include <math.h>
#include <string.h>

#define NOSE 1.1019 /* radius of the nose over the thickness squared, Report 460 */

/* NACA Report 460, p. 4; @data: the thickness. */
static double
four_digits (const void *data,
             double      root)
{
  const double *thickness = data;
  const double  x = root * root;

  return 5.0 * *thickness *
         (0.2969 * root + x * (-0.1260 + x * (-0.3516 + x * (0.2843 - 0.1015 * x))));
}

static double
hump (const void *data,
      double      root)
{
  return _gw_hump_at (data, root);
}

static GwStatus
make (const GwMeanLine *line,
      double            thickness,
      GwOutline        *out)
{
  if (!(thickness >= 0.01 && thickness <= 0.4))
    return GW_EINVAL;

  _gw_outline_wrap (line, four_digits, &thickness, out);
  return GW_OK;
}

GwStatus
gw_outline_naca4 (double     camber,
                  double     place,
                  double     thickness,
                  GwOutline *out)
{
  const GwMeanLine line = { .camber = camber, .place = place };

  if (!(camber >= 0.0 && camber <= 0.095))
    return GW_EINVAL;
  if (camber > 0.0 && !(place >= 0.1 && place <= 0.9))
    return GW_EINVAL;

  return make (&line, thickness, out);
}

/* Report 492, p. 2, for a thickness of 0.2: the slope of each half at the tail by the
 * place of the greatest thickness. */
static GwStatus
make_modified (const GwMeanLine *line,
               double            thickness,
               int               nose,
               int               place,
               GwOutline        *out)
{
  static const double fall[] = { 0.200, 0.234, 0.315, 0.465, 0.700 };
  const double        index = nose / 6.0;
  GwHump              depth;

  if (nose > 8 || place < 2 || place > 6 || !(thickness >= 0.01 && thickness <= 0.4))
    return GW_EINVAL;

  _gw_hump_init (&depth, place / 10.0, 0.5 * thickness, 0.01 * thickness,
                 5.0 * thickness * fall[place - 2],
                 NOSE * thickness * thickness * index * index);
  _gw_outline_wrap (line, hump, &depth, out);
  return GW_OK;
}

/* Report 537, tables of p. 3 (as recalled; the tests hold them against what they were chosen
 * for: the place of the camber, a design lift of 0.3, and for the reflexed ones no moment).
 * The first digit scales the camber, 2 being 0.3. */
static GwStatus
five_digit_line (int         lift,
                 int         place,
                 int         reflex,
                 GwMeanLine *line)
{
  static const double simple[][3] = { { 0.0580, 361.400, 0.0 },
                                      { 0.1260, 51.640, 0.0 },
                                      { 0.2025, 15.957, 0.0 },
                                      { 0.2900, 6.643, 0.0 },
                                      { 0.3910, 3.230, 0.0 } };
  static const double reflexed[][3] = { { 0.1300, 51.990, 0.000764 },
                                        { 0.2170, 15.793, 0.00677 },
                                        { 0.3180, 6.520, 0.0303 },
                                        { 0.4410, 3.191, 0.1355 } };
  const double       *row;

  if (lift < 1 || place < 1 || place > 5 || reflex > 1 || (reflex == 1 && place < 2))
    return GW_EINVAL;

  row = reflex == 1 ? reflexed[place - 2] : simple[place - 1];
  *line = (GwMeanLine){ .r = row[0], .k = row[1] * lift / 2.0, .aft = row[2] };
  return GW_OK;
}

static GwStatus
four_digit_line (int         camber,
                 int         place,
                 GwMeanLine *line)
{
  if (camber > 0 && place == 0)
    return GW_EINVAL;

  *line = (GwMeanLine){ .camber = camber / 100.0, .place = place / 10.0 };
  return GW_OK;
}

/* -1: a letter is among them. */
static int
read_digits (const char *code,
             size_t      n,
             int        *digit)
{
  for (size_t i = 0; i < n; i++)
    {
      if (code[i] < '0' || code[i] > '9')
        return -1;
      digit[i] = code[i] - '0';
    }

  return 0;
}

GwStatus
gw_outline_naca (const char *code,
                 GwOutline  *out)
{
  const char  *dash = strchr (code, '-');
  const size_t n = dash != NULL ? (size_t) (dash - code) : strlen (code);
  int          digit[5], end[2];
  double       thickness;
  GwMeanLine   line;
  GwStatus     status;

  if ((n != 4 && n != 5) || read_digits (code, n, digit) != 0)
    return GW_EINVAL;

  status = n == 4 ? four_digit_line (digit[0], digit[1], &line)
                  : five_digit_line (digit[0], digit[1], digit[2], &line);
  if (status != GW_OK)
    return status;

  thickness = (10 * digit[n - 2] + digit[n - 1]) / 100.0;
  if (dash == NULL)
    return make (&line, thickness, out);
  if (strlen (dash + 1) != 2 || read_digits (dash + 1, 2, end) != 0)
    return GW_EINVAL;
  return make_modified (&line, thickness, end[0], end[1], out);
}
