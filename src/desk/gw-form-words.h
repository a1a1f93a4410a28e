/* gw-form-words.h - records, fields and reasons in the words of the form
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "study/gw-study.h"
#include "study/gw-units.h"

G_BEGIN_DECLS

/** gw_form_label: of a field, translated. */
const char *gw_form_label (const GwField *field);

/** gw_form_find_referred: (nullable): what @id names, in the study or the catalogue. */
GwRecord *gw_form_find_referred (const GwStudy *study,
                                 const char    *collection,
                                 const char    *id);

/** gw_form_field_text: the value in words: "310 mm", "hot-wired core". (transfer full) */
char *gw_form_field_text (const GwStudy  *study,
                          const GwRecord *record,
                          const GwField  *field,
                          const GwUnits  *units);

/**
 * gw_form_compare:
 * @own: as an option has it
 * @shared: as the others have it
 * @common: (out): its text
 *
 * Returns: (transfer full): text of @own, NULL if it is the same as the common one. Numbers
 *   that differ in nothing but spread or origin say so.
 */
char *gw_form_compare (const GwStudy  *study,
                       const GwRecord *own,
                       const GwRecord *shared,
                       const GwField  *field,
                       const GwUnits  *units,
                       char          **common) G_GNUC_WARN_UNUSED_RESULT;

/** gw_form_record_title: "Battery"; without a name "Station 2". (transfer full) */
char *gw_form_record_title (const GwStudy *study,
                            const char    *path);

/** gw_form_record_place: with what it lies in: "Wing · Station 2". (transfer full) */
char *gw_form_record_place (const GwStudy *study,
                            const char    *path);

/** gw_form_owner: path of the record that holds it, NULL if the study does. (transfer full) */
char *gw_form_owner (const char *path);

/** gw_form_summary: a record of a list in a few words: "out 900, chord 180". (transfer full) */
char *gw_form_summary (const GwStudy  *study,
                       const GwRecord *record,
                       const GwUnits  *units);

/** gw_form_reason: an error without the place, where that is clear. (transfer full) */
char *gw_form_reason (const GError *error,
                      const char   *path);

G_END_DECLS
