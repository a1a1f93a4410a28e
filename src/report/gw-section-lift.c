/* gw-section-lift.c - greatest lift by Reynolds number, as wings are computed with it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-section-figures-private.h"
#include "report/gw-section-lines.h"
#include "study/gw-catalogue.h"
#include "study/gw-section-known.h"

#define STEPS   4   /* from row to row, for a step whose rows lie elsewhere */
#define MOST_RE 5e6 /* beyond which a measurement says nothing of a model */

/* What the rows' shares of the section's spread make of the greatest lift at @re, straight in its
 * logarithm as the rows themselves. */
static double
share_at (const GwStudySection *section,
          double                re)
{
  const GwStudySectionRow *below = g_ptr_array_index (section->rows, 0), *above = below;

  for (guint i = 0; i < section->rows->len; i++)
    {
      above = g_ptr_array_index (section->rows, i);
      if (above->re.value >= re)
        break;
      below = above;
    }
  if (above->re.value <= below->re.value)
    return below->spread_share.value;

  return below->spread_share.value + CLAMP (log (re / below->re.value) /
                                              log (above->re.value / below->re.value),
                                            0.0, 1.0) *
                                       (above->spread_share.value - below->spread_share.value);
}

void
gw_section_lift_band (const GwSectionUse *use,
                      double              re,
                      double              cl,
                      double             *low,
                      double             *high)
{
  const GwNumber *factor = &use->record->cl_max_factor;
  const double    share = share_at (use->record, re);
  const double    used = 1.0 + (factor->value - 1.0) * share;

  *low = cl * (1.0 + (factor->low - 1.0) * share) / used;
  *high = cl * (1.0 + (factor->high - 1.0) * share) / used;
}

/* Every row is one, since the curve is bent there. */
static double
re_of_step (const GwSection *section,
            guint            i)
{
  const gsize  row = i / STEPS;
  const double here = section->rows[row].re;

  return i % STEPS == 0
           ? here
           : here * pow (section->rows[row + 1].re / here, (double) (i % STEPS) / STEPS);
}

static void
fill_curve (GwSectionSheet      *sheet,
            GwGreatestLiftCurve *curve,
            const GwSectionUse  *use,
            gboolean             has_smooth)
{
  const GwSection *section = use->section;
  const guint      n = (guint) (section->n_rows - 1) * STEPS + 1;
  double          *values[5];

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    values[i] = _gw_section_keep_new (sheet, double, n);
  for (guint i = 0; i < n; i++)
    {
      const double   re = re_of_step (section, i);
      GwSectionPoint built, smooth;

      if (gw_section_at (section, re, use->chord, &use->finish, &built) != GW_OK ||
          gw_section_at (section, re, use->chord, NULL, &smooth) != GW_OK)
        continue;
      values[0][i] = re;
      values[1][i] = built.cl_max;
      values[4][i] = smooth.cl_max;
      gw_section_lift_band (use, re, built.cl_max, &values[2][i], &values[3][i]);
    }

  curve->n = n;
  curve->re = values[0];
  curve->cl = values[1];
  curve->low = values[2];
  curve->high = values[3];
  curve->smooth = has_smooth ? values[4] : NULL;
}

static gboolean
add_measured_row (const GwStudyMeasurement *measurement,
                  const GwStudyMeasuredRow *row,
                  GArray                   *rows)
{
  const gboolean       is_recalled = measurement->standing == GW_STANDING_MEMORY;
  const double         value = row->cl_max.value;
  const GwMeasuredLift lift = { row->re.value, is_recalled ? row->cl_max.low : value, value,
                                is_recalled ? row->cl_max.high : value };

  if (isnan (value) || row->re.value > MOST_RE)
    return FALSE;

  g_array_append_val (rows, lift);
  return TRUE;
}

static void
add_measured (GwSectionSheet      *sheet,
              GwGreatestLiftCurve *curve,
              const GwSectionUse  *use)
{
  g_autoptr (GArray) rows = g_array_new (FALSE, FALSE, sizeof (GwMeasuredLift));
  g_autoptr (GPtrArray) measured = NULL;
  GwPolarSubject subject;

  if (!gw_section_subject (use->record, NULL, &subject) || subject.section == NULL)
    return;
  measured = gw_catalogue_measured (subject.section);
  for (guint i = 0; i < measured->len; i++)
    {
      const GwStudyMeasurement *measurement = g_ptr_array_index (measured, i);
      gboolean                  is_shown = FALSE;

      for (guint k = 0; k < measurement->rows->len; k++)
        is_shown |= add_measured_row (measurement, g_ptr_array_index (measurement->rows, k), rows);
      if (is_shown)
        _gw_section_note_source (sheet, measurement);
    }

  curve->n_measured = rows->len;
  if (rows->len > 0)
    curve->measured =
      _gw_section_keep (sheet, g_memdup2 (rows->data, rows->len * sizeof (GwMeasuredLift)));
}

static void
fill_flights (GwSectionSheet       *sheet,
              GwGreatestLiftCurve  *curve,
              const GwSectionGroup *group)
{
  GwFlightPoint *flights = _gw_section_keep_new (sheet, GwFlightPoint, group->uses->len);
  guint          n = 0;

  for (guint i = 0; i < group->uses->len; i++)
    {
      const GwSectionUse *use = &g_array_index (group->uses, GwSectionUse, i);
      GwSectionPoint      point;

      if (use->is_first &&
          gw_section_at (use->section, use->re, use->chord, &use->finish, &point) == GW_OK)
        flights[n++] = (GwFlightPoint){ use->re, point.cl_max, (int) use->option };
    }

  curve->n_flights = n;
  curve->flights = flights;
}

static GwGreatestLiftCurve
make_curve (GwSectionSheet       *sheet,
            const GwSectionGroup *group,
            guint                 i,
            gboolean              is_first)
{
  const GwSectionUse *use = &g_array_index (group->uses, GwSectionUse, 0);
  GwGreatestLiftCurve curve = { .label = _gw_section_label (sheet, group, i, FALSE) };

  fill_curve (sheet, &curve, use, group->is_bent);
  if (is_first)
    add_measured (sheet, &curve, use);
  fill_flights (sheet, &curve, group);
  if (use->record->rows->len > 0 &&
      ((GwStudySectionRow *) g_ptr_array_index (use->record->rows, 0))->cl_max.origin !=
        GW_ORIGIN_COMPUTED)
    _gw_section_note_known (sheet, use);

  return curve;
}

/* What was measured stands once, however many finishes there are. */
static gboolean
is_first_of_its_outline (const GArray *groups,
                         guint         i)
{
  const GArray *uses = g_array_index (groups, GwSectionGroup, i).uses;

  for (guint k = 0; k < i; k++)
    if (gw_section_use_is_like (
          &g_array_index (uses, GwSectionUse, 0),
          &g_array_index (g_array_index (groups, GwSectionGroup, k).uses, GwSectionUse, 0)))
      return FALSE;

  return TRUE;
}

void
_gw_section_make_greatest_lift (GwSectionSheet *sheet)
{
  g_autoptr (GArray) groups = _gw_section_groups (sheet, FALSE);
  const guint          n_options = sheet->evaluation->outcomes->len;
  GwGreatestLiftCurve *curves = _gw_section_keep_new (sheet, GwGreatestLiftCurve, groups->len);
  const char         **options = _gw_section_keep_new (sheet, const char *, n_options);

  for (guint i = 0; i < n_options; i++)
    options[i] = gw_evaluation_outcome (sheet->evaluation, i)->short_name;
  for (guint i = 0; i < groups->len; i++)
    curves[i] = make_curve (sheet, &g_array_index (groups, GwSectionGroup, i), i,
                            is_first_of_its_outline (groups, i));
  if (groups->len == 0)
    _gw_section_note (sheet, g_strdup (_ ("No such section is in use.")));

  sheet->figure.greatest_lift = (GwGreatestLiftFigure){
    .words = _gw_section_words (sheet, _ ("Greatest lift of the sections"),
                                _ ("as wings are computed with it · flaps up · tinted: 10th–90th "
                                   "percentile")),
    .n_options = n_options,
    .options = options,
    .n_curves = groups->len,
    .curves = curves,
  };
}
