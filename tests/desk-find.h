/* desk-find.h - a widget by the name it has in its template or of its own
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* Below @widget, itself included; by its own name where no template made it; NULL: none. */
static inline GtkWidget *
find (GtkWidget  *widget,
      const char *id)
{
  if (g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), id) == 0 ||
      g_str_equal (gtk_widget_get_name (widget), id))
    return widget;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, id);

      if (found != NULL)
        return found;
    }

  return NULL;
}

/* What a label or an inscription reads. */
static inline const char *
text_on (GtkWidget *widget)
{
  return GTK_IS_LABEL (widget) ? gtk_label_get_text (GTK_LABEL (widget))
                               : gtk_inscription_get_text (GTK_INSCRIPTION (widget));
}

/* What would fire on a key, as neither GTK nor we can press one in the process. */
static inline gboolean
triggers (GtkShortcutTrigger *trigger,
          GtkShortcutTrigger *wanted)
{
  if (GTK_IS_ALTERNATIVE_TRIGGER (trigger))
    return triggers (gtk_alternative_trigger_get_first (GTK_ALTERNATIVE_TRIGGER (trigger)),
                     wanted) ||
           triggers (gtk_alternative_trigger_get_second (GTK_ALTERNATIVE_TRIGGER (trigger)),
                     wanted);

  return gtk_shortcut_trigger_equal (trigger, wanted);
}

/* What fires on a key in that very widget, since GTK cannot press one in the process. */
static inline gboolean
press_shortcut (GtkWidget  *widget,
                const char *key)
{
  g_autoptr (GtkShortcutTrigger) wanted = gtk_shortcut_trigger_parse_string (key);
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      for (guint j = 0; GTK_IS_SHORTCUT_CONTROLLER (controller) &&
                        j < g_list_model_get_n_items (G_LIST_MODEL (controller));
           j++)
        {
          g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (G_LIST_MODEL (controller), j);

          if (triggers (gtk_shortcut_get_trigger (shortcut), wanted))
            return gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, widget,
                                                 gtk_shortcut_get_arguments (shortcut));
        }
    }

  return FALSE;
}
