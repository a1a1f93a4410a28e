/* gw-plate.c - thin plates, flat and cambered
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-plate.h"

#include <math.h>

#define FLAT_TOP   0.72  /* greatest lift of a flat plate ... */
#define FLAT_RE    1.2e5 /* ... at this Reynolds number */
#define RE_POWER   0.06
#define CAMBER_TOP 9.0 /* lift for camber */
#define TOP_BAND   0.14
#define DRAG_BAND  0.30
#define STRAIGHT   0.75 /* of the greatest lift: so far the lift is straight */
#define FALL       0.12 /* incidence over which the lift falls behind the top [rad] ... */
#define FALLEN     0.85 /* ... to this part */
#define NO_SUCTION 0.8
#define SLOPE      0.9  /* of two pi */
#define VISCOUS    0.85 /* of the effect of camber */

static double
top_of (const GwPlate *plate,
        double         camber)
{
  return fmax ((FLAT_TOP + CAMBER_TOP * camber) * pow (plate->re / FLAT_RE, RE_POWER), 0.3);
}

GwStatus
gw_plate_values (const GwPlate *plate,
                 GwPlateValues *out)
{
  double top, drag;

  if (!(plate->thickness >= 0.005 && plate->thickness <= 0.05 && plate->camber >= 0.0 &&
        plate->camber <= 0.09 && plate->re >= 2e4 && plate->re <= 5e5))
    return GW_EINVAL;

  top = top_of (plate, plate->camber);
  drag = 2.0 * 1.328 / sqrt (plate->re) + 0.25 * plate->thickness + 0.1 * plate->camber;
  for (int i = 0; i < 3; i++)
    {
      out->cl_max[i] = top * (1.0 + (i - 1) * TOP_BAND);
      out->cd_zero[i] = drag * (1.0 + (i - 1) * DRAG_BAND);
    }
  out->slope = SLOPE * 2.0 * M_PI;
  out->alpha_zero = -VISCOUS * 2.0 * plate->camber;
  out->alpha_max = out->alpha_zero + (2.0 - STRAIGHT) * top / out->slope;
  out->alpha_least = 0.0; /* the ideal incidence of an arc */
  out->cm_zero = -VISCOUS * M_PI * plate->camber;
  return GW_OK;
}

/* Lift at @angle above the incidence of none, the greatest being @top. */
static double
lift_above (double angle,
            double slope,
            double top)
{
  const double bend = STRAIGHT * top / slope, peak = (2.0 - STRAIGHT) * top / slope;

  if (angle <= bend)
    return slope * angle;
  if (angle <= peak)
    return top - 0.5 * slope * (peak - angle) * (peak - angle) / (peak - bend);
  return top * fmax (1.0 - (1.0 - FALLEN) * (angle - peak) / FALL, FALLEN);
}

GwStatus
gw_plate_at (const GwPlate *plate,
             double         alpha,
             double        *cl,
             double        *cd,
             double        *cm)
{
  GwPlateValues  values;
  const GwStatus status = gw_plate_values (plate, &values);
  double         angle;

  if (status != GW_OK)
    return status;
  if (!(fabs (alpha) <= 0.5))
    return GW_EINVAL;

  angle = alpha - values.alpha_zero;
  *cl = angle >= 0.0 ? lift_above (angle, values.slope, values.cl_max[1])
                     : -lift_above (-angle, values.slope, top_of (plate, -plate->camber));
  /* At the ideal incidence the arc carries its lift without a force on the nose. */
  *cd = values.cd_zero[1] +
        NO_SUCTION * fabs (*cl * sin (alpha - values.alpha_least));
  *cm = values.cm_zero;
  return GW_OK;
}
