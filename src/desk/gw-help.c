/* gw-help.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-help.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-help-text.h"

struct _GwHelp
{
  GtkWindow parent_instance;

  GtkSearchEntry *search;
  GtkListBox     *list;
  GtkTextView    *text;
  GtkLabel       *none;

  GPtrArray  *pages; /* of GwHelpPage; the rows of the list are in the same order */
  char      **words;
  const char *shown; /* id of the page; NULL: none */
};

G_DEFINE_FINAL_TYPE (GwHelp, gw_help, GTK_TYPE_WINDOW)

static const GwHelpPage *
page_of (GwHelp        *self,
         GtkListBoxRow *row)
{
  return g_ptr_array_index (self->pages, (guint) gtk_list_box_row_get_index (row));
}

static void
add_block (GtkTextBuffer     *buffer,
           const GwHelpBlock *block)
{
  static const char *const tags[] = {
    [GW_HELP_HEADING] = "heading", [GW_HELP_PARAGRAPH] = "paragraph", [GW_HELP_ENTRY] = "entry"
  };
  g_autofree char *line =
    g_strdup_printf ("%s%s", block->kind == GW_HELP_ENTRY ? "\342\200\242 " : "", block->text);
  GtkTextIter end;

  gtk_text_buffer_get_end_iter (buffer, &end);
  gtk_text_buffer_insert (buffer, &end, "\n", -1);
  gtk_text_buffer_insert_with_tags_by_name (buffer, &end, line, -1, tags[block->kind], NULL);
}

/* Marks what is searched for; gives the place of the first. */
static gboolean
mark_words (GwHelp        *self,
            GtkTextBuffer *buffer,
            GtkTextIter   *first)
{
  gboolean is_found = FALSE;

  for (guint i = 0; self->words[i] != NULL; i++)
    {
      GtkTextIter at, from, to;

      gtk_text_buffer_get_start_iter (buffer, &at);
      while (gtk_text_iter_forward_search (&at, self->words[i], GTK_TEXT_SEARCH_CASE_INSENSITIVE,
                                           &from, &to, NULL))
        {
          gtk_text_buffer_apply_tag_by_name (buffer, "found", &from, &to);
          if (!is_found || gtk_text_iter_compare (&from, first) < 0)
            *first = from;
          is_found = TRUE;
          at = to;
        }
    }

  return is_found;
}

static void
show_page (GwHelp           *self,
           const GwHelpPage *page)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (self->text);
  GtkTextIter    at;

  self->shown = page->id;
  gtk_text_buffer_set_text (buffer, "", 0);
  gtk_text_buffer_get_start_iter (buffer, &at);
  gtk_text_buffer_insert_with_tags_by_name (buffer, &at, page->title, -1, "title", NULL);
  for (guint i = 0; i < page->blocks->len; i++)
    add_block (buffer, g_ptr_array_index (page->blocks, i));

  if (!mark_words (self, buffer, &at))
    gtk_text_buffer_get_start_iter (buffer, &at);
  gtk_text_buffer_place_cursor (buffer, &at);
  gtk_text_view_scroll_to_mark (self->text, gtk_text_buffer_get_insert (buffer), 0.1, FALSE, 0.0,
                                0.0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->text), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  page->title, -1);
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

static void
read_page_cb (GwHelp *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->text));
}

static void
make_tags (GtkTextBuffer *buffer)
{
  gtk_text_buffer_create_tag (buffer, "title", "weight", PANGO_WEIGHT_BOLD, "scale", 1.6,
                              "pixels-below-lines", 6, NULL);
  gtk_text_buffer_create_tag (buffer, "heading", "weight", PANGO_WEIGHT_BOLD, "scale", 1.1,
                              "pixels-above-lines", 14, "pixels-below-lines", 2, NULL);
  gtk_text_buffer_create_tag (buffer, "paragraph", "pixels-above-lines", 6, NULL);
  gtk_text_buffer_create_tag (buffer, "entry", "pixels-above-lines", 4, "left-margin", 18,
                              "indent", -12, NULL);
  gtk_text_buffer_create_tag (buffer, "found", "underline", PANGO_UNDERLINE_SINGLE, "weight",
                              PANGO_WEIGHT_BOLD, NULL);
}

static void
gw_help_dispose (GObject *object)
{
  GwHelp *self = GW_HELP (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_HELP);
  g_clear_pointer (&self->pages, g_ptr_array_unref);
  g_clear_pointer (&self->words, g_strfreev);

  G_OBJECT_CLASS (gw_help_parent_class)->dispose (object);
}

static void
gw_help_class_init (GwHelpClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_help_dispose;
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-help.ui");
  gtk_widget_class_bind_template_child (widget_class, GwHelp, search);
  gtk_widget_class_bind_template_child (widget_class, GwHelp, list);
  gtk_widget_class_bind_template_child (widget_class, GwHelp, text);
  gtk_widget_class_bind_template_child (widget_class, GwHelp, none);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, read_page_cb);
}

static void
gw_help_init (GwHelp *self)
{
  self->pages = gw_help_pages ();
  self->words = gw_help_words ("");
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_search_entry_set_key_capture_widget (self->search, GTK_WIDGET (self->list));
  make_tags (gtk_text_view_get_buffer (self->text));

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
