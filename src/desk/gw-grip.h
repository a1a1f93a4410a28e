/* gw-grip.h - what on the sheet can be taken hold of, and what moving it does
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-document.h"
#include "figures/gw-drawing.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

typedef enum
{
  GW_GRIP_NONE,
  GW_GRIP_ITEM,    /* equipment: fore and aft, sideways from above, up and down from the side */
  GW_GRIP_BALANCE, /* the balance point: the item that is moved to balance follows */
  GW_GRIP_STATION, /* leading edge of a station: sweep and span; of the root: the whole surface */
  GW_GRIP_CHORD,   /* its trailing edge */
  GW_GRIP_SPAN,    /* of a surface: typed, not dragged; u of the move: half of it */
} GwGripKind;

typedef struct
{
  GwGripKind kind;
  GwView     view;
  gboolean   is_image; /* taken at its mirror image */
  char      *path;     /* of the record that changes */
  double     u, v;     /* where it is in its view [m] */
} GwGrip;

void gw_grip_clear (GwGrip *grip);
void gw_grip_copy (GwGrip       *to,
                   const GwGrip *from);

/** gw_grips_of: the handles of what is selected, and the balance point, in every view. (transfer
 * full): an array of GwGrip */
GArray *gw_grips_of (GwDocument *document);

/** gw_grip_of_item: the grip of equipment at @path in a view; %GW_GRIP_NONE if it is none. */
void gw_grip_of_item (GwDocument *document,
                      const char *path,
                      GwView      view,
                      gboolean    is_image,
                      GwGrip     *out);

typedef struct
{
  double u, v;  /* where the grip is led, in its view [m] */
  double step;  /* places are rounded to it [m] */
  double catch; /* how near the centre line it catches [m]; 0: not at all */
} GwGripMove;

/**
 * gw_grip_move:
 *
 * Starts from the study as it is shown, tried changes included (a span: not), and changes
 * fields with gw_edit_set() as the document is set to do.
 *
 * Returns: (transfer full): the study with the grip moved there, as far as it goes
 */
GwStudy *gw_grip_move (const GwGrip     *grip,
                       GwDocument       *document,
                       const GwGripMove *move,
                       GError          **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_grip_half_span: of the surface at @path as shown [m]; NAN: there is none. */
double gw_grip_half_span (GwDocument *document,
                          const char *path);

/** gw_grip_name: what undo calls the move: "Move Battery". (transfer full) */
char *gw_grip_name (const GwGrip *grip,
                    GwDocument   *document);

/** gw_grip_text: where it is now: "Battery: 112 mm aft"; what @move does not reach is said with the
 * lead that it takes. (transfer full) */
char *gw_grip_text (const GwGrip     *grip,
                    GwDocument       *document,
                    const GwGripMove *move,
                    const GwUnits    *units);

/**
 * gw_grip_number:
 * @path: (out) (transfer full): of the field that the number typed on the spot stands for
 *
 * Returns: (transfer none) (nullable): that field of the study as shown
 */
const GwNumber *gw_grip_number (const GwGrip *grip,
                                GwDocument   *document,
                                char        **path);

G_END_DECLS
