/* gw-section-figures.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-section-figures-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "figures/gw-layout.h"
#include "report/gw-amount.h"
#include "report/gw-section-lines.h"
#include "report/gw-sheet.h"
#include "study/gw-section-known.h"

#define NEAR 1.25 /* Reynolds numbers that make one curve */

static void
group_clear (GwSectionGroup *group)
{
  g_array_unref (group->uses);
}

static const GwSectionUse *
first_of (const GwSectionGroup *group)
{
  return &g_array_index (group->uses, GwSectionUse, 0);
}

/* Reynolds number that is asked for, or its own. */
static double
re_of (const GwSectionSheet *sheet,
       const GwSectionUse   *use)
{
  return isfinite (sheet->choice.re) ? sheet->choice.re : use->re;
}

static gboolean
is_near (const GwSectionGroup *group,
         double                re)
{
  if (isnan (re) || isnan (group->re_low))
    return isnan (re) && isnan (group->re_low);

  return fmax (group->re_high, re) <= NEAR * fmin (group->re_low, re);
}

static gboolean
fits (const GwSectionGroup *group,
      const GwSectionUse   *use,
      gboolean              is_bent,
      gboolean              is_by_re,
      double                re)
{
  return gw_section_use_is_like (use, first_of (group)) && is_bent == group->is_bent &&
         (!is_bent || gw_section_use_has_finish_of (use, first_of (group))) &&
         (!is_by_re || is_near (group, re));
}

static void
add_use (const GwSectionSheet *sheet,
         GArray               *groups,
         const GwSectionUse   *use,
         gboolean              is_by_re)
{
  const double    re = re_of (sheet, use);
  const gboolean  is_bent = is_by_re ? isfinite (re) && gw_section_finish_bends (use, re)
                                     : gw_section_finish_costs (use);
  GwSectionGroup *found = NULL;

  for (guint k = 0; k < groups->len && found == NULL; k++)
    if (fits (&g_array_index (groups, GwSectionGroup, k), use, is_bent, is_by_re, re))
      found = &g_array_index (groups, GwSectionGroup, k);
  if (found == NULL)
    {
      const GwSectionGroup group = { g_array_new (FALSE, FALSE, sizeof (GwSectionUse)), is_bent, re,
                                     re, re };

      g_array_append_val (groups, group);
      found = &g_array_index (groups, GwSectionGroup, groups->len - 1);
    }

  g_array_append_val (found->uses, *use);
  found->re_low = fmin (found->re_low, re);
  found->re_high = fmax (found->re_high, re);
  found->re = sqrt (found->re_low * found->re_high);
}

GArray *
_gw_section_groups (const GwSectionSheet *sheet,
                    gboolean              is_by_re)
{
  g_autoptr (GArray) uses = gw_section_uses (sheet->evaluation, &sheet->choice);
  GArray *groups = g_array_new (FALSE, FALSE, sizeof (GwSectionGroup));

  g_array_set_clear_func (groups, (GDestroyNotify) group_clear);
  for (guint i = 0; i < uses->len; i++)
    add_use (sheet, groups, &g_array_index (uses, GwSectionUse, i), is_by_re);

  return groups;
}

static gboolean
has_option (const GwSectionGroup *group,
            guint                 option)
{
  for (guint i = 0; i < group->uses->len; i++)
    if (g_array_index (group->uses, GwSectionUse, i).option == option)
      return TRUE;

  return FALSE;
}

/* "all options", or their names. */
static char *
options_text (const GwSectionSheet *sheet,
              const GwSectionGroup *group)
{
  const guint n = sheet->evaluation->outcomes->len;
  g_autoptr (GPtrArray) names = g_ptr_array_new ();

  for (guint i = 0; i < n; i++)
    if (has_option (group, i))
      g_ptr_array_add (names, gw_evaluation_outcome (sheet->evaluation, i)->short_name);
  if (names->len == n && n > 1)
    return g_strdup (_ ("all options"));

  g_ptr_array_add (names, NULL);
  return g_strjoinv (_ (", "), (char **) names->pdata);
}

static int
only_option (const GwSectionGroup *group)
{
  const guint option = first_of (group)->option;

  for (guint i = 0; i < group->uses->len; i++)
    if (g_array_index (group->uses, GwSectionUse, i).option != option)
      return -1;

  return (int) option;
}

/* "Re 93000–110000" */
static char *
re_range_text (const GwSectionSheet *sheet,
               double                low,
               double                high)
{
  g_autofree char *one = gw_amount_number (&sheet->units, GW_RATIO, gw_section_re_shown (low), 0);
  g_autofree char *both =
    gw_amount_band (&sheet->units, GW_RATIO, gw_section_re_shown (low),
                    gw_section_re_shown (high), 0);

  /* Translators: a Reynolds number, or two with a dash between them */
  return g_strdup_printf (_ ("Re %s"), both != NULL ? both : one);
}

char *
_gw_section_re_text (const GwSectionSheet *sheet,
                     double                re)
{
  return re_range_text (sheet, re, re);
}

GwSectionLabel
_gw_section_label (GwSectionSheet       *sheet,
                   const GwSectionGroup *group,
                   guint                 i,
                   gboolean              with_re)
{
  const GwSectionUse *use = first_of (group);
  const char          letter[] = { (char) ('A' + i % 26), '\0' };
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  if (with_re)
    g_ptr_array_add (parts, re_range_text (sheet, group->re_low, group->re_high));
  if (group->is_bent)
    g_ptr_array_add (parts, gw_section_use_finish_text (use, &sheet->units));
  g_ptr_array_add (parts, options_text (sheet, group));
  g_ptr_array_add (parts, NULL);

  return (GwSectionLabel){
    .letter = _gw_section_keep (sheet, g_strdup (letter)),
    .name = use->section->name,
    .words = _gw_section_keep (sheet, g_strjoinv (" · ", (char **) parts->pdata)),
    .option = only_option (group),
    .pattern = (int) i,
  };
}

void
_gw_section_note (GwSectionSheet *sheet,
                  char           *text)
{
  if (g_ptr_array_find_with_equal_func (sheet->notes, text, g_str_equal, NULL))
    g_free (text);
  else
    g_ptr_array_add (sheet->notes, _gw_section_keep (sheet, text));
}

void
_gw_section_note_known (GwSectionSheet     *sheet,
                        const GwSectionUse *use)
{
  const char    *name = use->section->name;
  GwPolarSubject subject;

  if (gw_section_has_own_rows (use->record))
    _gw_section_note (sheet, g_strdup_printf (_ ("%s: as given in the study, not computed."),
                                              name));
  else if (gw_section_subject (use->record, NULL, &subject) &&
           gw_section_is_thin_plate (use->record, &subject.outline))
    _gw_section_note (sheet,
                      g_strdup_printf (_ ("%s: by tests of thin plates; not computed, since the "
                                          "flow leaves a sharp nose."),
                                       name));
  else
    _gw_section_note (sheet, g_strdup_printf (_ ("%s: guessed from its outline; no polar of it "
                                                 "is computed."),
                                              name));
}

void
_gw_section_note_source (GwSectionSheet           *sheet,
                         const GwStudyMeasurement *measurement)
{
  const char *name = measurement->publisher, *year = measurement->year;

  switch ((GwStanding) measurement->standing)
    {
    case GW_STANDING_MEMORY:
      _gw_section_note (sheet, g_strdup_printf (_ ("Recalled: %s (%s)."), name, year));
      break;
    case GW_STANDING_DERIVED:
      _gw_section_note (sheet,
                        g_strdup_printf (_ ("Printed, in part computed: %s (%s)."), name, year));
      break;
    case GW_STANDING_PRINTED:
    default:
      _gw_section_note (sheet, g_strdup_printf (_ ("Measured: %s (%s)."), name, year));
      break;
    }
}

GwSectionWords
_gw_section_words (GwSectionSheet *sheet,
                   const char     *title,
                   const char     *conditions)
{
  char *notes = NULL;

  if (sheet->notes->len > 0)
    {
      g_ptr_array_add (sheet->notes, NULL);
      notes = _gw_section_keep (sheet, g_strjoinv (" ", (char **) sheet->notes->pdata));
    }

  return (GwSectionWords){
    .title = title,
    .conditions = conditions,
    .notes = notes,
  };
}

GwSectionSheet *
gw_section_sheet_new (GwEvaluation          *evaluation,
                      GwSectionFigureKind    kind,
                      const GwSectionChoice *choice,
                      const GwUnits         *units,
                      GCancellable          *cancellable,
                      GError               **error)
{
  g_autoptr (GwSectionSheet) sheet = g_new0 (GwSectionSheet, 1);

  g_return_val_if_fail (kind < GW_N_SECTION_FIGURES, NULL);

  sheet->evaluation = gw_evaluation_ref (evaluation);
  sheet->kind = kind;
  sheet->choice = choice != NULL ? *choice : GW_SECTION_CHOICE_ALL;
  sheet->units = units != NULL ? *units : *gw_units_standard ();
  sheet->blocks = g_ptr_array_new_with_free_func (g_free);
  sheet->notes = g_ptr_array_new ();
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;

  if (kind == GW_SECTION_POLAR)
    _gw_section_make_polar (sheet);
  else if (kind == GW_SECTION_GREATEST_LIFT)
    _gw_section_make_greatest_lift (sheet);
  else if (!_gw_section_make_pressure (sheet, cancellable, error))
    return NULL;

  return g_steal_pointer (&sheet);
}

void
gw_section_sheet_free (GwSectionSheet *sheet)
{
  g_ptr_array_unref (sheet->notes);
  g_ptr_array_unref (sheet->blocks);
  gw_evaluation_unref (sheet->evaluation);
  g_free (sheet);
}

const GwPolarFigure *
gw_section_sheet_polar (const GwSectionSheet *sheet)
{
  return sheet->kind == GW_SECTION_POLAR ? &sheet->figure.polar : NULL;
}

const GwGreatestLiftFigure *
gw_section_sheet_greatest_lift (const GwSectionSheet *sheet)
{
  return sheet->kind == GW_SECTION_GREATEST_LIFT ? &sheet->figure.greatest_lift : NULL;
}

const GwPressureFigure *
gw_section_sheet_pressure (const GwSectionSheet *sheet)
{
  return sheet->kind == GW_SECTION_PRESSURE ? &sheet->figure.pressure : NULL;
}

static const char *const names[GW_N_SECTION_FIGURES] = {
  [GW_SECTION_POLAR] = "polar",
  [GW_SECTION_GREATEST_LIFT] = "greatest-lift",
  [GW_SECTION_PRESSURE] = "pressure",
};

const char *
gw_section_figure_name (GwSectionFigureKind kind)
{
  g_return_val_if_fail (kind < GW_N_SECTION_FIGURES, NULL);

  return names[kind];
}

gboolean
gw_section_figure_parse (const char          *name,
                         GwSectionFigureKind *kind)
{
  for (guint i = 0; i < GW_N_SECTION_FIGURES; i++)
    if (g_strcmp0 (name, names[i]) == 0)
      {
        *kind = (GwSectionFigureKind) i;
        return TRUE;
      }

  return FALSE;
}

void
gw_section_sheet_layout (const GwSectionSheet *sheet,
                         double                width,
                         double                height,
                         GwDrawing            *drawing)
{
  const GwBox box = gw_box_inset ((GwBox){ 0.0, 0.0, width, height }, GW_FIGURE_MARGIN);

  gw_drawing_clear (drawing);
  if (sheet->kind == GW_SECTION_POLAR)
    gw_figure_polar (drawing, box, &sheet->figure.polar);
  else if (sheet->kind == GW_SECTION_GREATEST_LIFT)
    gw_figure_greatest_lift (drawing, box, &sheet->figure.greatest_lift);
  else
    gw_figure_pressure (drawing, box, &sheet->figure.pressure);
}

GwDrawing *
gw_section_sheet_draw (const GwSectionSheet *sheet,
                       double                width,
                       double                height,
                       gboolean              is_dark)
{
  GwDrawing *drawing = gw_drawing_new (gw_theme_get (is_dark));

  gw_section_sheet_layout (sheet, width, height, drawing);
  return drawing;
}
