/* gw-build.h - how a lifting surface is built, piece by piece
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-piece.h"
#include "engine/gw-surface.h"

/**
 * gw_build_surface:
 * @index: of @surface in its aircraft, written as the pieces' owner
 * @pieces: the pieces are added to it, mirror images included
 *
 * Lays the surface out as its builds say: skin, core, ribs or lattice, closing
 * layers, webs, edges, spars, joints, hinges, linkages, finish. No piece is a
 * single "density times volume": each is a length, area or volume of the lofted
 * shape times what lies there. The mass factor of a build goes to what its process
 * makes, not to spars, adhesive, hinges, linkages or finish. Joint adhesive lies around
 * the section at each seam in a panel, between panels, and once where both halves meet.
 * A control of a mirrored surface is there on both sides, each with its linkage, at the
 * middle of its hinge. If the mass of the whole is known, its pieces are scaled to it
 * (and marked, if it is from the scale), but for spars that have been weighed
 * themselves: these are a part of it.
 *
 * printed shell: areal mass of a wall = line width x flow x density of the
 *   UNFOAMED filament (road area line width x layer height, laid once a layer):
 *   temperature changes the width the road swells to, not the mass.
 * folded sheet: developed skin area x areal mass of the sheet; full-depth strips (one at
 *   30 % of the chord, more spread evenly from 20 to 60 %) and formers (spread evenly in
 *   a panel, none at its ends) of the same sheet; glue along nose, tail and strips.
 * hot-wired core: lofted volume less channels and spars x density, skin by area.
 *
 * Source: geometry; Yousefi Kanani, Rennie, Rahim: Additively manufactured foamed
 * polylactic acid for lightweight structures, Rapid Prototyping Journal 29(1)
 * (2023), for the rule that the flow sets the mass of foaming filament.
 *
 * Returns: %GW_OK; %GW_EINVAL for a surface that gw_surface_check() refuses, a
 *   build with a negative or non-finite quantity, a pitch or piece length under
 *   1 mm, a panel over 100 m, over 100 strips, a known mass below that of the
 *   weighed spars or with nothing to spread it over; %GW_ENOMEM. Nothing is added
 *   after an error.
 */
GwStatus gw_build_surface (const GwSurface *surface,
                           size_t           index,
                           GwPieces        *pieces);

/** gw_build_seams: how many printed pieces one side's @panel is cut into, >= 1. */
int gw_build_seams (const GwSurface *surface,
                    size_t           panel);
