/* gw-moments.h - zeroth, first and second moments of lines, areas, volumes, masses
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>

/* Moments about the datum, axes x aft, y to starboard, z up. They add up, so an
 * aircraft is a sum; mass moments are geometric moments times a density. */
typedef struct
{
  double total;     /* sum of dm: [m], [m2], [m3] or [kg] */
  double first[3];  /* sum of x, y, z dm */
  double second[6]; /* sum of xx, yy, zz, xy, xz, yz dm */
} GwMoments;

typedef struct
{
  double m[6]; /* Ixx, Iyy, Izz and the products Ixy, Ixz, Iyz = sum of xy dm ... [kg m2] */
} GwInertia;

void gw_moments_add (GwMoments       *sum,
                     const GwMoments *part,
                     double           factor);

/** gw_moments_mirror: the same thing on the other side of y = 0. */
void gw_moments_mirror (GwMoments *moments);

/** gw_moments_shift: the same thing moved by @by [m]. */
void gw_moments_shift (GwMoments   *moments,
                       const double by[3]);

/** gw_moments_centre: centre, or the origin if the total is zero. */
void gw_moments_centre (const GwMoments *moments,
                        double           centre[3]);

/**
 * gw_moments_inertia:
 *
 * Inertia about the centre, by the parallel-axis theorem.
 */
void gw_moments_inertia (const GwMoments *moments,
                         GwInertia       *out);

void gw_moments_point (double       total,
                       const double at[3],
                       GwMoments   *out);

/** gw_moments_segment: a straight line of unit line density from @a to @b. */
void gw_moments_segment (const double a[3],
                         const double b[3],
                         GwMoments   *out);

/** gw_moments_triangle: a flat triangle of unit areal density; exact. */
void gw_moments_triangle (const double a[3],
                          const double b[3],
                          const double c[3],
                          GwMoments   *out);

/** gw_moments_tetrahedron: unit density, signed by orientation (det (b-a, c-a, d-a) > 0); exact. */
void gw_moments_tetrahedron (const double a[3],
                             const double b[3],
                             const double c[3],
                             const double d[3],
                             GwMoments   *out);

/**
 * gw_moments_facet:
 * @skin: (inout): the triangle is added to it, unit areal density
 * @volume: (inout): the tetrahedron from the origin to the triangle is added to it, unit
 *   density, positive if a, b, c turn right-handed about the way out
 *
 * A closed body is the sum of its facets.
 */
void gw_moments_facet (const double a[3],
                       const double b[3],
                       const double c[3],
                       GwMoments   *skin,
                       GwMoments   *volume);

/** gw_moments_box: a block of mass @mass, edges @size along the axes, about @centre; exact. */
void gw_moments_box (double       mass,
                     const double centre[3],
                     const double size[3],
                     GwMoments   *out);

/**
 * gw_moments_tube:
 * @outer: outer radius [m]; @inner: inner radius [m], 0 for a rod
 *
 * A straight round tube of mass @mass from @a to @b; exact.
 *
 * Source: solids of revolution, any dynamics text.
 */
void gw_moments_tube (double       mass,
                      const double a[3],
                      const double b[3],
                      double       outer,
                      double       inner,
                      GwMoments   *out);
