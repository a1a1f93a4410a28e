/* gw-section-file.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-section-file.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-error.h"
#include "study/gw-json.h"
#include "study/gw-read.h"
#include "study/gw-record-json.h"
#include "study/gw-study.h"

#define MOST_BYTES    (1024 * 1024) /* somebody may drop a film */
#define MOST_POINTS   5000
#define FARTHEST      1000.0 /* as the field of a point has it */
#define FEWEST_POINTS 9      /* gw_outline_arrange() */

typedef struct
{
  double x, y;
  guint  line;
} Pair;

typedef struct
{
  char   *name;
  GArray *pairs; /* of Pair; those of the points alone in the end */
} Reading;

static void
reading_clear (Reading *reading)
{
  g_clear_pointer (&reading->name, g_free);
  g_clear_pointer (&reading->pairs, g_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Reading, reading_clear)

static Pair *
pair_at (const Reading *reading,
         guint          i)
{
  return &g_array_index (reading->pairs, Pair, i);
}

/* A comma parts two numbers where points mark decimals or a blank follows it; else it is a
 * decimal comma. */
static char *
with_plain_numbers (const char *line)
{
  const gboolean has_point = strchr (line, '.') != NULL;
  char          *plain = g_strdup (line);

  for (char *at = plain; *at != '\0'; at++)
    if (*at == ';' || (*at == ',' && (has_point || at[1] == ' ' || at[1] == '\t')))
      *at = ' ';
    else if (*at == ',')
      *at = '.';

  return plain;
}

/* Lines that programs and people put between the points. */
static gboolean
is_comment (const char *line)
{
  return strchr ("#!%*", *line) != NULL || g_str_has_prefix (line, "//"); /* an empty one too */
}

/* How many numbers the line is made of; 0 if anything else stands in it but a comment. */
static guint
read_numbers (const char *line,
              double     *x,
              double     *y)
{
  g_autofree char *plain = with_plain_numbers (line);
  char            *at = g_strchug (plain);
  guint            n = 0;

  at[strcspn (at, "#!")] = '\0';

  if (strpbrk (at, "xX") != NULL)
    return 0; /* the library would read base sixteen */
  for (; *at != '\0'; n++)
    {
      char        *end;
      const double value = g_ascii_strtod (at, &end);

      if (end == at || strchr ("+-.0123456789", *at) == NULL || !isfinite (value) ||
          (*end != '\0' && !g_ascii_isspace (*end)))
        return 0;
      *(n == 0 ? x : y) = value;
      at = g_strchug (end);
    }

  return n;
}

static gboolean
refuse_line (guint       number,
             const char *line,
             GError    **error)
{
  g_autofree char *start = g_utf8_substring (line, 0, MIN (40, g_utf8_strlen (line, -1)));

  g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
               _ ("line %u: two numbers are wanted, along the chord and height, not “%s”"), number,
               start);
  return FALSE;
}

static gboolean
read_line (Reading    *reading,
           guint       number,
           const char *line,
           GError    **error)
{
  Pair        pair = { .line = number };
  const guint n = read_numbers (line, &pair.x, &pair.y);

  if (n != 2 && reading->pairs->len == 0 && reading->name == NULL)
    {
      reading->name = g_strdup (line);
      return TRUE;
    }
  if (n != 2)
    return refuse_line (number, line, error);

  if (reading->pairs->len == MOST_POINTS)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                   _ ("line %u: more than %d points are no outline"), number, MOST_POINTS);
      return FALSE;
    }
  if (fabs (pair.x) > FARTHEST || fabs (pair.y) > FARTHEST)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                   _ ("line %u: the numbers of a point go up to %g"), number, FARTHEST);
      return FALSE;
    }

  g_array_append_val (reading->pairs, pair);
  return TRUE;
}

static gboolean
read_lines (Reading    *reading,
            const char *text,
            GError    **error)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      const char *line = g_strstrip (lines[i]);

      if (!is_comment (line) && !read_line (reading, i + 1, line, error))
        return FALSE;
    }

  return TRUE;
}

static gboolean
is_number_of_points (double value)
{
  return value >= 2.0 && value <= MOST_POINTS && value == floor (value);
}

/* A line with how many points each side has is no point; that they are right is worth a look. */
static gboolean
take_numbers (Reading *reading,
              GError **error)
{
  const guint n = reading->pairs->len;
  const Pair  first = n > 0 ? *pair_at (reading, 0) : (Pair){ 0 };
  double      farthest = 0.0;

  for (guint i = 1; i < n; i++)
    farthest = fmax (farthest, pair_at (reading, i)->x);
  /* As far out as the points themselves it is the first of them. */
  if (!is_number_of_points (first.x) || !is_number_of_points (first.y) ||
      first.x < 1.5 * farthest)
    return TRUE;

  if (first.x + first.y != n - 1.0)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                   _ ("line %u: it says %g and %g points, but %u follow"), first.line, first.x,
                   first.y, n - 1);
      return FALSE;
    }

  g_array_remove_index (reading->pairs, 0);
  return TRUE;
}

static guint
line_of (const Reading *reading,
         size_t         i)
{
  return pair_at (reading, (guint) i)->line;
}

static char *
fault_text (const Reading         *reading,
            const GwOutlineReport *report)
{
  const double  percent = 100.0 * report->amount;
  const size_t *at = report->at;

  switch (report->fault)
    {
    case GW_OUTLINE_FEW:
      return g_strdup_printf (
        _ ("it holds %u points of an outline that differ; %d or more are needed"),
        reading->pairs->len - (guint) report->n_doubles, FEWEST_POINTS);
    case GW_OUTLINE_SHORT:
      return g_strdup (_ ("all its points are in one place"));
    case GW_OUTLINE_ONE_SIDE:
      return g_strdup (_ ("the points go from one end to the other and do not come back: one "
                          "side of the outline is missing"));
    case GW_OUTLINE_OPEN:
      return g_strdup_printf (_ ("the outline is open: its ends, in lines %u and %u, are %.0f %% "
                                 "of the chord apart"),
                              line_of (reading, at[0]), line_of (reading, at[1]), percent);
    case GW_OUTLINE_BACK:
      return g_strdup_printf (_ ("lines %u and %u: the points turn back along the chord, by "
                                 "%.1f %% of it; are they in order?"),
                              line_of (reading, at[0]), line_of (reading, at[1]), percent);
    case GW_OUTLINE_CROSSED:
      return g_strdup_printf (
        _ ("the outline crosses itself, behind the points of lines %u and %u"),
        line_of (reading, at[0]), line_of (reading, at[1]));
    case GW_OUTLINE_THIN:
    case GW_OUTLINE_THICK:
      return g_strdup_printf (_ ("the outline is %.2g %% of its chord deep on average; are lengths "
                                 "and heights in the same unit?"),
                              percent);
    case GW_OUTLINE_SOUND:
    default:
      return g_strdup (_ ("the points must run round the outline once and not cross"));
    }
}

/* Puts the points in order and makes the outline of them. */
static gboolean
read_outline (const Reading *reading,
              GwSectionFile *file,
              GError       **error)
{
  const guint        n = reading->pairs->len;
  g_autofree double *xy = g_new (double, 2 * n + 1);
  g_autofree char   *text = NULL;
  size_t             n_points = 0;

  for (guint i = 0; i < n; i++)
    {
      xy[2 * i] = pair_at (reading, i)->x;
      xy[2 * i + 1] = pair_at (reading, i)->y;
    }
  file->points = g_new (double, 2 * n + 4);
  if (gw_outline_arrange (n, xy, file->points, &n_points, &file->report) == GW_OK &&
      gw_outline_points (n_points, file->points, &file->outline) == GW_OK)
    {
      file->n_points = (guint) n_points;
      if (file->report.n_doubles > 0)
        file->double_line = line_of (reading, file->report.first_double);
      return TRUE;
    }

  text = fault_text (reading, &file->report);
  g_set_error_literal (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX, text);
  return FALSE;
}

static void
mark (GwRecord   *record,
      const char *key)
{
  gw_record_set_present (record, gw_record_type_field (record->type, key), TRUE);
}

static void
add_point (GwStudySection *section,
           double          x,
           double          y)
{
  GwRecord     *record = gw_record_new (gw_study_point_type ());
  GwStudyPoint *point = (GwStudyPoint *) record;

  gw_number_set (&point->x, x);
  gw_number_set (&point->y, y);
  mark (record, "x");
  mark (record, "y");
  g_ptr_array_add (section->points, record);
}

/* In per cent, to a millionth of the chord, as far as the splines go. */
static double
rounded (double chords)
{
  return round (chords * 1e6) / 1e4;
}

static void
add_points (GwStudySection      *section,
            const GwSectionFile *file,
            gboolean             is_smooth)
{
  for (guint i = 0; !is_smooth && i < file->n_points; i++)
    add_point (section, file->points[2 * i], file->points[2 * i + 1]);
  for (gsize i = GW_OUTLINE_N; is_smooth && i > 0; i--)
    add_point (section, rounded (gw_outline_x (i - 1)), rounded (file->smooth.upper[i - 1]));
  for (gsize i = 1; is_smooth && i < GW_OUTLINE_N; i++)
    add_point (section, rounded (gw_outline_x (i)), rounded (file->smooth.lower[i]));

  mark (&section->record, "points");
}

/* "My Wing 12%" becomes "my-wing-12". */
static char *
make_id (const char *name)
{
  g_autofree char *low = g_ascii_strdown (name, -1);
  GString         *id = g_string_new (NULL);

  for (const char *at = low; *at != '\0'; at++)
    if (g_ascii_isalnum (*at))
      g_string_append_c (id, *at);
    else if (id->len > 0 && id->str[id->len - 1] != '-')
      g_string_append_c (id, '-');
  if (id->len > 0 && id->str[id->len - 1] == '-')
    g_string_truncate (id, id->len - 1);
  if (id->len == 0)
    g_string_assign (id, "section");

  return g_string_free (id, FALSE);
}

char *
gw_section_file_json (const GwSectionFile *file,
                      gboolean             is_smooth)
{
  GwRecord        *record = gw_record_new (gw_study_section_type ());
  GwStudySection  *section = (GwStudySection *) record;
  g_autofree char *change = gw_section_file_change (file);
  GString         *text = g_string_new (NULL);

  section->name = g_strdup (file->name);
  section->id = make_id (file->name);
  section->shape = GW_SHAPE_POINTS;
  section->source = is_smooth ? g_strdup_printf (_ ("Outline: from a file, smoothed. %s"), change)
                              : g_strdup (_ ("Outline: from a file."));
  mark (record, "name");
  mark (record, "id");
  mark (record, "shape");
  mark (record, "source");
  add_points (section, file, is_smooth);
  gw_record_write (record, text, 0);
  g_string_append_c (text, '\n');
  gw_record_free (record);
  return g_string_free (text, FALSE);
}

JsonNode *
gw_section_file_record (const GwSectionFile *file,
                        gboolean             is_smooth)
{
  g_autofree char *text = gw_section_file_json (file, is_smooth);
  JsonObject      *object = gw_json_parse (text, strlen (text), NULL);
  JsonNode        *node;

  g_return_val_if_fail (object != NULL, NULL);
  node = json_node_init_object (json_node_alloc (), object);
  json_object_unref (object);
  return node;
}

void
gw_section_file_free (GwSectionFile *file)
{
  g_free (file->name);
  g_free (file->points);
  g_free (file);
}

GwSectionFile *
gw_section_file_read (const char *text,
                      gsize       length,
                      const char *name,
                      GError    **error)
{
  g_auto (Reading) reading = { .pairs = g_array_new (FALSE, FALSE, sizeof (Pair)) };
  /* Names are in all kinds of encodings; the numbers are not. */
  g_autofree char *valid = g_utf8_make_valid (text, (gssize) length);
  const char      *start = g_str_has_prefix (valid, "\xef\xbb\xbf") ? valid + 3 : valid;
  g_autoptr (GwSectionFile) file = g_new0 (GwSectionFile, 1);

  g_return_val_if_fail (name != NULL, NULL);

  if (!read_lines (&reading, start, error) || !take_numbers (&reading, error) ||
      !read_outline (&reading, file, error))
    return NULL;

  file->name = g_strdup (reading.name != NULL ? reading.name : name);
  if (gw_outline_smooth (&file->outline, GW_SMOOTH_WAVES, &file->smooth, &file->change) != GW_OK)
    file->smooth = file->outline;
  return g_steal_pointer (&file);
}

JsonNode *
gw_section_file_parse (const char *text,
                       gsize       length,
                       const char *name,
                       GError    **error)
{
  g_autoptr (GwSectionFile) file = gw_section_file_read (text, length, name, error);

  return file != NULL ? gw_section_file_record (file, FALSE) : NULL;
}

GwSectionFile *
gw_section_file_open (GFile   *file,
                      GError **error)
{
  gsize            length = 0;
  g_autofree char *text = NULL, *name = g_file_get_basename (file);
  char            *ending = strrchr (name, '.');

  if (!gw_read_file (file, MOST_BYTES, &text, &length, error))
    return NULL;

  if (ending != NULL && ending != name)
    *ending = '\0';
  return gw_section_file_read (text, length, name, error);
}

JsonNode *
gw_section_file_load (GFile   *file,
                      GError **error)
{
  g_autoptr (GwSectionFile) read = gw_section_file_open (file, error);

  return read != NULL ? gw_section_file_record (read, FALSE) : NULL;
}
