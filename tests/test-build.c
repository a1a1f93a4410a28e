/* test-build.c - printed, folded and hot-wired surfaces against closed forms
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "builds.h"
#include "surfaces.h"

/* A slab's outline, skin and volume are exact: only rounding is left. */
#define EXACT 1e-9

/* One side: chord 0.2 m, depth 0.02 m, 0.7 m along the span. */
#define CHORD  0.2
#define DEPTH  0.02
#define LENGTH 0.7
#define RIM    (2.0 * (CHORD + DEPTH))
#define FACE   (CHORD * DEPTH)

static void
build_slab (const GwBuild   *build,
            const GwControl *control,
            const GwSpar    *spar,
            GwPieces        *pieces)
{
  const GwSection section = slab (DEPTH / CHORD);
  GwStation       stations[2];
  GwSurface       wing = wing_of (2, stations, build);

  panel_stations (stations, &section, CHORD, CHORD, LENGTH, 0.0, 0.0);
  wing.n_controls = control != NULL ? 1 : 0;
  wing.controls = control;
  wing.n_spars = spar != NULL ? 1 : 0;
  wing.spars = spar;
  gw_pieces_init (pieces);
  g_assert_cmpint (gw_build_surface (&wing, 3, pieces), ==, GW_OK);
}

static void
test_printed (void)
{
  GwBuild      build = printed_build ();
  const double wall = 0.45e-3 * 0.5 * 1240.0; /* 0.279 kg/m2 */
  GwPieces     pieces;

  build_slab (&build, NULL, NULL, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_SKIN), 2.0 * RIM * LENGTH * wall, EXACT);
  assert_near (mass_of (&pieces, GW_PIECE_RIB), 2.0 * FACE * LENGTH * 2.0 / 0.05 * wall, EXACT);
  /* 0.7 m in pieces of at most 0.2 m: four of them, eight ends a side. */
  assert_near (mass_of (&pieces, GW_PIECE_CLOSING), 2.0 * 8.0 * FACE * 0.6e-3 * 0.5 * 1240.0,
               EXACT);
  g_assert_cmpint (piece_of (&pieces, GW_PIECE_SKIN)->count, ==, 4);
  g_assert_cmpint (piece_of (&pieces, GW_PIECE_CLOSING)->count, ==, 8);
  g_assert_cmpuint (pieces.n, ==, 6);
  for (size_t i = 0; i < pieces.n; i++)
    {
      g_assert_cmpint (pieces.v[i].group, ==, GW_GROUP_SURFACE);
      g_assert_cmpuint (pieces.v[i].owner, ==, 3);
      g_assert_cmpint (pieces.v[i].panel, ==, 0);
      g_assert_cmpint (pieces.v[i].side, ==, i % 2 ? -1 : 1);
      g_assert_false (pieces.v[i].is_weighed);
    }
  gw_pieces_clear (&pieces);

  build.printed.walls = 2;
  build.printed.inner = GW_INNER_RIBS;
  build.printed.inner_walls = 3;
  build_slab (&build, NULL, NULL, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_SKIN), 4.0 * RIM * LENGTH * wall, EXACT);
  /* Bays of 50 mm: 13 ribs between the ends. */
  assert_near (mass_of (&pieces, GW_PIECE_RIB), 2.0 * 13.0 * FACE * 3.0 * wall, EXACT);
  g_assert_cmpint (piece_of (&pieces, GW_PIECE_RIB)->count, ==, 13);
  gw_pieces_clear (&pieces);

  build.printed.inner = GW_INNER_NONE;
  build_slab (&build, NULL, NULL, &pieces);
  g_assert_cmpfloat (mass_of (&pieces, GW_PIECE_RIB), ==, 0.0);
  gw_pieces_clear (&pieces);
}

/* A lattice weighs the area of its webs, however the section varies: against a sum over
 * slices of depth x 2 / pitch in a tapered wing. */
static void
test_printed_lattice (void)
{
  const GwSection section = naca ("4415");
  const GwBuild   build = printed_build ();
  const int       n = 200;
  GwStation       s[2];
  const GwSurface wing = wing_of (2, s, &build);
  GwPieces        pieces;
  double          area = 0.0;

  panel_stations (s, &section, 0.25, 0.15, 0.6, 0.05, 0.05);
  for (int i = 0; i < n; i++)
    {
      GwSlice        slice;
      GwOutline      outline;
      GwOutlineShape shape;

      gw_panel_slice (&wing, 0, (i + 0.5) / n, &slice);
      gw_slice_outline (&slice, &outline);
      gw_outline_shape (&outline, &shape);
      area += shape.area * slice.chord * slice.chord * hypot (0.6, 0.05) / n * 2.0 / 0.05;
    }

  gw_pieces_init (&pieces);
  g_assert_cmpint (gw_build_surface (&wing, 0, &pieces), ==, GW_OK);
  assert_near (mass_of (&pieces, GW_PIECE_RIB), 2.0 * area * 0.279, 1e-4);
  gw_pieces_clear (&pieces);
}

/* Two webs at the hinge, and a tube of one wall around a tube spar. */
static void
test_printed_webs (void)
{
  const GwBuild   build = printed_build ();
  const GwControl control = { .from = 0.4, .to = 2.0, .chord_fraction = 0.25 }; /* to the tip */
  const GwSpar    spar = { .kind = GW_SPAR_TUBE,
                           .density = 1600.0,
                           .width = 0.006,
                           .wall = 0.001,
                           .chord_place = 0.3,
                           .to = 0.5 };
  GwPieces        pieces;
  double          at[3];

  build_slab (&build, &control, NULL, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_WEB), 2.0 * 2.0 * DEPTH * 0.3 * 0.279, EXACT);
  gw_moments_centre (&piece_of (&pieces, GW_PIECE_WEB)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[0], 0.75 * CHORD, 1e-9); /* m */
  g_assert_cmpfloat_with_epsilon (at[1], 0.55, 1e-9);
  gw_pieces_clear (&pieces);

  build_slab (&build, NULL, &spar, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_WEB), 2.0 * G_PI * 0.00645 * 0.5 * 0.279, EXACT);
  gw_pieces_clear (&pieces);
}

static void
test_folded (void)
{
  GwBuild  build = folded_build ();
  GwPieces pieces;
  double   at[3];

  build.folded.strips = 1;
  build_slab (&build, NULL, NULL, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_SKIN), 2.0 * RIM * LENGTH * 0.3, EXACT);
  assert_near (mass_of (&pieces, GW_PIECE_WEB), 2.0 * DEPTH * LENGTH * 0.3, EXACT);
  /* 0.7 m at 0.15 m: five bays, four formers. Nose, tail, two edges of the strip glued. */
  assert_near (mass_of (&pieces, GW_PIECE_RIB), 2.0 * 4.0 * FACE * 0.3, EXACT);
  assert_near (mass_of (&pieces, GW_PIECE_JOINT), 2.0 * 4.0 * LENGTH * 0.006, EXACT);
  gw_moments_centre (&piece_of (&pieces, GW_PIECE_WEB)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[0], 0.3 * CHORD, 1e-6); /* m */
  gw_pieces_clear (&pieces);

  build.folded.strips = 3; /* at 20, 40, 60 % */
  build.folded.former_pitch = 0.0;
  build_slab (&build, NULL, NULL, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_WEB), 6.0 * DEPTH * LENGTH * 0.3, EXACT);
  assert_near (mass_of (&pieces, GW_PIECE_JOINT), 2.0 * 8.0 * LENGTH * 0.006, EXACT);
  g_assert_cmpfloat (mass_of (&pieces, GW_PIECE_RIB), ==, 0.0);
  gw_moments_centre (&piece_of (&pieces, GW_PIECE_WEB)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[0], 0.4 * CHORD, 1e-6);
  gw_pieces_clear (&pieces);
}

static void
test_core (void)
{
  GwBuild      build = core_build ();
  GwPieces     pieces;
  const GwSpar spar = { .kind = GW_SPAR_TUBE,
                        .density = 1600.0,
                        .width = 0.01,
                        .wall = 0.001,
                        .chord_place = 0.3,
                        .to = 0.5 };
  const GwSpar caps = { .kind = GW_SPAR_CAPS,
                        .width = 0.01,
                        .height = 0.002,
                        .web_thickness = 0.003,
                        .chord_place = 0.3,
                        .to = 0.5 };

  build_slab (&build, NULL, NULL, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_CORE), 2.0 * (FACE - 1e-4) * LENGTH * 25.0, EXACT);
  assert_near (mass_of (&pieces, GW_PIECE_SKIN), 2.0 * RIM * LENGTH * 0.06, EXACT);
  assert_near (mass_of (&pieces, GW_PIECE_EDGE), 2.0 * LENGTH * 0.02, EXACT);
  gw_pieces_clear (&pieces);

  /* The whole tube's hole is cut, not only its wall; caps and what is between them. */
  build_slab (&build, NULL, &spar, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_CORE),
               2.0 * ((FACE - 1e-4) * LENGTH - G_PI * 25e-6 * 0.5) * 25.0, EXACT);
  gw_pieces_clear (&pieces);
  build_slab (&build, NULL, &caps, &pieces);
  assert_near (mass_of (&pieces, GW_PIECE_CORE),
               2.0 * ((FACE - 1e-4) * LENGTH - (40e-6 + 0.003 * 0.016) * 0.5) * 25.0, EXACT);
  gw_pieces_clear (&pieces);

  build.core.channel = 1.0; /* more than there is */
  build.core.skin_areal = 0.0;
  build_slab (&build, NULL, NULL, &pieces);
  g_assert_cmpfloat (mass_of (&pieces, GW_PIECE_CORE), ==, 0.0);
  g_assert_cmpuint (pieces.n, ==, 2); /* the edges */
  gw_pieces_clear (&pieces);
}

/* Closed forms of a tapered wing, from memory: Ixx about the centre plane and the centre of
 * a half wing, solid (mass as chord squared) and skin (mass as chord); 0.2 % as given,
 * chordwise and heightwise terms neglected there. */
static void
test_wing_reference (void)
{
  static const struct
  {
    double mass, span, root, tip, solid, skin, y;
  } rows[] = {
    { 0.4, 1.4, 0.25, 0.15, 0.0496, 0.05716667, 0.2928571 },
    { 0.3, 1.2, 0.2, 0.2, 0.036, 0.036, 0.3 },
  };
  const GwSection section = naca ("0006"); /* thin, as the closed form has it */

  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    for (int is_skin = 0; is_skin < 2; is_skin++)
      {
        const GwBuild build = is_skin ? skin_only_build () : core_only_build ();
        GwStation     s[2];
        GwSurface     wing = wing_of (2, s, &build);
        GwPieces      pieces;
        GwMoments     sum = { 0 };
        GwInertia     inertia;
        double        at[3];

        panel_stations (s, &section, rows[r].root, rows[r].tip, rows[r].span / 2.0, 0.0, 0.0);
        wing.known_mass = rows[r].mass;
        gw_pieces_init (&pieces);
        g_assert_cmpint (gw_build_surface (&wing, 0, &pieces), ==, GW_OK);
        for (size_t i = 0; i < pieces.n; i++)
          gw_moments_add (&sum, &pieces.v[i].mass, 1.0);
        gw_moments_inertia (&sum, &inertia);
        assert_near (sum.total, rows[r].mass, 1e-12);
        assert_near (inertia.m[0], is_skin ? rows[r].skin : rows[r].solid, 0.002);
        if (!is_skin)
          {
            gw_moments_centre (&pieces.v[0].mass, at);
            assert_near (at[1], rows[r].y, 0.002);
          }
        gw_pieces_clear (&pieces);
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/build/printed", test_printed);
  g_test_add_func ("/engine/build/printed/lattice", test_printed_lattice);
  g_test_add_func ("/engine/build/printed/webs", test_printed_webs);
  g_test_add_func ("/engine/build/folded", test_folded);
  g_test_add_func ("/engine/build/core", test_core);
  g_test_add_func ("/engine/build/wing-reference", test_wing_reference);

  return g_test_run ();
}
