/* gw-lattice-private.h - shared by the files of the lattice
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gsl/gsl_matrix.h>
#include <gsl/gsl_permutation.h>

#include "engine/gw-lattice.h"

struct GwLattice
{
  GwLatticePlan    plan;
  size_t           n, n_strips;
  GwLatticeVortex *vortices;
  GwLatticeStrip  *strips;
  gsl_matrix      *factor[2]; /* by case */
  gsl_permutation *order[2];
};

/** _gw_lattice_lay: strips and vortices of the plan's surfaces. */
GwStatus _gw_lattice_lay (GwLattice *lattice);
