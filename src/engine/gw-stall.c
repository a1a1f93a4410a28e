/* gw-stall.c - stall speed, flaps up, power off, trimmed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-stall-private.h"

#include <math.h>

/* Angle of the hinge on the circle of thin-aerofoil theory, x = (1 - cos) / 2. */
static double
hinge_angle (double chord_fraction)
{
  return acos (2.0 * fmin (fmax (chord_fraction, 0.0), 1.0) - 1.0);
}

double
gw_flap_effectiveness (double chord_fraction)
{
  const double angle = hinge_angle (chord_fraction);

  return 1.0 - (angle - sin (angle)) / M_PI;
}

double
gw_flap_moment (double chord_fraction)
{
  const double angle = hinge_angle (chord_fraction);

  return -0.5 * sin (angle) * (1.0 - cos (angle));
}

/* What one speed gives. */
typedef struct
{
  GwStall stall;
  double  mass;
  double  balance_x;
} Pass;

typedef GwStatus (*PassFunc) (GwStallModel *, double, Pass *);

static void
report (const GwStallModel *model,
        const GwStallState *state,
        double              speed,
        double              alpha,
        double              setting,
        Pass               *out)
{
  const double  lift = state->lift[0] + state->lift[1] * alpha + state->trim_lift * setting;
  const GwLift *first = &model->lifts[state->surface];
  bool          is_outside = false;

  for (size_t i = 0; i < model->geometry->n_surfaces; i++)
    is_outside = is_outside || model->lifts[i].is_outside;

  out->mass = state->pressure * lift / GW_GRAVITY;
  out->stall = (GwStall){
    .speed = speed,
    .cl_max = lift / model->geometry->area,
    .wing_cl_max = model->lifts[model->geometry->wing].cl_max,
    .alpha = alpha,
    .trim_load = model->geometry->trim >= 0 ? state->pressure * state->trim_lift * setting : 0.0,
    .surface = state->surface,
    .eta = first->stall_eta,
    .re = first->re_stall,
    .is_outside = is_outside,
  };
}

/* The balance at one speed. Moments about the balance point are those about the datum
 * plus balance_x times lift; all are straight in alpha and in the trim setting. */
static GwStatus
pass_trimmed (GwStallModel *model,
              double        speed,
              Pass         *out)
{
  GwStallState   state;
  const GwStatus status = gw_stall_state_at (model, speed, &state);
  const double   x = model->balance_x;
  double         level, rise, device, needed = 0.0, setting = 0.0, alpha;

  if (status != GW_OK)
    return status;

  level = state.moment[0] + x * state.lift[0];
  rise = state.moment[1] + x * state.lift[1];
  device = state.trim_moment + x * state.trim_lift;
  alpha = state.alpha;
  if (state.is_trimmed)
    {
      needed = -(level + rise * alpha) / device;
      setting = fmin (fmax (needed, state.least), state.most);
    }
  if (setting != needed)
    alpha = -(level + device * setting) / rise;
  if (!(alpha <= state.alpha))
    return GW_EDOM;

  report (model, &state, speed, alpha, setting, out);
  out->balance_x = x;
  out->stall.is_tail_limit = setting != needed;
  return out->mass > 0.0 ? GW_OK : GW_EDOM;
}

/* The balance point that a full control trims at one speed. */
static GwStatus
pass_full (GwStallModel *model,
           double        speed,
           Pass         *out)
{
  GwStallState   state;
  const GwStatus status = gw_stall_state_at (model, speed, &state);
  double         setting, moment;

  if (status != GW_OK)
    return status;
  if (!gw_stall_full_setting (model, &state, &setting))
    return GW_EDOM;

  report (model, &state, speed, state.alpha, setting, out);
  moment = state.moment[0] + state.moment[1] * state.alpha + state.trim_moment * setting;
  out->balance_x = -moment * state.pressure / (out->mass * GW_GRAVITY);
  return out->mass > 0.0 ? GW_OK : GW_EDOM;
}

/* Speed at which @pass carries @mass, to @tolerance of the mass: secant in the logarithms,
 * where the mass rises nearly with the square of the speed, kept between the speeds known
 * to be too low and too high, and halving after some tries. Steep tables of c_lmax, which
 * make plain iteration diverge, do no harm. The next search starts from where this one ends. */
static GwStatus
solve (GwStallModel *model,
       PassFunc      pass,
       double        mass,
       double        tolerance,
       Pass         *out)
{
  const double per_speed = model->air->density * model->geometry->area;
  double       low = -INFINITY, high = INFINITY;

  for (int i = 0; i < 100; i++)
    {
      const double last_speed = model->log_speed, last_mass = model->log_mass;
      double       x = isnan (last_speed) ? 0.5 * log (2.0 * mass * GW_GRAVITY / per_speed)
                                          : last_speed + (log (mass) - last_mass) / model->rise;
      GwStatus     status;

      if (!(x > low && x < high) || (i > 8 && isfinite (high - low)))
        x = 0.5 * (low + high);
      status = pass (model, exp (x), out);
      if (status != GW_OK)
        return status;

      model->log_speed = x;
      model->log_mass = log (out->mass);
      if (fabs (x - last_speed) > 1e-6)
        model->rise = fmin (fmax ((model->log_mass - last_mass) / (x - last_speed), 0.5), 100.0);
      if (fabs (out->mass - mass) < tolerance * mass)
        {
          out->stall.speed *= exp (log (mass / out->mass) / model->rise);
          return GW_OK;
        }

      if (out->mass < mass)
        low = x;
      else
        high = x;
    }

  return GW_ENOCONV;
}

GwStatus
gw_stall_of (const GwAircraft *aircraft,
             const GwGeometry *geometry,
             const GwAir      *air,
             double            mass,
             double            balance_x,
             GwStall          *out)
{
  GwStallModel model;
  Pass         pass;
  GwStatus     status;

  if (!(mass > 0.0) || !isfinite (mass) || !isfinite (balance_x))
    return GW_EINVAL;

  status = gw_stall_model_init (&model, aircraft, geometry, air, balance_x);
  if (status == GW_OK)
    status = solve (&model, pass_trimmed, mass, 1e-7, &pass);
  if (status == GW_OK || status == GW_ENOCONV)
    *out = pass.stall;
  gw_stall_model_clear (&model);
  return status;
}

GwStatus
gw_stall_curve (const GwAircraft *aircraft,
                const GwGeometry *geometry,
                const GwAir      *air,
                double            balance_x,
                size_t            n,
                const double     *mass,
                double           *speed)
{
  GwStallModel   model;
  const GwStatus status = gw_stall_model_init (&model, aircraft, geometry, air, balance_x);

  for (size_t i = 0; i < n; i++)
    {
      Pass pass;

      speed[i] = NAN;
      if (status == GW_OK && mass[i] > 0.0 && isfinite (mass[i]) &&
          solve (&model, pass_trimmed, mass[i], 2e-4, &pass) == GW_OK)
        speed[i] = pass.stall.speed;
    }

  gw_stall_model_clear (&model);
  return status;
}

GwStatus
gw_stall_mass_at (const GwAircraft *aircraft,
                  const GwGeometry *geometry,
                  const GwAir      *air,
                  double            balance_x,
                  double            speed,
                  double           *out)
{
  GwStallModel model;
  Pass         pass;
  GwStatus     status;

  if (!(speed > 0.0) || !isfinite (speed) || !isfinite (balance_x))
    return GW_EINVAL;

  status = gw_stall_model_init (&model, aircraft, geometry, air, balance_x);
  if (status == GW_OK)
    status = pass_trimmed (&model, speed, &pass);
  if (status == GW_OK)
    *out = pass.mass;
  gw_stall_model_clear (&model);
  return status;
}

GwStatus
gw_stall_forward_limit (const GwAircraft *aircraft,
                        const GwGeometry *geometry,
                        const GwAir      *air,
                        double            mass,
                        double           *out)
{
  GwStallModel model;
  Pass         pass;
  GwStatus     status;

  if (!(mass > 0.0) || !isfinite (mass))
    return GW_EINVAL;

  status = gw_stall_model_init (&model, aircraft, geometry, air, 0.0);
  if (status == GW_OK)
    status = solve (&model, pass_full, mass, 1e-7, &pass);
  if (status == GW_OK)
    *out = pass.balance_x;
  gw_stall_model_clear (&model);
  return status;
}
