/* desk-form.h - the right drawer in a window of its own, and what is done with it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-form-field.h"
#include "desk/gw-form.h"
#include "desk-wait.h"

#define CHORD        "surfaces/wing/stations/2/chord_mm"
#define TWIST        "surfaces/wing/stations/2/twist_deg"
#define PLACE        "equipment/battery/x_mm"
#define SHEET        "builds/1/folded_sheet/material"
#define BATTERY_MASS "equipment/battery/mass_g"

typedef struct
{
  GtkWidget  *window, *form;
  GwDocument *document;
} Desk;

static inline void
desk_init (Desk       *desk,
           GwStudy    *study,
           const char *selection)
{
  desk->document = gw_document_new_study (study);
  wait_until (!gw_document_is_busy (desk->document));
  desk->window = gtk_window_new ();
  desk->form = gw_form_new ();
  gtk_window_set_default_size (GTK_WINDOW (desk->window), 300, 700);
  gtk_window_set_child (GTK_WINDOW (desk->window), desk->form);
  gw_form_set_document (GW_FORM (desk->form), desk->document);
  gw_document_set_selection (desk->document, selection);
  gtk_window_present (GTK_WINDOW (desk->window));
  gtk_test_widget_wait_for_draw (desk->window);
}

static inline void
desk_init_sample (Desk       *desk,
                  const char *selection)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, &error);

  g_assert_no_error (error);
  desk_init (desk, study, selection);
}

/* Window, form and document must be gone, and with them all that could still touch them. */
static inline void
desk_clear (Desk *desk)
{
  g_object_add_weak_pointer (G_OBJECT (desk->window), (gpointer *) &desk->window);
  g_object_add_weak_pointer (G_OBJECT (desk->form), (gpointer *) &desk->form);
  gtk_window_destroy (GTK_WINDOW (desk->window));
  wait_until (desk->window == NULL && desk->form == NULL);
  g_assert_finalize_object (desk->document);
}

/* GTK 4.8 keeps a popover for ever that opens in the same turn in which one has closed. */
static inline void
close_popover (GtkWidget *popover)
{
  gtk_popover_popdown (GTK_POPOVER (popover));
  wait_for_ms (100);
}

typedef gboolean (*Wanted) (GtkWidget  *widget,
                            const char *what);

static inline GtkWidget *
find (GtkWidget  *widget,
      Wanted      is_wanted,
      const char *what)
{
  GtkWidget *found = NULL;

  if (is_wanted (widget, what))
    return widget;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find (child, is_wanted, what);

  return found;
}

static inline gboolean
has_path (GtkWidget  *widget,
          const char *path)
{
  return GW_IS_FORM_FIELD (widget) &&
         g_str_equal (gw_form_field_get_path (GW_FORM_FIELD (widget)), path);
}

static inline gboolean
has_type (GtkWidget  *widget,
          const char *name)
{
  return g_type_is_a (G_OBJECT_TYPE (widget), g_type_from_name (name));
}

static inline gboolean
has_id (GtkWidget  *widget,
        const char *id)
{
  return g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), id) == 0;
}

static inline gboolean
has_word (GtkWidget  *widget,
          const char *label)
{
  return GTK_IS_BUTTON (widget) &&
         g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0;
}

static inline GtkWidget *
field_of (Desk       *desk,
          const char *path)
{
  GtkWidget *field = find (desk->form, has_path, path);

  if (field == NULL)
    g_error ("the form has no field “%s”", path);
  return field;
}

static inline GtkWidget *
entry_of (Desk       *desk,
          const char *path)
{
  return find (field_of (desk, path), has_type, "GtkEntry");
}

static inline const char *
text_of (Desk       *desk,
         const char *path)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry_of (desk, path)));
}

static inline void
type (Desk       *desk,
      const char *path,
      const char *text)
{
  gtk_widget_grab_focus (entry_of (desk, path));
  gtk_editable_set_text (GTK_EDITABLE (entry_of (desk, path)), text);
}

static inline void
enter (Desk       *desk,
       const char *path)
{
  g_signal_emit_by_name (entry_of (desk, path), "activate");
}

/* GTK 4 has no way to send a key; the controller that waits for it is asked. */
static inline gboolean
press (GtkWidget      *widget,
       guint           key,
       GdkModifierType state)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);
  gboolean is_handled = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !is_handled; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", key, 0u, state, &is_handled);
    }

  return is_handled;
}

static inline const char *
reason_of (Desk       *desk,
           const char *path)
{
  GtkWidget *reason = find (field_of (desk, path), has_id, "reason");

  return gtk_widget_get_visible (reason) ? gtk_label_get_text (GTK_LABEL (reason)) : NULL;
}

static inline const char *
remark_of (Desk       *desk,
           const char *path)
{
  GtkWidget *remark = find (field_of (desk, path), has_id, "remark");

  return gtk_widget_get_visible (remark) ? gtk_label_get_text (GTK_LABEL (remark)) : NULL;
}

/* Whose value it is; NULL: nobody's in particular. */
static inline const char *
whose_of (Desk       *desk,
          const char *path)
{
  GtkWidget *whose = find (field_of (desk, path), has_id, "whose");

  return gtk_widget_get_visible (gtk_widget_get_parent (whose))
           ? gtk_label_get_text (GTK_LABEL (whose))
           : NULL;
}

static inline const GwNumber *
number_in (GwStudy    *study,
           const char *path)
{
  const GwField *field = NULL;
  GwRecord      *record = gw_record_find (&study->record, path, &field);

  g_assert_nonnull (record);
  return gw_record_at (record, field);
}

static inline double
value_of (Desk       *desk,
          const char *path)
{
  return number_in (gw_document_get_study (desk->document), path)->value;
}

static inline const char *
undo_name (Desk *desk)
{
  return gw_history_undo_name (gw_document_get_history (desk->document));
}

static inline double
mass_of (GwEvaluation *evaluation,
         guint         option)
{
  return gw_evaluation_outcome (evaluation, option)->results.value[GW_RESULT_MASS];
}

static inline gboolean
tries (Desk *desk)
{
  return gw_document_get_former (desk->document) != NULL;
}

static inline GtkWidget *
open_sureness (Desk       *desk,
               const char *path)
{
  GtkWidget *sureness = find (field_of (desk, path), has_type, "GwSureness");
  GtkWidget *button = find (sureness, has_type, "GtkMenuButton");
  GtkWidget *popover;

  gtk_menu_button_popup (GTK_MENU_BUTTON (button));
  popover = GTK_WIDGET (gtk_menu_button_get_popover (GTK_MENU_BUTTON (button)));
  wait_until (gtk_widget_get_mapped (popover));
  return popover;
}

static inline GtkWidget *
take_back_of (Desk       *desk,
              const char *path)
{
  return find (field_of (desk, path), has_word, "Take back");
}
