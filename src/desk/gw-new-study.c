/* gw-new-study.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-new-study-private.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-outcome-grid.h"
#include "study/gw-result.h"

#define PATIENCE 60 /* while somebody types [ms] */

G_DEFINE_FINAL_TYPE (GwNewStudy, gw_new_study, GTK_TYPE_WIDGET)

enum
{
  PROP_0,
  PROP_DARK,
  N_PROPS
};

enum
{
  BEGIN,
  CANCEL,
  N_SIGNALS
};

static GParamSpec *properties[N_PROPS];
static guint       signals[N_SIGNALS];

/* What the battery could not do is said; the rest stands in the table. */
static char *
balance_text (const GwEvaluation *evaluation)
{
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const GwOutcome *outcome = gw_evaluation_outcome (evaluation, i);

      if (outcome->results.notes & GW_NOTE_BALLAST)
        return g_strdup_printf ("%s: %s", outcome->name, gw_note_text (GW_NOTE_BALLAST));
    }

  return NULL;
}

static void
show_message (GwNewStudy *self,
              const char *text,
              gboolean    is_wrong)
{
  gtk_label_set_text (self->message, text != NULL ? text : "");
  gtk_widget_set_sensitive (GTK_WIDGET (self->outcomes), !is_wrong);
  for (guint i = 0; is_wrong && gtk_widget_has_focus (self->begin) && i < GW_N_ASKED; i++)
    if (gtk_widget_has_css_class (GTK_WIDGET (self->entries[i]), "error"))
      gtk_widget_grab_focus (GTK_WIDGET (self->entries[i]));
  gtk_widget_set_sensitive (self->begin, !is_wrong);
}

static void
update (GwNewStudy *self)
{
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GwEvaluation) evaluation = NULL;

  g_clear_handle_id (&self->source, g_source_remove);
  g_clear_pointer (&self->study, gw_study_unref);
  text = _gw_new_study_read (self);
  if (text == NULL)
    self->study =
      gw_template_make (self->shape, self->values[GW_ASKED_SPAN] / 1000.0,
                        self->values[GW_ASKED_CHORD] / 1000.0, self->values[GW_ASKED_MASS] / 1000.0,
                        &error);
  if (self->study != NULL)
    evaluation = gw_evaluation_quick (self->study, NULL, &error);
  if (evaluation == NULL)
    {
      g_clear_pointer (&self->study, gw_study_unref);
      show_message (self, error != NULL ? error->message : text, TRUE);
      return;
    }

  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  self->evaluation = g_steal_pointer (&evaluation);
  text = balance_text (self->evaluation);
  show_message (self, text, FALSE);
  gw_outcome_grid_show (self->outcomes, self->evaluation, &self->units,
                        self->values[GW_ASKED_MASS]);
  gw_planform_view_show (self->planform, self->evaluation);
}

static gboolean
update_cb (gpointer data)
{
  GwNewStudy *self = data;

  self->source = 0;
  update (self);
  return G_SOURCE_REMOVE;
}

static void
entry_changed_cb (GwNewStudy  *self,
                  GtkEditable *entry)
{
  if (self->is_filling)
    return;

  for (guint i = 0; i < GW_N_ASKED; i++)
    if (self->entries[i] == entry)
      self->is_own[i] = TRUE;
  /* Until it is known: a quick Tab shall not pass the button by. */
  gtk_widget_set_sensitive (self->begin, TRUE);
  g_clear_handle_id (&self->source, g_source_remove);
  self->source = g_timeout_add (PATIENCE, update_cb, self);
}

/* "9 in" becomes what it was understood as: "228.6" mm; and what follows from it is there before
 * the next field is reached, since a text that changes under the hand is no longer selected. */
static void
entry_left_cb (GwNewStudy         *self,
               GtkEventController *focus)
{
  _gw_new_study_restate (self, gtk_event_controller_get_widget (focus));

  if (self->source != 0)
    {
      g_clear_handle_id (&self->source, g_source_remove);
      update (self);
    }
}

/* Tab comes by the chosen card again, and what was typed stays. */
static void
shape_selected_cb (GwNewStudy *self)
{
  g_autoptr (GList) selected = gtk_flow_box_get_selected_children (self->shapes);
  const int index =
    selected != NULL ? gtk_flow_box_child_get_index (selected->data) : -1;

  if (index >= 0 && g_ptr_array_index (gw_templates (), (guint) index) != self->shape)
    gw_new_study_choose (self, g_ptr_array_index (gw_templates (), (guint) index));
}

static void
shape_activated_cb (GwNewStudy *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->entries[GW_ASKED_SPAN]));
}

/* Arrows go from card to card; Tab would as well. */
static gboolean
shape_key_cb (GwNewStudy     *self,
              guint           key,
              guint           code,
              GdkModifierType modifiers)
{
  return key == GDK_KEY_Tab && (modifiers & (GDK_SHIFT_MASK | GDK_CONTROL_MASK)) == 0 &&
         gtk_widget_grab_focus (GTK_WIDGET (self->entries[GW_ASKED_SPAN]));
}

static void
begin_cb (GwNewStudy *self)
{
  if (self->source != 0)
    update (self);
  if (self->study != NULL)
    g_signal_emit (self, signals[BEGIN], 0, self->study);
  else
    gtk_widget_error_bell (GTK_WIDGET (self));
}

static void
cancel_cb (GwNewStudy *self)
{
  g_signal_emit (self, signals[CANCEL], 0);
}

/* To the chosen card, in a way that lets the box know where its cursor is. */
static gboolean
gw_new_study_grab_focus (GtkWidget *widget)
{
  GtkWidget *shapes = GTK_WIDGET (GW_NEW_STUDY (widget)->shapes);

  gtk_widget_set_focus_child (shapes, NULL);
  return gtk_widget_child_focus (shapes, GTK_DIR_TAB_FORWARD);
}

static void
gw_new_study_get_property (GObject    *object,
                           guint       id,
                           GValue     *value,
                           GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_DARK:
      g_value_set_boolean (value, GW_NEW_STUDY (object)->is_dark);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_new_study_set_property (GObject      *object,
                           guint         id,
                           const GValue *value,
                           GParamSpec   *pspec)
{
  GwNewStudy *self = GW_NEW_STUDY (object);

  switch (id)
    {
    case PROP_DARK:
      if (self->is_dark == g_value_get_boolean (value))
        return;
      self->is_dark = !self->is_dark;
      g_object_notify_by_pspec (object, pspec);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_new_study_dispose (GObject *object)
{
  GwNewStudy *self = GW_NEW_STUDY (object);

  g_clear_handle_id (&self->source, g_source_remove);
  g_clear_pointer (&self->study, gw_study_unref);
  g_clear_pointer (&self->evaluation, gw_evaluation_unref);
  gtk_widget_dispose_template (GTK_WIDGET (object), GW_TYPE_NEW_STUDY);

  G_OBJECT_CLASS (gw_new_study_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  static const char *const names[GW_N_ASKED][2] = { { "span", "span_hint" },
                                                    { "chord", "chord_hint" },
                                                    { "mass", "mass_hint" } };

  g_type_ensure (GW_TYPE_PLANFORM_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-new-study.ui");
  gtk_widget_class_bind_template_child (widget_class, GwNewStudy, paper);
  gtk_widget_class_bind_template_child (widget_class, GwNewStudy, begin);
  gtk_widget_class_bind_template_child (widget_class, GwNewStudy, shapes);
  gtk_widget_class_bind_template_child (widget_class, GwNewStudy, about);
  gtk_widget_class_bind_template_child (widget_class, GwNewStudy, message);
  gtk_widget_class_bind_template_child (widget_class, GwNewStudy, promise);
  gtk_widget_class_bind_template_child (widget_class, GwNewStudy, outcomes);
  gtk_widget_class_bind_template_child (widget_class, GwNewStudy, planform);
  for (guint i = 0; i < GW_N_ASKED; i++)
    {
      const gssize step = (gssize) (i * sizeof (gpointer));

      gtk_widget_class_bind_template_child_full (
        widget_class, names[i][0], FALSE, G_STRUCT_OFFSET (GwNewStudy, entries) + step);
      gtk_widget_class_bind_template_child_full (
        widget_class, names[i][1], FALSE, G_STRUCT_OFFSET (GwNewStudy, hints) + step);
    }
  gtk_widget_class_bind_template_callback (widget_class, entry_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, entry_left_cb);
  gtk_widget_class_bind_template_callback (widget_class, shape_selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, shape_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, shape_key_cb);
  gtk_widget_class_bind_template_callback (widget_class, begin_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_cb);
}

static void
gw_new_study_class_init (GwNewStudyClass *klass)
{
  GObjectClass   *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = gw_new_study_get_property;
  object_class->set_property = gw_new_study_set_property;
  object_class->dispose = gw_new_study_dispose;
  widget_class->grab_focus = gw_new_study_grab_focus;

  properties[PROP_DARK] =
    g_param_spec_boolean ("dark", NULL, NULL, FALSE,
                          G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  signals[BEGIN] = g_signal_new ("begin", GW_TYPE_NEW_STUDY, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[CANCEL] = g_signal_new ("cancel", GW_TYPE_NEW_STUDY,
                                  G_SIGNAL_RUN_LAST | G_SIGNAL_ACTION, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);

  gtk_widget_class_set_css_name (widget_class, "newstudy");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_add_binding_signal (widget_class, GDK_KEY_Escape, 0, "cancel", NULL);
  bind_template (widget_class);
}

static void
add_card (GwNewStudy       *self,
          const GwTemplate *shape)
{
  GtkWidget *child = gtk_flow_box_child_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *planform = gw_planform_view_new (TRUE);
  g_autoptr (GwEvaluation) evaluation = gw_evaluation_quick (shape->study, NULL, NULL);

  if (evaluation != NULL)
    gw_planform_view_show (GW_PLANFORM_VIEW (planform), evaluation);
  g_object_bind_property (self, "dark", planform, "dark", G_BINDING_SYNC_CREATE);
  gtk_widget_set_vexpand (planform, TRUE);
  gtk_box_append (GTK_BOX (box), planform);
  gtk_box_append (GTK_BOX (box), gtk_label_new (shape->name));
  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  shape->name, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, shape->about,
                                  -1);
  gtk_flow_box_append (self->shapes, child);
}

static void
gw_new_study_init (GwNewStudy *self)
{
  self->units = *gw_units_standard ();
  gtk_widget_init_template (GTK_WIDGET (self));
  g_object_bind_property (self, "dark", self->planform, "dark", G_BINDING_SYNC_CREATE);
  gtk_label_set_text (self->promise,
                      _ ("The goal becomes what is wanted of the study; what it comes to follows "
                         "from how it is built. Spars, wheels and propellers go with the size: put "
                         "in those you can buy."));
}

GtkWidget *
gw_new_study_new (void)
{
  return g_object_new (GW_TYPE_NEW_STUDY, NULL);
}

/* The cards are made when they are first looked at: a window seldom shows them. */
void
gw_new_study_start (GwNewStudy *self)
{
  const GPtrArray *shapes = gw_templates ();

  g_return_if_fail (GW_IS_NEW_STUDY (self));

  if (gtk_flow_box_get_child_at_index (self->shapes, 0) == NULL)
    for (guint i = 0; i < shapes->len; i++)
      add_card (self, g_ptr_array_index (shapes, i));
  gw_new_study_choose (self, g_ptr_array_index (shapes, 0));
}

void
gw_new_study_choose (GwNewStudy       *self,
                     const GwTemplate *shape)
{
  guint index = 0;

  g_return_if_fail (GW_IS_NEW_STUDY (self));
  g_return_if_fail (shape != NULL);

  self->shape = shape;
  for (guint i = 0; i < GW_N_ASKED; i++)
    self->is_own[i] = FALSE;
  gtk_label_set_text (self->about, shape->about);
  update (self);

  /* Comes back here once if another card was selected. */
  if (g_ptr_array_find ((GPtrArray *) gw_templates (), shape, &index))
    {
      GtkFlowBoxChild *child = gtk_flow_box_get_child_at_index (self->shapes, (int) index);

      if (child != NULL && !gtk_flow_box_child_is_selected (child))
        gtk_flow_box_select_child (self->shapes, child);
    }
}

void
gw_new_study_set_units (GwNewStudy    *self,
                        const GwUnits *units)
{
  g_return_if_fail (GW_IS_NEW_STUDY (self));
  g_return_if_fail (units != NULL);

  self->units = *units;
  if (self->shape == NULL)
    return;

  for (GwAsked what = GW_ASKED_SPAN; what < GW_N_ASKED; what++)
    _gw_new_study_fill (self, what, self->values[what]);
  update (self);
}

GwStudy *
gw_new_study_get_study (GwNewStudy *self)
{
  g_return_val_if_fail (GW_IS_NEW_STUDY (self), NULL);

  return self->study;
}
