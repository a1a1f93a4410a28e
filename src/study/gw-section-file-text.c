/* gw-section-file-text.c - what a file of coordinates holds, in words
 *
 * SPDX-FileCopyrightText: 2026 The Gramwright authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "study/gw-section-file.h"
#include "study/gw-section-outline.h"

#define WHOLE 0.02 /* how far a chord of 1 or 100 may be off for its unit to be known */

char *
gw_section_file_change (const GwSectionFile *file)
{
  /* Translators: what smoothing does to an outline */
  return g_strdup_printf (file->change.is_upper
                            ? _ ("Greatest change: %.2f %% of the chord, on top at %.0f %%.")
                            : _ ("Greatest change: %.2f %% of the chord, below at %.0f %%."),
                          fabs (file->change.greatest) * 100.0, file->change.x * 100.0);
}

static void
remark (GPtrArray  *remarks,
        const char *format,
        ...) G_GNUC_PRINTF (2, 3);

static void
remark (GPtrArray  *remarks,
        const char *format,
        ...)
{
  va_list args;

  va_start (args, format);
  g_ptr_array_add (remarks, g_strdup_vprintf (format, args));
  va_end (args);
}

GPtrArray *
gw_section_file_remarks (const GwSectionFile *file)
{
  const GwOutlineReport *report = &file->report;
  const double           turn = report->turn * 180.0 / G_PI;
  GPtrArray             *remarks = g_ptr_array_new_with_free_func (g_free);

  if (report->is_mirrored)
    remark (remarks, "%s", _ ("Its nose was to the right: mirrored."));
  if (report->is_bottom_first)
    remark (remarks, "%s", _ ("Its bottom came first: turned round."));
  if (report->n_doubles > 0)
    remark (remarks,
            g_dngettext (GETTEXT_PACKAGE,
                         "%u point stood there twice running, in line %u, and was left out.",
                         "%u points stood there twice running, the first in line %u, and were left "
                         "out.",
                         report->n_doubles),
            (guint) report->n_doubles, file->double_line);
  if (fabs (turn) >= 0.05)
    remark (remarks,
            turn > 0.0 ? _ ("Its chord line lay %.1f° nose up and was levelled.")
                       : _ ("Its chord line lay %.1f° nose down and was levelled."),
            fabs (turn));

  return remarks;
}

/* A row of a table whose first column is as wide as its widest word. */
static void
row (GString    *out,
     const char *label,
     const char *format,
     ...) G_GNUC_PRINTF (3, 4);

static void
row (GString    *out,
     const char *label,
     const char *format,
     ...)
{
  const glong length = g_utf8_strlen (label, -1);
  va_list     args;

  g_string_append_printf (out, "  %s%*s", label, (int) MAX (22 - length, 2), "");
  va_start (args, format);
  g_string_append_vprintf (out, format, args);
  va_end (args);
  g_string_append_c (out, '\n');
}

/* With a minus that is one, and none before a zero. (transfer full) */
static char *
signed_text (double value,
             int    decimals)
{
  g_autofree char *digits = g_strdup_printf ("%.*f", decimals, fabs (value));

  return g_strconcat (value < 0.0 && strpbrk (digits, "123456789") != NULL ? "\342\210\222" : "",
                      digits, NULL);
}

static const char *
order_text (const GwOutlineReport *report)
{
  if (report->is_two_sides)
    return report->is_from_nose ? _ ("two sides from the nose") : _ ("two sides from the tail");

  return report->is_from_nose ? _ ("once round from the nose") : _ ("once round from the tail");
}

static const char *
unit_text (double chord)
{
  if (fabs (chord - 1.0) < WHOLE)
    return _ ("parts of the chord");
  if (fabs (chord - 100.0) < 100.0 * WHOLE)
    return _ ("per cent of the chord");

  return _ ("in the unit of the file");
}

static void
add_nose (GString                 *out,
          const GwOutlineMeasures *measures)
{
  if (measures->nose_height > 0.0)
    row (out, _ ("nose"), _ ("blunt, %.2f %% high"), 100.0 * measures->nose_height);
  else
    row (out, _ ("nose"), _ ("radius %.2f %%"), 100.0 * measures->nose_radius);
}

char *
gw_section_file_text (const GwSectionFile *file,
                      gboolean             is_smooth)
{
  const GwOutline *outline = is_smooth ? &file->smooth : &file->outline;
  GString         *out = g_string_new (file->name);
  g_autofree char *measured = gw_section_measures_text (outline);
  g_autofree char *change = gw_section_file_change (file);
  g_autoptr (GPtrArray) remarks = gw_section_file_remarks (file);
  GwOutlineMeasures measures;
  g_autofree char  *angle = NULL, *moment = NULL;
  double            alpha_zero, cm;

  gw_outline_measures (outline, &measures);
  gw_outline_thin_theory (outline, &alpha_zero, &cm);
  angle = signed_text (alpha_zero * 180.0 / G_PI, 2);
  moment = signed_text (cm, 3);
  g_string_append_c (out, '\n');
  row (out, _ ("points"), "%u, %s", file->n_points, order_text (&file->report));
  row (out, _ ("chord"), "%.4g, %s", file->report.chord, unit_text (file->report.chord));
  row (out, _ ("outline"), "%s", measured);
  row (out, _ ("trailing edge"), "%.2f %%", 100.0 * measures.edge);
  add_nose (out, &measures);
  row (out, _ ("zero-lift angle"), _ ("%s°, by thin-aerofoil theory"), angle);
  row (out, _ ("moment"), _ ("%s about the quarter chord, likewise"), moment);
  for (guint i = 0; i < remarks->len; i++)
    g_string_append_printf (out, "%s\n", (char *) g_ptr_array_index (remarks, i));
  if (is_smooth)
    g_string_append_printf (out, _ ("Smoothed. %s\n"), change);

  return g_string_free (out, FALSE);
}
