/* gw-record-read.c - records from JSON
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-json.h"
#include "study/gw-record-json.h"

#define LONGEST_TEXT 4000 /* characters of a note or source */

char *
gw_field_bounds (const GwField *field)
{
  const char      *unit = gw_quantity_unit (field->quantity)->unit;
  g_autofree char *least = gw_number_shown (field->least);
  g_autofree char *most = gw_number_shown (field->most);

  return g_strdup_printf (*unit != '\0' ? _ ("from %s to %s %s") : _ ("from %s to %s%s"), least,
                          most, unit);
}

static gboolean
node_is_number (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) && (json_node_get_value_type (node) == G_TYPE_DOUBLE ||
                                          json_node_get_value_type (node) == G_TYPE_INT64);
}

static gboolean
node_is_text (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;
}

static gboolean
check_value (const GwField *field,
             double         value,
             const char    *path,
             GPtrArray     *problems)
{
  g_autofree char *bounds = gw_field_bounds (field);
  g_autofree char *text = NULL;

  if (isfinite (value) && value >= field->least && value <= field->most &&
      (field->quantity != GW_COUNT || value == floor (value)))
    return TRUE;

  text = isfinite (value) ? gw_number_shown (value) : g_strdup (_ ("not a number"));
  if (field->quantity == GW_COUNT)
    gw_problems_error (problems, path, _ ("%s will not do; give a whole number %s"), text, bounds);
  else
    gw_problems_error (problems, path, _ ("%s is out of range; give a value %s"), text, bounds);
  return FALSE;
}

/* One member of a number's object: "value", "low", ... */
static gboolean
member (JsonObject *object,
        const char *key,
        double     *value,
        const char *path,
        GPtrArray  *problems)
{
  JsonNode *node = json_object_get_member (object, key);

  if (node == NULL)
    return FALSE;

  if (!node_is_number (node))
    {
      gw_problems_error (problems, path, _ ("“%s” must be a number"), key);
      return FALSE;
    }

  *value = json_node_get_double (node);
  return TRUE;
}

static void
read_origin (GwNumber   *number,
             JsonObject *object,
             const char *path,
             GPtrArray  *problems)
{
  JsonNode *origin = json_object_get_member (object, "origin");
  JsonNode *source = json_object_get_member (object, "source");

  if (origin != NULL &&
      (!node_is_text (origin) || !gw_origin_parse (json_node_get_string (origin), &number->origin)))
    gw_problems_error (problems, path,
                       _ ("“origin” must be guessed, catalogue, computed, weighed or given"));

  if (source != NULL && !node_is_text (source))
    gw_problems_error (problems, path, _ ("“source” must be text"));
  else if (source != NULL)
    number->source = json_node_dup_string (source);
}

static void
check_members (JsonObject *object,
               const char *path,
               GPtrArray  *problems)
{
  static const char *const known[] = { "value", "spread", "low", "typical",
                                       "high", "origin", "source", NULL };
  g_autoptr (GList) keys = json_object_get_members (object);

  for (GList *l = keys; l != NULL; l = l->next)
    if (!g_strv_contains (known, l->data))
      gw_problems_error (problems, path,
                         _ ("“%s” is not part of a number; it may hold value and spread, or low, "
                            "typical and high, with origin and source"),
                         (char *) l->data);
}

static void
read_number_object (GwNumber      *number,
                    const GwField *field,
                    JsonObject    *object,
                    const char    *path,
                    GPtrArray     *problems)
{
  double         value = 0.0, spread = 0.0, low = 0.0, high = 0.0;
  const gboolean has_value = member (object, "value", &value, path, problems);
  const gboolean has_typical = member (object, "typical", &value, path, problems);
  const gboolean has_low = member (object, "low", &low, path, problems);
  const gboolean has_high = member (object, "high", &high, path, problems);
  const gboolean has_spread = member (object, "spread", &spread, path, problems);

  check_members (object, path, problems);
  if (has_value == has_typical || has_low != has_typical || has_high != has_typical ||
      (has_spread && has_typical))
    {
      gw_problems_error (
        problems, path, _ ("an uncertain number needs value and spread, or low, typical and high"));
      return;
    }

  if (!check_value (field, value, path, problems))
    return;

  if (has_typical && !(isfinite (low) && isfinite (high) && low <= value && value <= high))
    gw_problems_error (problems, path, _ ("low, typical and high must rise in this order"));
  else if (has_spread && !(isfinite (spread) && spread >= 0.0))
    gw_problems_error (problems, path, _ ("the spread must be zero or more"));
  else if (has_typical)
    gw_number_set_range (number, low, value, high);
  else if (has_spread)
    gw_number_set_spread (number, value, spread);
  else
    gw_number_set (number, value);

  read_origin (number, object, path, problems);
}

static void
read_number (GwNumber      *number,
             const GwField *field,
             JsonNode      *node,
             const char    *path,
             GPtrArray     *problems)
{
  /* An edit states a number anew: who vouched for the old value does not for this one. */
  gw_number_clear (number);
  number->origin = GW_ORIGIN_GIVEN;

  if (JSON_NODE_HOLDS_OBJECT (node))
    read_number_object (number, field, json_node_get_object (node), path, problems);
  else if (!node_is_number (node))
    gw_problems_error (problems, path, _ ("a number is wanted here"));
  else if (check_value (field, json_node_get_double (node), path, problems))
    gw_number_set (number, json_node_get_double (node));
}

static void
read_choice (int           *choice,
             const GwField *field,
             JsonNode      *node,
             const char    *path,
             GPtrArray     *problems)
{
  g_autoptr (GString) words = g_string_new (NULL);

  for (int i = 0; field->choices[i].key != NULL; i++)
    {
      if (node_is_text (node) && strcmp (json_node_get_string (node), field->choices[i].key) == 0)
        {
          *choice = i;
          return;
        }
      g_string_append_printf (words, "%s%s", i > 0 ? ", " : "", field->choices[i].key);
    }

  gw_problems_error (problems, path, _ ("one of these words is wanted here: %s"), words->str);
}

static gboolean
id_is_good (const char *id)
{
  if (*id == '\0' || strlen (id) > 60 || g_ascii_isdigit (*id))
    return FALSE;

  for (const char *c = id; *c != '\0'; c++)
    if (!g_ascii_islower (*c) && !g_ascii_isdigit (*c) && *c != '-')
      return FALSE;

  return TRUE;
}

static void
read_text (char         **text,
           const GwField *field,
           JsonNode      *node,
           const char    *path,
           GPtrArray     *problems)
{
  const int longest = g_str_has_suffix (field->key, "name") ? GW_LONGEST_NAME : LONGEST_TEXT;

  if (!node_is_text (node))
    gw_problems_error (problems, path, _ ("text in quotes is wanted here"));
  else if (g_utf8_strlen (json_node_get_string (node), -1) > longest)
    gw_problems_error (problems, path, _ ("the text is longer than %d characters; shorten it"),
                       longest);
  else if (field->kind != GW_FIELD_TEXT && !id_is_good (json_node_get_string (node)))
    gw_problems_error (problems, path,
                       _ ("“%s” will not do as a name of reference; use small letters, digits and "
                          "hyphens, a letter first"),
                       json_node_get_string (node));
  else
    {
      g_free (*text);
      *text = json_node_dup_string (node);
    }
}

/* A record is told by its id where it has a good one, else by its number. */
static char *
item_path (JsonNode   *element,
           const char *path,
           guint       i)
{
  JsonNode *id = JSON_NODE_HOLDS_OBJECT (element)
                   ? json_object_get_member (json_node_get_object (element), "id")
                   : NULL;

  if (id != NULL && node_is_text (id) && id_is_good (json_node_get_string (id)))
    return g_strdup_printf ("%s/%s", path, json_node_get_string (id));

  return g_strdup_printf ("%s/%u", path, i + 1);
}

static void
check_duplicate (const GPtrArray *list,
                 const GwRecord  *item,
                 const char      *path,
                 GPtrArray       *problems)
{
  const char *id = gw_record_id (item);

  if (id != NULL && gw_list_find (list, id) != NULL)
    gw_problems_error (problems, path, _ ("the id “%s” is used twice in this list; rename one"),
                       id);
}

static void
read_list (GPtrArray     *list,
           const GwField *field,
           JsonNode      *node,
           const char    *path,
           GPtrArray     *problems)
{
  JsonArray *array;

  if (!JSON_NODE_HOLDS_ARRAY (node))
    {
      gw_problems_error (problems, path, _ ("a list in [ ] is wanted here"));
      return;
    }

  array = json_node_get_array (node);
  g_ptr_array_set_size (list, 0);
  for (guint i = 0; i < json_array_get_length (array); i++)
    {
      JsonNode        *element = json_array_get_element (array, i);
      g_autofree char *here = item_path (element, path, i);
      GwRecord        *item;

      if (!JSON_NODE_HOLDS_OBJECT (element))
        {
          gw_problems_error (problems, here, _ ("an object in { } is wanted here"));
          continue;
        }
      item = gw_record_new (field->item ());
      gw_record_read (item, json_node_get_object (element), here, problems);
      check_duplicate (list, item, here, problems);
      g_ptr_array_add (list, item);
    }
}

static void
read_changes (GPtrArray  *changes,
              JsonNode   *node,
              const char *path,
              GPtrArray  *problems)
{
  JsonObjectIter iter;
  const char    *key;
  JsonNode      *value;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    {
      gw_problems_error (problems, path, _ ("an object of \"path\": value pairs is wanted here"));
      return;
    }

  g_ptr_array_set_size (changes, 0);
  json_object_iter_init_ordered (&iter, json_node_get_object (node));
  while (json_object_iter_next_ordered (&iter, &key, &value))
    {
      GwChange *change = g_new (GwChange, 1);

      change->path = g_strdup (key);
      change->value = gw_json_copy (value);
      g_ptr_array_add (changes, change);
    }
}

void
gw_record_read_field (GwRecord      *record,
                      const GwField *field,
                      JsonNode      *node,
                      const char    *path,
                      GPtrArray     *problems)
{
  gpointer at = gw_record_at (record, field);

  gw_record_set_present (record, field, TRUE);
  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      read_number (at, field, node, path, problems);
      break;
    case GW_FIELD_TEXT:
    case GW_FIELD_ID:
    case GW_FIELD_REF:
      read_text (at, field, node, path, problems);
      break;
    case GW_FIELD_CHOICE:
      read_choice (at, field, node, path, problems);
      break;
    case GW_FIELD_FLAG:
      if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_BOOLEAN)
        *(gboolean *) at = json_node_get_boolean (node);
      else
        gw_problems_error (problems, path, _ ("true or false is wanted here"));
      break;
    case GW_FIELD_PART:
      if (JSON_NODE_HOLDS_OBJECT (node))
        gw_record_read (*(GwRecord **) at, json_node_get_object (node), path, problems);
      else
        gw_problems_error (problems, path, _ ("an object in { } is wanted here"));
      break;
    case GW_FIELD_LIST:
      read_list (*(GPtrArray **) at, field, node, path, problems);
      break;
    case GW_FIELD_CHANGES:
      read_changes (*(GPtrArray **) at, node, path, problems);
      break;
    }
}

static void
keep_unknown (GwRecord   *record,
              const char *key,
              JsonNode   *value,
              const char *path,
              GPtrArray  *problems)
{
  if (record->unknown == NULL)
    record->unknown = json_object_new ();
  json_object_set_member (record->unknown, key, gw_json_copy (value));
  gw_problems_hint (problems, path, _ ("“%s” is not known here; it is kept but has no effect"),
                    key);
}

void
gw_record_read (GwRecord   *record,
                JsonObject *object,
                const char *path,
                GPtrArray  *problems)
{
  const GwRecordType *type = record->type;
  JsonObjectIter      iter;
  const char         *key;
  JsonNode           *value;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &value))
    {
      const GwField   *field = gw_record_type_field (type, key);
      g_autofree char *here = g_strdup_printf ("%s%s%s", path, *path != '\0' ? "/" : "", key);

      if (field != NULL)
        gw_record_read_field (record, field, value, here, problems);
      else
        keep_unknown (record, key, value, path, problems);
    }

  for (guint i = 0; i < type->n_fields; i++)
    if (type->fields[i].is_needed && !gw_record_has (record, &type->fields[i]))
      gw_problems_error (problems, path, _ ("“%s” (%s) is missing; add it"), type->fields[i].key,
                         g_dgettext (GETTEXT_PACKAGE, type->fields[i].label));
}
