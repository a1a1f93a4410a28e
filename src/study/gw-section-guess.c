/* gw-section-guess.c - what a section does that nobody has measured or computed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-catalogue.h"
#include "study/gw-section-outline.h"

#define OTHER_KIND 0.05 /* chords of thickness that a different kind counts for */

/* Kinds that behave alike: sections, sheets with a score, plates. */
static int
family (const GwStudySection *section)
{
  return section->shape == GW_SHAPE_FOLDED ? 1 : section->shape == GW_SHAPE_PLATE ? 2
                                                                                  : 0;
}

/* Camber counts double: greatest lift follows it more closely than it follows thickness
 * (common practice, no source). */
static const GwStudySection *
nearest_section (const GwStudySection *section,
                 const GwOutline      *outline)
{
  const GPtrArray      *sections = gw_catalogue_list ("sections");
  const GwStudySection *nearest = NULL;
  double                least = INFINITY;
  GwOutlineMeasures     wanted;

  gw_outline_measures (outline, &wanted);
  for (guint i = 0; i < sections->len; i++)
    {
      const GwStudySection *other = g_ptr_array_index (sections, i);
      GwOutline             candidate;
      GwOutlineMeasures     measures;
      double                distance;

      if (other->rows->len == 0 || gw_section_outline (other, &candidate) != GW_OK)
        continue;
      gw_outline_measures (&candidate, &measures);
      distance = hypot (measures.thickness - wanted.thickness,
                        2.0 * (measures.camber - wanted.camber)) +
                 (family (other) != family (section) ? OTHER_KIND : 0.0);
      if (distance < least)
        {
          least = distance;
          nearest = other;
        }
    }

  return nearest;
}

static void
mark (GwRecord   *record,
      const char *key)
{
  gw_record_set_present (record, gw_record_type_field (record->type, key), TRUE);
}

/* Greatest lift by Reynolds number alone: slope, angle and moment follow from the mean line.
 * What is known of the neighbour is known half as well of this section. */
static void
take_rows (GwStudySection       *section,
           const GwStudySection *from)
{
  for (guint i = 0; i < from->rows->len; i++)
    {
      const GwStudySectionRow *row = g_ptr_array_index (from->rows, i);
      GwRecord                *record = gw_record_new (gw_study_section_row_type ());
      GwStudySectionRow       *copy = (GwStudySectionRow *) record;

      gw_number_set (&copy->re, row->re.value);
      gw_number_set (&copy->cl_max, row->cl_max.value);
      copy->cl_max.origin = GW_ORIGIN_GUESSED;
      mark (record, "re");
      mark (record, "cl_max");
      g_ptr_array_add (section->rows, record);
    }
  mark (&section->record, "rows");
}

/* A spread of the section's own is better known. */
static void
take_factor (GwStudySection       *section,
             const GwStudySection *from)
{
  const GwField *field = gw_record_type_field (section->record.type, "cl_max_factor");

  if (gw_record_has (&section->record, field))
    return;

  gw_number_set_range (&section->cl_max_factor, MAX (0.5, 2.0 * from->cl_max_factor.low - 1.0),
                       1.0, MIN (1.5, 2.0 * from->cl_max_factor.high - 1.0));
  section->cl_max_factor.origin = GW_ORIGIN_GUESSED;
  gw_record_set_present (&section->record, field, TRUE);
}

void
gw_section_guess (GwStudySection *section)
{
  const GwStudySection *from;
  g_autofree char      *outline_source = NULL;
  GwOutline             outline;

  if (section->rows->len > 0 || gw_section_outline (section, &outline) != GW_OK)
    return;

  from = nearest_section (section, &outline);
  take_rows (section, from);
  take_factor (section, from);

  outline_source = g_steal_pointer (&section->source);
  section->source = g_strdup_printf (
    _ ("%s%sGreatest lift: guessed, that of %s, which is nearest in the catalogue by kind, "
       "thickness and camber, with twice its spread. Slope, angle and moment: thin-aerofoil "
       "theory."),
    outline_source != NULL ? outline_source : "", outline_source != NULL ? " " : "", from->name);
  mark (&section->record, "source");
}
