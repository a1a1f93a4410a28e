/* gw-fields.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-fields.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-json.h"
#include "study/gw-record-json.h"
#include "study/gw-study.h"

static const char *
kind_word (GwFieldKind kind)
{
  switch (kind)
    {
    case GW_FIELD_NUMBER:
      return "number";
    case GW_FIELD_TEXT:
      return "text";
    case GW_FIELD_ID:
      return "id";
    case GW_FIELD_CHOICE:
      return "choice";
    case GW_FIELD_FLAG:
      return "flag";
    case GW_FIELD_REF:
      return "reference";
    case GW_FIELD_PART:
      return "record";
    case GW_FIELD_LIST:
      return "list";
    case GW_FIELD_CHANGES:
      return "changes";
    default:
      g_return_val_if_reached ("");
    }
}

static char *
choice_words (const GwField *field)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (guint i = 0; field->choices[i].key != NULL; i++)
    g_string_append_printf (words, "%s%s", i > 0 ? ", " : "", field->choices[i].key);

  return g_string_free (g_steal_pointer (&words), FALSE);
}

static char *
number_range (const GwField *field)
{
  g_autofree char *bounds = gw_field_bounds (field);
  g_autofree char *standard = NULL;

  if (field->is_needed)
    return g_strdup_printf (_ ("%s, needed"), bounds);
  if (isnan (field->standard))
    return g_steal_pointer (&bounds);

  standard = gw_number_shown (field->standard);
  return g_strdup_printf (_ ("%s, else %s"), bounds, standard);
}

/* What may stand in the field. (transfer full) */
static char *
range_text (const GwField *field)
{
  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      return number_range (field);
    case GW_FIELD_CHOICE:
      return choice_words (field);
    case GW_FIELD_FLAG:
      return g_strdup ("true, false");
    case GW_FIELD_REF:
      return g_strdup_printf (_ ("an id of %s"), field->collection);
    case GW_FIELD_PART:
    case GW_FIELD_LIST:
      return g_strdup (field->item ()->name);
    case GW_FIELD_ID:
    case GW_FIELD_TEXT:
    case GW_FIELD_CHANGES:
    default:
      return g_strdup ("");
    }
}

char *
gw_fields_text (void)
{
  g_autoptr (GPtrArray) types = gw_record_types (gw_study_root_type ());
  GString *out = g_string_new (NULL);

  for (guint t = 0; t < types->len; t++)
    {
      const GwRecordType *type = g_ptr_array_index (types, t);

      g_string_append_printf (out, "%s%s (%s)\n", t > 0 ? "\n" : "",
                              g_dgettext (GETTEXT_PACKAGE, type->label), type->name);
      for (guint i = 0; i < type->n_fields; i++)
        {
          const GwField   *field = &type->fields[i];
          g_autofree char *range = range_text (field);

          g_string_append_printf (
            out, "  %-22s %-9s %s. %s%s%s%s\n", field->key, kind_word (field->kind),
            g_dgettext (GETTEXT_PACKAGE, field->label), g_dgettext (GETTEXT_PACKAGE, field->help),
            *range != '\0' ? " [" : "", range, *range != '\0' ? "]" : "");
        }
    }

  return g_string_free (out, FALSE);
}

static void
add_string (JsonBuilder *builder,
            const char  *key,
            const char  *text)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_string_value (builder, text);
}

static void
add_double (JsonBuilder *builder,
            const char  *key,
            double       value)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_double_value (builder, value);
}

static void
add_choices (JsonBuilder   *builder,
             const GwField *field)
{
  json_builder_set_member_name (builder, "choices");
  json_builder_begin_array (builder);
  for (guint i = 0; field->choices[i].key != NULL; i++)
    json_builder_add_string_value (builder, field->choices[i].key);
  json_builder_end_array (builder);
  add_string (builder, "default", field->choices[(int) field->standard].key);
}

static void
add_field (JsonBuilder   *builder,
           const GwField *field)
{
  json_builder_begin_object (builder);
  add_string (builder, "key", field->key);
  add_string (builder, "kind", kind_word (field->kind));
  add_string (builder, "label", g_dgettext (GETTEXT_PACKAGE, field->label));
  add_string (builder, "help", g_dgettext (GETTEXT_PACKAGE, field->help));
  json_builder_set_member_name (builder, "needed");
  json_builder_add_boolean_value (builder, field->is_needed);
  if (field->kind == GW_FIELD_NUMBER)
    {
      add_string (builder, "unit", gw_quantity_unit (field->quantity)->unit);
      add_double (builder, "least", field->least);
      add_double (builder, "most", field->most);
      if (!isnan (field->standard))
        add_double (builder, "default", field->standard);
    }
  if (field->kind == GW_FIELD_CHOICE)
    add_choices (builder, field);
  if (field->kind == GW_FIELD_FLAG)
    {
      json_builder_set_member_name (builder, "default");
      json_builder_add_boolean_value (builder, field->standard != 0.0);
    }
  if (field->kind == GW_FIELD_REF)
    add_string (builder, "list", field->collection);
  if (field->item != NULL)
    add_string (builder, "record", field->item ()->name);
  json_builder_end_object (builder);
}

char *
gw_fields_json (void)
{
  g_autoptr (GPtrArray) types = gw_record_types (gw_study_root_type ());
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autoptr (JsonNode) root = NULL;
  GString *out = g_string_new (NULL);

  json_builder_begin_object (builder);
  for (guint t = 0; t < types->len; t++)
    {
      const GwRecordType *type = g_ptr_array_index (types, t);

      json_builder_set_member_name (builder, type->name);
      json_builder_begin_object (builder);
      add_string (builder, "label", g_dgettext (GETTEXT_PACKAGE, type->label));
      json_builder_set_member_name (builder, "fields");
      json_builder_begin_array (builder);
      for (guint i = 0; i < type->n_fields; i++)
        add_field (builder, &type->fields[i]);
      json_builder_end_array (builder);
      json_builder_end_object (builder);
    }
  json_builder_end_object (builder);

  root = json_builder_get_root (builder);
  gw_json_print (out, root, 0);
  g_string_append_c (out, '\n');
  return g_string_free (out, FALSE);
}
