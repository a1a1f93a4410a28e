/* test-fresh.c - everything that can be added, added to everything
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "demos.h"
#include "sample-study.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-evaluation.h"
#include "study/gw-fresh.h"

static GwStudy *
add (const GwStudy *study,
     guint          option,
     const char    *what,
     char         **path)
{
  g_autoptr (GError) error = NULL;
  GwStudy *edited = gw_fresh_add (study, option, what, path, &error);

  g_assert_no_error (error);
  g_assert_nonnull (edited);
  return edited;
}

static GwEvaluation *
evaluate (GwStudy *study)
{
  g_autoptr (GError) error = NULL;
  GwEvaluation *evaluation = gw_evaluation_quick (study, NULL, &error);

  g_assert_no_error (error);
  return evaluation;
}

/* What an edit leaves can be saved and read again, without a hint. */
static void
assert_saves (const GwStudy *study)
{
  g_autofree char *text = gw_study_text (study);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) back = gw_study_parse (text, strlen (text), problems, &error);

  g_assert_no_error (error);
  g_assert_true (gw_record_equal (&back->record, &study->record));
  for (guint i = 0; i < problems->len; i++)
    g_test_message ("%s", ((GwProblem *) g_ptr_array_index (problems, i))->message);
  g_assert_cmpuint (problems->len, ==, 0);
}

/* Ballast has no answer where the balance point comes to lie on its other side. */
static gboolean
may_end (GwResultId id)
{
  return id == GW_RESULT_BALLAST;
}

static void
assert_as_finite (const GwEvaluation *before,
                  const GwEvaluation *after,
                  const char         *what)
{
  for (guint i = 0; i < before->outcomes->len; i++)
    for (int id = 0; id < GW_N_RESULTS; id++)
      if (!may_end ((GwResultId) id) &&
          isfinite (gw_evaluation_outcome (before, i)->results.value[id]) &&
          !isfinite (gw_evaluation_outcome (after, i)->results.value[id]))
        g_error ("%s: result %d of option %u has no answer any more", what, id, i);
}

static void
assert_added (GwStudy           *study,
              GwStudy           *edited,
              const GwFreshKind *kind,
              const char        *path)
{
  const GwField   *field = gw_record_type_field (study->record.type, kind->list);
  const GPtrArray *old = *(GPtrArray **) gw_record_at (&study->record, field);
  const GPtrArray *list = *(GPtrArray **) gw_record_at (&edited->record, field);

  g_assert_cmpuint (list->len, ==, old->len + 1);
  g_assert_true (g_str_has_prefix (path, kind->list));
  g_assert_nonnull (gw_edit_record (edited, path));
  g_assert_null (*path == '\0' ? NULL : strchr (strchr (path, '/') + 1, '/'));
}

/* Every kind to every option, three times over: the third must find its place as well. */
static void
test_demo (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);
  g_autofree char *text = gw_study_text (study);
  g_autoptr (GwEvaluation) before = evaluate (study);
  const GwFreshKind *kind;

  for (guint k = 0; (kind = gw_fresh_kind (k)) != NULL; k++)
    {
      g_autoptr (GwStudy) at = gw_study_copy (study);

      for (guint n = 0; n < 3; n++)
        {
          g_autofree char *path = NULL, *now = NULL;
          g_autoptr (GwStudy) edited = add (at, n % study->options->len, kind->what, &path);
          g_autoptr (GwEvaluation) after = evaluate (edited);

          assert_added (at, edited, kind, path);
          assert_saves (edited);
          if (!g_str_equal (kind->what, "option"))
            assert_as_finite (before, after, path);
          gw_study_unref (at);
          at = g_steal_pointer (&edited);
          now = gw_study_text (study);
          g_assert_cmpstr (now, ==, text);
        }
    }
}

/* One of each, one after another. */
static void
test_all (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);
  g_autoptr (GwEvaluation) before = evaluate (study);
  g_autoptr (GwEvaluation) after = NULL;
  const GwFreshKind *kind;

  for (guint k = 1; (kind = gw_fresh_kind (k)) != NULL; k++)
    {
      g_autofree char *path = NULL;
      GwStudy         *edited = add (study, 0, kind->what, &path);

      gw_study_unref (study);
      study = edited;
    }
  after = evaluate (study);
  assert_as_finite (before, after, name);
  assert_saves (study);
}

/* A wing alone, of a mass that is known: nothing to take after. */
static void
test_bare (void)
{
  static const char text[] =
    "{\"format\": 1, \"options\": [{\"id\": \"a\"}], \"surfaces\": [{\"id\": \"wing\", "
    "\"mass_g\": 200, \"stations\": [{\"chord_mm\": 200, \"section\": \"naca-2412\"}, "
    "{\"y_mm\": 500, \"chord_mm\": 160}]}]}";
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_parse (text, strlen (text), NULL, &error);
  g_autoptr (GwEvaluation) before = NULL;
  const GwFreshKind *kind;

  g_assert_no_error (error);
  before = evaluate (study);
  for (guint k = 0; (kind = gw_fresh_kind (k)) != NULL; k++)
    {
      g_autofree char *path = NULL;
      g_autoptr (GwStudy) edited = add (study, 0, kind->what, &path);
      g_autoptr (GwEvaluation) after = evaluate (edited);

      assert_as_finite (before, after, path);
      assert_saves (edited);
    }
}

static double
result (const GwEvaluation *evaluation,
        GwResultId          id)
{
  return gw_evaluation_outcome (evaluation, 0)->results.value[id];
}

/* New equipment weighs its 20 g and, at the balance point, moves nothing. */
static void
test_equipment (void)
{
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwEvaluation) before = evaluate (study);
  g_autofree char *path = NULL;
  g_autoptr (GwStudy) edited = add (study, 0, "equipment", &path);
  g_autoptr (GwEvaluation) after = evaluate (edited);
  const GwStudyItem *item = (const GwStudyItem *) gw_edit_record (edited, path);

  g_assert_cmpint (item->mass_g.origin, ==, GW_ORIGIN_GUESSED);
  g_assert_true (gw_number_is_uncertain (&item->mass_g));
  g_assert_cmpfloat_with_epsilon (
    result (after, GW_RESULT_MASS) - result (before, GW_RESULT_MASS), 0.020, 1e-12);
  /* It stands on a whole millimetre, off by 0.5 at most, times 20 g over a kilogram and more. */
  g_assert_cmpfloat_with_epsilon (result (after, GW_RESULT_BALANCE_X),
                                  result (before, GW_RESULT_BALANCE_X), 1e-5);
}

/* The first tail of an aircraft that has none gets the volume it is meant to have. */
static void
test_tail_volume (void)
{
  g_autoptr (GwStudy) study = demo_load ("tailless");
  g_autofree char *tail = NULL, *fin = NULL;
  g_autoptr (GwStudy) with_tail = add (study, 0, "tailplane", &tail);
  g_autoptr (GwStudy) with_fin = add (with_tail, 0, "fin", &fin);
  g_autoptr (GwEvaluation) before = evaluate (study);
  g_autoptr (GwEvaluation) after = evaluate (with_fin);

  g_assert_cmpfloat (result (before, GW_RESULT_TAIL_VOLUME), ==, 0.0);
  /* The arm is measured to the aerodynamic centres, which the sweep moves by up to a tenth. */
  g_assert_cmpfloat_with_epsilon (result (after, GW_RESULT_TAIL_VOLUME), 0.5, 0.06);
  g_assert_cmpfloat_with_epsilon (
    result (after, GW_RESULT_FIN_VOLUME) - result (before, GW_RESULT_FIN_VOLUME), 0.04, 0.005);
  g_assert_cmpfloat (result (after, GW_RESULT_NEUTRAL_POINT), >,
                     result (before, GW_RESULT_NEUTRAL_POINT));
}

/* A second wing is built in each option as the first one is there. */
static void
test_second_wing (void)
{
  g_autoptr (GwStudy) study = demo_load ("awkward");
  g_autofree char *path = NULL;
  g_autoptr (GwStudy) edited = add (study, 1, "wing", &path);

  for (guint i = 0; i < study->options->len; i++)
    {
      const GwStudyOption *old = g_ptr_array_index (study->options, i);
      const GwStudyOption *now = g_ptr_array_index (edited->options, i);
      const GwStudyBuild  *build;

      g_assert_cmpuint (now->builds->len, ==, old->builds->len + 1);
      build = g_ptr_array_index (now->builds, now->builds->len - 1);
      g_assert_cmpstr (build->surface, ==, "second-wing");
      g_assert_cmpint (build->construction, ==,
                       ((GwStudyBuild *) g_ptr_array_index (old->builds, 0))->construction);
      g_assert_cmpfloat (build->last_panel.value, ==, 100.0);
    }
  g_assert_cmpuint (edited->builds->len, ==, study->builds->len);
}

static void
test_names (void)
{
  g_autoptr (GwStudy) study = demo_load ("small");
  g_autofree char *first = NULL, *second = NULL, *option = NULL;
  g_autoptr (GwStudy) once = add (study, 0, "equipment", &first);
  g_autoptr (GwStudy) twice = add (once, 0, "equipment", &second);
  g_autoptr (GwStudy) more = add (twice, 1, "option", &option);
  const GwStudyOption *copy;

  g_assert_cmpstr (first, ==, "equipment/equipment");
  g_assert_cmpstr (second, ==, "equipment/equipment-2");
  g_assert_cmpstr (((GwStudyItem *) gw_edit_record (more, second))->name, ==, "New equipment 2");
  g_assert_cmpstr (option, ==, "options/core-2");
  copy = (const GwStudyOption *) gw_edit_record (more, option);
  g_assert_cmpstr (copy->name, ==, "Core under packing tape, copy");
  g_assert_cmpstr (copy->short_name, ==, "Core 2");
}

/* A power unit takes the battery there is; without one it names none. */
static void
test_battery (void)
{
  g_autoptr (GwStudy) study = demo_load ("tailless");
  g_autoptr (GwStudy) bare = gw_study_copy (study);
  g_autofree char *with = NULL, *without = NULL;
  g_autoptr (GwStudy) fed = add (study, 0, "power", &with);
  g_autoptr (GwStudy) unfed = NULL;
  const char *const lists[] = { "powers", "equipment", "movable" };

  g_assert_cmpstr (((GwStudyPower *) gw_edit_record (fed, with))->battery, ==, "battery");
  for (guint i = 0; i < G_N_ELEMENTS (lists); i++)
    gw_record_reset_field (&bare->record, gw_record_type_field (bare->record.type, lists[i]));
  for (guint i = 0; i < bare->options->len; i++)
    gw_record_reset_field (g_ptr_array_index (bare->options, i),
                           gw_record_type_field (gw_study_option_type (), "changes"));
  unfed = add (bare, 0, "power", &without);
  g_assert_null (((GwStudyPower *) gw_edit_record (unfed, without))->battery);
}

static const GwStudyBuild *
build_at (const GwStudy *study,
          const char    *path)
{
  return (const GwStudyBuild *) gw_edit_record (study, path);
}

static GwStudy *
reconstruct (const GwStudy *study,
             guint          option,
             gboolean       is_only_here,
             const char    *build,
             const char    *word)
{
  g_autofree char *path = g_strconcat (build, "/construction", NULL);
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), word);
  g_autoptr (GError) error = NULL;
  GwStudy *edited;

  g_assert_true (gw_fresh_is_construction (study, path));
  edited = gw_fresh_construction (study, option, is_only_here, path, node, &error);
  g_assert_no_error (error);
  return edited;
}

/* Each build made in each way, and back. */
static void
try_constructions (GwStudy    *study,
                   guint       option,
                   gboolean    is_only_here,
                   const char *build)
{
  const GwField *field = gw_record_type_field (gw_study_build_type (), "construction");
  const int      present = build_at (study, build)->construction;

  for (int i = 0; field->choices[i].key != NULL; i++)
    {
      g_autoptr (GwStudy) edited =
        reconstruct (study, option, is_only_here, build, field->choices[i].key);
      g_autoptr (GwStudy) back =
        reconstruct (edited, option, is_only_here, build, field->choices[present].key);
      g_autoptr (GwEvaluation) first = evaluate (study), there = evaluate (edited),
                               again = evaluate (back);

      assert_saves (edited);
      g_assert_cmpfloat (gw_evaluation_outcome (there, option)->results.value[GW_RESULT_MASS], >,
                         0.0);
      /* The same sum in the same order. */
      g_assert_cmpfloat (gw_evaluation_outcome (again, option)->results.value[GW_RESULT_MASS], ==,
                         gw_evaluation_outcome (first, option)->results.value[GW_RESULT_MASS]);
    }
}

static void
test_constructions (gconstpointer name)
{
  g_autoptr (GwStudy) study = demo_load (name);

  for (guint i = 0; i < study->options->len; i++)
    {
      const GwStudyOption *option = g_ptr_array_index (study->options, i);

      for (guint k = 0; k < option->builds->len; k++)
        {
          g_autofree char *build = g_strdup_printf ("options/%s/builds/%u", option->id, k + 1);

          try_constructions (study, i, FALSE, build);
        }
      for (guint k = 0; k < study->builds->len; k++)
        {
          g_autofree char *build = g_strdup_printf ("builds/%u", k + 1);

          try_constructions (study, i, FALSE, build);
          try_constructions (study, i, TRUE, build);
        }
    }
}

/* What another build has is taken from it; else it is a common material. */
static void
test_construction_model (void)
{
  g_autoptr (GwStudy) demo = demo_load ("reed-bed");
  g_autoptr (GwStudy) plank =
    gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);
  g_autoptr (GwStudy) like = NULL, common = NULL;
  const GwStudyOption *folded = g_ptr_array_index (demo->options, 0);
  g_autofree char     *build = g_strdup_printf ("options/%s/builds/1", folded->id);
  const GwStudyBuild  *printed = NULL;

  for (guint i = 0; i < demo->options->len && printed == NULL; i++)
    {
      const GwStudyOption *option = g_ptr_array_index (demo->options, i);

      for (guint k = 0; k < option->builds->len && printed == NULL; k++)
        {
          const GwStudyBuild *other = g_ptr_array_index (option->builds, k);

          if (other->construction == GW_CONSTRUCTION_PRINTED_SHELL &&
              g_strcmp0 (other->surface, build_at (demo, build)->surface) == 0)
            printed = other;
        }
    }
  g_assert_nonnull (printed);
  like = reconstruct (demo, 0, FALSE, build, "printed-shell");
  g_assert_true (gw_record_equal (&build_at (like, build)->printed_shell->record,
                                  &printed->printed_shell->record));

  common = reconstruct (plank, 0, FALSE, "builds/1", "hot-wired-core");
  g_assert_cmpstr (build_at (common, "builds/1")->hot_wired_core->material, ==, "eps-19");
  /* The sheet is still there, should anybody come back to it. */
  g_assert_cmpstr (build_at (common, "builds/1")->folded_sheet->material, ==, "sheet");
}

static GwStudy *
refill (const GwStudy *study,
        guint          option,
        gboolean       is_only_here,
        const char    *build,
        const char    *material)
{
  g_autofree char *path = g_strconcat (build, "/printed_shell/material", NULL);
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), material);
  g_autoptr (GError) error = NULL;
  GwStudy *edited;

  g_assert_true (gw_fresh_is_filament (study, path));
  edited = gw_fresh_filament (study, option, is_only_here, path, node, &error);
  g_assert_no_error (error);
  assert_saves (edited);
  return edited;
}

static void
assert_flow (const GwStudyBuild *build,
             double              percent,
             GwOrigin            origin)
{
  g_assert_cmpfloat (build->printed_shell->flow_percent.value, ==, percent);
  g_assert_cmpint (build->printed_shell->flow_percent.origin, ==, (int) origin);
}

/* A flow that was weighed with one filament says nothing of another. */
static void
test_filament (void)
{
  const char *build = "options/foaming/builds/1";
  const guint foaming = 2, solid = 3; /* options of the demo */
  g_autoptr (GwStudy) demo = demo_load ("reed-bed");
  g_autoptr (GwStudy) pla = refill (demo, foaming, FALSE, build, "pla");
  g_autoptr (GwStudy) nylon = refill (demo, foaming, TRUE, build, "pa12");
  g_autoptr (GwStudy) asa = refill (nylon, foaming, FALSE, build, "asa-foaming");
  g_autoptr (GwStudy) same = refill (demo, foaming, FALSE, build, "pla-foaming");
  g_autoptr (GwStudy) as_weighed =
    refill (demo, solid, FALSE, "options/solid/builds/1", "pla-foaming");
  g_autoptr (GwEvaluation) evaluation = evaluate (pla);
  const GwOutcome *light = gw_evaluation_outcome (evaluation, foaming);
  const GwOutcome *heavy = gw_evaluation_outcome (evaluation, solid);

  assert_flow (build_at (demo, build), 48.0, GW_ORIGIN_WEIGHED);
  assert_flow (build_at (pla, build), 100.0, GW_ORIGIN_GUESSED);
  assert_flow (build_at (nylon, build), 100.0, GW_ORIGIN_GUESSED);
  assert_flow (build_at (asa, build), 50.0, GW_ORIGIN_GUESSED);
  g_assert_cmpfloat (build_at (demo, build)->printed_shell->temperature_c.value, ==, 240.0);
  g_assert_true (isnan (build_at (nylon, build)->printed_shell->temperature_c.value));
  g_assert_true (gw_record_equal (&same->record, &demo->record));

  /* The study knows that filament from the other option. */
  assert_flow (build_at (as_weighed, "options/solid/builds/1"), 48.0, GW_ORIGIN_WEIGHED);

  /* They differ in what stands inside and in ballast: within a tenth, not twice as heavy. */
  g_assert_cmpfloat (fabs (light->results.value[GW_RESULT_MASS] /
                             heavy->results.value[GW_RESULT_MASS] -
                           1.0),
                     <, 0.1);
}

/* Meant for one option, it is one option's; what is common stays. */
static void
test_filament_here (void)
{
  g_autoptr (GwStudy) plank =
    gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);
  g_autoptr (GwStudy) printed = reconstruct (plank, 0, FALSE, "builds/1", "printed-shell");
  g_autoptr (GwStudy) edited = refill (printed, 1, TRUE, "builds/1", "petg");
  g_autoptr (GwStudy) back = refill (edited, 1, TRUE, "builds/1", "pla-foaming");
  g_autoptr (GwStudy) view = gw_edit_view (edited, 1), again = gw_edit_view (back, 1);

  assert_flow (build_at (printed, "builds/1"), 50.0, GW_ORIGIN_GUESSED);
  assert_flow (build_at (edited, "builds/1"), 50.0, GW_ORIGIN_GUESSED);
  assert_flow (build_at (view, "builds/1"), 100.0, GW_ORIGIN_GUESSED);
  assert_flow (build_at (again, "builds/1"), 50.0, GW_ORIGIN_GUESSED);
}

static GwStudy *
resize (const GwStudy *study,
        guint          option,
        gboolean       is_only_here,
        const char    *path,
        const char    *size)
{
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), size);
  g_autoptr (GError) error = NULL;
  GwStudy *edited;

  g_assert_true (gw_fresh_is_size (study, path));
  edited = gw_fresh_size (study, option, is_only_here, path, node, &error);
  g_assert_no_error (error);
  assert_saves (edited);
  return edited;
}

/* Its numbers come with it, its name too, and nothing else is touched. */
static void
test_battery_size (void)
{
  g_autoptr (GwStudy) demo = demo_load ("reed-bed");
  g_autoptr (GwStudy) small = resize (demo, 0, FALSE, "equipment/battery/size", "pack-3-1300");
  const GwStudyItem *before = (GwStudyItem *) gw_edit_record (demo, "equipment/battery");
  const GwStudyItem *after = (GwStudyItem *) gw_edit_record (small, "equipment/battery");
  g_autoptr (GwEvaluation) old = evaluate (demo);
  g_autoptr (GwEvaluation) new = evaluate (small);

  g_assert_cmpfloat (before->mass_g.value, ==, 178.0);
  g_assert_cmpfloat (after->mass_g.value, ==, 106.0);
  g_assert_cmpint (after->mass_g.origin, ==, GW_ORIGIN_CATALOGUE);
  g_assert_cmpfloat (after->length_mm.value, ==, 72.0);
  g_assert_cmpstr (after->name, ==, "Battery, 3 cells, 1300 mAh");
  g_assert_cmpfloat (after->x_mm.value, ==, before->x_mm.value);
  g_assert_cmpfloat (after->bay_from_mm.value, ==, before->bay_from_mm.value);
  for (guint i = 0; i < old->outcomes->len; i++)
    g_assert_cmpfloat_with_epsilon (
      gw_evaluation_outcome (old, i)->results.value[GW_RESULT_MASS] -
        gw_evaluation_outcome (new, i)->results.value[GW_RESULT_MASS],
      0.072, 1e-9);
}

/* For one option alone; a spar of an option, and a propeller whose name nobody gave. */
static void
test_sizes_here (void)
{
  g_autoptr (GwStudy) demo = demo_load ("reed-bed");
  g_autoptr (GwStudy) here = resize (demo, 1, TRUE, "equipment/battery/size", "pack-4-1300");
  g_autoptr (GwStudy) view = gw_edit_view (here, 1);
  g_autoptr (GwStudy) strip =
    resize (demo, 0, FALSE, "options/folded/spars/tube/size", "carbon-strip-6-1");
  g_autoptr (GwStudy) slow = resize (demo, 0, FALSE, "powers/motor/propeller", "slow-10x4-7");
  const GwStudySpar *spar =
    (GwStudySpar *) gw_edit_record (strip, "options/folded/spars/tube");
  const GwStudyPower *power = (GwStudyPower *) gw_edit_record (slow, "powers/motor");

  g_assert_cmpfloat (
    ((GwStudyItem *) gw_edit_record (here, "equipment/battery"))->mass_g.value, ==, 178.0);
  g_assert_cmpfloat (
    ((GwStudyItem *) gw_edit_record (view, "equipment/battery"))->mass_g.value, ==, 139.0);
  g_assert_cmpint (spar->shape, ==, GW_SPAR_STRIP);
  g_assert_cmpfloat (spar->width_mm.value, ==, 6.0);
  g_assert_cmpfloat (spar->height_mm.value, ==, 1.0);
  g_assert_cmpfloat (power->propeller_pitch_mm.value, ==, 119.0);
  g_assert_cmpfloat (power->propeller_mass_g.value, <, 20.0);
}

/* Equipment is offered its kind alone; a field of another sort nothing. */
static void
test_sizes_offered (void)
{
  g_autoptr (GwStudy) demo = demo_load ("reed-bed");
  const GwRecord *battery = gw_edit_record (demo, "equipment/battery");
  g_autoptr (GPtrArray) packs =
    gw_fresh_sizes (battery, gw_record_type_field (battery->type, "size"));
  g_autoptr (GPtrArray) none =
    gw_fresh_sizes (battery, gw_record_type_field (battery->type, "name"));

  g_assert_cmpuint (packs->len, >, 20);
  for (guint i = 0; i < packs->len; i++)
    g_assert_cmpint (((GwStudyUsualItem *) g_ptr_array_index (packs, i))->kind, ==,
                     GW_ITEM_BATTERY);
  g_assert_cmpuint (none->len, ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  demo_add_tests ("/study/fresh", "each", test_demo);
  demo_add_tests ("/study/fresh", "all", test_all);
  g_test_add_func ("/study/fresh/bare", test_bare);
  g_test_add_func ("/study/fresh/equipment", test_equipment);
  g_test_add_func ("/study/fresh/tail-volume", test_tail_volume);
  g_test_add_func ("/study/fresh/second-wing", test_second_wing);
  g_test_add_func ("/study/fresh/names", test_names);
  g_test_add_func ("/study/fresh/battery", test_battery);
  demo_add_tests ("/study/fresh", "constructions", test_constructions);
  g_test_add_func ("/study/fresh/construction-model", test_construction_model);
  g_test_add_func ("/study/fresh/filament", test_filament);
  g_test_add_func ("/study/fresh/filament-here", test_filament_here);
  g_test_add_func ("/study/fresh/battery-size", test_battery_size);
  g_test_add_func ("/study/fresh/sizes-here", test_sizes_here);
  g_test_add_func ("/study/fresh/sizes-offered", test_sizes_offered);

  return g_test_run ();
}
