/* gw-build.c - a lifting surface panel by panel
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-build-private.h"

#include <math.h>

/* These keep the number of ribs, printed pieces and strips within reason. */
#define PITCH_LEAST 1e-3  /* [m] */
#define PANEL_MOST  100.0 /* [m] */
#define STRIPS_MOST 100

static bool
is_amount (double value)
{
  return isfinite (value) && value >= 0.0;
}

static bool
is_printed_valid (const GwPrintedShell *p)
{
  return is_amount (p->density) && is_amount (p->line_width) && is_amount (p->flow) &&
         p->walls >= 0 && is_amount (p->closing) && p->piece_length >= PITCH_LEAST &&
         (p->inner == GW_INNER_NONE ||
          (p->inner_walls >= 0 && p->inner_pitch >= PITCH_LEAST && isfinite (p->inner_pitch)));
}

static bool
is_folded_valid (const GwFoldedSheet *f)
{
  return is_amount (f->areal) && is_amount (f->glue_linear) &&
         f->strips >= 0 && f->strips <= STRIPS_MOST &&
         (f->former_pitch == 0.0 ||
          (f->former_pitch >= PITCH_LEAST && isfinite (f->former_pitch)));
}

static bool
is_core_valid (const GwHotWiredCore *c)
{
  return is_amount (c->density) && is_amount (c->channel) && is_amount (c->skin_areal) &&
         is_amount (c->edge_linear);
}

static bool
is_build_valid (const GwBuild *build)
{
  if (!is_amount (build->mass_factor) || !is_amount (build->joint_linear) ||
      !is_amount (build->finish_areal))
    return false;

  switch (build->construction)
    {
    case GW_CONSTRUCTION_PRINTED_SHELL:
      return is_printed_valid (&build->printed);
    case GW_CONSTRUCTION_FOLDED_SHEET:
      return is_folded_valid (&build->folded);
    case GW_CONSTRUCTION_HOT_WIRED_CORE:
      return is_core_valid (&build->core);
    case GW_N_CONSTRUCTIONS:
    default:
      return false;
    }
}

static bool
is_control_valid (const GwControl *control)
{
  return isfinite (control->from) && isfinite (control->to) &&
         control->chord_fraction >= 0.0 && control->chord_fraction <= 1.0 &&
         is_amount (control->hinge_linear) && is_amount (control->linkage_mass);
}

static bool
is_spar_valid (const GwSpar *spar)
{
  return is_amount (spar->density) && is_amount (spar->width) && is_amount (spar->height) &&
         is_amount (spar->wall) && is_amount (spar->web_thickness) &&
         is_amount (spar->web_density) && spar->chord_place >= 0.0 && spar->chord_place <= 1.0 &&
         isfinite (spar->from) && isfinite (spar->to) &&
         (unsigned) spar->kind < GW_N_SPAR_KINDS;
}

static GwStatus
check (const GwSurface *surface)
{
  if (gw_surface_check (surface) != GW_OK)
    return GW_EINVAL;
  if (!isnan (surface->known_mass) && !is_amount (surface->known_mass))
    return GW_EINVAL;

  for (size_t i = 0; i + 1 < surface->n_stations; i++)
    if (!is_build_valid (&surface->builds[i]) ||
        gw_surface_arc (surface, i + 1) - gw_surface_arc (surface, i) > PANEL_MOST)
      return GW_EINVAL;
  for (size_t i = 0; i < surface->n_controls; i++)
    if (!is_control_valid (&surface->controls[i]))
      return GW_EINVAL;
  for (size_t i = 0; i < surface->n_spars; i++)
    if (!is_spar_valid (&surface->spars[i]))
      return GW_EINVAL;

  return GW_OK;
}

static GwStatus
build_panel (const GwSurface *surface,
             size_t           index,
             size_t           panel,
             GwPieces        *pieces)
{
  GwWork work = {
    .surface = surface,
    .build = &surface->builds[panel],
    .index = index,
    .panel = panel,
    .from = gw_surface_arc (surface, panel),
    .to = gw_surface_arc (surface, panel + 1),
    .pieces = pieces,
  };

  work.status = gw_surface_loft (surface, panel, &work.loft);
  if (work.status != GW_OK)
    return work.status;

  switch (work.build->construction)
    {
    case GW_CONSTRUCTION_PRINTED_SHELL:
      _gw_build_printed (&work);
      break;
    case GW_CONSTRUCTION_FOLDED_SHEET:
      _gw_build_folded (&work);
      break;
    case GW_CONSTRUCTION_HOT_WIRED_CORE:
      _gw_build_core (&work);
      break;
    case GW_N_CONSTRUCTIONS:
    default:
      return GW_EINVAL;
    }

  _gw_build_common (&work);
  return work.status;
}

/* What has been weighed before it was built in keeps its mass; the rest is scaled so
 * that the whole is the mass that is known. */
static GwStatus
fit_to_mass (GwPieces *pieces,
             size_t    first,
             double    known,
             bool      is_weighed)
{
  double weighed = 0.0, computed = 0.0;
  double factor;

  for (size_t i = first; i < pieces->n; i++)
    {
      if (pieces->v[i].is_weighed)
        weighed += pieces->v[i].mass.total;
      else
        computed += pieces->v[i].mass.total;
    }

  if (known < weighed || !(computed > 0.0))
    return GW_EINVAL;

  factor = (known - weighed) / computed;
  for (size_t i = first; i < pieces->n; i++)
    {
      GwPiece  *piece = &pieces->v[i];
      GwMoments scaled = { 0 };

      if (piece->is_weighed)
        continue;
      gw_moments_add (&scaled, &piece->mass, factor);
      piece->mass = scaled;
      piece->is_weighed = is_weighed;
    }

  return GW_OK;
}

GwStatus
gw_build_surface (const GwSurface *surface,
                  size_t           index,
                  GwPieces        *pieces)
{
  const size_t first = pieces->n;
  GwStatus     status = check (surface);

  for (size_t i = 0; status == GW_OK && i + 1 < surface->n_stations; i++)
    status = build_panel (surface, index, i, pieces);

  if (status == GW_OK && !isnan (surface->known_mass))
    status = fit_to_mass (pieces, first, surface->known_mass, surface->is_weighed);
  if (status != GW_OK)
    pieces->n = first;

  return status;
}

int
gw_build_seams (const GwSurface *surface,
                size_t           panel)
{
  const GwBuild *build = &surface->builds[panel];
  const double   length = gw_surface_arc (surface, panel + 1) - gw_surface_arc (surface, panel);

  if (build->construction != GW_CONSTRUCTION_PRINTED_SHELL ||
      !(build->printed.piece_length >= PITCH_LEAST))
    return 1;

  /* A length that fits but for rounding is not cut once more. */
  return (int) fmin (fmax (ceil (length / build->printed.piece_length - 1e-6), 1.0),
                     PANEL_MOST / PITCH_LEAST);
}
