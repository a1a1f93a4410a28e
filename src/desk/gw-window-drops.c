/* gw-window-drops.c - sections from files, and what is dropped on the main window
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "desk/gw-file-dialog.h"
#include "desk/gw-window-private.h"
#include "study/gw-edit.h"
#include "study/gw-section-file.h"

static void
add_section (GwWindow *self,
             GFile    *file)
{
  g_autofree char *basename = g_file_get_basename (file);
  g_autofree char *title = g_strdup_printf (_ ("%s was not added as a section."), basename);
  g_autofree char *name = NULL, *path = NULL, *text = NULL;
  g_autoptr (JsonNode) record = NULL;
  g_autoptr (GwStudy) study = NULL;
  g_autoptr (GError) error = NULL;

  if (_gw_window_get_evaluation (self) == NULL)
    {
      _gw_window_tell (self, GW_TELL, title,
                       _ ("A section is added to a study: open the study first."));
      return;
    }

  record = gw_section_file_load (file, &error);
  if (record != NULL)
    study = gw_edit_insert (gw_document_get_study (self->document), "sections", -1, record, &path,
                            &error);
  if (study != NULL)
    {
      name = gw_edit_record_name (gw_edit_record (study, path));
      text = g_strdup_printf (_ ("Add section %s"), name);
    }
  if (study == NULL || !gw_document_edit (self->document, text, study, NULL, &error))
    {
      _gw_window_tell (self, GW_TELL, title, error->message);
      return;
    }

  gw_document_set_selection (self->document, path);
  g_free (text);
  text = g_strdup_printf (
    _ ("%s is now a section of this study. Its greatest lift is a guess: see its source."), name);
  _gw_window_say (self, text);
}

static void
section_chosen (GtkWindow *window,
                GFile     *file)
{
  add_section (GW_WINDOW (window), file);
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

static gboolean
is_section (GFile *file)
{
  static const char *const endings[] = { ".dat", ".txt", ".csv", ".cor" };
  g_autofree char         *name = g_file_get_basename (file);
  g_autofree char         *low = g_ascii_strdown (name, -1);

  for (guint i = 0; i < G_N_ELEMENTS (endings); i++)
    if (g_str_has_suffix (low, endings[i]))
      return TRUE;

  return FALSE;
}

/* The first study here, the others in windows of their own. */
void
_gw_window_drop (GwWindow *self,
                 GSList   *files)
{
  GwApplication *application = _gw_window_get_application (self);
  GFile         *first = NULL;

  for (GSList *l = files; l != NULL; l = l->next)
    if (is_section (l->data))
      add_section (self, l->data);
    else if (first == NULL)
      first = l->data;
    else
      gw_application_open (application, l->data, NULL);

  if (first != NULL)
    gw_window_open (self, first);
}

void
_gw_window_install_drop_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.add-section", NULL, add_section_cb);
}
