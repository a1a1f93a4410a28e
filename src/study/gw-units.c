/* gw-units.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-units.h"

const GwUnits *
gw_units_standard (void)
{
  static GwUnits standard;
  static gsize   is_made = 0;

  if (g_once_init_enter (&is_made))
    {
      for (guint i = 0; i < GW_N_QUANTITIES; i++)
        gw_units_set (&standard, (GwQuantity) i, gw_quantity_unit ((GwQuantity) i)->unit);
      g_once_init_leave (&is_made, 1);
    }

  return &standard;
}

gboolean
gw_units_set (GwUnits    *units,
              GwQuantity  quantity,
              const char *name)
{
  const GwEntryUnit *unit = gw_entry_unit (quantity, name);

  g_return_val_if_fail (quantity < GW_N_QUANTITIES, FALSE);

  if (unit != NULL)
    units->of[quantity] = unit;
  return unit != NULL;
}

const char *
gw_units_name (const GwUnits *units,
               GwQuantity     quantity)
{
  g_return_val_if_fail (quantity < GW_N_QUANTITIES, "");

  return units->of[quantity] != NULL ? units->of[quantity]->name : gw_quantity_unit (quantity)->unit;
}

double
gw_units_shown (const GwUnits *units,
                GwQuantity     quantity,
                double         value)
{
  const GwEntryUnit *unit = units->of[quantity];

  return unit != NULL ? (value - unit->offset) / unit->factor : value;
}

double
gw_units_shown_change (const GwUnits *units,
                       GwQuantity     quantity,
                       double         change)
{
  const GwEntryUnit *unit = units->of[quantity];

  return unit != NULL ? change / unit->factor : change;
}
