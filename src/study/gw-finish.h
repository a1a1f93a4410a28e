/* gw-finish.h - how smooth a panel is built
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-section.h"
#include "study/gw-study.h"

G_BEGIN_DECLS

/** gw_finish_material: id of what lies outside: its finish, else skin or material of the
 * construction. (nullable) */
const char *gw_finish_material (const GwStudyBuild *build);

/**
 * gw_finish_of_build:
 * @study: resolved
 *
 * The step of the build, or the grain of what lies outside, whichever is the higher over its
 * critical Reynolds number; the layer is turned by that one first, or by neither.
 */
GwFinish gw_finish_of_build (const GwStudy      *study,
                             const GwStudyBuild *build);

/**
 * gw_finish_trips:
 * @study: resolved
 * @section: id
 *
 * Steps with which that section has to be known: for each way its panels are built the heights,
 * each twice the one before, that lie about all heights over the chord there.
 *
 * Returns: (transfer full) (nullable): of GwTrip, NULL if no surface has that section
 */
GArray *gw_finish_trips (const GwStudy *study,
                         const char    *section) G_GNUC_WARN_UNUSED_RESULT;

/** gw_finish_build: how a panel of a surface is built, the option's way before the common one.
 * (nullable) */
const GwStudyBuild *gw_finish_build (const GwStudy *study,
                                     const char    *surface,
                                     guint          panel);

G_END_DECLS
