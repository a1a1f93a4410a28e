/* gw-grip-private.h - what the files of the grips share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-grip.h"

G_BEGIN_DECLS

#define GW_GRIP_LEAST_PANEL 2.0 /* between stations [mm] */

/** _gw_grip_outcome: of the option that is shown. */
const GwOutcome *_gw_grip_outcome (GwDocument *document);

/** _gw_grip_study: as that option has it: its own changes and what is tried are in it. */
GwStudy *_gw_grip_study (GwDocument *document);

/** _gw_grip_item_at: NULL if there is no equipment at @path. */
GwStudyItem *_gw_grip_item_at (GwDocument *document,
                               const char *path);

/** _gw_grip_movable: path of what is moved to balance. (transfer full) (nullable) */
char *_gw_grip_movable (GwDocument *document);

/** _gw_grip_surface: path of the surface of a station. (transfer full) */
char *_gw_grip_surface (const char *station);

/** _gw_grip_within: @x kept to the bay of the item, if it has one [mm]. */
double _gw_grip_within (const GwStudyItem *item,
                        double             x);

/* One move may change several fields, one upon the other. */
typedef struct
{
  GwDocument *document;
  GwStudy    *study;    /* NULL once something could not be set */
  GPtrArray  *problems; /* of no interest: what is wrong shows when it is computed */
  GError    **error;
} GwGripMover;

/** _gw_grip_set_field: @number: the field as it is now, whose sureness the value keeps. */
gboolean _gw_grip_set_field (GwGripMover    *mover,
                             const char     *path,
                             const char     *key,
                             const GwNumber *number,
                             double          value);

/** _gw_grip_carry_controls: where a panel grows or shrinks, its control surfaces do. @surface: as
 * it was, @path: where it is */
void _gw_grip_carry_controls (GwGripMover          *mover,
                              const GwStudySurface *surface,
                              const char           *path);

/** _gw_grip_move_span: half the span becomes @move's u. */
void _gw_grip_move_span (GwGripMover      *mover,
                         const GwGrip     *grip,
                         const GwGripMove *move);

G_END_DECLS
