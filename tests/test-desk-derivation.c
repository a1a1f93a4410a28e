/* test-desk-derivation.c - the page that says where a result comes from
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "demos.h"
#include "desk-wait.h"
#include "desk-widgets.h"
#include "desk/gw-derivation-view.h"
#include "report/gw-derivation.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"

typedef struct
{
  GwDocument *document;
  GtkWidget  *window, *view;
} Scene;

static void
scene_init (Scene *scene)
{
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);

  scene->document = gw_document_new_study (study);
  wait_until (!gw_document_is_busy (scene->document));
  scene->window = gtk_window_new ();
  scene->view = gw_derivation_view_new ();
  gw_derivation_view_set_document (GW_DERIVATION_VIEW (scene->view), scene->document);
  gtk_window_set_default_size (GTK_WINDOW (scene->window), 360, 800);
  gtk_window_set_child (GTK_WINDOW (scene->window), scene->view);
  gtk_window_present (GTK_WINDOW (scene->window));
  gtk_test_widget_wait_for_draw (scene->view);
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

/* The button in which @text stands. */
static GtkWidget *
find_button (const Scene *scene,
             const char  *text)
{
  GtkWidget *label = widgets_find_label (scene->view, text);

  g_assert_nonnull (label);
  return gtk_widget_get_ancestor (label, GTK_TYPE_BUTTON);
}

static void
test_follows (void)
{
  Scene scene;
  g_autoptr (GwStudy) heavier = NULL;
  g_autoptr (JsonNode) mass = json_from_string ("200", NULL);

  scene_init (&scene);
  g_assert_true (is_shown (&scene, "The mass of the aircraft, ready to fly."));
  g_assert_true (is_shown (&scene, "180 (172.3 to 187.7) g"));
  g_assert_true (is_shown (&scene, "Thin sheet"));

  heavier =
    gw_edit_set (gw_document_get_study (scene.document), 0, FALSE, "equipment/battery/mass_g", mass,
                 NULL);
  g_assert_true (gw_document_edit (scene.document, "Heavier", heavier, NULL, NULL));
  wait_until (is_shown (&scene, "The band is being computed."));
  wait_until (is_shown (&scene, "200 g"));
  wait_until (!gw_document_is_busy (scene.document));
  wait_until (!is_shown (&scene, "The band is being computed."));

  gw_document_set_shown (scene.document, 1);
  wait_until (is_shown (&scene, "thick"));
  scene_clear (&scene);
}

/* Another option's number is asked about beside the option that is shown. */
static void
test_option (void)
{
  Scene scene;

  scene_init (&scene);
  gw_derivation_view_set_option (GW_DERIVATION_VIEW (scene.view), 1);
  wait_until (is_shown (&scene, "thick"));
  g_assert_cmpuint (gw_document_get_shown (scene.document), ==, 0);

  gw_document_set_shown (scene.document, 1);
  gw_document_set_shown (scene.document, 0);
  wait_until (is_shown (&scene, "Thin sheet"));
  scene_clear (&scene);
}

static void
test_result (void)
{
  Scene scene;
  g_autoptr (GPtrArray) lists = NULL;

  scene_init (&scene);
  gw_derivation_view_set_result (GW_DERIVATION_VIEW (scene.view), GW_RESULT_STALL_SPEED);
  wait_until (is_shown (&scene, "The least speed of level flight, trimmed, flaps up, power off."));

  /* From the list, which holds every result. */
  lists = widgets_find (scene.view, GTK_TYPE_DROP_DOWN, NULL);
  g_assert_cmpuint (lists->len, ==, 1);
  g_assert_cmpuint (
    g_list_model_get_n_items (gtk_drop_down_get_model (g_ptr_array_index (lists, 0))), ==,
    GW_N_RESULTS);
  g_assert_cmpuint (gtk_drop_down_get_selected (g_ptr_array_index (lists, 0)), ==,
                    GW_RESULT_STALL_SPEED);
  gtk_drop_down_set_selected (g_ptr_array_index (lists, 0), GW_RESULT_SPAN);
  g_assert_cmpint (gw_derivation_view_get_result (GW_DERIVATION_VIEW (scene.view)), ==,
                   GW_RESULT_SPAN);
  wait_until (is_shown (&scene, "From tip to tip, of the widest wing."));
  g_assert_true (is_shown (&scene, "1200 mm"));
  scene_clear (&scene);
}

static void
test_selects (void)
{
  Scene      scene;
  GtkWidget *button;

  scene_init (&scene);
  button = find_button (&scene, "battery: Mass");
  g_assert_nonnull (button);
  g_assert_true (gtk_widget_get_focusable (button));
  gtk_test_accessible_assert_property (button, GTK_ACCESSIBLE_PROPERTY_LABEL,
                                       "battery: Mass: 180 (172.3 to 187.7) g");
  g_signal_emit_by_name (button, "clicked");
  g_assert_cmpstr (gw_document_get_selection (scene.document), ==, "equipment/battery");

  /* A sum is in no record. */
  g_assert_null (find_button (&scene, "all-up mass"));
  scene_clear (&scene);
}

/* While it is not on the screen nothing is computed for it. */
static void
test_hidden (void)
{
  Scene scene;

  scene_init (&scene);
  gtk_widget_set_visible (scene.view, FALSE);
  gw_derivation_view_set_result (GW_DERIVATION_VIEW (scene.view), GW_RESULT_SPAN);
  wait_for_ms (50);
  g_assert_true (is_shown (&scene, "The mass of the aircraft, ready to fly."));
  gtk_widget_set_visible (scene.view, TRUE);
  wait_until (is_shown (&scene, "From tip to tip, of the widest wing."));
  scene_clear (&scene);
}

/* A long section makes no rows until it is opened. */
static void
test_fold (void)
{
  Scene scene;
  g_autoptr (GwStudy) study = demo_load ("reed-bed");
  g_autoptr (GwDocument) document = gw_document_new_study (study);
  g_autoptr (GwDerivation) derivation = NULL;
  g_autoptr (GPtrArray) before = NULL, after = NULL, folds = NULL;
  guint n_rows = 0, n_inputs;

  scene_init (&scene);
  wait_until (!gw_document_is_busy (document));
  gw_derivation_view_set_document (GW_DERIVATION_VIEW (scene.view), document);
  gw_derivation_view_set_result (GW_DERIVATION_VIEW (scene.view), GW_RESULT_STALL_SPEED);
  wait_until (is_shown (&scene, "The least speed of level flight, trimmed, flaps up, power off."));

  derivation = gw_derivation_new (gw_document_get_evaluation (document), 0, GW_RESULT_STALL_SPEED,
                                  gw_units_standard ());
  n_inputs = derivation->sections[GW_DERIVATION_INPUTS].rows->len;
  for (guint i = 0; i < GW_N_DERIVATION_PARTS; i++)
    n_rows += derivation->sections[i].rows->len;
  g_assert_cmpuint (n_inputs, >, 50);

  before = widgets_find (scene.view, G_TYPE_INVALID, "line");
  g_assert_cmpuint (before->len, ==, n_rows - n_inputs);
  folds = widgets_find (scene.view, GTK_TYPE_EXPANDER, NULL);
  g_assert_cmpuint (folds->len, ==, GW_N_DERIVATION_PARTS);
  gtk_expander_set_expanded (g_ptr_array_index (folds, GW_DERIVATION_INPUTS), TRUE);
  after = widgets_find (scene.view, G_TYPE_INVALID, "line");
  g_assert_cmpuint (after->len, ==, n_rows);
  scene_clear (&scene);
}

static void
test_copy (void)
{
  Scene            scene;
  g_autofree char *wanted = NULL, *text = NULL;

  scene_init (&scene);
  wanted = gw_derivation_view_get_text (GW_DERIVATION_VIEW (scene.view));
  g_assert_true (g_str_has_prefix (wanted, "Thin sheet: all-up mass: "));
  g_assert_true (gtk_widget_activate_action (scene.view, "derivation.copy", NULL));
  gdk_clipboard_read_text_async (gtk_widget_get_clipboard (scene.view), NULL, widgets_read_cb,
                                 &text);
  wait_until (text != NULL);
  g_assert_cmpstr (text, ==, wanted);
  scene_clear (&scene);
}

static void
count_cb (guint *n)
{
  (*n)++;
}

static void
test_close (void)
{
  Scene scene;
  guint n = 0;

  scene_init (&scene);
  g_signal_connect_swapped (scene.view, "close", G_CALLBACK (count_cb), &n);
  g_signal_emit_by_name (find_button (&scene, "Close"), "clicked");
  g_assert_cmpuint (n, ==, 1);
  scene_clear (&scene);
}

static void
test_units (void)
{
  Scene   scene;
  GwUnits units = *gw_units_standard ();

  scene_init (&scene);
  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  gw_derivation_view_set_units (GW_DERIVATION_VIEW (scene.view), &units);
  gw_derivation_view_set_result (GW_DERIVATION_VIEW (scene.view), GW_RESULT_SPAN);
  /* 1200 mm */
  wait_until (is_shown (&scene, "47.24 in"));
  scene_clear (&scene);
}

/* Nothing to tell of: nothing is told, and nothing can be copied. */
static void
test_empty (void)
{
  GtkWidget       *window = gtk_window_new (), *view = gw_derivation_view_new ();
  g_autofree char *text = NULL;

  gtk_window_set_child (GTK_WINDOW (window), view);
  gtk_window_present (GTK_WINDOW (window));
  gtk_test_widget_wait_for_draw (view);
  text = gw_derivation_view_get_text (GW_DERIVATION_VIEW (view));
  g_assert_null (text);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int   argc,
      char *argv[])
{
  /* Names and roles are read in the process, without a bus. */
  g_setenv ("GTK_A11Y", "test", TRUE);
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/desk/derivation/empty", test_empty);
  g_test_add_func ("/desk/derivation/follows", test_follows);
  g_test_add_func ("/desk/derivation/option", test_option);
  g_test_add_func ("/desk/derivation/result", test_result);
  g_test_add_func ("/desk/derivation/selects", test_selects);
  g_test_add_func ("/desk/derivation/hidden", test_hidden);
  g_test_add_func ("/desk/derivation/fold", test_fold);
  g_test_add_func ("/desk/derivation/copy", test_copy);
  g_test_add_func ("/desk/derivation/close", test_close);
  g_test_add_func ("/desk/derivation/units", test_units);

  return g_test_run ();
}
