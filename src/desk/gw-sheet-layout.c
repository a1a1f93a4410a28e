/* gw-sheet-layout.c - the drawing laid out anew, what it soils, the ghost
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sheet-private.h"

#include "report/gw-sheet.h"

/* Below this the sheet has to leave labels out, so a point is made smaller first [pt]. */
#define EASY_WIDTH  800.0
#define EASY_HEIGHT 520.0

void
_gw_sheet_forget_drawings (GwSheetView *self)
{
  g_clear_pointer (&self->front, gw_drawing_free);
  g_clear_pointer (&self->back, gw_drawing_free);
  g_clear_pointer (&self->rest, gw_drawing_free);
  g_clear_pointer (&self->ghost, g_free);
  gw_tiles_clear (self->tiles);
  _gw_sheet_forget_halo (self);
  self->is_stale = TRUE;
}

/* A point is 1/72 inch of the screen's resolution, which grows with the size of text that the
 * user has set; in a small window it is less, down to a pixel. */
static double
get_point (GwSheetView *self,
           int          width,
           int          height)
{
  int          resolution = 0;
  const double room = MIN (width / EASY_WIDTH, height / EASY_HEIGHT);

  g_object_get (gtk_widget_get_settings (GTK_WIDGET (self)), "gtk-xft-dpi", &resolution, NULL);
  return MAX (MIN (resolution / (1024.0 * 72.0), room), 1.0);
}

static void
soil_box (const GwBox *box,
          void        *tiles)
{
  gw_tiles_soil (tiles, box);
}

static void
soil (GwSheetView     *self,
      const GwDrawing *drawing,
      const bool      *marks)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    if (marks[i])
      gw_drawing_reach (drawing, i, soil_box, self->tiles);
}

/* What is different between the old picture and the new one. */
static void
soil_changes (GwSheetView     *self,
              const GwDrawing *old,
              const GwDrawing *new)
{
  g_autofree bool *gone = gw_drawing_missing (old, new);
  g_autofree bool *come = gw_drawing_missing (new, old);

  soil (self, old, gone);
  soil (self, new, come);
}

/* The ghost shows what the drawing at rest has and the one on the screen has not. */
static void
update_ghost (GwSheetView *self)
{
  g_autofree bool *before = g_steal_pointer (&self->ghost);

  if (self->rest == NULL)
    return;

  self->ghost = gw_drawing_missing (self->rest, self->front);
  for (size_t i = 0; i < gw_drawing_n (self->rest); i++)
    if (self->ghost[i] != (before != NULL && before[i]))
      gw_drawing_reach (self->rest, i, soil_box, self->tiles);
}

static void
end_ghost (GwSheetView *self)
{
  if (self->rest == NULL)
    return;

  if (self->ghost != NULL)
    soil (self, self->rest, self->ghost);
  g_clear_pointer (&self->ghost, g_free);
  if (self->back == NULL)
    self->back = g_steal_pointer (&self->rest);
  g_clear_pointer (&self->rest, gw_drawing_free);
}

/* While something moves, everything else stays where it is; once the bands are there, all may
 * find a better place. */
static void
lay_out (GwSheetView *self)
{
  const gboolean is_trying = gw_document_get_former (self->document) != NULL;
  g_autoptr (GwSheet) sheet = gw_sheet_new (self->evaluation, self->shown, FALSE, &self->units);
  GwDrawing *old;

  if (is_trying && self->rest == NULL && self->front != NULL)
    {
      self->rest = g_steal_pointer (&self->front);
      self->front = gw_drawing_new (gw_theme_get (self->is_dark));
      gw_drawing_follow (self->front, self->rest);
      gw_sheet_layout (sheet, GW_FIGURE_SHEET, self->width / self->point,
                       self->height / self->point, self->front);
      soil_changes (self, self->rest, self->front);
      update_ghost (self);
      return;
    }

  if (!is_trying)
    end_ghost (self);
  if (self->back == NULL)
    self->back = gw_drawing_new (gw_theme_get (self->is_dark));
  gw_drawing_follow (self->back, self->evaluation->is_quick ? self->front : NULL);
  gw_sheet_layout (sheet, GW_FIGURE_SHEET, self->width / self->point, self->height / self->point,
                   self->back);
  if (self->front != NULL)
    soil_changes (self, self->front, self->back);
  old = self->front;
  self->front = self->back;
  self->back = old;
  update_ghost (self);
}

void
_gw_sheet_find_grips (GwSheetView *self)
{
  g_clear_pointer (&self->grips, g_array_unref);
  self->grips = gw_grips_of (self->document);
}

void
_gw_sheet_prepare (GwSheetView *self,
                   int          width,
                   int          height)
{
  const double point = get_point (self, width, height);

  if (self->width != width || self->height != height || self->point != point)
    _gw_sheet_forget_drawings (self);
  self->width = width;
  self->height = height;
  self->point = point;
  if (!self->is_stale)
    return;

  self->is_stale = FALSE;
  lay_out (self);
  _gw_sheet_find_grips (self);
  _gw_sheet_forget_halo (self);
}
