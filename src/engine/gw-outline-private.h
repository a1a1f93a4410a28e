/* gw-outline-private.h - shared by the files that make outlines from equations
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-outline.h"

/* A mean line of four or five digits, in chords. */
typedef struct
{
  double camber, place; /* four digits: two parabolas that meet at the place */
  double r, k;          /* five digits, k > 0: end of the fore cubic, its factor */
  double aft;           /* five digits: factor of the aft cubic over k; 0: a straight line */
} GwMeanLine;

/** GwHalfDepth: half the thickness at the abscissa @root squared, up to 1.02 chords. */
typedef double (*GwHalfDepth) (const void *data,
                               double      root);

/** _gw_outline_wrap: sets the depth off square to the mean line, both ways, and reads off. */
void _gw_outline_wrap (const GwMeanLine *line,
                       GwHalfDepth       half,
                       const void       *data,
                       GwOutline        *out);

/* A curve that leaves x = 0 upright, rises to its crest and falls to the tail: a root and a
 * cubic before the crest, a cubic behind it, with one bend at the crest. */
typedef struct
{
  double place, crest;
  double fore[4]; /* of the root, first, second, third power of x / place */
  double aft[2];  /* of the second and third power of (x - place) / (1 - place) */
} GwHump;

/**
 * _gw_hump_init:
 * @place: of the crest, 0 to 1
 * @crest: height there
 * @tail: height at x = 1
 * @fall: slope at x = 1, downward positive
 * @radius: of the circle that fits the curve at x = 0
 */
void _gw_hump_init (GwHump *hump,
                    double  place,
                    double  crest,
                    double  tail,
                    double  fall,
                    double  radius);

/** _gw_hump_at: the height at the abscissa @root squared. */
double _gw_hump_at (const GwHump *hump,
                    double        root);
