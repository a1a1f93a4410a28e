/* gw-sheet-private.h - what the files of the sheet on the screen share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-grip.h"
#include "desk/gw-sheet-view.h"
#include "desk/gw-tiles.h"

G_BEGIN_DECLS

struct _GwSheetView
{
  GtkWidget parent_instance;

  GwDocument   *document;
  GwEvaluation *evaluation; /* that the drawing shows */
  guint         shown;
  gboolean      is_dark;
  GwUnits       units;
  char         *text;

  GwDrawing *front, *back; /* on the screen; to lay out next */
  GwDrawing *rest;         /* before what is tried: the ghost; NULL: nothing is tried */
  bool      *ghost;        /* marks of @rest that are different now */
  GwTiles   *tiles;
  gboolean   is_stale; /* the drawing is to be laid out anew */
  int        width, height;
  double     point; /* without zoom [pixel] */

  double zoom;
  double x, y;         /* of the zoomed sheet, at the widget's corner [pixel] */
  double pinch;        /* zoom when the fingers came down */
  double pan_x, pan_y; /* where a pan began */

  GArray        *grips; /* of GwGrip, as they are in the drawing */
  GskRenderNode *halo;  /* around what is selected; NULL: to be drawn */
  GwGrip         held;  /* under the pointer while it is pressed */
  GwGripMove     move;
  double         start_x, start_y; /* of the pointer [pixel] */
  gboolean       has_moved;        /* beyond a click */
  GdkFrameClock *clock;            /* that a move waits for */
  gulong         due;              /* its handler; 0: no move waits */

  GtkWidget *popover, *entry, *entry_label, *entry_problem; /* the number typed on the spot */
  GwGrip     typed;
};

/** _gw_sheet_prepare: lays the drawing out for the size, if it is stale. */
void _gw_sheet_prepare (GwSheetView *self,
                        int          width,
                        int          height);
void _gw_sheet_find_grips (GwSheetView *self);
void _gw_sheet_forget_drawings (GwSheetView *self);

/** _gw_sheet_snapshot_halo: around what is selected. */
void _gw_sheet_snapshot_halo (GwSheetView *self,
                              GtkSnapshot *snapshot);
void _gw_sheet_forget_halo (GwSheetView *self);
void _gw_sheet_snapshot_grips (GwSheetView *self,
                               GtkSnapshot *snapshot);

/** _gw_sheet_describe: what the sheet says of all options. (transfer full) */
char *_gw_sheet_describe (const GwEvaluation *evaluation,
                          guint               shown,
                          const GwUnits      *units);

/** _gw_sheet_place: a place of the widget on the sheet [pt]. */
void _gw_sheet_place (const GwSheetView *self,
                      double             widget_x,
                      double             widget_y,
                      double            *x,
                      double            *y);

/** _gw_sheet_view_at: the view of the aircraft there and the place in it [m]; %GW_N_VIEWS: none. */
GwView _gw_sheet_view_at (const GwSheetView *self,
                          double             x,
                          double             y,
                          double            *u,
                          double            *v);

/** _gw_sheet_grip_place: where a grip is on the widget; FALSE if its view is not there. */
gboolean _gw_sheet_grip_place (const GwSheetView *self,
                               const GwGrip      *grip,
                               double            *widget_x,
                               double            *widget_y);

/** _gw_sheet_path_of: of the record that a target shows. (transfer full) (nullable) */
char *_gw_sheet_path_of (GwSheetView *self,
                         GwTarget     target);

/** _gw_sheet_is_in_inches: whether lengths are shown in them. */
gboolean _gw_sheet_is_in_inches (const GwSheetView *self);

/** _gw_sheet_step: what a hand moves by: a millimetre or a fiftieth of an inch [m]. */
double _gw_sheet_step (const GwSheetView *self);

#define GW_SHEET_ZOOM_STEP 1.25

/** _gw_sheet_set_zoom: about a place of the widget, which stays where it is. */
void _gw_sheet_set_zoom (GwSheetView *self,
                         double       zoom,
                         double       widget_x,
                         double       widget_y);
void _gw_sheet_move_to (GwSheetView *self,
                        double       x,
                        double       y);

void _gw_sheet_say (GwSheetView *self,
                    const char  *text);

/** _gw_sheet_say_move: where what is held has come to. */
void _gw_sheet_say_move (GwSheetView *self);

/** _gw_sheet_add_hands: pointer and fingers, and the keys. */
void _gw_sheet_add_hands (GwSheetView *self);
void _gw_sheet_install_actions (GtkWidgetClass *widget_class);
void _gw_sheet_let_go (GwSheetView *self);

/** _gw_sheet_key_cb: of a GtkEventControllerKey. */
gboolean _gw_sheet_key_cb (GtkEventControllerKey *controller,
                           guint                  key,
                           guint                  code,
                           GdkModifierType        state,
                           GwSheetView           *self);

/** _gw_sheet_type: asks for the number of a grip. */
void _gw_sheet_type (GwSheetView  *self,
                     const GwGrip *grip);
void _gw_sheet_typing_clear (GwSheetView *self);

G_END_DECLS
