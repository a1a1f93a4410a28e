/* gw-amount.h - amounts as text, in the units a person wants to see
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-number.h"
#include "study/gw-result.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/* All take values in SI, as the engine gives them. A value without an answer is an en dash;
 * a minus is a real minus, and what rounds to zero has none. @decimals are those of the
 * document's own unit: another is as fine, and what that one would tell it tells as well. */

/** gw_amount_number: without its unit. (transfer full) */
char *gw_amount_number (const GwUnits *units,
                        GwQuantity     quantity,
                        double         value,
                        int            decimals);

/** gw_amount_text: with its unit. (transfer full) */
char *gw_amount_text (const GwUnits *units,
                      GwQuantity     quantity,
                      double         value,
                      int            decimals);

/** gw_amount_digits: with its unit, to five digits, so that what is shown can be computed with.
 * (transfer full) */
char *gw_amount_digits (const GwUnits *units,
                        GwQuantity     quantity,
                        double         value);

/** gw_amount_change: a difference with its sign, without its unit. (transfer full) */
char *gw_amount_change (const GwUnits *units,
                        GwQuantity     quantity,
                        double         change,
                        int            decimals);

/** gw_amount_size: how large a difference is, with its unit and without a sign. (transfer full) */
char *gw_amount_size (const GwUnits *units,
                      GwQuantity     quantity,
                      double         change,
                      int            decimals);

/** gw_amount_is_nothing: whether a difference shows as zero. */
gboolean gw_amount_is_nothing (const GwUnits *units,
                               GwQuantity     quantity,
                               double         change,
                               int            decimals);

/** gw_amount_band: "6.44–7.33"; NULL if both ends show the same. (transfer full) (nullable) */
char *gw_amount_band (const GwUnits *units,
                      GwQuantity     quantity,
                      double         low,
                      double         high,
                      int            decimals);

/** gw_amount_origin: what an origin is called, translated. */
const char *gw_amount_origin (GwOrigin origin);

/* The same for a result, with its own decimals. */
char *gw_amount_result (const GwUnits *units,
                        GwResultId     id,
                        double         value);

G_END_DECLS
