/* gw-help-text.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "desk/gw-help-text.h"

#include <string.h>

#include "study/gw-shipped.h"

#define FOLDER "help"

static void
block_free (gpointer data)
{
  GwHelpBlock *block = data;

  g_free (block->text);
  g_free (block);
}

static GwHelpBlock *
add_block (GwHelpPage *page,
           GwHelpKind  kind,
           const char *text)
{
  GwHelpBlock *block = g_new0 (GwHelpBlock, 1);

  block->kind = kind;
  block->text = g_strdup (text);
  g_ptr_array_add (page->blocks, block);
  return block;
}

static void
add_line (GwHelpBlock *block,
          const char  *line)
{
  char *text = g_strdup_printf ("%s %s", block->text, line);

  g_free (block->text);
  block->text = text;
}

GwHelpPage *
gw_help_page_new (const char *id,
                  const char *text,
                  gsize       length)
{
  GwHelpPage      *page = g_new0 (GwHelpPage, 1);
  g_autofree char *copy = g_strndup (text, length);
  g_auto (GStrv) lines = g_strsplit (copy, "\n", -1);
  GwHelpBlock *open = NULL; /* that a line may go on */

  page->id = g_strdup (id);
  page->title = g_strdup (lines[0] != NULL ? g_strstrip (lines[0]) : "");
  page->blocks = g_ptr_array_new_with_free_func (block_free);
  for (guint i = 1; lines[0] != NULL && lines[i] != NULL; i++)
    {
      const char *line = g_strstrip (lines[i]);

      if (*line == '\0')
        open = NULL;
      else if (g_str_has_prefix (line, "## "))
        {
          add_block (page, GW_HELP_HEADING, line + 3);
          open = NULL;
        }
      else if (g_str_has_prefix (line, "- "))
        open = add_block (page, GW_HELP_ENTRY, line + 2);
      else if (open != NULL)
        add_line (open, line);
      else
        open = add_block (page, GW_HELP_PARAGRAPH, line);
    }

  return page;
}

void
gw_help_page_free (GwHelpPage *page)
{
  g_ptr_array_unref (page->blocks);
  g_free (page->title);
  g_free (page->id);
  g_free (page);
}

GPtrArray *
gw_help_pages (void)
{
  g_autoptr (GBytes) contents = gw_shipped_data (FOLDER, "contents.txt");
  g_autofree char *text =
    g_strndup (g_bytes_get_data (contents, NULL), g_bytes_get_size (contents));
  g_auto (GStrv) ids = g_strsplit (g_strstrip (text), "\n", -1);
  GPtrArray *pages = g_ptr_array_new_with_free_func ((GDestroyNotify) gw_help_page_free);

  for (guint i = 0; ids[i] != NULL; i++)
    {
      g_autofree char *name = g_strconcat (ids[i], ".txt", NULL);
      g_autoptr (GBytes) bytes = gw_shipped_data (FOLDER, name);

      g_ptr_array_add (pages, gw_help_page_new (ids[i], g_bytes_get_data (bytes, NULL),
                                                g_bytes_get_size (bytes)));
    }

  return pages;
}

char **
gw_help_words (const char *typed)
{
  g_autofree char *folded = g_utf8_casefold (typed, -1);
  g_auto (GStrv) parts = g_strsplit_set (folded, " \t", -1);
  GPtrArray *words = g_ptr_array_new ();

  for (guint i = 0; parts[i] != NULL; i++)
    if (*parts[i] != '\0')
      g_ptr_array_add (words, g_strdup (parts[i]));

  g_ptr_array_add (words, NULL);
  return (char **) g_ptr_array_free (words, FALSE);
}

static gboolean
has_word (const char *text,
          const char *word)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);

  return strstr (folded, word) != NULL;
}

gboolean
gw_help_page_has (const GwHelpPage  *page,
                  const char *const *words)
{
  for (guint i = 0; words[i] != NULL; i++)
    {
      gboolean is_found = has_word (page->title, words[i]);

      for (guint k = 0; k < page->blocks->len && !is_found; k++)
        is_found = has_word (((GwHelpBlock *) g_ptr_array_index (page->blocks, k))->text, words[i]);
      if (!is_found)
        return FALSE;
    }

  return TRUE;
}
