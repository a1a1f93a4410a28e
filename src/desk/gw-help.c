/* gw-help.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-help.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-help-text.h"

struct _GwHelp
{
  GtkWindow parent_instance;

  GtkSearchEntry *search;
  GtkListBox     *list;
  GtkBox         *page; /* a label for each block */
  GtkWidget      *scroller;
  GtkLabel       *none;

  GPtrArray *pages; /* of GwHelpPage; the rows of the list are in the same order */
  char     **words;
  GtkWidget *first; /* label with the first of the words; NULL: none */
  guint      tick;
};

G_DEFINE_FINAL_TYPE (GwHelp, gw_help, GTK_TYPE_WINDOW)

static const GwHelpPage *
page_of (GwHelp        *self,
         GtkListBoxRow *row)
{
  return g_ptr_array_index (self->pages, (guint) gtk_list_box_row_get_index (row));
}

/* All words in one, as they are typed; NULL if there are none. */
static GRegex *
words_regex (GwHelp *self)
{
  g_autoptr (GString) pattern = g_string_new (NULL);

  for (guint i = 0; self->words[i] != NULL; i++)
    {
      g_autofree char *word = g_regex_escape_string (self->words[i], -1);

      g_string_append_printf (pattern, "%s%s", i > 0 ? "|" : "", word);
    }

  return pattern->len > 0 ? g_regex_new (pattern->str, G_REGEX_CASELESS, 0, NULL) : NULL;
}

/* What is searched for stands out, without a colour of its own. */
static char *
marked (const GRegex *regex,
        const char   *text,
        gboolean     *is_found)
{
  g_autoptr (GMatchInfo) match = NULL;
  GString *markup = g_string_new (NULL);
  int      from, to, done = 0;

  *is_found = FALSE;
  if (regex != NULL)
    for (g_regex_match (regex, text, 0, &match); g_match_info_matches (match);
         g_match_info_next (match, NULL))
      {
        g_autofree char *before = NULL, *found = NULL;

        g_match_info_fetch_pos (match, 0, &from, &to);
        before = g_markup_escape_text (text + done, from - done);
        found = g_markup_escape_text (text + from, to - from);
        g_string_append_printf (markup, "%s<b><u>%s</u></b>", before, found);
        done = to;
        *is_found = TRUE;
      }

  {
    g_autofree char *rest = g_markup_escape_text (text + done, -1);

    g_string_append (markup, rest);
  }
  return g_string_free (markup, FALSE);
}

static void
add_label (GwHelp       *self,
           const GRegex *regex,
           const char   *text,
           const char   *css_class,
           gboolean      is_heading)
{
  gboolean         is_found;
  g_autofree char *markup = marked (regex, text, &is_found);
  GtkWidget       *label =
    g_object_new (GTK_TYPE_LABEL, "label", markup, "use-markup", TRUE, "wrap", TRUE, "xalign", 0.0,
                  "max-width-chars", 76, "natural-wrap-mode", GTK_NATURAL_WRAP_NONE,
                  "accessible-role",
                  is_heading ? GTK_ACCESSIBLE_ROLE_HEADING : GTK_ACCESSIBLE_ROLE_LABEL, NULL);

  gtk_widget_set_halign (label, GTK_ALIGN_START);
  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (self->page, label);
  if (is_found && self->first == NULL)
    self->first = label;
}

static void
add_block (GwHelp            *self,
           const GRegex      *regex,
           const GwHelpBlock *block)
{
  static const char *const classes[] = {
    [GW_HELP_HEADING] = "heading", [GW_HELP_PARAGRAPH] = "paragraph", [GW_HELP_ENTRY] = "entry"
  };
  g_autofree char *entry = g_strconcat ("\342\200\242 ", block->text, NULL);

  add_label (self, regex, block->kind == GW_HELP_ENTRY ? entry : block->text, classes[block->kind],
             block->kind == GW_HELP_HEADING);
}

/* Frame by frame, until the labels have their places. */
static gboolean
scroll_cb (GtkWidget     *scroller,
           GdkFrameClock *clock,
           gpointer       data)
{
  GwHelp         *self = data;
  GtkAdjustment  *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  graphene_rect_t bounds;

  if (gtk_widget_get_height (self->first) == 0 ||
      !gtk_widget_compute_bounds (self->first, GTK_WIDGET (self->page), &bounds))
    return G_SOURCE_CONTINUE;

  gtk_adjustment_set_value (adjustment, (double) bounds.origin.y -
                                          gtk_adjustment_get_page_size (adjustment) / 4.0);
  self->tick = 0;
  return G_SOURCE_REMOVE;
}

static void
stop_scrolling (GwHelp *self)
{
  if (self->tick != 0)
    gtk_widget_remove_tick_callback (self->scroller, self->tick);
  self->tick = 0;
}

static void
show_page (GwHelp           *self,
           const GwHelpPage *page)
{
  GtkAdjustment *adjustment =
    gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->scroller));
  g_autoptr (GRegex) regex = words_regex (self);
  GtkWidget *child;

  stop_scrolling (self);
  self->first = NULL;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->page))) != NULL)
    gtk_box_remove (self->page, child);
  add_label (self, regex, page->title, "large", TRUE);
  for (guint i = 0; i < page->blocks->len; i++)
    add_block (self, regex, g_ptr_array_index (page->blocks, i));

  gtk_adjustment_set_value (adjustment, 0.0);
  if (self->first != NULL)
    self->tick = gtk_widget_add_tick_callback (self->scroller, scroll_cb, self, NULL);
  gw_access_name (GTK_WIDGET (self->scroller), page->title);
}

static void
row_selected_cb (GwHelp        *self,
                 GtkListBoxRow *row)
{
  if (row != NULL)
    show_page (self, page_of (self, row));
}

static gboolean
filter_cb (GtkListBoxRow *row,
           gpointer       data)
{
  GwHelp *self = data;

  return gw_help_page_has (page_of (self, row), (const char *const *) self->words);
}

/* The page that is shown stays if it is among those found; else the first of them is. */
static void
search_cb (GwHelp *self)
{
  GtkListBoxRow *chosen = gtk_list_box_get_selected_row (self->list), *row;
  GtkListBoxRow *found = NULL;

  g_strfreev (self->words);
  self->words = gw_help_words (gtk_editable_get_text (GTK_EDITABLE (self->search)));
  gtk_list_box_invalidate_filter (self->list);
  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    if (filter_cb (row, self) && (found == NULL || row == chosen))
      found = row;

  gtk_widget_set_visible (GTK_WIDGET (self->none), found == NULL);
  if (found == NULL)
    return;
  if (found != chosen)
    gtk_list_box_select_row (self->list, found);
  else
    show_page (self, page_of (self, found));
}

/* From the words to what they have found. */
static void
search_activated_cb (GwHelp *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);

  if (row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
}

/* What was typed on the list or the page is in the field already. */
static void
search_started_cb (GwHelp *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
  gtk_editable_set_position (GTK_EDITABLE (self->search), -1);
}

/* Escape leaves the search first, then the window. */
static void
search_stopped_cb (GwHelp *self)
{
  if (*gtk_editable_get_text (GTK_EDITABLE (self->search)) == '\0')
    {
      gtk_window_close (GTK_WINDOW (self));
      return;
    }

  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  search_activated_cb (self);
}

static void
read_page_cb (GwHelp *self)
{
  gtk_widget_grab_focus (self->scroller);
}

static gboolean
find_cb (GtkWidget *widget,
         GVariant  *arguments,
         gpointer   data)
{
  return gtk_widget_grab_focus (GTK_WIDGET (GW_HELP (widget)->search));
}

static void
gw_help_dispose (GObject *object)
{
  GwHelp *self = GW_HELP (object);

  if (self->scroller != NULL)
    stop_scrolling (self);
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_HELP);
  g_clear_pointer (&self->pages, g_ptr_array_unref);
  g_clear_pointer (&self->words, g_strfreev);

  G_OBJECT_CLASS (gw_help_parent_class)->dispose (object);
}

/* Arrows scroll the text as well, which has nothing to go through. */
static gboolean
text_key_cb (GwHelp         *self,
             guint           key,
             guint           code,
             GdkModifierType modifiers)
{
  gboolean is_done = FALSE;

  if (key == GDK_KEY_Up || key == GDK_KEY_Down)
    g_signal_emit_by_name (self->scroller, "scroll-child",
                           key == GDK_KEY_Up ? GTK_SCROLL_STEP_UP : GTK_SCROLL_STEP_DOWN, FALSE,
                           &is_done);
  return is_done;
}

static void
gw_help_class_init (GwHelpClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_help_dispose;
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_f, GDK_CONTROL_MASK, find_cb, NULL);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-help.ui");
  gtk_widget_class_bind_template_child (widget_class, GwHelp, search);
  gtk_widget_class_bind_template_child (widget_class, GwHelp, list);
  gtk_widget_class_bind_template_child (widget_class, GwHelp, page);
  gtk_widget_class_bind_template_child (widget_class, GwHelp, scroller);
  gtk_widget_class_bind_template_child (widget_class, GwHelp, none);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_started_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_stopped_cb);
  gtk_widget_class_bind_template_callback (widget_class, read_page_cb);
  gtk_widget_class_bind_template_callback (widget_class, text_key_cb);
}

static void
gw_help_init (GwHelp *self)
{
  self->pages = gw_help_pages ();
  self->words = gw_help_words ("");
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_search_entry_set_key_capture_widget (self->search, GTK_WIDGET (self));

  for (guint i = 0; i < self->pages->len; i++)
    {
      const GwHelpPage *page = g_ptr_array_index (self->pages, i);
      GtkWidget        *label = gtk_label_new (page->title);

      gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_list_box_append (self->list, label);
    }
  gtk_list_box_set_filter_func (self->list, filter_cb, self, NULL);
  gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, 0));
  gtk_window_set_focus (GTK_WINDOW (self),
                        GTK_WIDGET (gtk_list_box_get_row_at_index (self->list, 0)));
}

GwHelp *
gw_help_new (GtkApplication *application)
{
  return g_object_new (GW_TYPE_HELP, "application", application, NULL);
}

gboolean
gw_help_show_page (GwHelp     *self,
                   const char *id)
{
  g_return_val_if_fail (GW_IS_HELP (self), FALSE);

  for (guint i = 0; i < self->pages->len; i++)
    if (g_strcmp0 (((GwHelpPage *) g_ptr_array_index (self->pages, i))->id, id) == 0)
      {
        gtk_editable_set_text (GTK_EDITABLE (self->search), "");
        search_cb (self);
        gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, (int) i));
        return TRUE;
      }

  return FALSE;
}
