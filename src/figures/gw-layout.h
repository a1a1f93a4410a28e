/* gw-layout.h - boxes, ticks, fitted text, dimensions and labels that step aside
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-drawing.h"
#include "figures/gw-length.h"

/* Boxes. The take functions cut a strip off @box and return it. */
GwBox gw_box_inset (GwBox  box,
                    double by);
GwBox gw_box_take_top (GwBox *box,
                       double height);
GwBox gw_box_take_bottom (GwBox *box,
                          double height);
GwBox gw_box_take_left (GwBox *box,
                        double width);
GwBox gw_box_take_right (GwBox *box,
                         double width);
static inline bool
gw_box_meets (const GwBox *a,
              const GwBox *b,
              double       gap)
{
  return a->x < b->x + b->width + gap && b->x < a->x + a->width + gap &&
         a->y < b->y + b->height + gap && b->y < a->y + a->height + gap;
}
bool  gw_box_holds (const GwBox *outer,
                    const GwBox *inner);

/* Values of an axis: first, first + step, ... */
typedef struct
{
  double first, step;
  int    n;
  int    decimals;
} GwTicks;

/** gw_ticks: steps of 1, 2 or 5 times a power of ten, up to @most ticks within the range. */
GwTicks gw_ticks (double low,
                  double high,
                  int    most);

/** gw_round_below: the greatest 1, 2 or 5 times a power of ten that is not above @value. */
double gw_round_below (double value);

/** gw_text_fit: @text, or its beginning with an ellipsis, not wider than @width; NULL if that
 * leaves nothing to read. Free it with g_free(). */
char *gw_text_fit (GwDrawing  *drawing,
                   const char *text,
                   GwFont      font,
                   GwTextStyle style,
                   double      width);

/** gw_text_line: height of a line of text in @font. */
double gw_text_line (GwDrawing *drawing,
                     GwFont     font);

/** gw_text_lines: how many lines @text takes at @width. */
int gw_text_lines (GwDrawing  *drawing,
                   const char *text,
                   GwFont      font,
                   GwTextStyle style,
                   double      width);

/** gw_text_paragraph: sets @text into the top of @box, wrapped, as far as whole lines fit; returns
 * the height used. */
double gw_text_paragraph (GwDrawing  *drawing,
                          GwBox       box,
                          const char *text,
                          GwFont      font,
                          GwTone      tone,
                          GwTextStyle style,
                          GwAlign     align);

/** gw_text_at: a text aligned about its point. */
GwMark *gw_text_at (GwDrawing  *drawing,
                    double      x,
                    double      y,
                    const char *text,
                    GwFont      font,
                    GwTone      tone,
                    GwAlign     align_x,
                    GwAlign     align_y);

GwMark *gw_line_from_to (GwDrawing *drawing,
                         double     x0,
                         double     y0,
                         double     x1,
                         double     y1,
                         GwLineType line,
                         GwTone     tone);

GwMark *gw_rectangle (GwDrawing *drawing,
                      GwBox      box,
                      GwLineType line,
                      GwTone     tone);

/* Dimensions after ISO 129-1: filled arrowheads, extension lines with a gap at the
 * outline, the value above the line and readable from below or from the right. */
typedef struct
{
  double      a[2], b[2]; /* points measured between */
  double      place;      /* y of a horizontal, x of a vertical dimension line */
  bool        is_vertical;
  bool        is_half; /* only b has an arrow; the line runs a little past a, the centre line */
  const char *text;
} GwDimension;

/** gw_dimension: nothing is drawn if the value does not find room between the arrows. */
void gw_dimension (GwDrawing         *drawing,
                   const GwDimension *dimension);

/** gw_scale_bar: a length that is round in @unit, at most @width long, left end of its line at
 * (x, y). Returns the width covered; 0 if nothing fits. @scale: [pt per m] */
double gw_scale_bar (GwDrawing          *drawing,
                     double              x,
                     double              y,
                     double              width,
                     double              scale,
                     const GwLengthUnit *unit);

/** gw_is_free: whether no mark from @since on lies within @gap of @box. Inside of a closed filled
 * outline counts as free only if @may_cover. */
bool gw_is_free (const GwDrawing *drawing,
                 size_t           since,
                 GwBox            box,
                 double           gap,
                 bool             may_cover);

/* Labels joined to their points by leaders with an elbow. Those placed through one
 * GwCallouts see one another, line up in columns and do not cross. */
#define GW_CALLOUTS_MAX 64

typedef struct
{
  double      x, y;
  double      radius;  /* the leader starts this far from the point */
  bool        has_dot; /* it ends in a dot */
  const char *text;
  GwFont      font;
  GwTone      tone;
  GwTarget    target;
} GwCallout;

typedef struct
{
  GwBox  bounds;
  size_t since; /* marks from here on are in the way */
  bool   may_cover;
  double gap;     /* kept free about a text */
  double longest; /* reach of a leader, sideways and up [pt] */
  double middle;  /* x of the line that leaders had better not run across */
  size_t n;
  double leaders[GW_CALLOUTS_MAX][6];
  size_t n_columns;
  struct
  {
    double x;
    int    side;
  } columns[GW_CALLOUTS_MAX];
} GwCallouts;

/** gw_callouts_place: sets @n labels as one stack, their points from top to bottom; false, and
 * nothing drawn, if there is no room. */
bool gw_callouts_place (GwDrawing       *drawing,
                        GwCallouts      *callouts,
                        size_t           n,
                        const GwCallout *items);

/** gw_view_settle: says where a view stands: where it stood in the drawing that is followed. */
void gw_view_settle (GwDrawing *drawing,
                     GwView     view,
                     GwBox      box,
                     double     origin[2],
                     double    *scale);
