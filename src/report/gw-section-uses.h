/* gw-section-uses.h - which sections the options fly, where and how fast
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/* A section at a place of a surface of one option. */
typedef struct
{
  const GwOutcome      *outcome;
  guint                 option;
  guint                 surface; /* of the aircraft */
  const GwStudySection *record;  /* resolved */
  const GwSection      *section;
  double                chord; /* [m] */
  double                re;    /* at the stall; NAN: no stall speed */
  double                eta;   /* fraction of the semispan; NAN: all stations that have it */
  GwFinish              finish;
  gboolean              is_first; /* lets go first */
} GwSectionUse;

/* What a figure of sections is of. */
typedef struct
{
  int         option;  /* index; -1: all, and of one section alone the baseline */
  const char *section; /* id; NULL: all in use, or the one that lets go first */
  int         surface; /* index of the aircraft's; -1: all, or the one that lets go first */
  double      eta;     /* place on @surface, fraction of the semispan; NAN: as computed */
  double      re;      /* NAN: at the stall */
  double      alpha;   /* of the pressure [rad]; NAN: at the greatest lift */
} GwSectionChoice;

#define GW_SECTION_CHOICE_ALL \
 ((GwSectionChoice){ -1, NULL, -1, (double) NAN, (double) NAN, (double) NAN })

/**
 * gw_section_uses:
 *
 * Each section of each surface but fins once an option: where the wing lets go first there, else
 * with the mean chord of the stations that have it.
 *
 * Returns: (transfer full): of GwSectionUse, which borrow from @evaluation
 */
GArray *gw_section_uses (const GwEvaluation    *evaluation,
                         const GwSectionChoice *choice) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_use_is_like: outline and data are the same. */
gboolean gw_section_use_is_like (const GwSectionUse *a,
                                 const GwSectionUse *b);

/** gw_section_use_has_finish_of: steps or grains of one place and height over the chord. */
gboolean gw_section_use_has_finish_of (const GwSectionUse *a,
                                       const GwSectionUse *b);

/** gw_section_use_finish_acts: FALSE if its grain or step is too low to do anything at @re. */
gboolean gw_section_use_finish_acts (const GwSectionUse *use,
                                     double              re);

/** gw_section_use_finish_text: "step 0.5 mm at 30 %"; NULL: smooth. (transfer full) (nullable) */
char *gw_section_use_finish_text (const GwSectionUse *use,
                                  const GwUnits      *units);

G_END_DECLS
