/* gw-template-private.h - what the files of the starting shapes share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-template.h"

G_BEGIN_DECLS

/** _gw_template_wing: the first surface that is a wing, or NULL. */
const GwStudySurface *_gw_template_wing (const GwStudy *study);

/**
 * _gw_template_scale:
 * @span: @chord: @mass: factors against @study
 *
 * Returns: (transfer full): as gw_template_make() says, not yet balanced or checked.
 */
GwStudy *_gw_template_scale (const GwStudy *study,
                             double         span,
                             double         chord,
                             double         mass) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
