/* test-desk-drawer.c - the outline shows all of a study, and every list can be worked on there
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "demos.h"
#include "desk-find.h"
#include "desk-wait.h"
#include "desk/gw-drawer.h"
#include "desk/gw-outline-heading.h"
#include "desk/gw-outline-row.h"
#include "study/gw-edit.h"
#include "study/gw-fresh.h"

static const char *const lists[] = { "options", "airframe", "equipment", "study", "own" };

/* A drawer in a window, on a demo. */
typedef struct
{
  GtkWidget  *window;
  GwDrawer   *drawer;
  GwDocument *document;
  char       *start;   /* text of the study */
  char       *message; /* the last one */
  guint       n_renames;
} Desk;

static void
message_cb (Desk       *desk,
            const char *text)
{
  g_free (desk->message);
  desk->message = g_strdup (text);
}

static void
rename_cb (Desk *desk)
{
  desk->n_renames++;
}

static void
desk_init (Desk       *desk,
           const char *demo)
{
  g_autoptr (GwStudy) study = demo_load (demo);

  *desk = (Desk){ .window = gtk_window_new (), .start = gw_study_text (study) };
  desk->document = gw_document_new_study (study);
  desk->drawer = g_object_new (GW_TYPE_DRAWER, NULL);
  g_signal_connect_swapped (desk->drawer, "message", G_CALLBACK (message_cb), desk);
  g_signal_connect_swapped (desk->drawer, "rename", G_CALLBACK (rename_cb), desk);
  gtk_window_set_child (GTK_WINDOW (desk->window), GTK_WIDGET (desk->drawer));
  gtk_window_set_default_size (GTK_WINDOW (desk->window), 260, 500);
  gw_drawer_set_document (desk->drawer, desk->document);
  gtk_window_present (GTK_WINDOW (desk->window));
  wait_until (gtk_widget_get_mapped (desk->window) && !gw_document_is_busy (desk->document));
  gtk_test_widget_wait_for_draw (desk->window);
}

/* Undone to the start the study is what it was; the drawer goes and keeps nothing. */
static void
desk_clear (Desk *desk)
{
  GwHistory       *history = gw_document_get_history (desk->document);
  g_autofree char *text = NULL;
  GwDrawer        *drawer = desk->drawer;

  while (gw_history_undo_name (history) != NULL)
    gw_document_undo (desk->document);
  text = gw_study_text (gw_document_get_study (desk->document));
  g_assert_cmpstr (text, ==, desk->start);

  g_object_add_weak_pointer (G_OBJECT (drawer), (gpointer *) &drawer);
  gtk_window_destroy (GTK_WINDOW (desk->window));
  wait_until (drawer == NULL);
  g_assert_finalize_object (desk->document);
  g_free (desk->start);
  g_free (desk->message);
}

static GtkListBox *
list_of (Desk       *desk,
         const char *id)
{
  GtkWidget *list = find (GTK_WIDGET (desk->drawer), id);

  g_assert_nonnull (list);
  return GTK_LIST_BOX (list);
}

static GwOutlineRow *
row_of (Desk       *desk,
        const char *path)
{
  for (guint k = 0; k < G_N_ELEMENTS (lists); k++)
    {
      GtkListBoxRow *row;

      for (int i = 0;
           (row = gtk_list_box_get_row_at_index (list_of (desk, lists[k]), i)) != NULL; i++)
        if (g_str_equal (gw_outline_row_get_path (GW_OUTLINE_ROW (row)), path))
          return GW_OUTLINE_ROW (row);
    }

  return NULL;
}

static const char *
label_of (GwOutlineRow *row,
          const char   *id)
{
  return text_on (find (GTK_WIDGET (row), id));
}

/* "Wing|Tailplane|Fin" */
static char *
names_in (Desk       *desk,
          const char *list)
{
  GString       *names = g_string_new (NULL);
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (list_of (desk, list), i)) != NULL; i++)
    g_string_append_printf (names, "%s%s", i > 0 ? "|" : "",
                            gw_outline_row_get_name (GW_OUTLINE_ROW (row)));
  return g_string_free (names, FALSE);
}

static void
expect_names (Desk       *desk,
              const char *list,
              const char *names)
{
  g_autofree char *found = names_in (desk, list);

  g_assert_cmpstr (found, ==, names);
}

static void
expect_row (Desk       *desk,
            const char *path,
            const char *name,
            const char *detail)
{
  GwOutlineRow *row = row_of (desk, path);

  g_assert_nonnull (row);
  g_assert_cmpstr (label_of (row, "name"), ==, name);
  g_assert_cmpstr (label_of (row, "detail"), ==, detail);
}

/* The rows that are marked and selected; the option on the sheet is selected besides. */
static void
expect_here (Desk       *desk,
             const char *path)
{
  guint n = 0;

  for (guint k = 0; k < G_N_ELEMENTS (lists); k++)
    {
      GtkListBox    *list = list_of (desk, lists[k]);
      GtkListBoxRow *row;

      for (int i = 0; (row = gtk_list_box_get_row_at_index (list, i)) != NULL; i++)
        {
          const char    *here = gw_outline_row_get_path (GW_OUTLINE_ROW (row));
          const gboolean is_here = path != NULL && g_str_equal (here, path);
          const gboolean is_shown =
            k == 0 && i == (int) gw_document_get_shown (desk->document);

          g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (row), "here") == is_here);
          g_assert_true (gtk_list_box_row_is_selected (row) == (k == 0 ? is_shown : is_here));
          n += is_here;
        }
    }
  g_assert_cmpuint (n, ==, path != NULL);
}

/* Whether it did anything: one that is not possible does nothing and says nothing. */
static gboolean
act (Desk       *desk,
     const char *action)
{
  GwStudy         *study = gw_document_get_study (desk->document);
  g_autofree char *message = g_strdup (desk->message);

  gtk_widget_activate_action (GTK_WIDGET (desk->drawer), action, NULL);
  return gw_document_get_study (desk->document) != study ||
         g_strcmp0 (desk->message, message) != 0;
}

static void
add (Desk       *desk,
     const char *what)
{
  g_assert_true (
    gtk_widget_activate_action (GTK_WIDGET (desk->drawer), "outline.add", "s", what));
}

static void
look_at (Desk       *desk,
         const char *path)
{
  gw_document_set_selection (desk->document, path);
}

static const char *
looked_at (Desk *desk)
{
  return gw_document_get_selection (desk->document);
}

static const char *
last_edit (Desk *desk)
{
  return gw_history_undo_name (gw_document_get_history (desk->document));
}

static const char *
shown_id (Desk *desk)
{
  return ((GwStudyOption *) g_ptr_array_index (gw_document_get_study (desk->document)->options,
                                               gw_document_get_shown (desk->document)))
    ->id;
}

static void
test_rows (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  expect_names (&desk, "options",
                "Folded foam board (baseline)|Hot-wired core, glass skin|"
                "Printed foaming plastic|Printed solid plastic");
  expect_names (&desk, "airframe",
                "Wing|Tailplane|Fin|Pod|Tail boom|Main wheel|Tail wheel|Motor|Spar in Tailplane|"
                "Spar in Fin|Build of Tailplane|Build of Fin");
  expect_names (&desk, "study", "Day and field|What is wanted|The study");
  expect_names (&desk, "own", "Foam board at hand, 5 mm");
  /* Of the option that is shown: its battery stands elsewhere than the airframe's. */
  expect_row (&desk, "equipment/battery", "Battery, 3 cells, 2200 mAh", "178 g, 155 mm aft");
  expect_row (&desk, "equipment/servo-flap", "Flap servo", "two of 10.4 g, 368 mm aft");
  expect_row (&desk, "bodies/boom", "Tail boom", "38 g");
  /* A leg and a wheel, both twice: 2 (19.5 + 13.2) g. */
  expect_row (&desk, "legs/main", "Main wheel", "65 g");
  expect_row (&desk, "powers/motor", "Motor", "165 g");
  /* Trapezia: 2 (0.5 x 0.245 + 0.4 x 0.23) m². */
  expect_row (&desk, "surfaces/wing", "Wing", "1800 mm, 0.429 m²");
  expect_row (&desk, "spars/tail-strip", "Spar in Tailplane", "strip, 0.8 mm");
  expect_row (&desk, "builds/2", "Build of Fin", "hot-wired core");
  expect_row (&desk, "day", "Day and field", "31 °C, at 120 m");
  expect_row (&desk, "targets", "What is wanted", "1500 g, stall at 7 m/s");
  expect_here (&desk, "");
  gw_document_set_shown (desk.document, 3);
  expect_row (&desk, "equipment/battery", "Battery, 3 cells, 2200 mAh", "178 g, 110 mm aft");
  desk_clear (&desk);
}

static void
test_demo (gconstpointer name)
{
  Desk  desk;
  guint n = 0;

  desk_init (&desk, name);
  for (guint k = 0; k < G_N_ELEMENTS (lists); k++)
    for (int i = 0; gtk_list_box_get_row_at_index (list_of (&desk, lists[k]), i) != NULL; i++)
      n++;
  for (guint i = 0; i < gw_study_root_type ()->n_fields; i++)
    if (gw_study_root_type ()->fields[i].kind == GW_FIELD_LIST)
      n -= (*(GPtrArray **) gw_record_at (&gw_document_get_study (desk.document)->record,
                                          &gw_study_root_type ()->fields[i]))
             ->len;
  g_assert_cmpuint (n, ==, 3); /* day, limits and the study itself */
  desk_clear (&desk);
}

/* Every kind is added, selected and seen. */
static void
test_add (void)
{
  Desk               desk;
  const GwFreshKind *kind;

  desk_init (&desk, "small");
  for (guint i = 0; (kind = gw_fresh_kind (i)) != NULL; i++)
    {
      add (&desk, kind->what);
      g_assert_cmpstr (last_edit (&desk), ==, kind->edit);
      g_assert_true (g_str_has_prefix (looked_at (&desk), kind->list));
      g_assert_nonnull (row_of (&desk, looked_at (&desk)));
      expect_here (&desk, looked_at (&desk));
    }
  g_assert_null (desk.message);
  expect_names (&desk, "own", "Own material|Own section");
  desk_clear (&desk);
}

static void
test_add_option (void)
{
  Desk desk;

  desk_init (&desk, "small");
  gw_document_set_shown (desk.document, 1);
  add (&desk, "option");
  expect_names (&desk, "options",
                "Folded thin sheet (baseline)|Core under packing tape|"
                "Core under packing tape, copy");
  g_assert_cmpstr (looked_at (&desk), ==, "options/core-2");
  g_assert_cmpstr (shown_id (&desk), ==, "core-2");
  desk_clear (&desk);
}

static void
test_duplicate (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  look_at (&desk, "equipment/camera");
  g_assert_true (act (&desk, "outline.duplicate"));
  g_assert_cmpstr (looked_at (&desk), ==, "equipment/camera-2");
  g_assert_cmpstr (last_edit (&desk), ==, "Duplicate Camera with its mount");
  expect_row (&desk, "equipment/camera-2", "Camera with its mount, copy", "96 g, 345 mm aft");

  /* A wing is built in every option: so is its copy. */
  look_at (&desk, "surfaces/wing");
  g_assert_true (act (&desk, "outline.duplicate"));
  expect_here (&desk, "surfaces/wing-2");
  g_assert_null (desk.message);
  desk_clear (&desk);
}

static void
test_move (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  look_at (&desk, "bodies/boom");
  g_assert_true (act (&desk, "outline.up"));
  g_assert_cmpstr (last_edit (&desk), ==, "Move Tail boom up");
  g_assert_cmpstr (looked_at (&desk), ==, "bodies/boom");
  g_assert_false (act (&desk, "outline.up")); /* the first of its list, not of the outline */
  g_assert_true (act (&desk, "outline.down"));
  g_assert_false (act (&desk, "outline.down"));
  expect_names (&desk, "airframe",
                "Wing|Tailplane|Fin|Pod|Tail boom|Main wheel|Tail wheel|Motor|Spar in Tailplane|"
                "Spar in Fin|Build of Tailplane|Build of Fin");

  /* Builds are counted: the path changes, the record does not. */
  look_at (&desk, "builds/2");
  g_assert_true (act (&desk, "outline.up"));
  g_assert_cmpstr (looked_at (&desk), ==, "builds/1");
  expect_row (&desk, "builds/1", "Build of Fin", "hot-wired core");
  desk_clear (&desk);
}

/* The option on the sheet stays there, wherever it comes to stand. */
static void
test_move_option (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  look_at (&desk, "options/solid");
  g_assert_true (act (&desk, "outline.up"));
  g_assert_cmpstr (shown_id (&desk), ==, "solid"); /* what is worked on is shown */
  g_assert_true (act (&desk, "outline.up"));
  g_assert_true (act (&desk, "outline.up"));
  g_assert_cmpstr (shown_id (&desk), ==, "solid");
  g_assert_cmpuint (gw_document_get_shown (desk.document), ==, 0);
  g_assert_false (act (&desk, "outline.up"));
  desk_clear (&desk);
}

static void
test_remove (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  look_at (&desk, "equipment/camera");
  g_assert_true (act (&desk, "outline.remove"));
  g_assert_cmpstr (last_edit (&desk), ==, "Remove Camera with its mount");
  g_assert_null (row_of (&desk, "equipment/camera"));
  expect_here (&desk, "equipment/receiver");

  /* The last gives way to the one before it. */
  look_at (&desk, "equipment/deck");
  g_assert_true (act (&desk, "outline.remove"));
  expect_here (&desk, "equipment/saddle");

  /* A surface goes with its build and its spar. */
  look_at (&desk, "surfaces/fin");
  g_assert_true (act (&desk, "outline.remove"));
  expect_names (&desk, "airframe",
                "Wing|Tailplane|Pod|Tail boom|Main wheel|Tail wheel|Motor|Spar in Tailplane|"
                "Build of Tailplane");
  expect_here (&desk, "bodies/pod");
  g_assert_null (desk.message);
  desk_clear (&desk);
}

static void
test_remove_option (void)
{
  Desk desk;

  desk_init (&desk, "small");
  gw_document_set_shown (desk.document, 1);
  look_at (&desk, "options/core");
  g_assert_true (act (&desk, "outline.remove"));
  expect_here (&desk, "options/sheet");
  g_assert_cmpuint (gw_document_get_shown (desk.document), ==, 0);
  g_assert_false (act (&desk, "outline.remove")); /* the last one */
  g_assert_null (desk.message);
  desk_clear (&desk);
}

static void
test_refused (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  look_at (&desk, "equipment/battery");
  act (&desk, "outline.remove");
  g_assert_nonnull (desk.message);
  g_assert_true (g_str_has_prefix (desk.message, "Remove Battery, 3 cells, 2200 mAh: not done. "));
  g_assert_nonnull (strstr (desk.message, "movable"));
  expect_here (&desk, "equipment/battery");

  look_at (&desk, "options/folded");
  act (&desk, "outline.remove");
  g_assert_nonnull (strstr (desk.message, "baseline"));
  look_at (&desk, "surfaces/wing");
  act (&desk, "outline.remove");
  g_assert_nonnull (strstr (desk.message, "surfaces"));
  look_at (&desk, "materials/board-at-hand");
  act (&desk, "outline.remove");
  g_assert_nonnull (strstr (desk.message, "options/folded/builds/1/folded_sheet/material"));
  g_assert_null (last_edit (&desk));
  desk_clear (&desk);
}

static void
test_baseline (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  look_at (&desk, "options/folded");
  g_assert_false (act (&desk, "outline.baseline"));
  look_at (&desk, "equipment/camera");
  g_assert_false (act (&desk, "outline.baseline"));
  look_at (&desk, "options/core");
  g_assert_true (act (&desk, "outline.baseline"));
  g_assert_cmpstr (last_edit (&desk), ==, "Make Hot-wired core, glass skin the baseline");
  g_assert_false (act (&desk, "outline.baseline"));
  expect_names (&desk, "options",
                "Folded foam board|Hot-wired core, glass skin (baseline)|"
                "Printed foaming plastic|Printed solid plastic");

  /* Now the other one can go. */
  look_at (&desk, "options/folded");
  g_assert_true (act (&desk, "outline.remove"));
  expect_here (&desk, "options/core");
  g_assert_null (desk.message);
  desk_clear (&desk);
}

static void
test_not_a_record (void)
{
  static const char *const paths[] = { "", "day", "targets", "nothing" };
  static const char *const actions[] = { "outline.duplicate", "outline.remove", "outline.up",
                                         "outline.down", "outline.baseline" };
  Desk                     desk;

  desk_init (&desk, "small");
  for (guint i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      look_at (&desk, paths[i]);
      for (guint k = 0; k < G_N_ELEMENTS (actions); k++)
        g_assert_false (act (&desk, actions[k]));
    }
  gw_drawer_set_document (desk.drawer, NULL);
  for (guint k = 0; k < G_N_ELEMENTS (actions); k++)
    g_assert_false (act (&desk, actions[k]));
  gtk_widget_activate_action (GTK_WIDGET (desk.drawer), "outline.add", "s", "equipment");
  g_assert_null (last_edit (&desk));
  for (guint k = 0; k < G_N_ELEMENTS (lists); k++)
    expect_names (&desk, lists[k], "");
  desk_clear (&desk);
}

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

/* While something is dragged the rows stay what they are and follow. */
static void
test_drag (void)
{
  Desk             desk;
  GwOutlineRow    *battery, *option;
  g_autofree char *mass = NULL;

  desk_init (&desk, "reed-bed");
  battery = row_of (&desk, "equipment/battery");
  option = row_of (&desk, "options/folded");
  mass = g_strdup (label_of (option, "detail"));
  gtk_widget_grab_focus (GTK_WIDGET (battery));
  for (int x = 100; x < 200; x += 10)
    {
      g_autoptr (JsonNode) value = json_node_init_int (json_node_alloc (), x);
      g_autoptr (GwStudy) study =
        gw_edit_set (gw_document_get_study (desk.document), 0, FALSE, "equipment/battery/x_mm",
                     value, NULL);
      g_autofree char *detail = g_strdup_printf ("178 g, %d mm aft", x);

      g_assert_true (gw_document_try (desk.document, study, NULL));
      g_assert_true (row_of (&desk, "equipment/battery") == battery);
      g_assert_cmpstr (label_of (battery, "detail"), ==, detail);
      g_assert_true (gtk_widget_has_focus (GTK_WIDGET (battery)));
    }
  gw_document_leave (desk.document);
  g_assert_cmpstr (label_of (battery, "detail"), ==, "178 g, 155 mm aft");
  g_assert_cmpstr (label_of (option, "detail"), ==, mass);
  desk_clear (&desk);
}

static void
test_units (void)
{
  Desk             desk;
  GwUnits          units = *gw_units_standard ();
  const GwResults *results;
  g_autofree char *expected = NULL;

  desk_init (&desk, "reed-bed");
  g_assert_true (gw_units_set (&units, GW_G, "oz"));
  g_assert_true (gw_units_set (&units, GW_MM, "in"));
  g_assert_true (gw_units_set (&units, GW_M_S, "km/h"));
  gw_drawer_set_units (desk.drawer, &units);
  results = &gw_evaluation_outcome (gw_document_get_evaluation (desk.document), 0)->results;
  expected = g_strdup_printf ("%.1f oz, stalls at %.1f km/h",
                              results->value[GW_RESULT_MASS] / 0.028349523125,
                              results->value[GW_RESULT_STALL_SPEED] * 3.6);
  expect_row (&desk, "options/folded", "Folded foam board (baseline)", expected);
  /* 178 / 28.3495 and 155 / 25.4; 1500 / 28.3495 and 7 x 3.6. */
  expect_row (&desk, "equipment/battery", "Battery, 3 cells, 2200 mAh", "6.28 oz, 6.1 in aft");
  expect_row (&desk, "targets", "What is wanted", "52.9 oz, stall at 25 km/h");
  desk_clear (&desk);
}

/* What would fire on a key in that row, as GTK cannot press one in the process. */
static gboolean
press (GtkWidget  *widget,
       const char *key)
{
  g_autoptr (GtkShortcutTrigger) wanted = gtk_shortcut_trigger_parse_string (key);
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      for (guint j = 0; GTK_IS_SHORTCUT_CONTROLLER (controller) &&
                        j < g_list_model_get_n_items (G_LIST_MODEL (controller));
           j++)
        {
          g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (G_LIST_MODEL (controller), j);

          if (gtk_shortcut_trigger_equal (gtk_shortcut_get_trigger (shortcut), wanted))
            return gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, widget,
                                                 gtk_shortcut_get_arguments (shortcut));
        }
    }

  g_error ("no shortcut for %s", key);
}

static gboolean
press_in (Desk       *desk,
          const char *path,
          const char *key)
{
  GtkWidget *row = GTK_WIDGET (row_of (desk, path));

  gtk_widget_grab_focus (row);
  return press (row, key);
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
  g_assert_true (press (find (GTK_WIDGET (desk.drawer), "airframe_heading"), "Down"));
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
  g_assert_false (
    gtk_widget_get_visible (gw_outline_row_get_button (row_of (&desk, "day"))));
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
  g_assert_cmpuint (assert_named (GTK_WIDGET (desk.drawer)), >, 70);
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
  GtkWidget *row, *heading;

  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  desk_init (&desk, "small");
  row = GTK_WIDGET (row_of (&desk, "surfaces/wing"));
  heading = find (GTK_WIDGET (desk.drawer), "equipment_heading");
  g_assert_cmpfloat (start_of (&desk, gw_outline_row_get_button (GW_OUTLINE_ROW (row))), <,
                     start_of (&desk, find (row, "name")));
  g_assert_cmpfloat (start_of (&desk, find (heading, "add")), <,
                     start_of (&desk, find (heading, "caption")));
  desk_clear (&desk);
  gtk_widget_set_default_direction (GTK_TEXT_DIR_LTR);
}

/* The same drawer shows one document after another and lets go of the first. */
static void
test_other_document (void)
{
  Desk desk;
  g_autoptr (GwStudy) study = demo_load ("tailless");
  GwDocument *other = gw_document_new_study (study);

  desk_init (&desk, "reed-bed");
  wait_until (!gw_document_is_busy (other));
  gw_drawer_set_document (desk.drawer, other);
  expect_names (&desk, "options", "Tough bead foam, light film (baseline)|Printed foaming plastic");
  look_at (&desk, "equipment/camera");
  expect_names (&desk, "airframe", "Wing|Tip fin|Pod|Pusher motor|Build of Tip fin");
  gw_drawer_set_document (desk.drawer, desk.document);
  g_assert_finalize_object (other);
  expect_here (&desk, "equipment/camera");
  desk_clear (&desk);
}

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/desk/drawer/rows", test_rows);
  demo_add_tests ("/desk/drawer", "complete", test_demo);
  g_test_add_func ("/desk/drawer/add", test_add);
  g_test_add_func ("/desk/drawer/add/option", test_add_option);
  g_test_add_func ("/desk/drawer/duplicate", test_duplicate);
  g_test_add_func ("/desk/drawer/move", test_move);
  g_test_add_func ("/desk/drawer/move/option", test_move_option);
  g_test_add_func ("/desk/drawer/remove", test_remove);
  g_test_add_func ("/desk/drawer/remove/option", test_remove_option);
  g_test_add_func ("/desk/drawer/refused", test_refused);
  g_test_add_func ("/desk/drawer/baseline", test_baseline);
  g_test_add_func ("/desk/drawer/not-a-record", test_not_a_record);
  g_test_add_func ("/desk/drawer/selection", test_selection);
  g_test_add_func ("/desk/drawer/in-view", test_in_view);
  g_test_add_func ("/desk/drawer/fold", test_fold);
  g_test_add_func ("/desk/drawer/drag", test_drag);
  g_test_add_func ("/desk/drawer/units", test_units);
  g_test_add_func ("/desk/drawer/keys", test_keys);
  g_test_add_func ("/desk/drawer/ways", test_ways);
  g_test_add_func ("/desk/drawer/menu", test_menu);
  g_test_add_func ("/desk/drawer/accessible", test_accessible);
  g_test_add_func ("/desk/drawer/right-to-left", test_right_to_left);
  g_test_add_func ("/desk/drawer/other-document", test_other_document);
  return g_test_run ();
}
