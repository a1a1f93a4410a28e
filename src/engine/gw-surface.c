/* gw-surface.c - shape of a lifting surface, and cuts through it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-surface.h"

#include <math.h>

/* A panel between two stations as a plane trapezoid. */
typedef struct
{
  const GwStation *inner, *outer;
  double           dy, dz;
  double           length; /* along the span, without sweep */
} Panel;

static Panel
panel_of (const GwSurface *surface,
          size_t           panel)
{
  const GwStation *inner = &surface->stations[panel];
  const GwStation *outer = inner + 1;
  const double     dy = outer->at[1] - inner->at[1];
  const double     dz = outer->at[2] - inner->at[2];

  return (Panel){ inner, outer, dy, dz, sqrt (dy * dy + dz * dz) };
}

GwStatus
gw_surface_check (const GwSurface *surface)
{
  if (surface->n_stations < 2)
    return GW_EINVAL;

  for (size_t i = 0; i < surface->n_stations; i++)
    {
      const GwStation *station = &surface->stations[i];

      if (!(station->chord > 0.0) || !isfinite (station->chord) || !isfinite (station->twist) ||
          !isfinite (station->at[0]) || !isfinite (station->at[1]) || !isfinite (station->at[2]) ||
          station->section == NULL)
        return GW_EINVAL;
      if (i > 0 && !(panel_of (surface, i - 1).length > GW_PANEL_LEAST))
        return GW_EINVAL;
    }

  return GW_OK;
}

double
gw_surface_arc (const GwSurface *surface,
                size_t           station)
{
  double arc = 0.0;

  for (size_t i = 0; i < station; i++)
    arc += panel_of (surface, i).length;

  return arc;
}

void
gw_panel_slice (const GwSurface *surface,
                size_t           panel,
                double           t,
                GwSlice         *out)
{
  const Panel  p = panel_of (surface, panel);
  const double c0 = (1.0 - t) * p.inner->chord;
  const double c1 = t * p.outer->chord;
  const double along = c0 * cos (p.inner->twist) + c1 * cos (p.outer->twist);
  const double down = c0 * sin (p.inner->twist) + c1 * sin (p.outer->twist);

  for (int i = 0; i < 3; i++)
    out->at[i] = (1.0 - t) * p.inner->at[i] + t * p.outer->at[i];
  out->up[0] = 0.0;
  out->up[1] = -p.dz / p.length;
  out->up[2] = p.dy / p.length;

  /* The chord at the cut joins two straight lines, leading and trailing edge. Lines at
   * any other fraction of the chord are straight too, so the outlines blend by their
   * share of the local chord, not of the span. */
  out->chord = sqrt (along * along + down * down);
  out->twist = atan2 (down, along);
  out->mix = c1 / (c0 + c1);
  out->inner = p.inner->section;
  out->outer = p.outer->section;
  out->finish = surface->builds != NULL ? surface->builds[panel].finish : (GwFinish){ 0 };
}

void
gw_surface_slice (const GwSurface *surface,
                  double           arc,
                  GwSlice         *out)
{
  const size_t last = surface->n_stations - 2;
  double       start = 0.0;

  for (size_t i = 0; i <= last; i++)
    {
      const double length = panel_of (surface, i).length;

      if (i == last || arc < start + length)
        {
          gw_panel_slice (surface, i, fmin (fmax ((arc - start) / length, 0.0), 1.0), out);
          return;
        }
      start += length;
    }
}

void
gw_slice_outline (const GwSlice *slice,
                  GwOutline     *out)
{
  if (slice->inner == slice->outer)
    *out = slice->inner->outline;
  else
    gw_outline_mix (&slice->inner->outline, &slice->outer->outline, slice->mix, out);
}

double
gw_slice_height (const GwSlice *slice,
                 double         x,
                 bool           is_upper)
{
  const double inner = gw_outline_height_at (&slice->inner->outline, x, is_upper);

  if (slice->inner == slice->outer)
    return inner;
  return (1.0 - slice->mix) * inner +
         slice->mix * gw_outline_height_at (&slice->outer->outline, x, is_upper);
}

/* The slice's own axes: chordwise and heightwise, as long as the chord. */
static void
slice_axes (const GwSlice *slice,
            double         along[3],
            double         across[3])
{
  const double c = slice->chord * cos (slice->twist);
  const double s = slice->chord * sin (slice->twist);

  for (int i = 0; i < 3; i++)
    {
      along[i] = -s * slice->up[i] + (i == 0 ? c : 0.0);
      across[i] = c * slice->up[i] + (i == 0 ? s : 0.0);
    }
}

void
gw_slice_place (const GwSlice *slice,
                double         x,
                double         height,
                double         out[3])
{
  double along[3], across[3];

  slice_axes (slice, along, across);
  for (int i = 0; i < 3; i++)
    out[i] = slice->at[i] + x * along[i] + height * across[i];
}

/* Moments in space of what has the plane moments @m in chords, @scale the measure of
 * a unit of it. */
static void
place_moments (const GwSlice *slice,
               const double   m[6],
               double         scale,
               GwMoments     *out)
{
  static const int row[6] = { 0, 1, 2, 0, 0, 1 };
  static const int column[6] = { 0, 1, 2, 1, 2, 2 };
  double           a[3], h[3];

  slice_axes (slice, a, h);
  out->total = scale * m[0];
  for (int i = 0; i < 3; i++)
    out->first[i] = scale * (m[1] * a[i] + m[2] * h[i]);
  for (int i = 0; i < 6; i++)
    {
      const int j = row[i];
      const int k = column[i];

      out->second[i] = scale * (m[3] * a[j] * a[k] + m[5] * h[j] * h[k] +
                                m[4] * (a[j] * h[k] + h[j] * a[k]));
    }
  gw_moments_shift (out, slice->at);
}

void
gw_slice_face (const GwSlice *slice,
               GwMoments     *out)
{
  GwOutline outline;
  double    m[6];

  gw_slice_outline (slice, &outline);
  gw_outline_area_moments (&outline, m);
  place_moments (slice, m, slice->chord * slice->chord, out);
}

void
gw_slice_rim (const GwSlice *slice,
              GwMoments     *out)
{
  GwOutline outline;
  double    m[6];

  gw_slice_outline (slice, &outline);
  gw_outline_rim_moments (&outline, m);
  place_moments (slice, m, slice->chord, out);
}

/* Sums over one side that gw_surface_shape() divides by the areas. */
typedef struct
{
  double area, projected;
  double chord_square; /* integral of the chord squared over the projected span */
  double edge[3];      /* integral of chord times the leading edge */
  double quarter, half, dihedral;
  double skin, volume;
} Sums;

static void
sum_panel (Sums        *sums,
           const Panel *p,
           bool         is_fin)
{
  const double c0 = p->inner->chord;
  const double c1 = p->outer->chord;
  const double sweep = p->outer->at[0] - p->inner->at[0];
  const double across = fabs (is_fin ? p->dz : p->dy);
  const double area = p->length * (c0 + c1) / 2.0;

  sums->area += area;
  sums->projected += across * (c0 + c1) / 2.0;
  sums->chord_square += across * (c0 * c0 + c0 * c1 + c1 * c1) / 3.0;
  for (int i = 0; i < 3; i++)
    {
      const double e0 = p->inner->at[i];
      const double e1 = p->outer->at[i];

      sums->edge[i] += across * (e0 * (2.0 * c0 + c1) + e1 * (c0 + 2.0 * c1)) / 6.0;
    }

  sums->quarter += area * atan2 (sweep + 0.25 * (c1 - c0), p->length);
  sums->half += area * atan2 (sweep + 0.5 * (c1 - c0), p->length);
  sums->dihedral += is_fin ? 0.0 : area * atan2 (p->dz, p->dy);
}

static double
span_of (const GwSurface *surface,
         bool             is_fin)
{
  const int axis = is_fin ? 2 : 1;
  double    low = surface->stations[0].at[axis];
  double    high = low;

  for (size_t i = 1; i < surface->n_stations; i++)
    {
      low = fmin (low, surface->stations[i].at[axis]);
      high = fmax (high, surface->stations[i].at[axis]);
    }

  return surface->is_mirrored && !is_fin ? 2.0 * fmax (high, -low) : high - low;
}

GwStatus
gw_surface_shape (const GwSurface *surface,
                  GwSurfaceShape  *out)
{
  const bool       is_fin = surface->role == GW_ROLE_FIN;
  const double     sides = surface->is_mirrored ? 2.0 : 1.0;
  const GwStation *root = &surface->stations[0];
  GwStatus         status = gw_surface_check (surface);
  Sums             sums = { 0 };

  for (size_t i = 0; status == GW_OK && i + 1 < surface->n_stations; i++)
    {
      const Panel p = panel_of (surface, i);
      GwLoft      loft;

      sum_panel (&sums, &p, is_fin);
      status = gw_surface_loft (surface, i, &loft);
      sums.skin += loft.skin.total;
      sums.volume += loft.volume.total;
    }

  if (status != GW_OK)
    return status;
  if (!(sums.projected > 0.0))
    return GW_EINVAL;

  *out = (GwSurfaceShape){
    .area = sides * sums.area,
    .projected_area = sides * sums.projected,
    .span = span_of (surface, is_fin),
    .arc = gw_surface_arc (surface, surface->n_stations - 1),
    .taper = surface->stations[surface->n_stations - 1].chord / root->chord,
    .mac = sums.chord_square / sums.projected,
    .root_x = root->at[0],
    .root_chord = root->chord,
    .sweep_quarter = sums.quarter / sums.area,
    .sweep_half = sums.half / sums.area,
    .dihedral = sums.dihedral / sums.area,
    .wetted_area = sides * sums.skin,
    .volume = sides * sums.volume,
  };
  for (int i = 0; i < 3; i++)
    out->mac_at[i] = sums.edge[i] / sums.projected;

  /* Mirrored fins are two surfaces, each with its own height and area. */
  out->aspect_ratio = out->span * out->span / (is_fin ? sums.projected : out->projected_area);
  return GW_OK;
}
