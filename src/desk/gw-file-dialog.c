/* gw-file-dialog.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-file-dialog.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GWeakRef     parent;
  GwFileChosen chosen;
} Question;

static Question *
question_new (GtkWindow   *parent,
              GwFileChosen chosen)
{
  Question *question = g_new (Question, 1);

  g_weak_ref_init (&question->parent, parent);
  question->chosen = chosen;
  return question;
}

static void
answer (Question *question,
        GFile    *file)
{
  g_autoptr (GtkWindow) parent = g_weak_ref_get (&question->parent);

  if (parent != NULL && file != NULL)
    question->chosen (parent, file);

  g_weak_ref_clear (&question->parent);
  g_free (question);
}

#if GTK_CHECK_VERSION(4, 10, 0)

static void
opened_cb (GObject      *dialog,
           GAsyncResult *result,
           gpointer      question)
{
  g_autoptr (GFile) file = gtk_file_dialog_open_finish (GTK_FILE_DIALOG (dialog), result, NULL);

  answer (question, file);
}

static void
saved_cb (GObject      *dialog,
          GAsyncResult *result,
          gpointer      question)
{
  g_autoptr (GFile) file = gtk_file_dialog_save_finish (GTK_FILE_DIALOG (dialog), result, NULL);

  answer (question, file);
}

void
gw_file_dialog_show (GtkWindow          *parent,
                     const GwFileDialog *dialog,
                     GwFileChosen        chosen)
{
  g_autoptr (GtkFileDialog) shown = gtk_file_dialog_new ();
  Question *question = question_new (parent, chosen);

  gtk_file_dialog_set_title (shown, dialog->title);
  gtk_file_dialog_set_filters (shown, dialog->filters);
  gtk_file_dialog_set_initial_folder (shown, dialog->folder);
  if (dialog->is_save)
    {
      gtk_file_dialog_set_initial_name (shown, dialog->name);
      gtk_file_dialog_save (shown, parent, NULL, saved_cb, question);
    }
  else
    gtk_file_dialog_open (shown, parent, NULL, opened_cb, question);
}

#else

static void
response_cb (GtkNativeDialog *dialog,
             int              response,
             gpointer         question)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  answer (question, file);
  g_object_unref (dialog);
}

void
gw_file_dialog_show (GtkWindow          *parent,
                     const GwFileDialog *dialog,
                     GwFileChosen        chosen)
{
  GtkFileChooserNative *shown = gtk_file_chooser_native_new (
    dialog->title, parent,
    dialog->is_save ? GTK_FILE_CHOOSER_ACTION_SAVE : GTK_FILE_CHOOSER_ACTION_OPEN, NULL, NULL);
  GtkFileChooser *chooser = GTK_FILE_CHOOSER (shown);

  for (guint i = 0; i < g_list_model_get_n_items (dialog->filters); i++)
    {
      g_autoptr (GtkFileFilter) filter = g_list_model_get_item (dialog->filters, i);

      gtk_file_chooser_add_filter (chooser, filter);
    }
  if (dialog->folder != NULL)
    gtk_file_chooser_set_current_folder (chooser, dialog->folder, NULL);
  if (dialog->is_save)
    gtk_file_chooser_set_current_name (chooser, dialog->name);

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (shown), TRUE);
  g_signal_connect (shown, "response", G_CALLBACK (response_cb), question_new (parent, chosen));
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (shown));
}

#endif

GListModel *
gw_file_filters_new (const char *name,
                     ...)
{
  GListStore *filters = g_list_store_new (GTK_TYPE_FILE_FILTER);
  va_list     pairs;

  va_start (pairs, name);
  for (; name != NULL; name = va_arg (pairs, const char *))
    {
      g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
      const char *ending = va_arg (pairs, const char *);

      gtk_file_filter_set_name (filter, name);
      if (ending != NULL)
        gtk_file_filter_add_suffix (filter, ending);
      else
        gtk_file_filter_add_pattern (filter, "*");
      g_list_store_append (filters, filter);
    }
  va_end (pairs);

  return G_LIST_MODEL (filters);
}
