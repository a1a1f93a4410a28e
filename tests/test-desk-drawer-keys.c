/* test-desk-drawer-keys.c - the ways through the outline: selection, keys, menus, folds, names
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk-drawer.h"
#include "desk/gw-outline-heading.h"

static void
test_selection (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  look_at (&desk, "surfaces/wing/stations/2");
  expect_here (&desk, "surfaces/wing");
  look_at (&desk, "options/core/builds/1");
  expect_here (&desk, "options/core");
  g_assert_cmpstr (shown_id (&desk), ==, "folded"); /* to look is not to show */
  look_at (&desk, "movable");
  expect_here (&desk, NULL);
  look_at (&desk, "");
  expect_here (&desk, "");

  gtk_list_box_select_row (list_of (&desk, "equipment"),
                           GTK_LIST_BOX_ROW (row_of (&desk, "equipment/camera")));
  g_assert_cmpstr (looked_at (&desk), ==, "equipment/camera");
  expect_here (&desk, "equipment/camera");

  /* An option is looked at and shown; shown from elsewhere it is followed. */
  gtk_list_box_select_row (list_of (&desk, "options"),
                           GTK_LIST_BOX_ROW (row_of (&desk, "options/foaming")));
  g_assert_cmpstr (looked_at (&desk), ==, "options/foaming");
  g_assert_cmpstr (shown_id (&desk), ==, "foaming");
  gw_document_set_shown (desk.document, 1);
  expect_here (&desk, "options/core");
  look_at (&desk, "day");
  gw_document_set_shown (desk.document, 2);
  expect_here (&desk, "day");

  /* The option that is shown already can be looked at. */
  g_signal_emit_by_name (list_of (&desk, "options"), "row-activated",
                         row_of (&desk, "options/foaming"));
  expect_here (&desk, "options/foaming");
  desk_clear (&desk);
}

/* What is picked elsewhere comes into sight, out of a folded part as well. */
static void
test_in_view (void)
{
  Desk              desk;
  GtkWidget        *scroller;
  GtkAdjustment    *place;
  GwOutlineHeading *heading;

  desk_init (&desk, "awkward");
  scroller = find (GTK_WIDGET (desk.drawer), "scroller");
  heading = GW_OUTLINE_HEADING (find (GTK_WIDGET (desk.drawer), "equipment_heading"));
  place = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  g_assert_cmpfloat (gtk_adjustment_get_value (place), ==, 0.0);
  gw_outline_heading_set_folded (heading, TRUE);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (list_of (&desk, "equipment"))));

  look_at (&desk, "equipment/ballast");
  g_assert_false (gw_outline_heading_get_folded (heading));
  wait_until (gtk_adjustment_get_value (place) > 500.0);
  look_at (&desk, "options/core");
  wait_until (gtk_adjustment_get_value (place) < 100.0);

  /* Nothing in particular is no reason to leave. */
  look_at (&desk, "");
  wait_for_ms (100);
  g_assert_cmpfloat (gtk_adjustment_get_value (place), <, 100.0);
  desk_clear (&desk);
}

static void
test_fold (void)
{
  Desk              first, second;
  GwOutlineHeading *heading;

  desk_init (&first, "small");
  heading = GW_OUTLINE_HEADING (find (GTK_WIDGET (first.drawer), "airframe_heading"));
  g_signal_emit_by_name (find (GTK_WIDGET (heading), "fold"), "clicked");
  g_assert_true (gw_outline_heading_get_folded (heading));
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (list_of (&first, "airframe"))));

  /* A new window begins as this one is. */
  desk_init (&second, "small");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (list_of (&second, "airframe"))));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (list_of (&second, "equipment"))));
  heading = GW_OUTLINE_HEADING (find (GTK_WIDGET (second.drawer), "airframe_heading"));
  g_signal_emit_by_name (find (GTK_WIDGET (heading), "fold"), "clicked");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (list_of (&second, "airframe"))));
  desk_clear (&second);
  desk_clear (&first);
}

static gboolean
press_in (Desk       *desk,
          const char *path,
          const char *key)
{
  GtkWidget *row = GTK_WIDGET (row_of (desk, path));

  gtk_widget_grab_focus (row);
  return press_shortcut (row, key);
}

static gboolean
has_focus (Desk       *desk,
           const char *path)
{
  return gtk_widget_has_focus (GTK_WIDGET (row_of (desk, path)));
}

/* Keys are for the row that has the focus, selected or not, and stay where the work goes on. */
static void
test_keys (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  look_at (&desk, "day");
  g_assert_true (press_in (&desk, "equipment/camera", "Delete"));
  g_assert_null (row_of (&desk, "equipment/camera"));
  expect_here (&desk, "equipment/receiver");
  g_assert_true (has_focus (&desk, "equipment/receiver"));
  g_assert_true (press_in (&desk, "equipment/deck", "KP_Delete"));
  g_assert_true (has_focus (&desk, "equipment/saddle"));

  g_assert_true (press_in (&desk, "equipment/video", "<Control><Shift>d"));
  g_assert_true (has_focus (&desk, "equipment/video-2"));
  g_assert_true (press_in (&desk, "equipment/video-2", "<Alt>Down"));
  g_assert_true (has_focus (&desk, "equipment/video-2"));
  g_assert_cmpstr (last_edit (&desk), ==, "Move Video sender with aerial, copy down");
  g_assert_true (press_in (&desk, "equipment/video-2", "<Alt>Up"));
  g_assert_cmpstr (last_edit (&desk), ==, "Move Video sender with aerial, copy up");

  g_assert_true (press_in (&desk, "legs/tail", "F2"));
  expect_here (&desk, "legs/tail");
  g_assert_cmpuint (desk.n_renames, ==, 1);

  /* Nothing of this can be done with the day. */
  press_in (&desk, "day", "Delete");
  press_in (&desk, "day", "<Alt>Up");
  g_assert_cmpstr (last_edit (&desk), ==, "Move Video sender with aerial, copy up");
  g_assert_null (desk.message);
  desk_clear (&desk);
}

static gboolean
tab (Desk           *desk,
     const char     *list,
     guint           key,
     GdkModifierType modifiers)
{
  g_autoptr (GListModel) controllers =
    gtk_widget_observe_controllers (GTK_WIDGET (list_of (desk, list)));
  gboolean is_taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", key, 0, modifiers, &is_taken);
    }

  return is_taken;
}

static gboolean
focus_is_in (Desk       *desk,
             const char *id)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (desk->window));

  return focus != NULL && gtk_widget_is_ancestor (focus, find (GTK_WIDGET (desk->drawer), id));
}

/* Tab goes from part to part, the arrow keys through all rows. */
static void
test_ways (void)
{
  Desk       desk;
  GtkWidget *row;
  gboolean   is_moved;

  desk_init (&desk, "reed-bed");
  gtk_widget_grab_focus (GTK_WIDGET (row_of (&desk, "surfaces/wing")));
  g_assert_true (tab (&desk, "airframe", GDK_KEY_Tab, 0));
  g_assert_true (focus_is_in (&desk, "equipment_heading"));
  gtk_widget_grab_focus (GTK_WIDGET (row_of (&desk, "surfaces/fin")));
  g_assert_true (tab (&desk, "airframe", GDK_KEY_ISO_Left_Tab, GDK_SHIFT_MASK));
  g_assert_true (focus_is_in (&desk, "airframe_heading"));
  g_assert_true (press_shortcut (find (GTK_WIDGET (desk.drawer), "airframe_heading"), "Down"));
  g_assert_true (focus_is_in (&desk, "airframe"));
  g_assert_false (tab (&desk, "airframe", GDK_KEY_Down, 0));

  row = GTK_WIDGET (row_of (&desk, "builds/2"));
  gtk_widget_grab_focus (row);
  g_signal_emit_by_name (list_of (&desk, "airframe"), "keynav-failed", GTK_DIR_DOWN, &is_moved);
  g_assert_true (is_moved);
  g_assert_true (has_focus (&desk, "equipment/battery"));
  expect_here (&desk, "equipment/battery");
  g_signal_emit_by_name (list_of (&desk, "equipment"), "keynav-failed", GTK_DIR_UP, &is_moved);
  g_assert_true (has_focus (&desk, "builds/2"));
  desk_clear (&desk);
}

static GtkWidget *
menu_of (Desk *desk)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (desk->drawer)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_POPOVER_MENU (child))
      return child;

  return NULL;
}

static gboolean
menu_is_open (Desk *desk)
{
  return menu_of (desk) != NULL && gtk_widget_get_mapped (menu_of (desk));
}

static void
close_menu (Desk *desk)
{
  gtk_popover_popdown (GTK_POPOVER (menu_of (desk)));
  wait_until (!menu_is_open (desk));
}

static void
press_secondary (Desk       *desk,
                 const char *list,
                 const char *path)
{
  GtkWidget      *row = GTK_WIDGET (row_of (desk, path));
  graphene_rect_t bounds;
  g_autoptr (GListModel) controllers =
    gtk_widget_observe_controllers (GTK_WIDGET (list_of (desk, list)));

  g_assert_true (
    gtk_widget_compute_bounds (row, GTK_WIDGET (list_of (desk, list)), &bounds));
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_GESTURE_CLICK (controller) &&
          gtk_gesture_single_get_button (GTK_GESTURE_SINGLE (controller)) == GDK_BUTTON_SECONDARY)
        g_signal_emit_by_name (controller, "pressed", 1, 20.0, (double) bounds.origin.y + 5.0);
    }
}

static void
test_menu (void)
{
  Desk desk;

  desk_init (&desk, "small");
  g_assert_null (menu_of (&desk)); /* made when it is wanted */
  g_signal_emit_by_name (gw_outline_row_get_button (row_of (&desk, "surfaces/fin")), "clicked");
  wait_until (menu_is_open (&desk));
  expect_here (&desk, "surfaces/fin");
  close_menu (&desk);
  g_assert_true (has_focus (&desk, "surfaces/fin"));

  g_assert_true (press_in (&desk, "options/core", "<Shift>F10"));
  wait_until (menu_is_open (&desk));
  expect_here (&desk, "options/core");
  close_menu (&desk);
  g_assert_true (press_in (&desk, "options/sheet", "Menu"));
  wait_until (menu_is_open (&desk));
  close_menu (&desk);

  press_secondary (&desk, "airframe", "surfaces/tailplane");
  wait_until (menu_is_open (&desk));
  expect_here (&desk, "surfaces/tailplane");
  close_menu (&desk);

  /* There is nothing to do with the day. */
  g_assert_null (gw_outline_row_get_button (row_of (&desk, "day")));
  press_in (&desk, "day", "Menu");
  press_secondary (&desk, "study", "day");
  wait_for_ms (50);
  g_assert_false (menu_is_open (&desk));
  expect_here (&desk, "day");
  desk_clear (&desk);
}

/* Everything that takes the focus or is listed has a name. */
static guint
assert_named (GtkWidget *widget)
{
  guint n = 0;

  if (GTK_IS_BUTTON (widget) || GTK_IS_LIST_BOX_ROW (widget) || GTK_IS_LIST_BOX (widget))
    {
      if (!gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget),
                                             GTK_ACCESSIBLE_PROPERTY_LABEL))
        g_error ("a %s without a name", G_OBJECT_TYPE_NAME (widget));
      n++;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (!GTK_IS_POPOVER (child) && gtk_widget_get_visible (child))
      n += assert_named (child);
  return n;
}

static void
test_accessible (void)
{
  Desk          desk;
  GwOutlineRow *row;
  GtkWidget    *heading, *add_button;

  desk_init (&desk, "reed-bed");
  g_assert_cmpuint (assert_named (GTK_WIDGET (desk.drawer)), >, 45);
  row = row_of (&desk, "equipment/camera");
  gtk_test_accessible_assert_role (row, GTK_ACCESSIBLE_ROLE_LIST_ITEM);
  gtk_test_accessible_assert_property (row, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Camera with its mount");
  gtk_test_accessible_assert_property (row, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       "96 g, 345 mm aft");
  gtk_test_accessible_assert_property (gw_outline_row_get_button (row),
                                       GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Menu of Camera with its mount");
  heading = find (GTK_WIDGET (desk.drawer), "equipment_heading");
  add_button = find (heading, "add");
  g_assert_true (gtk_widget_get_mapped (add_button));
  gtk_test_accessible_assert_property (add_button, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Add equipment");
  gtk_test_accessible_assert_state (find (heading, "fold"), GTK_ACCESSIBLE_STATE_EXPANDED, TRUE);
  g_signal_emit_by_name (add_button, "clicked");
  expect_here (&desk, "equipment/equipment");
  desk_clear (&desk);
}

static double
start_of (Desk      *desk,
          GtkWidget *widget)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (widget, GTK_WIDGET (desk->drawer), &bounds));
  return (double) bounds.origin.x;
}

static void
test_right_to_left (void)
{
  Desk       desk;
  GtkWidget *row, *heading, *more;

  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  desk_init (&desk, "small");
  row = GTK_WIDGET (row_of (&desk, "surfaces/wing"));
  heading = find (GTK_WIDGET (desk.drawer), "equipment_heading");
  more = gw_outline_row_get_button (GW_OUTLINE_ROW (row));
  wait_until (gtk_widget_get_width (more) > 0);
  g_assert_cmpfloat (start_of (&desk, more), <, start_of (&desk, find (row, "name")));
  g_assert_cmpfloat (gtk_inscription_get_xalign (GTK_INSCRIPTION (find (row, "detail"))), ==, 1.0f);
  g_assert_cmpfloat (start_of (&desk, find (heading, "add")), <,
                     start_of (&desk, find (heading, "caption")));
  desk_clear (&desk);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/desk/drawer/selection", test_selection);
  g_test_add_func ("/desk/drawer/in-view", test_in_view);
  g_test_add_func ("/desk/drawer/fold", test_fold);
  g_test_add_func ("/desk/drawer/keys", test_keys);
  g_test_add_func ("/desk/drawer/ways", test_ways);
  g_test_add_func ("/desk/drawer/menu", test_menu);
  g_test_add_func ("/desk/drawer/accessible", test_accessible);
  g_test_add_func ("/desk/drawer/right-to-left", test_right_to_left);
  return g_test_run ();
}
