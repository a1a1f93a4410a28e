/* gw-section-file.h - outlines of wing sections from files of coordinates
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gio/gio.h>
#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/**
 * gw_section_file_parse:
 * @text: (array length=length): a name if there is one, then a point a line, x and y, in
 *   any one unit: either from the trailing edge over the top to the nose and back along
 *   the bottom, or the top from nose to tail and then the bottom from nose to tail. In the
 *   second order a line with the two numbers of points may stand before them. Empty lines
 *   and lines that begin with '#' are passed over.
 * @name: of the section if the file gives none
 *
 * What the section does in the air is not in such a file: it is taken from that section of
 * the catalogue whose thickness and camber are nearest, as a guess that says so. Angle and
 * moment come from the mean line.
 *
 * Returns: (transfer full): a record for "sections" of a study, as gw_edit_insert() takes
 *   it, or NULL with %GW_STUDY_ERROR_SYNTAX; the message says the line.
 */
JsonNode *gw_section_file_parse (const char *text,
                                 gsize       length,
                                 const char *name,
                                 GError    **error) G_GNUC_WARN_UNUSED_RESULT;

/** gw_section_file_load: the same from @file; a file without a name gives its own. */
JsonNode *gw_section_file_load (GFile   *file,
                                GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
