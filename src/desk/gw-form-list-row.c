/* gw-form-list-row.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-list-row.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>

struct _GwFormListRow
{
  GtkListBoxRow parent_instance;

  GtkLabel  *number, *summary;
  GtkWidget *menu;
};

G_DEFINE_FINAL_TYPE (GwFormListRow, gw_form_list_row, GTK_TYPE_LIST_BOX_ROW)

enum
{
  ASKED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
up_cb (GtkWidget  *widget,
       const char *action,
       GVariant   *parameter)
{
  g_signal_emit (widget, signals[ASKED], 0, -1);
}

static void
down_cb (GtkWidget  *widget,
         const char *action,
         GVariant   *parameter)
{
  g_signal_emit (widget, signals[ASKED], 0, 1);
}

static void
remove_cb (GtkWidget  *widget,
           const char *action,
           GVariant   *parameter)
{
  g_signal_emit (widget, signals[ASKED], 0, 0);
}

static void
gw_form_list_row_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_FORM_LIST_ROW);

  G_OBJECT_CLASS (gw_form_list_row_parent_class)->dispose (object);
}

static void
gw_form_list_row_class_init (GwFormListRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_form_list_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-form-list-row.ui");
  gtk_widget_class_bind_template_child (widget_class, GwFormListRow, number);
  gtk_widget_class_bind_template_child (widget_class, GwFormListRow, summary);
  gtk_widget_class_bind_template_child (widget_class, GwFormListRow, menu);
  gtk_widget_class_install_action (widget_class, "row.up", NULL, up_cb);
  gtk_widget_class_install_action (widget_class, "row.down", NULL, down_cb);
  gtk_widget_class_install_action (widget_class, "row.remove", NULL, remove_cb);

  signals[ASKED] = g_signal_new ("asked", GW_TYPE_FORM_LIST_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 1, G_TYPE_INT);
}

static void
gw_form_list_row_init (GwFormListRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
gw_form_list_row_new (void)
{
  return g_object_new (GW_TYPE_FORM_LIST_ROW, NULL);
}

void
gw_form_list_row_update (GwFormListRow *self,
                         guint          i,
                         guint          n,
                         const char    *summary)
{
  g_autofree char *number = g_strdup_printf ("%u", i + 1);
  g_autofree char *name = NULL;
  g_autofree char *menu_name = NULL;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "row.up", i > 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "row.down", i + 1 < n);
  if (g_strcmp0 (gtk_label_get_text (self->summary), summary) == 0 &&
      g_strcmp0 (gtk_label_get_text (self->number), number) == 0)
    return;

  name = g_strdup_printf ("%s: %s", number, summary);
  /* Translators: a menu, read aloud: "Move or remove 2: out 900, chord 180" */
  menu_name = g_strdup_printf (_ ("Move or remove %s"), name);
  gtk_label_set_text (self->number, number);
  gtk_label_set_text (self->summary, summary);
  gw_access_name (GTK_WIDGET (self), name);
  gw_access_name (gtk_widget_get_first_child (self->menu), menu_name);
}
