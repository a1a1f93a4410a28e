/* gw-chooser.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-chooser.h"
#include "desk/gw-access.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-chooser-row.h"
#include "desk/gw-reveal.h"

#define MOST_WITHOUT_SEARCH 10 /* rows that are found at a glance */

struct _GwChooser
{
  GtkWidget parent_instance;

  GtkWidget         *button;
  GtkLabel          *value;
  GtkPopover        *popover;
  GtkSearchEntry    *search;
  GtkScrolledWindow *scroller;
  GtkListBox        *list;
  GtkLabel          *note;

  char    *label;
  char    *id;        /* the present one */
  char    *looked_at; /* what was last said by "preview" */
  double   pointer_y; /* where the pointer last was, to tell a move from rows that come to it */
  gboolean is_filling;
  gboolean is_taken;
};

G_DEFINE_FINAL_TYPE (GwChooser, gw_chooser, GTK_TYPE_WIDGET)

enum
{
  OPENING,
  PREVIEW,
  TAKEN,
  LEFT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
look_at (GwChooser     *self,
         GtkListBoxRow *row)
{
  const char *id = row != NULL ? gw_chooser_row_get_id (GW_CHOOSER_ROW (row)) : NULL;

  if (self->is_filling || g_strcmp0 (id, self->looked_at) == 0)
    return;

  g_free (self->looked_at);
  self->looked_at = g_strdup (id);
  gw_chooser_set_note (self, NULL);
  g_signal_emit (self, signals[PREVIEW], 0, id);
}

static void
row_selected_cb (GwChooser     *self,
                 GtkListBoxRow *row)
{
  look_at (self, row);
}

static void
row_activated_cb (GwChooser     *self,
                  GtkListBoxRow *row)
{
  g_autofree char *id = g_strdup (gw_chooser_row_get_id (GW_CHOOSER_ROW (row)));

  self->is_taken = TRUE;
  gtk_popover_popdown (self->popover);
  g_signal_emit (self, signals[TAKEN], 0, id);
}

static void
motion_cb (GwChooser *self,
           double     x,
           double     y)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_y (self->list, (int) y);
  double         root_x, root_y;

  /* Rows that pass under a resting pointer are not looked at. */
  gtk_widget_translate_coordinates (GTK_WIDGET (self->list), GTK_WIDGET (self->popover), x, y,
                                    &root_x, &root_y);
  if (root_y == self->pointer_y || isnan (self->pointer_y))
    {
      self->pointer_y = root_y;
      return;
    }

  self->pointer_y = root_y;
  if (row != NULL)
    look_at (self, row);
}

static void
pointer_left_cb (GwChooser *self)
{
  look_at (self, gtk_list_box_get_selected_row (self->list));
}

static GtkListBoxRow *
first_row (GwChooser *self)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    if (gtk_widget_get_child_visible (GTK_WIDGET (row)))
      return row;

  return NULL;
}

/* The row that is looked at may have been filtered away. */
static GtkListBoxRow *
row_in_sight (GwChooser *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);

  return row != NULL && gtk_widget_get_child_visible (GTK_WIDGET (row)) ? row : first_row (self);
}

static GtkListBoxRow *
find_row (GwChooser  *self,
          const char *id)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    if (g_strcmp0 (gw_chooser_row_get_id (GW_CHOOSER_ROW (row)), id) == 0)
      return row;

  return NULL;
}

static const char *
typed (GwChooser *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->search));
}

/* What fits best stands first and is looked at; without a word, the present one is. */
static void
search_changed_cb (GwChooser *self)
{
  gtk_list_box_invalidate_sort (self->list);
  gtk_list_box_invalidate_filter (self->list);
  if (self->is_filling)
    return;

  gtk_list_box_select_row (self->list, *typed (self) != '\0' ? first_row (self)
                                                             : find_row (self, self->id));
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0.0);
}

/* From the first letter on all keys are meant for the search: a row would take the blanks. */
static void
search_started_cb (GwChooser *self)
{
  gtk_text_grab_focus_without_selecting (
    GTK_TEXT (gtk_editable_get_delegate (GTK_EDITABLE (self->search))));
}

static void
search_activate_cb (GwChooser *self)
{
  GtkListBoxRow *row = row_in_sight (self);

  if (row != NULL)
    row_activated_cb (self, row);
}

static gboolean
search_key_cb (GwChooser *self,
               guint      key)
{
  GtkListBoxRow *row = row_in_sight (self);

  if ((key != GDK_KEY_Down && key != GDK_KEY_KP_Down) || row == NULL)
    return GDK_EVENT_PROPAGATE;

  gtk_widget_grab_focus (GTK_WIDGET (row));
  return GDK_EVENT_STOP;
}

static void
stop_search_cb (GwChooser *self)
{
  gtk_popover_popdown (self->popover);
}

static gboolean
matches (GtkListBoxRow *row,
         gpointer       data)
{
  return gw_chooser_row_matches (GW_CHOOSER_ROW (row), typed (data));
}

static int
compare (GtkListBoxRow *a,
         GtkListBoxRow *b,
         gpointer       data)
{
  return gw_chooser_row_compare (GW_CHOOSER_ROW (a), GW_CHOOSER_ROW (b), typed (data));
}

static void
put_heading (GtkListBoxRow *row,
             GtkListBoxRow *before,
             gpointer       data)
{
  const char *group = gw_chooser_row_get_group (GW_CHOOSER_ROW (row));
  GtkWidget  *heading;

  if (group == NULL ||
      (before != NULL &&
       g_strcmp0 (group, gw_chooser_row_get_group (GW_CHOOSER_ROW (before))) == 0))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }

  heading = gtk_label_new (group);
  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_widget_add_css_class (heading, "heading");
  gtk_list_box_row_set_header (row, heading);
}

static void
open_cb (GtkMenuButton *button,
         gpointer       data)
{
  GwChooser *self = data;

  self->is_taken = FALSE;
  self->pointer_y = -1.0;
  self->is_filling = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  g_signal_emit (self, signals[OPENING], 0);
  gtk_list_box_select_row (self->list, find_row (self, self->id));
  self->is_filling = FALSE;
  g_free (self->looked_at);
  self->looked_at = g_strdup (self->id);
}

static void
shown_cb (GwChooser *self)
{
  GtkListBoxRow *row = row_in_sight (self);

  if (row == NULL)
    return;

  gtk_widget_grab_focus (GTK_WIDGET (row));
  gw_reveal (self->scroller, GTK_WIDGET (row));
}

static void
closed_cb (GwChooser *self)
{
  g_clear_pointer (&self->looked_at, g_free);
  gw_chooser_set_note (self, NULL);
  if (!self->is_taken)
    g_signal_emit (self, signals[LEFT], 0);
}

static gboolean
gw_chooser_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (gw_chooser_get_button (GW_CHOOSER (widget)));
}

/* GTK 4.8 would keep a popover for ever whose window goes while it is open. */
static void
gw_chooser_unmap (GtkWidget *widget)
{
  gtk_popover_popdown (GW_CHOOSER (widget)->popover);

  GTK_WIDGET_CLASS (gw_chooser_parent_class)->unmap (widget);
}

static void
gw_chooser_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_CHOOSER);

  G_OBJECT_CLASS (gw_chooser_parent_class)->dispose (object);
}

static void
gw_chooser_finalize (GObject *object)
{
  GwChooser *self = GW_CHOOSER (object);

  g_free (self->label);
  g_free (self->id);
  g_free (self->looked_at);

  G_OBJECT_CLASS (gw_chooser_parent_class)->finalize (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-chooser.ui");
  gtk_widget_class_bind_template_child (widget_class, GwChooser, button);
  gtk_widget_class_bind_template_child (widget_class, GwChooser, value);
  gtk_widget_class_bind_template_child (widget_class, GwChooser, popover);
  gtk_widget_class_bind_template_child (widget_class, GwChooser, search);
  gtk_widget_class_bind_template_child (widget_class, GwChooser, scroller);
  gtk_widget_class_bind_template_child (widget_class, GwChooser, list);
  gtk_widget_class_bind_template_child (widget_class, GwChooser, note);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, motion_cb);
  gtk_widget_class_bind_template_callback (widget_class, pointer_left_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_started_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_key_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_search_cb);
  gtk_widget_class_bind_template_callback (widget_class, shown_cb);
  gtk_widget_class_bind_template_callback (widget_class, closed_cb);
}

static void
gw_chooser_class_init (GwChooserClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_chooser_dispose;
  G_OBJECT_CLASS (klass)->finalize = gw_chooser_finalize;
  widget_class->grab_focus = gw_chooser_grab_focus;
  widget_class->unmap = gw_chooser_unmap;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "chooser");
  bind_template (widget_class);

  signals[OPENING] = g_signal_new ("opening", GW_TYPE_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  signals[PREVIEW] = g_signal_new ("preview", GW_TYPE_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[TAKEN] = g_signal_new ("taken", GW_TYPE_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[LEFT] = g_signal_new ("left", GW_TYPE_CHOOSER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
gw_chooser_init (GwChooser *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  /* The button would centre its value. */
  gtk_widget_set_halign (gtk_widget_get_parent (GTK_WIDGET (self->value)), GTK_ALIGN_FILL);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->button), open_cb, self, NULL);
  gtk_list_box_set_filter_func (self->list, matches, self, NULL);
  gtk_list_box_set_sort_func (self->list, compare, self, NULL);
  gtk_list_box_set_header_func (self->list, put_heading, NULL, NULL);
}

GtkWidget *
gw_chooser_new (void)
{
  return g_object_new (GW_TYPE_CHOOSER, NULL);
}

GtkWidget *
gw_chooser_get_button (GwChooser *self)
{
  return gtk_widget_get_first_child (self->button);
}

static void
name_button (GwChooser *self)
{
  /* Translators: what is chosen and what it is now, read aloud: "Filament: foaming PLA" */
  g_autofree char *name = g_strdup_printf (_ ("%s: %s"), self->label != NULL ? self->label : "",
                                           gtk_label_get_text (self->value));

  gw_access_name (gw_chooser_get_button (self), name);
}

void
gw_chooser_set_label (GwChooser  *self,
                      const char *label)
{
  g_free (self->label);
  self->label = g_strdup (label);
  gw_access_name (GTK_WIDGET (self->list), label);
  gw_access_name (GTK_WIDGET (self->scroller), label);
  name_button (self);
}

void
gw_chooser_set_value (GwChooser  *self,
                      const char *id,
                      const char *text)
{
  if (g_strcmp0 (id, self->id) == 0 && g_strcmp0 (text, gtk_label_get_text (self->value)) == 0)
    return;

  g_free (self->id);
  self->id = g_strdup (id);
  gtk_label_set_text (self->value, text);
  name_button (self);
}

void
gw_chooser_set_items (GwChooser *self,
                      GPtrArray *items)
{
  const gboolean was_filling = self->is_filling;
  GtkListBoxRow *row;

  self->is_filling = TRUE;
  while ((row = gtk_list_box_get_row_at_index (self->list, 0)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));

  for (guint i = 0; i < items->len; i++)
    gtk_list_box_append (self->list, gw_chooser_row_new (g_ptr_array_index (items, i), i));

  gtk_widget_set_visible (GTK_WIDGET (self->search), items->len > MOST_WITHOUT_SEARCH);
  gtk_search_entry_set_key_capture_widget (
    self->search, items->len > MOST_WITHOUT_SEARCH ? GTK_WIDGET (self->list) : NULL);
  g_ptr_array_free (items, TRUE); /* the rows have taken what it held */
  self->is_filling = was_filling;
}

void
gw_chooser_set_note (GwChooser  *self,
                     const char *note)
{
  gtk_label_set_text (self->note, note != NULL ? note : "");
  gtk_widget_set_visible (GTK_WIDGET (self->note), note != NULL);
}

void
gw_chooser_set_briefs (GwChooser  *self,
                       GHashTable *briefs)
{
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)) != NULL; i++)
    {
      const char *brief =
        g_hash_table_lookup (briefs, gw_chooser_row_get_id (GW_CHOOSER_ROW (row)));

      if (brief != NULL)
        gw_chooser_row_set_brief (GW_CHOOSER_ROW (row), brief);
    }
}

void
gw_chooser_set_effect (GwChooser  *self,
                       const char *id,
                       const char *effect)
{
  GtkListBoxRow *row = find_row (self, id);

  if (row != NULL)
    gw_chooser_row_set_effect (GW_CHOOSER_ROW (row), effect);
}
