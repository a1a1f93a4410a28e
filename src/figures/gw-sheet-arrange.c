/* gw-sheet-arrange.c - tries a few arrangements of the sheet and takes the best
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>

#include "figures/gw-sheet-private.h"

#define GAP          16.0 /* between areas */
#define INSET        12.0 /* within the frame */
#define POINTS_PER_M (72 / 0.0254)
typedef struct
{
  GwDrawing           *drawing;
  const GwSheetFigure *figure;
  GwBox                frame, content;
  double               plan[2], side[2]; /* extent of the two views [m] */
  /* Least sizes at which a figure says all it has to say, at the size of the text. */
  double           stall_width, stall_height, side_width, side_height;
  double           masses_width, title_width;
  GwSummaryMeasure summary[2];
  double           summary_width, summary_full_width; /* full: with second lines */
} Needs;

static double
masses_height (const Needs *needs,
               double       width,
               bool         is_roomy)
{
  return needs->figure->masses.n_bars > 0
           ? gw_masses_need (needs->drawing, &needs->figure->masses, width, is_roomy)
           : 0;
}

static double
summary_height (const Needs *needs,
                double       width,
                bool         with_second)
{
  return gw_summary_height (needs->drawing, &needs->figure->summary, needs->summary, width,
                            with_second);
}

/* A side column: summary, [stall], masses from the top down, the rest left between them. */
static void
fill_column (const Needs  *needs,
             GwBox         column,
             bool          has_stall,
             GwSheetAreas *areas)
{
  double masses = masses_height (needs, column.width, false);
  double roomy = masses_height (needs, column.width, true);
  double least = summary_height (needs, column.width, false);
  double full = summary_height (needs, column.width, true);
  double spare =
    column.height - least - masses - GAP - (has_stall ? needs->stall_height + GAP : 0);
  double more = spare >= full - least ? full - least : fmax (spare, 0) * 0.4;
  double free = CLAMP (spare - more, 0, roomy - masses);

  areas->summary = gw_box_take_top (&column, least + more);
  gw_box_take_top (&column, GAP);
  areas->masses = gw_box_take_bottom (&column, masses + free);
  gw_box_take_bottom (&column, GAP);
  if (has_stall)
    areas->stall = column;
}

/* Summary and curve, one below the other. */
static void
fill_with_curve (const Needs  *needs,
                 GwBox         column,
                 GwSheetAreas *areas)
{
  areas->summary = gw_box_take_top (&column, fmin (summary_height (needs, column.width, true),
                                                   column.height - needs->stall_height - GAP));
  gw_box_take_top (&column, GAP);
  areas->stall = column;
}

/* Left the aeroplane, right a column with the tables above the title block. Variants: the curve
 * beside the side view, in the column, or in it with the masses beside the side view or below. */
static void
arrange_columns (const Needs  *needs,
                 double        share,
                 int           variant,
                 GwSheetAreas *areas)
{
  GwBox  left = needs->content, right, row;
  double title, notes, low;

  right = gw_box_take_right (&left, left.width * share);
  gw_box_take_right (&left, GAP);
  title = gw_title_block_height (needs->drawing, right.width + GAP / 2 + INSET);
  areas->title = (GwBox){ right.x - GAP / 2, needs->frame.y + needs->frame.height - title,
                          right.width + GAP / 2 + INSET, title };
  gw_box_take_bottom (&right, title - INSET + GAP);

  notes = gw_notes_height (needs->drawing, &needs->figure->title, left.width);
  areas->notes = gw_box_take_bottom (&left, notes);
  gw_box_take_bottom (&left, notes > 0 ? GAP / 2 : 0);

  low = variant == 0 ? fmax (needs->stall_height, left.height * 0.36)
                     : fmax (needs->side_height, left.height * 0.26);
  if (variant == 2)
    low = CLAMP (masses_height (needs, fmax (left.width * 0.44, needs->masses_width), true), low,
                 left.height * 0.34);
  if (variant == 3)
    {
      areas->masses = gw_box_take_bottom (&left, masses_height (needs, left.width, false));
      gw_box_take_bottom (&left, GAP);
      low = needs->side_height;
    }
  row = gw_box_take_bottom (&left, low);
  gw_box_take_bottom (&left, GAP);
  areas->planform = left;
  if (variant == 2)
    {
      areas->masses = gw_box_take_right (&row, fmax (row.width * 0.46, needs->masses_width));
      gw_box_take_right (&row, GAP);
    }
  if (variant >= 2)
    fill_with_curve (needs, right, areas);
  else
    fill_column (needs, right, variant == 1, areas);
  if (variant == 0)
    {
      areas->stall =
        gw_box_take_right (&row, fmin (row.width * 0.58, row.width - needs->side_width - GAP));
      gw_box_take_right (&row, GAP);
    }
  areas->side = row;
}

/* Notes and title block along the bottom; the rest of the content above. */
static GwBox
take_strip (const Needs  *needs,
            GwSheetAreas *areas)
{
  GwBox  rest = needs->content, strip;
  double width = fmin (needs->title_width, needs->frame.width);
  bool   is_narrow = needs->frame.width < needs->title_width + 200;
  double title, notes;

  if (is_narrow)
    width = needs->frame.width;
  title = gw_title_block_height (needs->drawing, width);
  areas->title = (GwBox){ needs->frame.x + needs->frame.width - width,
                          needs->frame.y + needs->frame.height - title, width, title };
  if (is_narrow)
    {
      gw_box_take_bottom (&rest, title - INSET + GAP / 2);
      notes = gw_notes_height (needs->drawing, &needs->figure->title, rest.width);
      areas->notes = gw_box_take_bottom (&rest, notes);
      gw_box_take_bottom (&rest, notes > 0 ? GAP / 2 : 0);
      return rest;
    }
  notes = gw_notes_height (needs->drawing, &needs->figure->title, rest.width - width - GAP + INSET);
  strip = gw_box_take_bottom (&rest, fmax (title - INSET, notes));
  gw_box_take_bottom (&rest, GAP);
  areas->notes = gw_box_take_left (&strip, strip.width - width - GAP + INSET);

  return rest;
}

/* Above the aeroplane with its side view and masses beside it, below the curve and the summary. */
static void
arrange_rows (const Needs  *needs,
              double        share,
              int           variant,
              GwSheetAreas *areas)
{
  GwBox  rest = take_strip (needs, areas);
  double most = 0.5 + 0.5 * share;
  double summary = CLAMP (needs->summary_full_width, rest.width * 0.4, rest.width * most);
  double least = fmax (summary_height (needs, summary, false), needs->stall_height);
  double full = fmax (summary_height (needs, summary, true), needs->stall_height);
  GwBox  row = gw_box_take_bottom (&rest, CLAMP (full, least, fmax (least, rest.height * 0.46)));
  double masses;
  GwBox  column;

  gw_box_take_bottom (&rest, GAP);
  areas->summary = gw_box_take_right (&row, summary);
  gw_box_take_right (&row, GAP);
  if (variant == 0)
    {
      /* Curve, then side view and masses in one narrow column, then the summary. */
      areas->stall = gw_box_take_left (&row, row.width * 0.55);
      gw_box_take_left (&row, GAP);
      column = row;
    }
  else
    {
      areas->stall = row;
      column = gw_box_take_right (&rest, rest.width * share);
      gw_box_take_right (&rest, GAP);
    }
  masses =
    fmin (masses_height (needs, column.width, true),
          fmax (masses_height (needs, column.width, false),
                column.height - needs->side_height - GAP));
  areas->masses = gw_box_take_bottom (&column, masses);
  gw_box_take_bottom (&column, GAP);
  areas->side = column;
  areas->planform = rest;
}

/* Portrait: one below the other; side view and masses share a row, if they can. */
static void
arrange_stack (const Needs  *needs,
               double        share,
               int           variant,
               GwSheetAreas *areas)
{
  GwBox  rest = take_strip (needs, areas);
  double stall =
    variant == 2 ? 0.8 * needs->stall_height : fmax (needs->stall_height, rest.height * 0.2);
  double full = summary_height (needs, rest.width, true);
  double least = summary_height (needs, rest.width, false);
  GwBox  row;

  areas->summary = gw_box_take_bottom (&rest, fmin (full, fmax (least, rest.height * 0.28)));
  gw_box_take_bottom (&rest, GAP);
  if (variant > 0)
    {
      row = gw_box_take_bottom (&rest, stall);
      gw_box_take_bottom (&rest, GAP);
      areas->stall = gw_box_take_left (&row, row.width * (1 - share) - GAP);
      gw_box_take_left (&row, GAP);
      areas->masses = gw_box_take_bottom (&row, masses_height (needs, row.width, false));
      gw_box_take_bottom (&row, GAP);
      areas->side = row;
    }
  else
    {
      areas->masses = gw_box_take_bottom (&rest, masses_height (needs, rest.width, false));
      gw_box_take_bottom (&rest, GAP);
      areas->stall = gw_box_take_bottom (&rest, stall);
      gw_box_take_bottom (&rest, GAP);
      areas->side = gw_box_take_bottom (&rest, fmax (needs->side_height, rest.height * 0.25));
      gw_box_take_bottom (&rest, GAP);
    }
  areas->planform = rest;
}

static int
ratio_below (const int *ratios,
             double     scale)
{
  while (*ratios > 0 && POINTS_PER_M / *ratios > scale * (1 + 1e-9))
    ratios++;

  return *ratios;
}

/* A scale of ISO 5455. Where the next one would waste over a quarter of the room, one of the
 * intermediate scales which that standard allows for such cases (from memory). 0: none. */
static int
standard_ratio (double scale)
{
  static const int recommended[] = { 1, 2, 5, 10, 20, 50, 0 };
  static const int intermediate[] = { 1, 2, 3, 4, 5, 10, 15, 20, 25, 30, 40, 50, 0 };
  int              ratio = ratio_below (recommended, scale);

  if (ratio > 0 && POINTS_PER_M / ratio >= 0.75 * scale)
    return ratio;

  return ratio_below (intermediate, scale);
}

static double
plan_fit (const Needs        *needs,
          const GwSheetAreas *areas)
{
  return gw_planform_scale (needs->drawing, areas->planform, &needs->figure->planform, needs->plan);
}

static void
find_scales (const Needs  *needs,
             GwSheetAreas *areas)
{
  areas->planform_scale = plan_fit (needs, areas);
  areas->side_scale = gw_side_scale (needs->drawing, areas->side, needs->side);
  areas->planform_ratio = 0;
  areas->side_ratio = 0;
  /* The side view is never drawn larger than the plan. */
  areas->side_scale = fmin (areas->side_scale, areas->planform_scale);
  if (!needs->figure->is_paper)
    return;
  areas->planform_ratio = standard_ratio (areas->planform_scale);
  areas->side_ratio = standard_ratio (areas->side_scale);
  if (areas->planform_ratio > 0)
    areas->planform_scale = POINTS_PER_M / areas->planform_ratio;
  if (areas->side_ratio > 0)
    areas->side_scale = POINTS_PER_M / areas->side_ratio;
}

/* How well a box serves a figure that wants this size, 0 to 1. */
static double
serve (const GwBox *box,
       double       width,
       double       height)
{
  double fit = fmin (box->width / fmax (width, 1), 1) * fmin (box->height / fmax (height, 1), 1);

  return fit * fit;
}

static double
there (double share)
{
  return share < 1 ? 0.1 * share : 1;
}

/* Size of the plan, held down by every figure that gets too little room or has far too much; an
 * option or a result left out of the summary is nearly as bad as no sheet. */
static double
judge (const Needs        *needs,
       const GwSheetAreas *areas)
{
  const GwBox         *table = &areas->summary;
  double               least = summary_height (needs, table->width, false);
  double               full = summary_height (needs, table->width, true);
  double               hole = fmax (table->height - 1.3 * full, 0) / needs->content.height;
  double               fit = plan_fit (needs, areas);
  const GwSummaryShare share = gw_summary_share (needs->drawing, &needs->figure->summary,
                                                 needs->summary, table->width, table->height);
  /* Labels that fold make room for all columns. */
  const bool   is_wide = share.is_folded && share.columns >= 1;
  const double width = is_wide ? table->width : needs->summary_width;
  const double full_width = is_wide ? table->width : needs->summary_full_width;
  const double summary = serve (table, width, least);
  const double masses = masses_height (needs, areas->masses.width, false);

  return areas->planform_scale * summary * summary * there (share.columns) * there (share.rows) *
         (share.is_folded ? 0.7 : 1) * (share.has_bands ? 1 : 0.8) *
         (0.4 + 0.6 * serve (table, full_width, full)) *
         serve (&areas->masses, 200, masses) * (areas->masses.height < 0.8 * masses ? 0.3 : 1) *
         serve (&areas->stall, needs->stall_width, needs->stall_height) *
         serve (&areas->side, needs->side_width, needs->side_height) *
         fmin (areas->side_scale / fmax (areas->planform_scale, 1e-9), 1) *
         sqrt (areas->planform_scale / fmax (fit, 1e-9)) * (1 - 0.5 * hole);
}

/* @line: height of a line of text */
static void
set_least_sizes (Needs *needs,
                 double line)
{
  needs->stall_width = 25 * line;
  needs->stall_height = 18.5 * line;
  needs->side_width = 19 * line;
  needs->side_height = 10.5 * line;
  needs->masses_width = 18 * line;
  needs->title_width = 33 * line;
}

typedef void (*Arrange) (const Needs *, double, int, GwSheetAreas *);

void
gw_sheet_arrange (GwDrawing           *drawing,
                  GwBox                frame,
                  const GwSheetFigure *figure,
                  GwSheetAreas        *areas)
{
  static const struct
  {
    Arrange arrange;
    int     n_variants;
  } arrangements[] = { { arrange_columns, 4 }, { arrange_rows, 2 }, { arrange_stack, 3 } };
  Needs  needs = { .drawing = drawing, .figure = figure, .frame = frame };
  double best = -1;

  needs.content = gw_box_inset (frame, INSET);
  set_least_sizes (&needs, gw_text_line (drawing, GW_FONT_TEXT));
  gw_summary_measure (drawing, &figure->summary, needs.summary);
  needs.summary_width = gw_summary_width (&figure->summary, needs.summary, false);
  needs.summary_full_width = gw_summary_width (&figure->summary, needs.summary, true);
  gw_planform_extent (&figure->planform, needs.plan);
  gw_side_extent (&figure->planform, needs.side);
  for (size_t i = 0; i < G_N_ELEMENTS (arrangements); i++)
    for (int variant = 0; variant < arrangements[i].n_variants; variant++)
      for (double share = 0.30; share < 0.56; share += 0.04)
        {
          GwSheetAreas trial = { 0 };
          double       score;

          arrangements[i].arrange (&needs, share, variant, &trial);
          find_scales (&needs, &trial);
          score = judge (&needs, &trial);
          if (score > best * (1 + 1e-6))
            {
              best = score;
              *areas = trial;
            }
        }
}
