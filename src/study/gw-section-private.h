/* gw-section-private.h - shared by the files that fill in what a section does
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-section.h"
#include "study/gw-section-known.h"

G_BEGIN_DECLS

/* Rows of a section, as they are worked out. */
typedef struct
{
  guint        n;
  GwSectionRow rows[GW_SECTION_ROWS];
  double       low[GW_SECTION_ROWS]; /* 10th and 90th percentile of the greatest lift over it */
  double       high[GW_SECTION_ROWS];
} GwRows;

/** _gw_rows_of_polars: FALSE if no polar is sound. */
gboolean _gw_rows_of_polars (const GwPolars *polars,
                             GwRows         *rows);

/** _gw_rows_widen: spreads of the comparisons of that family. */
void _gw_rows_widen (GwRows         *rows,
                     GwSectionFamily family);

/** _gw_rows_meet: moves them to published measurements of the catalogue's section with that id.
 * Returns: (transfer full) (nullable): which, in words */
char *_gw_rows_meet (GwRows     *rows,
                     const char *section);

/** _gw_rows_of_plate: FALSE outside the range of plates that were measured. */
gboolean _gw_rows_of_plate (const GwOutline *outline,
                            GwRows          *rows);

/** _gw_rows_guess: greatest lift by the nearest section of the catalogue, or else a plate with
 * its camber; the rest from the mean line. Returns: name of the nearest, translated */
const char *_gw_rows_guess (const GwOutline *outline,
                            GwSectionFamily  family,
                            GwRows          *rows);

G_END_DECLS
