/* gw-lattice.h - the flow about all lifting surfaces together: a vortex lattice
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "engine/gw-surface.h"

/* A horseshoe vortex: bound from @a to @b, its legs straight aft from there. Lengths in m. */
typedef struct
{
  double a[3], b[3]; /* root end first */
  double at[3];      /* where the flow runs along the surface */
  double place;      /* of that, fraction of the chord */
  size_t strip;
} GwLatticeVortex;

/* A strip of a surface from nose to tail. */
typedef struct
{
  size_t surface;    /* among those given */
  size_t first, n;   /* its vortices, foremost first */
  size_t panel;      /* between which stations */
  double t;          /* of its middle between them */
  double arc;        /* of its middle along the surface from the root */
  double width;      /* along the surface */
  double chord;      /* at its middle */
  double quarter[3]; /* quarter chord at its middle */
  double tilt[2];    /* cosine and sine of the dihedral */
  bool   is_central; /* in the plane of symmetry */
} GwLatticeStrip;

typedef struct
{
  size_t           n_surfaces;
  const GwSurface *surfaces;  /* borrowed: each once, of a pair the starboard one */
  size_t           chordwise; /* vortices of a strip, 1 to 40; 0: 6 */
  size_t           spanwise;  /* strips of a surface, at least; 0: 24 */
} GwLatticePlan;

typedef struct GwLattice GwLattice;

/* Of port and starboard; the flow of the two together gives any other. */
typedef enum
{
  GW_LATTICE_ALIKE,   /* lift, pitch */
  GW_LATTICE_OPPOSED, /* roll, yaw, sideslip */
} GwLatticeCase;

/**
 * gw_lattice_new:
 * @out: (out): to be freed with gw_lattice_free()
 *
 * Strips end at stations and at the ends of controls, by the cosine rule between two such
 * places; along the chord vortices stand at the odd half angles, the flow is made tangent at
 * the whole ones, the last of them the trailing edge. Dihedral counts in full; camber, twist
 * and incidence only through the flow that is asked for, so that they change no factor.
 * One half is kept; what its image does is added for flows that are alike on both sides and
 * taken off for opposed ones, each factored once, by LU.
 * Behind another surface a leg has a core of a twentieth of its chord.
 *
 * Source: Katz & Plotkin, Low-Speed Aerodynamics, 2nd ed. (2001), ch. 2.12 and 12 for the
 * vortex and the tangency; Lan, A quasi-vortex-lattice method in thin wing theory, Journal of
 * Aircraft 11(9) (1974), for the angles (both from memory).
 *
 * Returns: %GW_OK; %GW_EINVAL if there is no surface, one is not in order or the plan is out
 *   of range; %GW_EDOM if the flow has no solution; %GW_ENOMEM
 */
GwStatus gw_lattice_new (const GwLatticePlan *plan,
                         GwLattice          **out);

void gw_lattice_free (GwLattice *lattice);

size_t                 gw_lattice_n (const GwLattice *lattice);
const GwLatticeVortex *gw_lattice_vortices (const GwLattice *lattice);
size_t                 gw_lattice_n_strips (const GwLattice *lattice);
const GwLatticeStrip  *gw_lattice_strips (const GwLattice *lattice);

/**
 * gw_lattice_incidence:
 * @wash: (out) (array length=n): of one radian of incidence, for gw_lattice_solve()
 */
void gw_lattice_incidence (const GwLattice *lattice,
                           double          *wash);

/**
 * gw_lattice_shape:
 * @wash: (out) (array length=n): of twist, incidence of the surfaces and the mean lines of their
 *   sections, at no incidence of the whole
 */
void gw_lattice_shape (const GwLattice *lattice,
                       double          *wash);

/**
 * gw_lattice_solve:
 * @wash: (array length=n): speed of the stream out of each upper side, over its own speed;
 *   small angles
 * @circulation: (out) (array length=n): over the speed [m]
 *
 * Opposed flows have no lift in the plane of symmetry's surfaces and the other way round: those
 * that have none are 0.
 */
void gw_lattice_solve (const GwLattice *lattice,
                       GwLatticeCase    of,
                       const double    *wash,
                       double          *circulation);

/* Over the dynamic pressure; both halves together. x aft, y to starboard, z up. */
typedef struct
{
  double lift;  /* [m2] */
  double side;  /* [m2] */
  double drag;  /* induced [m2] */
  double pitch; /* about the place, nose up [m3] */
  double roll;  /* starboard down [m3] */
  double yaw;   /* nose to starboard [m3] */
} GwLatticeLoads;

/**
 * gw_lattice_loads:
 * @about: place that moments are taken about [m]
 * @surface: alone, or -1: all together; the drag is of the one in the wash of all
 *
 * Kutta and Joukowski's force of the undisturbed stream on each bound vortex; induced drag from
 * the wash far behind (Trefftz plane; Katz & Plotkin, ch. 8).
 */
GwLatticeLoads gw_lattice_loads (const GwLattice *lattice,
                                 GwLatticeCase    of,
                                 const double    *circulation,
                                 const double     about[3],
                                 int              surface);

/** gw_lattice_strip_lift: local lift coefficient of a strip, normal to it, on its chord. */
double gw_lattice_strip_lift (const GwLattice *lattice,
                              size_t           strip,
                              const double    *circulation);
