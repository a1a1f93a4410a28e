/* gw-section-pressure.c - pressure along the chord of one section, computed on the spot
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-amount.h"
#include "report/gw-section-figures-private.h"
#include "report/gw-section-lines.h"
#include "study/gw-section-known.h"

#define DEG     (G_PI / 180.0)
#define RE_MOST 9e6
#define STEP    (0.5 * DEG) /* back from a greatest lift that does not converge alone */
#define TRIES   6
#define MOST    16    /* events */
#define SPECK   0.004 /* chords: a shorter stretch of backward flow is not told */

/* The one that lets go first, or the first that fits the choice. */
static gboolean
find_use (const GwSectionSheet *sheet,
          GwSectionUse         *out)
{
  GwSectionChoice choice = sheet->choice;
  g_autoptr (GArray) uses = NULL;

  if (choice.option < 0)
    choice.option = (int) sheet->evaluation->baseline;
  uses = gw_section_uses (sheet->evaluation, &choice);
  if (uses->len == 0)
    return FALSE;

  *out = g_array_index (uses, GwSectionUse, 0);
  for (guint i = 0; i < uses->len; i++)
    if (g_array_index (uses, GwSectionUse, i).is_first)
      *out = g_array_index (uses, GwSectionUse, i);
  return TRUE;
}

/* NULL: it can be computed. */
static const char *
why_not (const GwSectionUse *use,
         const GwOutline    *outline,
         double              re)
{
  if (gw_section_is_thin_plate (use->record, outline))
    return _ ("No pressure: it is a thin plate, which goes by tests, since the flow leaves its "
              "nose and no theory of attached layers holds.");
  if (!isfinite (re))
    return _ ("No pressure: no stall speed found, so no Reynolds number.");

  switch (gw_polar_check (outline))
    {
    case GW_POLAR_FINE:
      return NULL;
    case GW_POLAR_THIN:
      return _ ("No pressure: it is under 3 % thick.");
    case GW_POLAR_SHARP_NOSE:
      return _ ("No pressure: its nose is sharp, and the flow separates there.");
    case GW_POLAR_CROSSED:
      return _ ("No pressure: its sides cross.");
    case GW_POLAR_OPEN:
      return _ ("No pressure: it is open at the trailing edge.");
    case GW_POLAR_NOT_FINITE:
    default:
      return _ ("No pressure: its outline is not known.");
    }
}

static bool
is_wanted (void *data)
{
  return !g_cancellable_is_cancelled (data);
}

/* Incidence of the greatest lift; NAN if that was not found. */
static double
top_of (const GwPolarCase *polar_case)
{
  GwPolar *polar = g_new (GwPolar, 1);
  double   alpha = NAN;

  if (gw_polar_run (polar_case, polar) == GW_OK && polar->is_complete && polar->n > 0)
    alpha = polar->has_top ? polar->alpha_max : polar->rows[polar->n - 1].alpha;
  g_free (polar);
  return alpha;
}

/* At @alpha, or a little less where that has no answer. */
static gsize
nodes_near (const GwPolarCase *polar_case,
            gboolean           may_move,
            double            *alpha,
            GwPolarNode       *nodes,
            GwCoupledSums     *sums)
{
  for (int i = 0; i < (may_move ? TRIES : 1); i++)
    {
      size_t n = 0;

      if (gw_polar_nodes (polar_case, *alpha, &n, nodes, sums) == GW_OK)
        return n;
      *alpha -= STEP;
    }

  return 0;
}

typedef struct
{
  const GwPolarNode *nodes;
  gsize              first;
  int                step; /* downstream */
  gsize              n;
} Side;

/* Both sides start at the stagnation point, where the pressure is highest ahead of the middle. */
static Side
side_of (const GwPolarNode *nodes,
         gsize              n,
         gboolean           is_upper)
{
  gsize start = n / 2;

  for (gsize i = 0; i < n; i++)
    if (nodes[i].x < 0.5 && nodes[i].pressure > nodes[start].pressure)
      start = i;

  return is_upper ? (Side){ nodes, start, -1, start + 1 } : (Side){ nodes, start, 1, n - start };
}

static const GwPolarNode *
node_of (const Side *side,
         gsize       i)
{
  return &side->nodes[(gssize) side->first + side->step * (gssize) i];
}

/* Where the friction between two nodes is nothing. */
static double
turning_point (const GwPolarNode *a,
               const GwPolarNode *b)
{
  return a->x + a->friction / (a->friction - b->friction) * (b->x - a->x);
}

/* Stretches of backward flow: what began laminar and ends is a bubble. */
static gsize
find_separations (const Side  *side,
                  gboolean     is_upper,
                  GwFlowEvent *events)
{
  gsize n = 0;

  for (gsize i = 1; i < side->n && n < MOST / 2 - 1; i++)
    {
      const GwPolarNode *before = node_of (side, i - 1), *here = node_of (side, i);
      const gboolean     is_turbulent = here->is_turbulent;
      GwFlowEvent        event = { .is_upper = is_upper, .to = 1.0 };
      gboolean           is_closed = FALSE;

      if (here->friction >= 0.0 || before->friction < 0.0)
        continue;
      event.from = turning_point (before, here);
      while (++i < side->n)
        if (node_of (side, i)->friction >= 0.0)
          {
            event.to = turning_point (node_of (side, i - 1), node_of (side, i));
            is_closed = TRUE;
            break;
          }
      event.kind = is_turbulent ? GW_FLOW_SEPARATION
                   : is_closed  ? GW_FLOW_BUBBLE
                                : GW_FLOW_LAMINAR_SEPARATION;
      if (event.to - event.from > SPECK)
        events[n++] = event;
    }

  return n;
}

static void
fill_figure (GwSectionSheet      *sheet,
             GwPressureFigure    *figure,
             const GwPolarNode   *nodes,
             gsize                n,
             const GwCoupledSums *sums)
{
  double      *values[3];
  GwFlowEvent *events = _gw_section_keep_new (sheet, GwFlowEvent, MOST);

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    values[i] = _gw_section_keep_new (sheet, double, n);
  for (gsize i = 0; i < n; i++)
    {
      values[0][i] = nodes[i].x;
      values[1][i] = nodes[i].y;
      values[2][i] = nodes[i].pressure;
    }
  figure->n = n;
  figure->x = values[0];
  figure->y = values[1];
  figure->pressure = values[2];
  figure->events = events;
  for (int i = 0; i < 2; i++)
    {
      const Side side = side_of (nodes, n, i == 0);

      if (sums->x_turn[i] < 1.0)
        events[figure->n_events++] =
          (GwFlowEvent){ GW_FLOW_TRANSITION, i == 0, sums->x_turn[i], sums->x_turn[i] };
      figure->n_events += find_separations (&side, i == 0, events + figure->n_events);
    }
}

/* From the edge over the upper side and back, as nodes are. */
static void
fill_outline (GwSectionSheet  *sheet,
              const GwOutline *outline)
{
  GwPressureFigure *figure = &sheet->figure.pressure;
  double           *x = _gw_section_keep_new (sheet, double, 2 * GW_OUTLINE_N);
  double           *y = _gw_section_keep_new (sheet, double, 2 * GW_OUTLINE_N);

  for (guint i = 0; i < GW_OUTLINE_N; i++)
    {
      x[GW_OUTLINE_N - 1 - i] = x[GW_OUTLINE_N + i] = gw_outline_x (i);
      y[GW_OUTLINE_N - 1 - i] = outline->upper[i];
      y[GW_OUTLINE_N + i] = outline->lower[i];
    }
  figure->n = 2 * GW_OUTLINE_N;
  figure->x = x;
  figure->y = y;
}

/* "NACA 4412 · Re 96000 · incidence 11.2° · lift 1.32 · drag 0.034 · step 0.5 mm at 30 %" */
static const char *
conditions_of (GwSectionSheet      *sheet,
               const GwSectionUse  *use,
               double               re,
               double               alpha,
               gboolean             is_at_top,
               const GwCoupledSums *sums)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *angle = gw_amount_number (&sheet->units, GW_DEG, alpha, 1);
  g_autofree char *lift = gw_amount_number (&sheet->units, GW_RATIO, sums->cl, 2);

  g_ptr_array_add (parts, g_strdup (use->section->name));
  g_ptr_array_add (parts, g_strdup (use->outcome->short_name));
  g_ptr_array_add (parts, _gw_section_re_text (sheet, re));
  if (isfinite (alpha))
    {
      g_ptr_array_add (parts, g_strdup_printf (_ ("incidence %s°"), angle));
      if (is_at_top)
        g_ptr_array_add (parts, g_strdup (_ ("at its greatest lift")));
      g_ptr_array_add (parts, g_strdup_printf (_ ("lift %s"), lift));
      g_ptr_array_add (parts, g_strdup_printf (_ ("drag %.4f"), sums->cd));
    }
  if (gw_section_use_finish_acts (use, re))
    g_ptr_array_add (parts, gw_section_use_finish_text (use, &sheet->units));
  g_ptr_array_add (parts, NULL);
  return _gw_section_keep (sheet, g_strjoinv (" · ", (char **) parts->pdata));
}

static void
compute (GwSectionSheet     *sheet,
         const GwSectionUse *use,
         GwPolarCase        *polar_case)
{
  const gboolean    is_at_top = isnan (sheet->choice.alpha);
  GwPressureFigure *figure = &sheet->figure.pressure;
  const double      wanted = is_at_top ? top_of (polar_case) : sheet->choice.alpha;
  GwPolarNode      *nodes = g_new (GwPolarNode, GW_PANEL_MAX);
  double            alpha = wanted;
  GwCoupledSums     sums = { 0 };
  const gsize       n = isfinite (wanted)
                          ? nodes_near (polar_case, is_at_top, &alpha, nodes, &sums)
                          : 0;

  if (n == 0)
    {
      _gw_section_note (sheet, g_strdup (_ ("No pressure: no flow about it was found at that "
                                            "incidence.")));
      fill_outline (sheet, &polar_case->outline);
      alpha = NAN;
    }
  else
    fill_figure (sheet, figure, nodes, n, &sums);
  if (n > 0 && alpha != wanted)
    _gw_section_note (sheet, g_strdup (_ ("A little under its greatest lift, where the flow was "
                                          "found.")));
  figure->words.conditions = conditions_of (sheet, use, polar_case->re, alpha,
                                            is_at_top && alpha == wanted, &sums);
  g_free (nodes);
}

static GwPolarCase
make_case (const GwSectionUse   *use,
           const GwPolarSubject *smooth,
           double                wanted_re,
           GCancellable         *cancellable)
{
  GwPolarSubject subject = *smooth;
  const double   re = CLAMP (wanted_re, gw_polars_re[0], RE_MOST);
  GwPolarCase    made;

  if (gw_section_use_finish_acts (use, re))
    subject.trip = (GwTrip){ use->finish.place, use->finish.height / use->chord,
                             use->finish.critical };
  made = gw_polar_subject_case (&subject, re);
  made.with_return = false;
  made.is_wanted = is_wanted;
  made.data = cancellable;
  return made;
}

static void
make_of_use (GwSectionSheet     *sheet,
             const GwSectionUse *use,
             GCancellable       *cancellable)
{
  const double   re = isfinite (sheet->choice.re) ? sheet->choice.re : use->re;
  GwPolarSubject subject;
  GwPolarCase    made;
  const char    *why = gw_section_subject (use->record, NULL, &subject)
                         ? why_not (use, &subject.outline, re)
                         : _ ("No pressure: its outline is not known.");

  sheet->figure.pressure.words.conditions = use->section->name;
  if (why != NULL)
    {
      _gw_section_note (sheet, g_strdup (why));
      if (gw_section_subject (use->record, NULL, &subject))
        fill_outline (sheet, &subject.outline);
      return;
    }

  made = make_case (use, &subject, re, cancellable);
  compute (sheet, use, &made);
  if (re < made.re)
    _gw_section_note (sheet, g_strdup (_ ("At the least Reynolds number that is computed; it "
                                          "flies at less.")));
  if (gw_section_has_own_rows (use->record))
    _gw_section_note (sheet, g_strdup (_ ("Computed from its outline, not from the values that "
                                          "the study gives.")));
}

gboolean
_gw_section_make_pressure (GwSectionSheet *sheet,
                           GCancellable   *cancellable,
                           GError        **error)
{
  GwPressureFigure *figure = &sheet->figure.pressure;
  GwSectionUse      use;

  if (find_use (sheet, &use))
    make_of_use (sheet, &use, cancellable);
  else
    _gw_section_note (sheet, g_strdup (_ ("No such section is in use.")));

  figure->words =
    _gw_section_words (sheet, _ ("Pressure along the chord"), figure->words.conditions);
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}
