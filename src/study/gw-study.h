/* gw-study.h - the document: an airframe, the ways to build it, a day, what is wanted
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>

#include "engine/gw-aircraft.h"
#include "study/gw-error.h"
#include "study/gw-record.h"

G_BEGIN_DECLS

typedef enum
{
  GW_MATERIAL_SHEET, /* foam sheet */
  GW_MATERIAL_FOAM,  /* foam block */
  GW_MATERIAL_PLASTIC,
  GW_MATERIAL_FOAMING_PLASTIC,
  GW_MATERIAL_WOOD,
  GW_MATERIAL_TUBE, /* spar tube, rod, strip */
  GW_MATERIAL_SKIN, /* laminate, film, tissue, tape, paint */
  GW_MATERIAL_OTHER,
} GwMaterialKind;

typedef enum
{
  GW_SHAPE_NACA,
  GW_SHAPE_FOLDED,
  GW_SHAPE_POINTS,
  GW_SHAPE_PLATE,
  GW_SHAPE_FLAT_BOTTOMED,
} GwSectionShape;

typedef enum
{
  GW_STANDING_MEMORY,  /* recalled: its ranges are how far memory may be off */
  GW_STANDING_DERIVED, /* printed, but computed or carried over from tests, at least in part */
  GW_STANDING_PRINTED, /* measured, and seen in print */
} GwStanding;

typedef enum
{
  GW_FAMILY_ROUND,
  GW_FAMILY_FOLDED,
  GW_FAMILY_PLATE,
} GwSectionFamily;

typedef enum
{
  GW_PROPELLER_THIN,
  GW_PROPELLER_SLOW,
} GwPropellerKind;

typedef enum
{
  GW_GROUND_PAVEMENT,
  GW_GROUND_SHORT_GRASS,
  GW_GROUND_LONG_GRASS,
  GW_GROUND_EARTH,
  GW_GROUND_SAND,
} GwGround;

/* clang-format off: the structs, from the one description of the document. */
#define RECORD(Name, name, label) typedef struct { GwRecord record;
#define ID() char *id;
#define TEXT(key, label, help) char *key;
#define NUMBER(key, quantity, least, most, standard, label, help) GwNumber key;
#define NEEDED(key, quantity, least, most, label, help) GwNumber key;
#define CHOICE(key, choices, standard, label, help) int key;
#define FLAG(key, standard, label, help) gboolean key;
#define REF(key, list, label, help) char *key;
#define PART(key, Name, name, label, help) GwStudy##Name *key;
#define LIST(key, Name, name, label, help) GPtrArray *key;
#define CHANGES(key, label, help) GPtrArray *key;
#define END(Name, name) \
 }                      \
 GwStudy##Name;         \
 const GwRecordType *gw_study_##name##_type (void) G_GNUC_CONST;
#include "study/gw-study.def"
#undef RECORD
#undef ID
#undef TEXT
#undef NUMBER
#undef NEEDED
#undef CHOICE
#undef FLAG
#undef REF
#undef PART
#undef LIST
#undef CHANGES
#undef END
/* clang-format on */

/* A study is counted by reference and never changed once others can see it: an
 * edit makes a new one, so a running evaluation reads what it was given. */
typedef GwStudyRoot GwStudy;

GwStudy *gw_study_new   (void) G_GNUC_WARN_UNUSED_RESULT;
GwStudy *gw_study_ref   (GwStudy *study);
void     gw_study_unref (GwStudy *study);
GwStudy *gw_study_copy  (const GwStudy *study) G_GNUC_WARN_UNUSED_RESULT;

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwStudy, gw_study_unref)

/**
 * gw_study_parse:
 * @problems: (nullable): everything found wrong and all hints
 *
 * Returns: (transfer full): the study, checked, or NULL with the first error.
 */
GwStudy *gw_study_parse (const char *text,
                         gsize       length,
                         GPtrArray  *problems,
                         GError    **error) G_GNUC_WARN_UNUSED_RESULT;

GwStudy *gw_study_load (GFile     *file,
                        GPtrArray *problems,
                        GError   **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_study_list: the study's own list with that key, (nullable): if only the catalogue has one. */
GPtrArray *gw_study_list (const GwStudy *study,
                          const char    *key);

/** gw_study_text: the study as its file has it. (transfer full) */
char *gw_study_text (const GwStudy *study);

/**
 * gw_study_save:
 *
 * Writes beside the file, reads that back, and only then replaces the file: a
 * save that fails leaves the old file as it was.
 */
gboolean gw_study_save (const GwStudy *study,
                        GFile         *file,
                        GError       **error);

/**
 * gw_study_edit:
 * @path: of a field
 * @value: its new value as JSON, or NULL to take it back to its standard
 *
 * Returns: (transfer full): a new study with that one change, checked as a whole,
 *   or NULL with the reason.
 */
GwStudy *gw_study_edit (const GwStudy *study,
                        const char    *path,
                        JsonNode      *value,
                        GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_study_put: the same on a study that nobody else sees yet, without the check of the whole. */
void gw_study_put (GwStudy    *study,
                   const char *path,
                   JsonNode   *value,
                   GPtrArray  *problems);

/** gw_study_baseline: index of the baseline among the options. */
guint gw_study_baseline (const GwStudy *study);

G_END_DECLS
