/* gw-lattice-loads.c - forces and moments of a lattice
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "engine/gw-lattice-private.h"

static double
strip_circulation (const GwLattice *lattice,
                   size_t           strip,
                   const double    *circulation)
{
  const GwLatticeStrip *at = &lattice->strips[strip];
  double                sum = 0.0;

  for (size_t k = at->first; k < at->first + at->n; k++)
    sum += circulation[k];

  return sum;
}

double
gw_lattice_strip_lift (const GwLattice *lattice,
                       size_t           strip,
                       const double    *circulation)
{
  return 2.0 * strip_circulation (lattice, strip, circulation) / lattice->strips[strip].chord;
}

/* Wash across @strip far behind, by a straight vortex at (@y, @z) along the stream. */
static double
far_wash (const GwLatticeStrip *strip,
          double                y,
          double                z)
{
  const double dy = strip->quarter[1] - y, dz = strip->quarter[2] - z;

  return (strip->tilt[0] * dy + strip->tilt[1] * dz) / (2.0 * M_PI * (dy * dy + dz * dz));
}

/* Both legs of a strip with a unit of circulation, and those of its image. */
static double
far_wash_of_strip (const GwLattice      *lattice,
                   const GwLatticeStrip *strip,
                   const GwLatticeStrip *source,
                   GwLatticeCase         of)
{
  const GwLatticeVortex *vortex = &lattice->vortices[source->first];
  const double           sign = of == GW_LATTICE_ALIKE ? 1.0 : -1.0;
  double                 wash;

  wash = far_wash (strip, vortex->b[1], vortex->b[2]);
  wash -= far_wash (strip, vortex->a[1], vortex->a[2]);
  if (!source->is_central)
    wash += sign * (far_wash (strip, -vortex->a[1], vortex->a[2]) -
                    far_wash (strip, -vortex->b[1], vortex->b[2]));
  return wash;
}

/* The strips of one side, or of the plane of symmetry. */
static double
induced_drag (const GwLattice *lattice,
              GwLatticeCase    of,
              const double    *circulation,
              size_t           strip)
{
  const GwLatticeStrip *at = &lattice->strips[strip];
  double                wash = 0.0;

  for (size_t j = 0; j < lattice->n_strips; j++)
    wash += strip_circulation (lattice, j, circulation) *
            far_wash_of_strip (lattice, at, &lattice->strips[j], of);

  return -strip_circulation (lattice, strip, circulation) * wash * at->width;
}

static void
add_vortex (const GwLatticeVortex *vortex,
            GwLatticeCase          of,
            bool                   is_central,
            double                 circulation,
            const double           about[3],
            GwLatticeLoads        *out)
{
  const double both = is_central ? 1.0 : 2.0;
  const double up = 2.0 * both * circulation * (vortex->b[1] - vortex->a[1]);
  const double out_ = -2.0 * both * circulation * (vortex->b[2] - vortex->a[2]);
  const double x = 0.5 * (vortex->a[0] + vortex->b[0]) - about[0];
  const double y = 0.5 * (vortex->a[1] + vortex->b[1]) - about[1];
  const double z = 0.5 * (vortex->a[2] + vortex->b[2]) - about[2];

  if (of == GW_LATTICE_ALIKE)
    {
      out->lift += up;
      out->pitch -= x * up;
    }
  else
    {
      out->side += out_;
      out->roll -= y * up - z * out_;
      out->yaw -= x * out_;
    }
}

GwLatticeLoads
gw_lattice_loads (const GwLattice *lattice,
                  GwLatticeCase    of,
                  const double    *circulation,
                  const double     about[3],
                  int              surface)
{
  GwLatticeLoads loads = { .lift = 0.0 };

  for (size_t s = 0; s < lattice->n_strips; s++)
    {
      const GwLatticeStrip *strip = &lattice->strips[s];

      if (surface >= 0 && strip->surface != (size_t) surface)
        continue;
      for (size_t k = strip->first; k < strip->first + strip->n; k++)
        add_vortex (&lattice->vortices[k], of, strip->is_central, circulation[k], about, &loads);
      loads.drag += (strip->is_central ? 1.0 : 2.0) * induced_drag (lattice, of, circulation, s);
    }

  return loads;
}
