/* gw-lattice.c - what vortices do to one another, and their strengths
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <stdlib.h>

#include "engine/gw-lattice-private.h"

#define CORE 0.05 /* of a leg that meets another surface, of the chord it comes from */
#define SPAN 0.01 /* over which a mean line's slope is taken, in chords */

/* Velocity at @p of the straight vortex from @a to @b. Katz & Plotkin, eq. 2.72. */
static void
add_bound (const double a[3],
           const double b[3],
           const double p[3],
           double       v[3])
{
  const double r1[3] = { p[0] - a[0], p[1] - a[1], p[2] - a[2] };
  const double r2[3] = { p[0] - b[0], p[1] - b[1], p[2] - b[2] };
  const double cross[3] = { r1[1] * r2[2] - r1[2] * r2[1], r1[2] * r2[0] - r1[0] * r2[2],
                            r1[0] * r2[1] - r1[1] * r2[0] };
  const double square = cross[0] * cross[0] + cross[1] * cross[1] + cross[2] * cross[2];
  const double l1 = sqrt (r1[0] * r1[0] + r1[1] * r1[1] + r1[2] * r1[2]);
  const double l2 = sqrt (r2[0] * r2[0] + r2[1] * r2[1] + r2[2] * r2[2]);
  double       along = 0.0;

  /* In line with it, it does nothing. */
  if (square < 1e-20 * l1 * l1 * l2 * l2 || l1 <= 0.0 || l2 <= 0.0)
    return;

  for (int k = 0; k < 3; k++)
    along += (b[k] - a[k]) * (r1[k] / l1 - r2[k] / l2);
  for (int k = 0; k < 3; k++)
    v[k] += cross[k] * along / (4.0 * M_PI * square);
}

/* Of the leg that runs aft from @a for ever, times @sign; @core: square of its radius. */
static void
add_leg (const double a[3],
         const double p[3],
         double       core,
         double       sign,
         double       v[3])
{
  const double x = p[0] - a[0], y = p[1] - a[1], z = p[2] - a[2];
  const double square = y * y + z * z;
  const double length = sqrt (x * x + square);
  double       factor;

  if (square + core < 1e-20 * length * length || length <= 0.0)
    return;

  factor = sign * (1.0 + x / length) / (4.0 * M_PI * (square + core));
  v[1] -= factor * z;
  v[2] += factor * y;
}

static void
add_horseshoe (const double a[3],
               const double b[3],
               const double p[3],
               double       core,
               double       v[3])
{
  add_bound (a, b, p, v);
  add_leg (a, p, core, -1.0, v);
  add_leg (b, p, core, 1.0, v);
}

static void
mirror (const double at[3],
        double       out[3])
{
  out[0] = at[0];
  out[1] = -at[1];
  out[2] = at[2];
}

/* Speed out of the upper side at vortex @i by a unit of vortex @j, of its image alone if
 * @is_image. */
static double
wash_of (const GwLattice *lattice,
         size_t           i,
         size_t           j,
         bool             is_image)
{
  const GwLatticeVortex *to = &lattice->vortices[i], *from = &lattice->vortices[j];
  const GwLatticeStrip  *strip = &lattice->strips[to->strip];
  const GwLatticeStrip  *source = &lattice->strips[from->strip];
  const double           radius = strip->surface != source->surface ? CORE * source->chord : 0.0;
  double                 a[3], b[3], v[3] = { 0.0, 0.0, 0.0 };

  if (is_image)
    {
      mirror (from->b, a);
      mirror (from->a, b);
      add_horseshoe (a, b, to->at, radius * radius, v);
    }
  else
    add_horseshoe (from->a, from->b, to->at, radius * radius, v);

  return strip->tilt[0] * v[2] - strip->tilt[1] * v[1];
}

/* A surface in the plane of symmetry has no part in flows that are alike on both sides; in
 * opposed ones it is there once. */
static void
fill (const GwLattice *lattice,
      gsl_matrix      *alike,
      gsl_matrix      *opposed)
{
  for (size_t i = 0; i < lattice->n; i++)
    for (size_t j = 0; j < lattice->n; j++)
      {
        const bool   is_i = lattice->strips[lattice->vortices[i].strip].is_central;
        const bool   is_j = lattice->strips[lattice->vortices[j].strip].is_central;
        const double own = wash_of (lattice, i, j, false);
        const double image = is_j ? 0.0 : wash_of (lattice, i, j, true);

        gsl_matrix_set (alike, i, j, is_i || is_j ? (i == j ? 1.0 : 0.0) : own + image);
        gsl_matrix_set (opposed, i, j, own - image);
      }
}

static GwStatus
factor (GwLattice *lattice)
{
  int sign;

  for (int k = 0; k < 2; k++)
    {
      lattice->factor[k] = gsl_matrix_alloc (lattice->n, lattice->n);
      lattice->order[k] = gsl_permutation_alloc (lattice->n);
      if (lattice->factor[k] == NULL || lattice->order[k] == NULL)
        return GW_ENOMEM;
    }

  fill (lattice, lattice->factor[GW_LATTICE_ALIKE], lattice->factor[GW_LATTICE_OPPOSED]);
  for (int k = 0; k < 2; k++)
    {
      if (gsl_linalg_LU_decomp (lattice->factor[k], lattice->order[k], &sign) != GSL_SUCCESS)
        return GW_EDOM;
      for (size_t i = 0; i < lattice->n; i++)
        if (!(fabs (gsl_matrix_get (lattice->factor[k], i, i)) > 0.0))
          return GW_EDOM;
    }

  return GW_OK;
}

GwStatus
gw_lattice_new (const GwLatticePlan *plan,
                GwLattice          **out)
{
  GwLattice *lattice = calloc (1, sizeof *lattice);
  GwStatus   status;

  if (lattice == NULL)
    return GW_ENOMEM;

  /* It is to return errors instead of ending the program. */
  gsl_set_error_handler_off ();
  lattice->plan = *plan;
  status = _gw_lattice_lay (lattice);
  if (status == GW_OK)
    status = factor (lattice);
  if (status != GW_OK)
    gw_lattice_free (lattice);
  else
    *out = lattice;

  return status;
}

void
gw_lattice_free (GwLattice *lattice)
{
  if (lattice == NULL)
    return;

  for (int k = 0; k < 2; k++)
    {
      gsl_matrix_free (lattice->factor[k]);
      gsl_permutation_free (lattice->order[k]);
    }
  free (lattice->vortices);
  free (lattice->strips);
  free (lattice);
}

size_t
gw_lattice_n (const GwLattice *lattice)
{
  return lattice->n;
}

const GwLatticeVortex *
gw_lattice_vortices (const GwLattice *lattice)
{
  return lattice->vortices;
}

size_t
gw_lattice_n_strips (const GwLattice *lattice)
{
  return lattice->n_strips;
}

const GwLatticeStrip *
gw_lattice_strips (const GwLattice *lattice)
{
  return lattice->strips;
}

void
gw_lattice_incidence (const GwLattice *lattice,
                      double          *wash)
{
  for (size_t i = 0; i < lattice->n; i++)
    wash[i] = lattice->strips[lattice->vortices[i].strip].tilt[0];
}

static double
mean_slope (const GwOutline *outline,
            double           x)
{
  const double from = fmax (x - SPAN, 0.0), to = fmin (x + SPAN, 1.0);
  double       rise = 0.0;

  for (int is_upper = 0; is_upper < 2; is_upper++)
    rise += 0.5 * (gw_outline_height_at (outline, to, is_upper) -
                   gw_outline_height_at (outline, from, is_upper));

  return rise / (to - from);
}

void
gw_lattice_shape (const GwLattice *lattice,
                  double          *wash)
{
  for (size_t i = 0; i < lattice->n; i++)
    {
      const GwLatticeVortex *vortex = &lattice->vortices[i];
      const GwLatticeStrip  *strip = &lattice->strips[vortex->strip];
      const GwStation       *inner = &lattice->plan.surfaces[strip->surface].stations[strip->panel];
      const GwStation       *outer = inner + 1;
      const double           share = strip->t * outer->chord / strip->chord;
      const double           twist = inner->twist + strip->t * (outer->twist - inner->twist);

      /* Straight lines from section to section: the slope goes with the heights. */
      wash[i] = twist - (1.0 - share) * mean_slope (&inner->section->outline, vortex->place) -
                share * mean_slope (&outer->section->outline, vortex->place);
    }
}

void
gw_lattice_solve (const GwLattice *lattice,
                  GwLatticeCase    of,
                  const double    *wash,
                  double          *circulation)
{
  gsl_vector_view x = gsl_vector_view_array (circulation, lattice->n);

  for (size_t i = 0; i < lattice->n; i++)
    circulation[i] =
      of == GW_LATTICE_ALIKE && lattice->strips[lattice->vortices[i].strip].is_central ? 0.0
                                                                                       : -wash[i];
  gsl_linalg_LU_svx (lattice->factor[of], lattice->order[of], &x.vector);
}
