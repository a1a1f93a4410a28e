/* test-drawing.c - marks, measures, ticks, hits and contrast
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-drawing.h"
#include "figures/gw-layout.h"

static double
width_of (GwDrawing  *drawing,
          const char *text,
          GwFont      font,
          GwTextStyle style)
{
  double width;

  gw_drawing_measure (drawing, text, font, style, &width, NULL);
  return width;
}

static void
test_measure (void)
{
  GwDrawing *drawing = gw_drawing_new (gw_theme_get (false));
  double     plain = width_of (drawing, "static margin", GW_FONT_TEXT, GW_STYLE_UPRIGHT);
  double     height, taller;

  /* Tabular figures: columns of numbers stand straight. 1/1024 pt is a Pango unit. */
  g_assert_cmpfloat_with_epsilon (width_of (drawing, "1111", GW_FONT_TEXT, GW_STYLE_UPRIGHT),
                                  width_of (drawing, "8888", GW_FONT_TEXT, GW_STYLE_UPRIGHT),
                                  4.0 / 1024);
  g_assert_cmpfloat (width_of (drawing, "static margin", GW_FONT_TEXT, GW_STYLE_BOLD), >, plain);
  g_assert_cmpfloat (width_of (drawing, "static margin", GW_FONT_SMALL, GW_STYLE_UPRIGHT), <,
                     plain);

  gw_drawing_measure (drawing, "x", GW_FONT_TEXT, GW_STYLE_UPRIGHT, NULL, &height);
  gw_drawing_set_type (drawing, 1.5);
  gw_drawing_measure (drawing, "x", GW_FONT_TEXT, GW_STYLE_UPRIGHT, NULL, &taller);
  /* Metrics are not hinted, so sizes are in proportion; 1 % for the font's own rounding. */
  g_assert_cmpfloat_with_epsilon (
    width_of (drawing, "static margin", GW_FONT_TEXT, GW_STYLE_UPRIGHT) / plain, 1.5, 0.015);
  g_assert_cmpfloat_with_epsilon (taller / height, 1.5, 0.015);
  gw_drawing_free (drawing);
}

static void
test_align (void)
{
  GwDrawing    *drawing = gw_drawing_new (gw_theme_get (false));
  GwMark       *mark = gw_drawing_text (drawing, 100, 50, "1800", GW_FONT_TEXT, GW_TONE_INK);
  const double *at = gw_drawing_points (drawing);
  double        width, height;

  gw_drawing_measure (drawing, "1800", GW_FONT_TEXT, GW_STYLE_UPRIGHT, &width, &height);
  g_assert_cmpfloat (mark->box.x, ==, 100);
  g_assert_cmpfloat (mark->box.y, ==, 50);
  gw_drawing_align (drawing, mark, GW_ALIGN_END, GW_ALIGN_MIDDLE);
  g_assert_cmpfloat_with_epsilon (mark->box.x + mark->box.width, 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (mark->box.y + mark->box.height / 2, 50, 1e-9);

  /* Turned to read from below up, its end lies above its start. */
  mark->turn = G_PI / 2;
  gw_drawing_align (drawing, mark, GW_ALIGN_START, GW_ALIGN_END);
  g_assert_cmpfloat_with_epsilon (mark->box.width, height, 1e-9);
  g_assert_cmpfloat_with_epsilon (mark->box.height, width, 1e-9);
  g_assert_cmpfloat_with_epsilon (mark->box.x + mark->box.width, at[0], 1e-9);
  g_assert_cmpfloat_with_epsilon (mark->box.y + mark->box.height, at[1], 1e-9);
  gw_drawing_free (drawing);
}

static void
test_hit (void)
{
  GwDrawing *drawing = gw_drawing_new (gw_theme_get (false));
  double     square[] = { 0, 0, 100, 0, 100, 100, 0, 100 };
  double     line[] = { 0, 50, 100, 50 };
  GwMark    *mark = gw_drawing_path (drawing, 4, square, GW_LINE_WIDE, GW_TONE_INK);

  mark->is_closed = true;
  mark->target = (GwTarget){ GW_GROUP_SURFACE, 3 };
  mark = gw_drawing_path (drawing, 2, line, GW_LINE_NARROW, GW_TONE_INK);
  mark->target = (GwTarget){ GW_GROUP_ITEM, 7 };
  gw_drawing_symbol (drawing, GW_MARK_DOT, 20, 20, 8, GW_TONE_INK);

  g_assert_cmpint (gw_drawing_hit (drawing, 30, 50, 2).owner, ==, 7);
  g_assert_cmpint (gw_drawing_hit (drawing, 30, 51.5, 2).owner, ==, 7);
  g_assert_cmpint (gw_drawing_hit (drawing, 30, 54, 2).owner, ==, 3);
  g_assert_cmpint (gw_drawing_hit (drawing, 20, 20, 2).owner, ==,
                   3); /* a mark of nothing lets through */
  g_assert_cmpint (gw_drawing_hit (drawing, 101.5, 70, 2).owner, ==, 3);
  g_assert_cmpint (gw_drawing_hit (drawing, 103, 70, 2).group, ==, -1);

  gw_drawing_clear (drawing);
  g_assert_cmpuint (gw_drawing_n (drawing), ==, 0);
  g_assert_cmpint (gw_drawing_hit (drawing, 30, 50, 2).group, ==, -1);
  gw_drawing_free (drawing);
}

/* Mantissa of a step: 1, 2 or 5. */
static void
assert_nice (double step)
{
  double mantissa = step / pow (10, floor (log10 (step) + 1e-9));

  g_assert_true (fabs (mantissa - 1) < 1e-6 || fabs (mantissa - 2) < 1e-6 ||
                 fabs (mantissa - 5) < 1e-6);
}

static void
test_ticks (void)
{
  GRand *rand = g_rand_new_with_seed (7);

  for (int i = 0; i < 5000; i++)
    {
      double  low = g_rand_double_range (rand, -100, 100);
      double  span = pow (10, g_rand_double_range (rand, -4, 4));
      int     most = g_rand_int_range (rand, 2, 15);
      GwTicks ticks = gw_ticks (low, low + span, most);
      char    text[64];

      assert_nice (ticks.step);
      g_assert_cmpint (ticks.n, <=, most);
      g_assert_cmpint (ticks.n, >=, 0);
      /* Never so few that a finer step would have fitted: five steps at most for one. */
      g_assert_cmpfloat (span / ticks.step, >, most / 5.5 - 1);
      g_assert_cmpfloat (ticks.first, >=, low - 1e-5 * ticks.step);
      g_assert_cmpfloat (ticks.first + (ticks.n - 1) * ticks.step, <=,
                         low + span + 1e-5 * ticks.step);
      /* The decimals tell all ticks exactly. */
      g_snprintf (text, sizeof text, "%.*f", ticks.decimals, ticks.first + ticks.step);
      g_assert_cmpfloat (fabs (g_ascii_strtod (text, NULL) - ticks.first - ticks.step), <,
                         1e-6 * ticks.step + 1e-12);
    }
  g_assert_cmpint (gw_ticks (6, 8.5, 7).n, ==, 6);
  g_assert_cmpint (gw_ticks (1, 1, 7).n, ==, 0);
  g_assert_cmpint (gw_ticks (0, NAN, 7).n, ==, 0);
  g_assert_cmpfloat_with_epsilon (gw_round_below (0.199), 0.1, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_round_below (0.2), 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (gw_round_below (799), 500, 1e-9);
  g_rand_free (rand);
}

static void
test_text_fit (void)
{
  GwDrawing       *drawing = gw_drawing_new (gw_theme_get (false));
  const char      *text = "Hot-wired core, glass";
  double           full = width_of (drawing, text, GW_FONT_TEXT, GW_STYLE_UPRIGHT);
  g_autofree char *whole = gw_text_fit (drawing, text, GW_FONT_TEXT, GW_STYLE_UPRIGHT, full);
  g_autofree char *cut = gw_text_fit (drawing, text, GW_FONT_TEXT, GW_STYLE_UPRIGHT, full / 2);
  GwBox            box = { 0, 0, full / 2.5, 100 };
  double           used;

  g_assert_cmpstr (whole, ==, text);
  g_assert_true (g_str_has_suffix (cut, "…"));
  g_assert_true (g_str_has_prefix (cut, "Hot-w"));
  g_assert_cmpfloat (width_of (drawing, cut, GW_FONT_TEXT, GW_STYLE_UPRIGHT), <=, full / 2);
  g_assert_null (gw_text_fit (drawing, text, GW_FONT_TEXT, GW_STYLE_UPRIGHT, 3));

  used = gw_text_paragraph (drawing, box, text, GW_FONT_TEXT, GW_TONE_INK, GW_STYLE_UPRIGHT,
                            GW_ALIGN_END);
  g_assert_cmpuint (gw_drawing_n (drawing), >=, 3);
  g_assert_cmpfloat_with_epsilon (
    used, (double) gw_drawing_n (drawing) * gw_text_line (drawing, GW_FONT_TEXT), 1e-6);
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    g_assert_cmpfloat (gw_drawing_mark (drawing, i)->box.width, <=, box.width + 0.01);
  gw_drawing_free (drawing);
}

/* Relative luminance and contrast ratio: W3C, Web Content Accessibility Guidelines 2.1 (2018). */
static double
luminance (const double rgb[3])
{
  static const double weights[] = { 0.2126, 0.7152, 0.0722 };
  double              sum = 0;

  for (int i = 0; i < 3; i++)
    sum += weights[i] * (rgb[i] <= 0.03928 ? rgb[i] / 12.92 : pow ((rgb[i] + 0.055) / 1.055, 2.4));

  return sum;
}

static double
contrast (const GwTheme *theme,
          GwTone         a,
          GwTone         b)
{
  double p = luminance (theme->rgb[a]), q = luminance (theme->rgb[b]);

  return (fmax (p, q) + 0.05) / (fmin (p, q) + 0.05);
}

static void
test_contrast (void)
{
  static const GwTone grounds[] = { GW_TONE_PAPER, GW_TONE_BODY, GW_TONE_SELECTED };

  for (int is_dark = 0; is_dark < 2; is_dark++)
    {
      const GwTheme *theme = gw_theme_get (is_dark);

      g_assert_true (theme->is_dark == is_dark);
      for (size_t i = 0; i < G_N_ELEMENTS (grounds); i++)
        {
          g_assert_cmpfloat (contrast (theme, GW_TONE_INK, grounds[i]), >=, 7);
          g_assert_cmpfloat (contrast (theme, GW_TONE_MID, grounds[i]), >=, 4.5);
          for (int option = 0; option < GW_OPTION_STYLES; option++)
            g_assert_cmpfloat (contrast (theme, GW_TONE_OPTION + (GwTone) option, grounds[i]), >=,
                               3);
        }
      /* Numbers within the mass bars. */
      g_assert_cmpfloat (contrast (theme, GW_TONE_INK, GW_TONE_FAINT), >=, 4.5);
      g_assert_cmpfloat (contrast (theme, GW_TONE_INK, GW_TONE_GRID), >=, 4.5);
      g_assert_cmpfloat (contrast (theme, GW_TONE_PAPER, GW_TONE_MID), >=, 4.5);
    }
}

/* A real minus sign; what shows as zero has none. */
static void
test_signed_number (void)
{
  static const struct
  {
    double      value;
    int         decimals;
    const char *text;
  } cases[] = {
    { -5.2, 0, "\342\210\2225" },
    { -0.4, 0, "0" },
    { -0.04, 1, "0.0" },
    { -0.06, 1, "\342\210\2220.1" },
    { 17.0, 0, "17" },
    { 0.0, 2, "0.00" },
  };
  const GwLengthUnit mm = { "mm", 1000.0, 0 };
  char               text[32];

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gw_signed_number (cases[i].value, cases[i].decimals, text, sizeof text);
      g_assert_cmpstr (text, ==, cases[i].text);
    }

  gw_length_text (&mm, -0.012, text, sizeof text);
  g_assert_cmpstr (text, ==, "\342\210\22212 mm");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/figures/drawing/measure", test_measure);
  g_test_add_func ("/figures/drawing/align", test_align);
  g_test_add_func ("/figures/drawing/hit", test_hit);
  g_test_add_func ("/figures/layout/ticks", test_ticks);
  g_test_add_func ("/figures/layout/text-fit", test_text_fit);
  g_test_add_func ("/figures/theme/contrast", test_contrast);
  g_test_add_func ("/figures/length/signed-number", test_signed_number);

  return g_test_run ();
}
