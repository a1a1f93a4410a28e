/* gw-preferences.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-preferences.h"

#include <glib/gi18n-lib.h>

#include "desk/gw-access.h"
#include "desk/gw-language.h"

#define MOST_CHOICES 4

struct _GwPreferences
{
  GtkWindow parent_instance;

  GtkGrid      *units, *looks, *languages;
  GtkLabel     *units_note, *language_note;
  GtkSizeGroup *labels;
  GSettings    *settings;
};

G_DEFINE_FINAL_TYPE (GwPreferences, gw_preferences, GTK_TYPE_WINDOW)

typedef struct
{
  const char *key;
  const char *label;
  struct
  {
    const char *value, *text;
  } choices[MOST_CHOICES + 1];
} Row;

static const Row unit_rows[] = {
  { "length-unit",
    N_ ("_Length"),
    {
      { "mm", N_ ("millimetres, mm") },
      { "cm", N_ ("centimetres, cm") },
      { "in", N_ ("inches, in") },
    } },
  { "mass-unit",
    N_ ("_Mass"),
    {
      { "g", N_ ("grams, g") },
      { "oz", N_ ("ounces, oz") },
    } },
  { "speed-unit",
    N_ ("_Speed"),
    {
      { "m/s", N_ ("metres a second, m/s") },
      { "km/h", N_ ("kilometres an hour, km/h") },
      { "mph", N_ ("miles an hour, mph") },
      { "kt", N_ ("knots, kt") },
    } },
  { "temperature-unit",
    N_ ("_Temperature"),
    {
      { "°C", N_ ("degrees Celsius, °C") },
      { "°F", N_ ("degrees Fahrenheit, °F") },
    } },
  { "pressure-unit",
    N_ ("Air _pressure"),
    {
      { "hPa", N_ ("hectopascals, hPa") },
      { "inHg", N_ ("inches of mercury, inHg") },
    } },
  { "distance-unit",
    N_ ("_Elevation, distance"),
    {
      { "m", N_ ("metres, m") },
      { "ft", N_ ("feet, ft") },
    } },
};

static const Row look_rows[] = {
  { "theme",
    N_ ("Light or _dark"),
    {
      { "system", N_ ("as the desktop") },
      { "light", N_ ("light") },
      { "dark", N_ ("dark") },
    } },
  { "paper",
    N_ ("P_aper"),
    {
      { "A4", "A4" },
      { "A3", "A3" },
      { "Letter", N_ ("Letter") },
    } },
};

static gboolean
get_selected (GValue   *selected,
              GVariant *value,
              gpointer  data)
{
  const char *const *values = data;

  for (guint i = 0; values[i] != NULL; i++)
    if (g_str_equal (values[i], g_variant_get_string (value, NULL)))
      {
        g_value_set_uint (selected, i);
        return TRUE;
      }

  return FALSE;
}

static GVariant *
set_selected (const GValue       *selected,
              const GVariantType *type,
              gpointer            data)
{
  const char *const *values = data;
  const guint        i = g_value_get_uint (selected);

  return i != GTK_INVALID_LIST_POSITION ? g_variant_new_string (values[i]) : NULL;
}

/* The button inside takes the focus, and GTK gives it no name. */
static void
selected_cb (GtkDropDown *drop_down,
             GParamSpec  *pspec,
             GtkLabel    *label)
{
  gw_access_name_drop_down (drop_down, gtk_label_get_text (label));
}

/* @values: (transfer full) */
static void
add_row (GwPreferences     *self,
         GtkGrid           *grid,
         int                place,
         const char        *key,
         const char        *label_text,
         char             **values,
         const char *const *texts)
{
  GtkWidget *label = gtk_label_new_with_mnemonic (label_text);
  GtkWidget *drop_down = gtk_drop_down_new_from_strings (texts);

  gtk_widget_set_name (drop_down, key);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_size_group_add_widget (self->labels, label);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), drop_down);
  gtk_widget_set_hexpand (drop_down, TRUE);
  gtk_grid_attach (grid, label, 0, place, 1, 1);
  gtk_grid_attach (grid, drop_down, 1, place, 1, 1);
  g_signal_connect_object (drop_down, "notify::selected", G_CALLBACK (selected_cb), label, 0);
  g_settings_bind_with_mapping (self->settings, key, drop_down, "selected",
                                G_SETTINGS_BIND_DEFAULT, get_selected, set_selected, values,
                                (GDestroyNotify) g_strfreev);
  selected_cb (GTK_DROP_DOWN (drop_down), NULL, GTK_LABEL (label));
}

static void
add_rows (GwPreferences *self,
          GtkGrid       *grid,
          const Row     *rows,
          guint          n)
{
  for (guint i = 0; i < n; i++)
    {
      const char *texts[MOST_CHOICES + 1] = { NULL };
      char      **values = g_new0 (char *, MOST_CHOICES + 1);

      for (guint c = 0; rows[i].choices[c].value != NULL; c++)
        {
          values[c] = g_strdup (rows[i].choices[c].value);
          texts[c] = _ (rows[i].choices[c].text);
        }
      add_row (self, grid, (int) i, rows[i].key, _ (rows[i].label), values, texts);
    }
}

static void
add_languages (GwPreferences *self)
{
  g_auto (GStrv) codes = gw_language_list (gw_language_folder ());
  g_autofree char *chosen = g_settings_get_string (self->settings, "language");
  GPtrArray       *values = g_ptr_array_new ();
  g_autoptr (GPtrArray) texts = g_ptr_array_new ();

  g_ptr_array_add (values, g_strdup (""));
  g_ptr_array_add (texts, (gpointer) _ ("as the system"));
  for (guint i = 0; codes[i] != NULL; i++)
    {
      g_ptr_array_add (values, g_strdup (codes[i]));
      g_ptr_array_add (texts, (gpointer) gw_language_name (codes[i]));
    }
  /* A choice stays one, also while its translation is not there. */
  if (*chosen != '\0' && !g_strv_contains ((const char *const *) codes, chosen))
    {
      g_ptr_array_add (values, g_strdup (chosen));
      g_ptr_array_add (texts, (gpointer) gw_language_name (chosen));
    }
  g_ptr_array_add (values, NULL);
  g_ptr_array_add (texts, NULL);
  add_row (self, self->languages, 0, "language", _ ("Lan_guage"),
           (char **) g_ptr_array_free (values, FALSE), (const char *const *) texts->pdata);
}

static void
choose_units (GwPreferences     *self,
              const char *const *names)
{
  for (guint i = 0; i < G_N_ELEMENTS (unit_rows); i++)
    g_settings_set_string (self->settings, unit_rows[i].key, names[i]);
}

static void
metric_cb (GwPreferences *self)
{
  static const char *const names[] = { "mm", "g", "m/s", "°C", "hPa", "m" };

  G_STATIC_ASSERT (G_N_ELEMENTS (names) == G_N_ELEMENTS (unit_rows));
  choose_units (self, names);
}

static void
inch_cb (GwPreferences *self)
{
  static const char *const names[] = { "in", "oz", "mph", "°F", "inHg", "ft" };

  G_STATIC_ASSERT (G_N_ELEMENTS (names) == G_N_ELEMENTS (unit_rows));
  choose_units (self, names);
}

static void
gw_preferences_dispose (GObject *object)
{
  GwPreferences *self = GW_PREFERENCES (object);

  g_clear_object (&self->settings);
  gtk_widget_dispose_template (GTK_WIDGET (self), GW_TYPE_PREFERENCES);

  G_OBJECT_CLASS (gw_preferences_parent_class)->dispose (object);
}

static void
gw_preferences_class_init (GwPreferencesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = gw_preferences_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/gramwright/desk/gw-preferences.ui");
  gtk_widget_class_bind_template_child (widget_class, GwPreferences, units);
  gtk_widget_class_bind_template_child (widget_class, GwPreferences, looks);
  gtk_widget_class_bind_template_child (widget_class, GwPreferences, languages);
  gtk_widget_class_bind_template_child (widget_class, GwPreferences, labels);
  gtk_widget_class_bind_template_child (widget_class, GwPreferences, units_note);
  gtk_widget_class_bind_template_child (widget_class, GwPreferences, language_note);
  gtk_widget_class_bind_template_callback (widget_class, metric_cb);
  gtk_widget_class_bind_template_callback (widget_class, inch_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
gw_preferences_init (GwPreferences *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_label_set_text (self->units_note,
                      _ ("Areas go with the length, wing loading and densities with the mass. A "
                         "study keeps its own units in its file."));
  gtk_label_set_text (self->language_note,
                      _ ("The language changes when Gramwright is started next."));
}

GtkWindow *
gw_preferences_new (GtkWindow *parent,
                    GSettings *settings)
{
  GwPreferences *self =
    g_object_new (GW_TYPE_PREFERENCES, "transient-for", parent, "application",
                  parent != NULL ? gtk_window_get_application (parent) : NULL, NULL);

  self->settings = g_object_ref (settings);
  add_rows (self, self->units, unit_rows, G_N_ELEMENTS (unit_rows));
  add_rows (self, self->looks, look_rows, G_N_ELEMENTS (look_rows));
  add_languages (self);
  return GTK_WINDOW (self);
}
