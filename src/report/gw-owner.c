/* gw-owner.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-owner.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"

static const struct
{
  const char *label, *key;
} groups[GW_N_GROUPS] = {
  [GW_GROUP_SURFACE] = { N_ ("surface"), "surfaces" },
  [GW_GROUP_BODY] = { N_ ("body"), "bodies" },
  [GW_GROUP_LEG] = { N_ ("leg and wheel"), "legs" },
  [GW_GROUP_STRUT] = { N_ ("strut or wire"), "struts" },
  [GW_GROUP_POWER] = { N_ ("power unit"), "powers" },
  [GW_GROUP_ITEM] = { N_ ("equipment"), "equipment" },
};

const char *
gw_group_label (GwGroup group)
{
  g_return_val_if_fail (group < GW_N_GROUPS, "");

  return _ (groups[group].label);
}

const char *
gw_group_key (GwGroup group)
{
  g_return_val_if_fail (group < GW_N_GROUPS, "");

  return groups[group].key;
}

const GPtrArray *
gw_group_list (const GwStudy *study,
               GwGroup        group)
{
  switch (group)
    {
    case GW_GROUP_SURFACE:
      return study->surfaces;
    case GW_GROUP_BODY:
      return study->bodies;
    case GW_GROUP_LEG:
      return study->legs;
    case GW_GROUP_STRUT:
      return study->struts;
    case GW_GROUP_POWER:
      return study->powers;
    case GW_GROUP_ITEM:
      return study->equipment;
    case GW_N_GROUPS:
    default:
      g_return_val_if_reached (NULL);
    }
}

guint
gw_owner_count (const GwAircraft *aircraft,
                GwGroup           group)
{
  const size_t counts[GW_N_GROUPS] = {
    [GW_GROUP_SURFACE] = aircraft->n_surfaces,
    [GW_GROUP_BODY] = aircraft->n_bodies,
    [GW_GROUP_LEG] = aircraft->n_legs,
    [GW_GROUP_STRUT] = aircraft->n_struts,
    [GW_GROUP_POWER] = aircraft->n_powers,
    [GW_GROUP_ITEM] = aircraft->n_items,
  };

  g_return_val_if_fail (group < GW_N_GROUPS, 0);

  return (guint) counts[group];
}

const char *
gw_owner_name (const GwAircraft *aircraft,
               GwGroup           group,
               guint             owner)
{
  g_return_val_if_fail (owner < gw_owner_count (aircraft, group), "");

  switch (group)
    {
    case GW_GROUP_SURFACE:
      return aircraft->surfaces[owner].name;
    case GW_GROUP_BODY:
      return aircraft->bodies[owner].name;
    case GW_GROUP_LEG:
      return aircraft->legs[owner].name;
    case GW_GROUP_STRUT:
      return aircraft->struts[owner].name;
    case GW_GROUP_POWER:
      return aircraft->powers[owner].name;
    case GW_GROUP_ITEM:
      return aircraft->items[owner].name;
    case GW_N_GROUPS:
    default:
      g_return_val_if_reached ("");
    }
}

static const GwRecord *
record_of (const GwOutcome *outcome,
           GwGroup          group,
           guint            owner)
{
  const GPtrArray *list = gw_group_list (outcome->assembly->study, group);

  g_return_val_if_fail (owner < list->len, NULL);

  return g_ptr_array_index (list, owner);
}

char *
gw_owner_path (const GwOutcome *outcome,
               GwGroup          group,
               guint            owner)
{
  return gw_record_step ("", groups[group].key, record_of (outcome, group, owner), owner);
}

void
gw_owner_moments (const GwOutcome *outcome,
                  GwGroup          group,
                  guint            owner,
                  GwMoments       *out)
{
  const GwPieces *pieces = &outcome->results.pieces;

  *out = (GwMoments){ 0 };
  for (size_t i = 0; i < pieces->n; i++)
    if (pieces->v[i].group == group && pieces->v[i].owner == owner)
      gw_moments_add (out, &pieces->v[i].mass, 1.0);
}

double
gw_owner_weighed (const GwOutcome *outcome,
                  GwGroup          group,
                  guint            owner)
{
  const GwPieces *pieces = &outcome->results.pieces;
  double          mass = 0.0;

  for (size_t i = 0; i < pieces->n; i++)
    if (pieces->v[i].group == group && pieces->v[i].owner == owner && pieces->v[i].is_weighed)
      mass += pieces->v[i].mass.total;

  return mass;
}

/* Surfaces and bodies whose mass is not stated are computed; of the other things each mass
 * that is more than nothing counts. */
const char *
gw_owner_origin (const GwOutcome *outcome,
                 GwGroup          group,
                 guint            owner)
{
  const GwRecord *record = record_of (outcome, group, owner);
  int             origin = -1;

  for (guint i = 0; i < record->type->n_fields; i++)
    {
      const GwField  *field = &record->type->fields[i];
      const GwNumber *number = gw_record_at (record, field);

      if (field->kind != GW_FIELD_NUMBER || field->quantity != GW_G || !(number->value > 0.0))
        continue;
      if (origin >= 0 && origin != (int) number->origin)
        return _ ("mixed");
      origin = (int) number->origin;
    }

  return gw_amount_origin (origin >= 0 ? (GwOrigin) origin : GW_ORIGIN_COMPUTED);
}

gboolean
gw_owner_is_wing (const GwAircraft *aircraft,
                  GwGroup           group,
                  guint             owner)
{
  return group == GW_GROUP_SURFACE && (aircraft->surfaces[owner].role == GW_ROLE_WING ||
                                       aircraft->surfaces[owner].role == GW_ROLE_SECOND_WING);
}
