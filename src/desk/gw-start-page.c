/* gw-start-page.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-start-page.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-application.h"
#include "desk/gw-recent.h"

#define MOST_RECENT    6
#define MOST_LEFTOVERS 3 /* at a time; the next follow when these are answered */

struct _GwStartPage
{
  GtkWidget parent_instance;

  GtkWidget *paper;
  GtkLabel  *purpose, *cautions;
  GtkWidget *leftover_part, *recent_part, *recent;

  GListModel *leftovers; /* nullable */
};

G_DEFINE_FINAL_TYPE (GwStartPage, gw_start_page, GTK_TYPE_WIDGET)

static void
clear_box (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

static void
append_answer (GtkWidget  *box,
               GtkWidget  *question,
               const char *label,
               const char *action,
               const char *path)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", path);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY,
                                  question, NULL, -1);
  gtk_box_append (GTK_BOX (box), button);
}

static GtkWidget *
wrapped_label_new (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 56);
  return label;
}

static void
append_leftover (GwStartPage *self,
                 GwLeftover  *leftover)
{
  g_autofree char *text = gw_leftover_text (leftover);
  const char      *problem = gw_leftover_get_problem (leftover);
  const char      *path = gw_leftover_get_path (leftover);
  GtkWidget       *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget       *answers = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget       *title = wrapped_label_new (text);

  gtk_widget_add_css_class (title, "name");
  gtk_box_append (GTK_BOX (box), title);
  if (problem != NULL)
    {
      GtkWidget *reason = wrapped_label_new (problem);

      gtk_widget_add_css_class (reason, "quiet");
      gtk_box_append (GTK_BOX (box), reason);
    }
  else
    append_answer (answers, title, _ ("Bring it back"), "win.bring-back", path);
  append_answer (answers, title, _ ("Let it go"), "win.let-go", path);
  gtk_box_append (GTK_BOX (box), answers);
  gtk_box_append (GTK_BOX (self->leftover_part), box);
}

/* What a person has seen here need not be said over the sheet. */
static void
tell (GwStartPage *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  if (self->leftovers != NULL && g_list_model_get_n_items (self->leftovers) > 0 &&
      GTK_IS_WINDOW (root))
    gw_application_tell_leftovers (
      GW_APPLICATION (gtk_window_get_application (GTK_WINDOW (root))));
}

static void
update_leftovers (GwStartPage *self)
{
  const guint n = g_list_model_get_n_items (self->leftovers);

  clear_box (self->leftover_part);
  for (guint i = 0; i < MIN (n, MOST_LEFTOVERS); i++)
    {
      g_autoptr (GwLeftover) leftover = g_list_model_get_item (self->leftovers, i);

      append_leftover (self, leftover);
    }
  gtk_widget_set_visible (self->leftover_part, n > 0);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    tell (self);
}

void
gw_start_page_set_leftovers (GwStartPage *self,
                             GListModel  *leftovers)
{
  g_return_if_fail (GW_IS_START_PAGE (self));

  g_set_object (&self->leftovers, leftovers);
  g_signal_connect_object (leftovers, "items-changed", G_CALLBACK (update_leftovers), self,
                           G_CONNECT_SWAPPED);
  update_leftovers (self);
}

static void
append_recent (GwStartPage    *self,
               const GwRecent *recent)
{
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *name = gtk_label_new (recent->name);
  GtkWidget *folder = gtk_label_new (recent->folder);

  gtk_label_set_ellipsize (GTK_LABEL (name), PANGO_ELLIPSIZE_MIDDLE);
  gtk_label_set_ellipsize (GTK_LABEL (folder), PANGO_ELLIPSIZE_MIDDLE);
  gtk_label_set_xalign (GTK_LABEL (folder), 0);
  gtk_widget_add_css_class (folder, "quiet");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), folder);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "row");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", recent->uri);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.open-recent");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  recent->name, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  recent->folder, -1);
  gtk_box_append (GTK_BOX (self->recent), button);
}

static void
update_recent (GwStartPage *self)
{
  g_autoptr (GPtrArray) list = gw_recent_list (MOST_RECENT);

  clear_box (self->recent);
  for (guint i = 0; i < list->len; i++)
    append_recent (self, g_ptr_array_index (list, i));
  gtk_widget_set_visible (self->recent_part, list->len > 0);
}

static void
gw_start_page_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (gw_start_page_parent_class)->map (widget);
  tell (GW_START_PAGE (widget));
}

static void
gw_start_page_dispose (GObject *object)
{
  g_clear_object (&GW_START_PAGE (object)->leftovers);
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_START_PAGE);

  G_OBJECT_CLASS (gw_start_page_parent_class)->dispose (object);
}

static void
gw_start_page_class_init (GwStartPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_start_page_dispose;
  widget_class->map = gw_start_page_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-start-page.ui");
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, paper);
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, purpose);
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, cautions);
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, leftover_part);
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, recent_part);
  gtk_widget_class_bind_template_child (widget_class, GwStartPage, recent);
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
  gtk_widget_set_visible (self->leftover_part, FALSE);
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed",
                           G_CALLBACK (update_recent), self, G_CONNECT_SWAPPED);
  update_recent (self);
}
