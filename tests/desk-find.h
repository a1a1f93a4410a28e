/* desk-find.h - a widget by the name it has in its template
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

/* Below @widget, itself included; NULL: none. */
static inline GtkWidget *
find (GtkWidget  *widget,
      const char *id)
{
  if (g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), id) == 0)
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
