/* gw-number.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-number.h"

#include <math.h>

static const char *const origin_keys[GW_N_ORIGINS] = {
  [GW_ORIGIN_GIVEN] = "given",
  [GW_ORIGIN_GUESSED] = "guessed",
  [GW_ORIGIN_CATALOGUE] = "catalogue",
  [GW_ORIGIN_COMPUTED] = "computed",
  [GW_ORIGIN_WEIGHED] = "weighed",
};

void
gw_number_set (GwNumber *number,
               double    value)
{
  number->form = GW_FORM_PLAIN;
  number->value = number->low = number->high = value;
  number->spread = 0.0;
}

void
gw_number_set_spread (GwNumber *number,
                      double    value,
                      double    spread)
{
  number->form = GW_FORM_SPREAD;
  number->value = value;
  number->spread = spread;
  number->low = value - GW_Z90 * spread;
  number->high = value + GW_Z90 * spread;
}

void
gw_number_set_range (GwNumber *number,
                     double    low,
                     double    typical,
                     double    high)
{
  number->form = GW_FORM_RANGE;
  number->value = typical;
  number->spread = 0.0;
  number->low = low;
  number->high = high;
}

void
gw_number_copy (GwNumber       *to,
                const GwNumber *from)
{
  g_autofree char *source = g_strdup (from->source);

  g_free (to->source);
  *to = *from;
  to->source = g_steal_pointer (&source);
}

void
gw_number_clear (GwNumber *number)
{
  g_clear_pointer (&number->source, g_free);
}

static gboolean
same (double a,
      double b)
{
  return a == b || (isnan (a) && isnan (b));
}

gboolean
gw_number_equal (const GwNumber *a,
                 const GwNumber *b)
{
  return same (a->value, b->value) && same (a->low, b->low) && same (a->high, b->high) &&
         a->form == b->form && a->origin == b->origin && g_strcmp0 (a->source, b->source) == 0;
}

gboolean
gw_number_is_uncertain (const GwNumber *number)
{
  return number->low < number->value || number->high > number->value;
}

double
gw_number_at (const GwNumber *number,
              double          z)
{
  const double side = z < 0.0 ? number->value - number->low : number->high - number->value;

  return number->value + z / GW_Z90 * side;
}

const char *
gw_origin_key (GwOrigin origin)
{
  g_return_val_if_fail (origin < GW_N_ORIGINS, NULL);

  return origin_keys[origin];
}

gboolean
gw_origin_parse (const char *key,
                 GwOrigin   *origin)
{
  for (guint i = 0; i < GW_N_ORIGINS; i++)
    if (g_strcmp0 (key, origin_keys[i]) == 0)
      {
        *origin = (GwOrigin) i;
        return TRUE;
      }

  return FALSE;
}

char *
gw_number_text (double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  /* Whole numbers as people write them, never 1e+05. */
  if (fabs (value) < 1e15 && value == floor (value))
    return g_strdup (g_ascii_formatd (text, sizeof text, "%.0f", value == 0.0 ? 0.0 : value));

  for (int digits = 1; digits <= 17; digits++)
    {
      char format[8];

      g_snprintf (format, sizeof format, "%%.%dg", digits);
      g_ascii_formatd (text, sizeof text, format, value);
      if (g_ascii_strtod (text, NULL) == value)
        break;
    }

  return g_strdup (text);
}

char *
gw_number_shown (double value)
{
  g_autofree char *text = gw_number_text (value);

  return *text == '-' ? g_strconcat ("\342\210\222", text + 1, NULL) : g_steal_pointer (&text);
}
