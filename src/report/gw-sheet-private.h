/* gw-sheet-private.h - a sheet while it is made
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "report/gw-sheet.h"

struct _GwSheet
{
  GwEvaluation *evaluation;
  GwUnits       units;
  GPtrArray    *blocks; /* strings and arrays that the figure borrows */
  GwSheetFigure figure;
};

static inline gpointer
gw_sheet_keep (GwSheet *sheet,
               gpointer block)
{
  g_ptr_array_add (sheet->blocks, block);
  return block;
}

#define gw_sheet_keep_new(sheet, Type, n) \
 ((Type *) gw_sheet_keep (sheet, g_new0 (Type, MAX (n, 1))))

GwStallFigure gw_sheet_stall (GwSheet *sheet,
                              guint    shown);
