/* gw-form-candidates.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-candidates.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-chooser.h"
#include "desk/gw-form-value.h"
#include "study/gw-catalogue.h"
#include "study/gw-edit.h"
#include "study/gw-fresh.h"
#include "study/gw-section-outline.h"

#define BETWEEN " \302\267 " /* U+00B7 */

typedef struct
{
  const char *key;
  const GwRecordType *(*type) (void);
  int kinds[4]; /* ended by -1 */
} Fit;

/* What is usual there, first. Everything else can be had as well, but nothing else can be
 * printed. */
static const Fit fits[] = {
  { "material",
    gw_study_printed_shell_type,
    { GW_MATERIAL_PLASTIC, GW_MATERIAL_FOAMING_PLASTIC, GW_MATERIAL_OTHER, -1 } },
  { "material", gw_study_folded_sheet_type, { GW_MATERIAL_SHEET, -1 } },
  { "material", gw_study_hot_wired_core_type, { GW_MATERIAL_FOAM, GW_MATERIAL_SHEET, -1 } },
  { "skin", gw_study_hot_wired_core_type, { GW_MATERIAL_SKIN, -1 } },
  { "finish", gw_study_build_type, { GW_MATERIAL_SKIN, -1 } },
  { "material", gw_study_spar_type, { GW_MATERIAL_TUBE, GW_MATERIAL_WOOD, -1 } },
  { "web_material", gw_study_spar_type, { GW_MATERIAL_WOOD, GW_MATERIAL_SHEET, -1 } },
  { "material", gw_study_body_type, { GW_MATERIAL_SHEET, GW_MATERIAL_WOOD, -1 } },
};

static const int *
fitting_kinds (const GwRecordType *type,
               const GwField      *field)
{
  static const int none[] = { -1 };

  for (guint i = 0; i < G_N_ELEMENTS (fits); i++)
    if (fits[i].type () == type && g_str_equal (fits[i].key, field->key))
      return fits[i].kinds;

  return none;
}

static char *
material_detail (const GwStudyMaterial *material,
                 const GwUnits         *units)
{
  if (isfinite (material->areal_g_m2.value))
    return gw_form_measure_text (material->areal_g_m2.value, GW_G_M2, units);
  if (isfinite (material->density_kg_m3.value))
    return gw_form_measure_text (material->density_kg_m3.value, GW_KG_M3, units);
  if (isfinite (material->linear_g_m.value))
    return gw_form_measure_text (material->linear_g_m.value, GW_G_M, units);

  return NULL;
}

static const char *
choice_label (const GwRecord *record,
              const char     *key)
{
  const GwField *field = gw_record_type_field (record->type, key);

  return field != NULL ? g_dgettext (GETTEXT_PACKAGE,
                                     field->choices[*(int *) gw_record_at (record, field)].label)
                       : NULL;
}

static void
add_record (GPtrArray      *items,
            const GwRecord *record,
            const GwUnits  *units,
            gboolean        is_own,
            const char     *group)
{
  g_autofree char *name = gw_edit_record_name (record);
  g_autofree char *measure = record->type == gw_study_material_type ()
                               ? material_detail ((const GwStudyMaterial *) record, units)
                               : NULL;
  g_autofree char *detail = measure != NULL && is_own
                              ? g_strconcat (measure, BETWEEN, _ ("own"), NULL)
                              : g_strdup (is_own ? _ ("own") : measure);

  g_ptr_array_add (items, gw_chooser_item_new (gw_record_id (record), name, detail, group));
}

/* Those of one kind: the study's own, then the catalogue's that it does not replace. */
static void
add_kind (GPtrArray       *items,
          const GPtrArray *own,
          const GPtrArray *shelf,
          const char      *key,
          int              kind,
          const GwUnits   *units)
{
  for (guint pass = 0; pass < 2; pass++)
    {
      const GPtrArray *list = pass == 0 ? own : shelf;

      for (guint i = 0; i < list->len; i++)
        {
          const GwRecord *record = g_ptr_array_index (list, i);
          const GwField  *field = gw_record_type_field (record->type, key);

          if (*(int *) gw_record_at (record, field) == kind &&
              (pass == 0 || gw_list_find (own, gw_record_id (record)) == NULL))
            add_record (items, record, units, pass == 0, choice_label (record, key));
        }
    }
}

/* As they are looked for: what lifts, what steers, what is made of sheet. */
static const GwSectionKind section_kinds[] = {
  GW_SECTION_CAMBERED,
  GW_SECTION_FLAT_BOTTOMED,
  GW_SECTION_REFLEXED,
  GW_SECTION_SYMMETRIC,
  GW_SECTION_FOLDED,
  GW_SECTION_PLATE,
};

static GwChooserItem *
section_item (const GwStudySection *section,
              const GwOutline      *outline,
              GwSectionKind         kind,
              gboolean              is_own)
{
  g_autofree char *name = gw_edit_record_name (&section->record);
  g_autofree char *measures = gw_section_brief_text (outline);
  g_autofree char *detail = is_own ? g_strconcat (measures, BETWEEN, _ ("own"), NULL)
                                   : g_strdup (measures);
  GwChooserItem   *item =
    gw_chooser_item_new (section->id, name, detail, gw_section_kind_name (kind));

  gw_chooser_item_set_outline (item, outline);
  return item;
}

/* The study's own before the catalogue's that it does not replace. */
static void
add_sections (GPtrArray       *items,
              const GPtrArray *own,
              const GPtrArray *shelf)
{
  const GPtrArray *lists[] = { own, shelf };

  for (guint k = 0; k < G_N_ELEMENTS (section_kinds); k++)
    for (guint l = 0; l < G_N_ELEMENTS (lists); l++)
      for (guint i = 0; i < lists[l]->len; i++)
        {
          const GwStudySection *section = g_ptr_array_index (lists[l], i);
          GwOutline             outline;

          if ((l == 0 || gw_list_find (own, section->id) == NULL) &&
              gw_section_outline (section, &outline) == GW_OK &&
              gw_section_kind (section, &outline) == section_kinds[k])
            g_ptr_array_add (items, section_item (section, &outline, section_kinds[k], l == 0));
        }
}

static gboolean
holds (const int *kinds,
       int        kind)
{
  for (; *kinds >= 0; kinds++)
    if (*kinds == kind)
      return TRUE;

  return FALSE;
}

static void
add_by_kind (GPtrArray       *items,
             const GPtrArray *own,
             const GPtrArray *shelf,
             const char      *key,
             const int       *first,
             const GwUnits   *units)
{
  const GwRecord *any = g_ptr_array_index (shelf, 0);
  const GwField  *field = gw_record_type_field (any->type, key);

  for (guint i = 0; first[i] >= 0; i++)
    add_kind (items, own, shelf, key, first[i], units);
  for (int kind = 0; field->choices[kind].key != NULL; kind++)
    if (!holds (first, kind) && !holds (first, GW_MATERIAL_OTHER))
      add_kind (items, own, shelf, key, kind, units);
}

/* Things of the study itself. */
static void
add_own (GPtrArray       *items,
         const GPtrArray *own)
{
  for (guint i = 0; i < own->len; i++)
    {
      const GwRecord  *record = g_ptr_array_index (own, i);
      g_autofree char *name = gw_edit_record_name (record);
      const char      *kind = choice_label (record, "kind");

      g_ptr_array_add (items,
                       gw_chooser_item_new (gw_record_id (record), name,
                                            kind != NULL ? kind : choice_label (record, "role"),
                                            NULL));
    }
}

static void
add_choices (GPtrArray     *items,
             const GwField *field)
{
  for (guint i = 0; field->choices[i].key != NULL; i++)
    g_ptr_array_add (items,
                     gw_chooser_item_new (field->choices[i].key,
                                          g_dgettext (GETTEXT_PACKAGE, field->choices[i].label),
                                          NULL, NULL));
}

/* "174 g · 105 × 34 × 24 mm"; of a spar the material tells more, and that is in its name. */
static char *
size_detail (const GwRecord *size,
             const GwUnits  *units)
{
  const GwStudyUsualItem *item = (const GwStudyUsualItem *) size;
  g_autofree char        *mass = NULL, *length = NULL, *width = NULL, *height = NULL;

  if (size->type == gw_study_propeller_type ())
    return gw_form_measure_text (((const GwStudyPropeller *) size)->mass_g.value, GW_G, units);
  if (size->type != gw_study_usual_item_type ())
    return NULL;

  mass = gw_form_measure_text (item->mass_g.value, GW_G, units);
  length = gw_form_number_text (item->length_mm.value, GW_MM, units);
  width = gw_form_number_text (item->width_mm.value, GW_MM, units);
  height = gw_form_measure_text (item->height_mm.value, GW_MM, units);
  return g_strdup_printf ("%s" BETWEEN "%s × %s × %s", mass, length, width, height);
}

/* Of one kind alone they need no heading. */
static void
add_sizes (GPtrArray       *items,
           const GPtrArray *sizes,
           const GwUnits   *units)
{
  for (guint i = 0; i < sizes->len; i++)
    {
      const GwRecord  *size = g_ptr_array_index (sizes, i);
      g_autofree char *name = gw_edit_record_name (size);
      g_autofree char *detail = size_detail (size, units);
      const char      *group = size->type == gw_study_usual_item_type () ? NULL
                               : size->type == gw_study_propeller_type ()
                                 ? choice_label (size, "kind")
                                 : choice_label (size, "shape");

      g_ptr_array_add (items, gw_chooser_item_new (gw_record_id (size), name, detail, group));
    }
}

gboolean
gw_form_has_candidates (const GwRecord *record,
                        const GwField  *field)
{
  g_autoptr (GPtrArray) sizes = gw_fresh_sizes (record, field);

  return gw_record_type_field (gw_study_root_type (), field->collection) != NULL || sizes->len > 0;
}

GPtrArray *
gw_form_candidates (const GwStudy  *study,
                    const GwRecord *record,
                    const GwField  *field,
                    const GwUnits  *units,
                    gboolean        can_clear)
{
  GPtrArray       *items = g_ptr_array_new ();
  const GPtrArray *shelf, *own;
  g_autoptr (GPtrArray) sizes = gw_fresh_sizes (record, field);

  if (field->kind == GW_FIELD_CHOICE)
    {
      add_choices (items, field);
      return items;
    }

  shelf = gw_catalogue_list (field->collection);
  own = gw_study_list (study, field->collection);
  if (can_clear)
    g_ptr_array_add (items, gw_chooser_item_new ("", _ ("none"), NULL, NULL));
  if (own == NULL)
    add_sizes (items, sizes, units);
  else if (shelf == NULL)
    add_own (items, own);
  else if (g_str_equal (field->collection, "sections"))
    add_sections (items, own, shelf);
  else
    add_by_kind (items, own, shelf, "kind", fitting_kinds (record->type, field), units);

  return items;
}
