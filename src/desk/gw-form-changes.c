/* gw-form-changes.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-changes.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-form-words.h"
#include "study/gw-edit.h"
#include "study/gw-record-json.h"

#define BETWEEN " \302\267 " /* U+00B7 */

struct _GwFormChanges
{
  GwFormField parent_instance;

  GtkListBox *rows;
  GtkWidget  *none;
  GPtrArray  *shown; /* texts of the rows, to see whether they have changed */
};

G_DEFINE_FINAL_TYPE (GwFormChanges, gw_form_changes, GW_TYPE_FORM_FIELD)

static GwFormSite *
site_of (GwFormChanges *self)
{
  return _gw_form_field_site (GW_FORM_FIELD (self));
}

/* Index of the option whose changes these are; its path is "options/ID/changes". */
static guint
option_of (GwFormChanges *self)
{
  GwStudy         *study = gw_form_site_get_study (site_of (self));
  g_autofree char *path =
    g_path_get_dirname (gw_form_field_get_path (GW_FORM_FIELD (self)));
  guint i;

  if (!g_ptr_array_find (study->options, gw_edit_record (study, path), &i))
    g_return_val_if_reached (0);

  return i;
}

static char *
owner_of (const char *path)
{
  const char *slash = strrchr (path, '/');

  return slash != NULL ? g_strndup (path, (gsize) (slash - path)) : g_strdup ("");
}

/* The value as the option has it, read by the same code as the file. */
static char *
value_text (GwFormChanges  *self,
            const GwRecord *record,
            const GwField  *field,
            const GwChange *change)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  GwRecord        *own = gw_record_copy (record);
  g_autofree char *value = NULL, *common = NULL;

  gw_record_read_field (own, field, change->value, change->path, problems);
  value = gw_form_compare (gw_form_site_get_study (site_of (self)), own, record, field,
                           gw_form_site_get_units (site_of (self)), &common);
  gw_record_free (own);
  /* Translators: numbers of records: "a list of its own with 4, the common one has 3" */
  if (field->kind == GW_FIELD_LIST && value != NULL)
    return g_strdup_printf (_ ("a list of its own with %s, the common one has %s"), value, common);
  /* Translators: a value of this option and that of the others: "310 mm, common 300 mm" */
  return value != NULL ? g_strdup_printf (_ ("%s, common %s"), value, common)
                       : g_strdup_printf (_ ("%s, same as common"), common);
}

/* "Battery · Aft" */
static char *
place_text (const GwStudy  *study,
            const GwRecord *record,
            const GwField  *field,
            const char     *path)
{
  g_autofree char *owner = owner_of (path);
  g_autofree char *place = *owner != '\0' && gw_edit_record (study, owner) != NULL
                             ? gw_form_record_place (study, owner)
                             : gw_edit_record_name (record);

  return g_strconcat (place, BETWEEN, gw_form_label (field), NULL);
}

/* "Battery · Aft", then "310 mm, common 300 mm". */
static char *
change_text (GwFormChanges  *self,
             const GwChange *change,
             char          **place)
{
  GwStudy       *study = gw_form_site_get_study (site_of (self));
  const GwField *field = NULL;
  GwRecord      *record = gw_record_find (&study->record, change->path, &field);

  if (record == NULL)
    {
      *place = g_strdup (change->path);
      return g_strdup (_ ("there is no such place in the study"));
    }

  *place = place_text (study, record, field, change->path);
  return value_text (self, record, field, change);
}

static GwChange *
change_at (GwFormChanges *self,
           int            i)
{
  GwStudy             *study = gw_form_site_get_study (site_of (self));
  const GwStudyOption *option = g_ptr_array_index (study->options, option_of (self));

  return i >= 0 && i < (int) option->changes->len ? g_ptr_array_index (option->changes, i) : NULL;
}

static void
take_back_cb (GwFormChanges *self,
              GtkButton     *button)
{
  GtkWidget       *row = gtk_widget_get_ancestor (GTK_WIDGET (button), GTK_TYPE_LIST_BOX_ROW);
  const GwChange  *change = change_at (self, gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)));
  g_autofree char *path = change != NULL ? g_strdup (change->path) : NULL;
  g_autoptr (GError) error = NULL;

  if (path == NULL)
    return;

  gw_form_site_take_back (site_of (self), option_of (self), path, &error);
  _gw_form_field_refuse (GW_FORM_FIELD (self), error);
}

static void
row_activated_cb (GwFormChanges *self,
                  GtkListBoxRow *row)
{
  const GwChange  *change = change_at (self, gtk_list_box_row_get_index (row));
  g_autofree char *owner = change != NULL ? owner_of (change->path) : NULL;

  if (owner != NULL && gw_edit_record (gw_form_site_get_study (site_of (self)), owner) != NULL)
    gw_document_set_selection (gw_form_site_get_document (site_of (self)), owner);
}

static GtkWidget *
line (const char *text,
      const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  g_object_set (label, "xalign", 0.0, "wrap", TRUE, "wrap-mode", PANGO_WRAP_WORD_CHAR, NULL);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static GtkWidget *
make_row (GwFormChanges *self,
          const char    *place,
          const char    *text)
{
  GtkWidget       *row = gtk_list_box_row_new ();
  GtkWidget       *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget       *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget       *button = gtk_button_new_with_label (_ ("Take back"));
  g_autofree char *name = g_strdup_printf (_ ("Take back %s"), place);

  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (button, "word");
  gtk_box_append (GTK_BOX (words), line (place, NULL));
  gtk_box_append (GTK_BOX (words), line (text, "detail"));
  gtk_box_append (GTK_BOX (box), words);
  gtk_box_append (GTK_BOX (box), button);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (take_back_cb), self);
  gw_access_name (button, name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, place,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  return row;
}

static gboolean
same_texts (const GPtrArray *a,
            const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;

  for (guint i = 0; i < a->len; i++)
    if (!g_str_equal (g_ptr_array_index (a, i), g_ptr_array_index (b, i)))
      return FALSE;

  return TRUE;
}

static void
gw_form_changes_update (GwFormField *field,
                        GwRecord    *record)
{
  GwFormChanges   *self = GW_FORM_CHANGES (field);
  const GPtrArray *changes = *(GPtrArray **) gw_record_at (record, _gw_form_field_field (field));
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  GtkListBoxRow *row;

  for (guint i = 0; i < changes->len; i++)
    {
      char *place;
      char *text = change_text (self, g_ptr_array_index (changes, i), &place);

      g_ptr_array_add (texts, place);
      g_ptr_array_add (texts, text);
    }

  if (self->shown != NULL && same_texts (self->shown, texts))
    return;

  while ((row = gtk_list_box_get_row_at_index (self->rows, 0)) != NULL)
    gtk_list_box_remove (self->rows, GTK_WIDGET (row));
  for (guint i = 0; i < texts->len; i += 2)
    gtk_list_box_append (self->rows, make_row (self, g_ptr_array_index (texts, i),
                                               g_ptr_array_index (texts, i + 1)));

  gtk_widget_set_visible (GTK_WIDGET (self->rows), texts->len > 0);
  gtk_widget_set_visible (self->none, texts->len == 0);
  g_clear_pointer (&self->shown, g_ptr_array_unref);
  self->shown = g_steal_pointer (&texts);
}

static void
gw_form_changes_setup (GwFormField *field)
{
  GwFormChanges *self = GW_FORM_CHANGES (field);
  GtkWidget     *rows = gtk_list_box_new ();

  self->rows = GTK_LIST_BOX (rows);
  self->none = line (_ ("none: it has the common airframe"), "remark");
  gtk_list_box_set_selection_mode (self->rows, GTK_SELECTION_NONE);
  g_signal_connect_swapped (rows, "row-activated", G_CALLBACK (row_activated_cb), self);
  gw_access_name (rows, gw_form_label (_gw_form_field_field (field)));
  gtk_widget_add_css_class (GTK_WIDGET (self), "list");
  _gw_form_field_set_editor (field, rows, TRUE);
  _gw_form_field_set_editor (field, self->none, TRUE);
}

static void
gw_form_changes_finalize (GObject *object)
{
  g_clear_pointer (&GW_FORM_CHANGES (object)->shown, g_ptr_array_unref);

  G_OBJECT_CLASS (gw_form_changes_parent_class)->finalize (object);
}

static void
gw_form_changes_class_init (GwFormChangesClass *klass)
{
  GwFormFieldClass *field_class = GW_FORM_FIELD_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gw_form_changes_finalize;
  field_class->setup = gw_form_changes_setup;
  field_class->update = gw_form_changes_update;
}

static void
gw_form_changes_init (GwFormChanges *self)
{
}
