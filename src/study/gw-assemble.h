/* gw-assemble.h - a resolved study as the engine's plain inputs
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-aircraft.h"
#include "study/gw-study.h"

G_BEGIN_DECLS

/* An aircraft and the memory it stands on. Names are borrowed from the study. */
typedef struct
{
  GwAircraft aircraft;
  GwStudy   *study;  /* resolved */
  GwSection *sections; /* as the study's */
  GPtrArray *blocks;   /* all arrays of the aircraft */
} GwAssembly;

/**
 * gw_assemble:
 * @resolved: by gw_study_resolve()
 * @like: (nullable): an earlier one; outlines of sections that are the same are taken from it
 * @problems: what is missing or makes no sense is added to it, with its path
 *
 * Turns units into SI and references into pointers. Looks at every value it
 * needs, so what it lets through the engine can compute.
 *
 * Returns: (transfer full): the assembly, or NULL after an error
 */
GwAssembly *gw_assemble (GwStudy          *resolved,
                         const GwAssembly *like,
                         GPtrArray        *problems) G_GNUC_WARN_UNUSED_RESULT;

void gw_assembly_free (GwAssembly *assembly);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwAssembly, gw_assembly_free)

G_END_DECLS
