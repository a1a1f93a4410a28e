/* gw-section-guess.c - plates, and what a section does that nobody has computed yet
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "engine/gw-plate.h"
#include "study/gw-catalogue.h"
#include "study/gw-section-outline.h"
#include "study/gw-section-private.h"

#define OTHER_FAMILY 0.05 /* chords of thickness that another family counts for */
#define GUESSED      0.2  /* spread of a guess, either way: estimate, no source */

static const double plate_re[] = { 2e4, 4e4, 8e4, 1.2e5, 2.5e5, 5e5 };

static gboolean
plate_rows (double  thickness,
            double  camber,
            GwRows *rows)
{
  rows->n = G_N_ELEMENTS (plate_re);
  for (guint k = 0; k < rows->n; k++)
    {
      const GwPlate plate = { thickness, camber, plate_re[k] };
      GwPlateValues values;

      if (gw_plate_values (&plate, &values) != GW_OK)
        return FALSE;
      rows->rows[k] = (GwSectionRow){ plate_re[k], values.cl_max[1], values.slope,
                                      values.alpha_zero, values.cm_zero };
      rows->low[k] = values.cl_max[0] / values.cl_max[1];
      rows->high[k] = values.cl_max[2] / values.cl_max[1];
    }

  return TRUE;
}

gboolean
_gw_rows_of_plate (const GwOutline *outline,
                   GwRows          *rows)
{
  GwOutlineMeasures measures;

  gw_outline_measures (outline, &measures);
  return plate_rows (measures.thickness, fabs (measures.camber), rows);
}

/* Camber counts double: greatest lift follows it more closely than it follows thickness
 * (common practice, no source). */
static double
distance_of (const GwOutlineMeasures *a,
             const GwOutlineMeasures *b)
{
  return hypot (a->thickness - b->thickness, 2.0 * (a->camber - b->camber));
}

static GwPolars *
nearest_polars (const GwOutlineMeasures *wanted,
                GwSectionFamily          family,
                const GwStudySection   **nearest)
{
  const GPtrArray *sections = gw_catalogue_list ("sections");
  GwPolarSubject   subject;
  double           least = INFINITY;

  *nearest = NULL;
  for (guint i = 0; i < sections->len; i++)
    {
      const GwStudySection *other = g_ptr_array_index (sections, i);
      GwOutlineMeasures     measures;
      GwOutline             outline;
      double                distance;

      if (gw_section_outline (other, &outline) != GW_OK ||
          gw_section_is_thin_plate (other, &outline))
        continue;
      gw_outline_measures (&outline, &measures);
      distance = distance_of (&measures, wanted) +
                 (gw_section_family (other, &outline) != family ? OTHER_FAMILY : 0.0);
      if (distance < least)
        {
          least = distance;
          *nearest = other;
        }
    }

  return *nearest != NULL && gw_section_subject (*nearest, NULL, &subject)
           ? gw_polars_find (&subject)
           : NULL;
}

const char *
_gw_rows_guess (const GwOutline *outline,
                GwSectionFamily  family,
                GwRows          *rows)
{
  GwOutlineMeasures     measures;
  const GwStudySection *nearest;
  g_autoptr (GwPolars) polars = NULL;
  double   alpha_zero, cm_quarter;
  gboolean is_found;

  gw_outline_measures (outline, &measures);
  polars = nearest_polars (&measures, family, &nearest);
  is_found = polars != NULL && _gw_rows_of_polars (polars, rows);
  if (!is_found)
    plate_rows (0.03, CLAMP (fabs (measures.camber), 0.0, 0.09), rows);

  gw_outline_thin_theory (outline, &alpha_zero, &cm_quarter);
  for (guint k = 0; k < rows->n; k++)
    {
      rows->rows[k].alpha_zero = alpha_zero;
      rows->rows[k].cm_zero = cm_quarter;
      rows->low[k] = 1.0 - GUESSED;
      rows->high[k] = 1.0 + GUESSED;
    }

  return is_found ? nearest->name : _ ("a plate with its camber");
}
