/* gw-units.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-units.h"

#include <math.h>

#define COARSER     6.0 /* times the step of the file that a step shown may be */
#define MOST_PLACES 9

/* What a person chooses, and what goes with it. */
static const struct
{
  const char *chosen;
  GwQuantity  of;
  const char *unit;
} choices[] = {
  { "mm", GW_MM, "mm" },
  { "mm", GW_MM2, "mm²" },
  { "mm", GW_M2, "m²" },
  { "cm", GW_MM, "cm" },
  { "cm", GW_MM2, "cm²" },
  { "cm", GW_M2, "dm²" },
  { "in", GW_MM, "in" },
  { "in", GW_MM2, "in²" },
  { "in", GW_M2, "ft²" },
  { "g", GW_G, "g" },
  { "g", GW_G_M, "g/m" },
  { "g", GW_G_M2, "g/m²" },
  { "g", GW_KG_M3, "kg/m³" },
  { "g", GW_G_DM2, "g/dm²" },
  { "g", GW_KG_M2, "kg m²" },
  { "oz", GW_G, "oz" },
  { "oz", GW_G_M, "oz/ft" },
  { "oz", GW_G_M2, "oz/yd²" },
  { "oz", GW_KG_M3, "lb/ft³" },
  { "oz", GW_G_DM2, "oz/ft²" },
  { "oz", GW_KG_M2, "oz in²" },
  { "m/s", GW_M_S, "m/s" },
  { "km/h", GW_M_S, "km/h" },
  { "mph", GW_M_S, "mph" },
  { "kt", GW_M_S, "kt" },
  { "°C", GW_C, "°C" },
  { "°F", GW_C, "°F" },
  { "hPa", GW_HPA, "hPa" },
  { "inHg", GW_HPA, "inHg" },
  { "m", GW_M, "m" },
  { "ft", GW_M, "ft" },
};

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

gboolean
gw_units_choose (GwUnits    *units,
                 const char *name)
{
  gboolean is_known = FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (choices); i++)
    if (g_str_equal (choices[i].chosen, name))
      is_known = gw_units_set (units, choices[i].of, choices[i].unit);

  return is_known;
}

gboolean
gw_units_equal (const GwUnits *a,
                const GwUnits *b)
{
  for (guint i = 0; i < GW_N_QUANTITIES; i++)
    if (a->of[i] != b->of[i])
      return FALSE;

  return TRUE;
}

/* NULL: that of the file. */
static const GwEntryUnit *
unit_of (const GwUnits *units,
         GwQuantity     quantity)
{
  g_return_val_if_fail (quantity < GW_N_QUANTITIES, NULL);

  return units != NULL ? units->of[quantity] : NULL;
}

const char *
gw_units_name (const GwUnits *units,
               GwQuantity     quantity)
{
  const GwEntryUnit *unit = unit_of (units, quantity);

  return unit != NULL ? unit->name : gw_quantity_unit (quantity)->unit;
}

double
gw_units_shown (const GwUnits *units,
                GwQuantity     quantity,
                double         value)
{
  const GwEntryUnit *unit = unit_of (units, quantity);

  return unit != NULL ? (value - unit->offset) / unit->factor : value;
}

double
gw_units_shown_change (const GwUnits *units,
                       GwQuantity     quantity,
                       double         change)
{
  const GwEntryUnit *unit = unit_of (units, quantity);

  return unit != NULL ? change / unit->factor : change;
}

int
gw_units_decimals (const GwUnits *units,
                   GwQuantity     quantity,
                   int            decimals)
{
  const GwEntryUnit *unit = unit_of (units, quantity);
  const double       coarsest = pow (10.0, -decimals) * (quantity == GW_MM ? 1.0 : COARSER);
  int                places = 0;

  if (unit == NULL || unit->factor == 1.0)
    return decimals;

  /* A hair more, as powers of ten are no exact numbers. */
  while (places < MOST_PLACES && pow (10.0, -places) * unit->factor > coarsest * (1.0 + 1e-9))
    places++;
  return places;
}
