/* gw-polar-private.h - shared by gw-polar.c and gw-polar-rows.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-polar.h"

/* Of the pressure from its peak at the nose to the edge, beyond which no section has been seen to
 * keep its lift: the layer leaves the nose for good, which two-equation layers, in a bubble of
 * half a per cent of the chord, do not find by themselves.
 * Source: Valarezo & Chin, Method for the prediction of wing maximum lift, Journal of Aircraft
 * 31(1) (1994): 14 at 1e7 and slow flow, less at lower Reynolds numbers (from memory; the
 * greater one is taken at all). */
#define PRESSURE_RISE_MAX 14.0

/* What became of each incidence. */
typedef struct
{
  GwCoupledSums sums[GW_POLAR_MAX];
  bool          is_done[GW_POLAR_MAX];
  bool          is_tried[GW_POLAR_MAX];
} GwPolarTries;

/** gw_polar_alpha: an incidence wanted [rad]. */
double gw_polar_alpha (const GwPolarCase *polar_case,
                       size_t             i);

/**
 * gw_polar_fill:
 *
 * Rows of all incidences between the first and the last that converged; up to where the nose
 * stalls, which is then the last row.
 */
void gw_polar_fill (const GwPolarCase  *polar_case,
                    const GwPolarTries *tries,
                    GwPolar            *out);

/** gw_polar_is_nose_stall: the last row before the nose stalls. */
bool gw_polar_is_nose_stall (const GwPolarRow *row);

/** gw_polar_insert: a row at its place. */
void gw_polar_insert (GwPolar          *out,
                      const GwPolarRow *row);

/** gw_polar_extreme: row of the greatest lift (@sign 1) or the least (-1). */
size_t gw_polar_extreme (const GwPolar *out,
                         double         sign);
