/* gw-print.h - the sheet on paper and as a file
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "report/gw-export.h"

G_BEGIN_DECLS

/** gw_print_new: prints the sheet on one page, laid out for the paper chosen; @paper, landscape, is
 * proposed. @units: (nullable), taken as they are now. (transfer full) */
GtkPrintOperation *gw_print_new (GwEvaluation  *evaluation,
                                 guint          shown,
                                 const GwPaper *paper,
                                 const GwUnits *units) G_GNUC_WARN_UNUSED_RESULT;

/** gw_print_to_file: the form goes by the ending of @file. */
gboolean gw_print_to_file (GwEvaluation  *evaluation,
                           guint          shown,
                           const GwPaper *paper,
                           const GwUnits *units,
                           GFile         *file,
                           GError       **error);

/** gw_study_title: the name of the study, or words for want of one. */
const char *gw_study_title (const GwStudy *study);

G_END_DECLS
