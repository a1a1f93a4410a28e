/* gw-quantity.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-quantity.h"

static const GwUnit units[GW_N_QUANTITIES] = {
  [GW_RATIO] = { "", "", 1.0, 0.0 },
  [GW_COUNT] = { "", "", 1.0, 0.0 },
  [GW_MM] = { "_mm", "mm", 1e-3, 0.0 },
  [GW_M] = { "_m", "m", 1.0, 0.0 },
  [GW_MM2] = { "_mm2", "mm²", 1e-6, 0.0 },
  [GW_G] = { "_g", "g", 1e-3, 0.0 },
  [GW_G_M] = { "_g_m", "g/m", 1e-3, 0.0 },
  [GW_G_M2] = { "_g_m2", "g/m²", 1e-3, 0.0 },
  [GW_KG_M3] = { "_kg_m3", "kg/m³", 1.0, 0.0 },
  [GW_DEG] = { "_deg", "°", G_PI / 180.0, 0.0 },
  [GW_PERCENT] = { "_percent", "%", 1e-2, 0.0 },
  [GW_C] = { "_c", "°C", 1.0, 273.15 },
  [GW_HPA] = { "_hpa", "hPa", 100.0, 0.0 },
  [GW_M_S] = { "_m_s", "m/s", 1.0, 0.0 },
  [GW_PER_DEG] = { "_per_deg", "1/°", 180.0 / G_PI, 0.0 },
  [GW_M2] = { "_m2", "m²", 1.0, 0.0 },
  [GW_G_DM2] = { "_g_dm2", "g/dm²", 0.1, 0.0 },
  [GW_KG_M2] = { "_kg_m2", "kg m²", 1.0, 0.0 },
  [GW_PER_RAD] = { "_per_rad", "1/rad", 1.0, 0.0 },
};

const GwUnit *
gw_quantity_unit (GwQuantity quantity)
{
  g_return_val_if_fail (quantity < GW_N_QUANTITIES, &units[GW_RATIO]);

  return &units[quantity];
}

double
gw_quantity_to_si (GwQuantity quantity,
                   double     value)
{
  const GwUnit *unit = gw_quantity_unit (quantity);

  return value * unit->factor + unit->offset;
}

double
gw_quantity_from_si (GwQuantity quantity,
                     double     si)
{
  const GwUnit *unit = gw_quantity_unit (quantity);

  return (si - unit->offset) / unit->factor;
}
