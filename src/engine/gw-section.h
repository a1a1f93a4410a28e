/* gw-section.h - what a wing section does, by Reynolds number
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-outline.h"
#include "engine/gw-status.h"

#define GW_SECTION_ROWS 12

typedef struct
{
  double re;         /* chord Reynolds number, rising from row to row */
  double cl_max;     /* greatest section lift coefficient */
  double slope;      /* lift slope [1/rad] */
  double alpha_zero; /* zero-lift angle from the chord line [rad] */
  double cm_zero;    /* moment about the quarter chord at zero lift, nose up positive */
} GwSectionRow;

/* What disturbs the layer on both sides of a surface: a seam, an edge of tape or sheeting across
 * the stream, or the grain of the surface, which counts as a step near the nose. */
typedef struct
{
  double height;   /* [m]; 0: smooth */
  double place;    /* of the step, in chords */
  double critical; /* its Reynolds number below which it does nothing */
} GwFinish;

/* Common figures of @critical. Steps across the stream: 50 to 300, Smith & Clutter, Journal of the
 * Aero/Space Sciences 26(4) (1959); grains: Braslow & Knox, NACA TN 4363 (1958). */
#define GW_CRITICAL_STEP  120.0
#define GW_CRITICAL_GRAIN 600.0
#define GW_GRAIN_PLACE    0.05 /* where the layer is thin and grain tells most [chords] */

/* What a section does with such a step, at one height of it. */
typedef struct
{
  double       place, critical; /* as in #GwFinish */
  double       height;          /* [chords] */
  size_t       n_rows;          /* >= 1 */
  GwSectionRow rows[GW_SECTION_ROWS];
} GwSteppedRows;

/* The one narrow door to section data: wings ask gw_section_at() and do not know
 * whether a row was measured, recalled or computed. */
typedef struct
{
  const char          *name;
  GwOutline            outline;
  size_t               n_rows; /* >= 1 */
  GwSectionRow         rows[GW_SECTION_ROWS];
  size_t               n_stepped;
  const GwSteppedRows *stepped;       /* of one step from the least height to the greatest */
  double               cl_max_factor; /* 1, or what the spread of the method makes of it */
} GwSection;

typedef struct
{
  double cl_max;
  double slope;
  double alpha_zero;
  double cm_zero;
  bool   is_outside; /* Re lies outside the table; the end row was taken */
} GwSectionPoint;

/**
 * gw_section_at:
 * @re: chord Reynolds number, > 0
 * @chord: [m], > 0
 * @finish: (nullable): of the surface there
 *
 * Linear in log (Re) between the rows, the end rows beyond them (never extrapolated; @is_outside
 * says so); in the logarithm of its height between two heights of the same step. Lower than
 * all that are known is smooth.
 *
 * Returns: %GW_OK; %GW_EINVAL if @re or @chord is not positive or a table is empty.
 */
GwStatus gw_section_at (const GwSection *section,
                        double           re,
                        double           chord,
                        const GwFinish  *finish,
                        GwSectionPoint  *out);

/** gw_section_mix: straight blend of two points, @t = 0 gives @a. */
void gw_section_mix (const GwSectionPoint *a,
                     const GwSectionPoint *b,
                     double                t,
                     GwSectionPoint       *out);
