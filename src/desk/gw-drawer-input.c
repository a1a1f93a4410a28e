/* gw-drawer-input.c - keys that go from list to list, and the menu of a row
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>

#include "desk/gw-drawer-private.h"
#include "desk/gw-access.h"

static guint
part_of (GwDrawer  *self,
         GtkWidget *list)
{
  guint part = 0;

  while (part + 1 < GW_N_PARTS && GTK_WIDGET (self->lists[part]) != list)
    part++;
  return part;
}

/* The arrow keys go on from list to list. */
static gboolean
keynav_failed_cb (GwDrawer        *self,
                  GtkDirectionType direction,
                  GtkWidget       *list)
{
  const int step = direction == GTK_DIR_DOWN ? 1 : direction == GTK_DIR_UP ? -1
                                                                           : 0;

  for (int part = (int) part_of (self, list) + step; step != 0 && part >= 0 && part < GW_N_PARTS;
       part += step)
    {
      GtkWidget *row = gtk_widget_get_last_child (GTK_WIDGET (self->lists[part]));

      if (step > 0)
        row = (GtkWidget *) _gw_drawer_row_at (self, (guint) part, 0);
      if (row != NULL && gtk_widget_get_mapped (row))
        {
          _gw_drawer_choose (self, GW_OUTLINE_ROW (row));
          return gtk_widget_grab_focus (row);
        }
    }

  return FALSE;
}

/* Tab leaves a list: it would stop at every row otherwise. */
static gboolean
tab_cb (GtkEventControllerKey *keys,
        guint                  key,
        guint                  code,
        GdkModifierType        modifiers,
        GwDrawer              *self)
{
  GtkWidget  *list = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));
  const guint part = part_of (self, list);
  const guint others = GDK_CONTROL_MASK | GDK_ALT_MASK;

  if ((modifiers & others) != 0)
    return FALSE;
  if (key == GDK_KEY_ISO_Left_Tab || (key == GDK_KEY_Tab && (modifiers & GDK_SHIFT_MASK) != 0))
    return gw_outline_heading_focus_last (self->headings[part]);
  if (key != GDK_KEY_Tab)
    return FALSE;
  if (part + 1 < GW_N_PARTS)
    return gtk_widget_child_focus (GTK_WIDGET (self->headings[part + 1]), GTK_DIR_TAB_FORWARD);

  /* From its last row the focus goes on to what comes after the drawer. */
  gtk_widget_grab_focus (gtk_widget_get_last_child (list));
  return FALSE;
}

static void
menu_closed_cb (GwDrawer *self)
{
  if (self->current != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (self->current));
}

static void
popup_at (GwDrawer           *self,
          const GdkRectangle *place)
{
  if (self->menu == NULL)
    {
      self->menu = gtk_popover_menu_new_from_model (self->row_menu);
      gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
      gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
      gw_access_name (GTK_WIDGET (self->menu), _ ("What can be done"));
      gtk_widget_set_parent (self->menu, GTK_WIDGET (self));
      g_signal_connect_swapped (self->menu, "closed", G_CALLBACK (menu_closed_cb), self);
    }

  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), place);
  gtk_popover_popup (GTK_POPOVER (self->menu));
}

void
_gw_drawer_popup (GwDrawer *self)
{
  graphene_rect_t bounds;
  GtkWidget      *button = gw_outline_row_get_button (self->current);

  if (button == NULL)
    return;
  /* One that has just been made has no place yet. */
  if (gtk_widget_get_width (button) == 0)
    button = GTK_WIDGET (self->current);
  if (gtk_widget_compute_bounds (button, GTK_WIDGET (self), &bounds))
    popup_at (self, &(GdkRectangle){ (int) bounds.origin.x, (int) bounds.origin.y,
                                     (int) bounds.size.width, (int) bounds.size.height });
}

static void
pressed_cb (GtkGestureClick *gesture,
            int              n,
            double           x,
            double           y,
            GwDrawer        *self)
{
  GtkWidget       *list = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture));
  GtkListBoxRow   *row = gtk_list_box_get_row_at_y (GTK_LIST_BOX (list), (int) y);
  graphene_point_t at;

  if (row == NULL || self->document == NULL)
    return;

  _gw_drawer_choose (self, GW_OUTLINE_ROW (row));
  if (gw_outline_row_get_button (GW_OUTLINE_ROW (row)) != NULL &&
      gtk_widget_compute_point (list, GTK_WIDGET (self),
                                &GRAPHENE_POINT_INIT ((float) x, (float) y), &at))
    popup_at (self, &(GdkRectangle){ (int) at.x, (int) at.y, 1, 1 });
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
}

void
_gw_drawer_watch_list (GwDrawer   *self,
                       GtkListBox *list)
{
  GtkGesture         *press = gtk_gesture_click_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (list, "keynav-failed", G_CALLBACK (keynav_failed_cb), self);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (press), GDK_BUTTON_SECONDARY);
  g_signal_connect (press, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (list), GTK_EVENT_CONTROLLER (press));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (tab_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (list), keys);
}
