/* gw-dropped-text.h - what options no longer change, in words
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-edit.h"

G_BEGIN_DECLS

/**
 * gw_dropped_text:
 * @study: before the edit
 * @dropped: of GwDroppedChange, at least one
 *
 * "Gone with it: Wing · Station 2 · Chord, set only in Core." (transfer full)
 */
char *gw_dropped_text (const GwStudy   *study,
                       const GPtrArray *dropped);

G_END_DECLS
