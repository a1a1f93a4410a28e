/* gw-grip-private.h - what the files of the grips share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-grip.h"

G_BEGIN_DECLS

#define GW_GRIP_LEAST_PANEL 2.0 /* between stations [mm] */

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
