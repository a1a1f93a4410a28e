/* test-demo-sections.c - the figures of the sections of every demo
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "demos.h"
#include "report/gw-section-brief.h"
#include "report/gw-section-figures.h"
#include "study/gw-catalogue.h"
#include "study/gw-evaluation.h"

static GwEvaluation *
evaluate (const char *name)
{
  g_autoptr (GwStudy) study = demo_load (name);
  g_autoptr (GError) error = NULL;
  GwEvaluation *evaluation = gw_evaluation_new (study, NULL, &error);

  g_assert_no_error (error);
  return evaluation;
}

static GwSectionSheet *
make (GwEvaluation       *evaluation,
      GwSectionFigureKind kind,
      int                 option)
{
  GwSectionChoice choice = GW_SECTION_CHOICE_ALL;
  g_autoptr (GError) error = NULL;
  GwSectionSheet *sheet;

  choice.option = option;
  sheet = gw_section_sheet_new (evaluation, kind, &choice, NULL, NULL, &error);
  g_assert_no_error (error);
  return sheet;
}

/* Half a point for the width of a line at the edge. */
static void
check_marks (const GwDrawing *drawing,
             double           width,
             double           height)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwBox *box = &gw_drawing_mark (drawing, i)->box;

      if (!(box->x >= -0.5 && box->y >= -0.5 && box->x + box->width <= width + 0.5 &&
            box->y + box->height <= height + 0.5))
        g_error ("%g x %g, mark %zu: %g, %g, %g x %g “%s”", width, height, i, box->x, box->y,
                 box->width, box->height, gw_drawing_mark (drawing, i)->text);
    }
}

static void
test_inside (gconstpointer name)
{
  static const double sizes[][2] = { { 160, 120 }, { 480, 360 }, { 1440, 900 }, { 300, 2000 } };
  g_autoptr (GwEvaluation) evaluation = evaluate (name);

  for (guint kind = 0; kind < GW_N_SECTION_FIGURES; kind++)
    {
      g_autoptr (GwSectionSheet) sheet = make (evaluation, (GwSectionFigureKind) kind, -1);

      for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
        {
          GwDrawing *drawing = gw_section_sheet_draw (sheet, sizes[i][0], sizes[i][1], i == 1);

          g_assert_cmpuint (gw_drawing_n (drawing), >, 0);
          check_marks (drawing, sizes[i][0], sizes[i][1]);
          gw_drawing_free (drawing);
        }
    }
}

static void
check_polar_line (const GwPolarLine *line)
{
  for (size_t i = 0; i < line->n; i++)
    {
      g_assert_true (isfinite (line->alpha[i]));
      if (i > 0)
        g_assert_cmpfloat (line->alpha[i], >, line->alpha[i - 1]);
      if (isfinite (line->cd[i]))
        g_assert_cmpfloat (line->cd[i], >, 0.0);
    }
}

static void
test_polars (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate (name);
  g_autoptr (GwSectionSheet) sheet = make (evaluation, GW_SECTION_POLAR, -1);
  const GwPolarFigure *figure = gw_section_sheet_polar (sheet);

  g_assert_nonnull (figure);
  g_assert_null (gw_section_sheet_pressure (sheet));
  g_assert_cmpuint (figure->n_curves, >, 0);
  for (size_t i = 0; i < figure->n_curves; i++)
    {
      check_polar_line (&figure->curves[i].built);
      check_polar_line (&figure->curves[i].smooth);
    }
}

/* A mark of each option where its own stall begins. */
static void
test_flights (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate (name);

  for (guint option = 0; option < evaluation->outcomes->len; option++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, option);
      const double     re = outcome->results.value[GW_RESULT_STALL_RE];
      g_autoptr (GwSectionSheet) sheet = make (evaluation, GW_SECTION_GREATEST_LIFT, (int) option);
      const GwGreatestLiftFigure *figure = gw_section_sheet_greatest_lift (sheet);
      guint                       n = 0;

      g_assert_nonnull (figure);
      for (size_t i = 0; i < figure->n_curves; i++)
        for (size_t j = 0; j < figure->curves[i].n_flights; j++)
          {
            const GwFlightPoint *flight = &figure->curves[i].flights[j];

            g_assert_cmpint (flight->option, ==, (int) option);
            g_assert_cmpfloat_with_epsilon (flight->re, re, 1e-9 * re);
            g_assert_cmpfloat (flight->cl, >, 0.0);
            n++;
          }
      g_assert_cmpuint (n, ==, isfinite (re) ? 1 : 0);
    }
}

/* Nothing comes to a higher pressure than where the flow stands still; 2 % for the panels. */
static void
test_pressures (gconstpointer name)
{
  g_autoptr (GwEvaluation) evaluation = evaluate (name);

  for (guint option = 0; option < evaluation->outcomes->len; option++)
    {
      g_autoptr (GwSectionSheet) sheet = make (evaluation, GW_SECTION_PRESSURE, (int) option);
      const GwPressureFigure *figure = gw_section_sheet_pressure (sheet);

      g_assert_nonnull (figure);
      if (figure->n == 0)
        g_assert_nonnull (figure->words.notes);
      for (size_t i = 0; i < figure->n; i++)
        g_assert_true (isfinite (figure->pressure[i]) && figure->pressure[i] <= 1.02);
      for (size_t i = 0; i < figure->n_events; i++)
        g_assert_true (figure->events[i].from >= 0.0 && figure->events[i].from <= 1.0);
    }
}

/* At 50000 the lift of the cambered section is of two values, and the figure says where; at
 * 300000 it is not. */
static void
test_two_valued (void)
{
  static const double numbers[] = { 5e4, 3e5 };
  g_autoptr (GwEvaluation) evaluation = evaluate ("reed-bed");

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      GwSectionChoice choice = GW_SECTION_CHOICE_ALL;
      g_autoptr (GwSectionSheet) sheet = NULL;
      const char *notes;

      choice.re = numbers[i];
      sheet = gw_section_sheet_new (evaluation, GW_SECTION_POLAR, &choice, NULL, NULL, NULL);
      notes = gw_section_sheet_polar (sheet)->words.notes;
      g_test_message ("%s", notes);
      g_assert_true (notes != NULL);
      g_assert_cmpint (strstr (notes, "NACA 6409: near 11") != NULL, ==, i == 0);
      g_assert_cmpint (strstr (notes, "on the way back from the stall") != NULL, ==, i == 0);
    }
}

static double
lift_in (GHashTable *briefs,
         const char *section)
{
  const char *brief = g_hash_table_lookup (briefs, section);

  g_assert_nonnull (brief);
  g_assert_true (g_str_has_prefix (brief, "lift to "));
  g_assert_true (g_str_has_suffix (brief, "at Re 120000"));
  return g_ascii_strtod (brief + strlen ("lift to "), NULL);
}

/* All of the catalogue are known, and what is thicker and more cambered lifts more. */
static void
test_briefs (void)
{
  g_autoptr (GwStudy) study = demo_load ("small");
  g_autoptr (GHashTable) briefs = gw_section_briefs (study, 1.23e5, gw_units_standard ());
  const GPtrArray *shelf = gw_catalogue_list ("sections");

  for (guint i = 0; i < shelf->len; i++)
    g_assert_cmpfloat (lift_in (briefs, gw_record_id (g_ptr_array_index (shelf, i))), >, 0.5);
  g_assert_cmpfloat (lift_in (briefs, "naca-4412"), >, lift_in (briefs, "naca-0006") + 0.2);
  g_assert_nonnull (strstr (g_hash_table_lookup (briefs, "naca-4412"), ", drag from 0.0"));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  demo_add_tests ("/report/sections", "inside", test_inside);
  demo_add_tests ("/report/sections", "polars", test_polars);
  demo_add_tests ("/report/sections", "flights", test_flights);
  demo_add_tests ("/report/sections", "pressures", test_pressures);
  g_test_add_func ("/report/sections/two-valued", test_two_valued);
  g_test_add_func ("/report/sections/briefs", test_briefs);

  return g_test_run ();
}
