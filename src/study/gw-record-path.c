/* gw-record-path.c - places in a record
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-record.h"

static GwRecord *
list_step (const GPtrArray *list,
           const char      *step)
{
  GwRecord *found = gw_list_find (list, step);
  guint64   number;

  if (found != NULL)
    return found;

  if (list->len > 0 && g_ascii_string_to_unsigned (step, 10, 1, list->len, &number, NULL))
    {
      found = g_ptr_array_index (list, number - 1);
      return gw_record_id (found) == NULL ? found : NULL;
    }

  return NULL;
}

GwRecord *
gw_record_find (GwRecord       *root,
                const char     *path,
                const GwField **field)
{
  g_auto (GStrv) steps = g_strsplit (path, "/", 32);
  GwRecord *record = root;

  for (guint i = 0; record != NULL && steps[i] != NULL; i++)
    {
      const GwField *found = gw_record_type_field (record->type, steps[i]);

      if (found == NULL)
        return NULL;

      if (steps[i + 1] == NULL)
        {
          *field = found;
          return record;
        }

      if (found->kind == GW_FIELD_PART)
        record = *(GwRecord **) gw_record_at (record, found);
      else if (found->kind == GW_FIELD_LIST && steps[i + 2] != NULL)
        record = list_step (*(GPtrArray **) gw_record_at (record, found), steps[++i]);
      else
        return NULL;
    }

  return NULL;
}

char *
gw_record_step (const char     *path,
                const char     *key,
                const GwRecord *item,
                guint           i)
{
  const char *id = gw_record_id (item);

  return id != NULL ? g_strdup_printf ("%s%s%s/%s", path, *path != '\0' ? "/" : "", key, id)
                    : g_strdup_printf ("%s%s%s/%u", path, *path != '\0' ? "/" : "", key, i + 1);
}

static void
append_step (GString    *path,
             const char *key)
{
  if (path->len > 0)
    g_string_append_c (path, '/');
  g_string_append (path, key);
}

/* One path grows and shrinks as the tree is walked. */
static void
each (GwRecord      *record,
      GString       *path,
      GwFieldVisitor visit,
      gpointer       data)
{
  const gsize length = path->len;

  for (guint i = 0; i < record->type->n_fields; i++)
    {
      const GwField *field = &record->type->fields[i];

      append_step (path, field->key);
      visit (path->str, record, field, data);
      if (field->kind == GW_FIELD_PART)
        each (*(GwRecord **) gw_record_at (record, field), path, visit, data);
      else if (field->kind == GW_FIELD_LIST)
        {
          const GPtrArray *list = *(GPtrArray **) gw_record_at (record, field);
          const gsize      list_length = path->len;

          for (guint k = 0; k < list->len; k++)
            {
              GwRecord *item = g_ptr_array_index (list, k);

              if (gw_record_id (item) != NULL)
                append_step (path, gw_record_id (item));
              else
                g_string_append_printf (path, "/%u", k + 1);
              each (item, path, visit, data);
              g_string_truncate (path, list_length);
            }
        }
      g_string_truncate (path, length);
    }
}

void
gw_record_each (GwRecord      *record,
                const char    *path,
                GwFieldVisitor visit,
                gpointer       data)
{
  g_autoptr (GString) here = g_string_new (path);

  each (record, here, visit, data);
}
