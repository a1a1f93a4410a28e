/* gw-export.h - drawings as files
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "report/gw-sheet.h"

G_BEGIN_DECLS

typedef enum
{
  GW_FILE_PDF,
  GW_FILE_SVG,
  GW_FILE_PNG,
} GwFileKind;

typedef struct
{
  const char *name;          /* A4 */
  double      width, height; /* landscape [pt] */
} GwPaper;

/** gw_paper_get: sheet sizes by index, ISO 216 and ANSI letter; NULL after the last. */
const GwPaper *gw_paper_get  (guint       i);
const GwPaper *gw_paper_find (const char *name);

/** gw_file_kind_of: by the ending of @path; FALSE with a message if it is none of them. */
gboolean gw_file_kind_of (const char *path,
                          GwFileKind *kind,
                          GError    **error);

/** gw_export_bytes: what the file of that kind would hold. (transfer full) */
GBytes *gw_export_bytes (const GwDrawing *drawing,
                         double           width,
                         double           height,
                         const char      *title,
                         GwFileKind       kind,
                         GError         **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_export_drawing:
 * @width, @height: of the page [pt]
 *
 * Draws into memory first and writes the file at once, so a failure leaves no half
 * of it. A PNG has two pixels to the point.
 */
gboolean gw_export_drawing (const GwDrawing *drawing,
                            double           width,
                            double           height,
                            const char      *title,
                            GwFileKind       kind,
                            const char      *path,
                            GError         **error);

G_END_DECLS
