/* gw-form-value.h - numbers of the form as text and back, in the units that are shown
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-record.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/** gw_form_number_text: without its unit, to the digits that matter. (transfer full) */
char *gw_form_number_text (double         value,
                           GwQuantity     quantity,
                           const GwUnits *units);

/** gw_form_measure_text: with its unit: "310 mm", "12 %", "20 °". (transfer full) */
char *gw_form_measure_text (double         value,
                            GwQuantity     quantity,
                            const GwUnits *units);

/** gw_form_bounds_text: "from 0.08 to 197 in". (transfer full) */
char *gw_form_bounds_text (const GwField *field,
                           const GwUnits *units);

/** gw_form_number_parse: reads what was typed and keeps to the bounds. */
gboolean gw_form_number_parse (const char    *text,
                               const GwField *field,
                               const GwUnits *units,
                               double        *value,
                               GError       **error);

/** gw_form_spread_parse: likewise a spread, also in percent of @value. */
gboolean gw_form_spread_parse (const char    *text,
                               const GwField *field,
                               const GwUnits *units,
                               double         value,
                               double        *spread,
                               GError       **error);

/** gw_form_spread_text: in the shown unit, without it. (transfer full) */
char *gw_form_spread_text (double         spread,
                           GwQuantity     quantity,
                           const GwUnits *units);

/** gw_form_step: what one press of an arrow key adds, in the unit of the document. */
double gw_form_step (const GwField *field,
                     const GwUnits *units);

/** gw_form_sureness_text: "exact", "±3 %", "14–19". (transfer full) */
char *gw_form_sureness_text (const GwNumber *number,
                             const GwField  *field,
                             const GwUnits  *units);

/** gw_form_is_open: left out, the field has no number to show: not stated, or to the end. */
gboolean gw_form_is_open (const GwField *field);

G_END_DECLS
