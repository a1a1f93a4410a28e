/* gw-derivation-fold.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-derivation-fold.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-access.h"

#define LONG_SECTION 20 /* rows above which it begins folded */

/* The widgets of one row. */
typedef struct
{
  GtkWidget *top; /* a button if the row has a path */
  GtkLabel  *label, *value, *detail;
  char      *path;
} Row;

#define LONG_VALUE 30 /* characters that no number has */

struct _GwDerivationFold
{
  GtkWidget parent_instance;

  GtkWidget *expander, *box, *rows_box;
  GtkLabel  *text, *source;
  GPtrArray *rows; /* of Row */

  const GwDerivationSection *section;
};

G_DEFINE_FINAL_TYPE (GwDerivationFold, gw_derivation_fold, GTK_TYPE_WIDGET)

enum
{
  SELECT,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static void
row_free (Row *row)
{
  g_free (row->path);
  g_free (row);
}

static GtkLabel *
label_new (const char *class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (class != NULL)
    gtk_widget_add_css_class (label, class);
  return GTK_LABEL (label);
}

/* A text that is not there takes no room. */
static void
show_text (GtkLabel   *label,
           const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text != NULL ? text : "") != 0)
    gtk_label_set_text (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static void
row_clicked_cb (GtkWidget *button,
                gpointer   data)
{
  GwDerivationFold *self = data;

  for (guint i = 0; i < self->rows->len; i++)
    {
      const Row *row = g_ptr_array_index (self->rows, i);

      if (row->top == button)
        {
          /* The answer may be that the row goes. */
          g_autofree char *path = g_strdup (row->path);

          g_signal_emit (self, signals[SELECT], 0, path);
          return;
        }
    }
}

static Row *
row_new (GwDerivationFold *self,
         const char       *path)
{
  Row       *row = g_new0 (Row, 1);
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  row->label = label_new (NULL);
  row->value = label_new ("number");
  row->detail = label_new ("detail");
  row->path = g_strdup (path);
  gtk_widget_set_hexpand (GTK_WIDGET (row->label), TRUE);
  gtk_label_set_xalign (row->value, 1.0f);
  gtk_label_set_justify (row->value, GTK_JUSTIFY_RIGHT);
  gtk_box_append (GTK_BOX (line), GTK_WIDGET (row->label));
  gtk_box_append (GTK_BOX (line), GTK_WIDGET (row->value));
  gtk_box_append (GTK_BOX (column), line);
  gtk_box_append (GTK_BOX (column), GTK_WIDGET (row->detail));

  row->top = column;
  if (path != NULL)
    {
      row->top = gtk_button_new ();
      gtk_button_set_child (GTK_BUTTON (row->top), column);
      gtk_widget_set_tooltip_text (row->top, _ ("Show it among the fields"));
      g_signal_connect (row->top, "clicked", G_CALLBACK (row_clicked_cb), self);
    }
  gtk_widget_add_css_class (row->top, "line");
  return row;
}

static char *
detail_text (const GwDerivationRow *from)
{
  if (from->origin != NULL && from->source != NULL)
    return g_strdup_printf (_ ("%s: %s"), from->origin, from->source);

  return g_strdup (from->origin != NULL ? from->origin : from->source);
}

static void
row_update (Row                   *row,
            const GwDerivationRow *from)
{
  g_autofree char *detail = detail_text (from);

  show_text (row->label, from->label);
  show_text (row->value, from->value);
  /* A number stays whole, a name need not. */
  gtk_label_set_wrap_mode (row->value, g_utf8_strlen (from->value, -1) < LONG_VALUE
                                         ? PANGO_WRAP_WORD
                                         : PANGO_WRAP_WORD_CHAR);
  show_text (row->detail, detail);
  if (row->path != NULL)
    {
      g_autofree char *name = g_strdup_printf (_ ("%s: %s"), from->label, from->value);

      gtk_accessible_update_property (GTK_ACCESSIBLE (row->top), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      name, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                      detail != NULL ? detail : "", -1);
    }
}

/* Rows stay, with the focus that may be in one, while they are of the same records. */
static void
update_rows (GwDerivationFold *self)
{
  const GPtrArray *from = self->section->rows;

  for (guint i = 0; i < from->len; i++)
    {
      const GwDerivationRow *new = g_ptr_array_index (from, i);
      Row *row = i < self->rows->len ? g_ptr_array_index (self->rows, i) : NULL;

      if (row != NULL && g_strcmp0 (row->path, new->path) != 0)
        {
          while (self->rows->len > i)
            {
              gtk_box_remove (GTK_BOX (self->rows_box),
                              ((Row *) g_ptr_array_index (self->rows, self->rows->len - 1))->top);
              g_ptr_array_set_size (self->rows, (int) self->rows->len - 1);
            }
          row = NULL;
        }
      if (row == NULL)
        {
          row = row_new (self, new->path);
          g_ptr_array_add (self->rows, row);
          gtk_box_append (GTK_BOX (self->rows_box), row->top);
        }
      row_update (row, new);
    }

  while (self->rows->len > from->len)
    {
      gtk_box_remove (GTK_BOX (self->rows_box),
                      ((Row *) g_ptr_array_index (self->rows, self->rows->len - 1))->top);
      g_ptr_array_set_size (self->rows, (int) self->rows->len - 1);
    }
}

static void
expanded_cb (GwDerivationFold *self)
{
  if (self->section != NULL && gtk_expander_get_expanded (GTK_EXPANDER (self->expander)))
    update_rows (self);
}

static void
gw_derivation_fold_dispose (GObject *object)
{
  GwDerivationFold *self = GW_DERIVATION_FOLD (object);

  self->section = NULL;
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->expander, gtk_widget_unparent);

  G_OBJECT_CLASS (gw_derivation_fold_parent_class)->dispose (object);
}

static void
gw_derivation_fold_class_init (GwDerivationFoldClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = gw_derivation_fold_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);

  signals[SELECT] = g_signal_new ("select", GW_TYPE_DERIVATION_FOLD, G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
gw_derivation_fold_init (GwDerivationFold *self)
{
  self->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) row_free);
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->rows_box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->text = label_new ("text");
  self->source = label_new ("detail");
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->text));
  gtk_box_append (GTK_BOX (self->box), GTK_WIDGET (self->source));
  gtk_box_append (GTK_BOX (self->box), self->rows_box);

  self->expander = gtk_expander_new (NULL);
  gtk_expander_set_child (GTK_EXPANDER (self->expander), self->box);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
  gw_access_name (self->expander, _ ("Part of the derivation"));
  g_signal_connect_swapped (self->expander, "notify::expanded", G_CALLBACK (expanded_cb), self);
}

GtkWidget *
gw_derivation_fold_new (void)
{
  return g_object_new (GW_TYPE_DERIVATION_FOLD, NULL);
}

static void
update_title (GwDerivationFold *self)
{
  const guint      n = self->section->rows->len;
  g_autofree char *title =
    n > LONG_SECTION ? g_strdup_printf (_ ("%s (%u)"), self->section->title, n)
                     : g_strdup (self->section->title);

  if (g_strcmp0 (gtk_expander_get_label (GTK_EXPANDER (self->expander)), title) != 0)
    {
      gtk_expander_set_label (GTK_EXPANDER (self->expander), title);
      gw_access_name (self->expander, title);
    }
}

void
gw_derivation_fold_update (GwDerivationFold          *self,
                           const GwDerivationSection *section,
                           gboolean                   is_other)
{
  g_autofree char *source = NULL;

  g_return_if_fail (GW_IS_DERIVATION_FOLD (self));

  self->section = section;
  if (section->source != NULL)
    source = g_strdup_printf (_ ("Source: %s"), section->source);
  update_title (self);
  show_text (self->text, section->text);
  show_text (self->source, source);
  if (is_other)
    gtk_expander_set_expanded (GTK_EXPANDER (self->expander),
                               section->rows->len <= LONG_SECTION);
  expanded_cb (self);
}
