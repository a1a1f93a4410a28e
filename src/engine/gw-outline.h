/* gw-outline.h - outlines of wing sections
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-status.h"

/* An outline is its upper and lower side read off at the same abscissae,
 * x_i = (1 - cos (pi i / (N - 1))) / 2 of a unit chord, nose first. One common
 * grid makes the loft between two sections, thickness and camber plain sums. */
#define GW_OUTLINE_N 101

typedef struct
{
  double upper[GW_OUTLINE_N]; /* height above the chord line, in chords */
  double lower[GW_OUTLINE_N];
} GwOutline;

typedef struct
{
  double area;        /* in chords squared, the gap of an open trailing edge closed */
  double perimeter;   /* in chords, trailing-edge gap included */
  double centroid_x;  /* in chords behind the nose */
  double centroid_y;  /* in chords above the chord line */
  double inertia;     /* second moment about the centroid's chordwise axis, in chords^4 */
  double thickness;   /* greatest, in chords */
  double x_thickness; /* where it is, in chords */
  double camber;      /* greatest of the mean line, in chords, signed */
} GwOutlineShape;

double gw_outline_x (size_t i);

/**
 * gw_outline_naca4:
 * @camber: greatest camber in chords, 0 to 0.095
 * @place: where it is, in chords, 0.1 to 0.9 (ignored without camber)
 * @thickness: in chords, 0.01 to 0.4
 *
 * Thickness stands square to the mean line, as defined; the trailing edge keeps
 * the definition's small gap.
 *
 * Source: Jacobs, Ward, Pinkerton: The characteristics of 78 related airfoil
 * sections from tests in the variable-density wind tunnel, NACA Report 460 (1933).
 *
 * Returns: %GW_OK; %GW_EINVAL outside the ranges.
 */
GwStatus gw_outline_naca4 (double     camber,
                           double     place,
                           double     thickness,
                           GwOutline *out);

/**
 * gw_outline_naca:
 * @code: the digits: four ("2412"); five ("23012"; second digit 1 to 5, third 0, or 1 for a
 *   reflexed mean line, then the second is 2 to 5); either with a dash and two more for a
 *   modified thickness ("0012-34": radius of the nose 0 to 8, 6 being the plain one; greatest
 *   thickness at 2 to 6 tenths)
 *
 * Source: four digits as above; five digits Jacobs & Pinkerton, NACA Report 537 (1935),
 * constants of its tables; the first digit scales the camber (2: design lift coefficient
 * 0.3); modified thickness Stack & von Doenhoff, NACA Report 492 (1934). Constants from
 * memory, held by the tests against what they were chosen for.
 *
 * Returns: %GW_OK; %GW_EINVAL if @code is none of these.
 */
GwStatus gw_outline_naca (const char *code,
                          GwOutline  *out);

/* A folded sheet, lengths in chords. */
typedef struct
{
  double thickness; /* greatest height, 0.03 to 0.25 */
  double fold;      /* where the upper sheet is scored over the spar, 0.1 to 0.6 */
  double second;    /* where it is scored again, up to 0.9, level in between; 0: one score */
  double nose;      /* height of the blunt nose the fold leaves, 0 to @thickness */
  double edge;      /* height of the trailing edge, 0 to @thickness; unsanded, two sheets */
} GwFoldedOutline;

/**
 * gw_outline_folded_sheet:
 *
 * Flat underside, upper side straight from the nose to the score over the spar and
 * straight from there, or from a second score, to the trailing edge. Read off on the common
 * grid a score is blunted by at most 2 % of the thickness, 0.05 % of the area. Heights are
 * over the underside.
 *
 * Returns: %GW_OK; %GW_EINVAL outside the ranges.
 *
 * Source: geometry; derived here.
 */
GwStatus gw_outline_folded_sheet (const GwFoldedOutline *sheet,
                                  GwOutline             *out);

/**
 * gw_outline_folded: the same with one score and a sharp trailing edge.
 * @flat: height of the nose
 */
GwStatus gw_outline_folded (double     thickness,
                            double     fold,
                            double     flat,
                            GwOutline *out);

/* A sheet of one thickness, lengths in chords. */
typedef struct
{
  double thickness; /* 0.005 to 0.1 */
  double camber;    /* rise of its middle line, 0 to 0.12 */
  double place;     /* where that is, 0.2 to 0.8 (ignored without camber) */
  double nose;      /* length over which its nose is rounded, up to 0.3; 0: twice @thickness */
  double edge;      /* thickness of the trailing edge, 0 to @thickness: squared off */
} GwPlateOutline;

/**
 * gw_outline_plate:
 *
 * A sheet bent to two parabolas (with the greatest camber at the middle they are one, which
 * at 5 % of camber is within 0.02 % of the chord of a circular arc). The nose is half an
 * ellipse; an edge thinner than the sheet is tapered over the last quarter.
 *
 * Returns: %GW_OK; %GW_EINVAL outside the ranges.
 *
 * Source: mean line as of four digits, NACA Report 460; the rest geometry, derived here.
 */
GwStatus gw_outline_plate (const GwPlateOutline *plate,
                           GwOutline            *out);

/* A flat-bottomed section, lengths in chords, heights over the flat underside. */
typedef struct
{
  double thickness; /* 0.04 to 0.25 */
  double place;     /* of the greatest thickness, 0.15 to 0.6 */
  double nose;      /* height of the foremost point, up to 0.7 of @thickness */
  double radius;    /* of the nose; the underside is flat from nose^2 / radius on, at most 0.5 */
  double edge;      /* height of the trailing edge, 0 to half of @thickness */
} GwFlatOutline;

/**
 * gw_outline_flat_bottomed:
 *
 * The upper side rises from the nose as a root with a cubic and falls behind its crest as a
 * cubic, whose slope at the tail is that of a four-digit section; below the nose stands a
 * quarter of an ellipse, and the rest is straight. Turned so that the line from nose to
 * tail is level.
 *
 * Returns: %GW_OK; %GW_EINVAL outside the ranges, or if the upper side would have two crests.
 *
 * Source: own parametrisation, after the form of the modified four-digit thickness.
 */
GwStatus gw_outline_flat_bottomed (const GwFlatOutline *flat,
                                   GwOutline           *out);

/**
 * gw_outline_set_edge:
 * @edge: thickness the trailing edge shall have, in chords, 0 to half the greatest
 *
 * Both sides move alike, with the square of the way from the thickest place to the tail, so
 * that the outline ahead of it and the mean line stay as they are.
 *
 * Returns: %GW_OK; %GW_EINVAL outside the range. Source: derived here.
 */
GwStatus gw_outline_set_edge (GwOutline *outline,
                              double     edge);

/**
 * gw_outline_points:
 * @n: number of points, >= 9
 * @xy: (array length=2n): x, y pairs, either from the trailing edge over the upper
 *   side to the nose and back along the lower side, or upper side nose to tail
 *   followed by lower side nose to tail
 *
 * Scales to a unit chord from nose to trailing edge, turns the chord line level
 * and reads both sides off on the common grid through a spline in arc length
 * (GSL Akima), so that seventeen points a side are enough. The nose is the place
 * farthest from the middle of the trailing edge, or the point given at (0, 0) if
 * that is as far to within 0.5 %.
 *
 * Returns: %GW_OK; %GW_EINVAL if the points are too few, not finite, of no length,
 *   or the sides cross by over 0.05 % of the chord; %GW_ENOMEM. @out is untouched
 *   after an error.
 */
GwStatus gw_outline_points (size_t        n,
                            const double *xy,
                            GwOutline    *out);

/** gw_outline_mix: straight blend, @t = 0 gives @a, @t = 1 gives @b. */
void gw_outline_mix (const GwOutline *a,
                     const GwOutline *b,
                     double           t,
                     GwOutline       *out);

/**
 * gw_outline_shape:
 *
 * Area, centroid and second moment of the closed polygon by Green's theorem.
 */
void gw_outline_shape (const GwOutline *outline,
                       GwOutlineShape  *out);

typedef struct
{
  double thickness;   /* greatest, in chords */
  double x_thickness; /* where it is, in chords */
  double camber;      /* greatest of the mean line over its own chord, in chords, signed */
  double x_camber;
  double edge;        /* thickness of the trailing edge, in chords */
  double nose_radius; /* of a rounded nose, in chords; 0: sharp or blunt */
  double nose_height; /* of a blunt nose, in chords; 0: it is none */
} GwOutlineMeasures;

/**
 * gw_outline_measures:
 *
 * What tells outlines apart at a glance. The depth is taken square to the datum line
 * (through the sheet where the outline is one, at the middle of its length), the mean line
 * half way between sides that face each other square to it, so that the digits of a NACA
 * section come out again. The radius is that of circles through the nose and a point on
 * either side, drawn towards the nose: within 3 % on four digits.
 *
 * Source: geometry; derived here.
 */
void gw_outline_measures (const GwOutline   *outline,
                          GwOutlineMeasures *out);

/**
 * gw_outline_area_moments:
 * @m: (out): integrals of 1, x, y, xx, xy, yy over the area, about the nose, in chords
 */
void gw_outline_area_moments (const GwOutline *outline,
                              double           m[6]);

/** gw_outline_rim_moments: the same integrals along the perimeter. */
void gw_outline_rim_moments (const GwOutline *outline,
                             double           m[6]);

/** gw_outline_thickness_at: depth in chords at @x chords behind the nose. */
double gw_outline_thickness_at (const GwOutline *outline,
                                double           x);

/** gw_outline_height_at: upper (or lower) side in chords at @x chords behind the nose. */
double gw_outline_height_at (const GwOutline *outline,
                             double           x,
                             bool             is_upper);

/**
 * gw_outline_thin_theory:
 * @alpha_zero: (out): zero-lift angle [rad]
 * @cm_quarter: (out): moment about the quarter chord, nose up positive
 *
 * Fourier coefficients of the mean line's slope.
 *
 * Source: Glauert, The Elements of Aerofoil and Airscrew Theory, Cambridge 1926,
 * ch. VII; slope taken as constant from grid point to grid point, weights integrated
 * exactly. The mean line is the mean of the two sides as they stand, which differs
 * from the line a thick NACA section was made from by some thousandths of a chord.
 */
void gw_outline_thin_theory (const GwOutline *outline,
                             double          *alpha_zero,
                             double          *cm_quarter);
