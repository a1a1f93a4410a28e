/* gw-figures-private.h - what the figures ask of one another
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-airframe.h"
#include "figures/gw-figure.h"
#include "figures/gw-layout.h"

/** gw_planform_extent: width and height of what is seen from above [m]; negative: nothing. */
void gw_planform_extent (const GwAirframeFigure *figure,
                         double                  extent[2]);

/** gw_planform_scale: the largest scale at which that extent fits into @box [pt per m]. */
double gw_planform_scale (GwDrawing              *drawing,
                          GwBox                   box,
                          const GwAirframeFigure *figure,
                          const double            extent[2]);

/** gw_side_extent: of the side view, the ground included. */
void gw_side_extent (const GwAirframeFigure *figure,
                     double                  extent[2]);

double gw_side_scale (GwDrawing   *drawing,
                      GwBox        box,
                      const double extent[2]);

/** gw_planform_labels: names or numbers of the equipment, after all else is drawn. @origin: of the
 * top view [pt] */
void gw_planform_labels (GwDrawing              *drawing,
                         GwCallouts             *callouts,
                         const GwAirframeFigure *figure,
                         const double            origin[2],
                         double                  scale);

/** gw_wanted_place_draw: where the movable item balances, as far as its bay lets it go: a thin
 * outline and, where there is room, a word. Last of all
 * in its view: nothing else makes room for it. @since: marks from here on are in the way */
void gw_wanted_place_draw (GwDrawing              *drawing,
                           const GwAirframeFigure *figure,
                           GwView                  view,
                           GwBox                   bounds,
                           size_t                  since,
                           const double            origin[2],
                           double                  scale);

/* What a summary needs at one size of type [pt]. */
typedef struct
{
  double plain;  /* width of a column: number and cross */
  double change; /* widest change, before the number, with its gap */
  double band;   /* widest band, behind it, with its gap */
  double both;   /* widest short band with the change, below it */
  double label;  /* of the labels with their units */
  double folded; /* of the labels, each in two lines, with their units */
  double name;   /* of a column that the longest word of a name needs */
  bool   has_cross, has_band, has_change;
} GwSummaryMeasure;

/** gw_summary_measure: at the small size [0] and that of text [1]. */
void gw_summary_measure (GwDrawing             *drawing,
                         const GwSummaryFigure *figure,
                         GwSummaryMeasure       measures[2]);

/** gw_summary_width: at which all columns are there, second lines in full or none. */
double gw_summary_width (const GwSummaryFigure *figure,
                         const GwSummaryMeasure measures[2],
                         bool                   with_second);

/** gw_summary_height: at which all rows are there at @width, with second lines or without. */
double gw_summary_height (GwDrawing             *drawing,
                          const GwSummaryFigure *figure,
                          const GwSummaryMeasure measures[2],
                          double                 width,
                          bool                   with_second);

/* What a summary says in the room it has, as parts of all that it could. */
typedef struct
{
  double columns, rows;
  bool   is_folded; /* labels take two lines */
  bool   has_bands;
} GwSummaryShare;

/** gw_summary_share: how much there is of it in a box of that size. */
GwSummaryShare gw_summary_share (GwDrawing             *drawing,
                                 const GwSummaryFigure *figure,
                                 const GwSummaryMeasure measures[2],
                                 double                 width,
                                 double                 height);

/** gw_masses_need: height at which all bars and the list of parts are there at @width, close or
 * with room. */
double gw_masses_need (GwDrawing          *drawing,
                       const GwMassFigure *figure,
                       double              width,
                       bool                is_roomy);
