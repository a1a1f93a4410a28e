/* gw-aircraft.h - plain inputs of one option: everything the engine is told
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-air.h"
#include "engine/gw-piece.h"
#include "engine/gw-surface.h"

/* Lengths [m], masses [kg], angles [rad]; x aft from the datum, y to starboard,
 * z up. Names are borrowed, for figures only. The engine changes nothing here. */

typedef struct
{
  double x;             /* of the cross-section */
  double z;             /* of its centre */
  double width, height; /* may be 0 at an end */
  double exponent;      /* of the superellipse: 2 ellipse, above 8 nearly a box */
} GwBodyStation;

typedef struct
{
  const char          *name;
  double               y; /* off the centre line, then mirrored if @is_mirrored */
  bool                 is_mirrored;
  size_t               n_stations; /* >= 2, x rising */
  const GwBodyStation *stations;
  double               skin_areal; /* [kg/m2] */
  double               mass_factor;
  double               known_mass; /* of one body, spread over its skin [kg]; NAN: computed */
  bool                 is_weighed; /* that mass is from the scale */
} GwBody;

typedef struct
{
  const char *name;
  double      from[3], to[3];
  double      radius;
  double      mass;
  bool        is_mirrored;
  bool        is_weighed;
} GwStrut;

typedef struct
{
  const char *name;
  double      top[3]; /* where it is held */
  double      axle[3];
  double      leg_mass;
  double      wheel_mass, wheel_radius, wheel_width;
  bool        is_mirrored;
  bool        is_leg_weighed, is_wheel_weighed;
} GwLeg;

typedef struct
{
  const char *name;
  double      motor_at[3], motor_mass, motor_radius, motor_length;
  double      propeller_x; /* of its disc, y and z of the motor */
  double      propeller_mass, propeller_diameter;
  double      controller_at[3], controller_mass;
  bool        is_mirrored;
  bool        is_motor_weighed, is_propeller_weighed, is_controller_weighed;
} GwPower;

typedef enum
{
  GW_ITEM_BATTERY,
  GW_ITEM_SERVO,
  GW_ITEM_RECEIVER,
  GW_ITEM_PAYLOAD,
  GW_ITEM_BALLAST,
  GW_ITEM_OTHER,
  GW_N_ITEM_KINDS
} GwItemKind;

typedef struct
{
  const char *name;
  GwItemKind  kind;
  double      mass;
  double      at[3];   /* centre */
  double      size[3]; /* edges */
  bool        is_mirrored;
  bool        is_weighed;
  double      bay_from, bay_to; /* x its centre may take; NAN: fixed */
  double      lead_linear;      /* [kg/m]; 0: no lead of its own */
  double      lead_to[3];       /* the lead runs there, straight, plus its slack */
  double      lead_slack;       /* extra length [m] */
} GwItem;

typedef struct
{
  double stall_speed;   /* wanted at most [m/s]; NAN: none */
  double mass;          /* wanted at most [kg]; NAN: none */
  double static_margin; /* wanted at least, fraction of the mean chord */
  double balance_x;     /* wanted balance point [m]; NAN: at the wanted static margin */
} GwTargets;

typedef struct
{
  size_t           n_surfaces;
  const GwSurface *surfaces;
  size_t           n_bodies;
  const GwBody    *bodies;
  size_t           n_struts;
  const GwStrut   *struts;
  size_t           n_legs;
  const GwLeg     *legs;
  size_t           n_powers;
  const GwPower   *powers;
  size_t           n_items;
  const GwItem    *items;
  int              movable; /* index of the item that is slid to balance; -1: none */
  GwDay            day;
  GwTargets        targets;
  bool             is_provisional; /* what a section does is guessed until it is computed */
  /* What is not known of the methods themselves, as bands: 0 unless a band is made. */
  double neutral_point_shift; /* fractions of the mean chord */
} GwAircraft;

/**
 * gw_aircraft_pieces: adds every piece of the aircraft, surfaces to leads.
 *
 * Returns: %GW_OK; as gw_build_surface() and gw_body_shape(); %GW_EINVAL also for a
 *   mass that is negative or not finite. Nothing is added after an error.
 */
GwStatus gw_aircraft_pieces (const GwAircraft *aircraft,
                             GwPieces         *pieces);

/** gw_aircraft_ends: foremost and rearmost point of surfaces and bodies, where ballast has its
 * longest arm [m]. */
void gw_aircraft_ends (const GwAircraft *aircraft,
                       double           *nose,
                       double           *tail);
