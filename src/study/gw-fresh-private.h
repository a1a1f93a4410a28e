/* gw-fresh-private.h - shared by the files that make new things
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-evaluate.h"
#include "study/gw-assemble.h"
#include "study/gw-fresh.h"

G_BEGIN_DECLS

/* The aircraft that a new thing must suit, in SI. */
typedef struct
{
  const GwStudy        *study; /* resolved */
  GwAssembly           *assembly;
  GwResults             results;
  const GwSurface      *wing;
  const GwSurfaceShape *shape;                  /* of the wing */
  double                quarter_x;              /* of its mean chord */
  double                nose_x, tail_x, tail_z; /* of all bodies; of none: where it would be */
  double                bottom, half_width;     /* of the bodies under the wing's quarter chord */
} GwFreshFrame;

typedef JsonObject *(*GwFreshMaker) (const GwFreshFrame *frame);

JsonObject *_gw_fresh_wing (const GwFreshFrame *frame);
JsonObject *_gw_fresh_tailplane (const GwFreshFrame *frame);
JsonObject *_gw_fresh_v_tail (const GwFreshFrame *frame);
JsonObject *_gw_fresh_canard (const GwFreshFrame *frame);
JsonObject *_gw_fresh_fin (const GwFreshFrame *frame);

JsonObject *_gw_fresh_body (const GwFreshFrame *frame);
JsonObject *_gw_fresh_strut (const GwFreshFrame *frame);
JsonObject *_gw_fresh_leg (const GwFreshFrame *frame);
JsonObject *_gw_fresh_power (const GwFreshFrame *frame);
JsonObject *_gw_fresh_item (const GwFreshFrame *frame);
JsonObject *_gw_fresh_spar (const GwFreshFrame *frame);
JsonObject *_gw_fresh_build (const GwFreshFrame *frame);
JsonObject *_gw_fresh_material (const GwFreshFrame *frame);
JsonObject *_gw_fresh_section (const GwFreshFrame *frame);

/** _gw_fresh_sheet_build: of foam sheet cut to the section, for small surfaces. */
JsonObject *_gw_fresh_sheet_build (const char *surface);

/** _gw_fresh_present: the record as that option has it; @resolved: (out): holds it, to be let go
 * of if it is set. */
GwRecord *_gw_fresh_present (const GwStudy *study,
                             guint          option,
                             const char    *path,
                             GwStudy      **resolved);

JsonObject *_gw_fresh_named (const char *id,
                             const char *name);

/** _gw_fresh_put: a length in whole millimetres. */
void _gw_fresh_put (JsonObject *object,
                    const char *key,
                    double      metres);

/** _gw_fresh_guess: a mass in tenths of a gram, a quarter of it as its spread. */
void _gw_fresh_guess (JsonObject *object,
                      const char *key,
                      double      mass);

static inline GwStudySurface *
_gw_fresh_study_wing (const GwFreshFrame *frame)
{
  return g_ptr_array_index (frame->study->surfaces, (guint) frame->results.geometry.wing);
}

G_END_DECLS
