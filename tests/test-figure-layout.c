/* test-figure-layout.c - nothing overlaps, nothing sticks out, all is to scale
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "engine/gw-build.h"
#include "figures/gw-figure.h"
#include "figures/gw-layout.h"
#include "sample-figures.h"

#define TOUCH 0.25 /* [pt] by which boxes of neighbouring lines may touch */

/* Says what is wrong and goes on: one run tells all. */
static void G_GNUC_PRINTF (1, 2) fault (const char *format, ...)
{
  g_autofree char *text = NULL;
  va_list          arguments;

  va_start (arguments, format);
  text = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_test_message ("%s", text);
  g_test_fail ();
}

static char *
describe (const GwMark *mark)
{
  return g_strdup_printf ("\"%s\" at %.1f, %.1f, %.1f x %.1f", mark->text, mark->box.x, mark->box.y,
                          mark->box.width, mark->box.height);
}

static void
assert_apart (const GwDrawing *drawing,
              const char      *where)
{
  size_t n = gw_drawing_n (drawing);

  for (size_t i = 0; i < n; i++)
    for (size_t k = 0; k < i; k++)
      {
        const GwMark *a = gw_drawing_mark (drawing, i), *b = gw_drawing_mark (drawing, k);

        if (a->kind != GW_MARK_TEXT || b->kind != GW_MARK_TEXT ||
            !gw_box_meets (&a->box, &b->box, -TOUCH))
          continue;
        {
          g_autofree char *first = describe (a);
          g_autofree char *second = describe (b);

          fault ("%s: %s lies on %s", where, first, second);
        }
      }
}

static void
assert_inside (const GwDrawing *drawing,
               const GwBox     *box,
               const char      *where)
{
  GwBox outer = gw_box_inset (*box, -TOUCH);

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      g_assert_true (isfinite (mark->box.x + mark->box.y + mark->box.width + mark->box.height));
      if (!gw_box_holds (&outer, &mark->box))
        {
          g_autofree char *text = describe (mark);

          fault ("%s: mark %zu of kind %d, line %d, %s, sticks out of %.0f x %.0f", where, i,
                 mark->kind, mark->line, text, box->width, box->height);
        }
    }
}

/* Liang-Barsky: does the segment a-b pass through the box? */
static bool
passes_through (const double *a,
                const double *b,
                const GwBox  *box)
{
  double low[] = { box->x, box->y }, high[] = { box->x + box->width, box->y + box->height };
  double t0 = 0, t1 = 1;

  for (int k = 0; k < 2; k++)
    {
      double d = b[k] - a[k];

      if (d == 0 && (a[k] <= low[k] || a[k] >= high[k]))
        return false;
      if (d == 0)
        continue;
      t0 = fmax (t0, fmin ((low[k] - a[k]) / d, (high[k] - a[k]) / d));
      t1 = fmin (t1, fmax ((low[k] - a[k]) / d, (high[k] - a[k]) / d));
    }

  return t0 < t1;
}

/* No line runs through a text, but for the hair lines of grids and stations. */
static void
assert_legible (const GwDrawing *drawing,
                const char      *where)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *line = gw_drawing_mark (drawing, i);
      const double *xy = gw_drawing_points (drawing) + 2 * line->first;

      if (line->kind != GW_MARK_PATH || line->line == GW_LINE_NONE || line->line == GW_LINE_HAIR)
        continue;
      for (size_t k = 0; k < gw_drawing_n (drawing); k++)
        {
          const GwMark *text = gw_drawing_mark (drawing, k);
          GwBox         box = gw_box_inset (text->box, 0.6);

          if (text->kind != GW_MARK_TEXT || !gw_box_meets (&box, &line->box, 0))
            continue;
          for (size_t j = 0; j + 1 < line->n + line->is_closed; j++)
            if (passes_through (xy + 2 * j, xy + 2 * ((j + 1) % line->n), &box))
              {
                g_autofree char *words = describe (text);

                fault ("%s: a line of type %d, tone %d runs through %s", where, line->line,
                       line->stroke, words);
                break;
              }
        }
    }
}

static bool
is_leader (const GwMark *mark)
{
  return mark->kind == GW_MARK_PATH && mark->n == 3 && !mark->is_closed &&
         mark->line == GW_LINE_NARROW && mark->stroke == GW_TONE_MID;
}

/* A leader starts at a symbol or a dot and ends before a text. */
static void
assert_leaders (const GwDrawing *drawing,
                const char      *where)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *leader = gw_drawing_mark (drawing, i);
      const double *xy = gw_drawing_points (drawing) + 2 * leader->first;
      bool          has_start = false, has_end = false;

      if (!is_leader (leader))
        continue;
      for (size_t k = 0; k < gw_drawing_n (drawing); k++)
        {
          const GwMark *mark = gw_drawing_mark (drawing, k);
          const double *at = gw_drawing_points (drawing) + 2 * mark->first;
          GwBox         near = gw_box_inset (mark->box, -5);
          GwBox         end = { xy[4], xy[5], 0, 0 };

          if (mark->kind == GW_MARK_BALANCE || mark->kind == GW_MARK_NEUTRAL ||
              mark->kind == GW_MARK_DOT)
            has_start = has_start || hypot (at[0] - xy[0], at[1] - xy[1]) <= mark->size / 2 + 0.1;
          has_end = has_end || (mark->kind == GW_MARK_TEXT && gw_box_holds (&near, &end));
        }
      if (!has_start || !has_end)
        fault ("%s: a leader from %.1f, %.1f hangs loose (%d, %d)", where, xy[0], xy[1], has_start,
               has_end);
    }
}

static size_t
count_text (const GwDrawing *drawing,
            const char      *text)
{
  size_t n = 0;

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    n += g_strcmp0 (gw_drawing_mark (drawing, i)->text, text) == 0;

  return n;
}

static size_t
count_containing (const GwDrawing *drawing,
                  const char      *text)
{
  size_t n = 0;

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      n += mark->text != NULL && strstr (mark->text, text) != NULL;
    }

  return n;
}

static size_t
count_kind (const GwDrawing *drawing,
            GwMarkKind       kind)
{
  size_t n = 0;

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    n += gw_drawing_mark (drawing, i)->kind == kind;

  return n;
}

static const GwMark *
find_kind (const GwDrawing *drawing,
           GwMarkKind       kind)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    if (gw_drawing_mark (drawing, i)->kind == kind)
      return gw_drawing_mark (drawing, i);

  return NULL;
}

/* The widest mark that shows this thing. */
static const GwMark *
find_target (const GwDrawing *drawing,
             GwGroup          group,
             int              owner)
{
  const GwMark *widest = NULL;

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      if (mark->kind == GW_MARK_PATH && mark->target.group == (int) group &&
          mark->target.owner == owner && (widest == NULL || mark->box.width > widest->box.width))
        widest = mark;
    }

  return widest;
}

typedef void (*LayOut) (GwDrawing *drawing, GwBox box, const GwSheetFigure *sheet);

static void
lay_planform (GwDrawing           *drawing,
              GwBox                box,
              const GwSheetFigure *sheet)
{
  g_assert_cmpfloat (gw_figure_planform (drawing, box, &sheet->planform), >, 0);
}

static void
lay_half (GwDrawing           *drawing,
          GwBox                box,
          const GwSheetFigure *sheet)
{
  GwAirframeFigure half = sheet->planform;

  half.is_half = true;
  g_assert_cmpfloat (gw_figure_planform (drawing, box, &half), >, 0);
}

static void
lay_side (GwDrawing           *drawing,
          GwBox                box,
          const GwSheetFigure *sheet)
{
  g_assert_cmpfloat (gw_figure_side (drawing, box, &sheet->planform), >, 0);
}

static void
lay_stall (GwDrawing           *drawing,
           GwBox                box,
           const GwSheetFigure *sheet)
{
  gw_figure_stall (drawing, box, &sheet->stall);
}

static void
lay_masses (GwDrawing           *drawing,
            GwBox                box,
            const GwSheetFigure *sheet)
{
  gw_figure_masses (drawing, box, &sheet->masses);
}

static void
lay_summary (GwDrawing           *drawing,
             GwBox                box,
             const GwSheetFigure *sheet)
{
  gw_figure_summary (drawing, box, &sheet->summary);
}

static const struct
{
  const char *name;
  LayOut      lay_out;
} figures[] = {
  { "planform", lay_planform },
  { "half", lay_half },
  { "side", lay_side },
  { "stall", lay_stall },
  { "masses", lay_masses },
  { "summary", lay_summary },
};

static void
check_figure (size_t               figure,
              GwBox                box,
              const SampleFigures *inputs,
              double               type)
{
  GwDrawing       *drawing = gw_drawing_new (gw_theme_get (false));
  g_autofree char *where = g_strdup_printf (
    "%s %.0f x %.0f, aircraft %d, %zu options, type %.1f", figures[figure].name, box.width,
    box.height, (int) inputs->kind, inputs->sheet.summary.n_columns, type);

  gw_drawing_set_type (drawing, type);
  figures[figure].lay_out (drawing, box, &inputs->sheet);
  assert_apart (drawing, where);
  assert_inside (drawing, &box, where);
  assert_leaders (drawing, where);
  assert_legible (drawing, where);
  gw_drawing_free (drawing);
}

static void
check_all_sizes (size_t               figure,
                 const SampleFigures *inputs)
{
  static const double sizes[][2] = {
    { 160, 120 },
    { 220, 170 },
    { 260, 400 },
    { 320, 240 },
    { 640, 480 },
    { 1100, 260 },
    { 1400, 900 },
  };

  for (size_t i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (double type = 1; type < 1.5; type += 0.4)
      check_figure (figure, (GwBox){ 13, 17, sizes[i][0], sizes[i][1] }, inputs, type);
}

/* Airframes by kind, the others by the number of options. */
static void
test_figures (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);

  for (int kind = 0; kind < SAMPLE_N; kind++)
    {
      sample_figures_init (inputs, (SampleKind) kind, 1, false);
      for (size_t figure = 0; figure < 3; figure++)
        check_all_sizes (figure, inputs);
      sample_figures_clear (inputs);
    }
  for (size_t n = 1; n <= SAMPLE_OPTIONS; n++)
    {
      sample_figures_init (inputs, n % 2 == 0 ? SAMPLE_FOLDED : SAMPLE_AWKWARD, n, false);
      for (size_t figure = 3; figure < G_N_ELEMENTS (figures); figure++)
        check_all_sizes (figure, inputs);
      sample_figures_clear (inputs);
    }
  g_free (inputs);
}

/* Longer texts, dimensions with their unit: they find room or stay away like the others. */
static void
test_figures_in_inches (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);

  for (int kind = 0; kind < SAMPLE_N; kind++)
    {
      sample_figures_init (inputs, (SampleKind) kind, 1 + (size_t) kind * 3 % SAMPLE_OPTIONS,
                           false);
      sample_figures_inch (inputs);
      for (size_t figure = 0; figure < G_N_ELEMENTS (figures); figure++)
        check_all_sizes (figure, inputs);
      sample_figures_clear (inputs);
    }
  g_free (inputs);
}

/* Every length says inches, the bar is a round number of them, and as long as it says. */
static void
test_planform_in_inches (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  GwDrawing     *drawing = gw_drawing_new (gw_theme_get (false));
  double         scale;
  size_t         n_bars = 0;

  sample_figures_init (inputs, SAMPLE_PRINTED, 1, false);
  sample_figures_inch (inputs);
  scale = gw_figure_planform (drawing, (GwBox){ 0, 0, 900, 700 }, &inputs->sheet.planform);
  g_assert_cmpuint (count_text (drawing, "70.87 in"), ==, 1); /* 1800 mm */
  g_assert_cmpuint (count_text (drawing, "9.65 in"), ==, 1);  /* 245 mm */
  g_assert_cmpuint (count_containing (drawing, " mm"), ==, 0);
  g_assert_cmpuint (count_containing (drawing, " in"), ==, 5); /* two labels and the bar more */
  for (size_t i = 1; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *bar = gw_drawing_mark (drawing, i - 1);
      const GwMark *text = gw_drawing_mark (drawing, i);
      double        length;

      if (bar->kind != GW_MARK_PATH || bar->n != 6 || text->kind != GW_MARK_TEXT)
        continue;
      length = atof (text->text);
      g_assert_cmpfloat_with_epsilon (gw_round_below (length), length, 1e-9);
      g_assert_cmpfloat_with_epsilon (bar->box.width, length * 0.0254 * scale, 1e-6);
      n_bars++;
    }
  g_assert_cmpuint (n_bars, ==, 1);
  sample_figures_clear (inputs);
  gw_drawing_free (drawing);
  g_free (inputs);
}

static const struct
{
  double width, height;
  bool   is_paper;
} sheets[] = {
  { 842, 595, true },
  { 1191, 842, true },
  { 792, 612, true },
  { 1224, 792, true },
  { 595, 842, true },
  { 700, 560, false },
  { 750, 720, false },
  { 1100, 760, false },
  { 1900, 1100, false },
  { 420, 900, false },
};

static void
check_sheet (size_t         i,
             SampleFigures *inputs)
{
  GwBox            box = { 0, 0, sheets[i].width, sheets[i].height };
  GwDrawing       *drawing = gw_drawing_new (gw_theme_get (false));
  size_t           n = inputs->sheet.summary.n_columns;
  g_autofree char *where = g_strdup_printf ("sheet %.0f x %.0f, aircraft %d, %zu options",
                                            box.width, box.height, (int) inputs->kind, n);
  size_t           n_shown;

  inputs->sheet.is_paper = sheets[i].is_paper;
  if (!sheets[i].is_paper && box.width > 1000)
    gw_drawing_set_type (drawing, 1.25);
  gw_figure_sheet (drawing, box, &inputs->sheet);
  assert_apart (drawing, where);
  assert_inside (drawing, &box, where);
  assert_leaders (drawing, where);
  assert_legible (drawing, where);
  g_assert_cmpuint (count_text (drawing, "Reed-bed bird count"), ==, 1);
  g_assert_cmpuint (count_text (drawing, "estimate, not a test"), ==, 1);
  g_assert_cmpuint (count_text (drawing, "All-up mass"), ==, 1);
  g_assert_cmpuint (count_containing (drawing, "Stall speed"), ==, 1);
  g_assert_cmpuint (count_kind (drawing, GW_MARK_BALANCE), ==, 2);
  /* The option shown has its marker in the summary, on the curve, at its bar, and in the key
   * where that finds room. */
  n_shown = count_kind (drawing, GW_MARK_OPTION + (GwMarkKind) (n - 1));
  if (n_shown < 3 || n_shown > 4)
    fault ("%s: the option shown stands in %zu places", where, n_shown);
  gw_drawing_free (drawing);
}

static void
test_sheets (void)
{
  static const struct
  {
    SampleKind kind;
    size_t     n_options;
  } cases[] = {
    { SAMPLE_FOLDED, 4 },
    { SAMPLE_PRINTED, 1 },
    { SAMPLE_PRINTED, 8 },
    { SAMPLE_TAILLESS, 2 },
    { SAMPLE_AWKWARD, 3 },
    { SAMPLE_AWKWARD, 6 },
  };
  SampleFigures *inputs = g_new (SampleFigures, 1);

  for (size_t k = 0; k < G_N_ELEMENTS (cases); k++)
    {
      size_t n = cases[k].n_options;

      sample_figures_init (inputs, cases[k].kind, n, false);
      inputs->sheet.summary.shown = inputs->sheet.stall.shown = (int) n - 1;
      for (size_t i = 0; i < G_N_ELEMENTS (sheets); i++)
        check_sheet (i, inputs);
      sample_figures_inch (inputs);
      for (size_t i = 0; i < G_N_ELEMENTS (sheets); i++)
        check_sheet (i, inputs);
      sample_figures_clear (inputs);
    }
  g_free (inputs);
}

/* On paper the scale that the title block states is the scale of the drawing. */
static void
test_stated_scale (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);

  for (int kind = 0; kind < SAMPLE_N; kind++)
    for (size_t i = 0; i < 5; i++)
      {
        GwBox         box = { 0, 0, sheets[i].width, sheets[i].height };
        GwDrawing    *drawing = gw_drawing_new (gw_theme_get (false));
        int           ratio = 0;
        double        points_per_m;
        const GwMark *wing;

        sample_figures_init (inputs, (SampleKind) kind, 3, true);
        gw_figure_sheet (drawing, box, &inputs->sheet);
        for (size_t k = 0; k < gw_drawing_n (drawing) && ratio == 0; k++)
          {
            const char *text = gw_drawing_mark (drawing, k)->text;

            if (text != NULL && g_str_has_prefix (text, "1 of 1, 1:"))
              ratio = atoi (text + strlen ("1 of 1, 1:"));
          }
        g_assert_cmpint (ratio, >, 0);
        wing = find_target (drawing, GW_GROUP_SURFACE, 0);
        points_per_m = wing->box.width / inputs->results.value[GW_RESULT_SPAN];
        /* 72 points are one inch; the outline is computed in double precision. */
        g_assert_cmpfloat_with_epsilon (points_per_m * ratio, 72 / 0.0254, 1e-6);
        sample_figures_clear (inputs);
        gw_drawing_free (drawing);
      }
  g_free (inputs);
}

static void
test_planform_to_scale (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  const double  *value = inputs->results.value;
  GwBox          box = { 0, 0, 900, 700 };

  for (int kind = 0; kind < SAMPLE_N; kind++)
    {
      GwDrawing    *drawing = gw_drawing_new (gw_theme_get (false));
      double        scale, nose;
      const GwMark *wing, *balance, *neutral;

      sample_figures_init (inputs, (SampleKind) kind, 1, false);
      scale = gw_figure_planform (drawing, box, &inputs->sheet.planform);
      wing = find_target (drawing, GW_GROUP_SURFACE, 0);
      balance = find_kind (drawing, GW_MARK_BALANCE);
      neutral = find_kind (drawing, GW_MARK_NEUTRAL);
      g_assert_cmpfloat_with_epsilon (wing->box.width, value[GW_RESULT_SPAN] * scale, 1e-6);
      /* The foremost point of the wing is the root's leading edge at x = 0: nose up. */
      nose = wing->box.y;
      g_assert_cmpfloat_with_epsilon (balance->box.y + balance->size / 2 - nose,
                                      value[GW_RESULT_BALANCE_ROOT] * scale, 1e-6);
      g_assert_cmpfloat_with_epsilon (neutral->box.y + neutral->size / 2 - nose,
                                      value[GW_RESULT_NEUTRAL_POINT] * scale, 1e-6);
      g_assert_cmpuint (count_containing (drawing, "balance "), ==, 1);
      g_assert_cmpuint (count_containing (drawing, "neutral point"), ==, 1);
      sample_figures_clear (inputs);
      gw_drawing_free (drawing);
    }
  g_free (inputs);
}

/* The structure of a drawing, by its marks: each seam, control, item and number is there. */
static void
test_planform_structure (void)
{
  SampleFigures   *inputs = g_new (SampleFigures, 1);
  GwDrawing       *drawing = gw_drawing_new (gw_theme_get (false));
  GwBox            box = { 0, 0, 900, 700 };
  const GwSurface *wing;
  size_t           n_seams = 0, n_drawn = 0, n_items = 0;

  sample_figures_init (inputs, SAMPLE_PRINTED, 1, false);
  wing = &inputs->sample.aircraft.surfaces[0];
  for (size_t panel = 0; panel + 1 < wing->n_stations; panel++)
    n_seams += 2 * (size_t) (gw_build_seams (wing, panel) - 1);
  gw_figure_planform (drawing, box, &inputs->sheet.planform);
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      n_drawn += mark->line == GW_LINE_CENTRE && mark->stroke >= GW_TONE_OPTION;
      n_items +=
        mark->target.group == GW_GROUP_ITEM && mark->is_closed && mark->line == GW_LINE_NARROW;
    }
  g_assert_cmpuint (n_seams, >, 0);
  g_assert_cmpuint (n_drawn, ==, n_seams);
  g_assert_cmpuint (n_items, ==, inputs->sample.aircraft.n_items + 2); /* two are mirrored */
  for (size_t i = 0; i < inputs->sample.aircraft.n_items; i++)
    g_assert_cmpuint (count_text (drawing, inputs->sample.aircraft.items[i].name), ==, 1);
  g_assert_cmpuint (count_text (drawing, "1800"), ==, 1);
  g_assert_cmpuint (count_text (drawing, "245"), ==, 1);
  g_assert_cmpuint (count_containing (drawing, " mm"), ==, 3); /* the bar and two labels */
  sample_figures_clear (inputs);
  gw_drawing_free (drawing);
  g_free (inputs);
}

/* Thirty things: each has its number on the aeroplane and in the list. */
static void
test_thirty_items (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  GwDrawing     *drawing = gw_drawing_new (gw_theme_get (false));
  GwBox          box = { 0, 0, 900, 700 };

  sample_figures_init (inputs, SAMPLE_AWKWARD, 1, false);
  gw_figure_planform (drawing, box, &inputs->sheet.planform);
  for (int i = 1; i <= 30; i++)
    {
      g_autofree char *number = g_strdup_printf ("%d", i);

      g_assert_cmpuint (count_text (drawing, number), ==, 2);
    }
  g_assert_cmpuint (count_text (drawing, "Parachute"), ==, 3);
  sample_figures_clear (inputs);
  gw_drawing_free (drawing);
  g_free (inputs);
}

/* The ground carries the wheels and nothing sinks into it. */
static void
test_ground (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  GwDrawing     *drawing = gw_drawing_new (gw_theme_get (false));
  GwBox          box = { 0, 0, 700, 400 };
  const GwLeg   *legs;
  const GwMark  *ground = NULL;
  const double  *xy;
  double         scale, length;

  sample_figures_init (inputs, SAMPLE_FOLDED, 1, false);
  legs = inputs->sample.aircraft.legs;
  scale = gw_figure_side (drawing, box, &inputs->sheet.planform);
  for (size_t i = 0; i < gw_drawing_n (drawing) && ground == NULL; i++)
    if (gw_drawing_mark (drawing, i)->n == 2 && gw_drawing_mark (drawing, i)->box.width > 300)
      ground = gw_drawing_mark (drawing, i);
  g_assert_nonnull (ground);
  xy = gw_drawing_points (drawing) + 2 * ground->first;
  length = hypot (xy[2] - xy[0], xy[3] - xy[1]);
  for (int i = 0; i < 2; i++)
    {
      const GwMark *wheel = NULL;

      for (size_t k = 0; k < gw_drawing_n (drawing); k++)
        {
          const GwMark *mark = gw_drawing_mark (drawing, k);

          if (mark->target.group == GW_GROUP_LEG && mark->target.owner == i && mark->is_closed &&
              (wheel == NULL || mark->box.width > wheel->box.width))
            wheel = mark;
        }
      {
        double x = wheel->box.x + wheel->box.width / 2, y = wheel->box.y + wheel->box.height / 2;
        double distance = ((xy[2] - xy[0]) * (xy[1] - y) - (xy[3] - xy[1]) * (xy[0] - x)) / length;

        /* The line is a tangent: as far from the axle as the wheel is large. */
        g_assert_cmpfloat_with_epsilon (distance, legs[i].wheel_radius * scale, 1e-6);
      }
    }
  sample_figures_clear (inputs);
  gw_drawing_free (drawing);
  g_free (inputs);
}

/* What has no answer is left out; nothing breaks, nothing stands at a place that is not finite. */
static void
test_without_answers (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  GwBox          box = { 0, 0, 900, 640 };
  GwDrawing     *drawing = gw_drawing_new (gw_theme_get (false));

  sample_figures_init (inputs, SAMPLE_FOLDED, 3, false);
  for (int i = 0; i < GW_N_RESULTS; i++)
    inputs->results.value[i] = NAN;
  for (size_t i = 0; i < 3; i++)
    for (size_t k = 0; k < GW_CURVE_N; k++)
      if (i > 0 || k % 7 == 0)
        inputs->curves[i][0][k] = NAN;
  inputs->stall[0].speed = inputs->stall[0].mass = NAN;
  inputs->sheet.stall.wanted = inputs->sheet.stall.wanted_mass = NAN;
  inputs->bars[1].low = NAN;
  inputs->sheet.planform.low_x = NAN;
  gw_figure_sheet (drawing, box, &inputs->sheet);
  assert_apart (drawing, "without answers");
  assert_inside (drawing, &box, "without answers");
  g_assert_cmpuint (count_kind (drawing, GW_MARK_BALANCE), ==, 0);

  gw_drawing_clear (drawing);
  for (size_t k = 0; k < GW_CURVE_N; k++)
    inputs->curves[0][0][k] = NAN;
  for (size_t i = 0; i < 3; i++)
    inputs->stall[i].low = inputs->stall[i].high = NULL;
  gw_figure_stall (drawing, box, &inputs->sheet.stall);
  g_assert_cmpuint (count_text (drawing, "no stall speed found"), ==, 1);
  sample_figures_clear (inputs);
  gw_drawing_free (drawing);
  g_free (inputs);
}

/* Eight options find their columns on every usual sheet that is wider than high. */
static void
test_all_options (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  GwDrawing     *drawing = gw_drawing_new (gw_theme_get (false));

  sample_figures_init (inputs, SAMPLE_PRINTED, SAMPLE_OPTIONS, false);
  for (size_t i = 0; i < G_N_ELEMENTS (sheets); i++)
    {
      GwBox box = { 0, 0, sheets[i].width, sheets[i].height };

      if (box.height > box.width)
        continue;
      inputs->sheet.is_paper = sheets[i].is_paper;
      gw_drawing_clear (drawing);
      gw_figure_sheet (drawing, box, &inputs->sheet);
      for (int option = 0; option < SAMPLE_OPTIONS; option++)
        if (count_text (drawing, inputs->texts[2][option][0]) == 0)
          fault ("sheet %.0f x %.0f: option %d has no stall speed", box.width, box.height, option);
      for (int row = 0; row < SAMPLE_ROWS; row++)
        if (count_text (drawing, inputs->texts[row][0][0]) == 0 && inputs->texts[row][0][0][0] != 0)
          fault ("sheet %.0f x %.0f: row %d is not there", box.width, box.height, row);
    }
  sample_figures_clear (inputs);
  gw_drawing_free (drawing);
  g_free (inputs);
}

/* Numbers of a row stand with their decimal signs below one another in each column. */
static void
test_decimals (void)
{
  static const char *const values[] = { "9.5", "10.25", "100" };
  static const char *const names[] = { "a", "b", "c" };
  static const int         styles[] = { 0, 1, 2 };
  GwSummaryCell            cells[3] = { 0 };
  GwSummaryRow             row = { "length", "m", 0, cells };
  GwSummaryFigure          figure = { 3, names, styles, 1, &row, 1, 0, NULL };
  GwDrawing               *drawing = gw_drawing_new (gw_theme_get (false));
  double                   signs[3] = { 0 };
  double                   step;

  for (int i = 0; i < 3; i++)
    cells[i] = (GwSummaryCell){ .value = values[i] };
  gw_figure_summary (drawing, (GwBox){ 0, 0, 400, 200 }, &figure);
  for (int i = 0; i < 3; i++)
    for (size_t k = 0; k < gw_drawing_n (drawing); k++)
      {
        const GwMark    *mark = gw_drawing_mark (drawing, k);
        g_autofree char *whole = g_strndup (values[i], strcspn (values[i], "."));
        double           width;

        if (g_strcmp0 (mark->text, values[i]) != 0)
          continue;
        gw_drawing_measure (drawing, whole, mark->font, mark->style, &width, NULL);
        signs[i] = mark->box.x + width;
      }
  step = signs[1] - signs[0];
  g_assert_cmpfloat (step, >, 20);
  /* Columns are equally wide; 0.1 pt for kerning about the sign. */
  g_assert_cmpfloat_with_epsilon (signs[2] - signs[1], step, 0.1);
  gw_drawing_free (drawing);
}

/* Seconds give way first, then the size of the text, then rows; the shown option never. */
static void
test_summary_gives_way (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  GwDrawing     *drawing = gw_drawing_new (gw_theme_get (false));
  size_t         n_tall, n_low, n_lowest;

  sample_figures_init (inputs, SAMPLE_FOLDED, 4, false);
  gw_figure_summary (drawing, (GwBox){ 0, 0, 420, 500 }, &inputs->sheet.summary);
  n_tall = gw_drawing_n (drawing);
  g_assert_cmpuint (count_text (drawing, "all-up mass"), ==, 1);
  g_assert_cmpuint (count_text (drawing, "weighed share"), ==, 1);

  gw_drawing_clear (drawing);
  gw_figure_summary (drawing, (GwBox){ 0, 0, 420, 240 }, &inputs->sheet.summary);
  n_low = gw_drawing_n (drawing);
  g_assert_cmpuint (n_low, <, n_tall);
  g_assert_cmpuint (count_text (drawing, "weighed share"), ==, 1);
  g_assert_cmpuint (count_text (drawing, "…"), ==, 0);

  gw_drawing_clear (drawing);
  gw_figure_summary (drawing, (GwBox){ 0, 0, 420, 140 }, &inputs->sheet.summary);
  n_lowest = gw_drawing_n (drawing);
  g_assert_cmpuint (n_lowest, <, n_low);
  g_assert_cmpuint (count_text (drawing, "all-up mass"), ==, 1);
  g_assert_cmpuint (count_text (drawing, "weighed share"), ==, 0);
  g_assert_cmpuint (count_text (drawing, "…"), ==, 1);
  sample_figures_clear (inputs);

  sample_figures_init (inputs, SAMPLE_FOLDED, 8, false);
  inputs->sheet.summary.shown = 7;
  gw_drawing_clear (drawing);
  gw_figure_summary (drawing, (GwBox){ 0, 0, 240, 300 }, &inputs->sheet.summary);
  g_assert_cmpuint (count_kind (drawing, GW_MARK_OPTION + 7), ==, 1);
  g_assert_cmpuint (count_kind (drawing, GW_MARK_OPTION + 6), ==, 0);
  sample_figures_clear (inputs);
  gw_drawing_free (drawing);
  g_free (inputs);
}

/* Whether every word of @text is a word of a mark to the left of @right. */
static bool
has_words (const GwDrawing *drawing,
           const char      *text,
           double           right)
{
  g_auto (GStrv) words = g_strsplit (text, " ", -1);

  for (char **word = words; *word != NULL; word++)
    {
      bool is_there = false;

      for (size_t i = 0; i < gw_drawing_n (drawing) && !is_there; i++)
        {
          const GwMark *mark = gw_drawing_mark (drawing, i);
          g_auto (GStrv) in = mark->text != NULL ? g_strsplit (mark->text, " ", -1) : NULL;

          is_there = in != NULL && mark->box.x < right &&
                     g_strv_contains ((const char *const *) in, *word);
        }
      if (!is_there)
        return false;
    }

  return true;
}

/* Labels fold where columns are many; they are never cut, whatever the room, and no
 * row is without its name. */
static void
test_summary_labels (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);

  for (size_t n = 1; n <= 8; n++)
    for (double width = 160; width < 500; width += 20)
      {
        GwDrawing             *drawing = gw_drawing_new (gw_theme_get (false));
        const GwSummaryFigure *summary = &inputs->sheet.summary;
        g_autofree char       *where = g_strdup_printf ("%zu options, %.0f wide", n, width);

        sample_figures_init (inputs, SAMPLE_FOLDED, n, false);
        gw_figure_summary (drawing, (GwBox){ 0, 0, width, 500 }, summary);
        g_assert_cmpuint (gw_drawing_n (drawing), >, 0);
        assert_inside (drawing, &(GwBox){ 0, 0, width, 500 }, where);
        assert_apart (drawing, where);
        for (size_t i = 0; i < summary->n_rows; i++)
          if (!has_words (drawing, summary->rows[i].label, 0.5 * width))
            fault ("%s: \"%s\" is cut", where, summary->rows[i].label);
        sample_figures_clear (inputs);
        gw_drawing_free (drawing);
      }
  g_free (inputs);
}

/* At four options a narrow column has all columns, each
 * with its bands. */
static void
test_summary_folds (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  GwDrawing     *drawing = gw_drawing_new (gw_theme_get (false));

  sample_figures_init (inputs, SAMPLE_FOLDED, 4, false);
  gw_figure_summary (drawing, (GwBox){ 0, 0, 230, 420 }, &inputs->sheet.summary);
  for (int i = 0; i < 4; i++)
    g_assert_cmpuint (count_kind (drawing, GW_MARK_OPTION + (GwMarkKind) i), ==, 1);
  g_assert_cmpuint (count_containing (drawing, "±"), >=, 4);
  g_assert_cmpuint (count_text (drawing, "all-up mass"), ==, 0);
  g_assert_cmpuint (count_text (drawing, "all-up"), ==, 1);
  g_assert_cmpuint (count_text (drawing, "…"), ==, 0);
  sample_figures_clear (inputs);
  gw_drawing_free (drawing);
  g_free (inputs);
}

/* The outline of the item that is moved, at the place where it balances. */
static const GwMark *
find_outline (const GwDrawing *drawing)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    if (gw_drawing_mark (drawing, i)->line == GW_LINE_PHANTOM &&
        gw_drawing_mark (drawing, i)->is_closed)
      return gw_drawing_mark (drawing, i);

  return NULL;
}

static void
test_wanted_place (void)
{
  SampleFigures          *inputs = g_new (SampleFigures, 1);
  const GwAirframeFigure *figure = &inputs->sheet.planform;
  GwBox                   box = { 0, 0, 900, 700 };

  for (GwView view = GW_VIEW_TOP; view < GW_N_VIEWS; view++)
    {
      GwDrawing    *drawing = gw_drawing_new (gw_theme_get (false));
      const GwItem *item;
      const GwMark *outline, *there;
      double        scale;

      sample_figures_init (inputs, SAMPLE_FOLDED, 1, false);
      item = &figure->aircraft->items[figure->aircraft->movable];
      inputs->results.value[GW_RESULT_SLIDE] = 0.05;
      inputs->results.value[GW_RESULT_SLIDE_LEFT] = 0.01;
      scale = view == GW_VIEW_TOP ? gw_figure_planform (drawing, box, figure)
                                  : gw_figure_side (drawing, box, figure);
      assert_inside (drawing, &box, "wanted place");
      assert_apart (drawing, "wanted place");
      outline = find_outline (drawing);
      g_assert_nonnull (outline);
      g_assert_cmpint (outline->target.group, ==, -1); /* not a thing to be taken hold of */
      g_assert_cmpuint (count_text (drawing, "to balance"), ==, 1);
      there = &(GwMark){ 0 };
      for (size_t i = 0; i < gw_drawing_n (drawing); i++)
        {
          const GwMark *mark = gw_drawing_mark (drawing, i);

          if (mark->target.group == GW_GROUP_ITEM &&
              mark->target.owner == figure->aircraft->movable && mark->is_filled)
            there = mark;
        }
      /* 40 mm of the way aft; the boxes hold the lines, of the same width. */
      if (view == GW_VIEW_TOP)
        g_assert_cmpfloat_with_epsilon (outline->box.y - there->box.y, 0.04 * scale, 1e-6);
      else
        g_assert_cmpfloat_with_epsilon (outline->box.x - there->box.x, 0.04 * scale, 1e-6);
      g_assert_cmpfloat (item->size[0], >, 0.0);

      gw_drawing_clear (drawing);
      inputs->results.value[GW_RESULT_SLIDE] = inputs->results.value[GW_RESULT_SLIDE_LEFT] = 0.0;
      if (view == GW_VIEW_TOP)
        gw_figure_planform (drawing, box, figure);
      else
        gw_figure_side (drawing, box, figure);
      g_assert_null (find_outline (drawing));
      g_assert_cmpuint (count_text (drawing, "to balance"), ==, 0);
      sample_figures_clear (inputs);
      gw_drawing_free (drawing);
    }
  g_free (inputs);
}

/* Points of the first option's curve. */
static const double *
curve_of (const GwDrawing *drawing)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      if (mark->line == GW_LINE_OPTION && mark->n == GW_CURVE_N)
        return gw_drawing_points (drawing) + 2 * mark->first;
    }

  g_assert_not_reached ();
}

static double
most_apart (const double *a,
            const double *b)
{
  double most = 0;

  for (size_t i = 0; i < 2 * GW_CURVE_N; i++)
    most = fmax (most, fabs (a[i] - b[i]));

  return most;
}

/* What follows stays while that is less than a quarter of a point off, and is exact beyond. */
static void
test_curve_stays (void)
{
  static const double factors[] = { 1.0002, 1.01 };
  const GwBox         box = { 0, 0, 400, 300 };
  SampleFigures      *inputs = g_new (SampleFigures, 1);
  GwDrawing          *drawings[3];

  sample_figures_init (inputs, SAMPLE_FOLDED, 1, false);
  for (size_t i = 0; i < 3; i++)
    drawings[i] = gw_drawing_new (gw_theme_get (false));
  gw_figure_stall (drawings[0], box, &inputs->sheet.stall);

  for (size_t k = 0; k < G_N_ELEMENTS (factors); k++)
    {
      const double *curves[3];

      for (size_t i = 0; i < GW_CURVE_N; i++)
        inputs->curves[0][0][i] = inputs->results.curve[i] * factors[k];
      gw_drawing_follow (drawings[2], drawings[0]);
      for (size_t i = 1; i < 3; i++)
        {
          gw_drawing_clear (drawings[i]);
          gw_figure_stall (drawings[i], box, &inputs->sheet.stall);
        }
      for (size_t i = 0; i < 3; i++)
        curves[i] = curve_of (drawings[i]);

      g_assert_cmpfloat (most_apart (curves[1], curves[0]), >, k == 0 ? 0.02 : 0.25);
      g_assert_cmpfloat (most_apart (curves[2], curves[k == 0 ? 0 : 1]), ==, 0);
      g_assert_cmpfloat (most_apart (curves[2], curves[1]), <=, 0.25);
    }

  for (size_t i = 0; i < 3; i++)
    gw_drawing_free (drawings[i]);
  sample_figures_clear (inputs);
  g_free (inputs);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/figures/layout/figures", test_figures);
  g_test_add_func ("/figures/layout/figures-in-inches", test_figures_in_inches);
  g_test_add_func ("/figures/layout/sheets", test_sheets);
  g_test_add_func ("/figures/layout/stated-scale", test_stated_scale);
  g_test_add_func ("/figures/planform/to-scale", test_planform_to_scale);
  g_test_add_func ("/figures/planform/structure", test_planform_structure);
  g_test_add_func ("/figures/planform/in-inches", test_planform_in_inches);
  g_test_add_func ("/figures/planform/thirty-items", test_thirty_items);
  g_test_add_func ("/figures/side/ground", test_ground);
  g_test_add_func ("/figures/planform/wanted-place", test_wanted_place);
  g_test_add_func ("/figures/layout/without-answers", test_without_answers);
  g_test_add_func ("/figures/stall/curve-stays", test_curve_stays);
  g_test_add_func ("/figures/summary/all-options", test_all_options);
  g_test_add_func ("/figures/summary/decimals", test_decimals);
  g_test_add_func ("/figures/summary/gives-way", test_summary_gives_way);
  g_test_add_func ("/figures/summary/labels", test_summary_labels);
  g_test_add_func ("/figures/summary/folds", test_summary_folds);

  return g_test_run ();
}
