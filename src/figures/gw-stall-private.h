/* gw-stall-private.h - the stall plot while it is drawn
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-figures-private.h"

typedef struct
{
  const GwStallFigure *figure;
  GwBox                plot;
  double               mass[2], speed[2]; /* range, shown units */
  GwTicks              mass_ticks, speed_ticks;
} GwStallPlot;

GwTone gw_stall_tone (const GwStallCurve *option);

/** gw_stall_x, gw_stall_y: where a mass [kg], a speed [m/s] lies on the sheet. */
double gw_stall_x (const GwStallPlot *stall,
                   double             mass);
double gw_stall_y (const GwStallPlot *stall,
                   double             speed);

/** gw_stall_curves_draw: the line of the wanted speed, bands, curves, whiskers and markers. */
void gw_stall_curves_draw (GwDrawing         *drawing,
                           const GwStallPlot *stall);

/** gw_stall_key_size: of the key in one column. */
GwBox gw_stall_key_size (GwDrawing           *drawing,
                         const GwStallFigure *figure);

void gw_stall_key_draw (GwDrawing           *drawing,
                        const GwStallFigure *figure,
                        GwBox                box,
                        size_t               n_columns);

/** gw_stall_key_place: sets the key into a corner of the plot that no mark from @since on needs;
 * false, and nothing drawn, if there is none. */
bool gw_stall_key_place (GwDrawing           *drawing,
                         const GwStallFigure *figure,
                         GwBox                plot,
                         size_t               since);
