/* gw-airframe.c - an aircraft as plain shapes
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdlib.h>

#include "figures/gw-airframe-private.h"

/* Equipment is drawn as if all round it were clear. */
#define LEVEL_POWER 1e6
#define LEVEL_ITEM  2e6

#define SMALL_SCALE 120.0 /* [pt per m], about 1:24 */

typedef double Point[3];

void
gw_projection_add (GwProjection *projection,
                   GwShapeKind   kind,
                   size_t        n,
                   const double *xyz,
                   bool          is_closed)
{
  GwAirframe *airframe = projection->airframe;
  bool        is_top = projection->view == GW_VIEW_TOP;
  double     *uv;

  for (size_t i = 0; i < 3 * n; i++)
    if (!isfinite (xyz[i]))
      return;

  if (airframe->n_shapes == airframe->size_shapes)
    {
      airframe->size_shapes = 2 * airframe->size_shapes + 32;
      airframe->shapes = g_renew (GwShape, airframe->shapes, airframe->size_shapes);
    }
  if (airframe->n_points + n > airframe->size_points)
    {
      airframe->size_points = 2 * airframe->size_points + n + 256;
      airframe->uv = g_renew (double, airframe->uv, 2 * airframe->size_points);
    }
  airframe->shapes[airframe->n_shapes++] =
    (GwShape){ kind, projection->target, projection->level, airframe->n_points,
               n, is_closed, projection->is_image };
  uv = airframe->uv + 2 * airframe->n_points;
  airframe->n_points += n;

  for (size_t i = 0; i < n; i++, uv += 2, xyz += 3)
    {
      uv[0] = is_top ? (projection->is_image ? -xyz[1] : xyz[1]) : xyz[0];
      uv[1] = is_top ? xyz[0] : -xyz[2];
      if (is_top && projection->is_half)
        uv[0] = fmax (uv[0], 0);
      for (int k = 0; k < 2; k++)
        {
          airframe->low[k] = fmin (airframe->low[k], uv[k]);
          airframe->high[k] = fmax (airframe->high[k], uv[k]);
        }
    }
}

static void
add_box (GwProjection *projection,
         GwShapeKind   kind,
         const double  centre[3],
         double        dx,
         double        dy,
         double        dz)
{
  double x0 = centre[0] - dx / 2, x1 = centre[0] + dx / 2;
  double y0 = centre[1] - dy / 2, y1 = centre[1] + dy / 2;
  double z0 = centre[2] - dz / 2, z1 = centre[2] + dz / 2;
  double xyz[] = { x0, y0, z0, x1, y0, z0, x1, y1, z1, x0, y1, z1 };

  gw_projection_add (projection, kind, 4, xyz, true);
}

/* From above the half widths, from the side upper and lower edge. */
static void
add_body (GwProjection *projection,
          const GwBody *body,
          int           index)
{
  bool   is_top = projection->view == GW_VIEW_TOP;
  bool   is_cut = is_top && projection->is_half && body->y == 0;
  Point *xyz = g_new (Point, 2 * body->n_stations);
  double level = 0;
  size_t m = 0;

  for (int side = 1; side >= -1; side -= 2)
    for (size_t k = 0; k < body->n_stations && !(is_cut && side < 0); k++)
      {
        const GwBodyStation *at = &body->stations[side > 0 ? k : body->n_stations - 1 - k];

        xyz[m][0] = at->x;
        xyz[m][1] = body->y + (is_top ? side * at->width / 2 : 0);
        xyz[m++][2] = at->z + (is_top ? 0 : side * at->height / 2);
        level += at->z / (double) (2 * body->n_stations);
      }
  projection->target = (GwTarget){ GW_GROUP_BODY, index };
  projection->level = is_top ? level : 1;
  gw_projection_add (projection, GW_SHAPE_BODY, m, xyz[0], !is_cut);
  g_free (xyz);
}

/* A round bar: a rectangle about its axis as projected. */
static void
add_strut (GwProjection  *projection,
           const GwStrut *strut,
           int            index)
{
  bool   is_top = projection->view == GW_VIEW_TOP;
  int    across = is_top ? 1 : 2;
  double dx = strut->to[0] - strut->from[0];
  double da = strut->to[across] - strut->from[across];
  double length = hypot (dx, da);
  double xyz[4][3];

  for (int i = 0; i < 4; i++)
    {
      const double *end = i == 0 || i == 3 ? strut->from : strut->to;
      double        r = i < 2 ? strut->radius : -strut->radius;

      for (int k = 0; k < 3; k++)
        xyz[i][k] = end[k];
      xyz[i][0] -= length > 0 ? r * da / length : 0;
      xyz[i][across] += length > 0 ? r * dx / length : r;
    }
  projection->target = (GwTarget){ GW_GROUP_STRUT, index };
  projection->level = is_top ? (strut->from[2] + strut->to[2]) / 2 : 0;
  gw_projection_add (projection, GW_SHAPE_STRUT, 4, xyz[0], true);
}

static void
add_leg (GwProjection *projection,
         const GwLeg  *leg,
         int           index)
{
  bool   is_top = projection->view == GW_VIEW_TOP;
  double line[] = {
    leg->top[0], leg->top[1], leg->top[2], leg->axle[0], leg->axle[1], leg->axle[2]
  };

  projection->target = (GwTarget){ GW_GROUP_LEG, index };
  projection->level = is_top ? leg->axle[2] : 3;
  gw_projection_add (projection, GW_SHAPE_LEG, 2, line, false);
  if (!(leg->wheel_radius > 0))
    return;
  if (is_top)
    add_box (projection, GW_SHAPE_WHEEL, leg->axle, 2 * leg->wheel_radius, leg->wheel_width, 0);
  else
    for (int ring = 0; ring < 2; ring++) /* tyre and hub */
      {
        double xyz[32][3];
        double radius = leg->wheel_radius * (ring == 0 ? 1 : 0.3);

        for (int i = 0; i < 32; i++)
          {
            xyz[i][0] = leg->axle[0] + radius * cos (2 * G_PI * i / 32);
            xyz[i][1] = leg->axle[1];
            xyz[i][2] = leg->axle[2] + radius * sin (2 * G_PI * i / 32);
          }
        gw_projection_add (projection, GW_SHAPE_WHEEL, 32, xyz[0], true);
      }
}

static void
add_power (GwProjection  *projection,
           const GwPower *power,
           int            index)
{
  double radius = power->propeller_diameter / 2;
  double y = power->motor_at[1], z = power->motor_at[2];
  bool   is_top = projection->view == GW_VIEW_TOP;
  double disc[] = { power->propeller_x, y - (is_top ? radius : 0), z - (is_top ? 0 : radius),
                    power->propeller_x, y + (is_top ? radius : 0), z + (is_top ? 0 : radius) };

  projection->target = (GwTarget){ GW_GROUP_POWER, index };
  projection->level = LEVEL_POWER;
  add_box (projection, GW_SHAPE_MOTOR, power->motor_at, power->motor_length,
           2 * power->motor_radius, is_top ? 0 : 2 * power->motor_radius);
  if (radius > 0)
    gw_projection_add (projection, GW_SHAPE_PROPELLER, 2, disc, false);
}

static void
add_item (GwProjection *projection,
          const GwItem *item,
          int           index)
{
  bool is_top = projection->view == GW_VIEW_TOP;

  projection->target = (GwTarget){ GW_GROUP_ITEM, index };
  /* Small things lie on large ones. */
  projection->level = LEVEL_ITEM - item->size[0] * (is_top ? item->size[1] : item->size[2]);
  if (isfinite (item->bay_from) && isfinite (item->bay_to))
    {
      double centre[] = { (item->bay_from + item->bay_to) / 2, item->at[1], item->at[2] };

      add_box (projection, GW_SHAPE_BAY, centre,
               fabs (item->bay_to - item->bay_from) + item->size[0], item->size[1],
               is_top ? 0 : item->size[2]);
    }
  add_box (projection, GW_SHAPE_ITEM, item->at, item->size[0], item->size[1],
           is_top ? 0 : item->size[2]);
}

/* One thing, and its mirror image where that is seen on its own. */
#define ADD_BOTH(projection, add, thing, index, y, mirrored)               \
 do                                                                        \
  {                                                                        \
   bool is_side_view = (projection)->view == GW_VIEW_SIDE;                 \
                                                                           \
   if (!(projection)->is_half || (y) >= 0)                                 \
    add ((projection), (thing), (int) (index));                            \
   (projection)->is_image = true;                                          \
   if ((mirrored) && !is_side_view && (!(projection)->is_half || (y) < 0)) \
    add ((projection), (thing), (int) (index));                            \
   (projection)->is_image = false;                                         \
  }                                                                        \
 while (0)

static int
by_level (const void *a,
          const void *b)
{
  const GwShape *p = a, *q = b;

  if (p->level != q->level)
    return p->level < q->level ? -1 : 1;

  return p->first < q->first ? -1 : 1;
}

void
gw_airframe_project (const GwAircraft *aircraft,
                     GwView            view,
                     bool              is_half,
                     GwAirframe       *out)
{
  GwProjection projection = { out, view, is_half && view == GW_VIEW_TOP, false, GW_TARGET_NONE, 0 };

  *out = (GwAirframe){ .low = { INFINITY, INFINITY }, .high = { -INFINITY, -INFINITY } };
  for (size_t i = 0; i < aircraft->n_bodies; i++)
    ADD_BOTH (&projection, add_body, &aircraft->bodies[i], i, aircraft->bodies[i].y,
              aircraft->bodies[i].is_mirrored);
  for (size_t i = 0; i < aircraft->n_struts; i++)
    ADD_BOTH (&projection, add_strut, &aircraft->struts[i], i, aircraft->struts[i].to[1],
              aircraft->struts[i].is_mirrored);
  for (size_t i = 0; i < aircraft->n_surfaces; i++)
    gw_projection_surface (&projection, &aircraft->surfaces[i], (int) i);
  for (size_t i = 0; i < aircraft->n_legs; i++)
    ADD_BOTH (&projection, add_leg, &aircraft->legs[i], i, aircraft->legs[i].axle[1],
              aircraft->legs[i].is_mirrored);
  for (size_t i = 0; i < aircraft->n_powers; i++)
    ADD_BOTH (&projection, add_power, &aircraft->powers[i], i, aircraft->powers[i].motor_at[1],
              aircraft->powers[i].is_mirrored);
  for (size_t i = 0; i < aircraft->n_items; i++)
    ADD_BOTH (&projection, add_item, &aircraft->items[i], i, aircraft->items[i].at[1],
              aircraft->items[i].is_mirrored);
  if (out->n_shapes > 0)
    qsort (out->shapes, out->n_shapes, sizeof *out->shapes, by_level);
  while (out->n_skin < out->n_shapes && out->shapes[out->n_skin].level < LEVEL_POWER)
    out->n_skin++;
}

void
gw_airframe_clear (GwAirframe *airframe)
{
  g_free (airframe->shapes);
  g_free (airframe->uv);
  *airframe = (GwAirframe){ 0 };
}

typedef struct
{
  GwLineType line;
  GwTone     stroke;
  bool       is_filled;
  GwTone     fill;
} ShapeStyle;

static const ShapeStyle styles[GW_N_SHAPES] = {
  [GW_SHAPE_SURFACE] = { GW_LINE_WIDE, GW_TONE_INK, true, GW_TONE_PAPER },
  [GW_SHAPE_EDGE] = { GW_LINE_NARROW, GW_TONE_INK, true, GW_TONE_PAPER },
  [GW_SHAPE_SECTION] = { GW_LINE_WIDE, GW_TONE_INK, true, GW_TONE_PAPER },
  [GW_SHAPE_STATION] = { GW_LINE_HAIR, GW_TONE_MID, false, 0 },
  [GW_SHAPE_QUARTER] = { GW_LINE_CENTRE, GW_TONE_MID, false, 0 },
  [GW_SHAPE_SPAR] = { GW_LINE_HIDDEN, GW_TONE_MID, false, 0 },
  [GW_SHAPE_SEAM] = { GW_LINE_CENTRE, GW_TONE_OPTION, false, 0 },
  [GW_SHAPE_CONTROL] = { GW_LINE_NARROW, GW_TONE_INK, false, 0 },
  [GW_SHAPE_BODY] = { GW_LINE_WIDE, GW_TONE_INK, true, GW_TONE_BODY },
  [GW_SHAPE_STRUT] = { GW_LINE_NARROW, GW_TONE_INK, true, GW_TONE_BODY },
  [GW_SHAPE_LEG] = { GW_LINE_WIDE, GW_TONE_INK, false, 0 },
  [GW_SHAPE_WHEEL] = { GW_LINE_NARROW, GW_TONE_INK, true, GW_TONE_PAPER },
  [GW_SHAPE_MOTOR] = { GW_LINE_NARROW, GW_TONE_INK, true, GW_TONE_PAPER },
  [GW_SHAPE_PROPELLER] = { GW_LINE_PHANTOM, GW_TONE_INK, false, 0 },
  [GW_SHAPE_BAY] = { GW_LINE_HIDDEN, GW_TONE_MID, false, 0 },
  [GW_SHAPE_ITEM] = { GW_LINE_NARROW, GW_TONE_INK, true, GW_TONE_BODY },
};

/* A small drawing keeps its outlines and loses what would only be grey. */
static bool
is_too_small (GwShapeKind kind,
              double      scale)
{
  return scale < SMALL_SCALE &&
         (kind == GW_SHAPE_STATION || kind == GW_SHAPE_QUARTER || kind == GW_SHAPE_SPAR);
}

void
gw_airframe_draw (GwDrawing        *drawing,
                  const GwAirframe *airframe,
                  size_t            from,
                  size_t            to,
                  const double      origin[2],
                  double            scale,
                  int               option)
{
  for (size_t i = from; i < to; i++)
    {
      const GwShape    *shape = &airframe->shapes[i];
      const ShapeStyle *style = &styles[shape->kind];
      GwLineType        line = style->line;
      GwTone            tone = style->stroke;
      double           *xy;
      GwMark           *mark;

      if (is_too_small (shape->kind, scale))
        continue;
      if (line == GW_LINE_WIDE && scale < SMALL_SCALE)
        line = GW_LINE_NARROW;
      xy = g_new (double, 2 * shape->n);
      if (tone == GW_TONE_OPTION)
        tone += option % GW_OPTION_STYLES;
      for (size_t k = 0; k < 2 * shape->n; k++)
        xy[k] = origin[k % 2] + airframe->uv[2 * shape->first + k] * scale;
      mark = gw_drawing_path (drawing, shape->n, xy, line, tone);
      mark->is_closed = shape->is_closed;
      mark->is_filled = style->is_filled;
      mark->fill = style->fill;
      mark->target = shape->target;
      g_free (xy);
    }
}
