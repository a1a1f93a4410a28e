/* test-desk-preferences.c - what the user chooses, and that it is seen at once
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "desk/gw-language.h"
#include "desk/gw-preferences.h"
#include "desk/gw-sheet-view.h"
#include "desk/gw-window.h"
#include "desk-wait.h"

static GwApplication *application;

static const char *const keys[] = {
  "length-unit",
  "mass-unit",
  "speed-unit",
  "temperature-unit",
  "pressure-unit",
  "distance-unit",
  "theme",
  "paper",
  "language",
};

static GtkWidget *
find (GtkWidget  *widget,
      const char *name)
{
  if (g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), name) == 0 ||
      g_strcmp0 (gtk_widget_get_name (widget), name) == 0)
    return widget;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, name);

      if (found != NULL)
        return found;
    }

  return NULL;
}

static GtkDropDown *
drop_down_of (GtkWindow  *preferences,
              const char *key)
{
  GtkWidget *found = find (GTK_WIDGET (preferences), key);

  if (found == NULL)
    g_error ("the preferences have no “%s”", key);
  return GTK_DROP_DOWN (found);
}

static GSettings *
settings (void)
{
  return gw_application_get_settings (application);
}

static char *
setting (const char *key)
{
  return g_settings_get_string (settings (), key);
}

static void
reset (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    g_settings_reset (settings (), keys[i]);
}

static GtkWindow *
find_preferences (void)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (application)); l; l = l->next)
    if (GW_IS_PREFERENCES (l->data))
      return l->data;

  return NULL;
}

static GtkWindow *
open_preferences (void)
{
  g_action_group_activate_action (G_ACTION_GROUP (application), "preferences", NULL);
  wait_until (find_preferences () != NULL &&
              gtk_widget_get_mapped (GTK_WIDGET (find_preferences ())));
  return find_preferences ();
}

static GwWindow *
window_with (GFile *file)
{
  GwWindow *window = gw_window_new (application);

  gtk_window_present (GTK_WINDOW (window));
  gw_window_open (window, file);
  wait_until (gw_window_get_document (window) != NULL);
  gtk_test_widget_wait_for_draw (GTK_WIDGET (window));
  return window;
}

static GwSheetView *
sheet_of (GwWindow *window)
{
  return GW_SHEET_VIEW (find (GTK_WIDGET (window), "sheet"));
}

/* Somewhere on the sheet as it is on the screen. */
static gboolean
says (GwWindow   *window,
      const char *wanted)
{
  const GwDrawing *drawing;

  wait_until (gw_sheet_view_get_drawing (sheet_of (window)) != NULL);
  drawing = gw_sheet_view_get_drawing (sheet_of (window));
  for (size_t i = 0; i < gw_drawing_n (drawing); i++)
    {
      const char *text = gw_drawing_mark (drawing, i)->text;

      if (text != NULL && strstr (text, wanted) != NULL)
        return TRUE;
    }

  return FALSE;
}

static void
window_close (GwWindow *window)
{
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  gtk_window_destroy (GTK_WINDOW (window));
  wait_until (window == NULL);
  reset ();
}

/* Each change is on the sheet, in its words and in what the application tells. */
static void
test_units (void)
{
  Place      place;
  GwWindow  *window;
  GtkWindow *preferences;

  place_init (&place, SAMPLE_STUDY);
  window = window_with (place.file);
  preferences = open_preferences ();
  g_assert_true (says (window, "1200"));
  g_assert_true (says (window, "8.0 m/s"));

  gtk_drop_down_set_selected (drop_down_of (preferences, "length-unit"), 2);
  g_assert_cmpstr (gw_units_name (gw_application_get_units (application), GW_MM), ==, "in");
  wait_until (says (window, "47.24 in"));
  g_assert_false (says (window, " mm"));
  g_assert_true (says (window, "8.0 m/s"));
  g_assert_nonnull (strstr (gw_sheet_view_get_text (sheet_of (window)), " in"));
  g_assert_null (strstr (gw_sheet_view_get_text (sheet_of (window)), " mm"));

  gtk_drop_down_set_selected (drop_down_of (preferences, "speed-unit"), 1);
  wait_until (says (window, "28.8 km/h"));
  gtk_drop_down_set_selected (drop_down_of (preferences, "mass-unit"), 1);
  wait_until (says (window, "all-up mass, oz"));
  g_assert_cmpstr (gw_units_name (gw_application_get_units (application), GW_G_DM2), ==, "oz/ft²");
  g_assert_true (says (window, "oz/ft²"));

  /* From elsewhere, as another window of the program would: the drop-down follows. */
  g_settings_set_string (settings (), "length-unit", "cm");
  wait_until (says (window, "120.0 cm"));
  g_assert_cmpuint (gtk_drop_down_get_selected (drop_down_of (preferences, "length-unit")), ==, 1);
  window_close (window);
  place_clear (&place);
}

static void
expect (const char *length,
        const char *mass,
        const char *speed,
        const char *temperature,
        const char *pressure,
        const char *distance)
{
  const char      *wanted[] = { length, mass, speed, temperature, pressure, distance };
  const GwUnits   *units = gw_application_get_units (application);
  const GwQuantity of[] = { GW_MM, GW_G, GW_M_S, GW_C, GW_HPA, GW_M };

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    {
      g_autofree char *chosen = setting (keys[i]);

      g_assert_cmpstr (chosen, ==, wanted[i]);
      g_assert_cmpstr (gw_units_name (units, of[i]), ==, wanted[i]);
    }
}

static void
test_buttons (void)
{
  Place      place;
  GwWindow  *window;
  GtkWindow *preferences;

  place_init (&place, SAMPLE_STUDY);
  window = window_with (place.file);
  preferences = open_preferences ();
  g_signal_emit_by_name (find (GTK_WIDGET (preferences), "inch"), "clicked");
  expect ("in", "oz", "mph", "°F", "inHg", "ft");
  wait_until (says (window, "17.9 mph")); /* 8 m/s */
  g_signal_emit_by_name (find (GTK_WIDGET (preferences), "metric"), "clicked");
  expect ("mm", "g", "m/s", "°C", "hPa", "m");
  wait_until (says (window, "8.0 m/s"));
  g_assert_true (gw_units_equal (gw_application_get_units (application), gw_units_standard ()));
  window_close (window);
  place_clear (&place);
}

static GBytes *export(GwWindow    *window,
                      const Place *place)
{
  g_autofree char *path = g_strconcat (place->path, ".png", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  char *contents;
  gsize length;

  gw_window_export (window, file);
  g_assert_true (g_file_get_contents (path, &contents, &length, NULL));
  return g_bytes_new_take (contents, length);
}

/* What leaves the window is told in the same units as what is in it. */
static void
test_export (void)
{
  Place     place;
  GwWindow *window;
  g_autoptr (GBytes) before = NULL;
  g_autoptr (GBytes) again = NULL;
  g_autoptr (GBytes) inches = NULL;

  place_init (&place, SAMPLE_STUDY);
  g_setenv ("SOURCE_DATE_EPOCH", "1700000000", TRUE); /* no midnight between them */
  window = window_with (place.file);
  before = export(window, &place);
  again = export(window, &place);
  g_settings_set_string (settings (), "length-unit", "in");
  inches = export(window, &place);
  g_assert_true (g_bytes_equal (before, again));
  g_assert_false (g_bytes_equal (before, inches));
  g_unsetenv ("SOURCE_DATE_EPOCH");
  window_close (window);
  place_clear (&place);
}

static void
test_looks (void)
{
  GwWindow      *window = gw_window_new (application);
  GtkWindow     *preferences;
  const GwPaper *paper;

  gtk_window_present (GTK_WINDOW (window));
  preferences = open_preferences ();
  g_assert_cmpstr (gw_application_get_paper (application)->name, ==, "A4");
  gtk_drop_down_set_selected (drop_down_of (preferences, "paper"), 2);
  paper = gw_application_get_paper (application);
  g_assert_cmpstr (paper->name, ==, "Letter");

  gtk_drop_down_set_selected (drop_down_of (preferences, "theme"), 2);
  g_assert_true (gw_appearance_get_dark (gw_application_get_appearance (application)));
  gtk_drop_down_set_selected (drop_down_of (preferences, "theme"), 1);
  g_assert_false (gw_appearance_get_dark (gw_application_get_appearance (application)));
  window_close (window);
}

/* One at a time; it goes with its window, or by Escape. */
static void
test_one_window (void)
{
  GwWindow  *window = gw_window_new (application);
  GtkWindow *preferences, *again;

  gtk_window_present (GTK_WINDOW (window));
  preferences = open_preferences ();
  again = open_preferences ();
  g_assert_true (preferences == again);
  g_assert_true (gtk_window_get_transient_for (preferences) == GTK_WINDOW (window));
  gtk_widget_activate_action (GTK_WIDGET (preferences), "window.close", NULL);
  wait_until (find_preferences () == NULL);

  preferences = open_preferences ();
  g_object_add_weak_pointer (G_OBJECT (preferences), (gpointer *) &preferences);
  window_close (window);
  wait_until (preferences == NULL);
}

/* Quit closes both, whichever comes first. */
static void
test_quit (void)
{
  GwWindow  *window = gw_window_new (application);
  GtkWindow *preferences;

  gtk_window_present (GTK_WINDOW (window));
  preferences = open_preferences ();
  g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
  g_object_add_weak_pointer (G_OBJECT (preferences), (gpointer *) &preferences);
  gtk_window_present (GTK_WINDOW (window));
  g_action_group_activate_action (G_ACTION_GROUP (application), "quit", NULL);
  wait_until (window == NULL && preferences == NULL);
}

/* What takes the focus has a name, and every choice can be reached by keys. */
static void
test_names (void)
{
  GwWindow  *window = gw_window_new (application);
  GtkWindow *preferences;
  guint      n_reached = 0;

  gtk_window_present (GTK_WINDOW (window));
  preferences = open_preferences ();
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      GtkWidget *drop_down = GTK_WIDGET (drop_down_of (preferences, keys[i]));
      GtkWidget *inner = gtk_widget_get_first_child (drop_down);

      g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (drop_down),
                                                       GTK_ACCESSIBLE_PROPERTY_LABEL));
      g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (inner),
                                                       GTK_ACCESSIBLE_PROPERTY_LABEL));
    }
  gtk_test_accessible_assert_property (
    gtk_widget_get_first_child (GTK_WIDGET (drop_down_of (preferences, "speed-unit"))),
    GTK_ACCESSIBLE_PROPERTY_LABEL, "Speed: metres a second, m/s");
  gtk_drop_down_set_selected (drop_down_of (preferences, "speed-unit"), 3);
  gtk_test_accessible_assert_property (
    gtk_widget_get_first_child (GTK_WIDGET (drop_down_of (preferences, "speed-unit"))),
    GTK_ACCESSIBLE_PROPERTY_LABEL, "Speed: knots, kt");

  /* From the first to the last, as the Tab key goes; it goes by what has been laid out. */
  gtk_test_widget_wait_for_draw (GTK_WIDGET (preferences));
  gtk_window_set_focus (preferences, find (GTK_WIDGET (preferences), "metric"));
  for (guint i = 0; i < 20; i++)
    {
      GtkWidget *focus = gtk_window_get_focus (preferences);
      GtkWidget *owner = focus != NULL ? gtk_widget_get_parent (focus) : NULL;

      for (guint k = 0; k < G_N_ELEMENTS (keys) && owner != NULL; k++)
        if (owner == GTK_WIDGET (drop_down_of (preferences, keys[k])))
          n_reached |= 1u << k;
      if (!gtk_widget_child_focus (GTK_WIDGET (preferences), GTK_DIR_TAB_FORWARD))
        break;
    }
  g_assert_cmpuint (n_reached, ==, (1u << G_N_ELEMENTS (keys)) - 1);
  window_close (window);
}

static void
add_translation (const char *folder,
                 const char *code,
                 const char *name)
{
  g_autofree char *messages = g_build_filename (folder, code, "LC_MESSAGES", NULL);
  g_autofree char *path = g_build_filename (messages, name, NULL);

  g_assert_cmpint (g_mkdir_with_parents (messages, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, "", 0, NULL));
}

static void
remove_translation (const char *folder,
                    const char *code,
                    const char *name)
{
  g_autofree char *language = g_build_filename (folder, code, NULL);
  g_autofree char *messages = g_build_filename (language, "LC_MESSAGES", NULL);
  g_autofree char *path = g_build_filename (messages, name, NULL);

  g_assert_cmpint (g_remove (path) | g_rmdir (messages) | g_rmdir (language), ==, 0);
}

static void
test_language_list (void)
{
  g_autofree char *folder = g_dir_make_tmp ("gw-languages-XXXXXX", NULL);
  g_auto (GStrv) codes = NULL, none = NULL;

  add_translation (folder, "fr", "gramwright.mo");
  add_translation (folder, "de", "gramwright.mo");
  add_translation (folder, "sv", "other.mo"); /* of another program */
  codes = gw_language_list (folder);
  g_assert_cmpuint (g_strv_length (codes), ==, 3);
  g_assert_cmpstr (codes[0], ==, "de");
  g_assert_cmpstr (codes[1], ==, "en");
  g_assert_cmpstr (codes[2], ==, "fr");
  g_assert_cmpstr (gw_language_name ("de"), ==, "Deutsch");
  g_assert_cmpstr (gw_language_name ("tlh"), ==, "tlh");
  remove_translation (folder, "fr", "gramwright.mo");
  remove_translation (folder, "de", "gramwright.mo");
  remove_translation (folder, "sv", "other.mo");
  g_assert_cmpint (g_rmdir (folder), ==, 0);

  none = gw_language_list (folder);
  g_assert_cmpuint (g_strv_length (none), ==, 1);
}

static void
test_language (void)
{
  GwWindow        *window = gw_window_new (application);
  GtkWindow       *preferences;
  GtkDropDown     *languages;
  g_autofree char *before = g_strdup (g_getenv ("LANGUAGE"));
  g_autofree char *chosen = NULL, *none = NULL;

  gtk_window_present (GTK_WINDOW (window));
  g_settings_set_string (settings (), "language", "tlh"); /* its translation has gone */
  preferences = open_preferences ();
  languages = drop_down_of (preferences, "language");
  g_assert_cmpstr (
    gtk_string_object_get_string (gtk_drop_down_get_selected_item (languages)), ==, "tlh");
  gtk_drop_down_set_selected (languages, 1);
  chosen = setting ("language");
  g_assert_cmpstr (chosen, ==, "en");
  gw_language_apply (settings ());
  g_assert_cmpstr (g_getenv ("LANGUAGE"), ==, "en");

  /* Of the system: nothing is set. */
  gtk_drop_down_set_selected (languages, 0);
  none = setting ("language");
  g_assert_cmpstr (none, ==, "");
  g_setenv ("LANGUAGE", "xx", TRUE);
  gw_language_apply (settings ());
  g_assert_cmpstr (g_getenv ("LANGUAGE"), ==, "xx");
  if (before != NULL)
    g_setenv ("LANGUAGE", before, TRUE);
  else
    g_unsetenv ("LANGUAGE");
  window_close (window);
}

int
main (int   argc,
      char *argv[])
{
  int status;

  gtk_test_init (&argc, &argv, NULL);
  application = gw_application_new (G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (application), NULL, NULL));

  g_test_add_func ("/desk/preferences/units", test_units);
  g_test_add_func ("/desk/preferences/buttons", test_buttons);
  g_test_add_func ("/desk/preferences/export", test_export);
  g_test_add_func ("/desk/preferences/looks", test_looks);
  g_test_add_func ("/desk/preferences/one-window", test_one_window);
  g_test_add_func ("/desk/preferences/quit", test_quit);
  g_test_add_func ("/desk/preferences/names", test_names);
  g_test_add_func ("/desk/preferences/language-list", test_language_list);
  g_test_add_func ("/desk/preferences/language", test_language);

  status = g_test_run ();
  g_object_unref (application);
  return status;
}
