/* gw-airframe-surface.c - lifting surfaces as shapes
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-build.h"
#include "figures/gw-airframe-private.h"

#define SECTION_STEP 2    /* every second point of the outline is enough on paper */
#define ON_CENTRE    1e-4 /* [m]; two halves this close to y = 0 are one */

typedef double Point[3];

static double
extent (const GwSurface *surface,
        int              axis)
{
  double low = INFINITY, high = -INFINITY;

  for (size_t i = 0; i < surface->n_stations; i++)
    {
      low = fmin (low, surface->stations[i].at[axis]);
      high = fmax (high, surface->stations[i].at[axis]);
    }

  return high - low;
}

/* Point at @x chords of a station. */
static void
station_point (const GwStation *station,
               double           x,
               double           out[3])
{
  out[0] = station->at[0] + x * station->chord * cos (station->twist);
  out[1] = station->at[1];
  out[2] = station->at[2] - x * station->chord * sin (station->twist);
}

static void
slice_point (const GwSurface *surface,
             double           arc,
             double           x,
             double           out[3])
{
  GwSlice slice;

  gw_surface_slice (surface, arc, &slice);
  gw_slice_place (&slice, x, 0, out);
}

static void
add_section (GwProjection    *projection,
             const GwSurface *surface,
             double           arc,
             GwShapeKind      kind)
{
  GwSlice   slice;
  GwOutline outline;
  double    xyz[2 * GW_OUTLINE_N + 2][3];
  size_t    n = 0;

  gw_surface_slice (surface, arc, &slice);
  gw_slice_outline (&slice, &outline);
  for (size_t i = GW_OUTLINE_N - 1; i > 0; i -= SECTION_STEP)
    gw_slice_place (&slice, gw_outline_x (i), outline.upper[i], xyz[n++]);
  for (size_t i = 0; i < GW_OUTLINE_N; i += SECTION_STEP)
    gw_slice_place (&slice, gw_outline_x (i), outline.lower[i], xyz[n++]);
  gw_projection_add (projection, kind, n, xyz[0], true);
}

/* The side of a section that lies to starboard, open: a fin on the centre line of a half view. */
static void
add_half_section (GwProjection    *projection,
                  const GwSurface *surface)
{
  GwSlice   slice;
  GwOutline outline;
  Point     xyz[GW_OUTLINE_N];
  size_t    n = 0;
  double    sense;

  gw_surface_slice (surface, 0, &slice);
  gw_slice_outline (&slice, &outline);
  sense = slice.up[1] >= 0 ? 1 : -1;
  for (size_t i = 0; i < GW_OUTLINE_N; i += SECTION_STEP)
    gw_slice_place (&slice, gw_outline_x (i), sense > 0 ? outline.upper[i] : outline.lower[i],
                    xyz[n++]);
  gw_projection_add (projection, GW_SHAPE_SURFACE, n, xyz[0], false);
}

/* Leading edge out, trailing edge back; both halves in one outline where they meet. */
static void
add_outline (GwProjection    *projection,
             const GwSurface *surface,
             GwShapeKind      kind)
{
  size_t n = surface->n_stations;
  Point *xyz = g_new (Point, 4 * n);
  bool   is_on_centre = fabs (surface->stations[0].at[1]) < ON_CENTRE;
  bool   is_top = projection->view == GW_VIEW_TOP;
  bool   is_joined = is_top && surface->is_mirrored && is_on_centre && !projection->is_half;
  size_t m = 0;

  if (is_joined && projection->is_image)
    {
      g_free (xyz);
      return;
    }
  for (size_t i = n; is_joined && i-- > 1; m++)
    {
      station_point (&surface->stations[i], 0, xyz[m]);
      xyz[m][1] = -xyz[m][1];
    }
  for (size_t i = 0; i < n; i++)
    station_point (&surface->stations[i], 0, xyz[m++]);
  for (size_t i = n; i-- > 0;)
    station_point (&surface->stations[i], 1, xyz[m++]);
  for (size_t i = 1; is_joined && i < n; i++, m++)
    {
      station_point (&surface->stations[i], 1, xyz[m]);
      xyz[m][1] = -xyz[m][1];
    }
  gw_projection_add (projection, kind, m, xyz[0], !(is_top && projection->is_half && is_on_centre));
  g_free (xyz);
}

/* A line along the span at @x chords, from one arc to another, bent at the stations between. */
static void
add_along (GwProjection    *projection,
           const GwSurface *surface,
           GwShapeKind      kind,
           double           x,
           double           from,
           double           to)
{
  Point *xyz = g_new (Point, surface->n_stations + 2);
  size_t m = 0;

  slice_point (surface, from, x, xyz[m++]);
  for (size_t i = 0; i < surface->n_stations; i++)
    {
      double arc = gw_surface_arc (surface, i);

      if (arc > from + 1e-6 && arc < to - 1e-6)
        station_point (&surface->stations[i], x, xyz[m++]);
    }
  slice_point (surface, to, x, xyz[m++]);
  gw_projection_add (projection, kind, m, xyz[0], false);
  g_free (xyz);
}

static void
add_control (GwProjection    *projection,
             const GwSurface *surface,
             const GwControl *control)
{
  size_t n = surface->n_stations;
  Point *xyz = g_new (Point, 2 * n + 4);
  double hinge = 1 - control->chord_fraction;
  size_t m = 0;

  slice_point (surface, control->from, 1, xyz[m++]);
  slice_point (surface, control->from, hinge, xyz[m++]);
  for (size_t i = 0; i < n; i++)
    {
      double arc = gw_surface_arc (surface, i);

      if (arc > control->from + 1e-6 && arc < control->to - 1e-6)
        station_point (&surface->stations[i], hinge, xyz[m++]);
    }
  slice_point (surface, control->to, hinge, xyz[m++]);
  slice_point (surface, control->to, 1, xyz[m++]);
  gw_projection_add (projection, GW_SHAPE_CONTROL, m, xyz[0], false);
  g_free (xyz);
}

static void
add_across (GwProjection    *projection,
            const GwSurface *surface,
            GwShapeKind      kind,
            double           arc)
{
  double xyz[2][3];

  slice_point (surface, arc, 0, xyz[0]);
  slice_point (surface, arc, 1, xyz[1]);
  gw_projection_add (projection, kind, 2, xyz[0], false);
}

static void
add_details (GwProjection    *projection,
             const GwSurface *surface)
{
  size_t last = surface->n_stations - 1;
  double tip = gw_surface_arc (surface, last);

  for (size_t i = 1; i < last; i++)
    add_across (projection, surface, GW_SHAPE_STATION, gw_surface_arc (surface, i));
  add_along (projection, surface, GW_SHAPE_QUARTER, 0.25, 0, tip);
  for (size_t i = 0; i < surface->n_spars; i++)
    add_along (projection, surface, GW_SHAPE_SPAR, surface->spars[i].chord_place,
               surface->spars[i].from, fmin (surface->spars[i].to, tip));
  for (size_t i = 0; surface->builds != NULL && i < last; i++)
    {
      int    pieces = gw_build_seams (surface, i);
      double from = gw_surface_arc (surface, i), to = gw_surface_arc (surface, i + 1);

      for (int k = 1; k < pieces; k++)
        add_across (projection, surface, GW_SHAPE_SEAM, from + (to - from) * k / pieces);
    }
  for (size_t i = 0; i < surface->n_controls; i++)
    add_control (projection, surface, &surface->controls[i]);
}

/* A fin from above is as wide as its root section; any other surface is its planform. */
static void
add_from_above (GwProjection    *projection,
                const GwSurface *surface)
{
  GwOutlineShape shape;

  gw_outline_shape (&surface->stations[0].section->outline, &shape);
  projection->level = surface->stations[0].at[2];
  if (extent (surface, 1) < 0.5 * shape.thickness * surface->stations[0].chord)
    {
      projection->level = surface->stations[surface->n_stations - 1].at[2];
      if (projection->is_half && fabs (surface->stations[0].at[1]) < ON_CENTRE)
        add_half_section (projection, surface);
      else
        add_section (projection, surface, 0, GW_SHAPE_SURFACE);
      return;
    }
  add_outline (projection, surface, GW_SHAPE_SURFACE);
  add_details (projection, surface);
}

static void
add_from_side (GwProjection    *projection,
               const GwSurface *surface)
{
  double tip = gw_surface_arc (surface, surface->n_stations - 1);

  if (extent (surface, 2) > 0.35 * tip)
    {
      projection->level = -1;
      add_outline (projection, surface, GW_SHAPE_SURFACE);
      add_details (projection, surface);
      return;
    }
  projection->level = 2;
  add_outline (projection, surface, GW_SHAPE_EDGE);
  add_section (projection, surface, tip, GW_SHAPE_EDGE);
  add_section (projection, surface, 0, GW_SHAPE_SECTION);
}

void
gw_projection_surface (GwProjection    *projection,
                       const GwSurface *surface,
                       int              index)
{
  if (surface->n_stations < 2)
    return;
  projection->target = (GwTarget){ GW_GROUP_SURFACE, index };

  if (projection->view == GW_VIEW_SIDE)
    {
      add_from_side (projection, surface);
      return;
    }
  add_from_above (projection, surface);
  if (surface->is_mirrored && !projection->is_half)
    {
      projection->is_image = true;
      add_from_above (projection, surface);
      projection->is_image = false;
    }
}
