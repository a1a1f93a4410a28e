/* desk-widgets.h - finding and reading widgets inside others
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>
#include <string.h>

/* Adds @top, and all below it, of @type (G_TYPE_INVALID: any) and css class @class (NULL: any). */
static inline void
widgets_collect (GtkWidget *top,
                 GType      type,
                 const char *class,
                 GPtrArray *found)
{
  if ((type == G_TYPE_INVALID || g_type_is_a (G_OBJECT_TYPE (top), type)) &&
      (class == NULL || gtk_widget_has_css_class (top, class)))
    g_ptr_array_add (found, top);
  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    widgets_collect (child, type, class, found);
}

static inline GPtrArray *
widgets_find (GtkWidget *top,
              GType      type,
              const char *class)
{
  GPtrArray *found = g_ptr_array_new ();

  widgets_collect (top, type, class, found);
  return found;
}

/* The first label below @top that reads so, or NULL. */
static inline GtkWidget *
widgets_find_label (GtkWidget  *top,
                    const char *text)
{
  g_autoptr (GPtrArray) labels = widgets_find (top, GTK_TYPE_LABEL, NULL);

  for (guint i = 0; i < labels->len; i++)
    if (g_strcmp0 (gtk_label_get_text (g_ptr_array_index (labels, i)), text) == 0)
      return g_ptr_array_index (labels, i);

  return NULL;
}

static inline void
widgets_read_cb (GObject      *clipboard,
                 GAsyncResult *result,
                 gpointer      data)
{
  *(char **) data = gdk_clipboard_read_text_finish (GDK_CLIPBOARD (clipboard), result, NULL);
}
