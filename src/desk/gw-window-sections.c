/* gw-window-sections.c - sections from files of coordinates
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "desk/gw-file-dialog.h"
#include "desk/gw-section-import.h"
#include "desk/gw-window-private.h"
#include "study/gw-edit.h"

static void
add_cb (GwWindow *self,
        JsonNode *record)
{
  g_autofree char *name = NULL, *path = NULL, *text = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = NULL;

  if (_gw_window_get_evaluation (self) == NULL)
    return; /* the study was closed meanwhile */

  study = gw_edit_insert (gw_document_get_study (self->document), "sections", -1, record, &path,
                          &error);
  if (study != NULL)
    {
      name = gw_edit_record_name (gw_edit_record (study, path));
      text = g_strdup_printf (_ ("Add section %s"), name);
    }
  if (study == NULL || !gw_document_edit (self->document, text, study, NULL, &error))
    {
      _gw_window_tell (self, GW_TELL, _ ("The section was not added."), error->message);
      return;
    }

  gw_document_set_selection (self->document, path);
  g_free (text);
  text = g_strdup_printf (
    _ ("%s is now a section of this study. Its greatest lift is a guess: see where it comes from."),
    name);
  _gw_window_say (self, text);
}

void
_gw_window_add_section (GwWindow *self,
                        GFile    *file)
{
  g_autofree char *basename = g_file_get_basename (file);
  g_autofree char *title = g_strdup_printf (_ ("%s was not added as a section."), basename);
  g_autoptr (GError) error = NULL;
  GwSectionFile *read;
  GtkWindow     *import;

  if (_gw_window_get_evaluation (self) == NULL)
    {
      _gw_window_tell (self, GW_TELL, title,
                       _ ("A section is added to a study: open the study first."));
      return;
    }

  read = gw_section_file_open (file, &error);
  if (read == NULL)
    {
      _gw_window_tell (self, GW_TELL, title, error->message);
      return;
    }

  import = gw_section_import_new (GTK_WINDOW (self), read);
  g_signal_connect_object (import, "add", G_CALLBACK (add_cb), self, G_CONNECT_SWAPPED);
  gtk_window_present (import);
}

static void
section_chosen (GtkWindow *window,
                GFile     *file)
{
  _gw_window_add_section (GW_WINDOW (window), file);
}

static void
add_section_cb (GtkWidget  *widget,
                const char *action,
                GVariant   *parameter)
{
  g_autoptr (GListModel) filters =
    gw_file_filters_new (_ ("Coordinates"), "dat", _ ("All files"), NULL, NULL);
  g_autoptr (GFile) folder = _gw_window_get_folder (GW_WINDOW (widget));
  const GwFileDialog dialog = { .title = _ ("Add a section from a file of coordinates"),
                                .filters = filters,
                                .folder = folder };

  gw_file_dialog_show (GTK_WINDOW (widget), &dialog, section_chosen);
}

void
_gw_window_install_section_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.add-section", NULL, add_section_cb);
}
