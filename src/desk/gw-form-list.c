/* gw-form-list.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-list.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-form-add.h"
#include "desk/gw-form-list-row.h"
#include "desk/gw-form-words.h"
#include "study/gw-edit.h"

struct _GwFormList
{
  GwFormField parent_instance;

  GtkListBox *rows;
};

G_DEFINE_FINAL_TYPE (GwFormList, gw_form_list, GW_TYPE_FORM_FIELD)

static GwFormSite *
site_of (GwFormList *self)
{
  return _gw_form_field_site (GW_FORM_FIELD (self));
}

static const char *
path_of (GwFormList *self)
{
  return gw_form_field_get_path (GW_FORM_FIELD (self));
}

/* The list as the edits find it: common, without what is tried. */
static const GPtrArray *
list_of (GwFormList      *self,
         const GwRecord **owner)
{
  GwDocument    *document = gw_form_site_get_document (site_of (self));
  GwStudy       *study = document != NULL ? gw_document_get_study (document) : NULL;
  const GwField *field = NULL;

  *owner = study != NULL ? gw_record_find (&study->record, path_of (self), &field) : NULL;
  return *owner != NULL ? *(GPtrArray **) gw_record_at (*owner, field) : NULL;
}

static char *
row_path (GwFormList *self,
          guint       i)
{
  const GwRecord  *owner;
  const GPtrArray *list = list_of (self, &owner);
  g_autofree char *step = NULL;

  if (list == NULL || i >= list->len)
    return NULL;

  step = gw_record_step ("", "", g_ptr_array_index (list, i), i);
  return g_strconcat (path_of (self), step, NULL);
}

static void
put (GwFormList *self,
     const char *name,
     GwStudy    *edited,
     GError    **error)
{
  gw_form_site_put (site_of (self), name, edited, error);
  _gw_form_field_refuse (GW_FORM_FIELD (self), error != NULL ? *error : NULL);
}

static void
add_cb (GwFormList *self)
{
  GwDocument      *document = gw_form_site_get_document (site_of (self));
  const char      *type = _gw_form_field_field (GW_FORM_FIELD (self))->item ()->label;
  g_autofree char *name = g_strdup_printf (_ ("Add %s"), g_dgettext (GETTEXT_PACKAGE, type));
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;
  const GwRecord *owner;

  if (list_of (self, &owner) == NULL)
    return;

  put (self, name,
       gw_form_add (gw_document_get_study (document), owner, path_of (self), &path, &error),
       &error);
  if (error == NULL)
    gw_document_set_selection (document, path);
}

static void
move (GwFormList *self,
      guint       i,
      int         by,
      GError    **error)
{
  GwStudy         *study = gw_document_get_study (gw_form_site_get_document (site_of (self)));
  g_autofree char *path = row_path (self, i);
  g_autofree char *title = gw_form_record_title (study, path);
  g_autofree char *name = g_strdup_printf (_ ("Move %s"), title);

  put (self, name, gw_edit_move (study, path, (guint) ((int) i + by), error), error);
}

static void
take_out (GwFormList *self,
          guint       i,
          GError    **error)
{
  GwStudy         *study = gw_document_get_study (gw_form_site_get_document (site_of (self)));
  g_autofree char *path = row_path (self, i);
  g_autofree char *title = gw_form_record_title (study, path);
  g_autofree char *name = g_strdup_printf (_ ("Remove %s"), title);

  /* The row goes with its record; the focus stays in the list. */
  gtk_widget_grab_focus (GTK_WIDGET (self->rows));
  put (self, name, gw_edit_remove (study, path, error), error);
}

static void
asked_cb (GwFormList    *self,
          int            what,
          GtkListBoxRow *row)
{
  const guint      i = (guint) gtk_list_box_row_get_index (row);
  g_autofree char *path = row_path (self, i);
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return;
  if (what == 0)
    take_out (self, i, &error);
  else
    move (self, i, what, &error);
}

static void
row_activated_cb (GwFormList    *self,
                  GtkListBoxRow *row)
{
  g_autofree char *path = row_path (self, (guint) gtk_list_box_row_get_index (row));

  if (path != NULL)
    gw_document_set_selection (gw_form_site_get_document (site_of (self)), path);
}

static void
gw_form_list_setup (GwFormField *field)
{
  GwFormList      *self = GW_FORM_LIST (field);
  const char      *label = gw_form_label (_gw_form_field_field (field));
  g_autofree char *name = g_strdup_printf (_ ("Add to %s"), label);
  GtkWidget       *add = gtk_button_new_with_label (_ ("Add"));
  GtkWidget       *rows = gtk_list_box_new ();

  self->rows = GTK_LIST_BOX (rows);
  gtk_list_box_set_selection_mode (self->rows, GTK_SELECTION_NONE);
  g_signal_connect_swapped (rows, "row-activated", G_CALLBACK (row_activated_cb), self);
  gtk_accessible_update_property (GTK_ACCESSIBLE (rows), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);

  gtk_widget_add_css_class (GTK_WIDGET (self), "list");
  gtk_widget_add_css_class (add, "word");
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (add_cb), self);
  _gw_form_field_set_editor (field, add, FALSE);
  _gw_form_field_set_editor (field, rows, TRUE);
  _gw_form_field_name (field, add, NULL, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (add), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/* Rows are kept where they can be, and the focus with them. */
static void
gw_form_list_update (GwFormField *field,
                     GwRecord    *record)
{
  GwFormList      *self = GW_FORM_LIST (field);
  GwStudy         *study = gw_form_site_get_study (site_of (self));
  const GwUnits   *units = gw_form_site_get_units (site_of (self));
  const GPtrArray *list = *(GPtrArray **) gw_record_at (record, _gw_form_field_field (field));
  GtkListBoxRow   *row;

  while ((row = gtk_list_box_get_row_at_index (self->rows, (int) list->len)) != NULL)
    gtk_list_box_remove (self->rows, GTK_WIDGET (row));

  for (guint i = 0; i < list->len; i++)
    {
      g_autofree char *summary = gw_form_summary (study, g_ptr_array_index (list, i), units);

      row = gtk_list_box_get_row_at_index (self->rows, (int) i);
      if (row == NULL)
        {
          row = GTK_LIST_BOX_ROW (gw_form_list_row_new ());
          g_signal_connect_swapped (row, "asked", G_CALLBACK (asked_cb), self);
          gtk_list_box_append (self->rows, GTK_WIDGET (row));
        }
      gw_form_list_row_update (GW_FORM_LIST_ROW (row), i, list->len, summary);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->rows), list->len > 0);
}

static void
gw_form_list_class_init (GwFormListClass *klass)
{
  GwFormFieldClass *field_class = GW_FORM_FIELD_CLASS (klass);

  field_class->setup = gw_form_list_setup;
  field_class->update = gw_form_list_update;
}

static void
gw_form_list_init (GwFormList *self)
{
}
