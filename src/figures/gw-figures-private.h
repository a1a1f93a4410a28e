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

/** gw_summary_width: at which all columns are there, second lines in full or none. */
double gw_summary_width (GwDrawing             *drawing,
                         const GwSummaryFigure *figure,
                         bool                   with_second);

/** gw_summary_height: at which all rows are there at @width, with second lines or without. */
double gw_summary_height (GwDrawing             *drawing,
                          const GwSummaryFigure *figure,
                          double                 width,
                          bool                   with_second);

/** gw_masses_need: height at which all bars and the list of parts are there at @width, close or
 * with room. */
double gw_masses_need (GwDrawing          *drawing,
                       const GwMassFigure *figure,
                       double              width,
                       bool                is_roomy);
