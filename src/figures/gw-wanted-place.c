/* gw-wanted-place.c - where the item that is moved to balance ought to be
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-figures-i18n.h"
#include "figures/gw-figures-private.h"

#define LEAST_WAY  1.0 /* nearer to its place it is there, for the eye [pt] */
#define LEAST_SIZE 3.0 /* of the outline [pt] */
#define NEAR       4.0 /* a label this near needs no leader [pt] */

/* The outline at its place, in the order of the view. */
static GwBox
outline_of (const GwItem *item,
            double        place,
            double        side, /* -1: the mirror image */
            GwView        view,
            const double  origin[2],
            double        scale)
{
  const bool   is_top = view == GW_VIEW_TOP;
  const double u = is_top ? side * item->at[1] : place, v = is_top ? place : -item->at[2];
  const double width = fmax ((is_top ? item->size[1] : item->size[0]) * scale, LEAST_SIZE);
  const double height = fmax ((is_top ? item->size[0] : item->size[2]) * scale, LEAST_SIZE);

  return (GwBox){ origin[0] + u * scale - width / 2, origin[1] + v * scale - height / 2, width,
                  height };
}

static void
ink_label (GwDrawing   *drawing,
           const GwBox *outline,
           const GwBox *text,
           const char  *label)
{
  const bool   is_right = text->x > outline->x;
  const double from = is_right ? outline->x + outline->width : outline->x;
  const double to = is_right ? text->x - 1.5 : text->x + text->width + 1.5;

  if (fabs (to - from) > NEAR)
    gw_line_from_to (drawing, from, outline->y + outline->height / 2, to,
                     text->y + text->height / 2, GW_LINE_HAIR, GW_TONE_MID);
  gw_text_at (drawing, text->x, text->y, label, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_START,
              GW_ALIGN_START);
}

/* Beside the outline, as near as there is room; else nowhere: the outline says enough. */
static void
place_label (GwDrawing   *drawing,
             const GwBox *bounds,
             size_t       since,
             const GwBox *outline)
{
  static const double ways[] = { 3, 10, 18, 28, 40, 54 };
  static const double steps[] = { 0, -9, 9, -18, 18, -30, 30 };
  const char         *label = _ ("to balance");
  GwBox               text = { 0 };

  gw_drawing_measure (drawing, label, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &text.width, &text.height);
  for (size_t i = 0; i < G_N_ELEMENTS (ways); i++)
    for (size_t k = 0; k < G_N_ELEMENTS (steps); k++)
      for (int side = 1; side >= -1; side -= 2)
        {
          text.x = side > 0 ? outline->x + outline->width + ways[i]
                            : outline->x - ways[i] - text.width;
          text.y = outline->y + outline->height / 2 - text.height / 2 + steps[k];
          if (!gw_box_holds (bounds, &text) || !gw_is_free (drawing, since, text, 1.0, true))
            continue;
          ink_label (drawing, outline, &text, label);
          return;
        }
}

/* As far as its bay lets it go [m]; false: there is no such place. */
static bool
find_place (const GwAirframeFigure *figure,
            double                 *place)
{
  const double  slide = figure->results->value[GW_RESULT_SLIDE];
  const double  left = figure->results->value[GW_RESULT_SLIDE_LEFT];
  const GwItem *item;

  if (figure->aircraft->movable < 0 || !isfinite (slide) || !isfinite (left))
    return false;

  item = &figure->aircraft->items[figure->aircraft->movable];
  *place = item->at[0] + slide - left;
  return isfinite (*place + item->at[1] + item->at[2]);
}

void
gw_wanted_place_draw (GwDrawing              *drawing,
                      const GwAirframeFigure *figure,
                      GwView                  view,
                      GwBox                   bounds,
                      size_t                  since,
                      const double            origin[2],
                      double                  scale)
{
  const GwItem *item;
  double        place;

  if (!find_place (figure, &place))
    return;
  item = &figure->aircraft->items[figure->aircraft->movable];
  if (fabs (place - item->at[0]) * scale < LEAST_WAY)
    return;

  for (int side = 1; side >= (item->is_mirrored && view == GW_VIEW_TOP ? -1 : 1); side -= 2)
    {
      const GwBox box = outline_of (item, place, side, view, origin, scale);

      if (!gw_box_holds (&bounds, &box) || (figure->is_half && side * item->at[1] < 0))
        continue;
      gw_rectangle (drawing, box, GW_LINE_PHANTOM, GW_TONE_MID);
      if (side > 0)
        place_label (drawing, &bounds, since, &box);
    }
}
