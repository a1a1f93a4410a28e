/* gw-panel.h - flow without friction about an outline, and what displacing it does
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-outline.h"
#include "engine/gw-status.h"

#define GW_PANEL_MAX    180 /* nodes on the outline */
#define GW_WAKE_N       20  /* nodes of the wake, the first in the middle of the trailing edge */
#define GW_PANEL_MATRIX ((GW_PANEL_MAX + 1) * (GW_PANEL_MAX + 1))
#define GW_FLOW_MAX     (GW_PANEL_MAX + GW_WAKE_N)

/* Lengths in chords, speeds in units of the free stream throughout. Nodes run from the
 * trailing edge over the upper side to the nose and back along the lower side. */

typedef struct
{
  double hinge;      /* place of the hinge, in chords; 1 or more: no flap */
  double height;     /* of the hinge in the section's depth, 0 lower side to 1 upper side */
  double deflection; /* [rad], trailing edge down positive */
} GwPanelFlap;

typedef struct
{
  size_t n; /* nodes */
  double x[GW_PANEL_MAX];
  double y[GW_PANEL_MAX];
  double length[GW_PANEL_MAX]; /* of the panel from a node to the next; the last is the base */
  double gap;                  /* height of the blunt edge square to its bisector */
  double bisector[2];          /* direction in which the flow leaves the edge */
  double base_source;          /* strengths on the base panel per unit speed at the edge */
  double base_vortex;
  double basic[2][GW_PANEL_MAX];               /* vortices in streams along x and y */
  double response[GW_PANEL_MAX][GW_PANEL_MAX]; /* and per unit source on a panel */
  double factors[GW_PANEL_MATRIX];             /* of the equations, LU */
  size_t order[GW_PANEL_MAX + 1];              /* of its rows */
} GwPanels;

/* A flow at one incidence, nothing displaced. Stations: the nodes of the outline, then those of
 * the wake. Along the outline speeds count against the order of nodes, along the wake with it. */
typedef struct
{
  double alpha;
  double wake_x[GW_WAKE_N];
  double wake_y[GW_WAKE_N];
  double wake_s[GW_WAKE_N]; /* arc length from the edge */
  double speed[GW_FLOW_MAX];
  double mass[GW_FLOW_MAX][GW_FLOW_MAX]; /* change of the speed at a station per unit of mass
                                          * defect at another, the defect counted with the
                                          * order of nodes (the upper side's is negative) */
} GwFlow;

/**
 * gw_panel_nodes:
 * @flap: (nullable): a plain flap, its gap sealed
 * @n: number of nodes, 40 to %GW_PANEL_MAX
 * @xy: (out) (array length=2n): x, y pairs
 *
 * Spaces nodes by arc length and curvature: a panel at the nose turns by some five
 * to ten degrees. Behind the hinge everything turns about it; the turn spreads over
 * a short stretch, two panels or what keeps the inner side from folding over itself.
 *
 * Returns: %GW_OK; %GW_EINVAL if @n, the hinge (0.3 to 0.97) or the deflection (+-60
 *   degrees) is outside its range, or the outline has no depth or crosses itself.
 */
GwStatus gw_panel_nodes (const GwOutline   *outline,
                         const GwPanelFlap *flap,
                         size_t             n,
                         double            *xy);

/**
 * gw_panels_init:
 * @n: number of nodes, 20 to %GW_PANEL_MAX
 * @xy: (array length=2n): nodes, anticlockwise from the trailing edge
 *
 * Vortices that vary linearly along each panel and make the stream function the same
 * at all nodes, so that the vortex strength at a node is the speed outside it; Kutta:
 * both sides leave the edge equally fast. A blunt edge is closed by a base panel with
 * the source and vortex that let the stream leave along the bisector of the edge.
 *
 * Accuracy: error of the speed about the square of a panel's length over the radius
 * of curvature; see the tests for a cylinder and a Joukowski outline.
 *
 * Source: Katz & Plotkin, Low-Speed Aerodynamics, ch. 11; stream function: Kennedy &
 * Marsden, Potential flow velocity distributions on multi-component airfoil sections,
 * Canadian Aeronautics and Space Journal 22 (1976); integrals and base panel derived here.
 *
 * Returns: %GW_OK; %GW_EINVAL if points are too few, not finite, clockwise, or coincide;
 *   %GW_EDOM if the equations are singular.
 */
GwStatus gw_panels_init (GwPanels     *panels,
                         size_t        n,
                         const double *xy);

/**
 * gw_flow_init:
 * @alpha: incidence [rad]
 *
 * Traces the wake along the stream that leaves the edge, a chord long, and finds what
 * a mass defect m (speed times displacement thickness) does to the speed everywhere:
 * each panel of outline and wake emits dm/ds.
 *
 * Source: Lighthill, On displacement thickness, Journal of Fluid Mechanics 4 (1958).
 */
void gw_flow_init (GwFlow         *flow,
                   const GwPanels *panels,
                   double          alpha);
