/* gw-grip-text.c - what a move is called, and where it has led, in words
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-grip-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-edit.h"

static char *
name_of (GwDocument *document,
         const char *path)
{
  GwRecord *record = gw_edit_record (_gw_grip_study (document), path);

  return record != NULL ? gw_edit_record_name (record) : g_strdup ("");
}

char *
gw_grip_name (const GwGrip *grip,
              GwDocument   *document)
{
  g_autofree char *path = NULL, *name = NULL;

  switch (grip->kind)
    {
    case GW_GRIP_ITEM:
      name = name_of (document, grip->path);
      return g_strdup_printf (_ ("Move %s"), name);
    case GW_GRIP_BALANCE:
      return g_strdup (_ ("Move the balance point"));
    case GW_GRIP_STATION:
    case GW_GRIP_CHORD:
      path = _gw_grip_surface (grip->path);
      name = name_of (document, path);
      return g_strdup_printf (_ ("Shape %s"), name);
    case GW_GRIP_SPAN:
      name = name_of (document, grip->path);
      return g_strdup_printf (_ ("Span of %s"), name);
    case GW_GRIP_NONE:
    default:
      return g_strdup ("");
    }
}

static char *
length_text (double         mm,
             const GwUnits *units)
{
  g_autofree char *number =
    gw_entry_text (mm, units->of[GW_MM], gw_units_shown (units, GW_MM, 1.0) < 0.1 ? 2 : 1);

  return g_strdup_printf ("%s %s", number, gw_units_name (units, GW_MM));
}

static char *
item_text (const GwStudyItem *item,
           GwView             view,
           const GwUnits     *units)
{
  g_autofree char *name = gw_edit_record_name (&item->record);
  g_autofree char *aft = length_text (item->x_mm.value, units);
  g_autofree char *other = NULL;

  if (!isnan (item->bay_from_mm.value) && item->x_mm.value <= item->bay_from_mm.value)
    return g_strdup_printf (_ ("%s: %s aft, the fore end of its bay"), name, aft);
  if (!isnan (item->bay_from_mm.value) && item->x_mm.value >= item->bay_to_mm.value)
    return g_strdup_printf (_ ("%s: %s aft, the rear end of its bay"), name, aft);
  if (!isnan (item->bay_from_mm.value))
    return g_strdup_printf (_ ("%s: %s aft"), name, aft);

  other = length_text (view == GW_VIEW_TOP ? item->y_mm.value : item->z_mm.value, units);
  return g_strdup_printf (view == GW_VIEW_TOP ? _ ("%s: %s aft, %s out") : _ ("%s: %s aft, %s up"),
                          name, aft, other);
}

/* Lead at the nose or tail for what is left of the way to @wanted [m]. */
static char *
lead_text (GwDocument    *document,
           double         wanted,
           const GwUnits *units)
{
  const GwOutcome *outcome = _gw_grip_outcome (document);
  const double     mass = outcome->results.value[GW_RESULT_MASS];
  const double     x = outcome->results.value[GW_RESULT_BALANCE_X];
  const double     root = x - outcome->results.value[GW_RESULT_BALANCE_ROOT];
  double           nose, tail, ballast;
  g_autofree char *at = NULL, *lead = NULL;

  if (fabs (wanted - x) < 0.5e-3)
    return NULL;

  gw_aircraft_ends (&outcome->assembly->aircraft, &nose, &tail);
  if (gw_balance_ballast (mass, x, wanted < x ? nose : tail, wanted, &ballast) != GW_OK)
    return NULL;

  at = length_text ((wanted - root) * 1e3, units);
  lead = gw_entry_text (ballast * 1e3, units->of[GW_G], 1);
  return g_strdup_printf (wanted < x ? _ ("%s takes %s %s of lead in the nose besides")
                                     : _ ("%s takes %s %s of lead in the tail besides"),
                          at, lead, gw_units_name (units, GW_G));
}

static gboolean
is_at_end (const GwStudyItem *item,
           double             towards)
{
  const double beyond = item->x_mm.value + towards;

  return _gw_grip_within (item, beyond) != beyond;
}

/* What the item cannot do any more, lead has to. */
static char *
balance_text (GwDocument       *document,
              const GwGripMove *move,
              GwView            view,
              const GwUnits    *units)
{
  const double      *value = _gw_grip_outcome (document)->results.value;
  g_autofree char   *path = _gw_grip_movable (document);
  const GwStudyItem *item = _gw_grip_item_at (document, path);
  const double       wanted = view == GW_VIEW_TOP ? move->v : move->u;
  g_autofree char   *at = length_text (value[GW_RESULT_BALANCE_ROOT] * 1e3, units);
  g_autofree char   *name = gw_edit_record_name (&item->record);
  g_autofree char   *place = length_text (item->x_mm.value, units);
  const gboolean     is_end =
    is_at_end (item, wanted < value[GW_RESULT_BALANCE_X] ? -0.01 : 0.01);
  g_autofree char *lead = is_end ? lead_text (document, wanted, units) : NULL;
  g_autofree char *text =
    g_strdup_printf (is_end ? _ ("balance point %s; %s at the end of its bay, %s aft")
                            : _ ("balance point %s; %s %s aft"),
                     at, name, place);

  return lead != NULL ? g_strdup_printf ("%s; %s", text, lead) : g_steal_pointer (&text);
}

static char *
station_text (const GwGrip  *grip,
              GwDocument    *document,
              const GwUnits *units)
{
  const GwStudyStation *station =
    (const GwStudyStation *) gw_edit_record (_gw_grip_study (document), grip->path);
  g_autofree char *chord = NULL, *aft = NULL, *out = NULL;

  if (station == NULL)
    return g_strdup ("");

  chord = length_text (station->chord_mm.value, units);
  if (grip->kind == GW_GRIP_CHORD)
    return g_strdup_printf (_ ("chord %s"), chord);

  aft = length_text (station->x_mm.value, units);
  out = length_text (grip->view == GW_VIEW_TOP ? station->y_mm.value : station->z_mm.value, units);
  return g_strdup_printf (grip->view == GW_VIEW_TOP ? _ ("%s out, leading edge %s aft")
                                                    : _ ("%s up, leading edge %s aft"),
                          out, aft);
}

static char *
span_text (const GwGrip  *grip,
           GwDocument    *document,
           const GwUnits *units)
{
  g_autofree char *span = length_text (2e3 * gw_grip_half_span (document, grip->path), units);

  return g_strdup_printf (_ ("span %s"), span);
}

char *
gw_grip_text (const GwGrip     *grip,
              GwDocument       *document,
              const GwGripMove *move,
              const GwUnits    *units)
{
  switch (grip->kind)
    {
    case GW_GRIP_ITEM:
      return item_text (_gw_grip_item_at (document, grip->path), grip->view, units);
    case GW_GRIP_BALANCE:
      return balance_text (document, move, grip->view, units);
    case GW_GRIP_STATION:
    case GW_GRIP_CHORD:
      return station_text (grip, document, units);
    case GW_GRIP_SPAN:
      return span_text (grip, document, units);
    case GW_GRIP_NONE:
    default:
      return g_strdup ("");
    }
}
