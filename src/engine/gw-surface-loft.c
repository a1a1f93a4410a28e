/* gw-surface-loft.c - skin and volume of one panel
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-surface.h"

#include <math.h>

#define RING (2 * GW_OUTLINE_N) /* corners: tail, upper side, nose, lower side */

/* Twist warps the skin, which flat triangles follow in strips of at most this [rad]: area
 * then within 0.02 %. A change of section warps it too; two strips keep that as near. */
#define STRIP_TWIST 0.05
#define STRIPS_MOST 12

/* Corners of a slice, from the apex. */
static void
ring_of (const GwSlice *slice,
         const double   apex[3],
         double         ring[RING][3])
{
  GwOutline outline;
  double    origin[3], along[3], across[3];

  gw_slice_outline (slice, &outline);
  gw_slice_place (slice, 0.0, 0.0, origin);
  gw_slice_place (slice, 1.0, 0.0, along);
  gw_slice_place (slice, 0.0, 1.0, across);

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double x = gw_outline_x (i);
      double      *upper = ring[GW_OUTLINE_N - 1 - i];
      double      *lower = ring[GW_OUTLINE_N + i];

      for (int k = 0; k < 3; k++)
        {
          const double foot = origin[k] - apex[k] + x * (along[k] - origin[k]);

          upper[k] = foot + outline.upper[i] * (across[k] - origin[k]);
          lower[k] = foot + outline.lower[i] * (across[k] - origin[k]);
        }
    }
}

/* One strip of the span, between two cuts through the straight lines of the panel. Upper
 * and lower side are split along the same diagonal, so that what the flat triangles of
 * a warped skin leave out above is taken in below. */
static void
add_strip (double     inner[RING][3],
           double     outer[RING][3],
           double     from,
           double     to,
           GwMoments *skin,
           GwMoments *volume)
{
  double p[2][2][3]; /* previous and present corner, at both cuts */

  for (size_t i = 0; i <= RING; i++)
    {
      const size_t j = i < RING ? i : 0;
      double (*was)[3] = p[1 - i % 2];
      double (*is)[3] = p[i % 2];

      for (int k = 0; k < 3; k++)
        {
          const double d = outer[j][k] - inner[j][k];

          is[0][k] = inner[j][k] + from * d;
          is[1][k] = inner[j][k] + to * d;
        }
      if (i == 0)
        continue;

      if (i < GW_OUTLINE_N)
        {
          gw_moments_facet (was[0], was[1], is[1], skin, volume);
          gw_moments_facet (was[0], is[1], is[0], skin, volume);
        }
      else
        {
          gw_moments_facet (was[0], was[1], is[0], skin, volume);
          gw_moments_facet (was[1], is[1], is[0], skin, volume);
        }
    }
}

/* The cone from the apex over the outer face. (The inner face holds the apex.) */
static void
add_end (const GwSlice *slice,
         const double   apex[3],
         double         height,
         GwMoments     *volume)
{
  const double back[] = { -apex[0], -apex[1], -apex[2] };
  GwMoments    face;

  gw_slice_face (slice, &face);
  gw_moments_shift (&face, back);
  volume->total += height / 3.0 * face.total;
  for (int i = 0; i < 3; i++)
    volume->first[i] += height / 4.0 * face.first[i];
  for (int i = 0; i < 6; i++)
    volume->second[i] += height / 5.0 * face.second[i];
}

static void
planform (const GwSlice *inner,
          const GwSlice *outer,
          GwMoments     *out)
{
  GwMoments part;
  double    tail[2][3];

  gw_slice_place (inner, 1.0, 0.0, tail[0]);
  gw_slice_place (outer, 1.0, 0.0, tail[1]);
  gw_moments_triangle (inner->at, tail[0], tail[1], out);
  gw_moments_triangle (inner->at, tail[1], outer->at, &part);
  gw_moments_add (out, &part, 1.0);
}

GwStatus
gw_surface_loft (const GwSurface *surface,
                 size_t           panel,
                 GwLoft          *out)
{
  GwSlice inner, outer;
  double  ring[2][RING][3];
  int     strips;

  *out = (GwLoft){ 0 };
  if (panel + 1 >= surface->n_stations || gw_surface_check (surface) != GW_OK)
    return GW_EINVAL;

  gw_panel_slice (surface, panel, 0.0, &inner);
  gw_panel_slice (surface, panel, 1.0, &outer);
  ring_of (&inner, inner.at, ring[0]);
  ring_of (&outer, inner.at, ring[1]);

  strips = 1 + (int) fmin (fabs (outer.twist - inner.twist) / STRIP_TWIST, STRIPS_MOST - 2);
  if (outer.outer != inner.inner)
    strips++;
  for (int i = 0; i < strips; i++)
    add_strip (ring[0], ring[1], (double) i / strips, (double) (i + 1) / strips,
               &out->skin, &out->volume);

  out->length = gw_surface_arc (surface, panel + 1) - gw_surface_arc (surface, panel);
  add_end (&outer, inner.at, out->length, &out->volume);
  gw_moments_shift (&out->skin, inner.at);
  gw_moments_shift (&out->volume, inner.at);
  planform (&inner, &outer, &out->chordwise);
  return GW_OK;
}
