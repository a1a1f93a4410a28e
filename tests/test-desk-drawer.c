/* test-desk-drawer.c - the outline shows all of a study, and every list can be worked on there
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "desk-drawer.h"
#include "study/gw-edit-option.h"
#include "study/gw-edit.h"
#include "study/gw-fresh.h"

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

static gboolean
is_whole (Desk       *desk,
          const char *path)
{
  GtkWidget      *scroller = find (GTK_WIDGET (desk->drawer), "scroller");
  graphene_rect_t bounds;

  return gtk_widget_compute_bounds (GTK_WIDGET (row_of (desk, path)), scroller, &bounds) &&
         bounds.size.height > 10.0f && bounds.origin.y >= 0.0f &&
         bounds.origin.y + bounds.size.height <= (float) gtk_widget_get_height (scroller);
}

/* Every kind is added, selected and seen as a whole, and its name asked for. */
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
      wait_until (is_whole (&desk, looked_at (&desk)));
      g_assert_cmpuint (desk.n_renames, ==, i + 1);
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

/* Meant for one option, a list becomes its own: the outline has it as the option has it, says so,
 * and what is done to it after that is done there. */
static void
test_only_here (void)
{
  Desk     desk;
  GwStudy *study;
  guint    n;

  desk_init (&desk, "reed-bed");
  n = gw_document_get_study (desk.document)->equipment->len;
  gw_document_set_only_here (desk.document, TRUE);
  look_at (&desk, "equipment/camera");
  g_assert_true (act (&desk, "outline.remove"));
  study = gw_document_get_study (desk.document);
  g_assert_cmpuint (study->equipment->len, ==, n);
  g_assert_nonnull (gw_edit_change_of (study, 0, "equipment"));
  g_assert_null (row_of (&desk, "equipment/camera"));
  expect_here (&desk, "equipment/receiver");
  g_assert_cmpstr (label_of (row_of (&desk, "equipment/battery"), "detail"), ==,
                   "only in Folded: 178 g, 155 mm aft");

  gw_document_set_only_here (desk.document, FALSE);
  add (&desk, "equipment");
  g_assert_cmpuint (gw_document_get_study (desk.document)->equipment->len, ==, n);
  g_assert_nonnull (row_of (&desk, looked_at (&desk)));

  /* The others have the common list. */
  gw_document_set_shown (desk.document, 1);
  g_assert_nonnull (row_of (&desk, "equipment/camera"));
  g_assert_cmpstr (label_of (row_of (&desk, "equipment/battery"), "detail"), ==,
                   "178 g, 178 mm aft");
  gw_document_undo (desk.document);
  gw_document_undo (desk.document);
  g_assert_null (last_edit (&desk));
  desk_clear (&desk);
}

/* What an option has set of the record goes too, and that is told. */
static void
test_dropped (void)
{
  Desk desk;

  desk_init (&desk, "reed-bed");
  gw_document_set_shown (desk.document, 1);
  {
    g_autoptr (JsonNode) value = json_node_init_double (json_node_alloc (), 12.0);
    g_autoptr (GwStudy) study = gw_edit_set (gw_document_get_study (desk.document), 1, TRUE,
                                             "equipment/camera/z_mm", value, NULL);

    g_assert_true (gw_document_edit (desk.document, "Edit", study, NULL, NULL));
  }
  look_at (&desk, "equipment/camera");
  g_assert_true (act (&desk, "outline.remove"));
  g_assert_cmpstr (desk.message, ==,
                   "Gone with it: Camera with its mount \302\267 Height, set in Hot-wired core, "
                   "glass skin");
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
  g_test_add_func ("/desk/drawer/only-here", test_only_here);
  g_test_add_func ("/desk/drawer/dropped", test_dropped);
  g_test_add_func ("/desk/drawer/refused", test_refused);
  g_test_add_func ("/desk/drawer/baseline", test_baseline);
  g_test_add_func ("/desk/drawer/not-a-record", test_not_a_record);
  g_test_add_func ("/desk/drawer/drag", test_drag);
  g_test_add_func ("/desk/drawer/units", test_units);
  g_test_add_func ("/desk/drawer/other-document", test_other_document);
  return g_test_run ();
}
