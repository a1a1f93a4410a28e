/* gw-derivation-uses.c - what each field of the study bears on
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "report/gw-derivation-private.h"

/* What a field of a record bears on; fields that stand in no row bear on nothing here. */
static const struct
{
  const char *type, *key; /* a key may be the begin of several, ended by '*' */
  unsigned    use;
} uses[] = {
  { "station", "*", GW_USE_WINGS | GW_USE_TAILS },
  { "surface", "mass_g", GW_USE_MASSES },
  { "surface", "*", GW_USE_WINGS | GW_USE_TAILS },
  { "control", "hinge_g_m", GW_USE_MASSES },
  { "control", "linkage_g", GW_USE_MASSES },
  { "control", "from_mm", GW_USE_MASSES | GW_USE_THROWS },
  { "control", "to_mm", GW_USE_MASSES | GW_USE_THROWS },
  { "control", "chord_percent", GW_USE_MASSES | GW_USE_THROWS },
  { "control", "*", GW_USE_THROWS },
  { "body_station", "*", GW_USE_BODIES },
  { "body", "y_mm", GW_USE_PLACES },
  { "body", "mass_g", GW_USE_MASSES },
  { "body", "*", GW_USE_BUILDS },
  { "printed_shell", "temperature_c", 0 },
  { "printed_shell", "*", GW_USE_BUILDS },
  { "folded_sheet", "*", GW_USE_BUILDS },
  { "hot_wired_core", "*", GW_USE_BUILDS },
  { "build", "joint_g_m", GW_USE_BUILDS },
  { "build", "step_*", GW_USE_SECTIONS },
  { "spar", "*", GW_USE_BUILDS },
  { "material", "density_kg_m3", GW_USE_BUILDS },
  { "material", "areal_g_m2", GW_USE_BUILDS },
  { "material", "made_factor", GW_USE_BUILDS },
  { "material", "grain_mm", GW_USE_SECTIONS },
  { "strut", "mass_g", GW_USE_MASSES },
  { "strut", "diameter_mm", GW_USE_SIZES },
  { "strut", "*", GW_USE_PLACES },
  { "leg", "mass_g", GW_USE_MASSES },
  { "leg", "wheel_mass_g", GW_USE_MASSES },
  { "leg", "wheel_*", GW_USE_SIZES },
  { "leg", "*", GW_USE_PLACES },
  { "power", "mass_g", GW_USE_MASSES },
  { "power", "propeller_mass_g", GW_USE_MASSES },
  { "power", "controller_mass_g", GW_USE_MASSES },
  { "power", "propeller_pitch_mm", 0 },
  { "power", "propeller_diameter_mm", GW_USE_SIZES },
  { "power", "diameter_mm", GW_USE_SIZES },
  { "power", "length_mm", GW_USE_SIZES },
  { "power", "*", GW_USE_PLACES },
  { "item", "mass_g", GW_USE_MASSES },
  { "item", "lead_g_m", GW_USE_MASSES },
  { "item", "lead_slack_mm", GW_USE_MASSES },
  { "item", "length_mm", GW_USE_SIZES },
  { "item", "width_mm", GW_USE_SIZES },
  { "item", "height_mm", GW_USE_SIZES },
  { "item", "bay_*", GW_USE_BAY },
  { "item", "*", GW_USE_PLACES },
  { "method", "*", GW_USE_SECTIONS },
  { "section", "cl_max_factor", GW_USE_SECTIONS },
  { "section", "*", GW_USE_WINGS | GW_USE_TAILS },
  { "day", "elevation_m", GW_USE_DAY },
  { "day", "temperature_c", GW_USE_DAY },
  { "day", "pressure_hpa", GW_USE_DAY },
  { "day", "humidity_percent", GW_USE_DAY },
  { "targets", "stall_speed_m_s", GW_USE_SPEED },
  { "targets", "static_margin_percent", GW_USE_MARGIN },
  { "targets", "balance_mm", GW_USE_BALANCE },
};

static gboolean
is_key (const char *key,
        const char *pattern)
{
  const gsize n = strlen (pattern);

  return n > 0 && pattern[n - 1] == '*' ? strncmp (key, pattern, n - 1) == 0
                                        : strcmp (key, pattern) == 0;
}

unsigned
_gw_derivation_use_of (const GwRecord *record,
                       const GwField  *field)
{
  for (guint i = 0; i < G_N_ELEMENTS (uses); i++)
    if (strcmp (record->type->name, uses[i].type) == 0 && is_key (field->key, uses[i].key))
      return uses[i].use;

  return 0;
}

unsigned
_gw_derivation_use_of_result (const GwDeriving *deriving)
{
  unsigned use = _gw_derivation_method (deriving->id)->use;

  if (use & GW_USE_WING_BUILDS)
    use |= GW_USE_BUILDS | GW_USE_MASSES;
  /* Where the balance point is wanted is stated, or follows from the margin. */
  if ((use & GW_USE_BALANCE) && isfinite (deriving->outcome->assembly->aircraft.targets.balance_x))
    use &= ~(unsigned) (GW_USE_MARGIN | GW_USE_SECTIONS | GW_USE_THROWS | GW_USE_DAY);
  return use;
}
