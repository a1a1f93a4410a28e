/* test-desk-form-lists.c - choosing and adding in the right drawer; the names of all that is in it
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "desk-form.h"
#include "desk-pointer.h"
#include "desk/gw-chooser.h"
#include "study/gw-edit.h"
#include "study/gw-edit-option.h"

static GtkWidget *
open_chooser (Desk       *desk,
              const char *path)
{
  GtkWidget *chooser = find (field_of (desk, path), has_type, "GwChooser");
  GtkWidget *popover = find (chooser, has_id, "popover");

  gtk_menu_button_popup (GTK_MENU_BUTTON (find (chooser, has_id, "button")));
  wait_until (gtk_widget_get_mapped (popover));
  return popover;
}

static GtkListBox *
list_of (GtkWidget *popover)
{
  return GTK_LIST_BOX (find (popover, has_id, "list"));
}

/* The arrow keys move the selection of the list. */
static void
go_to_row (GtkWidget *popover,
           int        i)
{
  gtk_list_box_select_row (list_of (popover), gtk_list_box_get_row_at_index (list_of (popover), i));
}

static void
test_preview (void)
{
  Desk       desk;
  GtkWidget *popover;
  GwStudy   *study;
  double     before;

  desk_init_sample (&desk, "builds/1");
  study = gw_document_get_study (desk.document);
  before = mass_of (gw_document_get_evaluation (desk.document), 0);
  popover = open_chooser (&desk, SHEET);
  g_assert_true (gtk_widget_get_focus_child (GTK_WIDGET (list_of (popover))) ==
                 GTK_WIDGET (gtk_list_box_get_selected_row (list_of (popover))));

  /* Own sheets first, then those of the catalogue. */
  go_to_row (popover, 3);
  wait_until (tries (&desk));
  g_assert_cmpfloat (fabs (mass_of (gw_document_get_evaluation (desk.document), 0) - before), >,
                     1e-3); /* kg: a board of twice the mass */
  g_assert_nonnull (strstr (
    gtk_label_get_text (GTK_LABEL (find (
      GTK_WIDGET (gtk_list_box_get_selected_row (list_of (popover))), has_id, "effect"))),
    "g"));

  /* Escape closes the popover. */
  gtk_popover_popdown (GTK_POPOVER (popover));
  wait_until (!tries (&desk));
  g_assert_true (gw_document_get_study (desk.document) == study);
  g_assert_cmpfloat (mass_of (gw_document_get_evaluation (desk.document), 0), ==, before);
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

/* "Foam|Board", as far as they can be seen. */
static char *
names_in (GtkWidget *popover)
{
  GString       *names = g_string_new (NULL);
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (list_of (popover), i)) != NULL; i++)
    if (gtk_widget_get_child_visible (GTK_WIDGET (row)))
      g_string_append_printf (
        names, "%s%s", names->len > 0 ? "|" : "",
        gtk_label_get_text (GTK_LABEL (find (GTK_WIDGET (row), has_id, "name"))));
  return g_string_free (names, FALSE);
}

static const char *
name_of (GtkListBoxRow *row)
{
  return gtk_label_get_text (GTK_LABEL (find (GTK_WIDGET (row), has_id, "name")));
}

static gboolean
is_foam (const char *name)
{
  g_autofree char *folded = g_utf8_casefold (name, -1);

  return strstr (folded, "foam") != NULL;
}

/* A name that holds the word stands before what is only of a kind that does. */
static void
test_search (void)
{
  Desk             desk;
  GtkWidget       *popover, *search, *nothing;
  g_autofree char *all = NULL, *found = NULL, *again = NULL;
  g_auto (GStrv) names = NULL;
  guint n = 0;

  desk_init_sample (&desk, "builds/1");
  popover = open_chooser (&desk, SHEET);
  search = find (popover, has_id, "search");
  nothing = find (popover, has_id, "nothing");
  all = names_in (popover);
  gtk_editable_set_text (GTK_EDITABLE (search), "FOAM");
  found = names_in (popover);
  names = g_strsplit (found, "|", -1);
  while (names[n] != NULL && is_foam (names[n]))
    n++;
  g_assert_cmpuint (n, >, 3);
  g_assert_cmpuint (n, <, g_strv_length (names)); /* "Beaded, 30 kg/m³" of the kind "foam" */
  for (; names[n] != NULL; n++)
    g_assert_false (is_foam (names[n]));
  g_assert_cmpstr (name_of (gtk_list_box_get_selected_row (list_of (popover))), ==, names[0]);

  g_assert_false (gtk_widget_get_child_visible (nothing) && gtk_widget_get_mapped (nothing));
  gtk_editable_set_text (GTK_EDITABLE (search), "foam zz");
  g_assert_true (gtk_widget_get_mapped (nothing));
  g_assert_null (gtk_list_box_get_selected_row (list_of (popover)));
  g_signal_emit_by_name (search, "activate"); /* there is nothing to take */
  g_assert_null (undo_name (&desk));

  gtk_editable_set_text (GTK_EDITABLE (search), "");
  again = names_in (popover);
  g_assert_cmpstr (again, ==, all);
  desk_clear (&desk);
}

/* Blanks as well, from the first letter on. */
static void
test_search_keys (void)
{
  Desk       desk;
  GtkWidget *popover, *search;
  int        x, y;

  desk_init_sample (&desk, "builds/1");
  popover = open_chooser (&desk, SHEET);
  search = find (popover, has_id, "search");
  gtk_test_widget_wait_for_draw (popover);
  place_on_screen (search, 10.0, 10.0, &x, &y);
  point ("mousemove %d %d type --delay 20 'foam board l'", x, y);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (search)), ==, "foam board l");
  point ("key BackSpace Return");
  g_assert_false (gtk_widget_get_mapped (popover));
  g_assert_cmpstr (undo_name (&desk), ==, "Change Sheet of Folded sheet");
  desk_clear (&desk);
}

static void
test_choose (void)
{
  Desk                desk;
  GtkWidget          *popover;
  const GwStudyBuild *build;

  desk_init_sample (&desk, "builds/1");
  popover = open_chooser (&desk, SHEET);
  go_to_row (popover, 1);
  g_signal_emit_by_name (list_of (popover), "row-activated",
                         gtk_list_box_get_selected_row (list_of (popover)));
  build = g_ptr_array_index (gw_document_get_study (desk.document)->builds, 0);
  g_assert_cmpstr (build->folded_sheet->material, ==, "foam-board-light");
  g_assert_cmpstr (undo_name (&desk), ==, "Change Sheet of Folded sheet");
  g_assert_false (tries (&desk));
  gw_document_undo (desk.document);
  build = g_ptr_array_index (gw_document_get_study (desk.document)->builds, 0);
  g_assert_cmpstr (build->folded_sheet->material, ==, "sheet");
  desk_clear (&desk);
}

/* A construction whose material is not said yet cannot be computed: why stands in the list. */

static const GwStudyItem *
battery_of (Desk *desk)
{
  return (const GwStudyItem *) gw_edit_record (gw_document_get_study (desk->document),
                                               "equipment/battery");
}

static void
choose_kind (Desk       *desk,
             const char *kind)
{
  g_autoptr (JsonNode) node = json_node_init_string (json_node_alloc (), kind);
  g_autoptr (GwStudy) edited = NULL;

  edited = gw_edit_set (gw_document_get_study (desk->document), 0, FALSE, "equipment/battery/kind",
                        node, NULL);
  g_assert_true (gw_document_edit (desk->document, "Kind", edited, NULL, NULL));
}

/* A usual size is looked at and taken as a whole; what is no battery is not offered, and what
 * comes in no usual sizes has no such field. */
static void
test_size (void)
{
  Desk       desk;
  GtkWidget *popover;
  double     before;

  desk_init_sample (&desk, "equipment/battery");
  before = mass_of (gw_document_get_evaluation (desk.document), 0);
  popover = open_chooser (&desk, "equipment/battery/size");
  go_to_row (popover, 1);
  g_assert_cmpstr (name_of (gtk_list_box_get_selected_row (list_of (popover))), ==,
                   "2 cells, 300 mAh");
  wait_until (tries (&desk));
  g_assert_cmpfloat (mass_of (gw_document_get_evaluation (desk.document), 0), <, before - 0.1);
  g_assert_cmpfloat (battery_of (&desk)->mass_g.value, ==, 180.0);
  g_signal_emit_by_name (list_of (popover), "row-activated",
                         gtk_list_box_get_selected_row (list_of (popover)));
  g_assert_false (tries (&desk));
  g_assert_cmpfloat (battery_of (&desk)->mass_g.value, ==, 21.0);
  g_assert_cmpfloat (battery_of (&desk)->length_mm.value, ==, 45.0);
  g_assert_cmpstr (undo_name (&desk), ==, "Change Usual size of Equipment");
  gw_document_undo (desk.document);
  g_assert_cmpfloat (battery_of (&desk)->mass_g.value, ==, 180.0);
  g_assert_null (undo_name (&desk));

  choose_kind (&desk, "ballast");
  g_assert_null (find (desk.form, has_path, "equipment/battery/size"));
  desk_clear (&desk);
}

/* An outline of points that are not there cannot be computed: why stands in the list. */
static void
test_preview_refused (void)
{
  Desk       desk;
  GtkWidget *popover, *note;

  desk_init_sample (&desk, "sections/flat");
  popover = open_chooser (&desk, "sections/flat/shape");
  note = find (popover, has_id, "note");
  go_to_row (popover, GW_SHAPE_POINTS);
  wait_until (gtk_widget_get_visible (note));
  g_assert_false (tries (&desk));
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (note)), !=, "");
  desk_clear (&desk);
}

static guint
n_stations (Desk *desk)
{
  const GwStudySurface *wing =
    g_ptr_array_index (gw_document_get_study (desk->document)->surfaces, 0);

  return wing->stations->len;
}

static void
ask (Desk       *desk,
     const char *path,
     int         row,
     const char *action)
{
  GtkWidget *list = find (field_of (desk, path), has_type, "GtkListBox");

  g_assert_true (gtk_widget_activate_action (
    GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), row)), action, NULL));
}

static gboolean
holds_focus (Desk      *desk,
             GtkWidget *widget)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (desk->window));

  return focus != NULL && gtk_widget_is_ancestor (focus, widget);
}

/* All of its text selected, to be typed over. */
static gboolean
is_to_be_typed (Desk       *desk,
                const char *path)
{
  GtkWidget *entry = entry_of (desk, path);
  int        start, end;

  return holds_focus (desk, entry) &&
         gtk_editable_get_selection_bounds (GTK_EDITABLE (entry), &start, &end) && start == 0 &&
         end == g_utf8_strlen (text_of (desk, path), -1);
}

/* What is new is asked for at once; what has no name begins with its first number. */
static void
test_begin (void)
{
  Desk desk;

  desk_init_sample (&desk, "equipment/battery");
  gw_form_focus_field (GW_FORM (desk.form), "name");
  g_assert_true (holds_focus (&desk, entry_of (&desk, "equipment/battery/name")));
  type (&desk, "equipment/battery/name", "Pack");
  gtk_widget_grab_focus (entry_of (&desk, PLACE));
  gw_form_focus_field (GW_FORM (desk.form), "name");
  g_assert_true (is_to_be_typed (&desk, "equipment/battery/name"));

  gw_document_set_selection (desk.document, "surfaces/wing/stations/2");
  g_assert_true (is_to_be_typed (&desk, "surfaces/wing/stations/2/y_mm"));
  gw_form_focus_field (GW_FORM (desk.form), "name"); /* it has none */
  g_assert_true (holds_focus (&desk, desk.form));

  /* The focus is elsewhere, and stays there. */
  gtk_window_set_focus (GTK_WINDOW (desk.window), NULL);
  gw_document_set_selection (desk.document, "equipment/battery");
  g_assert_false (holds_focus (&desk, desk.form));
  desk_clear (&desk);
}

static void
test_stations (void)
{
  Desk       desk;
  GtkWidget *add_button;

  desk_init_sample (&desk, "surfaces/wing");
  add_button = find (field_of (&desk, "surfaces/wing/stations"), has_word, "Add");
  gtk_widget_grab_focus (add_button);
  g_signal_emit_by_name (add_button, "clicked");
  g_assert_true (is_to_be_typed (&desk, "surfaces/wing/stations/3/y_mm"));
  g_assert_cmpuint (n_stations (&desk), ==, 3);
  g_assert_cmpstr (gw_document_get_selection (desk.document), ==, "surfaces/wing/stations/3");
  /* As far again as half of the last panel, 600 mm long. */
  g_assert_cmpstr (text_of (&desk, "surfaces/wing/stations/3/y_mm"), ==, "900");
  g_assert_cmpstr (undo_name (&desk), ==, "Add Station");

  g_signal_emit_by_name (find (desk.form, has_word, "Back to Lifting surface wing"), "clicked");
  g_assert_cmpstr (gw_document_get_selection (desk.document), ==, "surfaces/wing");
  ask (&desk, "surfaces/wing/stations", 2, "row.remove");
  g_assert_cmpuint (n_stations (&desk), ==, 2);
  gw_document_undo (desk.document);
  g_assert_cmpuint (n_stations (&desk), ==, 3);
  gw_document_undo (desk.document);
  g_assert_cmpuint (n_stations (&desk), ==, 2);

  /* Two are the least. */
  ask (&desk, "surfaces/wing/stations", 1, "row.remove");
  g_assert_cmpuint (n_stations (&desk), ==, 2);
  g_assert_nonnull (reason_of (&desk, "surfaces/wing/stations"));
  desk_clear (&desk);
}

static guint
n_rows (Desk       *desk,
        const char *path)
{
  GtkListBox *rows = GTK_LIST_BOX (find (field_of (desk, path), has_type, "GtkListBox"));
  guint       n = 0;

  while (gtk_list_box_get_row_at_index (rows, (int) n) != NULL)
    n++;
  return n;
}

/* Meant for one option alone, the list becomes its own; that is said, and can be taken back. */
static void
test_list_only_here (void)
{
  const char *const list = "surfaces/wing/stations";
  Desk              desk;

  desk_init_sample (&desk, "surfaces/wing");
  g_assert_false (gtk_widget_get_mapped (take_back_of (&desk, list)));
  gw_document_set_only_here (desk.document, TRUE);
  g_signal_emit_by_name (find (field_of (&desk, list), has_word, "Add"), "clicked");
  g_assert_cmpuint (n_stations (&desk), ==, 2);
  g_assert_cmpstr (gw_document_get_selection (desk.document), ==, "surfaces/wing/stations/3");
  g_assert_nonnull (gw_edit_change_of (gw_document_get_study (desk.document), 0, list));
  g_assert_cmpstr (text_of (&desk, "surfaces/wing/stations/3/y_mm"), ==, "900");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (find (desk.form, has_id, "kind"))), ==,
                   "only in Thin sheet");

  /* A field in it is set in the list, whoever it is meant for. */
  gw_document_set_only_here (desk.document, FALSE);
  gw_document_set_selection (desk.document, "surfaces/wing/stations/2");
  type (&desk, "surfaces/wing/stations/2/chord_mm", "190");
  enter (&desk, "surfaces/wing/stations/2/chord_mm");
  g_assert_cmpfloat (value_of (&desk, "surfaces/wing/stations/2/chord_mm"), ==, 200.0);

  gw_document_set_selection (desk.document, "surfaces/wing");
  g_assert_cmpuint (n_rows (&desk, list), ==, 3);
  gtk_test_widget_wait_for_draw (desk.window);
  g_assert_true (gtk_widget_get_mapped (take_back_of (&desk, list)));
  gw_document_set_shown (desk.document, 1);
  g_assert_cmpuint (n_rows (&desk, list), ==, 2);

  gw_document_set_shown (desk.document, 0);
  g_signal_emit_by_name (take_back_of (&desk, list), "clicked");
  g_assert_cmpuint (n_rows (&desk, list), ==, 2);
  g_assert_null (gw_edit_change_of (gw_document_get_study (desk.document), 0, list));
  gw_document_undo (desk.document);
  g_assert_cmpuint (n_rows (&desk, list), ==, 3);
  desk_clear (&desk);
}

/* What is looked at is there for one option only. */
static void
test_selection_only_here (void)
{
  Desk desk;

  desk_init_sample (&desk, "surfaces/wing");
  gw_document_set_only_here (desk.document, TRUE);
  g_signal_emit_by_name (find (field_of (&desk, "surfaces/wing/stations"), has_word, "Add"),
                         "clicked");
  g_assert_cmpstr (gw_document_get_selection (desk.document), ==, "surfaces/wing/stations/3");
  gw_document_set_shown (desk.document, 1);
  g_assert_cmpstr (gw_document_get_selection (desk.document), ==, "");
  desk_clear (&desk);
}

/* An option's change of a station goes with the station, and that is told. */
static void
test_dropped (void)
{
  const char *const list = "surfaces/wing/stations";
  Desk              desk;

  desk_init_sample (&desk, "surfaces/wing");
  g_signal_emit_by_name (find (field_of (&desk, list), has_word, "Add"), "clicked");
  gw_document_set_shown (desk.document, 1);
  gw_document_set_only_here (desk.document, TRUE);
  gw_document_set_selection (desk.document, "surfaces/wing/stations/3");
  type (&desk, "surfaces/wing/stations/3/chord_mm", "170");
  enter (&desk, "surfaces/wing/stations/3/chord_mm");
  gw_document_set_shown (desk.document, 0);
  gw_document_set_only_here (desk.document, FALSE);
  gw_document_set_selection (desk.document, "surfaces/wing");
  ask (&desk, list, 2, "row.remove");
  g_assert_cmpuint (n_stations (&desk), ==, 2);
  g_assert_cmpstr (
    gtk_label_get_text (GTK_LABEL (find (field_of (&desk, list), has_id, "remark"))), ==,
    "Gone with it: Lifting surface wing \302\267 Station 3 \302\267 Chord, set in thick");
  g_assert_null (gw_edit_change_of (gw_document_get_study (desk.document), 1,
                                    "surfaces/wing/stations/3/chord_mm"));
  gw_document_undo (desk.document);
  g_assert_nonnull (gw_edit_change_of (gw_document_get_study (desk.document), 1,
                                       "surfaces/wing/stations/3/chord_mm"));
  desk_clear (&desk);
}

static void
test_controls (void)
{
  Desk                  desk;
  const GwStudySurface *wing;
  const GwStudyControl *control;

  desk_init_sample (&desk, "surfaces/wing");
  for (guint i = 0; i < 2; i++)
    {
      g_signal_emit_by_name (find (field_of (&desk, "surfaces/wing/controls"), has_word, "Add"),
                             "clicked");
      gw_document_set_selection (desk.document, "surfaces/wing");
    }
  wing = g_ptr_array_index (gw_document_get_study (desk.document)->surfaces, 0);
  g_assert_cmpuint (wing->controls->len, ==, 2);
  ask (&desk, "surfaces/wing/controls", 1, "row.up");
  wing = g_ptr_array_index (gw_document_get_study (desk.document)->surfaces, 0);
  control = g_ptr_array_index (wing->controls, 0);
  g_assert_cmpstr (control->id, ==, "aileron-2");
  for (guint i = 0; i < 3; i++)
    gw_document_undo (desk.document);
  g_assert_null (undo_name (&desk));
  desk_clear (&desk);
}

static gboolean
is_named (GtkWidget *widget)
{
  GtkAccessible *accessible = GTK_ACCESSIBLE (widget);

  /* The text within an entry is read as the entry. */
  if (GTK_IS_TEXT (widget))
    return is_named (gtk_widget_get_parent (widget));

  return gtk_test_accessible_has_property (accessible, GTK_ACCESSIBLE_PROPERTY_LABEL) ||
         gtk_test_accessible_has_relation (accessible, GTK_ACCESSIBLE_RELATION_LABELLED_BY) ||
         (GTK_IS_BUTTON (widget) && gtk_button_get_label (GTK_BUTTON (widget)) != NULL) ||
         (GTK_IS_CHECK_BUTTON (widget) &&
          gtk_check_button_get_label (GTK_CHECK_BUTTON (widget)) != NULL);
}

/* Of all that can be seen; menus of words name their rows by those words. */
static void
expect_names (GtkWidget  *widget,
              const char *selection,
              guint      *n)
{
  if (GTK_IS_POPOVER_MENU (widget))
    return;
  if (!gtk_widget_get_visible (widget) && !GTK_IS_POPOVER (widget))
    return;

  if (gtk_widget_get_focusable (widget) && !GTK_IS_POPOVER (widget))
    {
      if (!is_named (widget))
        g_error ("a %s has no name in the form of “%s”", G_OBJECT_TYPE_NAME (widget), selection);
      (*n)++;
    }

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    expect_names (child, selection, n);
}

typedef struct
{
  Desk       *desk;
  GHashTable *types;
} Visit;

static void
visit_record (Visit          *visit,
              const GwRecord *record,
              const char     *path)
{
  guint n = 0;

  gw_document_set_selection (visit->desk->document, path);
  g_assert_cmpstr (gw_document_get_selection (visit->desk->document), ==, path);
  expect_names (visit->desk->form, path, &n);
  g_assert_cmpuint (n, >, 1);
  g_hash_table_add (visit->types, (gpointer) record->type);
}

static void
visit_field (const char    *path,
             GwRecord      *record,
             const GwField *field,
             gpointer       data)
{
  if (field->kind == GW_FIELD_PART)
    visit_record (data, *(GwRecord **) gw_record_at (record, field), path);
  else if (field->kind == GW_FIELD_LIST)
    {
      const GPtrArray *list = *(GPtrArray **) gw_record_at (record, field);

      for (guint i = 0; i < list->len; i++)
        {
          g_autofree char *step = gw_record_step ("", "", g_ptr_array_index (list, i), i);
          g_autofree char *here = g_strconcat (path, step, NULL);

          visit_record (data, g_ptr_array_index (list, i), here);
        }
    }
}

static void
test_names (void)
{
  g_autoptr (GHashTable) types = g_hash_table_new (NULL, NULL);
  g_autofree char *file =
    g_test_build_filename (G_TEST_DIST, "..", "data", "demo", "reed-bed.gramwright", NULL);
  g_autoptr (GFile) demo = g_file_new_for_path (file);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) study = gw_study_load (demo, NULL, &error);
  Desk  desk;
  Visit visit = { &desk, types };

  g_assert_no_error (error);
  desk_init (&desk, study, "");
  visit_record (&visit, &study->record, "");
  g_assert_cmpstr (
    gtk_label_get_text (GTK_LABEL (find (field_of (&desk, "baseline"), has_id, "value"))), ==,
    "Folded foam board");
  gw_record_each (&study->record, "", visit_field, &visit);
  /* Root, day, targets, option, build with its three, spar, surface, station, control, body,
   * cross-section, leg, power unit, equipment, material. */
  g_assert_cmpuint (g_hash_table_size (types), ==, 18);
  desk_clear (&desk);
}

static void
test_popover_names (void)
{
  Desk       desk;
  GtkWidget *popover;
  guint      n = 0;

  desk_init_sample (&desk, "builds/1");
  popover = open_sureness (&desk, "builds/1/joint_g_m");
  expect_names (popover, "sureness", &n);
  close_popover (popover);
  expect_names (open_chooser (&desk, SHEET), "chooser", &n);
  g_assert_cmpuint (n, >, 40); /* eight radios, four entries, a row for each material */
  desk_clear (&desk);
}

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/desk/form/chooser/preview", test_preview);
  g_test_add_func ("/desk/form/chooser/search", test_search);
  g_test_add_func ("/desk/form/chooser/search-keys", test_search_keys);
  g_test_add_func ("/desk/form/chooser/choose", test_choose);
  g_test_add_func ("/desk/form/chooser/size", test_size);
  g_test_add_func ("/desk/form/chooser/refused", test_preview_refused);
  g_test_add_func ("/desk/form/list/begin", test_begin);
  g_test_add_func ("/desk/form/list/stations", test_stations);
  g_test_add_func ("/desk/form/list/only-here", test_list_only_here);
  g_test_add_func ("/desk/form/list/selection-only-here", test_selection_only_here);
  g_test_add_func ("/desk/form/list/dropped", test_dropped);
  g_test_add_func ("/desk/form/list/controls", test_controls);
  g_test_add_func ("/desk/form/names/records", test_names);
  g_test_add_func ("/desk/form/names/popovers", test_popover_names);

  return g_test_run ();
}
