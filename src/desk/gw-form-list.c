/* gw-form-list.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-list.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-dropped-text.h"
#include "desk/gw-form-add.h"
#include "desk/gw-form-list-row.h"
#include "desk/gw-form-words.h"
#include "study/gw-edit-option.h"

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

/* What an edit of the list begins with: the common airframe or the option's, without what is
 * only tried; NULL: nothing can be edited. (transfer full) */
static GwStudy *
open_list (GwFormList *self)
{
  GwDocument *document = gw_form_site_get_document (site_of (self));
  GwStudy    *study = document != NULL ? gw_document_get_study (document) : NULL;

  if (study == NULL || gw_form_site_get_study (site_of (self)) == NULL)
    return NULL;

  return gw_edit_open (study, gw_form_site_get_shown (site_of (self)),
                       gw_document_get_only_here (document), path_of (self));
}

static const GPtrArray *
list_in (GwFormList      *self,
         const GwStudy   *opened,
         const GwRecord **owner)
{
  const GwField *field = NULL;

  *owner = gw_record_find ((GwRecord *) &opened->record, path_of (self), &field);
  return *owner != NULL ? *(GPtrArray **) gw_record_at (*owner, field) : NULL;
}

static char *
row_path (GwFormList    *self,
          const GwStudy *opened,
          guint          i)
{
  const GwRecord  *owner;
  const GPtrArray *list = list_in (self, opened, &owner);
  g_autofree char *step = NULL;

  if (list == NULL || i >= list->len)
    return NULL;

  step = gw_record_step ("", "", g_ptr_array_index (list, i), i);
  return g_strconcat (path_of (self), step, NULL);
}

/* Takes @edited, made of @opened. */
static gboolean
put (GwFormList    *self,
     const char    *name,
     const GwStudy *opened,
     GwStudy       *edited,
     GError       **error)
{
  GwFormField   *field = GW_FORM_FIELD (self);
  GwStudy       *study = gw_document_get_study (gw_form_site_get_document (site_of (self)));
  const guint    option = gw_form_site_get_shown (site_of (self));
  const gboolean is_done = gw_form_site_put (
    site_of (self), name, gw_edit_close (study, option, opened, edited, error), error);

  _gw_form_field_refuse (field, *error);
  _gw_form_field_set_remark (field, NULL);
  return is_done;
}

static void
add_cb (GwFormList *self)
{
  GwDocument      *document = gw_form_site_get_document (site_of (self));
  const char      *type = _gw_form_field_field (GW_FORM_FIELD (self))->item ()->label;
  g_autofree char *name = g_strdup_printf (_ ("Add %s"), g_dgettext (GETTEXT_PACKAGE, type));
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) opened = open_list (self);
  const GwRecord *owner;
  GwStudy        *edited;

  if (opened == NULL || list_in (self, opened, &owner) == NULL)
    return;

  edited = gw_form_add (opened, owner, path_of (self), &path, &error);
  if (put (self, name, opened, edited, &error))
    gw_document_set_selection (document, path);
}

static void
move (GwFormList    *self,
      const GwStudy *opened,
      const char    *path,
      guint          index)
{
  g_autofree char *title = gw_form_record_title (opened, path);
  g_autofree char *name = g_strdup_printf (_ ("Move %s"), title);
  g_autoptr (GError) error = NULL;

  put (self, name, opened, gw_edit_move (opened, path, index, NULL, &error), &error);
}

static void
take_out (GwFormList    *self,
          const GwStudy *opened,
          const char    *path)
{
  g_autofree char *title = gw_form_record_title (opened, path);
  g_autofree char *name = g_strdup_printf (_ ("Remove %s"), title);
  g_autoptr (GPtrArray) dropped =
    g_ptr_array_new_with_free_func ((GDestroyNotify) gw_dropped_change_free);
  g_autoptr (GwStudy) before = gw_study_ref (gw_form_site_get_study (site_of (self)));
  g_autoptr (GError) error = NULL;
  GwStudy *edited;

  /* The row goes with its record; the focus stays in the list. */
  gtk_widget_grab_focus (GTK_WIDGET (self->rows));
  edited = gw_edit_remove (opened, path, dropped, &error);
  if (put (self, name, opened, edited, &error) && dropped->len > 0)
    {
      g_autofree char *text = gw_dropped_text (before, dropped);

      _gw_form_field_set_remark (GW_FORM_FIELD (self), text);
    }
}

static void
asked_cb (GwFormList    *self,
          int            what,
          GtkListBoxRow *row)
{
  const int i = gtk_list_box_row_get_index (row);
  g_autoptr (GwStudy) opened = open_list (self);
  g_autofree char *path = opened != NULL ? row_path (self, opened, (guint) i) : NULL;

  if (path == NULL)
    return;
  if (what == 0)
    take_out (self, opened, path);
  else
    move (self, opened, path, (guint) (i + what));
}

static void
row_activated_cb (GwFormList    *self,
                  GtkListBoxRow *row)
{
  g_autoptr (GwStudy) opened = open_list (self);
  g_autofree char *path =
    opened != NULL ? row_path (self, opened, (guint) gtk_list_box_row_get_index (row)) : NULL;

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
  gw_access_name (rows, label);

  gtk_widget_add_css_class (GTK_WIDGET (self), "list");
  gtk_widget_add_css_class (add, "word");
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (add_cb), self);
  _gw_form_field_set_editor (field, add, FALSE);
  _gw_form_field_set_editor (field, rows, TRUE);
  _gw_form_field_name (field, add, NULL, NULL);
  gw_access_name (add, name);
}

/* Rows are kept where they can be, and the focus with them. */
static void
gw_form_list_update (GwFormField *field,
                     GwRecord    *record)
{
  GwFormList      *self = GW_FORM_LIST (field);
  GwStudy         *study = gw_form_site_get_view (site_of (self), path_of (self));
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
