/* gw-planform-labels.c - names of the equipment, or numbers and a list
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-figures-private.h"

#define NAMED_MAX    14   /* more names than this are a thicket of leaders */
#define NUMBER_REACH 90.0 /* [pt] */
#define LIST_ROWS    16   /* longest column of the list, if it has the choice */
#define LIST_STEP    8.0  /* grid on which the list looks for a place [pt] */

typedef struct
{
  size_t index; /* of the item */
  double x, y;  /* [pt] */
  GwBox  box;   /* as drawn */
} Tag;

static int
by_place (const void *a,
          const void *b)
{
  const Tag *p = a, *q = b;

  if (p->y != q->y)
    return p->y < q->y ? -1 : 1;
  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;

  return p->index < q->index ? -1 : 1;
}

static size_t
collect (const GwAirframeFigure *figure,
         const double            origin[2],
         double                  scale,
         Tag                    *tags)
{
  size_t n = 0;

  for (size_t i = 0; i < figure->aircraft->n_items; i++)
    {
      const GwItem *item = &figure->aircraft->items[i];
      double        y = figure->is_half && item->is_mirrored ? fabs (item->at[1]) : item->at[1];
      Tag           tag = { .index = i };

      tag.x = origin[0] + y * scale;
      tag.y = origin[1] + item->at[0] * scale;
      if (item->name == NULL || *item->name == '\0' || !isfinite (tag.x) || !isfinite (tag.y) ||
          (figure->is_half && y < 0))
        continue;
      tag.box = (GwBox){ tag.x - item->size[1] * scale / 2, tag.y - item->size[0] * scale / 2,
                         item->size[1] * scale, item->size[0] * scale };
      tags[n++] = tag;
    }
  qsort (tags, n, sizeof *tags, by_place);

  return n;
}

/* In the order of the drawing that is followed, or their numbers would change in passing. */
static void
keep_order (GwDrawing *drawing,
            Tag       *tags,
            size_t     n)
{
  g_autofree double *order = g_new (double, n + 1);

  if (!gw_drawing_recall (drawing, n, order))
    {
      for (size_t i = 0; i < n; i++)
        order[i] = (double) tags[i].index;
      gw_drawing_remember (drawing, n, order);
      return;
    }

  for (size_t i = 0; i < n; i++)
    for (size_t k = i; k < n; k++)
      if ((double) tags[k].index == order[i])
        {
          const Tag tag = tags[k];

          tags[k] = tags[i];
          tags[i] = tag;
          break;
        }
}

static GwCallout
callout_of (const Tag  *tag,
            const char *text)
{
  GwTarget target = { GW_GROUP_ITEM, (int) tag->index };

  return (GwCallout){ tag->x, tag->y, 1, true, text, GW_FONT_SMALL, GW_TONE_MID, target };
}

static bool
place_names (GwDrawing              *drawing,
             GwCallouts             *callouts,
             const GwAirframeFigure *figure,
             const Tag              *tags,
             size_t                  n)
{
  if (n > NAMED_MAX)
    return false;
  for (size_t i = 0; i < n; i++)
    {
      GwCallout item = callout_of (&tags[i], figure->aircraft->items[tags[i].index].name);

      if (!gw_callouts_place (drawing, callouts, 1, &item))
        return false;
    }

  return true;
}

/* Within the thing, else close beside it. */
static bool
place_beside (GwDrawing        *drawing,
              const GwCallouts *callouts,
              const Tag        *tag,
              const char       *text)
{
  static const double sides[][2] = { { 0, 0 }, { 1, 0 }, { -1, 0 }, { 0, -1 }, { 0, 1 } };
  double              width, height, known;
  bool                is_known;

  is_known = gw_drawing_recall (drawing, 1, &known);
  gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, &height);
  for (size_t i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      double  x = tag->x + sides[i][0] * (tag->box.width / 2 + width / 2 + 1.5);
      double  y = tag->y + sides[i][1] * (tag->box.height / 2 + height / 2 + 0.5);
      GwBox   box = { x - width / 2, y - height / 2, width, height };
      GwMark *mark;

      if (is_known ? (double) i != known
                   : !gw_box_holds (&callouts->bounds, &box) ||
                       !gw_is_free (drawing, callouts->since, box, 0.4, true))
        continue;
      if (!is_known)
        gw_drawing_remember (drawing, 1, (double[]){ (double) i });
      mark = gw_text_at (drawing, x, y, text, GW_FONT_SMALL, GW_TONE_INK, GW_ALIGN_MIDDLE,
                         GW_ALIGN_MIDDLE);
      mark->target = (GwTarget){ GW_GROUP_ITEM, (int) tag->index };
      return true;
    }

  if (!is_known)
    gw_drawing_remember (drawing, 1, (double[]){ -1 });
  return false;
}

/* A free place for a box of this size, as near to the lower right as there is. */
static bool
find_place (const GwDrawing  *drawing,
            const GwCallouts *callouts,
            GwBox            *box)
{
  const GwBox *bounds = &callouts->bounds;
  double       best = INFINITY;
  GwBox        trial = *box;

  for (double dy = 0; dy <= bounds->height - box->height; dy += LIST_STEP)
    for (double dx = 0; dx <= bounds->width - box->width; dx += LIST_STEP)
      {
        /* Corners first: the list should not stand between the aeroplane and its labels. */
        double cost =
          fmin (dx, bounds->width - box->width - dx) + fmin (dy, bounds->height - box->height - dy);

        trial.x = bounds->x + bounds->width - box->width - dx;
        trial.y = bounds->y + bounds->height - box->height - dy;
        if (cost < best && gw_is_free (drawing, callouts->since, trial, 6, false))
          {
            best = cost;
            *box = trial;
          }
      }

  return isfinite (best);
}

static void
ink_list (GwDrawing              *drawing,
          const GwAirframeFigure *figure,
          const Tag              *tags,
          size_t                  n,
          GwBox                   box,
          size_t                  n_columns)
{
  size_t n_rows = (n + n_columns - 1) / n_columns;
  double line = gw_text_line (drawing, GW_FONT_SMALL);
  double width = box.width / (double) n_columns;
  double digits;

  gw_drawing_measure (drawing, "00", GW_FONT_SMALL, GW_STYLE_UPRIGHT, &digits, NULL);
  for (size_t i = 0; i < n; i++)
    {
      double  x = box.x + width * (double) (i / n_rows);
      double  y = box.y + line * (double) (i % n_rows);
      char    number[24];
      GwMark *mark;

      snprintf (number, sizeof number, "%zu", i + 1);
      gw_text_at (drawing, x + digits, y, number, GW_FONT_SMALL, GW_TONE_INK, GW_ALIGN_END,
                  GW_ALIGN_START);
      mark =
        gw_drawing_text (drawing, x + digits + 4, y, figure->aircraft->items[tags[i].index].name,
                         GW_FONT_SMALL, GW_TONE_MID);
      mark->target = (GwTarget){ GW_GROUP_ITEM, (int) tags[i].index };
    }
}

static bool
recall_list (GwDrawing *drawing,
             GwBox     *box,
             size_t    *n_columns)
{
  double place[5];

  if (!gw_drawing_recall (drawing, 5, place))
    return false;

  *box = (GwBox){ place[0], place[1], place[2], place[3] };
  *n_columns = (size_t) place[4];
  return true;
}

static bool
place_list (GwDrawing              *drawing,
            const GwCallouts       *callouts,
            const GwAirframeFigure *figure,
            const Tag              *tags,
            size_t                  n)
{
  double line = gw_text_line (drawing, GW_FONT_SMALL);
  double widest = 0, digits, width;
  size_t known_columns;
  GwBox  known;

  if (recall_list (drawing, &known, &known_columns))
    {
      ink_list (drawing, figure, tags, n, known, known_columns);
      return true;
    }

  gw_drawing_measure (drawing, "00", GW_FONT_SMALL, GW_STYLE_UPRIGHT, &digits, NULL);
  for (size_t i = 0; i < n; i++)
    {
      gw_drawing_measure (drawing, figure->aircraft->items[tags[i].index].name, GW_FONT_SMALL,
                          GW_STYLE_UPRIGHT, &width, NULL);
      widest = fmax (widest, width);
    }
  for (size_t n_columns = 1 + (n - 1) / LIST_ROWS; n_columns <= 6 && n_columns <= n; n_columns++)
    {
      size_t n_rows = (n + n_columns - 1) / n_columns;
      double column = digits + 4 + widest + 10;
      GwBox  box = { 0, 0, column * (double) n_columns, line * (double) n_rows };

      if (find_place (drawing, callouts, &box))
        {
          gw_drawing_remember (
            drawing, 5,
            (double[]){ box.x, box.y, box.width, box.height, (double) n_columns });
          ink_list (drawing, figure, tags, n, box, n_columns);
          return true;
        }
    }

  return false;
}

static void
place_numbers (GwDrawing              *drawing,
               GwCallouts             *callouts,
               const GwAirframeFigure *figure,
               const Tag              *tags,
               size_t                  n)
{
  if (!place_list (drawing, callouts, figure, tags, n))
    return;
  /* A number is small enough to stand on a wing, and has to stay near. */
  callouts->may_cover = true;
  callouts->gap = 1;
  callouts->longest = NUMBER_REACH;
  for (size_t i = 0; i < n; i++)
    {
      char      number[24];
      GwCallout item;

      snprintf (number, sizeof number, "%zu", i + 1);
      item = callout_of (&tags[i], number);
      item.tone = GW_TONE_INK;
      if (!place_beside (drawing, callouts, &tags[i], number))
        gw_callouts_place (drawing, callouts, 1, &item);
    }
}

void
gw_planform_labels (GwDrawing              *drawing,
                    GwCallouts             *callouts,
                    const GwAirframeFigure *figure,
                    const double            origin[2],
                    double                  scale)
{
  size_t before = gw_drawing_n (drawing), places = gw_drawing_places (drawing);
  size_t n_leaders = callouts->n, n_columns = callouts->n_columns;
  double is_named;
  Tag   *tags;
  size_t n;

  if (callouts->bounds.width < 300 || callouts->bounds.height < 200 ||
      figure->aircraft->n_items == 0)
    return;
  tags = g_new (Tag, figure->aircraft->n_items);
  n = collect (figure, origin, scale, tags);
  keep_order (drawing, tags, n);
  if (!gw_drawing_recall (drawing, 1, &is_named))
    {
      is_named = 1;
      gw_drawing_remember (drawing, 1, &is_named);
    }
  if (n > 0 && (is_named == 0 || !place_names (drawing, callouts, figure, tags, n)))
    {
      gw_drawing_cut (drawing, before);
      callouts->n = n_leaders;
      callouts->n_columns = n_columns;
      if (is_named != 0)
        {
          is_named = 0;
          gw_drawing_forget (drawing, places);
          keep_order (drawing, tags, n);
          gw_drawing_remember (drawing, 1, &is_named);
        }
      place_numbers (drawing, callouts, figure, tags, n);
    }
  g_free (tags);
}
