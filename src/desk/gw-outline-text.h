/* gw-outline-text.h - what the outline says of a record
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/** gw_outline_name: its name; of what has none, what it belongs to. (transfer full) */
char *gw_outline_name (const GwStudy  *study,
                       const GwRecord *record);

/**
 * gw_outline_detail:
 * @outcome: of the option that is shown
 * @path: of a record of the study's own lists, its "day", "targets", or "" for the study
 *
 * What matters most of it, as it is in that option: "178 g, 155 mm aft". (transfer full)
 */
char *gw_outline_detail (const GwOutcome *outcome,
                         const char      *path,
                         const GwUnits   *units);

/** gw_outline_result_text: with its unit. (transfer full) */
char *gw_outline_result_text (const GwResults *results,
                              GwResultId       id,
                              const GwUnits   *units);

G_END_DECLS
