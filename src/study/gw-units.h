/* gw-units.h - the units a person wants to see
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-entry.h"

G_BEGIN_DECLS

/* For display and typing alone: the file and the engine keep their own. */
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

G_END_DECLS
