/* gw-appearance.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-appearance.h"

#define PORTAL          "org.freedesktop.portal.Desktop"
#define PORTAL_PATH     "/org/freedesktop/portal/desktop"
#define PORTAL_SETTINGS "org.freedesktop.portal.Settings"
#define PORTAL_GROUP    "org.freedesktop.appearance"
#define PORTAL_KEY      "color-scheme"
#define PORTAL_PATIENCE 1000 /* [ms] */
#define PORTAL_DARK     1

enum
{
  THEME_SYSTEM, /* as in the schema */
  THEME_LIGHT,
  THEME_DARK,
};

struct _GwAppearance
{
  GObject parent_instance;

  GSettings       *settings;
  GDBusConnection *bus;
  GCancellable    *asking;
  guint            subscription;
  GtkCssProvider  *palette, *sheet;
  gboolean         is_desktop_dark, is_dark;
};

G_DEFINE_FINAL_TYPE (GwAppearance, gw_appearance, G_TYPE_OBJECT)

enum
{
  PROP_0,
  PROP_DARK,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];

static void
load_palette (GwAppearance *self)
{
  gtk_css_provider_load_from_resource (self->palette, self->is_dark
                                                        ? "/org/gramwright/desk/gw-dark.css"
                                                        : "/org/gramwright/desk/gw-light.css");
}

static void
apply (GwAppearance *self)
{
  const int      theme = g_settings_get_enum (self->settings, "theme");
  const gboolean is_dark = theme == THEME_DARK || (theme == THEME_SYSTEM && self->is_desktop_dark);

  if (self->is_dark == is_dark)
    return;

  self->is_dark = is_dark;
  load_palette (self);
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", is_dark, NULL);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_DARK]);
}

/* The portal wraps the number in one variant or two. */
static void
take_answer (GwAppearance *self,
             GVariant     *answer)
{
  g_autoptr (GVariant) value = g_variant_ref (answer);

  while (g_variant_is_of_type (value, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *inner = g_variant_get_variant (value);

      g_variant_unref (value);
      value = inner;
    }

  if (g_variant_is_of_type (value, G_VARIANT_TYPE_UINT32))
    self->is_desktop_dark = g_variant_get_uint32 (value) == PORTAL_DARK;
  apply (self);
}

static void
answered_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  /* No portal, no answer in time, or cancelled: then @data may be gone. */
  g_autoptr (GVariant) answer =
    g_dbus_connection_call_finish (G_DBUS_CONNECTION (source), result, NULL);

  if (answer != NULL)
    {
      g_autoptr (GVariant) value = g_variant_get_child_value (answer, 0);

      take_answer (data, value);
    }
}

static void
setting_changed_cb (GDBusConnection *bus,
                    const char      *sender,
                    const char      *path,
                    const char      *interface,
                    const char      *signal,
                    GVariant        *parameters,
                    gpointer         data)
{
  const char *group, *key;
  g_autoptr (GVariant) value = NULL;

  if (!g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;

  g_variant_get (parameters, "(&s&sv)", &group, &key, &value);
  if (g_str_equal (key, PORTAL_KEY))
    take_answer (data, value);
}

static void
ask_desktop (GwAppearance *self)
{
  self->subscription = g_dbus_connection_signal_subscribe (
    self->bus, PORTAL, PORTAL_SETTINGS, "SettingChanged", PORTAL_PATH, PORTAL_GROUP,
    G_DBUS_SIGNAL_FLAGS_NONE, setting_changed_cb, self, NULL);
  self->asking = g_cancellable_new ();
  g_dbus_connection_call (self->bus, PORTAL, PORTAL_PATH, PORTAL_SETTINGS, "Read",
                          g_variant_new ("(ss)", PORTAL_GROUP, PORTAL_KEY), G_VARIANT_TYPE ("(v)"),
                          G_DBUS_CALL_FLAGS_NONE, PORTAL_PATIENCE, self->asking, answered_cb, self);
}

static void
gw_appearance_get_property (GObject    *object,
                            guint       id,
                            GValue     *value,
                            GParamSpec *pspec)
{
  switch (id)
    {
    case PROP_DARK:
      g_value_set_boolean (value, GW_APPEARANCE (object)->is_dark);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_appearance_set_property (GObject      *object,
                            guint         id,
                            const GValue *value,
                            GParamSpec   *pspec)
{
  switch (id)
    {
    case PROP_DARK:
      gw_appearance_set_dark (GW_APPEARANCE (object), g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
gw_appearance_dispose (GObject *object)
{
  GwAppearance *self = GW_APPEARANCE (object);
  GdkDisplay   *display = gdk_display_get_default ();

  g_cancellable_cancel (self->asking);
  g_clear_object (&self->asking);
  if (self->subscription != 0)
    g_dbus_connection_signal_unsubscribe (self->bus, self->subscription);
  self->subscription = 0;
  if (self->settings != NULL)
    g_signal_handlers_disconnect_by_data (self->settings, self);
  if (self->sheet != NULL)
    {
      gtk_style_context_remove_provider_for_display (display, GTK_STYLE_PROVIDER (self->sheet));
      gtk_style_context_remove_provider_for_display (display, GTK_STYLE_PROVIDER (self->palette));
    }
  g_clear_object (&self->sheet);
  g_clear_object (&self->palette);
  g_clear_object (&self->settings);
  g_clear_object (&self->bus);

  G_OBJECT_CLASS (gw_appearance_parent_class)->dispose (object);
}

static void
gw_appearance_class_init (GwAppearanceClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = gw_appearance_get_property;
  object_class->set_property = gw_appearance_set_property;
  object_class->dispose = gw_appearance_dispose;

  properties[PROP_DARK] =
    g_param_spec_boolean ("dark", NULL, NULL, FALSE,
                          G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
}

static void
gw_appearance_init (GwAppearance *self)
{
  GdkDisplay *display = gdk_display_get_default ();

  self->palette = gtk_css_provider_new ();
  self->sheet = gtk_css_provider_new ();
  load_palette (self);
  gtk_css_provider_load_from_resource (self->sheet, "/org/gramwright/desk/gw-desk.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (self->palette),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (self->sheet),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

GwAppearance *
gw_appearance_new (GSettings       *settings,
                   GDBusConnection *bus)
{
  GwAppearance *self = g_object_new (GW_TYPE_APPEARANCE, NULL);

  self->settings = g_object_ref (settings);
  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme",
                &self->is_desktop_dark, NULL);
  g_signal_connect_swapped (settings, "changed::theme", G_CALLBACK (apply), self);
  apply (self);
  if (bus != NULL)
    {
      self->bus = g_object_ref (bus);
      ask_desktop (self);
    }

  return self;
}

gboolean
gw_appearance_get_dark (GwAppearance *self)
{
  g_return_val_if_fail (GW_IS_APPEARANCE (self), FALSE);

  return self->is_dark;
}

void
gw_appearance_set_dark (GwAppearance *self,
                        gboolean      is_dark)
{
  g_return_if_fail (GW_IS_APPEARANCE (self));

  if (self->is_dark != is_dark)
    g_settings_set_enum (self->settings, "theme", is_dark ? THEME_DARK : THEME_LIGHT);
}
