/* test-build-common.c - spars, joints, hinges, finish, known masses, refusals
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "builds.h"
#include "surfaces.h"

#define EXACT 1e-9

/* Two panels of 0.4 and 0.6 m, chord 0.2 m, a slab 20 mm deep: closed forms throughout. */
#define CHORD 0.2
#define DEPTH 0.02
#define RIM   (2.0 * (CHORD + DEPTH))

typedef struct
{
  GwSection section;
  GwStation stations[3];
  GwBuild   builds[2];
  GwControl controls[2];
  GwSpar    spars[2];
  GwSurface surface;
  GwPieces  pieces;
} Wing;

static void
wing_init (Wing          *wing,
           const GwBuild *build)
{
  *wing = (Wing){ .section = slab (DEPTH / CHORD), .builds = { *build, *build } };
  for (int i = 0; i < 3; i++)
    wing->stations[i] =
      (GwStation){ { 0.0, i == 0 ? 0.0 : (i == 1 ? 0.4 : 1.0), 0.0 }, CHORD, 0.0, &wing->section };
  wing->surface = wing_of (3, wing->stations, wing->builds);
  wing->surface.controls = wing->controls;
  wing->surface.spars = wing->spars;
  gw_pieces_init (&wing->pieces);
}

static GwStatus
wing_build (Wing *wing)
{
  wing->pieces.n = 0;
  return gw_build_surface (&wing->surface, 0, &wing->pieces);
}

static void
test_joints (void)
{
  GwBuild build = printed_build ();
  Wing    wing;

  build.joint_linear = 0.01;
  wing_init (&wing, &build);
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);

  /* Pieces of 0.2 m: two and three a side. Seams 1 + 2, the panel joint 1, both sides; the
   * root joint once. */
  g_assert_cmpint (gw_build_seams (&wing.surface, 0), ==, 2);
  g_assert_cmpint (gw_build_seams (&wing.surface, 1), ==, 3);
  assert_near (mass_of (&wing.pieces, GW_PIECE_JOINT), (2.0 * 4.0 + 1.0) * RIM * 0.01, EXACT);

  /* Halves that do not meet, and a fin, have no joint at the root. */
  for (int i = 0; i < 3; i++)
    wing.stations[i].at[1] += 0.05;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_JOINT), 2.0 * 4.0 * RIM * 0.01, EXACT);
  wing.surface.is_mirrored = false;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_JOINT), 4.0 * RIM * 0.01, EXACT);
  gw_pieces_clear (&wing.pieces);
}

static void
test_seams (void)
{
  GwBuild build = printed_build ();
  Wing    wing;

  wing_init (&wing, &build);
  wing.builds[0].printed.piece_length = 0.4; /* fits exactly */
  g_assert_cmpint (gw_build_seams (&wing.surface, 0), ==, 1);
  wing.builds[0].printed.piece_length = 0.399;
  g_assert_cmpint (gw_build_seams (&wing.surface, 0), ==, 2);
  wing.builds[0].construction = GW_CONSTRUCTION_FOLDED_SHEET;
  g_assert_cmpint (gw_build_seams (&wing.surface, 0), ==, 1);
}

/* A control over the panel joint: hinge in two parts, linkage at its middle on the hinge. */
static void
test_controls (void)
{
  const GwBuild build = core_only_build ();
  Wing          wing;
  double        at[3];

  wing_init (&wing, &build);
  wing.surface.n_controls = 1;
  wing.controls[0] = (GwControl){
    .from = 0.3, .to = 0.9, .chord_fraction = 0.3, .hinge_linear = 0.02, .linkage_mass = 0.005
  };
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_HINGE), 2.0 * 0.6 * 0.02, EXACT);
  assert_near (mass_of (&wing.pieces, GW_PIECE_LINKAGE), 2.0 * 0.005, EXACT);
  g_assert_cmpint (piece_of (&wing.pieces, GW_PIECE_LINKAGE)->panel, ==, 1);
  gw_moments_centre (&piece_of (&wing.pieces, GW_PIECE_LINKAGE)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[0], 0.7 * CHORD, 1e-9); /* m */
  g_assert_cmpfloat_with_epsilon (at[1], 0.6, 1e-9);
  g_assert_cmpfloat_with_epsilon (at[2], 0.0, 1e-9);
  gw_moments_centre (&piece_of (&wing.pieces, GW_PIECE_HINGE)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[1], 0.35, 1e-9);

  /* One that ends beyond the tip: the hinge stops there, the linkage is not lost. */
  wing.controls[0].from = 0.8;
  wing.controls[0].to = 3.0;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_HINGE), 2.0 * 0.2 * 0.02, EXACT);
  assert_near (mass_of (&wing.pieces, GW_PIECE_LINKAGE), 2.0 * 0.005, EXACT);
  gw_pieces_clear (&wing.pieces);
}

/* Tube, rod, strip, caps with a web; lengths and cross-sections by hand. */
static void
test_spars (void)
{
  const GwBuild build = core_only_build ();
  Wing          wing;
  double        at[3];
  GwInertia     inertia;

  wing_init (&wing, &build);
  wing.surface.n_spars = 1;
  wing.spars[0] = (GwSpar){ .kind = GW_SPAR_TUBE,
                            .density = 1600.0,
                            .width = 0.01,
                            .wall = 0.001,
                            .chord_place = 0.25,
                            .to = 0.7 };
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_SPAR), 2.0 * G_PI * (25e-6 - 16e-6) * 0.7 * 1600.0,
               EXACT);
  gw_moments_centre (&piece_of (&wing.pieces, GW_PIECE_SPAR)->mass, at);
  g_assert_cmpfloat_with_epsilon (at[0], 0.05, 1e-9); /* m */
  g_assert_cmpfloat_with_epsilon (at[1], 0.2, 1e-9);

  wing.spars[0].wall = 0.0; /* a solid rod */
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_SPAR), 2.0 * G_PI * 25e-6 * 0.7 * 1600.0, EXACT);

  wing.spars[0].kind = GW_SPAR_STRIP;
  wing.spars[0].height = 0.003;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_SPAR), 2.0 * 30e-6 * 0.7 * 1600.0, EXACT);

  wing.spars[0].kind = GW_SPAR_CAPS;
  wing.spars[0].web_thickness = 0.002;
  wing.spars[0].web_density = 150.0;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_SPAR),
               2.0 * (2.0 * 30e-6 * 1600.0 + 0.002 * (DEPTH - 0.006) * 150.0) * 0.7, EXACT);

  /* Caps alone lie 3 mm / 2 under each skin: their height adds m h^2. */
  wing.spars[0].web_thickness = 0.0;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  gw_moments_inertia (&piece_of (&wing.pieces, GW_PIECE_SPAR)->mass, &inertia);
  assert_near (inertia.m[1], 2.0 * 30e-6 * 0.4 * 1600.0 * pow (DEPTH / 2.0 - 0.0015, 2.0), 1e-6);
  gw_pieces_clear (&wing.pieces);
}

static void
test_finish_and_factor (void)
{
  GwBuild build = printed_build ();
  Wing    wing;
  double  plain, spar, hinge;

  build.finish_areal = 0.04;
  build.joint_linear = 0.01;
  wing_init (&wing, &build);
  wing.surface.n_controls = wing.surface.n_spars = 1;
  wing.controls[0] =
    (GwControl){ .from = 0.3, .to = 0.9, .chord_fraction = 0.3, .hinge_linear = 0.02 };
  wing.spars[0] = (GwSpar){
    .kind = GW_SPAR_TUBE, .density = 1600.0, .width = 0.01, .chord_place = 0.25, .to = 0.7
  };
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (mass_of (&wing.pieces, GW_PIECE_FINISH), 2.0 * RIM * 1.0 * 0.04, EXACT);
  plain = total_mass (&wing.pieces);
  spar = mass_of (&wing.pieces, GW_PIECE_SPAR);
  hinge = mass_of (&wing.pieces, GW_PIECE_HINGE) + mass_of (&wing.pieces, GW_PIECE_FINISH) +
          mass_of (&wing.pieces, GW_PIECE_JOINT);

  wing.builds[0].mass_factor = wing.builds[1].mass_factor = 1.1;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (total_mass (&wing.pieces), 1.1 * (plain - spar - hinge) + spar + hinge, EXACT);
  gw_pieces_clear (&wing.pieces);
}

static void
test_known_mass (void)
{
  const GwBuild build = folded_build ();
  Wing          wing;
  double        computed, spar;

  wing_init (&wing, &build);
  wing.surface.n_spars = 1;
  wing.spars[0] = (GwSpar){ .kind = GW_SPAR_STRIP,
                            .density = 1600.0,
                            .width = 0.01,
                            .height = 0.001,
                            .chord_place = 0.3,
                            .to = 1.0 };
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  computed = total_mass (&wing.pieces);
  spar = mass_of (&wing.pieces, GW_PIECE_SPAR);
  assert_near (spar, 0.032, EXACT);

  /* Everything is scaled alike, and marked if the mass is from the scale. */
  wing.surface.known_mass = 0.5;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (total_mass (&wing.pieces), 0.5, EXACT);
  assert_near (mass_of (&wing.pieces, GW_PIECE_SPAR), 0.5 / computed * spar, EXACT);
  g_assert_false (wing.pieces.v[0].is_weighed);
  wing.surface.is_weighed = true;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  for (size_t i = 0; i < wing.pieces.n; i++)
    g_assert_true (wing.pieces.v[i].is_weighed);

  /* A weighed spar keeps its mass and is a part of the whole. */
  wing.spars[0].is_weighed = true;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);
  assert_near (total_mass (&wing.pieces), 0.5, EXACT);
  assert_near (mass_of (&wing.pieces, GW_PIECE_SPAR), spar, EXACT);
  assert_near (mass_of (&wing.pieces, GW_PIECE_WEB) / mass_of (&wing.pieces, GW_PIECE_SKIN),
               2.0 * DEPTH / RIM, EXACT);

  wing.surface.known_mass = 0.03; /* less than the weighed spar alone */
  g_assert_cmpint (wing_build (&wing), ==, GW_EINVAL);
  g_assert_cmpuint (wing.pieces.n, ==, 0);
  gw_pieces_clear (&wing.pieces);
}

#define REFUSES(build, field, value)                   \
 G_STMT_START                                          \
 {                                                     \
  wing_init (&wing, (build));                          \
  wing.builds[1].field = (value);                      \
  g_assert_cmpint (wing_build (&wing), ==, GW_EINVAL); \
  g_assert_cmpuint (wing.pieces.n, ==, 0);             \
  gw_pieces_clear (&wing.pieces);                      \
 }                                                     \
 G_STMT_END

static void
test_refuses (void)
{
  const GwBuild printed = printed_build (), folded = folded_build (), core = core_build ();
  Wing          wing;

  REFUSES (&printed, printed.density, -1.0);
  REFUSES (&printed, printed.line_width, NAN);
  REFUSES (&printed, printed.flow, INFINITY);
  REFUSES (&printed, printed.walls, -1);
  REFUSES (&printed, printed.inner_walls, -1);
  REFUSES (&printed, printed.inner_pitch, 0.0);
  REFUSES (&printed, printed.piece_length, 1e-9);
  REFUSES (&printed, printed.closing, -0.001);
  REFUSES (&folded, folded.areal, -0.3);
  REFUSES (&folded, folded.strips, -1);
  REFUSES (&folded, folded.strips, 1000000);
  REFUSES (&folded, folded.former_pitch, 1e-7);
  REFUSES (&folded, folded.glue_linear, NAN);
  REFUSES (&core, core.density, NAN);
  REFUSES (&core, core.channel, -1.0);
  REFUSES (&core, core.skin_areal, -1.0);
  REFUSES (&core, core.edge_linear, INFINITY);
  REFUSES (&core, mass_factor, -1.0);
  REFUSES (&core, joint_linear, NAN);
  REFUSES (&core, finish_areal, -0.1);
  REFUSES (&core, construction, GW_N_CONSTRUCTIONS);

  /* What another construction would read is not looked at. */
  wing_init (&wing, &core);
  wing.builds[0].printed.density = -1.0;
  g_assert_cmpint (wing_build (&wing), ==, GW_OK);

  wing.surface.n_controls = 1;
  wing.controls[0] = (GwControl){ .to = 0.5, .chord_fraction = 1.2 };
  g_assert_cmpint (wing_build (&wing), ==, GW_EINVAL);
  wing.surface.n_controls = 0;
  wing.surface.n_spars = 1;
  wing.spars[0] = (GwSpar){ .to = 0.5, .chord_place = 0.3, .width = NAN };
  g_assert_cmpint (wing_build (&wing), ==, GW_EINVAL);
  wing.surface.n_spars = 0;
  wing.stations[2].at[1] = 200.0; /* a panel over 100 m */
  g_assert_cmpint (wing_build (&wing), ==, GW_EINVAL);
  wing.stations[2].at[1] = 1.0;
  wing.surface.known_mass = -1.0;
  g_assert_cmpint (wing_build (&wing), ==, GW_EINVAL);
  gw_pieces_clear (&wing.pieces);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/build/joints", test_joints);
  g_test_add_func ("/engine/build/seams", test_seams);
  g_test_add_func ("/engine/build/controls", test_controls);
  g_test_add_func ("/engine/build/spars", test_spars);
  g_test_add_func ("/engine/build/finish-and-factor", test_finish_and_factor);
  g_test_add_func ("/engine/build/known-mass", test_known_mass);
  g_test_add_func ("/engine/build/refuses", test_refuses);

  return g_test_run ();
}
