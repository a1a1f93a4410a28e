/* gw-units.h - the units a person wants to see
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-entry.h"

G_BEGIN_DECLS

/* For display and typing alone: the file and the engine keep their own. Where units are
 * asked for what they show, NULL stands for those of the file. */
typedef struct
{
  const GwEntryUnit *of[GW_N_QUANTITIES]; /* NULL: a plain number */
} GwUnits;

/** gw_units_standard: those of the file. */
const GwUnits *gw_units_standard (void);

/**
 * gw_units_set:
 * @name: of a unit that may be typed for that quantity: "in"
 *
 * Returns: FALSE if there is no such unit; the old one stays
 */
gboolean gw_units_set (GwUnits    *units,
                       GwQuantity  quantity,
                       const char *name);

/**
 * gw_units_choose:
 * @name: of a unit for length (mm, cm, in), mass (g, oz), speed (m/s, km/h, mph, kt),
 *   temperature (°C, °F), pressure (hPa, inHg) or distance (m, ft)
 *
 * Sets it, and the units that go with it: areas with the length, what is in the mass (wing
 * loading, density, mass of a sheet or rod, inertia) with the mass.
 *
 * Returns: FALSE if it is none of them; then nothing is set
 */
gboolean gw_units_choose (GwUnits    *units,
                          const char *name);

/** gw_units_equal: whether both show the same. */
gboolean gw_units_equal (const GwUnits *a,
                         const GwUnits *b);

/** gw_units_name: of the unit, "" for a plain number. */
const char *gw_units_name (const GwUnits *units,
                           GwQuantity     quantity);

/** gw_units_shown: a value of the file, in the unit it is shown in. */
double gw_units_shown (const GwUnits *units,
                       GwQuantity     quantity,
                       double         value);

/** gw_units_shown_change: likewise for a difference, which has no zero of its own. */
double gw_units_shown_change (const GwUnits *units,
                              GwQuantity     quantity,
                              double         change);

/**
 * gw_units_decimals:
 * @decimals: of a number in the unit of the file
 *
 * The same in the unit it is shown in: as few as leave a step that is at most six times the
 * one in the file, far inside the bands of masses and speeds (1 g: 0.1 oz, 0.01 m/s: 0.1 km/h,
 * mph, kt). For lengths at most that one, as they are measured out on the bench (1 mm: 0.01 in).
 */
int gw_units_decimals (const GwUnits *units,
                       GwQuantity     quantity,
                       int            decimals);

G_END_DECLS
