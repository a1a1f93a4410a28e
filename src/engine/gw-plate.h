/* gw-plate.h - thin plates, flat and cambered
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-status.h"

/* The flow leaves the sharp or square nose of a thin plate and closes again behind it: no
 * theory of attached layers holds, so plates go by what was measured on them. */
typedef struct
{
  double thickness; /* over the chord, 0.005 to 0.05 */
  double camber;    /* of a circular arc, over the chord, 0 to 0.09 */
  double re;        /* Reynolds number of the chord, 2e4 to 5e5 */
} GwPlate;

/* Values with their bands: low, typical, high. */
typedef struct
{
  double cl_max[3];
  double cd_zero[3];  /* drag at the incidence of least drag */
  double slope;       /* [1/rad] */
  double alpha_zero;  /* [rad] */
  double alpha_max;   /* of the greatest lift [rad] */
  double alpha_least; /* of the least drag: the stream meets the nose along the sheet [rad] */
  double cm_zero;     /* about the quarter chord, nose up positive */
} GwPlateValues;

/**
 * gw_plate_values:
 *
 * Greatest lift of flat plates 0.62 to 0.82 at Re 1.2e5; each per cent of camber adds 0.09
 * (Schmitz's plate of 5.8 % reached about 1.2, 4 % plates 1.1); a weak fall towards lower
 * Reynolds numbers, since the nose separates at all of them. Zero lift and moment: thin arc
 * theory, 85 % of it. Least drag: laminar friction of both sides (Blasius), the square edges
 * (0.25 times the thickness) and 0.1 times the camber.
 *
 * Source, all from memory, none of the tables at hand: Schmitz, Aerodynamik des Flugmodells
 * (1942); Pelletier & Mueller, Journal of Aircraft 37(5) (2000); Laitone, Experiments in
 * Fluids 23 (1997); Ananda, Sukumar & Selig, Aerospace Science and Technology 42 (2015).
 * Hence the bands: 14 % of the lift, 30 % of the drag.
 *
 * Returns: %GW_OK; %GW_EINVAL outside the ranges
 */
GwStatus gw_plate_values (const GwPlate *plate,
                          GwPlateValues *out);

/**
 * gw_plate_at:
 * @alpha: incidence [rad], +-0.5
 *
 * Lift straight up to three quarters of the greatest, a parabola to the top, a gentle fall
 * behind it as the bubble at the nose reaches the tail. Drag: without suction at the nose the
 * force stands square to the sheet, of which 80 % is taken (from memory, Hoerner).
 *
 * Returns: as gw_plate_values()
 */
GwStatus gw_plate_at (const GwPlate *plate,
                      double         alpha,
                      double        *cl,
                      double        *cd,
                      double        *cm);
