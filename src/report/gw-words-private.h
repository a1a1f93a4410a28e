/* gw-words-private.h - two outcomes, as the files that put them into words see them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "report/gw-words.h"

G_BEGIN_DECLS

/* Two outcomes, and what they are seen in. */
typedef struct
{
  const GwOutcome *before, *after;
  const GwUnits   *units;
  gboolean         has_bands; /* after is compared with before, and its change bands are of now */
} GwPair;

/* A result of one, what it changes by, both in words; whether that is too little to notice, or
 * does not even show; how sure it is. */
double     _gw_pair_value (const GwOutcome *outcome,
                           GwResultId       id);
double     _gw_pair_change (const GwPair *pair,
                            GwResultId    id);
char      *_gw_pair_text (const GwPair    *pair,
                          const GwOutcome *outcome,
                          GwResultId       id);
char      *_gw_pair_size (const GwPair *pair,
                          GwResultId    id);
gboolean   _gw_pair_is_nothing (const GwPair *pair,
                                GwResultId    id);
gboolean   _gw_pair_is_shown_the_same (const GwPair *pair,
                                       GwResultId    id);
GwSureness _gw_pair_sureness (const GwPair *pair,
                              GwResultId    id);

/** _gw_pair_of: the option before and after; before is NULL if it was not there. */
GwPair _gw_pair_of (const GwEvaluation *before,
                    const GwEvaluation *after,
                    guint               option,
                    const GwUnits      *units);

G_END_DECLS
