/* make-polars.c - polars of the catalogue's sections, to ship with the program
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * make-polars FOLDER: writes ID.json for every section of the catalogue that is no thin plate,
 * smooth and without a flap. What is there and still holds is left alone. To be run when the
 * solver's GW_POLAR_VERSION or an outline has changed: ninja polars.
 */

#include <stdlib.h>

#include "study/gw-catalogue.h"
#include "study/gw-section-known.h"

static gboolean
write_section (const char           *folder,
               const GwPolarSubject *subject)
{
  g_autofree char *name = g_strconcat (subject->section, ".json", NULL);
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GArray) subjects = g_array_new (FALSE, FALSE, sizeof (GwPolarSubject));
  g_autoptr (GwPolars) polars = NULL, there = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  gsize            length;

  if (g_file_get_contents (path, &text, &length, NULL))
    there = gw_polars_parse (subject, text, length);
  if (there != NULL)
    return TRUE;

  g_array_append_val (subjects, *subject);
  gw_polars_compute (subjects, NULL, NULL, NULL, NULL);
  polars = gw_polars_find (subject);
  g_free (text);
  text = gw_polars_text (subject, polars);
  if (!g_file_set_contents (path, text, -1, &error))
    {
      g_printerr ("%s\n", error->message);
      return FALSE;
    }
  g_print ("%s\n", path);
  return TRUE;
}

int
main (int   argc,
      char *argv[])
{
  const GPtrArray *sections = gw_catalogue_list ("sections");
  gboolean         is_fine = argc == 2;

  for (guint i = 0; is_fine && i < sections->len; i++)
    {
      const GwStudySection *section = g_ptr_array_index (sections, i);
      GwPolarSubject        subject;

      if (gw_section_subject (section, NULL, &subject) &&
          !gw_section_is_thin_plate (section, &subject.outline))
        is_fine = write_section (argv[1], &subject);
    }

  return is_fine ? EXIT_SUCCESS : EXIT_FAILURE;
}
