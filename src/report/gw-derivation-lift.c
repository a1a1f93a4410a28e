/* gw-derivation-lift.c - the steps of stall, neutral point and limits
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-derivation-private.h"
#include "report/gw-owner.h"

static GwDerivationRow *
add_surface (GwDeriving *deriving,
             const char *key,
             const char *label,
             int         surface)
{
  const GwAircraft *aircraft = &deriving->outcome->assembly->aircraft;
  GwDerivationRow  *row;

  if (surface < 0)
    return _gw_derivation_add (deriving, key, label, g_strdup (_ ("none")));

  row = _gw_derivation_add (deriving, key, label, g_strdup (aircraft->surfaces[surface].name));
  row->path = _gw_derivation_path (
    deriving, gw_owner_path (deriving->outcome, GW_GROUP_SURFACE, (guint) surface));
  return row;
}

/* The record behind a section of the engine, which stands where the study has it. */
static const GwStudySection *
section_record (const GwDeriving *deriving,
                const GwSection  *section)
{
  const GPtrArray *list = deriving->outcome->assembly->study->sections;

  for (guint i = 0; i < list->len; i++)
    {
      const GwStudySection *record = g_ptr_array_index (list, i);

      if (section->name == record->name || section->name == record->id)
        return record;
    }

  return NULL;
}

/* What disturbs the layer there, and what the section would carry without it. */
static void
add_finish (GwDeriving      *deriving,
            const GwSection *section,
            const GwSlice   *slice,
            double           re)
{
  const gboolean is_grain = slice->finish.critical == GW_CRITICAL_GRAIN;
  GwSectionPoint smooth;

  if (!(slice->finish.height > 0.0) ||
      gw_section_at (section, re, slice->chord, NULL, &smooth) != GW_OK)
    return;

  _gw_derivation_add (deriving, "finish",
                      is_grain ? _ ("grain of the surface there")
                               : _ ("step across the stream there"),
                      gw_amount_text (deriving->units, GW_MM, slice->finish.height, 3));
  _gw_derivation_step (deriving, "smooth-lift", _ ("smooth the section would have"), GW_RATIO,
                       smooth.cl_max);
}

static void
add_section (GwDeriving      *deriving,
             const GwSection *section,
             const GwSlice   *slice,
             double           re)
{
  const GwStudySection *record = section_record (deriving, section);
  g_autofree char      *label = g_strdup_printf (_ ("greatest lift of the section %s there"),
                                                 section->name);
  GwDerivationRow      *row;
  GwSectionPoint        point;

  if (gw_section_at (section, re, slice->chord, &slice->finish, &point) != GW_OK)
    return;

  row = _gw_derivation_step (deriving, "section-lift", label, GW_RATIO, point.cl_max);
  if (record != NULL)
    {
      row->origin = g_strdup (gw_amount_origin (record->cl_max_factor.origin));
      row->source = g_strdup (record->source);
      row->path = _gw_derivation_path (deriving, g_strdup_printf ("sections/%s", record->id));
    }
  add_finish (deriving, section, slice, re);
}

static void
add_place (GwDeriving *deriving)
{
  const GwOutcome *outcome = deriving->outcome;
  const GwStall   *stall = &outcome->results.stall;
  const GwSurface *surface;
  GwSlice          slice;

  if (stall->surface < 0)
    return;

  surface = &outcome->assembly->aircraft.surfaces[stall->surface];
  add_surface (deriving, "surface", _ ("lets go first"), stall->surface);
  _gw_derivation_result (deriving, "place", GW_RESULT_STALL_PLACE);
  _gw_derivation_result (deriving, "reynolds", GW_RESULT_STALL_RE);
  gw_surface_slice (surface, gw_spanwise_arc (surface, stall->eta), &slice);
  add_section (deriving, slice.inner, &slice, stall->re);
  if (slice.outer != slice.inner && slice.mix > 0.0)
    {
      add_section (deriving, slice.outer, &slice, stall->re);
      _gw_derivation_step (deriving, "mix", _ ("share of the outer section there"), GW_PERCENT,
                           slice.mix);
    }
}

static void
add_stall (GwDeriving *deriving)
{
  const GwResults *results = &deriving->outcome->results;
  const GwStall   *stall = &results->stall;

  _gw_derivation_result (deriving, "mass", GW_RESULT_MASS);
  _gw_derivation_result (deriving, "area", GW_RESULT_WING_AREA);
  _gw_derivation_result (deriving, "density", GW_RESULT_DENSITY);
  _gw_derivation_add (deriving, "gravity", _ ("acceleration of free fall"),
                      g_strdup_printf ("%.5f m/s²", GW_GRAVITY))
    ->source = g_strdup ("ISO 2533:1975");
  if (stall->surface < 0)
    {
      _gw_derivation_add (deriving, "none", _ ("stall"), g_strdup (_ ("no speed carries it")));
      return;
    }

  _gw_derivation_result (deriving, deriving->id == GW_RESULT_CL_MAX ? "speed" : "lift",
                         deriving->id == GW_RESULT_CL_MAX ? GW_RESULT_STALL_SPEED
                                                          : GW_RESULT_CL_MAX);
  _gw_derivation_step (deriving, "wing-lift", _ ("greatest lift coefficient of the main wing"),
                       GW_RATIO, stall->wing_cl_max);
  _gw_derivation_step (deriving, "angle", _ ("angle of the body"), GW_DEG, stall->alpha);
  add_place (deriving);
  add_surface (deriving, "trim", _ ("trims"), results->geometry.trim);
  if (results->geometry.trim >= 0)
    _gw_derivation_add (deriving, "trim-load", _ ("its load, up positive"),
                        g_strdup_printf ("%.4f N", stall->trim_load));
  if (stall->is_tail_limit)
    _gw_derivation_add (deriving, "tail-limit", _ ("limit"),
                        g_strdup (gw_note_text (GW_NOTE_TAIL_LIMIT)));
  _gw_derivation_result (deriving, "balance", GW_RESULT_BALANCE_X);
}

static void
add_reynolds (GwDeriving *deriving)
{
  const GwResults *results = &deriving->outcome->results;
  const GwStall   *stall = &results->stall;

  add_surface (deriving, "surface", _ ("lets go first"), stall->surface);
  if (stall->surface < 0)
    return;

  _gw_derivation_result (deriving, "density", GW_RESULT_DENSITY);
  _gw_derivation_result (deriving, "speed", GW_RESULT_STALL_SPEED);
  _gw_derivation_step (deriving, "chord", _ ("chord there"), GW_MM,
                       stall->re * results->air.viscosity / (results->air.density * stall->speed));
  _gw_derivation_add (deriving, "viscosity", _ ("viscosity of the air"),
                      g_strdup_printf ("%.4f µPa s", results->air.viscosity * 1e6));
}

static void
add_target_mass (GwDeriving *deriving)
{
  const GwOutcome *outcome = deriving->outcome;
  const double     speed = outcome->assembly->aircraft.targets.stall_speed;
  const double     pressure = 0.5 * outcome->results.air.density * speed * speed;
  const double     mass = outcome->results.value[GW_RESULT_TARGET_MASS];

  _gw_derivation_step (deriving, "speed", _ ("wanted stall speed"), GW_M_S, speed)->path =
    _gw_derivation_path (deriving, g_strdup ("targets"));
  _gw_derivation_result (deriving, "density", GW_RESULT_DENSITY);
  _gw_derivation_result (deriving, "area", GW_RESULT_WING_AREA);
  if (isfinite (mass))
    _gw_derivation_step (deriving, "lift", _ ("lift coefficient at that speed, trimmed"), GW_RATIO,
                         mass * GW_GRAVITY / (pressure * outcome->results.geometry.area));
  _gw_derivation_result (deriving, "balance", GW_RESULT_BALANCE_X);
}

/* The lift of each surface at the stall speed, as the evaluation found the neutral point;
 * without a stall, at the speed where a lift coefficient of 1 would carry the mass. */
static GwLift *
find_lifts (const GwOutcome *outcome)
{
  const GwResults  *results = &outcome->results;
  const GwGeometry *geometry = &results->geometry;
  const double      unit = sqrt (2.0 * results->balance.mass * GW_GRAVITY /
                                 (results->air.density * geometry->area));
  const double      speed = isnan (results->stall.speed) ? unit : results->stall.speed;
  GwLift           *lifts = g_new0 (GwLift, MAX (geometry->n_surfaces, 1));

  for (size_t i = 0; i < geometry->n_surfaces; i++)
    if (outcome->assembly->aircraft.surfaces[i].role != GW_ROLE_FIN &&
        gw_lift_of_spanwise (&geometry->spanwise[i], &results->air, speed, &lifts[i]) != GW_OK)
      {
        g_free (lifts);
        return NULL;
      }

  return lifts;
}

static void
add_lift (GwDeriving   *deriving,
          guint         surface,
          const GwLift *lifts)
{
  const GwOutcome  *outcome = deriving->outcome;
  const GwGeometry *geometry = &outcome->results.geometry;
  const GwWake      wake = gw_wake_at (&outcome->assembly->aircraft, geometry, lifts, surface);

  add_surface (deriving, "surface", gw_group_label (GW_GROUP_SURFACE), (int) surface);
  _gw_derivation_step (deriving, "slope", _ ("its lift slope"), GW_PER_RAD,
                       lifts[surface].lift_slope);
  _gw_derivation_step (deriving, "surface-area", _ ("its area, seen from above"), GW_M2,
                       geometry->shapes[surface].projected_area);
  _gw_derivation_step (deriving, "centre", _ ("its aerodynamic centre, from the datum"), GW_MM,
                       lifts[surface].centre_x);
  if (wake.downwash > 0.0)
    {
      _gw_derivation_step (deriving, "downwash", _ ("downwash there, by angle"), GW_RATIO,
                           wake.downwash);
      _gw_derivation_step (deriving, "efficiency", _ ("dynamic pressure there, of the free "
                                                      "stream's"),
                           GW_RATIO, wake.efficiency);
    }
}

static void
add_neutral_point (GwDeriving *deriving)
{
  const GwOutcome   *outcome = deriving->outcome;
  const GwAircraft  *aircraft = &outcome->assembly->aircraft;
  const GwGeometry  *geometry = &outcome->results.geometry;
  g_autofree GwLift *lifts = find_lifts (outcome);
  GwStability        stability;

  if (lifts == NULL || gw_stability_of (aircraft, geometry, lifts, &stability) != GW_OK)
    return;

  for (guint i = 0; i < aircraft->n_surfaces; i++)
    if (aircraft->surfaces[i].role != GW_ROLE_FIN)
      add_lift (deriving, i, lifts);
  if (deriving->id == GW_RESULT_LIFT_SLOPE)
    {
      _gw_derivation_result (deriving, "area", GW_RESULT_WING_AREA);
      return;
    }

  _gw_derivation_result (deriving, "total-slope", GW_RESULT_LIFT_SLOPE);
  _gw_derivation_step (deriving, "bodies", _ ("moved by the bodies, aft positive"), GW_MM,
                       stability.body_share);
  if (aircraft->neutral_point_shift != 0.0)
    _gw_derivation_step (deriving, "method", _ ("correction of the method, of the mean chord"),
                         GW_PERCENT, aircraft->neutral_point_shift);
}

static void
add_margin (GwDeriving *deriving)
{
  add_neutral_point (deriving);
  _gw_derivation_result (deriving, "neutral-point", GW_RESULT_NEUTRAL_POINT);
  if (deriving->id == GW_RESULT_STATIC_MARGIN)
    _gw_derivation_result (deriving, "balance", GW_RESULT_BALANCE_X);
  else
    _gw_derivation_step (deriving, "wanted", _ ("wanted static margin"), GW_PERCENT,
                         deriving->outcome->assembly->aircraft.targets.static_margin)
      ->path = _gw_derivation_path (deriving, g_strdup ("targets"));
  _gw_derivation_result (deriving, "chord", GW_RESULT_MEAN_CHORD);
}

static void
add_control (GwDeriving      *deriving,
             const GwControl *control)
{
  _gw_derivation_step (deriving, "throw-up", _ ("throw of the control that trims, up"), GW_DEG,
                       control->up);
  _gw_derivation_step (deriving, "throw-down", _ ("and down"), GW_DEG, control->down);
  _gw_derivation_step (deriving, "flap", _ ("its chord, of the local chord"), GW_PERCENT,
                       control->chord_fraction);
  _gw_derivation_step (deriving, "tau", _ ("turn of the surface by turn of the control"), GW_RATIO,
                       gw_flap_effectiveness (control->chord_fraction));
}

static void
add_forward_limit (GwDeriving *deriving)
{
  const GwOutcome  *outcome = deriving->outcome;
  const GwAircraft *aircraft = &outcome->assembly->aircraft;
  const GwGeometry *geometry = &outcome->results.geometry;

  _gw_derivation_result (deriving, "mass", GW_RESULT_MASS);
  add_surface (deriving, "trim", _ ("trims"), geometry->trim);
  for (guint i = 0; i < aircraft->n_surfaces; i++)
    for (guint k = 0; k < aircraft->surfaces[i].n_controls; k++)
      {
        const GwControl *control = &aircraft->surfaces[i].controls[k];

        if (geometry->trim >= 0 ? (int) i == geometry->trim && control->kind != GW_CONTROL_RUDDER
                                : control->kind == GW_CONTROL_ELEVON)
          add_control (deriving, control);
      }
  _gw_derivation_step (deriving, "wing-lift", _ ("greatest lift coefficient of the main wing"),
                       GW_RATIO, outcome->results.stall.wing_cl_max);
}

/* Area and arm of one surface against the wing. */
static void
add_volume (GwDeriving *deriving,
            guint       surface,
            double      arm)
{
  const GwGeometry *geometry = &deriving->outcome->results.geometry;
  const gboolean    is_v_tail =
    deriving->outcome->assembly->aircraft.surfaces[surface].role == GW_ROLE_V_TAIL;

  add_surface (deriving, "surface", gw_group_label (GW_GROUP_SURFACE), (int) surface);
  _gw_derivation_step (deriving, "surface-area",
                       is_v_tail ? _ ("its area, in its own plane") : _ ("its area"), GW_M2,
                       is_v_tail ? geometry->shapes[surface].area
                                 : geometry->shapes[surface].projected_area);
  if (is_v_tail)
    _gw_derivation_step (deriving, "dihedral", _ ("its dihedral"), GW_DEG,
                         geometry->shapes[surface].dihedral);
  _gw_derivation_step (deriving, "arm", _ ("its arm"), GW_MM, arm);
}

static void
add_volumes (GwDeriving *deriving)
{
  const GwOutcome   *outcome = deriving->outcome;
  const GwAircraft  *aircraft = &outcome->assembly->aircraft;
  const GwGeometry  *geometry = &outcome->results.geometry;
  g_autofree GwLift *lifts = find_lifts (outcome);

  if (lifts == NULL)
    return;

  if (deriving->id == GW_RESULT_TAIL_VOLUME)
    {
      if (geometry->trim >= 0)
        add_volume (deriving, (guint) geometry->trim,
                    fabs (lifts[geometry->trim].centre_x - lifts[geometry->wing].centre_x));
      else
        add_surface (deriving, "surface", _ ("trims"), -1);
    }
  else
    for (guint i = 0; i < aircraft->n_surfaces; i++)
      if (aircraft->surfaces[i].role == GW_ROLE_FIN || aircraft->surfaces[i].role == GW_ROLE_V_TAIL)
        add_volume (deriving, i,
                    geometry->shapes[i].mac_at[0] + 0.25 * geometry->shapes[i].mac -
                      lifts[geometry->wing].centre_x);

  _gw_derivation_result (deriving, "area", GW_RESULT_WING_AREA);
  if (deriving->id == GW_RESULT_TAIL_VOLUME)
    _gw_derivation_result (deriving, "chord", GW_RESULT_MEAN_CHORD);
  else
    _gw_derivation_step (deriving, "span", _ ("span of the main wing"), GW_MM,
                         geometry->shapes[geometry->wing].span);
}

gboolean
_gw_derive_lift (GwDeriving *deriving)
{
  const GwResultId id = deriving->id;

  if (id == GW_RESULT_STALL_SPEED || id == GW_RESULT_CL_MAX)
    add_stall (deriving);
  else if (id == GW_RESULT_STALL_PLACE)
    add_place (deriving);
  else if (id == GW_RESULT_STALL_RE)
    add_reynolds (deriving);
  else if (id == GW_RESULT_TARGET_MASS)
    add_target_mass (deriving);
  else if (id == GW_RESULT_NEUTRAL_POINT || id == GW_RESULT_LIFT_SLOPE)
    add_neutral_point (deriving);
  else if (id == GW_RESULT_STATIC_MARGIN || id == GW_RESULT_AFT_LIMIT)
    add_margin (deriving);
  else if (id == GW_RESULT_FORWARD_LIMIT)
    add_forward_limit (deriving);
  else if (id == GW_RESULT_TAIL_VOLUME || id == GW_RESULT_FIN_VOLUME)
    add_volumes (deriving);
  else
    return FALSE;

  return TRUE;
}
