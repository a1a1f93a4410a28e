/* gw-stability.h - neutral point, trim and the limits of the balance point
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

#include "engine/gw-aircraft.h"
#include "engine/gw-lift.h"

/* Dynamic pressure at the tail over that of the free stream; 0.85-0.95 in use. */
#define GW_TAIL_EFFICIENCY 0.90

/* Everything about the shape that does not change with mass: made once per geometry. */
typedef struct
{
  int             wing; /* index of the main wing (first of role wing) */
  int             trim; /* index of the surface that trims: the first tailplane or V-tail, else
                         * the first canard; -1: none */
  GwSurfaceShape *shapes; /* (array length=n_surfaces) */
  GwSpanwise     *spanwise; /* (array length=n_surfaces): not of fins; borrows the sections */
  size_t          n_surfaces;
  double          area;  /* reference: projected area of all wings [m2] */
  double          mac;   /* reference: of the main wing [m] */
  double          mac_x; /* leading edge of that chord [m] */
} GwGeometry;

/**
 * gw_geometry_init:
 *
 * Returns: %GW_OK; %GW_EDOM without a wing; %GW_ENOMEM; as gw_surface_shape() and
 *   gw_spanwise_of(). @out is empty after an error.
 */
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
 * tests against Prandtl's far-wake value 2 CLa / (pi A) as upper bound. Kept within
 * 0 and 1, which the formula leaves close behind the wing.
 */
double gw_downwash_gradient (const GwSurfaceShape *wing,
                             double                arm,
                             double                height);

/* The air that the main wing leaves to a surface: 1 and 0 for all but a tailplane or
 * V-tail behind it, at the arm and height from one aerodynamic centre to the other. */
typedef struct
{
  double efficiency; /* dynamic pressure over that of the free stream */
  double downwash;   /* d epsilon / d alpha */
} GwWake;

GwWake gw_wake_at (const GwAircraft *aircraft,
                   const GwGeometry *geometry,
                   const GwLift     *lifts,
                   size_t            surface);

/* Pitching moment of all bodies over the dynamic pressure, nose up:
 * still x alpha_zero + turned x (alpha - alpha_zero), alpha_zero of the main wing. */
typedef struct
{
  double still;  /* pi / 2 x integral of width^2 dx [m3] */
  double turned; /* pi / 2 x integral of width^2 x d beta / d alpha dx [m3] */
} GwBodyMoment;

/**
 * gw_body_moment:
 *
 * Strip integral over the bodies' width; d beta / d alpha, the turn of the local flow,
 * is 1 + CLa c / (4 pi d) at d (at least c / 4) ahead of the quarter chord, by the bound
 * vortex of the wing's root; nothing alongside the wing; behind it rises in a straight
 * line to 1 - downwash at the tail, half a span back without one.
 *
 * Source: Multhopp, Aerodynamics of the fuselage, NACA TM 1036 (1942); from memory.
 */
void gw_body_moment (const GwAircraft *aircraft,
                     const GwGeometry *geometry,
                     const GwLift     *lifts,
                     GwBodyMoment     *out);

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
 * as gw_body_moment(). aircraft->neutral_point_shift is added last.
 * Left out: what a canard does to the wing behind it (its downwash on the inner and
 * upwash on the outer part, which moves the neutral point forward), what two wings do to
 * each other, and a running propeller.
 *
 * Returns: %GW_OK; %GW_EDOM if the slopes sum to nothing.
 */
GwStatus gw_stability_of (const GwAircraft *aircraft,
                          const GwGeometry *geometry,
                          const GwLift     *lifts,
                          GwStability      *out);
