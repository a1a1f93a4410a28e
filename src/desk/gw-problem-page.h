/* gw-problem-page.h - why a file cannot be opened, where in it, and what to do
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "desk/gw-document.h"

G_BEGIN_DECLS

#define GW_TYPE_PROBLEM_PAGE (gw_problem_page_get_type ())

G_DECLARE_FINAL_TYPE (GwProblemPage, gw_problem_page, GW, PROBLEM_PAGE, GtkWidget)

/** gw_problem_page_show: the error of @document, which has one. */
void gw_problem_page_show (GwProblemPage *self,
                           GwDocument    *document);

/** gw_problem_text: the reason in a line, place first, without the file. (transfer none) */
const char *gw_problem_text (GwDocument *document);

G_END_DECLS
