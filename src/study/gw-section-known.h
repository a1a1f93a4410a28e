/* gw-section-known.h - what is known of a section: measured, computed or guessed
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-polars.h"
#include "study/gw-study.h"

G_BEGIN_DECLS

/**
 * gw_section_fill:
 * @trips: (nullable): of GwTrip, steps in chords with which the section is built
 * @wanted: (nullable): subjects of polars that are not there yet are added to it
 *
 * Fills in what a section without rows does by Reynolds number, how well that is known and
 * where it comes from:
 *
 * - thin plates by gw_plate_values();
 * - what has been computed, by gw_polar_section_row(), moved to meet published measurements
 *   of that section (the whole way to what is printed; to the nearest end of a recalled range,
 *   if outside it), with the spread that data/catalogue/comparisons.json has for its family and
 *   Reynolds number;
 * - else, until it is computed, as that section of the catalogue which is most like it in family,
 *   thickness and camber.
 *
 * Does nothing if it has rows of its own or no outline.
 */
void gw_section_fill (GwStudySection *section,
                      const GArray   *trips,
                      GArray         *wanted);

/** gw_section_is_thin_plate: what it does stands in tables of plates and is not computed. */
gboolean gw_section_is_thin_plate (const GwStudySection *section,
                                   const GwOutline      *outline);

/** gw_section_subject: of its polars with that step (nullable). FALSE if it has no outline. */
gboolean gw_section_subject (const GwStudySection *section,
                             const GwTrip         *trip,
                             GwPolarSubject       *subject);

G_END_DECLS
