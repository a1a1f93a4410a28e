/* gw-lattice-grid.c - strips and vortices on the surfaces
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <stdlib.h>

#include "engine/gw-lattice-private.h"

#define SPANWISE     24
#define CHORDWISE    6
#define BREAKS_MOST  128
#define STRIPS_LEAST 3    /* between two breaks */
#define NEAR         1e-4 /* two breaks that are one, of the surface's length */
#define CENTRAL      1e-6 /* off the plane of symmetry [m] */

/* Places along the surface where strips end, ascending. */
typedef struct
{
  size_t n;
  double arc[BREAKS_MOST];
} Breaks;

static void
add_break (Breaks *breaks,
           double  arc,
           double  near)
{
  size_t at = breaks->n;

  for (size_t i = 0; i < breaks->n; i++)
    if (fabs (breaks->arc[i] - arc) < near)
      return;
  if (breaks->n == BREAKS_MOST)
    return;

  for (; at > 0 && breaks->arc[at - 1] > arc; at--)
    breaks->arc[at] = breaks->arc[at - 1];
  breaks->arc[at] = arc;
  breaks->n++;
}

static void
find_breaks (const GwSurface *surface,
             Breaks          *breaks)
{
  const double length = gw_surface_arc (surface, surface->n_stations - 1);

  breaks->n = 0;
  for (size_t i = 0; i < surface->n_stations; i++)
    add_break (breaks, gw_surface_arc (surface, i), NEAR * length);
  for (size_t i = 0; i < surface->n_controls; i++)
    {
      add_break (breaks, fmax (surface->controls[i].from, 0.0), NEAR * length);
      add_break (breaks, fmin (surface->controls[i].to, length), NEAR * length);
    }
}

static size_t
strips_between (const Breaks *breaks,
                size_t        i,
                size_t        spanwise)
{
  const double share = (breaks->arc[i + 1] - breaks->arc[i]) /
                       (breaks->arc[breaks->n - 1] - breaks->arc[0]);

  return (size_t) fmax (round (share * (double) spanwise), STRIPS_LEAST);
}

/* The panel that holds @arc, and where in it. */
static size_t
panel_at (const GwSurface *surface,
          double           arc,
          double          *t)
{
  size_t panel = 0;
  double from;

  while (panel + 2 < surface->n_stations && gw_surface_arc (surface, panel + 1) <= arc)
    panel++;
  from = gw_surface_arc (surface, panel);
  *t = fmin (fmax ((arc - from) / (gw_surface_arc (surface, panel + 1) - from), 0.0), 1.0);
  return panel;
}

/* A point of the mean plane, without twist. */
static void
point_at (const GwSurface *surface,
          size_t           panel,
          double           t,
          double           place,
          double           out[3])
{
  const GwStation *inner = &surface->stations[panel], *outer = inner + 1;

  for (int k = 0; k < 3; k++)
    out[k] = inner->at[k] + t * (outer->at[k] - inner->at[k]);
  out[0] += place * (inner->chord + t * (outer->chord - inner->chord));
}

static void
lay_strip (GwLattice *lattice,
           size_t     surface_i,
           double     from,
           double     middle,
           double     to)
{
  const GwSurface *surface = &lattice->plan.surfaces[surface_i];
  const size_t     n = lattice->plan.chordwise;
  GwLatticeStrip  *strip = &lattice->strips[lattice->n_strips];
  double           t_from, t_to;
  size_t           panel;
  const GwStation *inner, *outer;

  /* An edge at a station belongs to the panel of the strip's middle. */
  panel = panel_at (surface, middle, &strip->t);
  inner = &surface->stations[panel];
  outer = inner + 1;
  t_from = (from - gw_surface_arc (surface, panel)) /
           (gw_surface_arc (surface, panel + 1) - gw_surface_arc (surface, panel));
  t_to = t_from + (to - from) /
                    (gw_surface_arc (surface, panel + 1) - gw_surface_arc (surface, panel));

  strip->surface = surface_i;
  strip->first = lattice->n;
  strip->n = n;
  strip->panel = panel;
  strip->arc = middle;
  strip->width = to - from;
  strip->chord = inner->chord + strip->t * (outer->chord - inner->chord);
  point_at (surface, panel, strip->t, 0.25, strip->quarter);
  for (int k = 0; k < 2; k++)
    strip->tilt[k] = (outer->at[k + 1] - inner->at[k + 1]) /
                     hypot (outer->at[1] - inner->at[1], outer->at[2] - inner->at[2]);
  strip->is_central = fabs (inner->at[1]) < CENTRAL && fabs (outer->at[1]) < CENTRAL;

  for (size_t k = 0; k < n; k++)
    {
      GwLatticeVortex *vortex = &lattice->vortices[lattice->n++];
      const double     step = M_PI / (double) n;
      const double     bound = 0.5 * (1.0 - cos (step * ((double) k + 0.5)));

      vortex->strip = lattice->n_strips;
      vortex->place = 0.5 * (1.0 - cos (step * ((double) k + 1.0)));
      point_at (surface, panel, t_from, bound, vortex->a);
      point_at (surface, panel, t_to, bound, vortex->b);
      point_at (surface, panel, strip->t, vortex->place, vortex->at);
    }
  lattice->n_strips++;
}

static void
lay_surface (GwLattice    *lattice,
             size_t        surface,
             const Breaks *breaks)
{
  for (size_t i = 0; i + 1 < breaks->n; i++)
    {
      const size_t n = strips_between (breaks, i, lattice->plan.spanwise);
      const double from = breaks->arc[i], half = 0.5 * (breaks->arc[i + 1] - from);
      const double step = M_PI / (double) n;

      for (size_t k = 0; k < n; k++)
        lay_strip (lattice, surface, from + half * (1.0 - cos (step * (double) k)),
                   from + half * (1.0 - cos (step * ((double) k + 0.5))),
                   from + half * (1.0 - cos (step * ((double) k + 1.0))));
    }
}

GwStatus
_gw_lattice_lay (GwLattice *lattice)
{
  GwLatticePlan *plan = &lattice->plan;
  size_t         n_strips = 0;
  Breaks         breaks;

  if (plan->chordwise == 0)
    plan->chordwise = CHORDWISE;
  if (plan->spanwise == 0)
    plan->spanwise = SPANWISE;
  if (plan->n_surfaces == 0 || plan->chordwise > 40 || plan->spanwise > 400)
    return GW_EINVAL;

  for (size_t s = 0; s < plan->n_surfaces; s++)
    {
      if (gw_surface_check (&plan->surfaces[s]) != GW_OK)
        return GW_EINVAL;
      find_breaks (&plan->surfaces[s], &breaks);
      for (size_t i = 0; i + 1 < breaks.n; i++)
        n_strips += strips_between (&breaks, i, plan->spanwise);
    }

  lattice->strips = calloc (n_strips, sizeof *lattice->strips);
  lattice->vortices = calloc (n_strips * plan->chordwise, sizeof *lattice->vortices);
  if (lattice->strips == NULL || lattice->vortices == NULL)
    return GW_ENOMEM;

  for (size_t s = 0; s < plan->n_surfaces; s++)
    {
      find_breaks (&plan->surfaces[s], &breaks);
      lay_surface (lattice, s, &breaks);
    }

  return GW_OK;
}
