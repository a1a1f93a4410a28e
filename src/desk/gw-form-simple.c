/* gw-form-simple.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-form-simple.h"
#include "desk/gw-access.h"

#include "desk/gw-form-words.h"

/* Left out where it may be; an option's own text is empty instead. */
static JsonNode *
text_node (GwFormField *field,
           const char  *text)
{
  GwFormSite *site = _gw_form_field_site (field);

  if (*text == '\0' && !gw_form_site_is_here (site, gw_form_field_get_path (field)))
    return NULL;

  return json_node_init_string (json_node_alloc (), text);
}

static const char *
text_in (GwRecord    *record,
         GwFormField *field)
{
  const char *text = *(char **) gw_record_at (record, _gw_form_field_field (field));

  return text != NULL ? text : "";
}

static void
add_escape (GtkWidget *widget,
            GCallback  callback,
            gpointer   self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", callback, self);
  gtk_widget_add_controller (widget, keys);
}

static void
add_leave (GtkWidget *widget,
           GCallback  callback,
           gpointer   self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (focus, "leave", callback, self);
  gtk_widget_add_controller (widget, focus);
}

/* One line. */

struct _GwFormText
{
  GwFormField parent_instance;

  GtkWidget *entry;
  char      *text; /* as the study has it */
};

G_DEFINE_FINAL_TYPE (GwFormText, gw_form_text, GW_TYPE_FORM_FIELD)

static void
gw_form_text_settle (GwFormField *field)
{
  GwFormText      *self = GW_FORM_TEXT (field);
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));

  if (g_strcmp0 (text, self->text) != 0)
    _gw_form_field_edit (field, text_node (field, text));
}

static gboolean
text_key_cb (GwFormText *self,
             guint       key)
{
  if (key != GDK_KEY_Escape ||
      g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->entry)), self->text) == 0)
    return GDK_EVENT_PROPAGATE;

  gtk_editable_set_text (GTK_EDITABLE (self->entry), self->text);
  _gw_form_field_refuse (GW_FORM_FIELD (self), NULL);
  return GDK_EVENT_STOP;
}

static void
gw_form_text_setup (GwFormField *field)
{
  GwFormText *self = GW_FORM_TEXT (field);

  self->entry = gtk_entry_new ();
  g_object_set (self->entry, "valign", GTK_ALIGN_CENTER, "enable-undo", FALSE, NULL);
  gtk_widget_add_css_class (self->entry, "wide");
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (gw_form_text_settle), self);
  add_escape (self->entry, G_CALLBACK (text_key_cb), self);
  add_leave (self->entry, G_CALLBACK (gw_form_text_settle), self);
  _gw_form_field_set_editor (field, self->entry, FALSE);
  _gw_form_field_name (field, self->entry, NULL, NULL);
}

static void
gw_form_text_update (GwFormField *field,
                     GwRecord    *record)
{
  GwFormText *self = GW_FORM_TEXT (field);
  const char *text = text_in (record, field);

  if (g_strcmp0 (self->text, text) == 0)
    return;

  g_free (self->text);
  self->text = g_strdup (text);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  _gw_form_field_refuse (field, NULL);
}

static void
gw_form_text_finalize (GObject *object)
{
  g_free (GW_FORM_TEXT (object)->text);

  G_OBJECT_CLASS (gw_form_text_parent_class)->finalize (object);
}

static void
gw_form_text_class_init (GwFormTextClass *klass)
{
  GwFormFieldClass *field_class = GW_FORM_FIELD_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gw_form_text_finalize;
  field_class->setup = gw_form_text_setup;
  field_class->update = gw_form_text_update;
  field_class->settle = gw_form_text_settle;
}

static void
gw_form_text_init (GwFormText *self)
{
}

/* Several lines. */

struct _GwFormNote
{
  GwFormField parent_instance;

  GtkWidget *view;
  char      *text;
};

G_DEFINE_FINAL_TYPE (GwFormNote, gw_form_note, GW_TYPE_FORM_FIELD)

static char *
note_text (GwFormNote *self)
{
  char *text;

  g_object_get (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->view)), "text", &text, NULL);
  return text;
}

/* As high as the text needs, within reason; a text view does not say before it is wide. */
static void
set_note (GwFormNote *self)
{
  GtkWidget *scroller = gtk_widget_get_parent (self->view);
  const int  n_letters = (int) g_utf8_strlen (self->text, -1);

  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller),
                                              CLAMP (18 * (n_letters / 34 + 1) + 8, 44, 160));
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->view)), self->text, -1);
}

static void
gw_form_note_settle (GwFormField *field)
{
  GwFormNote      *self = GW_FORM_NOTE (field);
  g_autofree char *text = note_text (self);

  if (g_strcmp0 (text, self->text) != 0)
    _gw_form_field_edit (field, text_node (field, text));
}

static gboolean
note_key_cb (GwFormNote *self,
             guint       key)
{
  g_autofree char *text = note_text (self);

  if (key != GDK_KEY_Escape || g_strcmp0 (text, self->text) == 0)
    return GDK_EVENT_PROPAGATE;

  set_note (self);
  _gw_form_field_refuse (GW_FORM_FIELD (self), NULL);
  return GDK_EVENT_STOP;
}

/* When it is realized a text view asks where its cursor is, and would break its lines for that
 * in a width of nothing: letter by letter. */
static void
wrap_cb (GtkTextView *view)
{
  gtk_text_view_set_wrap_mode (view, GTK_WRAP_WORD_CHAR);
}

static void
gw_form_note_setup (GwFormField *field)
{
  GwFormNote *self = GW_FORM_NOTE (field);
  GtkWidget  *scroller = gtk_scrolled_window_new ();
  const char *label = gw_form_label (_gw_form_field_field (field));

  self->view = gtk_text_view_new ();
  g_object_set (scroller, "hscrollbar-policy", GTK_POLICY_NEVER, "child", self->view, NULL);
  gw_access_name (scroller, label);
  /* Tab goes on to the next field, as everywhere in the form. */
  gtk_text_view_set_accepts_tab (GTK_TEXT_VIEW (self->view), FALSE);
  g_signal_connect_after (self->view, "realize", G_CALLBACK (wrap_cb), NULL);
  gtk_text_buffer_set_enable_undo (gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->view)), FALSE);
  add_escape (self->view, G_CALLBACK (note_key_cb), self);
  add_leave (self->view, G_CALLBACK (gw_form_note_settle), self);
  _gw_form_field_set_editor (field, scroller, TRUE);
  _gw_form_field_name (field, self->view, NULL, NULL);
}

static void
gw_form_note_update (GwFormField *field,
                     GwRecord    *record)
{
  GwFormNote *self = GW_FORM_NOTE (field);
  const char *text = text_in (record, field);

  if (g_strcmp0 (self->text, text) == 0)
    return;

  g_free (self->text);
  self->text = g_strdup (text);
  set_note (self);
  _gw_form_field_refuse (field, NULL);
}

static void
gw_form_note_finalize (GObject *object)
{
  g_free (GW_FORM_NOTE (object)->text);

  G_OBJECT_CLASS (gw_form_note_parent_class)->finalize (object);
}

static void
gw_form_note_class_init (GwFormNoteClass *klass)
{
  GwFormFieldClass *field_class = GW_FORM_FIELD_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = gw_form_note_finalize;
  field_class->setup = gw_form_note_setup;
  field_class->update = gw_form_note_update;
  field_class->settle = gw_form_note_settle;
}

static void
gw_form_note_init (GwFormNote *self)
{
}

/* Yes or no. */

struct _GwFormFlag
{
  GwFormField parent_instance;

  GtkWidget *button;
  gboolean   is_setting;
};

G_DEFINE_FINAL_TYPE (GwFormFlag, gw_form_flag, GW_TYPE_FORM_FIELD)

static void
set_flag (GwFormFlag *self,
          gboolean    is_set)
{
  self->is_setting = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->button), is_set);
  self->is_setting = FALSE;
}

static void
toggled_cb (GwFormFlag *self)
{
  const gboolean is_set = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->button));

  if (self->is_setting)
    return;
  if (!_gw_form_field_edit (GW_FORM_FIELD (self),
                            json_node_init_boolean (json_node_alloc (), is_set)))
    set_flag (self, !is_set);
}

static void
gw_form_flag_setup (GwFormField *field)
{
  GwFormFlag *self = GW_FORM_FLAG (field);

  self->button = gtk_check_button_new_with_label (gw_form_label (_gw_form_field_field (field)));
  g_signal_connect_swapped (self->button, "toggled", G_CALLBACK (toggled_cb), self);
  _gw_form_field_hide_label (field);
  _gw_form_field_set_editor (field, self->button, FALSE);
  _gw_form_field_name (field, self->button, NULL, NULL);
}

static void
gw_form_flag_update (GwFormField *field,
                     GwRecord    *record)
{
  const gboolean *is_set = gw_record_at (record, _gw_form_field_field (field));

  set_flag (GW_FORM_FLAG (field), *is_set);
}

static void
gw_form_flag_class_init (GwFormFlagClass *klass)
{
  GwFormFieldClass *field_class = GW_FORM_FIELD_CLASS (klass);

  field_class->setup = gw_form_flag_setup;
  field_class->update = gw_form_flag_update;
}

static void
gw_form_flag_init (GwFormFlag *self)
{
}
