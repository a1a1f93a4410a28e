/* gw-airframe-private.h - how the projection is put together
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-airframe.h"

/* Where shapes are added and as what. */
typedef struct
{
  GwAirframe *airframe;
  GwView      view;
  bool        is_half;
  bool        is_image; /* y is turned over */
  GwTarget    target;
  double      level;
} GwProjection;

/** gw_projection_add: @xyz: (array length=3n): points [m] */
void gw_projection_add (GwProjection *projection,
                        GwShapeKind   kind,
                        size_t        n,
                        const double *xyz,
                        bool          is_closed);

/** gw_projection_surface: outline and all that is drawn on surface @index. */
void gw_projection_surface (GwProjection    *projection,
                            const GwSurface *surface,
                            int              index);
