/* test-demo-sheets.c - the demos with their bands, and every figure of them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "demos.h"
#include "report/gw-sheet.h"
#include "study/gw-evaluation.h"
#include "study/gw-result.h"

/* Evaluated once for all tests of that demo, which follow each other. */
static GwEvaluation *
evaluate (const char *name)
{
  static GwEvaluation *evaluation;
  static char         *last;
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GError) error = NULL;

  if (g_strcmp0 (name, last) == 0)
    return evaluation;

  g_clear_pointer (&evaluation, gw_evaluation_unref);
  g_free (last);
  last = g_strdup (name);
  study = demo_load (name);
  evaluation = gw_evaluation_new (study, NULL, &error);
  g_assert_no_error (error);
  return evaluation;
}

static void
check_band (const char   *what,
            double        value,
            const GwBand *band)
{
  if (!isfinite (value) || !isfinite (band->low) || !isfinite (band->high) || band->low > 0.0 ||
      band->high < 0.0)
    g_error ("%s: %g from %g to %g", what, value, band->low, band->high);
}

static void
check_outcome (const GwOutcome *outcome)
{
  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      const char *key = gw_result_info ((GwResultId) i)->key;

      check_band (key, outcome->results.value[i], &outcome->band[i]);
      check_band (key, outcome->change[i], &outcome->change_band[i]);
    }
  for (guint i = 0; i < GW_CURVE_N; i++)
    check_band ("curve", outcome->results.curve[i], &outcome->curve_band[i]);

  /* What is not known must show where it counts, and what is drawn has no band. */
  g_assert_cmpfloat (outcome->band[GW_RESULT_MASS].high, >, 0.0);
  g_assert_cmpfloat (outcome->band[GW_RESULT_STALL_SPEED].high, >, 0.0);
  g_assert_cmpfloat (outcome->band[GW_RESULT_NEUTRAL_POINT].low, <, 0.0);
  g_assert_cmpfloat (outcome->band[GW_RESULT_SPAN].high, ==, 0.0);
}

static void
test_bands (gconstpointer name)
{
  const GwEvaluation *evaluation = evaluate (name);

  g_assert_cmpuint (evaluation->outcomes->len, ==, evaluation->study->options->len);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    check_outcome (gw_evaluation_outcome (evaluation, i));
}

/* Options share the equipment, so they differ by less than each is unsure of. */
static void
test_differences_are_surer (gconstpointer name)
{
  const GwEvaluation *evaluation = evaluate (name);
  const GwOutcome    *baseline = gw_evaluation_outcome (evaluation, evaluation->baseline);
  const double        own = baseline->band[GW_RESULT_MASS].high;

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
      const double     both = hypot (outcome->band[GW_RESULT_MASS].high,
                                     -baseline->band[GW_RESULT_MASS].low);

      g_assert_cmpfloat (own, >, 0.0);
      g_assert_cmpfloat (outcome->change_band[GW_RESULT_MASS].high, <, both);
    }
}

static const struct
{
  double width, height;
} sizes[] = {
  { 160.0, 120.0 }, /* the smallest that figures promise to fill */
  { 480.0, 360.0 },
  { 1440.0, 900.0 },
  { 300.0, 2000.0 }, /* a narrow window turned upright */
};

/* No mark is where no paper is: half a point for the width of a line at the edge. */
static void
check_marks (const GwDrawing *drawing,
             double           width,
             double           height)
{
  g_assert_cmpuint (gw_drawing_n (drawing), >, 0);
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwBox *box = &gw_drawing_mark (drawing, i)->box;

      if (!(box->x >= -0.5 && box->y >= -0.5 && box->x + box->width <= width + 0.5 &&
            box->y + box->height <= height + 0.5))
        g_error ("mark %zu of %zu: %g, %g, %g x %g “%s”", i, gw_drawing_n (drawing), box->x,
                 box->y, box->width, box->height, gw_drawing_mark (drawing, i)->text);
    }
}

static void
ink (const GwDrawing *drawing,
     double           width,
     double           height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) width,
                                                         (int) height);
  cairo_t         *cr = cairo_create (surface);

  gw_drawing_ink (drawing, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static void
draw_all (const GwSheet *sheet,
          GwFigureKind   kind)
{
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    for (int is_dark = 0; is_dark < 2; is_dark++)
      {
        GwDrawing *drawing = gw_sheet_draw (sheet, kind, sizes[s].width, sizes[s].height, is_dark);

        g_test_message ("%s, %g x %g", gw_figure_kind_name (kind), sizes[s].width, sizes[s].height);
        g_assert_true (gw_drawing_theme (drawing)->is_dark == is_dark);
        check_marks (drawing, sizes[s].width, sizes[s].height);
        ink (drawing, sizes[s].width, sizes[s].height);
        gw_drawing_free (drawing);
      }
}

static void
test_figures (gconstpointer name)
{
  GwEvaluation *evaluation = evaluate (name);

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      g_autoptr (GwSheet) sheet = gw_sheet_new (evaluation, i, FALSE, NULL);

      for (guint kind = 0; kind < GW_N_FIGURES; kind++)
        draw_all (sheet, (GwFigureKind) kind);
    }
}

/* On paper: the sheet of each option on A4 and A3, landscape [pt]. */
static void
test_paper (gconstpointer name)
{
  GwEvaluation *evaluation = evaluate (name);

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    for (int is_large = 0; is_large < 2; is_large++)
      {
        const double width = is_large ? 1190.55 : 841.89;
        const double height = is_large ? 841.89 : 595.28;
        g_autoptr (GwSheet) sheet = gw_sheet_new (evaluation, i, TRUE, NULL);
        GwDrawing *drawing = gw_sheet_draw (sheet, GW_FIGURE_SHEET, width, height, FALSE);

        check_marks (drawing, width, height);
        ink (drawing, width, height);
        gw_drawing_free (drawing);
      }
}

static gboolean
has_text (const GwDrawing *drawing,
          const char      *wanted)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const char *text = gw_drawing_mark (drawing, i)->text;

      if (text != NULL && strstr (text, wanted) != NULL)
        return TRUE;
    }

  return FALSE;
}

/* What the summary says are the results of every option, and the sheet says which is shown. */
static void
test_sheet_says_the_results (gconstpointer name)
{
  GwEvaluation *evaluation = evaluate (name);

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
      g_autoptr (GwSheet) sheet = gw_sheet_new (evaluation, i, TRUE, NULL);
      GwDrawing *drawing = gw_sheet_draw (sheet, GW_FIGURE_SHEET, 1190.55, 841.89, FALSE);

      g_assert_true (has_text (drawing, evaluation->study->name));
      g_assert_true (has_text (drawing, outcome->name));
      for (guint o = 0; o < evaluation->outcomes->len; o++)
        for (guint id = 0; id < GW_N_RESULTS; id++)
          {
            const double     value = gw_evaluation_outcome (evaluation, o)->results.value[id];
            g_autofree char *text = gw_value_text ((GwResultId) id, value, NULL);

            if (gw_result_info ((GwResultId) id)->is_on_sheet && !has_text (drawing, text))
              g_error ("%s of %s is not on the sheet: %s", gw_result_info ((GwResultId) id)->key,
                       gw_evaluation_outcome (evaluation, o)->id, text);
          }
      gw_drawing_free (drawing);
    }
}

/* In a window of 1280 by 800 there is no place on the line for how heavy it may be; on A3 there
 * is. */
static void
test_wanted_speed (void)
{
  static const char *const texts[] = { "wanted: 7.0 m/s", "wanted: 7.0 m/s, up to " };
  static const double      papers[][2] = { { 672, 694 }, { 1190.55, 841.89 } };
  g_autoptr (GwSheet) sheet = gw_sheet_new (evaluate ("reed-bed"), 0, FALSE, NULL);

  for (guint k = 0; k < 2; k++)
    {
      GwDrawing *drawing =
        gw_sheet_draw (sheet, GW_FIGURE_SHEET, papers[k][0], papers[k][1], FALSE);

      g_assert_true (has_text (drawing, texts[k]));
      gw_drawing_free (drawing);
    }
}

/* A whole word, not the m of "mm" or "Foam". */
static gboolean
has_word (const char *text,
          const char *word)
{
  g_auto (GStrv) words = g_strsplit_set (text, " ,()", -1);

  return g_strv_contains ((const char *const *) words, word);
}

/* In inches no other unit is left on the sheet, and the results are there in their new ones. */
static void
test_in_inches (gconstpointer name)
{
  static const char *const others[] = { "mm", "g", "kg", "m/s", "g/dm²", "kg/m³" };
  GwEvaluation            *evaluation = evaluate (name);
  const double            *value = gw_evaluation_outcome (evaluation, 0)->results.value;
  GwUnits                  units = *gw_units_standard ();
  g_autoptr (GwSheet) sheet = NULL;

  g_assert_true (gw_units_choose (&units, "in") && gw_units_choose (&units, "oz") &&
                 gw_units_choose (&units, "mph"));
  sheet = gw_sheet_new (evaluation, 0, FALSE, &units);
  for (guint kind = 0; kind < GW_N_FIGURES; kind++)
    {
      GwDrawing       *drawing = gw_sheet_draw (sheet, (GwFigureKind) kind, 1190.55, 841.89, FALSE);
      g_autofree char *mass = gw_value_text (GW_RESULT_MASS, value[GW_RESULT_MASS], &units);
      g_autofree char *speed =
        gw_value_text (GW_RESULT_STALL_SPEED, value[GW_RESULT_STALL_SPEED], &units);

      check_marks (drawing, 1190.55, 841.89);
      for (size_t i = 0; i < gw_drawing_n (drawing); i++)
        for (guint k = 0; k < G_N_ELEMENTS (others); k++)
          {
            const char *text = gw_drawing_mark (drawing, i)->text;

            /* A target of an item is a name that a person gave: "Camera, 40 g". */
            if (text != NULL && gw_drawing_mark (drawing, i)->target.group != GW_GROUP_ITEM &&
                has_word (text, others[k]))
              g_error ("%s is on the %s: “%s”", others[k],
                       gw_figure_kind_name ((GwFigureKind) kind), text);
          }
      if (kind == GW_FIGURE_SHEET || kind == GW_FIGURE_SUMMARY)
        g_assert_true (has_text (drawing, mass) && has_text (drawing, speed));
      gw_drawing_free (drawing);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_auto (GStrv) names = NULL;

  g_test_init (&argc, &argv, NULL);

  names = demo_names ();
  for (guint i = 0; names[i] != NULL; i++)
    {
      const struct
      {
        const char   *name;
        GTestDataFunc test;
      } tests[] = {
        { "bands", test_bands },
        { "differences-are-surer", test_differences_are_surer },
        { "figures", test_figures },
        { "paper", test_paper },
        { "sheet-says-the-results", test_sheet_says_the_results },
        { "in-inches", test_in_inches },
      };

      for (guint t = 0; t < G_N_ELEMENTS (tests); t++)
        {
          g_autofree char *path = g_strdup_printf ("/report/demos/%s/%s", names[i], tests[t].name);

          g_test_add_data_func (path, names[i], tests[t].test);
        }
    }
  g_test_add_func ("/report/demos/wanted-speed", test_wanted_speed);

  return g_test_run ();
}
