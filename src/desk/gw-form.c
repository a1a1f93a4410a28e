/* gw-form.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "desk/gw-focus.h"
#include "desk/gw-form-candidates.h"
#include "desk/gw-form-field.h"
#include "desk/gw-form-words.h"
#include "study/gw-edit.h"

#define BETWEEN " \302\267 " /* U+00B7 */

struct _GwForm
{
  GtkWidget parent_instance;

  GtkWidget         *page;
  GtkScrolledWindow *scroller;
  GtkWidget         *back;
  GtkLabel          *title, *kind;
  GtkWidget         *scope;
  GtkToggleButton   *all_button, *here_button;
  GtkLabel          *except;
  GtkBox            *fields, *effects;
  GtkLabel          *help;

  GwDocument *document;
  GwFormSite *site;
  GHashTable *rows;    /* path of a field: its widget */
  gboolean    is_busy; /* at work on the rows: changes that come from that are no news */
};

G_DEFINE_FINAL_TYPE (GwForm, gw_form, GTK_TYPE_WIDGET)

static GtkWidget *
make_heading (const GwField *field)
{
  GtkWidget *heading = gtk_label_new (gw_form_label (field));

  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_widget_set_tooltip_text (heading, g_dgettext (GETTEXT_PACKAGE, field->help));
  gtk_widget_add_css_class (heading, "heading");
  return heading;
}

/* Of a build only the construction that is chosen is read. */
static gboolean
is_read (GwRecord      *record,
         const GwField *field)
{
  const GwField *construction;
  const char    *chosen;

  if (field->kind != GW_FIELD_PART || record->type != gw_study_build_type ())
    return TRUE;

  construction = gw_record_type_field (record->type, "construction");
  chosen = construction->choices[*(int *) gw_record_at (record, construction)].key;
  for (const char *a = field->key, *b = chosen;; a++, b++)
    {
      /* "hot_wired_core" in the table is "hot-wired-core" as a word. */
      if (*a != (*b == '-' ? '_' : *b))
        return FALSE;
      if (*a == '\0')
        return TRUE;
    }
}

/* The id stands in the heading; of the whole study the left drawer has the lists. */
static gboolean
is_wanted (GwRecord      *record,
           const GwField *field)
{
  const gboolean is_study = record->type == gw_study_root_type ();

  if (field->kind == GW_FIELD_ID || !is_read (record, field))
    return FALSE;
  if (field->kind == GW_FIELD_NUMBER && field->least == field->most)
    return FALSE;
  if (field->kind == GW_FIELD_REF && !gw_form_has_candidates (record, field))
    return FALSE;

  return !is_study || (field->kind != GW_FIELD_LIST && field->kind != GW_FIELD_PART);
}

/* What a walk through the record leaves behind. */
typedef struct
{
  GwForm     *form;
  GtkWidget  *last; /* the row before the next */
  GHashTable *kept; /* paths that are still wanted */
  gboolean    has_own;
} Walk;

/* The row for that path, there already or new, in its place. */
static GtkWidget *
place_row (Walk          *walk,
           const char    *path,
           const GwField *field)
{
  GwForm    *self = walk->form;
  GtkWidget *row = g_hash_table_lookup (self->rows, path);

  if (row == NULL)
    {
      row = field->kind == GW_FIELD_PART ? make_heading (field)
                                         : gw_form_field_new (self->site, path, field);
      g_hash_table_insert (self->rows, g_strdup (path), row);
      gtk_box_insert_child_after (self->fields, row, walk->last);
    }

  g_hash_table_add (walk->kept, g_strdup (path));
  walk->last = row;
  return row;
}

/* The study as one option has it has no baseline and no other options. */
static GwRecord *
holder (Walk       *walk,
        GwRecord   *record,
        const char *path)
{
  if (record->type != gw_study_root_type () || gw_form_site_can_differ (path))
    return record;

  return &gw_form_site_get_study (walk->form->site)->record;
}

static void
walk_record (Walk       *walk,
             GwRecord   *record,
             const char *path)
{
  for (guint i = 0; i < record->type->n_fields; i++)
    {
      const GwField   *field = &record->type->fields[i];
      g_autofree char *here = *path != '\0' ? g_strdup_printf ("%s/%s", path, field->key)
                                            : g_strdup (field->key);
      GtkWidget       *row;

      if (!is_wanted (record, field))
        continue;

      row = place_row (walk, here, field);
      if (field->kind == GW_FIELD_PART)
        walk_record (walk, *(GwRecord **) gw_record_at (record, field), here);
      else
        {
          gw_form_field_update (GW_FORM_FIELD (row), holder (walk, record, here));
          walk->has_own |= gw_form_field_is_own (GW_FORM_FIELD (row));
        }
    }
}

static void
remove_rows (GwForm     *self,
             GHashTable *kept)
{
  GHashTableIter iter;
  gpointer       path, row;

  g_hash_table_iter_init (&iter, self->rows);
  while (g_hash_table_iter_next (&iter, &path, &row))
    if (kept == NULL || !g_hash_table_contains (kept, path))
      {
        gtk_box_remove (self->fields, row);
        g_hash_table_iter_remove (&iter);
      }
}

static void
set_label (GtkLabel   *label,
           const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text) == 0)
    return;

  gtk_label_set_text (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
}

/* No name, however long, shall make the drawer wider; newer GTK lets go of that with the label. */
static void
label_button (GtkWidget  *widget,
              const char *label)
{
  GtkButton *button = GTK_BUTTON (widget);

  if (g_strcmp0 (gtk_button_get_label (button), label) == 0)
    return;

  gtk_button_set_label (button, label);
  gtk_label_set_ellipsize (GTK_LABEL (gtk_button_get_child (button)), PANGO_ELLIPSIZE_END);
}

static const char *
shown_name (GwForm *self)
{
  GwStudy             *study = gw_form_site_get_study (self->site);
  const GwStudyOption *option =
    g_ptr_array_index (study->options, gw_form_site_get_shown (self->site));

  return option->short_name != NULL ? option->short_name
         : option->name != NULL     ? option->name
                                    : option->id;
}

/* "Equipment · battery · only in Core": a change here is one of that option, whoever it is meant
 * for. */
static char *
own_text (GwForm     *self,
          const char *text)
{
  g_autofree char *only = g_strdup_printf (_ ("only in %s"), shown_name (self));

  return *text != '\0' ? g_strconcat (text, BETWEEN, only, NULL) : g_steal_pointer (&only);
}

/* Capitals apart. */
static gboolean
begins_with_word (const char *text,
                  const char *word)
{
  g_autofree char *a = g_utf8_casefold (text, -1), *b = g_utf8_casefold (word, -1);

  return g_str_has_prefix (a, b);
}

static void
update_heading (GwForm     *self,
                GwRecord   *record,
                const char *path)
{
  GwStudy         *study = gw_form_site_get_view (self->site, path);
  const char      *kind = g_dgettext (GETTEXT_PACKAGE, record->type->label);
  const char      *id = gw_record_id (record);
  g_autofree char *title = gw_form_record_title (study, path);
  g_autofree char *owner = gw_form_owner (path);
  /* A thing without a name is called after its kind already. */
  const gboolean is_named = !begins_with_word (title, kind);
  /* And an id that says no more than kind or title is not worth a word. */
  const gboolean has_id =
    id != NULL && !begins_with_word (kind, id) && !begins_with_word (title, id);
  g_autofree char *text = is_named && has_id ? g_strconcat (kind, BETWEEN, id, NULL)
                                             : g_strdup (is_named ? kind : "");

  set_label (self->title, title);
  if (gw_form_site_is_in_own_list (self->site, path))
    {
      g_autofree char *own = own_text (self, text);

      set_label (self->kind, own);
    }
  else
    set_label (self->kind, text);
  gtk_widget_set_visible (self->back, owner != NULL);
  if (owner != NULL)
    {
      g_autofree char *name = gw_form_record_title (study, owner);
      g_autofree char *back = g_strdup_printf (_ ("Back to %s"), name);

      label_button (self->back, back);
    }
}

static void
update_scope (GwForm     *self,
              const char *path)
{
  g_autofree char *text = g_strdup_printf (_ ("Only %s"), shown_name (self));

  gtk_widget_set_visible (self->scope, gw_form_site_can_differ (path));
  label_button (GTK_WIDGET (self->here_button), text);
}

/* A change meant for all would pass by the option that is shown. */
static void
update_except (GwForm  *self,
               gboolean has_own)
{
  const gboolean   is_shown = has_own && !gw_document_get_only_here (self->document);
  g_autofree char *text = NULL;

  if (is_shown)
    /* Translators: below "All options"; the name of the option that is shown */
    text = g_strdup_printf (_ ("Except what %s has of its own"), shown_name (self));
  set_label (self->except, is_shown ? text : "");
}

static void
update_rows (GwForm     *self,
             GwRecord   *record,
             const char *path)
{
  g_autoptr (GHashTable) kept = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Walk walk = { self, NULL, kept, FALSE };

  walk_record (&walk, record, path);
  remove_rows (self, kept);
  update_except (self, walk.has_own);
}

static void
update (GwForm *self)
{
  const gboolean has_any = gw_form_site_refresh (self->site);
  const char    *path = has_any ? gw_document_get_selection (self->document) : "";
  GwRecord      *record = has_any ? gw_form_site_record (self->site, path) : NULL;

  gtk_widget_set_visible (self->page, record != NULL);
  if (self->is_busy)
    return;

  self->is_busy = TRUE;
  if (record == NULL)
    remove_rows (self, NULL);
  else
    {
      update_heading (self, record, path);
      update_scope (self, path);
      update_rows (self, record, path);
    }
  self->is_busy = FALSE;
}

/* Ends what is under way in the rows that are about to show something else. */
static void
settle (GwForm *self)
{
  g_autolist (GtkWidget) rows = g_hash_table_get_values (self->rows);

  /* What one of them ends may take others away. */
  for (GList *l = rows; l != NULL; l = l->next)
    g_object_ref (l->data);
  for (GList *l = rows; l != NULL; l = l->next)
    if (GW_IS_FORM_FIELD (l->data) && gtk_widget_get_parent (l->data) != NULL)
      gw_form_field_settle (l->data);
}

static void
looked_at_cb (GwForm *self)
{
  settle (self);
  update (self);
}

/* Where the last thing was left tells nothing of the next one. */
static void
show_heading (GwForm *self)
{
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0.0);
}

/* Its fields begin at the top; if the focus was in those that go, it goes on in these. */
static void
selection_cb (GwForm *self)
{
  const gboolean had_focus = gw_focus_is_within (GTK_WIDGET (self->scroller));

  looked_at_cb (self);
  show_heading (self);
  gw_form_site_show_help (self->site, NULL);
  if (had_focus)
    gtk_widget_child_focus (GTK_WIDGET (self->fields), GTK_DIR_TAB_FORWARD);
}

static void
help_cb (GwForm     *self,
         const char *help)
{
  gtk_label_set_text (self->help, help != NULL ? help : "");
  gtk_widget_set_visible (GTK_WIDGET (self->help), help != NULL && *help != '\0');
}

static void
back_cb (GwForm *self)
{
  g_autofree char *owner =
    self->document != NULL ? gw_form_owner (gw_document_get_selection (self->document)) : NULL;

  if (owner != NULL)
    gw_document_set_selection (self->document, owner);
}

static void
scope_cb (GwForm *self)
{
  if (self->document != NULL)
    {
      gw_document_set_only_here (self->document, gtk_toggle_button_get_active (self->here_button));
      update (self);
    }
}

static void
gw_form_dispose (GObject *object)
{
  GwForm *self = GW_FORM (object);

  gw_form_set_document (self, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), GW_TYPE_FORM);

  G_OBJECT_CLASS (gw_form_parent_class)->dispose (object);
}

static void
gw_form_finalize (GObject *object)
{
  GwForm *self = GW_FORM (object);

  g_hash_table_unref (self->rows);
  g_signal_handlers_disconnect_by_data (self->site, self);
  g_object_unref (self->site);

  G_OBJECT_CLASS (gw_form_parent_class)->finalize (object);
}

static void
gw_form_class_init (GwFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = gw_form_finalize;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "form");
  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-form.ui");
  gtk_widget_class_bind_template_child (widget_class, GwForm, page);
  gtk_widget_class_bind_template_child (widget_class, GwForm, scroller);
  gtk_widget_class_bind_template_child (widget_class, GwForm, back);
  gtk_widget_class_bind_template_child (widget_class, GwForm, title);
  gtk_widget_class_bind_template_child (widget_class, GwForm, kind);
  gtk_widget_class_bind_template_child (widget_class, GwForm, scope);
  gtk_widget_class_bind_template_child (widget_class, GwForm, all_button);
  gtk_widget_class_bind_template_child (widget_class, GwForm, here_button);
  gtk_widget_class_bind_template_child (widget_class, GwForm, except);
  gtk_widget_class_bind_template_child (widget_class, GwForm, fields);
  gtk_widget_class_bind_template_child (widget_class, GwForm, effects);
  gtk_widget_class_bind_template_child (widget_class, GwForm, help);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
  gtk_widget_class_bind_template_callback (widget_class, scope_cb);
}

static void
gw_form_init (GwForm *self)
{
  self->site = gw_form_site_new ();
  self->rows = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
  /* Until something is selected; nobody sees them then, but they can be met. */
  label_button (self->back, _ ("Back"));
  label_button (GTK_WIDGET (self->here_button), _ ("Only this option"));
  g_signal_connect_swapped (self->site, "help", G_CALLBACK (help_cb), self);
}

GtkWidget *
gw_form_new (void)
{
  return g_object_new (GW_TYPE_FORM, NULL);
}

void
gw_form_set_document (GwForm     *self,
                      GwDocument *document)
{
  g_return_if_fail (GW_IS_FORM (self));

  if (self->document == document)
    return;

  settle (self);
  gw_document_follow (&self->document, document, self, G_CALLBACK (update),
                      G_CALLBACK (looked_at_cb), G_CALLBACK (selection_cb));
  gw_form_site_set_document (self->site, document);
  remove_rows (self, NULL);
  update (self);
  show_heading (self);
}

void
gw_form_set_units (GwForm        *self,
                   const GwUnits *units)
{
  g_return_if_fail (GW_IS_FORM (self));

  if (memcmp (gw_form_site_get_units (self->site), units, sizeof *units) == 0)
    return;

  settle (self);
  gw_form_site_set_units (self->site, units);
  remove_rows (self, NULL);
  update (self);
}

GtkBox *
gw_form_get_effects_box (GwForm *self)
{
  g_return_val_if_fail (GW_IS_FORM (self), NULL);

  return self->effects;
}

void
gw_form_focus_field (GwForm     *self,
                     const char *key)
{
  g_autofree char *path = NULL;
  GtkWidget       *row;

  g_return_if_fail (GW_IS_FORM (self));

  if (self->document == NULL)
    return;

  path = g_strdup_printf ("%s/%s", gw_document_get_selection (self->document), key);
  row = g_hash_table_lookup (self->rows, path);
  gtk_widget_child_focus (row != NULL ? row : GTK_WIDGET (self->fields), GTK_DIR_TAB_FORWARD);
}
