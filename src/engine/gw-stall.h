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
  int    surface;     /* index of the wing that lets go first */
  double eta;         /* where it does, fraction of the semispan */
  double re;          /* Reynolds number there */
  bool   is_tail_limit; /* the trimming surface, not the wing, sets this speed */
  bool   is_outside;  /* a section was asked beyond its table */
} GwStall;

/**
 * gw_stall_of:
 * @mass: [kg], > 0
 * @balance_x: balance point [m]
 *
 * Finds the speed (1e-6 relative) at which what the aircraft carries is its mass. At
 * each speed the wing is at its cl_max, of several wings the one that lets go at the
 * least angle; the trimming surface carries what balances lift and moment of the others
 * and of the bodies about the balance point; the sum is the weight. If the trimming
 * surface cannot carry that load, the angle at which it can is taken and said. Without a
 * trimming surface (tailless) elevons balance, with the lift they cost by Glauert's flap
 * theory, within their throws; without elevons the trim is taken to be in the shape and
 * costs nothing.
 * The trimming surface may reach its own limits, its elevator at whatever angle that
 * takes, and has its own moment.
 * Left out: thrust, and that lift leans forward of and drag acts above or below the
 * balance point, two moments against each other; the wake of a canard on the wing.
 *
 * Source: critical-section method, Anderson, NACA Report 572 (1936); balance of
 * moments, e.g. Anderson J. D., Introduction to Flight, ch. 7; flap: Glauert, ARC
 * R&M 1095 (1927).
 *
 * Returns: %GW_OK; %GW_EINVAL for a mass or balance point that is not finite or a mass
 *   not positive; %GW_EDOM if no speed carries the weight; %GW_ENOCONV with the last
 *   iterate; %GW_ENOMEM; as gw_lift_of_surface(). Else *out is untouched.
 */
GwStatus gw_stall_of (const GwAircraft *aircraft,
                      const GwGeometry *geometry,
                      const GwAir      *air,
                      double            mass,
                      double            balance_x,
                      GwStall          *out);

/**
 * gw_stall_curve:
 * @mass: (array length=n): [kg]
 * @speed: (array length=n) (out): as gw_stall_of() for each, to 1e-4 at a kink of the section
 *   data and 1e-6 elsewhere [m/s]; NAN where it has no answer
 *
 * Returns: %GW_OK; %GW_ENOMEM, all are NAN then.
 */
GwStatus gw_stall_curve (const GwAircraft *aircraft,
                         const GwGeometry *geometry,
                         const GwAir      *air,
                         double            balance_x,
                         size_t            n,
                         const double     *mass,
                         double           *speed);

/**
 * gw_stall_mass_at:
 * @speed: stall speed wanted [m/s], > 0
 * @out: (out): the mass that stalls there with the balance point unchanged [kg]
 *
 * One pass of the same balance at a given speed, no iteration.
 *
 * Returns: as gw_stall_of().
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
 * The trimming surface then has the angle that the wing's downwash leaves it, its own
 * incidence, and the whole throw by thin-aerofoil theory (gaps take some 15 to 40 % of
 * that, from memory), but no more load than its own limit; a canard's elevator goes down.
 *
 * Returns: %GW_OK; %GW_EDOM if no control of the trimming surface (or elevon)
 *   states its throw; as gw_stall_of().
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
