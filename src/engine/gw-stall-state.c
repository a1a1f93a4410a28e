/* gw-stall-state.c - what an aircraft carries at one speed, and what trims it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-stall-private.h"

#include <math.h>
#include <stdlib.h>

static bool
does_trim (GwControlKind kind)
{
  return kind == GW_CONTROL_ELEVATOR || kind == GW_CONTROL_ELEVON || kind == GW_CONTROL_RUDDERVATOR;
}

/* Chord and place are straight along a panel, so two points of Gauss are exact. The area is
 * the surface's own: with dihedral a control turns its own section, which the body's
 * angle does by the cosine only, and the lift slope is for the body's angle. */
static void
add_control (const GwSurface *surface,
             const GwControl *control,
             GwStallReach    *out)
{
  const double sides = surface->is_mirrored ? 2.0 : 1.0;
  const double tau = gw_flap_effectiveness (control->chord_fraction);
  const double own = gw_flap_moment (control->chord_fraction);

  for (size_t k = 0; k + 1 < surface->n_stations; k++)
    {
      const double from = fmax (control->from, gw_surface_arc (surface, k));
      const double half = 0.5 * (fmin (control->to, gw_surface_arc (surface, k + 1)) - from);

      for (int i = -1; i <= 1 && half > 0.0; i += 2)
        {
          GwSlice slice;
          double  area;

          gw_surface_slice (surface, from + half * (1.0 + i / sqrt (3.0)), &slice);
          area = sides * half * slice.chord;
          out->area += tau * area;
          out->moment += tau * area * (slice.at[0] + 0.25 * slice.chord);
          out->own += own * area * slice.chord * fabs (slice.up[2]);
        }
    }

  out->up = fmin (out->up, control->up);
  out->down = fmin (out->down, control->down);
}

static GwStallReach
reach_of (const GwSurface *surface)
{
  GwStallReach out = { .up = INFINITY, .down = INFINITY };

  for (size_t i = 0; i < surface->n_controls; i++)
    if (does_trim (surface->controls[i].kind))
      add_control (surface, &surface->controls[i], &out);

  if (!(out.area > 0.0))
    out = (GwStallReach){ 0 };
  return out;
}

GwStatus
gw_stall_model_init (GwStallModel     *model,
                     const GwAircraft *aircraft,
                     const GwGeometry *geometry,
                     const GwAir      *air,
                     double            balance_x)
{
  const size_t n = geometry->n_surfaces;

  *model = (GwStallModel){ aircraft, geometry, air, balance_x, NULL, NULL, NAN, NAN, 2.0 };
  model->lifts = calloc (n, sizeof *model->lifts);
  model->reach = calloc (n, sizeof *model->reach);
  if (model->lifts == NULL || model->reach == NULL)
    return GW_ENOMEM;

  for (size_t i = 0; i < n; i++)
    model->reach[i] = reach_of (&aircraft->surfaces[i]);
  return GW_OK;
}

void
gw_stall_model_clear (GwStallModel *model)
{
  free (model->lifts);
  free (model->reach);
}

static GwStatus
find_lifts (GwStallModel *model,
            double        speed)
{
  for (size_t i = 0; i < model->geometry->n_surfaces; i++)
    if (model->aircraft->surfaces[i].role != GW_ROLE_FIN)
      {
        const GwStatus status = gw_lift_of_spanwise (&model->geometry->spanwise[i], model->air,
                                                     speed, &model->lifts[i]);

        if (status != GW_OK)
          return status;
      }

  return GW_OK;
}

/* A surface that only follows the body's angle; in the wake its own angle is
 * alpha - downwash x (alpha - alpha_zero of the wing). */
static void
add_surface (const GwStallModel *model,
             size_t              i,
             GwStallState       *state)
{
  const GwGeometry *geometry = model->geometry;
  const GwLift     *lift = &model->lifts[i];
  const GwWake      wake = gw_wake_at (model->aircraft, geometry, model->lifts, i);
  const double      area = geometry->shapes[i].projected_area * wake.efficiency;
  const double      slope = lift->lift_slope * area * (1.0 - wake.downwash);
  const double      level = lift->lift_slope * area *
                       (wake.downwash * model->lifts[geometry->wing].alpha_zero - lift->alpha_zero);

  state->lift[0] += level;
  state->lift[1] += slope;
  state->moment[0] += area * geometry->shapes[i].mac * lift->cm_zero - level * lift->centre_x;
  state->moment[1] -= slope * lift->centre_x;
}

static void
add_trim_surface (const GwStallModel *model,
                  GwStallState       *state)
{
  const size_t  i = (size_t) model->geometry->trim;
  const GwLift *lift = &model->lifts[i];
  const GwWake  wake = gw_wake_at (model->aircraft, model->geometry, model->lifts, i);
  const double  area = model->geometry->shapes[i].projected_area * wake.efficiency;

  state->is_trimmed = true;
  state->trim_lift = area;
  state->trim_moment = -area * lift->centre_x;
  state->least = lift->cl_min;
  state->most = lift->cl_max;
  state->moment[0] += area * model->geometry->shapes[i].mac * lift->cm_zero;
}

/* Elevons: their lift by the wing's slope, at the quarter chord of their strips, and the
 * moment of the deflected section. Without a stated throw they have no limit. */
static void
add_elevons (const GwStallModel *model,
             GwStallState       *state)
{
  state->least = -INFINITY;
  state->most = INFINITY;

  for (size_t i = 0; i < model->geometry->n_surfaces; i++)
    {
      const GwStallReach *reach = &model->reach[i];
      const double        slope = model->lifts[i].lift_slope;

      if (!(reach->area > 0.0) || model->aircraft->surfaces[i].role == GW_ROLE_FIN)
        continue;
      state->is_trimmed = true;
      state->trim_lift += slope * reach->area;
      state->trim_moment += reach->own - slope * reach->moment;
      if (reach->up > 0.0 || reach->down > 0.0)
        {
          state->least = fmax (state->least, -reach->up);
          state->most = fmin (state->most, reach->down);
        }
    }
}

static void
add_bodies (const GwStallModel *model,
            GwStallState       *state)
{
  const double zero = model->lifts[model->geometry->wing].alpha_zero;
  GwBodyMoment bodies;

  gw_body_moment (model->aircraft, model->geometry, model->lifts, &bodies);
  state->moment[0] += (bodies.still - bodies.turned) * zero;
  state->moment[1] += bodies.turned;
}

/* The wing that lets go at the least angle; tails do not count. */
static void
find_first (const GwStallModel *model,
            GwStallState       *state)
{
  state->alpha = INFINITY;

  for (size_t i = 0; i < model->geometry->n_surfaces; i++)
    {
      const GwRole  role = model->aircraft->surfaces[i].role;
      const GwLift *lift = &model->lifts[i];
      const double  alpha = lift->alpha_zero + lift->cl_max / lift->lift_slope;

      if ((int) i != model->geometry->trim && alpha < state->alpha &&
          (role == GW_ROLE_WING || role == GW_ROLE_SECOND_WING || role == GW_ROLE_CANARD))
        {
          state->alpha = alpha;
          state->surface = (int) i;
        }
    }
}

GwStatus
gw_stall_state_at (GwStallModel *model,
                   double        speed,
                   GwStallState *out)
{
  const GwStatus status = find_lifts (model, speed);

  if (status != GW_OK)
    return status;

  *out = (GwStallState){ .pressure = 0.5 * model->air->density * speed * speed };
  for (size_t i = 0; i < model->geometry->n_surfaces; i++)
    if ((int) i != model->geometry->trim && model->aircraft->surfaces[i].role != GW_ROLE_FIN)
      add_surface (model, i, out);

  if (model->geometry->trim >= 0)
    add_trim_surface (model, out);
  else
    add_elevons (model, out);
  add_bodies (model, out);
  find_first (model, out);
  return GW_OK;
}

/* Setting with the stick fully back, at the state's angle. */
bool
gw_stall_full_setting (const GwStallModel *model,
                       const GwStallState *state,
                       double             *setting)
{
  const GwGeometry   *geometry = model->geometry;
  const GwLift       *lift, *wing = &model->lifts[geometry->wing];
  const GwStallReach *reach;
  double              turn, angle;
  GwWake              wake;

  if (geometry->trim < 0)
    {
      *setting = state->least;
      return isfinite (*setting) && *setting < 0.0;
    }

  lift = &model->lifts[geometry->trim];
  reach = &model->reach[geometry->trim];
  turn = lift->centre_x > wing->centre_x ? -reach->up : reach->down;
  wake = gw_wake_at (model->aircraft, geometry, model->lifts, (size_t) geometry->trim);
  angle = state->alpha - wake.downwash * (state->alpha - wing->alpha_zero) - lift->alpha_zero +
          turn * reach->area / geometry->shapes[geometry->trim].projected_area;
  *setting = fmin (fmax (lift->lift_slope * angle, state->least), state->most);
  return turn != 0.0;
}
