/* test-object-table.c - the tables hold what the drawings show
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "demos.h"
#include "report/gw-object-table.h"
#include "sample-study.h"
#include "study/gw-edit.h"
#include "study/gw-result.h"

#define MINUS   "\342\210\222" /* U+2212 */
#define EN_DASH "\342\200\223" /* U+2013 */

static GwEvaluation *
evaluate (GwStudy *study)
{
  g_autoptr (GError) error = NULL;
  GwEvaluation *evaluation = gw_evaluation_new (study, NULL, &error);

  g_assert_no_error (error);
  return evaluation;
}

static GwEvaluation *
evaluate_demo (const char *name)
{
  g_autoptr (GwStudy) study = demo_load (name);

  return evaluate (study);
}

static GwEvaluation *
evaluate_sample (void)
{
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);

  return evaluate (study);
}

static GwObjectTable *
table_of (GwEvaluation *evaluation,
          guint         shown,
          GwTableKind   kind)
{
  return gw_object_table_new (evaluation, shown, kind, gw_units_standard ());
}

static const GwTableRow *
row_at (const GwObjectTable *table,
        guint                i)
{
  g_assert_cmpuint (i, <, table->rows->len);
  return g_ptr_array_index (table->rows, i);
}

static const GwTableRow *
find_row (const GwObjectTable *table,
          guint                column,
          const char          *text)
{
  for (guint i = 0; i < table->rows->len; i++)
    if (g_str_equal (row_at (table, i)->cells[column], text))
      return row_at (table, i);

  return NULL;
}

static guint
find_column (const GwObjectTable *table,
             const char          *title)
{
  for (guint i = 0; i < table->columns->len; i++)
    if (g_str_equal (((GwTableColumn *) g_ptr_array_index (table->columns, i))->title, title))
      return i;

  g_error ("there is no column %s", title);
}

/* Every cell is filled, every path leads somewhere, every table has rows. */
static void
test_whole (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo (name);

  for (guint kind = 0; kind < GW_N_TABLES; kind++)
    for (guint shown = 0; shown < evaluation->outcomes->len; shown++)
      {
        g_autoptr (GwObjectTable) table = table_of (evaluation, shown, (GwTableKind) kind);

        g_assert_cmpstr (gw_table_kind_label ((GwTableKind) kind), !=, "");
        g_assert_cmpuint (table->rows->len, >, 1);
        for (guint i = 0; i < table->rows->len; i++)
          {
            const GwTableRow *row = row_at (table, i);

            g_assert_cmpuint (g_strv_length (row->cells), ==, table->columns->len);
            if (row->path != NULL)
              g_assert_nonnull (gw_edit_record (evaluation->study, row->path));
            for (guint k = 0; k < table->columns->len; k++)
              {
                g_assert_null (strstr (row->cells[k], "nan"));
                g_assert_null (strstr (row->cells[k], "inf"));
              }
          }
      }
}

/* The things add up to the aircraft: masses, and masses times place. */
static void
test_things (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo (name);

  for (guint shown = 0; shown < evaluation->outcomes->len; shown++)
    {
      g_autoptr (GwObjectTable) table = table_of (evaluation, shown, GW_TABLE_THINGS);
      const double *value = gw_evaluation_outcome (evaluation, shown)->results.value;
      const guint   mass_column = find_column (table, "mass, g");
      const guint   x_column = find_column (table, "aft, mm");
      const guint   share_column = find_column (table, "share, %");
      double        mass = 0.0, moment = 0.0, share = 0.0;

      for (guint i = 0; i < table->rows->len; i++)
        {
          const GwTableRow *row = row_at (table, i);

          g_assert_nonnull (row->path);
          mass += row->keys[mass_column];
          share += row->keys[share_column];
          /* What weighs nothing has no centre. */
          if (row->keys[mass_column] > 0.0)
            moment += row->keys[mass_column] * row->keys[x_column];
          else
            g_assert_cmpstr (row->cells[x_column], ==, EN_DASH);
        }
      /* Sums of doubles in another order. */
      g_assert_cmpfloat_with_epsilon (mass, value[GW_RESULT_MASS], 1e-12);
      g_assert_cmpfloat_with_epsilon (share, 1.0, 1e-12);
      g_assert_cmpfloat_with_epsilon (moment / mass, value[GW_RESULT_BALANCE_X], 1e-12);
    }
}

static void
test_things_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwObjectTable) table = table_of (evaluation, 1, GW_TABLE_THINGS);
  const GwTableRow *battery = find_row (table, 1, "battery");

  g_assert_cmpuint (table->rows->len, ==, 2);
  g_assert_nonnull (battery);
  g_assert_cmpstr (battery->path, ==, "equipment/battery");
  g_assert_cmpstr (battery->cells[find_column (table, "mass, g")], ==, "180.0");
  g_assert_cmpstr (battery->cells[find_column (table, "aft, mm")], ==, "10"); /* as it has it */
  g_assert_cmpstr (battery->cells[find_column (table, "origin")], ==, "catalogue");
  g_assert_cmpstr (battery->cells[find_column (table, "weighed, %")], ==, "0");
  g_assert_cmpstr (row_at (table, 0)->path, ==, "surfaces/wing");
  g_assert_cmpstr (row_at (table, 0)->cells[find_column (table, "origin")], ==, "computed");
}

static void
test_stations_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwObjectTable) table = table_of (evaluation, 0, GW_TABLE_STATIONS);
  const GwTableRow *tip = row_at (table, 1);

  g_assert_cmpuint (table->rows->len, ==, 2);
  g_assert_cmpstr (tip->path, ==, "surfaces/wing/stations/2");
  g_assert_cmpstr (tip->cells[find_column (table, "leading edge, aft, mm")], ==, "100");
  g_assert_cmpstr (tip->cells[find_column (table, "out, mm")], ==, "600");
  g_assert_cmpstr (tip->cells[find_column (table, "chord, mm")], ==, "200");
  g_assert_cmpstr (tip->cells[find_column (table, "section")], ==, "flat");
}

static void
test_points_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwObjectTable) table = table_of (evaluation, 0, GW_TABLE_POINTS);
  const double     *value = gw_evaluation_outcome (evaluation, 0)->results.value;
  const GwTableRow *root = row_at (table, 0);
  const GwTableRow *balance = find_row (table, 0, "balance point from the datum");
  const GwTableRow *aft = find_row (table, 0, "aft limit from the datum");
  const GwTableRow *fore = find_row (table, 0, "balance point, item at the fore end");

  g_assert_cmpstr (root->cells[1], ==, "100.0");
  g_assert_cmpstr (root->cells[3], ==, "0.0");
  g_assert_cmpfloat_with_epsilon (balance->keys[1], value[GW_RESULT_BALANCE_X], 1e-12);
  g_assert_cmpfloat_with_epsilon (balance->keys[3], value[GW_RESULT_BALANCE_ROOT], 1e-12);
  g_assert_cmpfloat_with_epsilon (balance->keys[4], value[GW_RESULT_BALANCE_MAC], 1e-12);
  g_assert_cmpstr (fore->path, ==, "equipment/battery");
  g_assert_cmpstr (aft->path, ==, "targets");
  /* Nothing trims it, so there is no forward limit; no balance point is wanted. */
  g_assert_null (find_row (table, 0, "forward limit from the datum"));
  g_assert_null (find_row (table, 0, "wanted balance point"));
}

static void
test_stall_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwObjectTable) table = table_of (evaluation, 0, GW_TABLE_STALL);

  g_assert_cmpuint (table->rows->len, ==, GW_CURVE_N);
  g_assert_cmpuint (table->columns->len, ==, 5);
  for (guint i = 1; i < GW_CURVE_N; i++)
    for (guint k = 0; k < 2; k++)
      {
        g_assert_cmpfloat (row_at (table, i)->keys[0], >, row_at (table, i - 1)->keys[0]);
        g_assert_cmpfloat (row_at (table, i)->keys[1 + 2 * k], >,
                           row_at (table, i - 1)->keys[1 + 2 * k]);
        g_assert_cmpfloat (row_at (table, i)->keys[1 + 2 * k], ==,
                           gw_evaluation_outcome (evaluation, k)->results.curve[i]);
      }
}

/* The parts add up to the mass of each option. */
static void
test_masses (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo (name);
  g_autoptr (GwObjectTable) table = table_of (evaluation, 0, GW_TABLE_MASSES);

  g_assert_false (table->is_sortable);
  g_assert_cmpuint (table->columns->len, ==, 1 + evaluation->outcomes->len);
  for (guint k = 0; k < evaluation->outcomes->len; k++)
    {
      const double mass = gw_evaluation_outcome (evaluation, k)->results.value[GW_RESULT_MASS];
      double       sum = 0.0;

      for (guint i = 0; i + 1 < table->rows->len; i++)
        sum += row_at (table, i)->keys[1 + k];
      g_assert_cmpfloat_with_epsilon (sum, mass, 1e-12);
      g_assert_cmpfloat_with_epsilon (row_at (table, table->rows->len - 1)->keys[1 + k], mass,
                                      1e-12);
    }
}

/* The section that lets go first flies at the Reynolds number of the result, and its greatest lift
 * lies in its band. */
static void
test_sections (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo (name);
  g_autoptr (GwObjectTable) table = table_of (evaluation, 0, GW_TABLE_SECTIONS);
  const guint re = find_column (table, "Re at the stall");
  const guint lift = find_column (table, "greatest lift");

  for (guint k = 0; k < evaluation->outcomes->len; k++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, k);
      const double     wanted = outcome->results.value[GW_RESULT_STALL_RE];
      gboolean         is_there = isnan (wanted);

      for (guint i = 0; i < table->rows->len; i++)
        {
          const GwTableRow *row = row_at (table, i);

          is_there |= g_str_equal (row->cells[0], outcome->short_name) &&
                      fabs (row->keys[re] - wanted) < 1e-6 * wanted;
          if (isfinite (row->keys[re]))
            {
              g_assert_cmpfloat (row->keys[lift], >, 0.3);
              g_assert_cmpfloat (row->keys[lift], <, 2.5);
              g_assert_cmpfloat (row->keys[lift + 1], >, 0.0);
            }
        }
      g_assert_true (is_there);
    }
}

static void
test_summary_of_sample (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwObjectTable) table = table_of (evaluation, 0, GW_TABLE_SUMMARY);
  const GwTableRow *mass = find_row (table, 0, "all-up mass");
  const GwTableRow *area = find_row (table, 0, "wing area");
  const guint       thick = find_column (table, "thick");
  const guint       change = find_column (table, "thick, against the baseline");

  g_assert_nonnull (mass);
  g_assert_cmpstr (mass->cells[1], ==, "g");
  g_assert_cmpstr (mass->cells[find_column (table, "Thin sheet, limit")], ==, "kept");
  g_assert_true (g_str_has_prefix (mass->cells[change], "+"));
  g_assert_cmpfloat (mass->keys[thick], ==,
                     gw_evaluation_outcome (evaluation, 1)->results.value[GW_RESULT_MASS]);
  g_assert_cmpstr (area->cells[thick], ==, "0.240"); /* 1.2 m x 0.2 m */
  g_assert_cmpstr (area->cells[thick + 1], ==, EN_DASH);
  g_assert_null (find_row (table, 0, "forward limit from the datum"));
}

/* What is copied has as many fields in every line, and numbers that a program can read. */
static void
test_text (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo (name);

  for (guint kind = 0; kind < GW_N_TABLES; kind++)
    {
      g_autoptr (GwObjectTable) table = table_of (evaluation, 0, (GwTableKind) kind);
      g_autofree char *text = gw_object_table_text (table);
      g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

      g_assert_cmpuint (g_strv_length (lines), ==, table->rows->len + 2);
      g_assert_cmpstr (lines[table->rows->len + 1], ==, "");
      g_assert_null (strstr (text, MINUS "1"));
      for (guint i = 0; i <= table->rows->len; i++)
        {
          g_auto (GStrv) cells = g_strsplit (lines[i], "\t", -1);

          g_assert_cmpuint (g_strv_length (cells), ==, table->columns->len);
          for (guint k = 0; i > 0 && kind == GW_TABLE_THINGS && k < table->columns->len; k++)
            if (((GwTableColumn *) g_ptr_array_index (table->columns, k))->is_number)
              {
                char *end;

                g_ascii_strtod (cells[k], &end);
                g_assert_cmpstr (end, ==, "");
              }
        }
    }
}

static void
test_units (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_sample ();
  g_autoptr (GwObjectTable) table = NULL;
  GwUnits units = *gw_units_standard ();

  g_assert_true (gw_units_set (&units, GW_G, "oz"));
  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  table = gw_object_table_new (evaluation, 0, GW_TABLE_THINGS, &units);
  /* 180 g are 6.3493 oz, 40 mm are 1.5748 in; tenths of a gram, hundredths of an ounce. */
  g_assert_cmpstr (find_row (table, 1, "battery")->cells[find_column (table, "mass, oz")], ==,
                   "6.35");
  g_assert_cmpstr (find_row (table, 1, "battery")->cells[find_column (table, "aft, in")], ==,
                   "1.57");
}

/* The outline at the place where it balances, in words. */
static void
test_wanted_place (void)
{
  g_autoptr (GwEvaluation) evaluation = evaluate_demo ("reed-bed");

  for (guint shown = 0; shown < evaluation->outcomes->len; shown++)
    {
      const GwOutcome  *outcome = gw_evaluation_outcome (evaluation, shown);
      const GwAircraft *aircraft = &outcome->assembly->aircraft;
      const double     *value = outcome->results.value;
      const GwItem     *item = &aircraft->items[aircraft->movable];
      g_autofree char  *name = g_strdup_printf ("%s, to balance", item->name);
      g_autoptr (GwObjectTable) table = table_of (evaluation, shown, GW_TABLE_POINTS);
      const GwTableRow *row = find_row (table, 0, name);

      g_assert_nonnull (row);
      g_assert_cmpfloat (row->keys[1], ==,
                         item->at[0] + value[GW_RESULT_SLIDE] - value[GW_RESULT_SLIDE_LEFT]);
      g_assert_cmpfloat (row->keys[1], >=, item->bay_from);
      g_assert_cmpfloat (row->keys[1], <=, item->bay_to);
      g_assert_cmpstr (row->path, ==, "equipment/battery");
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/report/object-table/things", test_things_of_sample);
  g_test_add_func ("/report/object-table/stations", test_stations_of_sample);
  g_test_add_func ("/report/object-table/points", test_points_of_sample);
  g_test_add_func ("/report/object-table/wanted-place", test_wanted_place);
  g_test_add_func ("/report/object-table/stall", test_stall_of_sample);
  g_test_add_func ("/report/object-table/summary", test_summary_of_sample);
  g_test_add_func ("/report/object-table/units", test_units);
  demo_add_tests ("/report/object-table", "whole", test_whole);
  demo_add_tests ("/report/object-table", "things", test_things);
  demo_add_tests ("/report/object-table", "masses", test_masses);
  demo_add_tests ("/report/object-table", "sections", test_sections);
  demo_add_tests ("/report/object-table", "text", test_text);

  return g_test_run ();
}
