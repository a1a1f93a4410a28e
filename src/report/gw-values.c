/* gw-values.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "report/gw-amount.h"
#include "report/gw-sheet.h"
#include "study/gw-result.h"

#define PLUS_MINUS "\302\261" /* U+00B1 */

const char *
gw_result_unit (GwResultId     id,
                const GwUnits *units)
{
  return gw_units_name (units, gw_result_info (id)->quantity);
}

char *
gw_value_text (GwResultId     id,
               double         value,
               const GwUnits *units)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_number (units, info->quantity, value, info->decimals);
}

char *
gw_change_text (GwResultId     id,
                double         change,
                const GwUnits *units)
{
  const GwResultInfo *info = gw_result_info (id);

  return isfinite (change) ? gw_amount_change (units, info->quantity, change, info->decimals)
                           : NULL;
}

char *
gw_band_text (GwResultId     id,
              double         value,
              const GwBand  *band,
              const GwUnits *units)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_band (units, info->quantity, value + band->low, value + band->high,
                         info->decimals);
}

char *
gw_short_band_text (GwResultId     id,
                    const GwBand  *band,
                    const GwUnits *units)
{
  g_autofree char *half = gw_change_text (id, 0.5 * (band->high - band->low), units);

  return half != NULL && *half == '+' ? g_strconcat (PLUS_MINUS, half + 1, NULL) : NULL;
}

static GwLimit
at_most (double value,
         double wanted)
{
  if (!isfinite (wanted) || !isfinite (value))
    return GW_LIMIT_NONE;

  return value <= wanted ? GW_LIMIT_KEPT : GW_LIMIT_BROKEN;
}

GwLimit
gw_limit_of (const GwOutcome *outcome,
             GwResultId       id)
{
  const GwTargets *targets = &outcome->assembly->aircraft.targets;
  const double     value = outcome->results.value[id];
  const unsigned   notes = outcome->results.notes;

  /* Three results of many have a limit, so no case for each of the others. */
  if (id == GW_RESULT_MASS)
    return at_most (value, targets->mass);
  if (id == GW_RESULT_STALL_SPEED)
    return at_most (value, targets->stall_speed);
  if (id == GW_RESULT_STATIC_MARGIN)
    return at_most (-value, -targets->static_margin);
  if (id == GW_RESULT_BALANCE_ROOT)
    return notes & (GW_NOTE_BEHIND_AFT_LIMIT | GW_NOTE_AHEAD_OF_LIMIT) ? GW_LIMIT_BROKEN
                                                                       : GW_LIMIT_KEPT;

  return GW_LIMIT_NONE;
}
