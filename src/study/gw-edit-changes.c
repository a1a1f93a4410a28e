/* gw-edit-changes.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-private.h"

#include <string.h>

/* What follows @step in @path, or NULL if it is not below it. */
static const char *
below (const char *path,
       const char *step)
{
  const gsize n = strlen (step);

  return strncmp (path, step, n) == 0 && (path[n] == '/' || path[n] == '\0') ? path + n : NULL;
}

void
_gw_edit_tidy (GwRecord   *owner,
               const char *key)
{
  const GwField *field = gw_record_type_field (owner->type, key);

  if ((*(GPtrArray **) gw_record_at (owner, field))->len == 0)
    gw_record_reset_field (owner, field);
}

/* What options change at @from they change at @to; NULL: no more. */
void
_gw_edit_redirect (GwStudy    *study,
                   const char *from,
                   const char *to)
{
  for (guint i = 0; i < study->options->len; i++)
    {
      GwStudyOption *option = g_ptr_array_index (study->options, i);

      for (guint k = option->changes->len; k-- > 0;)
        {
          GwChange   *change = g_ptr_array_index (option->changes, k);
          const char *rest = below (change->path, from);
          char       *path;

          if (rest != NULL && to == NULL)
            g_ptr_array_remove_index (option->changes, k);
          else if (rest != NULL)
            {
              path = g_strconcat (to, rest, NULL);
              g_free (change->path);
              change->path = path;
            }
        }
      if (to == NULL)
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
          const GwChange *change = g_ptr_array_index (option->changes, k);
          const char     *rest = below (change->path, from);
          GwChange       *copy;

          if (rest == NULL)
            continue;
          copy = g_new (GwChange, 1);
          copy->path = g_strconcat (to, rest, NULL);
          copy->value = json_node_copy (change->value);
          g_ptr_array_add (option->changes, copy);
        }
    }
}
