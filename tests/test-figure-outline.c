/* test-figure-outline.c - the outline of a section stays in its box and to scale
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "engine/gw-outline-check.h"
#include "figures/gw-figure.h"

static const GwBox boxes[] = {
  { 0, 0, 92, 24 },
  { 10, 20, 160, 120 },
  { 0, 0, 480, 160 },
  { 5, 5, 40, 300 },
  { 0, 0, 8, 4 },
};

static const char *const codes[] = { "0009", "6412", "23112" };

static void
check_within (const GwDrawing *drawing,
              const GwBox     *box)
{
  const double *points = gw_drawing_points (drawing);

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      for (size_t k = mark->first; k < mark->first + mark->n; k++)
        {
          g_assert_cmpfloat (points[2 * k], >=, box->x - 1e-9);
          g_assert_cmpfloat (points[2 * k], <=, box->x + box->width + 1e-9);
          g_assert_cmpfloat (points[2 * k + 1], >=, box->y - 1e-9);
          g_assert_cmpfloat (points[2 * k + 1], <=, box->y + box->height + 1e-9);
        }
      if (mark->kind == GW_MARK_TEXT)
        g_assert_cmpfloat (mark->box.x + mark->box.width, <=, box->x + box->width + 0.5);
    }
}

/* A chord is as long as the scale says and heights have the same scale. */
static void
check_scale (const GwDrawing *drawing,
             const GwOutline *outline,
             double           scale)
{
  const GwMark *mark = gw_drawing_mark (drawing, 0);
  const double *points = &gw_drawing_points (drawing)[2 * mark->first];
  const size_t  nose = GW_OUTLINE_N - 1;

  g_assert_cmpuint (mark->n, ==, 2 * GW_OUTLINE_N);
  g_assert_true (mark->is_closed);
  g_assert_cmpfloat_with_epsilon (points[0] - points[2 * nose], scale, 1e-9);
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      g_assert_cmpfloat_with_epsilon (points[2 * (nose - i) + 1] - points[2 * nose + 1],
                                      -scale * (outline->upper[i] - outline->upper[0]), 1e-9);
      g_assert_cmpfloat_with_epsilon (points[2 * (GW_OUTLINE_N + i) + 1] -
                                        points[2 * GW_OUTLINE_N + 1],
                                      -scale * (outline->lower[i] - outline->lower[0]), 1e-9);
    }
}

static void
test_alone (void)
{
  for (gsize c = 0; c < G_N_ELEMENTS (codes); c++)
    for (gsize b = 0; b < G_N_ELEMENTS (boxes); b++)
      {
        GwDrawing      *drawing = gw_drawing_new (gw_theme_get (FALSE));
        GwOutline       outline;
        GwOutlineFigure figure = { &outline, NULL };
        double          scale;

        g_assert_cmpint (gw_outline_naca (codes[c], &outline), ==, GW_OK);
        scale = gw_figure_outline (drawing, boxes[b], &figure);
        check_within (drawing, &boxes[b]);
        if (boxes[b].width > 8)
          check_scale (drawing, &outline, scale);
        gw_drawing_free (drawing);
      }
}

/* Two outlines, and what they differ by as large as the strip allows; nothing if nothing. */
static void
test_over_another (void)
{
  for (gsize b = 0; b < G_N_ELEMENTS (boxes); b++)
    for (int is_other = 0; is_other < 2; is_other++)
      {
        GwDrawing      *drawing = gw_drawing_new (gw_theme_get (TRUE));
        GwOutline       outline, other;
        GwOutlineFigure figure = { &outline, &other };
        gsize           n_text = 0;

        g_assert_cmpint (gw_outline_naca ("2412", &outline), ==, GW_OK);
        other = outline;
        if (is_other)
          other.upper[40] += 2e-3;
        gw_figure_outline (drawing, boxes[b], &figure);
        check_within (drawing, &boxes[b]);
        for (size_t i = 0; i < gw_drawing_n (drawing); i++)
          n_text += gw_drawing_mark (drawing, i)->kind == GW_MARK_TEXT;
        g_assert_cmpuint (n_text, ==, is_other && boxes[b].height >= 80);
        gw_drawing_free (drawing);
      }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/figures/outline/alone", test_alone);
  g_test_add_func ("/figures/outline/over-another", test_over_another);

  return g_test_run ();
}
