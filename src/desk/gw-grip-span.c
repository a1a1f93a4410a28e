/* gw-grip-span.c - what goes with the span: its stations, its control surfaces
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "desk/gw-grip-private.h"
#include "study/gw-edit.h"
#include "study/gw-error.h"
#include "study/gw-resolve.h"

/* Lengths along the span from the root to each station [mm]. */
static double *
arcs_of (const GPtrArray *stations)
{
  double *arcs = g_new0 (double, stations->len);

  for (guint i = 1; i < stations->len; i++)
    {
      const GwStudyStation *a = g_ptr_array_index (stations, i - 1);
      const GwStudyStation *b = g_ptr_array_index (stations, i);

      arcs[i] = arcs[i - 1] + hypot (b->y_mm.value - a->y_mm.value, b->z_mm.value - a->z_mm.value);
    }

  return arcs;
}

/* A place along the span stays in the same part of its panel. */
static double
carried (double        place,
         guint         n,
         const double *before,
         const double *after)
{
  guint i = 1;

  while (i + 1 < n && place > before[i])
    i++;

  place = after[i - 1] + (place - before[i - 1]) / (before[i] - before[i - 1]) *
                           (after[i] - after[i - 1]);
  return floor (CLAMP (place, 0.0, after[n - 1]) * 10.0) / 10.0;
}

/* Where a panel grows or shrinks, its control surfaces do. */
void
_gw_grip_carry_controls (GwGripMover          *mover,
                         const GwStudySurface *surface,
                         const char           *path)
{
  g_autofree double *before = arcs_of (surface->stations), *after = NULL;
  g_autoptr (GwStudy) moved = NULL;
  const GwStudySurface *now;

  if (mover->study == NULL)
    return;

  moved = gw_study_resolve (mover->study, gw_document_get_shown (mover->document),
                            mover->problems);
  now = (const GwStudySurface *) gw_edit_record (moved, path);
  after = arcs_of (now->stations);
  if (memcmp (before, after, surface->stations->len * sizeof *before) == 0)
    return;

  for (guint i = 0; i < surface->controls->len; i++)
    {
      const GwStudyControl *control = g_ptr_array_index (surface->controls, i);
      g_autofree char      *here = g_strdup_printf ("%s/controls/%s", path, control->id);
      const guint           n = surface->stations->len;

      _gw_grip_set_field (mover, here, "from_mm", &control->from_mm,
                          carried (control->from_mm.value, n, before, after));
      _gw_grip_set_field (mover, here, "to_mm", &control->to_mm,
                          carried (control->to_mm.value, n, before, after));
    }
}

double
gw_grip_half_span (GwDocument *document,
                   const char *path)
{
  const GwOutcome *outcome = _gw_grip_outcome (document);
  const GwRecord  *record = gw_edit_record (outcome->assembly->study, path);

  for (guint i = 0; record != NULL && i < outcome->assembly->study->surfaces->len; i++)
    if (g_ptr_array_index (outcome->assembly->study->surfaces, i) == record)
      {
        const GwSurface *surface = &outcome->assembly->aircraft.surfaces[i];

        return fabs (surface->stations[surface->n_stations - 1].at[1]);
      }

  return (double) NAN;
}

/* The panels keep their order and their parts of the span. */
static gboolean
is_too_short (const GPtrArray *stations,
              double           factor)
{
  for (guint i = 1; i < stations->len; i++)
    {
      const GwStudyStation *a = g_ptr_array_index (stations, i - 1);
      const GwStudyStation *b = g_ptr_array_index (stations, i);

      if (!((b->y_mm.value - a->y_mm.value) * factor >= GW_GRIP_LEAST_PANEL))
        return TRUE;
    }

  return FALSE;
}

/* A tenth of a millimetre is as fine as anybody builds; the tip is where it was asked for. */
static double
scaled (double   root,
        double   place,
        double   factor,
        gboolean is_tip)
{
  const double value = root + (place - root) * factor;

  return is_tip ? round (value * 1e6) / 1e6 : round (value * 10.0) / 10.0;
}

/* Stations go out in proportion and up with it, so that panels keep their dihedral; chords and
 * sweep along the root stay. */
void
_gw_grip_move_span (GwGripMover      *mover,
                    const GwGrip     *grip,
                    const GwGripMove *move)
{
  g_autoptr (GwStudy) before = gw_study_resolve (
    mover->study, gw_document_get_shown (mover->document), mover->problems);
  const GwStudySurface *surface = (const GwStudySurface *) gw_edit_record (before, grip->path);
  const GwStudyStation *root, *tip;
  double                factor;

  if (surface == NULL || surface->stations->len < 2)
    return;

  root = g_ptr_array_index (surface->stations, 0);
  tip = g_ptr_array_index (surface->stations, surface->stations->len - 1);
  factor = (move->u * 1e3 - surface->y_mm.value - root->y_mm.value) /
           (tip->y_mm.value - root->y_mm.value);
  if (is_too_short (surface->stations, factor))
    {
      g_set_error_literal (mover->error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT,
                           _ ("the span is too short for its stations"));
      g_clear_pointer (&mover->study, gw_study_unref);
      return;
    }

  for (guint i = 1; i < surface->stations->len; i++)
    {
      const GwStudyStation *station = g_ptr_array_index (surface->stations, i);
      g_autofree char      *path = g_strdup_printf ("%s/stations/%u", grip->path, i + 1);

      _gw_grip_set_field (mover, path, "y_mm", &station->y_mm,
                          scaled (root->y_mm.value, station->y_mm.value, factor,
                                  station == tip));
      _gw_grip_set_field (mover, path, "z_mm", &station->z_mm,
                          scaled (root->z_mm.value, station->z_mm.value, factor, FALSE));
    }
  _gw_grip_carry_controls (mover, surface, grip->path);
}
