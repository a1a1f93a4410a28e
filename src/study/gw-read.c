/* gw-read.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-read.h"

#include <glib/gi18n-lib.h>

#include "study/gw-error.h"

#define PIECE 65536 /* bytes read at a time */

static gboolean
refuse (GError    **error,
        const char *why)
{
  g_set_error_literal (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE, why);
  return FALSE;
}

static gboolean
refuse_size (GError **error,
             guint64  size,
             gsize    most)
{
  g_autofree char *is = g_format_size (size);
  g_autofree char *may = g_format_size (most);

  g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_FILE,
               _ ("it is too large: %s, where no more than %s is read"), is, may);
  return FALSE;
}

/* What has no type to tell (not all remote places have) is read, up to the bound. */
static gboolean
check_file (GFile   *file,
            gsize    most,
            GError **error)
{
  g_autoptr (GFileInfo) info = g_file_query_info (
    file, G_FILE_ATTRIBUTE_STANDARD_TYPE "," G_FILE_ATTRIBUTE_STANDARD_SIZE,
    G_FILE_QUERY_INFO_NONE, NULL, error);
  guint64 size;

  if (info == NULL)
    return FALSE;

  switch (g_file_info_get_file_type (info))
    {
    case G_FILE_TYPE_REGULAR:
    case G_FILE_TYPE_UNKNOWN:
      size = g_file_info_get_attribute_uint64 (info, G_FILE_ATTRIBUTE_STANDARD_SIZE);
      return size <= most || refuse_size (error, size, most);
    case G_FILE_TYPE_DIRECTORY:
      return refuse (error, _ ("it is a folder, not a file"));
    case G_FILE_TYPE_SYMBOLIC_LINK:
      return refuse (error, _ ("it is a link to a file that is not there"));
    case G_FILE_TYPE_SPECIAL:
      return refuse (error, _ ("it is a device or a pipe, not a file"));
    case G_FILE_TYPE_SHORTCUT:
    case G_FILE_TYPE_MOUNTABLE:
    default:
      return refuse (error, _ ("it is no file that can be read"));
    }
}

/* Piece by piece: some files tell a size of zero, others grow meanwhile. */
static GByteArray *
read_pieces (GInputStream *stream,
             gsize         most,
             GError      **error)
{
  g_autoptr (GByteArray) all = g_byte_array_new ();
  g_autofree guint8 *piece = g_malloc (PIECE);
  gsize              n = 0;

  do
    {
      if (!g_input_stream_read_all (stream, piece, PIECE, &n, NULL, error))
        return NULL;
      g_byte_array_append (all, piece, (guint) n);
      if (all->len > most)
        {
          refuse_size (error, all->len, most);
          return NULL;
        }
    }
  while (n == PIECE);

  return g_steal_pointer (&all);
}

gboolean
gw_read_file (GFile   *file,
              gsize    most,
              char   **text,
              gsize   *length,
              GError **error)
{
  static const guint8 zero = 0;
  g_autoptr (GFileInputStream) stream = NULL;
  g_autoptr (GByteArray) all = NULL;

  g_return_val_if_fail (most < G_MAXUINT - PIECE, FALSE); /* a GByteArray's limit */

  if (check_file (file, most, error) && (stream = g_file_read (file, NULL, error)) != NULL)
    all = read_pieces (G_INPUT_STREAM (stream), most, error);
  if (all == NULL)
    return FALSE;

  g_byte_array_append (all, &zero, 1);
  *length = all->len - 1;
  *text = (char *) g_byte_array_free (g_steal_pointer (&all), FALSE);
  return TRUE;
}
