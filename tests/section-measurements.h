/* section-measurements.h - published measurements of wing sections
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every row says where it is from and how it came here. MEMORY: recalled, not seen in print; a
 * row with low < high is a recalled band. None of these was read off the print itself.
 */

#pragma once

typedef enum
{
  MEASURED_CL_MAX,
  MEASURED_CD_MIN,
  MEASURED_ALPHA_ZERO, /* [deg] */
  MEASURED_SLOPE,      /* [1/deg] */
  MEASURED_CM_ZERO,
  MEASURED_N,
} MeasuredKind;

typedef enum
{
  MEMORY_HIGH, /* recalled with confidence: scored */
  MEMORY_BAND, /* a recalled band: inside or not */
} MeasuredStatus;

typedef struct
{
  const char    *section; /* NACA digits, or "clark-y" */
  double         re;
  MeasuredKind   kind;
  double         low, typical, high;
  MeasuredStatus status;
  const char    *source;
} MeasuredRow;

/* Abbott, von Doenhoff & Stivers, Summary of airfoil data, NACA Report 824 (1945), smooth
 * sections: zero-lift angle, moment about the aerodynamic centre, slope, greatest lift. */
#define R824 "Report 824"
/* Jacobs & Sherman, Airfoil section characteristics as affected by variations of the Reynolds
 * number, NACA Report 586 (1937), at the effective Reynolds number, 2.64 times that of the
 * turbulent tunnel: trends recalled with little confidence, the table was not seen. */
#define R586 "Report 586"
/* Selig et al., Summary of low-speed airfoil data, vols 1-3 (1995-97). */
#define SELIG "Selig et al."
#define R824_ROWS(section, zero, moment, slope, top)                              \
 { section, 6e6, MEASURED_ALPHA_ZERO, zero, zero, zero, MEMORY_HIGH, R824 },      \
   { section, 6e6, MEASURED_CM_ZERO, moment, moment, moment, MEMORY_HIGH, R824 }, \
   { section, 6e6, MEASURED_SLOPE, slope, slope, slope, MEMORY_HIGH, R824 },      \
 {                                                                                \
  section, 6e6, MEASURED_CL_MAX, top, top, top, MEMORY_HIGH, R824                 \
 }
#define BAND(section, re, kind, low, typical, high, source)  \
 {                                                           \
  section, re, kind, low, typical, high, MEMORY_BAND, source \
 }

static const MeasuredRow measured_rows[] = {
  R824_ROWS ("0009", 0.0, 0.0, 0.109, 1.32),
  R824_ROWS ("0012", 0.0, 0.0, 0.106, 1.59),
  R824_ROWS ("1412", -1.1, -0.025, 0.108, 1.58),
  R824_ROWS ("2412", -2.0, -0.047, 0.105, 1.68),
  R824_ROWS ("2418", -2.3, -0.050, 0.103, 1.47),
  R824_ROWS ("23012", -1.4, -0.014, 0.107, 1.79),
  R824_ROWS ("4412", -3.8, -0.093, 0.105, 1.67),
  BAND ("0012", 3e6, MEASURED_CL_MAX, 1.42, 1.50, 1.56, R824),
  BAND ("4412", 3e6, MEASURED_CL_MAX, 1.45, 1.53, 1.62, R824),
  BAND ("0012", 1.1e5, MEASURED_CL_MAX, 0.75, 0.85, 1.00, R586),
  BAND ("0012", 3.3e5, MEASURED_CL_MAX, 0.88, 1.00, 1.12, R586),
  BAND ("0012", 8.6e5, MEASURED_CL_MAX, 1.10, 1.22, 1.35, R586),
  BAND ("0012", 3.3e6, MEASURED_CL_MAX, 1.42, 1.50, 1.60, R586),
  BAND ("0012", 8.3e6, MEASURED_CL_MAX, 1.58, 1.64, 1.72, R586),
  BAND ("4412", 1.1e5, MEASURED_CL_MAX, 1.00, 1.15, 1.30, R586),
  BAND ("4412", 4.5e5, MEASURED_CL_MAX, 1.20, 1.32, 1.42, R586),
  BAND ("4412", 1.8e6, MEASURED_CL_MAX, 1.38, 1.48, 1.58, R586),
  BAND ("4412", 8.2e6, MEASURED_CL_MAX, 1.60, 1.67, 1.76, R586),
  BAND ("23012", 1.1e5, MEASURED_CL_MAX, 0.78, 0.90, 1.05, R586),
  BAND ("23012", 4.5e5, MEASURED_CL_MAX, 1.05, 1.17, 1.28, R586),
  BAND ("23012", 1.8e6, MEASURED_CL_MAX, 1.35, 1.47, 1.58, R586),
  BAND ("23012", 8.2e6, MEASURED_CL_MAX, 1.65, 1.73, 1.80, R586),
  BAND ("clark-y", 2e5, MEASURED_CL_MAX, 1.15, 1.25, 1.38, SELIG),
  BAND ("clark-y", 2e5, MEASURED_CD_MIN, 0.0095, 0.0115, 0.0135, SELIG),
  BAND ("clark-y", 2e5, MEASURED_ALPHA_ZERO, -4.2, -3.5, -2.9, SELIG),
  BAND ("clark-y", 2e5, MEASURED_CM_ZERO, -0.100, -0.083, -0.070, SELIG),
};

/* Clark Y, percent of the chord from the flat underside; NACA wind-tunnel reports of the 1930s,
 * from memory. */
static const double clark_y[][3] = {
  { 0.0, 3.5, 3.5 },
  { 1.25, 5.45, 1.93 },
  { 2.5, 6.5, 1.47 },
  { 5.0, 7.9, 0.93 },
  { 7.5, 8.85, 0.63 },
  { 10.0, 9.6, 0.42 },
  { 15.0, 10.69, 0.15 },
  { 20.0, 11.36, 0.03 },
  { 30.0, 11.7, 0.0 },
  { 40.0, 11.4, 0.0 },
  { 50.0, 10.52, 0.0 },
  { 60.0, 9.15, 0.0 },
  { 70.0, 7.35, 0.0 },
  { 80.0, 5.22, 0.0 },
  { 90.0, 2.8, 0.0 },
  { 95.0, 1.49, 0.0 },
  { 100.0, 0.12, 0.0 },
};
