/* gw-figure-side.c - the aeroplane from its port side, to scale, nose to the left
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-figures-private.h"

#define GROUND_PAST 10.0 /* the ground line beyond the outermost point [pt] */

typedef struct
{
  GwAirframe airframe;
  GwBox      area;
  double     origin[2];
  double     scale;
  bool       has_dimension, has_bar;
  bool       has_ground;
  double     ground[2]; /* v = ground[0] + ground[1] u [m] */
} Side;

/* Common tangent under two wheels: its downward normal n keeps n.c + r the same. */
static bool
tangent_below (const GwLeg *a,
               const GwLeg *b,
               double       line[2])
{
  double dx = b->axle[0] - a->axle[0], dv = a->axle[2] - b->axle[2]; /* v is down */
  double distance = hypot (dx, dv);
  double lean, angle;

  if (dx < 1e-4 || fabs (a->wheel_radius - b->wheel_radius) >= distance)
    return false;
  /* dx cos + dv sin = r_a - r_b, on the branch that points down. */
  lean = atan2 (dv, dx);
  angle = lean + acos ((a->wheel_radius - b->wheel_radius) / distance);
  line[1] = -cos (angle) / sin (angle);
  line[0] = -a->axle[2] + a->wheel_radius * sin (angle) -
            line[1] * (a->axle[0] + a->wheel_radius * cos (angle));

  return isfinite (line[0]) && isfinite (line[1]) && fabs (line[1]) < 1;
}

/* Whether no wheel reaches below the line. */
static bool
carries_all (const GwAircraft *aircraft,
             const double      line[2])
{
  for (size_t i = 0; i < aircraft->n_legs; i++)
    {
      const GwLeg *leg = &aircraft->legs[i];
      double       below = -leg->axle[2] - line[0] - line[1] * leg->axle[0];

      if (leg->wheel_radius > 0 && below / hypot (1, line[1]) + leg->wheel_radius > 1e-5)
        return false;
    }

  return true;
}

static void
find_ground (Side             *side,
             const GwAircraft *aircraft)
{
  double lowest = -INFINITY;

  for (size_t i = 0; i < aircraft->n_legs; i++)
    for (size_t j = 0; j < aircraft->n_legs; j++)
      {
        const GwLeg *a = &aircraft->legs[i], *b = &aircraft->legs[j];

        if (a->wheel_radius > 0 && b->wheel_radius > 0 && tangent_below (a, b, side->ground) &&
            carries_all (aircraft, side->ground))
          {
            side->has_ground = true;
            return;
          }
      }
  for (size_t i = 0; i < aircraft->n_legs; i++)
    if (aircraft->legs[i].wheel_radius > 0)
      lowest = fmax (lowest, aircraft->legs[i].wheel_radius - aircraft->legs[i].axle[2]);
  side->has_ground = isfinite (lowest);
  side->ground[0] = lowest;
  side->ground[1] = 0;
}

static void
side_area (Side      *side,
           GwDrawing *drawing,
           GwBox      box)
{
  side->area = gw_box_inset (box, 2);
  side->has_dimension = box.width >= 180 && box.height >= 90;
  side->has_bar = box.width >= 120 && box.height >= 80;
  gw_box_take_left (&side->area, GROUND_PAST);
  gw_box_take_right (&side->area, GROUND_PAST);
  if (side->has_dimension)
    gw_box_take_top (&side->area, gw_text_line (drawing, GW_FONT_TEXT) + 8);
  if (side->has_bar)
    gw_box_take_bottom (&side->area, gw_text_line (drawing, GW_FONT_SMALL) + 6);
}

/* Projects; the ground belongs to the extent. */
static void
side_project (Side                   *side,
              const GwAirframeFigure *figure,
              double                  extent[2])
{
  GwAirframe *airframe = &side->airframe;

  gw_airframe_project (figure->aircraft, GW_VIEW_SIDE, false, airframe);
  find_ground (side, figure->aircraft);
  for (int k = 0; side->has_ground && k < 2; k++)
    {
      double end = k == 0 ? airframe->low[0] : airframe->high[0];

      airframe->high[1] = fmax (airframe->high[1], side->ground[0] + side->ground[1] * end);
    }
  for (int k = 0; k < 2; k++)
    extent[k] = airframe->high[k] - airframe->low[k];
}

static double
scale_of (const Side  *side,
          const double extent[2])
{
  if (!(extent[0] > 0) || !(extent[1] >= 0))
    return 0;

  return fmin (side->area.width / extent[0], side->area.height / fmax (extent[1], 1e-6));
}

void
gw_side_extent (const GwAirframeFigure *figure,
                double                  extent[2])
{
  Side side = { .has_ground = false };

  side_project (&side, figure, extent);
  gw_airframe_clear (&side.airframe);
}

double
gw_side_scale (GwDrawing   *drawing,
               GwBox        box,
               const double extent[2])
{
  Side side = { .has_ground = false };

  side_area (&side, drawing, box);
  return scale_of (&side, extent);
}

static void
draw_length (GwDrawing              *drawing,
             const Side             *side,
             const GwAirframeFigure *figure)
{
  double      low[2] = { INFINITY, 0 }, high[2] = { -INFINITY, 0 };
  char        text[32];
  GwDimension length = { .text = text };

  for (size_t i = 0; i < side->airframe.n_shapes; i++)
    for (size_t k = 0; k < side->airframe.shapes[i].n; k++)
      {
        const double *uv = side->airframe.uv + 2 * (side->airframe.shapes[i].first + k);

        /* The length is that of the airframe, whatever propeller is on it. */
        if (side->airframe.shapes[i].kind == GW_SHAPE_PROPELLER)
          continue;
        if (uv[0] < low[0])
          low[0] = uv[0], low[1] = uv[1];
        if (uv[0] > high[0])
          high[0] = uv[0], high[1] = uv[1];
      }
  if (low[0] > high[0])
    return;
  for (int k = 0; k < 2; k++)
    {
      length.a[k] = side->origin[k] + low[k] * side->scale;
      length.b[k] = side->origin[k] + high[k] * side->scale;
    }
  length.place = side->origin[1] + side->airframe.low[1] * side->scale - 7;
  gw_length_dimension (&figure->length, high[0] - low[0], text, sizeof text);
  gw_dimension (drawing, &length);
}

static void
draw_ground (GwDrawing  *drawing,
             const Side *side)
{
  double x[2] = { side->origin[0] + side->airframe.low[0] * side->scale - GROUND_PAST,
                  side->origin[0] + side->airframe.high[0] * side->scale + GROUND_PAST };
  double y[2];

  for (int k = 0; k < 2; k++)
    {
      double u = (x[k] - side->origin[0]) / side->scale;

      y[k] = side->origin[1] + (side->ground[0] + side->ground[1] * u) * side->scale;
    }
  gw_line_from_to (drawing, x[0], y[0], x[1], y[1], GW_LINE_NARROW, GW_TONE_MID);
}

static void
draw_balance (GwDrawing              *drawing,
              const Side             *side,
              const GwAirframeFigure *figure,
              double                  size)
{
  const double *value = figure->results->value;
  double        x = side->origin[0] + value[GW_RESULT_BALANCE_X] * side->scale;
  double        y = side->origin[1] - value[GW_RESULT_BALANCE_Z] * side->scale;
  GwBox         box = { x - size / 2, y - size / 2, size, size };

  if (isfinite (x) && isfinite (y) && gw_box_holds (&side->area, &box))
    gw_drawing_symbol (drawing, GW_MARK_BALANCE, x, y, size, GW_TONE_INK);
}

double
gw_figure_side (GwDrawing              *drawing,
                GwBox                   box,
                const GwAirframeFigure *figure)
{
  Side   side = { .has_ground = false };
  size_t since = gw_drawing_n (drawing);
  double line = gw_text_line (drawing, GW_FONT_SMALL);
  double extent[2], scale;

  side_area (&side, drawing, box);
  side_project (&side, figure, extent);
  scale = scale_of (&side, extent);
  if (scale > 0 && figure->scale > 0)
    scale = figure->scale;
  side.scale = scale;
  if (scale > 0)
    {
      const GwAirframe *airframe = &side.airframe;

      for (int k = 0; k < 2; k++)
        {
          double middle =
            k == 0 ? side.area.x + side.area.width / 2 : side.area.y + side.area.height / 2;

          side.origin[k] = middle - (airframe->low[k] + airframe->high[k]) / 2 * scale;
        }
      gw_view_settle (drawing, GW_VIEW_SIDE, box, side.origin, &scale);
      side.scale = scale;
      if (side.has_ground)
        draw_ground (drawing, &side);
      gw_airframe_draw (drawing, airframe, 0, airframe->n_shapes, side.origin, scale,
                        figure->option);
      draw_balance (drawing, &side, figure, fmin (fmax (0.05 * scale, 8), 13));
      if (side.has_dimension)
        draw_length (drawing, &side, figure);
      if (side.has_bar)
        gw_scale_bar (drawing, side.origin[0] + airframe->low[0] * scale,
                      fmin (box.y + box.height - line / 2,
                            side.origin[1] + airframe->high[1] * scale + 6 + line / 2),
                      fmin (box.width * 0.4, 130), scale, &figure->length);
      gw_wanted_place_draw (drawing, figure, GW_VIEW_SIDE, box, since, side.origin, scale);
    }
  gw_airframe_clear (&side.airframe);

  return scale;
}
