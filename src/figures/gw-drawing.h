/* gw-drawing.h - marks on a drawing: laid out first, inked afterwards
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <cairo.h>
#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-piece.h"

/* A figure is laid out into a list of marks (numbers to places) and then inked
 * on any cairo_t. Tests, hit-testing and the text equivalent read the marks; the
 * ink knows nothing of aircraft. Unit: the point, 1/72 inch on paper and one
 * logical pixel on screen; x to the right, y down. */

typedef struct
{
  double x, y, width, height;
} GwBox;

typedef enum
{
  GW_TONE_INK,
  GW_TONE_MID,
  GW_TONE_FAINT,
  GW_TONE_GRID,
  GW_TONE_PAPER,
  GW_TONE_BODY,     /* what is solid, a little off the paper */
  GW_TONE_SELECTED, /* tint of the shown option's column */
  GW_TONE_OPTION,   /* line and marker of option 0; + i for the others, GW_OPTION_STYLES in all */
} GwTone;

#define GW_OPTION_STYLES 8
#define GW_N_TONES       (GW_TONE_OPTION + GW_OPTION_STYLES)

typedef struct
{
  double      rgb[GW_N_TONES][3];
  const char *font; /* family */
  bool        is_dark;
} GwTheme;

/** gw_theme_get: paper, ink and the Okabe-Ito hues (Okabe & Ito 2008) as used on that paper. */
const GwTheme *gw_theme_get (bool is_dark);

/* Line types after ISO 128: wide 0.5 mm, narrow 0.25 mm on paper. */
typedef enum
{
  GW_LINE_NONE,
  GW_LINE_WIDE,    /* visible outlines, frame */
  GW_LINE_NARROW,  /* dimensions, leaders, edges within an outline */
  GW_LINE_HAIR,    /* grid, table rules */
  GW_LINE_CENTRE,  /* long-dash-dot, narrow: centre and quarter-chord lines, seams */
  GW_LINE_HIDDEN,  /* dashed, narrow: hidden edges, limits, bays */
  GW_LINE_PHANTOM, /* long-dash-double-dot, narrow: where a moving part goes, the propeller disc */
  GW_LINE_OPTION,  /* wide line in the pattern of option 0; + i for the others */
} GwLineType;

typedef enum
{
  GW_FONT_SMALL, /* 7.5: notes, axis numbers */
  GW_FONT_TEXT,  /* 8.5: labels, cells */
  GW_FONT_HEAD,  /* 10, bold: titles of figures, columns */
  GW_FONT_TITLE, /* 13, bold: title block */
  GW_N_FONTS
} GwFont;

typedef enum
{
  GW_STYLE_UPRIGHT, /* computed or given */
  GW_STYLE_ITALIC,  /* guessed; set in the mid tone */
  GW_STYLE_BOLD,
} GwTextStyle;

/* Where the given point lies in the text's box. */
typedef enum
{
  GW_ALIGN_START,
  GW_ALIGN_MIDDLE,
  GW_ALIGN_END
} GwAlign;

typedef enum
{
  GW_MARK_PATH,
  GW_MARK_TEXT,
  GW_MARK_BALANCE, /* the quartered circle of engineering drawings */
  GW_MARK_NEUTRAL, /* a plain small circle */
  GW_MARK_DOT,     /* filled; where a leader ends within an outline */
  GW_MARK_CROSS,   /* limit not kept */
  GW_MARK_OPTION,  /* marker shape of option 0; + i for the others */
} GwMarkKind;

/* The thing of the aircraft that a mark shows. */
typedef struct
{
  int group; /* GwGroup, %GW_TARGET_RESULT, %GW_TARGET_SPAN, or -1: none */
  int owner; /* index in that list; of a result: its option */
  int part;  /* of a result: which, as the maker of the figure counts them */
} GwTarget;

#define GW_TARGET_NONE   ((GwTarget){ -1, -1, -1 })
#define GW_TARGET_RESULT GW_N_GROUPS
#define GW_TARGET_SPAN   (GW_N_GROUPS + 1) /* of the surface that is the owner */

typedef struct
{
  GwMarkKind  kind;
  GwLineType  line;
  GwTone      stroke;
  GwTone      fill; /* read if @is_filled */
  bool        is_filled;
  bool        is_hatched; /* 45 degree hatch in @stroke instead of a fill */
  bool        is_closed;
  double      opacity;  /* of the whole mark, 0 to 1 */
  size_t      first, n; /* its points in the drawing's list; a text or symbol has one */
  char       *text;
  GwFont      font;
  GwTextStyle style;
  double      turn; /* of a text about its point, anticlockwise [rad] */
  GwAlign     align_x, align_y;
  double      size; /* of a symbol, across */
  GwBox       box;  /* what it covers */
  GwTarget    target;
} GwMark;

typedef enum
{
  GW_VIEW_TOP,  /* u to starboard, v aft: nose up on the sheet */
  GW_VIEW_SIDE, /* u aft, v down: nose to the left */
  GW_N_VIEWS
} GwView;

/* Where a view of the aircraft stands: x = origin[0] + u scale, y = origin[1] + v scale. */
typedef struct
{
  GwBox  box;
  double origin[2]; /* of u = v = 0 [pt] */
  double scale;     /* [pt per m]; 0: the view is not there */
} GwViewFrame;

typedef struct _GwDrawing GwDrawing;

GwDrawing *gw_drawing_new (const GwTheme *theme);
void       gw_drawing_free (GwDrawing *drawing);

/** gw_drawing_clear: drops all marks, to lay out anew; what was measured is remembered. */
void gw_drawing_clear (GwDrawing *drawing);

/**
 * gw_drawing_follow:
 * @like: (nullable): NULL: everything finds its place anew
 *
 * While something is dragged, nothing else may jump: the next layout puts views, tables
 * and labels where they stand in @like, as far as it holds the same things.
 */
void gw_drawing_follow (GwDrawing       *drawing,
                        const GwDrawing *like);

/** gw_drawing_set_type: sets all text @factor times as large, 0.8 to 2. */
void gw_drawing_set_type (GwDrawing *drawing,
                          double     factor);

const GwTheme *gw_drawing_theme (const GwDrawing *drawing);
size_t         gw_drawing_n (const GwDrawing *drawing);
const GwMark  *gw_drawing_mark (const GwDrawing *drawing,
                                size_t           i);
const double  *gw_drawing_points (const GwDrawing *drawing); /* x, y pairs */

const GwViewFrame *gw_drawing_view (const GwDrawing *drawing,
                                    GwView           view);

/** gw_drawing_path: adds a path; returns it for its fields to be set before the next call. */
GwMark *gw_drawing_path (GwDrawing    *drawing,
                         size_t        n,
                         const double *xy,
                         GwLineType    line,
                         GwTone        stroke);

GwMark *gw_drawing_text (GwDrawing  *drawing,
                         double      x,
                         double      y,
                         const char *text,
                         GwFont      font,
                         GwTone      tone);

GwMark *gw_drawing_symbol (GwDrawing *drawing,
                           GwMarkKind kind,
                           double     x,
                           double     y,
                           double     size,
                           GwTone     tone);

/** gw_drawing_align: sets where the point lies in the text's box, which is then known anew. Call it
 * after setting @style or @turn. */
void gw_drawing_align (GwDrawing *drawing,
                       GwMark    *mark,
                       GwAlign    align_x,
                       GwAlign    align_y);

/** gw_drawing_measure: size of @text as it would be set, hinting off. */
void gw_drawing_measure (GwDrawing  *drawing,
                         const char *text,
                         GwFont      font,
                         GwTextStyle style,
                         double     *width,
                         double     *height);

/** gw_drawing_ink: paints all marks in order, on paper that is there already. Changes nothing;
 * leaves the context as it was. */
void gw_drawing_ink (const GwDrawing *drawing,
                     cairo_t         *cr);

/** gw_drawing_ink_within: likewise, but only what shows in one of @n boxes. */
void gw_drawing_ink_within (const GwDrawing *drawing,
                            cairo_t         *cr,
                            size_t           n,
                            const GwBox     *boxes);

/**
 * gw_drawing_missing:
 *
 * Which marks of @drawing have no equal in @other, to a fraction of a point: what has to be
 * inked anew when one takes the other's place.
 *
 * Returns: (array length=gw_drawing_n(drawing)) (transfer full): free with g_free()
 */
bool *gw_drawing_missing (const GwDrawing *drawing,
                          const GwDrawing *other);

typedef void (*GwBoxVisitor) (const GwBox *box,
                              void        *data);

/** gw_drawing_reach: calls @visit with what inking mark @i can touch: a line piece by piece. */
void gw_drawing_reach (const GwDrawing *drawing,
                       size_t           i,
                       GwBoxVisitor     visit,
                       void            *data);

/** gw_drawing_ink_ghost: outlines of things, points and curves among the marks in @which, pale. */
void gw_drawing_ink_ghost (const GwDrawing *drawing,
                           cairo_t         *cr,
                           const bool      *which,
                           size_t           n,
                           const GwBox     *boxes);

/** gw_drawing_hit: target of the topmost mark at (x, y), within @reach. */
GwTarget gw_drawing_hit (const GwDrawing *drawing,
                         double           x,
                         double           y,
                         double           reach);
