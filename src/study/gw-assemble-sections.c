/* gw-assemble-sections.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "study/gw-assemble-private.h"
#include "study/gw-section-outline.h"

#define LEAST_LIFT 0.05 /* share of a row's greatest lift that no spread goes below */

/* To fit an outline takes longer than all the rest of an assembly. */
static gboolean
take_outline (const GwAssembly     *like,
              const GwStudySection *from,
              GwOutline            *outline)
{
  if (like == NULL)
    return FALSE;

  for (guint i = 0; i < like->study->sections->len; i++)
    if (gw_section_has_outline_of (from, g_ptr_array_index (like->study->sections, i)))
      {
        *outline = like->sections[i].outline;
        return TRUE;
      }

  return FALSE;
}

static const char *
outline_cure (GwSectionShape shape)
{
  switch (shape)
    {
    case GW_SHAPE_NACA:
      return _ ("“code” must be the digits of a NACA section, such as 2412, 23012, 23112 or "
                "0012-34");
    case GW_SHAPE_FOLDED:
      return _ ("a folded sheet needs thickness_percent (3 to 25) and fold_percent (10 to 60), a "
                "second fold behind the first, a nose and an edge no higher than it is thick");
    case GW_SHAPE_PLATE:
      return _ ("a plate needs thickness_percent (0.5 to 10) and an edge no thicker than that; "
                "camber goes up to 12 at a place of 20 to 80");
    case GW_SHAPE_FLAT_BOTTOMED:
      return _ ("a flat-bottomed section needs thickness_percent (4 to 25), radius_percent and "
                "nose_percent (up to 0.7 of the thickness) that go together, a place of 15 to 60 "
                "and an edge of at most half the thickness");
    case GW_SHAPE_POINTS:
      return _ ("the points must be nine or more, run round the outline once and not cross");
    default:
      g_return_val_if_reached ("");
    }
}

/* What a row leaves out comes from thin-aerofoil theory. Of the spread of the section's greatest
 * lift each row has its share, but some lift is left however wide that is. */
static GwSectionRow
make_row (const GwStudySectionRow *from,
          double                   factor,
          const GwOutline         *outline)
{
  double alpha_zero, cm_quarter;

  gw_outline_thin_theory (outline, &alpha_zero, &cm_quarter);
  return (GwSectionRow){
    .re = from->re.value,
    .cl_max =
      from->cl_max.value * fmax (1.0 + (factor - 1.0) * from->spread_share.value, LEAST_LIFT),
    .slope = isnan (from->slope_per_deg.value) ? 2.0 * G_PI
                                               : from->slope_per_deg.value * 180.0 / G_PI,
    .alpha_zero =
      isnan (from->alpha_zero_deg.value) ? alpha_zero : _gw_deg (&from->alpha_zero_deg),
    .cm_zero = isnan (from->cm_zero.value) ? cm_quarter : from->cm_zero.value,
  };
}

/* A section that nothing is made of has none: gw_section_fill() leaves it alone. */
static void
fill_rows (GwAssembler          *assembler,
           const GwStudySection *from,
           GwSection            *section,
           const char           *path)
{
  if (from->rows->len > GW_SECTION_ROWS)
    gw_problems_error (assembler->problems, path, _ ("the section has more than %d rows"),
                       GW_SECTION_ROWS);

  section->n_rows = MIN (from->rows->len, GW_SECTION_ROWS);
  for (guint i = 0; i < section->n_rows; i++)
    {
      section->rows[i] = make_row (g_ptr_array_index (from->rows, i), from->cl_max_factor.value,
                                   &section->outline);
      if (i > 0 && section->rows[i].re <= section->rows[i - 1].re)
        gw_problems_error (assembler->problems, path, _ ("row %u: the Reynolds numbers must rise"),
                           i + 1);
    }
}

static gboolean
is_same_step (const GwStudySectionRow *a,
              const GwStudySectionRow *b)
{
  return a->step_percent.value == b->step_percent.value &&
         a->height_percent.value == b->height_percent.value &&
         a->critical.value == b->critical.value;
}

/* Rows of one step and height follow each other. */
static void
fill_stepped (GwAssembler          *assembler,
              const GwStudySection *from,
              GwSection            *section)
{
  const guint              n = from->stepped->len;
  GwSteppedRows           *stepped = _gw_assemble_new (assembler, GwSteppedRows, n);
  GwSteppedRows           *last = NULL;
  const GwStudySectionRow *before = NULL;

  section->stepped = stepped;
  for (guint i = 0; i < n; i++)
    {
      const GwStudySectionRow *row = g_ptr_array_index (from->stepped, i);

      if (before == NULL || !is_same_step (before, row) || last->n_rows == GW_SECTION_ROWS)
        {
          last = &stepped[section->n_stepped++];
          last->place = _gw_percent (&row->step_percent);
          last->height = _gw_percent (&row->height_percent);
          last->critical = row->critical.value;
        }
      last->rows[last->n_rows++] = make_row (row, from->cl_max_factor.value, &section->outline);
      before = row;
    }
}

static double
method_factor (const GwStudy *study,
               const char    *id)
{
  const GwStudyMethod *method = (const GwStudyMethod *) gw_list_find (study->methods, id);

  return method != NULL ? method->value.value : 1.0;
}

void
_gw_assemble_sections (GwAssembler *assembler)
{
  const GPtrArray *list = assembler->study->sections;

  assembler->assembly->sections = _gw_assemble_new (assembler, GwSection, list->len);
  for (guint i = 0; i < list->len; i++)
    {
      const GwStudySection *from = g_ptr_array_index (list, i);
      GwSection            *section = &assembler->assembly->sections[i];
      g_autofree char      *path = g_strdup_printf ("sections/%s", from->id);

      section->name = from->name != NULL ? from->name : from->id;
      section->cl_max_factor = method_factor (assembler->study, "stall-speed");
      if (!take_outline (assembler->like, from, &section->outline) &&
          gw_section_outline (from, &section->outline) != GW_OK)
        gw_problems_error (assembler->problems, path, "%s",
                           outline_cure ((GwSectionShape) from->shape));
      else
        {
          fill_rows (assembler, from, section, path);
          fill_stepped (assembler, from, section);
        }
    }
}
