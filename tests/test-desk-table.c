/* test-desk-table.c - the tables on the desk
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "desk-wait.h"
#include "desk-widgets.h"
#include "desk/gw-table-item.h"
#include "desk/gw-table-view.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"

typedef struct
{
  GwDocument    *document;
  GtkWidget     *window, *view;
  GtkColumnView *columns;
} Scene;

static void
scene_init (Scene *scene)
{
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);
  g_autoptr (GPtrArray) found = NULL;

  scene->document = gw_document_new_study (study);
  wait_until (!gw_document_is_busy (scene->document));
  scene->window = gtk_window_new ();
  scene->view = gw_table_view_new ();
  gw_table_view_set_document (GW_TABLE_VIEW (scene->view), scene->document);
  gtk_window_set_default_size (GTK_WINDOW (scene->window), 900, 500);
  gtk_window_set_child (GTK_WINDOW (scene->window), scene->view);
  gtk_window_present (GTK_WINDOW (scene->window));
  gtk_test_widget_wait_for_draw (scene->view);
  gtk_test_widget_wait_for_draw (scene->view);
  found = widgets_find (scene->view, GTK_TYPE_COLUMN_VIEW, NULL);
  g_assert_cmpuint (found->len, ==, 1);
  scene->columns = g_ptr_array_index (found, 0);
}

static void
scene_clear (Scene *scene)
{
  gpointer weak = scene->view;

  g_object_add_weak_pointer (weak, &weak);
  gtk_window_destroy (GTK_WINDOW (scene->window));
  wait_until (weak == NULL);
  g_assert_finalize_object (scene->document);
}

static gboolean
is_shown (const Scene *scene,
          const char  *text)
{
  return widgets_find_label (scene->view, text) != NULL;
}

static GtkSingleSelection *
selection_of (const Scene *scene)
{
  return GTK_SINGLE_SELECTION (gtk_column_view_get_model (scene->columns));
}

static void
test_things (void)
{
  Scene scene;

  scene_init (&scene);
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (selection_of (&scene))), ==, 2);
  g_assert_cmpuint (g_list_model_get_n_items (gtk_column_view_get_columns (scene.columns)), ==, 9);
  g_assert_true (is_shown (&scene, "mass, g"));
  g_assert_true (is_shown (&scene, "180.0"));
  g_assert_true (is_shown (&scene, "battery"));
  g_assert_true (is_shown (&scene, "Thin sheet"));
  scene_clear (&scene);
}

/* Where the language runs the other way, signs and units stay where they belong. */
static void
test_numbers_apart (void)
{
  Scene       scene;
  const char *number, *word;

  scene_init (&scene);
  number = gtk_label_get_text (GTK_LABEL (widgets_find_label (scene.view, "180.0")));
  word = gtk_label_get_text (GTK_LABEL (widgets_find_label (scene.view, "battery")));
  g_assert_cmpstr (number, ==, "\342\201\246180.0\342\201\251");
  g_assert_cmpstr (word, ==, "battery");
  scene_clear (&scene);
}

/* Numbers stand right, words left. */
static void
test_alignment (void)
{
  Scene scene;

  scene_init (&scene);
  g_assert_cmpfloat (
    (double) gtk_label_get_xalign (GTK_LABEL (widgets_find_label (scene.view, "180.0"))), ==, 1.0);
  g_assert_true (gtk_widget_has_css_class (widgets_find_label (scene.view, "180.0"), "number"));
  g_assert_cmpfloat (
    (double) gtk_label_get_xalign (GTK_LABEL (widgets_find_label (scene.view, "battery"))), ==,
    0.0);
  scene_clear (&scene);
}

static void
test_activates (void)
{
  Scene scene;

  scene_init (&scene);
  g_assert_cmpstr (gw_document_get_selection (scene.document), ==, "");
  g_signal_emit_by_name (scene.columns, "activate", 1);
  g_assert_cmpstr (gw_document_get_selection (scene.document), ==, "equipment/battery");
  scene_clear (&scene);
}

static void
test_follows_selection (void)
{
  Scene scene;

  scene_init (&scene);
  g_assert_cmpuint (gtk_single_selection_get_selected (selection_of (&scene)), ==,
                    GTK_INVALID_LIST_POSITION);
  gw_document_set_selection (scene.document, "equipment/battery");
  g_assert_cmpuint (gtk_single_selection_get_selected (selection_of (&scene)), ==, 1);
  /* A station has no row here, but its surface has. */
  gw_document_set_selection (scene.document, "surfaces/wing/stations/2");
  g_assert_cmpuint (gtk_single_selection_get_selected (selection_of (&scene)), ==, 0);
  gw_document_set_selection (scene.document, "day");
  g_assert_cmpuint (gtk_single_selection_get_selected (selection_of (&scene)), ==,
                    GTK_INVALID_LIST_POSITION);
  scene_clear (&scene);
}

static void
test_follows_study (void)
{
  Scene scene;
  g_autoptr (GwStudy) heavier = NULL;
  g_autoptr (JsonNode) mass = json_from_string ("200", NULL);
  g_autoptr (GObject) item = NULL, same = NULL;

  scene_init (&scene);
  gw_document_set_selection (scene.document, "equipment/battery");
  item = g_list_model_get_item (G_LIST_MODEL (selection_of (&scene)), 1);
  heavier =
    gw_edit_set (gw_document_get_study (scene.document), 0, FALSE, "equipment/battery/mass_g", mass,
                 NULL);
  g_assert_true (gw_document_edit (scene.document, "Heavier", heavier, NULL, NULL));
  wait_until (is_shown (&scene, "200.0"));
  g_assert_false (is_shown (&scene, "180.0"));
  /* In place: the row is the same one and still marked. */
  same = g_list_model_get_item (G_LIST_MODEL (selection_of (&scene)), 1);
  g_assert_true (same == item);
  g_assert_cmpuint (gtk_single_selection_get_selected (selection_of (&scene)), ==, 1);

  gw_document_set_shown (scene.document, 1);
  wait_until (is_shown (&scene, "thick"));
  wait_until (!gw_document_is_busy (scene.document));
  scene_clear (&scene);
}

static void
test_kinds (void)
{
  Scene scene;
  g_autoptr (GPtrArray) lists = NULL;

  scene_init (&scene);
  lists = widgets_find (scene.view, GTK_TYPE_DROP_DOWN, NULL);
  g_assert_cmpuint (lists->len, ==, 1);
  for (guint kind = 0; kind < GW_N_TABLES; kind++)
    {
      g_autoptr (GwObjectTable) table =
        gw_object_table_new (gw_document_get_evaluation (scene.document), 0, (GwTableKind) kind,
                             gw_units_standard ());

      gtk_drop_down_set_selected (g_ptr_array_index (lists, 0), kind);
      g_assert_cmpint (gw_table_view_get_kind (GW_TABLE_VIEW (scene.view)), ==, kind);
      wait_until (g_list_model_get_n_items (gtk_column_view_get_columns (scene.columns)) ==
                  table->columns->len);
      wait_until (g_list_model_get_n_items (G_LIST_MODEL (selection_of (&scene))) ==
                  table->rows->len);
      gtk_test_widget_wait_for_draw (scene.view);
      wait_until (is_shown (&scene, ((GwTableRow *) g_ptr_array_index (table->rows, 0))->cells[0]));
    }
  scene_clear (&scene);
}

static char *
first_name (const Scene *scene)
{
  g_autoptr (GObject) item = g_list_model_get_item (G_LIST_MODEL (selection_of (scene)), 0);

  return g_strdup (gw_table_item_get_row (GW_TABLE_ITEM (item))->cells[1]);
}

/* By mass, up and down: the wing weighs less than the battery or more, whatever it is. */
static void
test_sorts (void)
{
  Scene scene;
  g_autoptr (GtkColumnViewColumn) column = NULL;
  g_autofree char *light = NULL, *heavy = NULL;

  scene_init (&scene);
  column = g_list_model_get_item (gtk_column_view_get_columns (scene.columns), 2);
  g_assert_cmpstr (gtk_column_view_column_get_title (column), ==, "mass, g");
  gtk_column_view_sort_by_column (scene.columns, column, GTK_SORT_ASCENDING);
  light = first_name (&scene);
  gtk_column_view_sort_by_column (scene.columns, column, GTK_SORT_DESCENDING);
  heavy = first_name (&scene);
  g_assert_cmpstr (light, ==, "wing"); /* 0.3 kg/m2 on 0.49 m2 against 180 g */
  g_assert_cmpstr (heavy, ==, "battery");

  /* The order of the summary says something. */
  gw_table_view_set_kind (GW_TABLE_VIEW (scene.view), GW_TABLE_SUMMARY);
  wait_until (is_shown (&scene, "result"));
  g_clear_object (&column);
  column = g_list_model_get_item (gtk_column_view_get_columns (scene.columns), 2);
  g_assert_null (gtk_column_view_column_get_sorter (column));
  scene_clear (&scene);
}

static void
test_copy (void)
{
  Scene            scene;
  g_autofree char *wanted = NULL, *text = NULL;

  scene_init (&scene);
  wanted = gw_table_view_get_text (GW_TABLE_VIEW (scene.view));
  g_assert_true (g_str_has_prefix (wanted, "group\tname\tmass, g\t"));
  g_assert_true (gtk_widget_activate_action (scene.view, "table.copy", NULL));
  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (scene.view), NULL, widgets_read_cb,
                                 &text);
  wait_until (text != NULL);
  g_assert_cmpstr (text, ==, wanted);
  scene_clear (&scene);
}

static void
test_hidden (void)
{
  Scene scene;

  scene_init (&scene);
  gtk_widget_set_visible (scene.view, FALSE);
  gw_table_view_set_kind (GW_TABLE_VIEW (scene.view), GW_TABLE_POINTS);
  gw_document_set_selection (scene.document, "equipment/battery");
  wait_for_ms (50);
  g_assert_cmpuint (g_list_model_get_n_items (gtk_column_view_get_columns (scene.columns)), ==, 9);
  gtk_widget_set_visible (scene.view, TRUE);
  wait_until (g_list_model_get_n_items (gtk_column_view_get_columns (scene.columns)) == 5);
  scene_clear (&scene);
}

static void
test_names (void)
{
  Scene scene;
  g_autoptr (GPtrArray) lists = NULL;

  scene_init (&scene);
  lists = widgets_find (GTK_WIDGET (scene.columns), GTK_TYPE_LIST_VIEW, NULL);
  g_assert_cmpuint (lists->len, ==, 1);
  gtk_test_accessible_assert_property (g_ptr_array_index (lists, 0), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "Things and masses");
  scene_clear (&scene);
}

int
main (int   argc,
      char *argv[])
{
  /* Names and roles are read in the process, without a bus. */
  g_setenv ("GTK_A11Y", "test", TRUE);
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/desk/table/things", test_things);
  g_test_add_func ("/desk/table/alignment", test_alignment);
  g_test_add_func ("/desk/table/numbers-apart", test_numbers_apart);
  g_test_add_func ("/desk/table/activates", test_activates);
  g_test_add_func ("/desk/table/follows-selection", test_follows_selection);
  g_test_add_func ("/desk/table/follows-study", test_follows_study);
  g_test_add_func ("/desk/table/kinds", test_kinds);
  g_test_add_func ("/desk/table/sorts", test_sorts);
  g_test_add_func ("/desk/table/copy", test_copy);
  g_test_add_func ("/desk/table/hidden", test_hidden);
  g_test_add_func ("/desk/table/names", test_names);

  return g_test_run ();
}
