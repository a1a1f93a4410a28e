/* gw-section-figures.h - figures of wing sections, made from an evaluation
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-section-figures.h"
#include "report/gw-section-uses.h"

G_BEGIN_DECLS

typedef enum
{
  GW_SECTION_POLAR,
  GW_SECTION_GREATEST_LIFT,
  GW_SECTION_PRESSURE,
  GW_N_SECTION_FIGURES
} GwSectionFigureKind;

/** gw_section_figure_name: as on the command line. */
const char *gw_section_figure_name (GwSectionFigureKind kind);
gboolean    gw_section_figure_parse (const char          *name,
                                     GwSectionFigureKind *kind);

/* The inputs of one figure, with what they borrow. */
typedef struct _GwSectionSheet GwSectionSheet;

/**
 * gw_section_sheet_new:
 * @choice: (nullable): NULL: %GW_SECTION_CHOICE_ALL
 * @units: (nullable): NULL: those of the file
 *
 * Polars and greatest lift are looked up; a pressure is computed, which takes some tenths of a
 * second. Safe from any thread. A choice that nothing fits makes a figure that says so.
 *
 * Returns: (transfer full): NULL with %G_IO_ERROR_CANCELLED
 */
GwSectionSheet *gw_section_sheet_new (GwEvaluation          *evaluation,
                                      GwSectionFigureKind    kind,
                                      const GwSectionChoice *choice,
                                      const GwUnits         *units,
                                      GCancellable          *cancellable,
                                      GError               **error) G_GNUC_WARN_UNUSED_RESULT;
void            gw_section_sheet_free (GwSectionSheet *sheet);

/** gw_section_sheet_make: the same in a thread; @callback, without a source object, in the main
 * loop. */
void gw_section_sheet_make (GwEvaluation          *evaluation,
                            GwSectionFigureKind    kind,
                            const GwSectionChoice *choice,
                            const GwUnits         *units,
                            GCancellable          *cancellable,
                            GAsyncReadyCallback    callback,
                            gpointer               data);

/** gw_section_sheet_made: (transfer full) (nullable): NULL: it was cancelled. */
GwSectionSheet *gw_section_sheet_made (GAsyncResult *result) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwSectionSheet, gw_section_sheet_free)

/** gw_section_sheet_polar: what is drawn; NULL if the sheet is of another figure, and so on.
 * (transfer none) (nullable) */
const GwPolarFigure        *gw_section_sheet_polar (const GwSectionSheet *sheet);
const GwGreatestLiftFigure *gw_section_sheet_greatest_lift (const GwSectionSheet *sheet);
const GwPressureFigure     *gw_section_sheet_pressure (const GwSectionSheet *sheet);

/** gw_section_sheet_layout: lays it out on a drawing that there is, in place of what it holds. */
void gw_section_sheet_layout (const GwSectionSheet *sheet,
                              double                width,
                              double                height,
                              GwDrawing            *drawing);

/** gw_section_sheet_draw: (transfer full), free with gw_drawing_free(). */
GwDrawing *gw_section_sheet_draw (const GwSectionSheet *sheet,
                                  double                width,
                                  double                height,
                                  gboolean              is_dark) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
