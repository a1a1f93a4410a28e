/* gw-derivation-shape.c - the steps of areas, lengths and air
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "engine/gw-body.h"
#include "report/gw-derivation-private.h"
#include "report/gw-owner.h"

static void
add_owned (GwDeriving *deriving,
           const char *key,
           GwGroup     group,
           guint       owner,
           GwQuantity  quantity,
           double      value)
{
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;
  GwDerivationRow  *row = _gw_derivation_step (
     deriving, key, gw_owner_name (aircraft, group, owner), quantity, value);

  row->path =
    _gw_derivation_path (deriving, gw_owner_path (deriving->outcome, group, owner));
}

static void
add_stations (GwDeriving *deriving,
              guint       surface)
{
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;
  const GwSurface  *of = &aircraft->surfaces[surface];

  for (guint i = 0; i < of->n_stations; i++)
    {
      const GwStation *station = &of->stations[i];
      g_autofree char *out = gw_amount_digits (deriving->units, GW_MM, station->at[1]);
      g_autofree char *chord = gw_amount_digits (deriving->units, GW_MM, station->chord);
      g_autofree char *owner = gw_owner_path (deriving->outcome, GW_GROUP_SURFACE, surface);
      /* Translators: name of a surface, number of the station */
      g_autofree char *label = g_strdup_printf (_ ("%s, station %u"), of->name, i + 1);
      GwDerivationRow *row = _gw_derivation_add (
        deriving, "station", label, g_strdup_printf (_ ("chord %s, %s out"), chord, out));

      row->path =
        _gw_derivation_path (deriving, g_strdup_printf ("%s/stations/%u", owner, i + 1));
    }
}

static void
add_wings (GwDeriving *deriving)
{
  const GwResults  *results = &deriving->outcome->results;
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;
  const gboolean    is_area = deriving->id == GW_RESULT_WING_AREA;

  for (guint i = 0; i < aircraft->n_surfaces; i++)
    if (gw_owner_is_wing (aircraft, GW_GROUP_SURFACE, i))
      {
        add_stations (deriving, i);
        add_owned (deriving, "thing", GW_GROUP_SURFACE, i, is_area ? GW_M2 : GW_MM,
                   is_area ? results->geometry.shapes[i].projected_area
                           : results->geometry.shapes[i].span);
      }
}

static void
add_main_wing (GwDeriving *deriving)
{
  const GwGeometry     *geometry = &deriving->outcome->results.geometry;
  const GwSurfaceShape *shape = &geometry->shapes[geometry->wing];

  add_stations (deriving, (guint) geometry->wing);
  if (deriving->id == GW_RESULT_ASPECT_RATIO)
    {
      _gw_derivation_step (deriving, "span", _ ("span of the main wing"), GW_MM, shape->span);
      _gw_derivation_step (deriving, "area", _ ("its area, seen from above"), GW_M2,
                           shape->projected_area);
      return;
    }

  _gw_derivation_step (deriving, "chord-edge", _ ("its leading edge, from the datum"), GW_MM,
                       shape->mac_at[0]);
  _gw_derivation_step (deriving, "chord-out", _ ("its place out along the span"), GW_MM,
                       shape->mac_at[1]);
}

static void
add_wetted (GwDeriving *deriving)
{
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;

  for (guint i = 0; i < aircraft->n_surfaces; i++)
    add_owned (deriving, "thing", GW_GROUP_SURFACE, i, GW_M2,
               deriving->outcome->results.geometry.shapes[i].wetted_area);
  for (guint i = 0; i < aircraft->n_bodies; i++)
    {
      GwBodyShape shape;

      if (gw_body_shape (&aircraft->bodies[i], &shape, NULL) == GW_OK)
        add_owned (deriving, "thing", GW_GROUP_BODY, i, GW_M2,
                   (aircraft->bodies[i].is_mirrored ? 2.0 : 1.0) * shape.wetted_area);
    }
}

static void
add_air (GwDeriving *deriving)
{
  const GwAir *air = &deriving->outcome->results.air;
  const GwDay *day = &deriving->outcome->assembly->aircraft.day;
  char        *path = _gw_derivation_path (deriving, g_strdup ("day"));

  _gw_derivation_step (deriving, "pressure", _ ("pressure at the field"), GW_HPA, air->pressure);
  _gw_derivation_step (deriving, "temperature", _ ("temperature"), GW_C, air->temperature)->path =
    g_strdup (path);
  _gw_derivation_step (deriving, "humidity", _ ("relative humidity"), GW_PERCENT, day->humidity)
    ->path = path;
  if (deriving->id == GW_RESULT_DENSITY_ALTITUDE)
    _gw_derivation_result (deriving, "density", GW_RESULT_DENSITY);
}

gboolean
_gw_derive_shape (GwDeriving *deriving)
{
  const GwResultId id = deriving->id;

  if (id == GW_RESULT_WING_AREA || id == GW_RESULT_SPAN)
    add_wings (deriving);
  else if (id == GW_RESULT_ASPECT_RATIO || id == GW_RESULT_MEAN_CHORD)
    add_main_wing (deriving);
  else if (id == GW_RESULT_WETTED_AREA)
    add_wetted (deriving);
  else if (id == GW_RESULT_DENSITY || id == GW_RESULT_DENSITY_ALTITUDE)
    add_air (deriving);
  else
    return FALSE;

  return TRUE;
}
