/* gw-lift.h - one lifting surface in the air: lifting line and first stall
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

#include "engine/gw-air.h"
#include "engine/gw-surface.h"

/* Stations of the lifting line on the starboard half, tip first, at the angles
 * pi (i + 1) / (2 N): the last one is the centre. Odd terms of the Fourier series. */
#define GW_LINE_N 40

typedef struct
{
  /* given */
  double span;                  /* [m] */
  double area;                  /* [m2] */
  double chord[GW_LINE_N];      /* [m] */
  double slope[GW_LINE_N];      /* of the section, sweep taken into account [1/rad] */
  double zero[GW_LINE_N];       /* angle of the reference line at which the local lift is zero [rad] */
  /* found */
  double lift_slope;            /* of the surface [1/rad] */
  double alpha_zero;            /* of the reference line at zero lift [rad] */
  double basic[GW_LINE_N];      /* local lift coefficient at zero total lift */
  double additional[GW_LINE_N]; /* local lift coefficient at a total of 1, less the basic one */
  double delta;                 /* induced drag CDi = CL^2 (1 + delta) / (pi A), additional load */
} GwLine;

/** gw_line_eta: place of station @i as a fraction of the semispan. */
double gw_line_eta (int i);

/**
 * gw_line_solve:
 *
 * Prandtl's equation for a symmetric wing by collocation of N odd Fourier terms;
 * linear solve by LAPACK.
 *
 * Source: Glauert, The Elements of Aerofoil and Airscrew Theory, Cambridge 1926,
 * ch. XI; basic and additional loading after Anderson, NACA Report 572 (1936).
 *
 * Returns: %GW_OK; %GW_EINVAL if span, area or a chord is not positive;
 *   %GW_EDOM if the system is singular.
 */
GwStatus gw_line_solve (GwLine *line);

typedef struct
{
  double lift_slope;  /* [1/rad], referred to the projected area */
  double alpha_zero;  /* body angle at zero lift [rad] */
  double cl_max;      /* of the surface: first station reaches its section's limit */
  double cl_min;      /* the same upside down, negative */
  double stall_eta;   /* where it is reached, fraction of the semispan */
  double re_stall;    /* Reynolds number of that station */
  double re_mac;      /* of the mean chord */
  double cm_zero;     /* moment about the aerodynamic centre at zero lift, per mean chord */
  double centre_x;    /* aerodynamic centre [m] */
  double centre_z;    /* [m] */
  bool   is_outside;  /* a section was asked beyond its table */
} GwLift;

/**
 * gw_lift_of_surface:
 * @speed: [m/s], > 0
 *
 * Section slope, zero-lift angle, moment and greatest lift at each station's own
 * Reynolds number; lifting line; critical-section method for cl_max: the first
 * station at which basic + C_L x additional reaches the section's greatest lift.
 * Upside down the section is taken as symmetric about its zero-lift angle with
 * 0.8 of the upright limit less twice its camber share (see the source file).
 * Sweep: section slope times the cosine of the local half-chord sweep; cranks
 * enter through the local chord and sweep. A V-tail's slope and limits are
 * multiplied by the squared cosine of its dihedral (Purser & Campbell, NACA
 * Report 823, 1945).
 *
 * Source: Anderson, NACA Report 572; Polhamus-type sweep correction, NACA TN
 * 1862 (Diederich 1951 gives the same cosine rule in NACA TN 2335).
 *
 * Returns: as gw_line_solve() and gw_section_at().
 */
GwStatus gw_lift_of_surface (const GwSurface      *surface,
                             const GwSurfaceShape *shape,
                             const GwAir          *air,
                             double                speed,
                             GwLift               *out);

/**
 * gw_lift_slope_closed:
 * @kappa: section slope over 2 pi
 * @sweep_half: of the half-chord line [rad]
 *
 * 2 pi A / (2 + sqrt (4 + (A / kappa)^2 (1 + tan^2 sweep))) [1/rad].
 *
 * Source: Helmbold (1942), Polhamus (1949); recalled in reference form, see tests.
 */
double gw_lift_slope_closed (double aspect_ratio,
                             double kappa,
                             double sweep_half);
