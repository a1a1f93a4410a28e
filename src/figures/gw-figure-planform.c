/* gw-figure-planform.c - the aeroplane from above, to scale, nose up
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdio.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-figures-i18n.h"
#include "figures/gw-figures-private.h"

#define CENTRE_PAST 7.0 /* the centre line beyond the outline [pt] */
#define LINE_HIGH   3.0 /* higher than this is no level line [pt] */

/* Symbols grow with the drawing within limits [pt]. */
#define SYMBOL(scale)     fmin (fmax (0.05 * (scale), 8), 13)
#define RANGE_HALF(scale) fmin (fmax (0.05 * (scale), 6.5), 12)

typedef struct
{
  GwAirframe airframe;
  GwBox      box, area; /* all; for the aeroplane itself */
  double     origin[2]; /* of u = v = 0 [pt] */
  double     scale;
  bool       has_dimensions, has_bar;
} Planform;

/* Takes the room for dimensions, bar and centre line off the box. */
static void
planform_area (Planform               *planform,
               GwDrawing              *drawing,
               GwBox                   box,
               const GwAirframeFigure *figure)
{
  double line = gw_text_line (drawing, GW_FONT_TEXT);

  planform->box = box;
  planform->area = gw_box_inset (box, CENTRE_PAST + 1);
  planform->has_dimensions = box.width >= 220 && box.height >= 170;
  planform->has_bar = box.width >= 120 && box.height >= 110;
  if (planform->has_dimensions)
    {
      double side = line + 11 - CENTRE_PAST;

      gw_box_take_top (&planform->area, line + 12 - CENTRE_PAST);
      gw_box_take_right (&planform->area, side);
      gw_box_take_left (&planform->area, figure->is_half ? 4 : side);
    }
  if (planform->has_bar)
    gw_box_take_bottom (&planform->area, gw_text_line (drawing, GW_FONT_SMALL));
}

static double
scale_of (const Planform *planform,
          const double    extent[2])
{
  if (!(extent[0] >= 0) || !(extent[1] > 0))
    return 0;

  return fmin (planform->area.width / fmax (extent[0], 1e-6), planform->area.height / extent[1]);
}

void
gw_planform_extent (const GwAirframeFigure *figure,
                    double                  extent[2])
{
  GwAirframe airframe;

  gw_airframe_project (figure->aircraft, GW_VIEW_TOP, figure->is_half, &airframe);
  for (int k = 0; k < 2; k++)
    extent[k] = airframe.high[k] - airframe.low[k];
  gw_airframe_clear (&airframe);
}

double
gw_planform_scale (GwDrawing              *drawing,
                   GwBox                   box,
                   const GwAirframeFigure *figure,
                   const double            extent[2])
{
  Planform planform;

  planform_area (&planform, drawing, box, figure);
  return scale_of (&planform, extent);
}

static void
planform_centre (Planform               *planform,
                 GwDrawing              *drawing,
                 const GwAirframeFigure *figure)
{
  const GwAirframe *airframe = &planform->airframe;
  const GwBox      *area = &planform->area;

  if (figure->scale > 0)
    planform->scale = figure->scale;
  planform->origin[0] =
    area->x + area->width / 2 - (airframe->low[0] + airframe->high[0]) / 2 * planform->scale;
  planform->origin[1] =
    area->y + area->height / 2 - (airframe->low[1] + airframe->high[1]) / 2 * planform->scale;
  gw_view_settle (drawing, GW_VIEW_TOP, planform->box, planform->origin, &planform->scale);
}

static const GwSurface *
main_wing (const GwAircraft *aircraft)
{
  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    if (aircraft->surfaces[i].role == GW_ROLE_WING && aircraft->surfaces[i].n_stations >= 2)
      return &aircraft->surfaces[i];

  return NULL;
}

static void
draw_span (GwDrawing              *drawing,
           const Planform         *planform,
           const GwAirframeFigure *figure,
           const GwSurface        *wing)
{
  const GwStation *tip = &wing->stations[wing->n_stations - 1];
  double           half = fabs (tip->at[1]) * planform->scale;
  double           y = planform->origin[1] + tip->at[0] * planform->scale;
  double           top = planform->origin[1] + planform->airframe.low[1] * planform->scale;
  size_t           since;
  char             text[32];
  GwDimension      span = {
         .a = { planform->origin[0] - (figure->is_half ? 0 : half), y },
         .b = { planform->origin[0] + half, y },
         .place = top - CENTRE_PAST - 4,
         .is_half = figure->is_half,
         .text = text,
  };

  if (!wing->is_mirrored || half < 40)
    return;
  gw_length_dimension (&figure->length, 2 * fabs (tip->at[1]), text, sizeof text);
  since = gw_drawing_n (drawing);
  gw_dimension (drawing, &span);
  /* The line, its arrows and the number; a press near a wing tip is not meant for the extension
   * lines. */
  while (since < gw_drawing_n (drawing) && gw_drawing_mark (drawing, since)->box.height > LINE_HIGH)
    since++;
  gw_drawing_point_at (drawing, since,
                       (GwTarget){ GW_TARGET_SPAN, (int) (wing - figure->aircraft->surfaces), 0 });
}

/* The root chord stands to the right of the whole aeroplane. */
static void
draw_root_chord (GwDrawing              *drawing,
                 const Planform         *planform,
                 const GwAirframeFigure *figure,
                 const GwSurface        *wing)
{
  const GwStation *root = &wing->stations[0];
  const GwStation *tip = &wing->stations[wing->n_stations - 1];
  double           scale = planform->scale;
  double           right = planform->origin[0] + planform->airframe.high[0] * scale;
  double           tip_x = planform->origin[0] + tip->at[1] * scale;
  bool             is_level = fabs (tip->at[0] - root->at[0]) * scale < 1;
  bool             is_square = is_level && fabs (tip->chord - root->chord) * scale < 1;
  char             text[32];
  GwDimension      chord = {
         .a = { tip_x, planform->origin[1] + root->at[0] * scale },
         .b = { tip_x, planform->origin[1] + (root->at[0] + root->chord) * scale },
         .place = right + 15,
         .is_vertical = true,
         .text = text,
  };

  /* Where the tip does not stand level with the root, the extension lines start at the root. */
  if (!is_level)
    chord.a[0] = planform->origin[0] + root->at[1] * scale;
  if (!is_square)
    chord.b[0] = planform->origin[0] + root->at[1] * scale;
  if (!(root->chord * scale > 14))
    return;
  gw_length_dimension (&figure->length, root->chord, text, sizeof text);
  gw_dimension (drawing, &chord);
}

/* Forward to aft limit of the balance point: hatched, its ends dashed. */
static void
draw_range (GwDrawing       *drawing,
            const Planform  *planform,
            const GwResults *results,
            bool             is_half)
{
  const double *value = results->value;
  double        half = RANGE_HALF (planform->scale);
  double        x0 = planform->origin[0] - (is_half ? 0 : half), x1 = planform->origin[0] + half;
  double        ends[2] = { value[GW_RESULT_FORWARD_LIMIT], value[GW_RESULT_AFT_LIMIT] };
  double        y[2];

  for (int i = 0; i < 2; i++)
    {
      y[i] = planform->origin[1] + ends[i] * planform->scale;
      y[i] = fmin (fmax (y[i], planform->area.y), planform->area.y + planform->area.height);
    }
  if (isfinite (ends[0]) && isfinite (ends[1]) && y[1] > y[0])
    {
      GwBox   box = { x0, y[0], x1 - x0, y[1] - y[0] };
      GwMark *mark = gw_rectangle (drawing, box, GW_LINE_NONE, GW_TONE_PAPER);

      mark->is_filled = true;
      mark->fill = GW_TONE_PAPER;
      mark = gw_rectangle (drawing, box, GW_LINE_NONE, GW_TONE_INK);
      mark->is_hatched = true;
    }
  for (int i = 0; i < 2; i++)
    if (isfinite (ends[i]))
      gw_line_from_to (drawing, x0, y[i], x1, y[i], GW_LINE_NARROW, GW_TONE_INK);
}

static bool
on_area (const Planform *planform,
         double          x)
{
  double y = planform->origin[1] + x * planform->scale;

  return isfinite (y) && y > planform->area.y - 0.5 &&
         y < planform->area.y + planform->area.height + 0.5;
}

/* Band of the balance point: a bar beside the hatched range. */
static void
draw_band (GwDrawing              *drawing,
           const Planform         *planform,
           const GwAirframeFigure *figure)
{
  double x = planform->origin[0] + RANGE_HALF (planform->scale) + 3;
  double y0 = planform->origin[1] + figure->low_x * planform->scale;
  double y1 = planform->origin[1] + figure->high_x * planform->scale;

  if (on_area (planform, figure->low_x) && on_area (planform, figure->high_x) && y1 - y0 > 3)
    gw_line_from_to (drawing, x, y0, x, y1, GW_LINE_WIDE, GW_TONE_INK);
}

static void
draw_points (GwDrawing              *drawing,
             const Planform         *planform,
             const GwAirframeFigure *figure,
             GwCallouts             *callouts)
{
  const double *value = figure->results->value;
  double        root = value[GW_RESULT_BALANCE_X] - value[GW_RESULT_BALANCE_ROOT];
  double        size = SYMBOL (planform->scale);
  char          texts[2][96], length[32], percent[24];
  GwCallout     items[2];
  size_t        n = 0;

  if (on_area (planform, value[GW_RESULT_NEUTRAL_POINT]))
    {
      double y = planform->origin[1] + value[GW_RESULT_NEUTRAL_POINT] * planform->scale;

      gw_drawing_symbol (drawing, GW_MARK_NEUTRAL, planform->origin[0], y, 7, GW_TONE_INK);
      gw_length_text (&figure->length, value[GW_RESULT_NEUTRAL_POINT] - root, length,
                      sizeof length);
      gw_signed_number (value[GW_RESULT_STATIC_MARGIN] * 100, 0, percent, sizeof percent);
      snprintf (texts[1], sizeof texts[1], _ ("neutral point %s, margin %s %%"), length, percent);
      items[n++] = (GwCallout){ planform->origin[0], y, 3.5, false, texts[1],
                                GW_FONT_TEXT, GW_TONE_MID, GW_TARGET_NONE };
    }
  if (on_area (planform, value[GW_RESULT_BALANCE_X]))
    {
      double y = planform->origin[1] + value[GW_RESULT_BALANCE_X] * planform->scale;

      draw_band (drawing, planform, figure);
      gw_drawing_symbol (drawing, GW_MARK_BALANCE, planform->origin[0], y, size, GW_TONE_INK);
      gw_length_text (&figure->length, value[GW_RESULT_BALANCE_ROOT], length, sizeof length);
      gw_signed_number (value[GW_RESULT_BALANCE_MAC] * 100, 0, percent, sizeof percent);
      snprintf (texts[0], sizeof texts[0], _ ("balance %s, %s %% of chord"), length, percent);
      items[n++] = (GwCallout){ planform->origin[0], y, size / 2, false, texts[0],
                                GW_FONT_TEXT, GW_TONE_INK, GW_TARGET_NONE };
    }
  if (n == 2 && items[0].y > items[1].y)
    {
      GwCallout first = items[1];

      items[1] = items[0];
      items[0] = first;
    }
  if (n == 0 || planform->box.width < 220)
    return;
  if (!gw_callouts_place (drawing, callouts, n, items))
    {
      callouts->may_cover = true;
      gw_callouts_place (drawing, callouts, n, items);
      callouts->may_cover = false;
    }
}

static void
draw_airframe (GwDrawing              *drawing,
               const Planform         *planform,
               const GwAirframeFigure *figure)
{
  const GwAirframe *airframe = &planform->airframe;
  double            top = planform->origin[1] + airframe->low[1] * planform->scale;
  double            bottom = planform->origin[1] + airframe->high[1] * planform->scale;

  gw_airframe_draw (drawing, airframe, 0, airframe->n_skin, planform->origin, planform->scale,
                    figure->option);
  gw_line_from_to (drawing, planform->origin[0], top - CENTRE_PAST, planform->origin[0],
                   bottom + CENTRE_PAST, GW_LINE_CENTRE, GW_TONE_MID);
  draw_range (drawing, planform, figure->results, figure->is_half);
  gw_airframe_draw (drawing, airframe, airframe->n_skin, airframe->n_shapes, planform->origin,
                    planform->scale, figure->option);
}

/* Under the lower left corner of the aeroplane. */
static void
draw_bar (GwDrawing              *drawing,
          const Planform         *planform,
          const GwAirframeFigure *figure)
{
  const GwBox *box = &planform->box;
  double       half = gw_text_line (drawing, GW_FONT_SMALL) / 2;
  double       left = planform->origin[0] + planform->airframe.low[0] * planform->scale;
  double       bottom = planform->origin[1] + planform->airframe.high[1] * planform->scale;

  gw_scale_bar (drawing, fmax (box->x + 2, left),
                fmin (box->y + box->height - half, bottom + CENTRE_PAST + half + 2),
                fmin (box->width * 0.3, 150), planform->scale, &figure->length);
}

double
gw_figure_planform (GwDrawing              *drawing,
                    GwBox                   box,
                    const GwAirframeFigure *figure)
{
  const GwSurface *wing = main_wing (figure->aircraft);
  GwCallouts      *callouts;
  Planform         planform;
  size_t           since = gw_drawing_n (drawing);
  double           extent[2];

  planform_area (&planform, drawing, box, figure);
  gw_airframe_project (figure->aircraft, GW_VIEW_TOP, figure->is_half, &planform.airframe);
  for (int k = 0; k < 2; k++)
    extent[k] = planform.airframe.high[k] - planform.airframe.low[k];
  planform.scale = scale_of (&planform, extent);
  if (!(planform.scale > 0))
    {
      gw_airframe_clear (&planform.airframe);
      return 0;
    }
  planform_centre (&planform, drawing, figure);
  draw_airframe (drawing, &planform, figure);
  if (planform.has_dimensions && wing != NULL)
    {
      draw_span (drawing, &planform, figure, wing);
      draw_root_chord (drawing, &planform, figure, wing);
    }
  if (planform.has_bar)
    draw_bar (drawing, &planform, figure);

  callouts = g_new0 (GwCallouts, 1);
  callouts->bounds = box;
  callouts->since = since;
  callouts->gap = 3;
  callouts->longest = INFINITY;
  callouts->middle = planform.origin[0];
  draw_points (drawing, &planform, figure, callouts);
  gw_planform_labels (drawing, callouts, figure, planform.origin, planform.scale);
  gw_wanted_place_draw (drawing, figure, GW_VIEW_TOP, box, since, planform.origin, planform.scale);
  g_free (callouts);
  gw_airframe_clear (&planform.airframe);

  return planform.scale;
}
