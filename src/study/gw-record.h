/* gw-record.h - records made and kept by their field tables
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <json-glib/json-glib.h>

#include "study/gw-number.h"
#include "study/gw-quantity.h"

G_BEGIN_DECLS

/* A record is a plain struct whose members stand in a table of GwField rows (made
 * from gw-study.def). Everything that handles documents goes through the table:
 * loading, saving, checking, copying, comparing, paths, spread, the field list. */

/* What a thing is called is shown in a line or two. [characters] */
#define GW_LONGEST_NAME 200

typedef enum
{
  GW_FIELD_NUMBER,  /* GwNumber */
  GW_FIELD_TEXT,    /* char *, NULL if absent */
  GW_FIELD_ID,      /* char *, unique in its list */
  GW_FIELD_CHOICE,  /* int, index into choices */
  GW_FIELD_FLAG,    /* gboolean */
  GW_FIELD_REF,     /* char *, the id of a record in the list named by collection */
  GW_FIELD_PART,    /* GwRecord *, always there */
  GW_FIELD_LIST,    /* GPtrArray of GwRecord * */
  GW_FIELD_CHANGES, /* GPtrArray of GwChange *: path and value, kept in order */
} GwFieldKind;

typedef struct
{
  const char *key;
  const char *label;
} GwChoice;

typedef struct _GwRecordType GwRecordType;

typedef struct
{
  GwFieldKind     kind;
  const char     *key;
  gsize           offset;
  GwQuantity      quantity;           /* number */
  double          least, most;        /* number, inclusive */
  double          standard;           /* number: NAN, not stated; choice and flag: the value */
  gboolean        is_needed;          /* must be in the file */
  const GwChoice *choices;            /* choice, ended by a NULL key */
  const GwRecordType *(*item) (void); /* part, list */
  const char *collection;             /* ref: key of a list of the study */
  const char *label;                  /* untranslated */
  const char *help;
} GwField;

struct _GwRecordType
{
  const char    *name;  /* "station" */
  const char    *label; /* untranslated */
  gsize          size;
  const GwField *fields;
  guint          n_fields; /* at most 64 */
};

typedef struct
{
  const GwRecordType *type;
  guint64             present; /* bit i: field i stands in the file */
  JsonObject         *unknown; /* keys of a newer program or a typing slip, kept; NULL: none */
} GwRecord;

typedef struct
{
  char     *path;
  JsonNode *value;
} GwChange;

void gw_record_init (GwRecord           *record,
                     const GwRecordType *type);
void gw_record_clear (GwRecord *record);

GwRecord *gw_record_new (const GwRecordType *type) G_GNUC_WARN_UNUSED_RESULT;
void      gw_record_free (GwRecord *record);

/** gw_record_assign: makes @to, of the same type, a deep copy of @from. */
void      gw_record_assign (GwRecord       *to,
                            const GwRecord *from);
GwRecord *gw_record_copy (const GwRecord *record) G_GNUC_WARN_UNUSED_RESULT;
gboolean  gw_record_equal (const GwRecord *a,
                           const GwRecord *b);

/** gw_record_field_equal: whether both have the same there, or both do not state it. */
gboolean gw_record_field_equal (const GwRecord *a,
                                const GwRecord *b,
                                const GwField  *field);

/** gw_record_value_equal: of two records of one type; whether it is stated does not count. */
gboolean gw_record_value_equal (const GwRecord *x,
                                const GwRecord *y,
                                const GwField  *field);

gboolean gw_record_has (const GwRecord *record,
                        const GwField  *field);
void     gw_record_set_present (GwRecord      *record,
                                const GwField *field,
                                gboolean       is_present);

/** gw_record_reset_field: takes a field back to its standard, as if the file did not hold it. */
void gw_record_reset_field (GwRecord      *record,
                            const GwField *field);

/** gw_record_types: @type and every type below it, each once, in order. (transfer container) */
GPtrArray *gw_record_types (const GwRecordType *type) G_GNUC_WARN_UNUSED_RESULT;

const GwField *gw_record_type_field (const GwRecordType *type,
                                     const char         *key);

/** gw_record_id: the record's id, or NULL if its kind has none. */
const char *gw_record_id (const GwRecord *record);

/** gw_record_at: the member of @record that @field describes, as a pointer to it. */
gpointer gw_record_at (const GwRecord *record,
                       const GwField  *field);

/** gw_list_extend: adds deep copies of all records of @from to @list. */
void gw_list_extend (GPtrArray       *list,
                     const GPtrArray *from);

/** gw_list_find: the record with that id, or NULL. */
GwRecord *gw_list_find (const GPtrArray *list,
                        const char      *id);

/**
 * gw_record_find:
 * @path: keys parted by '/'; a record in a list by its id, or counted from 1
 * @field: (out): the last field
 *
 * Returns: (nullable): the record that holds it, or NULL if there is no such place.
 */
GwRecord *gw_record_find (GwRecord       *root,
                          const char     *path,
                          const GwField **field);

/**
 * GwFieldVisitor:
 * @path: of the field in its document
 */
typedef void (*GwFieldVisitor) (const char    *path,
                                GwRecord      *record,
                                const GwField *field,
                                gpointer       data);

/** gw_record_each: calls @visit for every field of @record and of all below it, in order. */
void gw_record_each (GwRecord      *record,
                     const char    *path,
                     GwFieldVisitor visit,
                     gpointer       data);

/** gw_record_step: path of a list's @i-th record, by id or counted from 1. (transfer full) */
char *gw_record_step (const char     *path,
                      const char     *key,
                      const GwRecord *item,
                      guint           i);

G_END_DECLS
