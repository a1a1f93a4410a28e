/* gw-stall.h - stall speed, flaps up, power off, trimmed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

#include "engine/gw-air.h"
#include "engine/gw-aircraft.h"
#include "engine/gw-stability.h"

typedef struct
{
  double speed;       /* [m/s] */
  double cl_max;      /* of the whole aircraft on the reference area, trim load included */
  double wing_cl_max; /* of the main wing */
  double alpha;       /* body angle [rad] */
  double trim_load;   /* on the trimming surface, up positive [N]; 0 without one */
  double eta;         /* where the wing lets go, fraction of the semispan */
  double re;          /* Reynolds number there */
  bool   is_tail_limit; /* the trimming surface, not the wing, sets this speed */
  bool   is_outside;  /* a section was asked beyond its table */
} GwStall;

/**
 * gw_stall_of:
 * @mass: [kg], > 0
 * @balance_x: balance point [m]
 *
 * Iterates speed, Reynolds number and greatest lift until the speed stands still
 * (1e-6 relative). At each pass the wing is at its cl_max; the trimming surface
 * carries what balances the wing's lift and moment about the balance point; the
 * sum equals the weight. If the trimming surface cannot carry that load, the
 * speed at which it can is taken and said. Without a trimming surface (tailless)
 * the lift lost to a trimming elevon is taken from Glauert's flap theory: the
 * elevon's lift at the moment needed.
 *
 * Source: critical-section method, Anderson, NACA Report 572 (1936); balance of
 * moments, e.g. Anderson J. D., Introduction to Flight, ch. 7; flap: Glauert, ARC
 * R&M 1095 (1927).
 *
 * Returns: %GW_OK; %GW_EINVAL for a mass that is not positive; %GW_EDOM if no
 *   speed carries the weight; %GW_ENOCONV with the last iterate.
 */
GwStatus gw_stall_of (const GwAircraft *aircraft,
                      const GwGeometry *geometry,
                      const GwAir      *air,
                      double            mass,
                      double            balance_x,
                      GwStall          *out);

/**
 * gw_stall_mass_at:
 * @speed: stall speed wanted [m/s]
 * @out: (out): the mass that stalls there with the balance point unchanged [kg]
 *
 * One pass of the same balance at a given speed, no iteration.
 */
GwStatus gw_stall_mass_at (const GwAircraft *aircraft,
                           const GwGeometry *geometry,
                           const GwAir      *air,
                           double            balance_x,
                           double            speed,
                           double           *out);

/**
 * gw_stall_forward_limit:
 * @out: (out): foremost balance point [m] from which the elevator, full up, still
 *   brings the wing to its cl_max at the stall speed of @mass
 *
 * Returns: %GW_OK; %GW_EDOM if no control of the trimming surface (or elevon)
 *   states its throw.
 */
GwStatus gw_stall_forward_limit (const GwAircraft *aircraft,
                                 const GwGeometry *geometry,
                                 const GwAir      *air,
                                 double            mass,
                                 double           *out);

/** gw_flap_effectiveness: thin-aerofoil tau of a plain flap of @chord_fraction (Glauert 1927). */
double gw_flap_effectiveness (double chord_fraction);

/** gw_flap_moment: d cm (quarter chord) / d delta [1/rad], negative (Glauert 1927). */
double gw_flap_moment (double chord_fraction);
