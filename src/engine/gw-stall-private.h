/* gw-stall-private.h - the balance that stall speed and forward limit are found from
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-stall.h"

/* What the controls that trim do, both sides, per radian down. */
typedef struct
{
  double area;     /* integral of tau x chord along the surface [m2] */
  double moment;   /* of that area about the datum [m3] */
  double own;      /* integral of d cm / d delta x chord^2 [m3] */
  double up, down; /* least throw of them [rad] */
} GwStallReach;

/* All that stands still while the speed is sought. */
typedef struct
{
  const GwAircraft *aircraft;
  const GwGeometry *geometry;
  const GwAir      *air;
  double            balance_x;
  GwLift           *lifts; /* of each surface but fins, at the last speed */
  GwStallReach     *reach; /* of each surface */
  double            log_speed, log_mass; /* last that went together; NAN: none yet */
  double            rise;                /* d log mass / d log speed there */
} GwStallModel;

/* The aircraft at one speed. Lift over dynamic pressure is lift[0] + lift[1] alpha, its
 * moment about the datum, nose up, likewise; the trimming device adds its two numbers
 * times its setting, which is a lift coefficient or an angle of the elevons. */
typedef struct
{
  double pressure; /* dynamic [Pa] */
  double lift[2], moment[2];
  double trim_lift, trim_moment, least, most;
  bool   is_trimmed;
  double alpha;   /* at which the first wing lets go */
  int    surface; /* which that is */
} GwStallState;

/** gw_stall_model_init: after any status the model is to be cleared. */
GwStatus gw_stall_model_init (GwStallModel     *model,
                              const GwAircraft *aircraft,
                              const GwGeometry *geometry,
                              const GwAir      *air,
                              double            balance_x);
void     gw_stall_model_clear (GwStallModel *model);

/** gw_stall_state_at: Returns: as gw_lift_of_spanwise(). */
GwStatus gw_stall_state_at (GwStallModel *model,
                            double        speed,
                            GwStallState *out);

/**
 * gw_stall_full_setting:
 * @setting: (out): of the trimming device with the stick fully back, at the state's angle
 *
 * Returns: whether a control states its throw.
 */
bool gw_stall_full_setting (const GwStallModel *model,
                            const GwStallState *state,
                            double             *setting);
