/* gw-section.c - what a wing section does, by Reynolds number
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-section.h"

#include <math.h>

#define SAME 1e-9 /* steps, but for rounding between units */

static void
take_row (const GwSectionRow *row,
          GwSectionPoint     *out)
{
  out->cl_max = row->cl_max;
  out->slope = row->slope;
  out->alpha_zero = row->alpha_zero;
  out->cm_zero = row->cm_zero;
}

static void
take_rows (size_t              n_rows,
           const GwSectionRow *rows,
           double              re,
           GwSectionPoint     *out)
{
  const size_t   last = n_rows - 1;
  GwSectionPoint low = { 0 }, high = { 0 };
  size_t         i = 0;

  while (i < last && rows[i + 1].re <= re)
    i++;

  take_row (&rows[i], &low);
  if (i < last && re > rows[i].re)
    {
      take_row (&rows[i + 1], &high);
      gw_section_mix (&low, &high, log (re / rows[i].re) / log (rows[i + 1].re / rows[i].re), out);
    }
  else
    *out = low;

  out->is_outside = re < rows[0].re || re > rows[last].re;
}

/* The greatest height of that step that is not above @height, and the next one. */
static void
find_heights (const GwSection      *section,
              const GwFinish       *finish,
              double                height,
              const GwSteppedRows **low,
              const GwSteppedRows **high)
{
  *low = *high = NULL;
  for (size_t i = 0; i < section->n_stepped && *high == NULL; i++)
    {
      const GwSteppedRows *stepped = &section->stepped[i];

      if (fabs (stepped->place - finish->place) > SAME ||
          fabs (stepped->critical - finish->critical) > SAME * finish->critical)
        continue;
      if (stepped->height <= height)
        *low = stepped;
      else
        *high = stepped;
    }
}

static void
take_stepped (const GwSection *section,
              double           re,
              double           height,
              const GwFinish  *finish,
              GwSectionPoint  *out)
{
  const GwSteppedRows *low, *high;
  GwSectionPoint       above;

  find_heights (section, finish, height, &low, &high);
  if (low == NULL)
    return;

  take_rows (low->n_rows, low->rows, re, out);
  if (high == NULL)
    return;

  take_rows (high->n_rows, high->rows, re, &above);
  gw_section_mix (out, &above, log (height / low->height) / log (high->height / low->height), out);
}

static bool
are_rows_sound (size_t n)
{
  return n >= 1 && n <= GW_SECTION_ROWS;
}

GwStatus
gw_section_at (const GwSection *section,
               double           re,
               double           chord,
               const GwFinish  *finish,
               GwSectionPoint  *out)
{
  if (!are_rows_sound (section->n_rows) || !(re > 0.0) || !isfinite (re) || !(chord > 0.0))
    return GW_EINVAL;
  for (size_t i = 0; i < section->n_stepped; i++)
    if (!are_rows_sound (section->stepped[i].n_rows))
      return GW_EINVAL;

  take_rows (section->n_rows, section->rows, re, out);
  if (finish != NULL && finish->height > 0.0)
    take_stepped (section, re, finish->height / chord, finish, out);
  out->cl_max *= section->cl_max_factor;
  return GW_OK;
}

void
gw_section_mix (const GwSectionPoint *a,
                const GwSectionPoint *b,
                double                t,
                GwSectionPoint       *out)
{
  const GwSectionPoint mixed = {
    .cl_max = a->cl_max + t * (b->cl_max - a->cl_max),
    .slope = a->slope + t * (b->slope - a->slope),
    .alpha_zero = a->alpha_zero + t * (b->alpha_zero - a->alpha_zero),
    .cm_zero = a->cm_zero + t * (b->cm_zero - a->cm_zero),
    .is_outside = a->is_outside || b->is_outside,
  };

  *out = mixed;
}
