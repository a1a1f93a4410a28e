/* gw-language.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-language.h"

#include <libintl.h>
#include <string.h>

#define SOURCE_LANGUAGE "en"

static const struct
{
  const char *code, *name;
} names[] = {
  { "ar", "العربية" },
  { "bg", "Български" },
  { "ca", "Català" },
  { "cs", "Čeština" },
  { "da", "Dansk" },
  { "de", "Deutsch" },
  { "el", "Ελληνικά" },
  { "en", "English" },
  { "es", "Español" },
  { "fa", "فارسی" },
  { "fi", "Suomi" },
  { "fr", "Français" },
  { "he", "עברית" },
  { "hu", "Magyar" },
  { "id", "Bahasa Indonesia" },
  { "it", "Italiano" },
  { "ja", "日本語" },
  { "ko", "한국어" },
  { "nb", "Norsk bokmål" },
  { "nl", "Nederlands" },
  { "pl", "Polski" },
  { "pt", "Português" },
  { "pt_BR", "Português do Brasil" },
  { "ro", "Română" },
  { "ru", "Русский" },
  { "sk", "Slovenčina" },
  { "sl", "Slovenščina" },
  { "sv", "Svenska" },
  { "tr", "Türkçe" },
  { "uk", "Українська" },
  { "vi", "Tiếng Việt" },
  { "zh_CN", "简体中文" },
  { "zh_TW", "繁體中文" },
};

static int
by_code (gconstpointer a,
         gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

char **
gw_language_list (const char *folder)
{
  GPtrArray *codes = g_ptr_array_new ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *code;

  g_ptr_array_add (codes, g_strdup (SOURCE_LANGUAGE));
  while (dir != NULL && (code = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path =
        g_build_filename (folder, code, "LC_MESSAGES", GETTEXT_PACKAGE ".mo", NULL);

      if (!g_str_equal (code, SOURCE_LANGUAGE) && g_utf8_validate (code, -1, NULL) &&
          g_file_test (path, G_FILE_TEST_IS_REGULAR))
        g_ptr_array_add (codes, g_strdup (code));
    }

  g_ptr_array_sort (codes, by_code);
  g_ptr_array_add (codes, NULL);
  return (char **) g_ptr_array_free (codes, FALSE);
}

const char *
gw_language_folder (void)
{
  return bindtextdomain (GETTEXT_PACKAGE, NULL);
}

const char *
gw_language_name (const char *code)
{
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_str_equal (names[i].code, code))
      return names[i].name;

  return code;
}

void
gw_language_apply (GSettings *settings)
{
  g_autofree char *code = g_settings_get_string (settings, "language");

  if (*code != '\0')
    g_setenv ("LANGUAGE", code, TRUE);
}
