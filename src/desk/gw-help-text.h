/* gw-help-text.h - the help pages as they are written
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A page is a text file: its title in the first line, then blocks parted by empty lines.
 * A line that begins with "## " is a heading, one with "- " an entry of a list; all other
 * lines belong to the paragraph or entry above them. */

typedef enum
{
  GW_HELP_HEADING,
  GW_HELP_PARAGRAPH,
  GW_HELP_ENTRY,
} GwHelpKind;

typedef struct
{
  GwHelpKind kind;
  char      *text; /* one line */
} GwHelpBlock;

typedef struct
{
  char      *id; /* its file without the ending */
  char      *title;
  GPtrArray *blocks; /* of GwHelpBlock */
} GwHelpPage;

GwHelpPage *gw_help_page_new (const char *id,
                              const char *text,
                              gsize       length) G_GNUC_WARN_UNUSED_RESULT;

void gw_help_page_free (GwHelpPage *page);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GwHelpPage, gw_help_page_free)

/** gw_help_pages: all that ship with the program, in order. (transfer full) */
GPtrArray *gw_help_pages (void) G_GNUC_WARN_UNUSED_RESULT;

/** gw_help_words: what is searched for, each word folded, NULL-ended. (transfer full) */
char **gw_help_words (const char *typed);

/** gw_help_page_has: whether all words stand somewhere in the page. */
gboolean gw_help_page_has (const GwHelpPage  *page,
                           const char *const *words);

G_END_DECLS
