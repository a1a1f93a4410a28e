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

/* Whether @shown is @text, set apart from what runs the other way or not (U+2066 ... U+2069). */
static inline gboolean
widgets_reads (const char *shown,
               const char *text)
{
  const gboolean is_apart = g_str_has_prefix (shown, "\342\201\246") &&
                            g_str_has_suffix (shown, "\342\201\251");
  g_autofree char *inside = is_apart ? g_strndup (shown + 3, strlen (shown) - 6) : g_strdup (shown);

  return g_str_equal (inside, text);
}

/* The first label below @top that reads so, or NULL. */
static inline GtkWidget *
widgets_find_label (GtkWidget  *top,
                    const char *text)
{
  g_autoptr (GPtrArray) labels = widgets_find (top, GTK_TYPE_LABEL, NULL);

  for (guint i = 0; i < labels->len; i++)
    if (widgets_reads (gtk_label_get_text (g_ptr_array_index (labels, i)), text))
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
