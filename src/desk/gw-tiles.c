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
  GArray          *soiled; /* of GwBox: what is to be inked anew [pt] */
  cairo_surface_t *ink;
  GskRenderNode   *node; /* that shows the ink */
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

  g_clear_pointer (&tile->node, gsk_render_node_unref);
  g_clear_pointer (&tile->ink, cairo_surface_destroy);
  g_array_unref (tile->soiled);
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
around (const GwBox *a,
        const GwBox *b)
{
  const double x = fmin (a->x, b->x), y = fmin (a->y, b->y);

  return (GwBox){ x, y, fmax (a->x + a->width, b->x + b->width) - x,
                  fmax (a->y + a->height, b->y + b->height) - y };
}

static double
area (const GwBox *box)
{
  return box->width * box->height;
}

/* Boxes that touch become one, unless that takes in much more: few large ones are inked faster
 * than many small ones. */
static void
soil_tile (Tile        *tile,
           const GwBox *box)
{
  GwBox all = *box;

  for (guint i = tile->soiled->len; i-- > 0;)
    {
      const GwBox *other = &g_array_index (tile->soiled, GwBox, i);
      const GwBox  both = around (&all, other);

      if (!do_meet (&all, other) || area (&both) > 1.5 * (area (&all) + area (other)))
        continue;
      all = both;
      g_array_remove_index_fast (tile->soiled, i);
      i = tile->soiled->len; /* the larger one may touch others */
    }

  g_array_append_val (tile->soiled, all);
}

static GwBox
shared (const GwBox *a,
        const GwBox *b)
{
  const double x = fmax (a->x, b->x), y = fmax (a->y, b->y);

  return (GwBox){ x, y, fmin (a->x + a->width, b->x + b->width) - x,
                  fmin (a->y + a->height, b->y + b->height) - y };
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
      const GwBox part = shared (&region, box);

      if (do_meet (&region, box))
        soil_tile (tile, &part);
    }
}

/* A cairo node shows the surface as it is; a texture would be converted again and again by the
 * cairo renderer. The surface is not inked upon any more from here on. */
static GskRenderNode *
node_new (const Tile *tile)
{
  GskRenderNode *node = gsk_cairo_node_new (&GRAPHENE_RECT_INIT (
    (float) (tile->column * SIDE), (float) (tile->row * SIDE), SIDE, SIDE));
  cairo_t       *cr = gsk_cairo_node_get_draw_context (node);

  cairo_set_source_surface (cr, tile->ink, tile->column * SIDE, tile->row * SIDE);
  cairo_paint (cr);
  cairo_destroy (cr);
  return node;
}

/* To whole pixels of the screen, or its rim would be inked upon itself. */
static void
add_to_clip (cairo_t     *cr,
             double       zoom,
             const GwBox *region,
             GwBox       *box)
{
  const double x0 = floor ((box->x - region->x) * zoom);
  const double y0 = floor ((box->y - region->y) * zoom);
  const double x1 = ceil ((box->x + box->width - region->x) * zoom);
  const double y1 = ceil ((box->y + box->height - region->y) * zoom);

  cairo_rectangle (cr, x0, y0, x1 - x0, y1 - y0);
  *box = (GwBox){ region->x + x0 / zoom, region->y + y0 / zoom, (x1 - x0) / zoom,
                  (y1 - y0) / zoom };
}

/* Where nothing has changed, the picture before. */
static cairo_surface_t *
surface_new (const Tile *tile,
             int         scale)
{
  cairo_surface_t *surface =
    cairo_image_surface_create (CAIRO_FORMAT_ARGB32, SIDE * scale, SIDE * scale);
  cairo_t *cr;

  if (tile->ink == NULL)
    return surface;

  cr = cairo_create (surface);
  cairo_scale (cr, scale, scale);
  cairo_set_operator (cr, CAIRO_OPERATOR_SOURCE);
  cairo_set_source_surface (cr, tile->ink, 0.0, 0.0);
  cairo_paint (cr);
  cairo_destroy (cr);
  return surface;
}

static void
ink (GwTiles           *tiles,
     Tile              *tile,
     const GwTilesView *view)
{
  const double    *paper = gw_drawing_theme (view->drawing)->rgb[GW_TONE_PAPER];
  const double     zoom = view->scale * view->point;
  const GwBox      region = region_of (tiles, tile);
  GwBox           *boxes = (GwBox *) (gpointer) tile->soiled->data;
  cairo_surface_t *surface = surface_new (tile, view->scale);
  cairo_t         *cr = cairo_create (surface);

  for (guint i = 0; i < tile->soiled->len; i++)
    add_to_clip (cr, zoom, &region, &boxes[i]);
  cairo_clip (cr);
  cairo_set_source_rgb (cr, paper[0], paper[1], paper[2]);
  cairo_paint (cr);
  cairo_scale (cr, zoom, zoom);
  cairo_translate (cr, -region.x, -region.y);
  gw_drawing_ink_within (view->drawing, cr, tile->soiled->len, boxes);
  if (view->ghost != NULL)
    gw_drawing_ink_ghost (view->ghost, cr, view->ghost_marks, tile->soiled->len, boxes);
  cairo_destroy (cr);

  cairo_surface_set_device_scale (surface, view->scale, view->scale);
  g_clear_pointer (&tile->node, gsk_render_node_unref);
  g_clear_pointer (&tile->ink, cairo_surface_destroy);
  tile->ink = surface;
  tile->node = node_new (tile);
  g_array_set_size (tile->soiled, 0);
}

static Tile *
get_tile (GwTiles           *tiles,
          int                column,
          int                row,
          const GwTilesView *view)
{
  const Tile key = { .column = column, .row = row };
  Tile      *tile = g_hash_table_lookup (tiles->tiles, &key);
  GwBox      region;

  if (tile == NULL)
    {
      tile = g_new (Tile, 1);
      *tile = key;
      tile->soiled = g_array_new (FALSE, FALSE, sizeof (GwBox));
      region = region_of (tiles, tile);
      g_array_append_val (tile->soiled, region);
      g_hash_table_add (tiles->tiles, tile);
    }
  if (tile->soiled->len > 0)
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

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot,
                          &GRAPHENE_POINT_INIT ((float) -view->x, (float) -view->y));
  for (int row = top; row * SIDE < view->y + view->height; row++)
    for (int column = left; column * SIDE < view->x + view->width; column++)
      gtk_snapshot_append_node (snapshot, get_tile (tiles, column, row, view)->node);
  gtk_snapshot_restore (snapshot);
}
