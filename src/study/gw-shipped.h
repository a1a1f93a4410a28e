/* gw-shipped.h - texts and studies that ship within the program
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * gw_shipped_data:
 * @folder: "help"
 * @name: "first-hour.txt"
 *
 * Where there is FOLDER/LANGUAGE/NAME in one of the user's languages, that stands in
 * for the English FOLDER/NAME. What is not there at all is a programmer's fault and
 * stops the program.
 *
 * Returns: (transfer full)
 */
GBytes *gw_shipped_data (const char *folder,
                         const char *name) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
