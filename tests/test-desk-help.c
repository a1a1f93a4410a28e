/* test-desk-help.c - the help pages and the window that shows them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <string.h>

#include "desk/gw-application.h"
#include "desk/gw-help-text.h"
#include "desk/gw-help.h"
#include "desk/gw-window.h"
#include "study/gw-entry.h"
#include "study/gw-number.h"

#include "desk-find.h"
#include "desk-wait.h"

static GwApplication *application;

static const GwHelpBlock *
block (const GwHelpPage *page,
       guint             i)
{
  g_assert_cmpuint (i, <, page->blocks->len);
  return g_ptr_array_index (page->blocks, i);
}

static void
test_parse (void)
{
  static const char text[] = "Title\n\nOne line\nand another\n\nA second\n## Heading\nAfter it\n"
                             "- first\n  goes on\n- second\n\n\nLast";
  static const struct
  {
    GwHelpKind  kind;
    const char *text;
  } blocks[] = {
    { GW_HELP_PARAGRAPH, "One line and another" },
    { GW_HELP_PARAGRAPH, "A second" },
    { GW_HELP_HEADING, "Heading" },
    { GW_HELP_PARAGRAPH, "After it" },
    { GW_HELP_ENTRY, "first goes on" },
    { GW_HELP_ENTRY, "second" },
    { GW_HELP_PARAGRAPH, "Last" },
  };
  g_autoptr (GwHelpPage) page = gw_help_page_new ("page", text, strlen (text));
  g_autoptr (GwHelpPage) empty = gw_help_page_new ("empty", "", 0);

  g_assert_cmpstr (page->title, ==, "Title");
  g_assert_cmpuint (page->blocks->len, ==, G_N_ELEMENTS (blocks));
  for (guint i = 0; i < G_N_ELEMENTS (blocks); i++)
    {
      g_assert_cmpint (block (page, i)->kind, ==, blocks[i].kind);
      g_assert_cmpstr (block (page, i)->text, ==, blocks[i].text);
    }
  g_assert_cmpstr (empty->title, ==, "");
  g_assert_cmpuint (empty->blocks->len, ==, 0);
}

static gboolean
has (const GwHelpPage *page,
     const char       *typed)
{
  g_auto (GStrv) words = gw_help_words (typed);

  return gw_help_page_has (page, (const char *const *) words);
}

static void
test_words (void)
{
  static const char text[] = "Wings\n\nFolded SHEET and glue.\n- über the nose\n";
  g_autoptr (GwHelpPage) page = gw_help_page_new ("page", text, strlen (text));

  g_assert_true (has (page, ""));
  g_assert_true (has (page, "  "));
  g_assert_true (has (page, "sheet"));
  g_assert_true (has (page, "GLUE  fold"));
  g_assert_true (has (page, "wing ÜBER"));
  g_assert_false (has (page, "sheet spar"));
  g_assert_false (has (page, "gluesheet"));
}

/* Each page that is listed is there, says something, and holds none of its own markup. */
static void
test_pages (void)
{
  g_autoptr (GPtrArray) pages = gw_help_pages ();

  g_assert_cmpuint (pages->len, ==, 11);
  for (guint i = 0; i < pages->len; i++)
    {
      const GwHelpPage *page = g_ptr_array_index (pages, i);

      g_test_message ("%s", page->id);
      g_assert_cmpuint (strlen (page->title), >, 5);
      g_assert_cmpuint (page->blocks->len, >, 5);
      for (guint k = 0; k < page->blocks->len; k++)
        {
          const char *text = block (page, k)->text;

          g_assert_true (g_utf8_validate (text, -1, NULL));
          g_assert_null (strstr (text, "##"));
          g_assert_false (g_str_has_prefix (text, "-"));
        }
    }
}

/* All pages that lie in the folder are listed. */
static void
test_folder (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "..", "data", "help", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autoptr (GPtrArray) pages = gw_help_pages ();
  const char *name;
  guint       n = 0;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    n += g_str_has_suffix (name, ".txt") && !g_str_equal (name, "contents.txt");
  g_assert_cmpuint (n, ==, pages->len);
}

static const GwHelpPage *
page_of (GPtrArray  *pages,
         const char *id)
{
  for (guint i = 0; i < pages->len; i++)
    if (g_str_equal (((GwHelpPage *) g_ptr_array_index (pages, i))->id, id))
      return g_ptr_array_index (pages, i);

  g_assert_not_reached ();
}

static gboolean
says (const GwHelpPage *page,
      const char       *text)
{
  for (guint i = 0; i < page->blocks->len; i++)
    if (strstr (block (page, i)->text, text) != NULL)
      return TRUE;

  return FALSE;
}

/* What the page shows as read is read, and every unit that is known stands in it. */
static void
test_numbers (void)
{
  static const struct
  {
    const char *text;
    GwQuantity  quantity;
    double      value;
  } entries[] = {
    { "245/2", GW_MM, 122.5 },
    { "9 in", GW_MM, 228.6 },
    { "1.5 oz", GW_G, 42.5242846875 },
    { "1 m + 20 mm", GW_MM, 1020.0 },
    { "2 * 38 g + 12 g", GW_G, 88.0 },
    { "(120 + 85) / 2", GW_MM, 102.5 },
    { "3,5", GW_MM, 3.5 },
  };
  g_autoptr (GPtrArray) pages = gw_help_pages ();
  const GwHelpPage *page = page_of (pages, "numbers");
  double            value;

  for (guint i = 0; i < G_N_ELEMENTS (entries); i++)
    {
      g_assert_true (says (page, entries[i].text));
      g_assert_true (gw_entry_parse (entries[i].text, entries[i].quantity, NULL, &value, NULL));
      g_assert_cmpfloat_with_epsilon (value, entries[i].value, 1e-9);
    }
  g_assert_true (says (page, "9 1/2 in"));
  g_assert_false (gw_entry_parse ("9 1/2 in", GW_MM, NULL, &value, NULL));

  for (guint i = 0; i < GW_N_QUANTITIES; i++)
    {
      g_autofree const char **units = gw_entry_units ((GwQuantity) i);

      for (guint k = 0; units[k] != NULL; k++)
        if (g_str_is_ascii (units[k]) && g_ascii_isalpha (*units[k]) && !says (page, units[k]))
          g_error ("the help does not know %s", units[k]);
    }
}

/* The origins that the page on weights explains are those there are. */
static void
test_origins (void)
{
  g_autoptr (GPtrArray) pages = gw_help_pages ();

  for (guint i = 0; i < GW_N_ORIGINS; i++)
    {
      g_autofree char *entry = g_strconcat (gw_origin_key ((GwOrigin) i), ": ", NULL);

      g_assert_true (says (page_of (pages, "weights"), entry));
    }
}

/* Labels of the page, one a line. */
static char *
shown_text (GwHelp *help)
{
  GtkWidget *page = find (GTK_WIDGET (help), "page");
  GString   *text = g_string_new (NULL);

  for (GtkWidget *child = gtk_widget_get_first_child (page); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    g_string_append_printf (text, "%s\n", gtk_label_get_text (GTK_LABEL (child)));

  return g_string_free (text, FALSE);
}

/* The first label with a word that was searched for. */
static GtkWidget *
marked (GwHelp *help)
{
  GtkWidget *page = find (GTK_WIDGET (help), "page");

  for (GtkWidget *child = gtk_widget_get_first_child (page); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (strstr (gtk_label_get_label (GTK_LABEL (child)), "<u>") != NULL)
      return child;

  return NULL;
}

static gboolean
shows (GwHelp     *help,
       const char *text)
{
  g_autofree char *shown = shown_text (help);

  return strstr (shown, text) != NULL;
}

static GwHelp *
help_new (void)
{
  GwHelp *help = gw_help_new (GTK_APPLICATION (application));

  gtk_window_present (GTK_WINDOW (help));
  wait_until (gtk_widget_get_mapped (GTK_WIDGET (help)));
  return help;
}

static void
help_close (GwHelp *help)
{
  g_object_add_weak_pointer (G_OBJECT (help), (gpointer *) &help);
  gtk_window_destroy (GTK_WINDOW (help));
  wait_until (help == NULL);
}

static guint
n_found (GwHelp *help)
{
  GtkListBox    *list = GTK_LIST_BOX (find (GTK_WIDGET (help), "list"));
  GtkListBoxRow *row;
  guint          n = 0;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (list, i)) != NULL; i++)
    n += gtk_widget_get_child_visible (GTK_WIDGET (row));
  return n;
}

static void
search (GwHelp     *help,
        const char *words)
{
  GtkWidget *entry = find (GTK_WIDGET (help), "search");

  gtk_editable_set_text (GTK_EDITABLE (entry), words);
  g_signal_emit_by_name (entry, "search-changed"); /* which else comes after a pause */
}

static void
test_show (void)
{
  GwHelp *help = help_new ();
  g_autoptr (GPtrArray) pages = gw_help_pages ();

  g_assert_true (shows (help, "First hour\n"));
  for (guint i = 0; i < pages->len; i++)
    {
      const GwHelpPage *page = g_ptr_array_index (pages, i);

      g_assert_true (gw_help_show_page (help, page->id));
      g_assert_true (shows (help, page->title));
      g_assert_true (shows (help, block (page, page->blocks->len - 1)->text));
      gtk_test_accessible_assert_property (find (GTK_WIDGET (help), "scroller"),
                                           GTK_ACCESSIBLE_PROPERTY_LABEL, page->title);
    }
  g_assert_false (gw_help_show_page (help, "nothing"));
  g_assert_true (shows (help, "Safety"));
  help_close (help);
}

static void
test_search (void)
{
  GwHelp         *help = help_new ();
  GtkWidget      *none = find (GTK_WIDGET (help), "none");
  GtkWidget      *scroller = find (GTK_WIDGET (help), "scroller");
  GtkAdjustment  *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  graphene_rect_t bounds;

  g_assert_cmpuint (n_found (help), ==, 11);
  search (help, "Resin veneer");
  g_assert_true (gtk_widget_get_visible (none));
  g_assert_true (shows (help, "First hour"));

  search (help, "laminate RESIN");
  g_assert_false (gtk_widget_get_visible (none));
  g_assert_cmpuint (n_found (help), ==, 1);
  g_assert_true (shows (help, "Ways of building"));
  /* The first word comes into sight, as it is written. */
  g_assert_nonnull (marked (help));
  g_assert_nonnull (strstr (gtk_label_get_label (GTK_LABEL (marked (help))), "<u>resin</u>"));
  wait_until (gtk_adjustment_get_value (adjustment) > 0.0);
  g_assert_true (gtk_widget_compute_bounds (marked (help), scroller, &bounds));
  g_assert_cmpfloat (bounds.origin.y, >=, 0.0f);
  g_assert_cmpfloat (bounds.origin.y, <, (float) gtk_widget_get_height (scroller));

  search (help, "");
  g_assert_cmpuint (n_found (help), ==, 11);
  g_assert_true (shows (help, "Ways of building"));
  g_assert_null (marked (help));

  /* Escape in the field empties it; in the empty field it closes the window. */
  search (help, "glue");
  g_object_add_weak_pointer (G_OBJECT (help), (gpointer *) &help);
  g_signal_emit_by_name (find (GTK_WIDGET (help), "search"), "stop-search");
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (find (GTK_WIDGET (help), "search"))), ==,
                   "");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (help)));
  g_signal_emit_by_name (find (GTK_WIDGET (help), "search"), "stop-search");
  wait_until (help == NULL);
}

/* From list to text and back; no key is swallowed by the text. */
static void
test_focus (void)
{
  GwHelp    *help = help_new ();
  GtkWidget *list = find (GTK_WIDGET (help), "list"), *text = find (GTK_WIDGET (help), "scroller");
  GtkWidget *row = GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 2));

  /* It begins on the first page of the list. */
  g_assert_true (gtk_root_get_focus (GTK_ROOT (help)) ==
                 GTK_WIDGET (gtk_list_box_get_row_at_index (GTK_LIST_BOX (list), 0)));
  g_assert_true (gtk_widget_grab_focus (row));
  g_signal_emit_by_name (list, "row-activated", row);
  g_assert_true (gtk_root_get_focus (GTK_ROOT (help)) == text);
  g_assert_true (gtk_widget_child_focus (GTK_WIDGET (help), GTK_DIR_TAB_BACKWARD));
  g_assert_true (gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (help)), list));
  help_close (help);
}

static GtkWindow *
other_window (GtkWindow *than)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (application)); l != NULL;
       l = l->next)
    if (GW_IS_HELP (l->data) && l->data != than)
      return l->data;

  return NULL;
}

/* Asked for twice there is one window; it closes by itself and comes again. */
static void
test_action (void)
{
  GtkWindow *help;

  for (guint i = 0; i < 2; i++)
    {
      g_action_group_activate_action (G_ACTION_GROUP (application), "help", NULL);
      help = other_window (NULL);
      g_assert_nonnull (help);
      g_action_group_activate_action (G_ACTION_GROUP (application), "help", NULL);
      g_assert_null (other_window (help));

      g_object_add_weak_pointer (G_OBJECT (help), (gpointer *) &help);
      gtk_widget_activate_action (GTK_WIDGET (help), "window.close", NULL);
      wait_until (help == NULL);
    }
}

static void
test_accels (void)
{
  static const char *const keys[][2] = { { "F1", "app.help" },
                                         { "<Control>question", "win.keys" },
                                         { "<Control>n", "win.new" } };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      g_auto (GStrv) actions =
        gtk_application_get_actions_for_accel (GTK_APPLICATION (application), keys[i][0]);

      g_assert_cmpuint (g_strv_length (actions), ==, 1);
      g_assert_cmpstr (actions[0], ==, keys[i][1]);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_autoptr (GError) error = NULL;
  int status;

  gtk_test_init (&argc, &argv, NULL);
  application = gw_application_new (G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (application), NULL, &error);
  g_assert_no_error (error);

  g_test_add_func ("/desk/help/text/parse", test_parse);
  g_test_add_func ("/desk/help/text/words", test_words);
  g_test_add_func ("/desk/help/pages/content", test_pages);
  g_test_add_func ("/desk/help/pages/folder", test_folder);
  g_test_add_func ("/desk/help/pages/numbers", test_numbers);
  g_test_add_func ("/desk/help/pages/origins", test_origins);
  g_test_add_func ("/desk/help/window/show", test_show);
  g_test_add_func ("/desk/help/window/search", test_search);
  g_test_add_func ("/desk/help/window/focus", test_focus);
  g_test_add_func ("/desk/help/window/action", test_action);
  g_test_add_func ("/desk/help/window/accels", test_accels);
  status = g_test_run ();
  g_object_unref (application);
  return status;
}
