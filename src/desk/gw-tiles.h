/* gw-tiles.h - a drawing kept as pictures, so that only what changes is inked anew
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "figures/gw-drawing.h"

G_BEGIN_DECLS

/* The sheet in squares. Each is a picture of its own: those that stay the same are
 * neither inked nor painted again. */
typedef struct _GwTiles GwTiles;

GwTiles *gw_tiles_new (void) G_GNUC_WARN_UNUSED_RESULT;
void     gw_tiles_free (GwTiles *tiles);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwTiles, gw_tiles_free)

/** gw_tiles_clear: everything is to be inked anew. */
void gw_tiles_clear (GwTiles *tiles);

/** gw_tiles_soil: what shows in @box of the drawing is to be inked anew [pt]. */
void gw_tiles_soil (GwTiles     *tiles,
                    const GwBox *box);

typedef struct
{
  const GwDrawing *drawing;
  const GwDrawing *ghost;         /* nullable */
  const bool      *ghost_marks;   /* which of them */
  double           point;         /* [pixel], zoom included */
  int              scale;         /* of the screen */
  double           x, y;          /* of the sheet, at the view's corner [pixel] */
  int              width, height; /* of the view [pixel] */
} GwTilesView;

/** gw_tiles_snapshot: shows that part of the drawing, inked where it has to be. */
void gw_tiles_snapshot (GwTiles           *tiles,
                        const GwTilesView *view,
                        GtkSnapshot       *snapshot);

G_END_DECLS
