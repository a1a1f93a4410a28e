/* desk-drawer.h - the outline in a window of its own, on a demo
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "demos.h"
#include "desk-find.h"
#include "desk-wait.h"
#include "desk/gw-drawer.h"
#include "desk/gw-outline-row.h"

static const char *const lists[] = { "options", "airframe", "equipment", "study", "own" };

/* A drawer in a window, on a demo. */
typedef struct
{
  GtkWidget  *window;
  GwDrawer   *drawer;
  GwDocument *document;
  char       *start;   /* text of the study */
  char       *message; /* the last one */
  guint       n_renames;
} Desk;

static inline void
message_cb (Desk       *desk,
            const char *text)
{
  g_free (desk->message);
  desk->message = g_strdup (text);
}

static inline void
rename_cb (Desk *desk)
{
  desk->n_renames++;
}

static inline void
desk_init (Desk       *desk,
           const char *demo)
{
  g_autoptr (GwStudy) study = demo_load (demo);

  *desk = (Desk){ .window = gtk_window_new (), .start = gw_study_text (study) };
  desk->document = gw_document_new_study (study);
  desk->drawer = g_object_new (GW_TYPE_DRAWER, NULL);
  g_signal_connect_swapped (desk->drawer, "message", G_CALLBACK (message_cb), desk);
  g_signal_connect_swapped (desk->drawer, "rename", G_CALLBACK (rename_cb), desk);
  gtk_window_set_child (GTK_WINDOW (desk->window), GTK_WIDGET (desk->drawer));
  gtk_window_set_default_size (GTK_WINDOW (desk->window), 260, 500);
  gw_drawer_set_document (desk->drawer, desk->document);
  gtk_window_present (GTK_WINDOW (desk->window));
  wait_until (gtk_widget_get_mapped (desk->window) && !gw_document_is_busy (desk->document));
  gtk_test_widget_wait_for_draw (desk->window);
}

/* Undone to the start the study is what it was; the drawer goes and keeps nothing. */
static inline void
desk_clear (Desk *desk)
{
  GwHistory       *history = gw_document_get_history (desk->document);
  g_autofree char *text = NULL;
  GwDrawer        *drawer = desk->drawer;

  while (gw_history_undo_name (history) != NULL)
    gw_document_undo (desk->document);
  text = gw_study_text (gw_document_get_study (desk->document));
  g_assert_cmpstr (text, ==, desk->start);

  g_object_add_weak_pointer (G_OBJECT (drawer), (gpointer *) &drawer);
  gtk_window_destroy (GTK_WINDOW (desk->window));
  wait_until (drawer == NULL);
  g_assert_finalize_object (desk->document);
  g_free (desk->start);
  g_free (desk->message);
}

static inline GtkListBox *
list_of (Desk       *desk,
         const char *id)
{
  GtkWidget *list = find (GTK_WIDGET (desk->drawer), id);

  g_assert_nonnull (list);
  return GTK_LIST_BOX (list);
}

static inline GwOutlineRow *
row_of (Desk       *desk,
        const char *path)
{
  for (guint k = 0; k < G_N_ELEMENTS (lists); k++)
    {
      GtkListBoxRow *row;

      for (int i = 0;
           (row = gtk_list_box_get_row_at_index (list_of (desk, lists[k]), i)) != NULL; i++)
        if (g_str_equal (gw_outline_row_get_path (GW_OUTLINE_ROW (row)), path))
          return GW_OUTLINE_ROW (row);
    }

  return NULL;
}

static inline const char *
label_of (GwOutlineRow *row,
          const char   *id)
{
  return text_on (find (GTK_WIDGET (row), id));
}

/* "Wing|Tailplane|Fin" */
static inline char *
names_in (Desk       *desk,
          const char *list)
{
  GString       *names = g_string_new (NULL);
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (list_of (desk, list), i)) != NULL; i++)
    g_string_append_printf (names, "%s%s", i > 0 ? "|" : "",
                            gw_outline_row_get_name (GW_OUTLINE_ROW (row)));
  return g_string_free (names, FALSE);
}

static inline void
expect_names (Desk       *desk,
              const char *list,
              const char *names)
{
  g_autofree char *found = names_in (desk, list);

  g_assert_cmpstr (found, ==, names);
}

static inline void
expect_row (Desk       *desk,
            const char *path,
            const char *name,
            const char *detail)
{
  GwOutlineRow *row = row_of (desk, path);

  g_assert_nonnull (row);
  g_assert_cmpstr (label_of (row, "name"), ==, name);
  g_assert_cmpstr (label_of (row, "detail"), ==, detail);
}

/* The rows that are marked and selected; the option on the sheet is selected besides. */
static inline void
expect_here (Desk       *desk,
             const char *path)
{
  guint n = 0;

  for (guint k = 0; k < G_N_ELEMENTS (lists); k++)
    {
      GtkListBox    *list = list_of (desk, lists[k]);
      GtkListBoxRow *row;

      for (int i = 0; (row = gtk_list_box_get_row_at_index (list, i)) != NULL; i++)
        {
          const char    *here = gw_outline_row_get_path (GW_OUTLINE_ROW (row));
          const gboolean is_here = path != NULL && g_str_equal (here, path);
          const gboolean is_shown =
            k == 0 && i == (int) gw_document_get_shown (desk->document);

          g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (row), "here") == is_here);
          g_assert_true (gtk_list_box_row_is_selected (row) == (k == 0 ? is_shown : is_here));
          n += is_here;
        }
    }
  g_assert_cmpuint (n, ==, path != NULL);
}

/* Whether it did anything: one that is not possible does nothing and says nothing. */
static inline gboolean
act (Desk       *desk,
     const char *action)
{
  GwStudy         *study = gw_document_get_study (desk->document);
  g_autofree char *message = g_strdup (desk->message);

  gtk_widget_activate_action (GTK_WIDGET (desk->drawer), action, NULL);
  return gw_document_get_study (desk->document) != study ||
         g_strcmp0 (desk->message, message) != 0;
}

static inline void
add (Desk       *desk,
     const char *what)
{
  g_assert_true (
    gtk_widget_activate_action (GTK_WIDGET (desk->drawer), "outline.add", "s", what));
}

static inline void
look_at (Desk       *desk,
         const char *path)
{
  gw_document_set_selection (desk->document, path);
}

static inline const char *
looked_at (Desk *desk)
{
  return gw_document_get_selection (desk->document);
}

static inline const char *
last_edit (Desk *desk)
{
  return gw_history_undo_name (gw_document_get_history (desk->document));
}

static inline const char *
shown_id (Desk *desk)
{
  return ((GwStudyOption *) g_ptr_array_index (gw_document_get_study (desk->document)->options,
                                               gw_document_get_shown (desk->document)))
    ->id;
}
