/* gw-derivation-private.h - the parts that a derivation is put together from
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "report/gw-amount.h"
#include "report/gw-derivation.h"

G_BEGIN_DECLS

/* What a result rests on, beside the uncertain numbers, which say so themselves. */
typedef enum
{
  GW_USE_WINGS = 1 << 0,    /* places, chords, twist of the wings' stations */
  GW_USE_TAILS = 1 << 1,    /* of all other surfaces */
  GW_USE_BODIES = 1 << 2,   /* cross-sections */
  GW_USE_BUILDS = 1 << 3,   /* how surfaces are built, of what; spars, skins of bodies */
  GW_USE_MASSES = 1 << 4,   /* stated masses */
  GW_USE_PLACES = 1 << 5,   /* where they are */
  GW_USE_SIZES = 1 << 6,    /* how large they are */
  GW_USE_SECTIONS = 1 << 7, /* what wing sections do */
  GW_USE_THROWS = 1 << 8,   /* controls that trim */
  GW_USE_DAY = 1 << 9,
  GW_USE_SPEED = 1 << 10,       /* wanted stall speed */
  GW_USE_MARGIN = 1 << 11,      /* wanted static margin */
  GW_USE_BALANCE = 1 << 12,     /* wanted balance point */
  GW_USE_BAY = 1 << 13,         /* of the item that is moved */
  GW_USE_WING_BUILDS = 1 << 14, /* builds and masses of the wings alone */
} GwUse;

typedef struct
{
  const char *what; /* untranslated, as are the next */
  const char *method;
  const char *source; /* NULL: none stated */
  unsigned    use;    /* GwUse */
} GwDerivationMethod;

const GwDerivationMethod *_gw_derivation_method (GwResultId id);

typedef struct
{
  const GwEvaluation *evaluation;
  const GwOutcome    *outcome;
  guint               option;
  GwResultId          id;
  const GwUnits      *units;
  GPtrArray          *rows; /* that are added to */
} GwDeriving;

GwDerivationRow *_gw_derivation_add (GwDeriving *deriving,
                                     const char *key,
                                     const char *label,
                                     char       *value);

/** _gw_derivation_step: a value in SI, to five digits. */
GwDerivationRow *_gw_derivation_step (GwDeriving *deriving,
                                      const char *key,
                                      const char *label,
                                      GwQuantity  quantity,
                                      double      value);

/** _gw_derivation_result: another result as a step. */
GwDerivationRow *_gw_derivation_result (GwDeriving *deriving,
                                        const char *key,
                                        GwResultId  id);

/** _gw_derivation_path: @path if the study that is worked on has such a record; else frees it and
 * returns NULL. */
char *_gw_derivation_path (const GwDeriving *deriving,
                           char             *path);

/* Steps: each returns FALSE if the result is none of its own. */
gboolean _gw_derive_mass (GwDeriving *deriving);
gboolean _gw_derive_balance (GwDeriving *deriving);
gboolean _gw_derive_lift (GwDeriving *deriving);
gboolean _gw_derive_shape (GwDeriving *deriving);

void _gw_derive_inputs (GwDeriving *deriving);

/** _gw_derive_band: adds its rows; the text to go with them. */
const char *_gw_derive_band (GwDeriving *deriving);

/** _gw_effect_weight: the square of what one input does to the result, up and down; 0: nothing. */
double _gw_effect_weight (const GwEffect *effect,
                          GwResultId      id);

/** _gw_derivation_use_of: what that field bears on; GwUse. */
unsigned _gw_derivation_use_of (const GwRecord *record,
                                const GwField  *field);

/** _gw_derivation_use_of_result: what bears on the result; GwUse. */
unsigned _gw_derivation_use_of_result (const GwDeriving *deriving);

G_END_DECLS
