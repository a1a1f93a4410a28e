/* gw-window-files.c - opening, saving and closing in the main window
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "desk/gw-file-dialog.h"
#include "desk/gw-recent.h"
#include "desk/gw-window-private.h"

#define ENDING ".gramwright"

gboolean
_gw_window_is_edited (GwWindow *self)
{
  return self->document != NULL && gw_document_is_modified (self->document);
}

/* Fields take what was typed when the focus leaves them; a key or a menu does not make it. */
static void
take_typed (GwWindow *self)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  g_object_add_weak_pointer (G_OBJECT (self), (gpointer *) &self);
  if (focus != NULL)
    g_object_add_weak_pointer (G_OBJECT (focus), (gpointer *) &focus);
  gtk_window_set_focus (GTK_WINDOW (self), NULL);
  if (self != NULL && focus != NULL && gtk_widget_get_mapped (focus) &&
      gtk_widget_get_root (focus) == GTK_ROOT (self))
    gtk_window_set_focus (GTK_WINDOW (self), focus);
  if (focus != NULL)
    g_object_remove_weak_pointer (G_OBJECT (focus), (gpointer *) &focus);
  if (self != NULL)
    g_object_remove_weak_pointer (G_OBJECT (self), (gpointer *) &self);
}

static void
say_saved (GwWindow   *self,
           const char *format_name,
           GFile      *file)
{
  g_autofree char *name = g_file_get_parse_name (file);
  g_autofree char *text = g_strconcat (format_name, " ", name, NULL);

  _gw_window_say (self, text);
}

/* Whether it is saved. */
static gboolean
take_saved (GwWindow *self,
            gboolean  is_saved,
            GError   *error)
{
  if (is_saved)
    {
      GFile *file = gw_document_get_file (self->document);

      if (self->ask == GW_TELL_SAVE)
        _gw_window_stop_asking (self);
      gw_recent_add (file);
      say_saved (self, _ ("Saved:"), file);
      return TRUE;
    }

  switch (gw_document_get_on_disk (self->document))
    {
    case GW_ON_DISK_NEWER:
      _gw_window_ask (self, GW_ASK_NOTHING); /* what is asked about the file */
      break;
    case GW_ON_DISK_BROKEN:
      _gw_window_ask (self, GW_ASK_REPLACE);
      break;
    case GW_ON_DISK_SAME:
    case GW_ON_DISK_GONE:
    default:
      _gw_window_tell (self, GW_TELL_SAVE, _ ("The study was not saved. It is all still here."),
                       error->message);
    }

  return FALSE;
}

static gboolean
save (GwWindow *self)
{
  g_autoptr (GError) error = NULL;
  const gboolean is_saved = gw_document_save (self->document, &error);

  return take_saved (self, is_saved, error);
}

/* A name without its ending gets it; but then nobody was asked whether to replace that file. */
static GFile *
with_ending (GwWindow *self,
             GFile    *file)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *full = g_strconcat (name, ENDING, NULL);
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autoptr (GFile) ended = NULL;

  if (g_str_has_suffix (name, ENDING) || folder == NULL)
    return g_object_ref (file);

  ended = g_file_get_child (folder, full);
  if (g_file_query_exists (ended, NULL))
    {
      g_autofree char *reason = g_strdup_printf (
        _ ("%s is there already. To replace it, choose it by its whole name."), full);

      _gw_window_tell (self, GW_TELL_SAVE, _ ("The study was not saved. It is all still here."),
                       reason);
      return NULL;
    }

  return g_steal_pointer (&ended);
}

gboolean
gw_window_save_as (GwWindow *self,
                   GFile    *file)
{
  g_autoptr (GFile) ended = NULL;
  g_autoptr (GError) error = NULL;
  gboolean is_saved;

  g_return_val_if_fail (GW_IS_WINDOW (self), FALSE);
  g_return_val_if_fail (self->document != NULL, FALSE);

  ended = with_ending (self, file);
  if (ended == NULL)
    return FALSE;

  is_saved = gw_document_save_as (self->document, ended, &error);
  if (!is_saved) /* the file of the document has nothing to do with it */
    {
      _gw_window_tell (self, GW_TELL_SAVE, _ ("The study was not saved. It is all still here."),
                       error->message);
      return FALSE;
    }

  return take_saved (self, TRUE, NULL);
}

gboolean
gw_window_save_copy (GwWindow *self,
                     GFile    *file)
{
  g_autoptr (GFile) ended = NULL;
  g_autoptr (GError) error = NULL;

  g_return_val_if_fail (GW_IS_WINDOW (self), FALSE);
  g_return_val_if_fail (self->document != NULL, FALSE);

  ended = with_ending (self, file);
  if (ended == NULL)
    return FALSE;

  if (!gw_document_save_copy (self->document, ended, &error))
    {
      _gw_window_tell (self, GW_TELL, _ ("The copy was not saved."), error->message);
      return FALSE;
    }

  gw_recent_add (ended);
  say_saved (self, _ ("A copy is now in"), ended);
  return TRUE;
}

static void
save_as_chosen (GtkWindow *window,
                GFile     *file)
{
  gw_window_save_as (GW_WINDOW (window), file);
}

static void
save_copy_chosen (GtkWindow *window,
                  GFile     *file)
{
  gw_window_save_copy (GW_WINDOW (window), file);
}

static void
save_and_close_chosen (GtkWindow *window,
                       GFile     *file)
{
  if (gw_window_save_as (GW_WINDOW (window), file))
    gtk_window_close (window);
}

static char *
proposed_name (GwWindow *self)
{
  g_autofree char *name = gw_document_get_name (self->document);

  g_strdelimit (name, G_DIR_SEPARATOR_S, '-');
  return g_str_has_suffix (name, ENDING) ? g_steal_pointer (&name)
                                         : g_strconcat (name, ENDING, NULL);
}

static void
ask_for_name (GwWindow    *self,
              const char  *title,
              GwFileChosen chosen)
{
  g_autoptr (GListModel) filters =
    gw_file_filters_new (_ ("Studies"), "gramwright", _ ("All files"), NULL, NULL);
  g_autoptr (GFile) folder = _gw_window_get_folder (self);
  g_autofree char   *name = proposed_name (self);
  const GwFileDialog dialog = {
    .title = title, .is_save = TRUE, .filters = filters, .folder = folder, .name = name
  };

  gw_file_dialog_show (GTK_WINDOW (self), &dialog, chosen);
}

static void
save_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);

  take_typed (self);
  if (gw_document_needs_name (self->document))
    ask_for_name (self, _ ("Save the study"), save_as_chosen);
  else
    save (self);
}

static void
save_as_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *parameter)
{
  take_typed (GW_WINDOW (widget));
  ask_for_name (GW_WINDOW (widget), _ ("Save the study as"), save_as_chosen);
}

static void
save_copy_cb (GtkWidget  *widget,
              const char *action,
              GVariant   *parameter)
{
  take_typed (GW_WINDOW (widget));
  ask_for_name (GW_WINDOW (widget), _ ("Save a copy of the study"), save_copy_chosen);
}

static void
save_and_close_cb (GtkWidget  *widget,
                   const char *action,
                   GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);

  if (gw_document_needs_name (self->document))
    ask_for_name (self, _ ("Save the study"), save_and_close_chosen);
  else if (save (self))
    gtk_window_close (GTK_WINDOW (self));
}

static void
close_unsaved_cb (GtkWidget  *widget,
                  const char *action,
                  GVariant   *parameter)
{
  gtk_window_destroy (GTK_WINDOW (widget));
}

static void
replace_cb (GtkWidget  *widget,
            const char *action,
            GVariant   *parameter)
{
  GwWindow *self = GW_WINDOW (widget);

  gw_document_keep_mine (self->document);
  _gw_window_stop_asking (self);
  save (self);
}

static gboolean
shows (GwWindow *self,
       GFile    *file)
{
  GwDocument *document = self->document != NULL ? self->document : self->candidate;
  GFile      *own = document != NULL ? gw_document_get_file (document) : NULL;

  return own != NULL && g_file_equal (own, file);
}

gboolean
_gw_window_goes_elsewhere (GwWindow *self,
                           GFile    *file)
{
  GwApplication *application = _gw_window_get_application (self);

  if (shows (self, file) || application == NULL)
    return FALSE;

  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (application)); l != NULL;
       l = l->next)
    if (GW_IS_WINDOW (l->data) && shows (l->data, file))
      {
        gtk_window_present (l->data);
        return TRUE;
      }

  if (!_gw_window_is_edited (self))
    return FALSE;

  gw_application_open (application, file, NULL);
  return TRUE;
}

void
_gw_window_was_opened (GwWindow *self)
{
  GFile *file = gw_document_get_file (self->document);

  _gw_window_stop_asking (self);
  if (file != NULL && g_file_query_exists (file, NULL))
    gw_recent_add (file);
}

gboolean
_gw_window_keeps_open (GwWindow *self)
{
  take_typed (self);
  if (!_gw_window_is_edited (self))
    return FALSE;

  gtk_window_present (GTK_WINDOW (self));
  _gw_window_ask (self, GW_ASK_CLOSE);
  return TRUE;
}

/* Once, not after every edit. */
static void
tell_keeping (GwWindow *self)
{
  const GError *error =
    self->document != NULL ? gw_document_get_keeping_error (self->document) : NULL;
  g_autofree char *text = NULL;

  if (error != NULL && !self->is_keeping_told)
    {
      text = g_strdup_printf (_ ("After a crash unsaved edits could not be brought back: %s"),
                              error->message);
      _gw_window_say (self, text);
    }
  self->is_keeping_told = error != NULL;
}

void
_gw_window_update_files (GwWindow *self)
{
  static const char *const of_study[] = { "win.save", "win.save-as", "win.save-copy",
                                          "win.add-section" };

  for (guint i = 0; i < G_N_ELEMENTS (of_study); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), of_study[i],
                                   _gw_window_get_evaluation (self) != NULL);
  tell_keeping (self);
}

void
_gw_window_install_file_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.save", NULL, save_cb);
  gtk_widget_class_install_action (widget_class, "win.save-as", NULL, save_as_cb);
  gtk_widget_class_install_action (widget_class, "win.save-copy", NULL, save_copy_cb);
  gtk_widget_class_install_action (widget_class, "win.save-and-close", NULL, save_and_close_cb);
  gtk_widget_class_install_action (widget_class, "win.close-unsaved", NULL, close_unsaved_cb);
  gtk_widget_class_install_action (widget_class, "win.replace", NULL, replace_cb);
}
