/* gw-direction.h - texts begin where the language does, numbers run from left to right in all
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** gw_direction_number: @text, a number with its sign and unit, set apart from the text around it
 * (U+2066 ... U+2069): a sign stays before its digits and a unit behind them. (transfer full) */
static inline char *
gw_direction_number (const char *text)
{
  return g_strconcat ("\342\201\246", text, "\342\201\251", NULL);
}

/** gw_direction_align: lets it begin at the start of the line, as a label does. */
static inline void
gw_direction_align (GtkInscription *inscription)
{
  const gboolean is_rtl =
    gtk_widget_get_direction (GTK_WIDGET (inscription)) == GTK_TEXT_DIR_RTL;

  gtk_inscription_set_xalign (inscription, is_rtl ? 1.0f : 0.0f);
}

G_END_DECLS
