/* gw-section-figures.h - figures of what wing sections do, one function each
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "figures/gw-drawing.h"

/* As in gw-figure.h: strings are translated and borrowed for the call; every function stays
 * inside @box, at any size from 160 x 120 up; a label without room is left out. */

/* What a curve is known by, at its end and in the key. */
typedef struct
{
  const char *letter; /* "A": where there is no room for more */
  const char *name;   /* "NACA 4412" */
  const char *words;  /* nullable: the rest of the key: "Re 96000, all options" */
  int         option; /* the only one that has it, for the tone; -1: several, ink */
  int         pattern;
} GwSectionLabel;

/* What stands around the plots of all three. */
typedef struct
{
  const char *title;
  const char *conditions; /* nullable */
  const char *notes;      /* nullable: sentences below: what is missing and why, sources */
} GwSectionWords;

typedef struct
{
  size_t        n;
  const double *alpha;      /* [rad], rising */
  const double *cl, *cd;    /* NAN: not known */
  const bool   *is_bridged; /* nullable: did not converge, between its neighbours */
} GwPolarLine;

typedef struct
{
  double alpha, cl, cd; /* [rad]; cd NAN: not published */
} GwPolarPoint;

typedef struct
{
  GwSectionLabel      label;
  GwPolarLine         built;  /* as the panel is built */
  GwPolarLine         smooth; /* n 0: that makes no difference */
  size_t              n_points;
  const GwPolarPoint *points; /* measured near that Reynolds number */
} GwPolarCurve;

typedef struct
{
  GwSectionWords      words;
  size_t              n_curves;
  const GwPolarCurve *curves;
} GwPolarFigure;

/* Lift over drag at the left, lift over incidence at the right, to one scale of lift. */
void gw_figure_polar (GwDrawing           *drawing,
                      GwBox                box,
                      const GwPolarFigure *figure);

/* Greatest lift that was measured: a point if low and high are the same, else a range. */
typedef struct
{
  double re;
  double low, value, high;
} GwMeasuredLift;

/* Where an option flies at its stall. */
typedef struct
{
  double re, cl;
  int    option;
} GwFlightPoint;

typedef struct
{
  GwSectionLabel        label;
  size_t                n;
  const double         *re, *cl;    /* rising; as the panel is built */
  const double         *low, *high; /* nullable: band of @cl */
  const double         *smooth;     /* nullable */
  size_t                n_measured;
  const GwMeasuredLift *measured;
  size_t                n_flights;
  const GwFlightPoint  *flights;
} GwGreatestLiftCurve;

typedef struct
{
  GwSectionWords             words;
  size_t                     n_options;
  const char *const         *options; /* names, for the key of the flight points */
  size_t                     n_curves;
  const GwGreatestLiftCurve *curves;
} GwGreatestLiftFigure;

void gw_figure_greatest_lift (GwDrawing                  *drawing,
                              GwBox                       box,
                              const GwGreatestLiftFigure *figure);

typedef enum
{
  GW_FLOW_TRANSITION,         /* at @from */
  GW_FLOW_BUBBLE,             /* laminar separation at @from, reattachment at @to */
  GW_FLOW_SEPARATION,         /* turbulent, from @from to @to */
  GW_FLOW_LAMINAR_SEPARATION, /* that does not reattach */
} GwFlowKind;

typedef struct
{
  GwFlowKind kind;
  bool       is_upper;
  double     from, to; /* [chords] */
} GwFlowEvent;

typedef struct
{
  GwSectionWords     words;
  size_t             n;        /* nodes, from the edge over the top and back; 0: no outline */
  const double      *x, *y;    /* [chords] */
  const double      *pressure; /* coefficient; NULL: not known, the outline alone */
  size_t             n_events;
  const GwFlowEvent *events;
} GwPressureFigure;

/* Pressure coefficient over the chord, negative upwards, the outline below to the same scale.
 * Without pressure the notes say why. */
void gw_figure_pressure (GwDrawing              *drawing,
                         GwBox                   box,
                         const GwPressureFigure *figure);
