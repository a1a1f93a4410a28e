/* gw-section-import.h - an outline from a file, looked at before it is added
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "study/gw-section-file.h"

G_BEGIN_DECLS

#define GW_TYPE_SECTION_IMPORT (gw_section_import_get_type ())

/* Shows the outline, what had to be set right and what smoothing would change. Signal: "add",
 * with the record for the study (JsonNode *, not the receiver's); then the window closes. */
G_DECLARE_FINAL_TYPE (GwSectionImport, gw_section_import, GW, SECTION_IMPORT, GtkWindow)

/** gw_section_import_new: (transfer full) @file */
GtkWindow *gw_section_import_new (GtkWindow     *parent,
                                  GwSectionFile *file) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
