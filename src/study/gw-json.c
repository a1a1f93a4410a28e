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
#include "study/gw-number.h"

/* The sixteen bits of the escape \uXXXX at @text, or 0 if it is none. */
static guint
escape_unit (const char *text,
             gsize       length)
{
  guint unit = 0;

  if (length < 6 || text[0] != '\\' || text[1] != 'u')
    return 0;

  for (guint i = 2; i < 6; i++)
    {
      if (!g_ascii_isxdigit (text[i]))
        return 0;
      unit = unit * 16 + (guint) g_ascii_xdigit_value (text[i]);
    }

  return unit;
}

/* Bytes of the escape at @text, or 0 if it stands for no character that text can hold:
 * json-glib 1.6 makes half a surrogate pair into text that is not UTF-8. */
static gsize
escape_length (const char *text,
               gsize       length)
{
  const guint unit = escape_unit (text, length);

  if (length < 2 || text[1] != 'u')
    return 2;
  if (unit < 0xd800 || unit > 0xdfff)
    return unit > 0 ? 6 : 0;

  length -= 6;
  return unit < 0xdc00 && escape_unit (text + 6, length) >> 10 == 0xdc00 >> 10 ? 12 : 0;
}

/* What may stand outside of strings: brackets, signs, white space, numbers and words.
 * json-glib 1.6 takes comments and 'strings' as well, whose quotes and brackets would not
 * be counted as it counts them. */
static gboolean
is_plain (char c)
{
  return g_ascii_isalnum (c) || g_ascii_isspace (c) || strchr ("{}[],:+-.\"", c) != NULL;
}

typedef struct
{
  guint    line, depth;
  gboolean in_string, has_ended;
} Scan;

/* Takes the byte at @text; returns what is wrong with it, or NULL. */
static const char *
scan_byte (Scan *scan,
           char  c)
{
  if (scan->has_ended && !g_ascii_isspace (c))
    return _ ("text after the end of the document; remove it");
  if (!is_plain (c))
    return _ ("not well-formed JSON: a character that can stand only within quotes, or a comment");

  if (c == '"')
    scan->in_string = TRUE;
  else if (c == '{' || c == '[')
    scan->depth++;
  else if ((c == '}' || c == ']') && scan->depth > 0)
    scan->has_ended = --scan->depth == 0;

  return scan->depth > GW_JSON_MAX_DEPTH ? _ ("brackets nested too deep for a study") : NULL;
}

/* json-glib 1.6 overflows its stack on deep nesting and takes "{}[]" for one
 * document, so brackets are counted here first. */
static gboolean
check_brackets (const char *text,
                gsize       length,
                GError    **error)
{
  const gboolean starts_with_mark = length >= 3 && memcmp (text, "\357\273\277", 3) == 0;
  Scan           scan = { .line = 1 };
  const char    *fault = NULL;
  gsize          step;

  for (gsize i = starts_with_mark ? 3 : 0; i < length && fault == NULL; i += step)
    {
      step = 1;
      scan.line += text[i] == '\n';
      if (!scan.in_string)
        fault = scan_byte (&scan, text[i]);
      else if (text[i] == '"')
        scan.in_string = FALSE;
      else if (text[i] == '\\' && (step = escape_length (text + i, length - i)) == 0)
        fault = _ ("an escape that stands for no character");
    }

  if (fault != NULL)
    g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX, _ ("line %u: %s"), scan.line, fault);

  return fault == NULL;
}

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

  if (!g_utf8_validate_len (text, length, NULL))
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                   _ ("the file is not UTF-8 text; is it really a study?"));
      return FALSE;
    }

  return check_brackets (text, length, error);
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
  Keys      keys = { seen, NULL };
  JsonNode *root;

  if (!check_text (text, length, error))
    return NULL;

  g_signal_connect (parser, "object-member", G_CALLBACK (on_member_cb), &keys);
  if (!json_parser_load_from_data (parser, text, (gssize) length, &syntax))
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX, _ ("not well-formed JSON: %s"),
                   syntax->message);
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

  root = json_parser_get_root (parser);
  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root))
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                   _ ("the file holds no JSON object; a study begins with {"));
      return NULL;
    }

  return json_node_dup_object (root);
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
