/* gw-section-known.c - what is known of a section, written into its record
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-catalogue.h"
#include "study/gw-section-outline.h"
#include "study/gw-section-private.h"

#define DEG (G_PI / 180.0)

/* The section of the catalogue with that id, if this is its outline. */
static const GwStudySection *
in_catalogue (const GwStudySection *section)
{
  const GwStudySection *like =
    (const GwStudySection *) gw_list_find (gw_catalogue_list ("sections"), section->id);

  return like != NULL && gw_section_has_outline_of (section, like) ? like : NULL;
}

gboolean
gw_section_subject (const GwStudySection *section,
                    const GwTrip         *trip,
                    GwPolarSubject       *subject)
{
  const GwStudySection *like = in_catalogue (section);

  *subject = (GwPolarSubject){ .section = like != NULL ? g_intern_string (like->id) : NULL };
  if (trip != NULL)
    subject->trip = *trip;
  return gw_section_outline (section, &subject->outline) == GW_OK;
}

static void
mark (GwRecord   *record,
      const char *key)
{
  gw_record_set_present (record, gw_record_type_field (record->type, key), TRUE);
}

static void
set_number (GwRecord   *record,
            const char *key,
            double      value,
            GwOrigin    origin)
{
  const GwField *field = gw_record_type_field (record->type, key);
  GwNumber      *number = gw_record_at (record, field);

  gw_number_set (number, CLAMP (value, field->least, field->most));
  number->origin = origin;
  gw_record_set_present (record, field, TRUE);
}

/* What smooth rows and rows with a step have in common. */
static void
write_row (GwRecord           *record,
           const GwSectionRow *row,
           double              share,
           GwOrigin            origin)
{
  set_number (record, "re", row->re, GW_ORIGIN_GIVEN);
  set_number (record, "cl_max", row->cl_max, origin);
  set_number (record, "slope_per_deg", row->slope * DEG, origin);
  set_number (record, "alpha_zero_deg", row->alpha_zero / DEG, origin);
  set_number (record, "cm_zero", row->cm_zero, origin);
  set_number (record, "spread_share", share, GW_ORIGIN_GIVEN);
}

/* One factor of a section stands for all its rows, since they come out high or low together; its
 * spread is that of the surest row, of which the others have a share. */
static double
surest (const GwRows *rows)
{
  double least = INFINITY;

  for (guint k = 0; k < rows->n; k++)
    least = MIN (least, rows->high[k] - rows->low[k]);
  return MAX (least, 0.01);
}

static double
share_of (const GwRows *rows,
          guint         k)
{
  return (rows->high[k] - rows->low[k]) / surest (rows);
}

static void
write_factor (GwStudySection *section,
              const GwField  *field,
              const GwRows   *rows,
              GwOrigin        origin)
{
  guint best = 0;

  for (guint k = 1; k < rows->n; k++)
    if (share_of (rows, k) < share_of (rows, best))
      best = k;
  gw_number_set_range (&section->cl_max_factor, MAX (rows->low[best], 0.5), 1.0,
                       MIN (rows->high[best], 1.5));
  section->cl_max_factor.origin = origin;
  gw_record_set_present (&section->record, field, TRUE);
}

static void
write_rows (GwStudySection *section,
            GwRows         *rows,
            GwOrigin        origin)
{
  const GwField *field = gw_record_type_field (section->record.type, "cl_max_factor");

  /* A spread of the section's own is better known, and the same for all rows. */
  if (!gw_record_has (&section->record, field))
    write_factor (section, field, rows, origin);
  else
    for (guint k = 0; k < rows->n; k++)
      {
        rows->low[k] = rows->low[0];
        rows->high[k] = rows->high[0];
      }

  for (guint k = 0; k < rows->n; k++)
    {
      GwRecord *record = gw_record_new (gw_study_section_row_type ());

      write_row (record, &rows->rows[k], share_of (rows, k), origin);
      g_ptr_array_add (section->rows, record);
    }
  mark (&section->record, "rows");
}

static void
write_stepped (GwStudySection *section,
               const GwTrip   *trip,
               const GwRows   *rows,
               const GwRows   *smooth)
{
  for (guint k = 0; k < rows->n; k++)
    {
      GwRecord *record = gw_record_new (gw_study_section_row_type ());

      set_number (record, "step_percent", trip->x * 100.0, GW_ORIGIN_GIVEN);
      set_number (record, "height_percent", trip->height * 100.0, GW_ORIGIN_GIVEN);
      set_number (record, "critical", trip->critical, GW_ORIGIN_GIVEN);
      write_row (record, &rows->rows[k], share_of (smooth, k), GW_ORIGIN_COMPUTED);
      g_ptr_array_add (section->stepped, record);
    }
  mark (&section->record, "stepped");
}

/* The outline's source stays in front. */
static void
add_source (GwStudySection *section,
            const char     *text)
{
  char *both = section->source != NULL ? g_strdup_printf ("%s %s", section->source, text)
                                       : g_strdup (text);

  g_free (section->source);
  section->source = both;
  mark (&section->record, "source");
}

static void
say_computed (GwStudySection *section,
              const char     *met)
{
  g_autofree char *text =
    met != NULL ? g_strdup_printf (_ ("Computed from the outline (panels and boundary layers), "
                                      "moved to meet what was measured: %s."),
                                   met)
                : g_strdup (_ ("Computed from the outline (panels and boundary layers)."));

  add_source (section, text);
}

/* Why no polar is sound. */
static const char *
fault_text (const GwPolars *polars)
{
  switch (polars->polar[0].fault)
    {
    case GW_POLAR_CROSSED:
      return _ ("Not computed: its sides cross.");
    case GW_POLAR_OPEN:
      return _ ("Not computed: it is open at the trailing edge.");
    case GW_POLAR_THIN:
      return _ ("Not computed: it is under 3 % thick.");
    case GW_POLAR_SHARP_NOSE:
      return _ ("Not computed: its nose is sharp, and the flow separates there.");
    case GW_POLAR_FINE:
    case GW_POLAR_NOT_FINITE:
    default:
      return _ ("Not computed: no flow about it was found.");
    }
}

/* @why: (nullable) */
static void
guess (GwStudySection  *section,
       const GwOutline *outline,
       GwSectionFamily  family,
       const char      *why)
{
  GwRows           rows;
  const char      *from = _gw_rows_guess (outline, family, &rows);
  g_autofree char *text = NULL;

  write_rows (section, &rows, GW_ORIGIN_GUESSED);
  if (why != NULL)
    add_source (section, why);
  text = g_strdup_printf (_ ("Greatest lift: guessed, that of %s. Angle and moment: thin-aerofoil "
                             "theory."),
                          from);
  add_source (section, text);
}

static void
want (GArray               *wanted,
      const GwPolarSubject *subject)
{
  if (wanted != NULL)
    g_array_append_val (wanted, *subject);
}

static void
want_stepped (const GwStudySection *section,
              const GArray         *trips,
              GArray               *wanted)
{
  for (guint i = 0; trips != NULL && i < trips->len; i++)
    {
      GwPolarSubject subject;

      if (gw_section_subject (section, &g_array_index (trips, GwTrip, i), &subject))
        want (wanted, &subject);
    }
}

/* With a step the rows keep the part by which measurements moved the smooth ones. */
static void
fill_stepped (GwStudySection *section,
              const GwTrip   *trip,
              const GwRows   *computed,
              const GwRows   *smooth,
              GArray         *wanted)
{
  g_autoptr (GwPolars) polars = NULL;
  GwPolarSubject subject;
  GwRows         rows;

  if (!gw_section_subject (section, trip, &subject))
    return;
  polars = gw_polars_find (&subject);
  if (polars == NULL)
    {
      want (wanted, &subject);
      return;
    }
  if (!_gw_rows_of_polars (polars, &rows))
    return;

  for (guint k = 0; k < rows.n; k++)
    rows.rows[k].cl_max *= smooth->rows[k].cl_max / computed->rows[k].cl_max;
  write_stepped (section, trip, &rows, smooth);
}

static void
fill_computed (GwStudySection *section,
               const GwPolars *polars,
               GwSectionFamily family,
               const GArray   *trips,
               GArray         *wanted)
{
  const GwStudySection *like = in_catalogue (section);
  GwRows                computed, rows;
  g_autofree char      *met = NULL;

  if (!_gw_rows_of_polars (polars, &computed))
    {
      GwOutline outline;

      if (gw_section_outline (section, &outline) == GW_OK)
        guess (section, &outline, family, fault_text (polars));
      return;
    }

  rows = computed;
  _gw_rows_widen (&rows, family);
  met = like != NULL ? _gw_rows_meet (&rows, like->id) : NULL;
  write_rows (section, &rows, GW_ORIGIN_COMPUTED);
  say_computed (section, met);
  for (guint i = 0; trips != NULL && i < trips->len; i++)
    fill_stepped (section, &g_array_index (trips, GwTrip, i), &computed, &rows, wanted);
}

gboolean
gw_section_is_thin_plate (const GwStudySection *section,
                          const GwOutline      *outline)
{
  GwRows rows;

  return gw_section_family (section, outline) == GW_FAMILY_PLATE &&
         _gw_rows_of_plate (outline, &rows);
}

void
gw_section_fill (GwStudySection *section,
                 const GArray   *trips,
                 GArray         *wanted)
{
  g_autoptr (GwPolars) polars = NULL;
  GwPolarSubject  subject;
  GwSectionFamily family;
  GwRows          rows;

  if (section->rows->len > 0 || !gw_section_subject (section, NULL, &subject))
    return;

  family = gw_section_family (section, &subject.outline);
  if (family == GW_FAMILY_PLATE && _gw_rows_of_plate (&subject.outline, &rows))
    {
      write_rows (section, &rows, GW_ORIGIN_CATALOGUE);
      add_source (section, _ ("Behaviour: tests of thin plates, recalled; Schmitz (1942), "
                              "Pelletier and Mueller (2000), Laitone (1997), Ananda and others "
                              "(2015)."));
      return;
    }

  polars = gw_polars_find (&subject);
  if (polars != NULL)
    fill_computed (section, polars, family, trips, wanted);
  else
    {
      want (wanted, &subject);
      want_stepped (section, trips, wanted);
      guess (section, &subject.outline, family, NULL);
    }
}
