/* gw-section-uses.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-section-uses.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"
#include "study/gw-section-outline.h"

#define SAME 1.1 /* heights of a step over the chord that make one curve */

static const GwStudySection *
record_of (const GwAssembly *assembly,
           const GwSection  *section)
{
  return g_ptr_array_index (assembly->study->sections, (guint) (section - assembly->sections));
}

/* Reynolds number of a chord at the stall. */
static double
stall_re (const GwOutcome *outcome,
          double           chord)
{
  const GwAir *air = &outcome->results.air;

  return air->density * outcome->results.stall.speed * chord / air->viscosity;
}

static GwSectionUse
use_at (const GwOutcome *outcome,
        guint            option,
        guint            surface,
        double           eta)
{
  const GwSurface *shape = &outcome->assembly->aircraft.surfaces[surface];
  const GwStall   *stall = &outcome->results.stall;
  const gboolean   is_first = (int) surface == stall->surface && eta == stall->eta;
  const GwSection *section;
  GwSlice          slice;

  gw_surface_slice (shape, gw_spanwise_arc (shape, eta), &slice);
  section = slice.mix < 0.5 ? slice.inner : slice.outer;
  return (GwSectionUse){
    .outcome = outcome,
    .option = option,
    .surface = surface,
    .record = record_of (outcome->assembly, section),
    .section = section,
    .chord = slice.chord,
    .re = is_first ? stall->re : stall_re (outcome, slice.chord),
    .eta = eta,
    .finish = slice.finish,
    .is_first = is_first,
  };
}

/* With the mean of the chords that have it, and the finish of the first of their panels. */
static GwSectionUse
use_of_stations (const GwOutcome *outcome,
                 guint            option,
                 guint            surface,
                 gsize            first)
{
  const GwSurface *shape = &outcome->assembly->aircraft.surfaces[surface];
  const GwSection *section = shape->stations[first].section;
  double           chords = 0.0;
  guint            n = 0;
  GwSlice          slice;

  for (gsize i = first; i < shape->n_stations; i++)
    if (shape->stations[i].section == section)
      {
        chords += shape->stations[i].chord;
        n++;
      }
  gw_panel_slice (shape, MIN (first, shape->n_stations - 2), 0.5, &slice);
  return (GwSectionUse){
    .outcome = outcome,
    .option = option,
    .surface = surface,
    .record = record_of (outcome->assembly, section),
    .section = section,
    .chord = chords / n,
    .re = stall_re (outcome, chords / n),
    .eta = NAN,
    .finish = slice.finish,
  };
}

static gboolean
is_there (const GArray    *uses,
          guint            since,
          const GwSection *section)
{
  for (guint i = since; i < uses->len; i++)
    if (g_array_index (uses, GwSectionUse, i).section == section)
      return TRUE;

  return FALSE;
}

static void
add (GArray                *uses,
     GwSectionUse           use,
     const GwSectionChoice *choice)
{
  if (choice->section == NULL || g_str_equal (use.record->id, choice->section))
    g_array_append_val (uses, use);
}

static void
add_surface (GArray                *uses,
             const GwOutcome       *outcome,
             guint                  option,
             guint                  surface,
             const GwSectionChoice *choice)
{
  const GwSurface *shape = &outcome->assembly->aircraft.surfaces[surface];
  const guint      since = uses->len;

  if (isfinite (choice->eta) && choice->surface == (int) surface)
    {
      add (uses, use_at (outcome, option, surface, choice->eta), choice);
      return;
    }
  if ((int) surface == outcome->results.stall.surface && isfinite (outcome->results.stall.eta))
    add (uses, use_at (outcome, option, surface, outcome->results.stall.eta), choice);
  for (gsize i = 0; i < shape->n_stations; i++)
    if (!is_there (uses, since, shape->stations[i].section))
      add (uses, use_of_stations (outcome, option, surface, i), choice);
}

GArray *
gw_section_uses (const GwEvaluation    *evaluation,
                 const GwSectionChoice *choice)
{
  GArray *uses = g_array_new (FALSE, FALSE, sizeof (GwSectionUse));

  for (guint option = 0; option < evaluation->outcomes->len; option++)
    {
      const GwOutcome  *outcome = gw_evaluation_outcome (evaluation, option);
      const GwAircraft *aircraft = &outcome->assembly->aircraft;

      if (choice->option >= 0 && choice->option != (int) option)
        continue;
      for (guint i = 0; i < aircraft->n_surfaces; i++)
        if (aircraft->surfaces[i].role != GW_ROLE_FIN &&
            (choice->surface < 0 || choice->surface == (int) i))
          add_surface (uses, outcome, option, i, choice);
    }

  return uses;
}

gboolean
gw_section_use_has_finish_of (const GwSectionUse *a,
                              const GwSectionUse *b)
{
  const double p = a->finish.height / a->chord, q = b->finish.height / b->chord;

  if (!(p > 0.0) || !(q > 0.0))
    return !(p > 0.0) && !(q > 0.0);
  return a->finish.place == b->finish.place && a->finish.critical == b->finish.critical &&
         MAX (p, q) <= SAME * MIN (p, q);
}

/* Numbers of its own make it another one, whatever its outline. */
static gboolean
has_same_rows (const GwSection *a,
               const GwSection *b)
{
  if (a->n_rows != b->n_rows)
    return FALSE;

  for (gsize i = 0; i < a->n_rows; i++)
    if (a->rows[i].re != b->rows[i].re || a->rows[i].cl_max != b->rows[i].cl_max)
      return FALSE;
  return TRUE;
}

gboolean
gw_section_use_is_like (const GwSectionUse *a,
                        const GwSectionUse *b)
{
  return gw_section_has_outline_of (a->record, b->record) &&
         has_same_rows (a->section, b->section);
}

gboolean
gw_section_use_finish_acts (const GwSectionUse *use,
                            double              re)
{
  const GwTrip trip = { use->finish.place, use->finish.height / use->chord,
                        use->finish.critical };

  return trip.height > 0.0 && gw_polars_trip_acts (&trip, re);
}

char *
gw_section_use_finish_text (const GwSectionUse *use,
                            const GwUnits      *units)
{
  g_autofree char *height = NULL;

  if (!(use->finish.height > 0.0))
    return NULL;

  height = gw_amount_text (units, GW_MM, use->finish.height, 2);
  if (use->finish.place == GW_GRAIN_PLACE && use->finish.critical == GW_CRITICAL_GRAIN)
    return g_strdup_printf (_ ("grain %s"), height);
  return g_strdup_printf (_ ("step %s at %.0f %%"), height, 100.0 * use->finish.place);
}
