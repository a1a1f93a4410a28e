/* test-desk-tiles.c - the sheet in pieces is the sheet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "desk/gw-tiles.h"
#include "report/gw-sheet.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"

#define WIDTH  620 /* [pixel] */
#define HEIGHT 430
/* Cairo rounds places to 1/256 pixel, and does so anew from the corner of each piece. It samples
 * an edge on 15 lines a pixel (from memory), so one line more or less is 17 levels of 255; two
 * edges may lie in one pixel. */
#define STEPS 34

/* Since it places letters between pixels (1.17.4), cairo takes the palest row off those that the
 * edge of a piece may meet: here 58 to 212 values. The thinnest line across a piece has 384. */
#define FEW (cairo_version () < CAIRO_VERSION_ENCODE (1, 17, 4) ? 0 : 300)

typedef struct
{
  GwEvaluation *before, *after;
} Pair;

static void
set_up (Pair         *pair,
        gconstpointer data)
{
  g_autofree char *path =
    g_test_build_filename (G_TEST_DIST, "..", "data/demo/reed-bed.gramwright", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GwStudy) study = gw_study_load (file, NULL, NULL), moved = NULL;
  g_autoptr (JsonNode) place = json_node_init_double (json_node_alloc (), 190.0);

  pair->before = gw_evaluation_quick (study, NULL, NULL);
  moved = gw_edit_set (study, 0, FALSE, "equipment/battery/x_mm", place, NULL);
  pair->after = gw_evaluation_quick (moved, pair->before, NULL);
  g_assert_nonnull (pair->after);
}

static void
tear_down (Pair         *pair,
           gconstpointer data)
{
  gw_evaluation_unref (pair->before);
  gw_evaluation_unref (pair->after);
}

static void
lay_out (GwEvaluation *evaluation,
         GwDrawing    *drawing)
{
  g_autoptr (GwSheet) sheet = gw_sheet_new (evaluation, 0, FALSE, NULL);

  gw_sheet_layout (sheet, GW_FIGURE_SHEET, WIDTH, HEIGHT, drawing);
}

static cairo_surface_t *
surface_new (int scale)
{
  cairo_surface_t *surface =
    cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH * scale, HEIGHT * scale);

  cairo_surface_set_device_scale (surface, scale, scale);
  return surface;
}

static cairo_surface_t *
ink_at_once (const GwTilesView *view)
{
  const double    *paper = gw_drawing_theme (view->drawing)->rgb[GW_TONE_PAPER];
  cairo_surface_t *surface = surface_new (view->scale);
  cairo_t         *cr;

  /* In the scale of the context: of the surface's own, cairo takes no account when it chooses how
   * many pieces make an arc. */
  cairo_surface_set_device_scale (surface, 1.0, 1.0);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, paper[0], paper[1], paper[2]);
  cairo_paint (cr);
  cairo_scale (cr, view->scale, view->scale);
  cairo_translate (cr, -view->x, -view->y);
  cairo_scale (cr, view->point, view->point);
  gw_drawing_ink (view->drawing, cr);
  cairo_destroy (cr);
  return surface;
}

static cairo_surface_t *
ink_in_tiles (GwTiles           *tiles,
              const GwTilesView *view)
{
  GtkSnapshot     *snapshot = gtk_snapshot_new ();
  cairo_surface_t *surface = surface_new (view->scale);
  cairo_t         *cr = cairo_create (surface);
  GskRenderNode   *node;

  gw_tiles_snapshot (tiles, view, snapshot);
  node = gtk_snapshot_free_to_node (snapshot);
  gsk_render_node_draw (node, cr);
  gsk_render_node_unref (node);
  cairo_destroy (cr);
  return surface;
}

static void
expect_same (GwTiles           *tiles,
             const GwTilesView *view)
{
  cairo_surface_t *whole = ink_at_once (view), *pieces = ink_in_tiles (tiles, view);
  const int        n = cairo_image_surface_get_stride (whole) * HEIGHT * view->scale;
  const guchar    *a, *b;
  int              n_far = 0;

  cairo_surface_flush (whole);
  cairo_surface_flush (pieces);
  a = cairo_image_surface_get_data (whole);
  b = cairo_image_surface_get_data (pieces);
  for (int i = 0; i < n; i++)
    n_far += abs (a[i] - b[i]) > STEPS;
  g_assert_cmpint (n_far, <=, FEW);
  cairo_surface_destroy (whole);
  cairo_surface_destroy (pieces);
}

/* A pixel of the picture is a pixel of the screen, at any zoom and place. */
static void
test_whole (Pair         *pair,
            gconstpointer data)
{
  g_autoptr (GwTiles) tiles = gw_tiles_new ();
  GwDrawing  *drawing = gw_drawing_new (gw_theme_get (FALSE));
  GwTilesView view = { .drawing = drawing, .width = WIDTH, .height = HEIGHT };

  lay_out (pair->before, drawing);
  for (view.scale = 1; view.scale <= 2; view.scale++)
    {
      view.x = view.y = 0.0;
      view.point = 1.0;
      expect_same (tiles, &view);
      expect_same (tiles, &view); /* what is kept */
      view.point = 1.75;
      view.x = 131.0;
      view.y = 77.0;
      expect_same (tiles, &view);
      view.x = 210.0;
      expect_same (tiles, &view);
    }
  gw_drawing_free (drawing);
}

static void
soil_cb (const GwBox *box,
         void        *tiles)
{
  gw_tiles_soil (tiles, box);
}

static void
soil (GwTiles         *tiles,
      const GwDrawing *drawing,
      const GwDrawing *other)
{
  g_autofree bool *missing = gw_drawing_missing (drawing, other);

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    if (missing[i])
      gw_drawing_reach (drawing, i, soil_cb, tiles);
}

/* Only what is different is inked, and it is all that is different. Lines that moved by less
 * than an eighth of a point are left: the drawing that is compared holds the same. */
static void
test_change (Pair         *pair,
             gconstpointer data)
{
  g_autoptr (GwTiles) tiles = gw_tiles_new ();
  GwDrawing       *before = gw_drawing_new (gw_theme_get (FALSE));
  GwDrawing       *after = gw_drawing_new (gw_theme_get (FALSE));
  GwTilesView      view = { before, NULL, NULL, 1.0, 1, 0.0, 0.0, WIDTH, HEIGHT };
  cairo_surface_t *old, *new;

  lay_out (pair->before, before);
  gw_drawing_follow (after, before);
  lay_out (pair->after, after);
  old = ink_in_tiles (tiles, &view);
  soil (tiles, before, after);
  soil (tiles, after, before);
  view.drawing = after;
  new = ink_in_tiles (tiles, &view);
  g_assert_cmpint (memcmp (cairo_image_surface_get_data (old), cairo_image_surface_get_data (new),
                           (gsize) cairo_image_surface_get_stride (old) * HEIGHT),
                   !=, 0);

  /* The battery is where it is now, and nowhere else. */
  gw_tiles_clear (tiles);
  cairo_surface_destroy (old);
  old = ink_in_tiles (tiles, &view);
  {
    const guchar *a = cairo_image_surface_get_data (old), *b = cairo_image_surface_get_data (new);
    const int     n = cairo_image_surface_get_stride (old) * HEIGHT;
    int           far = 0;

    for (int i = 0; i < n; i++)
      far += abs (a[i] - b[i]) > 60;
    g_assert_cmpint (far, ==, 0);
  }
  cairo_surface_destroy (old);
  cairo_surface_destroy (new);
  gw_drawing_free (before);
  gw_drawing_free (after);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  if (!gtk_init_check ())
    return 77;

  g_test_add ("/desk/tiles/whole", Pair, NULL, set_up, test_whole, tear_down);
  g_test_add ("/desk/tiles/change", Pair, NULL, set_up, test_change, tear_down);

  return g_test_run ();
}
