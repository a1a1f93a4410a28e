/* gw-airframe.h - an aircraft seen from above or from its port side, as plain shapes
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-aircraft.h"
#include "figures/gw-drawing.h"

typedef enum
{
  GW_SHAPE_SURFACE, /* outline */
  GW_SHAPE_EDGE,    /* of a surface, seen edge on beyond its root */
  GW_SHAPE_SECTION, /* root section, true outline */
  GW_SHAPE_STATION, /* line across a panel */
  GW_SHAPE_QUARTER, /* quarter-chord line */
  GW_SHAPE_SPAR,
  GW_SHAPE_SEAM,    /* between two printed pieces */
  GW_SHAPE_CONTROL, /* with its hinge line */
  GW_SHAPE_BODY,
  GW_SHAPE_STRUT,
  GW_SHAPE_LEG,
  GW_SHAPE_WHEEL,
  GW_SHAPE_MOTOR,
  GW_SHAPE_PROPELLER,
  GW_SHAPE_BAY,
  GW_SHAPE_ITEM,
  GW_N_SHAPES
} GwShapeKind;

typedef struct
{
  GwShapeKind kind;
  GwTarget    target;
  double      level;    /* nearness to the eye; shapes are sorted by it */
  size_t      first, n; /* its points */
  bool        is_closed;
  bool        is_image; /* the mirror image of a shape that is there as well */
} GwShape;

typedef struct
{
  GwShape *shapes;
  size_t   n_shapes, size_shapes;
  size_t   n_skin; /* of them the first ones: all but power units and equipment */
  double  *uv;     /* [m] */
  size_t   n_points, size_points;
  double   low[2], high[2]; /* extent; low above high: nothing to see */
} GwAirframe;

/** gw_airframe_project: what is seen, far shapes first. @is_half: of the top view starboard only.
 * Things that are not finite are left out. */
void gw_airframe_project (const GwAircraft *aircraft,
                          GwView            view,
                          bool              is_half,
                          GwAirframe       *out);
void gw_airframe_clear (GwAirframe *airframe);

/** gw_airframe_draw: adds shapes @from up to @to to the drawing, u = v = 0 at @origin [pt], @scale
 * [pt per m]. */
void gw_airframe_draw (GwDrawing        *drawing,
                       const GwAirframe *airframe,
                       size_t            from,
                       size_t            to,
                       const double      origin[2],
                       double            scale,
                       int               option);
