/* gw-section-outline.h - the outline that a section describes, what kind it is, what it measures
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-outline.h"
#include "study/gw-study.h"

G_BEGIN_DECLS

/**
 * gw_section_outline:
 *
 * By its digits, measures or points. The last ones made are remembered, since to fit an
 * outline takes longer than much else. Safe from any thread.
 */
GwStatus gw_section_outline (const GwStudySection *section,
                             GwOutline            *outline);

/** gw_section_has_outline_of: whether both describe one outline, in the same words. */
gboolean gw_section_has_outline_of (const GwStudySection *a,
                                    const GwStudySection *b);

typedef enum
{
  GW_SECTION_SYMMETRIC,
  GW_SECTION_CAMBERED,
  GW_SECTION_REFLEXED,
  GW_SECTION_FLAT_BOTTOMED,
  GW_SECTION_FOLDED,
  GW_SECTION_PLATE,
  GW_N_SECTION_KINDS
} GwSectionKind;

GwSectionKind gw_section_kind (const GwStudySection *section,
                               const GwOutline      *outline);

/** gw_section_family: for comparisons of computed and measured values. */
GwSectionFamily gw_section_family (const GwStudySection *section,
                                   const GwOutline      *outline);

/** gw_section_kind_name: "Flat underside", translated. */
const char *gw_section_kind_name (GwSectionKind kind);

/** gw_section_measures_text: "12 % thick at 30 %, camber 2 % at 40 %". (transfer full) */
char *gw_section_measures_text (const GwOutline *outline) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_brief_text: "12 % thick, camber 2 % at 40 %". (transfer full) */
char *gw_section_brief_text (const GwOutline *outline) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
