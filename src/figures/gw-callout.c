/* gw-callout.c - labels that step aside, joined to their points by leaders
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-layout.h"

#define TEXT_GAP      3.0 /* between leader and text */
#define LEADER_LEAN   0.6 /* sideways over up: about 60 degrees */
#define STEP_X        8.0
#define STEP_Y        6.0
#define ACROSS_COST   24.0 /* [pt] of leader that staying on its side of the middle is worth */
#define CROSSING_COST 8.0  /* [pt] of leader that a line less to cross is worth */
#define COLUMN_BONUS  30.0 /* [pt] of leader that standing in line is worth */

/* Liang-Barsky: does a-b touch the box? */
static bool
segment_meets_box (const double *a,
                   const double *b,
                   const GwBox  *box,
                   double        gap)
{
  double low[] = { box->x - gap, box->y - gap };
  double high[] = { box->x + box->width + gap, box->y + box->height + gap };
  double t0 = 0, t1 = 1;

  for (int k = 0; k < 2; k++)
    {
      double d = b[k] - a[k];

      if (d == 0)
        {
          if (a[k] <= low[k] || a[k] >= high[k])
            return false;
          continue;
        }
      t0 = fmax (t0, fmin ((low[k] - a[k]) / d, (high[k] - a[k]) / d));
      t1 = fmin (t1, fmax ((low[k] - a[k]) / d, (high[k] - a[k]) / d));
    }

  return t0 < t1;
}

static double
side_of (const double *a,
         const double *b,
         const double *p)
{
  return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
}

static bool
segments_cross (const double *a,
                const double *b,
                const double *c,
                const double *d)
{
  return side_of (a, b, c) * side_of (a, b, d) < 0 && side_of (c, d, a) * side_of (c, d, b) < 0;
}

static bool
polygon_holds (size_t        n,
               const double *xy,
               double        x,
               double        y)
{
  bool is_inside = false;

  for (size_t i = 0, j = n - 1; i < n; j = i++)
    {
      const double *a = xy + 2 * i, *b = xy + 2 * j;

      if ((a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]))
        is_inside = !is_inside;
    }

  return is_inside;
}

static bool
path_meets (const GwMark *mark,
            const double *xy,
            const GwBox  *box,
            double        gap,
            bool          may_cover)
{
  bool is_solid = (mark->is_filled || mark->is_hatched) && mark->opacity >= 0.5;

  if (mark->line == GW_LINE_NONE && !is_solid)
    return false;
  for (size_t i = 0; i + 1 < mark->n + (mark->is_closed ? 1 : 0); i++)
    if (segment_meets_box (xy + 2 * i, xy + 2 * ((i + 1) % mark->n), box, gap))
      return true;

  return is_solid && mark->is_closed && !may_cover &&
         polygon_holds (mark->n, xy, box->x + box->width / 2, box->y + box->height / 2);
}

static bool
mark_meets (const GwMark *mark,
            const double *points,
            const GwBox  *box,
            double        gap,
            bool          may_cover)
{
  return gw_box_meets (box, &mark->box, gap) &&
         (mark->kind != GW_MARK_PATH ||
          path_meets (mark, points + 2 * mark->first, box, gap, may_cover));
}

bool
gw_is_free (const GwDrawing *drawing,
            size_t           since,
            GwBox            box,
            double           gap,
            bool             may_cover)
{
  const double *points = gw_drawing_points (drawing);
  const size_t  n = gw_drawing_n (drawing);
  const GwMark *marks = gw_drawing_mark (drawing, 0);

  for (size_t i = since; i < n; i++)
    if (mark_meets (&marks[i], points, &box, gap, may_cover))
      return false;

  return true;
}

typedef struct
{
  double width, line; /* of the stack, of one text in it */
  double x, y;        /* text edge next to the leaders, top of the stack */
  int    side;        /* +1: text to the right of its point */
} Stack;

typedef struct
{
  GwDrawing       *drawing;
  GwCallouts      *callouts;
  size_t           n;
  const GwCallout *items;
  const GwMark   **near; /* marks that a column of places can meet: dozens are tried in it */
  size_t           n_near;
  double           cost; /* of the best place; infinite: none yet */
  Stack            best;
} Search;

/* A symbol on or over one of the points cannot be avoided. */
static bool
is_own_symbol (const GwMark *mark,
               const Search *search)
{
  const GwBox     *box = &mark->box;
  const GwCallout *items = search->items;

  for (size_t k = 0; k < search->n; k++)
    if (mark->kind != GW_MARK_TEXT && items[k].x >= box->x - 1 &&
        items[k].x <= box->x + box->width + 1 && items[k].y >= box->y - 1 &&
        items[k].y <= box->y + box->height + 1)
      return true;

  return false;
}

static GwBox
box_of_leader (const double *leader)
{
  double left = fmin (fmin (leader[0], leader[2]), leader[4]);
  double top = fmin (fmin (leader[1], leader[3]), leader[5]);

  return (GwBox){ left, top, fmax (fmax (leader[0], leader[2]), leader[4]) - left,
                  fmax (fmax (leader[1], leader[3]), leader[5]) - top };
}

/* A leader may pass over lines of the drawing, but not over texts, symbols or leaders. */
static bool
leader_is_free (const Search *search,
                const double *leader)
{
  const GwBox       box = box_of_leader (leader);
  const GwCallouts *callouts = search->callouts;

  for (size_t i = 0; i < search->n_near; i++)
    {
      const GwMark *mark = search->near[i];
      double        gap = mark->kind == GW_MARK_TEXT ? 1 : -0.5;

      if (mark->kind == GW_MARK_PATH || mark->kind == GW_MARK_DOT ||
          !gw_box_meets (&box, &mark->box, gap) || is_own_symbol (mark, search))
        continue;
      for (int k = 0; k < 2; k++)
        if (segment_meets_box (leader + 2 * k, leader + 2 * k + 2, &mark->box, gap))
          return false;
    }
  for (size_t i = 0; i < callouts->n; i++)
    for (int k = 0; k < 4; k++)
      if (segments_cross (leader + 2 * (k / 2), leader + 2 * (k / 2) + 2,
                          callouts->leaders[i] + 2 * (k % 2),
                          callouts->leaders[i] + 2 * (k % 2) + 2))
        return false;

  return true;
}

/* How many lines of the drawing a leader passes over. */
static int
count_crossings (const Search *search,
                 const double *leader)
{
  const GwBox box = box_of_leader (leader);
  int         n = 0;

  for (size_t i = 0; i < search->n_near; i++)
    {
      const GwMark *mark = search->near[i];
      const double *xy = gw_drawing_points (search->drawing) + 2 * mark->first;

      if (mark->kind != GW_MARK_PATH || mark->line == GW_LINE_NONE ||
          !gw_box_meets (&box, &mark->box, 1))
        continue;
      for (size_t k = 0; k + 1 < mark->n; k++)
        n += segments_cross (leader, leader + 2, xy + 2 * k, xy + 2 * k + 2) ||
             segments_cross (leader + 2, leader + 4, xy + 2 * k, xy + 2 * k + 2);
    }

  return n;
}

static void
leader_make (const Stack     *stack,
             size_t           k,
             const GwCallout *item,
             double           leader[6])
{
  double end = stack->x - stack->side * TEXT_GAP;
  double y = stack->y + ((double) k + 0.5) * stack->line;
  double elbow = item->x + stack->side * LEADER_LEAN * fabs (y - item->y);
  double limit = end - stack->side * 4;
  double least = item->x + stack->side * (item->radius + 1.5);
  double length;

  if (stack->side * (elbow - limit) > 0)
    elbow = limit;
  if (stack->side * (elbow - least) < 0) /* all but level with its point */
    elbow = least;
  length = hypot (elbow - item->x, y - item->y);
  leader[0] = item->x + (elbow - item->x) / length * item->radius;
  leader[1] = item->y + (y - item->y) / length * item->radius;
  leader[2] = elbow;
  leader[3] = y;
  leader[4] = end;
  leader[5] = y;
}

static bool
stack_is_free (const Search *search,
               const Stack  *stack)
{
  GwCallouts   *callouts = search->callouts;
  const double *points = gw_drawing_points (search->drawing);
  const GwBox   box = { stack->side > 0 ? stack->x : stack->x - stack->width, stack->y,
                      stack->width, stack->line * (double) search->n };
  const size_t  before = callouts->n;
  bool          is_free = gw_box_holds (&callouts->bounds, &box);

  for (size_t i = 0; i < search->n_near && is_free; i++)
    is_free = !mark_meets (search->near[i], points, &box, callouts->gap, callouts->may_cover);
  for (size_t k = 0; k < search->n && is_free; k++)
    {
      double *leader = callouts->leaders[callouts->n];

      leader_make (stack, k, &search->items[k], leader);
      is_free = leader_is_free (search, leader);
      callouts->n++;
    }
  callouts->n = before;

  return is_free;
}

static double
crossing_cost (const Search *search,
               const Stack  *stack)
{
  double leader[6];
  int    crossings = 0;

  for (size_t k = 0; k < search->n; k++)
    {
      leader_make (stack, k, &search->items[k], leader);
      crossings += count_crossings (search, leader);
    }

  return CROSSING_COST * crossings / (double) search->n;
}

static bool
is_column (const GwCallouts *callouts,
           const Stack      *stack)
{
  for (size_t i = 0; i < callouts->n_columns; i++)
    if (callouts->columns[i].side == stack->side && fabs (callouts->columns[i].x - stack->x) < 0.5)
      return true;

  return false;
}

/* Marks between the points and the far edge of the stack, wherever it stands in its column. */
static void
look_near (Search      *search,
           const Stack *stack)
{
  const double  gap = fmax (search->callouts->gap, 1);
  const size_t  n_marks = gw_drawing_n (search->drawing);
  const GwMark *marks = gw_drawing_mark (search->drawing, 0);
  const double  far = stack->x + stack->side * stack->width;
  double        left = fmin (stack->x, far), right = fmax (stack->x, far);

  for (size_t k = 0; k < search->n; k++)
    {
      left = fmin (left, search->items[k].x - search->items[k].radius);
      right = fmax (right, search->items[k].x + search->items[k].radius);
    }
  search->n_near = 0;
  for (size_t i = search->callouts->since; i < n_marks; i++)
    if (marks[i].box.x < right + gap && marks[i].box.x + marks[i].box.width > left - gap)
      search->near[search->n_near++] = &marks[i];
}

/* Tries the places on one side at x, near ones first; keeps the best. */
static void
search_column (Search *search,
               Stack   stack)
{
  const GwCallouts *callouts = search->callouts;
  const GwCallout  *items = search->items;
  const double      middle =
    (items[0].y + items[search->n - 1].y) / 2 - stack.line * (double) search->n / 2;
  double base = fabs (stack.x - items[0].x);

  if (callouts->n_columns > 0 && !is_column (callouts, &stack))
    base += COLUMN_BONUS;
  if (stack.side * (items[0].x - callouts->middle) < -1)
    base += ACROSS_COST;
  look_near (search, &stack);
  for (int i = 0;; i++)
    {
      double shift = (i + 1) / 2 * STEP_Y;
      double cost = base + 1.2 * shift;

      if (cost >= search->cost || shift > fmin (callouts->bounds.height, callouts->longest))
        return;
      stack.y = middle + (i % 2 == 0 ? shift : -shift);
      if (!stack_is_free (search, &stack))
        continue;
      cost += crossing_cost (search, &stack);
      if (cost < search->cost)
        {
          search->cost = cost;
          search->best = stack;
        }
    }
}

/* False: there is no room. */
static bool
find_place (GwDrawing       *drawing,
            GwCallouts      *callouts,
            Stack            stack,
            size_t           n,
            const GwCallout *items,
            Stack           *best)
{
  const double reach = fmin (callouts->bounds.width, callouts->longest);
  Search       search = { drawing, callouts, n, items, .cost = INFINITY };

  search.near = g_new (const GwMark *, gw_drawing_n (drawing));
  for (size_t i = 0; i < callouts->n_columns; i++)
    {
      stack.x = callouts->columns[i].x;
      stack.side = callouts->columns[i].side;
      if (stack.side * (stack.x - items[0].x) > items[0].radius + 8 &&
          fabs (stack.x - items[0].x) < callouts->longest)
        search_column (&search, stack);
    }
  for (double d = items[0].radius + 14; d < fmin (search.cost, reach); d += STEP_X)
    for (int side = 1; side >= -1; side -= 2)
      {
        stack.x = items[0].x + side * d;
        stack.side = side;
        search_column (&search, stack);
      }
  g_free (search.near);
  if (isfinite (search.cost))
    *best = search.best;

  return isfinite (search.cost);
}

static void
ink_stack (GwDrawing       *drawing,
           GwCallouts      *callouts,
           const Stack     *stack,
           size_t           n,
           const GwCallout *items)
{
  for (size_t k = 0; k < n; k++)
    {
      double *leader = callouts->leaders[callouts->n++];
      GwMark *mark;

      leader_make (stack, k, &items[k], leader);
      gw_drawing_path (drawing, 3, leader, GW_LINE_NARROW, GW_TONE_MID);
      if (items[k].has_dot)
        gw_drawing_symbol (drawing, GW_MARK_DOT, items[k].x, items[k].y, 2.4, GW_TONE_MID);
      mark = gw_text_at (drawing, stack->x, leader[5], items[k].text, items[k].font, items[k].tone,
                         stack->side > 0 ? GW_ALIGN_START : GW_ALIGN_END, GW_ALIGN_MIDDLE);
      mark->target = items[k].target;
    }
  if (!is_column (callouts, stack) && callouts->n_columns < GW_CALLOUTS_MAX)
    {
      callouts->columns[callouts->n_columns].x = stack->x;
      callouts->columns[callouts->n_columns++].side = stack->side;
    }
}

static bool
recall_stack (GwDrawing   *drawing,
              const Stack *stack,
              Stack       *best)
{
  double place[3];

  *best = *stack;
  if (!gw_drawing_recall (drawing, 3, place))
    return false;

  best->x = place[0];
  best->y = place[1];
  best->side = (int) place[2];
  return true;
}

bool
gw_callouts_place (GwDrawing       *drawing,
                   GwCallouts      *callouts,
                   size_t           n,
                   const GwCallout *items)
{
  Stack stack = { 0 }, best = { 0 };

  if (n == 0 || callouts->n + n > GW_CALLOUTS_MAX)
    return false;
  for (size_t k = 0; k < n; k++)
    {
      double width, height;

      gw_drawing_measure (drawing, items[k].text, items[k].font, GW_STYLE_UPRIGHT, &width, &height);
      stack.width = fmax (stack.width, width);
      stack.line = fmax (stack.line, height);
    }
  if (!recall_stack (drawing, &stack, &best))
    {
      if (!find_place (drawing, callouts, stack, n, items, &best))
        best.side = 0;
      gw_drawing_remember (drawing, 3, (double[]){ best.x, best.y, best.side });
    }
  if (best.side == 0)
    return false;

  ink_stack (drawing, callouts, &best, n, items);

  return true;
}
