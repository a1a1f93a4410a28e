/* gw-derivation-band.c - what the band of a result is made of
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "report/gw-derivation-private.h"

#define LEAST_SHARE 0.01
#define MOST_ROWS   12
#define NO_BREAK    "\302\240" /* U+00A0 */

double
_gw_effect_weight (const GwEffect *effect,
                   GwResultId      id)
{
  const double up = effect->up[id], down = effect->down[id];
  const double high = MAX (MAX (up, down), 0.0), low = MIN (MIN (up, down), 0.0);

  /* As the band itself is made: without an answer at one end there is nothing to add. */
  return isfinite (up) && isfinite (down) ? high * high + low * low : 0.0;
}

typedef struct
{
  const GwEffect *effect;
  double          weight;
} Share;

static int
compare_shares (gconstpointer a,
                gconstpointer b)
{
  const Share *one = a, *two = b;

  return one->weight > two->weight ? -1 : one->weight < two->weight;
}

static GArray *
shares_of (const GwDeriving *deriving,
           double           *total)
{
  const GPtrArray *effects = deriving->outcome->effects;
  GArray          *shares = g_array_new (FALSE, FALSE, sizeof (Share));

  *total = 0.0;
  for (guint i = 0; i < effects->len; i++)
    {
      const GwEffect *effect = g_ptr_array_index (effects, i);
      const Share     share = { effect, _gw_effect_weight (effect, deriving->id) };

      if (share.weight > 0.0)
        g_array_append_val (shares, share);
      *total += share.weight;
    }

  g_array_sort (shares, compare_shares);
  return shares;
}

/* The key of an input is its path, or that under the changes of its option. */
static char *
input_path (const GwDeriving *deriving,
            const GwEffect   *effect)
{
  g_autofree char *own = g_strdup_printf ("options/%s/changes/", deriving->outcome->id);
  const char      *path = effect->key;

  return g_strdup (g_str_has_prefix (path, own) ? path + strlen (own) : path);
}

/* "+0.92 m/s", a digit finer than the result itself. */
static char *
effect_text (const GwDeriving *deriving,
             const double     *effect)
{
  const GwResultInfo *info = gw_result_info (deriving->id);
  const char         *unit = gw_units_name (deriving->units, info->quantity);
  const double        shown = effect[deriving->id];
  g_autofree char    *change =
    gw_amount_change (deriving->units, info->quantity, shown, info->decimals + 1);

  return g_strconcat (change, *unit != '\0' ? NO_BREAK : "", unit, NULL);
}

static void
add_share (GwDeriving  *deriving,
           const Share *share,
           double       total)
{
  GwStudy         *study = deriving->outcome->assembly->study;
  g_autofree char *path = input_path (deriving, share->effect);
  g_autofree char *up = effect_text (deriving, share->effect->up);
  g_autofree char *down = effect_text (deriving, share->effect->down);
  const GwField   *field = NULL;
  const GwRecord  *record = gw_record_find (&study->record, path, &field);
  GwDerivationRow *row;

  /* Translators: share of the variance; with the input at its high end, at its low end */
  row = _gw_derivation_add (deriving, "share", share->effect->label,
                            g_strdup_printf ("%.1f" NO_BREAK "%% (%s," NO_BREAK "%s)",
                                             100.0 * share->weight / total, up, down));
  if (record != NULL)
    {
      const GwNumber *number = gw_record_at (record, field);
      char           *end = strrchr (path, '/');

      row->origin = g_strdup (gw_amount_origin (number->origin));
      row->source = g_strdup (number->source);
      *end = '\0';
      row->path = _gw_derivation_path (deriving, g_steal_pointer (&path));
    }
}

const char *
_gw_derive_band (GwDeriving *deriving)
{
  double total;
  g_autoptr (GArray) shares = NULL;
  double rest = 0.0;
  guint  n_rest = 0;

  if (deriving->evaluation->is_quick)
    return _ ("The band is being computed.");
  if (!isfinite (deriving->outcome->results.value[deriving->id]))
    return _ ("Without an answer there is no band.");

  shares = shares_of (deriving, &total);
  if (shares->len == 0)
    return _ ("No uncertain input moves this result, so it has no band.");

  for (guint i = 0; i < shares->len; i++)
    {
      const Share *share = &g_array_index (shares, Share, i);

      if (i < MOST_ROWS && share->weight >= LEAST_SHARE * total)
        add_share (deriving, share, total);
      else
        {
          rest += share->weight;
          n_rest++;
        }
    }
  if (n_rest > 0)
    {
      g_autofree char *label =
        g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u further input", "%u further inputs",
                                      n_rest),
                         n_rest);

      _gw_derivation_add (deriving, "rest", label,
                          g_strdup_printf (_ ("%.1f %%"), 100.0 * rest / total));
    }

  return _ ("Each uncertain input is moved alone to its 90th and to its 10th percentile; in "
            "brackets is what that does. The share is of the sum of its squares.");
}
