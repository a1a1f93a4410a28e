/* gw-table-view.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-table-view.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-access.h"
#include "desk/gw-direction.h"
#include "desk/gw-focus.h"
#include "desk/gw-table-item.h"

struct _GwTableView
{
  GtkWidget parent_instance;

  GtkWidget     *page, *tools;
  GtkDropDown   *kinds;
  GtkLabel      *option;
  GtkColumnView *view;

  GwDocument         *document;
  GwUnits             units;
  GwTableKind         kind;
  GwObjectTable      *table; /* on the screen */
  GListStore         *items; /* of GwTableItem, in the order of the table */
  GtkSingleSelection *selection;
  guint               update_id;
  gboolean            is_dirty;
};

G_DEFINE_FINAL_TYPE (GwTableView, gw_table_view, GTK_TYPE_WIDGET)

/* Cells: one factory a column, which knows which. */

static gboolean
is_number_column (const GwTableView *self,
                  guint              column)
{
  return self->table != NULL && column < self->table->columns->len &&
         ((GwTableColumn *) g_ptr_array_index (self->table->columns, column))->is_number;
}

static guint
column_of (gpointer factory)
{
  return GPOINTER_TO_UINT (g_object_get_data (factory, "column"));
}

static void
show_cell (GtkListItem *cell,
           guint        column)
{
  const GwTableRow *row = gw_table_item_get_row (gtk_list_item_get_item (cell));
  GtkLabel         *label = GTK_LABEL (gtk_list_item_get_child (cell));

  g_autofree char *number = NULL;
  const char      *text;

  if (row == NULL || column >= g_strv_length (row->cells))
    return;

  text = row->cells[column];
  if (gtk_widget_has_css_class (GTK_WIDGET (label), "number"))
    text = number = gw_direction_number (text);
  if (!g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *cell,
          gpointer                  data)
{
  const GwTableView *self = data;
  const gboolean     is_number = is_number_column (self, column_of (factory));
  GtkWidget         *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), is_number ? 1.0f : 0.0f);
  if (is_number)
    gtk_widget_add_css_class (label, "number");
  gtk_list_item_set_child (cell, label);
}

static void
changed_cb (GtkListItem *cell,
            GwTableItem *item)
{
  show_cell (cell, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (cell), "column")));
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *cell,
         gpointer                  data)
{
  g_object_set_data (G_OBJECT (cell), "column", GUINT_TO_POINTER (column_of (factory)));
  show_cell (cell, column_of (factory));
  g_signal_connect_swapped (gtk_list_item_get_item (cell), "changed", G_CALLBACK (changed_cb),
                            cell);
}

static void
unbind_cb (GtkSignalListItemFactory *factory,
           GtkListItem              *cell,
           gpointer                  data)
{
  g_signal_handlers_disconnect_by_func (gtk_list_item_get_item (cell), changed_cb, cell);
}

/* Packs the column and whether it holds numbers, so that comparing needs no view. */
static int
compare_cb (gconstpointer a,
            gconstpointer b,
            gpointer      data)
{
  const guint packed = GPOINTER_TO_UINT (data);

  return gw_table_item_compare ((GwTableItem *) a, (GwTableItem *) b, packed / 2, packed % 2 != 0);
}

static void
add_column (GwTableView *self,
            guint        i)
{
  const GwTableColumn *column = g_ptr_array_index (self->table->columns, i);
  GtkListItemFactory  *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) added = NULL;

  g_object_set_data (G_OBJECT (factory), "column", GUINT_TO_POINTER (i));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), self);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), self);
  added = gtk_column_view_column_new (column->title, factory);
  gtk_column_view_column_set_resizable (added, TRUE);
  if (self->table->is_sortable)
    {
      const guint packed = 2 * i + (column->is_number ? 1 : 0);
      g_autoptr (GtkSorter) sorter =
        GTK_SORTER (gtk_custom_sorter_new (compare_cb, GUINT_TO_POINTER (packed), NULL));

      gtk_column_view_column_set_sorter (added, sorter);
    }
  gtk_column_view_append_column (self->view, added);
}

/* The list inside is what takes the focus, and is the only child after the titles. */
static GtkWidget *
inner_list (GwTableView *self)
{
  return gtk_widget_get_last_child (GTK_WIDGET (self->view));
}

/* Titles stand over their numbers: GTK has no property for that. */
static void
align_titles (GwTableView *self)
{
  GtkWidget *titles = gtk_widget_get_first_child (GTK_WIDGET (self->view));
  GtkWidget *title = gtk_widget_get_first_child (titles);

  for (guint i = 0; title != NULL; i++, title = gtk_widget_get_next_sibling (title))
    {
      GtkWidget *inside = gtk_widget_get_first_child (title);

      if (inside != NULL && is_number_column (self, i))
        gtk_widget_set_halign (inside, GTK_ALIGN_END);
    }
}

static gboolean
has_same_columns (const GwObjectTable *a,
                  const GwObjectTable *b)
{
  if (a == NULL || a->kind != b->kind || a->columns->len != b->columns->len)
    return FALSE;
  for (guint i = 0; i < a->columns->len; i++)
    if (!g_str_equal (((GwTableColumn *) g_ptr_array_index (a->columns, i))->title,
                      ((GwTableColumn *) g_ptr_array_index (b->columns, i))->title))
      return FALSE;

  return TRUE;
}

static void
make_columns (GwTableView *self)
{
  GListModel *columns = gtk_column_view_get_columns (self->view);

  for (guint n = g_list_model_get_n_items (columns); n > 0; n--)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, n - 1);

      gtk_column_view_remove_column (self->view, column);
    }
  for (guint i = 0; i < self->table->columns->len; i++)
    add_column (self, i);
  align_titles (self);
}

/* Rows of the same records keep their items, and with them sort, focus and scrolling. */
static gboolean
has_same_rows (const GwObjectTable *a,
               const GwObjectTable *b)
{
  if (a->rows->len != b->rows->len)
    return FALSE;
  for (guint i = 0; i < a->rows->len; i++)
    if (g_strcmp0 (((GwTableRow *) g_ptr_array_index (a->rows, i))->path,
                   ((GwTableRow *) g_ptr_array_index (b->rows, i))->path) != 0)
      return FALSE;

  return TRUE;
}

static void
fill_items (GwTableView *self)
{
  const GPtrArray *rows = self->table->rows;
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; i < rows->len; i++)
    g_ptr_array_add (items, gw_table_item_new (g_ptr_array_index (rows, i)));
  g_list_store_splice (self->items, 0, g_list_model_get_n_items (G_LIST_MODEL (self->items)),
                       items->pdata, items->len);
}

static void
update_items (GwTableView         *self,
              const GwObjectTable *table)
{
  GtkSorter *sorter = gtk_column_view_get_sorter (self->view);

  for (guint i = 0; i < table->rows->len; i++)
    {
      g_autoptr (GwTableItem) item = g_list_model_get_item (G_LIST_MODEL (self->items), i);

      gw_table_item_set_row (item, g_ptr_array_index (table->rows, i));
    }
  if (sorter != NULL && table->is_sortable)
    gtk_sorter_changed (sorter, GTK_SORTER_CHANGE_DIFFERENT);
}

static void
take_table (GwTableView   *self,
            GwObjectTable *table)
{
  g_autoptr (GwObjectTable) before = self->table;
  const gboolean is_same = has_same_columns (before, table);

  self->table = table;
  if (is_same && has_same_rows (before, table))
    {
      update_items (self, table);
      return;
    }

  /* Nothing may point into the old table while columns come and go. */
  g_list_store_remove_all (self->items);
  if (!is_same)
    make_columns (self);
  fill_items (self);
}

/* The row of that record, or of one that holds it: a station's surface. */
static guint
find_row (GwTableView *self,
          const char  *path)
{
  GListModel *model = G_LIST_MODEL (self->selection);
  guint       found = GTK_INVALID_LIST_POSITION;

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (GwTableItem) item = g_list_model_get_item (model, i);
      const char *own = gw_table_item_get_row (item)->path;
      const gsize n = own != NULL ? strlen (own) : 0;

      if (n == 0 || strncmp (own, path, n) != 0)
        continue;
      if (path[n] == '\0')
        return i;
      if (path[n] == '/')
        found = i;
    }

  return found;
}

static void
follow_selection (GwTableView *self)
{
  guint position;

  if (self->document == NULL || self->table == NULL ||
      !gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;

  position = find_row (self, gw_document_get_selection (self->document));
  if (position == gtk_single_selection_get_selected (self->selection))
    return;
  gtk_single_selection_set_selected (self->selection, position);
  if (position != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (inner_list (self), "list.scroll-to-item", "u", position);
}

static GwObjectTable *
make_table (GwTableView *self)
{
  GwEvaluation *evaluation =
    self->document != NULL ? gw_document_get_evaluation (self->document) : NULL;

  if (evaluation == NULL)
    return NULL;

  return gw_object_table_new (evaluation, gw_document_get_shown (self->document), self->kind,
                              &self->units);
}

static void
name_parts (GwTableView *self)
{
  const char      *name = gw_table_kind_label (self->kind);
  g_autofree char *choice = g_strdup_printf (_ ("Table: %s"), name);

  gw_access_name (GTK_WIDGET (self->view), name);
  gw_access_name (inner_list (self), name);
  /* The button inside is what takes the focus. */
  gtk_accessible_update_property (
    GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (self->kinds))),
    GTK_ACCESSIBLE_PROPERTY_LABEL, choice, -1);
}

static void
update (GwTableView *self)
{
  GwObjectTable *table = make_table (self);
  const gboolean is_of_one = self->kind <= GW_TABLE_POINTS;

  self->is_dirty = FALSE;
  gtk_widget_set_visible (GTK_WIDGET (self->view), table != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "table.copy", table != NULL);
  name_parts (self);
  if (table == NULL)
    return;

  gtk_label_set_text (self->option,
                      is_of_one ? gw_evaluation_outcome (
                                    gw_document_get_evaluation (self->document),
                                    gw_document_get_shown (self->document))
                                    ->name
                                : _ ("all options"));
  take_table (self, table);
}

static gboolean
update_cb (gpointer data)
{
  GwTableView *self = data;

  self->update_id = 0;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      update (self);
      follow_selection (self);
    }
  return G_SOURCE_REMOVE;
}

static void
queue_update (GwTableView *self)
{
  self->is_dirty = TRUE;
  if (self->update_id == 0 && gtk_widget_get_mapped (GTK_WIDGET (self)))
    self->update_id = g_idle_add (update_cb, self);
}

static void
activate_cb (GwTableView *self,
             guint        position)
{
  g_autoptr (GwTableItem) item = g_list_model_get_item (G_LIST_MODEL (self->selection), position);
  const char *path = item != NULL ? gw_table_item_get_row (item)->path : NULL;

  if (path != NULL)
    gw_document_set_selection (self->document, path);
}

static void
selected_cb (GwTableView *self)
{
  const guint selected = gtk_drop_down_get_selected (self->kinds);

  gw_access_name_drop_down (self->kinds, _ ("Table"));
  if (selected < GW_N_TABLES)
    gw_table_view_set_kind (self, (GwTableKind) selected);
}

static void
copy_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  g_autofree char *text = gw_table_view_get_text (GW_TABLE_VIEW (widget));

  if (text != NULL)
    gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
}

static void
gw_table_view_map (GtkWidget *widget)
{
  GwTableView *self = GW_TABLE_VIEW (widget);

  if (self->is_dirty)
    update (self);
  GTK_WIDGET_CLASS (gw_table_view_parent_class)->map (widget);
  follow_selection (self);
}

static gboolean
gw_table_view_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (GW_TABLE_VIEW (widget)->view));
}

/* Tab leaves the rows: it would stop at every one of them otherwise. */
static gboolean
gw_table_view_focus (GtkWidget       *widget,
                     GtkDirectionType direction)
{
  GwTableView *self = GW_TABLE_VIEW (widget);

  if (gw_focus_is_within (GTK_WIDGET (self->view)))
    {
      if (direction == GTK_DIR_TAB_FORWARD)
        return FALSE;
      if (direction == GTK_DIR_TAB_BACKWARD)
        return gtk_widget_child_focus (self->tools, direction);
    }

  return gtk_widget_child_focus (self->page, direction);
}

static void
gw_table_view_dispose (GObject *object)
{
  GwTableView *self = GW_TABLE_VIEW (object);

  g_clear_handle_id (&self->update_id, g_source_remove);
  gw_document_unfollow (&self->document, self);
  if (self->items != NULL)
    g_list_store_remove_all (self->items);
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_TABLE_VIEW);
  g_clear_object (&self->selection);
  g_clear_object (&self->items);
  g_clear_pointer (&self->table, gw_object_table_free);

  G_OBJECT_CLASS (gw_table_view_parent_class)->dispose (object);
}

static void
gw_table_view_class_init (GwTableViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_table_view_dispose;
  widget_class->map = gw_table_view_map;
  widget_class->focus = gw_table_view_focus;
  widget_class->grab_focus = gw_table_view_grab_focus;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "tableview");
  gtk_widget_class_install_action (widget_class, "table.copy", NULL, copy_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK, "table.copy",
                                       NULL);

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-table-view.ui");
  gtk_widget_class_bind_template_child (widget_class, GwTableView, page);
  gtk_widget_class_bind_template_child (widget_class, GwTableView, tools);
  gtk_widget_class_bind_template_child (widget_class, GwTableView, kinds);
  gtk_widget_class_bind_template_child (widget_class, GwTableView, option);
  gtk_widget_class_bind_template_child (widget_class, GwTableView, view);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
}

static void
fill_kinds (GwTableView *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  for (guint i = 0; i < GW_N_TABLES; i++)
    gtk_string_list_append (list, gw_table_kind_label ((GwTableKind) i));
  gtk_drop_down_set_model (self->kinds, G_LIST_MODEL (list));
}

static void
gw_table_view_init (GwTableView *self)
{
  GtkSortListModel *sorted;

  self->units = *gw_units_standard ();
  self->is_dirty = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));

  self->items = g_list_store_new (GW_TYPE_TABLE_ITEM);
  sorted =
    gtk_sort_list_model_new (G_LIST_MODEL (g_object_ref (self->items)),
                             g_object_ref (gtk_column_view_get_sorter (self->view)));
  self->selection = gtk_single_selection_new (G_LIST_MODEL (sorted));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_selected (self->selection, GTK_INVALID_LIST_POSITION);
  gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (self->selection));
  fill_kinds (self);
  gw_access_name_drop_down (self->kinds, _ ("Table"));
  /* The view is made of the row of titles and the list below it. */
  gw_access_name (gtk_widget_get_first_child (GTK_WIDGET (self->view)),
                  _ ("Titles of the columns"));
  gw_access_name (gtk_widget_get_last_child (GTK_WIDGET (self->view)), _ ("Rows of the table"));
}

GtkWidget *
gw_table_view_new (void)
{
  return g_object_new (GW_TYPE_TABLE_VIEW, NULL);
}

void
gw_table_view_set_document (GwTableView *self,
                            GwDocument  *document)
{
  g_return_if_fail (GW_IS_TABLE_VIEW (self));

  if (gw_document_follow (&self->document, document, self, G_CALLBACK (queue_update),
                          G_CALLBACK (queue_update), G_CALLBACK (follow_selection)))
    queue_update (self);
}

void
gw_table_view_set_units (GwTableView   *self,
                         const GwUnits *units)
{
  g_return_if_fail (GW_IS_TABLE_VIEW (self));

  self->units = *units;
  queue_update (self);
}

GwTableKind
gw_table_view_get_kind (GwTableView *self)
{
  g_return_val_if_fail (GW_IS_TABLE_VIEW (self), GW_TABLE_THINGS);

  return self->kind;
}

void
gw_table_view_set_kind (GwTableView *self,
                        GwTableKind  kind)
{
  g_return_if_fail (GW_IS_TABLE_VIEW (self));
  g_return_if_fail (kind < GW_N_TABLES);

  if (self->kind == kind)
    return;

  self->kind = kind;
  gtk_drop_down_set_selected (self->kinds, kind);
  queue_update (self);
}

char *
gw_table_view_get_text (GwTableView *self)
{
  g_autoptr (GwObjectTable) table = NULL;

  g_return_val_if_fail (GW_IS_TABLE_VIEW (self), NULL);

  table = make_table (self);
  return table != NULL ? gw_object_table_text (table) : NULL;
}
