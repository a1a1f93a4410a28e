/* gw-derivation-view.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-derivation-view.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-access.h"
#include "desk/gw-derivation-fold.h"
#include "report/gw-amount.h"

struct _GwDerivationView
{
  GtkWidget parent_instance;

  GtkWidget   *page, *body;
  GtkDropDown *results;
  GtkLabel    *value, *option;
  GtkWidget   *sections_button;
  GtkWidget   *sections[GW_N_DERIVATION_PARTS];

  GwDocument   *document;
  GwUnits       units;
  GwResultId    id;
  guint         of;         /* option; that which is shown, until another is asked about */
  GwDerivation *derivation; /* on the screen */
  guint         update_id;
  gboolean      is_dirty;   /* what is on the screen is not of now */
  gboolean      is_filling; /* the list of results */
};

G_DEFINE_FINAL_TYPE (GwDerivationView, gw_derivation_view, GTK_TYPE_WIDGET)

enum
{
  CLOSE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static char *
result_text (const GwDerivationView *self,
             GwResultId              id)
{
  GwEvaluation    *evaluation = gw_document_get_evaluation (self->document);
  g_autofree char *value =
    gw_amount_result (&self->units, id,
                      gw_evaluation_outcome (evaluation, self->of)->results.value[id]);

  /* Translators: a result and its value: "stall speed, 7.78 m/s" */
  return g_strdup_printf (_ ("%s, %s"), _ (gw_result_info (id)->label), value);
}

/* Only texts that are other ones are put in, so that an open list stays as it is. */
static void
fill_results (GwDerivationView *self)
{
  GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (self->results));

  self->is_filling = TRUE;
  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      g_autofree char  *text = result_text (self, (GwResultId) i);
      const char *const added[] = { text, NULL };
      const char       *present = gtk_string_list_get_string (list, i);

      if (g_strcmp0 (present, text) != 0)
        gtk_string_list_splice (list, i, present != NULL ? 1 : 0, added);
    }
  gtk_drop_down_set_selected (self->results, self->id);
  gw_access_name_drop_down (self->results, _ ("Result"));
  self->is_filling = FALSE;
}

/* The button inside is what takes the focus. */
static void
name_results (GwDerivationView *self,
              const char       *result)
{
  g_autofree char *name = g_strdup_printf (_ ("Result: %s"), result);

  gtk_accessible_update_property (
    GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (self->results))),
    GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
show_derivation (GwDerivationView *self,
                 GwDerivation     *derivation)
{
  const gboolean   is_other = self->derivation == NULL || self->derivation->id != derivation->id;
  g_autofree char *value =
    derivation->band != NULL
      /* Translators: a value, and its 10th and 90th percentile */
      ? g_strdup_printf (_ ("%s (%s)"), derivation->value, derivation->band)
      : g_strdup (derivation->value);

  name_results (self, derivation->label);
  gtk_label_set_text (self->value, value);
  gtk_label_set_text (self->option, derivation->option);
  for (guint i = 0; i < GW_N_DERIVATION_PARTS; i++)
    gw_derivation_fold_update (GW_DERIVATION_FOLD (self->sections[i]),
                               &derivation->sections[i], is_other);
  g_clear_pointer (&self->derivation, gw_derivation_free);
  self->derivation = derivation;
}

/* Made of what the wing sections do. */
static gboolean
is_of_sections (GwResultId id)
{
  return id == GW_RESULT_STALL_SPEED || id == GW_RESULT_CL_MAX || id == GW_RESULT_STALL_PLACE ||
         id == GW_RESULT_STALL_RE || id == GW_RESULT_TARGET_MASS;
}

static GwDerivation *
derive (GwDerivationView *self)
{
  GwEvaluation *evaluation =
    self->document != NULL ? gw_document_get_evaluation (self->document) : NULL;

  if (evaluation == NULL)
    return NULL;
  if (self->of >= evaluation->outcomes->len)
    self->of = gw_document_get_shown (self->document);

  return gw_derivation_new (evaluation, self->of, self->id, &self->units);
}

static void
update (GwDerivationView *self)
{
  GwDerivation *derivation = derive (self);

  self->is_dirty = FALSE;
  gtk_widget_set_visible (self->body, derivation != NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->results), derivation != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "derivation.copy", derivation != NULL);
  if (derivation == NULL)
    return;

  fill_results (self);
  gtk_widget_set_visible (self->sections_button, is_of_sections (self->id));
  show_derivation (self, derivation);
}

static gboolean
update_cb (gpointer data)
{
  GwDerivationView *self = data;

  self->update_id = 0;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
  return G_SOURCE_REMOVE;
}

/* Behind the frames of a drag. */
static void
queue_update (GwDerivationView *self)
{
  self->is_dirty = TRUE;
  if (self->update_id == 0 && gtk_widget_get_mapped (GTK_WIDGET (self)))
    self->update_id = g_idle_add (update_cb, self);
}

static void
shown_cb (GwDerivationView *self)
{
  gw_derivation_view_set_option (self, gw_document_get_shown (self->document));
}

static void
select_cb (GwDerivationView *self,
           const char       *path)
{
  gw_document_set_selection (self->document, path);
}

static void
selected_cb (GwDerivationView *self)
{
  const guint selected = gtk_drop_down_get_selected (self->results);

  if (!self->is_filling && selected < GW_N_RESULTS)
    gw_derivation_view_set_result (self, (GwResultId) selected);
}

static void
close_clicked_cb (GwDerivationView *self)
{
  g_signal_emit (self, signals[CLOSE], 0);
}

static void
copy_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  g_autofree char *text = gw_derivation_view_get_text (GW_DERIVATION_VIEW (widget));

  if (text != NULL)
    gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), text);
}

static void
gw_derivation_view_map (GtkWidget *widget)
{
  GwDerivationView *self = GW_DERIVATION_VIEW (widget);

  if (self->is_dirty)
    update (self);
  GTK_WIDGET_CLASS (gw_derivation_view_parent_class)->map (widget);
}

static void
gw_derivation_view_dispose (GObject *object)
{
  GwDerivationView *self = GW_DERIVATION_VIEW (object);

  g_clear_handle_id (&self->update_id, g_source_remove);
  gw_document_unfollow (&self->document, self);
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_DERIVATION_VIEW);
  g_clear_pointer (&self->derivation, gw_derivation_free);

  G_OBJECT_CLASS (gw_derivation_view_parent_class)->dispose (object);
}

static void
gw_derivation_view_class_init (GwDerivationViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_derivation_view_dispose;
  widget_class->map = gw_derivation_view_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "derivation");

  signals[CLOSE] =
    g_signal_new ("close", GW_TYPE_DERIVATION_VIEW, G_SIGNAL_RUN_LAST | G_SIGNAL_ACTION, 0, NULL,
                  NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "derivation.copy", NULL, copy_action);
  gtk_widget_class_add_binding_signal (widget_class, GDK_KEY_Escape, 0, "close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, GDK_CONTROL_MASK,
                                       "derivation.copy", NULL);

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-derivation-view.ui");
  gtk_widget_class_bind_template_child (widget_class, GwDerivationView, page);
  gtk_widget_class_bind_template_child (widget_class, GwDerivationView, body);
  gtk_widget_class_bind_template_child (widget_class, GwDerivationView, results);
  gtk_widget_class_bind_template_child (widget_class, GwDerivationView, value);
  gtk_widget_class_bind_template_child (widget_class, GwDerivationView, option);
  gtk_widget_class_bind_template_child (widget_class, GwDerivationView, sections_button);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, close_clicked_cb);
}

static void
gw_derivation_view_init (GwDerivationView *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  self->units = *gw_units_standard ();
  self->id = GW_RESULT_MASS;
  self->is_dirty = TRUE;
  self->is_filling = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drop_down_set_model (self->results, G_LIST_MODEL (list));
  gw_access_name_drop_down (self->results, _ ("Result"));
  self->is_filling = FALSE;

  for (guint i = 0; i < GW_N_DERIVATION_PARTS; i++)
    {
      self->sections[i] = gw_derivation_fold_new ();
      gtk_box_append (GTK_BOX (self->body), self->sections[i]);
      g_signal_connect_swapped (self->sections[i], "select", G_CALLBACK (select_cb), self);
    }
}

GtkWidget *
gw_derivation_view_new (void)
{
  return g_object_new (GW_TYPE_DERIVATION_VIEW, NULL);
}

void
gw_derivation_view_set_document (GwDerivationView *self,
                                 GwDocument       *document)
{
  g_return_if_fail (GW_IS_DERIVATION_VIEW (self));

  if (!gw_document_follow (&self->document, document, self, G_CALLBACK (queue_update),
                           G_CALLBACK (shown_cb), NULL))
    return;

  self->of = document != NULL ? gw_document_get_shown (document) : 0;
  queue_update (self);
}

void
gw_derivation_view_set_units (GwDerivationView *self,
                              const GwUnits    *units)
{
  g_return_if_fail (GW_IS_DERIVATION_VIEW (self));

  self->units = *units;
  queue_update (self);
}

GwResultId
gw_derivation_view_get_result (GwDerivationView *self)
{
  g_return_val_if_fail (GW_IS_DERIVATION_VIEW (self), GW_RESULT_MASS);

  return self->id;
}

void
gw_derivation_view_set_result (GwDerivationView *self,
                               GwResultId        id)
{
  g_return_if_fail (GW_IS_DERIVATION_VIEW (self));
  g_return_if_fail (id < GW_N_RESULTS);

  if (self->id == id)
    return;

  self->id = id;
  queue_update (self);
}

void
gw_derivation_view_set_option (GwDerivationView *self,
                               guint             option)
{
  g_return_if_fail (GW_IS_DERIVATION_VIEW (self));

  if (self->of == option)
    return;

  self->of = option;
  queue_update (self);
}

char *
gw_derivation_view_get_text (GwDerivationView *self)
{
  g_autoptr (GwDerivation) derivation = NULL;

  g_return_val_if_fail (GW_IS_DERIVATION_VIEW (self), NULL);

  derivation = derive (self);
  return derivation != NULL ? gw_derivation_text (derivation) : NULL;
}
