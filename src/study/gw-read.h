/* gw-read.h - files that a person gives, read as a whole and not beyond a bound
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/**
 * gw_read_file:
 * @most: bytes, beyond which @file is refused, unread where its size is told
 * @text: (out) (array length=length): what is in it, a zero behind it
 *
 * Asks what @file is before it is opened, since opening a pipe waits for somebody to write
 * into it, and a device may never end.
 *
 * Returns: FALSE with %GW_STUDY_ERROR_FILE and a message without the name, or with what GIO said
 */
gboolean gw_read_file (GFile   *file,
                       gsize    most,
                       char   **text,
                       gsize   *length,
                       GError **error);

G_END_DECLS
