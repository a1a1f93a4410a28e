/* gw-application.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "desk/gw-application-private.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-help.h"
#include "desk/gw-language.h"
#include "desk/gw-preferences.h"
#include "desk/gw-recovery.h"
#include "desk/gw-window-private.h"
#include "study/gw-catalogue.h"

#define APPLICATION_ID "org.gramwright.Gramwright"

G_DEFINE_FINAL_TYPE (GwApplication, gw_application, GTK_TYPE_APPLICATION)

enum
{
  PROP_0,
  PROP_UNITS,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

static const char *const unit_keys[] = {
  "length-unit",
  "mass-unit",
  "speed-unit",
  "temperature-unit",
  "pressure-unit",
  "distance-unit",
};

static void
update_units (GwApplication *self)
{
  GwUnits units = *gw_units_standard ();

  for (guint i = 0; i < G_N_ELEMENTS (unit_keys); i++)
    {
      g_autofree char *name = g_settings_get_string (self->settings, unit_keys[i]);

      gw_units_choose (&units, name);
    }
  if (gw_units_equal (&units, &self->units))
    return;

  self->units = units;
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_UNITS]);
}

static GwWindow *
present_new_window (GwApplication *self)
{
  GwWindow *window;

  gw_leftovers_scan (self->leftovers);
  window = gw_window_new (self);
  gtk_window_present (GTK_WINDOW (window));
  return window;
}

static void
new_window_cb (GSimpleAction *action,
               GVariant      *parameter,
               gpointer       self)
{
  present_new_window (self);
}

static void
preferences_cb (GSimpleAction *action,
                GVariant      *parameter,
                gpointer       data)
{
  GwApplication *self = data;
  GtkWindow     *parent = gtk_application_get_active_window (data);

  if (self->preferences == NULL)
    g_set_weak_pointer (&self->preferences, gw_preferences_new (parent, self->settings));
  gtk_window_present (self->preferences);
}

static void
help_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  GwApplication *self = data;

  if (self->help == NULL)
    g_set_weak_pointer (&self->help, GTK_WINDOW (gw_help_new (data)));
  gtk_window_present (self->help);
}

static void
about_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       self)
{
  g_autoptr (GdkTexture) logo = gw_application_icon_new ();
  const char *comments = _ ("Compares ways to build the same model aircraft. Its figures are "
                            "estimates for unmanned models: no substitute for a structural test, "
                            "a range check, a careful first flight, or local law.");

  gtk_show_about_dialog (gtk_application_get_active_window (self),
                         "program-name", "Gramwright",
                         "logo", logo,
                         "version", PACKAGE_VERSION,
                         "comments", comments,
                         "copyright", "© 2026 The Gramwright authors",
                         "license-type", GTK_LICENSE_GPL_3_0,
                         "translator-credits", _ ("translator-credits"),
                         NULL);
}

static gboolean
has_edits (GwApplication *self)
{
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (GW_IS_WINDOW (l->data) && _gw_window_is_edited (l->data))
      return TRUE;

  return FALSE;
}

/* With the last window the program ends. Those without edits stay until all others are
 * answered, so that one that stays takes nothing away. */
static void
quit_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  GwApplication *self = data;
  const gboolean must_ask = has_edits (self);
  /* One may take another with it, as a window its preferences. */
  GList *windows = g_list_copy_deep (gtk_application_get_windows (GTK_APPLICATION (self)),
                                     (GCopyFunc) (void *) g_object_ref, NULL);

  self->is_quitting = must_ask;
  for (GList *l = windows; l != NULL; l = l->next)
    if (!must_ask || (GW_IS_WINDOW (l->data) && _gw_window_is_edited (l->data)))
      gtk_window_close (l->data);
  g_list_free_full (windows, g_object_unref);
}

static void
gw_application_window_removed (GtkApplication *application,
                               GtkWindow      *window)
{
  GwApplication *self = GW_APPLICATION (application);

  GTK_APPLICATION_CLASS (gw_application_parent_class)->window_removed (application, window);

  if (self->is_quitting && !has_edits (self))
    quit_cb (NULL, NULL, self);
}

void
gw_application_stop_quitting (GwApplication *self)
{
  g_return_if_fail (GW_IS_APPLICATION (self));

  if (!self->is_quitting)
    return;

  self->is_quitting = FALSE;
  for (GList *l = gtk_application_get_windows (GTK_APPLICATION (self)); l != NULL; l = l->next)
    if (GW_IS_WINDOW (l->data) && GW_WINDOW (l->data)->ask == GW_ASK_CLOSE)
      _gw_window_stop_asking (l->data);
}

static void
set_accels (GtkApplication *application)
{
  static const struct
  {
    const char *action;
    const char *accels[3];
  } accels[] = {
    { "win.new", { "<Control>n" } },
    { "win.open", { "<Control>o" } },
    { "win.save", { "<Control>s" } },
    { "win.save-as", { "<Control><Shift>s" } },
    { "win.reload", { "F5", "<Control>r" } },
    { "win.print", { "<Control>p" } },
    { "win.export", { "<Control>e" } },
    { "win.dark", { "<Control>d" } },
    { "win.outline", { "F9" } },
    { "win.form", { "F8" } },
    { "win.table", { "F6" } },
    { "win.sections", { "F7" } },
    { "win.copy-figure::sheet", { "<Control><Shift>c" } },
    { "win.keys", { "<Control>question" } },
    { "app.help", { "F1" } },
    { "window.close", { "<Control>w" } },
    { "app.new-window", { "<Control><Shift>n" } },
    { "app.preferences", { "<Control>comma" } },
    { "app.quit", { "<Control>q" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (application, accels[i].action, accels[i].accels);

  for (int i = 0; i < 9; i++)
    {
      g_autofree char *action = g_strdup_printf ("win.shown(%d)", i);
      g_autofree char *accel = g_strdup_printf ("<Alt>%d", i + 1);

      gtk_application_set_accels_for_action (application, action,
                                             (const char *const[]){ accel, NULL });
    }
}

static gpointer
read_catalogue (gpointer data)
{
  gw_catalogue_get ();
  return NULL;
}

static void
gw_application_startup (GApplication *application)
{
  GwApplication     *self = GW_APPLICATION (application);
  const GActionEntry entries[] = {
    { "new-window", new_window_cb },
    { "preferences", preferences_cb },
    { "help", help_cb },
    { "about", about_cb },
    { "quit", quit_cb },
  };
  g_autoptr (GAction) theme = NULL, paper = NULL;

  /* Every study needs it; while GTK reads its styles is a good time. */
  self->reader = g_thread_new ("catalogue", read_catalogue, NULL);
  G_APPLICATION_CLASS (gw_application_parent_class)->startup (application);

  gw_leftovers_scan (self->leftovers);
  self->settings = g_settings_new (APPLICATION_ID);
  self->appearance =
    gw_appearance_new (self->settings, g_application_get_dbus_connection (application));
  for (guint i = 0; i < G_N_ELEMENTS (unit_keys); i++)
    {
      g_autofree char *changed = g_strconcat ("changed::", unit_keys[i], NULL);

      g_signal_connect_object (self->settings, changed, G_CALLBACK (update_units), self,
                               G_CONNECT_SWAPPED);
    }
  update_units (self);
  theme = g_settings_create_action (self->settings, "theme");
  paper = g_settings_create_action (self->settings, "paper");
  g_action_map_add_action (G_ACTION_MAP (self), theme);
  g_action_map_add_action (G_ACTION_MAP (self), paper);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  set_accels (GTK_APPLICATION (self));
}

static void
gw_application_shutdown (GApplication *application)
{
  G_APPLICATION_CLASS (gw_application_parent_class)->shutdown (application);

  gw_recovery_end ();
}

static void
gw_application_activate (GApplication *application)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));

  if (window != NULL)
    gtk_window_present (window);
  else
    present_new_window (GW_APPLICATION (application));
}

static void
gw_application_files (GApplication *application,
                      GFile       **files,
                      int           n_files,
                      const char   *hint)
{
  for (int i = 0; i < n_files; i++)
    gw_application_open (GW_APPLICATION (application), files[i],
                         gtk_application_get_active_window (GTK_APPLICATION (application)));
}

static void
gw_application_dispose (GObject *object)
{
  GwApplication *self = GW_APPLICATION (object);

  g_clear_weak_pointer (&self->preferences);
  g_clear_weak_pointer (&self->help);
  g_clear_pointer (&self->reader, g_thread_join);
  g_clear_object (&self->appearance);
  g_clear_object (&self->settings);
  g_clear_object (&self->leftovers);

  G_OBJECT_CLASS (gw_application_parent_class)->dispose (object);
}

static void
gw_application_get_property (GObject    *object,
                             guint       id,
                             GValue     *value,
                             GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_UNITS:
      g_value_set_pointer (value, &GW_APPLICATION (object)->units);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_application_class_init (GwApplicationClass *klass)
{
  GObjectClass      *object_class = G_OBJECT_CLASS (klass);
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  object_class->get_property = gw_application_get_property;
  object_class->dispose = gw_application_dispose;
  application_class->startup = gw_application_startup;
  application_class->shutdown = gw_application_shutdown;
  application_class->activate = gw_application_activate;
  application_class->open = gw_application_files;
  GTK_APPLICATION_CLASS (klass)->window_removed = gw_application_window_removed;

  properties[PROP_UNITS] =
    g_param_spec_pointer ("units", NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
gw_application_init (GwApplication *self)
{
  self->units = *gw_units_standard ();
  self->leftovers = g_list_store_new (GW_TYPE_LEFTOVER);
}

GwApplication *
gw_application_new (GApplicationFlags flags)
{
  GwApplication *self =
    g_object_new (GW_TYPE_APPLICATION, "application-id", APPLICATION_ID, "flags", flags, NULL);

  /* GTK reads the icons anew when it finds more of them there. */
  g_application_set_resource_base_path (G_APPLICATION (self), NULL);
  return self;
}

GdkTexture *
gw_application_icon_new (void)
{
  return gdk_texture_new_from_resource ("/org/gramwright/desk/" APPLICATION_ID ".svg");
}

GSettings *
gw_application_get_settings (GwApplication *self)
{
  g_return_val_if_fail (GW_IS_APPLICATION (self), NULL);

  return self->settings;
}

GwAppearance *
gw_application_get_appearance (GwApplication *self)
{
  g_return_val_if_fail (GW_IS_APPLICATION (self), NULL);

  return self->appearance;
}

const GwPaper *
gw_application_get_paper (GwApplication *self)
{
  g_autofree char *name = NULL;

  g_return_val_if_fail (GW_IS_APPLICATION (self), NULL);

  name = g_settings_get_string (self->settings, "paper");
  return gw_paper_find (name);
}

const GwUnits *
gw_application_get_units (GwApplication *self)
{
  g_return_val_if_fail (GW_IS_APPLICATION (self), gw_units_standard ());

  return &self->units;
}

GwWindow *
_gw_application_need_empty (GwApplication *self,
                            GtkWindow     *window)
{
  if (GW_IS_WINDOW (window) && gw_window_is_empty (GW_WINDOW (window)))
    return GW_WINDOW (window);

  return gw_window_new (self);
}

void
gw_application_open (GwApplication *self,
                     GFile         *file,
                     GtkWindow     *window)
{
  GwWindow *own;

  g_return_if_fail (GW_IS_APPLICATION (self));
  g_return_if_fail (G_IS_FILE (file));

  own = _gw_application_need_empty (self, window);
  gw_window_open (own, file);
  gtk_window_present (GTK_WINDOW (own));
}

/* Without it g_settings_new() would end the program without a word to a person. */
static gboolean
has_schema (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = NULL;

  if (source != NULL)
    schema = g_settings_schema_source_lookup (source, APPLICATION_ID, TRUE);
  return schema != NULL;
}

void
gw_application_apply_language (void)
{
  g_autoptr (GSettings) settings = has_schema () ? g_settings_new (APPLICATION_ID) : NULL;

  if (settings != NULL)
    gw_language_apply (settings);
}

int
gw_application_run (int   argc,
                    char *argv[])
{
  g_autoptr (GwApplication) application = NULL;

  if (!gtk_init_check ())
    {
      g_printerr ("gramwright: %s\n", _ ("no display; use evaluate, draw, report"));
      return 1;
    }
  if (!has_schema ())
    {
      g_printerr ("gramwright: %s\n",
                  _ ("its settings are not installed; start it with “sh src/start”"));
      return 1;
    }

  g_set_application_name ("Gramwright");
  application = gw_application_new (G_APPLICATION_HANDLES_OPEN);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
