/* gw-outline-row.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-outline-row.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-direction.h"

#define MARK_ROOM 34 /* [pixel] */
#define MORE_ROOM 28

typedef struct
{
  GtkOverlay     *overlay;
  GtkWidget      *texts;
  GtkLabel       *name;
  GtkInscription *detail;
  GtkWidget      *more; /* (nullable): made when it is to be seen */
  char           *path;
} GwOutlineRowPrivate;

G_DEFINE_TYPE_WITH_PRIVATE (GwOutlineRow, gw_outline_row, GTK_TYPE_LIST_BOX_ROW)

static GwOutlineRowPrivate *
get (GwOutlineRow *self)
{
  return gw_outline_row_get_instance_private (self);
}

static void
more_cb (GwOutlineRow *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "outline.menu", "s", get (self)->path);
}

static gboolean
has_menu (GwOutlineRow *self)
{
  return get (self)->path != NULL && strchr (get (self)->path, '/') != NULL;
}

static void
name_more (GwOutlineRow *self)
{
  g_autofree char *label = g_strdup_printf (_ ("Menu of %s"), gw_outline_row_get_name (self));

  gw_access_name (get (self)->more, label);
}

/* Of dozens of rows the menu of one or two is ever looked at. The button is out of the way of the
 * Tab key, which would stop at every row: Menu and Shift+F10 do the same. */
static void
need_more (GwOutlineRow *self)
{
  GtkWidget *more;

  if (get (self)->more != NULL || !has_menu (self))
    return;

  more = gtk_button_new_with_label ("⋯");
  gtk_widget_set_focusable (more, FALSE);
  gtk_button_set_has_frame (GTK_BUTTON (more), FALSE);
  gtk_widget_set_halign (more, GTK_ALIGN_END);
  gtk_widget_set_valign (more, GTK_ALIGN_START);
  gtk_widget_add_css_class (more, "more");
  g_signal_connect_swapped (more, "clicked", G_CALLBACK (more_cb), self);
  gtk_overlay_add_overlay (get (self)->overlay, more);
  get (self)->more = more;
  name_more (self);
}

static void
gw_outline_row_state_flags_changed (GtkWidget    *widget,
                                    GtkStateFlags former)
{
  if (gtk_widget_get_state_flags (widget) &
      (GTK_STATE_FLAG_PRELIGHT | GTK_STATE_FLAG_FOCUS_WITHIN))
    need_more (GW_OUTLINE_ROW (widget));
  GTK_WIDGET_CLASS (gw_outline_row_parent_class)->state_flags_changed (widget, former);
}

/* The row that has the focus is what a key is meant for. */
static gboolean
key_cb (GtkWidget *widget,
        GVariant  *action,
        gpointer   data)
{
  gtk_widget_activate_action (widget, "outline.select", "s",
                              gw_outline_row_get_path (GW_OUTLINE_ROW (widget)));
  return gtk_widget_activate_action (widget, g_variant_get_string (action, NULL), NULL);
}

static gboolean
menu_key_cb (GtkWidget *widget,
             GVariant  *args,
             gpointer   data)
{
  more_cb (GW_OUTLINE_ROW (widget));
  return TRUE;
}

/* Tab passes through a list without choosing: what was chosen before would be lost on the way to
 * its fields. Arrow keys choose as they go, Enter and Space where they are. */
static gboolean
gw_outline_row_focus (GtkWidget       *widget,
                      GtkDirectionType direction)
{
  const gboolean is_tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;

  if (is_tab && !gtk_widget_is_focus (widget))
    return gtk_widget_grab_focus (widget);

  return GTK_WIDGET_CLASS (gw_outline_row_parent_class)->focus (widget, direction);
}

static void
gw_outline_row_finalize (GObject *object)
{
  g_free (get (GW_OUTLINE_ROW (object))->path);

  G_OBJECT_CLASS (gw_outline_row_parent_class)->finalize (object);
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  static const struct
  {
    guint           key;
    GdkModifierType modifiers;
    const char     *action;
  } keys[] = {
    { GDK_KEY_Delete, 0, "outline.remove" },
    { GDK_KEY_KP_Delete, 0, "outline.remove" },
    { GDK_KEY_d, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "outline.duplicate" },
    { GDK_KEY_Up, GDK_ALT_MASK, "outline.up" },
    { GDK_KEY_Down, GDK_ALT_MASK, "outline.down" },
    { GDK_KEY_F2, 0, "outline.rename" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (widget_class, keys[i].key, keys[i].modifiers, key_cb, "s",
                                  keys[i].action);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Menu, 0, menu_key_cb, NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, menu_key_cb, NULL);
}

static void
gw_outline_row_class_init (GwOutlineRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gw_outline_row_finalize;
  widget_class->focus = gw_outline_row_focus;
  widget_class->state_flags_changed = gw_outline_row_state_flags_changed;
  add_keys (widget_class);
}

static GtkWidget *
texts_new (GwOutlineRowPrivate *priv)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_margin_end (box, MORE_ROOM);
  priv->name = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_set_name (GTK_WIDGET (priv->name), "name");
  gtk_label_set_xalign (priv->name, 0.0f);
  gtk_label_set_ellipsize (priv->name, PANGO_ELLIPSIZE_END);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (priv->name));

  /* Changes while something is dragged, and asks for no other size then. */
  priv->detail = GTK_INSCRIPTION (gtk_inscription_new (NULL));
  gtk_widget_set_name (GTK_WIDGET (priv->detail), "detail");
  gtk_inscription_set_text_overflow (priv->detail, GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gw_direction_align (priv->detail);
  gtk_widget_add_css_class (GTK_WIDGET (priv->detail), "detail");
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (priv->detail));

  return box;
}

/* By hand: a template would be read anew for each of dozens of rows. No horizontal box: that would
 * ask how wide a text is for each height, and a name that wraps would be laid out dozens of
 * times. */
static void
gw_outline_row_init (GwOutlineRow *self)
{
  GwOutlineRowPrivate *priv = get (self);

  priv->overlay = GTK_OVERLAY (gtk_overlay_new ());
  priv->texts = texts_new (priv);
  gtk_overlay_set_child (priv->overlay, priv->texts);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), GTK_WIDGET (priv->overlay));
}

GtkWidget *
gw_outline_row_new (void)
{
  return g_object_new (GW_TYPE_OUTLINE_ROW, NULL);
}

static void
set_name (GwOutlineRow *self,
          const char   *name)
{
  gtk_label_set_text (get (self)->name, name);
  gw_access_name (GTK_WIDGET (self), name);
  if (get (self)->more != NULL)
    name_more (self);
}

static void
set_detail (GwOutlineRow *self,
            const char   *detail)
{
  gtk_inscription_set_text (get (self)->detail, detail);
  gtk_widget_set_visible (GTK_WIDGET (get (self)->detail), *detail != '\0');
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  detail, -1);
}

void
gw_outline_row_set (GwOutlineRow *self,
                    const char   *path,
                    const char   *name,
                    const char   *detail)
{
  GwOutlineRowPrivate *priv;
  gboolean             is_fresh;

  g_return_if_fail (GW_IS_OUTLINE_ROW (self));

  priv = get (self);
  is_fresh = priv->path == NULL;
  if (g_strcmp0 (priv->path, path) != 0)
    {
      g_free (priv->path);
      priv->path = g_strdup (path);
      if (priv->more != NULL)
        gtk_widget_set_visible (priv->more, has_menu (self));
    }
  if (is_fresh || !g_str_equal (gtk_label_get_text (priv->name), name))
    set_name (self, name);
  if (is_fresh || g_strcmp0 (gtk_inscription_get_text (priv->detail), detail) != 0)
    set_detail (self, detail);
}

void
gw_outline_row_set_mark (GwOutlineRow *self,
                         GtkWidget    *mark)
{
  g_return_if_fail (GW_IS_OUTLINE_ROW (self));

  gtk_widget_set_halign (mark, GTK_ALIGN_START);
  gtk_widget_set_valign (mark, GTK_ALIGN_START);
  gtk_overlay_add_overlay (get (self)->overlay, mark);
  gtk_widget_set_margin_start (get (self)->texts, MARK_ROOM);
  gtk_widget_add_css_class (GTK_WIDGET (get (self)->name), "name");
}

void
gw_outline_row_set_here (GwOutlineRow *self,
                         gboolean      is_here)
{
  g_return_if_fail (GW_IS_OUTLINE_ROW (self));

  if (!is_here)
    {
      gtk_widget_remove_css_class (GTK_WIDGET (self), "here");
      return;
    }

  gtk_widget_add_css_class (GTK_WIDGET (self), "here");
  need_more (self);
}

const char *
gw_outline_row_get_path (GwOutlineRow *self)
{
  g_return_val_if_fail (GW_IS_OUTLINE_ROW (self), NULL);

  return get (self)->path;
}

const char *
gw_outline_row_get_name (GwOutlineRow *self)
{
  g_return_val_if_fail (GW_IS_OUTLINE_ROW (self), NULL);

  return gtk_label_get_text (get (self)->name);
}

GtkWidget *
gw_outline_row_get_button (GwOutlineRow *self)
{
  g_return_val_if_fail (GW_IS_OUTLINE_ROW (self), NULL);

  need_more (self);
  return has_menu (self) ? get (self)->more : NULL;
}

void
gw_outline_row_wrap_name (GwOutlineRow *self)
{
  GtkLabel *name;

  g_return_if_fail (GW_IS_OUTLINE_ROW (self));

  name = get (self)->name;
  gtk_label_set_ellipsize (name, PANGO_ELLIPSIZE_NONE);
  gtk_label_set_wrap (name, TRUE);
  gtk_label_set_wrap_mode (name, PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (name, 12); /* else it is tried letter by letter */
}
