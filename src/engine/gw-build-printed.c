/* gw-build-printed.c - printed shells
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-build-private.h"

#include <math.h>

/* What one printed wall weighs per area: a road of line width x layer height, one a layer. */
static double
wall_areal (const GwBuild *build)
{
  const GwPrintedShell *p = &build->printed;

  return p->line_width * p->flow * p->density * build->mass_factor;
}

static void
build_inner (GwWork *work)
{
  const GwPrintedShell *p = &work->build->printed;
  const double          areal = p->inner_walls * wall_areal (work->build);
  GwMoments             faces;
  int                   n;

  switch (p->inner)
    {
    case GW_INNER_RIBS:
      n = _gw_work_faces (work, p->inner_pitch, &faces);
      _gw_work_add (work, GW_PIECE_RIB, n, &faces, areal);
      break;
    case GW_INNER_LATTICE:
      /* Each family lays 1 / pitch of path per area of planform, as deep as the section
       * is there: the webs' area is the enclosed volume times 2 / pitch. */
      _gw_work_add (work, GW_PIECE_RIB, 1, &work->loft.volume, 2.0 / p->inner_pitch * areal);
      break;
    case GW_INNER_NONE:
    case GW_N_INNERS:
    default:
      break;
    }
}

/* Each printed piece is closed at both ends, so a seam has two closings. */
static void
build_closings (GwWork *work)
{
  const GwPrintedShell *p = &work->build->printed;
  const double          areal = p->closing * p->flow * p->density * work->build->mass_factor;
  const int             n = gw_build_seams (work->surface, work->panel);
  GwMoments             sum = { 0 };

  if (!(areal > 0.0))
    return;

  for (int i = 0; i <= n; i++)
    {
      GwSlice   slice;
      GwMoments face;

      gw_panel_slice (work->surface, work->panel, (double) i / n, &slice);
      gw_slice_face (&slice, &face);
      gw_moments_add (&sum, &face, i == 0 || i == n ? 1.0 : 2.0);
    }

  _gw_work_add (work, GW_PIECE_CLOSING, 2 * n, &sum, areal);
}

/* At a hinge both the wing and the control are closed by walls like those of the skin. */
static void
build_hinge_walls (GwWork          *work,
                   const GwControl *control)
{
  GwMoments web;
  double    a, b;

  if (!_gw_work_overlap (work, control->from, control->to, &a, &b))
    return;

  _gw_work_web (work, a, b, 1.0 - control->chord_fraction, 0.0, &web);
  _gw_work_add (work, GW_PIECE_WEB, 2, &web,
                2.0 * work->build->printed.walls * wall_areal (work->build));
}

/* A tube spar slides into a printed tube of one wall. */
static void
build_boss (GwWork       *work,
            const GwSpar *spar)
{
  const double around = M_PI * (spar->width + work->build->printed.line_width);
  GwMoments    line;
  double       ends[2][3];
  double       a, b;

  if (spar->kind != GW_SPAR_TUBE || !_gw_work_overlap (work, spar->from, spar->to, &a, &b))
    return;

  _gw_work_line (work, a, b, spar->chord_place, 0.5, 0.0, ends);
  gw_moments_segment (ends[0], ends[1], &line);
  _gw_work_add (work, GW_PIECE_WEB, 1, &line, around * wall_areal (work->build));
}

void
_gw_build_printed (GwWork *work)
{
  const GwSurface *surface = work->surface;

  _gw_work_add (work, GW_PIECE_SKIN, gw_build_seams (surface, work->panel), &work->loft.skin,
                work->build->printed.walls * wall_areal (work->build));
  build_inner (work);
  build_closings (work);

  for (size_t i = 0; i < surface->n_controls; i++)
    build_hinge_walls (work, &surface->controls[i]);
  for (size_t i = 0; i < surface->n_spars; i++)
    build_boss (work, &surface->spars[i]);
}
