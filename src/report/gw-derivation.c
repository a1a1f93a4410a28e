/* gw-derivation.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-derivation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-derivation-private.h"
#include "study/gw-edit.h"

static const char *const titles[GW_N_DERIVATION_PARTS] = {
  [GW_DERIVATION_WHAT] = N_ ("What it is"),
  [GW_DERIVATION_METHOD] = N_ ("Method"),
  [GW_DERIVATION_STEPS] = N_ ("How it comes about"),
  [GW_DERIVATION_INPUTS] = N_ ("What it rests on"),
  [GW_DERIVATION_BAND] = N_ ("What its band is made of"),
};

static void
row_free (GwDerivationRow *row)
{
  g_free (row->label);
  g_free (row->value);
  g_free (row->origin);
  g_free (row->source);
  g_free (row->path);
  g_free (row->field);
  g_free (row);
}

GwDerivationRow *
_gw_derivation_add (GwDeriving *deriving,
                    const char *key,
                    const char *label,
                    char       *value)
{
  GwDerivationRow *row = g_new0 (GwDerivationRow, 1);

  row->key = key;
  row->label = g_strdup (label);
  row->value = value;
  g_ptr_array_add (deriving->rows, row);
  return row;
}

GwDerivationRow *
_gw_derivation_step (GwDeriving *deriving,
                     const char *key,
                     const char *label,
                     GwQuantity  quantity,
                     double      value)
{
  return _gw_derivation_add (deriving, key, label,
                             gw_amount_digits (deriving->units, quantity, value));
}

GwDerivationRow *
_gw_derivation_result (GwDeriving *deriving,
                       const char *key,
                       GwResultId  id)
{
  const GwResultInfo *info = gw_result_info (id);

  return _gw_derivation_step (deriving, key, _ (info->label), info->quantity,
                              deriving->outcome->results.value[id]);
}

char *
_gw_derivation_path (const GwDeriving *deriving,
                     char             *path)
{
  if (*path != '\0' && gw_edit_record (deriving->evaluation->study, path) != NULL)
    return path;

  g_free (path);
  return NULL;
}

static void
derive_steps (GwDeriving *deriving)
{
  const gboolean is_derived = _gw_derive_mass (deriving) || _gw_derive_balance (deriving) ||
                              _gw_derive_lift (deriving) || _gw_derive_shape (deriving);

  if (!is_derived)
    g_warning ("result %d has no steps", (int) deriving->id);
}

static void
fill (GwDerivation *derivation,
      GwDeriving   *deriving)
{
  const GwDerivationMethod *method = _gw_derivation_method (derivation->id);
  GwDerivationSection      *sections = derivation->sections;

  for (guint i = 0; i < GW_N_DERIVATION_PARTS; i++)
    {
      sections[i].title = _ (titles[i]);
      sections[i].rows = g_ptr_array_new_with_free_func ((GDestroyNotify) row_free);
    }

  sections[GW_DERIVATION_WHAT].text = g_strdup (_ (method->what));
  sections[GW_DERIVATION_METHOD].text = g_strdup (_ (method->method));
  sections[GW_DERIVATION_METHOD].source = g_strdup (_ (method->source));
  deriving->rows = sections[GW_DERIVATION_STEPS].rows;
  derive_steps (deriving);
  deriving->rows = sections[GW_DERIVATION_INPUTS].rows;
  _gw_derive_inputs (deriving);
  deriving->rows = sections[GW_DERIVATION_BAND].rows;
  sections[GW_DERIVATION_BAND].text = g_strdup (_gw_derive_band (deriving));
}

GwDerivation *
gw_derivation_new (const GwEvaluation *evaluation,
                   guint               option,
                   GwResultId          id,
                   const GwUnits      *units)
{
  const GwOutcome    *outcome = gw_evaluation_outcome (evaluation, option);
  const GwResultInfo *info = gw_result_info (id);
  GwDeriving          deriving = { evaluation, outcome, option, id, units, NULL };
  GwDerivation       *derivation;

  g_return_val_if_fail (outcome != NULL && info != NULL, NULL);

  derivation = g_new0 (GwDerivation, 1);
  derivation->id = id;
  derivation->label = g_strdup (_ (info->label));
  derivation->option = g_strdup (outcome->name);
  derivation->value = gw_amount_result (units, id, outcome->results.value[id]);
  if (!evaluation->is_quick)
    derivation->band = gw_amount_band (
      units, info->quantity, outcome->results.value[id] + outcome->band[id].low,
      outcome->results.value[id] + outcome->band[id].high, info->decimals);
  fill (derivation, &deriving);
  return derivation;
}

void
gw_derivation_free (GwDerivation *derivation)
{
  for (guint i = 0; i < GW_N_DERIVATION_PARTS; i++)
    {
      g_free (derivation->sections[i].text);
      g_free (derivation->sections[i].source);
      g_ptr_array_unref (derivation->sections[i].rows);
    }
  g_free (derivation->label);
  g_free (derivation->option);
  g_free (derivation->value);
  g_free (derivation->band);
  g_free (derivation);
}

static void
append_row (GString               *out,
            const GwDerivationRow *row)
{
  g_string_append_printf (out, "  %s: %s", row->label, row->value);
  if (row->origin != NULL)
    g_string_append_printf (out, " [%s]", row->origin);
  g_string_append_c (out, '\n');
  if (row->source != NULL)
    g_string_append_printf (out, "    %s\n", row->source);
}

static void
append_section (GString                   *out,
                const GwDerivationSection *section)
{
  g_string_append_printf (out, "\n%s\n", section->title);
  if (section->text != NULL)
    g_string_append_printf (out, "  %s\n", section->text);
  if (section->source != NULL)
    g_string_append_printf (out, _ ("  Source: %s\n"), section->source);
  for (guint i = 0; i < section->rows->len; i++)
    append_row (out, g_ptr_array_index (section->rows, i));
}

char *
gw_derivation_text (const GwDerivation *derivation)
{
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%s: %s: %s", derivation->option, derivation->label,
                          derivation->value);
  if (derivation->band != NULL)
    g_string_append_printf (out, _ (" (10th to 90th percentile: %s)"), derivation->band);
  g_string_append_c (out, '\n');
  for (guint i = 0; i < GW_N_DERIVATION_PARTS; i++)
    append_section (out, &derivation->sections[i]);

  return g_string_free (out, FALSE);
}

gboolean
gw_derivation_find (const char *key,
                    GwResultId *id)
{
  for (guint i = 0; i < GW_N_RESULTS; i++)
    {
      g_autofree char *full = gw_result_key ((GwResultId) i);

      if (g_strcmp0 (key, full) == 0 ||
          g_strcmp0 (key, gw_result_info ((GwResultId) i)->key) == 0)
        {
          *id = (GwResultId) i;
          return TRUE;
        }
    }

  return FALSE;
}
