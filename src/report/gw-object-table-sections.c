/* gw-object-table-sections.c - the table of wing sections: what is drawn of them, in numbers
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report/gw-object-table-private.h"
#include "report/gw-owner.h"
#include "report/gw-section-lines.h"
#include "report/gw-section-uses.h"
#include "study/gw-edit.h"

#define LIFT_DECIMALS 2
#define DRAG_DECIMALS 4

static const char *
source_text (const GwSectionUse *use,
             GwSectionLineKind   kind)
{
  if (gw_section_has_own_rows (use->record))
    return _ ("given with the study");

  switch (kind)
    {
    case GW_LINE_OF_POLARS:
      return _ ("computed");
    case GW_LINE_OF_PLATE:
      return _ ("tests of thin plates");
    case GW_LINE_OF_ROWS:
      return _ ("catalogue");
    case GW_LINE_OF_NOTHING:
    default:
      return _ ("nothing");
    }
}

static void
add_lift (GwTabling          *tabling,
          const GwSectionUse *use)
{
  const gboolean has_re = isfinite (use->re);
  GwSectionPoint point = { (double) NAN, (double) NAN, (double) NAN, (double) NAN, false };
  GwBand         band = { (double) NAN, (double) NAN };

  if (has_re && gw_section_at (use->section, use->re, use->chord, &use->finish, &point) == GW_OK)
    gw_section_lift_band (use, use->re, point.cl_max, &band.low, &band.high);
  band.low -= point.cl_max;
  band.high -= point.cl_max;

  _gw_table_number (tabling, GW_RATIO, point.cl_max, LIFT_DECIMALS);
  _gw_table_band (tabling, GW_RATIO, point.cl_max, &band, LIFT_DECIMALS);
  _gw_table_number (tabling, GW_DEG, point.alpha_zero, 1);
  _gw_table_number (tabling, GW_RATIO, point.cm_zero, 3);
}

static void
add_use (GwTabling          *tabling,
         const GwSectionUse *use)
{
  const GwRecord *surface =
    g_ptr_array_index (use->outcome->assembly->study->surfaces, use->surface);
  g_autofree char *surface_name = gw_edit_record_name (surface);
  g_autofree char *section_name = gw_edit_record_name (&use->record->record);
  g_autofree char *finish = gw_section_use_finish_text (use, tabling->units);
  g_autoptr (GArray) rows = NULL;
  const GwSectionLineKind kind = gw_section_line_at (
    use, isfinite (use->re) ? use->re : use->section->rows[0].re, TRUE, &rows);
  const GwSectionLineRow *least =
    isfinite (use->re) && rows != NULL ? gw_section_least_drag (rows) : NULL;

  _gw_table_row (tabling, gw_owner_path (use->outcome, GW_GROUP_SURFACE, use->surface));
  _gw_table_text (tabling, use->outcome->short_name);
  _gw_table_text (tabling, surface_name);
  _gw_table_text (tabling, section_name);
  _gw_table_text (tabling, finish != NULL ? finish : _ ("smooth"));
  _gw_table_number (tabling, GW_RATIO, use->re, 0);
  add_lift (tabling, use);
  _gw_table_number (tabling, GW_RATIO, least != NULL ? least->cd : (double) NAN, DRAG_DECIMALS);
  _gw_table_number (tabling, GW_RATIO, least != NULL ? least->cl : (double) NAN, LIFT_DECIMALS);
  _gw_table_text (tabling, source_text (use, kind));
}

void
_gw_table_fill_sections (GwTabling *tabling)
{
  const GwSectionChoice choice = GW_SECTION_CHOICE_ALL;
  g_autoptr (GArray) uses = gw_section_uses (tabling->evaluation, &choice);

  _gw_table_text_column (tabling, _ ("option"));
  _gw_table_text_column (tabling, _ ("surface"));
  _gw_table_text_column (tabling, _ ("section"));
  _gw_table_text_column (tabling, _ ("finish"));
  _gw_table_number_column (tabling, _ ("Re at the stall"), GW_RATIO);
  _gw_table_number_column (tabling, _ ("greatest lift"), GW_RATIO);
  _gw_table_number_column (tabling, _ ("greatest lift, band"), GW_RATIO);
  _gw_table_number_column (tabling, _ ("no lift at"), GW_DEG);
  _gw_table_number_column (tabling, _ ("moment at no lift"), GW_RATIO);
  _gw_table_number_column (tabling, _ ("least drag"), GW_RATIO);
  _gw_table_number_column (tabling, _ ("least drag, at a lift of"), GW_RATIO);
  _gw_table_text_column (tabling, _ ("known by"));
  for (guint i = 0; i < uses->len; i++)
    add_use (tabling, &g_array_index (uses, GwSectionUse, i));
}
