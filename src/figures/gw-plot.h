/* gw-plot.h - axes, curves, labels and key of a plot
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-layout.h"
#include "figures/gw-section-figures.h"

typedef struct
{
  double      low, high; /* low > high: nothing yet */
  double      factor;    /* numbers shown = value x factor */
  bool        is_log;
  const char *title;
  GwTicks     ticks; /* of numbers shown; not of a logarithmic axis */
} GwAxis;

typedef struct
{
  GwBox  box;
  GwAxis x, y;
  bool   is_down;        /* y counts downwards */
  bool   has_no_numbers; /* of y: a plot at the left has the same */
} GwPlot;

#define GW_AXIS_NEW(shown_factor, axis_title) \
 ((GwAxis){ .low = INFINITY, .high = -INFINITY, .factor = (shown_factor), .title = (axis_title) })

/** gw_axis_widen: nothing that is not finite. */
void gw_axis_widen (GwAxis *axis,
                    double  value);

/** gw_plot_place: rounds the range of y, cuts the plot out of @box with room for numbers and
 * titles; false if there is no room or no range. */
bool gw_plot_place (GwDrawing *drawing,
                    GwPlot    *plot,
                    GwBox      box);

void gw_plot_axes (GwDrawing    *drawing,
                   const GwPlot *plot);

double gw_plot_x (const GwPlot *plot,
                  double        value);
double gw_plot_y (const GwPlot *plot,
                  double        value);
bool   gw_plot_holds (const GwPlot *plot,
                      double        x,
                      double        y);

typedef struct
{
  size_t        n;
  const double *x, *y;      /* NAN: a gap */
  const bool   *is_bridged; /* nullable: a broken line goes to and from such a point */
  GwLineType    line;
  GwTone        tone;
} GwPlotLine;

/** gw_plot_line: what of it lies in the plot. */
void gw_plot_line (GwDrawing        *drawing,
                   const GwPlot     *plot,
                   const GwPlotLine *line);

/** gw_plot_band: what lies between two lines, faint. */
void gw_plot_band (GwDrawing    *drawing,
                   const GwPlot *plot,
                   size_t        n,
                   const double *x,
                   const double *low,
                   const double *high,
                   GwTone        tone);

/** gw_plot_label: writes the first of @n texts that finds room at the end of the line, or back
 * along it. @since: marks from here on are in the way */
void gw_plot_label (GwDrawing         *drawing,
                    const GwPlot      *plot,
                    const GwPlotLine  *line,
                    size_t             n,
                    const char *const *texts,
                    size_t             since);

/* A row of the key: a piece of a line or a symbol, and what it is. */
typedef struct
{
  GwLineType line; /* %GW_LINE_NONE: the symbol */
  GwMarkKind symbol;
  GwTone     tone;
  char      *text; /* (transfer full) */
} GwKeyRow;

void gw_keys_free (size_t    n,
                   GwKeyRow *rows);

/** gw_plot_frame: title, conditions, key and notes; returns the room left for plots. */
GwBox gw_plot_frame (GwDrawing            *drawing,
                     GwBox                 box,
                     const GwSectionWords *words,
                     size_t                n_rows,
                     const GwKeyRow       *rows);

/** gw_plot_without: where there is nothing to plot the notes that say why come first; returns the
 * room below them. */
GwBox gw_plot_without (GwDrawing            *drawing,
                       GwBox                 box,
                       const GwSectionWords *words);

/* Of a curve of sections. */
GwTone     gw_section_tone (const GwSectionLabel *label);
GwLineType gw_section_line (const GwSectionLabel *label);

/** gw_section_key: its row of the key; free its text with g_free(). */
GwKeyRow gw_section_key (const GwSectionLabel *label);

/** gw_section_end_label: letter and name, or the letter, at the end of its line. */
void gw_section_end_label (GwDrawing            *drawing,
                           const GwPlot         *plot,
                           const GwPlotLine     *line,
                           const GwSectionLabel *label,
                           size_t                since);
