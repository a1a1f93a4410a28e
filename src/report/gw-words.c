/* gw-words.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "report/gw-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"
#include "report/gw-sheet.h"

#define NOTICED 0.01 /* of a result: less of a difference than that is about the same */

/* Two outcomes, and what they are seen in. */
typedef struct
{
  const GwOutcome *before, *after;
  const GwUnits   *units;
  gboolean         has_bands; /* after is compared with before, and its change bands are of now */
} Pair;

static double
value_of (const GwOutcome *outcome,
          GwResultId       id)
{
  return outcome->results.value[id];
}

static double
change_of (const Pair *pair,
           GwResultId  id)
{
  return value_of (pair->after, id) - value_of (pair->before, id);
}

static char *
text_of (const Pair      *pair,
         const GwOutcome *outcome,
         GwResultId       id)
{
  return gw_amount_result (pair->units, id, value_of (outcome, id));
}

static char *
size_of (const Pair *pair,
         GwResultId  id)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_size (pair->units, info->quantity, change_of (pair, id), info->decimals);
}

static gboolean
is_nothing (const Pair *pair,
            GwResultId  id)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_is_nothing (pair->units, info->quantity, change_of (pair, id), info->decimals);
}

static gboolean
is_shown_the_same (const Pair *pair,
                   GwResultId  id)
{
  g_autofree char *before = text_of (pair, pair->before, id);
  g_autofree char *after = text_of (pair, pair->after, id);

  return g_str_equal (before, after);
}

/* What each result that has a good side is worth, and what is said of the others. */
static const struct
{
  GwResultId  id;
  GwSense     sense;
  const char *text;
} senses[] = {
  { GW_RESULT_MASS, GW_SENSE_LESS,
    N_ ("Less is better: it flies slower, and lands and falls softer.") },
  { GW_RESULT_WING_MASS, GW_SENSE_LESS, N_ ("Less is better: it is a part of the mass.") },
  { GW_RESULT_WEIGHED_SHARE, GW_SENSE_MORE,
    N_ ("More is better: it says how sure the mass is, not how good.") },
  { GW_RESULT_WING_LOADING, GW_SENSE_LESS,
    N_ ("Less is better for flying slowly; in wind more can be wanted.") },
  { GW_RESULT_STALL_SPEED, GW_SENSE_LESS, N_ ("Less is better: it can land slower.") },
  { GW_RESULT_CL_MAX, GW_SENSE_MORE, N_ ("More is better: it carries the same mass slower.") },
  { GW_RESULT_TARGET_MASS, GW_SENSE_MORE,
    N_ ("More is better: that much it may come to weigh.") },
  { GW_RESULT_BALLAST, GW_SENSE_LESS, N_ ("Less is better: it is mass that does nothing else.") },
};

GwSense
gw_words_sense (GwResultId id)
{
  for (guint i = 0; i < G_N_ELEMENTS (senses); i++)
    if (senses[i].id == id)
      return senses[i].sense;

  return GW_SENSE_NEITHER;
}

const char *
gw_words_sense_text (GwResultId id)
{
  for (guint i = 0; i < G_N_ELEMENTS (senses); i++)
    if (senses[i].id == id)
      return _ (senses[i].text);

  return _ ("Neither more nor less is better in itself.");
}

/* What is noticed is measured along the mean chord for places along it. */
static double
scale_of (const GwOutcome *outcome,
          GwResultId       id)
{
  if (gw_result_info (id)->quantity == GW_MM)
    return value_of (outcome, GW_RESULT_MEAN_CHORD);
  if (gw_result_info (id)->quantity == GW_PERCENT)
    return 1.0;

  return fabs (value_of (outcome, id));
}

static GwSureness
sureness_of (const Pair *pair,
             GwResultId  id)
{
  const double  change = change_of (pair, id);
  const GwBand *band = &pair->after->change_band[id];
  const double  noticed = NOTICED * scale_of (pair->before, id);

  if (!pair->has_bands || !isfinite (change))
    return GW_SURENESS_UNKNOWN;
  if ((change + band->low > 0.0 || change + band->high < 0.0) && !is_nothing (pair, id))
    return GW_SURENESS_SURE;
  if (change + band->low >= -noticed && change + band->high <= noticed)
    return GW_SURENESS_SAME;

  return GW_SURENESS_EITHER;
}

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
holds_zero (const Pair *pair,
            GwResultId  id)
{
  const GwSureness sureness = sureness_of (pair, id);

  return sureness == GW_SURENESS_EITHER || sureness == GW_SURENESS_SAME;
}

static void
tell_three (const Pair *pair,
            GPtrArray  *parts)
{
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const double change = change_of (pair, told[i].id);

      if (isfinite (change) && !is_nothing (pair, told[i].id) && !holds_zero (pair, told[i].id))
        {
          g_autofree char *size = size_of (pair, told[i].id);

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
add_sureness (const Pair *pair,
              GPtrArray  *sentences)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *text = NULL, *large = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const char *words = surely (i, sureness_of (pair, told[i].id), change_of (pair, told[i].id));

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
signed_text (const Pair *pair,
             GwResultId  id,
             double      change)
{
  const GwResultInfo *info = gw_result_info (id);

  return gw_amount_change (pair->units, info->quantity, change, info->decimals);
}

/* "No clear difference in stall speed: +0.1 m/s, from -0.4 to +0.6." */
static void
add_unclear (const Pair *pair,
             GPtrArray  *sentences)
{
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const GwResultId id = told[i].id;
      const double     change = change_of (pair, id);
      const GwBand    *band = &pair->after->change_band[id];
      const char      *unit = gw_units_name (pair->units, gw_result_info (id)->quantity);
      g_autofree char *number = NULL, *size = NULL, *low = NULL, *high = NULL;
      g_auto (GStrv) parts = NULL;

      if (sureness_of (pair, id) != GW_SURENESS_EITHER)
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
has_lead (const Pair      *pair,
          const GwOutcome *outcome)
{
  const double ballast = value_of (outcome, GW_RESULT_BALLAST);

  return isfinite (ballast) && !gw_amount_is_nothing (pair->units, GW_G, ballast, 0);
}

/* The item that is moved stops at one end of its bay, and the lead goes beyond that end. */
static gboolean
is_lead_ahead (const GwOutcome *outcome)
{
  const double left = value_of (outcome, GW_RESULT_SLIDE_LEFT);
  const double wanted = outcome->assembly->aircraft.targets.balance_x;

  if (isfinite (left))
    return left < 0.0;

  return value_of (outcome, GW_RESULT_BALANCE_X) >
         (isfinite (wanted) ? wanted : value_of (outcome, GW_RESULT_AFT_LIMIT));
}

static char *
lead_text (const Pair *pair)
{
  g_autofree char *ballast = text_of (pair, pair->after, GW_RESULT_BALLAST);

  if (!has_lead (pair, pair->after))
    return has_lead (pair, pair->before) && isfinite (value_of (pair->after, GW_RESULT_BALLAST))
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
add_limits_against (const Pair *pair,
                    GPtrArray  *sentences)
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
add_limits_of_change (const Pair *pair,
                      GPtrArray  *sentences)
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
add_notes (const Pair *pair,
           const char *of_before,
           const char *of_after,
           GPtrArray  *sentences)
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
is_alike (const Pair *pair)
{
  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    if (!is_nothing (pair, told[i].id))
      return FALSE;

  return TRUE;
}

static void
add_effect (const Pair *pair,
            GPtrArray  *sentences)
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
  const Pair pair = {
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
  add_limits_against (&pair, sentences);
  add_notes (&pair, of_before, _ ("Of this option alone:"), sentences);
  return join (sentences, " ");
}

/* "wing loading 0.3 g/dm² less"; a result that comes or goes is told as it is now. */
static char *
plain_change (const Pair *pair,
              GwResultId  id)
{
  const char      *label = _ (gw_result_info (id)->label);
  g_autofree char *now = text_of (pair, pair->after, id);
  g_autofree char *size = NULL;

  if (!isfinite (value_of (pair->after, id)))
    return g_strdup_printf (_ ("%s without an answer now"), label);
  if (id == GW_RESULT_SLIDE || !isfinite (change_of (pair, id)) || is_nothing (pair, id))
    return g_strdup_printf (_ ("%s now %s"), label, now);

  size = size_of (pair, id);
  return change_of (pair, id) < 0.0 ? g_strdup_printf (_ ("%s %s less"), label, size)
                                    : g_strdup_printf (_ ("%s %s more"), label, size);
}

static char *
change_text (const Pair *pair,
             GwResultId  id)
{
  if (id == GW_RESULT_BALLAST && isfinite (value_of (pair->after, id)))
    return lead_text (pair);
  if (isfinite (change_of (pair, id)) && !is_nothing (pair, id))
    for (guint i = 0; i < G_N_ELEMENTS (told); i++)
      if (told[i].id == id)
        {
          g_autofree char *size = size_of (pair, id);

          return sized (change_of (pair, id) < 0.0 ? told[i].less : told[i].more, size);
        }

  return plain_change (pair, id);
}

/* The three that everybody asks for first, then the others in the order of the sheet. */
static void
tell_changes (const Pair *pair,
              GPtrArray  *parts)
{
  for (guint pass = 0; pass < 2; pass++)
    for (guint id = 0; id < GW_N_RESULTS; id++)
      {
        const gboolean is_first = id == GW_RESULT_MASS || id == GW_RESULT_STALL_SPEED ||
                                  id == GW_RESULT_BALANCE_ROOT;
        char *text;

        if (is_first != (pass == 0) || !gw_result_info ((GwResultId) id)->is_on_sheet ||
            is_shown_the_same (pair, (GwResultId) id))
          continue;
        text = change_text (pair, (GwResultId) id);
        if (text != NULL)
          take (parts, text);
      }
}

static const GwOutcome *
find_outcome (const GwEvaluation *evaluation,
              const char         *id)
{
  for (guint i = 0; i < evaluation->outcomes->len; i++)
    if (g_str_equal (gw_evaluation_outcome (evaluation, i)->id, id))
      return gw_evaluation_outcome (evaluation, i);

  return NULL;
}

static Pair
pair_of (const GwEvaluation *before,
         const GwEvaluation *after,
         guint               option,
         const GwUnits      *units)
{
  const GwOutcome *outcome = gw_evaluation_outcome (after, option);

  return (Pair){
    .before = outcome != NULL ? find_outcome (before, outcome->id) : NULL,
    .after = outcome,
    .units = units,
  };
}

char *
gw_words_of_change (const GwEvaluation *before,
                    const GwEvaluation *after,
                    guint               option,
                    const GwUnits      *units)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  const Pair pair = pair_of (before, after, option, units);

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

/* Rows. */

void
gw_words_row_free (GwWordsRow *row)
{
  g_free (row->label);
  g_free (row->unit);
  g_free (row->before);
  g_free (row->after);
  g_free (row->change);
  g_free (row);
}

static GwVerdict
verdict_of (const Pair *pair,
            GwResultId  id)
{
  const GwLimit before = gw_limit_of (pair->before, id), after = gw_limit_of (pair->after, id);
  const double  change = change_of (pair, id);
  const GwSense sense = gw_words_sense (id);

  if (before == GW_LIMIT_KEPT && after == GW_LIMIT_BROKEN)
    return GW_VERDICT_WORSE;
  if (before == GW_LIMIT_BROKEN && after == GW_LIMIT_KEPT)
    return GW_VERDICT_BETTER;
  if (!isfinite (change) || is_nothing (pair, id) || sense == GW_SENSE_NEITHER)
    return GW_VERDICT_NEUTRAL;

  return (change < 0.0) == (sense == GW_SENSE_LESS) ? GW_VERDICT_BETTER : GW_VERDICT_WORSE;
}

static void
add_row (const Pair *pair,
         GwResultId  id,
         GPtrArray  *rows)
{
  const GwResultInfo *info = gw_result_info (id);
  const double        change = change_of (pair, id);
  GwWordsRow         *row = g_new0 (GwWordsRow, 1);

  row->id = id;
  row->label = g_strdup (_ (info->label));
  row->unit = g_strdup (gw_units_name (pair->units, info->quantity));
  row->before =
    gw_amount_number (pair->units, info->quantity, value_of (pair->before, id), info->decimals);
  row->after =
    gw_amount_number (pair->units, info->quantity, value_of (pair->after, id), info->decimals);
  if (isfinite (change) && !is_nothing (pair, id))
    row->change = gw_amount_change (pair->units, info->quantity, change, info->decimals);
  row->verdict = verdict_of (pair, id);
  row->sureness = sureness_of (pair, id);
  g_ptr_array_add (rows, row);
}

static GPtrArray *
rows_new (const Pair *pair,
          gboolean    is_change)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) gw_words_row_free);

  for (guint id = 0; id < GW_N_RESULTS; id++)
    if (gw_result_info ((GwResultId) id)->is_on_sheet &&
        (isfinite (value_of (pair->before, (GwResultId) id)) ||
         isfinite (value_of (pair->after, (GwResultId) id))) &&
        !(is_change && is_shown_the_same (pair, (GwResultId) id)))
      add_row (pair, (GwResultId) id, rows);

  return rows;
}

GPtrArray *
gw_words_rows_against_baseline (const GwEvaluation *evaluation,
                                guint               option,
                                const GwUnits      *units)
{
  const Pair pair = {
    .before = gw_evaluation_outcome (evaluation, evaluation->baseline),
    .after = gw_evaluation_outcome (evaluation, option),
    .units = units,
    .has_bands = !evaluation->is_quick && option != evaluation->baseline,
  };

  g_return_val_if_fail (pair.after != NULL, NULL);

  return rows_new (&pair, FALSE);
}

GPtrArray *
gw_words_rows_of_change (const GwEvaluation *before,
                         const GwEvaluation *after,
                         guint               option,
                         const GwUnits      *units)
{
  const Pair pair = pair_of (before, after, option, units);

  g_return_val_if_fail (pair.after != NULL, NULL);

  if (pair.before == NULL)
    return g_ptr_array_new_with_free_func ((GDestroyNotify) gw_words_row_free);

  return rows_new (&pair, TRUE);
}
