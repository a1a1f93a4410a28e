/* gw-parallel.h - the same work for many things, on all processors
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* FALSE: no more is to be begun. From any thread. */
typedef gboolean (*GwParallelFunc) (guint    i,
                                    gpointer data);

/**
 * gw_parallel_each:
 *
 * Calls @func for 0 to @n - 1, begun in that order, several at the same time, and returns when
 * all are over.
 *
 * Returns: FALSE if one of them returned FALSE
 */
gboolean gw_parallel_each (guint          n,
                           GwParallelFunc func,
                           gpointer       data);

G_END_DECLS
