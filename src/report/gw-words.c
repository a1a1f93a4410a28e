/* gw-words.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"
#include "report/gw-sheet.h"


/* Sentences and their parts. */

static void
take (GPtrArray *parts,
      char      *text)
{
  g_ptr_array_add (parts, text);
}

static char *
join (GPtrArray  *parts,
      const char *between)
{
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (between, (char **) parts->pdata);
}

/* A sentence begins with a capital in languages that have them. */
static char *
begin_large (const char *text)
{
  g_autofree char *first = g_utf8_substring (text, 0, MIN (1, g_utf8_strlen (text, -1)));
  g_autofree char *large = g_utf8_strup (first, -1);

  return g_strconcat (large, g_utf8_next_char (text), NULL);
}

/* How the three results that everybody asks for first are told, down and up. */
static const struct
{
  GwResultId  id;
  const char *less, *more; /* with how much */
  const char *surely_less, *surely_more;
  const char *same, *either; /* with the difference, its unit and the ends of its band */
} told[] = {
  { GW_RESULT_MASS, N_ ("%s lighter"), N_ ("%s heavier"), N_ ("surely lighter"),
    N_ ("surely heavier"), N_ ("the mass is about the same"),
    N_ ("No clear difference in mass: %s, from %s to %s.") },
  { GW_RESULT_STALL_SPEED, N_ ("stalls %s slower"), N_ ("stalls %s faster"),
    N_ ("surely stalls slower"), N_ ("surely stalls faster"),
    N_ ("the stall speed is about the same"),
    N_ ("No clear difference in stall speed: %s, from %s to %s.") },
  { GW_RESULT_BALANCE_ROOT, N_ ("balance point %s further forward"),
    N_ ("balance point %s further aft"), N_ ("the balance point surely further forward"),
    N_ ("the balance point surely further aft"), N_ ("the balance point is about the same"),
    N_ ("No clear difference in balance point: %s, from %s to %s.") },
};

static char *
sized (const char *format,
       const char *size)
{
  g_auto (GStrv) parts = g_strsplit (_ (format), "%s", 2);

  return g_strjoinv (size, parts);
}

/* Whether no way can be told, so that "lighter" would say too much. */
static gboolean
holds_zero (const GwPair *pair,
            GwResultId    id)
{
  const GwSureness sureness = _gw_pair_sureness (pair, id);

  return sureness == GW_SURENESS_EITHER || sureness == GW_SURENESS_SAME;
}

static void
tell_three (const GwPair *pair,
            GPtrArray    *parts)
{
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const double change = _gw_pair_change (pair, told[i].id);

      if (isfinite (change) && !_gw_pair_is_nothing (pair, told[i].id) &&
          !holds_zero (pair, told[i].id))
        {
          g_autofree char *size = _gw_pair_size (pair, told[i].id);

          take (parts, sized (change < 0.0 ? told[i].less : told[i].more, size));
        }
    }
}

static const char *
surely (guint      i,
        GwSureness sureness,
        double     change)
{
  switch (sureness)
    {
    case GW_SURENESS_SURE:
      return change < 0.0 ? told[i].surely_less : told[i].surely_more;
    case GW_SURENESS_SAME:
      return told[i].same;
    case GW_SURENESS_EITHER:
    case GW_SURENESS_UNKNOWN:
    default:
      return NULL;
    }
}

static void
add_sureness (const GwPair *pair,
              GPtrArray    *sentences)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *text = NULL, *large = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const char *words = surely (i, _gw_pair_sureness (pair, told[i].id),
                                  _gw_pair_change (pair, told[i].id));

      if (words != NULL)
        take (parts, g_strdup (_ (words)));
    }
  if (parts->len == 0)
    return;

  text = join (parts, _ (", "));
  large = begin_large (text);
  take (sentences, g_strconcat (large, ".", NULL));
}

static char *
signed_text (const GwPair *pair,
             GwResultId    id,
             double        change)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_change (pair->units, info->quantity, change, info->decimals);
}

/* "No clear difference in stall speed: +0.1 m/s, from -0.4 to +0.6." */
static void
add_unclear (const GwPair *pair,
             GPtrArray    *sentences)
{
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const GwResultId id = told[i].id;
      const double     change = _gw_pair_change (pair, id);
      const GwBand    *band = &pair->after->change_band[id];
      const char      *unit = gw_units_name (pair->units, gw_result_info (id)->quantity);
      g_autofree char *number = NULL, *size = NULL, *low = NULL, *high = NULL;
      g_auto (GStrv) parts = NULL;

      if (_gw_pair_sureness (pair, id) != GW_SURENESS_EITHER)
        continue;

      number = signed_text (pair, id, change);
      size = g_strconcat (number, " ", unit, NULL);
      low = signed_text (pair, id, change + band->low);
      high = signed_text (pair, id, change + band->high);
      parts = g_strsplit (_ (told[i].either), "%s", 4);
      if (g_strv_length (parts) == 4)
        take (sentences, g_strconcat (parts[0], size, parts[1], low, parts[2], high, parts[3],
                                      NULL));
    }
}

static gboolean
has_lead (const GwPair    *pair,
          const GwOutcome *outcome)
{
  const double ballast = _gw_pair_value (outcome, GW_RESULT_BALLAST);

  return isfinite (ballast) && !gw_amount_is_nothing (pair->units, GW_G, ballast, 0);
}

/* The item that is moved stops at one end of its bay, and the lead goes beyond that end. */
static gboolean
is_lead_ahead (const GwOutcome *outcome)
{
  const double left = _gw_pair_value (outcome, GW_RESULT_SLIDE_LEFT);
  const double wanted = outcome->assembly->aircraft.targets.balance_x;

  if (isfinite (left))
    return left < 0.0;

  return _gw_pair_value (outcome, GW_RESULT_BALANCE_X) >
         (isfinite (wanted) ? wanted : _gw_pair_value (outcome, GW_RESULT_AFT_LIMIT));
}

static char *
lead_text (const GwPair *pair)
{
  g_autofree char *ballast = _gw_pair_text (pair, pair->after, GW_RESULT_BALLAST);

  if (!has_lead (pair, pair->after))
    return has_lead (pair, pair->before) &&
               isfinite (_gw_pair_value (pair->after, GW_RESULT_BALLAST))
             ? g_strdup (_ ("needs no lead"))
             : NULL;
  if (is_lead_ahead (pair->after))
    return g_strdup_printf (_ ("needs %s of lead in the nose"), ballast);

  return g_strdup_printf (_ ("needs %s of lead in the tail"), ballast);
}

/* Limits that are told here; those of the balance point are told by their notes. */
static const struct
{
  GwResultId  id;
  const char *broken_here, *broken_there, *broken_both; /* against another option */
  const char *broken_now, *kept_now;                    /* after a change */
} limits[] = {
  { GW_RESULT_STALL_SPEED, N_ ("It does not keep the wanted stall speed; %s does."),
    N_ ("It keeps the wanted stall speed; %s does not."),
    N_ ("Neither keeps the wanted stall speed."), N_ ("The wanted stall speed is not kept now."),
    N_ ("The wanted stall speed is kept now.") },
  { GW_RESULT_MASS, N_ ("It does not keep the wanted mass; %s does."),
    N_ ("It keeps the wanted mass; %s does not."), N_ ("Neither keeps the wanted mass."),
    N_ ("The wanted mass is not kept now."), N_ ("The wanted mass is kept now.") },
};

static void
add_limits_against (const GwPair *pair,
                    GPtrArray    *sentences)
{
  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      const GwLimit here = gw_limit_of (pair->after, limits[i].id);
      const GwLimit there = gw_limit_of (pair->before, limits[i].id);

      if (here == GW_LIMIT_BROKEN && there == GW_LIMIT_BROKEN)
        take (sentences, g_strdup (_ (limits[i].broken_both)));
      else if (here == GW_LIMIT_BROKEN && there == GW_LIMIT_KEPT)
        take (sentences, sized (limits[i].broken_here, pair->before->name));
      else if (here == GW_LIMIT_KEPT && there == GW_LIMIT_BROKEN)
        take (sentences, sized (limits[i].broken_there, pair->before->name));
    }
}

static void
add_limits_of_change (const GwPair *pair,
                      GPtrArray    *sentences)
{
  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      const GwLimit before = gw_limit_of (pair->before, limits[i].id);
      const GwLimit after = gw_limit_of (pair->after, limits[i].id);

      if (after == GW_LIMIT_BROKEN && before != GW_LIMIT_BROKEN)
        take (sentences, g_strdup (_ (limits[i].broken_now)));
      else if (after == GW_LIMIT_KEPT && before == GW_LIMIT_BROKEN)
        take (sentences, g_strdup (_ (limits[i].kept_now)));
    }
}

/* The sentences of some notes, but for those that limits and lead have told already. */
static char *
notes_text (unsigned notes)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  notes &= ~(unsigned) (GW_NOTE_STALL_FAST | GW_NOTE_HEAVY | GW_NOTE_BALLAST);
  for (guint bit = 0; bit < 32; bit++)
    if (notes & (1u << bit))
      take (parts, g_strdup (gw_note_text ((GwNote) (1u << bit))));

  return parts->len > 0 ? join (parts, " ") : NULL;
}

static void
add_notes (const GwPair *pair,
           const char   *of_before,
           const char   *of_after,
           GPtrArray    *sentences)
{
  const unsigned   before = pair->before->results.notes, after = pair->after->results.notes;
  g_autofree char *come = notes_text (after & ~before);
  g_autofree char *gone = notes_text (before & ~after);

  if (come != NULL)
    take (sentences, g_strdup_printf ("%s %s", of_after, come));
  if (gone != NULL)
    take (sentences, g_strdup_printf ("%s %s", of_before, gone));
}

static gboolean
is_alike (const GwPair *pair)
{
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    if (!_gw_pair_is_nothing (pair, told[i].id))
      return FALSE;

  return TRUE;
}

static void
add_effect (const GwPair *pair,
            GPtrArray    *sentences)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *lead = lead_text (pair), *text = NULL;
  const char      *name = pair->before->name;

  tell_three (pair, parts);
  if (parts->len > 0)
    text = join (parts, _ (", "));
  else
    text = g_strdup (is_alike (pair) ? _ ("no difference that shows") : _ ("no sure difference"));
  if (lead != NULL)
    take (sentences, g_strdup_printf (_ ("Against %s: %s; %s."), name, text, lead));
  else
    take (sentences, g_strdup_printf (_ ("Against %s: %s."), name, text));
}

char *
gw_words_against_baseline (const GwEvaluation *evaluation,
                           guint               option,
                           const GwUnits      *units)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  const GwPair pair = {
    .before = gw_evaluation_outcome (evaluation, evaluation->baseline),
    .after = gw_evaluation_outcome (evaluation, option),
    .units = units,
    .has_bands = !evaluation->is_quick,
  };
  g_autofree char *of_before = NULL;

  g_return_val_if_fail (pair.after != NULL, NULL);

  if (option == evaluation->baseline)
    return g_strdup (_ ("This is the baseline, which the other options are compared with."));

  of_before = g_strdup_printf (_ ("Of %s alone:"), pair.before->name);
  add_effect (&pair, sentences);
  add_sureness (&pair, sentences);
  add_unclear (&pair, sentences);
  if (!pair.has_bands)
    take (sentences, g_strdup (_ ("How sure that is comes in a moment.")));
  add_limits_against (&pair, sentences);
  add_notes (&pair, of_before, _ ("Of this option alone:"), sentences);
  return join (sentences, " ");
}

/* "wing loading 0.3 g/dm² less"; a result that comes or goes is told as it is now. */
static char *
plain_change (const GwPair *pair,
              GwResultId    id)
{
  const char      *label = _ (gw_result_info (id)->label);
  g_autofree char *now = _gw_pair_text (pair, pair->after, id);
  g_autofree char *size = NULL;

  if (!isfinite (_gw_pair_value (pair->after, id)))
    return g_strdup_printf (_ ("%s without an answer now"), label);
  if (id == GW_RESULT_SLIDE || !isfinite (_gw_pair_change (pair, id)) ||
      _gw_pair_is_nothing (pair, id))
    return g_strdup_printf (_ ("%s now %s"), label, now);

  size = _gw_pair_size (pair, id);
  return _gw_pair_change (pair, id) < 0.0 ? g_strdup_printf (_ ("%s %s less"), label, size)
                                          : g_strdup_printf (_ ("%s %s more"), label, size);
}

static char *
change_text (const GwPair *pair,
             GwResultId    id)
{
  if (id == GW_RESULT_BALLAST && isfinite (_gw_pair_value (pair->after, id)))
    return lead_text (pair);
  if (isfinite (_gw_pair_change (pair, id)) && !_gw_pair_is_nothing (pair, id))
    for (guint i = 0; i < G_N_ELEMENTS (told); i++)
      if (told[i].id == id)
        {
          g_autofree char *size = _gw_pair_size (pair, id);

          return sized (_gw_pair_change (pair, id) < 0.0 ? told[i].less : told[i].more, size);
        }

  return plain_change (pair, id);
}

/* The three that everybody asks for first, then the others in the order of the sheet. */
static void
tell_changes (const GwPair *pair,
              GPtrArray    *parts)
{
  for (guint pass = 0; pass < 2; pass++)
    for (guint id = 0; id < GW_N_RESULTS; id++)
      {
        const gboolean is_first = id == GW_RESULT_MASS || id == GW_RESULT_STALL_SPEED ||
                                  id == GW_RESULT_BALANCE_ROOT;
        char *text;

        if (is_first != (pass == 0) || !gw_result_info ((GwResultId) id)->is_on_sheet ||
            _gw_pair_is_shown_the_same (pair, (GwResultId) id))
          continue;
        text = change_text (pair, (GwResultId) id);
        if (text != NULL)
          take (parts, text);
      }
}

char *
gw_words_of_change (const GwEvaluation *before,
                    const GwEvaluation *after,
                    guint               option,
                    const GwUnits      *units)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  const GwPair pair = _gw_pair_of (before, after, option, units);

  g_return_val_if_fail (pair.after != NULL, NULL);

  if (pair.before == NULL)
    return g_strdup (_ ("This option was not there before."));

  tell_changes (&pair, parts);
  if (parts->len > 0)
    {
      g_autofree char *text = join (parts, _ (", "));
      g_autofree char *large = begin_large (text);

      take (sentences, g_strconcat (large, ".", NULL));
    }
  add_limits_of_change (&pair, sentences);
  add_notes (&pair, _ ("No longer:"), _ ("New:"), sentences);

  return sentences->len > 0 ? join (sentences, " ") : g_strdup (_ ("Nothing on the sheet "
                                                                   "changes."));
}
