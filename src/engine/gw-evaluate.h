/* gw-evaluate.h - one aircraft in, all its results out
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-aircraft.h"
#include "engine/gw-balance.h"
#include "engine/gw-stability.h"
#include "engine/gw-stall.h"

/* Every scalar result, in the order of the summary. What each is called, its
 * unit and its sense stand in study/gw-result.c; NAN: has no answer here. */
typedef enum
{
  GW_RESULT_MASS,            /* [kg] */
  GW_RESULT_WING_MASS,       /* all wings with all that is built in [kg] */
  GW_RESULT_WEIGHED_SHARE,   /* 0 to 1 */
  GW_RESULT_WING_LOADING,    /* [kg/m2] */
  GW_RESULT_STALL_SPEED,     /* [m/s] */
  GW_RESULT_CL_MAX,          /* of the whole aircraft, trim load included, on the wing area */
  GW_RESULT_STALL_PLACE,     /* fraction of the semispan */
  GW_RESULT_STALL_RE,
  GW_RESULT_TARGET_MASS,     /* mass at which the wanted stall speed is reached [kg] */
  GW_RESULT_BALANCE_X,       /* from the datum [m] */
  GW_RESULT_BALANCE_ROOT,    /* behind the wing's root leading edge [m] */
  GW_RESULT_BALANCE_MAC,     /* fraction of the mean chord */
  GW_RESULT_BALANCE_Y,       /* to starboard [m] */
  GW_RESULT_BALANCE_Z,       /* [m] */
  GW_RESULT_NEUTRAL_POINT,   /* from the datum [m] */
  GW_RESULT_STATIC_MARGIN,   /* fraction of the mean chord */
  GW_RESULT_AFT_LIMIT,       /* from the datum [m] */
  GW_RESULT_FORWARD_LIMIT,   /* from the datum [m] */
  GW_RESULT_SLIDE,           /* the movable item must go aft by this [m] */
  GW_RESULT_SLIDE_LEFT,      /* of that, what its bay does not allow [m], aft positive */
  GW_RESULT_BALLAST,         /* with the item as far as it goes, at the better end [kg] */
  GW_RESULT_TRAVEL_FORE,     /* balance point with the item at the fore end of its bay [m] */
  GW_RESULT_TRAVEL_AFT,      /* and at the aft end [m] */
  GW_RESULT_IXX,             /* [kg m2], about the balance point */
  GW_RESULT_IYY,
  GW_RESULT_IZZ,
  GW_RESULT_IXZ,
  GW_RESULT_WING_AREA,       /* projected, all wings [m2] */
  GW_RESULT_SPAN,            /* [m] */
  GW_RESULT_ASPECT_RATIO,
  GW_RESULT_MEAN_CHORD,      /* [m] */
  GW_RESULT_WETTED_AREA,     /* all surfaces and bodies [m2] */
  GW_RESULT_LIFT_SLOPE,      /* [1/rad] */
  GW_RESULT_TAIL_VOLUME,
  GW_RESULT_FIN_VOLUME,
  GW_RESULT_DENSITY,         /* of the air [kg/m3] */
  GW_RESULT_DENSITY_ALTITUDE, /* [m] */
  GW_N_RESULTS
} GwResultId;

/* What must be said with the numbers; sentences are made above. */
typedef enum
{
  GW_NOTE_TIP_FIRST = 1 << 0,       /* the wing lets go in the outer 30 % of the semispan */
  GW_NOTE_AILERON_FIRST = 1 << 1,   /* within the span of an aileron or elevon */
  GW_NOTE_SWEPT = 1 << 2,           /* lifting line corrected for sweep or crank beyond 5 degrees */
  GW_NOTE_RE_OUTSIDE = 1 << 3,      /* section data asked beyond its table */
  GW_NOTE_TAIL_LIMIT = 1 << 4,      /* the trimming surface sets the stall speed */
  GW_NOTE_NO_TRIM_SURFACE = 1 << 5, /* tailless: trimmed by elevons or by shape */
  GW_NOTE_UNSTABLE = 1 << 6,        /* balance point behind the neutral point */
  GW_NOTE_BEHIND_AFT_LIMIT = 1 << 7,
  GW_NOTE_AHEAD_OF_LIMIT = 1 << 8,
  GW_NOTE_LATERAL = 1 << 9,         /* balance point over 0.5 % of the span off the centre line */
  GW_NOTE_STALL_FAST = 1 << 10,     /* wanted stall speed not kept */
  GW_NOTE_HEAVY = 1 << 11,          /* wanted mass not kept */
  GW_NOTE_BALLAST = 1 << 12,        /* the movable item's bay is too short: ballast needed */
  GW_NOTE_PROVISIONAL = 1 << 13,    /* a section is guessed until it is computed */
  GW_NOTE_OUTSIDE_BAY = 1 << 14,    /* an item stands where its bay does not reach */
} GwNote;

#define GW_CURVE_N 25

typedef struct
{
  double   value[GW_N_RESULTS];
  double   curve[GW_CURVE_N]; /* stall speed at each mass of the curve [m/s]; NAN: none */
  unsigned notes;             /* GwNote */
  GwAir    air;
  GwStall  stall;
  GwBalance balance;
  double   piece_mass[GW_N_PIECE_KINDS]; /* [kg] */
  GwPieces pieces;
  GwGeometry geometry;
} GwResults;

/**
 * gw_evaluate:
 * @curve_mass: (array length=GW_CURVE_N) (nullable): masses of the stall curve [kg]
 * @out: (out): overwritten, whatever it held; gw_results_clear() frees it, also after an
 *   error
 *
 * Neutral point and limits are those at the stall speed. The sliding item's lead is taken
 * as it lies; ballast sits at the foremost or rearmost point of surfaces and bodies. The
 * aircraft must outlive @out, whose geometry borrows its sections.
 *
 * Returns: %GW_OK; else the first status that an essential step returned (air,
 *   shape, pieces, balance, section data). A stall or limit without an answer is NAN.
 */
GwStatus gw_evaluate (const GwAircraft *aircraft,
                      const double     *curve_mass,
                      GwResults        *out);

void gw_results_clear (GwResults *results);
