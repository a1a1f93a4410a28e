/* gw-stability.c - neutral point
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-stability.h"

#include <math.h>
#include <stdlib.h>

static bool
is_tail (GwRole role)
{
  return role == GW_ROLE_TAILPLANE || role == GW_ROLE_V_TAIL;
}

static bool
is_wing (GwRole role)
{
  return role == GW_ROLE_WING || role == GW_ROLE_SECOND_WING;
}

/* First surface of a role, or -1. */
static int
first_of (const GwAircraft *aircraft,
          GwRole            role,
          GwRole            or_role)
{
  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    if (aircraft->surfaces[i].role == role || aircraft->surfaces[i].role == or_role)
      return (int) i;

  return -1;
}

static GwStatus
read_shapes (const GwAircraft *aircraft,
             GwGeometry       *out)
{
  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    {
      const GwSurface *surface = &aircraft->surfaces[i];
      GwStatus         status = gw_surface_shape (surface, &out->shapes[i]);

      if (status == GW_OK && surface->role != GW_ROLE_FIN)
        status = gw_spanwise_of (surface, &out->shapes[i], &out->spanwise[i]);
      if (status != GW_OK)
        return status;
      if (is_wing (surface->role))
        out->area += out->shapes[i].projected_area;
    }

  return GW_OK;
}

GwStatus
gw_geometry_init (const GwAircraft *aircraft,
                  GwGeometry       *out)
{
  const size_t n = aircraft->n_surfaces;
  GwStatus     status = GW_ENOMEM;

  *out = (GwGeometry){ .n_surfaces = n };
  out->wing = first_of (aircraft, GW_ROLE_WING, GW_ROLE_WING);
  out->trim = first_of (aircraft, GW_ROLE_TAILPLANE, GW_ROLE_V_TAIL);
  if (out->trim < 0)
    out->trim = first_of (aircraft, GW_ROLE_CANARD, GW_ROLE_CANARD);
  if (out->wing < 0)
    return GW_EDOM;

  out->shapes = calloc (n, sizeof *out->shapes);
  out->spanwise = calloc (n, sizeof *out->spanwise);
  if (out->shapes != NULL && out->spanwise != NULL)
    status = read_shapes (aircraft, out);
  if (status != GW_OK)
    {
      gw_geometry_clear (out);
      return status;
    }

  out->mac = out->shapes[out->wing].mac;
  out->mac_x = out->shapes[out->wing].mac_at[0];
  return GW_OK;
}

void
gw_geometry_clear (GwGeometry *geometry)
{
  free (geometry->shapes);
  free (geometry->spanwise);
  *geometry = (GwGeometry){ .wing = -1, .trim = -1 };
}

double
gw_downwash_gradient (const GwSurfaceShape *wing,
                      double                arm,
                      double                height)
{
  const double a = wing->aspect_ratio;
  const double by_ratio = 1.0 / a - 1.0 / (1.0 + pow (a, 1.7));
  const double by_taper = (10.0 - 3.0 * wing->taper) / 7.0;
  const double by_place = (1.0 - fabs (height / wing->span)) / cbrt (2.0 * arm / wing->span);
  const double product = by_ratio * by_taper * by_place * sqrt (cos (wing->sweep_quarter));

  return fmin (4.44 * pow (fmax (product, 0.0), 1.19), 1.0);
}

GwWake
gw_wake_at (const GwAircraft *aircraft,
            const GwGeometry *geometry,
            const GwLift     *lifts,
            size_t            surface)
{
  const GwLift *wing = &lifts[geometry->wing];
  const double  arm = lifts[surface].centre_x - wing->centre_x;
  const double  height = lifts[surface].centre_z - wing->centre_z;

  if (!is_tail (aircraft->surfaces[surface].role) || !(arm > 0.0))
    return (GwWake){ 1.0, 0.0 };

  return (GwWake){
    .efficiency = GW_TAIL_EFFICIENCY,
    .downwash = gw_downwash_gradient (&geometry->shapes[geometry->wing], arm, height),
  };
}

/* What turns the flow along a body. */
typedef struct
{
  double leading, trailing; /* of the wing's root [m] */
  double quarter;           /* [m] */
  double upwash;            /* CLa c / (4 pi) [m] */
  double tail;              /* where the downwash counts in full [m] */
  double at_tail;           /* 1 - downwash */
} Turn;

static void
find_turn (const GwAircraft *aircraft,
           const GwGeometry *geometry,
           const GwLift     *lifts,
           Turn             *out)
{
  const GwSurfaceShape *wing = &geometry->shapes[geometry->wing];
  const double          slope = lifts[geometry->wing].lift_slope;
  double                downwash = 0.0;

  *out = (Turn){
    .leading = wing->root_x,
    .trailing = wing->root_x + wing->root_chord,
    .quarter = wing->root_x + 0.25 * wing->root_chord,
    .upwash = slope * wing->root_chord / (4.0 * M_PI),
  };
  if (geometry->trim >= 0)
    {
      downwash = gw_wake_at (aircraft, geometry, lifts, (size_t) geometry->trim).downwash;
      out->tail = lifts[geometry->trim].centre_x;
    }
  if (!(downwash > 0.0) || !(out->tail > out->trailing))
    {
      downwash = gw_downwash_gradient (wing, 0.5 * wing->span, 0.0);
      out->tail = out->trailing + 0.5 * wing->span;
    }
  out->at_tail = 1.0 - downwash;
}

static double
turn_at (const Turn *turn,
         double      x)
{
  if (x < turn->leading)
    return 1.0 + turn->upwash / (turn->quarter - x);
  if (x < turn->trailing)
    return 0.0;
  return turn->at_tail * fmin ((x - turn->trailing) / (turn->tail - turn->trailing), 1.0);
}

/* Integrals of width^2 and width^2 x turn between two stations, cut at the wing's edges so
 * that they follow every input smoothly: Gauss, three points a piece. */
static void
add_bay (const Turn          *turn,
         const GwBodyStation *fore,
         double               count,
         GwBodyMoment        *out)
{
  static const double  node[] = { -0.7745966692414834, 0.0, 0.7745966692414834 };
  static const double  weight[] = { 5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0 };
  const GwBodyStation *aft = fore + 1;
  const double         cut[] = { fore->x, turn->leading, turn->trailing, turn->tail, aft->x };

  for (int i = 0; i < 4; i++)
    {
      const double from = fmin (fmax (cut[i], fore->x), aft->x);
      const double half = 0.5 * (fmin (fmax (cut[i + 1], fore->x), aft->x) - from);

      for (int k = 0; k < 3 && half > 0.0; k++)
        {
          const double x = from + half * (1.0 + node[k]);
          const double t = (x - fore->x) / (aft->x - fore->x);
          const double width = fore->width + t * (aft->width - fore->width);
          const double share = count * M_PI_2 * half * weight[k] * width * width;

          out->still += share;
          out->turned += share * turn_at (turn, x);
        }
    }
}

void
gw_body_moment (const GwAircraft *aircraft,
                const GwGeometry *geometry,
                const GwLift     *lifts,
                GwBodyMoment     *out)
{
  Turn turn;

  find_turn (aircraft, geometry, lifts, &turn);
  *out = (GwBodyMoment){ 0 };

  for (size_t i = 0; i < aircraft->n_bodies; i++)
    for (size_t k = 0; k + 1 < aircraft->bodies[i].n_stations; k++)
      add_bay (&turn, &aircraft->bodies[i].stations[k], aircraft->bodies[i].is_mirrored ? 2.0 : 1.0,
               out);
}

/* Area that a tail shows from above or from the side; a V-tail acts by the squared cosine
 * and sine of its dihedral (Purser & Campbell, NACA Report 823, 1945). */
static double
tail_area (const GwSurface      *surface,
           const GwSurfaceShape *shape,
           bool                  is_vertical)
{
  const double part = is_vertical ? sin (shape->dihedral) : cos (shape->dihedral);

  return surface->role == GW_ROLE_V_TAIL ? shape->area * part * part : shape->projected_area;
}

static void
find_volumes (const GwAircraft *aircraft,
              const GwGeometry *geometry,
              const GwLift     *lifts,
              GwStability      *out)
{
  const double centre = lifts[geometry->wing].centre_x;
  const int    trim = geometry->trim;

  if (trim >= 0)
    out->tail_volume = tail_area (&aircraft->surfaces[trim], &geometry->shapes[trim], false) *
                       fabs (lifts[trim].centre_x - centre) / (geometry->area * geometry->mac);

  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    {
      const GwSurfaceShape *shape = &geometry->shapes[i];
      const double          arm = shape->mac_at[0] + 0.25 * shape->mac - centre;

      if (aircraft->surfaces[i].role == GW_ROLE_FIN || aircraft->surfaces[i].role == GW_ROLE_V_TAIL)
        out->fin_volume += tail_area (&aircraft->surfaces[i], shape, true) * arm /
                           (geometry->area * geometry->shapes[geometry->wing].span);
    }
}

GwStatus
gw_stability_of (const GwAircraft *aircraft,
                 const GwGeometry *geometry,
                 const GwLift     *lifts,
                 GwStability      *out)
{
  double       slope = 0.0, moment = 0.0;
  GwBodyMoment bodies;

  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    if (aircraft->surfaces[i].role != GW_ROLE_FIN)
      {
        const GwWake wake = gw_wake_at (aircraft, geometry, lifts, i);
        const double share = lifts[i].lift_slope * geometry->shapes[i].projected_area *
                             wake.efficiency * (1.0 - wake.downwash);

        slope += share;
        moment += share * lifts[i].centre_x;
      }

  if (!(slope > 0.0))
    return GW_EDOM;

  gw_body_moment (aircraft, geometry, lifts, &bodies);
  *out = (GwStability){
    .neutral_point = (moment - bodies.turned) / slope +
                     aircraft->neutral_point_shift * geometry->mac,
    .lift_slope = slope / geometry->area,
    .body_share = -bodies.turned / slope,
  };
  if (geometry->trim >= 0)
    out->downwash = gw_wake_at (aircraft, geometry, lifts, (size_t) geometry->trim).downwash;
  find_volumes (aircraft, geometry, lifts, out);
  return GW_OK;
}
