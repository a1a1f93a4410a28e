/* gw-section-outline.c
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "study/gw-section-outline.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define REMEMBERED 96 /* outlines: a catalogue, and some more */

/* What tells sections apart [chords]. */
#define HARDLY_CAMBERED 0.002
#define HARDLY_SHOWN    0.0005
#define HARDLY_MOMENT   -0.01
#define FLAT_FROM       0.3
#define FLAT_TO         0.9
#define HARDLY_BENT     0.0005
#define HARDLY_THINNER  0.95 /* a ratio; four digits: 0.8 at 60 % */

/* A number that may be left out, in chords. */
static double
part (const GwNumber *number,
      double          standard)
{
  return isnan (number->value) ? standard : number->value * 0.01;
}

static GwStatus
through_points (const GwStudySection *section,
                GwOutline            *outline)
{
  g_autofree double *xy = g_new (double, 2 * section->points->len + 1);

  for (guint i = 0; i < section->points->len; i++)
    {
      const GwStudyPoint *point = g_ptr_array_index (section->points, i);

      xy[2 * i] = point->x.value;
      xy[2 * i + 1] = point->y.value;
    }

  return gw_outline_points (section->points->len, xy, outline);
}

static GwStatus
folded (const GwStudySection *section,
        GwOutline            *outline)
{
  const GwFoldedOutline sheet = {
    .thickness = part (&section->thickness_percent, NAN),
    .fold = part (&section->fold_percent, NAN),
    .second = part (&section->second_fold_percent, 0.0),
    .nose = part (&section->nose_percent, 0.0),
    .edge = part (&section->edge_percent, 0.0),
  };

  return gw_outline_folded_sheet (&sheet, outline);
}

static GwStatus
plate (const GwStudySection *section,
       GwOutline            *outline)
{
  const double         thickness = part (&section->thickness_percent, NAN);
  const GwPlateOutline sheet = {
    .thickness = thickness,
    .camber = part (&section->camber_percent, 0.0),
    .place = part (&section->place_percent, 0.5),
    .nose = part (&section->nose_percent, 0.0),
    .edge = part (&section->edge_percent, thickness),
  };

  return gw_outline_plate (&sheet, outline);
}

static GwStatus
flat_bottomed (const GwStudySection *section,
               GwOutline            *outline)
{
  const GwFlatOutline flat = {
    .thickness = part (&section->thickness_percent, NAN),
    .place = part (&section->place_percent, 0.3),
    .nose = part (&section->nose_percent, 0.0),
    .radius = part (&section->radius_percent, NAN),
    .edge = part (&section->edge_percent, 0.0),
  };

  return gw_outline_flat_bottomed (&flat, outline);
}

/* Digits and points have an edge of their own, which another may take the place of. */
static GwStatus
with_edge (const GwStudySection *section,
           GwStatus              status,
           GwOutline            *outline)
{
  if (status != GW_OK || isnan (section->edge_percent.value))
    return status;

  return gw_outline_set_edge (outline, section->edge_percent.value * 0.01);
}

static GwStatus
make_outline (const GwStudySection *section,
              GwOutline            *outline)
{
  switch ((GwSectionShape) section->shape)
    {
    case GW_SHAPE_NACA:
      return with_edge (section,
                        section->code != NULL ? gw_outline_naca (section->code, outline)
                                              : GW_EINVAL,
                        outline);
    case GW_SHAPE_POINTS:
      return with_edge (section, through_points (section, outline), outline);
    case GW_SHAPE_FOLDED:
      return folded (section, outline);
    case GW_SHAPE_PLATE:
      return plate (section, outline);
    case GW_SHAPE_FLAT_BOTTOMED:
      return flat_bottomed (section, outline);
    default:
      return GW_EINVAL;
    }
}

gboolean
gw_section_has_outline_of (const GwStudySection *a,
                           const GwStudySection *b)
{
  if (a->shape != b->shape || g_strcmp0 (a->code, b->code) != 0 ||
      !gw_number_equal (&a->thickness_percent, &b->thickness_percent) ||
      !gw_number_equal (&a->place_percent, &b->place_percent) ||
      !gw_number_equal (&a->camber_percent, &b->camber_percent) ||
      !gw_number_equal (&a->fold_percent, &b->fold_percent) ||
      !gw_number_equal (&a->second_fold_percent, &b->second_fold_percent) ||
      !gw_number_equal (&a->nose_percent, &b->nose_percent) ||
      !gw_number_equal (&a->radius_percent, &b->radius_percent) ||
      !gw_number_equal (&a->edge_percent, &b->edge_percent) || a->points->len != b->points->len)
    return FALSE;

  for (guint i = 0; i < a->points->len; i++)
    if (!gw_record_equal (g_ptr_array_index (a->points, i), g_ptr_array_index (b->points, i)))
      return FALSE;

  return TRUE;
}

typedef struct
{
  GwStudySection *section;
  GwOutline       outline;
} Remembered;

GwStatus
gw_section_outline (const GwStudySection *section,
                    GwOutline            *outline)
{
  static Remembered kept[REMEMBERED];
  static guint      next;
  static GMutex     mutex;
  GwStatus          status;

  g_mutex_lock (&mutex);
  for (guint i = 0; i < REMEMBERED && kept[i].section != NULL; i++)
    if (gw_section_has_outline_of (kept[i].section, section))
      {
        *outline = kept[i].outline;
        g_mutex_unlock (&mutex);
        return GW_OK;
      }
  g_mutex_unlock (&mutex);

  status = make_outline (section, outline);
  if (status != GW_OK)
    return status;

  g_mutex_lock (&mutex);
  if (kept[next].section != NULL)
    gw_record_free (&kept[next].section->record);
  kept[next] = (Remembered){ (GwStudySection *) gw_record_copy (&section->record), *outline };
  next = (next + 1) % REMEMBERED;
  g_mutex_unlock (&mutex);
  return GW_OK;
}

static gboolean
is_flat_bottomed (const GwOutline *outline)
{
  const double low = gw_outline_height_at (outline, FLAT_FROM, FALSE);
  const double high = gw_outline_height_at (outline, FLAT_TO, FALSE);

  for (double x = FLAT_FROM; x < FLAT_TO; x += 0.05)
    if (fabs (gw_outline_height_at (outline, x, FALSE) - low -
              (high - low) * (x - FLAT_FROM) / (FLAT_TO - FLAT_FROM)) > HARDLY_BENT)
      return FALSE;

  return TRUE;
}

static gboolean
is_sheet (const GwOutline *outline)
{
  const double middle = gw_outline_thickness_at (outline, 0.4);

  return gw_outline_thickness_at (outline, 0.15) > HARDLY_THINNER * middle &&
         gw_outline_thickness_at (outline, 0.6) > HARDLY_THINNER * middle;
}

GwSectionFamily
gw_section_family (const GwStudySection *section,
                   const GwOutline      *outline)
{
  if (section->shape == GW_SHAPE_FOLDED)
    return GW_FAMILY_FOLDED;

  return section->shape == GW_SHAPE_PLATE || is_sheet (outline) ? GW_FAMILY_PLATE : GW_FAMILY_ROUND;
}

GwSectionKind
gw_section_kind (const GwStudySection *section,
                 const GwOutline      *outline)
{
  const GwSectionFamily family = gw_section_family (section, outline);
  GwOutlineMeasures     measures;
  double                alpha_zero, cm;

  if (family != GW_FAMILY_ROUND)
    return family == GW_FAMILY_FOLDED ? GW_SECTION_FOLDED : GW_SECTION_PLATE;

  gw_outline_measures (outline, &measures);
  gw_outline_thin_theory (outline, &alpha_zero, &cm);
  if (fabs (measures.camber) < HARDLY_CAMBERED)
    return GW_SECTION_SYMMETRIC;
  if (is_flat_bottomed (outline))
    return GW_SECTION_FLAT_BOTTOMED;

  /* A mean line that carries its camber far forward has little moment too: 23012 has -0.013. */
  return cm > HARDLY_MOMENT ? GW_SECTION_REFLEXED : GW_SECTION_CAMBERED;
}

const char *
gw_section_kind_name (GwSectionKind kind)
{
  static const char *const names[] = { N_ ("Symmetric"), N_ ("Cambered"),
                                       N_ ("Reflexed"), N_ ("Flat underside"),
                                       N_ ("Folded sheet"), N_ ("Plate") };

  G_STATIC_ASSERT (G_N_ELEMENTS (names) == GW_N_SECTION_KINDS);
  return g_dgettext (GETTEXT_PACKAGE, names[kind]);
}

/* One decimal at most, and none that is zero. */
static char *
percent (double part_of_chord)
{
  const double shown = round (part_of_chord * 1000.0) / 10.0;

  return g_strdup_printf ("%g", shown == 0.0 ? 0.0 : shown);
}

char *
gw_section_measures_text (const GwOutline *outline)
{
  GwOutlineMeasures measures;
  g_autofree char  *thickness = NULL, *camber = NULL;

  gw_outline_measures (outline, &measures);
  thickness = percent (measures.thickness);
  if (fabs (measures.camber) < HARDLY_SHOWN)
    /* Translators: of the chord */
    return g_strdup_printf (_ ("%s %% thick at %.0f %%, no camber"), thickness,
                            100.0 * measures.x_thickness);

  camber = percent (measures.camber);
  /* Translators: thickness and camber, each with its place, of the chord */
  return g_strdup_printf (_ ("%s %% thick at %.0f %%, camber %s %% at %.0f %%"), thickness,
                          100.0 * measures.x_thickness, camber, 100.0 * measures.x_camber);
}

char *
gw_section_brief_text (const GwOutline *outline)
{
  GwOutlineMeasures measures;
  g_autofree char  *thickness = NULL, *camber = NULL;

  gw_outline_measures (outline, &measures);
  thickness = percent (measures.thickness);
  if (fabs (measures.camber) < HARDLY_SHOWN)
    /* Translators: of the chord */
    return g_strdup_printf (_ ("%s %% thick"), thickness);

  camber = percent (measures.camber);
  /* Translators: thickness; camber and its place, of the chord */
  return g_strdup_printf (_ ("%s %% thick, camber %s %% at %.0f %%"), thickness, camber,
                          100.0 * measures.x_camber);
}
