/* gw-derivation-mass.c - the steps of mass, balance point, inertia and of what moves them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-derivation-private.h"
#include "report/gw-owner.h"

static void
own (GwDeriving      *deriving,
     GwDerivationRow *row,
     GwGroup          group,
     guint            owner)
{
  row->path =
    _gw_derivation_path (deriving, gw_owner_path (deriving->outcome, group, owner));
}

/* One row a kind and panel of a surface: both sides together. */
static void
add_pieces (GwDeriving *deriving,
            guint       surface)
{
  const GwPieces  *pieces = &deriving->outcome->results.pieces;
  const GwSurface *of = &deriving->outcome->assembly->aircraft.surfaces[surface];

  for (guint kind = 0; kind < GW_N_PIECE_KINDS; kind++)
    for (int panel = -1; panel < (int) of->n_stations - 1; panel++)
      {
        g_autofree char *label = NULL;
        const char      *kind_label = _ (gw_piece_kind_label ((GwPieceKind) kind));
        double           mass = 0.0;
        GwDerivationRow *row;

        for (size_t i = 0; i < pieces->n; i++)
          if (pieces->v[i].group == GW_GROUP_SURFACE && pieces->v[i].owner == surface &&
              (guint) pieces->v[i].kind == kind && pieces->v[i].panel == panel)
            mass += pieces->v[i].mass.total;
        if (!(mass > 0.0))
          continue;

        /* Translators: name of a surface, kind of piece, number of the panel */
        label = panel >= 0
                  ? g_strdup_printf (_ ("%s: %s, panel %d"), of->name, kind_label, panel + 1)
                  : g_strdup_printf (_ ("%s: %s"), of->name, kind_label);
        row = _gw_derivation_step (deriving, "piece", label, GW_G, mass);
        own (deriving, row, GW_GROUP_SURFACE, surface);
      }
}

static void
add_owner_mass (GwDeriving *deriving,
                GwGroup     group,
                guint       owner)
{
  const GwOutcome *outcome = deriving->outcome;
  GwDerivationRow *row;
  GwMoments        moments;

  gw_owner_moments (outcome, group, owner, &moments);
  row = _gw_derivation_step (deriving, "thing",
                             gw_owner_name (&outcome->assembly->aircraft, group, owner), GW_G,
                             moments.total);
  row->origin = g_strdup (gw_owner_origin (outcome, group, owner));
  own (deriving, row, group, owner);
  if (group == GW_GROUP_SURFACE)
    add_pieces (deriving, owner);
}

static void
add_masses (GwDeriving *deriving,
            gboolean    is_wings_only)
{
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;

  for (guint group = 0; group < GW_N_GROUPS; group++)
    for (guint i = 0; i < gw_owner_count (aircraft, (GwGroup) group); i++)
      if (!is_wings_only || gw_owner_is_wing (aircraft, (GwGroup) group, i))
        add_owner_mass (deriving, (GwGroup) group, i);

  _gw_derivation_result (deriving, "sum", is_wings_only ? GW_RESULT_WING_MASS : GW_RESULT_MASS);
}

static void
add_weighed (GwDeriving *deriving)
{
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;

  for (guint group = 0; group < GW_N_GROUPS; group++)
    for (guint i = 0; i < gw_owner_count (aircraft, (GwGroup) group); i++)
      {
        const double weighed = gw_owner_weighed (deriving->outcome, (GwGroup) group, i);

        if (weighed > 0.0)
          own (deriving,
               _gw_derivation_step (deriving, "thing", gw_owner_name (aircraft, (GwGroup) group, i),
                                    GW_G, weighed),
               (GwGroup) group, i);
      }

  _gw_derivation_step (deriving, "weighed", _ ("weighed, all together"), GW_G,
                       deriving->outcome->results.balance.weighed_mass);
  _gw_derivation_result (deriving, "mass", GW_RESULT_MASS);
}

gboolean
_gw_derive_mass (GwDeriving *deriving)
{
  /* The others have files of their own. */
  if (deriving->id == GW_RESULT_MASS)
    add_masses (deriving, FALSE);
  else if (deriving->id == GW_RESULT_WING_MASS)
    add_masses (deriving, TRUE);
  else if (deriving->id == GW_RESULT_WEIGHED_SHARE)
    add_weighed (deriving);
  else if (deriving->id == GW_RESULT_WING_LOADING)
    {
      _gw_derivation_result (deriving, "mass", GW_RESULT_MASS);
      _gw_derivation_result (deriving, "area", GW_RESULT_WING_AREA);
    }
  else
    return FALSE;

  return TRUE;
}

/* "136.20 g × 75.120 mm" */
static char *
product_text (const GwDeriving *deriving,
              double            mass,
              double            place)
{
  g_autofree char *m = gw_amount_digits (deriving->units, GW_G, mass);
  g_autofree char *x = gw_amount_digits (deriving->units, GW_MM, place);

  return g_strdup_printf (_ ("%s at %s"), m, x);
}

/* A moment has no unit of its own to be chosen: it is in those of mass and place. */
static char *
moment_text (const GwDeriving *deriving,
             double            moment)
{
  const double     metre = gw_units_shown_change (deriving->units, GW_MM, 1e3);
  g_autofree char *number = gw_amount_digits (deriving->units, GW_G, moment * metre);

  return g_strdup_printf ("%s %s", number, gw_units_name (deriving->units, GW_MM));
}

static void
add_moments (GwDeriving *deriving,
             guint       axis)
{
  const GwOutcome  *outcome = deriving->outcome;
  const GwAircraft *aircraft = &outcome->assembly->aircraft;
  GwMoments         sum = { 0 };

  for (guint group = 0; group < GW_N_GROUPS; group++)
    for (guint i = 0; i < gw_owner_count (aircraft, (GwGroup) group); i++)
      {
        GwMoments moments;
        double    centre[3];

        gw_owner_moments (outcome, (GwGroup) group, i, &moments);
        if (!(moments.total > 0.0))
          continue;
        gw_moments_centre (&moments, centre);
        gw_moments_add (&sum, &moments, 1.0);
        own (deriving,
             _gw_derivation_add (deriving, "thing", gw_owner_name (aircraft, (GwGroup) group, i),
                                 product_text (deriving, moments.total, centre[axis])),
             (GwGroup) group, i);
      }

  _gw_derivation_add (deriving, "moment", _ ("sum of mass times place"),
                      moment_text (deriving, sum.first[axis]));
  _gw_derivation_result (deriving, "mass", GW_RESULT_MASS);
}

static void
add_wanted (GwDeriving *deriving)
{
  const GwTargets *targets = &deriving->outcome->assembly->aircraft.targets;
  const gboolean   is_stated = isfinite (targets->balance_x);
  const double     wanted = is_stated ? targets->balance_x
                                      : deriving->outcome->results.value[GW_RESULT_AFT_LIMIT];
  GwDerivationRow *row =
    _gw_derivation_step (deriving, "wanted",
                         is_stated ? _ ("wanted balance point, from the datum")
                                   : _ ("wanted balance point, from the datum: the aft limit"),
                         GW_MM, wanted);

  row->path = _gw_derivation_path (deriving, g_strdup ("targets"));
}

/* FALSE if nothing is moved. */
static gboolean
add_item (GwDeriving *deriving,
          gboolean    has_bay)
{
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;
  const GwItem     *item;

  if (aircraft->movable < 0)
    {
      _gw_derivation_add (deriving, "item", _ ("item that is moved"), g_strdup (_ ("none")));
      return FALSE;
    }

  item = &aircraft->items[aircraft->movable];
  own (deriving,
       _gw_derivation_add (deriving, "item", _ ("item that is moved"), g_strdup (item->name)),
       GW_GROUP_ITEM, (guint) aircraft->movable);
  _gw_derivation_step (deriving, "item-mass", _ ("its mass"), GW_G,
                       item->mass * (item->is_mirrored ? 2.0 : 1.0));
  _gw_derivation_step (deriving, "item-place", _ ("its place, from the datum"), GW_MM, item->at[0]);
  if (has_bay)
    {
      _gw_derivation_step (deriving, "bay-fore", _ ("fore end of its bay"), GW_MM, item->bay_from);
      _gw_derivation_step (deriving, "bay-aft", _ ("aft end of its bay"), GW_MM, item->bay_to);
    }

  return TRUE;
}

static void
add_slide (GwDeriving *deriving,
           gboolean    has_bay)
{
  const GwOutcome *outcome = deriving->outcome;

  _gw_derivation_result (deriving, "mass", GW_RESULT_MASS);
  _gw_derivation_result (deriving, "balance", GW_RESULT_BALANCE_X);
  add_wanted (deriving);
  if (add_item (deriving, has_bay))
    _gw_derivation_step (deriving, "place", _ ("place it must have, from the datum"), GW_MM,
                         outcome->assembly->aircraft.items[outcome->assembly->aircraft.movable]
                             .at[0] +
                           outcome->results.value[GW_RESULT_SLIDE]);
}

/* Where the lead goes: the foremost or rearmost point of surfaces and bodies, as the engine
 * has it. */
static double
lead_place (const GwAircraft *aircraft,
            gboolean          is_ahead)
{
  double place = is_ahead ? INFINITY : -INFINITY;

  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    for (size_t k = 0; k < aircraft->surfaces[i].n_stations; k++)
      {
        const GwStation *station = &aircraft->surfaces[i].stations[k];

        place = is_ahead ? fmin (place, station->at[0])
                         : fmax (place, station->at[0] + station->chord);
      }
  for (size_t i = 0; i < aircraft->n_bodies; i++)
    {
      const GwBody *body = &aircraft->bodies[i];

      place = is_ahead ? fmin (place, body->stations[0].x)
                       : fmax (place, body->stations[body->n_stations - 1].x);
    }

  return place;
}

/* What the bay allows of the slide brings the balance point to where the lead takes over. */
static void
add_ballast (GwDeriving *deriving)
{
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;
  const double     *value = deriving->outcome->results.value;
  const double      left = value[GW_RESULT_SLIDE_LEFT];
  const double      wanted = isfinite (aircraft->targets.balance_x) ? aircraft->targets.balance_x
                                                                    : value[GW_RESULT_AFT_LIMIT];
  double            reached = value[GW_RESULT_BALANCE_X];

  add_slide (deriving, TRUE);
  if (isfinite (left))
    {
      const GwItem *item = &aircraft->items[aircraft->movable];
      const double  mass = item->mass * (item->is_mirrored ? 2.0 : 1.0);

      reached = left == 0.0
                  ? wanted
                  : reached + mass * (value[GW_RESULT_SLIDE] - left) / value[GW_RESULT_MASS];
    }

  _gw_derivation_step (deriving, "reached", _ ("balance point that the bay "
                                               "allows"),
                       GW_MM, reached);
  _gw_derivation_step (deriving, "lead-place",
                       reached > wanted ? _ ("place of the lead, in the nose")
                                        : _ ("place of the lead, in the tail"),
                       GW_MM, lead_place (aircraft, reached > wanted));
}

static void
add_travel (GwDeriving *deriving)
{
  _gw_derivation_result (deriving, "mass", GW_RESULT_MASS);
  _gw_derivation_result (deriving, "balance", GW_RESULT_BALANCE_X);
  add_item (deriving, TRUE);
}

/* Its part of the inertia about the balance point of the whole. */
static double
inertia_share (const GwMoments *moments,
               const double     centre[3],
               GwResultId       id)
{
  static const int second[3][2] = { { 1, 2 }, { 0, 2 }, { 0, 1 } };
  GwMoments        moved = *moments;
  const double     by[3] = { -centre[0], -centre[1], -centre[2] };

  gw_moments_shift (&moved, by);
  if (id == GW_RESULT_IXZ)
    return moved.second[4];

  return moved.second[second[id - GW_RESULT_IXX][0]] + moved.second[second[id - GW_RESULT_IXX][1]];
}

static void
add_inertia (GwDeriving *deriving)
{
  const GwOutcome  *outcome = deriving->outcome;
  const GwAircraft *aircraft = &outcome->assembly->aircraft;

  for (guint group = 0; group < GW_N_GROUPS; group++)
    for (guint i = 0; i < gw_owner_count (aircraft, (GwGroup) group); i++)
      {
        GwMoments moments;

        gw_owner_moments (outcome, (GwGroup) group, i, &moments);
        if (!(moments.total > 0.0))
          continue;
        own (deriving,
             _gw_derivation_step (
               deriving, "thing", gw_owner_name (aircraft, (GwGroup) group, i), GW_KG_M2,
               inertia_share (&moments, outcome->results.balance.centre, deriving->id)),
             (GwGroup) group, i);
      }

  _gw_derivation_result (deriving, "sum", deriving->id);
}

static void
add_along_chord (GwDeriving *deriving)
{
  const GwGeometry *geometry = &deriving->outcome->results.geometry;

  _gw_derivation_result (deriving, "balance", GW_RESULT_BALANCE_X);
  if (deriving->id == GW_RESULT_BALANCE_MAC)
    {
      _gw_derivation_step (deriving, "chord-edge", _ ("leading edge of the mean chord, from the "
                                                      "datum"),
                           GW_MM, geometry->mac_x);
      _gw_derivation_result (deriving, "chord", GW_RESULT_MEAN_CHORD);
    }
  else
    _gw_derivation_step (deriving, "root-edge", _ ("leading edge of the wing's root, from the "
                                                   "datum"),
                         GW_MM, geometry->shapes[geometry->wing].root_x);
}

gboolean
_gw_derive_balance (GwDeriving *deriving)
{
  const GwResultId id = deriving->id;

  if (id == GW_RESULT_BALANCE_X || id == GW_RESULT_BALANCE_Y || id == GW_RESULT_BALANCE_Z)
    add_moments (deriving, id == GW_RESULT_BALANCE_X ? 0 : id == GW_RESULT_BALANCE_Y ? 1
                                                                                     : 2);
  else if (id == GW_RESULT_BALANCE_ROOT)
    {
      add_moments (deriving, 0);
      add_along_chord (deriving);
    }
  else if (id == GW_RESULT_BALANCE_MAC)
    add_along_chord (deriving);
  else if (id == GW_RESULT_SLIDE || id == GW_RESULT_SLIDE_LEFT)
    add_slide (deriving, id == GW_RESULT_SLIDE_LEFT);
  else if (id == GW_RESULT_BALLAST)
    add_ballast (deriving);
  else if (id == GW_RESULT_TRAVEL_FORE || id == GW_RESULT_TRAVEL_AFT)
    add_travel (deriving);
  else if (id == GW_RESULT_IXX || id == GW_RESULT_IYY || id == GW_RESULT_IZZ ||
           id == GW_RESULT_IXZ)
    add_inertia (deriving);
  else
    return FALSE;

  return TRUE;
}
