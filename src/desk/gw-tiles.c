/* gw-tiles.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-tiles.h"

#include <math.h>

#define SIDE 128 /* of a tile [pixel] */
/* Tiles out of sight are kept for when the sheet is moved back, up to so many. */
#define MOST 512

typedef struct
{
  int              column, row;
  GwBox            soiled; /* what is to be inked anew [pt]; no width: nothing */
  cairo_surface_t *ink;
  GdkTexture      *texture; /* of the ink */
} Tile;

struct _GwTiles
{
  GHashTable *tiles; /* of Tile, by its place */
  double      point; /* that they were inked at */
  int         scale;
};

static guint
tile_hash (gconstpointer key)
{
  const Tile *tile = key;

  return (guint) tile->column * 8191u + (guint) tile->row;
}

static gboolean
tile_equal (gconstpointer a,
            gconstpointer b)
{
  const Tile *one = a, *other = b;

  return one->column == other->column && one->row == other->row;
}

static void
tile_free (gpointer data)
{
  Tile *tile = data;

  g_clear_object (&tile->texture);
  g_clear_pointer (&tile->ink, cairo_surface_destroy);
  g_free (tile);
}

GwTiles *
gw_tiles_new (void)
{
  GwTiles *tiles = g_new0 (GwTiles, 1);

  tiles->tiles = g_hash_table_new_full (tile_hash, tile_equal, NULL, tile_free);
  return tiles;
}

void
gw_tiles_free (GwTiles *tiles)
{
  g_hash_table_unref (tiles->tiles);
  g_free (tiles);
}

void
gw_tiles_clear (GwTiles *tiles)
{
  g_hash_table_remove_all (tiles->tiles);
}

static GwBox
region_of (const GwTiles *tiles,
           const Tile    *tile)
{
  const double side = SIDE / tiles->point;

  return (GwBox){ tile->column * side, tile->row * side, side, side };
}

static gboolean
do_meet (const GwBox *a,
         const GwBox *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height &&
         b->y < a->y + a->height;
}

static GwBox
both (const GwBox *a,
      const GwBox *b)
{
  const double x = fmin (a->x, b->x), y = fmin (a->y, b->y);

  if (!(a->width > 0.0))
    return *b;

  return (GwBox){ x, y, fmax (a->x + a->width, b->x + b->width) - x,
                  fmax (a->y + a->height, b->y + b->height) - y };
}

void
gw_tiles_soil (GwTiles     *tiles,
               const GwBox *box)
{
  GHashTableIter iter;
  gpointer       key;

  g_hash_table_iter_init (&iter, tiles->tiles);
  while (g_hash_table_iter_next (&iter, &key, NULL))
    {
      Tile       *tile = key;
      const GwBox region = region_of (tiles, tile);

      if (do_meet (&region, box))
        tile->soiled = both (&tile->soiled, box);
    }
}

/* Never inked upon again while a texture shows it. */
static GdkTexture *
texture_new (cairo_surface_t *surface)
{
  const int   width = cairo_image_surface_get_width (surface);
  const int   height = cairo_image_surface_get_height (surface);
  const gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = NULL;

  cairo_surface_flush (surface);
  bytes = g_bytes_new_with_free_func (
    cairo_image_surface_get_data (surface), stride * (gsize) height,
    (GDestroyNotify) cairo_surface_destroy, cairo_surface_reference (surface));
  return gdk_memory_texture_new (width, height, GDK_MEMORY_DEFAULT, bytes, stride);
}

/* To whole pixels of the screen, or its rim would be inked upon itself. */
static void
clip_to (cairo_t           *cr,
         const GwTilesView *view,
         const GwBox       *region,
         GwBox             *soiled)
{
  const double zoom = view->scale * view->point;
  const double x0 = floor ((soiled->x - region->x) * zoom);
  const double y0 = floor ((soiled->y - region->y) * zoom);
  const double x1 = ceil ((soiled->x + soiled->width - region->x) * zoom);
  const double y1 = ceil ((soiled->y + soiled->height - region->y) * zoom);

  cairo_rectangle (cr, x0, y0, x1 - x0, y1 - y0);
  cairo_clip (cr);
  *soiled = (GwBox){ region->x + x0 / zoom, region->y + y0 / zoom, (x1 - x0) / zoom,
                     (y1 - y0) / zoom };
}

static void
ink (GwTiles           *tiles,
     Tile              *tile,
     const GwTilesView *view)
{
  const int        side = SIDE * view->scale;
  const double    *paper = gw_drawing_theme (view->drawing)->rgb[GW_TONE_PAPER];
  const double     zoom = view->scale * view->point;
  const GwBox      region = region_of (tiles, tile);
  GwBox            soiled = tile->soiled;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, side, side);
  cairo_t         *cr = cairo_create (surface);

  if (tile->ink != NULL)
    {
      cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
      cairo_set_source_surface (cr, tile->ink, 0.0, 0.0);
      cairo_paint (cr);
      cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
    }
  clip_to (cr, view, &region, &soiled);
  cairo_set_source_rgb (cr, paper[0], paper[1], paper[2]);
  cairo_paint (cr);
  cairo_scale (cr, zoom, zoom);
  cairo_translate (cr, -region.x, -region.y);
  gw_drawing_ink_within (view->drawing, cr, &soiled);
  if (view->ghost != NULL)
    gw_drawing_ink_ghost (view->ghost, cr, view->ghost_marks, &soiled);
  cairo_destroy (cr);

  g_clear_object (&tile->texture);
  g_clear_pointer (&tile->ink, cairo_surface_destroy);
  tile->ink = surface;
  tile->texture = texture_new (surface);
  tile->soiled.width = 0.0;
}

static Tile *
get_tile (GwTiles           *tiles,
          int                column,
          int                row,
          const GwTilesView *view)
{
  const Tile key = { .column = column, .row = row };
  Tile      *tile = g_hash_table_lookup (tiles->tiles, &key);

  if (tile == NULL)
    {
      tile = g_new (Tile, 1);
      *tile = key;
      tile->soiled = region_of (tiles, tile);
      g_hash_table_add (tiles->tiles, tile);
    }
  if (tile->soiled.width > 0.0)
    ink (tiles, tile, view);

  return tile;
}

void
gw_tiles_snapshot (GwTiles           *tiles,
                   const GwTilesView *view,
                   GtkSnapshot       *snapshot)
{
  const int left = (int) floor (view->x / SIDE), top = (int) floor (view->y / SIDE);

  if (tiles->point != view->point || tiles->scale != view->scale ||
      g_hash_table_size (tiles->tiles) > MOST)
    gw_tiles_clear (tiles);
  tiles->point = view->point;
  tiles->scale = view->scale;

  for (int row = top; row * SIDE < view->y + view->height; row++)
    for (int column = left; column * SIDE < view->x + view->width; column++)
      gtk_snapshot_append_texture (
        snapshot, get_tile (tiles, column, row, view)->texture,
        &GRAPHENE_RECT_INIT ((float) (column * SIDE - view->x), (float) (row * SIDE - view->y),
                             SIDE, SIDE));
}
