/* builds.h - plain ways to build that several tests use, and sums over pieces
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>
#include <math.h>

#include "engine/gw-build.h"

/* Foaming filament at half flow: one wall weighs 0.279 kg/m2. */
static inline GwBuild
printed_build (void)
{
  return (GwBuild){
    .construction = GW_CONSTRUCTION_PRINTED_SHELL,
    .printed = { .density = 1240.0,
                 .line_width = 0.45e-3,
                 .flow = 0.5,
                 .walls = 1,
                 .inner = GW_INNER_LATTICE,
                 .inner_walls = 1,
                 .inner_pitch = 0.05,
                 .piece_length = 0.2,
                 .closing = 0.6e-3 },
    .mass_factor = 1.0,
  };
}

static inline GwBuild
folded_build (void)
{
  return (GwBuild){
    .construction = GW_CONSTRUCTION_FOLDED_SHEET,
    .folded = { .areal = 0.3, .strips = 2, .former_pitch = 0.15, .glue_linear = 0.006 },
    .mass_factor = 1.0,
  };
}

static inline GwBuild
core_build (void)
{
  return (GwBuild){
    .construction = GW_CONSTRUCTION_HOT_WIRED_CORE,
    .core = { .density = 25.0, .channel = 1e-4, .skin_areal = 0.06, .edge_linear = 0.02 },
    .mass_factor = 1.0,
  };
}

static inline GwBuild
core_only_build (void)
{
  GwBuild build = core_build ();

  build.core = (GwHotWiredCore){ .density = 25.0 };
  return build;
}

static inline GwBuild
skin_only_build (void)
{
  GwBuild build = core_build ();

  build.core = (GwHotWiredCore){ .skin_areal = 0.1 };
  return build;
}

static inline double
mass_of (const GwPieces *pieces,
         GwPieceKind     kind)
{
  double sum = 0.0;

  for (size_t i = 0; i < pieces->n; i++)
    if (pieces->v[i].kind == kind)
      sum += pieces->v[i].mass.total;

  return sum;
}

static inline double
total_mass (const GwPieces *pieces)
{
  double sum = 0.0;

  for (size_t i = 0; i < pieces->n; i++)
    sum += pieces->v[i].mass.total;

  return sum;
}

/* The first piece of its kind, which must be there. */
static inline const GwPiece *
piece_of (const GwPieces *pieces,
          GwPieceKind     kind)
{
  for (size_t i = 0; i < pieces->n; i++)
    if (pieces->v[i].kind == kind)
      return &pieces->v[i];

  g_assert_not_reached ();
}
