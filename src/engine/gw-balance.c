/* gw-balance.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-balance.h"

GwStatus
gw_balance_of (const GwPieces *pieces,
               GwBalance      *out)
{
  GwMoments sum = { 0 };
  double    weighed = 0.0;

  for (size_t i = 0; i < pieces->n; i++)
    {
      gw_moments_add (&sum, &pieces->v[i].mass, 1.0);
      if (pieces->v[i].is_weighed)
        weighed += pieces->v[i].mass.total;
    }

  if (!(sum.total > 0.0))
    return GW_EDOM;

  out->mass = sum.total;
  out->weighed_mass = weighed;
  gw_moments_centre (&sum, out->centre);
  gw_moments_inertia (&sum, &out->inertia);
  return GW_OK;
}

GwStatus
gw_balance_place (double  mass,
                  double  centre,
                  double  item_mass,
                  double  item_at,
                  double  wanted,
                  double *out)
{
  if (!(item_mass > 0.0))
    return GW_EDOM;

  *out = item_at + (wanted - centre) * mass / item_mass;
  return GW_OK;
}

GwStatus
gw_balance_ballast (double  mass,
                    double  centre,
                    double  station,
                    double  wanted,
                    double *out)
{
  const double moment = mass * (wanted - centre);
  const double arm = station - wanted;

  if (moment != 0.0 && !(moment / arm > 0.0 && arm != 0.0))
    return GW_EDOM;

  *out = moment != 0.0 ? moment / arm : 0.0;
  return GW_OK;
}

void
gw_balance_travel (double  mass,
                   double  centre,
                   double  item_mass,
                   double  item_at,
                   double  from,
                   double  to,
                   double *centre_from,
                   double *centre_to)
{
  *centre_from = centre + item_mass * (from - item_at) / mass;
  *centre_to = centre + item_mass * (to - item_at) / mass;
}
