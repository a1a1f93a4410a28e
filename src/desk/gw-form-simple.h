/* gw-form-simple.h - text on one line, text on several, yes or no
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-form-field.h"

G_BEGIN_DECLS

#define GW_TYPE_FORM_TEXT (gw_form_text_get_type ())
#define GW_TYPE_FORM_NOTE (gw_form_note_get_type ())
#define GW_TYPE_FORM_FLAG (gw_form_flag_get_type ())

/* Enter (on one line) or leaving the field takes the text, Escape restores it. */
G_DECLARE_FINAL_TYPE (GwFormText, gw_form_text, GW, FORM_TEXT, GwFormField)
G_DECLARE_FINAL_TYPE (GwFormNote, gw_form_note, GW, FORM_NOTE, GwFormField)

G_DECLARE_FINAL_TYPE (GwFormFlag, gw_form_flag, GW, FORM_FLAG, GwFormField)

G_END_DECLS
