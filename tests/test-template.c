/* test-template.c - starting shapes: in order, and good aeroplanes at every size they allow
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "study/gw-evaluation.h"
#include "study/gw-template.h"

#define N_STEPS 3 /* of a range: least, usual, most */

static double
step_of (const GwTemplateRange *range,
         guint                  i)
{
  const double steps[N_STEPS] = { range->least, range->usual, range->most };

  return steps[i];
}

static GwEvaluation *
evaluate (GwStudy *study)
{
  g_autoptr (GError) error = NULL;
  GwEvaluation *evaluation = gw_evaluation_quick (study, NULL, &error);

  g_assert_no_error (error);
  return evaluation;
}

static GwStudy *
make (const GwTemplate *shape,
      double            span,
      double            chord,
      double            mass)
{
  g_autoptr (GError) error = NULL;
  GwStudy *study = gw_template_make (shape, span, chord, mass, &error);

  g_assert_no_error (error);
  return study;
}

/* At the usual size but for factors. */
static GwStudy *
make_by (const GwTemplate *shape,
         double            span,
         double            chord,
         double            mass)
{
  const double usual = shape->span.usual, mean = gw_template_chords (shape, usual).usual;

  return make (shape, span * usual, chord * mean,
               mass * gw_template_masses (shape, usual, mean).usual);
}

static void
test_list (void)
{
  static const char *const ids[] = { "trainer", "sport", "glider", "flying-wing", "slow-flyer",
                                     "twin" };

  g_assert_cmpuint (gw_templates ()->len, ==, G_N_ELEMENTS (ids));
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      const GwTemplate *shape = g_ptr_array_index (gw_templates (), i);

      g_assert_cmpstr (shape->id, ==, ids[i]);
      g_assert_true (gw_template_find (ids[i]) == shape);
      g_assert_cmpuint (strlen (shape->about), >, 20);
    }
  g_assert_null (gw_template_find ("biplane"));
}

static void
check_range (const GwTemplateRange *range)
{
  g_assert_cmpfloat (range->least, >, 0.0);
  g_assert_cmpfloat (range->usual, >, range->least);
  g_assert_cmpfloat (range->most, >, range->usual);
}

/* What is not known is guessed and says how much it may be out by. */
static void
check_number (const char    *path,
              GwRecord      *record,
              const GwField *field,
              gpointer       data)
{
  const GwNumber *number;

  if (field->kind != GW_FIELD_NUMBER || !gw_record_has (record, field))
    return;

  number = gw_record_at (record, field);
  g_assert_cmpint (number->origin, !=, GW_ORIGIN_WEIGHED);
  if (g_str_has_suffix (field->key, "mass_g") && record->type != gw_study_targets_type () &&
      number->value > 0.0)
    {
      if (number->origin != GW_ORIGIN_GUESSED || !gw_number_is_uncertain (number))
        g_error ("%s is %g without a spread", path, number->value);
      g_assert_cmpfloat (number->low, >, 0.5 * number->value);
    }
}

static gboolean
has_kind (const GwStudy *study,
          GwControlKind  kind)
{
  for (guint i = 0; i < study->surfaces->len; i++)
    {
      const GwStudySurface *surface = g_ptr_array_index (study->surfaces, i);

      for (guint k = 0; k < surface->controls->len; k++)
        if (((GwStudyControl *) g_ptr_array_index (surface->controls, k))->kind == (int) kind)
          return TRUE;
    }

  return FALSE;
}

static void
test_content (gconstpointer data)
{
  const GwTemplate *shape = data;
  GwStudy          *study = shape->study;
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autofree char *path =
    g_strdup_printf ("%s/../data/templates/%s.gramwright", g_test_get_dir (G_TEST_DIST), shape->id);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GwStudy) read = gw_study_load (file, problems, NULL);
  g_autofree char *text = gw_study_text (study), *contents = NULL;

  /* The file is what saving would make of it, without a hint. */
  g_assert_nonnull (read);
  g_assert_cmpuint (problems->len, ==, 0);
  g_assert_true (g_file_get_contents (path, &contents, NULL, NULL));
  g_assert_cmpstr (text, ==, contents);

  check_range (&shape->span);
  check_range (&shape->aspect_ratio);
  check_range (&shape->loading);
  g_assert_cmpstr (study->name, ==, shape->name);
  g_assert_nonnull (strstr (study->note, "nvented"));
  g_assert_cmpuint (study->options->len, ==, 2);
  g_assert_nonnull (gw_list_find (study->equipment, study->movable));
  g_assert_true (isnan (study->targets->balance_mm.value)); /* would not follow the size */
  g_assert_true (has_kind (study, GW_CONTROL_ELEVATOR) || has_kind (study, GW_CONTROL_ELEVON));
  gw_record_each (&study->record, "", check_number, NULL);
}

/* A number that an option changes would be left behind by the size; the battery is placed anew. */
static void
test_changes (gconstpointer data)
{
  const GwTemplate *shape = data;
  g_autofree char  *place = g_strdup_printf ("equipment/%s/x_mm", shape->study->movable);

  for (guint i = 0; i < shape->study->options->len; i++)
    {
      const GwStudyOption *option = g_ptr_array_index (shape->study->options, i);

      for (guint k = 0; k < option->changes->len; k++)
        {
          const GwChange *change = g_ptr_array_index (option->changes, k);

          if (!g_str_equal (change->path, place))
            g_assert_cmpuint (json_node_get_value_type (change->value), ==, G_TYPE_STRING);
        }
    }
}

typedef struct
{
  const char *id;
  double      tail[2], fin[2]; /* volumes */
  double      stall[2];        /* [m/s], at the usual size */
} Class;

/* Volumes: common practice, no source; a flying wing's fins work with its sweep. Stall
 * speeds: what pilots of that kind expect, likewise. */
static const Class classes[] = {
  { "trainer", { 0.5, 0.65 }, { 0.03, 0.05 }, { 6.5, 8.5 } },
  { "sport", { 0.5, 0.7 }, { 0.04, 0.065 }, { 8.0, 10.5 } },
  { "glider", { 0.4, 0.6 }, { 0.02, 0.03 }, { 5.5, 7.5 } },
  { "flying-wing", { 0.0, 0.0 }, { 0.015, 0.03 }, { 6.5, 9.0 } },
  { "slow-flyer", { 0.4, 0.6 }, { 0.03, 0.05 }, { 4.0, 5.5 } },
  { "twin", { 0.6, 0.8 }, { 0.04, 0.065 }, { 8.0, 10.0 } },
};

static const Class *
class_of (const GwTemplate *shape)
{
  for (guint i = 0; i < G_N_ELEMENTS (classes); i++)
    if (g_str_equal (classes[i].id, shape->id))
      return &classes[i];

  g_assert_not_reached ();
}

static void
assert_within (double       value,
               const double ends[2])
{
  g_assert_cmpfloat (value, >=, ends[0]);
  g_assert_cmpfloat (value, <=, ends[1]);
}

/* It balances by its battery alone, within its bay, and all its limits are kept. */
static void
check_outcome (const GwTemplate *shape,
               const GwOutcome  *outcome)
{
  const GwAircraft *aircraft = &outcome->assembly->aircraft;
  const double     *value = outcome->results.value;
  const GwItem     *item = &aircraft->items[aircraft->movable];
  const guint       amiss = GW_NOTE_UNSTABLE | GW_NOTE_BEHIND_AFT_LIMIT | GW_NOTE_AHEAD_OF_LIMIT |
                      GW_NOTE_LATERAL | GW_NOTE_BALLAST | GW_NOTE_TIP_FIRST | GW_NOTE_TAIL_LIMIT |
                      GW_NOTE_OUTSIDE_BAY;

  g_test_message ("%s: beyond the bay %g m", outcome->id, value[GW_RESULT_SLIDE_LEFT]);
  g_assert_cmphex (outcome->results.notes & amiss, ==, 0);
  g_assert_cmpfloat (value[GW_RESULT_STATIC_MARGIN], >=, 0.05);
  g_assert_cmpfloat (value[GW_RESULT_STATIC_MARGIN], <=, 0.15);
  g_assert_cmpfloat (item->at[0], >=, item->bay_from);
  g_assert_cmpfloat (item->at[0], <=, item->bay_to);
  /* Forward to the whole millimetre: what is left is less than one. */
  g_assert_cmpfloat (value[GW_RESULT_SLIDE], >=, -1e-9);
  g_assert_cmpfloat (value[GW_RESULT_SLIDE], <, 1e-3);
  assert_within (value[GW_RESULT_TAIL_VOLUME], class_of (shape)->tail);
  assert_within (value[GW_RESULT_FIN_VOLUME], class_of (shape)->fin);
}

static void
test_usual (gconstpointer data)
{
  const GwTemplate *shape = data;
  g_autoptr (GwStudy) study = make_by (shape, 1.0, 1.0, 1.0);
  g_autoptr (GwEvaluation) evaluation = evaluate (study);

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
      const double    *value = outcome->results.value;

      check_outcome (shape, outcome);
      assert_within (value[GW_RESULT_STALL_SPEED], class_of (shape)->stall);
      g_assert_cmphex (outcome->results.notes & (GW_NOTE_HEAVY | GW_NOTE_STALL_FAST), ==, 0);
      g_assert_cmpfloat (value[GW_RESULT_MASS], >, 0.8 * study->targets->mass_g.value / 1000.0);
      /* Nothing of it is off the tables of section data. */
      g_assert_cmphex (outcome->results.notes & GW_NOTE_RE_OUTSIDE, ==, 0);
    }
}

/* The study as it is in the file balances already. */
static void
test_as_filed (gconstpointer data)
{
  const GwTemplate *shape = data;
  g_autoptr (GwEvaluation) evaluation = evaluate (shape->study);

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    check_outcome (shape, gw_evaluation_outcome (evaluation, i));
}

static void
check_size (const GwTemplate *shape,
            double            span,
            double            chord,
            double            mass)
{
  g_autoptr (GwStudy) study = make (shape, span, chord, mass);
  g_autoptr (GwEvaluation) evaluation = evaluate (study);

  g_test_message ("span %g m, chord %g m, mass %g kg", span, chord, mass);
  g_assert_cmpfloat_with_epsilon (study->targets->mass_g.value, 1000.0 * mass, 0.1);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
      const double    *value = outcome->results.value;

      check_outcome (shape, outcome);
      /* Stations are rounded to 0.1 mm, chords as well. */
      g_assert_cmpfloat_with_epsilon (value[GW_RESULT_SPAN], span, 2e-4);
      g_assert_cmpfloat_with_epsilon (value[GW_RESULT_WING_AREA] / span, chord, 0.02 * chord);
      g_assert_cmpfloat (value[GW_RESULT_MASS] / mass, >, 0.7);
      g_assert_cmpfloat (value[GW_RESULT_MASS] / mass, <, 1.3);
      g_assert_cmpfloat (value[GW_RESULT_STALL_SPEED] /
                           outcome->assembly->aircraft.targets.stall_speed,
                         >, 0.7);
      g_assert_cmpfloat (value[GW_RESULT_STALL_SPEED] /
                           outcome->assembly->aircraft.targets.stall_speed,
                         <, 1.2);
    }
}

/* All corners, edges and middles of what it may be. */
static void
test_range (gconstpointer data)
{
  const GwTemplate *shape = data;

  for (guint i = 0; i < N_STEPS; i++)
    for (guint k = 0; k < N_STEPS; k++)
      for (guint l = 0; l < N_STEPS; l++)
        {
          const double          span = step_of (&shape->span, i);
          const GwTemplateRange chords = gw_template_chords (shape, span);
          const double          chord = step_of (&chords, k);
          const GwTemplateRange masses = gw_template_masses (shape, span, chord);

          check_size (shape, span, chord, step_of (&masses, l));
        }
}

static void
test_refused (gconstpointer data)
{
  const GwTemplate     *shape = data;
  const double          span = shape->span.usual;
  const GwTemplateRange chords = gw_template_chords (shape, span);
  const GwTemplateRange masses = gw_template_masses (shape, span, chords.usual);
  const double          sizes[][3] = {
             { 1.01 * shape->span.most, chords.usual, masses.usual },
             { span, 0.99 * chords.least, masses.usual },
             { span, 1.01 * chords.most, masses.usual },
             { span, chords.usual, 0.99 * masses.least },
             { span, chords.usual, 1.01 * masses.most },
             { (double) NAN, chords.usual, masses.usual },
             { span, (double) NAN, masses.usual },
             { span, chords.usual, (double) NAN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_null (gw_template_make (shape, sizes[i][0], sizes[i][1], sizes[i][2], &error));
      g_assert_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT);
      g_assert_nonnull (strstr (error->message, shape->name));
    }
}

static double
number_at (const GwStudy *study,
           const char    *path)
{
  const GwField *field;
  GwRecord      *record = gw_record_find ((GwRecord *) &study->record, path, &field);

  g_assert_nonnull (record);
  return ((GwNumber *) gw_record_at (record, field))->value;
}

/* Each law of scaling, with all three factors different. 0.06: half of the last digit, 0.1. */
static void
test_laws (void)
{
  const GwTemplate *shape = gw_template_find ("trainer");
  const double      s = 1.2, c = 1.1, m = 1.4;
  g_autoptr (GwStudy) study = make_by (shape, s, c, m);
  const struct
  {
    const char *path;
    double      factor;
  } laws[] = {
    { "surfaces/wing/stations/2/y_mm", s },
    { "surfaces/wing/stations/2/z_mm", s },
    { "surfaces/wing/stations/1/chord_mm", c },
    { "surfaces/wing/controls/aileron/to_mm", s },
    { "surfaces/wing/x_mm", sqrt (s * c) },
    { "surfaces/wing/stations/2/twist_deg", 1.0 },
    { "surfaces/tailplane/stations/1/chord_mm", pow (s, 0.25) * pow (c, 0.75) },
    { "surfaces/tailplane/stations/2/x_mm", pow (s, 0.25) * pow (c, 0.75) },
    { "surfaces/fin/stations/2/z_mm", pow (s, 0.75) * pow (c, 0.25) },
    { "bodies/fuselage/stations/2/width_mm", cbrt (m) },
    { "equipment/battery/length_mm", cbrt (m) },
    { "equipment/battery/mass_g", m },
    { "equipment/battery/bay_from_mm", sqrt (s * c) },
    { "powers/motor/mass_g", m },
    { "powers/motor/propeller_diameter_mm", sqrt (m) },
    { "legs/main/axle_z_mm", sqrt (m) },
    { "legs/main/wheel_diameter_mm", sqrt (m) },
    { "options/folded/spars/tube/width_mm", cbrt (m * s) },
    { "options/folded/spars/tube/to_mm", s },
    { "options/foaming/builds/1/printed_shell/line_width_mm", 1.0 },
    { "targets/mass_g", m },
    { "targets/stall_speed_m_s", sqrt (m / (s * c)) },
    { "targets/static_margin_percent", 1.0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (laws); i++)
    {
      const double was = number_at (shape->study, laws[i].path);

      g_test_message ("%s", laws[i].path);
      g_assert_cmpfloat_with_epsilon (number_at (study, laws[i].path), was * laws[i].factor, 0.06);
    }
}

/* What lies beside the wing stays at its fraction of the chord; a swept wing keeps the angle
 * of its quarter-chord line. */
static void
test_sweep (void)
{
  const GwTemplate *shape = gw_template_find ("flying-wing");
  const double      s = 1.25, c = 1.15;
  g_autoptr (GwStudy) study = make_by (shape, s, c, 1.7);
  const GwStudy *studies[2] = { shape->study, study };
  double         angle[2], fraction[2], bay[2];

  for (guint i = 0; i < 2; i++)
    {
      const double root = number_at (studies[i], "surfaces/wing/stations/1/chord_mm");
      const double tip = number_at (studies[i], "surfaces/wing/stations/2/chord_mm");
      const double aft = number_at (studies[i], "surfaces/wing/stations/2/x_mm");
      const double half = number_at (studies[i], "surfaces/wing/stations/2/y_mm");
      const double y = number_at (studies[i], "equipment/servo/y_mm");
      const double chord = root + (tip - root) * y / half;
      const double x = number_at (studies[i], "equipment/servo/x_mm") -
                       number_at (studies[i], "surfaces/wing/x_mm");

      angle[i] = (aft + 0.25 * (tip - root)) / half;
      fraction[i] = (x - aft * y / half) / chord;
      bay[i] = number_at (studies[i], "surfaces/fin/y_mm") / half;
    }

  /* 0.1 mm of rounding on some 100 mm. */
  g_assert_cmpfloat_with_epsilon (angle[1], angle[0], 1e-3);
  g_assert_cmpfloat_with_epsilon (fraction[1], fraction[0], 1e-3);
  g_assert_cmpfloat_with_epsilon (bay[1], bay[0], 1e-3);
}

/* The template itself is never touched. */
static void
test_kept (void)
{
  const GwTemplate *shape = gw_template_find ("twin");
  g_autofree char  *before = gw_study_text (shape->study), *after = NULL, *text = NULL;
  g_autoptr (GwStudy) study = make_by (shape, 1.1, 1.05, 1.25);
  g_autoptr (GwStudy) read = NULL;

  after = gw_study_text (shape->study);
  g_assert_cmpstr (after, ==, before);

  /* What is made can be saved and read again. */
  text = gw_study_text (study);
  read = gw_study_parse (text, strlen (text), NULL, NULL);
  g_assert_nonnull (read);
  g_assert_true (gw_record_equal (&read->record, &study->record));
}

int
main (int   argc,
      char *argv[])
{
  static const struct
  {
    const char   *name;
    GTestDataFunc test;
  } tests[] = {
    { "content", test_content },
    { "changes", test_changes },
    { "as-filed", test_as_filed },
    { "usual", test_usual },
    { "range", test_range },
    { "refused", test_refused },
  };

  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/template/list", test_list);
  for (guint i = 0; i < gw_templates ()->len; i++)
    for (guint k = 0; k < G_N_ELEMENTS (tests); k++)
      {
        const GwTemplate *shape = g_ptr_array_index (gw_templates (), i);
        g_autofree char  *path =
          g_strdup_printf ("/study/template/%s/%s", shape->id, tests[k].name);

        g_test_add_data_func (path, shape, tests[k].test);
      }
  g_test_add_func ("/study/template/laws", test_laws);
  g_test_add_func ("/study/template/sweep", test_sweep);
  g_test_add_func ("/study/template/kept", test_kept);
  return g_test_run ();
}
