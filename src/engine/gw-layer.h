/* gw-layer.h - boundary layers and wakes in two dimensions
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-status.h"

/* Lengths in chords, speeds in units of the free stream, re the Reynolds number of both. */

typedef enum
{
  GW_LAYER_LAMINAR,
  GW_LAYER_TURBULENT,
  GW_LAYER_WAKE,
  GW_LAYER_TRANSITION, /* of an interval only: laminar at its start, turbulent at its end */
} GwLayerKind;

/* What is unknown at a place. */
typedef struct
{
  double s;     /* arc length from the stagnation point, or of the wake */
  double a;     /* laminar: logarithm of the amplification; else root of the shear stress
                 * coefficient */
  double theta; /* momentum thickness */
  double dstar; /* displacement thickness, with the gap */
  double u;     /* speed at the edge of the layer, > 0 */
  double gap;   /* of the still air behind a blunt edge */
} GwLayerStation;

/* What follows from it. */
typedef struct
{
  double h;        /* shape, displacement over momentum thickness, without the gap */
  double re_theta; /* Reynolds number of the momentum thickness */
  double h_star;   /* energy over momentum thickness */
  double friction; /* half the coefficient of friction */
  double loss;     /* twice the dissipation coefficient, over h_star */
  double slip;     /* speed of the outer layer's inner edge over u */
  double equal;    /* root of the shear stress coefficient in equilibrium */
  double depth;    /* thickness of the layer */
  double growth;   /* of a per length, laminar only */
} GwLayerTerms;

typedef struct
{
  double re;       /* Reynolds number of a chord */
  double n_crit;   /* amplification at which a laminar layer turns, 0.1 to 15 */
  double s_forced; /* where it is forced to, arc length; HUGE_VAL: nowhere */
  size_t held;     /* first turbulent station if it must not move; 0: free */
} GwLayerRule;

/* How the edge speed answers while a layer is marched: u = u_ref + answer (u dstar - m_ref).
 * An answer of zero prescribes the speed. */
typedef struct
{
  double u_ref;
  double m_ref;
  double answer;
} GwLayerLaw;

/**
 * gw_layer_terms:
 *
 * Closure of the two-equation integral method: laminar from the Falkner-Skan family,
 * turbulent with the friction of Swafford, the two-layer dissipation and the shear stress
 * of equilibrium layers; behind the edge the same without a wall, both halves counted.
 *
 * Source: Drela & Giles, Viscous-inviscid analysis of transonic and low Reynolds number
 * airfoils, AIAA Journal 25(10) (1987), all relations at no Mach number (constants from
 * memory; the tests hold the laminar ones against solutions of the Falkner-Skan equation
 * and the turbulent ones against the flat plate).
 */
void gw_layer_terms (GwLayerKind           kind,
                     double                re,
                     const GwLayerStation *station,
                     GwLayerTerms         *out);

/**
 * gw_layer_growth:
 *
 * Rate at which the envelope of the amplified waves grows along a laminar layer; nothing
 * below the critical Reynolds number, a smooth start about it.
 *
 * Source: as gw_layer_terms(); idea: van Ingen, Smith & Gamberoni (1956).
 *
 * Returns: growth of the logarithm per chord.
 */
double gw_layer_growth (double h,
                        double re_theta,
                        double theta);

/**
 * gw_layer_similar:
 * @m: power of the distance to which the speed is proportional, -0.09 to 1
 * @h: (out): shape
 *
 * The layer of the closure itself in a similar flow: 1 stagnation point, 0 flat plate.
 *
 * Returns: theta^2 u re / s
 */
double gw_layer_similar (double  m,
                         double *h);

/**
 * gw_layer_interval:
 * @rest: (out): what the equations lack: growth of a, momentum, shape
 * @s_turn: (out) (nullable): where transition lies in a #GW_LAYER_TRANSITION interval
 */
void gw_layer_interval (GwLayerKind           kind,
                        const GwLayerRule    *rule,
                        const GwLayerStation *from,
                        const GwLayerStation *to,
                        double                rest[3],
                        double               *s_turn);

/** gw_layer_fresh_root: root of the shear stress coefficient of a layer that has just turned. */
double gw_layer_fresh_root (double                re,
                            const GwLayerStation *station);

/**
 * gw_layer_linearise:
 * @by_from: (out) (nullable), @by_to: (out): derivatives of @rest by a, theta, dstar, u
 *
 * Derivatives by differences, step 1e-6 of the value: good to 1e-5 of themselves.
 */
void gw_layer_linearise (GwLayerKind           kind,
                         const GwLayerRule    *rule,
                         const GwLayerStation *from,
                         const GwLayerStation *to,
                         double                rest[3],
                         double                by_from[3][4],
                         double                by_to[3][4]);

/**
 * gw_layer_step:
 * @to: (inout): first guess, then the layer at the end of the interval; s and gap are kept
 *
 * Returns: %GW_OK; %GW_ENOCONV, @to then holds the shape of @from.
 */
GwStatus gw_layer_step (GwLayerKind           kind,
                        const GwLayerRule    *rule,
                        const GwLayerStation *from,
                        const GwLayerLaw     *law,
                        GwLayerStation       *to);

/**
 * gw_layer_march:
 * @n: number of stations, >= 2
 * @stations: (inout): the first is given, the others' s, and a guess of the rest where
 *   theta is not 0
 * @turned: (inout): index of the first turbulent station of the guess (n: none), then
 *   of the answer
 * @s_turn: (out): arc length of transition; the last station's if none
 *
 * Marches along one side, laminar, through transition and on.
 *
 * Returns: how many stations did not converge
 */
size_t gw_layer_march (const GwLayerRule *rule,
                       size_t             n,
                       GwLayerStation    *stations,
                       const GwLayerLaw  *laws,
                       size_t            *turned,
                       double            *s_turn);

/**
 * gw_layer_step_reynolds:
 * @height: of a step across the stream [chords]
 *
 * Reynolds number of a step: its height and the speed of the laminar layer at its top,
 * by Pohlhausen's profile with the layer's own friction and thickness.
 *
 * Source: definition of Braslow & Knox, NACA TN 4363 (1958).
 */
double gw_layer_step_reynolds (double                re,
                               const GwLayerStation *station,
                               double                height);
