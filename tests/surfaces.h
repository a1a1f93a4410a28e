/* surfaces.h - plain surfaces that several tests build on
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>
#include <math.h>

#include "engine/gw-surface.h"

/* Relative tolerance (the check is strict, hence the least number for a wanted 0). */
#define assert_near(value, wanted, relative) \
 g_assert_cmpfloat_with_epsilon ((value), (wanted), fabs (wanted) * (relative) + G_MINDOUBLE)

/* An ellipse on a unit chord; @thickness 1 makes it a circle. */
static inline GwSection
ellipse (double thickness)
{
  GwSection section = { .name = "ellipse" };

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      section.outline.upper[i] = 0.5 * thickness * sin (G_PI * (double) i / (GW_OUTLINE_N - 1));
      section.outline.lower[i] = -section.outline.upper[i];
    }

  return section;
}

/* A box of full depth from nose to tail: its outline is exact on any grid. */
static inline GwSection
slab (double thickness)
{
  GwSection section = { .name = "slab" };

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      section.outline.upper[i] = 0.5 * thickness;
      section.outline.lower[i] = -0.5 * thickness;
    }

  return section;
}

static inline GwSection
naca (const char *code)
{
  GwSection section = { .name = code };

  g_assert_cmpint (gw_outline_naca (code, &section.outline), ==, GW_OK);
  return section;
}

/* One panel: chords, sweep (of the leading edge), span and rise of one side. */
static inline void
panel_stations (GwStation        stations[2],
                const GwSection *section,
                double           root,
                double           tip,
                double           span,
                double           sweep,
                double           rise)
{
  stations[0] = (GwStation){ { 0.0, 0.0, 0.0 }, root, 0.0, section };
  stations[1] = (GwStation){ { sweep, span, rise }, tip, 0.0, section };
}

static inline GwSurface
wing_of (size_t           n,
         const GwStation *stations,
         const GwBuild   *builds)
{
  return (GwSurface){
    .name = "wing",
    .role = GW_ROLE_WING,
    .is_mirrored = true,
    .n_stations = n,
    .stations = stations,
    .builds = builds,
    .known_mass = NAN,
  };
}
