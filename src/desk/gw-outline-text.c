/* gw-outline-text.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-outline-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "report/gw-sheet.h"
#include "study/gw-edit.h"
#include "study/gw-result.h"

static char *
value_text (const GwUnits *units,
            GwQuantity     quantity,
            double         value,
            int            decimals)
{
  const int        shown = gw_units_decimals (units, quantity, decimals);
  g_autofree char *digits = gw_entry_text (value, units->of[quantity], shown);

  return g_strdup_printf ("%s %s", digits, gw_units_name (units, quantity));
}

char *
gw_outline_result_text (const GwResults *results,
                        GwResultId       id,
                        const GwUnits   *units)
{
  g_autofree char *digits = gw_value_text (id, results->value[id], units);

  return g_strdup_printf ("%s %s", digits, gw_result_unit (id, units));
}

static const char *
choice_of (const GwRecord *record,
           const char     *key)
{
  const GwField *field = gw_record_type_field (record->type, key);

  return g_dgettext (GETTEXT_PACKAGE,
                     field->choices[*(int *) gw_record_at ((GwRecord *) record, field)].label);
}

static char *
surface_name (const GwStudy *study,
              const char    *id)
{
  const GwRecord *surface = gw_list_find (study->surfaces, id);

  return surface != NULL ? gw_outline_name (study, surface) : g_strdup (id);
}

char *
gw_outline_name (const GwStudy  *study,
                 const GwRecord *record)
{
  const GwField   *field = gw_record_type_field (record->type, "name");
  char           **at = field != NULL ? gw_record_at ((GwRecord *) record, field) : NULL;
  g_autofree char *surface = NULL;

  if (at != NULL && *at != NULL && **at != '\0')
    return g_strdup (*at);

  if (record->type == gw_study_spar_type ())
    {
      surface = surface_name (study, ((const GwStudySpar *) record)->surface);
      return g_strdup_printf (_ ("Spar in %s"), surface);
    }
  if (record->type == gw_study_build_type ())
    {
      surface = surface_name (study, ((const GwStudyBuild *) record)->surface);
      return g_strdup_printf (_ ("Build of %s"), surface);
    }

  return g_strdup (gw_record_id (record) != NULL
                     ? gw_record_id (record)
                     : g_dgettext (GETTEXT_PACKAGE, record->type->label));
}

static char *
surface_detail (const GwOutcome *outcome,
                guint            i,
                const GwUnits   *units)
{
  const GwSurfaceShape *shape = &outcome->results.geometry.shapes[i];
  g_autofree char      *span = value_text (units, GW_MM, shape->span * 1e3, 0);
  g_autofree char      *area = value_text (units, GW_M2, shape->projected_area, 3);

  /* Translators: span, then area: "1800 mm, 0.43 m²" */
  return g_strdup_printf (_ ("%s, %s"), span, area);
}

static char *
mass_detail (const GwOutcome *outcome,
             GwGroup          group,
             guint            i,
             const GwUnits   *units)
{
  return value_text (units, GW_G, gw_pieces_mass (&outcome->results.pieces, group, (int) i) * 1e3,
                     0);
}

static char *
item_detail (const GwStudyItem *item,
             const GwUnits     *units)
{
  g_autofree char *mass = value_text (units, GW_G, item->mass_g.value, 1);
  g_autofree char *place = value_text (units, GW_MM, item->x_mm.value, 0);

  /* Translators: mass, then place: "178 g, 155 mm aft" */
  return item->mirrored ? g_strdup_printf (_ ("two of %s, %s aft"), mass, place)
                        : g_strdup_printf (_ ("%s, %s aft"), mass, place);
}

static char *
spar_detail (const GwStudySpar *spar,
             const GwUnits     *units)
{
  g_autofree char *width = value_text (units, GW_MM, spar->width_mm.value, 1);

  return g_strdup_printf (_ ("%s, %s"), choice_of (&spar->record, "shape"), width);
}

static char *
day_detail (const GwStudyDay *day,
            const GwUnits    *units)
{
  g_autofree char *temperature = value_text (units, GW_C, day->temperature_c.value, 0);
  g_autofree char *elevation = value_text (units, GW_M, day->elevation_m.value, 0);

  /* Translators: temperature, then elevation of the field: "31 °C, at 120 m" */
  return g_strdup_printf (_ ("%s, at %s"), temperature, elevation);
}

static char *
targets_detail (const GwStudyTargets *targets,
                const GwUnits        *units)
{
  const double     mass = targets->mass_g.value, speed = targets->stall_speed_m_s.value;
  g_autofree char *heaviest = isnan (mass) ? NULL : value_text (units, GW_G, mass, 0);
  g_autofree char *fastest = isnan (speed) ? NULL : value_text (units, GW_M_S, speed, 1);

  /* Translators: wanted mass, then stall speed: "1500 g, stall at 7 m/s" */
  if (heaviest != NULL && fastest != NULL)
    return g_strdup_printf (_ ("%s, stall at %s"), heaviest, fastest);
  if (fastest != NULL)
    return g_strdup_printf (_ ("stall at %s"), fastest);

  return g_strdup (heaviest != NULL ? heaviest : "");
}

/* Place of @record in its list, as the engine counts. */
static guint
index_of (const GPtrArray *list,
          const GwRecord  *record)
{
  guint i = 0;

  g_ptr_array_find ((GPtrArray *) list, record, &i);
  return i;
}

char *
gw_outline_detail (const GwOutcome *outcome,
                   const char      *path,
                   const GwUnits   *units)
{
  const GwStudy      *study = outcome->assembly->study;
  const GwRecord     *record = gw_edit_record (study, path);
  const GwRecordType *type = record != NULL ? record->type : NULL;

  if (type == gw_study_surface_type ())
    return surface_detail (outcome, index_of (study->surfaces, record), units);
  if (type == gw_study_body_type ())
    return mass_detail (outcome, GW_GROUP_BODY, index_of (study->bodies, record), units);
  if (type == gw_study_strut_type ())
    return mass_detail (outcome, GW_GROUP_STRUT, index_of (study->struts, record), units);
  if (type == gw_study_leg_type ())
    return mass_detail (outcome, GW_GROUP_LEG, index_of (study->legs, record), units);
  if (type == gw_study_power_type ())
    return mass_detail (outcome, GW_GROUP_POWER, index_of (study->powers, record), units);
  if (type == gw_study_item_type ())
    return item_detail ((const GwStudyItem *) record, units);
  if (type == gw_study_spar_type ())
    return spar_detail ((const GwStudySpar *) record, units);
  if (type == gw_study_build_type ())
    return g_strdup (choice_of (record, "construction"));
  if (type == gw_study_material_type ())
    return g_strdup (choice_of (record, "kind"));
  if (type == gw_study_section_type ())
    return g_strdup (choice_of (record, "shape"));
  if (type == gw_study_day_type ())
    return day_detail ((const GwStudyDay *) record, units);
  if (type == gw_study_targets_type ())
    return targets_detail ((const GwStudyTargets *) record, units);

  return g_strdup ("");
}
