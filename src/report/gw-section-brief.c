/* gw-section-brief.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-section-brief.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"
#include "report/gw-section-lines.h"
#include "study/gw-catalogue.h"
#include "study/gw-section-known.h"

/* Straight in the logarithm of the Reynolds number, as wings ask for it. */
static double
greatest_lift (const GwStudySection *section,
               double                re)
{
  const GwStudySectionRow *below = g_ptr_array_index (section->rows, 0), *above = below;
  double                   t;

  for (guint i = 0; i < section->rows->len; i++)
    {
      above = g_ptr_array_index (section->rows, i);
      if (above->re.value >= re)
        break;
      below = above;
    }
  if (above->re.value <= below->re.value)
    return below->cl_max.value;

  t = CLAMP (log (re / below->re.value) / log (above->re.value / below->re.value), 0.0, 1.0);
  return below->cl_max.value + t * (above->cl_max.value - below->cl_max.value);
}

static double
least_drag (const GwStudySection *section,
            double                re)
{
  const GwSectionUse use = { .record = section };
  g_autoptr (GArray) rows = NULL;
  const GwSectionLineRow *least;

  if (gw_section_has_own_rows (section))
    return (double) NAN;

  gw_section_line_at (&use, re, FALSE, &rows);
  least = gw_section_least_drag (rows);
  return least != NULL ? least->cd : (double) NAN;
}

/* @known: filled in with what it does. */
static char *
brief_of (const GwStudySection *section,
          const GwStudySection *known,
          double                re,
          const GwUnits        *units)
{
  g_autofree char *lift = gw_amount_number (units, GW_RATIO, greatest_lift (known, re), 2);
  g_autofree char *at = gw_amount_number (units, GW_RATIO, gw_section_re_shown (re), 0);
  const double     cd = least_drag (section, re);
  g_autofree char *drag = gw_amount_number (units, GW_RATIO, cd, 3);

  if (isnan (cd))
    return g_strdup_printf (_ ("lift to %s at Re %s"), lift, at);

  /* Translators: greatest lift coefficient, least drag coefficient, Reynolds number */
  return g_strdup_printf (_ ("lift to %s, drag from %s at Re %s"), lift, drag, at);
}

char *
gw_section_brief (const GwStudySection *section,
                  double                re,
                  const GwUnits        *units)
{
  GwRecord       *record = gw_record_copy (&section->record);
  GwStudySection *known = (GwStudySection *) record;
  g_autoptr (GArray) wanted = g_array_new (FALSE, FALSE, sizeof (GwPolarSubject));
  char *text = NULL;

  gw_section_fill (known, NULL, wanted);
  if (wanted->len == 0 && known->rows->len > 0)
    text = brief_of (section, known, re, units);
  gw_record_free (record);
  return text;
}

static void
add_briefs (GHashTable      *briefs,
            const GPtrArray *sections,
            double           re,
            const GwUnits   *units)
{
  for (guint i = 0; i < sections->len; i++)
    {
      const GwStudySection *section = g_ptr_array_index (sections, i);
      char                 *brief = g_hash_table_contains (briefs, section->id)
                                      ? NULL
                                      : gw_section_brief (section, re, units);

      if (brief != NULL)
        g_hash_table_insert (briefs, g_strdup (section->id), brief);
    }
}

GHashTable *
gw_section_briefs (const GwStudy *study,
                   double         re,
                   const GwUnits *units)
{
  GHashTable *briefs = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  add_briefs (briefs, study->sections, re, units);
  add_briefs (briefs, gw_catalogue_list ("sections"), re, units);
  return briefs;
}
