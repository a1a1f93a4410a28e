/* test-desk-appearance.c - light or dark: the user's choice, else the desktop's
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-appearance.h"
#include "desk-wait.h"

enum
{
  SYSTEM, /* as in the schema */
  LIGHT,
  DARK,
};

static const char portal_xml[] =
  "<node><interface name='org.freedesktop.portal.Settings'>"
  "<method name='Read'><arg type='s' direction='in'/><arg type='s' direction='in'/>"
  "<arg type='v' direction='out'/></method>"
  "<signal name='SettingChanged'><arg type='s'/><arg type='s'/><arg type='v'/></signal>"
  "</interface></node>";

/* A desktop of our own: a bus, and on it what answers for the user's choice. */
typedef struct
{
  GTestDBus       *bus;
  GDBusConnection *service, *client;
  guint32          scheme; /* 1: dark */
  guint            n_questions;
  gboolean         is_mute; /* never answers */
} Desktop;

static GDBusConnection *
connect_to (GTestDBus *bus)
{
  g_autoptr (GError) error = NULL;
  GDBusConnection *connection = g_dbus_connection_new_for_address_sync (
    g_test_dbus_get_bus_address (bus),
    G_DBUS_CONNECTION_FLAGS_AUTHENTICATION_CLIENT | G_DBUS_CONNECTION_FLAGS_MESSAGE_BUS_CONNECTION,
    NULL, NULL, &error);

  g_assert_no_error (error);
  return connection;
}

static void
method_cb (GDBusConnection       *connection,
           const char            *sender,
           const char            *path,
           const char            *interface,
           const char            *method,
           GVariant              *parameters,
           GDBusMethodInvocation *invocation,
           gpointer               data)
{
  Desktop    *desktop = data;
  const char *group, *key;

  g_variant_get (parameters, "(&s&s)", &group, &key);
  g_assert_cmpstr (group, ==, "org.freedesktop.appearance");
  g_assert_cmpstr (key, ==, "color-scheme");
  desktop->n_questions++;
  if (desktop->is_mute)
    g_object_unref (invocation);
  else /* in two variants, as the portal does it */
    g_dbus_method_invocation_return_value (
      invocation,
      g_variant_new ("(v)", g_variant_new_variant (g_variant_new_uint32 (desktop->scheme))));
}

static void
desktop_init (Desktop *desktop,
              guint32  scheme)
{
  static const GDBusInterfaceVTable vtable = { .method_call = method_cb };
  g_autoptr (GDBusNodeInfo) info = g_dbus_node_info_new_for_xml (portal_xml, NULL);
  g_autoptr (GVariant) reply = NULL;
  g_autoptr (GError) error = NULL;

  *desktop = (Desktop){ .bus = g_test_dbus_new (G_TEST_DBUS_NONE), .scheme = scheme };
  g_test_dbus_up (desktop->bus);
  desktop->service = connect_to (desktop->bus);
  desktop->client = connect_to (desktop->bus);
  g_dbus_connection_register_object (desktop->service, "/org/freedesktop/portal/desktop",
                                     info->interfaces[0], &vtable, desktop, NULL, &error);
  g_assert_no_error (error);
  reply = g_dbus_connection_call_sync (
    desktop->service, "org.freedesktop.DBus", "/org/freedesktop/DBus", "org.freedesktop.DBus",
    "RequestName", g_variant_new ("(su)", "org.freedesktop.portal.Desktop", 0), NULL,
    G_DBUS_CALL_FLAGS_NONE, -1, NULL, &error);
  g_assert_no_error (error);
}

static void
desktop_choose (Desktop *desktop,
                guint32  scheme)
{
  g_dbus_connection_emit_signal (
    desktop->service, NULL, "/org/freedesktop/portal/desktop", "org.freedesktop.portal.Settings",
    "SettingChanged",
    g_variant_new ("(ssv)", "org.freedesktop.appearance", "color-scheme",
                   g_variant_new_uint32 (scheme)),
    NULL);
}

static void
desktop_clear (Desktop *desktop)
{
  g_dbus_connection_close_sync (desktop->service, NULL, NULL);
  g_dbus_connection_close_sync (desktop->client, NULL, NULL);
  g_object_unref (desktop->service);
  g_object_unref (desktop->client);
  g_test_dbus_down (desktop->bus);
  g_object_unref (desktop->bus);
}

static GSettings *
settings_new (int theme)
{
  GSettings *settings = g_settings_new ("org.gramwright.Gramwright");

  g_settings_set_enum (settings, "theme", theme);
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", FALSE, NULL);
  return settings;
}

static gboolean
wants_dark (void)
{
  gboolean is_dark;

  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &is_dark, NULL);
  return is_dark;
}

/* Without a bus: what GTK was set to, and the user's choice over it. */
static void
test_no_bus (void)
{
  g_autoptr (GSettings) settings = settings_new (SYSTEM);
  GwAppearance *appearance = gw_appearance_new (settings, NULL);

  g_assert_false (gw_appearance_get_dark (appearance));
  gw_appearance_set_dark (appearance, FALSE); /* it is: no choice is made */
  g_assert_cmpint (g_settings_get_enum (settings, "theme"), ==, SYSTEM);
  gw_appearance_set_dark (appearance, TRUE);
  g_assert_cmpint (g_settings_get_enum (settings, "theme"), ==, DARK);
  g_assert_true (gw_appearance_get_dark (appearance));
  g_assert_true (wants_dark ());
  g_settings_set_enum (settings, "theme", LIGHT);
  g_assert_false (gw_appearance_get_dark (appearance));
  g_assert_false (wants_dark ());
  g_assert_finalize_object (appearance);
}

static void
test_gtk_is_dark (void)
{
  g_autoptr (GSettings) settings = settings_new (SYSTEM);
  GwAppearance *appearance;

  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", TRUE, NULL);
  appearance = gw_appearance_new (settings, NULL);
  g_assert_true (gw_appearance_get_dark (appearance));
  gw_appearance_set_dark (appearance, FALSE);
  g_assert_false (gw_appearance_get_dark (appearance));
  g_assert_cmpint (g_settings_get_enum (settings, "theme"), ==, LIGHT);
  g_assert_finalize_object (appearance);
}

static void
test_desktop (void)
{
  g_autoptr (GSettings) settings = settings_new (SYSTEM);
  Desktop       desktop;
  GwAppearance *appearance;

  desktop_init (&desktop, 1);
  appearance = gw_appearance_new (settings, desktop.client);
  g_assert_false (gw_appearance_get_dark (appearance)); /* it does not wait for the answer */
  wait_until (gw_appearance_get_dark (appearance));
  g_assert_cmpuint (desktop.n_questions, ==, 1);
  desktop_choose (&desktop, 2);
  wait_until (!gw_appearance_get_dark (appearance));
  desktop_choose (&desktop, 1);
  wait_until (gw_appearance_get_dark (appearance));

  /* The user's own choice stands above the desktop's. */
  g_settings_set_enum (settings, "theme", LIGHT);
  g_assert_false (gw_appearance_get_dark (appearance));
  desktop_choose (&desktop, 0);
  desktop_choose (&desktop, 1);
  wait_for_ms (100);
  g_assert_false (gw_appearance_get_dark (appearance));
  g_settings_set_enum (settings, "theme", SYSTEM);
  g_assert_true (gw_appearance_get_dark (appearance));
  g_assert_finalize_object (appearance);
  desktop_clear (&desktop);
}

/* It dies with the question open; an answer after that reaches nobody. */
static void
test_desktop_is_mute (void)
{
  g_autoptr (GSettings) settings = settings_new (SYSTEM);
  Desktop       desktop;
  GwAppearance *appearance;

  desktop_init (&desktop, 1);
  desktop.is_mute = TRUE;
  appearance = gw_appearance_new (settings, desktop.client);
  wait_until (desktop.n_questions == 1);
  wait_for_ms (1500); /* longer than it waits */
  g_assert_false (gw_appearance_get_dark (appearance));
  g_assert_finalize_object (appearance);

  appearance = gw_appearance_new (settings, desktop.client);
  g_assert_finalize_object (appearance);
  desktop_choose (&desktop, 1);
  wait_for_ms (100);
  desktop_clear (&desktop);
}

int
main (int   argc,
      char *argv[])
{
  gtk_test_init (&argc, &argv, NULL);

  g_test_add_func ("/desk/appearance/no-bus", test_no_bus);
  g_test_add_func ("/desk/appearance/gtk-is-dark", test_gtk_is_dark);
  g_test_add_func ("/desk/appearance/desktop", test_desktop);
  g_test_add_func ("/desk/appearance/desktop-is-mute", test_desktop_is_mute);

  return g_test_run ();
}
