/* gw-outline-check.h - outlines as people have them: put in order, checked, smoothed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-outline.h"

typedef enum
{
  GW_OUTLINE_SOUND,
  GW_OUTLINE_FEW,      /* fewer than nine points that differ */
  GW_OUTLINE_SHORT,    /* all in one place */
  GW_OUTLINE_ONE_SIDE, /* it goes from one end to the other and does not come back */
  GW_OUTLINE_OPEN,     /* its ends are too far apart; @at: they */
  GW_OUTLINE_BACK,     /* a side turns back along the chord; @at: the two points */
  GW_OUTLINE_CROSSED,  /* it crosses itself; @at: where the two pieces begin */
  GW_OUTLINE_THIN,     /* heights and lengths do not seem to be in one unit, or it is a line */
  GW_OUTLINE_THICK,
} GwOutlineFault;

typedef struct
{
  GwOutlineFault fault;
  size_t         at[2];     /* of the points as given, counted from 0, by fault */
  double         amount;    /* by fault: gap, way back, thickness, in chords */
  size_t         n_doubles; /* points given twice running, left out */
  size_t         first_double;
  double         chord;        /* in the unit of the points */
  double         turn;         /* of the chord line, nose up [rad] */
  bool           is_two_sides; /* given as two sides from one end to the other */
  bool           is_from_nose; /* given from the nose over the tail and back */
  bool           is_mirrored;  /* given with its nose to the right */
  bool           is_bottom_first;
} GwOutlineReport;

/**
 * gw_outline_arrange:
 * @n: number of points
 * @xy: (array length=2n): x, y pairs, once round from either end, or two sides from one end
 *   to the other; in any unit, either direction, nose to the left or right
 * @out: (array length=2n+4): the same from the trailing edge over the upper side to the nose
 *   and back, nose to the left, as gw_outline_points() takes it
 * @n_out: (out): at most n + 2
 * @report: (out): what was found, also after an error
 *
 * The nose is on the left where the order of the points agrees with that; where it does
 * not, it is the rounder end. Gaps up to 15 % of the chord are trailing edges. Crossings
 * within the last 2 % of the chord are left to gw_outline_points(), since tables are rounded.
 *
 * Returns: %GW_OK; %GW_EINVAL with the fault in @report; %GW_ENOMEM.
 *
 * Source: geometry; derived here.
 */
GwStatus gw_outline_arrange (size_t           n,
                             const double    *xy,
                             double          *out,
                             size_t          *n_out,
                             GwOutlineReport *report);

typedef struct
{
  double greatest; /* of the height, in chords, upward positive */
  double x;        /* where, in chords */
  bool   is_upper; /* on which side */
} GwOutlineChange;

#define GW_SMOOTH_WAVES 12.0 /* what is usually taken out */

/**
 * gw_outline_smooth:
 * @outline: with one point at its nose
 * @waves: around the whole outline, 4 to 60: those with as many are halved, those with twice
 *   as many leave 2 %, those with half as many lose 2 %
 * @change: (out): what moved farthest
 *
 * The heights around the outline, at even steps of the angle of the grid, are made as
 * smooth as their third differences tell, for what that costs in squares of the change.
 * Nose and trailing edge stay where they are. A kink is rounded: @change says how much.
 *
 * Source: Whittaker, On a new method of graduation, Proceedings of the Edinburgh
 * Mathematical Society 41 (1923), third differences; the weight for @waves is derived here:
 * 1 / (2 sin (pi waves / 200))^6. Solved by banded Cholesky (GSL).
 *
 * Returns: %GW_OK; %GW_EINVAL outside the range, for a blunt nose or what is not finite;
 *   %GW_ENOMEM.
 */
GwStatus gw_outline_smooth (const GwOutline *outline,
                            double           waves,
                            GwOutline       *out,
                            GwOutlineChange *change);
