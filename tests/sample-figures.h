/* sample-figures.h - a whole sheet of invented options, evaluated for real
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "figures/gw-figure.h"
#include "sample-aircraft.h"

#define SAMPLE_OPTIONS 8
#define SAMPLE_ROWS 14
#define SAMPLE_PARTS 7

typedef struct
{
  Sample        sample;
  GwResults     results;
  double        mass[GW_CURVE_N];
  double        curves[SAMPLE_OPTIONS][3][GW_CURVE_N]; /* curve, low, high */
  GwStallCurve  stall[SAMPLE_OPTIONS];
  double        parts[SAMPLE_OPTIONS][SAMPLE_PARTS];
  GwMassBar     bars[SAMPLE_OPTIONS];
  char          texts[SAMPLE_ROWS][SAMPLE_OPTIONS][3][32];
  GwSummaryCell cells[SAMPLE_ROWS][SAMPLE_OPTIONS];
  GwSummaryRow  rows[SAMPLE_ROWS];
  GwSheetFigure sheet; /* with the inputs of all figures */
} SampleFigures;

/** sample_figures_init: the first option is the aircraft evaluated; the others are it, scaled. */
void sample_figures_init  (SampleFigures *figures,
                           SampleKind     kind,
                           size_t         n_options,
                           bool           is_paper);
void sample_figures_clear (SampleFigures *figures);
