/* gw-section-lines.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-section-lines.h"

#include <math.h>

#include "engine/gw-plate.h"
#include "study/gw-section-known.h"
#include "study/gw-section-outline.h"

#define DEG         (G_PI / 180.0)
#define PLATE_FIRST -8 /* [deg], as of polars */
#define PLATE_LAST  20
#define STRAIGHT_N  12
#define SAME_ALPHA  1e-9
#define SEEN_LIFT   0.01 /* differences that make a curve of its own */
#define SEEN_DRAG   0.05 /* of itself */
#define CLOSE       1e-6 /* to a Reynolds number or height that was computed */

static GArray *
new_rows (void)
{
  return g_array_new (FALSE, FALSE, sizeof (GwSectionLineRow));
}

static GArray *
rows_of_polar (const GwPolar *polar)
{
  GArray *rows = new_rows ();

  for (gsize i = 0; i < polar->n; i++)
    {
      const GwPolarRow      *from = &polar->rows[i];
      const GwSectionLineRow row = { from->alpha, from->sums.cl, from->sums.cd,
                                     from->is_bridged };

      g_array_append_val (rows, row);
    }

  return rows;
}

/* FALSE beyond the ends. */
static gboolean
row_at (const GArray     *rows,
        double            alpha,
        GwSectionLineRow *out)
{
  for (guint i = 0; i + 1 < rows->len; i++)
    {
      const GwSectionLineRow *a = &g_array_index (rows, GwSectionLineRow, i), *b = a + 1;
      const double            t = (alpha - a->alpha) / (b->alpha - a->alpha);

      if (alpha < a->alpha - SAME_ALPHA || alpha > b->alpha + SAME_ALPHA)
        continue;
      *out = (GwSectionLineRow){
        .alpha = alpha,
        .cl = a->cl + t * (b->cl - a->cl),
        .cd = a->cd + t * (b->cd - a->cd),
        .is_bridged = (a->is_bridged && t < 1.0 - CLOSE) || (b->is_bridged && t > CLOSE),
      };
      return TRUE;
    }

  return FALSE;
}

/* At the incidences of the nearer one that both reach. */
static GArray *
mix_rows (const GArray *a,
          const GArray *b,
          double        t)
{
  const GArray *near = t < 0.5 ? a : b, *far = t < 0.5 ? b : a;
  const double  part = t < 0.5 ? t : 1.0 - t;
  GArray       *rows = new_rows ();

  for (guint i = 0; i < near->len; i++)
    {
      GwSectionLineRow row = g_array_index (near, GwSectionLineRow, i), other;

      if (part > CLOSE)
        {
          if (!row_at (far, row.alpha, &other))
            continue;
          row.cl += part * (other.cl - row.cl);
          row.cd += part * (other.cd - row.cd);
          row.is_bridged = row.is_bridged || other.is_bridged;
        }
      g_array_append_val (rows, row);
    }

  return rows;
}

/* The two sound polars about @re, or the last twice; FALSE if none is sound. */
static gboolean
find_pair (const GwPolars *polars,
           double          re,
           guint          *below,
           guint          *above)
{
  *below = *above = GW_POLARS_N;
  for (guint k = 0; k < GW_POLARS_N; k++)
    {
      if (polars->status[k] != GW_OK || polars->polar[k].n < 2)
        continue;
      if (gw_polars_re[k] <= re * (1.0 + CLOSE))
        *below = k;
      else if (*above == GW_POLARS_N)
        *above = k;
    }
  if (*below == GW_POLARS_N)
    *below = *above;
  if (*above == GW_POLARS_N)
    *above = *below;

  return *below < GW_POLARS_N;
}

/* Of the way from one Reynolds number to the other, in the logarithm. */
static double
part_between (double re,
              guint  below,
              guint  above)
{
  return below < above ? log (re / gw_polars_re[below]) /
                           log (gw_polars_re[above] / gw_polars_re[below])
                       : 0.0;
}

/* NULL if they are not there or none is sound. */
static GArray *
rows_of_subject (const GwPolarSubject *subject,
                 double                re)
{
  g_autoptr (GwPolars) polars = gw_polars_find (subject);
  g_autoptr (GArray) a = NULL;
  g_autoptr (GArray) b = NULL;
  guint below, above;

  if (polars == NULL || !find_pair (polars, re, &below, &above))
    return NULL;

  a = rows_of_polar (&polars->polar[below]);
  if (below == above)
    return g_steal_pointer (&a);
  b = rows_of_polar (&polars->polar[above]);
  return mix_rows (a, b, part_between (re, below, above));
}

/* Polars are there for steps each twice as high as the one before. */
static GArray *
stepped_rows (const GwSectionUse *use,
              double              re)
{
  const double height = log2 (use->finish.height / use->chord);
  GwTrip       trip = { use->finish.place, exp2 (floor (height)), use->finish.critical };
  g_autoptr (GArray) low = NULL;
  g_autoptr (GArray) high = NULL;
  GwPolarSubject subject;

  if (!gw_section_subject (use->record, &trip, &subject))
    return NULL;
  low = rows_of_subject (&subject, re);
  subject.trip.height = exp2 (ceil (height));
  high = rows_of_subject (&subject, re);
  if (low == NULL || high == NULL)
    return low != NULL ? g_steal_pointer (&low) : g_steal_pointer (&high);

  return mix_rows (low, high, height - floor (height));
}

static GArray *
plate_rows (const GwOutline *outline,
            double           re)
{
  GwOutlineMeasures measures;
  GwPlate           plate;
  GArray           *rows = new_rows ();

  gw_outline_measures (outline, &measures);
  plate = (GwPlate){ measures.thickness, fabs (measures.camber), CLAMP (re, 2e4, 5e5) };
  for (int deg = PLATE_FIRST; deg <= PLATE_LAST; deg++)
    {
      GwSectionLineRow row = { .alpha = deg * DEG };
      double           cm;

      if (gw_plate_at (&plate, row.alpha, &row.cl, &row.cd, &cm) == GW_OK)
        g_array_append_val (rows, row);
    }

  return rows;
}

/* The straight line that a wing is computed with, from no lift to the greatest. */
static GArray *
straight_rows (const GwSectionUse *use,
               double              re)
{
  GArray        *rows = new_rows ();
  GwSectionPoint point;

  if (use->section == NULL ||
      gw_section_at (use->section, re, use->chord, &use->finish, &point) != GW_OK)
    return rows;

  for (int i = 0; i <= STRAIGHT_N; i++)
    {
      const double           cl = point.cl_max * i / STRAIGHT_N;
      const GwSectionLineRow row = { point.alpha_zero + cl / point.slope, cl, NAN, FALSE };

      g_array_append_val (rows, row);
    }
  return rows;
}

/* Anywhere at one incidence. */
static gboolean
differ (const GArray *a,
        const GArray *b)
{
  for (guint i = 0, k = 0; i < a->len; i++)
    {
      const GwSectionLineRow *p = &g_array_index (a, GwSectionLineRow, i), *q;

      while (k < b->len && g_array_index (b, GwSectionLineRow, k).alpha < p->alpha - 1e-6)
        k++;
      if (k == b->len)
        break;
      q = &g_array_index (b, GwSectionLineRow, k);
      if (fabs (q->alpha - p->alpha) < 1e-6 &&
          (fabs (q->cl - p->cl) > SEEN_LIFT || fabs (q->cd - p->cd) > SEEN_DRAG * p->cd))
        return TRUE;
    }

  return FALSE;
}

gboolean
gw_section_finish_bends (const GwSectionUse *use,
                         double              re)
{
  g_autoptr (GArray) built = NULL;
  g_autoptr (GArray) smooth = NULL;

  if (!gw_section_use_finish_acts (use, re))
    return FALSE;

  return gw_section_line_at (use, re, TRUE, &built) == GW_LINE_OF_POLARS &&
         gw_section_line_at (use, re, FALSE, &smooth) == GW_LINE_OF_POLARS &&
         differ (built, smooth);
}

gboolean
gw_section_finish_costs (const GwSectionUse *use)
{
  for (gsize i = 0; i < use->section->n_rows; i++)
    {
      const double   re = use->section->rows[i].re;
      GwSectionPoint built, smooth;

      if (gw_section_at (use->section, re, use->chord, &use->finish, &built) == GW_OK &&
          gw_section_at (use->section, re, use->chord, NULL, &smooth) == GW_OK &&
          fabs (built.cl_max - smooth.cl_max) > SEEN_LIFT)
        return TRUE;
    }

  return FALSE;
}

/* Of the smooth section, with the two about @re. (transfer full) (nullable) */
static GwPolars *
polars_about (const GwSectionUse *use,
              double              re,
              guint              *below,
              guint              *above)
{
  g_autoptr (GwPolars) polars = NULL;
  GwPolarSubject subject;

  if (gw_section_subject (use->record, NULL, &subject))
    polars = gw_polars_find (&subject);

  return polars != NULL && find_pair (polars, re, below, above) ? g_steal_pointer (&polars) : NULL;
}

gboolean
gw_section_two_valued (const GwSectionUse *use,
                       double              re,
                       double             *from,
                       double             *to)
{
  guint below, above;
  g_autoptr (GwPolars) polars = polars_about (use, re, &below, &above);

  *from = HUGE_VAL;
  *to = -HUGE_VAL;
  for (guint k = below; polars != NULL && k <= above; k++)
    if (polars->polar[k].is_two_valued)
      {
        *from = fmin (*from, polars->polar[k].two_valued_from);
        *to = fmax (*to, polars->polar[k].two_valued_to);
      }

  return *from <= *to;
}

double
gw_section_computed_top (const GwSectionUse *use,
                         double              re)
{
  guint below, above;
  g_autoptr (GwPolars) polars = polars_about (use, re, &below, &above);

  if (polars == NULL)
    return NAN;

  return polars->polar[below].cl_max + part_between (re, below, above) *
                                         (polars->polar[above].cl_max -
                                          polars->polar[below].cl_max);
}

gboolean
gw_section_has_own_rows (const GwStudySection *section)
{
  const GwStudySectionRow *row =
    section->rows->len > 0 ? g_ptr_array_index (section->rows, 0) : NULL;

  return row != NULL && row->cl_max.origin == GW_ORIGIN_GIVEN;
}

GwSectionLineKind
gw_section_line_at (const GwSectionUse *use,
                    double              re,
                    gboolean            with_finish,
                    GArray            **rows)
{
  GwPolarSubject subject;

  *rows = NULL;
  if (!gw_section_has_own_rows (use->record) && gw_section_subject (use->record, NULL, &subject))
    {
      if (gw_section_is_thin_plate (use->record, &subject.outline))
        {
          *rows = plate_rows (&subject.outline, re);
          return GW_LINE_OF_PLATE;
        }
      if (with_finish && gw_section_use_finish_acts (use, re))
        *rows = stepped_rows (use, re);
      if (*rows == NULL)
        *rows = rows_of_subject (&subject, re);
      if (*rows != NULL)
        return GW_LINE_OF_POLARS;
    }

  *rows = straight_rows (use, re);
  return (*rows)->len > 0 ? GW_LINE_OF_ROWS : GW_LINE_OF_NOTHING;
}

const GwSectionLineRow *
gw_section_least_drag (const GArray *rows)
{
  const GwSectionLineRow *best = NULL;

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      const GwSectionLineRow *row = &g_array_index (rows, GwSectionLineRow, i);

      if (isfinite (row->cd) && !row->is_bridged && (best == NULL || row->cd < best->cd))
        best = row;
    }

  return best;
}

double
gw_section_re_shown (double re)
{
  const double unit = pow (10.0, floor (log10 (re)) - 1.0);

  return round (re / unit) * unit;
}
