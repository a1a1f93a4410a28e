/* gw-drawing-change.c - what is different between two drawings
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <string.h>

#include "figures/gw-drawing-private.h"

/* Places are compared by the cell of this size that they lie in, so that what stands still
 * but for the last digit is left alone, and never drifts further than a cell [pt]. */
#define CELL      (1 / 8.0)
#define BAND_CELL 1.0 /* of a faint band */

#define FNV_BASIS 14695981039346656037u /* Fowler, Noll, Vo; 64 bits */
#define FNV_PRIME 1099511628211u

static guint64
mix (guint64 hash,
     guint64 value)
{
  return (hash ^ value) * FNV_PRIME;
}

static guint64
mix_number (guint64 hash,
            double  value)
{
  return mix (hash, (guint64) (gint64) floor (value / CELL + 0.5));
}

bool
gw_mark_is_band (const GwMark *mark)
{
  return mark->is_filled && mark->line == GW_LINE_NONE && mark->opacity < 0.2;
}

/* Everything that shows, and what it stands for. */
static guint64
hash_of (const GwMark *mark,
         const double *xy)
{
  const bool is_band = gw_mark_is_band (mark);
  guint64    hash = FNV_BASIS;

  hash = mix (hash, mark->kind);
  hash = mix (hash, mark->line);
  hash = mix (hash, mark->stroke);
  hash = mix (hash, mark->is_filled ? 1 + (guint64) mark->fill : 0);
  hash = mix (hash, (guint64) (mark->is_hatched + 2 * mark->is_closed));
  hash = mix_number (hash, 100 * mark->opacity);
  hash = mix_number (hash, mark->size);
  hash = mix (hash, (guint64) mark->target.group + 1);
  hash = mix (hash, (guint64) mark->target.owner + 1);
  hash = mix (hash, (guint64) mark->target.part + 1);
  for (size_t i = 0; i < 2 * mark->n; i++)
    hash = mix_number (hash, is_band ? xy[i] * CELL / BAND_CELL : xy[i]);
  if (mark->kind != GW_MARK_TEXT)
    return hash;

  hash = mix (hash, mark->font);
  hash = mix (hash, mark->style);
  hash = mix (hash, mark->align_x * 3 + mark->align_y);
  hash = mix_number (hash, 100 * mark->turn);
  for (const char *c = mark->text; *c != '\0'; c++)
    hash = mix (hash, (unsigned char) *c);
  return hash;
}

static guint64 *
hashes_of (const GwDrawing *drawing)
{
  guint64 *hashes = g_new (guint64, gw_drawing_n (drawing) + 1);

  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      hashes[i] = hash_of (mark, gw_drawing_points (drawing) + 2 * mark->first);
    }

  return hashes;
}

bool *
gw_drawing_missing (const GwDrawing *drawing,
                    const GwDrawing *other)
{
  g_autofree guint64 *own = hashes_of (drawing), *others = hashes_of (other);
  g_autoptr (GHashTable) left = g_hash_table_new (g_int64_hash, g_int64_equal);
  bool *missing = g_new0 (bool, gw_drawing_n (drawing) + 1);

  for (size_t i = 0; i < gw_drawing_n (other); i++)
    {
      const guint n = GPOINTER_TO_UINT (g_hash_table_lookup (left, &others[i]));

      g_hash_table_insert (left, &others[i], GUINT_TO_POINTER (n + 1));
    }

  /* Each mark of the other stands for one of ours. */
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const guint n = GPOINTER_TO_UINT (g_hash_table_lookup (left, &own[i]));

      missing[i] = n == 0;
      if (n > 0)
        g_hash_table_insert (left, &own[i], GUINT_TO_POINTER (n - 1));
    }

  return missing;
}
