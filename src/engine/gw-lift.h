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
  double zero[GW_LINE_N];       /* angle of the reference line without local lift [rad] */
  /* found */
  double lift_slope;            /* of the surface [1/rad] */
  double alpha_zero;            /* of the reference line at zero lift [rad] */
  double basic[GW_LINE_N];      /* local lift coefficient at zero total lift */
  double additional[GW_LINE_N]; /* local lift coefficient at a total of 1, less the basic one */
  double delta;                 /* induced drag CDi = CL^2 (1 + delta) / (pi A), additional load */
} GwLine;

/** gw_line_eta: place of station @i as a fraction of the semispan. */
double gw_line_eta (int i);

/** gw_line_weight: d eta at station @i; the sum of weight x load is its integral over the half
 * span, exact for the terms kept. */
double gw_line_weight (int i);

/**
 * gw_line_solve:
 *
 * Prandtl's equation for a symmetric wing by collocation of N odd Fourier terms,
 * written for the circulation at the stations: the same system, but symmetric and
 * positive definite; linear solve by Cholesky.
 *
 * Source: Glauert, The Elements of Aerofoil and Airscrew Theory, Cambridge 1926,
 * ch. XI; Multhopp, Die Berechnung der Auftriebsverteilung von Tragfluegeln,
 * Luftfahrtforschung 15 (1938), 153-169, for its form at the stations; basic and
 * additional loading after Anderson, NACA Report 572 (1936).
 *
 * Returns: %GW_OK; %GW_EINVAL if span, area or a chord is not positive or a value
 *   not finite; %GW_EDOM if a slope is not positive. The found part is untouched
 *   then.
 */
GwStatus gw_line_solve (GwLine *line);

/* What the lifting line needs of a surface, read off once, since it does not change
 * with speed. A surface that is not mirrored, and a fin, is taken as reflected at its
 * root; coefficients refer to its own area all the same. Sections are borrowed. */
typedef struct
{
  double           span;              /* of the line, reflection included [m] */
  double           area;              /* projected, reflection included [m2] */
  double           mac;               /* [m] */
  double           chord[GW_LINE_N];  /* [m] */
  double           twist[GW_LINE_N];  /* [rad] */
  double           x[GW_LINE_N];      /* of the quarter chord [m] */
  double           z[GW_LINE_N];      /* [m] */
  double           sweep[GW_LINE_N];  /* cosine of the half-chord sweep, mean of the strip */
  double           tilt[GW_LINE_N];   /* cosine of the dihedral, mean of the strip */
  const GwSection *inner[GW_LINE_N], *outer[GW_LINE_N];
  double           mix[GW_LINE_N];    /* share of the outer one */
  GwFinish         finish[GW_LINE_N];
} GwSpanwise;

/**
 * gw_spanwise_of:
 * @shape: of @surface
 *
 * Returns: %GW_OK; %GW_EINVAL if the surface has no projected span.
 */
GwStatus gw_spanwise_of (const GwSurface      *surface,
                         const GwSurfaceShape *shape,
                         GwSpanwise           *out);

/** gw_spanwise_arc: distance along the surface from its root to the place at @eta [m]. */
double gw_spanwise_arc (const GwSurface *surface,
                        double           eta);

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
 * gw_lift_of_spanwise:
 * @speed: [m/s], > 0
 *
 * Section slope, zero-lift angle, moment and greatest lift at each station's own
 * Reynolds number; lifting line; critical-section method for cl_max: the first
 * station at which basic + C_L x additional reaches the section's greatest lift,
 * the least value between the stations (4 % of the semispan apart amidships, less
 * further out) taken from cubics through them.
 * Upside down a section is taken to let go at the same angle of its chord line as
 * upright: an estimate (see the source file).
 * Small aspect ratio: section slope over sqrt (1 + (a0 / pi A)^2), with which the line
 * agrees with Helmbold's formula for an elliptic load (Prandtl's own is 5 % high at
 * A = 4) and lies within 1 % of lattices.
 * Sweep: section slope times the cosine of the half-chord sweep, mean over each
 * station's strip; cranks enter through the local chord and sweep. Left out: what sweep
 * does to the loading (the aerodynamic centre comes out 5 % of the mean chord too far
 * forward at 45 degrees and A = 3), and the cross-flow of the boundary layer.
 * Dihedral: slope times its cosine, on the projected area; on a V-tail's own area
 * that is the squared cosine of Purser & Campbell (NACA Report 823, 1945). A section
 * feels the body angle times the cosine, its twist and zero-lift angle in full. A normal
 * force that is limited gives the same limits on the projected area.
 * Where a wing begins off the centre line its root chord is carried through.
 *
 * Source: Anderson, NACA Report 572; Helmbold (1942) and Diederich, NACA TN 2335 (1951),
 * for aspect ratio and sweep (from memory).
 *
 * Returns: as gw_line_solve() and gw_section_at(); %GW_EINVAL if @speed or a
 *   section's greatest lift is not positive. *out is untouched then.
 */
GwStatus gw_lift_of_spanwise (const GwSpanwise *spanwise,
                              const GwAir      *air,
                              double            speed,
                              GwLift           *out);

/** gw_lift_of_surface: the same in one step, for a surface at one speed. */
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
