/* sample-aircraft.h - invented aeroplanes for the tests of figures and evaluation
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-aircraft.h"

typedef enum
{
  SAMPLE_FOLDED,   /* 1.8 m slow photographic aeroplane, wing of folded sheet */
  SAMPLE_PRINTED,  /* the same, wing of printed shells */
  SAMPLE_TAILLESS, /* swept, elevons, no body, no wheels */
  SAMPLE_AWKWARD,  /* swept, cranked, twisted, flaps, V-tail, two motors, thirty items */
  SAMPLE_N
} SampleKind;

/* Statically allocated parts of one aircraft; nothing to free. */
typedef struct
{
  GwAircraft    aircraft;
  GwSection     sections[3];
  GwStation     stations[4][6];
  GwControl     controls[4][4];
  GwBuild       builds[4][5];
  GwSpar        spars[2];
  GwSurface     surfaces[4];
  GwBodyStation body_stations[8];
  GwBody        bodies[2];
  GwStrut       struts[2];
  GwLeg         legs[2];
  GwPower       powers[2];
  GwItem        items[30];
} Sample;

/** sample_init: fills @sample; its pointers lead into itself, so it must not be moved. */
void sample_init (Sample    *sample,
                  SampleKind kind);
