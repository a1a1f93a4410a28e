/* gw-section-file.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-section-file.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-assemble-private.h"
#include "study/gw-catalogue.h"
#include "study/gw-error.h"
#include "study/gw-json.h"
#include "study/gw-record-json.h"

#define MOST_BYTES    (1024 * 1024)
#define MOST_POINTS   5000
#define FARTHEST      1000.0 /* as the field of a point has it */
#define FEWEST_POINTS 9      /* gw_outline_points() */

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

/* How many numbers the line is made of; 0 if anything else stands in it. */
static guint
read_numbers (const char *line,
              double     *x,
              double     *y)
{
  g_autofree char *plain = with_plain_numbers (line);
  char            *at = g_strchug (plain);
  guint            n = 0;

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

      if (*line != '\0' && *line != '#' && !read_line (reading, i + 1, line, error))
        return FALSE;
    }

  return TRUE;
}

/* The first @n of them. */
static void
turn_round (Reading *reading,
            guint    n)
{
  for (guint i = 0, j = n - 1; i < j; i++, j--)
    {
      const Pair kept = *pair_at (reading, i);

      *pair_at (reading, i) = *pair_at (reading, j);
      *pair_at (reading, j) = kept;
    }
}

static gboolean
is_number_of_points (double value)
{
  return value >= 2.0 && value <= MOST_POINTS && value == floor (value);
}

/* With the numbers of points known, the top is turned round, so that the outline runs from
 * the tail over the nose; without them the engine sees by itself where the sides part. */
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
  turn_round (reading, (guint) first.x);
  return TRUE;
}

static GwStatus
outline_of (const Reading *reading,
            GwOutline     *outline)
{
  const guint        n = reading->pairs->len;
  g_autofree double *xy = g_new (double, 2 * n);

  for (guint i = 0; i < n; i++)
    {
      xy[2 * i] = pair_at (reading, i)->x;
      xy[2 * i + 1] = pair_at (reading, i)->y;
    }

  return gw_outline_points (n, xy, outline);
}

/* Some go along the bottom first. */
static gboolean
read_outline (Reading   *reading,
              GwOutline *outline,
              GError   **error)
{
  if (reading->pairs->len < FEWEST_POINTS)
    {
      g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                   _ ("it holds %u points of an outline; %d or more are needed"),
                   reading->pairs->len, FEWEST_POINTS);
      return FALSE;
    }

  if (outline_of (reading, outline) == GW_OK)
    return TRUE;

  turn_round (reading, reading->pairs->len);
  if (outline_of (reading, outline) == GW_OK)
    return TRUE;

  g_set_error_literal (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                       _ ("the points must run round the outline once and not cross"));
  return FALSE;
}

/* Camber counts double: greatest lift follows it more closely than it follows thickness
 * (common practice, no source). */
static const GwStudySection *
nearest_section (const GwOutline *outline)
{
  const GPtrArray      *sections = gw_catalogue_list ("sections");
  const GwStudySection *nearest = NULL;
  double                least = INFINITY;
  GwOutlineShape        wanted;

  gw_outline_shape (outline, &wanted);
  for (guint i = 0; i < sections->len; i++)
    {
      const GwStudySection *section = g_ptr_array_index (sections, i);
      GwOutline             candidate;
      GwOutlineShape        shape;
      double                distance;

      if (_gw_assemble_outline (section, &candidate) != GW_OK)
        continue;
      gw_outline_shape (&candidate, &shape);
      distance =
        hypot (shape.thickness - wanted.thickness, 2.0 * (shape.camber - wanted.camber));
      if (distance < least)
        {
          least = distance;
          nearest = section;
        }
    }

  return nearest;
}

static void
mark (GwRecord   *record,
      const char *key)
{
  gw_record_set_present (record, gw_record_type_field (record->type, key), TRUE);
}

static void
add_points (GwStudySection *section,
            const Reading  *reading)
{
  section->shape = GW_SHAPE_POINTS;
  mark (&section->record, "shape");
  for (guint i = 0; i < reading->pairs->len; i++)
    {
      GwRecord     *record = gw_record_new (gw_study_point_type ());
      GwStudyPoint *point = (GwStudyPoint *) record;

      gw_number_set (&point->x, pair_at (reading, i)->x);
      gw_number_set (&point->y, pair_at (reading, i)->y);
      mark (record, "x");
      mark (record, "y");
      g_ptr_array_add (section->points, record);
    }
  mark (&section->record, "points");
}

/* Greatest lift by Reynolds number alone: slope, angle and moment follow from the mean line.
 * What is known of the neighbour is known half as well of this section. */
static void
add_rows (GwStudySection       *section,
          const GwStudySection *from)
{
  for (guint i = 0; i < from->rows->len; i++)
    {
      const GwStudySectionRow *row = g_ptr_array_index (from->rows, i);
      GwRecord                *record = gw_record_new (gw_study_section_row_type ());
      GwStudySectionRow       *copy = (GwStudySectionRow *) record;

      gw_number_set (&copy->re, row->re.value);
      gw_number_set (&copy->cl_max, row->cl_max.value);
      mark (record, "re");
      mark (record, "cl_max");
      g_ptr_array_add (section->rows, record);
    }
  mark (&section->record, "rows");

  gw_number_set_range (&section->cl_max_factor, MAX (0.5, 2.0 * from->cl_max_factor.low - 1.0),
                       1.0, MIN (1.5, 2.0 * from->cl_max_factor.high - 1.0));
  section->cl_max_factor.origin = GW_ORIGIN_GUESSED;
  mark (&section->record, "cl_max_factor");
  section->source = g_strdup_printf (
    _ ("Outline: from a file. Greatest lift: guessed, that of %s, whose thickness and camber are "
       "nearest in the catalogue, with twice its spread. Slope, angle and moment: thin-aerofoil "
       "theory."),
    from->name);
  mark (&section->record, "source");
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

static JsonNode *
make_record (const Reading   *reading,
             const GwOutline *outline,
             const char      *name)
{
  GwRecord       *record = gw_record_new (gw_study_section_type ());
  GwStudySection *section = (GwStudySection *) record;
  g_autoptr (GString) text = g_string_new (NULL);
  JsonObject *object;
  JsonNode   *node;

  section->name = g_strdup (name);
  section->id = make_id (name);
  mark (record, "name");
  mark (record, "id");
  add_points (section, reading);
  add_rows (section, nearest_section (outline));
  gw_record_write (record, text, 0);
  gw_record_free (record);

  object = gw_json_parse (text->str, text->len, NULL);
  g_return_val_if_fail (object != NULL, NULL);
  node = json_node_init_object (json_node_alloc (), object);
  json_object_unref (object);
  return node;
}

JsonNode *
gw_section_file_parse (const char *text,
                       gsize       length,
                       const char *name,
                       GError    **error)
{
  g_auto (Reading) reading = { .pairs = g_array_new (FALSE, FALSE, sizeof (Pair)) };
  /* Names are in all kinds of encodings; the numbers are not. */
  g_autofree char *valid = g_utf8_make_valid (text, (gssize) length);
  const char      *start = g_str_has_prefix (valid, "\xef\xbb\xbf") ? valid + 3 : valid;
  GwOutline        outline;

  g_return_val_if_fail (name != NULL, NULL);

  if (!read_lines (&reading, start, error) || !take_numbers (&reading, error) ||
      !read_outline (&reading, &outline, error))
    return NULL;

  return make_record (&reading, &outline, reading.name != NULL ? reading.name : name);
}

/* No more than a file of coordinates can have: somebody may drop a film. */
static char *
read_text (GFile   *file,
           gsize   *length,
           GError **error)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, error);
  g_autofree char *text = NULL;

  if (stream == NULL)
    return NULL;

  text = g_malloc (MOST_BYTES + 1);
  if (!g_input_stream_read_all (G_INPUT_STREAM (stream), text, MOST_BYTES + 1, length, NULL,
                                error))
    return NULL;
  if (*length > MOST_BYTES)
    {
      g_set_error_literal (error, GW_STUDY_ERROR, GW_STUDY_ERROR_SYNTAX,
                           _ ("it is too large for a file of coordinates"));
      return NULL;
    }

  return g_steal_pointer (&text);
}

JsonNode *
gw_section_file_load (GFile   *file,
                      GError **error)
{
  gsize            length = 0;
  g_autofree char *text = read_text (file, &length, error);
  g_autofree char *name = g_file_get_basename (file);
  char            *ending = strrchr (name, '.');

  if (text == NULL)
    return NULL;

  if (ending != NULL && ending != name)
    *ending = '\0';
  return gw_section_file_parse (text, length, name, error);
}
