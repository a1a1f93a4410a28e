/* gw-edit-option.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-edit-private.h"

#include <string.h>

#include "study/gw-check.h"

static GwStudyOption *
option_at (const GwStudy *study,
           guint          option)
{
  return option < study->options->len ? g_ptr_array_index (study->options, option) : NULL;
}

static GwChange *
find_change (const GwStudyOption *option,
             const char          *path,
             guint               *index)
{
  for (*index = 0; *index < option->changes->len; (*index)++)
    {
      GwChange *change = g_ptr_array_index (option->changes, *index);

      if (g_str_equal (change->path, path))
        return change;
    }

  return NULL;
}

JsonNode *
gw_edit_change_of (const GwStudy *study,
                   guint          option,
                   const char    *path)
{
  GwStudyOption *found = option_at (study, option);
  guint          index;
  GwChange      *change = found != NULL ? find_change (found, path, &index) : NULL;

  return change != NULL ? change->value : NULL;
}

static void
set_change (GwStudyOption *option,
            const char    *path,
            JsonNode      *value)
{
  guint     index;
  GwChange *change = find_change (option, path, &index);

  if (change != NULL)
    json_node_unref (change->value);
  else
    {
      change = g_new (GwChange, 1);
      change->path = g_strdup (path);
      g_ptr_array_add (option->changes, change);
    }

  change->value = json_node_copy (value);
  gw_record_set_present (&option->record, gw_record_type_field (option->record.type, "changes"),
                         TRUE);
}

GwStudy *
gw_edit_for_option (const GwStudy *study,
                    guint          option,
                    const char    *path,
                    JsonNode      *value,
                    GError       **error)
{
  g_autoptr (GwStudy) edited = NULL;

  if (value == NULL || g_str_has_prefix (path, "options/"))
    return gw_study_edit (study, path, value, error);

  edited = gw_study_copy (study);
  if (option_at (edited, option) == NULL)
    {
      _gw_edit_refuse ("options", error);
      return NULL;
    }

  set_change (option_at (edited, option), path, value);
  return _gw_edit_checked (g_steal_pointer (&edited), error);
}

GwStudy *
gw_edit_take_back (const GwStudy *study,
                   guint          option,
                   const char    *path,
                   GError       **error)
{
  g_autoptr (GwStudy) edited = gw_study_copy (study);
  GwStudyOption *found = option_at (edited, option);
  guint          index;

  if (found == NULL || find_change (found, path, &index) == NULL)
    {
      _gw_edit_refuse (path, error);
      return NULL;
    }

  g_ptr_array_remove_index (found->changes, index);
  if (found->changes->len == 0)
    gw_record_reset_field (&found->record, gw_record_type_field (found->record.type, "changes"));
  return _gw_edit_checked (g_steal_pointer (&edited), error);
}

GwStudy *
gw_edit_set (const GwStudy *study,
             guint          option,
             gboolean       is_only_here,
             const char    *path,
             JsonNode      *value,
             GError       **error)
{
  g_autoptr (GwStudy) edited = gw_study_copy (study);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  const gboolean is_here =
    is_only_here || gw_edit_change_of (study, option, path) != NULL;

  g_return_val_if_fail (option < study->options->len, NULL);

  if (is_here && value != NULL && !g_str_has_prefix (path, "options/"))
    set_change (option_at (edited, option), path, value);
  else
    gw_study_put (edited, path, value, problems);

  gw_study_check_names (edited, problems);
  return gw_problems_to_error (problems, error) ? g_steal_pointer (&edited) : NULL;
}

JsonNode *
gw_edit_number (const GwNumber *number,
                double          value)
{
  g_autoptr (JsonObject) object = NULL;

  if (number->form == GW_FORM_PLAIN && number->origin == GW_ORIGIN_GIVEN && number->source == NULL)
    return json_node_init_double (json_node_alloc (), value);

  object = json_object_new ();
  if (number->form == GW_FORM_RANGE)
    {
      json_object_set_double_member (object, "low", number->low + value - number->value);
      json_object_set_double_member (object, "typical", value);
      json_object_set_double_member (object, "high", number->high + value - number->value);
    }
  else
    json_object_set_double_member (object, "value", value);
  if (number->form == GW_FORM_SPREAD)
    json_object_set_double_member (object, "spread", number->spread);
  if (number->origin != GW_ORIGIN_GIVEN)
    json_object_set_string_member (object, "origin", gw_origin_key (number->origin));
  if (number->source != NULL)
    json_object_set_string_member (object, "source", number->source);

  return json_node_init_object (json_node_alloc (), object);
}
