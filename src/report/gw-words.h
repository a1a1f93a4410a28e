/* gw-words.h - in words: what an option does against the baseline, and what a change does
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/**
 * gw_words_against_baseline:
 *
 * "Against Folded foam board: 136 g lighter, stalls 0.98 m/s slower; needs 5 g of lead in the
 * nose. Surely lighter, surely stalls slower. No clear difference in balance point: -2 mm, from
 * -6 to +2.", then limits and notes that only one of the two has.
 *
 * "Surely" is said only if the whole band of the difference, 10th to 90th percentile, has
 * one sign. Where the band holds zero, no way is told: it is "about the same" if all of the band
 * lies within 1 % of the baseline's value (of the mean chord for places along it; a judgement, no
 * source), and else "no clear difference" with its numbers. Of quick values, whose bands are of
 * an evaluation before them, none of these is said. A result without an answer is left out.
 *
 * Returns: (transfer full): one or more sentences
 */
char *gw_words_against_baseline (const GwEvaluation *evaluation,
                                 guint               option,
                                 const GwUnits      *units) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_words_of_change:
 * @option: index in @after; the same option is found in @before by its id
 *
 * What is different on the sheet: results whose text as shown is another, limits, notes.
 *
 * Returns: (transfer full): one or more sentences
 */
char *gw_words_of_change (const GwEvaluation *before,
                          const GwEvaluation *after,
                          guint               option,
                          const GwUnits      *units) G_GNUC_WARN_UNUSED_RESULT;

/* Whether more of a result is to the good. Neither for what has a right place, such as the
 * balance point and the static margin, and for what only describes: span, areas, inertia. */
typedef enum
{
  GW_SENSE_NEITHER,
  GW_SENSE_LESS,
  GW_SENSE_MORE,
} GwSense;

GwSense gw_words_sense (GwResultId id);

/** gw_words_sense_text: why, as a sentence: "Less is better: …" */
const char *gw_words_sense_text (GwResultId id);

typedef enum
{
  GW_VERDICT_NEUTRAL,
  GW_VERDICT_BETTER,
  GW_VERDICT_WORSE,
} GwVerdict;

typedef enum
{
  GW_SURENESS_UNKNOWN, /* no bands of this difference */
  GW_SURENESS_SURE,    /* the whole band has one sign */
  GW_SURENESS_EITHER,  /* the band holds zero */
  GW_SURENESS_SAME,    /* and nothing in it is worth a word */
} GwSureness;

/* One row of a small table. */
typedef struct
{
  GwResultId id;
  char      *label, *unit;
  char      *before, *after; /* en dash: no answer */
  char      *change;         /* with its sign; NULL: shows as none, or one has no answer */
  GwVerdict  verdict;        /* a limit that begins or ends to be kept goes before the sense */
  GwSureness sureness;
} GwWordsRow;

void gw_words_row_free (GwWordsRow *row);

/** gw_words_rows_against_baseline: of the results on the sheet; before: the baseline.
 * (transfer container) (element-type GwWordsRow) */
GPtrArray *gw_words_rows_against_baseline (const GwEvaluation *evaluation,
                                           guint               option,
                                           const GwUnits      *units) G_GNUC_WARN_UNUSED_RESULT;

/** gw_words_rows_of_change: only those whose text as shown is another. (transfer container)
 * (element-type GwWordsRow) */
GPtrArray *gw_words_rows_of_change (const GwEvaluation *before,
                                    const GwEvaluation *after,
                                    guint               option,
                                    const GwUnits      *units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
