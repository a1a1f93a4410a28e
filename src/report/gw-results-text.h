/* gw-results-text.h - results as text: a table for people, JSON for programs
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"

G_BEGIN_DECLS

/** gw_results_table: the summary of all options, then what must be said of each. (transfer full) */
char *gw_results_table (const GwEvaluation *evaluation);

/**
 * gw_results_json:
 *
 * Everything at full precision, the unit in each key, low and high (10th and 90th
 * percentile) where there is a band, pieces with mass and place. (transfer full)
 */
char *gw_results_json (const GwEvaluation *evaluation);

G_END_DECLS
