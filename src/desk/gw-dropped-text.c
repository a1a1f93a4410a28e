/* gw-dropped-text.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-dropped-text.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-form-words.h"

#define BETWEEN " \302\267 " /* U+00B7 */

/* "Wing · Station 2 · Chord" */
static char *
place_text (const GwStudy *study,
            const char    *path)
{
  const char      *slash = strrchr (path, '/');
  const GwField   *field = NULL;
  g_autofree char *owner = slash != NULL ? g_strndup (path, (gsize) (slash - path)) : NULL;
  g_autofree char *place = owner != NULL ? gw_form_record_place (study, owner) : NULL;

  if (place == NULL || gw_record_find ((GwRecord *) &study->record, path, &field) == NULL)
    return g_strdup (path);

  return g_strconcat (place, BETWEEN, gw_form_label (field), NULL);
}

static char *
option_text (const GwStudy *study,
             const char    *id)
{
  const GwStudyOption *option = (const GwStudyOption *) gw_list_find (study->options, id);

  return g_strdup (option != NULL && option->name != NULL ? option->name : id);
}

char *
gw_dropped_text (const GwStudy   *study,
                 const GPtrArray *dropped)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < dropped->len; i++)
    {
      const GwDroppedChange *change = g_ptr_array_index (dropped, i);
      g_autofree char       *place = place_text (study, change->path);
      g_autofree char       *option = option_text (study, change->option);

      if (i > 0)
        g_string_append (text, "; ");
      /* Translators: what was set, then the option that set it: "Battery · Aft, set in Core" */
      g_string_append_printf (text, _ ("%s, set in %s"), place, option);
    }

  /* Translators: after a record was removed: "Gone with it: Battery · Aft, set in Core" */
  return g_strdup_printf (_ ("Gone with it: %s"), text->str);
}
