/* gw-build-core.c - hot-wired foam cores
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-build-private.h"

#include <math.h>

/* Volume that channels and spars take out of the foam. */
static double
removed_volume (const GwWork *work)
{
  const GwSurface *surface = work->surface;
  double           sum = work->build->core.channel * work->loft.length;

  for (size_t i = 0; i < surface->n_spars; i++)
    {
      const GwSpar *spar = &surface->spars[i];
      GwMoments     line, web;
      double        ends[2][3];
      double        a, b;

      if (!_gw_work_overlap (work, spar->from, spar->to, &a, &b))
        continue;

      _gw_work_line (work, a, b, spar->chord_place, 0.5, 0.0, ends);
      gw_moments_segment (ends[0], ends[1], &line);
      _gw_work_web (work, a, b, spar->chord_place, 0.0, &web);
      sum += line.total * _gw_spar_solid (spar, web.total / line.total);
    }

  return sum;
}

static void
build_edges (GwWork *work)
{
  GwMoments edges = { 0 };

  for (int i = 0; i < 2; i++)
    {
      double    ends[2][3];
      GwMoments line;

      _gw_work_line (work, work->from, work->to, i, 0.5, 0.0, ends);
      gw_moments_segment (ends[0], ends[1], &line);
      gw_moments_add (&edges, &line, 0.5);
    }

  _gw_work_add (work, GW_PIECE_EDGE, 2, &edges,
                work->build->core.edge_linear * work->build->mass_factor);
}

void
_gw_build_core (GwWork *work)
{
  const GwHotWiredCore *core = &work->build->core;
  const double          solid = work->loft.volume.total;
  const double          left = fmax (solid - removed_volume (work), 0.0);

  /* The holes are small and run the whole length: they lighten the core evenly. */
  if (solid > 0.0)
    _gw_work_add (work, GW_PIECE_CORE, 1, &work->loft.volume,
                  left / solid * core->density * work->build->mass_factor);
  _gw_work_add (work, GW_PIECE_SKIN, 1, &work->loft.skin,
                core->skin_areal * work->build->mass_factor);
  build_edges (work);
}
