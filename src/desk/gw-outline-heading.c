/* gw-outline-heading.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-outline-heading.h"
#include "desk/gw-access.h"

#include "desk/gw-menu.h"

struct _GwOutlineHeading
{
  GtkWidget parent_instance;

  GtkToggleButton *fold;
  GtkLabel        *caption;
  GtkImage        *arrow;
  GtkButton       *add;
  GtkMenuButton   *add_menu;
  GtkWidget       *list;
};

G_DEFINE_FINAL_TYPE (GwOutlineHeading, gw_outline_heading, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_TITLE,
  PROP_LIST,
  PROP_ADD_LABEL,
  PROP_ADD_WHAT,
  PROP_FOLDED,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

static void
toggled_cb (GwOutlineHeading *self)
{
  const gboolean is_open = gtk_toggle_button_get_active (self->fold);

  gtk_image_set_from_icon_name (self->arrow, is_open ? "pan-down-symbolic" : "pan-end-symbolic");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->fold), GTK_ACCESSIBLE_STATE_EXPANDED, is_open,
                               -1);
  if (self->list != NULL)
    gtk_widget_set_visible (self->list, is_open);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_FOLDED]);
}

/* Else the key would go on to the next heading. */
static gboolean
down_cb (GtkWidget *widget,
         GVariant  *args,
         gpointer   data)
{
  GwOutlineHeading *self = GW_OUTLINE_HEADING (widget);
  GtkListBox       *list = GTK_LIST_BOX (self->list);
  GtkListBoxRow    *row = gtk_list_box_get_selected_row (list);

  if (row == NULL)
    row = gtk_list_box_get_row_at_index (list, 0);
  if (row == NULL || !gtk_widget_get_mapped (self->list))
    return FALSE;

  gtk_list_box_select_row (list, row);
  return gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
set_title (GwOutlineHeading *self,
           const char       *title)
{
  gtk_label_set_text (self->caption, title);
  gw_access_name (GTK_WIDGET (self->fold), title);
}

/* What takes the focus is within the menu button and has no name of its own. */
static void
set_add_label (GwOutlineHeading *self,
               const char       *label)
{
  gw_access_name (GTK_WIDGET (self->add), label);
  gw_access_name (GTK_WIDGET (self->add_menu), label);
  gtk_accessible_update_property (
    GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (self->add_menu))),
    GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void
set_add_what (GwOutlineHeading *self,
              const char       *what)
{
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->add), "s", what);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->add), "outline.add");
  gtk_widget_set_visible (GTK_WIDGET (self->add), TRUE);
}

static void
gw_outline_heading_get_property (GObject    *object,
                                 guint       id,
                                 GValue     *value,
                                 GParamSpec *pspec)
{
  if (id == PROP_FOLDED)
    g_value_set_boolean (value, gw_outline_heading_get_folded (GW_OUTLINE_HEADING (object)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
gw_outline_heading_set_property (GObject      *object,
                                 guint         id,
                                 const GValue *value,
                                 GParamSpec   *pspec)
{
  GwOutlineHeading *self = GW_OUTLINE_HEADING (object);

  switch (id)
    {
    case PROP_TITLE:
      set_title (self, g_value_get_string (value));
      break;
    case PROP_LIST:
      self->list = g_value_get_object (value);
      break;
    case PROP_ADD_LABEL:
      set_add_label (self, g_value_get_string (value));
      break;
    case PROP_ADD_WHAT:
      set_add_what (self, g_value_get_string (value));
      break;
    case PROP_FOLDED:
      gw_outline_heading_set_folded (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_outline_heading_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_OUTLINE_HEADING);

  G_OBJECT_CLASS (gw_outline_heading_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags set = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  properties[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, set);
  properties[PROP_LIST] = g_param_spec_object ("list", NULL, NULL, GTK_TYPE_WIDGET, set);
  properties[PROP_ADD_LABEL] = g_param_spec_string ("add-label", NULL, NULL, NULL, set);
  properties[PROP_ADD_WHAT] = g_param_spec_string ("add-what", NULL, NULL, NULL, set);
  properties[PROP_FOLDED] =
    g_param_spec_boolean ("folded", NULL, NULL, FALSE,
                          G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
gw_outline_heading_class_init (GwOutlineHeadingClass *klass)
{
  GObjectClass   *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = gw_outline_heading_get_property;
  object_class->set_property = gw_outline_heading_set_property;
  object_class->dispose = gw_outline_heading_dispose;
  install_properties (object_class);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-outline-heading.ui");
  gtk_widget_class_bind_template_child (widget_class, GwOutlineHeading, fold);
  gtk_widget_class_bind_template_child (widget_class, GwOutlineHeading, caption);
  gtk_widget_class_bind_template_child (widget_class, GwOutlineHeading, arrow);
  gtk_widget_class_bind_template_child (widget_class, GwOutlineHeading, add);
  gtk_widget_class_bind_template_child (widget_class, GwOutlineHeading, add_menu);
  gtk_widget_class_bind_template_callback (widget_class, toggled_cb);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Down, 0, down_cb, NULL);
}

static void
gw_outline_heading_init (GwOutlineHeading *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  toggled_cb (self);
}

void
gw_outline_heading_set_menu (GwOutlineHeading *self,
                             GMenuModel       *menu)
{
  g_return_if_fail (GW_IS_OUTLINE_HEADING (self));

  gw_menu_attach (self->add_menu, menu);
  gtk_widget_set_visible (GTK_WIDGET (self->add_menu), TRUE);
}

gboolean
gw_outline_heading_get_folded (GwOutlineHeading *self)
{
  g_return_val_if_fail (GW_IS_OUTLINE_HEADING (self), FALSE);

  return !gtk_toggle_button_get_active (self->fold);
}

void
gw_outline_heading_set_folded (GwOutlineHeading *self,
                               gboolean          is_folded)
{
  g_return_if_fail (GW_IS_OUTLINE_HEADING (self));

  gtk_toggle_button_set_active (self->fold, !is_folded);
}

gboolean
gw_outline_heading_focus_last (GwOutlineHeading *self)
{
  g_return_val_if_fail (GW_IS_OUTLINE_HEADING (self), FALSE);

  return gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_BACKWARD);
}
