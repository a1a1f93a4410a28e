/* gw-evaluation-private.h - shared by the files that evaluate
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"

G_BEGIN_DECLS

typedef gboolean (*GwEvaluationFunc) (GwEvaluation *evaluation,
                                      guint         option,
                                      gpointer      data,
                                      GError      **error);

/** _gw_evaluation_each: for all options, several at the same time; the first error of them. */
gboolean _gw_evaluation_each (GwEvaluation    *evaluation,
                              GwEvaluationFunc func,
                              gpointer         data,
                              GError         **error);

/** _gw_evaluation_vary_all: effects of every uncertain input and the bands they make. */
gboolean _gw_evaluation_vary_all (GwEvaluation *evaluation,
                                  GCancellable *cancellable,
                                  GError      **error);

/** _gw_evaluation_compare_all: with the baseline, differences and their bands. */
void _gw_evaluation_compare_all (GwEvaluation *evaluation);

G_END_DECLS
