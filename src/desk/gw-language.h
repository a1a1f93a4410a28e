/* gw-language.h - the languages there are, and the one chosen
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/** gw_language_list: codes of the languages of which a translation lies in @folder, and of
 * English, which needs none; in order. (transfer full) */
char **gw_language_list (const char *folder) G_GNUC_WARN_UNUSED_RESULT;

/** gw_language_folder: where this program finds its translations. */
const char *gw_language_folder (void);

/** gw_language_name: what those who speak it call it; the code if that is not known. */
const char *gw_language_name (const char *code);

/**
 * gw_language_apply:
 *
 * Makes the language chosen in the settings that of all texts translated from now on.
 * Without a choice the system's stays.
 */
void gw_language_apply (GSettings *settings);

G_END_DECLS
