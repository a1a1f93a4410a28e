/* gw-record.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define G_LOG_DOMAIN "gw-record"

#include "study/gw-record.h"

#include <string.h>

#include "study/gw-json.h"

static gpointer
copy_change (gconstpointer data,
             gpointer      unused)
{
  const GwChange *change = data;
  GwChange       *copy = g_new (GwChange, 1);

  copy->path = g_strdup (change->path);
  copy->value = gw_json_copy (change->value);
  return copy;
}

static void
change_free (GwChange *change)
{
  g_free (change->path);
  json_node_unref (change->value);
  g_free (change);
}

static guint
field_index (const GwRecordType *type,
             const GwField      *field)
{
  return (guint) (field - type->fields);
}

gpointer
gw_record_at (const GwRecord *record,
              const GwField  *field)
{
  return G_STRUCT_MEMBER_P (record, field->offset);
}

gboolean
gw_record_has (const GwRecord *record,
               const GwField  *field)
{
  return (record->present >> field_index (record->type, field)) & 1;
}

void
gw_record_set_present (GwRecord      *record,
                       const GwField *field,
                       gboolean       is_present)
{
  const guint64 bit = G_GUINT64_CONSTANT (1) << field_index (record->type, field);

  record->present = is_present ? record->present | bit : record->present & ~bit;
}

static void
init_field (GwRecord      *record,
            const GwField *field)
{
  gpointer at = gw_record_at (record, field);

  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      gw_number_set (at, field->standard);
      break;
    case GW_FIELD_CHOICE:
      *(int *) at = (int) field->standard;
      break;
    case GW_FIELD_FLAG:
      *(gboolean *) at = field->standard != 0.0;
      break;
    case GW_FIELD_PART:
      *(GwRecord **) at = gw_record_new (field->item ());
      break;
    case GW_FIELD_LIST:
      *(GPtrArray **) at = g_ptr_array_new_with_free_func ((GDestroyNotify) gw_record_free);
      break;
    case GW_FIELD_CHANGES:
      *(GPtrArray **) at = g_ptr_array_new_with_free_func ((GDestroyNotify) change_free);
      break;
    case GW_FIELD_TEXT:
    case GW_FIELD_ID:
    case GW_FIELD_REF:
      break;
    }
}

void
gw_record_init (GwRecord           *record,
                const GwRecordType *type)
{
  memset (record, 0, type->size);
  record->type = type;

  for (guint i = 0; i < type->n_fields; i++)
    init_field (record, &type->fields[i]);
}

static void
clear_field (GwRecord      *record,
             const GwField *field)
{
  gpointer at = gw_record_at (record, field);

  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      gw_number_clear (at);
      break;
    case GW_FIELD_TEXT:
    case GW_FIELD_ID:
    case GW_FIELD_REF:
      g_clear_pointer ((char **) at, g_free);
      break;
    case GW_FIELD_PART:
      g_clear_pointer ((GwRecord **) at, gw_record_free);
      break;
    case GW_FIELD_LIST:
    case GW_FIELD_CHANGES:
      g_clear_pointer ((GPtrArray **) at, g_ptr_array_unref);
      break;
    case GW_FIELD_CHOICE:
    case GW_FIELD_FLAG:
      break;
    }
}

void
gw_record_reset_field (GwRecord      *record,
                       const GwField *field)
{
  clear_field (record, field);
  memset (gw_record_at (record, field), 0,
          field->kind == GW_FIELD_NUMBER ? sizeof (GwNumber) : sizeof (int));
  init_field (record, field);
  gw_record_set_present (record, field, FALSE);
}

void
gw_record_clear (GwRecord *record)
{
  for (guint i = 0; i < record->type->n_fields; i++)
    clear_field (record, &record->type->fields[i]);

  g_clear_pointer (&record->unknown, json_object_unref);
}

GwRecord *
gw_record_new (const GwRecordType *type)
{
  GwRecord *record = g_malloc (type->size);

  gw_record_init (record, type);
  return record;
}

void
gw_record_free (GwRecord *record)
{
  gw_record_clear (record);
  g_free (record);
}

static void
assign_field (GwRecord       *to,
              const GwRecord *from,
              const GwField  *field)
{
  gpointer a = gw_record_at (to, field);
  gpointer b = gw_record_at (from, field);

  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      gw_number_copy (a, b);
      break;
    case GW_FIELD_TEXT:
    case GW_FIELD_ID:
    case GW_FIELD_REF:
      g_free (*(char **) a);
      *(char **) a = g_strdup (*(char **) b);
      break;
    case GW_FIELD_CHOICE:
    case GW_FIELD_FLAG:
      *(int *) a = *(int *) b;
      break;
    case GW_FIELD_PART:
      gw_record_assign (*(GwRecord **) a, *(GwRecord **) b);
      break;
    case GW_FIELD_LIST:
      g_ptr_array_set_size (*(GPtrArray **) a, 0);
      gw_list_extend (*(GPtrArray **) a, *(GPtrArray **) b);
      break;
    case GW_FIELD_CHANGES:
      g_ptr_array_set_size (*(GPtrArray **) a, 0);
      g_ptr_array_extend (*(GPtrArray **) a, *(GPtrArray **) b, copy_change, NULL);
      break;
    }
}

void
gw_record_assign (GwRecord       *to,
                  const GwRecord *from)
{
  g_return_if_fail (to->type == from->type);

  for (guint i = 0; i < to->type->n_fields; i++)
    assign_field (to, from, &to->type->fields[i]);

  to->present = from->present;
  g_clear_pointer (&to->unknown, json_object_unref);
  to->unknown = from->unknown != NULL ? gw_json_copy_object (from->unknown) : NULL;
}

GwRecord *
gw_record_copy (const GwRecord *record)
{
  GwRecord *copy = gw_record_new (record->type);

  gw_record_assign (copy, record);
  return copy;
}

static gboolean
lists_equal (const GPtrArray *a,
             const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;

  for (guint i = 0; i < a->len; i++)
    if (!gw_record_equal (g_ptr_array_index (a, i), g_ptr_array_index (b, i)))
      return FALSE;

  return TRUE;
}

static gboolean
changes_equal (const GPtrArray *a,
               const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;

  for (guint i = 0; i < a->len; i++)
    {
      const GwChange *x = g_ptr_array_index (a, i);
      const GwChange *y = g_ptr_array_index (b, i);

      if (g_strcmp0 (x->path, y->path) != 0 || !json_node_equal (x->value, y->value))
        return FALSE;
    }

  return TRUE;
}

gboolean
gw_record_value_equal (const GwRecord *x,
                       const GwRecord *y,
                       const GwField  *field)
{
  gconstpointer a = gw_record_at (x, field);
  gconstpointer b = gw_record_at (y, field);

  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      return gw_number_equal (a, b);
    case GW_FIELD_TEXT:
    case GW_FIELD_ID:
    case GW_FIELD_REF:
      return g_strcmp0 (*(char *const *) a, *(char *const *) b) == 0;
    case GW_FIELD_CHOICE:
    case GW_FIELD_FLAG:
      return *(const int *) a == *(const int *) b;
    case GW_FIELD_PART:
      return gw_record_equal (*(GwRecord *const *) a, *(GwRecord *const *) b);
    case GW_FIELD_LIST:
      return lists_equal (*(GPtrArray *const *) a, *(GPtrArray *const *) b);
    case GW_FIELD_CHANGES:
      return changes_equal (*(GPtrArray *const *) a, *(GPtrArray *const *) b);
    default:
      g_return_val_if_reached (FALSE);
    }
}

gboolean
gw_record_field_equal (const GwRecord *a,
                       const GwRecord *b,
                       const GwField  *field)
{
  return gw_record_has (a, field) == gw_record_has (b, field) &&
         gw_record_value_equal (a, b, field);
}

static gboolean
unknown_equal (JsonObject *a,
               JsonObject *b)
{
  return a == b || (a != NULL && b != NULL && json_object_equal (a, b));
}

gboolean
gw_record_equal (const GwRecord *a,
                 const GwRecord *b)
{
  if (a->type != b->type || a->present != b->present || !unknown_equal (a->unknown, b->unknown))
    return FALSE;

  for (guint i = 0; i < a->type->n_fields; i++)
    if (!gw_record_value_equal (a, b, &a->type->fields[i]))
      return FALSE;

  return TRUE;
}

static void
collect_types (GPtrArray          *types,
               const GwRecordType *type)
{
  if (g_ptr_array_find (types, type, NULL))
    return;

  g_ptr_array_add (types, (gpointer) type);
  for (guint i = 0; i < type->n_fields; i++)
    if (type->fields[i].item != NULL)
      collect_types (types, type->fields[i].item ());
}

GPtrArray *
gw_record_types (const GwRecordType *type)
{
  GPtrArray *types = g_ptr_array_new ();

  collect_types (types, type);
  return types;
}

const GwField *
gw_record_type_field (const GwRecordType *type,
                      const char         *key)
{
  for (guint i = 0; i < type->n_fields; i++)
    if (strcmp (type->fields[i].key, key) == 0)
      return &type->fields[i];

  return NULL;
}

const char *
gw_record_id (const GwRecord *record)
{
  const GwField *first = &record->type->fields[0];

  return first->kind == GW_FIELD_ID ? *(char **) gw_record_at (record, first) : NULL;
}

void
gw_list_extend (GPtrArray       *list,
                const GPtrArray *from)
{
  for (guint i = 0; i < from->len; i++)
    g_ptr_array_add (list, gw_record_copy (g_ptr_array_index (from, i)));
}

GwRecord *
gw_list_find (const GPtrArray *list,
              const char      *id)
{
  for (guint i = 0; i < list->len; i++)
    {
      GwRecord *item = g_ptr_array_index (list, i);

      if (g_strcmp0 (gw_record_id (item), id) == 0)
        return item;
    }

  return NULL;
}
