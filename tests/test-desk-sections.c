/* test-desk-sections.c - figures of the wing sections on the desk
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "desk-wait.h"
#include "desk-widgets.h"
#include "desk/gw-desk.h"
#include "desk/gw-sections-view.h"

#define DEMO "data/demo/reed-bed.gramwright"

typedef struct
{
  GwDocument     *document;
  GtkWidget      *window;
  GwSectionsView *view;
} Scene;

static void
scene_init (Scene *scene)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", DEMO, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);

  scene->document = gw_document_new (file);
  wait_until (!gw_document_is_busy (scene->document));
  scene->window = gtk_window_new ();
  scene->view = GW_SECTIONS_VIEW (gw_sections_view_new ());
  gw_sections_view_set_document (scene->view, scene->document);
  gtk_window_set_default_size (GTK_WINDOW (scene->window), 900, 600);
  gtk_window_set_child (GTK_WINDOW (scene->window), GTK_WIDGET (scene->view));
  gtk_window_present (GTK_WINDOW (scene->window));
  gtk_test_widget_wait_for_draw (scene->window);
  wait_until (gw_sections_view_get_sheet (scene->view) != NULL);
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

static gpointer
only (const Scene *scene,
      GType        type)
{
  g_autoptr (GPtrArray) found = widgets_find (GTK_WIDGET (scene->view), type, NULL);

  g_assert_cmpuint (found->len, ==, 1);
  return g_ptr_array_index (found, 0);
}

/* Each choice of the list is another figure. */
static void
test_kinds (void)
{
  Scene        scene;
  GtkDropDown *kinds;

  scene_init (&scene);
  kinds = only (&scene, GTK_TYPE_DROP_DOWN);
  g_assert_cmpuint (g_list_model_get_n_items (gtk_drop_down_get_model (kinds)), ==,
                    GW_N_SECTION_FIGURES);
  g_assert_nonnull (gw_section_sheet_polar (gw_sections_view_get_sheet (scene.view)));

  gtk_drop_down_set_selected (kinds, GW_SECTION_GREATEST_LIFT);
  wait_until (gw_sections_view_get_sheet (scene.view) != NULL);
  g_assert_nonnull (gw_section_sheet_greatest_lift (gw_sections_view_get_sheet (scene.view)));

  gtk_drop_down_set_selected (kinds, GW_SECTION_PRESSURE);
  wait_until (gw_sections_view_get_sheet (scene.view) != NULL);
  g_assert_nonnull (gw_section_sheet_pressure (gw_sections_view_get_sheet (scene.view)));
  scene_clear (&scene);
}

static size_t
flights_of (const GwGreatestLiftFigure *figure)
{
  size_t n = 0;

  for (size_t i = 0; i < figure->n_curves; i++)
    n += figure->curves[i].n_flights;
  return n;
}

/* Of all options, or of the one shown, whichever that is. */
static void
test_only_the_shown (void)
{
  Scene                       scene;
  GtkCheckButton             *check;
  const GwGreatestLiftFigure *figure;
  guint                       n;

  scene_init (&scene);
  n = gw_document_get_evaluation (scene.document)->outcomes->len;
  check = only (&scene, GTK_TYPE_CHECK_BUTTON);
  gw_sections_view_set_kind (scene.view, GW_SECTION_GREATEST_LIFT);
  wait_until (gw_sections_view_get_sheet (scene.view) != NULL);
  g_assert_cmpuint (
    flights_of (gw_section_sheet_greatest_lift (gw_sections_view_get_sheet (scene.view))), ==, n);

  gtk_check_button_set_active (check, TRUE);
  for (guint option = 0; option < n; option++)
    {
      const char *name =
        gw_evaluation_outcome (gw_document_get_evaluation (scene.document), option)->name;

      gw_document_set_shown (scene.document, option);
      wait_until (gw_sections_view_get_sheet (scene.view) != NULL);
      g_assert_nonnull (strstr (gtk_check_button_get_label (check), name));
      figure = gw_section_sheet_greatest_lift (gw_sections_view_get_sheet (scene.view));
      g_assert_cmpuint (flights_of (figure), ==, 1);
    }
  scene_clear (&scene);
}

/* Closed while a pressure is computed: nothing comes back to what is gone. */
static void
test_closed_at_work (void)
{
  Scene scene;

  scene_init (&scene);
  gw_sections_view_set_kind (scene.view, GW_SECTION_PRESSURE);
  g_assert_null (gw_sections_view_get_sheet (scene.view));
  scene_clear (&scene);
}

static gboolean
desk_is (GwDesk     *desk,
         const char *property)
{
  gboolean is;

  g_object_get (desk, property, &is, NULL);
  return is;
}

/* Sheet, tables and sections take each other's place. */
static void
test_page_of_the_desk (void)
{
  g_autoptr (GwStudy) study = gw_study_parse (SAMPLE_STUDY, strlen (SAMPLE_STUDY), NULL, NULL);
  GwDocument *document = gw_document_new_study (study);
  GtkWidget  *window = gtk_window_new ();
  GwDesk     *desk = g_object_new (GW_TYPE_DESK, NULL);
  gpointer    weak = desk, held = document;

  g_object_add_weak_pointer (weak, &weak);
  g_object_add_weak_pointer (held, &held);
  wait_until (!gw_document_is_busy (document));
  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 700);
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (desk));
  gw_desk_set_document (desk, document);
  gtk_window_present (GTK_WINDOW (window));

  g_object_set (desk, "table", TRUE, NULL);
  g_object_set (desk, "sections", TRUE, NULL);
  g_assert_true (desk_is (desk, "sections"));
  g_assert_false (desk_is (desk, "table"));
  g_object_set (desk, "table", FALSE, NULL); /* it is not on */
  g_assert_true (desk_is (desk, "sections"));
  g_object_set (desk, "sections", FALSE, NULL);
  g_assert_false (desk_is (desk, "sections"));
  g_assert_false (desk_is (desk, "table"));

  gtk_window_destroy (GTK_WINDOW (window));
  wait_until (weak == NULL);
  wait_until (!gw_document_is_busy (document));
  g_object_unref (document);
  wait_until (held == NULL);
}

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/desk/sections/kinds", test_kinds);
  g_test_add_func ("/desk/sections/only-the-shown", test_only_the_shown);
  g_test_add_func ("/desk/sections/closed-at-work", test_closed_at_work);
  g_test_add_func ("/desk/sections/page-of-the-desk", test_page_of_the_desk);

  return g_test_run ();
}
