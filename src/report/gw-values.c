/* gw-values.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "report/gw-sheet.h"
#include "study/gw-result.h"

#define MINUS      "\342\210\222" /* U+2212 */
#define PLUS_MINUS "\302\261"     /* U+00B1 */
#define EN_DASH    "\342\200\223" /* U+2013 */

/* Whether the digits of a number, as rounded for show, are all zero. */
static gboolean
is_zero (const char *digits)
{
  return strpbrk (digits, "123456789") == NULL;
}

/* @value with a real minus sign; a value that rounds to zero has none. */
static char *
number_text (double   value,
             int      decimals,
             gboolean is_signed)
{
  g_autofree char *digits = g_strdup_printf ("%.*f", decimals, fabs (value));
  const char      *sign = value < 0.0 ? MINUS : is_signed ? "+"
                                                          : "";

  return g_strconcat (is_zero (digits) ? "" : sign, digits, NULL);
}

const char *
gw_result_unit (GwResultId     id,
                const GwUnits *units)
{
  return gw_units_name (units, gw_result_info (id)->quantity);
}

static double
shown (GwResultId     id,
       double         value,
       const GwUnits *units)
{
  return gw_units_shown (units, gw_result_info (id)->quantity, gw_result_shown (id, value));
}

static double
shown_change (GwResultId     id,
              double         change,
              const GwUnits *units)
{
  return gw_units_shown_change (units, gw_result_info (id)->quantity,
                                gw_result_shown_change (id, change));
}

static gboolean
is_told (double amount,
         int    decimals)
{
  return fabs (amount) >= 0.5 * pow (10.0, -decimals);
}

/* As many as show @amount, a difference in SI, if the unit of the file shows it. */
static int
decimals_for (GwResultId     id,
              double         amount,
              const GwUnits *units)
{
  const GwResultInfo *info = gw_result_info (id);
  int                 decimals = gw_units_decimals (units, info->quantity, info->decimals);

  if (isfinite (amount) && is_told (gw_result_shown_change (id, amount), info->decimals))
    while (!is_told (shown_change (id, amount, units), decimals))
      decimals++;

  return decimals;
}

char *
gw_value_text (GwResultId     id,
               double         value,
               const GwUnits *units)
{
  if (!isfinite (value))
    return g_strdup (EN_DASH);

  return number_text (shown (id, value, units), decimals_for (id, value, units), FALSE);
}

char *
gw_change_text (GwResultId     id,
                double         change,
                const GwUnits *units)
{
  if (!isfinite (change))
    return NULL;

  return number_text (shown_change (id, change, units), decimals_for (id, change, units), TRUE);
}

/* Of the range from low to high. */
static double
half_of (const GwBand *band)
{
  return 0.5 * (band->high - band->low);
}

char *
gw_band_text (GwResultId     id,
              double         value,
              const GwBand  *band,
              const GwUnits *units)
{
  const int        decimals = decimals_for (id, half_of (band), units);
  g_autofree char *low = number_text (shown (id, value + band->low, units), decimals, FALSE);
  g_autofree char *high = number_text (shown (id, value + band->high, units), decimals, FALSE);

  if (!isfinite (value) || g_str_equal (low, high))
    return NULL;

  /* A dash beside a minus sign would be misread. */
  if (g_str_has_prefix (low, MINUS))
    return g_strdup_printf (_ ("%s to %s"), low, high);

  return g_strconcat (low, EN_DASH, high, NULL);
}

char *
gw_short_band_text (GwResultId     id,
                    const GwBand  *band,
                    const GwUnits *units)
{
  const double half = half_of (band);
  const int    decimals = decimals_for (id, half, units);

  if (!isfinite (half) || !is_told (shown_change (id, half, units), decimals))
    return NULL;

  return g_strdup_printf (PLUS_MINUS "%.*f", decimals, shown_change (id, half, units));
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
