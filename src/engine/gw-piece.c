/* gw-piece.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-piece.h"

#include <stdlib.h>

void
gw_pieces_init (GwPieces *pieces)
{
  *pieces = (GwPieces){ NULL, 0, 0 };
}

void
gw_pieces_clear (GwPieces *pieces)
{
  free (pieces->v);
  gw_pieces_init (pieces);
}

GwStatus
gw_pieces_add (GwPieces      *pieces,
               const GwPiece *piece)
{
  if (pieces->n == pieces->size)
    {
      const size_t size = pieces->size > 0 ? 2 * pieces->size : 64;
      GwPiece     *v = realloc (pieces->v, size * sizeof *v);

      if (v == NULL)
        return GW_ENOMEM;

      pieces->v = v;
      pieces->size = size;
    }

  pieces->v[pieces->n++] = *piece;
  return GW_OK;
}

GwStatus
gw_pieces_add_both (GwPieces      *pieces,
                    const GwPiece *piece,
                    bool           is_mirrored)
{
  GwPiece  image = *piece;
  GwStatus status = gw_pieces_add (pieces, piece);

  if (status != GW_OK || !is_mirrored)
    return status;

  image.side = -piece->side;
  gw_moments_mirror (&image.mass);
  return gw_pieces_add (pieces, &image);
}

double
gw_pieces_mass (const GwPieces *pieces,
                GwGroup         group,
                int             owner)
{
  double sum = 0.0;

  for (size_t i = 0; i < pieces->n; i++)
    {
      const GwPiece *piece = &pieces->v[i];

      if (piece->group == group && (owner < 0 || piece->owner == (size_t) owner))
        sum += piece->mass.total;
    }

  return sum;
}
