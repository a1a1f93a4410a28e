/* gw-polars.h - polars of sections, computed once and kept
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>

#include "engine/gw-polar.h"

G_BEGIN_DECLS

#define GW_POLARS_N 8

/** gw_polars_re: Reynolds numbers at which they are computed, rising: 3e4 to 1.2e6. */
extern const double gw_polars_re[GW_POLARS_N];

/* All that polars depend on beside the Reynolds number. */
typedef struct
{
  GwOutline   outline;
  GwTrip      trip; /* on both sides; x 0 or height 0: smooth */
  GwPanelFlap flap; /* hinge 0: none */
  gboolean    is_flap_open;
  const char *section; /* (nullable): interned id of the catalogue's section it may be of, whose
                        * shipped polars are then looked at; no part of what it is */
} GwPolarSubject;

/** gw_polars_trip_acts: FALSE if a step is so low that it does nothing at that Reynolds number. */
gboolean gw_polars_trip_acts (const GwTrip *trip,
                              double        re);

/** gw_polar_subject_case: what the solver is asked at one Reynolds number. */
GwPolarCase gw_polar_subject_case (const GwPolarSubject *subject,
                                   double                re);

/* Never changed once it is there. */
typedef struct
{
  GwPolar  polar[GW_POLARS_N];
  GwStatus status[GW_POLARS_N]; /* %GW_OK: that polar is sound */
} GwPolars;

/**
 * gw_polars_find:
 *
 * Looks in memory, in what ships with the program (smooth sections of the catalogue, without
 * flap), then in the cache folder of the user. Computes nothing; safe from any thread.
 *
 * Returns: (transfer full) (nullable)
 */
GwPolars *gw_polars_find (const GwPolarSubject *subject) G_GNUC_WARN_UNUSED_RESULT;

/* @done of @all polars are computed. From any thread. */
typedef void (*GwPolarsProgress) (guint    done,
                                  guint    all,
                                  gpointer data);

/**
 * gw_polars_compute:
 * @subjects: of GwPolarSubject
 *
 * Computes what is not there yet, on all processors, and keeps it in memory and in the cache
 * folder, which is safe to delete. Polars that were done before a cancellation are kept in
 * memory. A cache that cannot be written is no error.
 *
 * Returns: FALSE with %G_IO_ERROR_CANCELLED
 */
gboolean gw_polars_compute (GArray          *subjects,
                            GwPolarsProgress progress,
                            gpointer         data,
                            GCancellable    *cancellable,
                            GError         **error);

GwPolars *gw_polars_ref (GwPolars *polars);
void      gw_polars_unref (GwPolars *polars);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwPolars, gw_polars_unref)

/** gw_polars_text: as the files of the cache and of the program hold them. (transfer full) */
char *gw_polars_text (const GwPolarSubject *subject,
                      const GwPolars       *polars) G_GNUC_WARN_UNUSED_RESULT;

/** gw_polars_parse: NULL if the text is damaged or of another subject or solver.
 * (transfer full) (nullable) */
GwPolars *gw_polars_parse (const GwPolarSubject *subject,
                           const char           *text,
                           gsize                 length) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
