/* gw-template.h - starting shapes: a whole study made to a span, a chord and a mass
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"

G_BEGIN_DECLS

typedef struct
{
  double least, usual, most;
} GwTemplateRange;

/* A study in data/templates and how far it may be stretched. The usual values are
 * those of the study itself. */
typedef struct
{
  char           *id, *name;
  char           *about;        /* one sentence */
  GwTemplateRange span;         /* [m] */
  GwTemplateRange aspect_ratio; /* span over mean chord */
  GwTemplateRange loading;      /* mass over wing area to the power 1.5 [kg/m3], so that it
                                 * stays when everything grows alike */
  GwStudy        *study;
} GwTemplate;

/** gw_templates: of GwTemplate, in the order to show them; read once. (transfer none) */
const GPtrArray *gw_templates (void);

/** gw_template_find: (nullable) */
const GwTemplate *gw_template_find (const char *id);

/** gw_template_chords: mean chords [m] that go with that span [m]. */
GwTemplateRange gw_template_chords (const GwTemplate *shape,
                                    double            span);

/** gw_template_masses: mass goals [kg] that go with that span and mean chord [m]. */
GwTemplateRange gw_template_masses (const GwTemplate *shape,
                                    double            span,
                                    double            chord);

/**
 * gw_template_make:
 * @span: [m]
 * @chord: mean chord, wing area over span [m]
 * @mass: all-up mass wanted [kg]
 *
 * The shape at that size, its battery (what the study says is moved) where the engine
 * finds that each option balances, to the whole millimetre, or as near to it as the bay
 * goes. What the mass comes to follows from how it is built; the goal becomes the target.
 *
 * Of the scales s (span), c (chord) and m (mass): lengths of the body go by sqrt (s c);
 * tails are sized for the tail volumes of the shape; what is carried weighs m times and
 * measures cbrt (m) times as much, and bodies are as wide and high as what they hold;
 * spars keep their stress under the same load factor, so they go by cbrt (m s);
 * propellers keep their disc loading and legs their clearance: sqrt (m). Sheets, walls
 * and films stay as they are bought. Common practice, no source, but for momentum theory
 * (discs) and the bending of beams (spars).
 *
 * Returns: (transfer full): the study, or NULL if it is beyond the shape's range, with
 *   the reason
 */
GwStudy *gw_template_make (const GwTemplate *shape,
                           double            span,
                           double            chord,
                           double            mass,
                           GError          **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
