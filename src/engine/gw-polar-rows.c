/* gw-polar-rows.c - from incidences tried to the rows of a polar
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-polar-private.h"

#include <math.h>
#include <string.h>

double
gw_polar_alpha (const GwPolarCase *polar_case,
                size_t             i)
{
  return polar_case->alpha_first + (polar_case->alpha_last - polar_case->alpha_first) *
                                     (double) i / (double) (polar_case->n - 1);
}

/* @t of the way from @a to @b. */
static GwPolarRow
row_between (const GwPolarRow *a,
             const GwPolarRow *b,
             double            t)
{
  GwPolarRow row = *a;

  row.alpha = a->alpha + t * (b->alpha - a->alpha);
  row.sums.cl = a->sums.cl + t * (b->sums.cl - a->sums.cl);
  row.sums.cd = a->sums.cd + t * (b->sums.cd - a->sums.cd);
  row.sums.cm = a->sums.cm + t * (b->sums.cm - a->sums.cm);
  row.sums.pressure_rise = a->sums.pressure_rise +
                           t * (b->sums.pressure_rise - a->sums.pressure_rise);
  return row;
}

/* The row where the nose stalls, between @fore, which it does not reach, and @aft. */
static GwPolarRow
nose_stall (const GwPolarRow *fore,
            const GwPolarRow *aft)
{
  const double rise = fore->sums.pressure_rise;

  return row_between (fore, aft, (PRESSURE_RISE_MAX - rise) / (aft->sums.pressure_rise - rise));
}

static bool
is_beyond (const GwPolarRow *row)
{
  return row->sums.pressure_rise > PRESSURE_RISE_MAX;
}

/* Nothing is left of what lies beyond a stall from the nose, up or down. */
static void
cut_at_nose (GwPolar *out)
{
  size_t first = 0, end = out->n;

  while (first + 1 < end && is_beyond (&out->rows[first]))
    first++;
  while (end > first + 1 && is_beyond (&out->rows[end - 1]))
    end--;
  if (end < out->n)
    {
      out->rows[end] = nose_stall (&out->rows[end - 1], &out->rows[end]);
      end++;
    }
  if (first > 0)
    {
      first--;
      out->rows[first] = nose_stall (&out->rows[first + 1], &out->rows[first]);
    }
  out->n = end - first;
  memmove (out->rows, out->rows + first, out->n * sizeof *out->rows);
}

void
gw_polar_fill (const GwPolarCase  *polar_case,
               const GwPolarTries *tries,
               GwPolar            *out)
{
  size_t     before = polar_case->n;
  GwPolarRow row, fore = { .alpha = 0.0 };

  out->n = 0;
  for (size_t i = 0; i < polar_case->n; i++)
    {
      out->tried += tries->is_tried[i];
      out->converged += tries->is_done[i];
      if (!tries->is_done[i])
        continue;

      row = (GwPolarRow){ gw_polar_alpha (polar_case, i), tries->sums[i], false };
      for (size_t gap = before + 1; before < polar_case->n && gap < i; gap++)
        {
          const double t = (double) (gap - before) / (double) (i - before);

          out->rows[out->n] = row_between (&fore, &row, t);
          out->rows[out->n++].is_bridged = true;
        }
      out->rows[out->n++] = row;
      fore = row;
      before = i;
    }
  if (out->n > 0)
    cut_at_nose (out);
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

bool
gw_polar_is_nose_stall (const GwPolarRow *row)
{
  return row->sums.pressure_rise > 0.999 * PRESSURE_RISE_MAX;
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

/* Greatest (or least) lift: top of the parabola through the three rows about it, or where the
 * nose stalls. */
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
    return gw_polar_is_nose_stall (row);

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
