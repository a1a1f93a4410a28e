/* gw-couple-private.h - shared by the files of gw-couple: Newton's method over all layers
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-couple.h"

#define GW_NEWTON_WIDE (GW_FLOW_MAX + 1)

/* Changes of a and theta at a station as sums over the changes of all mass defects, the
 * last entry a constant. */
typedef struct
{
  double a[GW_NEWTON_WIDE];
  double theta[GW_NEWTON_WIDE];
} GwNewtonSums;

/* The same change in terms of the station's own and the one before: changes of mass and
 * speed here, a, theta, mass and speed there, constant. */
typedef struct
{
  double a[7];
  double theta[7];
} GwNewtonLocal;

typedef struct
{
  GwCoupled    *coupled;
  size_t        n;                 /* nodes of the outline */
  size_t        all;               /* stations: unknown mass defects */
  double        lack[GW_FLOW_MAX]; /* speed the flow wants less the speed the layer has */
  double        matrix[GW_FLOW_MAX * GW_FLOW_MAX];
  double        right[GW_FLOW_MAX];
  GwNewtonLocal local[GW_FLOW_MAX]; /* by node */
  GwNewtonSums  sums[4];            /* working space: here and before, of each side */
  size_t        order[GW_FLOW_MAX];
} GwNewton;

/* A station with what the elimination needs to know about it. */
typedef struct
{
  GwLayerStation *at;
  size_t          node;
  double          speed_sign; /* of its speed against the strength of the vortex there */
  double          mass_sign;  /* of its mass defect against that of the flow */
} GwPlace;

/**
 * gw_coupled_newton:
 *
 * One step of Newton with limited changes.
 *
 * Returns: root of the mean square of the relative changes it wanted; negative if the
 *   equations were singular or not finite.
 */
double gw_coupled_newton (GwCoupled *coupled);

/** gw_place_side, gw_place_wake: a station of a side, of the wake. */
GwPlace gw_place_side (GwCoupled *coupled,
                       int        side,
                       size_t     i);
GwPlace gw_place_wake (GwCoupled *coupled,
                       size_t     i);

/**
 * gw_newton_apply:
 *
 * From the changes of the mass defects (in @right) to those of all layers, taken as far as
 * none grows too much.
 *
 * Returns: root of the mean square of the relative changes wanted
 */
double gw_newton_apply (GwNewton *newton);
