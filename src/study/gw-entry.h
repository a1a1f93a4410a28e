/* gw-entry.h - what a person types into a number field
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-quantity.h"

G_BEGIN_DECLS

/* The grammar, blanks anywhere between the words:
 *
 *   entry   = sum
 *   sum     = product { ("+" | "-" | "−") product }
 *   product = factor { ("*" | "×" | "/" | "÷") factor }
 *   factor  = [ "-" | "−" | "+" ] ( number [ unit ] | "(" sum ")" [ unit ] )
 *   number  = digits [ ("." | ",") digits ] [ ("e" | "E") [ "+" | "-" | "−" ] digits ]
 *
 * A number without a unit is in the unit that the field is shown in: 245/2. With a
 * unit it is turned into that: 9 in, 1.5 oz, 1 m + 20 mm, (9 1/2) is not read: write
 * 9.5 in. A product holds at most one unit, and none below a division sign. A comma
 * is a decimal comma; digits are not grouped. */

/** A unit as it may be typed and shown; several may stand for one kind of quantity. */
typedef struct
{
  const char *name; /* "in" */
  GwQuantity  of;   /* the document's quantity that it measures */
  double      factor, offset; /* document value = typed * factor + offset */
} GwEntryUnit;

/** gw_entry_unit: the unit of that name for that quantity, or NULL. */
const GwEntryUnit *gw_entry_unit (GwQuantity  quantity,
                                  const char *name);

/** gw_entry_units: names of all units to type that quantity in. (transfer container) */
const char **gw_entry_units (GwQuantity quantity);

/**
 * gw_entry_parse:
 * @shown: (nullable): unit the field is shown in; NULL: the document's own
 * @value: (out): in the document's unit
 *
 * Returns: whether @text is an entry; the error says what is wrong and where.
 */
gboolean gw_entry_parse (const char        *text,
                         GwQuantity         quantity,
                         const GwEntryUnit *shown,
                         double            *value,
                         GError           **error);

/** gw_entry_text: @value in the unit it is shown in, shortest to @decimals, with a real minus
 * sign (U+2212). (transfer full) */
char *gw_entry_text (double             value,
                     const GwEntryUnit *shown,
                     int                decimals);

G_END_DECLS
