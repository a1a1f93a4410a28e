/* gw-words-pair.c - two outcomes, and what is worth telling of them
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"
#include "report/gw-sheet.h"
#include "report/gw-words-private.h"

#define NOTICED 0.01 /* of a result: less of a difference than that is about the same */

double
_gw_pair_value (const GwOutcome *outcome,
                GwResultId       id)
{
  return outcome->results.value[id];
}

double
_gw_pair_change (const GwPair *pair,
                 GwResultId    id)
{
  return _gw_pair_value (pair->after, id) - _gw_pair_value (pair->before, id);
}

char *
_gw_pair_text (const GwPair    *pair,
               const GwOutcome *outcome,
               GwResultId       id)
{
  return gw_amount_result (pair->units, id, _gw_pair_value (outcome, id));
}

char *
_gw_pair_size (const GwPair *pair,
               GwResultId    id)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_size (pair->units, info->quantity, _gw_pair_change (pair, id), info->decimals);
}

gboolean
_gw_pair_is_nothing (const GwPair *pair,
                     GwResultId    id)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_is_nothing (pair->units, info->quantity, _gw_pair_change (pair, id),
                               info->decimals);
}

gboolean
_gw_pair_is_shown_the_same (const GwPair *pair,
                            GwResultId    id)
{
  g_autofree char *before = _gw_pair_text (pair, pair->before, id);
  g_autofree char *after = _gw_pair_text (pair, pair->after, id);

  return g_str_equal (before, after);
}

/* What each result that has a good side is worth, and what is said of the others. */
static const struct
{
  GwResultId  id;
  GwSense     sense;
  const char *text;
} senses[] = {
  { GW_RESULT_MASS, GW_SENSE_LESS,
    N_ ("Less is better: it flies slower, and lands and falls softer.") },
  { GW_RESULT_WING_MASS, GW_SENSE_LESS, N_ ("Less is better: it is a part of the mass.") },
  { GW_RESULT_WEIGHED_SHARE, GW_SENSE_MORE,
    N_ ("More is better: it says how sure the mass is, not how good.") },
  { GW_RESULT_WING_LOADING, GW_SENSE_LESS,
    N_ ("Less is better for flying slowly; in wind more can be wanted.") },
  { GW_RESULT_STALL_SPEED, GW_SENSE_LESS, N_ ("Less is better: it can land slower.") },
  { GW_RESULT_CL_MAX, GW_SENSE_MORE, N_ ("More is better: it carries the same mass slower.") },
  { GW_RESULT_TARGET_MASS, GW_SENSE_MORE,
    N_ ("More is better: that much it may come to weigh.") },
  { GW_RESULT_BALLAST, GW_SENSE_LESS, N_ ("Less is better: it is mass that does nothing else.") },
};

GwSense
gw_words_sense (GwResultId id)
{
  for (guint i = 0; i < G_N_ELEMENTS (senses); i++)
    if (senses[i].id == id)
      return senses[i].sense;

  return GW_SENSE_NEITHER;
}

const char *
gw_words_sense_text (GwResultId id)
{
  for (guint i = 0; i < G_N_ELEMENTS (senses); i++)
    if (senses[i].id == id)
      return _ (senses[i].text);

  return _ ("Neither more nor less is better in itself.");
}

/* What is noticed is measured along the mean chord for places along it. */
static double
scale_of (const GwOutcome *outcome,
          GwResultId       id)
{
  if (gw_result_info (id)->quantity == GW_MM)
    return _gw_pair_value (outcome, GW_RESULT_MEAN_CHORD);
  if (gw_result_info (id)->quantity == GW_PERCENT)
    return 1.0;

  return fabs (_gw_pair_value (outcome, id));
}

GwSureness
_gw_pair_sureness (const GwPair *pair,
                   GwResultId    id)
{
  const double  change = _gw_pair_change (pair, id);
  const GwBand *band = &pair->after->change_band[id];
  const double  noticed = NOTICED * scale_of (pair->before, id);

  if (!pair->has_bands || !isfinite (change))
    return GW_SURENESS_UNKNOWN;
  if ((change + band->low > 0.0 || change + band->high < 0.0) && !_gw_pair_is_nothing (pair, id))
    return GW_SURENESS_SURE;
  if (change + band->low >= -noticed && change + band->high <= noticed)
    return GW_SURENESS_SAME;

  return GW_SURENESS_EITHER;
}

static const GwOutcome *
find_outcome (const GwEvaluation *evaluation,
              const char         *id)
{
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    if (g_str_equal (gw_evaluation_outcome (evaluation, i)->id, id))
      return gw_evaluation_outcome (evaluation, i);

  return NULL;
}

GwPair
_gw_pair_of (const GwEvaluation *before,
             const GwEvaluation *after,
             guint               option,
             const GwUnits      *units)
{
  const GwOutcome *outcome = gw_evaluation_outcome (after, option);

  return (GwPair){
    .before = outcome != NULL ? find_outcome (before, outcome->id) : NULL,
    .after = outcome,
    .units = units,
  };
}
