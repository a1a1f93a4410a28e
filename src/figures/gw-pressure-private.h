/* gw-pressure-private.h - a pressure while it is drawn
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-plot.h"

#define GW_PRESSURE_OFFSET       3.2 /* of a mark along the outline from it [pt] */
#define GW_PRESSURE_STATIONS_MAX 24

/* Nodes of a side, from the edge (upper) or from the nose (lower). */
typedef struct
{
  size_t first, n;
} GwPressureSide;

GwPressureSide gw_pressure_side (const GwPressureFigure *figure,
                                 bool                    is_upper);

/** gw_pressure_at: @values of a side at @x, straight between the nodes. */
double gw_pressure_at (const GwPressureFigure *figure,
                       bool                    is_upper,
                       double                  x,
                       const double           *values);

/** gw_pressure_extent: height of the outline [chords]. @highest: (out): its highest point */
double gw_pressure_extent (const GwPressureFigure *figure,
                           double                 *highest);

/** gw_pressure_chord: [pt] */
double gw_pressure_chord (const GwPlot *plot);

/* Where an event begins or ends, with a word for it. */
typedef struct
{
  const char *word;
  bool        is_upper;
  double      x;
  bool        is_tick;
} GwPressureStation;

/** gw_pressure_stations: where all events begin and end. @stations: (out)
 * (array length=%GW_PRESSURE_STATIONS_MAX) */
size_t gw_pressure_stations (const GwPressureFigure *figure,
                             GwPressureStation      *stations);

/** gw_pressure_label: a leader to its word, or a dot alone where that has no room. @is_placed: with
 * its place on the chord */
void gw_pressure_label (GwDrawing               *drawing,
                        GwCallouts              *callouts,
                        const GwPressureStation *station,
                        double                   x,
                        double                   y,
                        bool                     is_placed);

/** gw_pressure_outline: @plot: whose chord it is drawn to; @middle: of its chord line [pt] */
void gw_pressure_outline (GwDrawing              *drawing,
                          GwBox                   box,
                          const GwPressureFigure *figure,
                          const GwPlot           *plot,
                          double                  middle);
