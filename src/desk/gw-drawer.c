/* gw-drawer.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-drawer.h"

#include "desk/gw-option-row.h"

struct _GwDrawer
{
  GtkWidget parent_instance;

  GtkWidget  *scroller;
  GtkListBox *options;
  GtkWidget  *option_part, *study_part, *hint_part;
  GtkLabel   *option_note, *study_note, *hints;
};

G_DEFINE_FINAL_TYPE (GwDrawer, gw_drawer, GTK_TYPE_WIDGET)

static void
row_selected_cb (GwDrawer      *self,
                 GtkListBoxRow *row)
{
  if (row != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.shown", "i",
                                gtk_list_box_row_get_index (row));
}

static void
gw_drawer_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_DRAWER);

  G_OBJECT_CLASS (gw_drawer_parent_class)->dispose (object);
}

static void
gw_drawer_class_init (GwDrawerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_drawer_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "drawer");
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-drawer.ui");
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, scroller);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, options);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, option_part);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, option_note);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, study_part);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, study_note);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, hint_part);
  gtk_widget_class_bind_template_child (widget_class, GwDrawer, hints);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
}

static void
gw_drawer_init (GwDrawer *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* Rows are kept where they can be, and the focus with them. */
static void
update_options (GwDrawer           *self,
                const GwEvaluation *evaluation,
                guint               shown,
                gboolean            is_dark)
{
  const int      n = (int) evaluation->outcomes->len;
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->options, n)) != NULL)
    gtk_list_box_remove (self->options, GTK_WIDGET (row));

  for (int i = 0; i < n; i++)
    {
      row = gtk_list_box_get_row_at_index (self->options, i);
      if (row == NULL)
        {
          row = GTK_LIST_BOX_ROW (gw_option_row_new ());
          gtk_list_box_append (self->options, GTK_WIDGET (row));
        }
      gw_option_row_update (GW_OPTION_ROW (row), evaluation, (guint) i, is_dark);
    }

  gtk_list_box_select_row (self->options,
                           gtk_list_box_get_row_at_index (self->options, (int) shown));
}

static void
show_text (GtkWidget  *part,
           GtkLabel   *label,
           const char *text)
{
  const gboolean has_text = text != NULL && *text != '\0';

  gtk_widget_set_visible (part, has_text);
  gtk_label_set_text (label, has_text ? text : "");
}

static char *
hint_text (const GPtrArray *problems)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < problems->len; i++)
    {
      const GwProblem *problem = g_ptr_array_index (problems, i);

      if (!problem->is_error)
        g_string_append_printf (text, "%s%s%s%s", text->len > 0 ? "\n" : "", problem->path,
                                *problem->path != '\0' ? ": " : "", problem->message);
    }

  return g_string_free (text, FALSE);
}

void
gw_drawer_update (GwDrawer           *self,
                  const GwEvaluation *evaluation,
                  guint               shown,
                  gboolean            is_dark,
                  const GPtrArray    *problems)
{
  const GwStudyOption *option;
  g_autofree char     *hints = hint_text (problems);

  g_return_if_fail (GW_IS_DRAWER (self));
  g_return_if_fail (shown < evaluation->outcomes->len);

  option = g_ptr_array_index (evaluation->study->options, shown);
  update_options (self, evaluation, shown, is_dark);
  show_text (self->option_part, self->option_note, option->note);
  show_text (self->study_part, self->study_note, evaluation->study->note);
  show_text (self->hint_part, self->hints, hints);
}
