/* gw-assemble-private.h - shared by the files that assemble an aircraft
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-assemble.h"

G_BEGIN_DECLS

typedef struct
{
  GwAssembly       *assembly;
  const GwAssembly *like; /* nullable */
  GwStudy          *study;
  GPtrArray        *problems;
} GwAssembler;

/** _gw_assemble_block: zeroed memory for @n things, kept by the assembly. */
gpointer _gw_assemble_block (GwAssembler *assembler,
                             gsize        n,
                             gsize        size);

#define _gw_assemble_new(assembler, Type, n) \
 ((Type *) _gw_assemble_block (assembler, n, sizeof (Type)))

/** _gw_assemble_material: the material with that id, or NULL; a missing id is an error at @path. */
const GwStudyMaterial *_gw_assemble_material (GwAssembler *assembler,
                                              const char  *id,
                                              const char  *path);

double _gw_assemble_density (GwAssembler *assembler,
                             const char  *id,
                             const char  *path);
double _gw_assemble_areal   (GwAssembler *assembler,
                             const char  *id,
                             const char  *path);

void _gw_assemble_sections (GwAssembler *assembler);
void _gw_assemble_surfaces (GwAssembler *assembler);

/* A number of the study in SI, by the unit of its key. */
static inline double
_gw_mm (const GwNumber *number)
{
  return number->value * 1e-3;
}

static inline double
_gw_g (const GwNumber *number)
{
  return number->value * 1e-3;
}

static inline double
_gw_deg (const GwNumber *number)
{
  return number->value * G_PI / 180.0;
}

static inline double
_gw_percent (const GwNumber *number)
{
  return number->value * 1e-2;
}

static inline gboolean
_gw_weighed (const GwNumber *number)
{
  return number->origin == GW_ORIGIN_WEIGHED;
}

G_END_DECLS
