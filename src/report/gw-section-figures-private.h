/* gw-section-figures-private.h - a figure of sections while it is made
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include "report/gw-section-figures.h"

G_BEGIN_DECLS

struct _GwSectionSheet
{
  GwEvaluation       *evaluation;
  GwSectionFigureKind kind;
  GwSectionChoice     choice;
  GwUnits             units;
  GPtrArray          *blocks; /* strings and arrays that the figure borrows */
  GPtrArray          *notes;  /* of them, sentences */
  union
  {
    GwPolarFigure        polar;
    GwGreatestLiftFigure greatest_lift;
    GwPressureFigure     pressure;
  } figure;
};

static inline gpointer
_gw_section_keep (GwSectionSheet *sheet,
                  gpointer        block)
{
  g_ptr_array_add (sheet->blocks, block);
  return block;
}

#define _gw_section_keep_new(sheet, Type, n) \
 ((Type *) _gw_section_keep (sheet, g_new0 (Type, MAX (n, 1))))

/* Uses that make one curve. */
typedef struct
{
  GArray  *uses;    /* of GwSectionUse; the first stands for all */
  gboolean is_bent; /* by their finish, which is the same then */
  double   re;      /* in the middle of theirs; NAN: none has a stall speed */
  double   re_low, re_high;
} GwSectionGroup;

/** _gw_section_groups: @is_by_re: of figures at one Reynolds number, where those far apart make two
 * curves; else over all. A finish that cannot be seen makes none.
 * (transfer full): of GwSectionGroup */
GArray *_gw_section_groups (const GwSectionSheet *sheet,
                            gboolean              is_by_re);

/** _gw_section_label: of curve number @i. */
GwSectionLabel _gw_section_label (GwSectionSheet       *sheet,
                                  const GwSectionGroup *group,
                                  guint                 i,
                                  gboolean              with_re);

/** _gw_section_note: adds a sentence, once. @text: (transfer full) */
void _gw_section_note (GwSectionSheet *sheet,
                       char           *text);

/** _gw_section_note_known: where what is known of a section comes from, if not from polars. */
void _gw_section_note_known (GwSectionSheet     *sheet,
                             const GwSectionUse *use);

/** _gw_section_note_source: how well a published measurement is known, and where it stands. */
void _gw_section_note_source (GwSectionSheet           *sheet,
                              const GwStudyMeasurement *measurement);

/** _gw_section_re_text: "Re 96000", to two digits. (transfer full) */
char *_gw_section_re_text (const GwSectionSheet *sheet,
                           double                re);

/** _gw_section_words: with the notes so far, as one paragraph. */
GwSectionWords _gw_section_words (GwSectionSheet *sheet,
                                  const char     *title,
                                  const char     *conditions);

void     _gw_section_make_polar (GwSectionSheet *sheet);
void     _gw_section_make_greatest_lift (GwSectionSheet *sheet);
gboolean _gw_section_make_pressure (GwSectionSheet *sheet,
                                    GCancellable   *cancellable,
                                    GError        **error);

G_END_DECLS
