/* gw-length.h - what lengths are told in
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stddef.h>

typedef struct
{
  const char *name;     /* "in" */
  double      factor;   /* shown = m x factor */
  int         decimals; /* of a dimension */
} GwLengthUnit;

/** gw_signed_number: @value with a real minus sign, and none if it shows as zero. */
void gw_signed_number (double value,
                       int    decimals,
                       char  *text,
                       size_t size);

/** gw_length_text: "76 mm", "2.99 in". @length: [m] */
void gw_length_text (const GwLengthUnit *unit,
                     double              length,
                     char               *text,
                     size_t              size);

/** gw_length_dimension: as a dimension is written, where millimetres are the rule and not named
 * (ISO 129-1): "1400", "55.12 in". */
void gw_length_dimension (const GwLengthUnit *unit,
                          double              length,
                          char               *text,
                          size_t              size);
