/* gw-air.h - the air of a day: density and viscosity
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-status.h"

#define GW_GRAVITY 9.80665 /* standard acceleration of free fall [m/s2], ISO 2533:1975 */

typedef struct
{
  double elevation;   /* of the field above sea level, geopotential [m], -500 to 5000 */
  double temperature; /* of the air at the field [K]; NAN: standard at that elevation */
  double qnh;         /* pressure reduced to sea level [Pa]; NAN: 101325 */
  double humidity;    /* relative, 0 to 1 */
} GwDay;

typedef struct
{
  double temperature;      /* [K] */
  double pressure;         /* [Pa] */
  double density;          /* [kg/m3] */
  double viscosity;        /* dynamic [Pa s] */
  double density_altitude; /* geopotential height of the same density in standard air [m] */
} GwAir;

/**
 * gw_air_standard:
 * @elevation: geopotential height [m], -500 to 11000
 * @out: (out): temperature, pressure, density, viscosity; density altitude is @elevation
 *
 * Source: ISO 2533:1975, Standard Atmosphere, layer 0 to 11 km (lapse rate
 * -6.5 K/km, R = 287.05287 J/(kg K)); viscosity by Sutherland's law with the
 * standard's constants (beta = 1.458e-6, S = 110.4 K).
 *
 * Returns: %GW_OK; %GW_EINVAL outside the height range.
 */
GwStatus gw_air_standard (double elevation,
                          GwAir *out);

/**
 * gw_air_of_day:
 * @day: conditions at the field
 * @out: (out): the air there
 *
 * Pressure from the pressure reduced to sea level by the standard lapse; density
 * of moist air from the day's own temperature and humidity.
 *
 * Source: Picard, Davis, Glaeser, Fujii: Revised formula for the density of moist
 * air (CIPM-2007), Metrologia 45 (2008), 149-155. Stated for 15-27 C and
 * 600-1100 hPa; outside that 0.1 % is claimed here.
 *
 * Returns: %GW_OK; %GW_EINVAL if a value is not finite where it must be, the
 *   temperature is outside 223-333 K, humidity outside 0-1 or pressure outside
 *   50-110 kPa.
 */
GwStatus gw_air_of_day (const GwDay *day,
                        GwAir       *out);
