/* gw-figure-sheet.c - the whole sheet: frame, figures, notes, title block
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "figures/gw-drawing-private.h"
#include "figures/gw-sheet-private.h"

#define MM            (72 / 25.4)
#define SCREEN_MARGIN 6.0
#define CELL_PAD      5.0

/* ISO 5457: frame 20 mm from the filing edge, 10 mm from the others. */
static GwBox
frame_of (GwBox box,
          bool  is_paper)
{
  if (!is_paper)
    return gw_box_inset (box, SCREEN_MARGIN);

  return (GwBox){ box.x + 20 * MM, box.y + 10 * MM, box.width - 30 * MM, box.height - 20 * MM };
}

static void
centring_mark (GwDrawing *drawing,
               double     x0,
               double     y0,
               double     x1,
               double     y1)
{
  gw_line_from_to (drawing, x0, y0, x1, y1, GW_LINE_WIDE, GW_TONE_INK);
}

/* One side's zones: fields of 50 mm from the middle, what is left over joins the outer ones. */
static void
draw_zones_along (GwDrawing *drawing,
                  GwBox      frame,
                  bool       is_vertical)
{
  static const char letters[] = "ABCDEFGHJKLMNPQRSTUVWXYZ"; /* without I and O */
  double            field = 50 * MM, strip = 5 * MM;
  double            start = is_vertical ? frame.y : frame.x;
  double            length = is_vertical ? frame.height : frame.width;
  int               half = MAX (1, (int) floor (length / 2 / field));

  for (int i = 0; i < 2 * half; i++)
    {
      double from = i == 0 ? start : start + length / 2 + (i - half) * field;
      double to = i == 2 * half - 1 ? start + length : start + length / 2 + (i + 1 - half) * field;
      char   text[24];

      if (is_vertical)
        snprintf (text, sizeof text, "%c", letters[i % 24]);
      else
        snprintf (text, sizeof text, "%d", i + 1);
      for (int side = 0; side < 2; side++)
        {
          double edge = is_vertical ? frame.x - strip + side * (frame.width + strip)
                                    : frame.y - strip + side * (frame.height + strip);
          double middle = (from + to) / 2;

          gw_text_at (drawing, is_vertical ? edge + strip / 2 : middle,
                      is_vertical ? middle : edge + strip / 2, text, GW_FONT_SMALL, GW_TONE_MID,
                      GW_ALIGN_MIDDLE, GW_ALIGN_MIDDLE);
          if (i == 0 || i == half)
            continue; /* the frame's corner; the centring mark */
          if (is_vertical)
            gw_line_from_to (drawing, edge, from, edge + strip, from, GW_LINE_HAIR, GW_TONE_MID);
          else
            gw_line_from_to (drawing, from, edge, from, edge + strip, GW_LINE_HAIR, GW_TONE_MID);
        }
    }
}

static void
draw_frame (GwDrawing *drawing,
            GwBox      box,
            GwBox      frame,
            bool       is_paper)
{
  double  middle_x = frame.x + frame.width / 2, middle_y = frame.y + frame.height / 2;
  GwMark *paper = gw_rectangle (drawing, box, GW_LINE_NONE, GW_TONE_PAPER);

  paper->is_filled = true;
  paper->fill = GW_TONE_PAPER;
  if (is_paper)
    {
      gw_rectangle (drawing, gw_box_inset (frame, -5 * MM), GW_LINE_HAIR, GW_TONE_MID);
      draw_zones_along (drawing, frame, false);
      draw_zones_along (drawing, frame, true);
      centring_mark (drawing, middle_x, box.y, middle_x, frame.y);
      centring_mark (drawing, middle_x, box.y + box.height, middle_x, frame.y + frame.height);
      centring_mark (drawing, box.x, middle_y, frame.x, middle_y);
      centring_mark (drawing, box.x + box.width, middle_y, frame.x + frame.width, middle_y);
    }
  gw_rectangle (drawing, frame, GW_LINE_WIDE, GW_TONE_INK);
}

static double
cell_height (GwDrawing *drawing,
             GwFont     font)
{
  return gw_text_line (drawing, GW_FONT_SMALL) + gw_text_line (drawing, font) + 5;
}

double
gw_title_block_height (GwDrawing *drawing,
                       double     width)
{
  return cell_height (drawing, GW_FONT_TITLE) +
         cell_height (drawing, GW_FONT_TEXT) * (width < GW_TITLE_BLOCK_NARROW ? 2 : 1);
}

static void
title_cell (GwDrawing  *drawing,
            GwBox       cell,
            const char *label,
            const char *value,
            GwFont      font)
{
  double width = cell.width - 2 * CELL_PAD;
  char  *fit =
    label == NULL ? NULL : gw_text_fit (drawing, label, GW_FONT_SMALL, GW_STYLE_UPRIGHT, width);

  if (fit != NULL)
    gw_drawing_text (drawing, cell.x + CELL_PAD, cell.y + 2, fit, GW_FONT_SMALL, GW_TONE_MID);
  g_free (fit);
  fit = value == NULL ? NULL : gw_text_fit (drawing, value, font, GW_STYLE_UPRIGHT, width);
  if (fit != NULL)
    gw_text_at (drawing, cell.x + CELL_PAD, cell.y + cell.height - 2, fit, font, GW_TONE_INK,
                GW_ALIGN_START, GW_ALIGN_END);
  g_free (fit);
}

static double
text_cell_width (GwDrawing  *drawing,
                 const char *label,
                 const char *value,
                 double      most)
{
  double a = 0, b = 0;

  if (label != NULL)
    gw_drawing_measure (drawing, label, GW_FONT_SMALL, GW_STYLE_UPRIGHT, &a, NULL);
  if (value != NULL)
    gw_drawing_measure (drawing, value, GW_FONT_TEXT, GW_STYLE_UPRIGHT, &b, NULL);

  return fmin (fmax (a, b) + 2 * CELL_PAD + 1, most);
}

/* Cuts a cell off the right end of @row and fills it. */
static void
title_cell_right (GwDrawing  *drawing,
                  GwBox      *row,
                  const char *label,
                  const char *value,
                  double      most)
{
  GwBox cell = gw_box_take_right (row, text_cell_width (drawing, label, value, most));

  gw_line_from_to (drawing, cell.x, cell.y, cell.x, cell.y + cell.height, GW_LINE_NARROW,
                   GW_TONE_INK);
  title_cell (drawing, cell, label, value, GW_FONT_TEXT);
}

static void
row_edge (GwDrawing   *drawing,
          const GwBox *row)
{
  gw_line_from_to (drawing, row->x, row->y, row->x + row->width, row->y, GW_LINE_NARROW,
                   GW_TONE_INK);
}

/* Title and standing; below them option, date and sheet with its scale. A narrow block gives the
 * standing and the date a row of their own. */
void
gw_title_block_draw (GwDrawing           *drawing,
                     GwBox                box,
                     const GwSheetFigure *figure,
                     const GwSheetAreas  *areas)
{
  const GwTitleBlock *title = &figure->title;
  bool                is_narrow = box.width < GW_TITLE_BLOCK_NARROW;
  GwBox               lower = box, upper;
  char                sheet[128];

  if (areas->planform_ratio > 0)
    snprintf (sheet, sizeof sheet, "%s, 1:%d", title->sheet, areas->planform_ratio);
  else
    snprintf (sheet, sizeof sheet, "%s", title->sheet);

  gw_rectangle (drawing, box, GW_LINE_WIDE, GW_TONE_INK);
  upper = gw_box_take_top (&lower, cell_height (drawing, GW_FONT_TITLE));
  if (!is_narrow)
    title_cell_right (drawing, &upper, NULL, title->standing, box.width * 0.42);
  title_cell (drawing, upper, title->title_label, title->title, GW_FONT_TITLE);

  row_edge (drawing, &lower);
  upper = is_narrow ? gw_box_take_top (&lower, cell_height (drawing, GW_FONT_TEXT)) : lower;
  title_cell_right (drawing, &upper, title->sheet_label, sheet, box.width * 0.4);
  if (!is_narrow && title->date != NULL)
    title_cell_right (drawing, &upper, title->date_label, title->date, box.width * 0.3);
  title_cell (drawing, upper, title->option_label, title->option, GW_FONT_TEXT);
  if (!is_narrow)
    return;

  row_edge (drawing, &lower);
  if (title->date != NULL)
    title_cell_right (drawing, &lower, title->date_label, title->date, box.width * 0.4);
  title_cell (drawing, lower, NULL, title->standing, GW_FONT_TEXT);
}

double
gw_notes_height (GwDrawing          *drawing,
                 const GwTitleBlock *title,
                 double              width)
{
  double line = gw_text_line (drawing, GW_FONT_SMALL);
  double height = 0;

  for (size_t i = 0; i < G_N_ELEMENTS (title->notes) && title->notes[i] != NULL; i++)
    height +=
      line * gw_text_lines (drawing, title->notes[i], GW_FONT_SMALL, GW_STYLE_UPRIGHT, width);

  return height;
}

static void
draw_notes (GwDrawing          *drawing,
            const GwTitleBlock *title,
            GwBox               box)
{
  for (size_t i = 0; i < G_N_ELEMENTS (title->notes) && title->notes[i] != NULL; i++)
    gw_box_take_top (&box, gw_text_paragraph (drawing, box, title->notes[i], GW_FONT_SMALL,
                                              GW_TONE_MID, GW_STYLE_UPRIGHT, GW_ALIGN_START));
}

static void
draw_side (GwDrawing           *drawing,
           const GwSheetFigure *figure,
           const GwSheetAreas  *areas)
{
  GwAirframeFigure side = figure->planform;
  char             text[16];

  side.scale = areas->side_scale;
  if (!(side.scale > 0) || areas->side.width < 60 || areas->side.height < 30)
    return;
  gw_figure_side (drawing, areas->side, &side);
  if (areas->side_ratio == 0 || areas->side_ratio == areas->planform_ratio)
    return;
  snprintf (text, sizeof text, "1:%d", areas->side_ratio);
  gw_text_at (drawing, areas->side.x + areas->side.width, areas->side.y + areas->side.height, text,
              GW_FONT_SMALL, GW_TONE_MID, GW_ALIGN_END, GW_ALIGN_END);
}

static void
settle (GwDrawing           *drawing,
        GwBox                frame,
        const GwSheetFigure *figure,
        GwSheetAreas        *areas)
{
  double places[sizeof *areas / sizeof (double)];

  G_STATIC_ASSERT (sizeof *areas % sizeof (double) == 0);
  if (gw_drawing_recall (drawing, G_N_ELEMENTS (places), places))
    {
      memcpy (areas, places, sizeof *areas);
      return;
    }

  gw_sheet_arrange (drawing, frame, figure, areas);
  memcpy (places, areas, sizeof *areas);
  gw_drawing_remember (drawing, G_N_ELEMENTS (places), places);
}

void
gw_figure_sheet (GwDrawing           *drawing,
                 GwBox                box,
                 const GwSheetFigure *figure)
{
  GwBox            frame = frame_of (box, figure->is_paper);
  GwSheetAreas     areas = { 0 };
  GwAirframeFigure planform = figure->planform;

  draw_frame (drawing, box, frame, figure->is_paper);
  settle (drawing, frame, figure, &areas);
  if (areas.planform_ratio > 0)
    planform.scale = areas.planform_scale;

  gw_figure_planform (drawing, areas.planform, &planform);
  draw_side (drawing, figure, &areas);
  gw_figure_stall (drawing, areas.stall, &figure->stall);
  if (figure->masses.n_bars > 0)
    gw_figure_masses (drawing, areas.masses, &figure->masses);
  gw_figure_summary (drawing, areas.summary, &figure->summary);
  draw_notes (drawing, &figure->title, areas.notes);
  gw_title_block_draw (drawing, areas.title, figure, &areas);
}
