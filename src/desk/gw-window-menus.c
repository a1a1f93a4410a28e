/* gw-window-menus.c - undo, and the studies opened last, in the main window
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "desk/gw-recent.h"
#include "desk/gw-window-private.h"

#define MOST_RECENT 8

static void
undo_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  GwWindow        *self = GW_WINDOW (widget);
  const char      *name = gw_history_undo_name (gw_document_get_history (self->document));
  g_autofree char *text = name != NULL ? g_strdup_printf (_ ("Undone: %s"), name) : g_strdup ("");

  gw_document_undo (self->document);
  _gw_window_say_step (self, text);
}

static void
redo_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  GwWindow        *self = GW_WINDOW (widget);
  const char      *name = gw_history_redo_name (gw_document_get_history (self->document));
  g_autofree char *text =
    name != NULL ? g_strdup_printf (_ ("Done again: %s"), name) : g_strdup ("");

  gw_document_redo (self->document);
  _gw_window_say_step (self, text);
}

static void
open_recent_cb (GtkWidget  *widget,
                const char *action,
                GVariant   *parameter)
{
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (parameter, NULL));

  gw_window_open (GW_WINDOW (widget), file);
}

static void
append_step (GMenu      *menu,
             const char *label,
             const char *action,
             const char *accel)
{
  g_autoptr (GMenuItem) item = g_menu_item_new (label, action);

  g_menu_item_set_attribute (item, "accel", "s", accel);
  g_menu_append_item (menu, item);
}

/* "Undo Move the battery"; an underscore would mark a key. */
static char *
step_label (const char *word,
            const char *step)
{
  g_autofree char *text = step != NULL ? g_strdup_printf ("%s %s", word, step) : g_strdup (word);
  g_auto (GStrv) parts = g_strsplit (text, "_", -1);

  return g_strjoinv ("__", parts);
}

void
_gw_window_update_undo (GwWindow *self)
{
  GwDocument      *document = self->document;
  GwHistory       *history = document != NULL ? gw_document_get_history (document) : NULL;
  const char      *undo = history != NULL ? gw_history_undo_name (history) : NULL;
  const char      *redo = history != NULL ? gw_history_redo_name (history) : NULL;
  g_autofree char *undo_label = step_label (_ ("Undo"), undo);
  g_autofree char *redo_label = step_label (_ ("Redo"), redo);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.undo", undo != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "win.redo", redo != NULL);
  if (g_strcmp0 (undo_label, self->undo_label) == 0 &&
      g_strcmp0 (redo_label, self->redo_label) == 0)
    return;

  g_menu_remove_all (self->undo_menu);
  append_step (self->undo_menu, undo_label, "win.undo", "<Control>z");
  append_step (self->undo_menu, redo_label, "win.redo", "<Control><Shift>z");
  g_free (self->undo_label);
  g_free (self->redo_label);
  self->undo_label = g_steal_pointer (&undo_label);
  self->redo_label = g_steal_pointer (&redo_label);
}

static void
update_recent (GwWindow *self)
{
  g_autoptr (GPtrArray) list = gw_recent_list (MOST_RECENT);

  g_menu_remove_all (self->recent_menu);
  for (guint i = 0; i < list->len; i++)
    {
      const GwRecent  *recent = g_ptr_array_index (list, i);
      g_autofree char *text = g_strdup_printf ("%s (%s)", recent->name, recent->folder);
      g_autofree char *label = step_label (text, NULL);
      g_autoptr (GMenuItem) item = g_menu_item_new (label, NULL);

      g_menu_item_set_action_and_target (item, "win.open-recent", "s", recent->uri);
      g_menu_append_item (self->recent_menu, item);
    }
  if (list->len == 0)
    g_menu_append (self->recent_menu, _ ("No study was opened yet"), "win.no-recent");
}

void
_gw_window_init_menus (GwWindow *self)
{
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed",
                           G_CALLBACK (update_recent), self, G_CONNECT_SWAPPED);
  update_recent (self);
}

void
_gw_window_dispose_menus (GwWindow *self)
{
  g_clear_pointer (&self->undo_label, g_free);
  g_clear_pointer (&self->redo_label, g_free);
}

void
_gw_window_install_menu_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "win.undo", NULL, undo_cb);
  gtk_widget_class_install_action (widget_class, "win.redo", NULL, redo_cb);
  gtk_widget_class_install_action (widget_class, "win.open-recent", "s", open_recent_cb);

  /* Not keys of the application: a text that is being typed has its own undo first. */
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK, "win.undo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "win.redo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_y, GDK_CONTROL_MASK, "win.redo", NULL);
}
