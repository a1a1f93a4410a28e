/* gw-body.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-body.h"

#include <math.h>

/* Corners of half a cross-section, bottom to top: the area of an ellipse comes out
 * 0.03 %, its perimeter 0.01 % short. */
#define RING 73

/* A bay whose ends differ in proportion is warped; it is cut into so many strips. */
#define STRIPS 4

typedef double Ring[RING][3];

static bool
is_size (double value)
{
  return isfinite (value) && value >= 0.0;
}

static GwStatus
check (const GwBody *body)
{
  if (body->n_stations < 2 || !isfinite (body->y))
    return GW_EINVAL;

  for (size_t i = 0; i < body->n_stations; i++)
    {
      const GwBodyStation *s = &body->stations[i];

      if (!isfinite (s->x) || !isfinite (s->z) || !is_size (s->width) || !is_size (s->height) ||
          !isfinite (s->exponent) || !(s->exponent > 0.0))
        return GW_EINVAL;
      if (i > 0 && !(s->x > s[-1].x))
        return GW_EINVAL;
    }

  return GW_OK;
}

/* The starboard half of |2 y / width|^n + |2 z / height|^n = 1, from the apex, which lies
 * at (@apex_x, 0, @apex_z). */
static void
ring_of (const GwBodyStation *s,
         double               apex_x,
         double               apex_z,
         Ring                 out)
{
  const double power = 2.0 / s->exponent;

  for (int i = 0; i < RING; i++)
    {
      const double angle = M_PI * i / (RING - 1);
      const bool   is_end = i == 0 || i == RING - 1;
      const double rise = pow (fabs (cos (angle)), power);

      out[i][0] = s->x - apex_x;
      out[i][1] = is_end ? 0.0 : 0.5 * s->width * pow (sin (angle), power);
      out[i][2] = s->z - apex_z + 0.5 * s->height * (2 * i < RING - 1 ? -rise : rise);
    }
}

static void
add_bay (Ring       fore,
         Ring       aft,
         GwMoments *skin,
         GwMoments *volume)
{
  for (int strip = 0; strip < STRIPS; strip++)
    {
      double p[2][2][3]; /* previous and present corner, at both ends of the strip */

      for (int i = 0; i < RING; i++)
        {
          double (*was)[3] = p[1 - i % 2];
          double (*is)[3] = p[i % 2];

          for (int k = 0; k < 3; k++)
            {
              const double d = (aft[i][k] - fore[i][k]) / STRIPS;

              is[0][k] = fore[i][k] + strip * d;
              is[1][k] = fore[i][k] + (strip + 1) * d;
            }
          if (i == 0)
            continue;

          gw_moments_facet (was[0], is[0], is[1], skin, volume);
          gw_moments_facet (was[0], is[1], was[1], skin, volume);
        }
    }
}

/* A blunt end is closed by a flat face. */
static void
add_end (Ring       ring,
         bool       is_fore,
         GwMoments *skin,
         GwMoments *volume)
{
  const double centre[] = { ring[0][0], 0.0, 0.5 * (ring[0][2] + ring[RING - 1][2]) };

  for (int i = 0; i + 1 < RING; i++)
    gw_moments_facet (centre, ring[is_fore ? i + 1 : i], ring[is_fore ? i : i + 1], skin, volume);
}

GwStatus
gw_body_shape (const GwBody *body,
               GwBodyShape  *out,
               GwMoments    *skin)
{
  const GwBodyStation *first = body->stations;
  const size_t         last = body->n_stations - 1;
  GwMoments            half = { 0 }, volume = { 0 }, other;
  double               square = 0.0;
  Ring                 ring[2];

  if (check (body) != GW_OK)
    return GW_EINVAL;

  ring_of (first, first->x, first->z, ring[0]);
  add_end (ring[0], true, &half, &volume);
  for (size_t i = 1; i <= last; i++)
    {
      const GwBodyStation *s = &first[i];
      const double         w0 = s[-1].width;
      const double         w1 = s->width;

      ring_of (s, first->x, first->z, ring[i % 2]);
      add_bay (ring[1 - i % 2], ring[i % 2], &half, &volume);
      square += (s->x - s[-1].x) * (w0 * w0 + w0 * w1 + w1 * w1) / 3.0;
    }
  add_end (ring[last % 2], false, &half, &volume);

  *out = (GwBodyShape){
    .length = first[last].x - first->x,
    .wetted_area = 2.0 * half.total,
    .volume = 2.0 * volume.total,
    .width_squared_length = square,
  };

  if (skin != NULL)
    {
      const double shift[] = { first->x, body->y, first->z };

      other = half;
      gw_moments_mirror (&other);
      gw_moments_add (&half, &other, 1.0);
      gw_moments_shift (&half, shift);
      *skin = half;
    }

  return GW_OK;
}

/* The station before @x and how far on towards the next; false beyond the ends. */
static bool
find_bay (const GwBody         *body,
          double                x,
          const GwBodyStation **fore,
          double               *t)
{
  for (size_t i = 0; i + 1 < body->n_stations; i++)
    {
      const GwBodyStation *s = &body->stations[i];

      if (x >= s[0].x && x <= s[1].x && s[1].x > s[0].x)
        {
          *fore = s;
          *t = (x - s[0].x) / (s[1].x - s[0].x);
          return true;
        }
    }

  return false;
}

double
gw_body_edge (const GwBody *body,
              double        x,
              bool          is_upper)
{
  const double         sign = is_upper ? 0.5 : -0.5;
  const GwBodyStation *s;
  double               t;

  if (!find_bay (body, x, &s, &t))
    return NAN;

  return (1.0 - t) * (s[0].z + sign * s[0].height) + t * (s[1].z + sign * s[1].height);
}

double
gw_body_half_width (const GwBody *body,
                    double        x)
{
  const GwBodyStation *s;
  double               t;

  if (!find_bay (body, x, &s, &t))
    return 0.0;

  return 0.5 * ((1.0 - t) * s[0].width + t * s[1].width);
}
