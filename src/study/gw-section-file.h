/* gw-section-file.h - outlines of wing sections from files of coordinates
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>
#include <json-glib/json-glib.h>

#include "engine/gw-outline-check.h"

G_BEGIN_DECLS

/* An outline as a file has it, checked and put in order. */
typedef struct
{
  char           *name; /* of the section: the file's own, or what was given */
  guint           n_points;
  double         *points;      /* (array length=2 n_points): as gw_outline_arrange() gives them */
  guint           double_line; /* of the first point left out, see @report */
  GwOutlineReport report;
  GwOutline       outline;
  GwOutline       smooth; /* what smoothing would make of it */
  GwOutlineChange change; /* and the most that would move */
} GwSectionFile;

/**
 * gw_section_file_read:
 * @text: (array length=length): a name if there is one, then a point a line, x and y, in
 *   any one unit: once round from the trailing edge or from the nose, or one side and then
 *   the other; in the latter order a line with the two numbers of points may stand before
 *   them. Numbers are parted by blanks, commas or semicolons; a comma may mark decimals.
 *   Empty lines and lines that begin with #, !, %, * or // are passed over, and what follows
 *   a # or ! behind a point.
 * @name: of the section if the file gives none
 *
 * Returns: (transfer full): the outline, or NULL with %GW_STUDY_ERROR_SYNTAX; the message
 *   says the lines.
 */
GwSectionFile *gw_section_file_read (const char *text,
                                     gsize       length,
                                     const char *name,
                                     GError    **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_file_open: the same from @file; a file without a name gives its own. */
GwSectionFile *gw_section_file_open (GFile   *file,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

void gw_section_file_free (GwSectionFile *file);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwSectionFile, gw_section_file_free)

/** gw_section_file_remarks: what had to be set right, in sentences. (transfer container) */
GPtrArray *gw_section_file_remarks (const GwSectionFile *file) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_file_change: how far smoothing goes, in a sentence. (transfer full) */
char *gw_section_file_change (const GwSectionFile *file) G_GNUC_WARN_UNUSED_RESULT;

/**
 * gw_section_file_record:
 *
 * What the section does in the air is not in such a file, so the record has no rows.
 *
 * Returns: (transfer full): a record for "sections" of a study, as gw_edit_insert() takes it
 */
JsonNode *gw_section_file_record (const GwSectionFile *file,
                                  gboolean             is_smooth) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_file_json: the same as text. (transfer full) */
char *gw_section_file_json (const GwSectionFile *file,
                            gboolean             is_smooth) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_file_text: what the outline is and measures, line by line. (transfer full) */
char *gw_section_file_text (const GwSectionFile *file,
                            gboolean             is_smooth) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_file_parse: the record at once, as it stands in the file. */
JsonNode *gw_section_file_parse (const char *text,
                                 gsize       length,
                                 const char *name,
                                 GError    **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_file_load: the same from @file. */
JsonNode *gw_section_file_load (GFile   *file,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
