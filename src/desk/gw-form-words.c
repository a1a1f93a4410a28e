/* gw-form-words.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "desk/gw-form-value.h"
#include "report/gw-amount.h"
#include "study/gw-catalogue.h"
#include "study/gw-edit.h"

#define BETWEEN " \302\267 " /* U+00B7 */

const char *
gw_form_label (const GwField *field)
{
  return g_dgettext (GETTEXT_PACKAGE, field->label);
}

GwRecord *
gw_form_find_referred (const GwStudy *study,
                       const char    *collection,
                       const char    *id)
{
  const GPtrArray *own = gw_study_list (study, collection);
  const GPtrArray *shelf = gw_catalogue_list (collection);
  GwRecord        *found = NULL;

  if (id == NULL)
    return NULL;
  if (own != NULL)
    found = gw_list_find (own, id);
  if (found == NULL && shelf != NULL)
    found = gw_list_find (shelf, id);

  return found;
}

static char *
referred_text (const GwStudy *study,
               const GwField *field,
               const char    *id)
{
  GwRecord *found = gw_form_find_referred (study, field->collection, id);

  return found != NULL ? gw_edit_record_name (found) : g_strdup (id != NULL ? id : _ ("none"));
}

static char *
number_text (const GwNumber *number,
             const GwField  *field,
             const GwUnits  *units)
{
  return isnan (number->value) ? g_strdup (_ ("left out"))
                               : gw_form_measure_text (number->value, field->quantity, units);
}

char *
gw_form_field_text (const GwStudy  *study,
                    const GwRecord *record,
                    const GwField  *field,
                    const GwUnits  *units)
{
  gpointer at = gw_record_at (record, field);

  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      return number_text (at, field, units);
    case GW_FIELD_CHOICE:
      return g_strdup (g_dgettext (GETTEXT_PACKAGE, field->choices[*(int *) at].label));
    case GW_FIELD_FLAG:
      return g_strdup (*(gboolean *) at ? _ ("yes") : _ ("no"));
    case GW_FIELD_REF:
      return referred_text (study, field, *(char **) at);
    case GW_FIELD_LIST:
      return g_strdup_printf ("%u", (*(GPtrArray **) at)->len);
    case GW_FIELD_TEXT:
    case GW_FIELD_ID:
      return g_strdup (*(char **) at != NULL ? *(char **) at : "");
    case GW_FIELD_PART:
    case GW_FIELD_CHANGES:
    default:
      return g_strdup (gw_form_label (field));
    }
}

/* "178 g (±3 %, weighed)" */
static char *
whole_text (const GwRecord *record,
            const GwField  *field,
            const GwUnits  *units)
{
  const GwNumber  *number = gw_record_at (record, field);
  g_autofree char *value = number_text (number, field, units);
  g_autofree char *sureness = gw_form_sureness_text (number, field, units);

  return g_strdup_printf ("%s (%s, %s)", value, sureness, gw_amount_origin (number->origin));
}

char *
gw_form_compare (const GwStudy  *study,
                 const GwRecord *own,
                 const GwRecord *shared,
                 const GwField  *field,
                 const GwUnits  *units,
                 char          **common)
{
  g_autofree char *text = gw_form_field_text (study, own, field, units);
  g_autofree char *other = gw_form_field_text (study, shared, field, units);
  const gboolean   is_same = gw_record_value_equal (own, shared, field);

  if (!is_same && field->kind == GW_FIELD_NUMBER && g_str_equal (text, other))
    {
      *common = whole_text (shared, field, units);
      return whole_text (own, field, units);
    }

  *common = g_strdup (*other != '\0' ? other : _ ("none"));
  return is_same ? NULL : g_strdup (*text != '\0' ? text : _ ("none"));
}

static gboolean
has_name (const GwRecord *record)
{
  const GwField *field = gw_record_type_field (record->type, "name");
  const char    *name = field != NULL ? *(char **) gw_record_at (record, field) : NULL;

  return name != NULL && *name != '\0';
}

char *
gw_form_record_title (const GwStudy *study,
                      const char    *path)
{
  const GwRecord  *record = gw_edit_record (study, path);
  g_autofree char *name = record != NULL ? gw_edit_record_name (record) : g_strdup (path);
  const char      *slash = strrchr (path, '/'), *own;

  /* Where it has no name, the list counts it or an id tells it. */
  if (record == NULL || has_name (record) || slash == NULL)
    return g_steal_pointer (&name);

  /* An id made of the name already, "equipment-2", does not say it twice. */
  own = slash + 1;
  if (g_ascii_strncasecmp (own, name, strlen (name)) == 0)
    own += strlen (name);
  own += strspn (own, "-");
  return *own != '\0' ? g_strdup_printf ("%s %s", name, own) : g_steal_pointer (&name);
}

/* Up to and without the last key that holds a list: "surfaces/wing" of ".../stations/2". */
char *
gw_form_owner (const char *path)
{
  g_autofree char *owner = g_strdup (path);

  for (guint i = 0; i < 2; i++)
    {
      char *slash = strrchr (owner, '/');

      if (slash == NULL)
        return NULL;
      *slash = '\0';
    }

  return g_steal_pointer (&owner);
}

char *
gw_form_record_place (const GwStudy *study,
                      const char    *path)
{
  g_autofree char *title = gw_form_record_title (study, path);
  g_autofree char *owner = gw_form_owner (path);
  g_autofree char *before = owner != NULL ? gw_form_record_title (study, owner) : NULL;

  return before != NULL ? g_strconcat (before, BETWEEN, title, NULL) : g_steal_pointer (&title);
}

static char *
number_of (const GwRecord *record,
           const char     *key,
           const GwUnits  *units)
{
  const GwField  *field = gw_record_type_field (record->type, key);
  const GwNumber *number = gw_record_at (record, field);

  return gw_form_number_text (number->value, field->quantity, units);
}

static double
value_of (const GwRecord *record,
          const char     *key)
{
  const GwNumber *number = gw_record_at (record, gw_record_type_field (record->type, key));

  return number->value;
}

static char *
choice_of (const GwRecord *record,
           const char     *key)
{
  const GwField *field = gw_record_type_field (record->type, key);

  return g_strdup (
    g_dgettext (GETTEXT_PACKAGE, field->choices[*(int *) gw_record_at (record, field)].label));
}

static char *
station_summary (const GwRecord *record,
                 const GwUnits  *units)
{
  g_autofree char *chord = number_of (record, "chord_mm", units);
  const gboolean   is_out = value_of (record, "y_mm") != 0.0;
  const gboolean   is_up = !is_out && value_of (record, "z_mm") != 0.0;
  g_autofree char *place = is_out || is_up ? number_of (record, is_out ? "y_mm" : "z_mm", units)
                                           : NULL;

  if (is_out)
    return g_strdup_printf (_ ("out %s, chord %s"), place, chord);
  if (is_up)
    return g_strdup_printf (_ ("up %s, chord %s"), place, chord);
  return g_strdup_printf (_ ("root, chord %s"), chord);
}

static char *
cross_section_summary (const GwRecord *record,
                       const GwUnits  *units)
{
  g_autofree char *place = number_of (record, "x_mm", units);
  g_autofree char *width = number_of (record, "width_mm", units);
  g_autofree char *height = number_of (record, "height_mm", units);

  /* Translators: place, width, height of a fuselage cross-section */
  return g_strdup_printf (_ ("at %s, %s × %s"), place, width, height);
}

static char *
control_summary (const GwRecord *record,
                 const GwUnits  *units)
{
  g_autofree char *kind = choice_of (record, "kind");
  g_autofree char *from = number_of (record, "from_mm", units);
  g_autofree char *to = number_of (record, "to_mm", units);

  return g_strdup_printf (_ ("%s, from %s to %s"), kind, from, to);
}

/* "Wing: hot-wired core" of a build, "Wing: tube or rod" of a spar. */
static char *
on_surface_summary (const GwStudy  *study,
                    const GwRecord *record,
                    const char     *key)
{
  const GwField   *surface = gw_record_type_field (record->type, "surface");
  g_autofree char *what = choice_of (record, key);
  g_autofree char *where =
    referred_text (study, surface, *(char **) gw_record_at (record, surface));

  return g_strdup_printf (_ ("%s: %s"), where, what);
}

static char *
row_summary (const GwRecord *record,
             const GwUnits  *units)
{
  g_autofree char *re = number_of (record, "re", units);
  g_autofree char *lift = number_of (record, "cl_max", units);

  return g_strdup_printf (_ ("Re %s, greatest lift %s"), re, lift);
}

static char *
point_summary (const GwRecord *record,
               const GwUnits  *units)
{
  g_autofree char *x = number_of (record, "x", units);
  g_autofree char *y = number_of (record, "y", units);

  return g_strdup_printf ("%s / %s", x, y);
}

char *
gw_form_summary (const GwStudy  *study,
                 const GwRecord *record,
                 const GwUnits  *units)
{
  const GwRecordType *type = record->type;

  if (type == gw_study_station_type ())
    return station_summary (record, units);
  if (type == gw_study_body_station_type ())
    return cross_section_summary (record, units);
  if (type == gw_study_control_type ())
    return control_summary (record, units);
  if (type == gw_study_build_type ())
    return on_surface_summary (study, record, "construction");
  if (type == gw_study_spar_type ())
    return on_surface_summary (study, record, "shape");
  if (type == gw_study_section_row_type ())
    return row_summary (record, units);
  if (type == gw_study_point_type ())
    return point_summary (record, units);

  return gw_edit_record_name (record);
}

char *
gw_form_reason (const GError *error,
                const char   *path)
{
  g_autofree char *place = g_strdup (path);

  if (error == NULL)
    return g_strdup (_ ("this cannot be computed"));

  /* Whoever reads it below a field knows of the field, and of the record that it is in. */
  for (;;)
    {
      g_autofree char *prefix = g_strconcat (place, ": ", NULL);
      const char      *found = strstr (error->message, prefix);
      char            *slash = strrchr (place, '/');

      if (found != NULL)
        return g_strdup (found + strlen (prefix));
      if (slash == NULL)
        return g_strdup (error->message);
      *slash = '\0';
    }
}
