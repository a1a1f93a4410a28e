/* gw-direction.h - numbers run from left to right in every language
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** gw_direction_number: @text, a number with its sign and unit, set apart from the text around it
 * (U+2066 ... U+2069): a sign stays before its digits and a unit behind them. (transfer full) */
static inline char *
gw_direction_number (const char *text)
{
  return g_strconcat ("\342\201\246", text, "\342\201\251", NULL);
}

G_END_DECLS
