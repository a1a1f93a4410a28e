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

#define MINUS "\342\210\222"   /* U+2212 */
#define PLUS_MINUS "\302\261"  /* U+00B1 */
#define EN_DASH "\342\200\223" /* U+2013 */

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
  const char      *sign = value < 0.0 ? MINUS : is_signed ? "+" : "";

  return g_strconcat (is_zero (digits) ? "" : sign, digits, NULL);
}

char *
gw_value_text (GwResultId id,
               double     value)
{
  if (!isfinite (value))
    return g_strdup (EN_DASH);

  return number_text (gw_result_shown (id, value), gw_result_info (id)->decimals, FALSE);
}

char *
gw_change_text (GwResultId id,
                double     change)
{
  if (!isfinite (change))
    return NULL;

  return number_text (gw_result_shown_change (id, change), gw_result_info (id)->decimals, TRUE);
}

char *
gw_band_text (GwResultId    id,
              double        value,
              const GwBand *band)
{
  const int        decimals = gw_result_info (id)->decimals;
  g_autofree char *low = number_text (gw_result_shown (id, value + band->low), decimals, FALSE);
  g_autofree char *high = number_text (gw_result_shown (id, value + band->high), decimals, FALSE);

  if (!isfinite (value) || g_str_equal (low, high))
    return NULL;

  /* A dash beside a minus sign would be misread. */
  if (g_str_has_prefix (low, MINUS))
    return g_strdup_printf (_ ("%s to %s"), low, high);

  return g_strconcat (low, EN_DASH, high, NULL);
}

char *
gw_short_band_text (GwResultId    id,
                    const GwBand *band)
{
  const int    decimals = gw_result_info (id)->decimals;
  const double half = gw_result_shown_change (id, 0.5 * (band->high - band->low));

  if (!(half >= 0.5 * pow (10.0, -decimals)))
    return NULL;

  return g_strdup_printf (PLUS_MINUS "%.*f", decimals, half);
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
