/* gw-object-table.h - what the drawings show, as plain tables
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-evaluation.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/* The same objects and values as the drawings, for whoever reads rather than looks, and to be
 * copied into a sheet of sums. */
typedef enum
{
  GW_TABLE_THINGS,   /* of the planform and the side view: mass and centre of each */
  GW_TABLE_STATIONS, /* of all surfaces */
  GW_TABLE_POINTS,   /* balance point, neutral point, limits */
  GW_TABLE_STALL,    /* the stall curve, all options */
  GW_TABLE_MASSES,   /* what the mass is made of, all options */
  GW_TABLE_SECTIONS, /* wing sections at their stall, all options */
  GW_TABLE_SUMMARY,  /* all results of all options */
  GW_N_TABLES
} GwTableKind;

typedef struct
{
  char    *title;     /* with its unit: "mass, g" */
  gboolean is_number; /* right aligned, sorted by value */
} GwTableColumn;

typedef struct
{
  char  **cells; /* NULL-ended, one a column; en dash: no answer */
  double *keys;  /* values of the number columns, NAN where there is none; of others 0 */
  char   *path;  /* of the study's record; NULL: none */
} GwTableRow;

typedef struct
{
  GwTableKind kind;
  GPtrArray  *columns;     /* of GwTableColumn */
  GPtrArray  *rows;        /* of GwTableRow */
  gboolean    is_sortable; /* FALSE: the order of the rows is a part of what it says */
} GwObjectTable;

/**
 * gw_object_table_new:
 * @shown: the option that tables of one option are of
 *
 * Returns: (transfer full): free with gw_object_table_free()
 */
GwObjectTable *gw_object_table_new (GwEvaluation  *evaluation,
                                    guint          shown,
                                    GwTableKind    kind,
                                    const GwUnits *units) G_GNUC_WARN_UNUSED_RESULT;

void gw_object_table_free (GwObjectTable *table);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwObjectTable, gw_object_table_free)

/** gw_table_kind_label: "Stations", translated. */
const char *gw_table_kind_label (GwTableKind kind);

/** gw_object_table_text: tab-separated, a head and a line a row; numbers with a plain hyphen for
 * minus and nothing for no answer, so that other programs read them. (transfer full) */
char *gw_object_table_text (const GwObjectTable *table);

G_END_DECLS
