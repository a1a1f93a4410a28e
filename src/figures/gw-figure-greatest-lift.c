/* gw-figure-greatest-lift.c - greatest lift against Reynolds number
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-figures-i18n.h"
#include "figures/gw-plot.h"

#define CAP    2.5 /* half the width of a bar's ends [pt] */
#define TICK   6.0 /* height of a tick at the foot of the plot [pt] */
#define MARGIN 1.08

static bool
is_range (const GwMeasuredLift *measured)
{
  return measured->high > measured->low;
}

static void
find_ranges (const GwGreatestLiftFigure *figure,
             GwPlot                     *plot)
{
  for (size_t c = 0; c < figure->n_curves; c++)
    {
      const GwGreatestLiftCurve *curve = &figure->curves[c];

      for (size_t i = 0; i < curve->n; i++)
        {
          gw_axis_widen (&plot->x, curve->re[i]);
          gw_axis_widen (&plot->y, curve->cl[i]);
          if (curve->low != NULL && curve->high != NULL)
            {
              gw_axis_widen (&plot->y, curve->low[i]);
              gw_axis_widen (&plot->y, curve->high[i]);
            }
          if (curve->smooth != NULL)
            gw_axis_widen (&plot->y, curve->smooth[i]);
        }
      for (size_t i = 0; i < curve->n_measured; i++)
        {
          gw_axis_widen (&plot->x, curve->measured[i].re);
          gw_axis_widen (&plot->y, curve->measured[i].low);
          gw_axis_widen (&plot->y, curve->measured[i].high);
        }
      for (size_t i = 0; i < curve->n_flights; i++)
        gw_axis_widen (&plot->x, curve->flights[i].re);
    }
  plot->x.low /= MARGIN;
  plot->x.high *= MARGIN;
  if (plot->y.high - plot->y.low < 0.1)
    {
      plot->y.low -= 0.1;
      plot->y.high += 0.1;
    }
}

static GwPlotLine
line_of (const GwGreatestLiftCurve *curve,
         bool                       is_built)
{
  return (GwPlotLine){
    .n = is_built || curve->smooth != NULL ? curve->n : 0,
    .x = curve->re,
    .y = is_built ? curve->cl : curve->smooth,
    .line = is_built ? gw_section_line (&curve->label) : GW_LINE_NARROW,
    .tone = gw_section_tone (&curve->label),
  };
}

/* A bar with ends and a tick at the typical value, or a point. */
static void
draw_measured (GwDrawing            *drawing,
               const GwPlot         *plot,
               const GwMeasuredLift *measured,
               GwTone                tone)
{
  const double x = gw_plot_x (plot, measured->re), y = gw_plot_y (plot, measured->value);
  const double top = gw_plot_y (plot, measured->high), foot = gw_plot_y (plot, measured->low);

  if (!gw_plot_holds (plot, measured->re, measured->value))
    return;
  if (!is_range (measured))
    {
      gw_drawing_symbol (drawing, GW_MARK_NEUTRAL, x, y, 5, tone);
      return;
    }
  gw_line_from_to (drawing, x, top, x, foot, GW_LINE_NARROW, tone);
  gw_line_from_to (drawing, x - CAP, top, x + CAP, top, GW_LINE_NARROW, tone);
  gw_line_from_to (drawing, x - CAP, foot, x + CAP, foot, GW_LINE_NARROW, tone);
  gw_line_from_to (drawing, x - CAP, y, x + CAP, y, GW_LINE_WIDE, tone);
}

/* Beside each bar the letter of its section, where there are several. */
static void
label_measured (GwDrawing                 *drawing,
                const GwPlot              *plot,
                const GwGreatestLiftCurve *curve,
                size_t                     since)
{
  for (size_t i = 0; i < curve->n_measured; i++)
    {
      const double     re[] = { curve->measured[i].re, curve->measured[i].re };
      const double     cl[] = { curve->measured[i].low, curve->measured[i].high };
      const GwPlotLine bar = { .n = 2, .x = re, .y = cl };

      gw_plot_label (drawing, plot, &bar, 1, &curve->label.letter, since);
    }
}

static GwTone
option_tone (int option)
{
  return GW_TONE_OPTION + (GwTone) (option % GW_OPTION_STYLES);
}

static void
draw_flights (GwDrawing                 *drawing,
              const GwPlot              *plot,
              const GwGreatestLiftCurve *curve)
{
  const double foot = plot->box.y + plot->box.height;

  for (size_t i = 0; i < curve->n_flights; i++)
    {
      const GwFlightPoint *flight = &curve->flights[i];
      const double         x = gw_plot_x (plot, flight->re);

      if (!gw_plot_holds (plot, flight->re, flight->cl))
        continue;
      gw_line_from_to (drawing, x, foot - TICK, x, foot, GW_LINE_WIDE,
                       option_tone (flight->option));
      gw_drawing_symbol (drawing,
                         GW_MARK_OPTION + (GwMarkKind) (flight->option % GW_OPTION_STYLES), x,
                         gw_plot_y (plot, flight->cl), 7.5, option_tone (flight->option));
    }
}

static void
draw_plot (GwDrawing                  *drawing,
           const GwPlot               *plot,
           const GwGreatestLiftFigure *figure)
{
  const char *smooth = _ ("smooth");
  size_t      since;

  gw_plot_axes (drawing, plot);
  since = gw_drawing_n (drawing);
  for (size_t c = 0; c < figure->n_curves; c++)
    {
      const GwGreatestLiftCurve *curve = &figure->curves[c];

      if (curve->low != NULL && curve->high != NULL)
        gw_plot_band (drawing, plot, curve->n, curve->re, curve->low, curve->high,
                      gw_section_tone (&curve->label));
    }
  for (size_t c = 0; c < figure->n_curves; c++)
    for (int is_built = 0; is_built < 2; is_built++)
      {
        const GwPlotLine line = line_of (&figure->curves[c], is_built);

        gw_plot_line (drawing, plot, &line);
      }
  for (size_t c = 0; c < figure->n_curves; c++)
    for (size_t i = 0; i < figure->curves[c].n_measured; i++)
      draw_measured (drawing, plot, &figure->curves[c].measured[i],
                     gw_section_tone (&figure->curves[c].label));
  for (size_t c = 0; c < figure->n_curves; c++)
    draw_flights (drawing, plot, &figure->curves[c]);
  for (size_t c = 0; c < figure->n_curves; c++)
    {
      const GwPlotLine built = line_of (&figure->curves[c], true);
      const GwPlotLine line = line_of (&figure->curves[c], false);

      gw_section_end_label (drawing, plot, &built, &figure->curves[c].label, since);
      gw_plot_label (drawing, plot, &line, 1, &smooth, since);
    }
  for (size_t c = 0; c < figure->n_curves && figure->n_curves > 1; c++)
    label_measured (drawing, plot, &figure->curves[c], since);
}

static GwKeyRow *
make_key (const GwGreatestLiftFigure *figure,
          size_t                     *n)
{
  GwKeyRow *rows = g_new0 (GwKeyRow, figure->n_curves + figure->n_options + 2);
  bool      has_bars = false, has_points = false;

  *n = 0;
  for (size_t c = 0; c < figure->n_curves; c++)
    {
      rows[(*n)++] = gw_section_key (&figure->curves[c].label);
      for (size_t i = 0; i < figure->curves[c].n_measured; i++)
        {
          const bool is_bar = is_range (&figure->curves[c].measured[i]);

          has_bars = has_bars || is_bar;
          has_points = has_points || !is_bar;
        }
    }
  for (size_t o = 0; o < figure->n_options; o++)
    {
      bool is_there = false;

      for (size_t c = 0; c < figure->n_curves; c++)
        for (size_t i = 0; i < figure->curves[c].n_flights; i++)
          is_there = is_there || figure->curves[c].flights[i].option == (int) o;
      if (is_there)
        rows[(*n)++] = (GwKeyRow){
          .symbol = GW_MARK_OPTION + (GwMarkKind) (o % GW_OPTION_STYLES),
          .tone = option_tone ((int) o),
          .text = g_strdup_printf (_ ("%s at its stall"), figure->options[o]),
        };
    }
  if (has_points)
    rows[(*n)++] = (GwKeyRow){ .symbol = GW_MARK_NEUTRAL,
                               .tone = GW_TONE_INK,
                               .text = g_strdup (_ ("printed, see the sources")) };
  if (has_bars)
    rows[(*n)++] = (GwKeyRow){ .line = GW_LINE_NARROW,
                               .tone = GW_TONE_INK,
                               .text = g_strdup (_ ("bar: measured, recalled as a range")) };

  return rows;
}

void
gw_figure_greatest_lift (GwDrawing                  *drawing,
                         GwBox                       box,
                         const GwGreatestLiftFigure *figure)
{
  GwPlot    plot = { .x = GW_AXIS_NEW (1e-3, _ ("Reynolds number, thousands")),
                     .y = GW_AXIS_NEW (1, _ ("greatest lift coefficient")) };
  size_t    n_rows;
  GwKeyRow *rows;

  if (figure->n_curves == 0)
    {
      gw_plot_without (drawing, box, &figure->words);
      return;
    }

  rows = make_key (figure, &n_rows);
  plot.x.is_log = true;
  find_ranges (figure, &plot);
  if (gw_plot_place (drawing, &plot,
                     gw_plot_frame (drawing, box, &figure->words, n_rows, rows)))
    draw_plot (drawing, &plot, figure);
  gw_keys_free (n_rows, rows);
}
