/* gw-notice.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-notice.h"

#include "desk/gw-focus.h"

struct _GwNotice
{
  GtkWidget parent_instance;

  GtkWidget *notice_bar, *notice_answers;
  GtkLabel  *notice_title, *notice_reason;
  GtkWidget *former_focus; /* weak */
};

G_DEFINE_FINAL_TYPE (GwNotice, gw_notice, GTK_TYPE_WIDGET)

static gboolean
escape_cb (GtkWidget *widget,
           GVariant  *arguments,
           gpointer   data)
{
  GtkWidget *last = gtk_widget_get_last_child (GW_NOTICE (widget)->notice_answers);

  if (last == NULL)
    return FALSE;

  g_signal_emit_by_name (last, "clicked");
  return TRUE;
}

static void
gw_notice_dispose (GObject *object)
{
  g_clear_weak_pointer (&GW_NOTICE (object)->former_focus);
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_NOTICE);

  G_OBJECT_CLASS (gw_notice_parent_class)->dispose (object);
}

static void
gw_notice_class_init (GwNoticeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_notice_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_ALERT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-notice.ui");
  gtk_widget_class_bind_template_child (widget_class, GwNotice, notice_bar);
  gtk_widget_class_bind_template_child (widget_class, GwNotice, notice_answers);
  gtk_widget_class_bind_template_child (widget_class, GwNotice, notice_title);
  gtk_widget_class_bind_template_child (widget_class, GwNotice, notice_reason);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_cb, NULL);
}

static void
gw_notice_init (GwNotice *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static gboolean
is_answer (GtkWidget            *button,
           const GwNoticeAnswer *answer)
{
  GVariant *target = gtk_actionable_get_action_target_value (GTK_ACTIONABLE (button));

  return g_str_equal (gtk_button_get_label (GTK_BUTTON (button)), answer->label) &&
         g_str_equal (gtk_actionable_get_action_name (GTK_ACTIONABLE (button)), answer->action) &&
         g_strcmp0 (target != NULL ? g_variant_get_string (target, NULL) : NULL,
                    answer->target) == 0;
}

static gboolean
has_answers (GwNotice             *self,
             guint                 n,
             const GwNoticeAnswer *answers)
{
  GtkWidget *button = gtk_widget_get_first_child (self->notice_answers);

  for (guint i = 0; i < n; i++, button = gtk_widget_get_next_sibling (button))
    if (button == NULL || !is_answer (button, &answers[i]))
      return FALSE;

  return button == NULL;
}

static void
set_answers (GwNotice             *self,
             guint                 n,
             const GwNoticeAnswer *answers)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->notice_answers)) != NULL)
    gtk_box_remove (GTK_BOX (self->notice_answers), child);

  for (guint i = 0; i < n; i++)
    {
      GtkWidget *button = gtk_button_new_with_mnemonic (answers[i].label);

      if (answers[i].target != NULL)
        gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", answers[i].target);
      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), answers[i].action);
      gtk_box_append (GTK_BOX (self->notice_answers), button);
    }
}

void
gw_notice_show (GwNotice             *self,
                const char           *title,
                const char           *reason,
                guint                 n,
                const GwNoticeAnswer *answers)
{
  g_return_if_fail (GW_IS_NOTICE (self));

  gtk_label_set_text (self->notice_title, title);
  gtk_label_set_text (self->notice_reason, reason != NULL ? reason : "");
  gtk_widget_set_visible (GTK_WIDGET (self->notice_reason), reason != NULL);
  /* The one that has the focus must stay. */
  if (!has_answers (self, n, answers))
    set_answers (self, n, answers);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
}

void
gw_notice_hide (GwNotice *self)
{
  GtkWidget *former;

  g_return_if_fail (GW_IS_NOTICE (self));

  if (!gtk_widget_get_visible (GTK_WIDGET (self)))
    return;

  former = self->former_focus;
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  if (former != NULL && gtk_widget_get_mapped (former))
    gtk_widget_grab_focus (former);
  g_clear_weak_pointer (&self->former_focus);
  set_answers (self, 0, NULL);
}

void
gw_notice_ask (GwNotice *self)
{
  GtkWidget *first;
  GtkRoot   *root;

  g_return_if_fail (GW_IS_NOTICE (self));

  first = gtk_widget_get_first_child (self->notice_answers);
  root = gtk_widget_get_root (GTK_WIDGET (self));
  if (first == NULL || root == NULL)
    return;

  if (!gw_focus_is_within (GTK_WIDGET (self)))
    g_set_weak_pointer (&self->former_focus, gtk_root_get_focus (root));
  gtk_widget_grab_focus (first);
}
