/* gw-edit-changes.c - what options change, as records come, go and move
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "study/gw-edit-option.h"
#include "study/gw-edit-private.h"
#include "study/gw-json.h"
#include "study/gw-record-json.h"

/* What follows @step in @path, or NULL if it is not below it. */
static const char *
below (const char *path,
       const char *step)
{
  const gsize n = strlen (step);

  return strncmp (path, step, n) == 0 && (path[n] == '/' || path[n] == '\0') ? path + n : NULL;
}

static gboolean
is_within (const char *path,
           const char *whole)
{
  const char *rest = below (path, whole);

  return rest != NULL && *rest == '/';
}

static GwChange *
change_at (const GwStudyOption *option,
           guint                i)
{
  return g_ptr_array_index (option->changes, i);
}

/* The outermost change of something that @path lies in, or NULL. */
static GwChange *
holder_of (const GwStudyOption *option,
           const char          *path)
{
  GwChange *holder = NULL;

  for (guint i = 0; i < option->changes->len; i++)
    {
      GwChange *change = change_at (option, i);

      if (is_within (path, change->path) &&
          (holder == NULL || strlen (change->path) < strlen (holder->path)))
        holder = change;
    }

  return holder;
}

static GwChange *
exact_change (const GwStudyOption *option,
              const char          *path)
{
  for (guint i = 0; i < option->changes->len; i++)
    if (g_str_equal (change_at (option, i)->path, path))
      return change_at (option, i);

  return NULL;
}

gboolean
_gw_edit_has_own (const GwStudyOption *option,
                  const char          *list)
{
  return exact_change (option, list) != NULL;
}

/* A list is an option's own as a whole, of a part only what the change states. */
static gboolean
states (const GwChange *change,
        const char     *path)
{
  const char      *rest = path + strlen (change->path) + 1;
  g_autofree char *key = g_strndup (rest, strcspn (rest, "/"));

  return !JSON_NODE_HOLDS_OBJECT (change->value) ||
         json_object_has_member (json_node_get_object (change->value), key);
}

const char *
gw_edit_changed_at (const GwStudy *study,
                    guint          option,
                    const char    *path)
{
  const GwStudyOption *found;
  const GwChange      *change;

  if (option >= study->options->len)
    return NULL;

  found = g_ptr_array_index (study->options, option);
  change = exact_change (found, path);
  if (change == NULL)
    {
      change = holder_of (found, path);
      if (change != NULL && !states (change, path))
        change = NULL;
    }

  return change != NULL ? change->path : NULL;
}

static void
drop_below (GwStudyOption *option,
            const char    *path,
            gboolean       is_itself_too)
{
  for (guint i = option->changes->len; i-- > 0;)
    {
      const char *rest = below (change_at (option, i)->path, path);

      if (rest != NULL && (is_itself_too || *rest != '\0'))
        g_ptr_array_remove_index (option->changes, i);
    }
}

static void
set (GwStudyOption *option,
     const char    *path,
     JsonNode      *value)
{
  GwChange *change = exact_change (option, path);

  if (change != NULL)
    json_node_unref (change->value);
  else
    {
      change = g_new (GwChange, 1);
      change->path = g_strdup (path);
      g_ptr_array_add (option->changes, change);
    }

  change->value = gw_json_copy (value);
  gw_record_set_present (&option->record, gw_record_type_field (option->record.type, "changes"),
                         TRUE);
}

/* A part keeps the rest of the common one, so only what it states is written. */
static void
set_member (GwChange   *part,
            const char *key,
            JsonNode   *value)
{
  json_object_set_member (json_node_get_object (part->value), key, gw_json_copy (value));
}

static void
own_part (GwStudyOption *option,
          const char    *path,
          JsonNode      *value,
          const GwStudy *view)
{
  JsonObjectIter iter;
  const char    *key;
  JsonNode      *member;

  json_object_iter_init_ordered (&iter, json_node_get_object (value));
  while (json_object_iter_next_ordered (&iter, &key, &member))
    {
      g_autofree char *here = g_strdup_printf ("%s/%s", path, key);

      _gw_edit_own (option, here, member, view);
    }
}

void
_gw_edit_own (GwStudyOption *option,
              const char    *path,
              JsonNode      *value,
              const GwStudy *view)
{
  GwChange        *holder = holder_of (option, path);
  g_autofree char *whole = g_strdup (holder != NULL ? holder->path : path);
  const GwField   *field = NULL;
  GwRecord        *record = gw_record_find ((GwRecord *) &view->record, whole, &field);
  g_autoptr (JsonNode) node = NULL;

  if (record != NULL && field->kind == GW_FIELD_LIST)
    {
      node = gw_record_field_node (record, field);
      drop_below (option, whole, FALSE);
      set (option, whole, node);
    }
  else if (holder != NULL && value != NULL && JSON_NODE_HOLDS_OBJECT (holder->value) &&
           strchr (path + strlen (whole) + 1, '/') == NULL)
    {
      drop_below (option, path, TRUE);
      set_member (holder, path + strlen (whole) + 1, value);
    }
  else if (record != NULL && field->kind == GW_FIELD_PART && value != NULL &&
           JSON_NODE_HOLDS_OBJECT (value))
    own_part (option, path, value, view);
  else
    {
      node = value != NULL ? gw_json_copy (value) : gw_record_field_node (record, field);
      set (option, path, node);
    }
}

/* The option's own list that @list is or lies in. */
static const GwChange *
own_list_around (const GwStudy       *study,
                 const GwStudyOption *option,
                 const char          *list)
{
  const GwChange *change = holder_of (option, list);
  const GwField  *field = NULL;

  if (change == NULL)
    change = exact_change (option, list);
  if (change == NULL ||
      gw_record_find ((GwRecord *) &study->record, change->path, &field) == NULL)
    return NULL;

  return field->kind == GW_FIELD_LIST ? change : NULL;
}

static gboolean
changes_within (const GwStudyOption *option,
                const char          *path)
{
  for (guint i = 0; i < option->changes->len; i++)
    if (is_within (change_at (option, i)->path, path))
      return TRUE;

  return FALSE;
}

gboolean
_gw_edit_is_within_own (const GwStudy       *study,
                        const GwStudyOption *option,
                        const char          *path)
{
  const GwChange *own = own_list_around (study, option, path);

  return own != NULL && is_within (path, own->path);
}

void
_gw_edit_fold (GwStudy    *study,
               const char *list)
{
  for (guint i = 0; i < study->options->len; i++)
    {
      GwStudyOption  *option = g_ptr_array_index (study->options, i);
      const GwChange *own = own_list_around (study, option, list);

      if (own != NULL && changes_within (option, own->path))
        {
          g_autoptr (GwStudy) view = gw_edit_view (study, i);
          g_autofree char *path = g_strdup (own->path);

          _gw_edit_own (option, path, NULL, view);
        }
    }
}

/* Index of the record in @list that the first step of @rest names, or its length. */
static guint
named (const GPtrArray *list,
       const char      *rest)
{
  g_autofree char *step = g_strndup (rest, strcspn (rest, "/"));
  guint64          number;

  for (guint i = 0; i < list->len; i++)
    if (g_strcmp0 (gw_record_id (g_ptr_array_index (list, i)), step) == 0)
      return i;

  if (list->len > 0 && gw_record_id (g_ptr_array_index (list, 0)) == NULL &&
      g_ascii_string_to_unsigned (step, 10, 1, list->len, &number, NULL))
    return (guint) number - 1;

  return list->len;
}

static void
drop (GwStudyOption *option,
      guint          i,
      GPtrArray     *dropped)
{
  GwDroppedChange *drop;

  if (dropped != NULL)
    {
      drop = g_new (GwDroppedChange, 1);
      *drop = (GwDroppedChange){ g_strdup (option->id), g_strdup (change_at (option, i)->path) };
      g_ptr_array_add (dropped, drop);
    }
  g_ptr_array_remove_index (option->changes, i);
}

static void
follow_change (GwStudyOption   *option,
               guint            i,
               const char      *list,
               const GPtrArray *before,
               const GPtrArray *after,
               GPtrArray       *dropped)
{
  GwChange   *change = change_at (option, i);
  const char *rest = below (change->path, list);
  guint       was, is;

  if (rest == NULL || *rest == '\0' || (was = named (before, rest + 1)) == before->len)
    return;

  if (!g_ptr_array_find ((GPtrArray *) after, g_ptr_array_index (before, was), &is))
    drop (option, i, dropped);
  else if (gw_record_id (g_ptr_array_index (before, was)) == NULL)
    {
      const char *tail = rest + 1 + strcspn (rest + 1, "/");
      char       *path = g_strdup_printf ("%s/%u%s", list, is + 1, tail);

      g_free (change->path);
      change->path = path;
    }
}

void
_gw_edit_follow (GwStudy         *study,
                 const char      *list,
                 const GPtrArray *before,
                 const GPtrArray *after,
                 GPtrArray       *dropped)
{
  for (guint i = 0; i < study->options->len; i++)
    {
      GwStudyOption *option = g_ptr_array_index (study->options, i);
      guint          n;

      if (own_list_around (study, option, list) != NULL)
        continue;
      n = option->changes->len;
      for (guint k = n; k-- > 0;)
        follow_change (option, k, list, before, after, dropped);
      if (option->changes->len < n)
        _gw_edit_tidy (&option->record, "changes");
    }
}

void
_gw_edit_copy_changes (GwStudy    *study,
                       const char *from,
                       const char *to)
{
  for (guint i = 0; i < study->options->len; i++)
    {
      GwStudyOption *option = g_ptr_array_index (study->options, i);
      const guint    n = option->changes->len;

      for (guint k = 0; k < n; k++)
        {
          const GwChange *change = change_at (option, k);
          const char     *rest = below (change->path, from);
          GwChange       *copy;

          if (rest == NULL)
            continue;
          copy = g_new (GwChange, 1);
          copy->path = g_strconcat (to, rest, NULL);
          copy->value = gw_json_copy (change->value);
          g_ptr_array_add (option->changes, copy);
        }
    }
}
