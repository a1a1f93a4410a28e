/* gw-application.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "config.h"

#include "desk/gw-application.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-help.h"
#include "desk/gw-window.h"

#define APPLICATION_ID "org.gramwright.Gramwright"

struct _GwApplication
{
  GtkApplication parent_instance;

  GSettings    *settings;
  GwAppearance *appearance;
  GtkWindow    *help; /* weak */
};

G_DEFINE_FINAL_TYPE (GwApplication, gw_application, GTK_TYPE_APPLICATION)

static GwWindow *
present_new_window (GwApplication *self)
{
  GwWindow *window = gw_window_new (self);

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
  const char *comments = _ ("Compares ways to build the same model aircraft. Its figures are "
                            "estimates for unmanned models: no substitute for a structural test, "
                            "a range check, a careful first flight, or local law.");

  gtk_show_about_dialog (gtk_application_get_active_window (self),
                         "program-name", "Gramwright",
                         "logo-icon-name", APPLICATION_ID,
                         "version", PACKAGE_VERSION,
                         "comments", comments,
                         "copyright", "© 2026 The Gramwright authors",
                         "license-type", GTK_LICENSE_GPL_3_0,
                         "translator-credits", _ ("translator-credits"),
                         NULL);
}

/* Each window is asked, as if it were closed by hand; with the last one the program ends. */
static void
quit_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       self)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (self));

  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_close (l->data);
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
    { "win.reload", { "F5", "<Control>r" } },
    { "win.print", { "<Control>p" } },
    { "win.export", { "<Control>e" } },
    { "win.dark", { "<Control>d" } },
    { "win.drawer", { "F9" } },
    { "win.show-help-overlay", { "<Control>question" } },
    { "app.help", { "F1" } },
    { "window.close", { "<Control>w" } },
    { "app.new-window", { "<Control><Shift>n" } },
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

static void
gw_application_startup (GApplication *application)
{
  GwApplication     *self = GW_APPLICATION (application);
  const GActionEntry entries[] = {
    { "new-window", new_window_cb },
    { "help", help_cb },
    { "about", about_cb },
    { "quit", quit_cb },
  };
  g_autoptr (GAction) theme = NULL, paper = NULL;

  G_APPLICATION_CLASS (gw_application_parent_class)->startup (application);

  gtk_window_set_default_icon_name (APPLICATION_ID);
  self->settings = g_settings_new (APPLICATION_ID);
  self->appearance =
    gw_appearance_new (self->settings, g_application_get_dbus_connection (application));
  theme = g_settings_create_action (self->settings, "theme");
  paper = g_settings_create_action (self->settings, "paper");
  g_action_map_add_action (G_ACTION_MAP (self), theme);
  g_action_map_add_action (G_ACTION_MAP (self), paper);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  set_accels (GTK_APPLICATION (self));
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

  g_clear_weak_pointer (&self->help);
  g_clear_object (&self->appearance);
  g_clear_object (&self->settings);

  G_OBJECT_CLASS (gw_application_parent_class)->dispose (object);
}

static void
gw_application_class_init (GwApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_application_dispose;
  application_class->startup = gw_application_startup;
  application_class->activate = gw_application_activate;
  application_class->open = gw_application_files;
}

static void
gw_application_init (GwApplication *self)
{
}

GwApplication *
gw_application_new (GApplicationFlags flags)
{
  /* The path holds icons and the list of shortcuts, which GTK finds there by itself. */
  return g_object_new (GW_TYPE_APPLICATION, "application-id", APPLICATION_ID, "flags", flags,
                       "resource-base-path", "/org/gramwright/desk", NULL);
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

void
gw_application_open (GwApplication *self,
                     GFile         *file,
                     GtkWindow     *window)
{
  g_return_if_fail (GW_IS_APPLICATION (self));
  g_return_if_fail (G_IS_FILE (file));

  if (!GW_IS_WINDOW (window) || !gw_window_is_empty (GW_WINDOW (window)))
    window = GTK_WINDOW (gw_window_new (self));
  gw_window_open (GW_WINDOW (window), file);
  gtk_window_present (window);
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
