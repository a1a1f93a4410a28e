/* gw-stability.h - neutral point, trim and the limits of the balance point
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

#include "engine/gw-aircraft.h"
#include "engine/gw-lift.h"

#define GW_TAIL_EFFICIENCY 0.90 /* dynamic pressure at the tail over free stream; 0.85-0.95 in use */

/* Everything about the shape that does not change with mass: made once per geometry. */
typedef struct
{
  int             wing; /* index of the main wing (first of role wing) */
  int             trim; /* index of the surface that trims: tailplane, V-tail or canard; -1: none */
  GwSurfaceShape *shapes; /* (array length=n_surfaces) */
  size_t          n_surfaces;
  double          area;  /* reference: projected area of all wings [m2] */
  double          mac;   /* reference: of the main wing [m] */
  double          mac_x; /* leading edge of that chord [m] */
} GwGeometry;

/** gw_geometry_init: Returns: %GW_OK; %GW_EDOM without a wing; as gw_surface_shape(); %GW_ENOMEM. */
GwStatus gw_geometry_init  (const GwAircraft *aircraft,
                            GwGeometry       *out);
void     gw_geometry_clear (GwGeometry *geometry);

/**
 * gw_downwash_gradient:
 * @arm: from the wing's aerodynamic centre to the tail's [m], > 0
 * @height: of the tail above the wing's plane [m]
 *
 * d epsilon / d alpha at a tail behind a wing.
 *
 * Source: Hoak et al., USAF Stability and Control Datcom (1960-78), section 4.4.1:
 * 4.44 (K_A K_lambda K_H sqrt (cos sweep_quarter))^1.19; recalled, checked in the
 * tests against Prandtl's far-wake value 2 CLa / (pi A) as upper bound.
 */
double gw_downwash_gradient (const GwSurfaceShape *wing,
                             double                arm,
                             double                height);

typedef struct
{
  double neutral_point;  /* stick fixed, power off [m] from the datum */
  double lift_slope;     /* of the aircraft [1/rad] on the reference area */
  double downwash;       /* d epsilon / d alpha at the trimming surface */
  double tail_volume;    /* horizontal, on the reference area and mean chord; 0 without one */
  double fin_volume;     /* vertical, on the span; 0 without one */
  double body_share;     /* neutral point moved by the bodies [m], negative: forward */
} GwStability;

/**
 * gw_stability_of:
 * @lifts: (array length=n_surfaces): of each surface at the same speed (fins unused)
 *
 * Sum of the slopes times their arms; tail with downwash and efficiency; bodies
 * by Multhopp's strip integral with the bound vortex's own upwash ahead of the
 * wing (Multhopp, Aerodynamics of the fuselage, NACA TM 1036, 1942).
 * aircraft->neutral_point_shift is added last.
 *
 * Returns: %GW_OK; %GW_EDOM if the slopes sum to nothing.
 */
GwStatus gw_stability_of (const GwAircraft *aircraft,
                          const GwGeometry *geometry,
                          const GwLift     *lifts,
                          GwStability      *out);
