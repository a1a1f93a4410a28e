/* test-build-properties.c - what holds for every surface, on random wings
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "builds.h"
#include "surfaces.h"

/* A wing of one panel at random, every kind of piece in it. */
typedef struct
{
  GwSection section;
  GwStation stations[2];
  GwBuild   build;
  GwControl control;
  GwSpar    spar;
  GwSurface surface;
} RandomWing;

static void
random_wing_init (RandomWing    *wing,
                  GwConstruction construction)
{
  *wing = (RandomWing){ .section = naca ("4412") };
  wing->build = construction == GW_CONSTRUCTION_PRINTED_SHELL  ? printed_build ()
                : construction == GW_CONSTRUCTION_FOLDED_SHEET ? folded_build ()
                                                               : core_build ();
  wing->build.joint_linear = 0.01;
  wing->build.finish_areal = 0.02;
  panel_stations (wing->stations, &wing->section, g_test_rand_double_range (0.1, 0.4),
                  g_test_rand_double_range (0.1, 0.4), 0.6, g_test_rand_double_range (-0.2, 0.2),
                  g_test_rand_double_range (-0.1, 0.3));
  wing->stations[1].twist = g_test_rand_double_range (-0.1, 0.1);
  wing->control = (GwControl){
    .from = 0.2, .to = 0.5, .chord_fraction = 0.25, .hinge_linear = 0.01, .linkage_mass = 0.003
  };
  wing->spar = (GwSpar){ .kind = (GwSparKind) g_test_rand_int_range (0, GW_N_SPAR_KINDS),
                         .density = 1600.0,
                         .width = 0.006,
                         .height = 0.001,
                         .wall = 0.001,
                         .chord_place = 0.3,
                         .to = 0.4 };
  wing->surface = wing_of (2, wing->stations, &wing->build);
  wing->surface.n_controls = wing->surface.n_spars = 1;
  wing->surface.controls = &wing->control;
  wing->surface.spars = &wing->spar;
}

static void
random_wing_scale (RandomWing *wing,
                   double      k)
{
  for (int i = 0; i < 2; i++)
    {
      wing->stations[i].chord *= k;
      for (int j = 0; j < 3; j++)
        wing->stations[i].at[j] *= k;
    }
}

/* Property: nothing of a mirrored surface lies off the centre line. */
static void
test_mirrored (void)
{
  for (int trial = 0; trial < 60; trial++)
    {
      RandomWing wing;
      GwPieces   pieces;
      GwMoments  sum = { 0 };

      random_wing_init (&wing, (GwConstruction) (trial % GW_N_CONSTRUCTIONS));
      gw_pieces_init (&pieces);
      g_assert_cmpint (gw_build_surface (&wing.surface, 0, &pieces), ==, GW_OK);
      for (size_t i = 0; i < pieces.n; i++)
        gw_moments_add (&sum, &pieces.v[i].mass, 1.0);
      g_assert_cmpfloat (sum.total, >, 0.0);
      g_assert_cmpfloat_with_epsilon (sum.first[1], 0.0, 1e-12); /* kg m */
      g_assert_cmpfloat_with_epsilon (sum.second[3], 0.0, 1e-12);
      g_assert_cmpfloat_with_epsilon (sum.second[5], 0.0, 1e-12);
      gw_pieces_clear (&pieces);
    }
}

/* Property: k times the size is k^2 times the skin and the finish, k^3 times the core and the
 * lattice. (A channel of fixed section and a spar of fixed thickness would not scale.) */
static void
test_scaling (void)
{
  for (int trial = 0; trial < 60; trial++)
    {
      const double k = g_test_rand_double_range (0.5, 3.0);
      RandomWing   wing;
      GwPieces     small, large;

      random_wing_init (&wing, (GwConstruction) (trial % GW_N_CONSTRUCTIONS));
      wing.build.core.channel = 0.0;
      wing.build.folded.former_pitch = 0.0;
      wing.surface.n_spars = 0;
      gw_pieces_init (&small);
      gw_pieces_init (&large);
      g_assert_cmpint (gw_build_surface (&wing.surface, 0, &small), ==, GW_OK);
      random_wing_scale (&wing, k);
      g_assert_cmpint (gw_build_surface (&wing.surface, 0, &large), ==, GW_OK);

      for (int i = 0; i < GW_N_PIECE_KINDS; i++)
        {
          const GwPieceKind kind = (GwPieceKind) i;
          const double      mass = mass_of (&small, kind);

          if (kind == GW_PIECE_SKIN || kind == GW_PIECE_FINISH)
            assert_near (mass_of (&large, kind), k * k * mass, 1e-9);
          if (kind == GW_PIECE_CORE || kind == GW_PIECE_RIB)
            assert_near (mass_of (&large, kind), k * k * k * mass, 1e-9);
          if (kind == GW_PIECE_EDGE)
            assert_near (mass_of (&large, kind), k * mass, 1e-9);
        }
      gw_pieces_clear (&small);
      gw_pieces_clear (&large);
    }
}

/* Property: what the process makes is linear in the density of its material. */
static void
test_linear (void)
{
  for (int trial = 0; trial < 60; trial++)
    {
      const double k = g_test_rand_double_range (0.2, 4.0);
      RandomWing   wing;
      GwPieces     pieces;
      double       before[GW_N_PIECE_KINDS];

      random_wing_init (&wing, (GwConstruction) (trial % GW_N_CONSTRUCTIONS));
      gw_pieces_init (&pieces);
      g_assert_cmpint (gw_build_surface (&wing.surface, 0, &pieces), ==, GW_OK);
      for (int i = 0; i < GW_N_PIECE_KINDS; i++)
        before[i] = mass_of (&pieces, (GwPieceKind) i);

      wing.build.printed.density *= k;
      wing.build.folded.areal *= k;
      wing.build.core.density *= k;
      wing.build.core.skin_areal *= k;
      wing.build.core.edge_linear *= k;
      pieces.n = 0;
      g_assert_cmpint (gw_build_surface (&wing.surface, 0, &pieces), ==, GW_OK);
      for (int i = 0; i < GW_N_PIECE_KINDS; i++)
        assert_near (mass_of (&pieces, (GwPieceKind) i),
                     (i <= GW_PIECE_EDGE ? k : 1.0) * before[i], 1e-9);
      gw_pieces_clear (&pieces);
    }
}

/* A panel cut in two at a station that changes nothing weighs the same, but for what is
 * put at the joint. */
static void
test_additive (void)
{
  const GwSection section = naca ("4412");
  const GwBuild   build = core_build (), builds[2] = { build, build };
  GwStation       one[2], two[3];
  const GwSurface whole = wing_of (2, one, &build), cut = wing_of (3, two, builds);
  GwPieces        a, b;

  panel_stations (one, &section, 0.3, 0.15, 0.7, 0.1, 0.05);
  two[0] = one[0];
  two[1] = (GwStation){ { 0.04, 0.28, 0.02 }, 0.24, 0.0, &section }; /* at 40 % */
  two[2] = one[1];

  gw_pieces_init (&a);
  gw_pieces_init (&b);
  g_assert_cmpint (gw_build_surface (&whole, 0, &a), ==, GW_OK);
  g_assert_cmpint (gw_build_surface (&cut, 0, &b), ==, GW_OK);
  assert_near (total_mass (&a), total_mass (&b), 1e-9);
  for (int kind = 0; kind < GW_N_PIECE_KINDS; kind++)
    g_assert_cmpfloat_with_epsilon (mass_of (&a, (GwPieceKind) kind),
                                    mass_of (&b, (GwPieceKind) kind), 1e-9);
  gw_pieces_clear (&a);
  gw_pieces_clear (&b);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/build/mirrored", test_mirrored);
  g_test_add_func ("/engine/build/scaling", test_scaling);
  g_test_add_func ("/engine/build/linear", test_linear);
  g_test_add_func ("/engine/build/additive", test_additive);

  return g_test_run ();
}
