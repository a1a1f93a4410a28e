/* gw-sheet-private.h - where what stands on the sheet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-figures-private.h"

typedef struct
{
  GwBox  planform, side, stall, masses, summary, notes;
  GwBox  title;
  double planform_scale, side_scale; /* [pt per m] */
  int    planform_ratio, side_ratio; /* 5: 1:5; 0: no standard scale */
} GwSheetAreas;

/** gw_sheet_arrange: the arrangement that serves the drawing and its tables best. @frame: the ruled
 * frame, whose lower right corner takes the title block. */
void gw_sheet_arrange (GwDrawing           *drawing,
                       GwBox                frame,
                       const GwSheetFigure *figure,
                       GwSheetAreas        *areas);

#define GW_TITLE_BLOCK_NARROW 315.0

/** gw_title_block_height: of its rows, one more if it is narrow. */
double gw_title_block_height (GwDrawing *drawing,
                              double     width);
void   gw_title_block_draw (GwDrawing           *drawing,
                            GwBox                box,
                            const GwSheetFigure *figure,
                            const GwSheetAreas  *areas);

/** gw_notes_height: of all notes at @width. */
double gw_notes_height (GwDrawing          *drawing,
                        const GwTitleBlock *title,
                        double              width);
