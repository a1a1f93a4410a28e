/* gw-grip-move.c - a study with the grip led elsewhere
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-grip-private.h"

#include <math.h>
#include <string.h>

#include "study/gw-edit-number.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"

#define LEAST_CHORD 5.0 /* [mm] */

gboolean
_gw_grip_set_field (GwGripMover    *mover,
                    const char     *path,
                    const char     *key,
                    const GwNumber *number,
                    double          value)
{
  g_autofree char *field = g_strdup_printf ("%s/%s", path, key);
  g_autoptr (JsonNode) node = gw_edit_number (number, GW_MM, value);
  GwStudy *edited;

  if (mover->study == NULL || value == number->value)
    return mover->study != NULL;

  edited = gw_edit_set (mover->study, gw_document_get_shown (mover->document),
                        gw_document_get_only_here (mover->document), field, node, mover->error);
  gw_study_unref (mover->study);
  mover->study = edited;
  return edited != NULL;
}

/* To whole steps, so that a drag leaves numbers a person would write [mm]. */
static double
rounded (double            metres,
         const GwGripMove *move)
{
  const double steps = 1e-3 / move->step; /* in a millimetre */

  return round (metres * 1e3 * steps) / steps;
}

static void
move_item (GwGripMover      *mover,
           const GwGrip     *grip,
           const GwGripMove *move)
{
  const GwStudyItem *item = _gw_grip_item_at (mover->document, grip->path);
  const gboolean     has_bay = !isnan (item->bay_from_mm.value);
  const double       x = grip->view == GW_VIEW_TOP ? move->v : move->u;
  double             y = grip->is_image ? -move->u : move->u;

  if (fabs (y) < move->catch && !item->mirrored)
    y = 0.0;
  _gw_grip_set_field (mover, grip->path, "x_mm", &item->x_mm,
                      _gw_grip_within (item, rounded (x, move)));
  /* What sits in a bay slides along it. */
  if (has_bay)
    return;
  if (grip->view == GW_VIEW_TOP)
    _gw_grip_set_field (mover, grip->path, "y_mm", &item->y_mm, rounded (y, move));
  else
    _gw_grip_set_field (mover, grip->path, "z_mm", &item->z_mm, rounded (-move->v, move));
}

/* The item's own lead follows it in part, so a place is only nearly right; the next move starts
 * from what this one came to. */
static void
move_balance (GwGripMover      *mover,
              const GwGrip     *grip,
              const GwGripMove *move)
{
  const GwOutcome   *outcome = _gw_grip_outcome (mover->document);
  g_autofree char   *path = _gw_grip_movable (mover->document);
  const GwStudyItem *item = path != NULL ? _gw_grip_item_at (mover->document, path) : NULL;
  const double       wanted = grip->view == GW_VIEW_TOP ? move->v : move->u;
  double             place, mass;

  if (item == NULL)
    return;

  mass = item->mass_g.value * 1e-3 * (item->mirrored ? 2.0 : 1.0);
  if (gw_balance_place (outcome->results.value[GW_RESULT_MASS],
                        outcome->results.value[GW_RESULT_BALANCE_X], mass, item->x_mm.value * 1e-3,
                        wanted, &place) != GW_OK)
    return;

  _gw_grip_set_field (mover, path, "x_mm", &item->x_mm,
                      _gw_grip_within (item, rounded (place, move)));
}

static guint
station_number (const char *path)
{
  return (guint) g_ascii_strtoull (strrchr (path, '/') + 1, NULL, 10);
}

/* Stations keep their order along the span. */
static double
between (const GPtrArray *stations,
         guint            index,
         gsize            offset,
         double           value)
{
  const char *before = g_ptr_array_index (stations, index - 1);
  const char *after =
    index + 1 < stations->len ? g_ptr_array_index (stations, index + 1) : NULL;

  value = fmax (value, ((const GwNumber *) (before + offset))->value + GW_GRIP_LEAST_PANEL);
  if (after != NULL)
    value = fmin (value, ((const GwNumber *) (after + offset))->value - GW_GRIP_LEAST_PANEL);
  return value;
}

static void
move_root (GwGripMover      *mover,
           const GwGrip     *grip,
           const GwGripMove *move,
           const char       *path)
{
  const GwStudySurface *surface =
    (const GwStudySurface *) gw_edit_record (_gw_grip_study (mover->document), path);

  _gw_grip_set_field (mover, path, "x_mm", &surface->x_mm,
                      rounded (grip->view == GW_VIEW_TOP ? move->v : move->u, move));
}

static void
move_station (GwGripMover      *mover,
              const GwGrip     *grip,
              const GwGripMove *move)
{
  g_autofree char      *root = _gw_grip_surface (grip->path);
  const GwStudySurface *surface =
    (const GwStudySurface *) gw_edit_record (_gw_grip_study (mover->document), root);
  const guint           index = station_number (grip->path) - 1;
  const GwStudyStation *station = g_ptr_array_index (surface->stations, index);
  const gboolean        is_top = grip->view == GW_VIEW_TOP;
  const double          out = is_top ? (grip->is_image ? -move->u : move->u) : -move->v;
  const double          aft = is_top ? move->v : move->u;

  if (grip->kind == GW_GRIP_CHORD)
    {
      const double edge = surface->x_mm.value + station->x_mm.value;

      _gw_grip_set_field (mover, grip->path, "chord_mm", &station->chord_mm,
                          fmax (rounded (aft, move) - edge, LEAST_CHORD));
      return;
    }
  if (index == 0)
    {
      move_root (mover, grip, move, root);
      return;
    }

  _gw_grip_set_field (mover, grip->path, "x_mm", &station->x_mm,
                      rounded (aft, move) - surface->x_mm.value);
  if (is_top)
    _gw_grip_set_field (mover, grip->path, "y_mm", &station->y_mm,
                        between (surface->stations, index, G_STRUCT_OFFSET (GwStudyStation, y_mm),
                                 rounded (out, move) - surface->y_mm.value));
  else
    _gw_grip_set_field (mover, grip->path, "z_mm", &station->z_mm,
                        between (surface->stations, index, G_STRUCT_OFFSET (GwStudyStation, z_mm),
                                 rounded (out, move) - surface->z_mm.value));
  _gw_grip_carry_controls (mover, surface, root);
}

GwStudy *
gw_grip_move (const GwGrip     *grip,
              GwDocument       *document,
              const GwGripMove *move,
              GError          **error)
{
  /* A span is typed digit by digit, and each of them starts from what is not tried yet. */
  GwStudy *start = grip->kind == GW_GRIP_SPAN ? gw_document_get_study (document)
                                              : gw_document_get_evaluation (document)->study;
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  GwGripMover mover = { document, gw_study_ref (start), problems, error };

  switch (grip->kind)
    {
    case GW_GRIP_ITEM:
      move_item (&mover, grip, move);
      break;
    case GW_GRIP_BALANCE:
      move_balance (&mover, grip, move);
      break;
    case GW_GRIP_STATION:
    case GW_GRIP_CHORD:
      move_station (&mover, grip, move);
      break;
    case GW_GRIP_SPAN:
      _gw_grip_move_span (&mover, grip, move);
      break;
    case GW_GRIP_NONE:
    default:
      break;
    }

  return mover.study;
}
