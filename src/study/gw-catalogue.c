/* gw-catalogue.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define G_LOG_DOMAIN "gw-catalogue"

#include "study/gw-catalogue.h"

#include "study/gw-json.h"
#include "study/gw-record-json.h"

#define FOLDER "/org/gramwright/catalogue"

/* The files ship inside the program and a test reads them all, so a fault here is
 * a programmer's and stops it. */
static void
read_file (GwStudyCatalogue *catalogue,
           const char       *name)
{
  g_autofree char *path = g_strdup_printf ("%s/%s", FOLDER, name);
  g_autoptr (GBytes) bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonObject) object = NULL;
  GwStudyCatalogue *part = (GwStudyCatalogue *) gw_record_new (gw_study_catalogue_type ());

  object = gw_json_parse (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &error);
  if (object != NULL)
    gw_record_read (&part->record, object, "", problems);
  if (object == NULL || problems->len > 0)
    g_error ("%s: %s", name,
             object == NULL ? error->message
                            : ((GwProblem *) g_ptr_array_index (problems, 0))->message);

  gw_list_extend (catalogue->materials, part->materials);
  gw_list_extend (catalogue->sections, part->sections);
  gw_list_extend (catalogue->measurements, part->measurements);
  gw_list_extend (catalogue->comparisons, part->comparisons);
  gw_list_extend (catalogue->methods, part->methods);
  gw_list_extend (catalogue->usual_items, part->usual_items);
  gw_list_extend (catalogue->propellers, part->propellers);
  gw_list_extend (catalogue->usual_spars, part->usual_spars);
  gw_record_free (&part->record);
}

const GwStudyCatalogue *
gw_catalogue_get (void)
{
  static GwStudyCatalogue *catalogue;

  if (g_once_init_enter (&catalogue))
    {
      GwStudyCatalogue *fresh = (GwStudyCatalogue *) gw_record_new (gw_study_catalogue_type ());
      g_auto (GStrv) names =
        g_resources_enumerate_children (FOLDER, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);

      for (guint i = 0; names != NULL && names[i] != NULL; i++)
        read_file (fresh, names[i]);

      g_once_init_leave (&catalogue, fresh);
    }

  return catalogue;
}

const GPtrArray *
gw_catalogue_list (const char *key)
{
  const GwRecord *catalogue = &gw_catalogue_get ()->record;
  const GwField  *field = gw_record_type_field (catalogue->type, key);

  return field != NULL && field->kind == GW_FIELD_LIST
           ? *(GPtrArray **) gw_record_at (catalogue, field)
           : NULL;
}

GPtrArray *
gw_catalogue_measured (const char *section)
{
  const GPtrArray *all = gw_catalogue_get ()->measurements;
  GPtrArray       *found = g_ptr_array_new ();

  for (guint i = 0; i < all->len; i++)
    if (g_strcmp0 (((GwStudyMeasurement *) g_ptr_array_index (all, i))->section, section) == 0)
      g_ptr_array_add (found, g_ptr_array_index (all, i));

  return found;
}
