/* gw-evaluation.h - all options of a study computed, compared, with their bands
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-evaluate.h"
#include "study/gw-assemble.h"
#include "study/gw-polars.h"

G_BEGIN_DECLS

/* What one uncertain input does: the results with it at its 90th percentile and at
 * its 10th, less the results as they are. */
typedef struct
{
  char  *key;   /* of the input, shared by options that share it */
  char  *label; /* "Foaming PLA: Density" */
  double up[GW_N_RESULTS], down[GW_N_RESULTS];
  double curve_up[GW_CURVE_N], curve_down[GW_CURVE_N];
} GwEffect;

/* 10th and 90th percentile, as distances from the value: low <= 0 <= high. */
typedef struct
{
  double low, high;
} GwBand;

/* What was computed of one option; evaluations of studies that differ elsewhere share it. */
typedef struct _GwComputed GwComputed;

typedef struct
{
  char       *id, *name, *short_name;
  GwComputed *computed; /* holds the next two */
  GwAssembly *assembly;
  GwResults   results;
  GPtrArray  *effects; /* of GwEffect */
  GwBand      band[GW_N_RESULTS];
  GwBand      curve_band[GW_CURVE_N];
  double      band_curve[GW_CURVE_N];    /* that it lies about: while quick, one before [m/s] */
  double      change[GW_N_RESULTS];      /* less the baseline's */
  GwBand      change_band[GW_N_RESULTS]; /* without what both share */
} GwOutcome;

typedef struct
{
  GwStudy   *study;
  guint      baseline;
  GPtrArray *outcomes;               /* of GwOutcome, as the study's options */
  double     curve_mass[GW_CURVE_N]; /* [kg] */
  gboolean   is_quick;               /* the bands are those of an evaluation before it */
  gboolean   is_provisional;         /* guesses stand in for sections not computed yet */
} GwEvaluation;

/**
 * gw_evaluation_prepare:
 * @progress: (nullable): told from any thread
 *
 * Computes the polars that the options' sections need and nobody has computed yet: seconds, once
 * for each outline and finish.
 *
 * Returns: FALSE with %G_IO_ERROR_CANCELLED; what is wrong with @study is left to be said by
 *   gw_evaluation_new()
 */
gboolean gw_evaluation_prepare (GwStudy         *study,
                                GwPolarsProgress progress,
                                gpointer         data,
                                GCancellable    *cancellable,
                                GError         **error);

/**
 * gw_evaluation_new:
 *
 * Prepares, if that has not been done. Computes every option, then every uncertain input of it
 * at its 10th and 90th percentile, one at a time. Bands are the root of the sum of the squares
 * of what the inputs do (first-order propagation; up and down apart); a band of a difference
 * takes an input that both options share as one. Reads nothing but
 * @study, so it may run in a thread of its own.
 *
 * Returns: (transfer full): the evaluation, or NULL with %GW_STUDY_ERROR or
 *   %G_IO_ERROR_CANCELLED
 */
GwEvaluation *gw_evaluation_new (GwStudy      *study,
                                 GCancellable *cancellable,
                                 GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_evaluation_quick:
 * @previous: (nullable): its bands and its range of masses are kept
 *
 * The values alone, for the next frame of a drag, provisional where a section has yet to be
 * computed; gw_evaluation_new() then brings the bands.
 *
 * Returns: (transfer full): the evaluation, or NULL with %GW_STUDY_ERROR
 */
GwEvaluation *gw_evaluation_quick (GwStudy            *study,
                                   const GwEvaluation *previous,
                                   GError            **error) G_GNUC_WARN_UNUSED_RESULT;

GwEvaluation *gw_evaluation_ref (GwEvaluation *evaluation);
void          gw_evaluation_unref (GwEvaluation *evaluation);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwEvaluation, gw_evaluation_unref)

/** gw_evaluation_outcome: (transfer none) */
const GwOutcome *gw_evaluation_outcome (const GwEvaluation *evaluation,
                                        guint               option);

G_END_DECLS
