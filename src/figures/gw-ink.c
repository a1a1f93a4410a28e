/* gw-ink.c - paints the marks of a drawing
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "figures/gw-drawing-private.h"

#define MAX_DASHES  8
#define HATCH_PITCH 3.2
#define PIECE       24 /* points stroked at a time: a long path in one is slow to tessellate */

typedef struct
{
  double width;
  int    n;
  double dashes[MAX_DASHES];
} LineStyle;

/* Widths after ISO 128-2: 0.5 mm and 0.25 mm; the hair line is half of that again.
 * Dashes in the proportions of ISO 128-2, a little shorter, for these are small drawings. */
static const LineStyle lines[] = {
  [GW_LINE_NONE] = { 0, 0, { 0 } },
  [GW_LINE_WIDE] = { 1.42, 0, { 0 } },
  [GW_LINE_NARROW] = { 0.71, 0, { 0 } },
  [GW_LINE_HAIR] = { 0.40, 0, { 0 } },
  [GW_LINE_CENTRE] = { 0.71, 4, { 11, 2, 0.9, 2 } },
  [GW_LINE_HIDDEN] = { 0.71, 2, { 4.2, 2 } },
  [GW_LINE_PHANTOM] = { 0.71, 6, { 11, 2, 0.9, 2, 0.9, 2 } },
  [GW_LINE_OPTION + 0] = { 1.5, 0, { 0 } },
  [GW_LINE_OPTION + 1] = { 1.5, 2, { 6, 2.5 } },
  [GW_LINE_OPTION + 2] = { 1.5, 4, { 8, 2.2, 1.5, 2.2 } },
  [GW_LINE_OPTION + 3] = { 1.5, 2, { 1.5, 2 } },
  [GW_LINE_OPTION + 4] = { 1.5, 2, { 12, 3.5 } },
  [GW_LINE_OPTION + 5] = { 1.5, 6, { 8, 2, 1.5, 2, 1.5, 2 } },
  [GW_LINE_OPTION + 6] = { 1.5, 2, { 3, 3 } },
  [GW_LINE_OPTION + 7] = { 1.5, 4, { 12, 2.5, 4, 2.5 } },
};

double
gw_line_width (GwLineType line)
{
  return lines[line].width;
}

static void
set_tone (const GwDrawing *drawing,
          cairo_t         *cr,
          GwTone           tone,
          double           opacity)
{
  const double *rgb = gw_drawing_theme (drawing)->rgb[tone];

  cairo_set_source_rgba (cr, rgb[0], rgb[1], rgb[2], opacity);
}

static void
trace (cairo_t      *cr,
       size_t        n,
       const double *xy,
       bool          is_closed)
{
  cairo_new_path (cr);
  for (size_t i = 0; i < n; i++)
    cairo_line_to (cr, xy[2 * i], xy[2 * i + 1]);
  if (is_closed)
    cairo_close_path (cr);
}

static void
stroke_path (cairo_t      *cr,
             const GwMark *mark,
             const double *xy)
{
  const LineStyle *style = &lines[mark->line];
  double           offset = 0;

  cairo_set_line_width (cr, style->width);

  /* Pieces would show where they meet if the line were translucent. */
  if (mark->n <= 2 * PIECE || mark->is_closed || mark->opacity < 1)
    {
      cairo_set_dash (cr, style->dashes, style->n, 0);
      trace (cr, mark->n, xy, mark->is_closed);
      cairo_stroke (cr);
      return;
    }

  for (size_t first = 0; first + 1 < mark->n; first += PIECE)
    {
      size_t n = MIN (PIECE + 1, mark->n - first);

      cairo_set_dash (cr, style->dashes, style->n, offset);
      trace (cr, n, xy + 2 * first, false);
      cairo_stroke (cr);
      for (size_t i = first; i + 1 < first + n; i++)
        offset += hypot (xy[2 * i + 2] - xy[2 * i], xy[2 * i + 3] - xy[2 * i + 1]);
    }
}

static void
hatch_path (cairo_t      *cr,
            const GwMark *mark,
            const double *xy)
{
  const GwBox *box = &mark->box;
  double       reach = box->width + box->height;
  /* Lines of all hatched marks are cut from one family, so that neighbours match. */
  double first = floor ((box->x - box->height) / HATCH_PITCH) * HATCH_PITCH;
  double shift = fmod (box->y, HATCH_PITCH);

  cairo_save (cr);
  trace (cr, mark->n, xy, true);
  cairo_clip (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, lines[GW_LINE_HAIR].width * 1.25);
  for (double x = first - shift; x < first + reach + box->height; x += HATCH_PITCH)
    {
      cairo_move_to (cr, x, box->y + box->height);
      cairo_line_to (cr, x + box->height, box->y);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
ink_path (const GwDrawing *drawing,
          cairo_t         *cr,
          const GwMark    *mark)
{
  const double *xy = gw_drawing_points (drawing) + 2 * mark->first;
  bool          is_group = mark->opacity < 1 && mark->line != GW_LINE_NONE &&
                  (mark->is_filled || mark->is_hatched);
  double opacity = is_group ? 1 : mark->opacity;

  if (is_group)
    cairo_push_group (cr);
  if (mark->is_filled)
    {
      set_tone (drawing, cr, mark->fill, opacity);
      trace (cr, mark->n, xy, true);
      cairo_set_antialias (cr, gw_mark_is_band (mark) ? CAIRO_ANTIALIAS_FAST
                                                      : CAIRO_ANTIALIAS_DEFAULT);
      cairo_fill (cr);
      cairo_set_antialias (cr, CAIRO_ANTIALIAS_DEFAULT);
    }
  set_tone (drawing, cr, mark->stroke, opacity);
  if (mark->is_hatched)
    hatch_path (cr, mark, xy);
  if (mark->line != GW_LINE_NONE)
    stroke_path (cr, mark, xy);
  if (is_group)
    {
      cairo_pop_group_to_source (cr);
      cairo_paint_with_alpha (cr, mark->opacity);
    }
}

static void
ink_text (const GwDrawing *drawing,
          cairo_t         *cr,
          const GwMark    *mark)
{
  const double  *at = gw_drawing_points (drawing) + 2 * mark->first;
  PangoLayout   *layout = gw_drawing_layout (drawing, mark->text, mark->font, mark->style);
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  set_tone (drawing, cr, mark->stroke, mark->opacity);
  cairo_save (cr);
  cairo_translate (cr, at[0], at[1]);
  cairo_rotate (cr, -mark->turn);
  cairo_move_to (cr, -0.5 * mark->align_x * logical.width / PANGO_SCALE,
                 -0.5 * mark->align_y * logical.height / PANGO_SCALE);
  pango_cairo_show_layout (cr, layout);
  cairo_restore (cr);
  cairo_new_path (cr);
}

static void
ink_balance (const GwDrawing *drawing,
             cairo_t         *cr,
             const GwMark    *mark,
             double           x,
             double           y)
{
  double radius = mark->size / 2 - lines[GW_LINE_NARROW].width / 2;

  set_tone (drawing, cr, GW_TONE_PAPER, mark->opacity);
  cairo_arc (cr, x, y, radius, 0, 2 * G_PI);
  cairo_fill (cr);
  set_tone (drawing, cr, mark->stroke, mark->opacity);
  cairo_move_to (cr, x, y);
  cairo_arc (cr, x, y, radius, -G_PI / 2, 0);
  cairo_close_path (cr);
  cairo_move_to (cr, x, y);
  cairo_arc (cr, x, y, radius, G_PI / 2, G_PI);
  cairo_close_path (cr);
  cairo_fill (cr);
  cairo_arc (cr, x, y, radius, 0, 2 * G_PI);
  cairo_set_line_width (cr, lines[GW_LINE_NARROW].width * 1.4);
  cairo_stroke (cr);
}

/* Corners on a circle: @n of them from @start, each second one at @inner of the radius. */
static void
trace_star (cairo_t *cr,
            double   x,
            double   y,
            double   radius,
            int      n,
            double   start,
            double   inner)
{
  cairo_new_path (cr);
  for (int i = 0; i < n; i++)
    {
      double angle = start + 2 * G_PI * i / n;
      double r = i % 2 == 1 ? radius * inner : radius;

      cairo_line_to (cr, x + r * cos (angle), y + r * sin (angle));
    }
  cairo_close_path (cr);
}

static void
trace_plus (cairo_t *cr,
            double   x,
            double   y,
            double   r)
{
  double a = 0.36 * r;

  cairo_new_path (cr);
  cairo_rectangle (cr, x - r, y - a, 2 * r, 2 * a);
  cairo_rectangle (cr, x - a, y - r, 2 * a, 2 * r);
}

/* Sizes are tuned so that all shapes look equally heavy. */
static void
trace_marker (cairo_t *cr,
              int      shape,
              double   x,
              double   y,
              double   r)
{
  cairo_new_path (cr);
  switch (shape)
    {
    case 0:
      cairo_arc (cr, x, y, 0.92 * r, 0, 2 * G_PI);
      break;
    case 1:
      cairo_rectangle (cr, x - 0.82 * r, y - 0.82 * r, 1.64 * r, 1.64 * r);
      break;
    case 2:
      trace_star (cr, x, y + 0.18 * r, 1.15 * r, 3, -G_PI / 2, 1);
      break;
    case 3:
      trace_star (cr, x, y, 1.12 * r, 4, 0, 1);
      break;
    case 4:
      trace_star (cr, x, y - 0.18 * r, 1.15 * r, 3, G_PI / 2, 1);
      break;
    case 5:
      trace_star (cr, x, y, 1.0 * r, 5, -G_PI / 2, 1);
      break;
    case 6:
      trace_plus (cr, x, y, r);
      break;
    default:
      trace_star (cr, x, y, 1.2 * r, 10, -G_PI / 2, 0.45);
      break;
    }
}

static void
ink_marker (const GwDrawing *drawing,
            cairo_t         *cr,
            const GwMark    *mark,
            double           x,
            double           y)
{
  int shape = ((int) mark->kind - GW_MARK_OPTION) % GW_OPTION_STYLES;

  /* A rim of paper keeps markers apart that lie on lines or on one another. */
  trace_marker (cr, shape, x, y, mark->size / 2);
  set_tone (drawing, cr, GW_TONE_PAPER, mark->opacity);
  cairo_set_line_width (cr, 1.6);
  cairo_stroke_preserve (cr);
  set_tone (drawing, cr, mark->stroke, mark->opacity);
  cairo_fill (cr);
}

static void
ink_symbol (const GwDrawing *drawing,
            cairo_t         *cr,
            const GwMark    *mark)
{
  const double *at = gw_drawing_points (drawing) + 2 * mark->first;
  double        r = mark->size / 2;

  cairo_set_dash (cr, NULL, 0, 0);
  cairo_new_path (cr);
  set_tone (drawing, cr, mark->stroke, mark->opacity);
  if (mark->kind == GW_MARK_BALANCE)
    ink_balance (drawing, cr, mark, at[0], at[1]);
  else if (mark->kind == GW_MARK_NEUTRAL)
    {
      cairo_arc (cr, at[0], at[1], r - 0.5, 0, 2 * G_PI);
      set_tone (drawing, cr, GW_TONE_PAPER, mark->opacity);
      cairo_fill_preserve (cr);
      set_tone (drawing, cr, mark->stroke, mark->opacity);
      cairo_set_line_width (cr, 1);
      cairo_stroke (cr);
    }
  else if (mark->kind == GW_MARK_DOT)
    {
      cairo_arc (cr, at[0], at[1], r, 0, 2 * G_PI);
      cairo_fill (cr);
    }
  else if (mark->kind == GW_MARK_CROSS)
    {
      cairo_move_to (cr, at[0] - r, at[1] - r);
      cairo_line_to (cr, at[0] + r, at[1] + r);
      cairo_move_to (cr, at[0] + r, at[1] - r);
      cairo_line_to (cr, at[0] - r, at[1] + r);
      cairo_set_line_width (cr, 1);
      cairo_stroke (cr);
    }
  else
    ink_marker (drawing, cr, mark, at[0], at[1]);
}

static GwBox
reach_of (const GwMark *mark)
{
  double rim = 1.0; /* of paper around markers; what a letter stands over its line */

  if (mark->kind == GW_MARK_TEXT)
    rim = 2.5;
  else if (mark->kind >= GW_MARK_OPTION)
    rim = 0.2 * mark->size + 1;
  else if (mark->kind == GW_MARK_PATH)
    rim = 2 * lines[mark->line].width + 0.5; /* a mitre reaches further than half the width */

  return (GwBox){ mark->box.x - rim, mark->box.y - rim, mark->box.width + 2 * rim,
                  mark->box.height + 2 * rim };
}

void
gw_drawing_reach (const GwDrawing *drawing,
                  size_t           i,
                  GwBoxVisitor     visit,
                  void            *data)
{
  const GwMark *mark = gw_drawing_mark (drawing, i);
  const double *xy = gw_drawing_points (drawing) + 2 * mark->first;
  GwMark        piece = *mark;
  GwBox         box;

  if (mark->kind != GW_MARK_PATH || mark->is_filled || mark->is_hatched || mark->is_closed)
    {
      box = reach_of (mark);
      visit (&box, data);
      return;
    }

  for (size_t k = 0; k + 1 < mark->n; k++, xy += 2)
    {
      piece.box = (GwBox){ fmin (xy[0], xy[2]), fmin (xy[1], xy[3]), fabs (xy[2] - xy[0]),
                           fabs (xy[3] - xy[1]) };
      box = reach_of (&piece);
      visit (&box, data);
    }
}

static bool
shows_in (const GwDrawing *drawing,
          size_t           i,
          size_t           n,
          const GwBox     *boxes)
{
  const GwBox reach = reach_of (gw_drawing_mark (drawing, i));

  for (size_t k = 0; k < n; k++)
    if (reach.x < boxes[k].x + boxes[k].width && boxes[k].x < reach.x + reach.width &&
        reach.y < boxes[k].y + boxes[k].height && boxes[k].y < reach.y + reach.height)
      return true;

  return false;
}

void
gw_drawing_ink (const GwDrawing *drawing,
                cairo_t         *cr)
{
  const GwBox all = { -1e6, -1e6, 2e6, 2e6 };

  gw_drawing_ink_within (drawing, cr, 1, &all);
}

/* A thing, a point of the aircraft or an option's line: what is worth being seen as it was. */
static bool
leaves_ghost (const GwMark *mark)
{
  if (mark->kind == GW_MARK_PATH)
    return mark->line >= GW_LINE_OPTION || (mark->target.group >= 0 && mark->line != GW_LINE_NONE);

  return mark->kind == GW_MARK_BALANCE || mark->kind == GW_MARK_NEUTRAL ||
         mark->kind >= GW_MARK_OPTION;
}

void
gw_drawing_ink_ghost (const GwDrawing *drawing,
                      cairo_t         *cr,
                      const bool      *which,
                      size_t           n,
                      const GwBox     *boxes)
{
  const double *xy = gw_drawing_points (drawing);

  cairo_save (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_BEVEL);
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      GwMark mark = *gw_drawing_mark (drawing, i);

      if (!which[i] || !leaves_ghost (&mark) || !shows_in (drawing, i, n, boxes))
        continue;
      mark.opacity = 0.32;
      if (mark.kind != GW_MARK_PATH)
        ink_symbol (drawing, cr, &mark);
      else
        {
          set_tone (drawing, cr, mark.stroke, mark.opacity);
          stroke_path (cr, &mark, xy + 2 * mark.first);
        }
    }
  cairo_restore (cr);
  cairo_new_path (cr);
}

void
gw_drawing_ink_within (const GwDrawing *drawing,
                       cairo_t         *cr,
                       size_t           n,
                       const GwBox     *boxes)
{
  cairo_save (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const GwMark *mark = gw_drawing_mark (drawing, i);

      if (!shows_in (drawing, i, n, boxes))
        continue;
      if (mark->kind == GW_MARK_PATH)
        ink_path (drawing, cr, mark);
      else if (mark->kind == GW_MARK_TEXT)
        ink_text (drawing, cr, mark);
      else
        ink_symbol (drawing, cr, mark);
    }
  cairo_restore (cr);
  cairo_new_path (cr);
}
