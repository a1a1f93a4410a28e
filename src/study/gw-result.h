/* gw-result.h - what each result is called, measured in and worth
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-evaluate.h"
#include "study/gw-quantity.h"

G_BEGIN_DECLS

typedef struct
{
  const char *key;      /* in JSON, without its unit */
  const char *label;    /* untranslated */
  GwQuantity  quantity; /* it is shown in */
  int         decimals;
  gboolean    is_on_sheet; /* a row of the summary on the sheet */
} GwResultInfo;

const GwResultInfo *gw_result_info (GwResultId id);

/** gw_result_key: key with its unit, "mass_g". (transfer full) */
char *gw_result_key (GwResultId id);

/** gw_result_shown: the value in the unit it is shown in. */
double gw_result_shown (GwResultId id,
                        double     value);

/** gw_result_shown_change: a difference, in the unit it is shown in. */
double gw_result_shown_change (GwResultId id,
                               double     change);

/** gw_note_text: the sentence of one note, translated. */
const char *gw_note_text (GwNote note);

/** gw_note_key: the note's word in JSON. */
const char *gw_note_key (GwNote note);

/** gw_piece_kind_label: "wing skin", untranslated. */
const char *gw_piece_kind_label (GwPieceKind kind);

/** gw_piece_kind_key: the kind's word in JSON. */
const char *gw_piece_kind_key (GwPieceKind kind);

G_END_DECLS
