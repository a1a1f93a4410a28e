/* gw-reveal.h - scrolling to what has just been made or chosen
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** gw_reveal: scrolls @child, which lies in @scroller, wholly into view, if it is there by then:
 * what is new has its place only after the next layout. */
void gw_reveal (GtkScrolledWindow *scroller,
                GtkWidget         *child);

G_END_DECLS
