/* desk-keys.h - the keyboard alone: real keys, and what has the focus
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gdk/x11/gdkx.h>
#include <string.h>

#include "desk-pointer.h"

/* More than there are stops in any window. */
#define MOST_STOPS 150

/* Keys go to @window from now on: nobody manages the windows of the test's display. */
static inline void
keys_to (GtkWindow *window)
{
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (window)));
  point ("windowfocus --sync %lu",
         (gulong) gdk_x11_surface_get_xid (gtk_native_get_surface (GTK_NATIVE (window))));
  wait_until (gtk_window_is_active (window));
}

/* The window that has the focus. */
static inline GtkWindow *
keys_window (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);

      if (gtk_window_is_active (window))
        return window;
    }

  g_error ("no window has the focus");
}

/* Of the widget itself, or NULL. (transfer full) */
static inline char *
keys_own_name (GtkWidget *widget)
{
  g_autofree char *name = NULL;

  if (!gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    return NULL;

  /* Of two values that differ GTK tells which one there is. */
  name = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                             "\x01");
  return name != NULL ? g_strdup (name) : NULL;
}

/* GTK does not tell which label it is: a button's own, the one that its key belongs to, or that
 * stands before it. (transfer full) */
static inline char *
keys_label_of (GtkWidget *widget)
{
  g_autoptr (GList) labels = gtk_widget_list_mnemonic_labels (widget);
  GtkWidget *label = labels != NULL ? labels->data : gtk_widget_get_prev_sibling (widget);

  if (GTK_IS_BUTTON (widget) && GTK_IS_LABEL (gtk_button_get_child (GTK_BUTTON (widget))))
    label = gtk_button_get_child (GTK_BUTTON (widget));
  return GTK_IS_LABEL (label) ? g_strdup (gtk_label_get_text (GTK_LABEL (label))) : NULL;
}

/* What assistive technology calls @widget, without marks of keys; "": nothing. (transfer full) */
static inline char *
keys_name (GtkWidget *widget)
{
  const GtkAccessibleRelation relation = GTK_ACCESSIBLE_RELATION_LABELLED_BY;
  g_autofree char            *name = keys_own_name (widget);
  g_auto (GStrv) parts = NULL;

  if (name == NULL && gtk_test_accessible_has_relation (GTK_ACCESSIBLE (widget), relation))
    name = keys_label_of (widget);
  parts = g_strsplit (name != NULL ? name : "", "_", -1);
  return g_strjoinv ("", parts);
}

static inline GtkWidget *
keys_focus (void)
{
  GtkWidget *focus = gtk_window_get_focus (keys_window ());

  /* What is typed goes into a part of the entry. */
  if (GTK_IS_TEXT (focus))
    focus = gtk_widget_get_parent (focus);
  return focus;
}

/* What has the focus is there, within its window (or what has opened over it, which may reach
 * further) and within all that scrolls. */
static inline gboolean
keys_is_seen (void)
{
  GtkWidget *focus = keys_focus ();

  if (focus == NULL || !gtk_widget_get_mapped (focus))
    return FALSE;

  for (GtkWidget *outer = gtk_widget_get_parent (focus); outer != NULL;
       outer = gtk_widget_get_parent (outer))
    {
      graphene_rect_t       bounds, seen;
      const graphene_rect_t whole =
        GRAPHENE_RECT_INIT (0.0f, 0.0f, (float) gtk_widget_get_width (outer),
                            (float) gtk_widget_get_height (outer));

      if (!GTK_IS_SCROLLED_WINDOW (outer) && !GTK_IS_NATIVE (outer))
        continue;
      /* Of what is large a part will do. */
      if (!gtk_widget_compute_bounds (focus, outer, &bounds) ||
          !graphene_rect_intersection (&bounds, &whole, &seen) ||
          (double) seen.size.height < 0.5 * MIN ((double) bounds.size.height, 30.0))
        return FALSE;
      if (GTK_IS_NATIVE (outer))
        break;
    }

  return TRUE;
}

static inline gboolean
keys_are_on (const char *name)
{
  GtkWidget       *focus = keys_focus ();
  g_autofree char *present = focus != NULL ? keys_name (focus) : g_strdup ("");

  return keys_is_seen () && g_pattern_match_simple (name, present);
}

/* What bears that name (or begins with it, for "name*") has the focus, or will presently. */
static inline void
keys_expect (const char *name)
{
  gboolean    is_over = FALSE;
  const guint source = g_timeout_add (WAIT_LIMIT, wait_flag_cb, &is_over);

  while (!is_over && !keys_are_on (name))
    g_main_context_iteration (NULL, TRUE);
  if (is_over)
    {
      GtkWidget       *focus = keys_focus ();
      g_autofree char *present = focus != NULL ? keys_name (focus) : NULL;

      g_error ("“%s” (%s) has the focus, %s, not “%s”", present,
               focus != NULL ? G_OBJECT_TYPE_NAME (focus) : "nothing",
               keys_is_seen () ? "in sight" : "out of sight", name);
    }
  g_source_remove (source);
}

/* Presses keys as xdotool names them. */
static inline void
keys_press (const char *keys)
{
  g_autofree char *words = g_strdup_printf ("key --delay 30 %s", keys);

  pointer_run (words, 30);
}

static inline void
keys_type (const char *text)
{
  g_autofree char *quoted = g_shell_quote (text);
  g_autofree char *words = g_strdup_printf ("type --delay 12 %s", quoted);

  pointer_run (words, 30);
}

/* Presses @key until what is called @name has the focus. */
static inline GtkWidget *
keys_go_by (const char *key,
            const char *name)
{
  g_autoptr (GString) met = g_string_new (NULL);

  for (int i = 0; i < MOST_STOPS; i++)
    {
      g_autofree char *present = NULL;

      wait_until (keys_is_seen ());
      if (keys_are_on (name))
        return keys_focus ();
      present = keys_name (keys_focus ());
      g_string_append_printf (met, "\n  %s (%s)", present, G_OBJECT_TYPE_NAME (keys_focus ()));
      keys_press (key);
    }

  g_error ("%s does not come to “%s”, but to:%s", key, name, met->str);
}

static inline GtkWidget *
keys_go (const char *name)
{
  return keys_go_by ("Tab", name);
}
