/* test-trade-check.c - three ways to build one wing, against what builders find on the scale
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "builds.h"
#include "surfaces.h"
#include "engine/gw-aircraft.h"

/* Common practice, no source: a printed wing piece 200 mm long weighs about 30 g in foaming
 * filament and 56 g in ordinary PLA with the same walls; a wing of 1.5 m x 0.20 m, 12 % thick,
 * single walls of 0.45 mm, with four 9 g servos and no spar, about 330 g in folded foam sheet
 * (paper-faced, 300 g/m2), 370 g in foaming PLA and 600 g in ordinary PLA.
 *
 * Flow, walls and the sheet's mass belong to that statement. The rest was chosen here within
 * what is usual (common practice, no source), with the masses above in sight, so this shows
 * that the engine can give them with ordinary inputs, not that it foretold them:
 *   filament 1240 kg/m3 unfoamed; flow 0.52 foaming, 1.0 ordinary;
 *   lattice of one wall at 50 mm; closing layers 0.4 mm (two layers of 0.2) at each end of
 *   pieces of at most 200 mm, so four pieces a side;
 *   two spar strips of the sheet, formers every 250 mm, 5 g/m of glue along the folds;
 *   four controls (two ailerons, two flaps) of 0.3 m x 25 % chord; hinges 5 g/m, linkage 3 g
 *   each; a servo at mid span of each control, leads 12 g/m with 0.1 m of slack;
 *   5 g/m of glue around joints between printed pieces, and at the root.
 * Pieces come out heavy and wings light: 56 g a piece and what is built in would give a wing
 * of 510 g, not 600. The bound of 15 % is as wide as such statements are. */
#define BOUND 0.15

typedef struct
{
  GwSection section;
  GwStation stations[2];
  GwControl controls[2];
  GwItem    servos[2];
  GwSurface wing;
} Trade;

static void
trade_init (Trade         *trade,
            const GwBuild *build)
{
  *trade = (Trade){ .section = naca ("2412") };
  panel_stations (trade->stations, &trade->section, 0.2, 0.2, 0.75, 0.0, 0.0);
  trade->wing = wing_of (2, trade->stations, build);
  trade->wing.n_controls = 2;
  trade->wing.controls = trade->controls;

  for (int i = 0; i < 2; i++)
    {
      const double from = i == 0 ? 0.08 : 0.42;

      trade->controls[i] = (GwControl){ .kind = i == 0 ? GW_CONTROL_FLAP : GW_CONTROL_AILERON,
                                        .from = from,
                                        .to = from + 0.3,
                                        .chord_fraction = 0.25,
                                        .hinge_linear = 0.005,
                                        .linkage_mass = 0.003 };
      trade->servos[i] = (GwItem){ .kind = GW_ITEM_SERVO,
                                   .mass = 0.009,
                                   .at = { 0.08, from + 0.15, 0.0 },
                                   .size = { 0.023, 0.012, 0.022 },
                                   .is_mirrored = true,
                                   .lead_linear = 0.012,
                                   .lead_to = { 0.08, 0.0, 0.0 },
                                   .lead_slack = 0.1 };
    }
}

static GwBuild
trade_printed (double flow)
{
  GwBuild build = printed_build ();

  build.printed.flow = flow;
  build.printed.closing = 0.4e-3;
  build.joint_linear = 0.005;
  return build;
}

static GwBuild
trade_folded (void)
{
  GwBuild build = folded_build ();

  build.folded.former_pitch = 0.25;
  build.folded.glue_linear = 0.005;
  build.joint_linear = 0.005;
  return build;
}

static double
wing_mass (const GwBuild *build)
{
  Trade      trade;
  GwAircraft aircraft = { .n_surfaces = 1, .n_items = 2 };
  GwPieces   pieces;
  double     mass;

  trade_init (&trade, build);
  aircraft.surfaces = &trade.wing;
  aircraft.items = trade.servos;
  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_aircraft_pieces (&aircraft, &pieces), ==, GW_OK);
  mass = total_mass (&pieces);
  g_test_message ("  skin %.1f, lattice or formers %.1f, closings %.1f, webs %.1f, glue %.1f, "
                  "hinges and linkages %.1f, servos %.1f, leads %.1f g",
                  1e3 * mass_of (&pieces, GW_PIECE_SKIN), 1e3 * mass_of (&pieces, GW_PIECE_RIB),
                  1e3 * mass_of (&pieces, GW_PIECE_CLOSING), 1e3 * mass_of (&pieces, GW_PIECE_WEB),
                  1e3 * mass_of (&pieces, GW_PIECE_JOINT),
                  1e3 * (mass_of (&pieces, GW_PIECE_HINGE) + mass_of (&pieces, GW_PIECE_LINKAGE)),
                  1e3 * mass_of (&pieces, GW_PIECE_EQUIPMENT),
                  1e3 * mass_of (&pieces, GW_PIECE_LEAD));
  gw_pieces_clear (&pieces);
  return mass;
}

/* One piece of 200 mm, nothing built in. */
static double
piece_mass (const GwBuild *build)
{
  Trade    trade;
  GwPieces pieces;
  double   mass;

  trade_init (&trade, build);
  trade.stations[1].at[1] = 0.2;
  trade.wing.is_mirrored = false;
  trade.wing.n_controls = 0;
  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_build_surface (&trade.wing, 0, &pieces), ==, GW_OK);
  g_assert_cmpint (piece_of (&pieces, GW_PIECE_SKIN)->count, ==, 1);
  mass = total_mass (&pieces);
  gw_pieces_clear (&pieces);
  return mass;
}

static void
check (const char *what,
       double      computed,
       double      found)
{
  g_test_message ("%s: %.1f g computed, about %.0f g found (%+.1f %%)", what, 1e3 * computed,
                  1e3 * found, 100.0 * (computed / found - 1.0));
  assert_near (computed, found, BOUND);
}

static void
test_trade_check (void)
{
  const GwBuild foaming = trade_printed (0.52), solid = trade_printed (1.0);
  const GwBuild folded = trade_folded ();
  const double  light = piece_mass (&foaming), heavy = piece_mass (&solid);
  double        mass[3];

  check ("piece of 200 mm, foaming", light, 0.030);
  check ("piece of 200 mm, ordinary", heavy, 0.056);
  g_test_message ("ratio %.2f, about 1.87 found", heavy / light);
  g_assert_cmpfloat (heavy / light, >, 1.7);
  g_assert_cmpfloat (heavy / light, <, 2.0);

  mass[0] = wing_mass (&folded);
  check ("wing of folded sheet", mass[0], 0.330);
  mass[1] = wing_mass (&foaming);
  check ("wing of foaming PLA", mass[1], 0.370);
  mass[2] = wing_mass (&solid);
  check ("wing of ordinary PLA", mass[2], 0.600);
  g_assert_cmpfloat (mass[0], <, mass[1]);
  g_assert_cmpfloat (mass[1], <, mass[2]);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/build/trade-check", test_trade_check);

  return g_test_run ();
}
