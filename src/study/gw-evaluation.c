/* gw-evaluation.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-evaluation-private.h"

#include <math.h>
#include <string.h>

#include "study/gw-parallel.h"
#include "study/gw-resolve.h"

static void
effect_free (GwEffect *effect)
{
  g_free (effect->key);
  g_free (effect->label);
  g_free (effect);
}

struct _GwComputed
{
  GwAssembly *assembly;
  GwResults   results;
};

static void
computed_clear (GwComputed *computed)
{
  gw_results_clear (&computed->results);
  g_clear_pointer (&computed->assembly, gw_assembly_free);
}

static void
computed_unref (GwComputed *computed)
{
  g_atomic_rc_box_release_full (computed, (GDestroyNotify) computed_clear);
}

/* Takes over @computed and what is in it. */
static void
show_computed (GwOutcome  *outcome,
               GwComputed *computed)
{
  outcome->computed = computed;
  outcome->assembly = computed->assembly;
  outcome->results = computed->results;
}

static void
outcome_free (GwOutcome *outcome)
{
  g_clear_pointer (&outcome->computed, computed_unref);
  g_clear_pointer (&outcome->effects, g_ptr_array_unref);
  g_free (outcome->id);
  g_free (outcome->name);
  g_free (outcome->short_name);
  g_free (outcome);
}

static GwOutcome *
outcome_new (const GwStudyOption *option)
{
  GwOutcome *outcome = g_new0 (GwOutcome, 1);

  outcome->id = g_strdup (option->id);
  outcome->name = g_strdup (option->name != NULL ? option->name : option->id);
  outcome->short_name = g_strdup (option->short_name != NULL ? option->short_name : outcome->name);
  outcome->effects = g_ptr_array_new_with_free_func ((GDestroyNotify) effect_free);
  return outcome;
}

static gboolean
is_computed (const GwOutcome *outcome)
{
  return outcome->results.pieces.n > 0;
}

/* With nothing to look up again: if all its inputs are those of @before, that is the outcome. */
static GwOutcome *
assemble_option (GwEvaluation    *evaluation,
                 guint            option,
                 const GwOutcome *before,
                 GError         **error)
{
  GwStudy *study = evaluation->study;
  g_autoptr (GPtrArray) problems = gw_problems_new ();
  g_autoptr (GArray) wanted = g_array_new (FALSE, FALSE, sizeof (GwPolarSubject));
  g_autoptr (GwStudy) resolved = gw_study_resolve_wanting (study, option, wanted, problems);
  GwComputed *computed;
  GwAssembly *assembly;
  GwOutcome  *outcome;

  if (!gw_problems_to_error (problems, error))
    return NULL;

  evaluation->is_provisional |= wanted->len > 0;
  outcome = outcome_new (g_ptr_array_index (study->options, option));
  if (before != NULL && is_computed (before) &&
      gw_record_equal (&resolved->record, &before->assembly->study->record))
    {
      show_computed (outcome, g_atomic_rc_box_acquire (before->computed));
      return outcome;
    }

  assembly = gw_assemble (resolved, before != NULL ? before->assembly : NULL, problems);
  if (assembly == NULL)
    {
      gw_problems_to_error (problems, error);
      outcome_free (outcome);
      return NULL;
    }

  assembly->aircraft.is_provisional = wanted->len > 0;
  computed = g_atomic_rc_box_new0 (GwComputed);
  computed->assembly = assembly;
  show_computed (outcome, computed);
  return outcome;
}

static gboolean
compute (GwOutcome    *outcome,
         const double *curve_mass,
         GError      **error)
{
  GwComputed *computed = outcome->computed;
  GwStatus    status;

  gw_results_clear (&computed->results);
  status = gw_evaluate (&computed->assembly->aircraft, curve_mass, &computed->results);
  outcome->results = computed->results;
  if (status != GW_OK)
    gw_study_status_error (error, status, outcome->name);

  return status == GW_OK;
}

/* A round range of masses that holds every option with room on both sides. */
/* [kg]; 0 for what cannot be computed, which is said when it is. */
static double
weigh (const GwOutcome *outcome)
{
  GwPieces  pieces;
  GwBalance balance = { 0 };

  gw_pieces_init (&pieces);
  if (gw_aircraft_pieces (&outcome->computed->assembly->aircraft, &pieces) != GW_OK ||
      gw_balance_of (&pieces, &balance) != GW_OK)
    balance.mass = 0.0;
  gw_pieces_clear (&pieces);
  return balance.mass;
}

static void
lay_out_curve (GwEvaluation *evaluation)
{
  double least = INFINITY, most = 0.0, step;

  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      const double mass = weigh (gw_evaluation_outcome (evaluation, i));

      least = MIN (least, mass);
      most = MAX (most, mass);
    }

  step = pow (10.0, floor (log10 (most))) / 20.0;
  least = MAX (step, floor (0.85 * least / step) * step);
  most = ceil (1.15 * most / step) * step;
  for (guint i = 0; i < GW_CURVE_N; i++)
    evaluation->curve_mass[i] = least + (most - least) * i / (GW_CURVE_N - 1);
}

static const GwOutcome *
find_outcome (const GwEvaluation *evaluation,
              const char         *id)
{
  for (guint i = 0; evaluation != NULL && i < evaluation->outcomes->len; i++)
    if (g_str_equal (gw_evaluation_outcome (evaluation, i)->id, id))
      return gw_evaluation_outcome (evaluation, i);

  return NULL;
}

static gboolean
assemble_all (GwEvaluation       *evaluation,
              const GwEvaluation *previous,
              GError            **error)
{
  for (guint i = 0; i < evaluation->study->options->len; i++)
    {
      const char      *id = gw_record_id (g_ptr_array_index (evaluation->study->options, i));
      const GwOutcome *before = find_outcome (previous, id);
      GwOutcome       *outcome;

      /* Most options have the same sections; none is computed yet, so that is all they share. */
      if (before == NULL && i > 0)
        before = gw_evaluation_outcome (evaluation, i - 1);
      outcome = assemble_option (evaluation, i, before, error);

      if (outcome == NULL)
        return FALSE;
      g_ptr_array_add (evaluation->outcomes, outcome);
    }

  return TRUE;
}

typedef struct
{
  GwEvaluation    *evaluation;
  GwEvaluationFunc func;
  gpointer         data;
  GError         **errors; /* of each option */
} Each;

static gboolean
each_cb (guint    option,
         gpointer data)
{
  Each *each = data;

  return each->func (each->evaluation, option, each->data, &each->errors[option]);
}

gboolean
_gw_evaluation_each (GwEvaluation    *evaluation,
                     GwEvaluationFunc func,
                     gpointer         data,
                     GError         **error)
{
  const guint         n = evaluation->outcomes->len;
  g_autofree GError **errors = g_new0 (GError *, n);
  Each                each = { evaluation, func, data, errors };
  const gboolean      is_done = gw_parallel_each (n, each_cb, &each);

  for (guint i = 0; i < n; i++)
    if (errors[i] != NULL && error != NULL && *error == NULL)
      g_propagate_error (error, errors[i]);
    else
      g_clear_error (&errors[i]);

  return is_done;
}

#define STRIDE 8 /* of the masses at which a quick curve is computed */

/* Between these masses the curve is the one before, stretched to meet them: over so small a step
 * its shape hardly changes. */
static gboolean
compute_near (GwOutcome       *outcome,
              const GwOutcome *before,
              const double    *curve_mass,
              GError         **error)
{
  const double *old = before->results.curve;
  double        masses[GW_CURVE_N], *curve = outcome->computed->results.curve;

  for (guint i = 0; i < GW_CURVE_N; i++)
    masses[i] = i % STRIDE == 0 ? curve_mass[i] : (double) NAN;
  if (!compute (outcome, masses, error))
    return FALSE;

  for (guint i = 0; i < GW_CURVE_N; i++)
    if (i % STRIDE != 0)
      {
        const guint  low = i - i % STRIDE, high = low + STRIDE;
        const double share = (double) (i % STRIDE) / STRIDE;

        curve[i] = old[i] * ((1.0 - share) * curve[low] / old[low] +
                             share * curve[high] / old[high]);
      }

  memcpy (outcome->results.curve, curve, sizeof outcome->results.curve);
  return TRUE;
}

/* @previous: (nullable): of GwEvaluation, whose curves are near */
static gboolean
compute_option (GwEvaluation *evaluation,
                guint         option,
                gpointer      previous,
                GError      **error)
{
  GwOutcome       *outcome = g_ptr_array_index (evaluation->outcomes, option);
  const GwOutcome *before = find_outcome (previous, outcome->id);

  if (is_computed (outcome))
    return TRUE;

  return before != NULL ? compute_near (outcome, before, evaluation->curve_mass, error)
                        : compute (outcome, evaluation->curve_mass, error);
}

static GwEvaluation *
evaluation_alloc (GwStudy *study)
{
  GwEvaluation *evaluation = g_atomic_rc_box_new0 (GwEvaluation);

  evaluation->study = gw_study_ref (study);
  evaluation->baseline = gw_study_baseline (study);
  evaluation->outcomes = g_ptr_array_new_with_free_func ((GDestroyNotify) outcome_free);
  return evaluation;
}

gboolean
gw_evaluation_prepare (GwStudy         *study,
                       GwPolarsProgress progress,
                       gpointer         data,
                       GCancellable    *cancellable,
                       GError         **error)
{
  g_autoptr (GArray) wanted = g_array_new (FALSE, FALSE, sizeof (GwPolarSubject));

  for (guint i = 0; i < study->options->len; i++)
    {
      g_autoptr (GPtrArray) problems = gw_problems_new ();
      g_autoptr (GwStudy) resolved = gw_study_resolve_wanting (study, i, wanted, problems);
    }

  return wanted->len == 0 || gw_polars_compute (wanted, progress, data, cancellable, error);
}

GwEvaluation *
gw_evaluation_new (GwStudy      *study,
                   GCancellable *cancellable,
                   GError      **error)
{
  g_autoptr (GwEvaluation) evaluation = evaluation_alloc (study);

  if (!gw_evaluation_prepare (study, NULL, NULL, cancellable, error) ||
      !assemble_all (evaluation, NULL, error))
    return NULL;

  lay_out_curve (evaluation);
  if (!_gw_evaluation_each (evaluation, compute_option, NULL, error) ||
      !_gw_evaluation_vary_all (evaluation, cancellable, error))
    return NULL;

  _gw_evaluation_compare_all (evaluation);
  return g_steal_pointer (&evaluation);
}

/* How far a curve may leave the middle of its old band before the band follows it. */
#define STRAY 0.25

static void
keep_bands (GwOutcome       *outcome,
            const GwOutcome *previous)
{
  memcpy (outcome->band, previous->band, sizeof outcome->band);
  memcpy (outcome->curve_band, previous->curve_band, sizeof outcome->curve_band);
  memcpy (outcome->change_band, previous->change_band, sizeof outcome->change_band);

  for (guint i = 0; i < GW_CURVE_N; i++)
    {
      const GwBand *band = &outcome->curve_band[i];
      const double  shift = outcome->results.curve[i] - previous->band_curve[i];

      outcome->band_curve[i] = fabs (shift) < STRAY * (band->high - band->low)
                                 ? previous->band_curve[i]
                                 : outcome->results.curve[i];
    }
}

GwEvaluation *
gw_evaluation_quick (GwStudy            *study,
                     const GwEvaluation *previous,
                     GError            **error)
{
  g_autoptr (GwEvaluation) evaluation = evaluation_alloc (study);

  evaluation->is_quick = TRUE;
  if (!assemble_all (evaluation, previous, error))
    return NULL;

  if (previous != NULL)
    memcpy (evaluation->curve_mass, previous->curve_mass, sizeof evaluation->curve_mass);
  else
    lay_out_curve (evaluation);

  /* Too little work to wake other threads for. */
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    if (!compute_option (evaluation, i, (gpointer) previous, error))
      return NULL;

  _gw_evaluation_compare_all (evaluation);
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    {
      GwOutcome       *outcome = g_ptr_array_index (evaluation->outcomes, i);
      const GwOutcome *before = find_outcome (previous, outcome->id);

      if (before != NULL)
        keep_bands (outcome, before);
      else
        memcpy (outcome->band_curve, outcome->results.curve, sizeof outcome->band_curve);
    }

  return g_steal_pointer (&evaluation);
}

GwEvaluation *
gw_evaluation_ref (GwEvaluation *evaluation)
{
  return g_atomic_rc_box_acquire (evaluation);
}

static void
clear (GwEvaluation *evaluation)
{
  g_clear_pointer (&evaluation->outcomes, g_ptr_array_unref);
  g_clear_pointer (&evaluation->study, gw_study_unref);
}

void
gw_evaluation_unref (GwEvaluation *evaluation)
{
  g_atomic_rc_box_release_full (evaluation, (GDestroyNotify) clear);
}

const GwOutcome *
gw_evaluation_outcome (const GwEvaluation *evaluation,
                       guint               option)
{
  g_return_val_if_fail (option < evaluation->outcomes->len, NULL);

  return g_ptr_array_index (evaluation->outcomes, option);
}
