/* random-edit.h - edits of a study such as a person or a fault could make
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <math.h>
#include <string.h>

#include "engine/gw-evaluate.h"
#include "study/gw-catalogue.h"
#include "study/gw-study.h"

typedef struct
{
  char          *path;
  const GwField *field;
  double         now; /* of a number */
} EditPlace;

static inline void
edit_place_clear (EditPlace *place)
{
  g_free (place->path);
}

static inline void
edit_gather (const char    *path,
             GwRecord      *record,
             const GwField *field,
             gpointer       data)
{
  const GwNumber *number = gw_record_at (record, field);
  EditPlace       place = { g_strdup (path), field, 0.0 };

  if (field->kind == GW_FIELD_NUMBER)
    place.now = number->value;
  g_array_append_val ((GArray *) data, place);
}

static inline double
edit_number (const EditPlace *place)
{
  const GwField *field = place->field;
  const double   near = place->now * g_test_rand_double_range (0.6, 1.5);
  double         value = g_test_rand_double_range (field->least, field->most);

  switch (g_test_rand_int_range (0, 8))
    {
    case 0:
      value = field->least;
      break;
    case 1:
      value = field->most;
      break;
    case 2:
      break;
    case 3:
      if (field->least > 0.0)
        value = field->least * pow (field->most / field->least, g_test_rand_double ());
      break;
    default:
      if (!isnan (near))
        value = CLAMP (near, field->least, field->most);
    }

  return field->quantity == GW_COUNT ? floor (value) : value;
}

/* A plain number, one with a spread, or a range; the band may reach beyond the bounds. */
static inline JsonNode *
edit_number_node (const EditPlace *place)
{
  const double value = edit_number (place);
  const double wide = (fabs (value) + 1e-3) * g_test_rand_double ();
  const char  *origin = gw_origin_key ((GwOrigin) g_test_rand_int_range (0, GW_N_ORIGINS));
  JsonObject  *object;
  JsonNode    *node;

  if (g_test_rand_int_range (0, 3) > 0)
    return json_node_init_double (json_node_alloc (), value);

  object = json_object_new ();
  if (g_test_rand_bit ())
    {
      json_object_set_double_member (object, "value", value);
      json_object_set_double_member (object, "spread", wide);
    }
  else
    {
      json_object_set_double_member (object, "low", value - wide);
      json_object_set_double_member (object, "typical", value);
      json_object_set_double_member (object, "high", value + 2.0 * wide);
    }
  json_object_set_string_member (object, "origin", origin);
  node = json_node_new (JSON_NODE_OBJECT);
  json_node_take_object (node, object);
  return node;
}

/* An id that is in the list, in the catalogue, or nowhere. */
static inline const char *
edit_id (const GwStudy *study,
         const char    *collection)
{
  const GPtrArray *own = gw_study_list (study, collection);
  const GPtrArray *shelf = gw_catalogue_list (collection);
  const GPtrArray *list = own == NULL || (shelf != NULL && g_test_rand_bit ()) ? shelf : own;

  if (list->len == 0 || g_test_rand_int_range (0, 10) == 0)
    return "nowhere";

  return gw_record_id (g_ptr_array_index (list, g_test_rand_int_range (0, (int) list->len)));
}

static inline JsonNode *
edit_text_node (const char *text)
{
  return json_node_init_string (json_node_alloc (), text);
}

/* A new value of the place's kind, or NULL: left out. */
static inline JsonNode *
edit_node (const GwStudy   *study,
           const EditPlace *place)
{
  static const char *const texts[] = { "", "x", "battery", "wing", "\302\261 \"\\/\n", "0", "a-b" };
  const GwField           *field = place->field;
  JsonNode                *node;
  int                      n = 0;

  if (g_test_rand_int_range (0, 20) == 0)
    return NULL;

  switch (field->kind)
    {
    case GW_FIELD_NUMBER:
      return edit_number_node (place);
    case GW_FIELD_CHOICE:
      while (field->choices[n].key != NULL)
        n++;
      return edit_text_node (field->choices[g_test_rand_int_range (0, n)].key);
    case GW_FIELD_FLAG:
      return json_node_init_boolean (json_node_alloc (), g_test_rand_bit ());
    case GW_FIELD_REF:
      return edit_text_node (edit_id (study, field->collection));
    case GW_FIELD_LIST:
      node = json_node_new (JSON_NODE_ARRAY);
      json_node_take_array (node, json_array_new ());
      return node;
    case GW_FIELD_PART:
    case GW_FIELD_CHANGES:
      node = json_node_new (JSON_NODE_OBJECT);
      json_node_take_object (node, json_object_new ());
      return node;
    case GW_FIELD_ID:
    case GW_FIELD_TEXT:
    default:
      return edit_text_node (texts[g_test_rand_int_range (0, G_N_ELEMENTS (texts))]);
    }
}

/* The study after one edit, or NULL if it was refused, which it was with a reason.
 * (transfer full) */
static inline GwStudy *
edit_randomly (const GwStudy *study,
               char         **path)
{
  g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (EditPlace));
  g_autoptr (JsonNode) node = NULL;
  g_autoptr (GError) error = NULL;
  const EditPlace *place;
  GwStudy         *edited;

  g_array_set_clear_func (places, (GDestroyNotify) edit_place_clear);
  gw_record_each ((GwRecord *) &study->record, "", edit_gather, places);
  place = &g_array_index (places, EditPlace, g_test_rand_int_range (0, (int) places->len));
  node = edit_node (study, place);
  *path = g_strdup (place->path);

  edited = gw_study_edit (study, place->path, node, &error);
  if (edited == NULL)
    {
      g_assert_true (error != NULL && error->domain == GW_STUDY_ERROR);
      g_assert_cmpstr (error->message, !=, "");
    }
  else
    g_assert_no_error (error);

  return edited;
}

/* What a study holds must come back from its file, or an edit could not be saved. */
static inline void
edit_check_round_trip (const GwStudy *study,
                       const char    *after)
{
  g_autofree char *text = gw_study_text (study);
  g_autoptr (GError) error = NULL;
  g_autoptr (GwStudy) back = gw_study_parse (text, strlen (text), NULL, &error);
  g_autofree char *again = NULL;

  if (back == NULL)
    g_error ("after %s: %s", after, error->message);
  if (!gw_record_equal (&back->record, &study->record))
    g_error ("after %s: another study comes back from\n%s", after, text);
  again = gw_study_text (back);
  g_assert_cmpstr (again, ==, text);
}

/* A result is a number or says that there is none; the mass always is one. */
static inline void
edit_check_results (const GwResults *results)
{
  for (guint i = 0; i < GW_N_RESULTS; i++)
    g_assert_false (isinf (results->value[i]));
  for (guint i = 0; i < GW_CURVE_N; i++)
    g_assert_false (isinf (results->curve[i]));

  g_assert_true (isfinite (results->value[GW_RESULT_MASS]));
  g_assert_cmpfloat (results->value[GW_RESULT_MASS], >, 0.0);
  g_assert_cmpuint (results->pieces.n, >, 0);
}
