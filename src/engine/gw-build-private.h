/* gw-build-private.h - one panel in the making, shared by the constructions
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-build.h"

/* Everything a construction needs to lay out one panel. The first error sticks in
 * @status, so that pieces can be added one after the other and asked once. */
typedef struct
{
  const GwSurface *surface;
  const GwBuild   *build;
  size_t           index; /* of the surface in its aircraft */
  size_t           panel;
  double           from, to; /* of the panel along the span from the root station [m] */
  GwLoft           loft;
  GwPieces        *pieces;
  GwStatus         status;
} GwWork;

/** _gw_work_add: adds @factor times @moments, and the mirror image; nothing if it has no mass. */
void _gw_work_add (GwWork          *work,
                   GwPieceKind      kind,
                   int              count,
                   const GwMoments *moments,
                   double           factor);

/** _gw_work_overlap: the part of @from to @to that lies in the panel; false: none. */
bool _gw_work_overlap (const GwWork *work,
                       double        from,
                       double        to,
                       double       *a,
                       double       *b);

/** _gw_work_slice: the panel cut at @arc from the root. */
void _gw_work_slice (const GwWork *work,
                     double        arc,
                     GwSlice      *out);

/**
 * _gw_work_line:
 * @level: 0 on the lower skin, 1 on the upper, 0.5 at mid depth
 * @inset: from there into the section [m]
 *
 * The straight line at @x chords behind the nose from arc @a to arc @b.
 */
void _gw_work_line (const GwWork *work,
                    double        a,
                    double        b,
                    double        x,
                    double        level,
                    double        inset,
                    double        ends[2][3]);

/** _gw_work_web: flat web between both skins at @x, less @inset [m] at each; unit areal density. */
void _gw_work_web (const GwWork *work,
                   double        a,
                   double        b,
                   double        x,
                   double        inset,
                   GwMoments    *out);

/** _gw_work_faces: sum of the section's faces at places spread evenly, at most @pitch apart,
 * the panel's ends left out; unit areal density. Returns their number. */
int _gw_work_faces (const GwWork *work,
                    double        pitch,
                    GwMoments    *out);

/** _gw_spar_solid: area of the hole that @spar fills, where the section is @depth [m] deep [m2]. */
double _gw_spar_solid (const GwSpar *spar,
                       double        depth);

void _gw_build_printed (GwWork *work);
void _gw_build_folded (GwWork *work);
void _gw_build_core (GwWork *work);

/** _gw_build_common: spars, joints, hinges, linkages and finish, whatever the construction. */
void _gw_build_common (GwWork *work);
