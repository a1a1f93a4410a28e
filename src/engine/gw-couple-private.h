/* gw-couple-private.h - shared by the files of gw-couple
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-couple.h"

/**
 * gw_coupled_newton:
 *
 * One step of Newton with limited changes.
 *
 * Returns: root of the mean square of the relative changes it wanted; negative if the
 *   equations were singular or not finite.
 */
double gw_coupled_newton (GwCoupled *coupled);
