/* gw-form-number.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "desk/gw-form-value.h"
#include "desk/gw-sureness.h"
#include "study/gw-edit-number.h"

struct _GwFormNumber
{
  GwFormField parent_instance;

  GtkWidget *entry, *sureness;

  GwNumber number;    /* as last shown */
  gboolean is_stated; /* not the standard */
  gboolean is_shown;  /* for the first time */

  gboolean is_setting; /* the text changes, but nobody types */
  gboolean is_typing;
  gboolean has_tried; /* what is typed is what is tried */
};

G_DEFINE_FINAL_TYPE (GwFormNumber, gw_form_number, GW_TYPE_FORM_FIELD)

static const GwField *
field_of (GwFormNumber *self)
{
  return _gw_form_field_field (GW_FORM_FIELD (self));
}

static const GwUnits *
units_of (GwFormNumber *self)
{
  return gw_form_site_get_units (_gw_form_field_site (GW_FORM_FIELD (self)));
}

static void
set_text (GwFormNumber *self,
          const char   *text)
{
  if (g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text))
    return;

  self->is_setting = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
  self->is_setting = FALSE;
}

static void
set_class (GtkWidget  *widget,
           const char *name,
           gboolean    is_set)
{
  if (is_set)
    gtk_widget_add_css_class (widget, name);
  else
    gtk_widget_remove_css_class (widget, name);
}

static const char *
origin_remark (GwOrigin origin)
{
  switch (origin)
    {
    case GW_ORIGIN_GUESSED:
      return _ ("guessed");
    case GW_ORIGIN_CATALOGUE:
      return _ ("from a catalogue");
    case GW_ORIGIN_COMPUTED:
      return _ ("computed");
    case GW_ORIGIN_WEIGHED:
      return _ ("weighed");
    case GW_ORIGIN_GIVEN:
    case GW_N_ORIGINS:
    default:
      return NULL;
    }
}

static void
show_origin (GwFormNumber *self)
{
  const gboolean is_stated = self->is_stated && isfinite (self->number.value);

  set_class (self->entry, "guessed", is_stated && self->number.origin == GW_ORIGIN_GUESSED);
  set_class (self->entry, "standard", !is_stated);
  _gw_form_field_set_remark (GW_FORM_FIELD (self),
                             is_stated ? origin_remark (self->number.origin) : NULL);
  gw_sureness_update (GW_SURENESS (self->sureness), &self->number);
}

static void
show_number (GwFormNumber *self)
{
  const GwField *field = field_of (self);
  const gboolean is_empty =
    isnan (self->number.value) || (!self->is_stated && gw_form_is_open (field));
  g_autofree char *text =
    is_empty ? g_strdup ("")
             : gw_form_number_text (self->number.value, field->quantity, units_of (self));

  set_text (self, text);
  show_origin (self);
}

static void
stop_typing (GwFormNumber *self)
{
  self->is_typing = self->has_tried = FALSE;
  _gw_form_field_refuse (GW_FORM_FIELD (self), NULL);
}

/* While somebody types the text is theirs, until an edit from elsewhere overtakes it. */
static gboolean
is_overtaken (GwFormNumber   *self,
              const GwNumber *number)
{
  GwDocument *document =
    gw_form_site_get_document (_gw_form_field_site (GW_FORM_FIELD (self)));

  return self->has_tried ? gw_document_get_former (document) == NULL
                         : !gw_number_equal (number, &self->number);
}

static void
gw_form_number_update (GwFormField *field,
                       GwRecord    *record)
{
  GwFormNumber   *self = GW_FORM_NUMBER (field);
  const GwNumber *number = gw_record_at (record, field_of (self));
  const gboolean  is_stated = gw_record_has (record, field_of (self));

  if (self->is_typing)
    {
      if (!is_overtaken (self, number))
        return;
      stop_typing (self);
    }
  else if (self->is_shown && self->is_stated == is_stated &&
           gw_number_equal (number, &self->number))
    return;

  gw_number_copy (&self->number, number);
  self->is_stated = is_stated;
  self->is_shown = TRUE;
  show_number (self);
}

static void
leave (GwFormNumber *self)
{
  const gboolean has_tried = self->has_tried;

  self->has_tried = FALSE;
  if (has_tried)
    gw_form_site_leave (_gw_form_field_site (GW_FORM_FIELD (self)));
}

/* A shown unit may round: what reads the same is the same. */
static gboolean
is_as_shown (GwFormNumber *self,
             double        value)
{
  const GwQuantity quantity = field_of (self)->quantity;
  g_autofree char *typed = gw_form_number_text (value, quantity, units_of (self));
  g_autofree char *shown = gw_form_number_text (self->number.value, quantity, units_of (self));

  return g_str_equal (typed, shown);
}

/* What the text means, as JSON; NULL with no error: it is left out. */
static JsonNode *
read_text (GwFormNumber *self,
           GError      **error)
{
  g_autofree char *text =
    g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));
  GwNumber  number = { 0 };
  JsonNode *node;
  double    value;

  if (*text == '\0' && !field_of (self)->is_needed)
    return NULL;
  if (!gw_form_number_parse (text, field_of (self), units_of (self), &value, error))
    return NULL;
  if (is_as_shown (self, value))
    value = self->number.value;

  gw_number_copy (&number, &self->number);
  gw_edit_retype (&number, field_of (self)->quantity, value);
  if (number.form == GW_FORM_RANGE)
    gw_number_set_range (&number, MAX (number.low, field_of (self)->least), value,
                         MIN (number.high, field_of (self)->most));
  node = gw_edit_number_node (&number);
  gw_number_clear (&number);
  return node;
}

static void
try_text (GwFormNumber *self)
{
  g_autoptr (GError) error = NULL;
  JsonNode *node = read_text (self, &error);

  if (error != NULL)
    {
      leave (self);
      _gw_form_field_refuse (GW_FORM_FIELD (self), error);
      return;
    }

  self->has_tried = TRUE;
  if (!_gw_form_field_try (GW_FORM_FIELD (self), node))
    leave (self);
}

static void
changed_cb (GwFormNumber *self)
{
  if (self->is_setting)
    return;

  self->is_typing = TRUE;
  try_text (self);
}

/* What cannot be taken stays to be mended, with its reason below it. */
static void
finish (GwFormNumber *self)
{
  if (!self->is_typing || !self->has_tried)
    return;

  stop_typing (self);
  _gw_form_field_take (GW_FORM_FIELD (self));
}

static void
activate_cb (GwFormNumber *self)
{
  finish (self);
  if (!self->is_typing)
    gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}

static void
restore (GwFormNumber *self)
{
  leave (self);
  stop_typing (self);
  show_number (self);
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}

static void
step (GwFormNumber *self,
      double        steps)
{
  const GwField   *field = field_of (self);
  double           value = self->number.value;
  g_autofree char *text = NULL;

  if (self->is_typing && !gw_form_number_parse (gtk_editable_get_text (GTK_EDITABLE (self->entry)),
                                                field, units_of (self), &value, NULL))
    return;
  if (isnan (value))
    value = 0.0;

  value = CLAMP (value + steps * gw_form_step (field, units_of (self)), field->least, field->most);
  text = gw_form_number_text (value, field->quantity, units_of (self));
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}

static gboolean
key_cb (GwFormNumber   *self,
        guint           key,
        guint           code,
        GdkModifierType state)
{
  const double size = (state & GDK_SHIFT_MASK) != 0 ? 10.0 : 1.0;

  /* GTK's text takes these keys even where it has nothing of its own to undo. */
  if ((state & GDK_CONTROL_MASK) != 0 && !self->is_typing &&
      (key == GDK_KEY_z || key == GDK_KEY_Z || key == GDK_KEY_y))
    return gtk_widget_activate_action (
      GTK_WIDGET (self),
      key == GDK_KEY_y || (state & GDK_SHIFT_MASK) != 0 ? "win.redo" : "win.undo", NULL);
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_Escape && self->is_typing)
    restore (self);
  else if (key == GDK_KEY_Up || key == GDK_KEY_KP_Up)
    step (self, size);
  else if (key == GDK_KEY_Down || key == GDK_KEY_KP_Down)
    step (self, -size);
  else
    return GDK_EVENT_PROPAGATE;

  return GDK_EVENT_STOP;
}

static void
make_entry (GwFormNumber *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->entry = gtk_entry_new ();
  g_object_set (self->entry, "width-chars", 7, "max-width-chars", 7, "xalign", 1.0, "valign",
                GTK_ALIGN_CENTER, "enable-undo", FALSE, "input-purpose",
                GTK_INPUT_PURPOSE_FREE_FORM, NULL);
  gtk_widget_add_css_class (self->entry, "number");
  /* Figures and their sign run from left to right in every language. */
  gtk_widget_set_direction (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->entry))),
                            GTK_TEXT_DIR_LTR);
  if (gw_form_is_open (field_of (self)))
    gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), _ ("left out"));

  /* Before the text of the entry, which would move its caret. */
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (self->entry, keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (finish), self);
  gtk_widget_add_controller (self->entry, focus);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
}

static void
gw_form_number_setup (GwFormField *field)
{
  GwFormNumber    *self = GW_FORM_NUMBER (field);
  const char      *unit = gw_units_name (units_of (self), field_of (self)->quantity);
  g_autofree char *bounds = gw_form_bounds_text (field_of (self), units_of (self));
  GtkWidget       *unit_label = gtk_label_new (unit);

  make_entry (self);
  gtk_label_set_xalign (GTK_LABEL (unit_label), 0.0f);
  gtk_widget_add_css_class (unit_label, "unit");
  self->sureness = gw_sureness_new (_gw_form_field_site (field), gw_form_field_get_path (field),
                                    field_of (self));
  _gw_form_field_set_editor (field, self->entry, FALSE);
  _gw_form_field_set_editor (field, unit_label, FALSE);
  _gw_form_field_set_editor (field, self->sureness, FALSE);
  _gw_form_field_name (field, self->entry, unit, bounds);
}

static void
gw_form_number_settle (GwFormField *field)
{
  finish (GW_FORM_NUMBER (field));
}

static void
gw_form_number_finalize (GObject *object)
{
  gw_number_clear (&GW_FORM_NUMBER (object)->number);

  G_OBJECT_CLASS (gw_form_number_parent_class)->finalize (object);
}

static void
gw_form_number_class_init (GwFormNumberClass *klass)
{
  GwFormFieldClass *field_class = GW_FORM_FIELD_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gw_form_number_finalize;
  field_class->setup = gw_form_number_setup;
  field_class->update = gw_form_number_update;
  field_class->settle = gw_form_number_settle;
}

static void
gw_form_number_init (GwFormNumber *self)
{
}
