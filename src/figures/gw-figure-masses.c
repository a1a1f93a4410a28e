/* gw-figure-masses.c - what each option's mass is made of
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdio.h>

#include "figures/gw-figures-private.h"

#define PAD           4.0
#define BAR_MAX       16.0
#define STACKED_BELOW 340.0 /* [pt] of width: the names stand above their bars */
#define KEY_SIZE      8.0   /* of the sample in the list of parts */

/* Neighbours differ in tone or hatch; after these the list starts anew, told apart by number. */
static const struct
{
  GwTone fill;
  bool   is_hatched;
} part_styles[] = {
  { GW_TONE_FAINT, false },
  { GW_TONE_PAPER, false },
  { GW_TONE_MID, false },
  { GW_TONE_PAPER, true },
  { GW_TONE_BODY, false },
  { GW_TONE_FAINT, true },
  { GW_TONE_GRID, false },
  { GW_TONE_BODY, true },
};

typedef struct
{
  const GwMassFigure *figure;
  GwBox               box;
  bool                is_stacked;  /* names above the bars, not beside them */
  double              line, pitch; /* of a text, of the bars */
  double              name_width, total_width, change_width;
  double              left, right; /* of the bars' ground */
  double              scale;       /* [pt per kg] */
} Masses;

static bool
is_part_used (const GwMassFigure *figure,
              size_t              part)
{
  for (size_t i = 0; i < figure->n_bars; i++)
    if (figure->bars[i].parts[part] > 0)
      return true;

  return false;
}

/* Three digits of the greatest total, and no less than the unit asks for. */
static void
format_mass (const GwMassFigure *figure,
             double              mass,
             bool                is_change,
             char               *text,
             size_t              size)
{
  double greatest = 0;
  int    decimals;

  for (size_t i = 0; i < figure->n_bars; i++)
    greatest = fmax (greatest, figure->bars[i].total * figure->scale);
  decimals = greatest >= 100 ? 0 : greatest >= 10 ? 1
                                                  : 2;
  decimals = MAX (decimals, figure->decimals);
  snprintf (text, size, "%s%.*f",
            !is_change ? ""
            : mass < 0 ? "−"
                       : "+",
            decimals, is_change ? fabs (mass * figure->scale) : mass * figure->scale);
}

static const GwMassBar *
baseline_of (const GwMassFigure *figure)
{
  return figure->baseline >= 0 && (size_t) figure->baseline < figure->n_bars
           ? &figure->bars[figure->baseline]
           : NULL;
}

static void
part_sample (GwDrawing *drawing,
             GwBox      box,
             size_t     part,
             bool       has_line)
{
  size_t  style = part % G_N_ELEMENTS (part_styles);
  GwMark *mark = gw_rectangle (drawing, box, has_line ? GW_LINE_NARROW : GW_LINE_NONE, GW_TONE_INK);

  mark->is_filled = true;
  mark->fill = part_styles[style].fill;
  mark->is_hatched = part_styles[style].is_hatched;
}

static void
measure_columns (Masses    *masses,
                 GwDrawing *drawing)
{
  const GwMassFigure *figure = masses->figure;
  const GwMassBar    *baseline = baseline_of (figure);

  for (size_t i = 0; i < figure->n_bars; i++)
    {
      const GwMassBar *bar = &figure->bars[i];
      char             text[32];
      double           width;

      gw_drawing_measure (drawing, bar->name, GW_FONT_TEXT,
                          (int) i == figure->shown ? GW_STYLE_BOLD : GW_STYLE_UPRIGHT, &width,
                          NULL);
      masses->name_width = fmax (masses->name_width, width);
      format_mass (figure, bar->total, false, text, sizeof text);
      gw_drawing_measure (drawing, text, GW_FONT_TEXT, GW_STYLE_BOLD, &width, NULL);
      masses->total_width = fmax (masses->total_width, width);
      if (baseline == NULL || bar == baseline)
        continue;
      format_mass (figure, bar->total - baseline->total, true, text, sizeof text);
      gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, NULL);
      masses->change_width = fmax (masses->change_width, width + PAD);
    }
}

static void
scale_bars (Masses *masses)
{
  const GwMassFigure *figure = masses->figure;
  double              longest = 0;

  for (size_t i = 0; i < figure->n_bars; i++)
    {
      longest = fmax (longest, figure->bars[i].total);
      if (isfinite (figure->bars[i].high))
        longest = fmax (longest, figure->bars[i].high);
    }
  masses->scale = longest > 0 ? (masses->right - masses->left) / longest : 0;
}

static void
draw_whisker (GwDrawing       *drawing,
              const Masses    *masses,
              const GwMassBar *bar,
              double           y)
{
  double x0 = masses->left + bar->low * masses->scale,
         x1 = masses->left + bar->high * masses->scale;
  double xy[] = { x0, y - 3, x0, y + 3, x0, y, x1, y, x1, y - 3, x1, y + 3 };
  double rim[] = { x0, y, x1, y };
  GwTone tone = GW_TONE_OPTION + (GwTone) (bar->option % GW_OPTION_STYLES);

  if (!isfinite (bar->low) || !isfinite (bar->high) || bar->low < 0)
    return;
  gw_drawing_path (drawing, 2, rim, GW_LINE_WIDE, GW_TONE_PAPER);
  gw_drawing_path (drawing, 6, xy, GW_LINE_NARROW, tone);
}

/* The number of a part between @x0 and @x1 of its bar, clear of the baseline's mark and of the
 * whisker; left out where it finds no room. */
static void
draw_number (GwDrawing       *drawing,
             const Masses    *masses,
             const GwMassBar *bar,
             size_t           part,
             int              number,
             double           x0,
             double           x1,
             GwBox            row)
{
  const GwMassBar *baseline = baseline_of (masses->figure);
  size_t           style = part % G_N_ELEMENTS (part_styles);
  GwTone           tone = part_styles[style].fill == GW_TONE_MID ? GW_TONE_PAPER : GW_TONE_INK;
  double           mark_x = -1;
  double           width;
  char             text[16];

  if (baseline != NULL)
    mark_x = masses->left + baseline->total * masses->scale;
  if (isfinite (bar->low) && isfinite (bar->high))
    x1 = fmin (x1, masses->left + bar->low * masses->scale);
  if (bar != baseline && mark_x > x0 && mark_x < x1)
    *(mark_x - x0 > x1 - mark_x ? &x1 : &x0) = mark_x;
  snprintf (text, sizeof text, "%d", number);
  gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, NULL);
  if (width + 4 > x1 - x0 || row.height < masses->line - 1)
    return;
  if (part_styles[style].is_hatched)
    {
      GwBox   plate = { (x0 + x1 - width) / 2 - 1.5, row.y + 1, width + 3, row.height - 2 };
      GwMark *mark = gw_rectangle (drawing, plate, GW_LINE_NONE, GW_TONE_INK);

      mark->is_filled = true;
      mark->fill = part_styles[style].fill;
    }
  gw_text_at (drawing, (x0 + x1) / 2, row.y + row.height / 2, text, GW_FONT_SMALL, tone,
              GW_ALIGN_MIDDLE, GW_ALIGN_MIDDLE);
}

static void
draw_bar (GwDrawing       *drawing,
          const Masses    *masses,
          const GwMassBar *bar,
          double           y,
          double           height)
{
  GwBox box = { masses->left, y - height / 2, 0, height };
  int   number = 0;

  for (size_t part = 0; part < masses->figure->n_parts; part++)
    {
      number += is_part_used (masses->figure, part) ? 1 : 0;
      box.width = bar->parts[part] * masses->scale;
      if (!(box.width > 0))
        continue;
      part_sample (drawing, box, part, true);
      draw_number (drawing, masses, bar, part, number, box.x, box.x + box.width, box);
      box.x += box.width;
    }
  draw_whisker (drawing, masses, bar, y);
}

/* Marker and name at the left, total and change at the right of a line of text at @y. */
static void
draw_texts (GwDrawing    *drawing,
            const Masses *masses,
            size_t        i,
            double        y)
{
  const GwMassBar *bar = &masses->figure->bars[i];
  const GwMassBar *baseline = baseline_of (masses->figure);
  GwTextStyle      style = (int) i == masses->figure->shown ? GW_STYLE_BOLD : GW_STYLE_UPRIGHT;
  double           right = masses->box.x + masses->box.width;
  double           room = masses->name_width + 0.1;
  char            *name = gw_text_fit (drawing, bar->name, GW_FONT_TEXT, style, room);
  char             text[32];
  GwMark          *mark;

  gw_drawing_symbol (drawing, GW_MARK_OPTION + (GwMarkKind) (bar->option % GW_OPTION_STYLES),
                     masses->box.x + 5, y, 7,
                     GW_TONE_OPTION + (GwTone) (bar->option % GW_OPTION_STYLES));
  if (name != NULL)
    {
      mark = gw_drawing_text (drawing, masses->box.x + 12, y, name, GW_FONT_TEXT, GW_TONE_INK);
      mark->style = style;
      gw_drawing_align (drawing, mark, GW_ALIGN_START, GW_ALIGN_MIDDLE);
    }
  g_free (name);

  format_mass (masses->figure, bar->total, false, text, sizeof text);
  mark =
    gw_drawing_text (drawing, right - masses->change_width, y, text, GW_FONT_TEXT, GW_TONE_INK);
  mark->style = style;
  gw_drawing_align (drawing, mark, GW_ALIGN_END, GW_ALIGN_MIDDLE);
  if (baseline == NULL || bar == baseline || masses->change_width <= 0)
    return;
  format_mass (masses->figure, bar->total - baseline->total, true, text, sizeof text);
  gw_text_at (drawing, right, y, text, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END, GW_ALIGN_MIDDLE);
}

/* The parts in reading order, wrapped; only measured if @drawing_it is false. */
static double
list_parts (GwDrawing          *drawing,
            const GwMassFigure *figure,
            GwBox               box,
            bool                drawing_it)
{
  double line = gw_text_line (drawing, GW_FONT_SMALL) + 1;
  double x = box.x, y = box.y;
  int    number = 0;

  for (size_t part = 0; part < figure->n_parts; part++)
    {
      char   text[128];
      double width;

      if (!is_part_used (figure, part))
        continue;
      snprintf (text, sizeof text, "%d %s", ++number, figure->parts[part]);
      gw_drawing_measure (drawing, text, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &width, NULL);
      width += KEY_SIZE + 4;
      if (x > box.x && x + width > box.x + box.width)
        {
          x = box.x;
          y += line;
        }
      if (drawing_it &&
          (x + width > box.x + box.width + 0.5 || y + line > box.y + box.height + 0.5))
        break;
      if (drawing_it)
        {
          part_sample (drawing, (GwBox){ x + 0.5, y + line / 2 - 3.5, KEY_SIZE, 6 }, part, true);
          gw_text_at (drawing, x + KEY_SIZE + 4, y + line / 2 - 0.5, text, GW_FONT_SMALL,
                      GW_TONE_MID, GW_ALIGN_START, GW_ALIGN_MIDDLE);
        }
      x += width + 8;
    }

  return number > 0 ? y + line - box.y : 0;
}

double
gw_masses_need (GwDrawing          *drawing,
                const GwMassFigure *figure,
                double              width,
                bool                is_roomy)
{
  double line = gw_text_line (drawing, GW_FONT_TEXT);
  double row = !is_roomy ? line + 5 : width < STACKED_BELOW ? line + BAR_MAX + 3
                                                            : line + 12;
  GwBox  box = { 0, 0, width, INFINITY };

  return gw_text_line (drawing, GW_FONT_HEAD) + PAD + row * (double) figure->n_bars + PAD +
         list_parts (drawing, figure, box, false);
}

static void
draw_title (GwDrawing    *drawing,
            const Masses *masses,
            GwBox         top)
{
  double unit_width;
  char  *title;

  gw_drawing_measure (drawing, masses->figure->unit, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &unit_width,
                      NULL);
  title = gw_text_fit (drawing, masses->figure->title, GW_FONT_HEAD, GW_STYLE_UPRIGHT,
                       top.width - unit_width - 8);
  if (title != NULL)
    gw_drawing_text (drawing, top.x, top.y, title, GW_FONT_HEAD, GW_TONE_INK);
  g_free (title);
  gw_text_at (drawing, top.x + top.width - masses->change_width, top.y + top.height,
              masses->figure->unit, GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END, GW_ALIGN_END);
}

/* Where bars and texts go in @rest; false if there is no room for bars. */
static bool
fit_bars (Masses    *masses,
          GwDrawing *drawing,
          GwBox      rest,
          size_t     n)
{
  GwBox  box = masses->box;
  double line = gw_text_line (drawing, GW_FONT_TEXT);
  double texts = 12 + masses->total_width + masses->change_width + 8;

  masses->pitch = fmin (rest.height / (double) n, BAR_MAX + 14);
  masses->is_stacked = box.width < STACKED_BELOW && masses->pitch >= line + 11;
  masses->left = box.x;
  masses->right = box.x + box.width;
  if (masses->is_stacked)
    {
      masses->name_width = fmin (masses->name_width, box.width - texts);
      return box.width > 60;
    }
  masses->pitch = fmin (masses->pitch, BAR_MAX + 8);
  masses->name_width = fmin (masses->name_width, box.width * 0.4);
  masses->left += 12 + masses->name_width + 6;
  masses->right -= masses->change_width + masses->total_width + 8;

  return masses->right - masses->left > 20;
}

static void
draw_rows (GwDrawing    *drawing,
           const Masses *masses,
           double        top,
           size_t        n)
{
  double text = masses->is_stacked ? gw_text_line (drawing, GW_FONT_TEXT) + 1 : 0;
  double height =
    masses->is_stacked ? masses->pitch - text - 5 : fmin (masses->pitch * 0.68, BAR_MAX);
  double past = masses->is_stacked ? 2.5 : fmin (2.5, (masses->pitch - height) / 2);
  double x = masses->left;

  for (size_t i = 0; i < n; i++)
    {
      double y = top + masses->pitch * (double) i;

      draw_texts (drawing, masses, i, y + (masses->is_stacked ? text / 2 : masses->pitch / 2));
      draw_bar (drawing, masses, &masses->figure->bars[i],
                y + (masses->is_stacked ? text + height / 2 : masses->pitch / 2), height);
    }
  if (baseline_of (masses->figure) == NULL)
    return;
  /* The baseline's total, carried through the other bars. */
  x += baseline_of (masses->figure)->total * masses->scale;
  for (size_t i = 0; i < n; i++)
    {
      double y = top + masses->pitch * (double) i +
                 (masses->is_stacked ? text : masses->pitch / 2 - height / 2);

      if ((int) i != masses->figure->baseline)
        gw_line_from_to (drawing, x, y, x, y + height + past, GW_LINE_NARROW, GW_TONE_INK);
    }
}

void
gw_figure_masses (GwDrawing          *drawing,
                  GwBox               box,
                  const GwMassFigure *figure)
{
  Masses masses = { .figure = figure, .box = box, .line = gw_text_line (drawing, GW_FONT_SMALL) };
  double line = gw_text_line (drawing, GW_FONT_TEXT);
  GwBox  rest = box, top;
  double list, bottom;
  size_t n;

  if (figure->n_bars == 0)
    return;
  measure_columns (&masses, drawing);
  if (box.width < 190)
    masses.change_width = 0;
  top = gw_box_take_top (&rest, gw_text_line (drawing, GW_FONT_HEAD));
  gw_box_take_top (&rest, PAD);
  list = list_parts (drawing, figure, rest, false);
  if (list + (line + 1) * (double) figure->n_bars + PAD > rest.height)
    list = 0;
  gw_box_take_bottom (&rest, list > 0 ? list + PAD : 0);
  n = MIN (figure->n_bars, (size_t) fmax (rest.height / line, 0));
  if (n == 0 || !fit_bars (&masses, drawing, rest, n))
    return;
  scale_bars (&masses);
  draw_title (drawing, &masses, top);
  draw_rows (drawing, &masses, rest.y, n);
  bottom = rest.y + masses.pitch * (double) n + PAD;
  if (list > 0)
    list_parts (drawing, figure, (GwBox){ box.x, bottom, box.width, box.y + box.height - bottom },
                true);
}
