/* gw-polar-private.h - shared by gw-polar.c and gw-polar-rows.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-polar.h"

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

/** gw_polar_fill: rows of all incidences between the first and the last that converged. */
void gw_polar_fill (const GwPolarCase  *polar_case,
                    const GwPolarTries *tries,
                    GwPolar            *out);

/** gw_polar_insert: a row at its place. */
void gw_polar_insert (GwPolar          *out,
                      const GwPolarRow *row);

/** gw_polar_extreme: row of the greatest lift (@sign 1) or the least (-1). */
size_t gw_polar_extreme (const GwPolar *out,
                         double         sign);
