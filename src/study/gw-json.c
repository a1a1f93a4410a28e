/* gw-json.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-json.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-error.h"
#include "study/gw-json-check.h"
#include "study/gw-number.h"

static gboolean
check_text (const char *text,
            gsize       length,
            GError    **error)
{
  if (length > GW_JSON_MAX_SIZE)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                   _ ("the file is larger than %d MB; no study needs that"),
                   GW_JSON_MAX_SIZE / 1024 / 1024);
      return FALSE;
    }

  return gw_json_check (text, length, error);
}

typedef struct
{
  GHashTable *seen; /* "object address key" */
  char       *twice;
} Keys;

static void
on_member_cb (JsonParser *parser,
              JsonObject *object,
              const char *key,
              Keys       *keys)
{
  char *name = g_strdup_printf ("%p %s", (void *) object, key);

  if (!g_hash_table_add (keys->seen, name) && keys->twice == NULL)
    keys->twice = g_strdup (key);
}

JsonObject *
gw_json_parse (const char *text,
               gsize       length,
               GError    **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GError) syntax = NULL;
  Keys keys = { seen, NULL };

  if (!check_text (text, length, error))
    return NULL;

  g_signal_connect (parser, "object-member", G_CALLBACK (on_member_cb), &keys);
  if (!json_parser_load_from_data (parser, text, (gssize) length, &syntax))
    {
      /* The standard was kept: what it says now is for its makers. */
      g_debug ("%s", syntax->message);
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX, _ ("line %u: this cannot be read"),
                   json_parser_get_current_line (parser));
      g_free (keys.twice);
      return NULL;
    }

  if (keys.twice != NULL)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                   _ ("the key “%s” stands twice in one object; remove one of them"), keys.twice);
      g_free (keys.twice);
      return NULL;
    }

  return json_node_dup_object (json_parser_get_root (parser));
}

void
gw_json_print_string (GString    *out,
                      const char *text)
{
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), text);
  g_autofree char *quoted = json_to_string (node, FALSE);

  g_string_append (out, quoted);
}

void
gw_json_print_number (GString *out,
                      double   value)
{
  g_autofree char *text = isfinite (value) ? gw_number_text (value) : g_strdup ("null");

  g_string_append (out, text);
}

void
gw_json_print_break (GString *out,
                     guint    level)
{
  g_string_append_printf (out, "\n%*s", (int) level * 2, "");
}

static void
print_array (GString   *out,
             JsonArray *array,
             guint      level)
{
  const guint n = json_array_get_length (array);

  g_string_append_c (out, '[');
  for (guint i = 0; i < n; i++)
    {
      gw_json_print_break (out, level + 1);
      gw_json_print (out, json_array_get_element (array, i), level + 1);
      if (i + 1 < n)
        g_string_append_c (out, ',');
    }
  if (n > 0)
    gw_json_print_break (out, level);
  g_string_append_c (out, ']');
}

static void
print_object (GString    *out,
              JsonObject *object,
              guint       level)
{
  JsonObjectIter iter;
  const char    *key;
  JsonNode      *value;
  gboolean       is_first = TRUE;

  g_string_append_c (out, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &value))
    {
      if (!is_first)
        g_string_append_c (out, ',');
      is_first = FALSE;
      gw_json_print_break (out, level + 1);
      gw_json_print_string (out, key);
      g_string_append (out, ": ");
      gw_json_print (out, value, level + 1);
    }
  if (!is_first)
    gw_json_print_break (out, level);
  g_string_append_c (out, '}');
}

static void
print_value (GString  *out,
             JsonNode *node)
{
  if (json_node_get_value_type (node) == G_TYPE_STRING)
    gw_json_print_string (out, json_node_get_string (node));
  else if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    g_string_append (out, json_node_get_boolean (node) ? "true" : "false");
  else if (json_node_get_value_type (node) == G_TYPE_INT64)
    g_string_append_printf (out, "%" G_GINT64_FORMAT, json_node_get_int (node));
  else if (isinf (json_node_get_double (node)))
    g_string_append (out, json_node_get_double (node) > 0.0 ? "1e999" : "-1e999"); /* as it came */
  else
    gw_json_print_number (out, json_node_get_double (node));
}

void
gw_json_print (GString  *out,
               JsonNode *node,
               guint     level)
{
  switch (json_node_get_node_type (node))
    {
    case JSON_NODE_OBJECT:
      print_object (out, json_node_get_object (node), level);
      break;
    case JSON_NODE_ARRAY:
      print_array (out, json_node_get_array (node), level);
      break;
    case JSON_NODE_VALUE:
      print_value (out, node);
      break;
    case JSON_NODE_NULL:
      g_string_append (out, "null");
      break;
    }
}

static JsonArray *
copy_array (JsonArray *array)
{
  const guint n = json_array_get_length (array);
  JsonArray  *copy = json_array_sized_new (n);

  for (guint i = 0; i < n; i++)
    json_array_add_element (copy, gw_json_copy (json_array_get_element (array, i)));
  return copy;
}

JsonNode *
gw_json_copy (JsonNode *node)
{
  const JsonNodeType type = json_node_get_node_type (node);
  JsonNode          *copy = json_node_new (type);

  if (type == JSON_NODE_OBJECT)
    json_node_take_object (copy, gw_json_copy_object (json_node_get_object (node)));
  else if (type == JSON_NODE_ARRAY)
    json_node_take_array (copy, copy_array (json_node_get_array (node)));
  else if (type == JSON_NODE_VALUE)
    {
      g_auto (GValue) value = G_VALUE_INIT;

      json_node_get_value (node, &value);
      json_node_set_value (copy, &value);
    }

  return copy;
}

JsonObject *
gw_json_copy_object (JsonObject *object)
{
  JsonObject    *copy = json_object_new ();
  JsonObjectIter iter;
  const char    *key;
  JsonNode      *node;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node))
    json_object_set_member (copy, key, gw_json_copy (node));
  return copy;
}
