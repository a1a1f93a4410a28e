/* gw-length.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "figures/gw-length.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define MINUS "\342\210\222" /* U+2212 */

void
gw_signed_number (double value,
                  int    decimals,
                  char  *text,
                  size_t size)
{
  const int n = snprintf (text, size, "%.*f", decimals, fabs (value));

  /* Written anew with its sign only where a digit says that it is not zero. */
  if (value < 0 && n > 0 && strpbrk (text, "123456789") != NULL)
    snprintf (text, size, MINUS "%.*f", decimals, fabs (value));
}

void
gw_length_text (const GwLengthUnit *unit,
                double              length,
                char               *text,
                size_t              size)
{
  char number[24];

  gw_signed_number (length * unit->factor, unit->decimals, number, sizeof number);
  snprintf (text, size, "%s %s", number, unit->name);
}

void
gw_length_dimension (const GwLengthUnit *unit,
                     double              length,
                     char               *text,
                     size_t              size)
{
  if (strcmp (unit->name, "mm") == 0)
    gw_signed_number (length * unit->factor, unit->decimals, text, size);
  else
    gw_length_text (unit, length, text, size);
}
