/* gw-polar-rows.c - from incidences tried to the rows of a polar
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-polar-private.h"

#include <math.h>

double
gw_polar_alpha (const GwPolarCase *polar_case,
                size_t             i)
{
  return polar_case->alpha_first + (polar_case->alpha_last - polar_case->alpha_first) *
                                     (double) i / (double) (polar_case->n - 1);
}

/* Rows of all incidences between the first and the last that converged. */
void
gw_polar_fill (const GwPolarCase  *polar_case,
               const GwPolarTries *tries,
               GwPolar            *out)
{
  size_t before = polar_case->n;

  out->n = 0;
  for (size_t i = 0; i < polar_case->n; i++)
    {
      out->tried += tries->is_tried[i];
      out->converged += tries->is_done[i];
      if (!tries->is_done[i])
        continue;

      for (size_t gap = before + 1; before < polar_case->n && gap < i; gap++)
        {
          const GwPolarRow    *fore = &out->rows[out->n - (gap - before)];
          const double         t = (double) (gap - before) / (double) (i - before);
          const GwCoupledSums *a = &fore->sums, *b = &tries->sums[i];
          GwPolarRow           row = { .is_bridged = true };

          row.alpha = gw_polar_alpha (polar_case, gap);
          row.sums = *a;
          row.sums.cl = a->cl + t * (b->cl - a->cl);
          row.sums.cd = a->cd + t * (b->cd - a->cd);
          row.sums.cm = a->cm + t * (b->cm - a->cm);
          out->rows[out->n++] = row;
        }
      out->rows[out->n++] = (GwPolarRow){ gw_polar_alpha (polar_case, i), tries->sums[i], false };
      before = i;
    }
}

void
gw_polar_insert (GwPolar          *out,
                 const GwPolarRow *row)
{
  size_t at = out->n;

  if (out->n >= GW_POLAR_MAX)
    return;
  while (at > 0 && out->rows[at - 1].alpha > row->alpha)
    {
      out->rows[at] = out->rows[at - 1];
      at--;
    }
  out->rows[at] = *row;
  out->n++;
}

size_t
gw_polar_extreme (const GwPolar *out,
                  double         sign)
{
  size_t best = 0;

  for (size_t i = 1; i < out->n; i++)
    if (sign * out->rows[i].sums.cl > sign * out->rows[best].sums.cl)
      best = i;

  return best;
}

/* Greatest (or least) lift: top of the parabola through the three rows about it. */
static bool
find_extreme (const GwPolar *out,
              double         sign,
              double        *cl,
              double        *alpha)
{
  const size_t      best = gw_polar_extreme (out, sign);
  const GwPolarRow *row = &out->rows[best];

  *cl = row->sums.cl;
  *alpha = row->alpha;
  if (best == 0 || best + 1 >= out->n)
    return false;

  const double fore = (row[0].sums.cl - row[-1].sums.cl) / (row[0].alpha - row[-1].alpha);
  const double aft = (row[1].sums.cl - row[0].sums.cl) / (row[1].alpha - row[0].alpha);
  const double bend = (aft - fore) / (row[1].alpha - row[-1].alpha);

  if (sign * bend < 0.0)
    {
      const double there = 0.5 * (row[-1].alpha + row[0].alpha) - 0.5 * fore / bend;

      if (there > row[-1].alpha && there < row[1].alpha)
        {
          *alpha = there;
          *cl = row[-1].sums.cl +
                (there - row[-1].alpha) * (fore + bend * (there - row[0].alpha));
        }
    }

  return true;
}

void
gw_polar_summarise (GwPolar *out)
{
  size_t least = 0;

  out->has_top = find_extreme (out, 1.0, &out->cl_max, &out->alpha_max);
  out->has_bottom = find_extreme (out, -1.0, &out->cl_min, &out->alpha_min);
  for (size_t i = 1; i < out->n; i++)
    if (out->rows[i].sums.cd < out->rows[least].sums.cd)
      least = i;
  out->cd_min = out->rows[least].sums.cd;
  out->cl_cd_min = out->rows[least].sums.cl;
}
