/* gw-drawing-private.h - what the figures share with the ink
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <pango/pangocairo.h>

#include "figures/gw-drawing.h"

/** gw_drawing_layout: @text set in the drawing's one layout, borrowed until the next call. */
PangoLayout *gw_drawing_layout (const GwDrawing *drawing,
                                const char      *text,
                                GwFont           font,
                                GwTextStyle      style);

/** gw_drawing_cut: drops the marks from @n on; a trial that did not fit. */
void gw_drawing_cut (GwDrawing *drawing,
                     size_t     n);

/** gw_line_width: [pt] */
double gw_line_width (GwLineType line);
