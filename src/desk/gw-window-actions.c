/* gw-window-actions.c - what the user can do in the main window
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "desk/gw-file-dialog.h"
#include "desk/gw-print.h"
#include "desk/gw-window-private.h"
#include "report/gw-section-figures.h"

#define MOST_LETTERS 60 /* of a file name: four bytes each at most, and 255 bytes in all */

#define DEMO "resource:///org/gramwright/demo/reed-bed.gramwright"

/* If it lies in a folder and not in the program. */
GFile *
_gw_window_get_folder (GwWindow *self)
{
  GFile *file = self->document != NULL ? gw_document_get_file (self->document) : NULL;

  return file != NULL && g_file_is_native (file) ? g_file_get_parent (file) : NULL;
}

static void
open_chosen (GtkWindow *window,
             GFile     *file)
{
  gw_window_open (GW_WINDOW (window), file);
}

static void
open_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  g_autoptr (GListModel) filters =
    gw_file_filters_new (_ ("Studies"), "gramwright", _ ("All files"), NULL, NULL);
  g_autoptr (GFile) folder = _gw_window_get_folder (GW_WINDOW (widget));
  const GwFileDialog dialog = { .title = _ ("Open a study"), .filters = filters, .folder = folder };

  gw_file_dialog_show (GTK_WINDOW (widget), &dialog, open_chosen);
}

static void
open_demo_cb (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  g_autoptr (GFile) file = g_file_new_for_uri (DEMO);

  gw_window_open (GW_WINDOW (widget), file);
}

static void
new_cb (GtkWidget  *widget,
        const char *action,
        GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);

  if (!gw_window_is_empty (self))
    {
      self = gw_window_new (_gw_window_get_application (self));
      gtk_window_present (GTK_WINDOW (self));
    }
  _gw_window_ask_shape (self);
}

static void
reload_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);

  gw_document_reload (self->candidate != NULL ? self->candidate : self->document);
}

static void
dismiss_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *parameter)
{
  _gw_window_dismiss (GW_WINDOW (widget));
}

static void
printed_cb (GtkPrintOperation      *operation,
            GtkPrintOperationResult result,
            GwWindow               *self)
{
  g_autoptr (GError) error = NULL;

  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;

  gtk_print_operation_get_error (operation, &error);
  _gw_window_tell (self, GW_TELL, _ ("The sheet was not printed."), error->message);
}

static const GwPaper *
get_paper (GwWindow *self)
{
  return gw_application_get_paper (_gw_window_get_application (self));
}

static const GwUnits *
get_units (GwWindow *self)
{
  return gw_application_get_units (_gw_window_get_application (self));
}

/* "Reed-bed survey aeroplane, Foaming", of a length that any disk takes. (transfer full) */
static char *
sheet_name (GwWindow *self)
{
  GwEvaluation    *evaluation = _gw_window_get_evaluation (self);
  const GwOutcome *shown =
    gw_evaluation_outcome (evaluation, gw_document_get_shown (self->document));
  g_autofree char *name =
    g_strdup_printf ("%s, %s", gw_study_title (evaluation->study), shown->short_name);
  g_autofree char *cut = g_utf8_substring (name, 0, MIN (g_utf8_strlen (name, -1), MOST_LETTERS));

  return g_strdelimit (g_steal_pointer (&cut), G_DIR_SEPARATOR_S "\n", '-');
}

static void
print_cb (GtkWidget  *widget,
          const char *action,
          GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);
  g_autoptr (GtkPrintOperation) operation =
    gw_print_new (_gw_window_get_evaluation (self), gw_document_get_shown (self->document),
                  get_paper (self), get_units (self));

  g_autoptr (GtkPrintSettings) settings = gtk_print_settings_new ();
  g_autofree char *name = sheet_name (self);
  g_autoptr (GFile) folder = _gw_window_get_folder (self);

  /* Should it be printed to a file. */
  gtk_print_settings_set (settings, GTK_PRINT_SETTINGS_OUTPUT_BASENAME, name);
  if (folder != NULL)
    gtk_print_settings_set (settings, GTK_PRINT_SETTINGS_OUTPUT_DIR, g_file_peek_path (folder));
  gtk_print_operation_set_print_settings (operation, settings);
  /* An error comes with "done" as well. */
  g_signal_connect_object (operation, "done", G_CALLBACK (printed_cb), self, 0);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self),
                           NULL);
}

void
gw_window_export (GwWindow *self,
                  GFile    *file)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *name = g_file_get_parse_name (file);
  g_autofree char *text = NULL;

  g_return_if_fail (GW_IS_WINDOW (self));
  g_return_if_fail (_gw_window_get_evaluation (self) != NULL);

  if (!gw_print_to_file (_gw_window_get_evaluation (self), gw_document_get_shown (self->document),
                         get_paper (self), get_units (self), file, &error))
    {
      _gw_window_tell (self, GW_TELL, _ ("The sheet was not exported."), error->message);
      return;
    }

  if (self->ask == GW_TELL)
    _gw_window_stop_asking (self);
  text = g_strdup_printf (_ ("The sheet is now in %s"), name);
  _gw_window_say (self, text);
}

static void
export_chosen (GtkWindow *window,
               GFile     *file)
{
  gw_window_export (GW_WINDOW (window), file);
}

static void
export_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);
  g_autoptr (GListModel) filters =
    gw_file_filters_new ("PDF", "pdf", "SVG", "svg", "PNG", "png", NULL);
  g_autoptr (GFile) folder = _gw_window_get_folder (self);
  g_autofree char   *stem = sheet_name (self);
  g_autofree char   *name = g_strconcat (stem, ".pdf", NULL);
  const GwFileDialog dialog = {
    .title = _ ("Export the sheet as PDF, SVG or PNG, by the ending of its name"),
    .is_save = TRUE,
    .filters = filters,
    .folder = folder,
    .name = name,
  };

  gw_file_dialog_show (GTK_WINDOW (self), &dialog, export_chosen);
}

/* Made when it is asked for: it holds as many widgets as the window itself. */
static void
keys_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  GtkApplicationWindow *window = GTK_APPLICATION_WINDOW (widget);

  if (gtk_application_window_get_help_overlay (window) == NULL)
    {
      g_autoptr (GtkBuilder) builder =
        gtk_builder_new_from_resource ("/org/gramwright/desk/gw-keys.ui");

      gtk_application_window_set_help_overlay (
        window, GTK_SHORTCUTS_WINDOW (gtk_builder_get_object (builder, "keys")));
    }
  gtk_window_present (GTK_WINDOW (gtk_application_window_get_help_overlay (window)));
}

static void
next_option_cb (GtkWidget  *widget,
                const char *action,
                GVariant   *parameter)
{
  GwDocument *document = GW_WINDOW (widget)->document;

  gw_document_set_shown (document, gw_document_get_shown (document) + 1);
}

static void
previous_option_cb (GtkWidget  *widget,
                    const char *action,
                    GVariant   *parameter)
{
  GwDocument *document = GW_WINDOW (widget)->document;

  if (gw_document_get_shown (document) > 0)
    gw_document_set_shown (document, gw_document_get_shown (document) - 1);
}

/* As a picture and as SVG: whoever pastes it takes what it can use. */
static GdkContentProvider *
provider_new (const GwDrawing *drawing,
              const GwPaper   *paper,
              const char      *title)
{
  g_autoptr (GBytes) png =
    gw_export_bytes (drawing, paper->width, paper->height, title, GW_FILE_PNG, NULL);
  g_autoptr (GBytes) svg =
    gw_export_bytes (drawing, paper->width, paper->height, title, GW_FILE_SVG, NULL);
  GdkContentProvider *forms[2];

  if (png == NULL || svg == NULL)
    return NULL;

  forms[0] = gdk_content_provider_new_for_bytes ("image/png", png);
  forms[1] = gdk_content_provider_new_for_bytes ("image/svg+xml", svg);
  return gdk_content_provider_new_union (forms, G_N_ELEMENTS (forms));
}

/* @drawing: (transfer full) */
static void
copy_drawing (GwWindow  *self,
              GwDrawing *drawing)
{
  const char *title = gw_study_title (_gw_window_get_evaluation (self)->study);
  g_autoptr (GdkContentProvider) provider = provider_new (drawing, get_paper (self), title);

  gw_drawing_free (drawing);
  if (provider == NULL)
    {
      _gw_window_say (self, _ ("The figure could not be copied."));
      return;
    }

  gdk_clipboard_set_content (gtk_widget_get_clipboard (GTK_WIDGET (self)), provider);
  _gw_window_say (self, _ ("The figure can be pasted, as a picture or as SVG."));
}

static void
sections_made_cb (GObject      *none,
                  GAsyncResult *result,
                  gpointer      data)
{
  g_autoptr (GwWindow) self = data;
  g_autoptr (GwSectionSheet) sheet = gw_section_sheet_made (result);
  const GwPaper *paper;

  if (_gw_window_get_evaluation (self) == NULL) /* closed meanwhile */
    return;

  paper = get_paper (self);
  copy_drawing (self, gw_section_sheet_draw (sheet, paper->width, paper->height, FALSE));
}

static void
copy_figure_cb (GtkWidget  *widget,
                const char *action,
                GVariant   *parameter)
{
  GwWindow      *self = GW_WINDOW (widget);
  GwEvaluation  *evaluation = _gw_window_get_evaluation (self);
  const GwUnits *units = gw_application_get_units (_gw_window_get_application (self));
  const char    *name = g_variant_get_string (parameter, NULL);
  const GwPaper *paper = get_paper (self);
  g_autoptr (GwSheet) sheet = NULL;
  GwSectionFigureKind section_kind;
  GwFigureKind        kind;

  if (evaluation != NULL && gw_section_figure_parse (name, &section_kind))
    gw_section_sheet_make (evaluation, section_kind, &GW_SECTION_CHOICE_ALL, units, NULL,
                           sections_made_cb, g_object_ref (self));
  if (evaluation == NULL || !gw_figure_kind_parse (name, &kind))
    return;

  sheet = gw_sheet_new (evaluation, gw_document_get_shown (self->document),
                        kind == GW_FIGURE_SHEET, units);
  copy_drawing (self, gw_sheet_draw (sheet, kind, paper->width, paper->height, FALSE));
}

/* Properties of the desk; each holds it, so that they have to go before it can. */
static const char *const of_desk[] = { "outline", "form", "table", "sections" };

void
_gw_window_remove_actions (GwWindow *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (of_desk); i++)
    g_action_map_remove_action (G_ACTION_MAP (self), of_desk[i]);
}

void
_gw_window_init_actions (GwWindow *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (of_desk); i++)
    {
      g_autoptr (GPropertyAction) action =
        g_property_action_new (of_desk[i], self->desk, of_desk[i]);

      g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
    }
}

void
_gw_window_install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.new", NULL, new_cb);
  gtk_widget_class_install_action (widget_class, "win.open", NULL, open_cb);
  gtk_widget_class_install_action (widget_class, "win.open-demo", NULL, open_demo_cb);
  gtk_widget_class_install_action (widget_class, "win.reload", NULL, reload_cb);
  gtk_widget_class_install_action (widget_class, "win.dismiss", NULL, dismiss_cb);
  gtk_widget_class_install_action (widget_class, "win.print", NULL, print_cb);
  gtk_widget_class_install_action (widget_class, "win.export", NULL, export_cb);
  gtk_widget_class_install_action (widget_class, "win.copy-figure", "s", copy_figure_cb);
  gtk_widget_class_install_action (widget_class, "win.keys", NULL, keys_cb);
  gtk_widget_class_install_action (widget_class, "win.next-option", NULL, next_option_cb);
  gtk_widget_class_install_action (widget_class, "win.previous-option", NULL, previous_option_cb);
  _gw_window_install_file_actions (widget_class);
  _gw_window_install_menu_actions (widget_class);
  _gw_window_install_section_actions (widget_class);
  _gw_window_install_notice_actions (widget_class);
  gtk_widget_class_install_property_action (widget_class, "win.shown", "shown");
  gtk_widget_class_install_property_action (widget_class, "win.dark", "dark");

  /* Not keys of the application: those would be taken from fields that use them. */
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Down, 0, "win.next-option", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Page_Up, 0, "win.previous-option",
                                       NULL);
}
