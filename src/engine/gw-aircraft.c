/* gw-aircraft.c - every piece of the aircraft
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-aircraft.h"

#include <math.h>

#include "engine/gw-body.h"
#include "engine/gw-build.h"

/* Adds what is not a surface. Refuses a mass that is negative or not finite. */
static GwStatus
add (GwPieces   *pieces,
     GwPieceKind kind,
     GwGroup     group,
     size_t      owner,
     bool        is_mirrored,
     bool        is_weighed,
     GwMoments  *mass)
{
  const GwPiece piece = {
    .kind = kind,
    .group = group,
    .owner = owner,
    .panel = -1,
    .side = 1,
    .count = 1,
    .is_weighed = is_weighed,
    .mass = *mass,
  };

  if (!(mass->total >= 0.0) || !isfinite (mass->total))
    return GW_EINVAL;
  for (int i = 0; i < 6; i++)
    if (!isfinite (mass->first[i % 3]) || !isfinite (mass->second[i]))
      return GW_EINVAL;

  return mass->total > 0.0 ? gw_pieces_add_both (pieces, &piece, is_mirrored) : GW_OK;
}

/* A straight part of mass @mass spread evenly from @a to @b; a point if they coincide. */
static void
spread (double       mass,
        const double a[3],
        const double b[3],
        GwMoments   *out)
{
  GwMoments line;

  gw_moments_segment (a, b, &line);
  if (line.total > 0.0)
    {
      *out = (GwMoments){ 0 };
      gw_moments_add (out, &line, mass / line.total);
    }
  else
    gw_moments_point (mass, a, out);
}

static GwStatus
add_body (GwPieces     *pieces,
          size_t        i,
          const GwBody *body)
{
  const bool  is_known = !isnan (body->known_mass);
  double      areal = body->skin_areal * body->mass_factor;
  GwMoments   mass = { 0 };
  GwBodyShape shape;
  GwMoments   skin;
  GwStatus    status = gw_body_shape (body, &shape, &skin);

  if (status != GW_OK)
    return status;
  if (is_known)
    areal = body->known_mass / skin.total;

  gw_moments_add (&mass, &skin, areal);
  return add (pieces, GW_PIECE_BODY, GW_GROUP_BODY, i, body->is_mirrored,
              is_known && body->is_weighed, &mass);
}

static GwStatus
add_strut (GwPieces      *pieces,
           size_t         i,
           const GwStrut *strut)
{
  GwMoments mass;

  gw_moments_tube (strut->mass, strut->from, strut->to, strut->radius, 0.0, &mass);
  return add (pieces, GW_PIECE_STRUT, GW_GROUP_STRUT, i, strut->is_mirrored, strut->is_weighed,
              &mass);
}

static GwStatus
add_leg (GwPieces    *pieces,
         size_t       i,
         const GwLeg *leg)
{
  const double half = 0.5 * leg->wheel_width;
  const double a[] = { leg->axle[0], leg->axle[1] - half, leg->axle[2] };
  const double b[] = { leg->axle[0], leg->axle[1] + half, leg->axle[2] };
  GwMoments    mass;
  GwStatus     status;

  spread (leg->leg_mass, leg->top, leg->axle, &mass);
  status = add (pieces, GW_PIECE_LEG, GW_GROUP_LEG, i, leg->is_mirrored, leg->is_leg_weighed,
                &mass);
  if (status != GW_OK)
    return status;

  gw_moments_tube (leg->wheel_mass, a, b, leg->wheel_radius, 0.0, &mass);
  return add (pieces, GW_PIECE_WHEEL, GW_GROUP_LEG, i, leg->is_mirrored, leg->is_wheel_weighed,
              &mass);
}

/* The mean over a turn of a straight blade from tip to tip: half of it upright, half
 * of it level has the same second moments. */
static void
propeller_mass (const GwPower *power,
                GwMoments     *out)
{
  const double radius = 0.5 * power->propeller_diameter;

  *out = (GwMoments){ 0 };
  for (int axis = 1; axis < 3; axis++)
    {
      double    a[] = { power->propeller_x, power->motor_at[1], power->motor_at[2] };
      double    b[] = { a[0], a[1], a[2] };
      GwMoments blade;

      a[axis] -= radius;
      b[axis] += radius;
      spread (0.5 * power->propeller_mass, a, b, &blade);
      gw_moments_add (out, &blade, 1.0);
    }
}

static GwStatus
add_power (GwPieces      *pieces,
           size_t         i,
           const GwPower *power)
{
  const double *at = power->motor_at;
  const double  half = 0.5 * power->motor_length;
  const double  a[] = { at[0] - half, at[1], at[2] };
  const double  b[] = { at[0] + half, at[1], at[2] };
  GwMoments     mass;
  GwStatus      status;

  gw_moments_tube (power->motor_mass, a, b, power->motor_radius, 0.0, &mass);
  status = add (pieces, GW_PIECE_MOTOR, GW_GROUP_POWER, i, power->is_mirrored,
                power->is_motor_weighed, &mass);
  if (status != GW_OK)
    return status;

  propeller_mass (power, &mass);
  status = add (pieces, GW_PIECE_PROPELLER, GW_GROUP_POWER, i, power->is_mirrored,
                power->is_propeller_weighed, &mass);
  if (status != GW_OK)
    return status;

  gw_moments_point (power->controller_mass, power->controller_at, &mass);
  return add (pieces, GW_PIECE_CONTROLLER, GW_GROUP_POWER, i, power->is_mirrored,
              power->is_controller_weighed, &mass);
}

static GwStatus
add_item (GwPieces     *pieces,
          size_t        i,
          const GwItem *item)
{
  GwMoments mass, line;
  GwStatus  status;

  gw_moments_box (item->mass, item->at, item->size, &mass);
  status = add (pieces, GW_PIECE_EQUIPMENT, GW_GROUP_ITEM, i, item->is_mirrored,
                item->is_weighed, &mass);
  if (status != GW_OK || item->lead_linear == 0.0)
    return status;

  /* The slack is taken as spread along the way. */
  gw_moments_segment (item->at, item->lead_to, &line);
  spread (item->lead_linear * (line.total + item->lead_slack), item->at, item->lead_to, &mass);
  return add (pieces, GW_PIECE_LEAD, GW_GROUP_ITEM, i, item->is_mirrored, false, &mass);
}

static GwStatus
add_all (const GwAircraft *aircraft,
         GwPieces         *pieces)
{
  GwStatus status = GW_OK;

  for (size_t i = 0; status == GW_OK && i < aircraft->n_surfaces; i++)
    status = gw_build_surface (&aircraft->surfaces[i], i, pieces);
  for (size_t i = 0; status == GW_OK && i < aircraft->n_bodies; i++)
    status = add_body (pieces, i, &aircraft->bodies[i]);
  for (size_t i = 0; status == GW_OK && i < aircraft->n_struts; i++)
    status = add_strut (pieces, i, &aircraft->struts[i]);
  for (size_t i = 0; status == GW_OK && i < aircraft->n_legs; i++)
    status = add_leg (pieces, i, &aircraft->legs[i]);
  for (size_t i = 0; status == GW_OK && i < aircraft->n_powers; i++)
    status = add_power (pieces, i, &aircraft->powers[i]);
  for (size_t i = 0; status == GW_OK && i < aircraft->n_items; i++)
    status = add_item (pieces, i, &aircraft->items[i]);

  return status;
}

GwStatus
gw_aircraft_pieces (const GwAircraft *aircraft,
                    GwPieces         *pieces)
{
  const size_t   first = pieces->n;
  const GwStatus status = add_all (aircraft, pieces);

  if (status != GW_OK)
    pieces->n = first;

  return status;
}

void
gw_aircraft_ends (const GwAircraft *aircraft,
                  double           *nose,
                  double           *tail)
{
  *nose = INFINITY;
  *tail = -INFINITY;

  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    for (size_t k = 0; k < aircraft->surfaces[i].n_stations; k++)
      {
        const GwStation *station = &aircraft->surfaces[i].stations[k];

        *nose = fmin (*nose, station->at[0]);
        *tail = fmax (*tail, station->at[0] + station->chord);
      }
  for (size_t i = 0; i < aircraft->n_bodies; i++)
    {
      const GwBody *body = &aircraft->bodies[i];

      *nose = fmin (*nose, body->stations[0].x);
      *tail = fmax (*tail, body->stations[body->n_stations - 1].x);
    }
}
