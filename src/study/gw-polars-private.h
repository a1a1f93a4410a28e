/* gw-polars-private.h - shared by the files that keep polars
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-polars.h"

G_BEGIN_DECLS

GwPolars *_gw_polars_alloc (void) G_GNUC_WARN_UNUSED_RESULT;

/** _gw_polars_read: from what ships with the program, else from the cache. (nullable) */
GwPolars *_gw_polars_read (const GwPolarSubject *subject) G_GNUC_WARN_UNUSED_RESULT;

/** _gw_polars_write: into the cache, if it can be written. */
void _gw_polars_write (const GwPolarSubject *subject,
                       const GwPolars       *polars);

G_END_DECLS
