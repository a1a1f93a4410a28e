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

/* The one narrow door to section data: wings ask gw_section_at() and do not know
 * whether a row was measured, recalled or computed. */
typedef struct
{
  const char  *name;
  GwOutline    outline;
  size_t       n_rows; /* >= 1 */
  GwSectionRow rows[GW_SECTION_ROWS];
  double       cl_max_factor; /* 1, or what the spread of the table makes of it */
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
 *
 * Linear in log (Re) between the rows, the end rows beyond them (never
 * extrapolated; @is_outside says so).
 *
 * Returns: %GW_OK; %GW_EINVAL if @re is not positive or the table is empty.
 */
GwStatus gw_section_at (const GwSection *section,
                        double           re,
                        GwSectionPoint  *out);

/** gw_section_mix: straight blend of two points, @t = 0 gives @a. */
void gw_section_mix (const GwSectionPoint *a,
                     const GwSectionPoint *b,
                     double                t,
                     GwSectionPoint       *out);
