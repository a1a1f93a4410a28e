/* gw-results-json.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <math.h>

#include "report/gw-results-text.h"
#include "study/gw-json.h"
#include "study/gw-result.h"

static void
add_number (JsonBuilder *builder,
            const char  *key,
            double       value)
{
  json_builder_set_member_name (builder, key);
  if (isfinite (value))
    json_builder_add_double_value (builder, value);
  else
    json_builder_add_null_value (builder);
}

static void
add_text (JsonBuilder *builder,
          const char  *key,
          const char  *text)
{
  json_builder_set_member_name (builder, key);
  json_builder_add_string_value (builder, text);
}

/* { "value": 1, "low": 0.9, "high": 1.2 }; low and high where there is a band. */
static void
add_banded (JsonBuilder  *builder,
            const char   *key,
            double        value,
            double        factor,
            double        offset,
            const GwBand *band)
{
  json_builder_set_member_name (builder, key);
  json_builder_begin_object (builder);
  add_number (builder, "value", (value - offset) / factor);
  if (isfinite (value) && band->high > band->low)
    {
      add_number (builder, "low", (value + band->low - offset) / factor);
      add_number (builder, "high", (value + band->high - offset) / factor);
    }
  json_builder_end_object (builder);
}

static void
add_results (JsonBuilder     *builder,
             const char      *key,
             const GwOutcome *outcome,
             gboolean         is_change)
{
  json_builder_set_member_name (builder, key);
  json_builder_begin_object (builder);
  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      const GwResultId id = (GwResultId) i;
      const GwUnit    *unit = gw_quantity_unit (gw_result_info (id)->quantity);
      g_autofree char *name = gw_result_key (id);

      if (is_change)
        add_banded (builder, name, outcome->change[i], unit->factor, 0.0, &outcome->change_band[i]);
      else
        add_banded (builder, name, outcome->results.value[i], unit->factor, unit->offset,
                    &outcome->band[i]);
    }
  json_builder_end_object (builder);
}

static const char *
owner_name (const GwAircraft *aircraft,
            const GwPiece    *piece)
{
  switch (piece->group)
    {
    case GW_GROUP_SURFACE:
      return aircraft->surfaces[piece->owner].name;
    case GW_GROUP_BODY:
      return aircraft->bodies[piece->owner].name;
    case GW_GROUP_LEG:
      return aircraft->legs[piece->owner].name;
    case GW_GROUP_STRUT:
      return aircraft->struts[piece->owner].name;
    case GW_GROUP_POWER:
      return aircraft->powers[piece->owner].name;
    case GW_GROUP_ITEM:
      return aircraft->items[piece->owner].name;
    case GW_N_GROUPS:
    default:
      g_return_val_if_reached ("");
    }
}

static void
add_piece (JsonBuilder      *builder,
           const GwAircraft *aircraft,
           const GwPiece    *piece)
{
  double centre[3];

  gw_moments_centre (&piece->mass, centre);
  json_builder_begin_object (builder);
  add_text (builder, "of", owner_name (aircraft, piece));
  add_text (builder, "kind", gw_piece_kind_key (piece->kind));
  if (piece->panel >= 0)
    add_number (builder, "panel", piece->panel + 1);
  add_text (builder, "side", piece->side < 0 ? "port" : "starboard-or-centre");
  add_number (builder, "count", piece->count);
  add_number (builder, "mass_g", piece->mass.total * 1e3);
  add_number (builder, "x_mm", centre[0] * 1e3);
  add_number (builder, "y_mm", centre[1] * 1e3);
  add_number (builder, "z_mm", centre[2] * 1e3);
  json_builder_set_member_name (builder, "weighed");
  json_builder_add_boolean_value (builder, piece->is_weighed);
  json_builder_end_object (builder);
}

static void
add_pieces (JsonBuilder     *builder,
            const GwOutcome *outcome)
{
  json_builder_set_member_name (builder, "pieces");
  json_builder_begin_array (builder);
  for (size_t i = 0; i < outcome->results.pieces.n; i++)
    add_piece (builder, &outcome->assembly->aircraft, &outcome->results.pieces.v[i]);
  json_builder_end_array (builder);
}

static void
add_notes (JsonBuilder     *builder,
           const GwOutcome *outcome)
{
  json_builder_set_member_name (builder, "notes");
  json_builder_begin_array (builder);
  for (guint bit = 0; bit < 32; bit++)
    if (outcome->results.notes & (1u << bit))
      json_builder_add_string_value (builder, gw_note_key ((GwNote) (1u << bit)));
  json_builder_end_array (builder);
}

static void
add_curve (JsonBuilder        *builder,
           const GwEvaluation *evaluation,
           const GwOutcome    *outcome)
{
  json_builder_set_member_name (builder, "stall_curve");
  json_builder_begin_array (builder);
  for (guint i = 0; i < GW_CURVE_N; i++)
    {
      json_builder_begin_object (builder);
      add_number (builder, "mass_g", evaluation->curve_mass[i] * 1e3);
      add_banded (builder, "stall_speed_m_s", outcome->results.curve[i], 1.0, 0.0,
                  &outcome->curve_band[i]);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

/* What the band is made of: the mass and stall speed at the ends of each input. */
static void
add_inputs (JsonBuilder     *builder,
            const GwOutcome *outcome)
{
  json_builder_set_member_name (builder, "uncertain_inputs");
  json_builder_begin_array (builder);
  for (guint i = 0; i < outcome->effects->len; i++)
    {
      const GwEffect *effect = g_ptr_array_index (outcome->effects, i);

      json_builder_begin_object (builder);
      add_text (builder, "input", effect->key);
      add_number (builder, "mass_low_g", effect->down[GW_RESULT_MASS] * 1e3);
      add_number (builder, "mass_high_g", effect->up[GW_RESULT_MASS] * 1e3);
      add_number (builder, "stall_speed_low_m_s", effect->down[GW_RESULT_STALL_SPEED]);
      add_number (builder, "stall_speed_high_m_s", effect->up[GW_RESULT_STALL_SPEED]);
      json_builder_end_object (builder);
    }
  json_builder_end_array (builder);
}

static void
add_option (JsonBuilder        *builder,
            const GwEvaluation *evaluation,
            const GwOutcome    *outcome)
{
  json_builder_begin_object (builder);
  add_text (builder, "id", outcome->id);
  add_text (builder, "name", outcome->name);
  add_results (builder, "results", outcome, FALSE);
  add_results (builder, "against_baseline", outcome, TRUE);
  add_notes (builder, outcome);
  add_curve (builder, evaluation, outcome);
  add_inputs (builder, outcome);
  add_pieces (builder, outcome);
  json_builder_end_object (builder);
}

char *
gw_results_json (const GwEvaluation *evaluation)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autoptr (JsonNode) root = NULL;
  GString *out = g_string_new (NULL);

  json_builder_begin_object (builder);
  add_text (builder, "study", evaluation->study->name != NULL ? evaluation->study->name : "");
  add_text (builder, "baseline", gw_evaluation_outcome (evaluation, evaluation->baseline)->id);
  add_text (builder, "band", "low and high are the 10th and 90th percentile");
  json_builder_set_member_name (builder, "options");
  json_builder_begin_array (builder);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    add_option (builder, evaluation, gw_evaluation_outcome (evaluation, i));
  json_builder_end_array (builder);
  json_builder_end_object (builder);

  root = json_builder_get_root (builder);
  gw_json_print (out, root, 0);
  g_string_append_c (out, '\n');
  return g_string_free (out, FALSE);
}
