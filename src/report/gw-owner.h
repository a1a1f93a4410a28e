/* gw-owner.h - the things an aircraft is made of, and the records they come from
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"

G_BEGIN_DECLS

/* A thing is a surface, a body, a leg, a strut, a power unit or an item, by its place in the
 * list of its group; it stands in the aircraft where its record stands in the study. */

/** gw_group_label: "surface", "power unit", translated. */
const char *gw_group_label (GwGroup group);

/** gw_group_key: of the list its records stand in: "equipment". */
const char *gw_group_key (GwGroup group);

guint gw_owner_count (const GwAircraft *aircraft,
                      GwGroup           group);

const char *gw_owner_name (const GwAircraft *aircraft,
                           GwGroup           group,
                           guint             owner);

/** gw_owner_path: of its record, "equipment/battery". (transfer full) */
char *gw_owner_path (const GwOutcome *outcome,
                     GwGroup          group,
                     guint            owner);

/** gw_owner_moments: of all its pieces, both sides. */
void gw_owner_moments (const GwOutcome *outcome,
                       GwGroup          group,
                       guint            owner,
                       GwMoments       *out);

/** gw_owner_weighed: the mass of those of its pieces that have been on a scale [kg]. */
double gw_owner_weighed (const GwOutcome *outcome,
                         GwGroup          group,
                         guint            owner);

/** gw_owner_origin: where its mass comes from, translated; "mixed" if from several places. */
const char *gw_owner_origin (const GwOutcome *outcome,
                             GwGroup          group,
                             guint            owner);

/** gw_owner_is_wing: whether it is a wing, by its role. */
gboolean gw_owner_is_wing (const GwAircraft *aircraft,
                           GwGroup           group,
                           guint             owner);

/** gw_group_list: the list of records that a group comes from. */
const GPtrArray *gw_group_list (const GwStudy *study,
                                GwGroup        group);

G_END_DECLS
