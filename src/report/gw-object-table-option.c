/* gw-object-table-option.c - the tables of one option: things, stations, points
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-object-table-private.h"
#include "report/gw-owner.h"

static void
add_thing (GwTabling *tabling,
           GwGroup    group,
           guint      owner)
{
  const GwOutcome *outcome = tabling->outcome;
  GwMoments        moments;
  double           centre[3];

  gw_owner_moments (outcome, group, owner, &moments);
  gw_moments_centre (&moments, centre);
  _gw_table_row (tabling, gw_owner_path (outcome, group, owner));
  _gw_table_text (tabling, gw_group_label (group));
  _gw_table_text (tabling, gw_owner_name (&outcome->assembly->aircraft, group, owner));
  _gw_table_number (tabling, GW_G, moments.total, 1);
  _gw_table_number (tabling, GW_PERCENT, moments.total / outcome->results.balance.mass, 1);
  for (guint axis = 0; axis < 3; axis++)
    _gw_table_number (tabling, GW_MM, moments.total > 0.0 ? centre[axis] : (double) NAN, 0);
  _gw_table_text (tabling, gw_owner_origin (outcome, group, owner));
  _gw_table_number (tabling, GW_PERCENT,
                    gw_owner_weighed (outcome, group, owner) / moments.total, 0);
}

void
_gw_table_fill_things (GwTabling *tabling)
{
  const GwAircraft *aircraft = &tabling->outcome->assembly->aircraft;

  _gw_table_text_column (tabling, _ ("group"));
  _gw_table_text_column (tabling, _ ("name"));
  _gw_table_number_column (tabling, _ ("mass"), GW_G);
  _gw_table_number_column (tabling, _ ("share"), GW_PERCENT);
  _gw_table_number_column (tabling, _ ("aft"), GW_MM);
  _gw_table_number_column (tabling, _ ("out"), GW_MM);
  _gw_table_number_column (tabling, _ ("height"), GW_MM);
  _gw_table_text_column (tabling, _ ("origin"));
  _gw_table_number_column (tabling, _ ("weighed"), GW_PERCENT);
  for (guint group = 0; group < GW_N_GROUPS; group++)
    for (guint i = 0; i < gw_owner_count (aircraft, (GwGroup) group); i++)
      add_thing (tabling, (GwGroup) group, i);
}

static void
add_station (GwTabling *tabling,
             guint      surface,
             guint      i)
{
  const GwSurface *of = &tabling->outcome->assembly->aircraft.surfaces[surface];
  const GwStation *station = &of->stations[i];
  g_autofree char *owner = gw_owner_path (tabling->outcome, GW_GROUP_SURFACE, surface);

  _gw_table_row (tabling, g_strdup_printf ("%s/stations/%u", owner, i + 1));
  _gw_table_text (tabling, of->name);
  _gw_table_number (tabling, GW_COUNT, i + 1, 0);
  for (guint axis = 0; axis < 3; axis++)
    _gw_table_number (tabling, GW_MM, station->at[axis], 0);
  _gw_table_number (tabling, GW_MM, station->chord, 0);
  _gw_table_number (tabling, GW_DEG, station->twist, 1);
  _gw_table_text (tabling, station->section->name);
}

void
_gw_table_fill_stations (GwTabling *tabling)
{
  const GwAircraft *aircraft = &tabling->outcome->assembly->aircraft;

  _gw_table_text_column (tabling, _ ("surface"));
  _gw_table_number_column (tabling, _ ("station"), GW_COUNT);
  _gw_table_number_column (tabling, _ ("leading edge, aft"), GW_MM);
  _gw_table_number_column (tabling, _ ("out"), GW_MM);
  _gw_table_number_column (tabling, _ ("height"), GW_MM);
  _gw_table_number_column (tabling, _ ("chord"), GW_MM);
  _gw_table_number_column (tabling, _ ("angle"), GW_DEG);
  _gw_table_text_column (tabling, _ ("section"));
  for (guint i = 0; i < aircraft->n_surfaces; i++)
    for (guint k = 0; k < aircraft->surfaces[i].n_stations; k++)
      add_station (tabling, i, k);
}

/* A place along the aircraft, by datum, root and mean chord; none without an answer. */
static void
add_point (GwTabling    *tabling,
           const char   *name,
           double        x,
           const GwBand *band,
           char         *path)
{
  const GwGeometry   *geometry = &tabling->outcome->results.geometry;
  static const GwBand none = { 0.0, 0.0 };

  if (!isfinite (x))
    {
      g_free (path);
      return;
    }

  _gw_table_row (tabling, path);
  _gw_table_text (tabling, name);
  _gw_table_number (tabling, GW_MM, x, 1);
  _gw_table_band (tabling, GW_MM, x, band != NULL ? band : &none, 1);
  _gw_table_number (tabling, GW_MM, x - geometry->shapes[geometry->wing].root_x, 1);
  _gw_table_number (tabling, GW_PERCENT, (x - geometry->mac_x) / geometry->mac, 1);
}

static void
add_result_point (GwTabling *tabling,
                  GwResultId id,
                  char      *path)
{
  add_point (tabling, _ (gw_result_info (id)->label), tabling->outcome->results.value[id],
             &tabling->outcome->band[id], path);
}

static char *
movable_path (GwTabling *tabling)
{
  const int movable = tabling->outcome->assembly->aircraft.movable;

  return movable >= 0 ? gw_owner_path (tabling->outcome, GW_GROUP_ITEM, (guint) movable) : NULL;
}

/* Where the item that is moved balances, as far as its bay lets it: the outline in the drawings. */
static void
add_wanted_place (GwTabling *tabling)
{
  const GwAircraft *aircraft = &tabling->outcome->assembly->aircraft;
  const double     *value = tabling->outcome->results.value;
  g_autofree char  *name = NULL;

  if (aircraft->movable < 0 || !isfinite (value[GW_RESULT_SLIDE]))
    return;

  name = g_strdup_printf (_ ("%s, to balance"), aircraft->items[aircraft->movable].name);
  add_point (tabling, name,
             aircraft->items[aircraft->movable].at[0] + value[GW_RESULT_SLIDE] -
               value[GW_RESULT_SLIDE_LEFT],
             NULL, movable_path (tabling));
}

void
_gw_table_fill_points (GwTabling *tabling)
{
  const GwOutcome  *outcome = tabling->outcome;
  const GwGeometry *geometry = &outcome->results.geometry;

  _gw_table_text_column (tabling, _ ("point"));
  _gw_table_number_column (tabling, _ ("from the datum"), GW_MM);
  _gw_table_number_column (tabling, _ ("10th–90th percentile"), GW_MM);
  _gw_table_number_column (tabling, _ ("behind the root's leading edge"), GW_MM);
  _gw_table_number_column (tabling, _ ("in the mean chord"), GW_PERCENT);

  add_point (tabling, _ ("leading edge of the wing's root"),
             geometry->shapes[geometry->wing].root_x, NULL,
             gw_owner_path (outcome, GW_GROUP_SURFACE, (guint) geometry->wing));
  add_point (tabling, _ ("leading edge of the mean chord"), geometry->mac_x, NULL,
             gw_owner_path (outcome, GW_GROUP_SURFACE, (guint) geometry->wing));
  add_result_point (tabling, GW_RESULT_FORWARD_LIMIT, NULL);
  add_result_point (tabling, GW_RESULT_BALANCE_X, NULL);
  add_point (tabling, _ ("wanted balance point"), outcome->assembly->aircraft.targets.balance_x,
             NULL, g_strdup ("targets"));
  add_result_point (tabling, GW_RESULT_AFT_LIMIT, g_strdup ("targets"));
  add_result_point (tabling, GW_RESULT_NEUTRAL_POINT, NULL);
  add_result_point (tabling, GW_RESULT_TRAVEL_FORE, movable_path (tabling));
  add_result_point (tabling, GW_RESULT_TRAVEL_AFT, movable_path (tabling));
  add_wanted_place (tabling);
}
