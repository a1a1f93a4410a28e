/* gw-sheet.h - what the figures show, made from an evaluation
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-figure.h"
#include "study/gw-evaluation.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/* The inputs of all figures for one shown option, with the strings they borrow.
 * Window, command line and report take the same sheet, so they cannot differ. */
typedef struct _GwSheet GwSheet;

/**
 * gw_sheet_new:
 * @shown: option whose planform is drawn and whose column is tinted
 * @is_paper: lay out as paper (trim margins, standard scale) rather than to fill a window
 * @units: (nullable): to show all in; NULL: those of the file
 */
GwSheet *gw_sheet_new (GwEvaluation  *evaluation,
                       guint          shown,
                       gboolean       is_paper,
                       const GwUnits *units) G_GNUC_WARN_UNUSED_RESULT;
void     gw_sheet_free (GwSheet *sheet);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwSheet, gw_sheet_free)

/** gw_sheet_get_figure: what is drawn. (transfer none) */
const GwSheetFigure *gw_sheet_get_figure (const GwSheet *sheet);

typedef enum
{
  GW_FIGURE_SHEET,
  GW_FIGURE_PLANFORM,
  GW_FIGURE_SIDE,
  GW_FIGURE_STALL,
  GW_FIGURE_MASSES,
  GW_FIGURE_SUMMARY,
  GW_N_FIGURES
} GwFigureKind;

/** gw_figure_kind_name: as on the command line. */
const char *gw_figure_kind_name (GwFigureKind kind);
gboolean    gw_figure_kind_parse (const char   *name,
                                  GwFigureKind *kind);

/* Left free about a figure that stands alone [pt]. */
#define GW_FIGURE_MARGIN 10.0

/** gw_sheet_layout: lays one figure out on a drawing that there is, in place of what it holds. */
void gw_sheet_layout (const GwSheet *sheet,
                      GwFigureKind   kind,
                      double         width,
                      double         height,
                      GwDrawing     *drawing);

/** gw_sheet_draw: lays one figure out, by itself with a margin; (transfer full), free with
 * gw_drawing_free(). */
GwDrawing *gw_sheet_draw (const GwSheet *sheet,
                          GwFigureKind   kind,
                          double         width,
                          double         height,
                          gboolean       is_dark) G_GNUC_WARN_UNUSED_RESULT;

/* Texts of results. Decimals are those of the result, turned by gw_units_decimals(), and more
 * where a number would round to nothing that does not in the unit of the file. */

/** gw_result_unit: that a result is shown in, "" for a plain number. @units: (nullable) */
const char *gw_result_unit (GwResultId     id,
                            const GwUnits *units);

/**
 * gw_value_text: a result with a minus sign, or an en dash if it has no answer.
 * @units: (nullable), as in all of these
 *
 * (transfer full)
 */
char *gw_value_text (GwResultId     id,
                     double         value,
                     const GwUnits *units);

/**
 * gw_band_text: "6.44–7.33", the 10th and 90th percentile of a result; NULL if they round
 * to the same. (transfer full) (nullable)
 */
char *gw_band_text (GwResultId     id,
                    double         value,
                    const GwBand  *band,
                    const GwUnits *units);

/** gw_short_band_text: "±0.45", half that range; NULL likewise. (transfer full) (nullable) */
char *gw_short_band_text (GwResultId     id,
                          const GwBand  *band,
                          const GwUnits *units);

/** gw_change_text: "+0.16", "−3", or NULL for the baseline itself. (transfer full) (nullable) */
char *gw_change_text (GwResultId     id,
                      double         change,
                      const GwUnits *units);

/** gw_limit_of: whether the option keeps what is wanted of that result. */
GwLimit gw_limit_of (const GwOutcome *outcome,
                     GwResultId       id);

G_END_DECLS
