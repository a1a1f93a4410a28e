/* gw-air.c - the air of a day: density and viscosity
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "engine/gw-air.h"

#include <math.h>

/* ISO 2533:1975, section 2 and table 1: sea level and the layer up to 11 km. */
#define SEA_TEMPERATURE 288.15   /* [K] */
#define SEA_PRESSURE    101325.0 /* [Pa] */
#define LAPSE           0.0065   /* fall of temperature with height [K/m] */
#define GAS_CONSTANT    287.05287
#define SEA_DENSITY     (SEA_PRESSURE / (GAS_CONSTANT * SEA_TEMPERATURE))
#define EXPONENT        (GW_GRAVITY / (GAS_CONSTANT * LAPSE)) /* p ~ T^exponent, 5.25588 */

#define ICE_POINT 273.15 /* [K] */

/* Sutherland's law with the standard's constants, for dry air: moisture takes some
 * 1 % off on a hot, humid day, which is left out. */
static double
viscosity_at (double temperature)
{
  return 1.458e-6 * temperature * sqrt (temperature) / (temperature + 110.4);
}

/* Height at which standard air has this density: the layer's power law inverted. */
static double
height_of_density (double density)
{
  const double ratio = pow (density / SEA_DENSITY, 1.0 / (EXPONENT - 1.0));

  return SEA_TEMPERATURE * (1.0 - ratio) / LAPSE;
}

/* CIPM-2007: Picard, Davis, Glaeser, Fujii, Metrologia 45 (2008), equations (1),
 * (A1.1) to (A1.4); 400 ppm carbon dioxide. Constants from memory, checked in the
 * tests against published worked values. */
static double
moist_density (double temperature,
               double pressure,
               double humidity)
{
  const double t = temperature - ICE_POINT;
  const double saturation = exp (1.2378847e-5 * temperature * temperature -
                                 1.9121316e-2 * temperature + 33.93711047 -
                                 6.3431645e3 / temperature);
  const double enhancement = 1.00062 + 3.14e-8 * pressure + 5.6e-7 * t * t;
  const double x = humidity * enhancement * saturation / pressure; /* mole fraction of vapour */
  const double r = pressure / temperature;
  const double z = 1.0 -
                   r * (1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t * t +
                        (5.707e-6 - 2.051e-8 * t) * x + (1.9898e-4 - 2.376e-6 * t) * x * x) +
                   r * r * (1.83e-11 - 0.765e-8 * x * x);
  const double molar_dry = 28.96546e-3; /* [kg/mol] */
  const double molar_gas = 8.314472;    /* [J/(mol K)] */

  return r * molar_dry / (z * molar_gas) * (1.0 - 0.3780 * x);
}

GwStatus
gw_air_standard (double elevation,
                 GwAir *out)
{
  double temperature, pressure;

  if (!(elevation >= -500.0 && elevation <= 11000.0))
    return GW_EINVAL;

  temperature = SEA_TEMPERATURE - LAPSE * elevation;
  pressure = SEA_PRESSURE * pow (temperature / SEA_TEMPERATURE, EXPONENT);

  *out = (GwAir){
    .temperature = temperature,
    .pressure = pressure,
    .density = pressure / (GAS_CONSTANT * temperature),
    .viscosity = viscosity_at (temperature),
    .density_altitude = elevation,
  };
  return GW_OK;
}

/* The reduced pressure is what an altimeter is set to so that it reads the field's
 * elevation on the ground: heights add up in standard air, not pressures. */
static double
field_pressure (double elevation,
                double qnh)
{
  const double at_sea = pow (qnh / SEA_PRESSURE, 1.0 / EXPONENT);

  return SEA_PRESSURE * pow (at_sea - LAPSE * elevation / SEA_TEMPERATURE, EXPONENT);
}

GwStatus
gw_air_of_day (const GwDay *day,
               GwAir       *out)
{
  const double temperature = isnan (day->temperature)
                               ? SEA_TEMPERATURE - LAPSE * day->elevation
                               : day->temperature;
  const double qnh = isnan (day->qnh) ? SEA_PRESSURE : day->qnh;
  double       pressure, density;

  if (!(day->elevation >= -500.0 && day->elevation <= 5000.0) ||
      !(temperature >= 223.0 && temperature <= 333.0) ||
      !(day->humidity >= 0.0 && day->humidity <= 1.0) || !(qnh > 0.0 && isfinite (qnh)))
    return GW_EINVAL;

  pressure = field_pressure (day->elevation, qnh);
  if (!(pressure >= 50e3 && pressure <= 110e3))
    return GW_EINVAL;

  density = moist_density (temperature, pressure, day->humidity);
  *out = (GwAir){
    .temperature = temperature,
    .pressure = pressure,
    .density = density,
    .viscosity = viscosity_at (temperature),
    .density_altitude = height_of_density (density),
  };
  return GW_OK;
}
