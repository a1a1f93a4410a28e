/* gw-length.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "figures/gw-length.h"

#include <stdio.h>
#include <string.h>

void
gw_length_text (const GwLengthUnit *unit,
                double              length,
                char               *text,
                size_t              size)
{
  snprintf (text, size, "%.*f %s", unit->decimals, length * unit->factor, unit->name);
}

void
gw_length_dimension (const GwLengthUnit *unit,
                     double              length,
                     char               *text,
                     size_t              size)
{
  if (strcmp (unit->name, "mm") == 0)
    snprintf (text, size, "%.*f", unit->decimals, length * unit->factor);
  else
    gw_length_text (unit, length, text, size);
}
