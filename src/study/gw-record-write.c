/* gw-record-write.c - records to JSON
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-json.h"
#include "study/gw-record-json.h"

#define LONGEST_LINE 110 /* columns a record may take on one line */

/* { "value": 1, ... } of a number, on one line. */
static void
write_member (GString    *out,
              const char *key,
              double      value)
{
  if (out->str[out->len - 1] != '{')
    g_string_append_c (out, ',');
  g_string_append_printf (out, " \"%s\": ", key);
  gw_json_print_number (out, value);
}

static void
write_word (GString    *out,
            const char *key,
            const char *word)
{
  g_string_append_printf (out, ", \"%s\": ", key);
  gw_json_print_string (out, word);
}

static void
write_number (GString        *out,
              const GwNumber *number)
{
  if (number->form == GW_FORM_PLAIN && number->origin == GW_ORIGIN_GIVEN && number->source == NULL)
    {
      gw_json_print_number (out, number->value);
      return;
    }

  g_string_append_c (out, '{');
  if (number->form == GW_FORM_RANGE)
    {
      write_member (out, "low", number->low);
      write_member (out, "typical", number->value);
      write_member (out, "high", number->high);
    }
  else
    write_member (out, "value", number->value);
  if (number->form == GW_FORM_SPREAD)
    write_member (out, "spread", number->spread);
  if (number->origin != GW_ORIGIN_GIVEN)
    write_word (out, "origin", gw_origin_key (number->origin));
  if (number->source != NULL)
    write_word (out, "source", number->source);
  g_string_append (out, " }");
}

static void
write_list (GString         *out,
            const GPtrArray *list,
            guint            level)
{
  g_string_append_c (out, '[');
  for (guint i = 0; i < list->len; i++)
    {
      if (i > 0)
        g_string_append_c (out, ',');
      gw_json_print_break (out, level + 1);
      gw_record_write (g_ptr_array_index (list, i), out, level + 1);
    }
  if (list->len > 0)
    gw_json_print_break (out, level);
  g_string_append_c (out, ']');
}

static void
write_changes (GString         *out,
               const GPtrArray *changes,
               guint            level)
{
  g_string_append_c (out, '{');
  for (guint i = 0; i < changes->len; i++)
    {
      const GwChange *change = g_ptr_array_index (changes, i);

      if (i > 0)
        g_string_append_c (out, ',');
      gw_json_print_break (out, level + 1);
      gw_json_print_string (out, change->path);
      g_string_append (out, ": ");
      gw_json_print (out, change->value, level + 1);
    }
  if (changes->len > 0)
    gw_json_print_break (out, level);
  g_string_append_c (out, '}');
}

static void
write_field (GString        *out,
             const GwRecord *record,
             const GwField  *field,
             guint           level)
{
  gpointer at = gw_record_at (record, field);

  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      write_number (out, at);
      break;
    case GW_FIELD_TEXT:
    case GW_FIELD_ID:
    case GW_FIELD_REF:
      gw_json_print_string (out, *(char **) at != NULL ? *(char **) at : "");
      break;
    case GW_FIELD_CHOICE:
      gw_json_print_string (out, field->choices[*(int *) at].key);
      break;
    case GW_FIELD_FLAG:
      g_string_append (out, *(gboolean *) at ? "true" : "false");
      break;
    case GW_FIELD_PART:
      gw_record_write (*(GwRecord **) at, out, level);
      break;
    case GW_FIELD_LIST:
      write_list (out, *(GPtrArray **) at, level);
      break;
    case GW_FIELD_CHANGES:
      write_changes (out, *(GPtrArray **) at, level);
      break;
    }
}

static void
write_key (GString    *out,
           const char *key,
           guint       level)
{
  if (out->str[out->len - 1] != '{')
    g_string_append_c (out, ',');
  gw_json_print_break (out, level);
  gw_json_print_string (out, key);
  g_string_append (out, ": ");
}

/* A record of a few plain fields (a station, a point) stands on one line. */
static gboolean
write_on_one_line (const GwRecord *record,
                   GString        *out,
                   guint           level)
{
  g_autoptr (GString) line = g_string_new ("{");

  if (record->unknown != NULL)
    return FALSE;

  for (guint i = 0; i < record->type->n_fields; i++)
    {
      const GwField *field = &record->type->fields[i];

      if (!gw_record_has (record, field))
        continue;
      if (field->kind == GW_FIELD_PART || field->kind == GW_FIELD_LIST ||
          field->kind == GW_FIELD_CHANGES)
        return FALSE;
      if (line->str[line->len - 1] != '{')
        g_string_append_c (line, ',');
      g_string_append_printf (line, " \"%s\": ", field->key);
      write_field (line, record, field, level);
    }

  if (line->len + 2 * level > LONGEST_LINE || line->len == 1)
    return FALSE;

  g_string_append (out, line->str);
  g_string_append (out, " }");
  return TRUE;
}

void
gw_record_write (const GwRecord *record,
                 GString        *out,
                 guint           level)
{
  JsonObjectIter iter;
  const char    *key;
  JsonNode      *value;

  if (level > 0 && write_on_one_line (record, out, level))
    return;

  g_string_append_c (out, '{');
  for (guint i = 0; i < record->type->n_fields; i++)
    if (gw_record_has (record, &record->type->fields[i]))
      {
        write_key (out, record->type->fields[i].key, level + 1);
        write_field (out, record, &record->type->fields[i], level + 1);
      }

  if (record->unknown != NULL)
    {
      json_object_iter_init_ordered (&iter, record->unknown);
      while (json_object_iter_next_ordered (&iter, &key, &value))
        {
          write_key (out, key, level + 1);
          gw_json_print (out, value, level + 1);
        }
    }

  if (out->str[out->len - 1] != '{')
    gw_json_print_break (out, level);
  g_string_append_c (out, '}');
}

JsonNode *
gw_record_field_node (const GwRecord *record,
                      const GwField  *field)
{
  g_autoptr (GString) text = g_string_new (NULL);

  write_field (text, record, field, 0);
  return json_from_string (text->str, NULL);
}
