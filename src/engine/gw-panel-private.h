/* gw-panel-private.h - shared by gw-panel.c and gw-panel-wake.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-panel.h"

/** gw_panels_solve: @side: (inout) (array length=n+1): right-hand sides, then the strengths. */
bool gw_panels_solve (const GwPanels *panels,
                      double         *side);

/**
 * gw_panels_velocity:
 * @vortex: (out): velocity at x, y per unit vortex strength at the first and the second
 *   node of @panel
 * @source: (out): the same per unit source on it
 */
void gw_panels_velocity (const GwPanels *panels,
                         double          x,
                         double          y,
                         size_t          panel,
                         double          vortex[2][2],
                         double          source[2]);
