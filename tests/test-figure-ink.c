/* test-figure-ink.c - every figure on every kind of surface
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "figures/gw-figure.h"
#include "sample-figures.h"

typedef enum
{
  FIGURE_PLANFORM,
  FIGURE_HALF,
  FIGURE_SIDE,
  FIGURE_STALL,
  FIGURE_MASSES,
  FIGURE_SUMMARY,
  FIGURE_SHEET,
  N_FIGURES
} Figure;

#define WIDTH  700
#define HEIGHT 560

static const GwBox box = { 10, 10, WIDTH - 20, HEIGHT - 20 };

static GwDrawing *
lay_out (Figure               figure,
         const SampleFigures *inputs,
         bool                 is_dark)
{
  GwDrawing       *drawing = gw_drawing_new (gw_theme_get (is_dark));
  GwAirframeFigure half = inputs->sheet.planform;

  half.is_half = true;
  switch (figure)
    {
    case FIGURE_PLANFORM:
      gw_figure_planform (drawing, box, &inputs->sheet.planform);
      break;
    case FIGURE_HALF:
      gw_figure_planform (drawing, box, &half);
      break;
    case FIGURE_SIDE:
      gw_figure_side (drawing, box, &inputs->sheet.planform);
      break;
    case FIGURE_STALL:
      gw_figure_stall (drawing, box, &inputs->sheet.stall);
      break;
    case FIGURE_MASSES:
      gw_figure_masses (drawing, box, &inputs->sheet.masses);
      break;
    case FIGURE_SUMMARY:
      gw_figure_summary (drawing, box, &inputs->sheet.summary);
      break;
    case FIGURE_SHEET:
      gw_figure_sheet (drawing, box, &inputs->sheet);
      break;
    case N_FIGURES:
    default:
      g_assert_not_reached ();
    }
  g_assert_cmpuint (gw_drawing_n (drawing), >, 10);

  return drawing;
}

static cairo_status_t
collect (void                *closure,
         const unsigned char *data,
         unsigned int         length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* Inks and checks that the context is as it was. */
static void
ink (const GwDrawing *drawing,
     cairo_surface_t *surface)
{
  cairo_t *cr = cairo_create (surface);
  double   x = 3, y = 4;

  cairo_set_line_width (cr, 11);
  cairo_set_dash (cr, (double[]){ 1, 2 }, 2, 0);
  gw_drawing_ink (drawing, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpfloat (cairo_get_line_width (cr), ==, 11);
  g_assert_cmpint (cairo_get_dash_count (cr), ==, 2);
  g_assert_false (cairo_has_current_point (cr));
  cairo_user_to_device (cr, &x, &y);
  g_assert_cmpfloat (x, ==, 3);
  g_assert_cmpfloat (y, ==, 4);
  cairo_destroy (cr);
}

/* Text that the surface's own backend wrote; @marker has to be found in it. */
static void
check_stream (const GwDrawing *drawing,
              cairo_surface_t *surface,
              GByteArray      *bytes,
              const char      *marker)
{
  ink (drawing, surface);
  cairo_surface_finish (surface);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
  g_assert_cmpuint (bytes->len, >, 2000);
  g_assert_nonnull (g_strstr_len ((const char *) bytes->data, 200, marker));
  g_byte_array_set_size (bytes, 0);
}

/* Within the box, but for half the width of a wide line and the slack of a glyph's edge. */
static void
check_extents (const GwDrawing *drawing)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  double           x, y, width, height;

  ink (drawing, surface);
  cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
  g_assert_cmpfloat (x, >=, box.x - 2);
  g_assert_cmpfloat (y, >=, box.y - 2);
  g_assert_cmpfloat (x + width, <=, box.x + box.width + 2);
  g_assert_cmpfloat (y + height, <=, box.y + box.height + 2);
  g_assert_cmpfloat (width, >, box.width / 4);
  g_assert_cmpfloat (height, >, box.height / 5);
  cairo_surface_destroy (surface);
}

static cairo_surface_t *
image_of (const GwDrawing *drawing)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);

  ink (drawing, surface);
  cairo_surface_flush (surface);
  return surface;
}

static void
check_image (const GwDrawing *drawing)
{
  cairo_surface_t *a = image_of (drawing), *b = image_of (drawing);
  size_t           size = (size_t) cairo_image_surface_get_stride (a) * HEIGHT;
  const guint32   *pixels = (const guint32 *) (void *) cairo_image_surface_get_data (a);
  size_t           n_ink = 0;

  for (size_t i = 0; i < size / 4; i++)
    n_ink += pixels[i] >> 24 > 0;
  g_assert_cmpuint (n_ink, >, 2000);
  g_assert_cmpint (memcmp (pixels, cairo_image_surface_get_data (b), size), ==, 0);
  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
}

static void
test_surfaces (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);
  GByteArray    *bytes = g_byte_array_new ();

  for (int kind = SAMPLE_PRINTED; kind < SAMPLE_N; kind += 2)
    {
      sample_figures_init (inputs, (SampleKind) kind, 4, false);
      for (int figure = 0; figure < N_FIGURES; figure++)
        {
          GwDrawing *drawing = lay_out ((Figure) figure, inputs, false);

          check_image (drawing);
          check_extents (drawing);
          check_stream (drawing,
                        cairo_pdf_surface_create_for_stream (collect, bytes, WIDTH, HEIGHT), bytes,
                        "%PDF");
          check_stream (drawing,
                        cairo_svg_surface_create_for_stream (collect, bytes, WIDTH, HEIGHT), bytes,
                        "<svg");
          gw_drawing_free (drawing);
        }
      sample_figures_clear (inputs);
    }
  g_byte_array_unref (bytes);
  g_free (inputs);
}

static void
assert_same_mark (const GwMark *a,
                  const GwMark *b)
{
  g_assert_cmpint (a->kind, ==, b->kind);
  g_assert_cmpint (a->line, ==, b->line);
  g_assert_cmpint (a->stroke, ==, b->stroke);
  g_assert_cmpint (a->is_filled, ==, b->is_filled);
  g_assert_cmpint (a->fill, ==, b->fill);
  g_assert_cmpint (a->is_hatched, ==, b->is_hatched);
  g_assert_cmpuint (a->n, ==, b->n);
  g_assert_cmpstr (a->text, ==, b->text);
  g_assert_cmpfloat (a->box.x, ==, b->box.x);
  g_assert_cmpfloat (a->box.y, ==, b->box.y);
  g_assert_cmpfloat (a->opacity, ==, b->opacity);
}

/* Dark and light differ in colour alone. */
static void
test_themes (void)
{
  SampleFigures *inputs = g_new (SampleFigures, 1);

  sample_figures_init (inputs, SAMPLE_PRINTED, 4, false);
  for (int figure = 0; figure < N_FIGURES; figure++)
    {
      GwDrawing *light = lay_out ((Figure) figure, inputs, false);
      GwDrawing *dark = lay_out ((Figure) figure, inputs, true);

      g_assert_cmpuint (gw_drawing_n (light), ==, gw_drawing_n (dark));
      for (size_t i = 0; i < gw_drawing_n (light); i++)
        assert_same_mark (gw_drawing_mark (light, i), gw_drawing_mark (dark, i));
      gw_drawing_free (light);
      gw_drawing_free (dark);
    }
  sample_figures_clear (inputs);
  g_free (inputs);
}

/* A sample of one marker, or of one line, in black as an alpha image. */
static cairo_surface_t *
sample_of (int  style,
           bool is_line)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 64, 64);
  GwDrawing       *drawing = gw_drawing_new (gw_theme_get (false));
  double           xy[] = { 0, 32, 64, 32 };
  cairo_t         *cr = cairo_create (surface);

  if (is_line)
    gw_drawing_path (drawing, 2, xy, GW_LINE_OPTION + (GwLineType) style, GW_TONE_INK);
  else
    gw_drawing_symbol (drawing, GW_MARK_OPTION + (GwMarkKind) style, 32, 32, 40, GW_TONE_INK);
  gw_drawing_ink (drawing, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  gw_drawing_free (drawing);

  return surface;
}

static size_t
count_differences (cairo_surface_t *a,
                   cairo_surface_t *b)
{
  const unsigned char *p = cairo_image_surface_get_data (a), *q = cairo_image_surface_get_data (b);
  size_t               n = 0;

  for (int i = 0; i < cairo_image_surface_get_stride (a) * 64; i++)
    n += abs (p[i] - q[i]) > 64;

  return n;
}

/* Options can be told apart by marker and by line alone, on a black and white print. */
static void
test_patterns (void)
{
  for (int is_line = 0; is_line < 2; is_line++)
    for (int a = 0; a < GW_OPTION_STYLES; a++)
      for (int b = 0; b < a; b++)
        {
          cairo_surface_t *p = sample_of (a, is_line), *q = sample_of (b, is_line);

          /* Of some 1000 pixels that a marker covers, and 128 of a line. */
          g_assert_cmpuint (count_differences (p, q), >=, is_line ? 12 : 100);
          cairo_surface_destroy (p);
          cairo_surface_destroy (q);
        }
}

/* A long curve is stroked in pieces; its dashes must run on as if it were one. */
static void
test_long_dashes (void)
{
  cairo_surface_t *surfaces[2];
  double           xy[2 * 400];

  for (int i = 0; i < 2; i++)
    {
      GwDrawing *drawing = gw_drawing_new (gw_theme_get (false));
      size_t     n = i == 0 ? 2 : 400;
      cairo_t   *cr;

      surfaces[i] = cairo_image_surface_create (CAIRO_FORMAT_A8, 64, 64);
      for (size_t k = 0; k < n; k++)
        {
          xy[2 * k] = 64 * (double) k / (double) (n - 1);
          xy[2 * k + 1] = 32;
        }
      gw_drawing_path (drawing, n, xy, GW_LINE_OPTION + 2, GW_TONE_INK);
      cr = cairo_create (surfaces[i]);
      gw_drawing_ink (drawing, cr);
      cairo_destroy (cr);
      cairo_surface_flush (surfaces[i]);
      gw_drawing_free (drawing);
    }
  g_assert_cmpuint (count_differences (surfaces[0], surfaces[1]), ==, 0);
  cairo_surface_destroy (surfaces[0]);
  cairo_surface_destroy (surfaces[1]);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/figures/ink/surfaces", test_surfaces);
  g_test_add_func ("/figures/ink/themes", test_themes);
  g_test_add_func ("/figures/ink/patterns", test_patterns);
  g_test_add_func ("/figures/ink/long-dashes", test_long_dashes);

  return g_test_run ();
}
