/* gw-section-polar.c - polars where the options fly
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"
#include "report/gw-section-figures-private.h"
#include "report/gw-section-lines.h"
#include "study/gw-catalogue.h"
#include "study/gw-section-known.h"

#define DEG           (G_PI / 180.0)
#define MEASURED_NEAR 1.6  /* Reynolds numbers over one another at which points are shown */
#define MOVED         0.02 /* of the greatest lift that is worth a word */

static GwPolarLine
make_line (GwSectionSheet *sheet,
           const GArray   *rows)
{
  const guint n = rows->len;
  double     *alpha = _gw_section_keep_new (sheet, double, n);
  double     *cl = _gw_section_keep_new (sheet, double, n);
  double     *cd = _gw_section_keep_new (sheet, double, n);
  bool       *is_bridged = _gw_section_keep_new (sheet, bool, n);

  for (guint i = 0; i < n; i++)
    {
      const GwSectionLineRow *row = &g_array_index (rows, GwSectionLineRow, i);

      alpha[i] = row->alpha;
      cl[i] = row->cl;
      cd[i] = row->cd;
      is_bridged[i] = row->is_bridged;
    }

  return (GwPolarLine){ n, alpha, cl, cd, is_bridged };
}

static void
add_row_points (const GwStudyMeasuredRow *row,
                GArray                   *points)
{
  for (guint i = 0; i < row->polar->len; i++)
    {
      const GwStudyPolarPoint *from = g_ptr_array_index (row->polar, i);
      const GwPolarPoint       point = {
              from->alpha_deg.value * DEG,
              from->cl.value,
              from->cd.value,
      };

      g_array_append_val (points, point);
    }
  if (row->polar->len == 0 && !isnan (row->alpha_stall_deg.value) && !isnan (row->cl_max.value))
    {
      const GwPolarPoint point = { row->alpha_stall_deg.value * DEG, row->cl_max.value, NAN };

      g_array_append_val (points, point);
    }
}

/* Measured near @re on the catalogue's section with this outline; says by whom. */
static void
add_points (GwSectionSheet     *sheet,
            GwPolarCurve       *curve,
            const GwSectionUse *use,
            double              re)
{
  GwPolarSubject subject;
  g_autoptr (GPtrArray) measured = NULL;
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (GwPolarPoint));

  if (!gw_section_subject (use->record, NULL, &subject) || subject.section == NULL)
    return;
  measured = gw_catalogue_measured (subject.section);
  for (guint i = 0; i < measured->len; i++)
    {
      const GwStudyMeasurement *measurement = g_ptr_array_index (measured, i);
      const guint               before = points->len;

      for (guint k = 0; k < measurement->rows->len; k++)
        {
          const GwStudyMeasuredRow *row = g_ptr_array_index (measurement->rows, k);

          if (fabs (log (row->re.value / re)) <= log (MEASURED_NEAR))
            add_row_points (row, points);
        }
      if (points->len > before)
        _gw_section_note_source (sheet, measurement);
    }

  curve->n_points = points->len;
  if (points->len > 0)
    curve->points = _gw_section_keep (
      sheet, g_memdup2 (points->data, points->len * sizeof (GwPolarPoint)));
}

/* Wings are computed with the greatest lift that measurements and comparisons make of a polar. */
static void
note_moved (GwSectionSheet     *sheet,
            const GwSectionUse *use,
            double              re)
{
  const double   computed = gw_section_computed_top (use, re);
  GwSectionPoint point;

  if (gw_section_at (use->section, re, use->chord, NULL, &point) == GW_OK &&
      fabs (point.cl_max - computed) > MOVED * computed)
    _gw_section_note (sheet, g_strdup_printf (_ ("%s: the greatest lift computed is %.2f; "
                                                 "comparisons with measurements make it %.2f, "
                                                 "which wings are computed with."),
                                              use->section->name, computed, point.cl_max));
}

/* Hysteresis: what no line through the incidences can show. */
static void
note_two_valued (GwSectionSheet     *sheet,
                 const GwSectionUse *use,
                 double              re)
{
  const char      *name = use->section->name;
  double           from, to;
  g_autofree char *low = NULL, *high = NULL;

  if (!gw_section_two_valued (use, re, &from, &to))
    return;

  low = gw_amount_text (&sheet->units, GW_DEG, from, 0);
  high = gw_amount_text (&sheet->units, GW_DEG, to, 0);
  _gw_section_note (
    sheet, g_str_equal (low, high)
             ? g_strdup_printf (_ ("%s: near %s it can have another lift than drawn, on the way "
                                   "back from the stall."),
                                name, low)
             : g_strdup_printf (_ ("%s: from %s to %s it can have another lift than drawn, on the "
                                   "way back from the stall."),
                                name, low, high));
}

static GwPolarCurve
make_curve (GwSectionSheet       *sheet,
            const GwSectionGroup *group,
            guint                 i)
{
  const GwSectionUse *use = &g_array_index (group->uses, GwSectionUse, 0);
  GwPolarCurve        curve = { .label = _gw_section_label (sheet, group, i, TRUE) };
  g_autoptr (GArray) built = NULL;
  g_autoptr (GArray) smooth = NULL;
  const GwSectionLineKind kind = gw_section_line_at (use, group->re, group->is_bent, &built);

  curve.built = make_line (sheet, built);
  if (kind != GW_LINE_OF_POLARS)
    _gw_section_note_known (sheet, use);
  else
    {
      note_moved (sheet, use, group->re);
      note_two_valued (sheet, use, group->re);
    }
  if (group->is_bent && gw_section_line_at (use, group->re, FALSE, &smooth) == kind)
    curve.smooth = make_line (sheet, smooth);
  if (kind == GW_LINE_OF_ROWS)
    _gw_section_note (sheet, g_strdup_printf (_ ("%s: its drag is not known."),
                                              use->section->name));
  add_points (sheet, &curve, use, group->re);
  return curve;
}

void
_gw_section_make_polar (GwSectionSheet *sheet)
{
  g_autoptr (GArray) groups = _gw_section_groups (sheet, TRUE);
  GwPolarCurve *curves = _gw_section_keep_new (sheet, GwPolarCurve, groups->len);
  guint         n = 0;

  for (guint i = 0; i < groups->len; i++)
    {
      const GwSectionGroup *group = &g_array_index (groups, GwSectionGroup, i);

      if (isfinite (group->re))
        {
          curves[n] = make_curve (sheet, group, n);
          n++;
        }
      else
        _gw_section_note (
          sheet, g_strdup_printf (_ ("%s: no stall speed found, so no Reynolds number."),
                                  g_array_index (group->uses, GwSectionUse, 0).section->name));
    }
  if (groups->len == 0)
    _gw_section_note (sheet, g_strdup (_ ("No such section is in use.")));

  sheet->figure.polar = (GwPolarFigure){
    .words = _gw_section_words (sheet, _ ("Polars of the sections"),
                                isfinite (sheet->choice.re)
                                  ? _ ("flaps up · at the Reynolds number chosen")
                                  : _ ("flaps up · at the Reynolds numbers of the stall")),
    .n_curves = n,
    .curves = curves,
  };
}
