/* gw-finish.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-finish.h"

#include <math.h>

#include "study/gw-polars.h"

#define HIGHEST -5 /* power of two: a thirtieth of the chord is no step any more */

static const char *
construction_material (const GwStudyBuild *build)
{
  switch ((GwConstruction) build->construction)
    {
    case GW_CONSTRUCTION_PRINTED_SHELL:
      return build->printed_shell->material;
    case GW_CONSTRUCTION_FOLDED_SHEET:
      return build->folded_sheet->material;
    case GW_CONSTRUCTION_HOT_WIRED_CORE:
      return build->hot_wired_core->skin != NULL ? build->hot_wired_core->skin
                                                 : build->hot_wired_core->material;
    case GW_N_CONSTRUCTIONS:
    default:
      return NULL;
    }
}

const char *
gw_finish_material (const GwStudyBuild *build)
{
  return build->finish != NULL ? build->finish : construction_material (build);
}

static double
grain_of (const GwStudy      *study,
          const GwStudyBuild *build)
{
  const char            *id = gw_finish_material (build);
  const GwStudyMaterial *material =
    id != NULL ? (const GwStudyMaterial *) gw_list_find (study->materials, id) : NULL;

  return material != NULL && !isnan (material->grain_mm.value) ? material->grain_mm.value * 1e-3
                                                               : 0.0;
}

GwFinish
gw_finish_of_build (const GwStudy      *study,
                    const GwStudyBuild *build)
{
  const GwFinish step = { build->step_mm.value * 1e-3, build->step_percent.value * 0.01,
                          GW_CRITICAL_STEP };
  const GwFinish grain = { grain_of (study, build), GW_GRAIN_PLACE, GW_CRITICAL_GRAIN };

  return step.height / step.critical >= grain.height / grain.critical ? step : grain;
}

static const GwStudyBuild *
find_build (const GPtrArray *builds,
            const char      *surface,
            guint            panel)
{
  for (guint i = 0; i < builds->len; i++)
    {
      const GwStudyBuild *build = g_ptr_array_index (builds, i);

      if (g_strcmp0 (build->surface, surface) == 0 && build->first_panel.value <= panel + 1 &&
          build->last_panel.value >= panel + 1)
        return build;
    }

  return NULL;
}

const GwStudyBuild *
gw_finish_build (const GwStudy *study,
                 const char    *surface,
                 guint          panel)
{
  const GwStudyOption *option = g_ptr_array_index (study->options, 0);
  const GwStudyBuild  *own = find_build (option->builds, surface, panel);

  return own != NULL ? own : find_build (study->builds, surface, panel);
}

/* In its place, each once; a step that is the same on two panels has all heights of both. */
static void
add_trip (GArray *trips,
          GwTrip  trip)
{
  guint at = 0;

  for (; at < trips->len; at++)
    {
      const GwTrip *there = &g_array_index (trips, GwTrip, at);

      if (there->x == trip.x && there->critical == trip.critical && there->height == trip.height)
        return;
      if (there->x > trip.x || (there->x == trip.x && there->critical > trip.critical) ||
          (there->x == trip.x && there->critical == trip.critical && there->height > trip.height))
        break;
    }
  g_array_insert_val (trips, at, trip);
}

static void
add_heights (GArray         *trips,
             const GwFinish *finish,
             double          chord_a,
             double          chord_b)
{
  const double low = finish->height / MAX (chord_a, chord_b);
  const double high = finish->height / MIN (chord_a, chord_b);
  const int    first = (int) floor (log2 (low));
  const int    last = MIN ((int) ceil (log2 (high)), HIGHEST);
  const GwTrip highest = { finish->place, high, finish->critical };

  if (!(finish->height > 0.0) || !(MIN (chord_a, chord_b) > 0.0) ||
      !gw_polars_trip_acts (&highest, gw_polars_re[GW_POLARS_N - 1]))
    return;

  for (int power = first; power <= last; power++)
    add_trip (trips, (GwTrip){ finish->place, exp2 (power), finish->critical });
}

static void
add_panel (const GwStudy        *study,
           const GwStudySurface *surface,
           guint                 panel,
           GArray               *trips)
{
  const GwStudyBuild   *build = gw_finish_build (study, surface->id, panel);
  const GwStudyStation *inner = g_ptr_array_index (surface->stations, panel);
  const GwStudyStation *outer = g_ptr_array_index (surface->stations, panel + 1);

  if (build != NULL)
    {
      const GwFinish finish = gw_finish_of_build (study, build);

      add_heights (trips, &finish, inner->chord_mm.value * 1e-3, outer->chord_mm.value * 1e-3);
    }
}

static gboolean
look_over (const GwStudy        *study,
           const GwStudySurface *surface,
           const char           *section,
           GArray               *trips)
{
  gboolean    is_used = FALSE, was_used = FALSE;
  const char *here = NULL;

  for (guint i = 0; i < surface->stations->len; i++)
    {
      const GwStudyStation *station = g_ptr_array_index (surface->stations, i);
      gboolean              is_here;

      if (station->section != NULL)
        here = station->section;
      is_here = g_strcmp0 (here, section) == 0;
      if (i > 0 && (is_here || was_used))
        add_panel (study, surface, i - 1, trips);
      is_used = is_used || is_here;
      was_used = is_here;
    }

  return is_used;
}

GArray *
gw_finish_trips (const GwStudy *study,
                 const char    *section)
{
  g_autoptr (GArray) trips = g_array_new (FALSE, FALSE, sizeof (GwTrip));
  gboolean is_used = FALSE;

  for (guint i = 0; i < study->surfaces->len; i++)
    is_used |= look_over (study, g_ptr_array_index (study->surfaces, i), section, trips);

  return is_used ? g_steal_pointer (&trips) : NULL;
}
