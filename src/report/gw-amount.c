/* gw-amount.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-amount.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MINUS   "\342\210\222" /* U+2212 */
#define EN_DASH "\342\200\223" /* U+2013 */
#define DIGITS  5
#define NOTHING 1e-9 /* what is left of a sum that should be nothing */

static const char *const origins[GW_N_ORIGINS] = {
  [GW_ORIGIN_GIVEN] = N_ ("given"),
  [GW_ORIGIN_GUESSED] = N_ ("guessed"),
  [GW_ORIGIN_CATALOGUE] = N_ ("catalogue"),
  [GW_ORIGIN_COMPUTED] = N_ ("computed"),
  [GW_ORIGIN_WEIGHED] = N_ ("weighed"),
};

const char *
gw_amount_origin (GwOrigin origin)
{
  g_return_val_if_fail (origin < GW_N_ORIGINS, "");

  return _ (origins[origin]);
}

static double
shown (const GwUnits *units,
       GwQuantity     quantity,
       double         value)
{
  return gw_units_shown (units, quantity, gw_quantity_from_si (quantity, value));
}

static double
shown_change (const GwUnits *units,
              GwQuantity     quantity,
              double         change)
{
  return gw_units_shown_change (units, quantity, change / gw_quantity_unit (quantity)->factor);
}

static gboolean
is_told (double amount,
         int    decimals)
{
  return fabs (amount) >= 0.5 * pow (10.0, -decimals);
}

/* As many as @decimals are in the document's own unit, and more where @amount, a difference,
 * would be told there and not here. */
static int
decimals_for (const GwUnits *units,
              GwQuantity     quantity,
              double         amount,
              int            decimals)
{
  int here = gw_units_decimals (units, quantity, decimals);

  if (isfinite (amount) && is_told (amount / gw_quantity_unit (quantity)->factor, decimals))
    while (!is_told (shown_change (units, quantity, amount), here))
      here++;

  return here;
}

/* Whether the digits of a number, as rounded for show, are all zero. */
static gboolean
is_zero (const char *digits)
{
  return strpbrk (digits, "123456789") == NULL;
}

/* With a real minus sign; what rounds to zero has none. */
static char *
number_text (double      value,
             int         decimals,
             const char *plus)
{
  g_autofree char *digits = g_strdup_printf ("%.*f", decimals, fabs (value));
  const char      *sign = value < 0.0 ? MINUS : plus;

  return g_strconcat (is_zero (digits) ? "" : sign, digits, NULL);
}

static char *
with_unit (char          *number,
           const GwUnits *units,
           GwQuantity     quantity)
{
  g_autofree char *owned = number;
  const char      *unit = gw_units_name (units, quantity);

  if (*unit == '\0')
    return g_steal_pointer (&owned);

  return g_strconcat (owned, g_str_equal (unit, "°") ? "" : " ", unit, NULL);
}

char *
gw_amount_number (const GwUnits *units,
                  GwQuantity     quantity,
                  double         value,
                  int            decimals)
{
  if (!isfinite (value))
    return g_strdup (EN_DASH);

  return number_text (shown (units, quantity, value),
                      decimals_for (units, quantity, value, decimals), "");
}

char *
gw_amount_text (const GwUnits *units,
                GwQuantity     quantity,
                double         value,
                int            decimals)
{
  char *number = gw_amount_number (units, quantity, value, decimals);

  return isfinite (value) ? with_unit (number, units, quantity) : number;
}

char *
gw_amount_digits (const GwUnits *units,
                  GwQuantity     quantity,
                  double         value)
{
  const double size = fabs (shown (units, quantity, value));
  const int    before = size > 0.0 ? 1 + (int) floor (log10 (size)) : 1;
  char        *number;

  if (!isfinite (value))
    return g_strdup (EN_DASH);

  number = size < NOTHING ? g_strdup ("0")
                          : number_text (shown (units, quantity, value),
                                         CLAMP (DIGITS - before, 0, 12), "");
  return with_unit (number, units, quantity);
}

char *
gw_amount_change (const GwUnits *units,
                  GwQuantity     quantity,
                  double         change,
                  int            decimals)
{
  if (!isfinite (change))
    return g_strdup (EN_DASH);

  return number_text (shown_change (units, quantity, change),
                      decimals_for (units, quantity, change, decimals), "+");
}

char *
gw_amount_size (const GwUnits *units,
                GwQuantity     quantity,
                double         change,
                int            decimals)
{
  char *number = number_text (fabs (shown_change (units, quantity, change)),
                              decimals_for (units, quantity, change, decimals), "");

  return with_unit (number, units, quantity);
}

gboolean
gw_amount_is_nothing (const GwUnits *units,
                      GwQuantity     quantity,
                      double         change,
                      int            decimals)
{
  g_autofree char *number = gw_amount_change (units, quantity, change, decimals);

  return is_zero (number);
}

char *
gw_amount_band (const GwUnits *units,
                GwQuantity     quantity,
                double         low,
                double         high,
                int            decimals)
{
  const int        here = decimals_for (units, quantity, 0.5 * (high - low), decimals);
  g_autofree char *from = number_text (shown (units, quantity, low), here, "");
  g_autofree char *to = number_text (shown (units, quantity, high), here, "");

  if (!isfinite (low) || !isfinite (high) || g_str_equal (from, to))
    return NULL;

  /* A dash beside a minus sign would be misread. */
  if (g_str_has_prefix (from, MINUS))
    return g_strdup_printf (_ ("%s to %s"), from, to);

  return g_strconcat (from, EN_DASH, to, NULL);
}

char *
gw_amount_result (const GwUnits *units,
                  GwResultId     id,
                  double         value)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_text (units, info->quantity, value, info->decimals);
}
