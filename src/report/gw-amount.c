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

int
gw_amount_decimals (const GwUnits *units,
                    GwQuantity     quantity,
                    int            decimals)
{
  const double size = gw_units_shown_change (units, quantity, 1.0);

  /* An inch takes two decimals where a millimetre takes none, a knot as many as a metre a
   * second. */
  return CLAMP (decimals + (int) floor (0.7 - log10 (size)), 0, 9);
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
is_zero (const char *digits)
{
  return strpbrk (digits, "123456789") == NULL;
}

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
                      gw_amount_decimals (units, quantity, decimals), "");
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
                      gw_amount_decimals (units, quantity, decimals), "+");
}

char *
gw_amount_size (const GwUnits *units,
                GwQuantity     quantity,
                double         change,
                int            decimals)
{
  char *number = number_text (fabs (shown_change (units, quantity, change)),
                              gw_amount_decimals (units, quantity, decimals), "");

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
  g_autofree char *from = gw_amount_number (units, quantity, low, decimals);
  g_autofree char *to = gw_amount_number (units, quantity, high, decimals);

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
