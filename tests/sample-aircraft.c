/* sample-aircraft.c - invented aeroplanes for the tests of figures and evaluation
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "sample-aircraft.h"

/* All data here is invented. */

static void
sample_section (GwSection  *section,
                const char *name,
                const char *code)
{
  section->name = name;
  section->cl_max_factor = 1;
  g_assert_cmpint (gw_outline_naca (code, &section->outline), ==, GW_OK);
  section->n_rows = 3;
  section->rows[0] = (GwSectionRow){ 5e4, 0.95, 5.6, -0.030, -0.05 };
  section->rows[1] = (GwSectionRow){ 1e5, 1.15, 5.8, -0.034, -0.05 };
  section->rows[2] = (GwSectionRow){ 3e5, 1.30, 6.0, -0.036, -0.05 };
}

static void
sample_build (GwBuild       *build,
              GwConstruction construction)
{
  build->construction = construction;
  build->mass_factor = 1;
  build->joint_linear = 0.004;
  build->printed = (GwPrintedShell){ .density = 1240,
                                     .line_width = 0.00045,
                                     .flow = 0.52,
                                     .walls = 1,
                                     .inner = GW_INNER_RIBS,
                                     .inner_walls = 1,
                                     .inner_pitch = 0.06,
                                     .piece_length = 0.22,
                                     .closing = 0.0005 };
  build->folded =
    (GwFoldedSheet){ .areal = 0.42, .strips = 1, .former_pitch = 0.2, .glue_linear = 0.003 };
  build->core =
    (GwHotWiredCore){ .density = 24, .channel = 1e-4, .skin_areal = 0.05, .edge_linear = 0.01 };
}

static GwStation
station (double           x,
         double           y,
         double           z,
         double           chord,
         double           twist,
         const GwSection *section)
{
  return (GwStation){ { x, y, z }, chord, twist, section };
}

static GwSurface *
sample_surface (Sample        *sample,
                const char    *name,
                GwRole         role,
                bool           is_mirrored,
                size_t         n_stations,
                GwConstruction construction)
{
  size_t     i = sample->aircraft.n_surfaces++;
  GwSurface *surface = &sample->surfaces[i];

  surface->name = name;
  surface->role = role;
  surface->is_mirrored = is_mirrored;
  surface->n_stations = n_stations;
  surface->stations = sample->stations[i];
  surface->controls = sample->controls[i];
  surface->builds = sample->builds[i];
  surface->known_mass = NAN;
  for (size_t k = 0; k + 1 < n_stations; k++)
    sample_build (&sample->builds[i][k], construction);

  return surface;
}

static void
sample_item (Sample     *sample,
             const char *name,
             GwItemKind  kind,
             double      mass,
             double      x,
             double      y,
             double      z,
             double      length,
             double      width,
             double      height)
{
  GwItem *item = &sample->items[sample->aircraft.n_items++];

  *item = (GwItem){ .name = name,
                    .kind = kind,
                    .mass = mass,
                    .at = { x, y, z },
                    .size = { length, width, height },
                    .is_mirrored = y > 0,
                    .bay_from = NAN,
                    .bay_to = NAN };
}

static void
sample_slow_body (Sample *sample)
{
  static const double shape[][4] = {
    /* x, z, width, height */
    { -0.31, 0.000, 0.030, 0.030 },
    { -0.295, 0.000, 0.050, 0.055 },
    { -0.16, -0.005, 0.090, 0.095 },
    { 0.05, -0.010, 0.092, 0.110 },
    { 0.25, -0.005, 0.085, 0.095 },
    { 0.55, 0.010, 0.055, 0.060 },
    { 0.92, 0.022, 0.030, 0.036 },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (shape); i++)
    sample->body_stations[i] =
      (GwBodyStation){ shape[i][0], shape[i][1], shape[i][2], shape[i][3], 3.5 };
  sample->bodies[0] = (GwBody){ .name = "fuselage",
                                .n_stations = G_N_ELEMENTS (shape),
                                .stations = sample->body_stations,
                                .skin_areal = 0.5,
                                .mass_factor = 1,
                                .known_mass = NAN };
  sample->aircraft.n_bodies = 1;
}

static void
sample_slow_gear (Sample *sample)
{
  sample->legs[0] = (GwLeg){ .name = "main leg",
                             .top = { -0.02, 0.03, -0.06 },
                             .axle = { -0.05, 0.17, -0.17 },
                             .leg_mass = 0.025,
                             .wheel_mass = 0.012,
                             .wheel_radius = 0.035,
                             .wheel_width = 0.015,
                             .is_mirrored = true };
  sample->legs[1] = (GwLeg){ .name = "tail wheel",
                             .top = { 0.90, 0, 0.01 },
                             .axle = { 0.92, 0, -0.035 },
                             .leg_mass = 0.006,
                             .wheel_mass = 0.004,
                             .wheel_radius = 0.012,
                             .wheel_width = 0.006 };
  sample->aircraft.n_legs = 2;
  sample->powers[0] = (GwPower){ .name = "motor",
                                 .motor_at = { -0.325, 0, 0 },
                                 .motor_mass = 0.105,
                                 .motor_radius = 0.014,
                                 .motor_length = 0.032,
                                 .propeller_x = -0.36,
                                 .propeller_mass = 0.014,
                                 .propeller_diameter = 0.28,
                                 .controller_at = { -0.25, 0, -0.02 },
                                 .controller_mass = 0.034 };
  sample->aircraft.n_powers = 1;
}

static void
sample_slow_items (Sample *sample)
{
  sample_item (sample, "Battery 3-cell 2200", GW_ITEM_BATTERY, 0.178, -0.21, 0, -0.02, 0.105, 0.034,
               0.025);
  sample->items[0].bay_from = -0.24;
  sample->items[0].bay_to = -0.10;
  sample_item (sample, "Receiver", GW_ITEM_RECEIVER, 0.009, 0.16, 0, -0.01, 0.043, 0.022, 0.013);
  sample_item (sample, "Camera on mount", GW_ITEM_PAYLOAD, 0.096, 0.02, 0, -0.05, 0.050, 0.042,
               0.040);
  sample_item (sample, "Servo, aileron", GW_ITEM_SERVO, 0.009, 0.115, 0.60, 0.065, 0.023, 0.012,
               0.022);
  sample_item (sample, "Servo, flap", GW_ITEM_SERVO, 0.009, 0.115, 0.25, 0.065, 0.023, 0.012,
               0.022);
  sample_item (sample, "Servo, rudder", GW_ITEM_SERVO, 0.009, 0.24, 0.018, 0.0, 0.023, 0.012,
               0.022);
  sample->items[5].is_mirrored = false;
  sample_item (sample, "Servo, elevator", GW_ITEM_SERVO, 0.009, 0.24, -0.018, 0.0, 0.023, 0.012,
               0.022);
  sample->aircraft.movable = 0;
}

static void
sample_slow (Sample        *sample,
             GwConstruction construction)
{
  const GwSection *wing_section = &sample->sections[0], *tail_section = &sample->sections[1];
  GwSurface       *wing, *tail, *fin;

  wing = sample_surface (sample, "wing", GW_ROLE_WING, true, 3, construction);
  sample->stations[0][0] = station (0, 0, 0.05, 0.245, 0.035, wing_section);
  sample->stations[0][1] = station (0, 0.45, 0.05, 0.245, 0.035, wing_section);
  sample->stations[0][2] = station (0, 0.90, 0.074, 0.245, 0.025, wing_section);
  sample->controls[0][0] = (GwControl){ GW_CONTROL_FLAP, 0.10, 0.44, 0.25, 0, 0.6, 0.002, 0.004 };
  sample->controls[0][1] =
    (GwControl){ GW_CONTROL_AILERON, 0.48, 0.86, 0.25, 0.4, 0.3, 0.002, 0.004 };
  wing->n_controls = 2;
  sample->spars[0] = (GwSpar){ .kind = GW_SPAR_TUBE,
                               .density = 1550,
                               .width = 0.008,
                               .wall = 0.001,
                               .chord_place = 0.30,
                               .from = 0,
                               .to = 0.60 };
  wing->n_spars = construction == GW_CONSTRUCTION_PRINTED_SHELL ? 1 : 0;
  wing->spars = sample->spars;

  tail =
    sample_surface (sample, "tailplane", GW_ROLE_TAILPLANE, true, 2, GW_CONSTRUCTION_FOLDED_SHEET);
  sample->stations[1][0] = station (0.76, 0, 0.03, 0.17, 0, tail_section);
  sample->stations[1][1] = station (0.79, 0.27, 0.03, 0.13, 0, tail_section);
  sample->controls[1][0] =
    (GwControl){ GW_CONTROL_ELEVATOR, 0, 0.27, 0.35, 0.45, 0.4, 0.002, 0.003 };
  tail->n_controls = 1;

  fin = sample_surface (sample, "fin", GW_ROLE_FIN, false, 2, GW_CONSTRUCTION_FOLDED_SHEET);
  sample->stations[2][0] = station (0.75, 0, 0.035, 0.19, 0, tail_section);
  sample->stations[2][1] = station (0.83, 0, 0.215, 0.11, 0, tail_section);
  sample->controls[2][0] = (GwControl){ GW_CONTROL_RUDDER, 0, 0.18, 0.4, 0.5, 0.5, 0.002, 0.003 };
  fin->n_controls = 1;

  sample_slow_body (sample);
  sample_slow_gear (sample);
  sample_slow_items (sample);
  sample->aircraft.targets = (GwTargets){ 7.0, 1.5, 0.10, NAN };
}

static void
sample_tailless (Sample *sample)
{
  const GwSection *section = &sample->sections[2];
  GwSurface       *wing, *fin;

  wing = sample_surface (sample, "wing", GW_ROLE_WING, true, 2, GW_CONSTRUCTION_HOT_WIRED_CORE);
  sample->stations[0][0] = station (0, 0, 0, 0.32, 0, section);
  sample->stations[0][1] = station (0.26, 0.60, 0.01, 0.18, -0.05, section);
  sample->controls[0][0] =
    (GwControl){ GW_CONTROL_ELEVON, 0.25, 0.64, 0.22, 0.35, 0.3, 0.002, 0.004 };
  wing->n_controls = 1;

  fin = sample_surface (sample, "tip fin", GW_ROLE_FIN, true, 2, GW_CONSTRUCTION_FOLDED_SHEET);
  sample->stations[1][0] = station (0.27, 0.60, -0.03, 0.17, 0, &sample->sections[1]);
  sample->stations[1][1] = station (0.34, 0.60, 0.11, 0.10, 0, &sample->sections[1]);
  fin->n_controls = 0;

  sample->powers[0] = (GwPower){ .name = "motor",
                                 .motor_at = { 0.34, 0, 0.02 },
                                 .motor_mass = 0.055,
                                 .motor_radius = 0.014,
                                 .motor_length = 0.03,
                                 .propeller_x = 0.37,
                                 .propeller_mass = 0.01,
                                 .propeller_diameter = 0.20,
                                 .controller_at = { 0.2, 0, 0.01 },
                                 .controller_mass = 0.02 };
  sample->aircraft.n_powers = 1;
  sample_item (sample, "Battery", GW_ITEM_BATTERY, 0.26, 0.045, 0, 0, 0.08, 0.035, 0.02);
  sample->items[0].bay_from = 0.045;
  sample->items[0].bay_to = 0.12;
  sample_item (sample, "Receiver", GW_ITEM_RECEIVER, 0.007, 0.18, 0, 0, 0.03, 0.02, 0.01);
  sample_item (sample, "Servo, elevon", GW_ITEM_SERVO, 0.009, 0.20, 0.28, 0, 0.023, 0.012, 0.022);
  sample->aircraft.movable = 0;
  sample->aircraft.targets = (GwTargets){ NAN, NAN, 0.05, NAN };
}

static void
sample_awkward_items (Sample *sample)
{
  static const char *const names[10] = {
    "Battery, drive, fore",
    "Regulator",
    "Receiver with two aerials",
    "Position logger",
    "Ballast, nose",
    "Servo, flap",
    "Servo, aileron",
    "Camera, oblique",
    "Radio link",
    "Parachute",
  };

  for (int i = 0; i < 30; i++)
    {
      bool   is_in_wing = i % 10 == 5 || i % 10 == 6;
      double x = is_in_wing ? 0.16 + 0.1 * (i / 10) : -0.40 + 0.032 * i;
      double y = is_in_wing ? 0.3 + 0.25 * (i / 10) + 0.1 * (i % 2) : 0.012 * (i % 3 - 1);

      sample_item (sample, names[i % 10], (GwItemKind) (i % GW_N_ITEM_KINDS),
                   0.01 + 0.004 * (i % 7), x, y, 0.01, 0.024, 0.012 + 0.006 * (i % 2), 0.02);
      sample->items[i].is_mirrored = is_in_wing;
    }
  sample->items[0].bay_from = -0.42;
  sample->items[0].bay_to = -0.2;
  sample->aircraft.movable = 0;
}

static void
sample_awkward (Sample *sample)
{
  const GwSection *section = &sample->sections[0], *tail_section = &sample->sections[1];
  GwSurface       *wing, *tail;

  wing = sample_surface (sample, "wing", GW_ROLE_WING, true, 5, GW_CONSTRUCTION_PRINTED_SHELL);
  sample->stations[0][0] = station (0.00, 0.00, 0.00, 0.34, 0.03, section);
  sample->stations[0][1] = station (0.03, 0.22, 0.00, 0.30, 0.03, section);
  sample->stations[0][2] = station (0.10, 0.55, 0.05, 0.22, 0.01, section);
  sample->stations[0][3] = station (0.24, 1.05, 0.16, 0.14, -0.03, section);
  sample->stations[0][4] = station (0.34, 1.15, 0.28, 0.07, -0.05, section);
  sample->controls[0][0] = (GwControl){ GW_CONTROL_FLAP, 0.08, 0.45, 0.25, 0, 0.7, 0.002, 0.004 };
  sample->controls[0][1] = (GwControl){ GW_CONTROL_FLAP, 0.47, 0.7, 0.25, 0, 0.7, 0.002, 0.004 };
  sample->controls[0][2] =
    (GwControl){ GW_CONTROL_AILERON, 0.72, 1.08, 0.28, 0.4, 0.3, 0.002, 0.004 };
  wing->n_controls = 3;
  sample->spars[0] = (GwSpar){ .kind = GW_SPAR_CAPS,
                               .density = 1600,
                               .width = 0.006,
                               .height = 0.001,
                               .chord_place = 0.3,
                               .from = 0,
                               .to = 1.0 };
  sample->spars[1] = (GwSpar){ .kind = GW_SPAR_STRIP,
                               .density = 160,
                               .width = 0.004,
                               .height = 0.01,
                               .chord_place = 0.65,
                               .from = 0.05,
                               .to = 0.7 };
  wing->n_spars = 2;
  wing->spars = sample->spars;
  sample->builds[0][1].construction = GW_CONSTRUCTION_HOT_WIRED_CORE;

  tail = sample_surface (sample, "V-tail", GW_ROLE_V_TAIL, true, 2, GW_CONSTRUCTION_FOLDED_SHEET);
  sample->stations[1][0] = station (0.86, 0.01, 0.03, 0.16, 0, tail_section);
  sample->stations[1][1] = station (0.93, 0.28, 0.24, 0.09, 0, tail_section);
  sample->controls[1][0] =
    (GwControl){ GW_CONTROL_RUDDERVATOR, 0.02, 0.33, 0.35, 0.4, 0.4, 0.002, 0.003 };
  tail->n_controls = 1;

  sample_slow_body (sample);
  sample->body_stations[0].x = -0.50;
  sample->body_stations[1].x = -0.46;
  sample->body_stations[2].x = -0.30;
  for (int i = 0; i < 2; i++)
    sample->powers[i] = (GwPower){ .name = "motor",
                                   .motor_at = { -0.02, 0.24, 0.01 },
                                   .motor_mass = 0.05,
                                   .motor_radius = 0.012,
                                   .motor_length = 0.03,
                                   .propeller_x = -0.05,
                                   .propeller_mass = 0.008,
                                   .propeller_diameter = 0.2,
                                   .controller_at = { 0.1, 0.2, 0 },
                                   .controller_mass = 0.02,
                                   .is_mirrored = true };
  sample->aircraft.n_powers = 1;
  sample_awkward_items (sample);
  sample->aircraft.targets = (GwTargets){ 8.5, 2.0, 0.08, NAN };
}

void
sample_init (Sample    *sample,
             SampleKind kind)
{
  *sample = (Sample){ 0 };
  sample_section (&sample->sections[0], "cambered", "4412");
  sample_section (&sample->sections[1], "thin, symmetric", "0007");
  sample_section (&sample->sections[2], "symmetric", "0010");
  sample->aircraft.surfaces = sample->surfaces;
  sample->aircraft.bodies = sample->bodies;
  sample->aircraft.struts = sample->struts;
  sample->aircraft.legs = sample->legs;
  sample->aircraft.powers = sample->powers;
  sample->aircraft.items = sample->items;
  sample->aircraft.movable = -1;
  sample->aircraft.day = (GwDay){ 120, 304.15, NAN, 0.4 };

  switch (kind)
    {
    case SAMPLE_FOLDED:
      sample_slow (sample, GW_CONSTRUCTION_FOLDED_SHEET);
      break;
    case SAMPLE_PRINTED:
      sample_slow (sample, GW_CONSTRUCTION_PRINTED_SHELL);
      break;
    case SAMPLE_TAILLESS:
      sample_tailless (sample);
      break;
    case SAMPLE_AWKWARD:
    case SAMPLE_N:
    default:
      sample_awkward (sample);
      break;
    }
}
