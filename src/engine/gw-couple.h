/* gw-couple.h - flow outside and layers inside, solved together at one incidence
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-layer.h"
#include "engine/gw-panel.h"

/* What may turn the layer of one side before it turns by itself. */
typedef struct
{
  double x;        /* its place in chords; 1 or more: nothing there */
  double height;   /* of a step [chords]; 0: transition is forced there, whatever does it */
  double critical; /* Reynolds number of a step below which it does nothing; 0: 120 */
} GwTrip;

/* Sides: 0 the upper, 1 the lower. Stations of a side run from the stagnation point. */
typedef struct
{
  const GwPanels *panels;
  double          re;
  double          n_crit;
  GwTrip          trips[2];

  GwFlow         flow;
  size_t         count[2]; /* stations of a side */
  GwLayerStation side[2][GW_PANEL_MAX];
  GwLayerStation wake[GW_WAKE_N];
  size_t         turned[2]; /* first turbulent station */
  double         s_turn[2]; /* arc length of transition */
  double         s_forced[2];
  bool           is_tripped[2]; /* the step there is high enough */
  bool           is_ready;      /* holds layers to start from */
  double         part;          /* of a step of Newton that is taken at most */
  int            rounds;        /* that the last solution took */
  double         change;        /* of the last round, root of the mean square */
} GwCoupled;

/**
 * gw_coupled_init:
 *
 * Reynolds number 1e4 to 3e7, n_crit 0.5 to 15. @panels must outlive @coupled.
 *
 * Returns: %GW_OK; %GW_EINVAL
 */
GwStatus gw_coupled_init (GwCoupled      *coupled,
                          const GwPanels *panels,
                          double          re,
                          double          n_crit,
                          const GwTrip    trips[2]);

/**
 * gw_coupled_solve:
 * @alpha: incidence [rad]
 *
 * Starts from the layers it holds, if any. Each round marches both sides and the wake,
 * the speed answering locally to the displacement as in quasi-simultaneous methods, which
 * places transition; and then takes one step of Newton over all stations at once: along
 * each side growth and momentum are eliminated station by station, so that a dense system
 * in the mass defects is left.
 *
 * Source: Drela & Giles (1987), see gw-layer.h; Veldman, New quasi-simultaneous method to
 * calculate interacting boundary layers, AIAA Journal 19(1) (1981); elimination derived here.
 *
 * Returns: %GW_OK; %GW_ENOCONV, the layers are then not to be started from.
 */
GwStatus gw_coupled_solve (GwCoupled *coupled,
                           double     alpha,
                           int        rounds_most);

typedef struct
{
  double cl, cd, cm;      /* moment about the quarter chord, nose up positive */
  double x_turn[2];       /* transition, in chords; 1: none */
  double x_separation[2]; /* first place of flow backwards, in chords; 1: none */
  double x_attachment[2]; /* where it ends for good; 1: not before the edge */
  double pressure_rise;   /* from the least on the outline to that at the edge, coefficients */
} GwCoupledSums;

/**
 * gw_coupled_sums:
 *
 * Lift and moment from the pressure along the outline; drag from the momentum of the wake,
 * carried on to where the pressure is that of the stream.
 *
 * Source: Squire & Young, The calculation of the profile drag of aerofoils, ARC R&M 1838 (1938).
 */
void gw_coupled_sums (const GwCoupled *coupled,
                      GwCoupledSums   *out);

/** gw_coupled_node: node of the outline under a station of a side. */
size_t gw_coupled_node (const GwCoupled *coupled,
                        int              side,
                        size_t           station);
