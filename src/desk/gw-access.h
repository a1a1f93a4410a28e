/* gw-access.h - names for parts of widgets that assistive technology meets by themselves
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** gw_access_name: what @widget is called, whatever its label reads. */
static inline void
gw_access_name (GtkWidget  *widget,
                const char *name)
{
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/** gw_access_name_drop_down: and the button within, which takes the focus: "Length: inches, in". */
static inline void
gw_access_name_drop_down (GtkDropDown *drop_down,
                          const char  *label)
{
  GtkStringObject *item = gtk_drop_down_get_selected_item (drop_down);
  g_autofree char *name =
    item != NULL ? g_strdup_printf ("%s: %s", label, gtk_string_object_get_string (item))
                 : g_strdup (label);

  /* Newer GTK calls the button as the whole is called. */
  gw_access_name (GTK_WIDGET (drop_down), name);
  gw_access_name (gtk_widget_get_first_child (GTK_WIDGET (drop_down)), name);
}

G_END_DECLS
