/* gw-figure-outline.c - the outline of a wing section, by itself or over another
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdio.h>

#include "figures/gw-figures-i18n.h"
#include "figures/gw-figures-private.h"

#define LAST       (GW_OUTLINE_N - 1)
#define MARGIN     2.0   /* for the width of the line [pt] */
#define CHORD_PAST 5.0   /* the chord line beyond the outline [pt] */
#define WITH_CHORD 100.0 /* width from which there is a chord line [pt] */
#define WITH_STRIP 80.0  /* height from which the change has a strip of its own [pt] */
#define STRIP      0.4   /* of the height */
#define LEAST      1e-6  /* change worth a strip, in chords */

static void
extent_of (const GwOutlineFigure *figure,
           double                *low,
           double                *high)
{
  *low = *high = 0.0;
  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    for (const GwOutline *outline = figure->outline; outline != NULL;
         outline = outline == figure->outline ? figure->other : NULL)
      {
        *low = fmin (*low, fmin (outline->upper[i], outline->lower[i]));
        *high = fmax (*high, fmax (outline->upper[i], outline->lower[i]));
      }
}

static GwMark *
draw_outline (GwDrawing       *drawing,
              const GwOutline *outline,
              const double     origin[2],
              double           scale,
              GwLineType       line,
              GwTone           tone)
{
  double  xy[4 * GW_OUTLINE_N];
  GwMark *mark;

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      const double x = origin[0] + scale * gw_outline_x (i);

      xy[2 * (LAST - i)] = xy[2 * (GW_OUTLINE_N + i)] = x;
      xy[2 * (LAST - i) + 1] = origin[1] - scale * outline->upper[i];
      xy[2 * (GW_OUTLINE_N + i) + 1] = origin[1] - scale * outline->lower[i];
    }
  mark = gw_drawing_path (drawing, 2 * GW_OUTLINE_N, xy, line, tone);
  mark->is_closed = true;
  return mark;
}

/* To scale, in the middle of the box. Returns points a chord. */
static double
draw_to_scale (GwDrawing             *drawing,
               GwBox                  box,
               const GwOutlineFigure *figure,
               double                *left)
{
  const bool   has_chord = box.width >= WITH_CHORD;
  const double side = has_chord ? CHORD_PAST + MARGIN : MARGIN;
  double       low, high, scale, origin[2];
  GwMark      *mark;

  extent_of (figure, &low, &high);
  scale = fmin (box.width - 2.0 * side, (box.height - 2.0 * MARGIN) / fmax (high - low, 1e-3));
  scale = fmax (scale, 0.0);
  origin[0] = box.x + 0.5 * (box.width - scale);
  origin[1] = box.y + 0.5 * box.height + 0.5 * scale * (high + low);
  *left = origin[0];

  mark = draw_outline (drawing, figure->outline, origin, scale,
                       has_chord ? GW_LINE_WIDE : GW_LINE_NARROW, GW_TONE_INK);
  mark->is_filled = true;
  mark->fill = GW_TONE_BODY;
  if (figure->other != NULL)
    draw_outline (drawing, figure->other, origin, scale, GW_LINE_HIDDEN, GW_TONE_OPTION);
  if (has_chord)
    gw_line_from_to (drawing, origin[0] - CHORD_PAST, origin[1], origin[0] + scale + CHORD_PAST,
                     origin[1], GW_LINE_CENTRE, GW_TONE_MID);

  return scale;
}

static double
greatest_change (const GwOutlineFigure *figure)
{
  double greatest = 0.0;

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      greatest = fmax (greatest, fabs (figure->outline->upper[i] - figure->other->upper[i]));
      greatest = fmax (greatest, fabs (figure->outline->lower[i] - figure->other->lower[i]));
    }

  return greatest;
}

static void
draw_change (GwDrawing    *drawing,
             const double *after,
             const double *before,
             const double  origin[2],
             double        scale,
             double        times,
             GwLineType    line)
{
  double xy[2 * GW_OUTLINE_N];

  for (size_t i = 0; i < GW_OUTLINE_N; i++)
    {
      xy[2 * i] = origin[0] + scale * gw_outline_x (i);
      xy[2 * i + 1] = origin[1] - scale * times * (after[i] - before[i]);
    }
  gw_drawing_path (drawing, GW_OUTLINE_N, xy, line, GW_TONE_OPTION);
}

/* How far each side moved, so many times as large that it can be seen. */
static void
draw_strip (GwDrawing             *drawing,
            GwBox                  strip,
            const GwOutlineFigure *figure,
            double                 left,
            double                 scale)
{
  const double greatest = greatest_change (figure);
  const double line = gw_text_line (drawing, GW_FONT_SMALL);
  const double half = 0.5 * (strip.height - line) - MARGIN;
  double       origin[] = { left, strip.y + line + MARGIN + half };
  double       times;
  char         text[160];
  char        *fitting;

  if (!(greatest > LEAST) || !(half > 4.0) || !(scale > 0.0))
    return;

  times = gw_round_below (half / (scale * greatest));
  g_snprintf (text, sizeof text, _ ("change, %g times: on top (full), below (dashed)"), times);
  fitting = gw_text_fit (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT,
                         strip.x + strip.width - MARGIN - left);
  if (fitting != NULL)
    gw_text_at (drawing, left, strip.y, fitting, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_START,
                GW_ALIGN_START);
  g_free (fitting);

  gw_line_from_to (drawing, left, origin[1], left + scale, origin[1], GW_LINE_HAIR, GW_TONE_MID);
  draw_change (drawing, figure->outline->upper, figure->other->upper, origin, scale, times,
               GW_LINE_NARROW);
  draw_change (drawing, figure->outline->lower, figure->other->lower, origin, scale, times,
               GW_LINE_HIDDEN);
}

double
gw_figure_outline (GwDrawing             *drawing,
                   GwBox                  box,
                   const GwOutlineFigure *figure)
{
  const bool has_strip = figure->other != NULL && box.height >= WITH_STRIP;
  GwBox      strip = { 0 };
  double     left, scale;

  if (has_strip)
    {
      strip = (GwBox){ box.x, box.y + (1.0 - STRIP) * box.height, box.width, STRIP * box.height };
      box.height -= strip.height;
    }
  scale = draw_to_scale (drawing, box, figure, &left);
  if (has_strip)
    draw_strip (drawing, strip, figure, left, scale);

  return scale;
}
