/* gw-start-page.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-start-page.h"

#include <glib/gi18n-lib.h>

struct _GwStartPage
{
  GtkWidget parent_instance;

  GtkWidget *paper;
  GtkLabel  *purpose, *cautions;
};

G_DEFINE_FINAL_TYPE (GwStartPage, gw_start_page, GTK_TYPE_WIDGET)

static void
gw_start_page_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_START_PAGE);

  G_OBJECT_CLASS (gw_start_page_parent_class)->dispose (object);
}

static void
gw_start_page_class_init (GwStartPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_start_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-start-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, paper);
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, purpose);
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, cautions);
}

/* The long texts stand here because a template cannot break them into lines. */
static void
gw_start_page_init (GwStartPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_label_set_text (self->purpose,
                      _ ("Gramwright works out what each would weigh, where it would balance and "
                         "how slowly it would fly, and draws them on one sheet."));
  gtk_label_set_text (self->cautions,
                      _ ("Before a power test take the propeller off or tie the model down, and "
                         "set a throttle hold. Charge lithium batteries attended. Keep fumes of "
                         "hot wire, printer and adhesive and sanding dust out of your lungs. A "
                         "printed part softens in a hot car. Fly clear of people, and know your "
                         "local law."));
}
