/* gw-grip.c - what can be taken hold of
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-grip-private.h"

#include <math.h>

#include "study/gw-edit.h"

void
gw_grip_clear (GwGrip *grip)
{
  g_clear_pointer (&grip->path, g_free);
  grip->kind = GW_GRIP_NONE;
}

void
gw_grip_copy (GwGrip       *to,
              const GwGrip *from)
{
  g_free (to->path);
  *to = *from;
  to->path = g_strdup (from->path);
}

const GwOutcome *
_gw_grip_outcome (GwDocument *document)
{
  return gw_evaluation_outcome (gw_document_get_evaluation (document),
                                gw_document_get_shown (document));
}

GwStudy *
_gw_grip_study (GwDocument *document)
{
  return _gw_grip_outcome (document)->assembly->study;
}

GwStudyItem *
_gw_grip_item_at (GwDocument *document,
                  const char *path)
{
  return g_str_has_prefix (path, "equipment/")
           ? (GwStudyItem *) gw_edit_record (_gw_grip_study (document), path)
           : NULL;
}

char *
_gw_grip_movable (GwDocument *document)
{
  const char *id = _gw_grip_study (document)->movable;

  return id != NULL ? g_strdup_printf ("equipment/%s", id) : NULL;
}

char *
_gw_grip_surface (const char *station)
{
  g_auto (GStrv) steps = g_strsplit (station, "/", 3);

  return g_strdup_printf ("%s/%s", steps[0], steps[1]);
}

double
_gw_grip_within (const GwStudyItem *item,
                 double             x)
{
  if (isnan (item->bay_from_mm.value) || isnan (item->bay_to_mm.value))
    return x;

  return CLAMP (x, item->bay_from_mm.value, item->bay_to_mm.value);
}

void
gw_grip_of_item (GwDocument *document,
                 const char *path,
                 GwView      view,
                 gboolean    is_image,
                 GwGrip     *out)
{
  const GwStudyItem *item = _gw_grip_item_at (document, path);

  *out = (GwGrip){ .kind = GW_GRIP_NONE };
  if (item == NULL)
    return;

  *out = (GwGrip){ GW_GRIP_ITEM, view, is_image, g_strdup (path), 0.0, 0.0 };
  out->u = 1e-3 * (view == GW_VIEW_TOP ? (is_image ? -1.0 : 1.0) * item->y_mm.value
                                       : item->x_mm.value);
  out->v = 1e-3 * (view == GW_VIEW_TOP ? item->x_mm.value : -item->z_mm.value);
}

static void
add_grip (GArray     *grips,
          GwGripKind  kind,
          GwView      view,
          gboolean    is_image,
          const char *path,
          double      u,
          double      v)
{
  const GwGrip grip = { kind, view, is_image, g_strdup (path), u, v };

  g_array_append_val (grips, grip);
}

static void
add_balance (GArray          *grips,
             const GwOutcome *outcome)
{
  const double *value = outcome->results.value;

  if (outcome->assembly->aircraft.movable < 0)
    return;

  add_grip (grips, GW_GRIP_BALANCE, GW_VIEW_TOP, FALSE, "", 0.0, value[GW_RESULT_BALANCE_X]);
  add_grip (grips, GW_GRIP_BALANCE, GW_VIEW_SIDE, FALSE, "", value[GW_RESULT_BALANCE_X],
            -value[GW_RESULT_BALANCE_Z]);
}

/* A fin is shaped in the side view, all else from above. */
static void
add_stations (GArray          *grips,
              const GwOutcome *outcome,
              const char      *id)
{
  const GPtrArray *list = outcome->assembly->study->surfaces;
  guint            index;

  for (index = 0; index < list->len; index++)
    if (g_strcmp0 (gw_record_id (g_ptr_array_index (list, index)), id) == 0)
      break;
  if (index == list->len)
    return;

  for (size_t i = 0; i < outcome->assembly->aircraft.surfaces[index].n_stations; i++)
    {
      const GwSurface *surface = &outcome->assembly->aircraft.surfaces[index];
      const GwStation *station = &surface->stations[i];
      const double     tail = station->at[0] + station->chord * cos (station->twist);
      g_autofree char *path = g_strdup_printf ("surfaces/%s/stations/%u", id, (guint) i + 1);

      if (surface->role == GW_ROLE_FIN)
        {
          add_grip (grips, GW_GRIP_STATION, GW_VIEW_SIDE, FALSE, path, station->at[0],
                    -station->at[2]);
          add_grip (grips, GW_GRIP_CHORD, GW_VIEW_SIDE, FALSE, path, tail, -station->at[2]);
          continue;
        }
      for (int side = 1; side >= (surface->is_mirrored && station->at[1] != 0.0 ? -1 : 1);
           side -= 2)
        {
          add_grip (grips, GW_GRIP_STATION, GW_VIEW_TOP, side < 0, path, side * station->at[1],
                    station->at[0]);
          add_grip (grips, GW_GRIP_CHORD, GW_VIEW_TOP, side < 0, path, side * station->at[1],
                    tail);
        }
    }
}

static void
clear_grip (gpointer grip)
{
  gw_grip_clear (grip);
}

GArray *
gw_grips_of (GwDocument *document)
{
  GArray *grips = g_array_new (FALSE, FALSE, sizeof (GwGrip));

  g_array_set_clear_func (grips, clear_grip);
  if (gw_document_get_evaluation (document) != NULL)
    {
      const char *selection = gw_document_get_selection (document);
      g_auto (GStrv) steps = g_strsplit (selection, "/", -1);

      add_balance (grips, _gw_grip_outcome (document));
      if (steps[0] != NULL && g_str_equal (steps[0], "surfaces") && steps[1] != NULL)
        add_stations (grips, _gw_grip_outcome (document), steps[1]);
    }

  return grips;
}

static const char *
number_key (const GwGrip *grip)
{
  if (grip->kind == GW_GRIP_CHORD)
    return "chord_mm";
  if (grip->kind == GW_GRIP_STATION && !g_str_has_suffix (grip->path, "/1"))
    return grip->view == GW_VIEW_TOP ? "y_mm" : "z_mm";

  return "x_mm";
}

const GwNumber *
gw_grip_number (const GwGrip *grip,
                GwDocument   *document,
                char        **path)
{
  g_autofree char *owner = NULL;
  const GwField   *field = NULL;
  GwRecord        *record;

  *path = NULL;
  if (grip->kind == GW_GRIP_NONE || grip->kind == GW_GRIP_SPAN)
    return NULL;
  if (grip->kind == GW_GRIP_BALANCE)
    owner = _gw_grip_movable (document);
  else if (grip->kind == GW_GRIP_STATION && g_str_has_suffix (grip->path, "/1"))
    owner = _gw_grip_surface (grip->path);
  else
    owner = g_strdup (grip->path);
  if (owner == NULL)
    return NULL;

  *path = g_strdup_printf ("%s/%s", owner, number_key (grip));
  record = gw_record_find (&_gw_grip_study (document)->record, *path, &field);
  return record != NULL ? gw_record_at (record, field) : NULL;
}
