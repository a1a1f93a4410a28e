/* gw-polar.h - lift, drag and moment of an outline against incidence
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-couple.h"
#include "engine/gw-section.h"

#define GW_POLAR_MAX     100 /* rows */
#define GW_POLAR_VERSION 4   /* raised whenever results change */

/* Why an outline cannot be computed. */
typedef enum
{
  GW_POLAR_FINE = 0,
  GW_POLAR_NOT_FINITE,
  GW_POLAR_CROSSED,    /* the sides cross */
  GW_POLAR_OPEN,       /* the ends lie more than a tenth of the chord apart */
  GW_POLAR_THIN,       /* under 3 % thick: a plate, see gw-plate.h */
  GW_POLAR_SHARP_NOSE, /* nose radius under 0.05 % of the chord: it separates there */
} GwPolarFault;

typedef struct
{
  GwOutline   outline;
  GwPanelFlap flap;                    /* hinge 0 or 1: none */
  bool        is_open;                 /* the gap at the hinge leaks */
  double      re;                      /* Reynolds number of the chord, 3e4 to 9e6 */
  double      n_crit;                  /* 0.5 to 15; 0: 9, a quiet stream */
  GwTrip      trips[2];                /* upper, lower side; all zero: none */
  size_t      n;                       /* incidences wanted, 3 to %GW_POLAR_MAX - 10 */
  double      alpha_first, alpha_last; /* [rad] */
  double      past;                    /* how far to go past the top [rad]; 0: to the end */
  bool        with_return;             /* from the stall and from jumps, for a second value */
  size_t      panels;                  /* nodes; 0: 130 */
  bool (*is_wanted) (void *data);      /* (nullable): asked between incidences */
  void *data;
} GwPolarCase;

typedef struct
{
  double        alpha; /* [rad] */
  GwCoupledSums sums;
  bool          is_bridged; /* not converged: between its neighbours */
} GwPolarRow;

typedef struct
{
  size_t       n; /* rows, by rising incidence */
  GwPolarRow   rows[GW_POLAR_MAX];
  size_t       tried;               /* incidences, with those lost off the ends */
  size_t       converged;           /* of them */
  bool         has_top, has_bottom; /* the greatest, the least lift lies inside the rows */
  double       cl_max, alpha_max;
  double       cl_min, alpha_min;
  double       cd_min, cl_cd_min;
  bool         is_two_valued;                  /* another lift on the way back from the stall */
  double       two_valued_from, two_valued_to; /* incidences [rad] */
  bool         is_wide;                        /* open gap or fold: good to 15 % */
  bool         is_complete;                    /* was wanted to the end */
  GwPolarFault fault;
} GwPolar;

/** gw_polar_check: faults of an outline. */
GwPolarFault gw_polar_check (const GwOutline *outline);

/**
 * gw_polar_fold:
 *
 * Returns: place of the sharpest fold (over seven degrees) of a side between 3 and 95 % of
 *   the chord; 1 if there is none
 */
double gw_polar_fold (const GwOutline *outline,
                      bool             is_upper);

/**
 * gw_polar_run:
 *
 * Starts near zero lift and goes up, then down, each incidence from the layers of the one
 * before; where that fails in smaller steps, then afresh. The top is searched with two more
 * incidences; where the pressure would rise by more than any nose bears, the polar ends. A
 * fold turns the layer that comes to it.
 *
 * An open gap at the hinge costs a plain flap a tenth to a quarter of its effect; 15 % of the
 * deflection is taken off (from memory, after the sealed and unsealed tests collected in
 * Sears, NACA WR L-663, 1943).
 *
 * Accuracy: see tests/test-polar.c, where its table is held against measurements.
 *
 * Returns: %GW_OK, also when it was no longer wanted (is_complete is then false);
 *   %GW_EINVAL outside the ranges, or the fault is set; %GW_ENOCONV if nothing
 *   converged; %GW_ENOMEM
 */
GwStatus gw_polar_run (const GwPolarCase *polar_case,
                       GwPolar           *out);

/** gw_polar_summarise: top, bottom and least drag anew from the rows. */
void gw_polar_summarise (GwPolar *polar);

/**
 * gw_polar_section_row:
 * @re: of the polar
 *
 * What a wing needs of a polar: its greatest lift, the straight line that lift follows between
 * 0.1 and 0.7 of that (least squares, rising by 2 pi at the most; a real polar is bent at low
 * Reynolds numbers, and there it flies), the mean moment there.
 *
 * Returns: %GW_OK; %GW_EDOM if no such line is there or it does not rise
 */
GwStatus gw_polar_section_row (const GwPolar *polar,
                               double         re,
                               GwSectionRow  *out);

/* The layer over a node of the outline. */
typedef struct
{
  double x, y;                          /* [chords] */
  double pressure;                      /* coefficient */
  double theta, dstar, shape, friction; /* thicknesses [chords], shape, coefficient */
  bool   is_turbulent;
} GwPolarNode;

/**
 * gw_polar_nodes:
 * @alpha: incidence [rad]
 * @n: (out): nodes written
 * @nodes: (out) (array length=%GW_PANEL_MAX): from the edge over the upper side and back
 *
 * Returns: as gw_polar_run(); %GW_ENOCONV if that incidence did not converge, or the nose has
 *   stalled.
 */
GwStatus gw_polar_nodes (const GwPolarCase *polar_case,
                         double             alpha,
                         size_t            *n,
                         GwPolarNode       *nodes,
                         GwCoupledSums     *sums);
