/* gw-window.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-window-private.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-direction.h"
#include "desk/gw-menu.h"
#include "desk/gw-print.h"

#define PATIENCE     300 /* before waiting is shown [ms] */
#define READING_TIME 15  /* of a message [s] */

/* A window begins as the last one was; those that are open do not follow each other. */
#define AS_THE_LAST (G_SETTINGS_BIND_DEFAULT | G_SETTINGS_BIND_GET_NO_CHANGES)

G_DEFINE_FINAL_TYPE (GwWindow, gw_window, GTK_TYPE_APPLICATION_WINDOW)

enum
{
  PROP_0,
  PROP_SHOWN,
  PROP_DARK,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

GwApplication *
_gw_window_get_application (GwWindow *self)
{
  return GW_APPLICATION (gtk_window_get_application (GTK_WINDOW (self)));
}

GwEvaluation *
_gw_window_get_evaluation (GwWindow *self)
{
  return self->document != NULL ? gw_document_get_evaluation (self->document) : NULL;
}

static gboolean
message_over_cb (gpointer data)
{
  GwWindow *self = data;

  self->message_source = 0;
  g_clear_pointer (&self->step_study, gw_study_unref);
  gtk_inscription_set_text (
    self->foot, _ ("Estimates for unmanned models: no substitute for a structural test, a range "
                   "check, a careful first flight, or local law."));
  gtk_widget_remove_css_class (GTK_WIDGET (self->foot), "message");
  return G_SOURCE_REMOVE;
}

void
_gw_window_say (GwWindow   *self,
                const char *text)
{
  g_clear_handle_id (&self->message_source, g_source_remove);
  g_clear_pointer (&self->step_study, gw_study_unref);
  if (*text == '\0')
    {
      message_over_cb (self);
      return;
    }

  gtk_inscription_set_text (self->foot, text);
  gtk_widget_add_css_class (GTK_WIDGET (self->foot), "message");
  self->message_source = g_timeout_add_seconds (READING_TIME, message_over_cb, self);
}

void
_gw_window_say_step (GwWindow   *self,
                     const char *text)
{
  GwStudy *study = gw_document_get_study (self->document);

  _gw_window_say (self, text);
  if (*text != '\0' && study != NULL)
    self->step_study = gw_study_ref (study);
}

/* "4 options · baseline: Folded foam board" */
static char *
options_text (const GwEvaluation *evaluation)
{
  const guint      n = evaluation->outcomes->len;
  g_autofree char *count =
    g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u option", "%u options", n), n);

  return g_strdup_printf (_ ("%s · baseline: %s"), count,
                          gw_evaluation_outcome (evaluation, evaluation->baseline)->name);
}

static void
update_title (GwWindow *self)
{
  GwEvaluation    *evaluation = _gw_window_get_evaluation (self);
  const char      *title = evaluation != NULL ? gw_study_title (evaluation->study) : "Gramwright";
  g_autofree char *subtitle = NULL, *more = NULL, *full = NULL;

  if (evaluation != NULL)
    {
      g_autofree char *file = gw_document_get_name (self->document);
      g_autofree char *options = options_text (evaluation);

      if (_gw_window_is_edited (self))
        {
          subtitle = g_strdup_printf (_ ("%s, edited"), file);
          full = g_strdup_printf (_ ("%s (edited)"), title);
        }
      else
        subtitle = g_strdup (file);
      more = g_strdup_printf ("%s\n%s · %s", title, subtitle, options);
    }

  gtk_window_set_title (GTK_WINDOW (self), full != NULL ? full : title);
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->subtitle, subtitle != NULL ? subtitle : "");
  gtk_widget_set_visible (GTK_WIDGET (self->subtitle), subtitle != NULL);
  /* There is room for the name of the file alone beside the buttons of a small window. */
  gtk_widget_set_tooltip_text (gtk_widget_get_parent (GTK_WIDGET (self->subtitle)), more);
}

static void
update_actions (GwWindow *self)
{
  static const char *const of_sheet[] = { "win.print", "win.export", "win.copy-figure",
                                          "win.next-option", "win.previous-option" };
  GtkWidget               *widget = GTK_WIDGET (self);
  const gboolean           has_sheet = _gw_window_get_evaluation (self) != NULL;

  for (guint i = 0; i < G_N_ELEMENTS (of_sheet); i++)
    gtk_widget_action_set_enabled (widget, of_sheet[i], has_sheet);
  gtk_widget_action_set_enabled (widget, "win.reload", !gw_window_is_empty (self));
  for (guint i = 0; i < G_N_ELEMENTS (self->sheet_buttons); i++)
    gtk_widget_set_visible (self->sheet_buttons[i], has_sheet);
}

static void
units_cb (GwWindow *self)
{
  const GwUnits *units = gw_application_get_units (_gw_window_get_application (self));

  if (self->desk != NULL)
    gw_desk_set_units (self->desk, units);
  if (self->new_study != NULL)
    gw_new_study_set_units (self->new_study, units);
}

static GwProblemPage *
need_problem (GwWindow *self)
{
  if (self->problem == NULL)
    {
      self->problem = g_object_new (GW_TYPE_PROBLEM_PAGE, NULL);
      gtk_widget_set_name (GTK_WIDGET (self->problem), "problem");
      gtk_stack_add_named (self->pages, GTK_WIDGET (self->problem), "problem");
    }

  return self->problem;
}

static void
update_page (GwWindow *self)
{
  const char *page = "empty";

  if (_gw_window_get_evaluation (self) != NULL)
    page = "sheet";
  else if (self->candidate != NULL && gw_document_get_error (self->candidate) != NULL)
    {
      gw_problem_page_show (need_problem (self), self->candidate);
      page = "problem";
    }
  else if (self->candidate != NULL)
    page = "waiting";
  else if (self->is_asking)
    page = "new";

  if (g_strcmp0 (gtk_stack_get_visible_child_name (self->pages), page) == 0)
    return;

  gtk_stack_set_visible_child_name (self->pages, page);
  /* Else the focus would stay on a button that is gone. */
  if (g_str_equal (page, "sheet"))
    gtk_widget_grab_focus (GTK_WIDGET (self->desk));
  else if (g_str_equal (page, "new"))
    gtk_widget_grab_focus (GTK_WIDGET (self->new_study));
  else if (g_str_equal (page, "problem"))
    gtk_widget_grab_focus (GTK_WIDGET (self->problem));
}

/* A broken file beside a sheet that can be shown: the new file, or the one on the screen. */
static void
update_bar (GwWindow *self)
{
  const gboolean is_other =
    self->candidate != NULL && gw_document_get_error (self->candidate) != NULL;
  GwDocument *broken = is_other ? self->candidate : self->document;
  /* That the file is gone is said by the notice, which offers to save. */
  const gboolean is_revealed =
    _gw_window_get_evaluation (self) != NULL && gw_document_get_error (broken) != NULL &&
    (is_other || gw_document_get_on_disk (broken) != GW_ON_DISK_GONE);
  g_autofree char *name = NULL, *title = NULL;

  gtk_widget_set_visible (self->bar, is_revealed);
  if (!is_revealed)
    return;

  name = gw_document_get_name (broken);
  title = g_strdup_printf (
    is_other ? _ ("%s cannot be opened.")
             : _ ("%s cannot be used as it is now. The sheet shows it as it was before."),
    name);
  gtk_label_set_text (self->bar_title, title);
  gtk_label_set_text (self->bar_reason, gw_problem_text (broken));
  gtk_widget_set_visible (self->bar_close, is_other);
}

void
_gw_window_update (GwWindow *self)
{
  update_title (self);
  update_actions (self);
  update_page (self);
  update_bar (self);
  _gw_window_update_files (self);
  _gw_window_update_undo (self);
  _gw_window_update_notice (self);
}

/* Sections take seconds, so it is said how far they are; bands do not. */
static void
say_progress (GwWindow *self)
{
  g_autofree char *text = NULL;
  guint            done, all;

  if (self->document != NULL && gw_document_get_progress (self->document, &done, &all))
    text = g_strdup_printf (_ ("Computing sections: %u of %u polars"), done, all);
  gtk_label_set_label (GTK_LABEL (self->working), text != NULL ? text : _ ("Computing…"));
}

static gboolean
wait_cb (gpointer data)
{
  GwWindow *self = data;

  say_progress (self);
  gtk_widget_set_visible (self->waiting, TRUE);
  gtk_widget_set_visible (self->spinner, TRUE);
  return G_SOURCE_CONTINUE;
}

static void
update_busy (GwWindow *self)
{
  const gboolean is_busy = (self->document != NULL && gw_document_is_busy (self->document)) ||
                           (self->candidate != NULL && gw_document_is_busy (self->candidate));

  if (is_busy && self->wait_source == 0)
    self->wait_source = g_timeout_add (PATIENCE, wait_cb, self);
  if (is_busy)
    return;

  g_clear_handle_id (&self->wait_source, g_source_remove);
  gtk_widget_set_visible (self->waiting, FALSE);
  gtk_widget_set_visible (self->spinner, FALSE);
}

static void
let_go (GwWindow    *self,
        GwDocument **document)
{
  if (*document != NULL)
    g_signal_handlers_disconnect_by_data (*document, self);
  g_clear_object (document);
}

static void
shown_cb (GwWindow *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SHOWN]);
}

static void
document_changed_cb (GwWindow   *self,
                     GwDocument *document)
{
  GwEvaluation *evaluation = gw_document_get_evaluation (document);

  /* What is only tried changes nothing around the sheet. */
  if (document == self->document && gw_document_get_former (document) != NULL)
    return;

  if (self->step_study != NULL && gw_document_get_study (document) != self->step_study)
    _gw_window_say (self, "");

  if (document == self->candidate && evaluation != NULL && _gw_window_is_edited (self))
    {
      /* Edited while it was waited for. */
      GwWindow *other = gw_window_new (_gw_window_get_application (self));

      g_signal_handlers_disconnect_by_data (document, self);
      gw_window_show_document (other, g_steal_pointer (&self->candidate));
      gtk_window_present (GTK_WINDOW (other));
      update_busy (self);
    }
  else if (document == self->candidate && evaluation != NULL)
    {
      let_go (self, &self->document);
      self->document = g_steal_pointer (&self->candidate);
      gw_desk_set_document (self->desk, self->document);
      g_signal_connect_swapped (self->document, "notify::shown", G_CALLBACK (shown_cb), self);
      g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_SHOWN]);
      _gw_window_was_opened (self);
    }

  _gw_window_update (self);
}

gboolean
gw_window_is_empty (GwWindow *self)
{
  g_return_val_if_fail (GW_IS_WINDOW (self), TRUE);

  return self->document == NULL && self->candidate == NULL;
}

GwDocument *
gw_window_get_document (GwWindow *self)
{
  g_return_val_if_fail (GW_IS_WINDOW (self), NULL);

  return self->document;
}

/* What the width of the window made of it is not kept. */
static void
outline_cb (GwDesk     *desk,
            GParamSpec *property,
            GSettings  *settings)
{
  gboolean is_open;

  g_object_get (desk, "outline", &is_open, NULL);
  if (gw_desk_is_outline_chosen (desk))
    g_settings_set_boolean (settings, "is-outline-open", is_open);
}

/* Here and not with the window: the thread is reading meanwhile. */
static void
need_desk (GwWindow *self)
{
  GwApplication *application = _gw_window_get_application (self);
  GSettings     *settings = gw_application_get_settings (application);
  g_autoptr (GVariant) outline = NULL;

  if (self->desk != NULL)
    return;

  outline = g_settings_get_user_value (settings, "is-outline-open");

  self->desk = g_object_new (GW_TYPE_DESK, NULL);
  g_signal_connect_swapped (self->desk, "says", G_CALLBACK (_gw_window_say), self);
  gw_desk_set_units (self->desk, gw_application_get_units (application));
  gw_desk_set_dark (self->desk, self->is_dark);
  if (outline != NULL)
    g_object_set (self->desk, "outline", g_variant_get_boolean (outline), NULL);
  g_signal_connect_object (self->desk, "notify::outline", G_CALLBACK (outline_cb), settings, 0);
  g_settings_bind (settings, "is-form-open", self->desk, "form", AS_THE_LAST);
  g_settings_bind (settings, "outline-width", self->desk, "outline-width", AS_THE_LAST);
  g_settings_bind (settings, "form-width", self->desk, "form-width", AS_THE_LAST);
  gtk_stack_add_named (self->pages, GTK_WIDGET (self->desk), "sheet");
  _gw_window_init_actions (self);
}

void
gw_window_show_document (GwWindow   *self,
                         GwDocument *document)
{
  g_return_if_fail (GW_IS_WINDOW (self));
  g_return_if_fail (GW_IS_DOCUMENT (document));

  need_desk (self);
  let_go (self, &self->candidate);
  self->candidate = document;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (document_changed_cb), self);
  g_signal_connect_swapped (document, "notify::busy", G_CALLBACK (update_busy), self);
  document_changed_cb (self, document);
  update_busy (self);
}

static void
begin_study_cb (GwWindow *self,
                GwStudy  *study)
{
  self->is_asking = FALSE;
  gw_window_show_document (self, gw_document_new_study (study));
}

static void
cancel_study_cb (GwWindow *self)
{
  self->is_asking = FALSE;
  update_page (self);
}

/* Few windows ask it, so that others open sooner. */
static void
need_new_study (GwWindow *self)
{
  if (self->new_study != NULL)
    return;

  self->new_study = GW_NEW_STUDY (gw_new_study_new ());
  gtk_widget_set_name (GTK_WIDGET (self->new_study), "new_study");
  g_signal_connect_swapped (self->new_study, "begin", G_CALLBACK (begin_study_cb), self);
  g_signal_connect_swapped (self->new_study, "cancel", G_CALLBACK (cancel_study_cb), self);
  g_object_bind_property (self, "dark", self->new_study, "dark", G_BINDING_SYNC_CREATE);
  gw_new_study_set_units (self->new_study,
                          gw_application_get_units (_gw_window_get_application (self)));
  gtk_stack_add_named (self->pages, GTK_WIDGET (self->new_study), "new");
}

void
_gw_window_ask_shape (GwWindow *self)
{
  need_new_study (self);
  self->is_asking = TRUE;
  gw_new_study_start (self->new_study);
  update_page (self);
}

void
gw_window_open (GwWindow *self,
                GFile    *file)
{
  g_return_if_fail (GW_IS_WINDOW (self));
  g_return_if_fail (G_IS_FILE (file));

  if (_gw_window_goes_elsewhere (self, file))
    return;

  if (self->document == NULL || gw_document_get_file (self->document) == NULL ||
      !g_file_equal (file, gw_document_get_file (self->document)))
    {
      gw_window_show_document (self, gw_document_new (file));
      return;
    }

  let_go (self, &self->candidate);
  gw_document_reload (self->document);
  _gw_window_update (self);
  update_busy (self);
}

void
_gw_window_dismiss (GwWindow *self)
{
  let_go (self, &self->candidate);
  _gw_window_update (self);
  update_busy (self);
}

static void
set_dark (GwWindow *self,
          gboolean  is_dark)
{
  if (self->is_dark == is_dark)
    return;

  self->is_dark = is_dark;
  if (self->desk != NULL)
    gw_desk_set_dark (self->desk, is_dark);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_DARK]);
}

static void
gw_window_get_property (GObject    *object,
                        guint       id,
                        GValue     *value,
                        GParamSpec *pspec)
{
  GwWindow *self = GW_WINDOW (object);

  switch (id)
    {
    case PROP_SHOWN:
      g_value_set_int (
        value, self->document != NULL ? (int) gw_document_get_shown (self->document) : 0);
      break;
    case PROP_DARK:
      g_value_set_boolean (value, self->is_dark);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_window_set_property (GObject      *object,
                        guint         id,
                        const GValue *value,
                        GParamSpec   *pspec)
{
  GwWindow *self = GW_WINDOW (object);

  switch (id)
    {
    case PROP_SHOWN:
      if (self->document != NULL)
        gw_document_set_shown (self->document, (guint) g_value_get_int (value));
      break;
    case PROP_DARK:
      set_dark (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static gboolean
drop_cb (GtkDropTarget *target,
         const GValue  *value,
         double         x,
         double         y,
         GwWindow      *self)
{
  GSList *files = g_value_get_boxed (value);

  if (files == NULL)
    return FALSE;

  _gw_window_drop (self, files);
  return TRUE;
}

static gboolean
gw_window_close_request (GtkWindow *window)
{
  return _gw_window_keeps_open (GW_WINDOW (window)) ||
         GTK_WINDOW_CLASS (gw_window_parent_class)->close_request (window);
}

/* A picture and not a name: the icon theme has it only once the program is installed. */
static gboolean
icon_cb (gpointer data)
{
  GdkSurface *surface = gtk_native_get_surface (data);
  g_autoptr (GdkTexture) icon = gw_application_icon_new ();
  GList icons = { .data = icon };

  if (surface != NULL)
    gdk_toplevel_set_icon_list (GDK_TOPLEVEL (surface), &icons);
  return G_SOURCE_REMOVE;
}

static void
gw_window_realize (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (gw_window_parent_class)->realize (widget);

  /* The first frame does not wait for it. */
  g_idle_add_full (G_PRIORITY_LOW, icon_cb, g_object_ref (widget), g_object_unref);
}

static void
close_popovers (GtkWidget *widget)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    close_popovers (child);
  if (GTK_IS_POPOVER (widget) && gtk_widget_get_mapped (widget))
    gtk_popover_popdown (GTK_POPOVER (widget));
}

/* A popover that goes with its window, as GTK 4.8 does it, keeps the keyboard from all others. */
static void
gw_window_unmap (GtkWidget *widget)
{
  close_popovers (widget);
  GTK_WIDGET_CLASS (gw_window_parent_class)->unmap (widget);
}

static void
gw_window_dispose (GObject *object)
{
  GwWindow *self = GW_WINDOW (object);

  if (self->desk != NULL)
    {
      gw_desk_set_document (self->desk, NULL);
      _gw_window_remove_actions (self);
      self->desk = NULL;
    }
  let_go (self, &self->candidate);
  let_go (self, &self->document);
  _gw_window_dispose_notice (self);
  _gw_window_dispose_menus (self);
  g_clear_handle_id (&self->wait_source, g_source_remove);
  g_clear_handle_id (&self->message_source, g_source_remove);
  g_clear_pointer (&self->step_study, gw_study_unref);
  gtk_widget_dispose_template (GTK_WIDGET (self), GW_TYPE_WINDOW);
  self->new_study = NULL;
  self->problem = NULL;

  G_OBJECT_CLASS (gw_window_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags flags = G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS;

  properties[PROP_SHOWN] = g_param_spec_int ("shown", NULL, NULL, 0, G_MAXINT, 0, flags);
  properties[PROP_DARK] = g_param_spec_boolean ("dark", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  static const char *const buttons[GW_SHEET_BUTTONS] = {
    "save_button",
    "undo_button",
    "redo_button",
    "outline_button",
    "form_button",
    "table_button",
    "export_button",
  };

  gtk_widget_class_set_template_from_resource (widget_class, "/org/gramwright/desk/gw-window.ui");
  gtk_widget_class_bind_template_child (widget_class, GwWindow, title);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, subtitle);
  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    gtk_widget_class_bind_template_child_full (
      widget_class, buttons[i], FALSE,
      G_STRUCT_OFFSET (GwWindow, sheet_buttons) + (gssize) (i * sizeof (GtkWidget *)));
  gtk_widget_class_bind_template_child (widget_class, GwWindow, bar);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, bar_close);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, bar_title);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, bar_reason);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, waiting);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, spinner);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, working);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, foot);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, start);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, notice);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, menu);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, undo_menu);
  gtk_widget_class_bind_template_child (widget_class, GwWindow, recent_menu);
}

static void
gw_window_class_init (GwWindowClass *klass)
{
  GObjectClass   *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = gw_window_get_property;
  object_class->set_property = gw_window_set_property;
  object_class->dispose = gw_window_dispose;
  widget_class->realize = gw_window_realize;
  widget_class->unmap = gw_window_unmap;
  GTK_WINDOW_CLASS (klass)->close_request = gw_window_close_request;

  install_properties (object_class);
  _gw_window_install_actions (widget_class);
  g_type_ensure (GW_TYPE_NOTICE);
  g_type_ensure (GW_TYPE_START_PAGE);
  bind_template (widget_class);
}

static void
gw_window_init (GwWindow *self)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  gtk_widget_init_template (GTK_WIDGET (self));
  gw_menu_attach (self->menu_button, G_MENU_MODEL (self->menu));
  gw_direction_align (self->foot);
  g_signal_connect (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
  message_over_cb (self);
  _gw_window_init_menus (self);
  _gw_window_update (self);
}

GwWindow *
gw_window_new (GwApplication *application)
{
  GwWindow  *self = g_object_new (GW_TYPE_WINDOW, "application", application, NULL);
  GSettings *settings = gw_application_get_settings (application);

  g_settings_bind (settings, "window-width", self, "default-width", AS_THE_LAST);
  g_settings_bind (settings, "window-height", self, "default-height", AS_THE_LAST);
  g_settings_bind (settings, "is-maximized", self, "maximized", AS_THE_LAST);
  g_signal_connect_object (application, "notify::units", G_CALLBACK (units_cb), self,
                           G_CONNECT_SWAPPED);
  units_cb (self);
  g_object_bind_property (gw_application_get_appearance (application), "dark", self, "dark",
                          G_BINDING_BIDIRECTIONAL | G_BINDING_SYNC_CREATE);
  gw_start_page_set_leftovers (self->start, gw_application_get_leftovers (application));
  return self;
}
