/* gw-figures-private.h - what the figures ask of one another
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-airframe.h"
#include "figures/gw-figure.h"
#include "figures/gw-layout.h"

/** gw_planform_scale: the largest scale at which the planform fits into @box [pt per m]. */
double gw_planform_scale (GwDrawing              *drawing,
                          GwBox                   box,
                          const GwAirframeFigure *figure);

/** gw_side_scale: the same for the side view. */
double gw_side_scale (GwDrawing              *drawing,
                      GwBox                   box,
                      const GwAirframeFigure *figure);

/** gw_planform_labels: names or numbers of the equipment, after all else is drawn. @origin: of the
 * top view [pt] */
void gw_planform_labels (GwDrawing              *drawing,
                         GwCallouts             *callouts,
                         const GwAirframeFigure *figure,
                         const double            origin[2],
                         double                  scale);

/** gw_summary_need: size at which all columns and rows are there, with second lines or without. */
void gw_summary_need (GwDrawing             *drawing,
                      const GwSummaryFigure *figure,
                      bool                   with_second,
                      double                *width,
                      double                *height);

/** gw_masses_need: height at which all bars and the list of parts are there at @width. */
double gw_masses_need (GwDrawing          *drawing,
                       const GwMassFigure *figure,
                       double              width);
