/* gw-section-rows.c - rows of section data from polars and measurements
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-catalogue.h"
#include "study/gw-section-private.h"

#define REACH     4.0 /* times the Reynolds number over which a measurement fades */
#define NOT_FOUND 1.5 /* times the spread where the top itself was not found */

static double
between (double a,
         double b,
         double t)
{
  return a + t * (b - a);
}

/* A Reynolds number without a sound polar lies between its neighbours, or is as the last one. */
static void
bridge (GwRows         *rows,
        const gboolean *is_sound)
{
  for (guint k = 0; k < rows->n; k++)
    {
      guint  below = k, above = k;
      double t;

      if (is_sound[k])
        continue;
      while (below > 0 && !is_sound[below])
        below--;
      while (above + 1 < rows->n && !is_sound[above])
        above++;
      if (!is_sound[below])
        below = above;
      if (!is_sound[above])
        above = below;

      t = below < above ? (log (rows->rows[k].re) - log (rows->rows[below].re)) /
                            (log (rows->rows[above].re) - log (rows->rows[below].re))
                        : 0.0;
      rows->rows[k].cl_max = between (rows->rows[below].cl_max, rows->rows[above].cl_max, t);
      rows->rows[k].slope = between (rows->rows[below].slope, rows->rows[above].slope, t);
      rows->rows[k].alpha_zero =
        between (rows->rows[below].alpha_zero, rows->rows[above].alpha_zero, t);
      rows->rows[k].cm_zero = between (rows->rows[below].cm_zero, rows->rows[above].cm_zero, t);
      rows->low[k] = 1.0 - NOT_FOUND * (1.0 - rows->low[k]);
      rows->high[k] = 1.0 + NOT_FOUND * (rows->high[k] - 1.0);
    }
}

gboolean
_gw_rows_of_polars (const GwPolars *polars,
                    GwRows         *rows)
{
  gboolean is_sound[GW_POLARS_N];
  gboolean is_any = FALSE;

  rows->n = GW_POLARS_N;
  for (guint k = 0; k < GW_POLARS_N; k++)
    {
      GwSectionRow *row = &rows->rows[k];

      *row = (GwSectionRow){ .re = gw_polars_re[k] };
      rows->low[k] = rows->high[k] = 1.0;
      is_sound[k] = polars->status[k] == GW_OK && polars->polar[k].has_top &&
                    gw_polar_section_row (&polars->polar[k], gw_polars_re[k], row) == GW_OK;
      is_any = is_any || is_sound[k];
    }

  if (is_any)
    bridge (rows, is_sound);
  return is_any;
}

static const GwStudyComparison *
find_comparison (GwSectionFamily family,
                 double          re)
{
  const GPtrArray *list = gw_catalogue_get ()->comparisons;

  for (guint i = 0; i < list->len; i++)
    {
      const GwStudyComparison *comparison = g_ptr_array_index (list, i);

      if ((GwSectionFamily) comparison->family == family && re >= comparison->re_from.value &&
          re < comparison->re_to.value)
        return comparison;
    }

  return NULL;
}

void
_gw_rows_widen (GwRows         *rows,
                GwSectionFamily family)
{
  for (guint k = 0; k < rows->n; k++)
    {
      const GwStudyComparison *comparison = find_comparison (family, rows->rows[k].re);

      g_return_if_fail (comparison != NULL);
      rows->low[k] -= 1.0 - comparison->cl_max.low;
      rows->high[k] += comparison->cl_max.high - 1.0;
      rows->rows[k].cl_max *= comparison->cl_max.value;
    }
}

static double
cl_max_at (const GwRows *rows,
           double        re)
{
  GwSection      section = { .n_rows = rows->n, .cl_max_factor = 1.0 };
  GwSectionPoint point;

  memcpy (section.rows, rows->rows, sizeof section.rows);
  return gw_section_at (&section, re, 1.0, NULL, &point) == GW_OK ? point.cl_max : (double) NAN;
}

/* What was measured at one Reynolds number, over what was computed. */
typedef struct
{
  double re, factor, low, high;
  char  *name;
} Meeting;

static void
meeting_clear (Meeting *meeting)
{
  g_free (meeting->name);
}

static int
compare_re (gconstpointer a,
            gconstpointer b)
{
  const Meeting *p = a, *q = b;

  return (p->re > q->re) - (p->re < q->re);
}

static void
add_meetings (const GwRows             *rows,
              const GwStudyMeasurement *measurement,
              GArray                   *meetings)
{
  const gboolean is_recalled = measurement->standing == GW_STANDING_MEMORY;

  if (measurement->standing == GW_STANDING_DERIVED)
    return;

  for (guint i = 0; i < measurement->rows->len; i++)
    {
      const GwStudyMeasuredRow *row = g_ptr_array_index (measurement->rows, i);
      const double              re = row->re.value;
      double                    ours;
      Meeting                   meeting;

      if (isnan (row->cl_max.value) || re < rows->rows[0].re / REACH ||
          re > rows->rows[rows->n - 1].re * REACH)
        continue;

      ours = cl_max_at (rows, re);
      meeting = (Meeting){
        .re = re,
        .factor = (is_recalled ? CLAMP (ours, row->cl_max.low, row->cl_max.high)
                               : row->cl_max.value) /
                  ours,
        .low = row->cl_max.low / row->cl_max.value,
        .high = row->cl_max.high / row->cl_max.value,
        .name = g_strdup_printf (_ ("%s (%s)"), measurement->publisher, measurement->year),
      };
      g_array_append_val (meetings, meeting);
    }
}

/* How much of a meeting counts at @re: all of it there, none REACH times away. */
static double
weight (double re,
        double at)
{
  return MAX (0.0, 1.0 - fabs (log (re / at)) / log (REACH));
}

/* Between two meetings straight in the logarithm of the Reynolds number, beyond them fading. */
static double
factor_at (const GArray *meetings,
           double        re)
{
  const Meeting *below = NULL, *above = NULL;

  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      if (meeting->re <= re)
        below = meeting;
      else if (above == NULL)
        above = meeting;
    }

  if (below != NULL && above != NULL)
    return between (below->factor, above->factor,
                    log (re / below->re) / log (above->re / below->re));
  if (below == NULL)
    below = above;
  return between (1.0, below->factor, weight (re, below->re));
}

/* Near a measurement its own spread holds. */
static void
narrow (GwRows       *rows,
        guint         k,
        const GArray *meetings)
{
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);
      const double   t = weight (rows->rows[k].re, meeting->re);

      rows->low[k] = MAX (rows->low[k], between (rows->low[k], meeting->low, t));
      rows->high[k] = MIN (rows->high[k], between (rows->high[k], meeting->high, t));
    }
}

static char *
names_of (const GArray *meetings)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);

      if (!g_ptr_array_find_with_equal_func (names, meeting->name, g_str_equal, NULL))
        g_ptr_array_add (names, meeting->name);
    }
  g_ptr_array_add (names, NULL);
  return g_strjoinv (", ", (char **) names->pdata);
}

char *
_gw_rows_meet (GwRows     *rows,
               const char *section)
{
  g_autoptr (GPtrArray) measured = gw_catalogue_measured (section);
  g_autoptr (GArray) meetings = g_array_new (FALSE, FALSE, sizeof (Meeting));

  g_array_set_clear_func (meetings, (GDestroyNotify) meeting_clear);
  for (guint i = 0; i < measured->len; i++)
    add_meetings (rows, g_ptr_array_index (measured, i), meetings);
  if (meetings->len == 0)
    return NULL;

  g_array_sort (meetings, compare_re);
  for (guint k = 0; k < rows->n; k++)
    {
      rows->rows[k].cl_max *= factor_at (meetings, rows->rows[k].re);
      narrow (rows, k, meetings);
    }

  return names_of (meetings);
}
