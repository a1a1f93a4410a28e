/* gw-new-study-private.h - what the files of the page of a new study share
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "desk/gw-new-study.h"
#include "desk/gw-planform-view.h"
#include "study/gw-evaluation.h"

G_BEGIN_DECLS

typedef enum
{
  GW_ASKED_SPAN,
  GW_ASKED_CHORD,
  GW_ASKED_MASS,
  GW_N_ASKED
} GwAsked;

struct _GwNewStudy
{
  GtkWidget parent_instance;

  GtkWidget      *paper, *begin;
  GtkFlowBox     *shapes;
  GtkLabel       *about, *message, *promise;
  GtkGrid        *outcomes;
  GwPlanformView *planform;
  GtkEditable    *entries[GW_N_ASKED];
  GtkLabel       *hints[GW_N_ASKED];

  const GwTemplate *shape;
  GwUnits           units;
  double            values[GW_N_ASKED]; /* in the document's units */
  gboolean          is_own[GW_N_ASKED]; /* typed; the others follow what is usual */
  gboolean          is_filling;
  GwStudy          *study; /* NULL: something is amiss, or not made yet */
  GwEvaluation     *evaluation;
  guint             source;
  gboolean          is_dark;
};

/** _gw_new_study_read: what was typed; the rest follows what is usual. (transfer full) (nullable):
 * what is wrong. */
char *_gw_new_study_read (GwNewStudy *self);

/** _gw_new_study_fill: @value into its field. */
void _gw_new_study_fill (GwNewStudy *self,
                         GwAsked     what,
                         double      value);

/** _gw_new_study_restate: what was typed in @entry, as it was understood. */
void _gw_new_study_restate (GwNewStudy *self,
                            GtkWidget  *entry);

G_END_DECLS
