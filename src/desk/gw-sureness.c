/* gw-sureness.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-sureness.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-form-value.h"
#include "desk/gw-form-words.h"
#include "desk/gw-sureness-popover.h"

struct _GwSureness
{
  GtkWidget parent_instance;

  GwFormSite    *site;
  char          *path;
  const GwField *field;
  GwNumber       number;

  GtkWidget *button;
  GtkLabel  *label;
};

G_DEFINE_FINAL_TYPE (GwSureness, gw_sureness, GTK_TYPE_WIDGET)

/* Made when it is first wanted: a form has many of them. */
static void
open_cb (GtkMenuButton *button,
         gpointer       data)
{
  GwSureness *self = data;

  if (gtk_menu_button_get_popover (button) == NULL)
    gtk_menu_button_set_popover (button,
                                 gw_sureness_popover_new (self->site, self->path, self->field));
  gw_sureness_popover_show (GW_SURENESS_POPOVER (gtk_menu_button_get_popover (button)),
                            &self->number);
}

/* GTK 4.8 would keep a popover for ever whose window goes while it is open. */
static void
gw_sureness_unmap (GtkWidget *widget)
{
  gtk_menu_button_popdown (GTK_MENU_BUTTON (GW_SURENESS (widget)->button));

  GTK_WIDGET_CLASS (gw_sureness_parent_class)->unmap (widget);
}

static void
gw_sureness_dispose (GObject *object)
{
  GwSureness *self = GW_SURENESS (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), GW_TYPE_SURENESS);
  g_clear_object (&self->site);

  G_OBJECT_CLASS (gw_sureness_parent_class)->dispose (object);
}

static void
gw_sureness_finalize (GObject *object)
{
  GwSureness *self = GW_SURENESS (object);

  gw_number_clear (&self->number);
  g_free (self->path);

  G_OBJECT_CLASS (gw_sureness_parent_class)->finalize (object);
}

static void
gw_sureness_class_init (GwSurenessClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_sureness_dispose;
  G_OBJECT_CLASS (klass)->finalize = gw_sureness_finalize;
  widget_class->unmap = gw_sureness_unmap;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sureness");
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-sureness.ui");
  gtk_widget_class_bind_template_child (widget_class, GwSureness, button);
  gtk_widget_class_bind_template_child (widget_class, GwSureness, label);
}

static void
gw_sureness_init (GwSureness *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
gw_sureness_new (GwFormSite    *site,
                 const char    *path,
                 const GwField *field)
{
  GwSureness *self = g_object_new (GW_TYPE_SURENESS, NULL);

  self->site = g_object_ref (site);
  self->path = g_strdup (path);
  self->field = field;
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->button), open_cb, self, NULL);
  return GTK_WIDGET (self);
}

void
gw_sureness_update (GwSureness     *self,
                    const GwNumber *number)
{
  /* How many walls there are is known, and what is not stated is not sure in any way. */
  const gboolean   has_any = isfinite (number->value) && self->field->quantity != GW_COUNT;
  g_autofree char *text = NULL;
  g_autofree char *name = NULL;

  gw_number_copy (&self->number, number);
  gtk_widget_set_visible (self->button, has_any);
  if (!has_any)
    return;

  /* Asks the display server where the pointer is. */
  if (g_strcmp0 (gtk_widget_get_tooltip_text (self->button), number->source) != 0)
    gtk_widget_set_tooltip_text (self->button, number->source);
  text = gw_form_sureness_text (number, self->field, gw_form_site_get_units (self->site));
  if (g_str_equal (gtk_label_get_text (self->label), text))
    return;

  /* Translators: read aloud: "Chord: how sure it is: ±3 %" */
  name = g_strdup_printf (_ ("%s: how sure it is: %s"), gw_form_label (self->field), text);
  gtk_label_set_text (self->label, text);
  /* The inner button is what takes the focus. */
  gw_access_name (gtk_widget_get_first_child (self->button), name);
}
