/* gw-polars-file.c - polars as text, in the program and in the cache
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-polars-private.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "study/gw-json.h"

#define FORMAT  2
#define NUMBERS 12 /* of a row */
#define DEG     (G_PI / 180.0)

/* To a millionth of the chord, so that the last bits of different machines do not matter. */
static void
add_numbers (GString      *text,
             const double *numbers,
             guint         n)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  for (guint i = 0; i < n; i++)
    {
      const double millionths = round (numbers[i] * 1e6);

      g_ascii_formatd (buffer, sizeof buffer, "%.0f", millionths == 0.0 ? 0.0 : millionths);
      g_string_append_printf (text, "%s ", buffer);
    }
}

/* Name of all that the polars depend on. */
static char *
digest (const GwPolarSubject *subject)
{
  const GwTrip      *trip = &subject->trip;
  const GwPanelFlap *flap = &subject->flap;
  const double       rest[] = { trip->x, trip->height, trip->critical,
                                flap->hinge, flap->height, flap->deflection,
                                subject->is_flap_open };
  g_autoptr (GString) text = g_string_new (NULL);

  g_string_printf (text, "%d %d ", FORMAT, GW_POLAR_VERSION);
  add_numbers (text, subject->outline.upper, GW_OUTLINE_N);
  add_numbers (text, subject->outline.lower, GW_OUTLINE_N);
  add_numbers (text, rest, G_N_ELEMENTS (rest));
  add_numbers (text, gw_polars_re, GW_POLARS_N);
  return g_compute_checksum_for_string (G_CHECKSUM_SHA256, text->str, (gssize) text->len);
}

/* Five digits: more than the solver is good for, and short. */
static void
print_number (GString *out,
              double   value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append (out, g_ascii_formatd (buffer, sizeof buffer, "%.5g", value));
}

static void
row_to_numbers (const GwPolarRow *row,
                double            numbers[NUMBERS])
{
  const GwCoupledSums *sums = &row->sums;
  const double         all[NUMBERS] = { row->alpha / DEG, sums->cl,
                                        sums->cd, sums->cm,
                                        sums->x_turn[0], sums->x_turn[1],
                                        sums->x_separation[0], sums->x_separation[1],
                                        sums->x_attachment[0], sums->x_attachment[1],
                                        row->is_bridged, sums->pressure_rise };

  memcpy (numbers, all, sizeof all);
}

static void
numbers_to_row (const double numbers[NUMBERS],
                GwPolarRow  *row)
{
  *row = (GwPolarRow){
    .alpha = numbers[0] * DEG,
    .sums = {
      .cl = numbers[1],
      .cd = numbers[2],
      .cm = numbers[3],
      .x_turn = { numbers[4], numbers[5] },
      .x_separation = { numbers[6], numbers[7] },
      .x_attachment = { numbers[8], numbers[9] },
      .pressure_rise = numbers[11],
    },
    .is_bridged = numbers[10] != 0.0,
  };
}

static void
print_polar (GString       *out,
             double         re,
             GwStatus       status,
             const GwPolar *polar)
{
  g_string_append (out, "    { \"re\": ");
  print_number (out, re);
  g_string_append_printf (out,
                          ", \"status\": %d, \"fault\": %d, \"tried\": %" G_GSIZE_FORMAT
                          ", \"converged\": %" G_GSIZE_FORMAT ", \"wide\": %s,\n"
                          "      \"two_valued_deg\": ",
                          (int) status, (int) polar->fault, polar->tried, polar->converged,
                          polar->is_wide ? "true" : "false");
  if (polar->is_two_valued)
    {
      g_string_append (out, "[");
      print_number (out, polar->two_valued_from / DEG);
      g_string_append (out, ", ");
      print_number (out, polar->two_valued_to / DEG);
      g_string_append (out, "]");
    }
  else
    g_string_append (out, "null");

  g_string_append (out, ", \"rows\": [");
  for (gsize i = 0; i < polar->n; i++)
    {
      double numbers[NUMBERS];

      row_to_numbers (&polar->rows[i], numbers);
      g_string_append (out, i > 0 ? ",\n        [" : "\n        [");
      for (guint k = 0; k < NUMBERS; k++)
        {
          g_string_append (out, k > 0 ? ", " : "");
          print_number (out, numbers[k]);
        }
      g_string_append (out, "]");
    }
  g_string_append (out, "] }");
}

char *
gw_polars_text (const GwPolarSubject *subject,
                const GwPolars       *polars)
{
  g_autofree char *name = digest (subject);
  GString         *out = g_string_new (NULL);

  g_string_printf (out, "{\n  \"format\": %d,\n  \"solver\": %d,\n  \"subject\": \"%s\",\n",
                   FORMAT, GW_POLAR_VERSION, name);
  g_string_append (out, "  \"columns\": \"incidence in degrees, lift, drag, moment, transition "
                        "above and below, separation above and below, attachment above and "
                        "below, bridged, rise of pressure\",\n  \"polars\": [\n");
  for (guint k = 0; k < GW_POLARS_N; k++)
    {
      print_polar (out, gw_polars_re[k], polars->status[k], &polars->polar[k]);
      g_string_append (out, k + 1 < GW_POLARS_N ? ",\n" : "\n");
    }
  g_string_append (out, "  ]\n}\n");
  return g_string_free (out, FALSE);
}

static gboolean
is_number (JsonNode *node)
{
  const GType type = json_node_get_value_type (node);

  return (type == G_TYPE_DOUBLE || type == G_TYPE_INT64) && isfinite (json_node_get_double (node));
}

/* FALSE unless they are @n numbers. */
static gboolean
take_numbers (JsonArray *array,
              guint      n,
              double    *numbers)
{
  if (array == NULL || json_array_get_length (array) != n)
    return FALSE;

  for (guint i = 0; i < n; i++)
    {
      JsonNode *node = json_array_get_element (array, i);

      if (!is_number (node))
        return FALSE;
      numbers[i] = json_node_get_double (node);
    }

  return TRUE;
}

static JsonArray *
member_array (JsonObject *object,
              const char *name)
{
  JsonNode *node = json_object_get_member (object, name);

  return node != NULL && JSON_NODE_HOLDS_ARRAY (node) ? json_node_get_array (node) : NULL;
}

static gboolean
parse_rows (JsonArray *rows,
            GwPolar   *polar)
{
  if (rows == NULL || json_array_get_length (rows) > GW_POLAR_MAX)
    return FALSE;

  polar->n = json_array_get_length (rows);
  for (guint i = 0; i < polar->n; i++)
    {
      JsonNode *node = json_array_get_element (rows, i);
      double    numbers[NUMBERS];

      if (!JSON_NODE_HOLDS_ARRAY (node) ||
          !take_numbers (json_node_get_array (node), NUMBERS, numbers))
        return FALSE;
      numbers_to_row (numbers, &polar->rows[i]);
      if (i > 0 && polar->rows[i].alpha < polar->rows[i - 1].alpha)
        return FALSE;
    }

  if (polar->n > 0)
    gw_polar_summarise (polar);
  return TRUE;
}

static gboolean
parse_polar (JsonObject *object,
             GwPolars   *polars,
             guint       k)
{
  GwPolar *polar = &polars->polar[k];
  double   range[2];

  polars->status[k] =
    (GwStatus) json_object_get_int_member_with_default (object, "status", GW_EINVAL);
  polar->fault = (GwPolarFault) json_object_get_int_member_with_default (object, "fault", 0);
  polar->tried = (gsize) json_object_get_int_member_with_default (object, "tried", 0);
  polar->converged = (gsize) json_object_get_int_member_with_default (object, "converged", 0);
  polar->is_wide = json_object_get_boolean_member_with_default (object, "wide", FALSE);
  polar->is_complete = true;
  polar->is_two_valued = take_numbers (member_array (object, "two_valued_deg"), 2, range);
  if (polar->is_two_valued)
    {
      polar->two_valued_from = range[0] * DEG;
      polar->two_valued_to = range[1] * DEG;
    }

  return parse_rows (member_array (object, "rows"), polar) &&
         (polars->status[k] != GW_OK || polar->n > 0);
}

GwPolars *
gw_polars_parse (const GwPolarSubject *subject,
                 const char           *text,
                 gsize                 length)
{
  g_autoptr (JsonObject) object = gw_json_parse (text, length, NULL);
  g_autoptr (GwPolars) polars = _gw_polars_alloc ();
  g_autofree char *name = digest (subject);
  JsonArray       *list;

  if (object == NULL ||
      g_strcmp0 (json_object_get_string_member_with_default (object, "subject", NULL), name) != 0)
    return NULL;

  list = member_array (object, "polars");
  if (list == NULL || json_array_get_length (list) != GW_POLARS_N)
    return NULL;

  for (guint k = 0; k < GW_POLARS_N; k++)
    {
      JsonNode *node = json_array_get_element (list, k);

      if (!JSON_NODE_HOLDS_OBJECT (node) ||
          !parse_polar (json_node_get_object (node), polars, k))
        return NULL;
    }

  return g_steal_pointer (&polars);
}

static GwPolars *
read_shipped (const GwPolarSubject *subject)
{
  g_autofree char *path = NULL;
  g_autoptr (GBytes) bytes = NULL;
  gsize       length;
  const char *text;

  if (subject->section == NULL || subject->trip.height > 0.0 || subject->flap.hinge > 0.0)
    return NULL;

  path = g_strdup_printf ("/org/gramwright/polars/%s.json", subject->section);
  bytes = g_resources_lookup_data (path, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
  if (bytes == NULL)
    return NULL;

  text = g_bytes_get_data (bytes, &length);
  return gw_polars_parse (subject, text, length);
}

static char *
cache_folder (void)
{
  return g_build_filename (g_get_user_cache_dir (), "gramwright", "polars", NULL);
}

static char *
cache_file (const GwPolarSubject *subject)
{
  g_autofree char *folder = cache_folder ();
  g_autofree char *name = digest (subject);
  g_autofree char *file = g_strdup_printf ("%d-%s.json", GW_POLAR_VERSION, name);

  return g_build_filename (folder, file, NULL);
}

GwPolars *
_gw_polars_read (const GwPolarSubject *subject)
{
  GwPolars        *polars = read_shipped (subject);
  g_autofree char *path = NULL, *text = NULL;
  gsize            length;

  if (polars != NULL)
    return polars;

  path = cache_file (subject);
  if (!g_file_get_contents (path, &text, &length, NULL))
    return NULL;

  return gw_polars_parse (subject, text, length);
}

/* Files of another solver are of no use to anybody. */
static void
clear_old (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_autofree char *ours = g_strdup_printf ("%d-", GW_POLAR_VERSION);
  const char      *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (!g_str_has_prefix (name, ours) && g_str_has_suffix (name, ".json"))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);

        g_unlink (path);
      }
}

void
_gw_polars_write (const GwPolarSubject *subject,
                  const GwPolars       *polars)
{
  static gsize     is_cleared;
  g_autofree char *folder = cache_folder ();
  g_autofree char *path = cache_file (subject);
  g_autofree char *text = gw_polars_text (subject, polars);

  if (g_mkdir_with_parents (folder, 0755) != 0)
    return;
  if (g_once_init_enter (&is_cleared))
    {
      clear_old (folder);
      g_once_init_leave (&is_cleared, 1);
    }
  g_file_set_contents (path, text, -1, NULL);
}
