/* gw-template.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#define G_LOG_DOMAIN "gw-template"

#include "study/gw-template.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-edit-option.h"
#include "study/gw-evaluation.h"
#include "study/gw-json.h"
#include "study/gw-shipped.h"
#include "study/gw-template-private.h"

#define FOLDER      "templates"
#define MOST_ROUNDS 6   /* of moving the battery; two or three do */
#define SLACK       1e-6 /* relative: a bound typed as it is shown is within it */
#define AREA(s, c)  ((s) * (c))

/* Mean chord of a wing: its area, twice that of one side, over its span [mm]. */
static double
mean_chord (const GwStudySurface *wing,
            double               *span)
{
  double area = 0.0, half = 0.0;

  for (guint i = 1; i < wing->stations->len; i++)
    {
      const GwStudyStation *inner = g_ptr_array_index (wing->stations, i - 1);
      const GwStudyStation *outer = g_ptr_array_index (wing->stations, i);

      half = outer->y_mm.value;
      area += 0.5 * (inner->chord_mm.value + outer->chord_mm.value) * (half - inner->y_mm.value);
    }

  *span = 2.0 * half;
  return area / half;
}

/* The files ship inside the program and a test reads them all, so a fault here is a
 * programmer's and stops it. */
static GwStudy *
read_study (const char *id)
{
  g_autofree char *name = g_strconcat (id, ".gramwright", NULL);
  g_autoptr (GBytes) bytes = gw_shipped_data (FOLDER, name);
  g_autoptr (GError) error = NULL;
  GwStudy *study =
    gw_study_parse (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), NULL, &error);

  if (study == NULL)
    g_error ("%s: %s", name, error->message);
  return study;
}

static GwTemplateRange
read_range (JsonObject *object,
            const char *key,
            double      factor,
            double      usual)
{
  JsonArray *ends = json_object_get_array_member (object, key);

  return (GwTemplateRange){
    .least = factor * json_array_get_double_element (ends, 0),
    .usual = usual,
    .most = factor * json_array_get_double_element (ends, 1),
  };
}

static GwTemplate *
read_template (JsonObject *object)
{
  GwTemplate *shape = g_new0 (GwTemplate, 1);
  double      span, chord;

  shape->id = g_strdup (json_object_get_string_member (object, "id"));
  shape->name = g_strdup (json_object_get_string_member (object, "name"));
  shape->about = g_strdup (json_object_get_string_member (object, "about"));
  shape->study = read_study (shape->id);
  chord = mean_chord (_gw_template_wing (shape->study), &span) / 1000.0;
  span /= 1000.0;
  shape->span = read_range (object, "span_mm", 1e-3, span);
  shape->aspect_ratio = read_range (object, "aspect_ratio", 1.0, span / chord);
  shape->loading =
    read_range (object, "loading_kg_m3", 1.0,
                shape->study->targets->mass_g.value / 1000.0 / pow (AREA (span, chord), 1.5));
  return shape;
}

static GPtrArray *
read_templates (void)
{
  g_autoptr (GBytes) bytes = gw_shipped_data (FOLDER, "shapes.json");
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonObject) object =
    gw_json_parse (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &error);
  GPtrArray *shapes = g_ptr_array_new ();
  JsonArray *array;

  if (object == NULL)
    g_error ("shapes.json: %s", error->message);

  array = json_object_get_array_member (object, "shapes");
  for (guint i = 0; i < json_array_get_length (array); i++)
    g_ptr_array_add (shapes, read_template (json_array_get_object_element (array, i)));
  return shapes;
}

const GPtrArray *
gw_templates (void)
{
  static GPtrArray *shapes;

  if (g_once_init_enter (&shapes))
    g_once_init_leave (&shapes, read_templates ());
  return shapes;
}

const GwTemplate *
gw_template_find (const char *id)
{
  const GPtrArray *shapes = gw_templates ();

  for (guint i = 0; i < shapes->len; i++)
    {
      const GwTemplate *shape = g_ptr_array_index (shapes, i);

      if (g_strcmp0 (shape->id, id) == 0)
        return shape;
    }

  return NULL;
}

GwTemplateRange
gw_template_chords (const GwTemplate *shape,
                    double            span)
{
  const GwTemplateRange *ratio = &shape->aspect_ratio;

  return (GwTemplateRange){ span / ratio->most, span / ratio->usual, span / ratio->least };
}

GwTemplateRange
gw_template_masses (const GwTemplate *shape,
                    double            span,
                    double            chord)
{
  const double           size = pow (AREA (span, chord), 1.5);
  const GwTemplateRange *loading = &shape->loading;

  return (GwTemplateRange){ size * loading->least, size * loading->usual, size * loading->most };
}

static gboolean
is_within (const GwTemplateRange *range,
           double                 value)
{
  return value >= range->least * (1.0 - SLACK) && value <= range->most * (1.0 + SLACK);
}

static gboolean
check_size (const GwTemplate *shape,
            double            span,
            double            chord,
            double            mass,
            GError          **error)
{
  const GwTemplateRange chords = gw_template_chords (shape, span);
  const GwTemplateRange masses = gw_template_masses (shape, span, chord);
  const char           *reason = NULL;

  if (!is_within (&shape->span, span))
    reason = _ ("the span is beyond what this shape is good for");
  else if (!is_within (&chords, chord))
    reason = _ ("the chord is beyond what this shape is good for at that span");
  else if (!is_within (&masses, mass))
    reason = _ ("the mass is beyond what this shape is good for at that size");

  if (reason != NULL)
    g_set_error (error, GW_STUDY_ERROR, GW_STUDY_ERROR_CONTENT, "%s: %s", shape->name, reason);
  return reason == NULL;
}

/* Forward to the whole millimetre, so that the least static margin is kept. */
static GwStudy *
move_item (const GwStudy *study,
           guint          option,
           double         place,
           GError       **error)
{
  g_autofree char *path = g_strdup_printf ("equipment/%s/x_mm", study->movable);
  g_autoptr (JsonNode) value = json_node_new (JSON_NODE_VALUE);

  json_node_set_double (value, place);
  return option == gw_study_baseline (study)
           ? gw_study_edit (study, path, value, error)
           : gw_edit_for_option (study, option, path, value, error);
}

/* Where the item has to go in that option [mm]; FALSE if it is there. */
static gboolean
find_place (const GwOutcome *outcome,
            double          *place)
{
  const GwAircraft *aircraft = &outcome->assembly->aircraft;
  const double     *value = outcome->results.value;
  const GwItem     *item;
  double            was;

  if (aircraft->movable < 0 || !isfinite (value[GW_RESULT_SLIDE]))
    return FALSE;

  item = &aircraft->items[aircraft->movable];
  was = 1000.0 * item->at[0];
  *place = floor (was + 1000.0 * value[GW_RESULT_SLIDE]);
  *place = CLAMP (*place, 1000.0 * item->bay_from, 1000.0 * item->bay_to);
  return fabs (*place - was) > 1e-6;
}

/* The neutral point is that of the stall speed, which follows the balance point: again
 * until nothing moves. */
static GwStudy *
balance (GwStudy *study,
         GError **error)
{
  g_autoptr (GwStudy) balanced = study;

  for (guint round = 0; round < MOST_ROUNDS; round++)
    {
      g_autoptr (GwEvaluation) evaluation = gw_evaluation_quick (balanced, NULL, error);
      gboolean has_moved = FALSE;

      if (evaluation == NULL)
        return NULL;

      for (guint i = 0; i < evaluation->outcomes->len; i++)
        {
          double   place;
          GwStudy *moved;

          if (!find_place (gw_evaluation_outcome (evaluation, i), &place))
            continue;
          moved = move_item (balanced, i, place, error);
          if (moved == NULL)
            return NULL;
          gw_study_unref (balanced);
          balanced = moved;
          has_moved = TRUE;
        }
      if (!has_moved)
        break;
    }

  return g_steal_pointer (&balanced);
}

GwStudy *
gw_template_make (const GwTemplate *shape,
                  double            span,
                  double            chord,
                  double            mass,
                  GError          **error)
{
  const GwTemplateRange chords = gw_template_chords (shape, shape->span.usual);
  GwStudy              *study;

  if (!check_size (shape, span, chord, mass, error))
    return NULL;

  study = _gw_template_scale (shape->study, span / shape->span.usual, chord / chords.usual,
                              1000.0 * mass / shape->study->targets->mass_g.value);
  return balance (study, error);
}
