/* test-fields.c - the list of fields leaves nothing out
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "study/gw-fields.h"
#include "study/gw-json.h"
#include "study/gw-study.h"

/* The record's own paragraph of the text. (transfer full) */
static char *
paragraph_of (const char         *text,
              const GwRecordType *type)
{
  g_autofree char *head = g_strdup_printf ("(%s)\n", type->name);
  const char      *start = strstr (text, head);
  const char      *end;

  if (start == NULL)
    g_error ("%s is not in the list", type->name);
  g_assert_null (strstr (start + 1, head));
  end = strstr (start, "\n\n");
  return end != NULL ? g_strndup (start, (gsize) (end - start)) : g_strdup (start);
}

static void
test_fields_text (void)
{
  g_autofree char *text = gw_fields_text ();
  g_autoptr (GPtrArray) types = gw_record_types (gw_study_root_type ());

  for (guint t = 0; t < types->len; t++)
    {
      const GwRecordType *type = g_ptr_array_index (types, t);
      g_autofree char    *paragraph = paragraph_of (text, type);

      for (guint i = 0; i < type->n_fields; i++)
        {
          g_autofree char *key = g_strdup_printf ("\n  %s ", type->fields[i].key);

          if (strstr (paragraph, key) == NULL || strstr (paragraph, type->fields[i].help) == NULL)
            g_error ("%s of %s is not in the list", type->fields[i].key, type->name);
        }
    }
}

static void
check_json_field (JsonObject    *object,
                  const GwField *field)
{
  g_assert_cmpstr (json_object_get_string_member (object, "key"), ==, field->key);
  g_assert_cmpstr (json_object_get_string_member (object, "label"), ==, field->label);
  g_assert_cmpstr (json_object_get_string_member (object, "help"), ==, field->help);
  g_assert_true (json_object_get_boolean_member (object, "needed") == field->is_needed);
  if (field->kind == GW_FIELD_NUMBER)
    {
      g_assert_cmpfloat (json_object_get_double_member (object, "least"), ==, field->least);
      g_assert_cmpfloat (json_object_get_double_member (object, "most"), ==, field->most);
      g_assert_true (json_object_has_member (object, "default") == !isnan (field->standard));
    }
  if (field->kind == GW_FIELD_CHOICE)
    {
      JsonArray *choices = json_object_get_array_member (object, "choices");

      for (guint i = 0; i < json_array_get_length (choices); i++)
        g_assert_cmpstr (json_array_get_string_element (choices, i), ==, field->choices[i].key);
      g_assert_null (field->choices[json_array_get_length (choices)].key);
    }
}

static void
test_fields_json (void)
{
  g_autofree char *text = gw_fields_json ();
  g_autoptr (GPtrArray) types = gw_record_types (gw_study_root_type ());
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonObject) root = gw_json_parse (text, strlen (text), &error);

  g_assert_no_error (error);
  g_assert_cmpuint (json_object_get_size (root), ==, types->len);
  for (guint t = 0; t < types->len; t++)
    {
      const GwRecordType *type = g_ptr_array_index (types, t);
      JsonObject         *record = json_object_get_object_member (root, type->name);
      JsonArray          *fields = json_object_get_array_member (record, "fields");

      g_assert_cmpuint (json_array_get_length (fields), ==, type->n_fields);
      for (guint i = 0; i < type->n_fields; i++)
        check_json_field (json_array_get_object_element (fields, i), &type->fields[i]);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/study/fields/text", test_fields_text);
  g_test_add_func ("/study/fields/json", test_fields_json);

  return g_test_run ();
}
