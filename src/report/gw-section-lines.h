/* gw-section-lines.h - polars of a section at any Reynolds number, as lines
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "report/gw-section-uses.h"

G_BEGIN_DECLS

typedef struct
{
  double   alpha, cl, cd; /* [rad]; cd NAN: not known */
  gboolean is_bridged;
} GwSectionLineRow;

/* What a line is of. */
typedef enum
{
  GW_LINE_OF_NOTHING,
  GW_LINE_OF_POLARS,
  GW_LINE_OF_PLATE, /* tests of thin plates */
  GW_LINE_OF_ROWS,  /* angle of no lift, slope and greatest lift alone */
} GwSectionLineKind;

/**
 * gw_section_line_at:
 * @with_finish: as the panel is built; else smooth
 * @rows: (out) (transfer full): of GwSectionLineRow, by rising incidence
 *
 * Polars as computed, at each incidence straight in the logarithm of the Reynolds number (and of
 * the step's height) between the two that lie about it; beyond the computed ones the last. Of
 * thin plates what was measured; of a section with rows alone their straight line up to the
 * greatest lift. Computes nothing that was not prepared.
 */
GwSectionLineKind gw_section_line_at (const GwSectionUse *use,
                                      double              re,
                                      gboolean            with_finish,
                                      GArray            **rows);

/** gw_section_least_drag: of such rows (nullable); NULL: no drag is known. */
const GwSectionLineRow *gw_section_least_drag (const GArray *rows);

/** gw_section_re_shown: to the two digits that a Reynolds number is good for. */
double gw_section_re_shown (double re);

/** gw_section_finish_bends: whether the finish makes a line that can be told from the smooth
 * one. */
gboolean gw_section_finish_bends (const GwSectionUse *use,
                                  double              re);

/** gw_section_finish_costs: whether it makes a greatest lift that can be told from the smooth one,
 * at any Reynolds number of the section's rows. */
gboolean gw_section_finish_costs (const GwSectionUse *use);

/**
 * gw_section_computed_top:
 *
 * Greatest lift of the smooth polars, straight in the logarithm of the Reynolds number: before
 * measurements move it.
 *
 * Returns: NAN if there are none
 */
double gw_section_computed_top (const GwSectionUse *use,
                                double              re);

/**
 * gw_section_two_valued:
 * @from: (out): least incidence [rad]
 * @to: (out): greatest
 *
 * Whether a smooth polar next to @re has another lift on the way back from the stall.
 */
gboolean gw_section_two_valued (const GwSectionUse *use,
                                double              re,
                                double             *from,
                                double             *to);

/** gw_section_lift_band: 10th and 90th percentile of a greatest lift @cl there. */
void gw_section_lift_band (const GwSectionUse *use,
                           double              re,
                           double              cl,
                           double             *low,
                           double             *high);

/** gw_section_has_own_rows: whether what it does was given with the study. */
gboolean gw_section_has_own_rows (const GwStudySection *section);

G_END_DECLS
