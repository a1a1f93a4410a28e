/* test-desk-window.c - the main window as a person uses it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "desk/gw-sheet-view.h"
#include "desk/gw-window.h"
#include "desk-find.h"
#include "desk-wait.h"
#include "desk-widgets.h"

static GwApplication *application;

static GtkWidget *
get (GwWindow   *window,
     const char *id)
{
  GtkWidget *found = find (GTK_WIDGET (window), id);

  if (found == NULL)
    g_error ("the window has no “%s”", id);
  return found;
}

static const char *
text_of (GwWindow   *window,
         const char *id)
{
  return text_on (get (window, id));
}

static gboolean
is_shown (GwWindow   *window,
          const char *id)
{
  return gtk_widget_get_mapped (get (window, id));
}

static const char *
page_of (GwWindow *window)
{
  return gtk_stack_get_visible_child_name (GTK_STACK (get (window, "pages")));
}

static int
shown_of (GwWindow *window)
{
  int shown;

  g_object_get (window, "shown", &shown, NULL);
  return shown;
}

static GwWindow *
window_new (void)
{
  GwWindow *window = gw_window_new (application);

  gtk_window_present (GTK_WINDOW (window));
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (window)));
  return window;
}

static GwWindow *
window_with (GFile *file)
{
  GwWindow *window = window_new ();

  gw_window_open (window, file);
  wait_until (gw_window_get_document (window) != NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

static GwWindow *
window_with_demo (void)
{
  g_autoptr (GFile) demo =
    g_file_new_for_uri ("resource:///org/gramwright/demo/reed-bed.gramwright");

  return window_with (demo);
}

static GwWindow *
window_with_sample (Place *place)
{
  place_init (place, SAMPLE_STUDY);
  return window_with (place->file);
}

/* Each test proves that its window has gone with all it held. */
static void
window_close (GwWindow *window)
{
  GwDocument *document = gw_window_get_document (window);
  GtkWidget  *sheet = find (GTK_WIDGET (window), "sheet"); /* none if nothing was opened */

  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  if (sheet != NULL)
    g_object_add_weak_pointer (G_OBJECT (sheet), (gpointer *) &sheet);
  if (document != NULL)
    g_object_add_weak_pointer (G_OBJECT (document), (gpointer *) &document);
  gtk_window_destroy (GTK_WINDOW (window));
  wait_until (window == NULL && sheet == NULL && document == NULL);
}

/* The sheet as it is on the screen. */
static const GwDrawing *
drawing_of (GwWindow *window)
{
  GwSheetView *sheet = GW_SHEET_VIEW (get (window, "sheet"));

  wait_until (gw_sheet_view_get_drawing (sheet) != NULL);
  return gw_sheet_view_get_drawing (sheet);
}

/* With its bands, and the window as large as it becomes. */
static const GwDrawing *
drawing_at_rest (GwWindow *window)
{
  GtkWidget *top = GTK_WIDGET (window);

  wait_until (!gw_document_is_busy (gw_window_get_document (window)));
  wait_until (gtk_widget_get_width (top) >= 1024);
  gtk_test_widget_wait_for_draw (top);
  gtk_test_widget_wait_for_draw (top);
  return drawing_of (window);
}

static gboolean
says (const GwDrawing *drawing,
      const char      *text)
{
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    if (g_strcmp0 (gw_drawing_mark (drawing, i)->text, text) == 0)
      return TRUE;

  return FALSE;
}

static void
test_empty (void)
{
  GwWindow *window = window_new ();

  g_assert_cmpstr (page_of (window), ==, "empty");
  g_assert_true (gw_window_is_empty (window));
  g_assert_false (is_shown (window, "subtitle"));
  g_assert_false (is_shown (window, "bar"));
  g_assert_false (is_shown (window, "export_button"));
  /* Without a study these do nothing, and break nothing. */
  gtk_widget_activate_action (GTK_WIDGET (window), "win.print", NULL);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.export", NULL);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.reload", NULL);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.next-option", NULL);
  gtk_widget_activate_action (GTK_WIDGET (window), "win.shown", "i", 2);
  g_assert_cmpint (shown_of (window), ==, 0);
  window_close (window);
}

/* What is told of the study to whoever rests on its title. */
static const char *
more_of (GwWindow *window)
{
  return gtk_widget_get_tooltip_text (gtk_widget_get_parent (get (window, "subtitle")));
}

static void
test_demo (void)
{
  GwWindow  *window = window_new ();
  GtkWidget *sheet;

  gtk_widget_activate_action (GTK_WIDGET (window), "win.open-demo", NULL);
  sheet = get (window, "sheet");
  g_assert_cmpstr (page_of (window), ==, "waiting");
  wait_until (g_strcmp0 (page_of (window), "sheet") == 0);
  g_assert_cmpstr (text_of (window, "title"), ==, "Reed-bed survey aeroplane");
  g_assert_cmpstr (gtk_window_get_title (GTK_WINDOW (window)), ==, "Reed-bed survey aeroplane");
  g_assert_cmpstr (text_of (window, "subtitle"), ==,
                   "reed-bed.gramwright");
  g_assert_nonnull (strstr (more_of (window), "4 options · baseline: Folded foam board"));
  g_assert_true (is_shown (window, "export_button"));
  g_assert_true (says (drawing_of (window), "Reed-bed survey aeroplane"));
  g_assert_true (gtk_widget_has_focus (sheet));

  gtk_test_accessible_assert_role (sheet, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property (sheet, GTK_ACCESSIBLE_PROPERTY_LABEL, "Drawing sheet");
  gtk_test_accessible_assert_property (sheet, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       gw_sheet_view_get_text (GW_SHEET_VIEW (sheet)));
  g_assert_nonnull (
    strstr (gw_sheet_view_get_text (GW_SHEET_VIEW (sheet)), "Printed solid plastic; all-up mass "));
  window_close (window);
}

static void
press (GwWindow   *window,
       const char *key)
{
  g_assert_true (press_shortcut (GTK_WIDGET (window), key));
}

static int
selected_row (GwWindow *window)
{
  return gtk_list_box_row_get_index (
    gtk_list_box_get_selected_row (GTK_LIST_BOX (get (window, "options"))));
}

static void
expect_shown (GwWindow   *window,
              int         option,
              const char *name)
{
  g_assert_cmpint (shown_of (window), ==, option);
  g_assert_cmpint (selected_row (window), ==, option);
  /* The title block names it in full; the table, the curves and the bars have the short name. */
  g_assert_true (says (drawing_of (window), name));
}

static void
test_option (void)
{
  GwWindow   *window = window_with_demo ();
  GtkListBox *options = GTK_LIST_BOX (get (window, "options"));

  expect_shown (window, 0, "Folded foam board");
  gtk_widget_activate_action (GTK_WIDGET (window), "win.shown", "i", 1);
  expect_shown (window, 1, "Hot-wired core, glass skin");
  press (window, "Page_Down");
  expect_shown (window, 2, "Printed foaming plastic");
  press (window, "<Alt>4");
  expect_shown (window, 3, "Printed solid plastic");
  press (window, "Page_Down"); /* there is none after the last */
  expect_shown (window, 3, "Printed solid plastic");
  press (window, "<Alt>9");
  expect_shown (window, 3, "Printed solid plastic");
  press (window, "Page_Up");
  expect_shown (window, 2, "Printed foaming plastic");
  gtk_list_box_select_row (options, gtk_list_box_get_row_at_index (options, 1));
  expect_shown (window, 1, "Hot-wired core, glass skin");
  g_assert_false (says (drawing_of (window), "Printed foaming plastic"));
  window_close (window);
}

static void
test_drawer (void)
{
  Place     place;
  GwWindow *window = window_with_sample (&place);
  const int width = gtk_widget_get_width (get (window, "sheet"));

  g_assert_true (is_shown (window, "options"));
  press (window, "F9");
  wait_until (!is_shown (window, "options") &&
              gtk_widget_get_width (get (window, "sheet")) > width);
  press (window, "F9");
  wait_until (is_shown (window, "options") &&
              gtk_widget_get_width (get (window, "sheet")) == width);
  window_close (window);
  place_clear (&place);
}

static gboolean
wants_dark (void)
{
  gboolean is_dark;

  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &is_dark, NULL);
  return is_dark;
}

static void
test_dark (void)
{
  Place      place;
  GwWindow  *window = window_with_sample (&place);
  GSettings *settings = gw_application_get_settings (application);

  g_assert_false (gw_drawing_theme (drawing_of (window))->is_dark);
  press (window, "<Control>d");
  g_assert_true (gw_drawing_theme (drawing_of (window))->is_dark);
  g_assert_true (wants_dark ());
  g_assert_cmpint (g_settings_get_enum (settings, "theme"), ==, 2);
  press (window, "<Control>d");
  g_assert_false (gw_drawing_theme (drawing_of (window))->is_dark);
  g_assert_false (wants_dark ());
  g_assert_cmpint (g_settings_get_enum (settings, "theme"), ==, 1);

  /* From the menu. */
  g_action_group_activate_action (G_ACTION_GROUP (application), "theme",
                                  g_variant_new_string ("dark"));
  g_assert_true (gw_drawing_theme (drawing_of (window))->is_dark);
  g_action_group_activate_action (G_ACTION_GROUP (application), "theme",
                                  g_variant_new_string ("system"));
  g_assert_false (wants_dark ());
  window_close (window);
  place_clear (&place);
}

static gboolean
drop_files (GwWindow *window,
            GSList   *files)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (window));
  g_auto (GValue) value = G_VALUE_INIT;
  gboolean is_taken = FALSE;

  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_set_boxed (&value, files);
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_DROP_TARGET (controller))
        g_signal_emit_by_name (controller, "drop", &value, 10.0, 10.0, &is_taken);
    }

  return is_taken;
}

static void
test_drop (void)
{
  GwWindow *window = window_with_demo ();
  Place     place;
  GSList    files = { NULL, NULL };

  place_init (&place, SAMPLE_STUDY);
  files.data = place.file;
  g_assert_true (drop_files (window, &files));
  g_assert_cmpstr (text_of (window, "title"), ==,
                   "Reed-bed survey aeroplane"); /* until the new one is there */
  wait_until (g_str_equal (text_of (window, "title"), "Plank"));
  g_assert_cmpstr (page_of (window), ==, "sheet");
  expect_shown (window, 0, "Thin sheet");
  window_close (window);
  place_clear (&place);
}

static char *
broken_study (void)
{
  return sample_replace (SAMPLE_STUDY, "{ \"y_mm\": 600, \"chord_mm\": 200 }",
                         "{ \"y_mm\": 600, \"chord_mm\": -200 }");
}

static void
test_bad_file (void)
{
  Place            place;
  g_autofree char *bad = broken_study ();
  GwWindow        *window = window_new ();

  place_init (&place, bad);
  gw_window_open (window, place.file);
  wait_until (g_strcmp0 (page_of (window), "problem") == 0);
  g_assert_cmpstr (text_of (window, "file"), ==, place.path);
  g_assert_nonnull (strstr (text_of (window, "reason"), "surfaces/wing/stations/2/chord_mm"));
  g_assert_nonnull (strstr (text_of (window, "reason"), "from 2 to 5000 mm"));
  g_assert_false (is_shown (window, "bar"));
  g_assert_true (gtk_window_get_focus (GTK_WINDOW (window)) == get (window, "again"));

  /* Again, while it is as bad as before. */
  g_signal_emit_by_name (get (window, "again"), "clicked");
  wait_for_ms (300);
  g_assert_cmpstr (page_of (window), ==, "problem");

  place_replace (&place, SAMPLE_STUDY);
  wait_until (g_strcmp0 (page_of (window), "sheet") == 0);
  g_assert_cmpstr (text_of (window, "title"), ==, "Plank");
  window_close (window);
  place_clear (&place);
}

static void
test_file_breaks (void)
{
  Place            place;
  g_autofree char *bad = broken_study ();
  g_autofree char *mended = sample_replace (SAMPLE_STUDY, "\"Plank\"", "\"Mended\"");
  GwWindow        *window;

  place_init (&place, SAMPLE_STUDY);
  window = window_with (place.file);
  place_replace (&place, bad);
  wait_until (is_shown (window, "bar"));
  g_assert_true (g_str_has_prefix (text_of (window, "bar_title"), "plank.gramwright"));
  g_assert_true (
    g_str_has_prefix (text_of (window, "bar_reason"), "surfaces/wing/stations/2/chord_mm: "));
  g_assert_false (is_shown (window, "bar_close"));
  g_assert_cmpstr (page_of (window), ==, "sheet");
  g_assert_true (says (drawing_of (window), "Plank"));

  place_replace (&place, mended);
  wait_until (!is_shown (window, "bar") && g_str_equal (text_of (window, "title"), "Mended"));
  g_assert_true (says (drawing_of (window), "Mended"));
  window_close (window);
  place_clear (&place);
}

/* A bad file does not close the good one. */
static void
test_bad_file_beside (void)
{
  Place            place;
  g_autofree char *bad = broken_study ();
  GwWindow        *window = window_with_demo ();
  GwDocument      *document = gw_window_get_document (window);

  place_init (&place, bad);
  gw_window_open (window, place.file);
  wait_until (is_shown (window, "bar"));
  g_assert_true (gw_window_get_document (window) == document);
  g_assert_cmpstr (page_of (window), ==, "sheet");
  g_signal_emit_by_name (get (window, "bar_close"), "clicked");
  wait_until (!is_shown (window, "bar"));
  g_assert_true (gw_window_get_document (window) == document);

  /* It was given up: mending it changes nothing here. */
  place_replace (&place, SAMPLE_STUDY);
  wait_for_ms (500);
  g_assert_true (gw_window_get_document (window) == document);
  window_close (window);
  place_clear (&place);
}

static void
test_fewer_options (void)
{
  Place            place;
  g_autofree char *fewer =
    sample_replace (SAMPLE_STUDY, "    { \"id\": \"thin\", \"name\": \"Thin sheet\" },\n", "");
  GwWindow *window;

  place_init (&place, SAMPLE_STUDY);
  window = window_with (place.file);
  press (window, "Page_Down");
  expect_shown (window, 1, "thick");
  place_replace (&place, fewer);
  wait_until (strstr (more_of (window), "plank.gramwright · 1 option ·") != NULL);
  expect_shown (window, 0, "thick");
  g_assert_null (gtk_list_box_get_row_at_index (GTK_LIST_BOX (get (window, "options")), 1));
  window_close (window);
  place_clear (&place);
}

static void
test_hints (void)
{
  Place            place;
  g_autofree char *text =
    sample_replace (SAMPLE_STUDY, "\"format\": 1,", "\"format\": 1, \"mood\": 1,");
  GwWindow *window;

  place_init (&place, text);
  window = window_with (place.file);
  g_assert_true (is_shown (window, "hint_part"));
  g_assert_nonnull (strstr (text_of (window, "hints"), "mood"));
  g_assert_false (is_shown (window, "bar"));
  place_replace (&place, SAMPLE_STUDY);
  wait_until (!is_shown (window, "hint_part"));
  window_close (window);
  place_clear (&place);
}

/* The first piece of the sheet's picture. */
static GskRenderNode *
find_piece (GskRenderNode *node)
{
  switch ((int) gsk_render_node_get_node_type (node))
    {
    case GSK_CAIRO_NODE:
      return node;
    case GSK_TRANSFORM_NODE:
      return find_piece (gsk_transform_node_get_child (node));
    case GSK_CLIP_NODE:
      return find_piece (gsk_clip_node_get_child (node));
    case GSK_CONTAINER_NODE:
      for (guint i = 0; i < gsk_container_node_get_n_children (node); i++)
        {
          GskRenderNode *found = find_piece (gsk_container_node_get_child (node, i));

          if (found != NULL)
            return found;
        }
      return NULL;
    default:
      return NULL;
    }
}

/* What the sheet puts on the screen. (transfer full) */
static GskRenderNode *
ink_of (GwWindow *window)
{
  GtkWidget *sheet = get (window, "sheet");
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (sheet);
  GtkSnapshot   *snapshot = gtk_snapshot_new ();
  GskRenderNode *node, *piece;

  gdk_paintable_snapshot (paintable, snapshot, gtk_widget_get_width (sheet),
                          gtk_widget_get_height (sheet));
  node = gtk_snapshot_free_to_node (snapshot);
  piece = find_piece (node);
  g_assert_nonnull (piece);
  gsk_render_node_ref (piece);
  gsk_render_node_unref (node);
  return piece;
}

static void
redraw (GwWindow *window)
{
  gtk_widget_queue_draw (get (window, "sheet"));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
}

/* To expose the window again costs no ink. */
static void
test_ink_is_kept (void)
{
  Place          place;
  GwWindow      *window = window_with_sample (&place);
  GskRenderNode *first, *again, *other;

  drawing_at_rest (window); /* the bands, which come later, are inked anew */
  first = ink_of (window);
  redraw (window);
  again = ink_of (window);
  g_assert_true (again == first);
  press (window, "Page_Down");
  redraw (window);
  other = ink_of (window);
  g_assert_true (other != first);
  gsk_render_node_unref (first);
  gsk_render_node_unref (again);
  gsk_render_node_unref (other);
  window_close (window);
  place_clear (&place);
}

static double
start_of (GwWindow   *window,
          const char *id)
{
  graphene_rect_t bounds;

  g_assert_true (gtk_widget_compute_bounds (get (window, id), GTK_WIDGET (window), &bounds));
  return (double) bounds.origin.x;
}

/* A sign before its digits, a unit behind them. */
static void
assert_numbers_apart (GtkWidget *form)
{
  g_autoptr (GPtrArray) numbers = widgets_find (form, GTK_TYPE_INSCRIPTION, "number");

  g_assert_cmpuint (numbers->len, >, 3);
  for (guint i = 0; i < numbers->len; i++)
    {
      const char *text = gtk_inscription_get_text (g_ptr_array_index (numbers, i));

      g_assert_true (g_str_has_prefix (text, "\342\201\246"));
      g_assert_true (g_str_has_suffix (text, "\342\201\251"));
    }
}

/* The drawer changes sides, the aeroplane does not. */
static void
test_right_to_left (void)
{
  Place              place;
  GwWindow          *window = window_with_sample (&place);
  const GwDrawing   *drawing = drawing_at_rest (window);
  g_autofree double *points = g_memdup2 (gw_drawing_points (drawing), 200 * sizeof *points);

  g_assert_cmpfloat (start_of (window, "outline"), <, start_of (window, "sheet"));
  window_close (window);

  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  window = window_with (place.file);
  drawing = drawing_at_rest (window);
  g_assert_cmpfloat (start_of (window, "outline"), >, start_of (window, "sheet"));
  assert_numbers_apart (get (window, "form"));
  g_assert_cmpmem (points, 200 * sizeof *points, gw_drawing_points (drawing), 200 * sizeof *points);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
  window_close (window);
  place_clear (&place);
}

/* What is made only when it is opened. */
static void
test_opened (void)
{
  GwWindow      *window = window_new ();
  GtkMenuButton *button = GTK_MENU_BUTTON (get (window, "menu_button"));
  GtkWidget     *keys;

  g_assert_null (gtk_menu_button_get_popover (button));
  gtk_menu_button_popup (button);
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (gtk_menu_button_get_popover (button))));
  gtk_menu_button_popdown (button);

  g_assert_null (gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window)));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.keys", NULL);
  keys = GTK_WIDGET (gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window)));
  g_assert_nonnull (keys);
  wait_until (gtk_widget_get_mapped (keys));
  gtk_window_close (GTK_WINDOW (keys));
  wait_until (!gtk_widget_get_mapped (keys));
  window_close (window);
}

static guint
n_windows (void)
{
  return g_list_length (gtk_application_get_windows (GTK_APPLICATION (application)));
}

static GwWindow *
narrow_with (GFile *file)
{
  GwWindow *window = gw_window_new (application);

  gtk_window_set_default_size (GTK_WINDOW (window), 1000, 680);
  gtk_window_present (GTK_WINDOW (window));
  gw_window_open (window, file);
  wait_until (gw_window_get_document (window) != NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

/* A small window begins without the outline, and what is chosen then holds. */
static void
test_narrow (void)
{
  static const char *const keys[] = { "is-outline-open", "window-width", "window-height" };
  GSettings               *settings = gw_application_get_settings (application);
  Place                    place;
  GwWindow                *window;

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    g_settings_reset (settings, keys[i]);
  window = window_with_sample (&place);
  g_assert_true (is_shown (window, "outline"));
  window_close (window);

  window = narrow_with (place.file);
  g_assert_false (is_shown (window, "outline"));
  g_assert_true (is_shown (window, "form"));
  g_assert_null (g_settings_get_user_value (settings, "is-outline-open"));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.outline", NULL);
  wait_until (is_shown (window, "outline"));
  g_assert_true (g_settings_get_boolean (settings, "is-outline-open"));
  window_close (window);

  window = narrow_with (place.file);
  g_assert_true (is_shown (window, "outline"));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.outline", NULL);
  window_close (window);

  for (gsize i = 1; i < G_N_ELEMENTS (keys); i++)
    g_settings_reset (settings, keys[i]);
  window = window_with (place.file);
  g_assert_false (is_shown (window, "outline"));
  window_close (window);
  g_settings_reset (settings, "is-outline-open");
  place_clear (&place);
}

/* Below the header bar of the smallest window there are 640 pixels. */
static void
test_menu_fits (void)
{
  Place          place;
  GwWindow      *window = window_with_sample (&place);
  GtkMenuButton *button = GTK_MENU_BUTTON (get (window, "menu_button"));
  GtkWidget     *menu;
  int            height;

  gtk_menu_button_popup (button);
  menu = GTK_WIDGET (gtk_menu_button_get_popover (button));
  wait_until (gtk_widget_get_mapped (menu));
  gtk_widget_measure (menu, GTK_ORIENTATION_VERTICAL, -1, NULL, &height, NULL, NULL);
  g_test_message ("The menu is %d pixels high", height);
  g_assert_cmpint (height, >, 200);
  g_assert_cmpint (height, <, 640);
  gtk_menu_button_popdown (button);
  window_close (window);
  place_clear (&place);
}

static void
test_several_windows (void)
{
  Place     place;
  GwWindow *empty = window_new (), *other;
  GFile    *files[2];

  place_init (&place, SAMPLE_STUDY);
  files[0] = g_file_new_for_uri ("resource:///org/gramwright/demo/small.gramwright");
  files[1] = place.file;
  g_application_open (G_APPLICATION (application), files, 2, "");
  g_assert_cmpuint (n_windows (), ==, 2); /* the empty one was taken */
  g_assert_false (gw_window_is_empty (empty));
  other = GW_WINDOW (gtk_application_get_windows (GTK_APPLICATION (application))->data);
  if (other == empty)
    other = GW_WINDOW (gtk_application_get_windows (GTK_APPLICATION (application))->next->data);
  wait_until (gw_window_get_document (empty) != NULL && gw_window_get_document (other) != NULL);
  g_assert_cmpstr (text_of (other, "title"), ==, "Plank");
  wait_until (gtk_widget_get_mapped (get (other, "sheet")));
  window_close (other);
  window_close (empty);
  g_assert_cmpuint (n_windows (), ==, 0);
  g_object_unref (files[0]);
  place_clear (&place);
}

/* Closed while a file is being read, computed and waited for. */
static void
test_close_busy (void)
{
  GwWindow *window = window_new ();

  gtk_widget_activate_action (GTK_WIDGET (window), "win.open-demo", NULL);
  wait_for_ms (20);
  window_close (window);
  wait_for_ms (500);
}

#if !GTK_CHECK_VERSION(4, 10, 0)
static GtkWidget *
wait_for_dialog (void)
{
  GListModel *windows = gtk_window_get_toplevels ();
  GtkWidget  *dialog = NULL;

  while (dialog == NULL)
    {
      for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
        {
          g_autoptr (GtkWidget) candidate = g_list_model_get_item (windows, i);

          if (GTK_IS_FILE_CHOOSER_DIALOG (candidate) && gtk_widget_get_mapped (candidate))
            dialog = candidate;
        }
      g_main_context_iteration (NULL, FALSE);
    }

  return dialog;
}

static void
test_open_dialog (void)
{
  Place     place;
  GwWindow *window = window_new ();

  place_init (&place, SAMPLE_STUDY);
  press (window, "<Control>o");
  gtk_dialog_response (GTK_DIALOG (wait_for_dialog ()), GTK_RESPONSE_CANCEL);
  g_assert_true (gw_window_is_empty (window));

  press (window, "<Control>o");
  gtk_file_chooser_set_file (GTK_FILE_CHOOSER (wait_for_dialog ()), place.file, NULL);
  wait_until (gtk_file_chooser_get_file (GTK_FILE_CHOOSER (wait_for_dialog ())) != NULL);
  gtk_dialog_response (GTK_DIALOG (wait_for_dialog ()), GTK_RESPONSE_ACCEPT);
  wait_until (gw_window_get_document (window) != NULL);
  g_assert_cmpstr (text_of (window, "title"), ==, "Plank");
  window_close (window);
  place_clear (&place);
}
#endif

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  application = gw_application_new (G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));

  g_test_add_func ("/desk/window/empty", test_empty);
  g_test_add_func ("/desk/window/demo", test_demo);
  g_test_add_func ("/desk/window/option", test_option);
  g_test_add_func ("/desk/window/drawer", test_drawer);
  g_test_add_func ("/desk/window/dark", test_dark);
  g_test_add_func ("/desk/window/drop", test_drop);
  g_test_add_func ("/desk/window/bad-file", test_bad_file);
  g_test_add_func ("/desk/window/file-breaks", test_file_breaks);
  g_test_add_func ("/desk/window/bad-file-beside", test_bad_file_beside);
  g_test_add_func ("/desk/window/fewer-options", test_fewer_options);
  g_test_add_func ("/desk/window/hints", test_hints);
  g_test_add_func ("/desk/window/ink-is-kept", test_ink_is_kept);
  g_test_add_func ("/desk/window/right-to-left", test_right_to_left);
  g_test_add_func ("/desk/window/narrow", test_narrow);
  g_test_add_func ("/desk/window/menu-fits", test_menu_fits);
  g_test_add_func ("/desk/window/opened", test_opened);
  g_test_add_func ("/desk/window/several-windows", test_several_windows);
  g_test_add_func ("/desk/window/close-busy", test_close_busy);
#if !GTK_CHECK_VERSION(4, 10, 0)
  g_test_add_func ("/desk/window/open-dialog", test_open_dialog);
#endif

  return g_test_run ();
}
