/* gw-section.c - what a wing section does, by Reynolds number
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-section.h"

#include <math.h>

static void
take_row (const GwSectionRow *row,
          GwSectionPoint     *out)
{
  out->cl_max = row->cl_max;
  out->slope = row->slope;
  out->alpha_zero = row->alpha_zero;
  out->cm_zero = row->cm_zero;
}

GwStatus
gw_section_at (const GwSection *section,
               double           re,
               GwSectionPoint  *out)
{
  const GwSectionRow *rows = section->rows;
  const size_t        last = section->n_rows - 1;
  GwSectionPoint      low = { 0 }, high = { 0 };
  size_t              i = 0;

  if (section->n_rows < 1 || section->n_rows > GW_SECTION_ROWS || !(re > 0.0) || !isfinite (re))
    return GW_EINVAL;

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

  out->cl_max *= section->cl_max_factor;
  out->is_outside = re < rows[0].re || re > rows[last].re;
  return GW_OK;
}

void
gw_section_mix (const GwSectionPoint *a,
                const GwSectionPoint *b,
                double                t,
                GwSectionPoint       *out)
{
  *out = (GwSectionPoint){
    .cl_max = a->cl_max + t * (b->cl_max - a->cl_max),
    .slope = a->slope + t * (b->slope - a->slope),
    .alpha_zero = a->alpha_zero + t * (b->alpha_zero - a->alpha_zero),
    .cm_zero = a->cm_zero + t * (b->cm_zero - a->cm_zero),
    .is_outside = a->is_outside || b->is_outside,
  };
}
