/* gw-evaluation-bands.c - how sure results and their differences are
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-evaluation-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-resolve.h"
#include "study/gw-result.h"

/* An uncertain input of a resolved study. */
typedef struct
{
  char          *path;
  GwNumber      *number;
  const GwField *field;
  char          *label;
} Input;

static void
input_clear (Input *input)
{
  g_free (input->path);
  g_free (input->label);
}

static char *
input_label (const GwRecord *record,
             const GwField  *field)
{
  const GwField *name = gw_record_type_field (record->type, "name");
  const char    *text = name != NULL ? *(char **) gw_record_at (record, name) : NULL;

  if (text == NULL)
    text = gw_record_id (record);
  if (text == NULL)
    text = g_dgettext (GETTEXT_PACKAGE, record->type->label);

  return g_strdup_printf ("%s: %s", text, g_dgettext (GETTEXT_PACKAGE, field->label));
}

static void
gather (const char    *path,
        GwRecord      *record,
        const GwField *field,
        gpointer       data)
{
  GArray *inputs = data;
  Input   input;

  if (field->kind != GW_FIELD_NUMBER || !gw_number_is_uncertain (gw_record_at (record, field)))
    return;

  input = (Input){ g_strdup (path), gw_record_at (record, field), field,
                   input_label (record, field) };
  g_array_append_val (inputs, input);
}

/* The results with one input moved, less the results as they are. A wide band may reach
 * beyond what the input can be (a mass below zero), so it ends there. */
static void
move_input (GwOutcome    *outcome,
            GwStudy      *study,
            const Input  *input,
            double        z,
            const double *curve_mass,
            double       *change,
            double       *curve_change)
{
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GwAssembly) assembly = NULL;
  const double kept = input->number->value;
  GwResults    moved = { 0 };

  input->number->value = CLAMP (gw_number_at (input->number, z), input->field->least,
                                input->field->most);
  assembly = gw_assemble (study, outcome->assembly, problems);
  input->number->value = kept;

  if (assembly != NULL && gw_evaluate (&assembly->aircraft, curve_mass, &moved) == GW_OK)
    {
      for (guint i = 0; i < GW_N_RESULTS; i++)
        change[i] = moved.value[i] - outcome->results.value[i];
      for (guint i = 0; i < GW_CURVE_N; i++)
        curve_change[i] = moved.curve[i] - outcome->results.curve[i];
    }

  gw_results_clear (&moved);
}

static gboolean
vary (GwOutcome     *outcome,
      const GwStudy *common,
      const double  *curve_mass,
      GCancellable  *cancellable,
      GError       **error)
{
  g_autoptr (GArray) inputs = g_array_new (FALSE, FALSE, sizeof (Input));
  g_autoptr (GwStudy) study = gw_study_copy (outcome->assembly->study);

  g_array_set_clear_func (inputs, (GDestroyNotify) input_clear);
  gw_record_each (&study->record, "", gather, inputs);

  for (guint i = 0; i < inputs->len; i++)
    {
      const Input *input = &g_array_index (inputs, Input, i);
      GwEffect    *effect;

      if (g_cancellable_set_error_if_cancelled (cancellable, error))
        return FALSE;

      effect = g_new0 (GwEffect, 1);
      effect->key = gw_resolved_key (study, common, input->path);
      effect->label = g_strdup (input->label);
      move_input (outcome, study, input, GW_Z90, curve_mass, effect->up, effect->curve_up);
      move_input (outcome, study, input, -GW_Z90, curve_mass, effect->down, effect->curve_down);
      g_ptr_array_add (outcome->effects, effect);
    }

  return TRUE;
}

static void
widen (GwBand *band,
       double  up,
       double  down)
{
  const double high = MAX (MAX (up, down), 0.0);
  const double low = MIN (MIN (up, down), 0.0);

  /* A result without an answer at one end has no band from that input. */
  if (isfinite (up) && isfinite (down))
    *band = (GwBand){ -hypot (band->low, low), hypot (band->high, high) };
}

static void
add_bands (GwOutcome *outcome)
{
  for (guint e = 0; e < outcome->effects->len; e++)
    {
      const GwEffect *effect = g_ptr_array_index (outcome->effects, e);

      for (guint i = 0; i < GW_N_RESULTS; i++)
        widen (&outcome->band[i], effect->up[i], effect->down[i]);
      for (guint i = 0; i < GW_CURVE_N; i++)
        widen (&outcome->curve_band[i], effect->curve_up[i], effect->curve_down[i]);
    }
}

/* No mass is less than none, however wide its band. */
static void
bound_bands (GwOutcome *outcome)
{
  for (guint i = 0; i < GW_N_RESULTS; i++)
    if (gw_result_info ((GwResultId) i)->quantity == GW_G)
      outcome->band[i].low = fmax (outcome->band[i].low, -outcome->results.value[i]);
}

static const GwEffect *
find_effect (const GwOutcome *outcome,
             const char      *key)
{
  for (guint i = 0; i < outcome->effects->len; i++)
    if (g_str_equal (((GwEffect *) g_ptr_array_index (outcome->effects, i))->key, key))
      return g_ptr_array_index (outcome->effects, i);

  return NULL;
}

static void
widen_change (GwOutcome      *outcome,
              const GwEffect *own,
              const GwEffect *base)
{
  for (guint i = 0; i < GW_N_RESULTS; i++)
    widen (&outcome->change_band[i],
           (own != NULL ? own->up[i] : 0.0) - (base != NULL ? base->up[i] : 0.0),
           (own != NULL ? own->down[i] : 0.0) - (base != NULL ? base->down[i] : 0.0));
}

static void
compare (GwOutcome       *outcome,
         const GwOutcome *baseline)
{
  for (guint i = 0; i < GW_N_RESULTS; i++)
    outcome->change[i] = outcome->results.value[i] - baseline->results.value[i];

  for (guint i = 0; i < outcome->effects->len; i++)
    {
      const GwEffect *own = g_ptr_array_index (outcome->effects, i);

      widen_change (outcome, own, find_effect (baseline, own->key));
    }

  for (guint i = 0; i < baseline->effects->len; i++)
    {
      const GwEffect *base = g_ptr_array_index (baseline->effects, i);

      if (find_effect (outcome, base->key) == NULL)
        widen_change (outcome, NULL, base);
    }
}

static gboolean
vary_option (GwEvaluation *evaluation,
             guint         option,
             gpointer      cancellable,
             GError      **error)
{
  GwOutcome *outcome = g_ptr_array_index (evaluation->outcomes, option);

  if (!vary (outcome, evaluation->study, evaluation->curve_mass, cancellable, error))
    return FALSE;

  add_bands (outcome);
  bound_bands (outcome);
  memcpy (outcome->band_curve, outcome->results.curve, sizeof outcome->band_curve);
  return TRUE;
}

gboolean
_gw_evaluation_vary_all (GwEvaluation *evaluation,
                         GCancellable *cancellable,
                         GError      **error)
{
  return _gw_evaluation_each (evaluation, vary_option, cancellable, error);
}

void
_gw_evaluation_compare_all (GwEvaluation *evaluation)
{
  GPtrArray *outcomes = evaluation->outcomes;

  for (guint i = 0; i < outcomes->len; i++)
    compare (g_ptr_array_index (outcomes, i), g_ptr_array_index (outcomes, evaluation->baseline));
}
