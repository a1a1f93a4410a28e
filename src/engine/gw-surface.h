/* gw-surface.h - lifting surfaces: stations, controls, shape
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-moments.h"
#include "engine/gw-outline.h"
#include "engine/gw-section.h"
#include "engine/gw-status.h"

typedef enum
{
  GW_ROLE_WING,
  GW_ROLE_SECOND_WING,
  GW_ROLE_TAILPLANE,
  GW_ROLE_V_TAIL,
  GW_ROLE_CANARD,
  GW_ROLE_FIN,
  GW_N_ROLES
} GwRole;

typedef enum
{
  GW_CONTROL_AILERON,
  GW_CONTROL_FLAP,
  GW_CONTROL_ELEVATOR,
  GW_CONTROL_RUDDER,
  GW_CONTROL_ELEVON,
  GW_CONTROL_RUDDERVATOR,
  GW_N_CONTROLS
} GwControlKind;

typedef struct
{
  double           at[3]; /* leading edge [m] */
  double           chord; /* [m], > 0 */
  double           twist; /* incidence included, nose up, about the leading edge [rad] */
  const GwSection *section;
} GwStation;

typedef struct
{
  GwControlKind kind;
  double        from, to;       /* along the span from the root station [m] */
  double        chord_fraction; /* chord behind the hinge over local chord, 0 to 1 */
  double        up, down;       /* greatest throws of the trailing edge, both >= 0 [rad] */
  double        hinge_linear;   /* mass of the hinge [kg/m] */
  double        linkage_mass;   /* horn, pushrod, clevises [kg] */
} GwControl;

/* A spar runs along the span at a fixed fraction of the chord. */
typedef enum
{
  GW_SPAR_TUBE,  /* round; wall 0 or >= radius: a solid rod */
  GW_SPAR_STRIP, /* rectangular, one, at mid depth */
  GW_SPAR_CAPS,  /* rectangular, one under each skin, with a web if its thickness is > 0 */
  GW_N_SPAR_KINDS
} GwSparKind;

typedef struct
{
  GwSparKind kind;
  double     density; /* [kg/m3] */
  double     width;   /* chordwise; the outer diameter of a tube [m] */
  double     height;  /* of strip or cap [m] */
  double     wall;    /* of a tube [m] */
  double     web_thickness, web_density;
  double     chord_place; /* fraction of the chord behind the leading edge */
  double     from, to;    /* along the span from the root station [m] */
  bool       is_weighed;
} GwSpar;

typedef enum
{
  GW_CONSTRUCTION_PRINTED_SHELL,
  GW_CONSTRUCTION_FOLDED_SHEET,
  GW_CONSTRUCTION_HOT_WIRED_CORE,
  GW_N_CONSTRUCTIONS
} GwConstruction;

typedef enum
{
  GW_INNER_NONE,
  GW_INNER_RIBS,    /* flat ribs across the span at the pitch */
  GW_INNER_LATTICE, /* two families of full-depth webs at +-45 degrees, each at the pitch */
  GW_N_INNERS
} GwInner;

typedef struct
{
  double  density;    /* of the unfoamed filament [kg/m3] */
  double  line_width; /* nominal [m] */
  double  flow;       /* fed over nominal, 1 for solid plastic */
  int     walls;      /* of the skin */
  GwInner inner;
  int     inner_walls;
  double  inner_pitch;  /* [m] */
  double  piece_length; /* longest piece along the span [m] */
  double  closing;      /* thickness of the layers that end a piece, each end, before flow [m] */
} GwPrintedShell;

typedef struct
{
  double areal;        /* of the sheet, its facings included [kg/m2] */
  int    strips;       /* full-depth spar strips of the same sheet */
  double former_pitch; /* of formers of the same sheet across the span, 0: none [m] */
  double glue_linear;  /* along nose, tail and both edges of each strip [kg/m] */
} GwFoldedSheet;

typedef struct
{
  double density;     /* of the foam as delivered [kg/m3] */
  double channel;     /* cross-section cut out along the whole panel (spar slots, wire runs) [m2] */
  double skin_areal;  /* film, glass with its resin, veneer with its glue; 0: bare [kg/m2] */
  double edge_linear; /* leading and trailing edge strips together [kg/m] */
} GwHotWiredCore;

typedef struct
{
  GwConstruction construction;
  GwPrintedShell printed; /* the one that @construction names is read */
  GwFoldedSheet  folded;
  GwHotWiredCore core;
  double         mass_factor;  /* made over computed for this process, 1 if unknown */
  double         joint_linear; /* adhesive around a joint between pieces or panels [kg/m] */
  double         finish_areal; /* paint, film, tape on the outside [kg/m2] */
  GwFinish       finish;
} GwBuild;

typedef struct
{
  const char      *name;
  GwRole           role;
  bool             is_mirrored; /* about y = 0 */
  size_t           n_stations;  /* >= 2, root first */
  const GwStation *stations;
  size_t           n_controls;
  const GwControl *controls;
  const GwBuild   *builds; /* (array length=n_stations - 1) (nullable): one a panel */
  size_t           n_spars;
  const GwSpar    *spars;
  double           known_mass; /* both halves with all that is built in [kg]: it replaces
                                 * the computed mass; NAN: computed */
  bool             is_weighed; /* that mass is from the scale */
} GwSurface;

/* Of the whole surface, both halves if it is mirrored. */
typedef struct
{
  double area;           /* in its own plane, along the true span [m2] */
  double projected_area; /* seen from above (a fin: from the side) [m2] */
  double span;           /* tip to tip, projected; a fin: its height [m] */
  double arc;            /* root to tip along the surface, one side [m] */
  double aspect_ratio;   /* span^2 / projected area; mirrored fins: of one of them */
  double taper;          /* tip chord over root chord */
  double mac;            /* mean aerodynamic chord [m] */
  double mac_at[3];      /* leading edge of that chord, y on the starboard half [m] */
  double root_x;         /* leading edge of the root station [m] */
  double root_chord;     /* [m] */
  double sweep_quarter;  /* mean, area-weighted [rad] */
  double sweep_half;     /* [rad] */
  double dihedral;       /* mean, area-weighted [rad]; a fin: 0 */
  double wetted_area;    /* outside, without end faces [m2] */
  double volume;         /* [m3] */
} GwSurfaceShape;

/* The surface cut square to its span at one place. */
typedef struct
{
  double           at[3]; /* leading edge [m] */
  double           up[3]; /* unit vector of section height */
  double           chord, twist;
  const GwSection *inner, *outer; /* sections blended, @mix of the outer one */
  double           mix;
  GwFinish         finish; /* of the panel */
} GwSlice;

/* One panel of the starboard half, between two stations. */
typedef struct
{
  GwMoments skin;      /* outer surface without the end faces, unit areal density */
  GwMoments volume;    /* solid, unit density */
  GwMoments chordwise; /* planform of the panel in its own plane, unit areal density */
  double    length;    /* along the span [m] */
} GwLoft;

#define GW_PANEL_LEAST 1e-6 /* length of a panel below which two stations are in one place [m] */

/**
 * gw_surface_check:
 *
 * Returns: %GW_OK; %GW_EINVAL for what gw_surface_shape() and gw_surface_loft() refuse.
 */
GwStatus gw_surface_check (const GwSurface *surface);

/**
 * gw_surface_shape:
 *
 * Straight lines between stations in leading edge, chord and height; moments of
 * the chord exact for that planform.
 *
 * Source: definition of the mean aerodynamic chord, 2/S * integral of c^2 dy.
 *
 * Returns: %GW_OK; %GW_EINVAL with fewer than two stations, a chord that is not
 *   positive, values not finite, no section, two stations in one place seen along
 *   the chord, or no projected area.
 */
GwStatus gw_surface_shape (const GwSurface *surface,
                           GwSurfaceShape  *out);

/** gw_surface_arc: distance of station @i from the root along the surface [m]. */
double gw_surface_arc (const GwSurface *surface,
                       size_t           station);

/** gw_surface_slice: the starboard half cut at @arc from the root, clamped to its ends. */
void gw_surface_slice (const GwSurface *surface,
                       double           arc,
                       GwSlice         *out);

/**
 * gw_panel_slice:
 * @t: from 0 at the inner to 1 at the outer station of @panel
 *
 * The same within one panel. Lines between the stations' outlines are straight, so the
 * chord of a twisted panel is a little short of the straight blend of its ends' chords
 * (0.1 % for 5 degrees). Exact for one section; where section and twist both change,
 * the volume between the slices agrees with gw_surface_loft() to 0.1 % for 10 degrees.
 */
void gw_panel_slice (const GwSurface *surface,
                     size_t           panel,
                     double           t,
                     GwSlice         *out);

/** gw_slice_outline: the blended outline of the slice, in chords. */
void gw_slice_outline (const GwSlice *slice,
                       GwOutline     *out);

/** gw_slice_height: upper (or lower) side of the blended outline at @x, both in chords. */
double gw_slice_height (const GwSlice *slice,
                        double         x,
                        bool           is_upper);

/** gw_slice_place: point @x chords behind, @height chords above the nose, twist applied [m]. */
void gw_slice_place (const GwSlice *slice,
                     double         x,
                     double         height,
                     double         out[3]);

/** gw_slice_face: moments of the cut face, unit areal density. */
void gw_slice_face (const GwSlice *slice,
                    GwMoments     *out);

/** gw_slice_rim: moments of the line around the cut, unit line density. */
void gw_slice_rim (const GwSlice *slice,
                   GwMoments     *out);

/**
 * gw_surface_loft:
 * @panel: from 0 at the root
 *
 * Ruled surface between the two stations' outlines, cut into strips of triangles
 * (skin) and tetrahedra to a common apex (volume); error of area and volume
 * below 0.05 % against the closed elliptic cylinder and frustum (tests).
 *
 * Returns: %GW_OK; %GW_EINVAL as gw_surface_shape(), or without such a panel.
 */
GwStatus gw_surface_loft (const GwSurface *surface,
                          size_t           panel,
                          GwLoft          *out);
