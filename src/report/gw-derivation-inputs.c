/* gw-derivation-inputs.c - the numbers of the study that a result rests on
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "report/gw-derivation-private.h"
#include "report/gw-owner.h"
#include "study/gw-finish.h"
#include "study/gw-resolve.h"

#define MINUS "\342\210\222" /* U+2212 */

typedef struct
{
  GwDeriving *deriving;
  GwStudy    *study;   /* resolved */
  unsigned    use;     /* of the result */
  GHashTable *weights; /* key of an uncertain input to its weight; of those that move it */
  GHashTable *seen;    /* records, each once */
  GArray     *found;   /* of Found */
} Gathering;

typedef struct
{
  GwDerivationRow *row;
  double           weight;
  guint            order;
} Found;

/* Without the noughts that say nothing; ends of a band to @digits. */
static char *
plain_text (const GwUnits *units,
            GwQuantity     quantity,
            double         value,
            int            digits)
{
  const double     shown = gw_units_shown (units, quantity, value);
  const double     size = fabs (shown);
  const int        before = size >= 1.0 ? 1 + (int) floor (log10 (size)) : 1;
  g_autofree char *text = g_strdup_printf ("%.*f", CLAMP (digits - before, 1, 5), size);
  char            *end = text + strlen (text);

  while (end[-1] == '0')
    *--end = '\0';
  if (!g_ascii_isdigit (end[-1]))
    *--end = '\0';

  return g_strconcat (shown < 0.0 && !g_str_equal (text, "0") ? MINUS : "", text, NULL);
}

static char *
number_text (const GwUnits  *units,
             GwQuantity      quantity,
             const GwNumber *number)
{
  g_autofree char *value = plain_text (units, quantity, number->value, 7);
  const char      *unit = gw_units_name (units, quantity);
  const char      *gap = *unit == '\0' || g_str_equal (unit, "°") ? "" : " ";

  if (gw_number_is_uncertain (number))
    {
      g_autofree char *low = plain_text (units, quantity, number->low, 4);
      g_autofree char *high = plain_text (units, quantity, number->high, 4);

      /* Translators: a value, its 10th and 90th percentile */
      g_autofree char *band = g_strdup_printf (_ ("%s (%s to %s)"), value, low, high);

      return g_strconcat (band, gap, unit, NULL);
    }

  return g_strconcat (value, gap, unit, NULL);
}

static const char *
text_of (const GwRecord *record,
         const char     *key)
{
  const GwField *field = gw_record_type_field (record->type, key);

  return field != NULL && field->kind == GW_FIELD_TEXT ? *(char **) gw_record_at (record, field)
                                                       : NULL;
}

/* "Wing, station 2", "Wing, aileron": what has no name is called by its owner and its kind
 * and place, or its id. */
static char *
record_label (const GwRecord *record,
              const char     *owner,
              guint           index)
{
  const char *name = text_of (record, "name");
  const char *kind = g_dgettext (GETTEXT_PACKAGE, record->type->label);

  if (name != NULL)
    return g_strdup (name);
  if (gw_record_id (record) != NULL)
    return owner != NULL ? g_strdup_printf ("%s, %s", owner, gw_record_id (record))
                         : g_strdup (gw_record_id (record));

  return owner != NULL ? g_strdup_printf ("%s, %s %u", owner, kind, index + 1) : g_strdup (kind);
}

static char *
origin_text (const Gathering *gathering,
             const GwRecord  *record,
             const GwField   *field,
             const GwNumber  *number,
             const char      *path)
{
  if (gw_resolved_is_own (gathering->study, gathering->deriving->evaluation->study, path))
    return g_strdup_printf (_ ("%s, for this option"), gw_amount_origin (number->origin));
  if (!gw_record_has (record, field))
    return g_strdup (_ ("standard"));

  return g_strdup (gw_amount_origin (number->origin));
}

static char *
parent_path (const char *path)
{
  const char *end = strrchr (path, '/');

  return end != NULL ? g_strndup (path, (gsize) (end - path)) : g_strdup ("");
}

static void
take (Gathering      *gathering,
      const GwRecord *record,
      const GwField  *field,
      const char     *label,
      const char     *path,
      double          weight)
{
  const GwNumber  *number = gw_record_at (record, field);
  const char      *source = number->source;
  GwDerivationRow *row = g_new0 (GwDerivationRow, 1);
  Found            found = { row, weight, gathering->found->len };

  /* A section's own stands beside what it does by Reynolds number. */
  if (source == NULL && record->type != gw_study_section_type ())
    source = text_of (record, "source");

  /* Translators: whose field, and which: "Battery: Mass" */
  row->label = g_strdup_printf (_ ("%s: %s"), label, g_dgettext (GETTEXT_PACKAGE, field->label));
  row->value = number_text (gathering->deriving->units, field->quantity, number);
  row->origin = origin_text (gathering, record, field, number, path);
  row->source = g_strdup (source);
  row->path = _gw_derivation_path (gathering->deriving, parent_path (path));
  row->field = g_strdup (path);
  g_array_append_val (gathering->found, found);
}

/* An uncertain number says by its effect whether it moves the result; a certain one counts by
 * the use of its field. While bands are being computed all count by their use. */
static void
look_at (Gathering      *gathering,
         const GwRecord *record,
         const GwField  *field,
         const char     *label,
         const char     *path,
         gboolean        is_used)
{
  const GwNumber  *number = gw_record_at (record, field);
  const GwStudy   *common = gathering->deriving->evaluation->study;
  g_autofree char *key = gw_resolved_key (gathering->study, common, path);
  const double    *weight = g_hash_table_lookup (gathering->weights, key);

  if (weight != NULL)
    take (gathering, record, field, label, path, *weight);
  else if (!isnan (number->value) && is_used &&
           !(gw_number_is_uncertain (number) && gathering->deriving->outcome->effects->len > 0) &&
           (gw_record_has (record, field) || strcmp (record->type->name, "day") == 0 ||
            strcmp (record->type->name, "targets") == 0))
    take (gathering, record, field, label, path, 0.0);
}

/* @mask: uses that count for this record */
static void
look_through (Gathering      *gathering,
              const GwRecord *record,
              const char     *path,
              const char     *label,
              unsigned        mask)
{
  if (!g_hash_table_add (gathering->seen, (gpointer) record))
    return;

  for (guint i = 0; i < record->type->n_fields; i++)
    {
      const GwField   *field = &record->type->fields[i];
      g_autofree char *here = g_strdup_printf ("%s/%s", path, field->key);

      if (field->kind == GW_FIELD_NUMBER)
        look_at (gathering, record, field, label, here,
                 (_gw_derivation_use_of (record, field) & gathering->use & mask) != 0);
    }
}

static void
look_through_list (Gathering       *gathering,
                   const GPtrArray *list,
                   const char      *path,
                   const char      *key,
                   const char      *owner,
                   unsigned         mask)
{
  for (guint i = 0; i < list->len; i++)
    {
      const GwRecord  *record = g_ptr_array_index (list, i);
      g_autofree char *here = gw_record_step (path, key, record, i);
      g_autofree char *label = record_label (record, owner, i);

      look_through (gathering, record, here, label, mask);
    }
}

static void
look_up (Gathering       *gathering,
         const GPtrArray *list,
         const char      *key,
         const char      *id,
         unsigned         mask)
{
  const GwRecord  *record = id != NULL ? gw_list_find (list, id) : NULL;
  g_autofree char *path = NULL, *label = NULL;

  if (record == NULL)
    return;

  path = gw_record_step ("", key, record, 0);
  label = record_label (record, NULL, 0);
  look_through (gathering, record, path, label, mask);
}

static void
look_up_material (Gathering  *gathering,
                  const char *id,
                  unsigned    mask)
{
  look_up (gathering, gathering->study->materials, "materials", id, mask);
}

/* The air meets only what lies outside. */
static void
look_up_layer (Gathering          *gathering,
               const GwStudyBuild *build,
               const char         *material,
               unsigned            mask)
{
  if (g_strcmp0 (material, gw_finish_material (build)) != 0)
    mask &= ~(unsigned) GW_USE_SECTIONS;
  look_up_material (gathering, material, mask);
}

static void
look_through_build (Gathering          *gathering,
                    const GwStudyBuild *build,
                    const char         *path,
                    const char         *surface,
                    unsigned            mask)
{
  const GwRecord  *part = &build->printed_shell->record;
  const char      *key = "printed_shell";
  g_autofree char *here = NULL, *label = NULL;

  look_up_layer (gathering, build, build->finish, mask);
  switch ((GwConstruction) build->construction)
    {
    case GW_CONSTRUCTION_FOLDED_SHEET:
      part = &build->folded_sheet->record;
      key = "folded_sheet";
      look_up_layer (gathering, build, build->folded_sheet->material, mask);
      break;
    case GW_CONSTRUCTION_HOT_WIRED_CORE:
      part = &build->hot_wired_core->record;
      key = "hot_wired_core";
      look_up_layer (gathering, build, build->hot_wired_core->material, mask);
      look_up_layer (gathering, build, build->hot_wired_core->skin, mask);
      break;
    case GW_CONSTRUCTION_PRINTED_SHELL:
    case GW_N_CONSTRUCTIONS:
    default:
      look_up_layer (gathering, build, build->printed_shell->material, mask);
    }

  /* Translators: name of a surface: "Wing, build" */
  label = g_strdup_printf (_ ("%s, build"), surface);
  here = g_strdup_printf ("%s/%s", path, key);
  look_through (gathering, &build->record, path, label, mask);
  look_through (gathering, part, here, label, mask);
}

/* The build of a panel, as assembling finds it: the option's own come first. */
static void
look_up_build (Gathering            *gathering,
               const GwStudySurface *surface,
               guint                 panel,
               const char           *name,
               unsigned              mask)
{
  const GwStudyOption *option = g_ptr_array_index (gathering->study->options, 0);
  const GPtrArray     *lists[] = { option->builds, gathering->study->builds };

  for (guint k = 0; k < G_N_ELEMENTS (lists); k++)
    for (guint i = 0; i < lists[k]->len; i++)
      {
        const GwStudyBuild *build = g_ptr_array_index (lists[k], i);
        g_autofree char    *path = NULL;

        if (g_strcmp0 (build->surface, surface->id) != 0 || build->first_panel.value > panel + 1 ||
            build->last_panel.value < panel + 1)
          continue;
        path = k == 0 ? g_strdup_printf ("options/%s/builds/%u", option->id, i + 1)
                      : g_strdup_printf ("builds/%u", i + 1);
        look_through_build (gathering, build, path, name, mask);
        return;
      }
}

static void
look_through_spars (Gathering            *gathering,
                    const GwStudySurface *surface,
                    const char           *name,
                    unsigned              mask)
{
  const GwStudyOption *option = g_ptr_array_index (gathering->study->options, 0);
  const GPtrArray     *lists[] = { option->spars, gathering->study->spars };

  for (guint k = 0; k < G_N_ELEMENTS (lists); k++)
    for (guint i = 0; i < lists[k]->len; i++)
      {
        const GwStudySpar *spar = g_ptr_array_index (lists[k], i);
        g_autofree char   *path = NULL, *label = NULL;

        if (g_strcmp0 (spar->surface, surface->id) != 0)
          continue;
        path = k == 0 ? g_strdup_printf ("options/%s/spars/%s", option->id, spar->id)
                      : g_strdup_printf ("spars/%s", spar->id);
        label = record_label (&spar->record, name, i);
        look_through (gathering, &spar->record, path, label, mask);
        look_up_material (gathering, spar->material, mask & ~(unsigned) GW_USE_SECTIONS);
        if (spar->web_mm.value > 0.0)
          look_up_material (gathering, spar->web_material, mask & ~(unsigned) GW_USE_SECTIONS);
      }
}

/* What a wing section does by Reynolds number is one row, not two dozen. */
static void
take_section (Gathering            *gathering,
              const GwStudySection *section)
{
  const GwStudySectionRow *first, *last;
  g_autofree char         *path = g_strdup_printf ("sections/%s", section->id);
  g_autofree char         *name = record_label (&section->record, NULL, 0);
  GwDerivationRow         *row;
  Found                    found;

  if (section->rows->len == 0 || !g_hash_table_add (gathering->seen, section->rows))
    return;

  first = g_ptr_array_index (section->rows, 0);
  last = g_ptr_array_index (section->rows, section->rows->len - 1);
  row = g_new0 (GwDerivationRow, 1);
  row->label = g_strdup_printf (_ ("%s: greatest lift by Reynolds number"), name);
  row->value = g_strdup_printf (_ ("%.4g at %.0f to %.4g at %.0f"), first->cl_max.value,
                                first->re.value, last->cl_max.value, last->re.value);
  row->origin = g_strdup (gw_amount_origin (first->cl_max.origin));
  row->source = g_strdup (section->source);
  row->path = _gw_derivation_path (gathering->deriving, g_steal_pointer (&path));
  found = (Found){ row, 0.0, gathering->found->len };
  g_array_append_val (gathering->found, found);
}

static void
look_up_section (Gathering  *gathering,
                 const char *id,
                 unsigned    mask)
{
  const GwRecord *record = id != NULL ? gw_list_find (gathering->study->sections, id) : NULL;

  if (record == NULL)
    return;
  if (gathering->use & mask & GW_USE_SECTIONS)
    take_section (gathering, (const GwStudySection *) record);
  look_up (gathering, gathering->study->sections, "sections", id, mask);
}

/* Only some of them trim. */
static void
look_through_controls (Gathering            *gathering,
                       const GwStudySurface *surface,
                       const char           *path,
                       const char           *name,
                       unsigned              mask)
{
  for (guint i = 0; i < surface->controls->len; i++)
    {
      const GwStudyControl *control = g_ptr_array_index (surface->controls, i);
      const GwControlKind   kind = (GwControlKind) control->kind;
      const gboolean        does_trim = kind == GW_CONTROL_ELEVATOR || kind == GW_CONTROL_ELEVON ||
                                 kind == GW_CONTROL_RUDDERVATOR;
      g_autofree char *here = gw_record_step (path, "controls", &control->record, i);
      g_autofree char *label = record_label (&control->record, name, i);

      look_through (gathering, &control->record, here, label,
                    does_trim ? mask : mask & ~(unsigned) GW_USE_THROWS);
    }
}

/* Of a surface of stated mass the build says only how that mass is spread. */
static unsigned
surface_mask (const Gathering      *gathering,
              const GwStudySurface *surface)
{
  const gboolean is_wing = surface->role == GW_ROLE_WING || surface->role == GW_ROLE_SECOND_WING;
  const unsigned builds = GW_USE_BUILDS | GW_USE_MASSES;
  unsigned       mask = GW_USE_SECTIONS | GW_USE_THROWS | builds;

  mask |= is_wing ? GW_USE_WINGS : GW_USE_TAILS;
  if (surface->role == GW_ROLE_FIN)
    mask &= ~(unsigned) (GW_USE_SECTIONS | GW_USE_THROWS);
  if (!is_wing && gathering->deriving->id == GW_RESULT_WING_MASS)
    mask &= ~builds;
  return mask;
}

static void
look_through_surfaces (Gathering *gathering)
{
  const GPtrArray *list = gathering->study->surfaces;

  for (guint i = 0; i < list->len; i++)
    {
      const GwStudySurface *surface = g_ptr_array_index (list, i);
      const unsigned        mask = surface_mask (gathering, surface);
      g_autofree char      *path = g_strdup_printf ("surfaces/%s", surface->id);
      g_autofree char      *name = record_label (&surface->record, NULL, i);

      look_through (gathering, &surface->record, path, name, mask);
      look_through_list (gathering, surface->stations, path, "stations", name, mask);
      look_through_controls (gathering, surface, path, name, mask);
      for (guint k = 0; k < surface->stations->len; k++)
        look_up_section (gathering,
                         ((GwStudyStation *) g_ptr_array_index (surface->stations, k))->section,
                         mask);
      for (guint k = 0; k + 1 < surface->stations->len; k++)
        look_up_build (gathering, surface, k, name, mask);
      look_through_spars (gathering, surface, name, mask);
    }
}

static void
look_through_bodies (Gathering *gathering)
{
  const GPtrArray *list = gathering->study->bodies;

  for (guint i = 0; i < list->len; i++)
    {
      const GwStudyBody *body = g_ptr_array_index (list, i);
      g_autofree char   *path = g_strdup_printf ("bodies/%s", body->id);
      g_autofree char   *name = record_label (&body->record, NULL, i);
      const gboolean     is_known = !isnan (body->mass_g.value);
      const unsigned     skin = is_known ? 0 : GW_USE_BUILDS;

      look_through (gathering, &body->record, path, name, GW_USE_MASSES | GW_USE_PLACES | skin);
      look_through_list (gathering, body->stations, path, "stations", name, GW_USE_BODIES);
      look_up_material (gathering, body->material, skin);
    }
}

static int
compare_found (gconstpointer a,
               gconstpointer b)
{
  const Found *one = a, *two = b;

  if (one->weight != two->weight)
    return one->weight > two->weight ? -1 : 1;
  return one->order < two->order ? -1 : one->order > two->order;
}

static void
weigh_effects (Gathering *gathering)
{
  const GPtrArray *effects = gathering->deriving->outcome->effects;

  for (guint i = 0; i < effects->len; i++)
    {
      const GwEffect *effect = g_ptr_array_index (effects, i);
      const double    weight = _gw_effect_weight (effect, gathering->deriving->id);

      if (weight > 0.0)
        g_hash_table_insert (gathering->weights, effect->key,
                             g_memdup2 (&weight, sizeof weight));
    }
}

void
_gw_derive_inputs (GwDeriving *deriving)
{
  GwStudy  *study = deriving->outcome->assembly->study;
  Gathering gathering = {
    .deriving = deriving, .study = study, .use = _gw_derivation_use_of_result (deriving)
  };
  const GwGroup     plain[] = { GW_GROUP_STRUT, GW_GROUP_LEG, GW_GROUP_POWER, GW_GROUP_ITEM };
  const char *const keys[] = { "struts", "legs", "powers", "equipment" };

  gathering.weights = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  gathering.seen = g_hash_table_new (NULL, NULL);
  gathering.found = g_array_new (FALSE, FALSE, sizeof (Found));
  weigh_effects (&gathering);

  look_through (&gathering, &study->targets->record, "targets", _ ("Wanted"), ~0u);
  look_through (&gathering, &study->day->record, "day", _ ("Day and field"), ~0u);
  look_through_surfaces (&gathering);
  look_through_bodies (&gathering);
  for (guint i = 0; i < G_N_ELEMENTS (plain); i++)
    look_through_list (&gathering, gw_group_list (study, plain[i]), "", keys[i], NULL, ~0u);
  look_through_list (&gathering, study->methods, "", "methods", NULL, ~0u);

  g_array_sort (gathering.found, compare_found);
  for (guint i = 0; i < gathering.found->len; i++)
    g_ptr_array_add (deriving->rows, g_array_index (gathering.found, Found, i).row);
  g_array_unref (gathering.found);
  g_hash_table_unref (gathering.seen);
  g_hash_table_unref (gathering.weights);
}
