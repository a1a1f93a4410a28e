/* test-desk-new-study.c - a new study asked for, and begun
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>
#include <string.h>

#include "desk/gw-new-study.h"
#include "desk/gw-window.h"
#include "study/gw-evaluation.h"

#include "desk-find.h"
#include "desk-wait.h"
#include "desk-widgets.h"

static GwApplication *application;

/* A page in a window of its own, and what it says. */
typedef struct
{
  GtkWidget  *window;
  GwNewStudy *page;
  GwStudy    *begun;
  guint       n_begun, n_cancelled;
} Fixture;

static GtkWidget *
get (Fixture    *fixture,
     const char *id)
{
  GtkWidget *found = find (GTK_WIDGET (fixture->page), id);

  g_assert_nonnull (found);
  return found;
}

static void
begin_cb (Fixture *fixture,
          GwStudy *study)
{
  g_clear_pointer (&fixture->begun, gw_study_unref);
  fixture->begun = gw_study_ref (study);
  fixture->n_begun++;
}

static void
cancel_cb (Fixture *fixture)
{
  fixture->n_cancelled++;
}

static void
set_up (Fixture      *fixture,
        gconstpointer data)
{
  fixture->page = GW_NEW_STUDY (gw_new_study_new ());
  fixture->window = gtk_window_new ();
  g_signal_connect_swapped (fixture->page, "begin", G_CALLBACK (begin_cb), fixture);
  g_signal_connect_swapped (fixture->page, "cancel", G_CALLBACK (cancel_cb), fixture);
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 1024, 640);
  gtk_window_set_child (GTK_WINDOW (fixture->window), GTK_WIDGET (fixture->page));
  gtk_window_present (GTK_WINDOW (fixture->window));
  gw_new_study_start (fixture->page);
  gtk_test_widget_wait_for_draw (fixture->window);
}

/* Everything it held goes with it. */
static void
tear_down (Fixture      *fixture,
           gconstpointer data)
{
  g_object_add_weak_pointer (G_OBJECT (fixture->page), (gpointer *) &fixture->page);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  wait_until (fixture->page == NULL);
  g_clear_pointer (&fixture->begun, gw_study_unref);
}

static void
type (Fixture    *fixture,
      const char *id,
      const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (get (fixture, id)), text);
}

static const char *
typed (Fixture    *fixture,
       const char *id)
{
  return gtk_editable_get_text (GTK_EDITABLE (get (fixture, id)));
}

static const char *
said (Fixture    *fixture,
      const char *id)
{
  return gtk_label_get_text (GTK_LABEL (get (fixture, id)));
}

static const char *
cell (Fixture *fixture,
      int      column,
      int      row)
{
  GtkWidget *label = gtk_grid_get_child_at (GTK_GRID (get (fixture, "outcomes")), column, row);

  g_assert_nonnull (label);
  return gtk_label_get_text (GTK_LABEL (label));
}

static gboolean
is_amiss (Fixture    *fixture,
          const char *id)
{
  return gtk_widget_has_css_class (get (fixture, id), "error");
}

static void
choose (Fixture    *fixture,
        const char *id)
{
  gw_new_study_choose (fixture->page, gw_template_find (id));
}

static void
test_shapes (Fixture      *fixture,
             gconstpointer data)
{
  GtkFlowBox *shapes = GTK_FLOW_BOX (get (fixture, "shapes"));

  for (guint i = 0; i < gw_templates ()->len; i++)
    {
      const GwTemplate *shape = g_ptr_array_index (gw_templates (), i);
      GtkFlowBoxChild  *child = gtk_flow_box_get_child_at_index (shapes, (int) i);
      GwStudy          *study;

      g_assert_nonnull (child);
      gtk_test_accessible_assert_property (child, GTK_ACCESSIBLE_PROPERTY_LABEL, shape->name);
      gtk_flow_box_select_child (shapes, child);
      study = gw_new_study_get_study (fixture->page);
      g_assert_nonnull (study);
      g_assert_cmpstr (study->name, ==, shape->name);
      g_assert_cmpstr (said (fixture, "about"), ==, shape->about);
      g_assert_cmpstr (said (fixture, "message"), ==, "");
    }
  g_assert_null (gtk_flow_box_get_child_at_index (shapes, (int) gw_templates ()->len));
}

/* The table shows what an evaluation of the study that would begin comes to. */
static void
test_outcomes (Fixture      *fixture,
               gconstpointer data)
{
  g_autoptr (GwEvaluation) evaluation = NULL;

  choose (fixture, "twin");
  type (fixture, "span", "1.8 m");
  type (fixture, "mass", "2,6 kg");
  wait_until (gw_new_study_get_study (fixture->page) != NULL &&
              gw_new_study_get_study (fixture->page)->targets->mass_g.value == 2600.0);

  evaluation = gw_evaluation_quick (gw_new_study_get_study (fixture->page), NULL, NULL);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);
      const double     mass = 1000.0 * outcome->results.value[GW_RESULT_MASS];
      g_autofree char *mass_text = g_strdup_printf ("%.0f g", mass);
      g_autofree char *stall_text =
        g_strdup_printf ("%.2f m/s", outcome->results.value[GW_RESULT_STALL_SPEED]);
      g_autofree char *goal_text =
        g_strdup_printf ("%.0f g %s", fabs (mass - 2600.0), mass > 2600.0 ? "over" : "under");

      g_assert_cmpstr (cell (fixture, 0, (int) i + 1), ==, outcome->name);
      g_assert_true (widgets_reads (cell (fixture, 1, (int) i + 1), mass_text));
      g_assert_cmpstr (cell (fixture, 2, (int) i + 1), ==, goal_text);
      g_assert_true (widgets_reads (cell (fixture, 4, (int) i + 1), stall_text));
      g_assert_cmpfloat_with_epsilon (outcome->results.value[GW_RESULT_SPAN], 1.8, 2e-4);
    }
}

/* What nobody has typed follows; what is typed stays. */
static void
test_follow (Fixture      *fixture,
             gconstpointer data)
{
  g_autofree char *chord = g_strdup (typed (fixture, "chord"));
  g_autofree char *mass = g_strdup (typed (fixture, "mass"));

  type (fixture, "span", "1700");
  wait_until (!g_str_equal (typed (fixture, "chord"), chord));
  g_assert_cmpstr (typed (fixture, "chord"), ==, "267"); /* 1700 * 220 / 1400 */
  g_assert_cmpfloat (g_ascii_strtod (typed (fixture, "mass"), NULL), >,
                     g_ascii_strtod (mass, NULL));

  type (fixture, "chord", "250");
  type (fixture, "span", "1600");
  wait_until (gw_new_study_get_study (fixture->page) != NULL &&
              strstr (said (fixture, "chord_hint"), "200 to 320") != NULL);
  g_assert_cmpstr (typed (fixture, "chord"), ==, "250");

  /* Another shape begins at its own size. */
  choose (fixture, "glider");
  g_assert_cmpstr (typed (fixture, "span"), ==, "2000");
}

static void
test_refused (Fixture      *fixture,
              gconstpointer data)
{
  static const struct
  {
    const char *id, *text, *says;
  } bad[] = {
    { "span", "12000", "Span" },
    { "span", "wide", "Span" },
    { "span", "", "Span" },
    { "chord", "20", "chord" },
    { "chord", "2 g", "chord" },
    { "mass", "40 g", "Mass goal" },
    { "mass", "1/0", "Mass goal" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      choose (fixture, "trainer");
      g_assert_false (is_amiss (fixture, bad[i].id));
      type (fixture, bad[i].id, bad[i].text);
      wait_until (is_amiss (fixture, bad[i].id));
      gtk_test_accessible_assert_state (get (fixture, bad[i].id), GTK_ACCESSIBLE_STATE_INVALID,
                                        GTK_ACCESSIBLE_INVALID_TRUE);
      g_assert_nonnull (strstr (said (fixture, "message"), bad[i].says));
      g_assert_null (gw_new_study_get_study (fixture->page));
      g_assert_false (gtk_widget_is_sensitive (get (fixture, "begin")));
      /* Enter in a field begins nothing. */
      g_signal_emit_by_name (get (fixture, bad[i].id), "activate");
      g_assert_cmpuint (fixture->n_begun, ==, 0);
    }

  /* And when it is put right it goes on. */
  choose (fixture, "trainer");
  g_assert_cmpstr (said (fixture, "message"), ==, "");
  g_assert_true (gtk_widget_is_sensitive (get (fixture, "begin")));
}

/* What was typed the moment before counts. */
static void
test_begin (Fixture      *fixture,
            gconstpointer data)
{
  type (fixture, "span", "1500");
  g_signal_emit_by_name (get (fixture, "span"), "activate");
  g_assert_cmpuint (fixture->n_begun, ==, 1);
  g_assert_cmpfloat (
    ((GwStudyStation *) g_ptr_array_index (
       ((GwStudySurface *) g_ptr_array_index (fixture->begun->surfaces, 0))->stations, 1))
      ->y_mm.value,
    ==, 750.0);

  g_signal_emit_by_name (get (fixture, "begin"), "clicked");
  g_assert_cmpuint (fixture->n_begun, ==, 2);
  g_signal_emit_by_name (get (fixture, "cancel"), "clicked");
  g_signal_emit_by_name (fixture->page, "cancel");
  g_assert_cmpuint (fixture->n_cancelled, ==, 2);
}

/* The same aeroplane, told in other units. */
static void
test_units (Fixture      *fixture,
            gconstpointer data)
{
  GwUnits  units = *gw_units_standard ();
  GwStudy *study;

  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  g_assert_true (gw_units_set (&units, GW_G, "oz"));
  gw_new_study_set_units (fixture->page, &units);
  g_assert_cmpstr (typed (fixture, "span"), ==, "55.12");
  g_assert_nonnull (strstr (said (fixture, "span_hint"), "in, 43.31 to 74.80"));
  g_assert_nonnull (strstr (cell (fixture, 1, 1), " oz"));

  type (fixture, "span", "60");
  wait_until (strstr (said (fixture, "chord_hint"), "in, 7.5") != NULL);
  study = gw_new_study_get_study (fixture->page);
  g_assert_nonnull (study);
  g_assert_cmpfloat_with_epsilon (
    ((GwStudyStation *) g_ptr_array_index (
       ((GwStudySurface *) g_ptr_array_index (study->surfaces, 0))->stations, 1))
      ->y_mm.value,
    762.0, 0.1);
}

/* What was typed with a unit or a sum is shown as it was understood once the field is left. */
static void
test_understood (Fixture      *fixture,
                 gconstpointer data)
{
  GwUnits units = *gw_units_standard ();

  choose (fixture, "trainer");
  gtk_widget_grab_focus (get (fixture, "chord"));
  type (fixture, "chord", "9 in");
  g_assert_cmpstr (typed (fixture, "chord"), ==, "9 in");
  gtk_widget_grab_focus (get (fixture, "mass"));
  g_assert_cmpstr (typed (fixture, "chord"), ==, "228.6"); /* mm, exactly */
  type (fixture, "mass", "heavy");
  gtk_widget_grab_focus (get (fixture, "span"));
  g_assert_cmpstr (typed (fixture, "mass"), ==, "heavy"); /* to be mended */
  wait_until (is_amiss (fixture, "mass"));
  gtk_widget_grab_focus (get (fixture, "mass"));
  type (fixture, "mass", "1,4 kg");
  gtk_widget_grab_focus (get (fixture, "chord"));
  g_assert_cmpstr (typed (fixture, "mass"), ==, "1400");

  g_assert_true (gw_units_choose (&units, "in"));
  gw_new_study_set_units (fixture->page, &units);
  g_assert_cmpstr (typed (fixture, "chord"), ==, "9");
  gtk_widget_grab_focus (get (fixture, "chord"));
  type (fixture, "chord", "240 mm");
  gtk_widget_grab_focus (get (fixture, "mass"));
  g_assert_cmpstr (typed (fixture, "chord"), ==, "9.449"); /* 240 / 25.4 */
}

/* On the cards. GTK cannot send itself events. */
static void
press_tab (Fixture *fixture)
{
  g_autoptr (GListModel) controllers =
    gtk_widget_observe_controllers (get (fixture, "shapes"));

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      gboolean is_done = FALSE;

      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", GDK_KEY_Tab, 0, 0, &is_done);
      if (is_done)
        return;
    }
  g_assert_not_reached ();
}

/* Keyboard alone: the focus begins at the shapes, comes to every control and to the end. */
static void
test_focus (Fixture      *fixture,
            gconstpointer data)
{
  static const char *const order[] = { "span", "chord", "mass", "begin", "cancel" };
  GtkWidget               *focus;

  g_assert_true (gtk_widget_grab_focus (GTK_WIDGET (fixture->page)));
  focus = gtk_root_get_focus (GTK_ROOT (fixture->window));
  g_assert_true (GTK_IS_FLOW_BOX_CHILD (focus));
  g_assert_true (gtk_flow_box_child_is_selected (GTK_FLOW_BOX_CHILD (focus)));

  press_tab (fixture);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    {
      if (i > 0)
        g_assert_true (gtk_widget_child_focus (fixture->window, GTK_DIR_TAB_FORWARD));
      focus = gtk_root_get_focus (GTK_ROOT (fixture->window));
      g_assert_true (gtk_widget_is_ancestor (focus, get (fixture, order[i])) ||
                     focus == get (fixture, order[i]));
    }
}

/* Along the cards with the arrows, each is chosen as it is reached. */
static void
test_arrows (Fixture      *fixture,
             gconstpointer data)
{
  GtkFlowBox *shapes = GTK_FLOW_BOX (get (fixture, "shapes"));
  gboolean    is_done = FALSE;

  g_assert_true (gtk_widget_grab_focus (GTK_WIDGET (fixture->page)));
  g_signal_emit_by_name (shapes, "move-cursor", GTK_MOVEMENT_VISUAL_POSITIONS, 1, FALSE, FALSE,
                         &is_done);
  g_assert_true (is_done);
  g_assert_cmpstr (said (fixture, "about"), ==, gw_template_find ("sport")->about);
  g_signal_emit_by_name (shapes, "move-cursor", GTK_MOVEMENT_DISPLAY_LINES, 1, FALSE, FALSE,
                         &is_done);
  g_assert_cmpstr (said (fixture, "about"), ==, gw_template_find ("flying-wing")->about);
}

/* It asks for no more room than the smallest window it is meant for leaves it. */
static void
test_room (Fixture      *fixture,
           gconstpointer data)
{
  GtkRequisition least;

  for (guint i = 0; i < gw_templates ()->len; i++)
    {
      gw_new_study_choose (fixture->page, g_ptr_array_index (gw_templates (), i));
      gtk_widget_get_preferred_size (GTK_WIDGET (fixture->page), &least, NULL);
      g_assert_cmpint (least.width, <=, 1000);
      g_assert_cmpint (least.height, <=, 600);
    }
}

/* In the main window: asked for, left, asked for again, begun; the sheet follows. */
static void
test_window (void)
{
  GwWindow   *window = gw_window_new (application);
  GtkStack   *pages = GTK_STACK (find (GTK_WIDGET (window), "pages"));
  GtkWidget  *page;
  GwDocument *document;

  gtk_window_present (GTK_WINDOW (window));
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (window)));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.new", NULL);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (pages), ==, "new");
  page = gtk_stack_get_visible_child (pages);
  g_signal_emit_by_name (page, "cancel");
  g_assert_cmpstr (gtk_stack_get_visible_child_name (pages), ==, "empty");

  gtk_widget_activate_action (GTK_WIDGET (window), "win.new", NULL);
  wait_for_ms (100);
  g_assert_true (GTK_IS_FLOW_BOX_CHILD (gtk_root_get_focus (GTK_ROOT (window))));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.new", NULL);
  g_signal_emit_by_name (find (page, "begin"), "clicked");
  wait_until (gw_window_get_document (window) != NULL);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (pages), ==, "sheet");
  document = gw_window_get_document (window);
  g_assert_null (gw_document_get_file (document));
  g_assert_cmpstr (gw_document_get_study (document)->name, ==, "High-wing trainer");
  wait_until (!gw_document_is_busy (document));

  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  gtk_window_destroy (GTK_WINDOW (window));
  wait_until (window == NULL);
}

int
main (int   argc,
      char *argv[])
{
  static const struct
  {
    const char *name;
    void (*test) (Fixture      *fixture,
                  gconstpointer data);
  } tests[] = {
    { "shapes", test_shapes },
    { "outcomes", test_outcomes },
    { "follow", test_follow },
    { "refused", test_refused },
    { "begin", test_begin },
    { "units", test_units },
    { "understood", test_understood },
    { "focus", test_focus },
    { "arrows", test_arrows },
    { "room", test_room },
  };
  g_autoptr (GError) error = NULL;
  int status;

  gtk_test_init (&argc, &argv, NULL);
  application = gw_application_new (G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (application), NULL, &error);
  g_assert_no_error (error);

  for (guint i = 0; i < G_N_ELEMENTS (tests); i++)
    {
      g_autofree char *path = g_strconcat ("/desk/new-study/", tests[i].name, NULL);

      g_test_add (path, Fixture, NULL, set_up, tests[i].test, tear_down);
    }
  g_test_add_func ("/desk/new-study/window", test_window);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
