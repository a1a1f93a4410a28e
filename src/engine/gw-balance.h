/* gw-balance.h - mass, balance point, inertia, and what moves them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-piece.h"
#include "engine/gw-status.h"

typedef struct
{
  double    mass;         /* [kg] */
  double    centre[3];    /* balance point from the datum [m] */
  GwInertia inertia;      /* about the balance point [kg m2] */
  double    weighed_mass; /* the part that has been on a scale [kg] */
} GwBalance;

/**
 * gw_balance_of:
 *
 * Source: definition of the first moment; parallel-axis theorem.
 *
 * Returns: %GW_OK; %GW_EDOM if the total mass is zero.
 */
GwStatus gw_balance_of (const GwPieces *pieces,
                        GwBalance      *out);

/* All three solvers work along one axis; pass x for balance fore and aft, y for
 * lateral balance. Derived from sum (m x) = M x_cg. */

/**
 * gw_balance_place:
 * @mass, @centre: of the whole aircraft [kg], [m]
 * @item_mass, @item_at: of the thing to be moved, its mirror image included
 * @wanted: balance point wanted
 * @out: (out): where the item has to sit
 *
 * Returns: %GW_OK; %GW_EDOM if the item weighs nothing.
 */
GwStatus gw_balance_place (double  mass,
                           double  centre,
                           double  item_mass,
                           double  item_at,
                           double  wanted,
                           double *out);

/**
 * gw_balance_ballast:
 * @station: where the ballast would sit
 * @out: (out): its mass [kg]
 *
 * Returns: %GW_OK; %GW_EDOM if no mass, or only a negative one, at @station does it.
 */
GwStatus gw_balance_ballast (double  mass,
                             double  centre,
                             double  station,
                             double  wanted,
                             double *out);

/**
 * gw_balance_travel:
 * @from, @to: ends of the item's bay
 * @centre_from, @centre_to: (out): balance point with the item at each end
 */
void gw_balance_travel (double  mass,
                        double  centre,
                        double  item_mass,
                        double  item_at,
                        double  from,
                        double  to,
                        double *centre_from,
                        double *centre_to);
