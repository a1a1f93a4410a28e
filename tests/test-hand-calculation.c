/* test-hand-calculation.c - one option of the demo, worked out as on paper
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

/* The reed-bed aeroplane with its folded wing. The numbers of the study and of the catalogue
 * are written out again, and all is done anew by plain means: a table of masses and
 * Simpson's rule along each panel (hand-masses.h), Glauert's series and elimination
 * (hand-lift.h), and here the air, the balance of moments and the stall by trial. Nothing
 * of the engine is called but for the results to compare with, all within 0.1 %. */

#include <gio/gio.h>
#include <math.h>

#include "hand-lift.h"
#include "hand-masses.h"
#include "study/gw-catalogue.h"
#include "study/gw-edit.h"
#include "study/gw-evaluation.h"
#include "study/gw-record-json.h"

/* ---- Air: 31 C, 120 m up, 1012 hPa at sea level, 45 % humidity ---- */

#define KELVIN (31.0 + 273.15)

/* Two ideal gases, dry air of 28.9655 and water of 18.0153 g/mol; saturation pressure by
 * the Magnus formula with the constants of the WMO guide to instruments, No. 8 (from
 * memory). That leaves out compressibility, 0.03 % here. */
static double
air_density (void)
{
  const double pressure = 101200.0 * pow (1.0 - 0.0065 * 120.0 / 288.15, 5.2559);
  const double vapour = 0.45 * 611.2 * exp (17.62 * 31.0 / (243.12 + 31.0));

  return ((pressure - vapour) * 0.0289655 + vapour * 0.0180153) / (8.314463 * KELVIN);
}

/* Sutherland's law with the constants of ISO 2533. */
static double
air_viscosity (void)
{
  return 1.458e-6 * pow (KELVIN, 1.5) / (KELVIN + 110.4);
}

/* ---- Wing and tailplane ---- */

static const Plan wing_plan = {
  .n = 3,
  .root_x = 0.262,
  .root_z = 0.058,
  .y = { 0.0, 0.5, 0.9 },
  .edge = { 0.0, 0.0, 0.012 },
  .z = { 0.0, 0.013, 0.041 },
  .chord = { 0.245, 0.245, 0.215 },
  .twist = { 2.0 * DEGREE, 2.0 * DEGREE, 0.5 * DEGREE }, /* incidence and washout */
};

static const Plan tail_plan = {
  .n = 2,
  .root_x = 1.012,
  .root_z = 0.034,
  .y = { 0.0, 0.265 },
  .edge = { 0.0, 0.020 },
  .chord = { 0.145, 0.120 },
};

#define TAIL_EFFICIENCY 0.9

/* Greatest lift of the folded section: a straight line in log Re from row to row. */
static double
greatest_lift (double re)
{
  static const double row[][2] = {
    { 25e3, 0.84 },
    { 40e3, 0.90 },
    { 60e3, 0.95 },
    { 80e3, 0.99 },
    { 120e3, 1.03 },
    { 200e3, 1.07 },
    { 400e3, 1.11 },
    { 1e6, 1.15 },
  };
  guint i = 1;

  while (re > row[i][0])
    i++;
  return row[i - 1][1] + (row[i][1] - row[i - 1][1]) *
                           log (re / row[i - 1][0]) / log (row[i][0] / row[i - 1][0]);
}

/* Thin-aerofoil theory for a mean line of two straight parts: half the height of the folded
 * section, 1.5 % at the nose, 5 % at the fold at 30 %, nothing at the tail. */
static Line
wing_line (void)
{
  const double fore = (0.05 - 0.015) / 0.3, aft = -0.05 / 0.7;
  const double fold = acos (1.0 - 2.0 * 0.3);
  const double alpha_zero = (fore * (fold - sin (fold)) + aft * (G_PI - fold + sin (fold))) / G_PI;
  const double a1 = 2.0 / G_PI * (fore - aft) * sin (fold);
  const double a2 = 2.0 / G_PI * (fore - aft) * sin (2.0 * fold) / 2.0;

  return line_of (&wing_plan, alpha_zero, -G_PI / 4.0 * (a1 - a2));
}

/* d epsilon / d alpha, Datcom 4.4.1: 4.44 (K_A K_lambda K_H)^1.19; the quarter-chord line is
 * all but straight, its cosine 1. */
static double
downwash_of (const Line *wing,
             const Line *tail)
{
  const double a = wing->aspect, b = wing->span;
  const double ka = 1.0 / a - 1.0 / (1.0 + pow (a, 1.7));
  const double kl = (10.0 - 3.0 * 215.0 / 245.0) / 7.0;
  const double kh = (1.0 - fabs (tail->z - wing->z) / b) / cbrt (2.0 * (tail->x - wing->x) / b);

  return 4.44 * pow (ka * kl * kh, 1.19);
}

/* ---- Bodies: moment over dynamic pressure is still x a0 + turned x (alpha - a0) ---- */

/* Square of the width: a boom of 12 mm, and the pod. */
static double
width_squared (double x)
{
  double sum = x > 0.470 && x < 1.172 ? 0.012 * 0.012 : 0.0;

  for (int k = 0; k < 3; k++)
    if (x > pod[k][0] / 1e3 && x <= pod[k + 1][0] / 1e3)
      {
        const double t = (x * 1e3 - pod[k][0]) / (pod[k + 1][0] - pod[k][0]);

        sum += pow ((pod[k][2] + t * (pod[k + 1][2] - pod[k][2])) / 1e3, 2.0);
      }
  return sum;
}

/* How much the flow at @x turns with the body angle: more ahead of the wing, nothing
 * alongside, and behind it ever more, up to what the downwash leaves at the tail. */
static double
flow_turn (const Line *wing,
           double      tail_x,
           double      downwash,
           double      x)
{
  const double nose = 0.262, chord = 0.245, end = nose + chord;

  if (x < nose)
    return 1.0 + wing->slope * chord / (4.0 * G_PI * (nose + chord / 4.0 - x));
  return x > end ? (1.0 - downwash) * (x - end) / (tail_x - end) : 0.0;
}

/* ---- The whole aircraft ---- */

typedef struct
{
  Line   wing, tail;
  double downwash;
  double still, turned;
  double density;
} Aircraft;

static Aircraft
aircraft_of_demo (void)
{
  const double step = 2e-4;
  Aircraft     a = { .wing = wing_line (), .density = air_density () };

  a.tail = line_of (&tail_plan, 0.0, 0.0);
  a.downwash = downwash_of (&a.wing, &a.tail);
  for (double x = 0.058 + step / 2.0; x < 1.172; x += step)
    {
      const double slice = G_PI / 2.0 * width_squared (x) * step;

      a.still += slice;
      a.turned += slice * flow_turn (&a.wing, a.tail.x, a.downwash, x);
    }
  return a;
}

/* Body angle at which the first strip reaches the greatest lift of its section. */
static double
stall_angle (const Aircraft *a,
             double          speed)
{
  const Line *wing = &a->wing;
  double      least = G_PI;

  for (int i = 0; i < STRIPS; i++)
    {
      const double chord = plan_chord (&wing_plan, strip_y (wing, i));
      const double limit = greatest_lift (a->density * speed * chord / air_viscosity ());
      const double level = line_load (wing, wing->level, strip_angle (i));
      const double unit = line_load (wing, wing->unit, strip_angle (i));

      least = fmin (least, (limit * chord - level) / unit);
    }
  return least;
}

/* Lift of the wing at the stall and load of the tail, both over dynamic pressure [m2], the
 * tail loaded so that nothing turns about the balance point. Moments nose up. */
static void
loads_at (const Aircraft *a,
          double          speed,
          double          balance,
          double         *lift,
          double         *tail)
{
  const Line  *wing = &a->wing;
  const double alpha = stall_angle (a, speed);
  const double zero = -wing->cl_level / wing->slope;
  double       moment;

  *lift = wing->area * (wing->cl_level + wing->slope * alpha);
  moment = *lift * (balance - wing->x) + wing->area * wing->mean_chord * wing->cm_zero +
           a->still * zero + a->turned * (alpha - zero);
  *tail = moment / (a->tail.x - balance);
  /* Far from what the tail can carry, so it sets no limit. */
  g_assert_cmpfloat (fabs (*tail), <, 0.3 * TAIL_EFFICIENCY * a->tail.area);
}

/* By trial: each speed gives a Reynolds number, that a lift, and that a better speed. */
static double
stall_speed (const Aircraft *a,
             double          weight,
             double          balance,
             double         *tail_load)
{
  double speed = 8.0;

  for (int i = 0; i < 12; i++)
    {
      double lift, tail, pressure;

      loads_at (a, speed, balance, &lift, &tail);
      pressure = weight / (lift + tail);
      speed = sqrt (2.0 * pressure / a->density);
      *tail_load = pressure * tail;
    }
  return speed;
}

/* ---- The comparison ---- */

/* Within 0.1 % of @whole. */
static void
compare (const char *what,
         double      engine,
         double      by_hand,
         double      whole)
{
  g_test_message ("%s: by hand %.6f, engine %.6f", what, by_hand, engine);
  g_assert_cmpfloat_with_epsilon (engine, by_hand, 1e-3 * whole);
}

/* What is computed or tabled for a section of the catalogue is put aside for rows of its own:
 * greatest lift alone, all else by theory. */
static GwStudy *
with_rows (GwStudy    *study,
           const char *id,
           const char *rows)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *json = g_strdelimit (g_strdup (rows), "'", '"');
  g_autoptr (JsonNode) section = NULL;
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;
  GwStudy *with;

  gw_record_write (gw_list_find (gw_catalogue_list ("sections"), id), text, 0);
  section = json_from_string (text->str, &error);
  g_assert_no_error (error);
  json_object_set_member (json_node_get_object (section), "rows", json_from_string (json, NULL));
  with = gw_edit_insert (study, "sections", -1, section, &path, &error);
  g_assert_no_error (error);
  return with;
}

/* As in greatest_lift(). */
static const char wing_rows[] =
  "[ { 're': 25e3, 'cl_max': 0.84 }, { 're': 40e3, 'cl_max': 0.90 },"
  "  { 're': 60e3, 'cl_max': 0.95 }, { 're': 80e3, 'cl_max': 0.99 },"
  "  { 're': 120e3, 'cl_max': 1.03 }, { 're': 200e3, 'cl_max': 1.07 },"
  "  { 're': 400e3, 'cl_max': 1.11 }, { 're': 1e6, 'cl_max': 1.15 } ]";
static const char tail_rows[] = "[ { 're': 1e5, 'cl_max': 0.7 } ]"; /* far from reached */

static GwEvaluation *
evaluate_demo (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "demo",
                                                 "reed-bed.gramwright", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) demo = gw_study_load (file, NULL, &error);
  g_autoptr (GwStudy) study = NULL, with_wing = NULL;
  GwEvaluation *evaluation;

  g_assert_no_error (error);
  with_wing = with_rows (demo, "folded-10", wing_rows);
  study = with_rows (with_wing, "flat-plate-4", tail_rows);
  evaluation = gw_evaluation_new (study, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpstr (gw_evaluation_outcome (evaluation, 0)->id, ==, "folded");
  return evaluation;
}

static void
test_mass_and_balance (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo ();
  const double *value = gw_evaluation_outcome (evaluation, 0)->results.value;
  const double  wing = wing_masses ().mass / 1e3;
  const Sum     all = all_masses ();
  const double  x = all.moment / all.mass / 1e3;

  compare ("wing mass [kg]", value[GW_RESULT_WING_MASS], wing, wing);
  compare ("mass [kg]", value[GW_RESULT_MASS], all.mass / 1e3, all.mass / 1e3);
  compare ("balance point [m]", value[GW_RESULT_BALANCE_X], x, x);
  compare ("behind the root [m]", value[GW_RESULT_BALANCE_ROOT], x - 0.262, x - 0.262);
}

/* The load of the tail is a small difference of great moments: to 0.1 % of what balances the
 * weight at an arm of the mean chord. */
static void
test_stall (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo ();
  const GwResults *results = &gw_evaluation_outcome (evaluation, 0)->results;
  const Aircraft   a = aircraft_of_demo ();
  const Sum        all = all_masses ();
  const double     weight = all.mass / 1e3 * 9.80665, balance = all.moment / all.mass / 1e3;
  const double     whole = weight * a.wing.mean_chord / (a.tail.x - balance);
  double           load;
  const double     speed = stall_speed (&a, weight, balance, &load);

  compare ("air [kg/m3]", results->value[GW_RESULT_DENSITY], a.density, a.density);
  compare ("stall speed [m/s]", results->value[GW_RESULT_STALL_SPEED], speed, speed);
  compare ("tail load [N]", results->stall.trim_load, load, whole);
}

/* In trim the tail of this option carries next to nothing at the stall. With the balance point
 * 30 mm further forward it presses down with 4 % of the weight. */
static void
test_stall_nose_heavy (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo ();
  const GwOutcome *outcome = gw_evaluation_outcome (evaluation, 0);
  const Aircraft   a = aircraft_of_demo ();
  const Sum        all = all_masses ();
  const double     mass = all.mass / 1e3, balance = all.moment / all.mass / 1e3 - 0.030;
  double           load;
  const double     speed = stall_speed (&a, mass * 9.80665, balance, &load);
  GwStall          stall;

  g_assert_cmpint (gw_stall_of (&outcome->assembly->aircraft, &outcome->results.geometry,
                                &outcome->results.air, mass, balance, &stall),
                   ==, GW_OK);
  g_assert_cmpfloat (load, <, -0.03 * mass * 9.80665);
  compare ("stall speed [m/s]", stall.speed, speed, speed);
  compare ("tail load [N]", stall.trim_load, load, fabs (load));
}

/* The static margin, a difference of two places, to 0.1 % of the mean chord. */
static void
test_stability (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo ();
  const double  *value = gw_evaluation_outcome (evaluation, 0)->results.value;
  const Aircraft a = aircraft_of_demo ();
  const Sum      all = all_masses ();
  const double   area = a.wing.area, chord = a.wing.mean_chord;
  const double   wing = area * a.wing.slope;
  const double   tail = TAIL_EFFICIENCY * a.tail.area * a.tail.slope * (1.0 - a.downwash);
  const double   x = (wing * a.wing.x + tail * a.tail.x - a.turned) / (wing + tail);
  const double   slope = (wing + tail) / area;
  const double   margin = (x - all.moment / all.mass / 1e3) / chord;

  compare ("wing area [m2]", value[GW_RESULT_WING_AREA], area, area);
  compare ("mean chord [m]", value[GW_RESULT_MEAN_CHORD], chord, chord);
  compare ("lift slope [1/rad]", value[GW_RESULT_LIFT_SLOPE], slope, slope);
  compare ("neutral point [m]", value[GW_RESULT_NEUTRAL_POINT], x, x);
  compare ("static margin", value[GW_RESULT_STATIC_MARGIN], margin, 1.0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/hand-calculation/mass-and-balance", test_mass_and_balance);
  g_test_add_func ("/study/hand-calculation/stall", test_stall);
  g_test_add_func ("/study/hand-calculation/stall-nose-heavy", test_stall_nose_heavy);
  g_test_add_func ("/study/hand-calculation/stability", test_stability);

  return g_test_run ();
}
