/* gw-json-check.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-json-check.h"

#include <glib/gi18n-lib.h>
#include <stdarg.h>
#include <string.h>

#include "study/gw-error.h"
#include "study/gw-json.h"

#define PIECE 24 /* characters of the text that a message shows at most */

/* What may come next. */
typedef enum
{
  WANT_OBJECT,    /* the first */
  WANT_FIRST_KEY, /* or } */
  WANT_KEY,       /* after a comma */
  WANT_COLON,
  WANT_FIRST_ITEM, /* or ] */
  WANT_VALUE,
  WANT_COMMA, /* or the bracket that closes */
  WANT_END,
} Want;

typedef struct
{
  const char *start, *end; /* of the whole text */
  const char *at;
  const char *behind; /* what came last: where something missing should have stood */
  Want        want;
  guint       depth;
  const char *open[GW_JSON_MAX_DEPTH]; /* the brackets at @at, outermost first */
  GError    **error;
} Check;

static guint
line_of (const Check *check,
         const char  *place)
{
  guint line = 1;

  for (const char *c = check->start; c < place; c++)
    line += *c == '\n';
  return line;
}

static guint
column_of (const Check *check,
           const char  *place)
{
  const char *line = place;

  while (line > check->start && line[-1] != '\n')
    line--;
  return (guint) g_utf8_strlen (line, place - line) + 1;
}

/* Sets the error of what is wrong at @place; returns FALSE. */
static gboolean G_GNUC_PRINTF (3, 4)
  fault (const Check *check,
         const char  *place,
         const char  *format,
         ...)
{
  g_autofree char *what = NULL;
  va_list          args;

  va_start (args, format);
  what = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error (check->error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX, _ ("line %u, column %u: %s"),
               line_of (check, place), column_of (check, place), what);
  return FALSE;
}

/* The text at @place as far as it goes in its line, cut if that is long. */
static char *
piece_at (const Check *check,
          const char  *place)
{
  const char      *end = place;
  guint            n = 0;
  g_autofree char *piece = NULL;

  while (end < check->end && !g_unichar_iscntrl (g_utf8_get_char (end)) && n++ < PIECE)
    end = g_utf8_next_char (end);
  piece = g_strchomp (g_strndup (place, (gsize) (end - place)));
  return g_strconcat (piece, n > PIECE ? "…" : "", NULL);
}

static char
closing (const Check *check)
{
  return *check->open[check->depth - 1] == '{' ? '}' : ']';
}

static gboolean
ends_early (const Check *check)
{
  const char *open;

  if (check->depth == 0)
    return fault (check, check->at, _ ("the file is empty; a study begins with {"));

  open = check->open[check->depth - 1];
  return fault (check, check->behind,
                _ ("the file ends while the %c of line %u is still open; was it cut off?"), *open,
                line_of (check, open));
}

/* What people write by mistake wherever: a comment, or a quote that is none. */
static gboolean
is_comment (const Check *check)
{
  return *check->at == '#' || *check->at == '/';
}

static gboolean
is_other_quote (const Check *check)
{
  const gunichar c = g_utf8_get_char (check->at);

  return c == '\'' || c == '`' || c == 0xab || c == 0xbb || (c >= 0x2018 && c <= 0x201f);
}

static gboolean
is_closing (const Check *check)
{
  return *check->at == '}' || *check->at == ']';
}

static gboolean
refuse_key (const Check *check,
            const char  *piece)
{
  if (check->want == WANT_KEY && is_closing (check))
    return fault (check, check->behind - 1, _ ("nothing follows this comma; remove it"));

  return fault (check, check->at, _ ("a key in double quotes (\") is wanted here, not “%s”"),
                piece);
}

static gboolean
refuse_value (const Check *check,
              const char  *piece)
{
  if (check->behind[-1] == ',' && is_closing (check))
    return fault (check, check->behind - 1, _ ("nothing follows this comma; remove it"));
  if (is_closing (check) || *check->at == ',')
    return fault (check, check->behind, _ ("a value is missing here, before “%s”"), piece);

  return fault (
    check, check->at,
    _ ("“%s” is no number and no true, false or null; texts stand in double quotes (\")"), piece);
}

/* Behind a value. */
static gboolean
refuse_further (const Check *check,
                const char  *piece)
{
  const char *open = check->open[check->depth - 1];

  if (is_closing (check))
    return fault (check, check->at, _ ("%c cannot close the %c of line %u; %c does"), *check->at,
                  *open, line_of (check, open), closing (check));

  return fault (check, check->behind, _ ("a comma or the closing %c is missing here, before “%s”"),
                closing (check), piece);
}

/* At @at stands what cannot stand there. */
static gboolean
refuse (const Check *check)
{
  g_autofree char *piece = piece_at (check, check->at);

  if (is_comment (check))
    return fault (check, check->at, _ ("JSON has no comments; remove “%s”"), piece);
  if (is_other_quote (check))
    return fault (check, check->at, _ ("texts stand in straight double quotes (\"), unlike “%s”"),
                  piece);

  switch (check->want)
    {
    case WANT_OBJECT:
      return fault (check, check->at,
                    _ ("the file holds no JSON object; a study begins with {, not with “%s”"),
                    piece);
    case WANT_FIRST_KEY:
    case WANT_KEY:
      return refuse_key (check, piece);
    case WANT_COLON:
      return fault (check, check->behind, _ ("a colon is missing here, before “%s”"), piece);
    case WANT_FIRST_ITEM:
    case WANT_VALUE:
      return refuse_value (check, piece);
    case WANT_COMMA:
      return refuse_further (check, piece);
    case WANT_END:
    default:
      return fault (check, check->at, _ ("text after the end of the document; remove “%s”"),
                    piece);
    }
}

/* The sixteen bits of the escape \uXXXX at @text, or 0 if it is none. */
static guint
escape_unit (const char *text,
             const char *end)
{
  guint unit = 0;

  if (end - text < 6 || text[0] != '\\' || text[1] != 'u')
    return 0;

  for (guint i = 2; i < 6; i++)
    {
      if (!g_ascii_isxdigit (text[i]))
        return 0;
      unit = unit * 16 + (guint) g_ascii_xdigit_value (text[i]);
    }

  return unit;
}

/* Bytes of the escape at @text, or 0 if it stands for no character that text can hold:
 * json-glib 1.6 makes half a surrogate pair into text that is not UTF-8. */
static guint
escape_length (const char *text,
               const char *end)
{
  const guint unit = escape_unit (text, end);

  if (end - text < 2 || text[1] != 'u')
    return end - text >= 2 && strchr ("\"\\/bfnrt", text[1]) != NULL ? 2 : 0;
  if (unit < 0xd800 || unit > 0xdfff)
    return unit > 0 ? 6 : 0;

  return unit < 0xdc00 && escape_unit (text + 6, end) >> 10 == 0xdc00 >> 10 ? 12 : 0;
}

/* A text in quotes that begins at @at. */
static gboolean
take_text (Check *check)
{
  const char *c = check->at + 1;
  guint       step;

  for (; c < check->end && *c != '"' && *c != '\n'; c += step)
    {
      step = 1;
      if (*c == '\\' && (step = escape_length (c, check->end)) == 0)
        {
          g_autofree char *piece = piece_at (check, c);

          return fault (check, c, _ ("an escape that stands for no character: “%s”"), piece);
        }
    }

  if (c == check->end || *c == '\n')
    {
      g_autofree char *piece = piece_at (check, check->at + 1);

      return fault (check, check->at, _ ("the closing quote (\") of “%s” is missing"), piece);
    }

  check->at = c + 1;
  return TRUE;
}

static const char *
skip_digits (const char *c,
             const char *end)
{
  while (c < end && g_ascii_isdigit (*c))
    c++;
  return c;
}

/* The end of the number at @c, or NULL if it is none. */
static const char *
number_end (const char *c,
            const char *end)
{
  const char *digits;

  c += c < end && *c == '-';
  digits = c;
  c = skip_digits (c, end);
  if (c == digits || (*digits == '0' && c > digits + 1))
    return NULL;
  if (c < end && *c == '.')
    {
      digits = c + 1;
      c = skip_digits (digits, end);
      if (c == digits)
        return NULL;
    }
  if (c < end && (*c == 'e' || *c == 'E'))
    {
      c++;
      c += c < end && (*c == '+' || *c == '-');
      digits = c;
      c = skip_digits (digits, end);
      if (c == digits)
        return NULL;
    }

  return c;
}

static const char *
word_end (const char *c,
          const char *end)
{
  static const char *const words[] = { "true", "false", "null" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      const gsize length = strlen (words[i]);

      if ((gsize) (end - c) >= length && memcmp (c, words[i], length) == 0)
        return c + length;
    }

  return NULL;
}

/* A number or a word, with nothing of its kind stuck to it. */
static gboolean
take_plain (Check *check)
{
  const char *c = word_end (check->at, check->end);

  if (c == NULL)
    c = number_end (check->at, check->end);
  if (c == NULL || (c < check->end && (g_ascii_isalnum (*c) || strchr ("._+-", *c) != NULL)))
    return refuse (check);

  check->at = c;
  check->want = WANT_COMMA;
  return TRUE;
}

static gboolean
take_open (Check *check)
{
  if (check->depth == GW_JSON_MAX_DEPTH)
    return fault (check, check->at, _ ("brackets nested too deep for a study"));

  check->open[check->depth++] = check->at;
  check->want = *check->at == '{' ? WANT_FIRST_KEY : WANT_FIRST_ITEM;
  check->at++;
  return TRUE;
}

static gboolean
take_close (Check *check)
{
  check->depth--;
  check->want = check->depth > 0 ? WANT_COMMA : WANT_END;
  check->at++;
  return TRUE;
}

static gboolean
take_value (Check *check)
{
  if (*check->at == '{' || *check->at == '[')
    return take_open (check);
  if (*check->at != '"')
    return take_plain (check);

  check->want = WANT_COMMA;
  return take_text (check);
}

static gboolean
take_sign (Check *check,
           char   sign,
           Want   next)
{
  if (*check->at != sign)
    return refuse (check);

  check->want = next;
  check->at++;
  return TRUE;
}

static gboolean
take_key (Check *check)
{
  if (*check->at != '"')
    return refuse (check);

  check->want = WANT_COLON;
  return take_text (check);
}

/* What stands at @at, which is no blank. */
static gboolean
take (Check *check)
{
  const gboolean is_closed =
    check->depth > 0 && *check->at == closing (check) &&
    (check->want == WANT_COMMA || check->want == WANT_FIRST_KEY || check->want == WANT_FIRST_ITEM);

  if (is_closed)
    return take_close (check);

  switch (check->want)
    {
    case WANT_OBJECT:
      return *check->at == '{' ? take_open (check) : refuse (check);
    case WANT_FIRST_KEY:
    case WANT_KEY:
      return take_key (check);
    case WANT_COLON:
      return take_sign (check, ':', WANT_VALUE);
    case WANT_FIRST_ITEM:
    case WANT_VALUE:
      return take_value (check);
    case WANT_COMMA:
      return take_sign (check, ',', closing (check) == '}' ? WANT_KEY : WANT_VALUE);
    case WANT_END:
    default:
      return refuse (check);
    }
}

/* Of bytes that are no UTF-8, those the file ends with may only have been cut. */
static gboolean
check_encoding (const Check *check)
{
  const char *bad;

  if (g_utf8_validate_len (check->start, (gsize) (check->end - check->start), &bad))
    return TRUE;
  if (*bad != '\0' && g_utf8_get_char_validated (bad, check->end - bad) == (gunichar) -2)
    return fault (check, bad, _ ("the file ends in the middle of a character; was it cut off?"));

  return fault (check, bad, _ ("not UTF-8 text; is it really a study?"));
}

gboolean
gw_json_check (const char *text,
               gsize       length,
               GError    **error)
{
  const gsize mark = length >= 3 && memcmp (text, "\357\273\277", 3) == 0 ? 3 : 0;
  Check       check = { .start = text + mark, .end = text + length, .error = error };

  check.at = check.behind = check.start;
  if (!check_encoding (&check))
    return FALSE;

  while (TRUE)
    {
      while (check.at < check.end && strchr (" \t\r\n", *check.at) != NULL)
        check.at++;
      if (check.at == check.end)
        return check.want == WANT_END || ends_early (&check);
      if (!take (&check))
        return FALSE;
      check.behind = check.at;
    }
}
