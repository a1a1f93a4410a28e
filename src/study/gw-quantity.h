/* gw-quantity.h - what a number measures: unit, key suffix, factor to SI
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The unit stands in the key of the file ("chord_mm"), so a number never needs
 * to be guessed at. Names of the enum are the units. */
typedef enum
{
  GW_RATIO,   /* a plain number */
  GW_COUNT,   /* a whole number */
  GW_MM,
  GW_M,
  GW_MM2,
  GW_G,
  GW_G_M,     /* grams per metre */
  GW_G_M2,    /* grams per square metre */
  GW_KG_M3,
  GW_DEG,
  GW_PERCENT,
  GW_C,       /* degrees Celsius */
  GW_HPA,
  GW_M_S,
  GW_PER_DEG, /* a slope, per degree */
  /* of results only */
  GW_M2,
  GW_G_DM2,   /* wing loading */
  GW_KG_M2,   /* moment of inertia */
  GW_PER_RAD,
  GW_N_QUANTITIES
} GwQuantity;

typedef struct
{
  const char *suffix; /* of the key, "" for plain numbers */
  const char *unit;   /* as shown */
  double      factor; /* SI = value * factor + offset */
  double      offset;
} GwUnit;

const GwUnit *gw_quantity_unit (GwQuantity quantity);

double gw_quantity_to_si   (GwQuantity quantity,
                            double     value);
double gw_quantity_from_si (GwQuantity quantity,
                            double     si);

G_END_DECLS
