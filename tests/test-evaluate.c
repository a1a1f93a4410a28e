/* test-evaluate.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "aircraft.h"

static void
evaluate (Craft     *craft,
          GwResults *results)
{
  g_assert_cmpint (gw_evaluate (&craft->aircraft, NULL, results), ==, GW_OK);
}

/* One scalar of an aircraft. */
static double
value_of (Craft     *craft,
          GwResultId id)
{
  GwResults results;
  double    value;

  evaluate (craft, &results);
  value = results.value[id];
  gw_results_clear (&results);
  return value;
}

static unsigned
notes_of (Craft *craft)
{
  GwResults results;
  unsigned  notes;

  evaluate (craft, &results);
  notes = results.notes;
  gw_results_clear (&results);
  return notes;
}

/* Everything that an ordinary aircraft has an answer for, and how the answers hang together. */
static void
test_values (void)
{
  static Craft  craft;
  GwResults     results;
  const double *v = results.value;
  double        sum = 0.0, wing = 0.0, kinds = 0.0;

  craft_init (&craft);
  craft.aircraft.targets.stall_speed = 8.0;
  craft.items[1].is_weighed = TRUE;
  evaluate (&craft, &results);
  for (int i = 0; i < GW_N_RESULTS; i++)
    g_assert_true (isfinite (v[i]));

  for (size_t i = 0; i < results.pieces.n; i++)
    {
      const GwPiece *piece = &results.pieces.v[i];

      sum += piece->mass.total;
      if (piece->group == GW_GROUP_SURFACE && piece->owner == MAIN_WING)
        wing += piece->mass.total;
    }
  for (int i = 0; i < GW_N_PIECE_KINDS; i++)
    kinds += results.piece_mass[i];
  assert_close (v[GW_RESULT_MASS], sum, 1e-12);
  assert_close (v[GW_RESULT_WING_MASS], wing, 1e-12);
  assert_close (kinds, sum, 1e-12);
  assert_close (v[GW_RESULT_WEIGHED_SHARE], 0.25 / sum, 1e-12);

  /* Hand calculation: 1.4 m by 0.2 m mean; mean chord 2/3 (0.24 + 0.16 - 0.24 x 0.16 / 0.4). */
  assert_close (v[GW_RESULT_WING_AREA], 0.28, 1e-12);
  assert_close (v[GW_RESULT_SPAN], 1.4, 1e-12);
  assert_close (v[GW_RESULT_ASPECT_RATIO], 7.0, 1e-12);
  assert_close (v[GW_RESULT_MEAN_CHORD], 0.2026667, 1e-6);
  assert_close (v[GW_RESULT_WING_LOADING], sum / 0.28, 1e-12);
  g_assert_cmpfloat (v[GW_RESULT_WETTED_AREA], >, 2.0 * (0.28 + 0.06 + 0.0234));

  assert_close (v[GW_RESULT_BALANCE_ROOT], v[GW_RESULT_BALANCE_X] - 0.25, 1e-9);
  assert_close (v[GW_RESULT_BALANCE_MAC],
                (v[GW_RESULT_BALANCE_X] - results.geometry.mac_x) / v[GW_RESULT_MEAN_CHORD], 1e-12);
  assert_close (v[GW_RESULT_STATIC_MARGIN] * v[GW_RESULT_MEAN_CHORD],
                v[GW_RESULT_NEUTRAL_POINT] - v[GW_RESULT_BALANCE_X], 1e-12);
  assert_close (v[GW_RESULT_AFT_LIMIT],
                v[GW_RESULT_NEUTRAL_POINT] - 0.1 * v[GW_RESULT_MEAN_CHORD], 1e-12);
  g_assert_cmpfloat (v[GW_RESULT_FORWARD_LIMIT], <, v[GW_RESULT_AFT_LIMIT]);
  g_assert_cmpfloat (v[GW_RESULT_IXX], ==, results.balance.inertia.m[0]);
  g_assert_cmpfloat (v[GW_RESULT_IXZ], ==, results.balance.inertia.m[4]);
  g_assert_cmpfloat (v[GW_RESULT_IZZ], >, v[GW_RESULT_IYY]);
  g_assert_cmpfloat (v[GW_RESULT_IXX] + v[GW_RESULT_IYY], >, v[GW_RESULT_IZZ]);

  assert_close (0.5 * v[GW_RESULT_DENSITY] * pow (v[GW_RESULT_STALL_SPEED], 2.0) * 0.28 *
                  v[GW_RESULT_CL_MAX],
                v[GW_RESULT_MASS] * GW_GRAVITY, 1e-6);
  g_assert_cmpfloat (v[GW_RESULT_STALL_RE], ==, results.stall.re);
  g_assert_cmpfloat (v[GW_RESULT_STALL_PLACE], <, 0.7);
  gw_results_clear (&results);
}

/* The stall curve goes through the aircraft's own mass and through the mass that the wanted
 * speed allows, and rises. */
static void
test_curve (void)
{
  static Craft craft;
  GwResults    results, again;
  double       mass[GW_CURVE_N];

  craft_init (&craft);
  craft.aircraft.targets.stall_speed = 8.5;
  evaluate (&craft, &results);
  for (int i = 0; i < GW_CURVE_N; i++)
    {
      g_assert_true (isnan (results.curve[i]));
      mass[i] = 0.4 + 0.1 * i;
    }
  mass[3] = results.value[GW_RESULT_MASS];
  mass[4] = results.value[GW_RESULT_TARGET_MASS];
  mass[5] = NAN;

  g_assert_cmpint (gw_evaluate (&craft.aircraft, mass, &again), ==, GW_OK);
  assert_close (again.curve[3], results.value[GW_RESULT_STALL_SPEED], 1e-5);
  assert_close (again.curve[4], 8.5, 1e-5);
  g_assert_true (isnan (again.curve[5]));
  for (int i = 7; i < GW_CURVE_N; i++)
    g_assert_cmpfloat (again.curve[i], >, again.curve[i - 1]);
  gw_results_clear (&results);
  gw_results_clear (&again);
}

/* The item moved by what is asked puts the balance point where it is wanted. */
static void
check_slide (Craft *craft)
{
  GwResults results;
  double    wanted;

  evaluate (craft, &results);
  wanted = isnan (craft->aircraft.targets.balance_x) ? results.value[GW_RESULT_AFT_LIMIT]
                                                     : craft->aircraft.targets.balance_x;
  g_assert_cmpfloat (results.value[GW_RESULT_SLIDE_LEFT], ==, 0.0);
  g_assert_cmpfloat (results.value[GW_RESULT_BALLAST], ==, 0.0);
  g_assert_cmpfloat (fabs (results.value[GW_RESULT_SLIDE]), >, 0.01);
  g_assert_false (results.notes & GW_NOTE_BALLAST);
  craft->items[0].at[0] += results.value[GW_RESULT_SLIDE];
  gw_results_clear (&results);

  evaluate (craft, &results);
  g_assert_cmpfloat_with_epsilon (results.value[GW_RESULT_BALANCE_X], wanted, 1e-12);
  g_assert_cmpuint (results.notes, ==, 0);
  gw_results_clear (&results);
}

static void
test_slide (void)
{
  static Craft craft;

  craft_init (&craft);
  check_slide (&craft);
  /* The neutral point has moved a little with the stall speed and its Reynolds numbers: so
   * much is left to slide, 0.1 mm. */
  g_assert_cmpfloat_with_epsilon (value_of (&craft, GW_RESULT_SLIDE), 0.0, 1e-4);

  /* With section data that know no Reynolds number it stands still. */
  craft_init (&craft);
  craft.wing_section = plain_section (1.2, 5.8, -0.05, -0.06);
  craft.tail_section = plain_section (0.9, 5.6, 0.0, 0.0);
  check_slide (&craft);
  g_assert_cmpfloat_with_epsilon (value_of (&craft, GW_RESULT_SLIDE), 0.0, 1e-9);

  craft_init (&craft);
  craft.aircraft.targets.balance_x = 0.32;
  check_slide (&craft);
  g_assert_cmpfloat_with_epsilon (value_of (&craft, GW_RESULT_BALANCE_X), 0.32, 1e-12);

  /* One on each side: both go. */
  craft_init (&craft);
  craft.aircraft.targets.balance_x = 0.33;
  craft.items[0].is_mirrored = TRUE;
  craft.items[0].mass = 0.1;
  craft.items[0].at[1] = 0.05;
  craft.items[0].at[0] = 0.2;
  check_slide (&craft);
  g_assert_cmpfloat_with_epsilon (value_of (&craft, GW_RESULT_BALANCE_X), 0.33, 1e-12);
}

/* Where the bay ends ballast goes on, at the nose or at the tail. */
static void
check_ballast (Craft *craft,
               double wanted,
               double end)
{
  GwItem    items[3];
  GwResults results;

  craft->aircraft.targets.balance_x = wanted;
  evaluate (craft, &results);
  g_assert_true (results.notes & GW_NOTE_BALLAST);
  g_assert_cmpfloat (results.value[GW_RESULT_BALLAST], >, 0.0);
  items[0] = craft->items[0];
  items[1] = craft->items[1];
  items[2] = craft->items[1];
  items[0].at[0] += results.value[GW_RESULT_SLIDE] - results.value[GW_RESULT_SLIDE_LEFT];
  g_assert_true (items[0].at[0] == items[0].bay_from || items[0].at[0] == items[0].bay_to);
  items[2].mass = results.value[GW_RESULT_BALLAST];
  items[2].at[0] = end;
  gw_results_clear (&results);

  craft->aircraft.items = items;
  craft->aircraft.n_items = 3;
  g_assert_cmpfloat_with_epsilon (value_of (craft, GW_RESULT_BALANCE_X), wanted, 1e-12);
  craft->aircraft.items = craft->items;
  craft->aircraft.n_items = 2;
}

static void
test_ballast (void)
{
  static Craft craft;
  GwResults    results;

  craft_init (&craft);
  craft.items[0].bay_from = 0.08;
  craft.items[0].bay_to = 0.16;
  check_ballast (&craft, 0.30, 0.0);
  check_ballast (&craft, 0.37, 0.90 + 0.16); /* trailing edge of the fin's root */

  /* Travel: what the balance is with the item at the ends. */
  evaluate (&craft, &results);
  craft.items[0].at[0] = 0.08;
  assert_close (value_of (&craft, GW_RESULT_BALANCE_X), results.value[GW_RESULT_TRAVEL_FORE],
                1e-12);
  craft.items[0].at[0] = 0.16;
  assert_close (value_of (&craft, GW_RESULT_BALANCE_X), results.value[GW_RESULT_TRAVEL_AFT], 1e-12);
  gw_results_clear (&results);

  /* Nothing to slide: ballast alone, no word about a bay. */
  craft_init (&craft);
  craft.aircraft.movable = -1;
  craft.aircraft.targets.balance_x = 0.30;
  evaluate (&craft, &results);
  g_assert_true (isnan (results.value[GW_RESULT_SLIDE]));
  g_assert_true (isnan (results.value[GW_RESULT_TRAVEL_AFT]));
  g_assert_false (results.notes & GW_NOTE_BALLAST);
  assert_close (results.value[GW_RESULT_BALLAST],
                results.value[GW_RESULT_MASS] * (results.value[GW_RESULT_BALANCE_X] / 0.30 - 1.0),
                1e-9);
  gw_results_clear (&results);

  craft.aircraft.movable = 1; /* without a bay */
  g_assert_true (isnan (value_of (&craft, GW_RESULT_SLIDE)));
}

static void
test_notes (void)
{
  static Craft craft;
  double       speed;

  craft_init (&craft);
  g_assert_cmpuint (notes_of (&craft), ==, 0);
  speed = value_of (&craft, GW_RESULT_STALL_SPEED);

  craft.aircraft.targets.stall_speed = speed - 0.01;
  craft.aircraft.targets.mass = value_of (&craft, GW_RESULT_MASS) - 0.001;
  g_assert_cmpuint (notes_of (&craft), ==, GW_NOTE_STALL_FAST | GW_NOTE_HEAVY);
  craft.aircraft.targets.stall_speed = speed + 0.01;
  craft.aircraft.targets.mass += 0.002;
  g_assert_cmpuint (notes_of (&craft), ==, 0);

  /* A strong taper with wash-in lets go far out, in the ailerons. */
  craft_init (&craft);
  craft.stations[MAIN_WING][1].chord = 0.08;
  craft.stations[MAIN_WING][1].at[0] += 0.04;
  craft.stations[MAIN_WING][1].twist += 2.0 * DEGREE;
  g_assert_cmpuint (notes_of (&craft) & (GW_NOTE_TIP_FIRST | GW_NOTE_AILERON_FIRST), ==,
                    GW_NOTE_TIP_FIRST | GW_NOTE_AILERON_FIRST);
  craft.controls[MAIN_WING].kind = GW_CONTROL_FLAP;
  g_assert_false (notes_of (&craft) & GW_NOTE_AILERON_FIRST);

  craft_init (&craft);
  craft.stations[MAIN_WING][1].at[0] += 0.1;
  g_assert_true (notes_of (&craft) & GW_NOTE_SWEPT);

  craft_init (&craft);
  craft.wing_section.rows[0].re = 2e5;
  craft.wing_section.n_rows = 1;
  g_assert_cmpuint (notes_of (&craft), ==, GW_NOTE_RE_OUTSIDE);

  craft_init (&craft);
  craft.items[0].at[0] = 0.28;
  craft.items[0].bay_to = 0.5;
  g_assert_cmpuint (notes_of (&craft), ==, GW_NOTE_BEHIND_AFT_LIMIT);
  craft.items[0].at[0] = 0.45;
  g_assert_true (notes_of (&craft) & GW_NOTE_UNSTABLE);

  craft_init (&craft);
  craft.items[1].mass = 1.5;
  craft.items[1].at[0] = 0.0;
  g_assert_true (notes_of (&craft) & GW_NOTE_AHEAD_OF_LIMIT);
  craft.items[1].mass = 4.0;
  craft.items[1].at[0] = -0.1;
  g_assert_true (notes_of (&craft) & GW_NOTE_TAIL_LIMIT);

  craft_init (&craft);
  craft.items[0].at[1] = 0.05; /* 0.2 kg of 0.98 kg: 10 mm, of 7 mm allowed */
  g_assert_cmpuint (notes_of (&craft), ==, GW_NOTE_LATERAL);
  assert_close (value_of (&craft, GW_RESULT_BALANCE_Y),
                0.2 * 0.05 / value_of (&craft, GW_RESULT_MASS), 0.02);

  craft_init (&craft);
  craft.items[0].at[0] = craft.items[0].bay_from;
  g_assert_false (notes_of (&craft) & GW_NOTE_OUTSIDE_BAY);
  craft.items[0].at[0] -= 1e-3;
  g_assert_true (notes_of (&craft) & GW_NOTE_OUTSIDE_BAY);
  craft.items[0].bay_from = NAN; /* no bay */
  g_assert_false (notes_of (&craft) & GW_NOTE_OUTSIDE_BAY);
}

/* The neutral point does not ask what the aircraft weighs or where it balances. */
static void
test_neutral_point (void)
{
  static Craft craft;
  double       reference, mean;

  craft_init (&craft);
  craft.wing_section = plain_section (1.2, 5.8, -0.05, -0.06);
  craft.tail_section = plain_section (0.9, 5.6, 0.0, 0.0);
  reference = value_of (&craft, GW_RESULT_NEUTRAL_POINT);
  mean = value_of (&craft, GW_RESULT_MEAN_CHORD);

  for (int trial = 0; trial < 20; trial++)
    {
      craft.items[1].mass = g_test_rand_double_range (0.1, 2.0);
      craft.items[1].at[0] = g_test_rand_double_range (0.05, 0.3);
      assert_close (value_of (&craft, GW_RESULT_NEUTRAL_POINT), reference, 1e-9);
    }

  craft.aircraft.neutral_point_shift = 0.03;
  assert_close (value_of (&craft, GW_RESULT_NEUTRAL_POINT), reference + 0.03 * mean, 1e-9);
}

/* The same shape, finish and balance point, only heavier: never a slower stall. */
static void
test_heavier_is_faster (void)
{
  static Craft craft;

  for (int trial = 0; trial < 30; trial++)
    {
      const double root = g_test_rand_double_range (0.18, 0.32);
      double       balance, before = 0.0;

      craft_init (&craft);
      set_panel (&craft, MAIN_WING, 0.25, 0.05, root, root * g_test_rand_double_range (0.4, 1.0),
                 g_test_rand_double_range (0.5, 1.0), g_test_rand_double_range (0.0, 0.06),
                 g_test_rand_double_range (0.0, 0.06));
      balance = value_of (&craft, GW_RESULT_BALANCE_X);
      craft.items[1].kind = GW_ITEM_PAYLOAD;
      for (int i = 0; i < 5; i++)
        {
          GwItem    items[3] = { craft.items[0], craft.items[1], craft.items[1] };
          GwResults results;

          items[2].at[0] = balance;
          items[2].mass = 0.01 + 0.3 * i;
          craft.aircraft.items = items;
          craft.aircraft.n_items = 3;
          evaluate (&craft, &results);
          g_assert_cmpfloat_with_epsilon (results.value[GW_RESULT_BALANCE_X], balance, 1e-12);
          g_assert_cmpfloat (results.value[GW_RESULT_STALL_SPEED], >, before);
          before = results.value[GW_RESULT_STALL_SPEED];
          gw_results_clear (&results);
          craft.aircraft.items = craft.items;
          craft.aircraft.n_items = 2;
        }
    }
}

/* Other layouts have their answers too. */
static void
test_layouts (void)
{
  static Craft craft;
  GwResults    results;

  /* Canard. */
  craft_init (&craft);
  set_panel (&craft, TAIL, -0.35, 0.0, 0.12, 0.10, 0.22, 0.01, 3.0 * DEGREE);
  craft.surfaces[TAIL].role = GW_ROLE_CANARD;
  craft.body_stations[0].x = -0.4;
  evaluate (&craft, &results);
  g_assert_true (isfinite (results.value[GW_RESULT_STALL_SPEED]));
  g_assert_true (isfinite (results.value[GW_RESULT_FORWARD_LIMIT]));
  g_assert_cmpfloat (results.value[GW_RESULT_NEUTRAL_POINT], <, 0.32);
  g_assert_false (results.notes & GW_NOTE_NO_TRIM_SURFACE);
  gw_results_clear (&results);

  /* Tailless, swept, with elevons. */
  craft_init (&craft);
  craft.aircraft.n_surfaces = 1;
  set_panel (&craft, MAIN_WING, 0.05, 0.0, 0.26, 0.16, 0.6, 0.28, 2.0 * DEGREE);
  craft.stations[MAIN_WING][1].twist = -2.0 * DEGREE;
  craft.controls[MAIN_WING].kind = GW_CONTROL_ELEVON;
  craft.body_stations[3].x = 0.55;
  craft.items[1].at[0] = 0.2;
  evaluate (&craft, &results);
  g_assert_true (isfinite (results.value[GW_RESULT_STALL_SPEED]));
  g_assert_true (isfinite (results.value[GW_RESULT_FORWARD_LIMIT]));
  g_assert_cmpuint (results.notes & (GW_NOTE_NO_TRIM_SURFACE | GW_NOTE_SWEPT), ==,
                    GW_NOTE_NO_TRIM_SURFACE | GW_NOTE_SWEPT);
  g_assert_cmpfloat (results.value[GW_RESULT_TAIL_VOLUME], ==, 0.0);
  g_assert_cmpfloat (results.stall.trim_load, ==, 0.0);
  gw_results_clear (&results);

  /* A glider without any control: a stall, but no forward limit. */
  craft_init (&craft);
  for (int i = 0; i < N_SURFACES; i++)
    craft.surfaces[i].n_controls = 0;
  evaluate (&craft, &results);
  g_assert_true (isfinite (results.value[GW_RESULT_STALL_SPEED]));
  g_assert_true (isnan (results.value[GW_RESULT_FORWARD_LIMIT]));
  gw_results_clear (&results);
}

/* Lighter, hotter, higher: density altitude and speed follow. */
static void
test_day (void)
{
  static Craft craft;
  double       cool;

  craft_init (&craft);
  cool = value_of (&craft, GW_RESULT_STALL_SPEED);
  craft.aircraft.day = (GwDay){ 1500.0, 308.15, NAN, 0.3 };
  g_assert_cmpfloat (value_of (&craft, GW_RESULT_STALL_SPEED), >, 1.1 * cool);
  g_assert_cmpfloat (value_of (&craft, GW_RESULT_DENSITY_ALTITUDE), >, 2400.0);
}

static void
check_error (Craft   *craft,
             GwStatus status)
{
  GwResults results;

  g_assert_cmpint (gw_evaluate (&craft->aircraft, NULL, &results), ==, status);
  g_assert_true (isnan (results.value[GW_RESULT_NEUTRAL_POINT]));
  gw_results_clear (&results);
  gw_results_clear (&results);
}

static void
test_errors (void)
{
  static Craft craft;

  craft_init (&craft);
  craft.aircraft.day.humidity = 2.0;
  check_error (&craft, GW_EINVAL);

  craft_init (&craft);
  craft.surfaces[MAIN_WING].role = GW_ROLE_TAILPLANE;
  check_error (&craft, GW_EDOM);

  craft_init (&craft);
  craft.stations[TAIL][0].chord = -0.1;
  check_error (&craft, GW_EINVAL);

  craft_init (&craft);
  craft.items[0].mass = NAN;
  check_error (&craft, GW_EINVAL);

  craft_init (&craft);
  craft.wing_section.n_rows = 0;
  check_error (&craft, GW_EINVAL);

  /* Nothing that weighs anything. */
  craft_init (&craft);
  craft.build.mass_factor = craft.body.mass_factor = 0.0;
  craft.build.folded.glue_linear = 0.0;
  craft.items[0].mass = craft.items[1].mass = 0.0;
  for (int i = 0; i < N_SURFACES; i++)
    craft.controls[i].linkage_mass = 0.0;
  check_error (&craft, GW_EDOM);
}

static gpointer
evaluate_often (gpointer data)
{
  Craft *craft = data;
  double sum = 0.0;

  for (int i = 0; i < 50; i++)
    sum += value_of (craft, GW_RESULT_STALL_SPEED);
  craft->items[0].lead_slack = sum; /* read by the test, not by the engine: no lead */
  return NULL;
}

/* Nothing is kept between calls: two at a time give what one gives. */
static void
test_threads (void)
{
  static Craft craft[2];
  GThread     *threads[2];
  double       alone[2];

  for (int i = 0; i < 2; i++)
    {
      craft_init (&craft[i]);
      craft[i].items[1].mass = 0.3 + 0.4 * i;
      alone[i] = value_of (&craft[i], GW_RESULT_STALL_SPEED);
    }
  for (int i = 0; i < 2; i++)
    threads[i] = g_thread_new ("evaluate", evaluate_often, &craft[i]);
  for (int i = 0; i < 2; i++)
    g_thread_join (threads[i]);
  for (int i = 0; i < 2; i++)
    assert_close (craft[i].items[0].lead_slack, 50.0 * alone[i], 1e-12);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/engine/evaluate/values", test_values);
  g_test_add_func ("/engine/evaluate/curve", test_curve);
  g_test_add_func ("/engine/evaluate/slide", test_slide);
  g_test_add_func ("/engine/evaluate/ballast", test_ballast);
  g_test_add_func ("/engine/evaluate/notes", test_notes);
  g_test_add_func ("/engine/evaluate/neutral-point", test_neutral_point);
  g_test_add_func ("/engine/evaluate/heavier-is-faster", test_heavier_is_faster);
  g_test_add_func ("/engine/evaluate/layouts", test_layouts);
  g_test_add_func ("/engine/evaluate/day", test_day);
  g_test_add_func ("/engine/evaluate/errors", test_errors);
  g_test_add_func ("/engine/evaluate/threads", test_threads);

  return g_test_run ();
}
