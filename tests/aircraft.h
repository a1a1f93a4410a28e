/* aircraft.h - an invented small aircraft for the tests of flight
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>
#include <math.h>

#include "engine/gw-evaluate.h"

#define DEGREE (M_PI / 180.0)

#define assert_close(value, expected, relative) \
 g_assert_cmpfloat_with_epsilon ((value), (expected), (relative) *fabs (expected))

enum
{
  MAIN_WING,
  TAIL,
  FIN,
  N_SURFACES
};

/* Everything is in one struct, so that a test changes what it likes; @aircraft points to
 * the rest, which therefore must not be copied. */
typedef struct
{
  GwSection     wing_section, tail_section;
  GwStation     stations[N_SURFACES][2];
  GwControl     controls[N_SURFACES];
  GwBuild       build;
  GwSurface     surfaces[N_SURFACES];
  GwBodyStation body_stations[4];
  GwBody        body;
  GwItem        items[2];
  GwAircraft    aircraft;
} Craft;

/* Section data that do not depend on the Reynolds number. */
static inline GwSection
plain_section (double cl_max,
               double slope,
               double alpha_zero,
               double cm_zero)
{
  GwSection section = {
    .name = "plain",
    .n_rows = 2,
    .rows = { { 1e3, cl_max, slope, alpha_zero, cm_zero },
              { 1e8, cl_max, slope, alpha_zero, cm_zero } },
    .cl_max_factor = 1.0,
  };

  g_assert_cmpint (gw_outline_naca ("2412", &section.outline), ==, GW_OK);
  return section;
}

/* Rising with the Reynolds number as small sections do; invented. */
static inline GwSection
small_section (double cl_max,
               double alpha_zero,
               double cm_zero)
{
  GwSection section = plain_section (cl_max, 5.8, alpha_zero, cm_zero);

  section.n_rows = 4;
  for (int i = 0; i < 4; i++)
    section.rows[i] = (GwSectionRow){
      3e4 * pow (3.0, i),
      cl_max * (0.70 + 0.12 * i - 0.01 * i * i),
      5.4 + 0.2 * i,
      alpha_zero * (1.0 + 0.03 * i),
      cm_zero,
    };
  return section;
}

static inline void
set_panel (Craft *craft,
           int    surface,
           double x,
           double z,
           double root,
           double tip,
           double semispan,
           double aft,
           double twist)
{
  const GwSection *section = surface == MAIN_WING ? &craft->wing_section : &craft->tail_section;
  GwStation       *stations = craft->stations[surface];
  const gboolean   is_fin = surface == FIN;

  stations[0] = (GwStation){ { x, 0.0, z }, root, twist, section };
  stations[1] = (GwStation){ { x + aft, is_fin ? 0.0 : semispan, is_fin ? z + semispan : z },
                             tip,
                             twist,
                             section };
}

static inline void
set_surface (Craft        *craft,
             int           surface,
             GwRole        role,
             GwControlKind kind,
             double        from,
             double        to)
{
  craft->controls[surface] = (GwControl){
    .kind = kind,
    .from = from,
    .to = to,
    .chord_fraction = 0.3,
    .up = 20.0 * DEGREE,
    .down = 20.0 * DEGREE,
    .linkage_mass = 0.003,
  };
  craft->surfaces[surface] = (GwSurface){
    .name = "surface",
    .role = role,
    .is_mirrored = role != GW_ROLE_FIN,
    .n_stations = 2,
    .stations = craft->stations[surface],
    .n_controls = 1,
    .controls = &craft->controls[surface],
    .builds = &craft->build,
    .known_mass = NAN,
  };
}

/* Wing at 0.25 m from the nose, tail 0.65 m behind it, battery that slides in the nose. */
static inline void
craft_init (Craft *craft)
{
  *craft = (Craft){
    .wing_section = small_section (1.35, -0.05, -0.06),
    .tail_section = small_section (1.0, 0.0, 0.0),
    .build = { .construction = GW_CONSTRUCTION_FOLDED_SHEET,
               .folded = { .areal = 0.4, .strips = 1, .former_pitch = 0.2, .glue_linear = 0.01 },
               .mass_factor = 1.0 },
    .body_stations = { { 0.0, 0.0, 0.04, 0.05, 4.0 },
                       { 0.12, 0.0, 0.08, 0.09, 4.0 },
                       { 0.50, 0.0, 0.08, 0.09, 4.0 },
                       { 1.05, 0.02, 0.02, 0.04, 4.0 } },
    .items = { { .name = "battery",
                 .kind = GW_ITEM_BATTERY,
                 .mass = 0.2,
                 .at = { 0.12, 0.0, 0.0 },
                 .size = { 0.1, 0.035, 0.03 },
                 .bay_from = 0.06,
                 .bay_to = 0.30 },
               { .name = "motor and the rest",
                 .kind = GW_ITEM_OTHER,
                 .mass = 0.25,
                 .at = { 0.10, 0.0, 0.0 },
                 .size = { 0.05, 0.05, 0.05 },
                 .bay_from = NAN,
                 .bay_to = NAN } },
  };
  set_panel (craft, MAIN_WING, 0.25, 0.05, 0.24, 0.16, 0.7, 0.03, 2.0 * DEGREE);
  set_panel (craft, TAIL, 0.92, 0.03, 0.14, 0.11, 0.24, 0.02, 0.0);
  set_panel (craft, FIN, 0.90, 0.05, 0.16, 0.10, 0.18, 0.05, 0.0);
  set_surface (craft, MAIN_WING, GW_ROLE_WING, GW_CONTROL_AILERON, 0.35, 0.65);
  set_surface (craft, TAIL, GW_ROLE_TAILPLANE, GW_CONTROL_ELEVATOR, 0.0, 0.24);
  set_surface (craft, FIN, GW_ROLE_FIN, GW_CONTROL_RUDDER, 0.0, 0.18);
  craft->body = (GwBody){
    .name = "body",
    .n_stations = 4,
    .stations = craft->body_stations,
    .skin_areal = 0.4,
    .mass_factor = 1.1,
    .known_mass = NAN,
  };
  craft->aircraft = (GwAircraft){
    .n_surfaces = N_SURFACES,
    .surfaces = craft->surfaces,
    .n_bodies = 1,
    .bodies = &craft->body,
    .n_items = 2,
    .items = craft->items,
    .movable = 0,
    .day = { 0.0, 288.15, 101325.0, 0.0 },
    .targets = { .stall_speed = NAN, .mass = NAN, .static_margin = 0.1, .balance_x = NAN },
  };
}

static inline GwAir
standard_air (void)
{
  GwAir air;

  g_assert_cmpint (gw_air_standard (0.0, &air), ==, GW_OK);
  return air;
}
