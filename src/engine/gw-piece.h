/* gw-piece.h - the list of what an aircraft is made of
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "engine/gw-moments.h"
#include "engine/gw-status.h"

typedef enum
{
  GW_PIECE_SKIN,    /* printed walls, folded sheet, skin over a core */
  GW_PIECE_CORE,    /* cut foam */
  GW_PIECE_RIB,     /* ribs, formers, lattice */
  GW_PIECE_CLOSING, /* closing layers where a printed piece ends */
  GW_PIECE_WEB,     /* sheet spar strips, hinge walls, spar bosses */
  GW_PIECE_EDGE,    /* leading and trailing edge strips */
  GW_PIECE_SPAR,
  GW_PIECE_JOINT, /* adhesive */
  GW_PIECE_HINGE,
  GW_PIECE_LINKAGE, /* horns, pushrods, clevises */
  GW_PIECE_FINISH,  /* paint, film, tape */
  GW_PIECE_LEAD,    /* wires from equipment */
  GW_PIECE_BODY,
  GW_PIECE_STRUT,
  GW_PIECE_LEG,
  GW_PIECE_WHEEL,
  GW_PIECE_MOTOR,
  GW_PIECE_PROPELLER,
  GW_PIECE_CONTROLLER,
  GW_PIECE_EQUIPMENT,
  GW_N_PIECE_KINDS
} GwPieceKind;

/* Which list of GwAircraft the piece comes from. */
typedef enum
{
  GW_GROUP_SURFACE,
  GW_GROUP_BODY,
  GW_GROUP_LEG,
  GW_GROUP_STRUT,
  GW_GROUP_POWER,
  GW_GROUP_ITEM,
  GW_N_GROUPS
} GwGroup;

typedef struct
{
  GwPieceKind kind;
  GwGroup     group;
  size_t      owner;      /* index in that list */
  int         panel;      /* of a surface, from 0; -1: not of one panel */
  int         side;       /* +1 starboard or on the centre line, -1 the mirror image */
  int         count;      /* separate parts it stands for, >= 1 */
  bool        is_weighed; /* its mass has been on a scale */
  GwMoments   mass;       /* [kg], about the datum */
} GwPiece;

typedef struct
{
  GwPiece *v;
  size_t   n;
  size_t   size; /* allocated */
} GwPieces;

void     gw_pieces_init (GwPieces *pieces);
void     gw_pieces_clear (GwPieces *pieces);
GwStatus gw_pieces_add (GwPieces      *pieces,
                        const GwPiece *piece);

/** gw_pieces_add_both: adds @piece and, if @is_mirrored, its mirror image. */
GwStatus gw_pieces_add_both (GwPieces      *pieces,
                             const GwPiece *piece,
                             bool           is_mirrored);

/** gw_pieces_mass: of those of @group and @owner (@owner < 0: of the whole group) [kg]. */
double gw_pieces_mass (const GwPieces *pieces,
                       GwGroup         group,
                       int             owner);
