/* gw-section-import.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-section-import.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-outline-view.h"
#include "study/gw-section-outline.h"

struct _GwSectionImport
{
  GtkWindow parent_instance;

  GtkLabel       *name, *measures, *remarks, *change;
  GwOutlineView  *view;
  GtkCheckButton *smooth;
  GtkWidget      *add, *cancel;

  GwSectionFile *file;
};

G_DEFINE_FINAL_TYPE (GwSectionImport, gw_section_import, GTK_TYPE_WINDOW)

enum
{
  ADD,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
update (GwSectionImport *self)
{
  const gboolean   is_smooth = gtk_check_button_get_active (self->smooth);
  const GwOutline *outline = is_smooth ? &self->file->smooth : &self->file->outline;
  g_autofree char *measures = gw_section_measures_text (outline);

  gw_outline_view_show (self->view, outline, is_smooth ? &self->file->outline : NULL);
  gtk_label_set_text (self->measures, measures);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Outline"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, measures,
                                  -1);
}

static void
smooth_toggled_cb (GwSectionImport *self)
{
  update (self);
}

static void
add_cb (GwSectionImport *self)
{
  g_autoptr (JsonNode) record =
    gw_section_file_record (self->file, gtk_check_button_get_active (self->smooth));

  g_signal_emit (self, signals[ADD], 0, record);
  gtk_window_close (GTK_WINDOW (self));
}

static void
gw_section_import_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_SECTION_IMPORT);

  G_OBJECT_CLASS (gw_section_import_parent_class)->dispose (object);
}

static void
gw_section_import_finalize (GObject *object)
{
  g_clear_pointer (&GW_SECTION_IMPORT (object)->file, gw_section_file_free);

  G_OBJECT_CLASS (gw_section_import_parent_class)->finalize (object);
}

static void
gw_section_import_class_init (GwSectionImportClass *klass)
{
  GObjectClass   *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = gw_section_import_dispose;
  object_class->finalize = gw_section_import_finalize;
  g_type_ensure (GW_TYPE_OUTLINE_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-section-import.ui");
  gtk_widget_class_bind_template_child (widget_class, GwSectionImport, name);
  gtk_widget_class_bind_template_child (widget_class, GwSectionImport, view);
  gtk_widget_class_bind_template_child (widget_class, GwSectionImport, measures);
  gtk_widget_class_bind_template_child (widget_class, GwSectionImport, remarks);
  gtk_widget_class_bind_template_child (widget_class, GwSectionImport, smooth);
  gtk_widget_class_bind_template_child (widget_class, GwSectionImport, change);
  gtk_widget_class_bind_template_child (widget_class, GwSectionImport, cancel);
  gtk_widget_class_bind_template_child (widget_class, GwSectionImport, add);
  gtk_widget_class_bind_template_callback (widget_class, smooth_toggled_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);

  signals[ADD] = g_signal_new ("add", GW_TYPE_SECTION_IMPORT, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                               NULL, G_TYPE_NONE, 1, JSON_TYPE_NODE);
}

static void
gw_section_import_init (GwSectionImport *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_window_set_default_widget (GTK_WINDOW (self), self->add);
}

GtkWindow *
gw_section_import_new (GtkWindow     *parent,
                       GwSectionFile *file)
{
  GwSectionImport *self = g_object_new (GW_TYPE_SECTION_IMPORT, "transient-for", parent, NULL);
  g_autoptr (GPtrArray) remarks = gw_section_file_remarks (file);
  g_autofree char *text = NULL, *change = gw_section_file_change (file);

  self->file = file;
  g_ptr_array_add (remarks, NULL);
  text = g_strjoinv ("\n", (char **) remarks->pdata);
  gtk_label_set_text (self->name, file->name);
  gtk_label_set_text (self->remarks, text);
  gtk_widget_set_visible (GTK_WIDGET (self->remarks), *text != '\0');
  gtk_label_set_text (self->change, change);
  update (self);
  gtk_widget_grab_focus (self->add);
  return GTK_WINDOW (self);
}
