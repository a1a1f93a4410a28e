/* gw-derivation.h - where a result comes from: method, steps, inputs, what its band is made of
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

typedef struct
{
  const char *key; /* of a step, the same in every language: "mass"; NULL: none */
  char       *label;
  char       *value;  /* with its unit */
  char       *origin; /* given, weighed, …; NULL: none of its own */
  char       *source; /* of a published or recalled value; NULL: none stated */
  char       *path;   /* of the study's record it stands in; NULL: in none */
  char       *field;  /* of an input: path of the number, also of the catalogue's; or NULL */
} GwDerivationRow;

typedef enum
{
  GW_DERIVATION_WHAT,
  GW_DERIVATION_METHOD,
  GW_DERIVATION_STEPS,
  GW_DERIVATION_INPUTS,
  GW_DERIVATION_BAND,
  GW_N_DERIVATION_PARTS
} GwDerivationPart;

typedef struct
{
  const char *title;  /* translated */
  char       *text;   /* a paragraph above the rows; NULL: none */
  char       *source; /* of the method; NULL: none stated */
  GPtrArray  *rows;   /* of GwDerivationRow */
} GwDerivationSection;

typedef struct
{
  GwResultId          id;
  char               *label;  /* of the result */
  char               *option; /* name of the option */
  char               *value;  /* as the sheet shows it, with its unit */
  char               *band;   /* NULL: none, or not known yet */
  GwDerivationSection sections[GW_N_DERIVATION_PARTS];
} GwDerivation;

/**
 * gw_derivation_new:
 *
 * Steps are shown to five digits, so that what they come to can be computed from them.
 * Inputs: every uncertain number that moves the result, the largest share of the band
 * first, then the certain ones that it rests on. The band's rows are shares of its
 * variance: the squares of what each input does, up and down, over their sum; those under
 * 1 % or beyond the twelfth are one row.
 *
 * Returns: (transfer full): free with gw_derivation_free()
 */
GwDerivation *gw_derivation_new (const GwEvaluation *evaluation,
                                 guint               option,
                                 GwResultId          id,
                                 const GwUnits      *units) G_GNUC_WARN_UNUSED_RESULT;

void gw_derivation_free (GwDerivation *derivation);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwDerivation, gw_derivation_free)

/** gw_derivation_text: all of it as plain text. (transfer full) */
char *gw_derivation_text (const GwDerivation *derivation);

/** gw_derivation_find: the result of that key, "stall_speed" or "stall_speed_m_s"; FALSE if
 * there is none. */
gboolean gw_derivation_find (const char *key,
                             GwResultId *id);

G_END_DECLS
