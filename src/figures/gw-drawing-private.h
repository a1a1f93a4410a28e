/* gw-drawing-private.h - what the figures share with the ink
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <pango/pangocairo.h>

#include "figures/gw-drawing.h"

/** gw_drawing_layout: @text set, borrowed until the next call. */
PangoLayout *gw_drawing_layout (const GwDrawing *drawing,
                                const char      *text,
                                GwFont           font,
                                GwTextStyle      style);

/** gw_drawing_wrapped: likewise, in lines of @width at most [pt]. */
PangoLayout *gw_drawing_wrapped (const GwDrawing *drawing,
                                 const char      *text,
                                 GwFont           font,
                                 GwTextStyle      style,
                                 double           width);

/** gw_drawing_cut: drops the marks from @n on; a trial that did not fit. */
void gw_drawing_cut (GwDrawing *drawing,
                     size_t     n);

/**
 * gw_drawing_recall:
 * @values: (out) (array length=n): where something stood
 *
 * Places are remembered and recalled in the order of the layout. One that does not fit
 * in number ends the following: from there on all is found anew.
 *
 * Returns: whether the drawing follows another one that knows
 */
bool gw_drawing_recall (GwDrawing *drawing,
                        size_t     n,
                        double    *values);
void gw_drawing_remember (GwDrawing    *drawing,
                          size_t        n,
                          const double *values);

/** gw_drawing_places: how much is remembered; gw_drawing_forget() goes back to there. */
size_t gw_drawing_places (const GwDrawing *drawing);
void   gw_drawing_forget (GwDrawing *drawing,
                          size_t     places);

void gw_drawing_set_view (GwDrawing         *drawing,
                          GwView             view,
                          const GwViewFrame *frame);

/** gw_drawing_point_at: all marks from @since on show @target. */
void gw_drawing_point_at (GwDrawing *drawing,
                          size_t     since,
                          GwTarget   target);

/** gw_mark_is_band: a faint fill, whose edge nobody can see sharply. */
bool gw_mark_is_band (const GwMark *mark);

/** gw_line_width: [pt] */
double gw_line_width (GwLineType line);
