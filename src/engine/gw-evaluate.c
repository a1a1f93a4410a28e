/* gw-evaluate.c - one aircraft in, all its results out
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-evaluate.h"

#include <math.h>
#include <stdlib.h>

#include "engine/gw-body.h"

static bool
is_wing (const GwSurface *surface)
{
  return surface->role == GW_ROLE_WING || surface->role == GW_ROLE_SECOND_WING;
}

static void
evaluate_air (GwResults *out)
{
  out->value[GW_RESULT_DENSITY] = out->air.density;
  out->value[GW_RESULT_DENSITY_ALTITUDE] = out->air.density_altitude;
}

static GwStatus
evaluate_shape (const GwAircraft *aircraft,
                GwResults        *out)
{
  const GwSurfaceShape *wing = &out->geometry.shapes[out->geometry.wing];
  double                span = 0.0, wetted = 0.0;

  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    {
      wetted += out->geometry.shapes[i].wetted_area;
      if (is_wing (&aircraft->surfaces[i]))
        span = fmax (span, out->geometry.shapes[i].span);
    }
  for (size_t i = 0; i < aircraft->n_bodies; i++)
    {
      const GwBody  *body = &aircraft->bodies[i];
      GwBodyShape    shape;
      const GwStatus status = gw_body_shape (body, &shape, NULL);

      if (status != GW_OK)
        return status;
      wetted += (body->is_mirrored ? 2.0 : 1.0) * shape.wetted_area;
    }

  out->value[GW_RESULT_WING_AREA] = out->geometry.area;
  out->value[GW_RESULT_SPAN] = span;
  out->value[GW_RESULT_ASPECT_RATIO] = wing->aspect_ratio;
  out->value[GW_RESULT_MEAN_CHORD] = out->geometry.mac;
  out->value[GW_RESULT_WETTED_AREA] = wetted;
  return GW_OK;
}

static void
evaluate_mass (const GwAircraft *aircraft,
               GwResults        *out)
{
  const GwBalance *balance = &out->balance;
  double           wings = 0.0;

  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    if (is_wing (&aircraft->surfaces[i]))
      wings += gw_pieces_mass (&out->pieces, GW_GROUP_SURFACE, (int) i);
  for (size_t i = 0; i < out->pieces.n; i++)
    out->piece_mass[out->pieces.v[i].kind] += out->pieces.v[i].mass.total;

  out->value[GW_RESULT_MASS] = balance->mass;
  out->value[GW_RESULT_WING_MASS] = wings;
  out->value[GW_RESULT_WEIGHED_SHARE] = balance->weighed_mass / balance->mass;
  out->value[GW_RESULT_WING_LOADING] = balance->mass / out->geometry.area;
}

static void
evaluate_balance (GwResults *out)
{
  const GwGeometry *geometry = &out->geometry;
  const double     *inertia = out->balance.inertia.m;
  const double      x = out->balance.centre[0];

  out->value[GW_RESULT_BALANCE_X] = x;
  out->value[GW_RESULT_BALANCE_ROOT] = x - geometry->shapes[geometry->wing].root_x;
  out->value[GW_RESULT_BALANCE_MAC] = (x - geometry->mac_x) / geometry->mac;
  out->value[GW_RESULT_BALANCE_Y] = out->balance.centre[1];
  out->value[GW_RESULT_BALANCE_Z] = out->balance.centre[2];
  out->value[GW_RESULT_IXX] = inertia[0];
  out->value[GW_RESULT_IYY] = inertia[1];
  out->value[GW_RESULT_IZZ] = inertia[2];
  out->value[GW_RESULT_IXZ] = inertia[4];
}

static void
evaluate_stall (const GwAircraft *aircraft,
                const double     *curve_mass,
                GwResults        *out)
{
  const double x = out->balance.centre[0];
  const double wanted = aircraft->targets.stall_speed;

  out->stall = (GwStall){ .speed = NAN, .cl_max = NAN, .eta = NAN, .re = NAN, .surface = -1 };
  if (gw_stall_of (aircraft, &out->geometry, &out->air, out->balance.mass, x, &out->stall) == GW_OK)
    {
      out->value[GW_RESULT_STALL_SPEED] = out->stall.speed;
      out->value[GW_RESULT_CL_MAX] = out->stall.cl_max;
      out->value[GW_RESULT_STALL_PLACE] = out->stall.eta;
      out->value[GW_RESULT_STALL_RE] = out->stall.re;
    }

  if (!isnan (wanted))
    gw_stall_mass_at (aircraft, &out->geometry, &out->air, x, wanted,
                      &out->value[GW_RESULT_TARGET_MASS]);
  if (curve_mass != NULL)
    gw_stall_curve (aircraft, &out->geometry, &out->air, x, GW_CURVE_N, curve_mass, out->curve);
}

/* Stability at the stall speed, where Reynolds numbers are lowest; without one at the speed
 * where a lift coefficient of 1 would carry the mass. */
static GwStatus
evaluate_stability (const GwAircraft *aircraft,
                    GwResults        *out)
{
  const GwGeometry *geometry = &out->geometry;
  const double      x = out->balance.centre[0];
  const double      weight = out->balance.mass * GW_GRAVITY;
  const double      unit = sqrt (2.0 * weight / (out->air.density * geometry->area));
  const double      speed = isnan (out->stall.speed) ? unit : out->stall.speed;
  GwLift           *lifts = calloc (geometry->n_surfaces, sizeof *lifts);
  GwStatus          status = lifts != NULL ? GW_OK : GW_ENOMEM;
  GwStability       stability;

  for (size_t i = 0; i < geometry->n_surfaces && status == GW_OK; i++)
    if (aircraft->surfaces[i].role != GW_ROLE_FIN)
      status = gw_lift_of_spanwise (&geometry->spanwise[i], &out->air, speed, &lifts[i]);
  if (status == GW_OK)
    status = gw_stability_of (aircraft, geometry, lifts, &stability);
  free (lifts);
  if (status != GW_OK)
    return status;

  out->value[GW_RESULT_NEUTRAL_POINT] = stability.neutral_point;
  out->value[GW_RESULT_STATIC_MARGIN] = (stability.neutral_point - x) / geometry->mac;
  out->value[GW_RESULT_AFT_LIMIT] = stability.neutral_point -
                                    aircraft->targets.static_margin * geometry->mac;
  out->value[GW_RESULT_LIFT_SLOPE] = stability.lift_slope;
  out->value[GW_RESULT_TAIL_VOLUME] = stability.tail_volume;
  out->value[GW_RESULT_FIN_VOLUME] = stability.fin_volume;
  gw_stall_forward_limit (aircraft, geometry, &out->air, out->balance.mass,
                          &out->value[GW_RESULT_FORWARD_LIMIT]);
  return GW_OK;
}

/* The item that slides, and the balance point once it is as near to its place as its bay
 * lets it. What its lead gains or loses on the way is left out. */
static double
evaluate_slide (const GwAircraft *aircraft,
                double            wanted,
                GwResults        *out)
{
  const double  x = out->balance.centre[0], mass = out->balance.mass;
  const GwItem *item;
  double        item_mass, place, reached;

  if (aircraft->movable < 0 || (size_t) aircraft->movable >= aircraft->n_items)
    return x;
  item = &aircraft->items[aircraft->movable];
  if (isnan (item->bay_from) || isnan (item->bay_to))
    return x;

  item_mass = item->mass * (item->is_mirrored ? 2.0 : 1.0);
  gw_balance_travel (mass, x, item_mass, item->at[0], item->bay_from, item->bay_to,
                     &out->value[GW_RESULT_TRAVEL_FORE], &out->value[GW_RESULT_TRAVEL_AFT]);
  if (isnan (wanted) || gw_balance_place (mass, x, item_mass, item->at[0], wanted, &place) != GW_OK)
    return x;

  reached = fmin (fmax (place, item->bay_from), item->bay_to);
  out->value[GW_RESULT_SLIDE] = place - item->at[0];
  out->value[GW_RESULT_SLIDE_LEFT] = place - reached;
  if (reached == place)
    return wanted;

  out->notes |= GW_NOTE_BALLAST;
  return x + item_mass * (reached - item->at[0]) / mass;
}

static void
evaluate_solvers (const GwAircraft *aircraft,
                  GwResults        *out)
{
  const double wanted = isnan (aircraft->targets.balance_x) ? out->value[GW_RESULT_AFT_LIMIT]
                                                            : aircraft->targets.balance_x;
  const double reached = evaluate_slide (aircraft, wanted, out);
  double       nose, tail;

  if (isnan (wanted))
    return;

  gw_aircraft_ends (aircraft, &nose, &tail);
  gw_balance_ballast (out->balance.mass, reached, reached > wanted ? nose : tail, wanted,
                      &out->value[GW_RESULT_BALLAST]);
}

/* Whether the wing lets go within the span of an aileron or elevon. */
static bool
is_aileron_first (const GwAircraft *aircraft,
                  const GwStall    *stall)
{
  const GwSurface *surface = &aircraft->surfaces[stall->surface];
  const double     arc = gw_spanwise_arc (surface, stall->eta);

  for (size_t i = 0; i < surface->n_controls; i++)
    {
      const GwControl *control = &surface->controls[i];

      if ((control->kind == GW_CONTROL_AILERON || control->kind == GW_CONTROL_ELEVON) &&
          arc >= control->from && arc <= control->to)
        return true;
    }

  return false;
}

static bool
is_swept (const GwAircraft *aircraft,
          const GwGeometry *geometry)
{
  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    for (int k = 0; k < GW_LINE_N && is_wing (&aircraft->surfaces[i]); k++)
      if (geometry->spanwise[i].sweep[k] < cos (5.0 * M_PI / 180.0))
        return true;

  return false;
}

static bool
is_outside_bay (const GwAircraft *aircraft,
                double            slack)
{
  for (size_t i = 0; i < aircraft->n_items; i++)
    {
      const GwItem *item = &aircraft->items[i];

      if (item->at[0] < item->bay_from - slack || item->at[0] > item->bay_to + slack)
        return true;
    }

  return false;
}

static void
note (GwResults *out,
      bool       is_so,
      GwNote     what)
{
  if (is_so)
    out->notes |= what;
}

/* Comparisons with a value that has no answer are false: nothing is said then. */
static void
evaluate_notes (const GwAircraft *aircraft,
                GwResults        *out)
{
  const double *value = out->value;
  const double  x = value[GW_RESULT_BALANCE_X];
  const double  slack = 1e-4; /* [m], less than any balance tells */

  if (!isnan (out->stall.speed))
    {
      note (out, out->stall.eta >= 0.7, GW_NOTE_TIP_FIRST);
      note (out, is_aileron_first (aircraft, &out->stall), GW_NOTE_AILERON_FIRST);
      note (out, out->stall.is_outside, GW_NOTE_RE_OUTSIDE);
      note (out, out->stall.is_tail_limit, GW_NOTE_TAIL_LIMIT);
    }
  note (out, is_swept (aircraft, &out->geometry), GW_NOTE_SWEPT);
  note (out, out->geometry.trim < 0, GW_NOTE_NO_TRIM_SURFACE);
  note (out, x > value[GW_RESULT_NEUTRAL_POINT] + slack, GW_NOTE_UNSTABLE);
  note (out, x > value[GW_RESULT_AFT_LIMIT] + slack, GW_NOTE_BEHIND_AFT_LIMIT);
  note (out, x < value[GW_RESULT_FORWARD_LIMIT] - slack, GW_NOTE_AHEAD_OF_LIMIT);
  note (out, fabs (value[GW_RESULT_BALANCE_Y]) > 0.005 * value[GW_RESULT_SPAN], GW_NOTE_LATERAL);
  note (out, value[GW_RESULT_STALL_SPEED] > aircraft->targets.stall_speed, GW_NOTE_STALL_FAST);
  note (out, value[GW_RESULT_MASS] > aircraft->targets.mass, GW_NOTE_HEAVY);
  note (out, aircraft->is_provisional, GW_NOTE_PROVISIONAL);
  note (out, is_outside_bay (aircraft, slack), GW_NOTE_OUTSIDE_BAY);
}

GwStatus
gw_evaluate (const GwAircraft *aircraft,
             const double     *curve_mass,
             GwResults        *out)
{
  GwStatus status;

  *out = (GwResults){ .geometry = { .wing = -1, .trim = -1 } };
  for (int i = 0; i < GW_N_RESULTS; i++)
    out->value[i] = NAN;
  for (int i = 0; i < GW_CURVE_N; i++)
    out->curve[i] = NAN;
  gw_pieces_init (&out->pieces);

  status = gw_air_of_day (&aircraft->day, &out->air);
  if (status == GW_OK)
    status = gw_geometry_init (aircraft, &out->geometry);
  if (status == GW_OK)
    status = gw_aircraft_pieces (aircraft, &out->pieces);
  if (status == GW_OK)
    status = gw_balance_of (&out->pieces, &out->balance);
  if (status == GW_OK)
    status = evaluate_shape (aircraft, out);
  if (status != GW_OK)
    return status;

  evaluate_air (out);
  evaluate_mass (aircraft, out);
  evaluate_balance (out);
  evaluate_stall (aircraft, curve_mass, out);
  status = evaluate_stability (aircraft, out);
  if (status != GW_OK && status != GW_EDOM)
    return status;

  evaluate_solvers (aircraft, out);
  evaluate_notes (aircraft, out);
  return GW_OK;
}

void
gw_results_clear (GwResults *results)
{
  gw_pieces_clear (&results->pieces);
  gw_geometry_clear (&results->geometry);
}
