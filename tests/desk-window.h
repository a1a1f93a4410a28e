/* desk-window.h - windows of the program, driven from within
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-window.h"
#include "desk-find.h"
#include "desk-wait.h"

static inline GtkWidget *
get_widget (GwWindow   *window,
            const char *id)
{
  GtkWidget *found = find (GTK_WIDGET (window), id);

  if (found == NULL)
    g_error ("the window has no “%s”", id);
  return found;
}

static inline const char *
text_in (GwWindow   *window,
         const char *id)
{
  return text_on (get_widget (window, id));
}

/* Pages are made when they are wanted first. */
static inline gboolean
is_mapped (GwWindow   *window,
           const char *id)
{
  GtkWidget *widget = find (GTK_WIDGET (window), id);

  return widget != NULL && gtk_widget_get_mapped (widget);
}

/* The button to be seen below @widget that bears @label, mnemonic and all; or NULL. */
static inline GtkWidget *
find_button (GtkWidget  *widget,
             const char *label)
{
  if (GTK_IS_BUTTON (widget) && gtk_widget_get_mapped (widget) &&
      g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0)
    return widget;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_button (child, label);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static inline void
push_button (GwWindow   *window,
             const char *label)
{
  GtkWidget *button = find_button (GTK_WIDGET (window), label);

  if (button == NULL || !gtk_widget_is_sensitive (button))
    g_error ("no button “%s” can be pushed", label);
  g_signal_emit_by_name (button, "clicked");
}

static inline GwWindow *
open_window (GwApplication *application,
             GFile         *file)
{
  GwWindow *window = gw_window_new (application);

  gtk_window_present (GTK_WINDOW (window));
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (window)));
  if (file != NULL)
    {
      gw_window_open (window, file);
      wait_until (gw_window_get_document (window) != NULL);
    }
  return window;
}

/* Proves that the window has gone with all it held. */
static inline void
destroy_window (GwWindow *window)
{
  GwDocument *document = gw_window_get_document (window);

  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  if (document != NULL)
    g_object_add_weak_pointer (G_OBJECT (document), (gpointer *) &document);
  gtk_window_destroy (GTK_WINDOW (window));
  wait_until (window == NULL && document == NULL);
}

/* An edit that undo calls "Change the chord". */
static inline void
edit_chord (GwDocument *document,
            double      chord)
{
  g_autoptr (JsonNode) node = json_node_init_double (json_node_alloc (), chord);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) edited = gw_study_edit (
    gw_document_get_study (document), "surfaces/wing/stations/2/chord_mm", node, &error);

  g_assert_no_error (error);
  gw_document_edit (document, "Change the chord", edited, NULL, &error);
  g_assert_no_error (error);
}

static inline double
chord_in (GwStudy *study)
{
  const GwField *field;
  GwRecord      *record =
    gw_record_find (&study->record, "surfaces/wing/stations/2/chord_mm", &field);

  return ((GwNumber *) gw_record_at (record, field))->value;
}

static inline double
chord_on_disk (GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_load (file, NULL, &error);

  g_assert_no_error (error);
  return chord_in (study);
}
