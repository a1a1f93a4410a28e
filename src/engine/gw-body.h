/* gw-body.h - bodies: fuselages, booms, pods
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-aircraft.h"
#include "engine/gw-moments.h"
#include "engine/gw-status.h"

/* Of one body, also if it is mirrored; blunt ends are closed by flat faces. */
typedef struct
{
  double length;               /* [m] */
  double wetted_area;          /* [m2] */
  double volume;               /* [m3] */
  double width_squared_length; /* integral of width^2 dx [m3], for the pitching moment */
} GwBodyShape;

/**
 * gw_body_shape:
 * @skin: (out) (nullable): moments of the skin, unit areal density
 *
 * Superelliptic cross-sections, straight between stations. Area and volume within 0.05 %,
 * of a bay that turns from upright to flat within 0.5 %.
 *
 * Returns: %GW_OK; %GW_EINVAL with fewer than two stations, x not rising, or
 *   sizes negative or not finite.
 */
GwStatus gw_body_shape (const GwBody *body,
                        GwBodyShape  *out,
                        GwMoments    *skin);

/** gw_body_edge: upper (or lower) edge of the side view at @x [m]; NAN beyond the ends. */
double gw_body_edge (const GwBody *body,
                     double        x,
                     bool          is_upper);

/** gw_body_half_width: half the width at @x [m]; 0 beyond the ends. */
double gw_body_half_width (const GwBody *body,
                           double        x);
